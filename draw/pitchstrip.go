package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// PitchStrip is a strip to cut out and lay along the pipe, at full size whatever the units: a stroke for each turn, numbered, and a length to check the
// printer by.
type PitchStrip struct {
	Pitch measure.Length
	Check measure.Length // the length to be measured, no longer than the strip
	Words string         // what it is for
	Units measure.System
}

// Height of a strip.
const PitchStripHeight paper.Length = 25

const stripPad paper.Length = 5 // before the zero and beyond the last stroke

// Turns returns how many turns the strip shows at a width.
func (p PitchStrip) Turns(width paper.Length) int {
	return int((width - 2*stripPad) / paper.Length(p.Pitch))
}

// Draw draws the strip across the room: the strokes along its lower edge, which is laid on the pipe, the check length above.
func (p PitchStrip) Draw(page *paper.Page, room paper.Rect) {
	box := paper.Rect{X: room.X, Y: room.Y, W: room.W, H: PitchStripHeight}
	page.Stroke(paper.Box(box), paper.Hidden)
	zero, edge := box.X+stripPad, box.Bottom()
	page.Text(paper.Point{X: zero, Y: box.Y + 4.6}, paper.AtLeft, p.Words, paper.Strong.Sized(11))
	for k := range p.Turns(room.W) + 1 {
		x := zero + paper.Length(k)*paper.Length(p.Pitch)
		long := paper.Length(6)
		if k%numberEvery(p.Pitch, 9) == 0 {
			long = 9
			page.Text(paper.Point{X: x, Y: edge - long - 1}, paper.AtMiddle, fmt.Sprint(k), paper.DimSmall.Sized(11))
		}
		page.Line(paper.Point{X: x, Y: edge}, paper.Point{X: x, Y: edge - long}, paper.Thick)
	}
	y := box.Y + 8.8
	end := zero + paper.Length(p.Check)
	page.Line(paper.Point{X: zero, Y: y}, paper.Point{X: end, Y: y}, paper.Thin)
	for _, x := range []paper.Length{zero, end} {
		page.Line(paper.Point{X: x, Y: y - 1.5}, paper.Point{X: x, Y: y + 1.5}, paper.Thick)
	}
	page.Text(paper.Point{X: end + 3, Y: y + 1.3}, paper.AtLeft, "is "+p.Units.Inches(p.Check)+", or print again at 100 %", paper.Floor)
}
