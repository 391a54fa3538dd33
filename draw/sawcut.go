package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

// SawCut is a mark on a pipe with the blade to the right of it.
type SawCut struct {
	OD, Kerf measure.Length
	Units    measure.System
	Scale    paper.Scale
}

// Room above and below the pipe of a SawCut for words.
const (
	sawCutAbove paper.Length = 8.5
	sawCutBelow paper.Length = 10
)

// SawCutScale returns the scale at which the pipe is 30 mm thick at most: full size for what is commonly bent.
func SawCutScale(series []paper.Scale, od measure.Length) paper.Scale {
	return paper.Fit(series, 0, float64(od), paper.Rect{H: 30})
}

// Height returns the height that the picture takes.
func (c SawCut) Height() paper.Length {
	return sawCutAbove + c.Scale.Length(float64(c.OD)) + sawCutBelow
}

// Draw draws the cut across the top of the room.
func (c SawCut) Draw(page *paper.Page, room paper.Rect) {
	box, _ := room.SplitTop(c.Height())
	b := place.NewBoard(page, box)
	top, foot := box.Y+sawCutAbove, box.Bottom()-sawCutBelow
	left, right, mark := box.X, box.Right(), box.Centre().X
	next := mark + c.Scale.Length(float64(c.Kerf))
	at := func(x, y paper.Length) paper.Point { return paper.Point{X: x, Y: y} }

	for _, y := range []paper.Length{top, foot} {
		b.Line(at(left+2, y), at(mark, y), paper.Thick)
		b.Line(at(next, y), at(right-5, y), paper.Thick)
	}
	b.BreakLine(at(right-5, top), at(right-5, foot))
	b.Line(at(left+2, top), at(left+2, foot), paper.Thick)
	b.Fill(paper.Box(paper.Rect{X: mark, Y: top, W: next - mark, H: foot - top}), paper.Black)
	b.Line(at(mark, top-5), at(mark, foot+2), paper.Emphasis)

	b.Text(at(mark-2.5, top-2.2), paper.AtRight, "the mark", paper.Strong)
	b.Text(at(next+2.5, top-2.2), paper.AtLeft, "the blade, right of it: "+c.Units.Cut(c.Kerf), paper.Strong)
	middle := (top+foot)/2 + paper.Body.Ascent()/2
	b.Text(at((left+mark)/2, middle), paper.AtMiddle, "this piece keeps the mark", paper.Body)
	b.Text(at((next+right)/2, middle), paper.AtMiddle, "next piece, or offcut", paper.Body)
	b.Arrow(at(left+2, foot+4), at(mark, foot+4), paper.Thin)
	b.Text(at(left+2, foot+9), paper.AtLeft, "tape, from the stick's left end", paper.Floor)
	b.Text(at(right, foot+9), paper.AtRight, "across: "+c.Scale.Words, paper.Floor)
}
