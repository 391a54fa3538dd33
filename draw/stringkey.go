package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// StringKeyHigh is the height of the strings' key.
const StringKeyHigh paper.Length = 7

// StringKey draws what the signs on the strings mean.
func StringKey(page *paper.Page, box paper.Rect, drops bool) []string {
	b := place.NewBoard(page, box)
	y, x := box.Y+StringKeyHigh/2, box.X
	right := paper.Point{X: 1}
	say := func(words string) {
		x += 2
		page.Text(paper.Point{X: x, Y: y + 1.4}, paper.AtLeft, words, paper.Floor)
		x += paper.Floor.Width(words) + 6
	}
	Prongs(b, paper.Point{X: x, Y: y}, right)
	page.Line(paper.Point{X: x + barLong, Y: y}, paper.Point{X: x + barLong + 4, Y: y}, paper.Thick)
	x += barLong + 4
	say("prongs")
	page.Line(paper.Point{X: x, Y: y}, paper.Point{X: x + 4, Y: y}, paper.Thick)
	Socket(b, paper.Point{X: x + 4, Y: y}, right)
	x += 4 + cupRadius
	say("socket")
	Mated(b, paper.Point{X: x, Y: y}, right)
	x += matedLong
	say("plug these two together")
	if drops {
		page.Line(paper.Point{X: x, Y: y - 1}, paper.Point{X: x + 9, Y: y - 1}, paper.Thick)
		for k := range 4 {
			page.Line(paper.Point{X: x + 1 + 2.3*paper.Length(k), Y: y - 1}, paper.Point{X: x + 1 + 2.3*paper.Length(k), Y: y + 1.8}, paper.Thin)
		}
		x += 9
		say("drop")
	}
	return nil
}
