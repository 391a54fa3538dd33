package draw

import (
	"fmt"
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// EdgeStrip is a full-size strip along the outer edge of a sheet, to be folded back on its line and laid along the pipe: a stroke for each turn, numbered from its zero.
type EdgeStrip struct {
	Pitch measure.Length
	Words string // what it is for
	Left  bool   // the sheet's outer edge is at the left
}

// EdgeStripWide is the room that a strip takes of a side's width.
const EdgeStripWide paper.Length = 17

const edgeStripEnds paper.Length = 3 // free at both ends

// Turns returns how many turns a strip of a length shows.
func (e EdgeStrip) Turns(long paper.Length) int {
	return int((long - 2*edgeStripEnds) / paper.Length(e.Pitch))
}

// Draw draws it from the foot of the room up. The fold is the room's outer side.
func (e EdgeStrip) Draw(page *paper.Page, room paper.Rect) {
	// Lettering is turned to read upward, so it stands at the left of its baseline.
	fold, in, figures, words := room.Right(), paper.Length(-1), room.Right()-5.8, room.Right()-11.6
	if e.Left {
		fold, in, figures, words = room.X, 1, room.X+9.2, room.X+15
	}
	page.Line(paper.Point{X: fold, Y: room.Y}, paper.Point{X: fold, Y: room.Bottom()}, paper.Hidden)
	zero := room.Bottom() - edgeStripEnds
	for k := range e.Turns(room.H) + 1 {
		y := zero - paper.Length(k)*paper.Length(e.Pitch)
		page.Line(paper.Point{X: fold, Y: y}, paper.Point{X: fold + in*5, Y: y}, paper.Thick)
		if k%numberEvery(e.Pitch, 8) == 0 {
			page.TurnedText(paper.Point{X: figures, Y: y}, math.Pi/2, fmt.Sprint(k), paper.CellSmall)
		}
	}
	page.TurnedText(paper.Point{X: words, Y: room.Y + room.H/2}, math.Pi/2, e.Words, paper.Floor)
}

// numberEvery is how many turns of a pitch lie between numbers that are so far apart at least.
func numberEvery(pitch measure.Length, apart paper.Length) int {
	return max(1, int(math.Ceil(float64(apart)/float64(pitch))))
}
