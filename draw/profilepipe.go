package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/spec"
)

// Pipe under outlined on paper is one solid line of its true width, which a copy keeps; wider pipe shows its two sides. No line is under
// leastPipe.
const (
	outlined  paper.Length = 2.2
	leastPipe paper.Length = 1
)

// line returns the path of a curve moved sideways on paper, to the left of the way from foot to foot.
func (f *elevation) line(curve []arch.Point, aside paper.Length) paper.Path {
	points, headings := make([]paper.Point, len(curve)), make([]float64, len(curve))
	for i, q := range curve {
		headings[i] = float64(q.Heading)
		points[i] = f.on(q).Add(paper.Polar(1, headings[i]).Left().Times(float64(aside)))
	}
	return paper.Smooth(points, headings)
}

// pipe draws the arch as raised at its true width.
func (f *elevation) pipe() {
	k := f.Kind
	wide := f.pipeWide()
	if wide < outlined {
		f.Stroke(f.line(k.Curve, 0), paper.Pen{Width: max(wide, leastPipe)})
		return
	}
	for _, aside := range [2]paper.Length{wide / 2, -wide / 2} {
		f.Stroke(f.line(k.Curve, aside), paper.Thick)
	}
	for _, end := range [2]arch.Point{k.Curve[0], k.Curve[len(k.Curve)-1]} {
		side := paper.Polar(wide/2, float64(end.Heading)).Left()
		f.Line(f.on(end).Add(side), f.on(end).Sub(side), paper.Thick)
	}
}

// joints draws couplings and crown fitting as sleeves over the pipe, as long as they are and wide enough to be seen.
func (f *elevation) joints() {
	k := f.Kind
	half := max(f.pipeWide()/2+f.scale.Length(float64(k.Spec.Pipe.Wall)), max(f.pipeWide(), leastPipe)/2+0.6)
	for _, j := range k.Joints() {
		from, to := f.on(k.PointAt(j.From)), f.on(k.PointAt(j.To))
		side := to.Sub(from).Unit().Left().Times(float64(half))
		sleeve := paper.Polygon(from.Add(side), to.Add(side), to.Sub(side), from.Sub(side))
		f.Fill(sleeve, paper.White)
		f.Stroke(sleeve, paper.Thick)
	}
}

// stakes draws the stakes: the top of what is in the ground, broken off, for that is not measured here, and inside the pipe up to their tops.
func (f *elevation) stakes() {
	for _, side := range [2]spec.Side{spec.Left, spec.Right} {
		foot := f.foot(side)
		way := -math.Pi/2 + float64(f.Kind.Spec.Stake.Lean)
		if side == spec.Right {
			way = -math.Pi/2 - float64(f.Kind.Spec.Stake.Lean)
		}
		f.Line(foot, foot.Add(paper.Polar(stakeDrop, way)), paper.HiddenBar)
		if f.pipeWide() < outlined {
			continue
		}
		if inside := f.sleeve(side); len(inside) > 1 {
			f.Stroke(f.line(inside, 0), paper.Hidden)
		}
	}
}

// sleeve returns the stretch of the curve that has a stake in it, from the ground up.
func (f *elevation) sleeve(side spec.Side) []arch.Point {
	k := f.Kind
	top := min(k.Spec.Stake.Showing(), k.Length/2)
	var part []arch.Point
	for _, q := range k.Curve {
		if side == spec.Left && q.Tape <= top || side == spec.Right && q.Tape >= k.Length-top {
			part = append(part, q)
		}
	}
	return part
}
