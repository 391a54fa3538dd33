package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
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

// pipe draws the arch as raised at its true width, and at season's end where that differs to the eye.
func (f *elevation) pipe() {
	k := f.Kind
	if f.ages(f.scale) {
		f.Stroke(f.line(k.Season, 0), paper.Other)
	}
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

// stakes draws the bars: what is in the ground, and inside the pipe up to their tops.
func (f *elevation) stakes() {
	for _, side := range [2]spec.Side{spec.Left, spec.Right} {
		foot, tip := f.foot(side), f.tip(side)
		f.Line(foot, tip, paper.HiddenBar)
		if f.pipeWide() < outlined {
			continue
		}
		if inside := f.sleeve(side); len(inside) > 1 {
			f.Stroke(f.line(inside, 0), paper.Hidden)
		}
	}
}

// foot returns where a leg meets the ground.
func (f *elevation) foot(side spec.Side) paper.Point {
	if side == spec.Right {
		return f.at(f.Kind.Span/2, f.Kind.RightGround)
	}
	return f.at(-f.Kind.Span/2, f.Kind.LeftGround)
}

// tip returns where a stake ends in the ground; a stake that leans out at its top has its tip toward the opening.
func (f *elevation) tip(side spec.Side) paper.Point {
	stake := f.Kind.Spec.Stake
	angle := -math.Pi/2 + float64(stake.Lean)
	if side == spec.Right {
		angle = -math.Pi/2 - float64(stake.Lean)
	}
	return f.foot(side).Add(paper.Polar(f.scale.Length(float64(stake.Depth)), angle))
}

// sleeve returns the stretch of the curve that has a bar in it, from the ground up.
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

// groundLine draws the ground through both feet, past them to the ladders.
func (f *elevation) groundLine() {
	from, to := f.left, f.edge
	level := func(x paper.Length) paper.Point {
		real := measure.Length(float64(x-f.origin.X) * f.scale.Ratio)
		return f.at(real, f.ground(real))
	}
	f.Ground(level(max(from, f.room.X)), level(min(to, f.room.Right())))
}
