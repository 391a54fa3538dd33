package draw

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// WrapDetail draws some turns of a wrap to scale, the foot end below: the pipe's outline, the wire in front of it at its true pitch, its bulbs, and the pitch as a dimension. Not mirrored the wire
// in front climbs to the right, a right-handed helix. The lettering of the pitch is large.
type WrapDetail struct {
	Scale  paper.Scale
	Pipe   measure.Length // outside diameter
	Wrap   lights.Wrap
	Mirror bool
	Units  measure.System
}

// Wide returns how much of the page's width the detail takes with its dimension, whose number stands upright, counted.
func (d WrapDetail) Wide() paper.Length {
	return d.Scale.Length(float64(d.Pipe+2*d.Wrap.Label.Wire)) + dimensionOff + pitchLettering.Ascent() + 8
}

// pitchLettering is the size of the one number that a wrapper works by.
var pitchLettering = paper.Lettering{Face: paper.Dimension.Face, Size: 20, Stacked: true}

const dimensionOff paper.Length = 7 // from the wire to the pitch's dimension line

func (d WrapDetail) pitch() string { return d.Units.Inches(d.Wrap.Pitch) }

// Draw draws the detail at the room's left edge, over the room's whole height.
func (d WrapDetail) Draw(b *place.Board, room paper.Rect) {
	wire := d.Scale.Length(float64(d.Wrap.Label.Wire))
	half := d.Scale.Length(float64(d.Pipe)) / 2
	radius := half + wire/2
	axis := room.X + radius + wire/2 + 1
	for _, x := range []paper.Length{axis - half, axis + half} {
		b.Line(paper.Point{X: x, Y: room.Y}, paper.Point{X: x, Y: room.Bottom()}, paper.Thick)
	}
	pitch := d.Scale.Length(float64(d.Wrap.Pitch))
	turns := int(float64((room.H - wire) / pitch))
	side := 1.0
	if d.Mirror {
		side = -1
	}
	// Turn k's wire in front climbs half a pitch from one edge of the pipe to the other.
	foot := room.Bottom() - (room.H-paper.Length(turns)*pitch)/2
	front := func(k int, t float64) paper.Point {
		return paper.Point{X: axis - radius*paper.Length(side*math.Cos(math.Pi*t)), Y: foot - pitch*paper.Length(float64(k)+t/2)}
	}
	for k := range turns {
		var pts []paper.Point
		const pieces = 24
		for i := range pieces + 1 {
			pts = append(pts, front(k, float64(i)/pieces))
		}
		path := paper.Polyline(pts...)
		b.Stroke(path, paper.Pen{Width: wire})
		b.Stroke(path, paper.Pen{Width: max(wire-1.0, wire/3), Colour: paper.White})
	}
	d.bulbs(b, turns, front, wire)
	b.BreakLine(paper.Point{X: axis - half - 3, Y: room.Y}, paper.Point{X: axis + half + 3, Y: room.Y})
	b.BreakLine(paper.Point{X: axis - half - 3, Y: room.Bottom()}, paper.Point{X: axis + half + 3, Y: room.Bottom()})
	if turns > 1 {
		k := (turns - 1) / 2
		end := 1.0
		if d.Mirror {
			end = 0
		}
		lo, hi := front(k, end), front(k+1, end)
		lo.X, hi.X = lo.X+wire/2, hi.X+wire/2
		b.Dimension(place.Dimension{From: lo, To: hi, Offset: -dimensionOff, Text: d.pitch(), Lettering: pitchLettering, Ends: place.Arrows})
	}
}

// bulbs draws the bulbs that lie in front, as far apart along the wire as they are.
func (d WrapDetail) bulbs(b *place.Board, turns int, front func(int, float64) paper.Point, wire paper.Length) {
	s := d.Wrap.Label
	if s.Bulbs < 2 {
		return
	}
	gap := float64(s.Length-s.Lead-s.Tail) / float64(s.Bulbs-1)
	turn := math.Hypot(float64(d.Wrap.Pitch), math.Pi*float64(d.Pipe+s.Wire))
	if gap < turn/12 || gap <= 0 {
		return // closer than can be drawn apart
	}
	for along := gap / 3; along < turn*float64(turns); along += gap {
		k := math.Floor(along / turn)
		if t := 2 * (along/turn - k); t > 0.08 && t < 0.92 {
			b.Fill(paper.Circle(front(int(k), t), max(0.6*wire, 0.9)), paper.Black)
		}
	}
}

// WrapRun draws the whole wrapped length to scale as a line, its start at the foot of the room: the ends as what they are, the bare ends, and the flags with the bulb that must come there.
type WrapRun struct {
	Scale      paper.Scale
	Wrap       lights.Wrap
	Start, End string // what is at its two ends: foot, crown
	Units      measure.System
}

