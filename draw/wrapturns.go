package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// WrapTurns draws some turns of a wrap to scale on a lying pipe, its foot or zero at the left: the pipe's outline, the wire in front of it at its true pitch. Not mirrored it is a right-handed helix, as a screw's thread.
type WrapTurns struct {
	Scale  paper.Scale
	Pipe   measure.Length // outside diameter
	Wrap   lights.Wrap
	Mirror bool
}

// High is the height it takes.
func (d WrapTurns) High() paper.Length {
	return d.Scale.Length(float64(d.Pipe+2*d.Wrap.Label.Wire)) + 1
}

// Draw draws it over the room's whole width.
func (d WrapTurns) Draw(page *paper.Page, room paper.Rect) {
	b := place.NewBoard(page, room)
	wire := d.Scale.Length(float64(d.Wrap.Label.Wire))
	half := d.Scale.Length(float64(d.Pipe)) / 2
	radius := half + wire/2
	axis := room.Y + radius + wire/2 + 0.5
	left, right := room.X+1.5, room.Right()-1.5
	for _, y := range []paper.Length{axis - half, axis + half} {
		b.Line(paper.Point{X: left, Y: y}, paper.Point{X: right, Y: y}, paper.Thick)
	}
	pitch := d.Scale.Length(float64(d.Wrap.Pitch))
	turns := int(float64((right - left - wire) / pitch))
	side := 1.0
	if d.Mirror {
		side = -1
	}
	// Turn k's wire in front goes half a pitch along, from one edge of the pipe to the other.
	start := left + (right-left-paper.Length(turns)*pitch)/2
	front := func(k int, t float64) paper.Point {
		return paper.Point{X: start + pitch*paper.Length(float64(k)+t/2), Y: axis - radius*paper.Length(side*math.Cos(math.Pi*t))}
	}
	for k := range turns {
		var pts []paper.Point
		const pieces = 24
		for i := range pieces + 1 {
			pts = append(pts, front(k, float64(i)/pieces))
		}
		path := paper.Polyline(pts...)
		b.Stroke(path, paper.Pen{Width: max(wire, 1)})
		b.Stroke(path, paper.Pen{Width: max(wire-0.7, 0.3), Colour: paper.White})
	}
}
