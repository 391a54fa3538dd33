package packet

import (
	"fmt"

	"hoopwright/draw/paper"
)

// Columns of a step, from the left of the live area: its number, its tick box, its words.
const (
	numberWidth paper.Length = 9
	tickWidth   paper.Length = 8.6
	wordsLeft                = numberWidth + tickWidth
)

// strip is a part of a step that is not broken between pages.
type strip struct {
	height paper.Length
	draw   func(page *paper.Page, box paper.Rect)
}

// freshHeight is the height of a page's whole live area.
func (f *flow) freshHeight() paper.Length {
	_, live := f.b.newPage()
	return live.H
}

// people prints how many do it.
func people(n int) string {
	if n == 1 {
		return "1 person"
	}
	return fmt.Sprintf("%d people", n)
}