// Draw draws the length up the room's left part.
func (r WrapRun) Draw(b *place.Board, room paper.Rect) {
	const x0 = 12
	x := room.X + x0
	up := paper.Point{Y: -1}
	foot := room.Bottom() - 12
	at := func(tape measure.Length) paper.Point {
		return paper.Point{X: x, Y: foot - r.Scale.Length(float64(tape))}
	}
	bottom, top := at(0), at(r.Wrap.PipeEnd)
	from, to := r.Wrap.Wound()
	b.Line(bottom, at(from), paper.Thick)
	b.Line(at(to), top, paper.Thick)
	b.Line(at(from), at(to), paper.Pen{Width: 2.6})
	side := paper.Point{X: 6}
	for _, p := range []paper.Point{bottom, top} {
		b.Line(p.Sub(side), p.Add(side), paper.Thin)
	}
	prongs, socket := at(from), at(to)
	if r.Wrap.Crown {
		prongs, socket = socket, prongs
	}
	left := paper.Point{X: -1}
	for i, p := range []paper.Point{prongs, socket} {
		out := p.Add(left.Times(4))
		b.Line(p, out, paper.Thick)
		if i == 0 {
			Prongs(b, out, left)
		} else {
			Socket(b, out, left)
		}
		b.Keep(paper.Rect{X: out.X - 4, Y: out.Y - 2, W: 4, H: 4})
	}
	words := func(p paper.Point, tick bool, first, second string) {
		if tick {
			b.Line(p.Add(paper.Point{X: -1.3}), p.Add(paper.Point{X: 8}), paper.Emphasis)
		}
		if r.crowded() {
			up, _ := paper.DimSmall.Extent("0")
			b.Text(p.Add(paper.Point{X: 10, Y: up / 2}), paper.AtLeft, first, paper.DimSmall)
			b.Text(p.Add(paper.Point{X: 12 + paper.DimSmall.Width(first), Y: up / 2}), paper.AtLeft, second, paper.Floor)
			return
		}
		b.Text(p.Add(paper.Point{X: 10, Y: -0.6}), paper.AtLeft, first, paper.DimSmall)
		b.Text(p.Add(paper.Point{X: 10, Y: 5}), paper.AtLeft, second, paper.Body)
	}
	for _, f := range r.Wrap.Flags {
		words(at(f.Tape), true, r.Units.Inches(f.Tape), r.flagWords(f))
	}
	ends := wrapEnds(r.Wrap, r.Units, r.crowded())
	words(top, false, r.End, ends[1])
	words(bottom.Add(up.Times(0.5)), false, r.Start+", 0", ends[0])
}

// crowded reports whether flags stand too close on paper for two lines of words each.
func (r WrapRun) crowded() bool {
	const twoLines paper.Length = 11
	marks := []measure.Length{0, r.Wrap.PipeEnd}
	for _, f := range r.Wrap.Flags {
		marks = append(marks, f.Tape)
	}
	slices.Sort(marks)
	for i := 1; i < len(marks); i++ {
		if r.Scale.Length(float64(marks[i]-marks[i-1])) < twoLines {
			return true
		}
	}
	return false
}

// shortOfEnd is how far from its pipe's end a wrap may stop to be measured from there, by hand and not by a long tape.
const shortOfEnd = 4 * measure.Inch

// WrapEnds says what comes at a wrap's start and end and where: by the tape from the pipe's zero, or where it stops close to the pipe's end, from that.
func WrapEnds(w lights.Wrap, units measure.System) [2]string { return wrapEnds(w, units, false) }

// wrapEnds is WrapEnds; in short it leaves out where an end comes that is at the pipe's zero or its end.
func wrapEnds(w lights.Wrap, units measure.System, short bool) [2]string {
	from, to := w.Wound()
	words := [2]string{"prongs", "socket"}
	if w.Crown {
		words = [2]string{"socket", "prongs"}
	}
	if !short || from >= units.Grid() {
		words[0] += " at " + units.Inches(from)
	}
	switch before := w.PipeEnd - to; {
	case before < units.Grid() && short:
	case before < units.Grid():
		words[1] += " at the end"
	case before < shortOfEnd:
		words[1] += " " + units.Inches(before) + " before it"
	default:
		words[1] += " at " + units.Inches(to)
	}
	return words
}

// flagWords says which bulb comes to a flag, and of which string where there are more than one.
func (r WrapRun) flagWords(f lights.Flag) string {
	if len(r.Wrap.Strings) < 2 {
		return fmt.Sprintf("bulb %d", f.Bulb)
	}
	for i, s := range r.Wrap.Strings {
		if s == f.String {
			return fmt.Sprintf("bulb %d of string %d", f.Bulb, i+1)
		}
	}
	return fmt.Sprintf("bulb %d", f.Bulb)
}

// High returns the height that the drawing takes at its scale.
func (r WrapRun) High() paper.Length { return r.Scale.Length(float64(r.Wrap.PipeEnd)) + 20 }
