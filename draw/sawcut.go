package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

// SawCut is a mark on a pipe, at half its size, with the blade to the right of it and the name on either side.
type SawCut struct{ OD, Kerf measure.Length }

// SawCutWidth is the width that the picture takes.
const SawCutWidth paper.Length = 48

// Room of a SawCut, mm on paper.
const (
	sawCutAbove paper.Length = 6.5
	sawCutBelow paper.Length = 2.5
	sawCutMost  paper.Length = 20 // thickest pipe
	sawCutBlade paper.Length = 3  // widest blade: beside it the next piece has its name
)

// thick is the pipe's width on paper: half its size, as far as there is room.
func (c SawCut) thick() paper.Length { return min(paper.Length(c.OD/2), sawCutMost) }

// Height returns the height that the picture takes.
func (c SawCut) Height() paper.Length { return sawCutAbove + c.thick() + sawCutBelow }

// Draw draws the cut across the top of the room and returns nothing: all of it finds room.
func (c SawCut) Draw(page *paper.Page, room paper.Rect) (missing []string) {
	box, _ := room.SplitTop(c.Height())
	b := place.NewBoard(page, box)
	top, foot := box.Y+sawCutAbove, box.Bottom()-sawCutBelow
	left, right, mark := box.X, box.Right(), box.Centre().X
	next := mark + min(max(1, paper.Length(c.Kerf/2)), sawCutBlade)
	at := func(x, y paper.Length) paper.Point { return paper.Point{X: x, Y: y} }

	for _, y := range []paper.Length{top, foot} {
		b.Line(at(left, y), at(mark, y), paper.Thick)
		b.Line(at(next, y), at(right-5, y), paper.Thick)
	}
	b.BreakLine(at(right-5, top), at(right-5, foot))
	b.Line(at(left, top), at(left, foot), paper.Thick)
	b.Fill(paper.Box(paper.Rect{X: mark, Y: top, W: next - mark, H: foot - top}), paper.Black)
	b.Line(at(mark, top-4.5), at(mark, foot+2), paper.Emphasis)

	b.Text(at(mark-1.8, top-1.6), paper.AtRight, "mark", paper.Strong)
	b.Text(at(next+1.8, top-1.6), paper.AtLeft, "saw", paper.Strong)
	middle := (top+foot)/2 + paper.Body.Ascent()/2
	b.Text(at((left+mark)/2, middle), paper.AtMiddle, "this piece", paper.Floor)
	b.Text(at((next+right-9)/2, middle), paper.AtMiddle, "next", paper.Floor)
	return nil
}
