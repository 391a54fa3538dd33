package draw

import (
	"fmt"
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// showing draws the part of the left stake above the ground, with its number large.
func (f *elevation) showing() {
	k := f.Kind
	part := f.sleeve(spec.Left)
	if len(part) < 2 {
		return
	}
	top := f.on(part[len(part)-1])
	foot := f.foot(spec.Left)
	x := max(foot.X, top.X) + 6
	a, b := paper.Point{X: x, Y: foot.Y}, paper.Point{X: x, Y: top.Y}
	f.Line(paper.Point{X: top.X + f.pipeWide()/2 + 1, Y: top.Y}, paper.Point{X: x + 2, Y: top.Y}, paper.Thin)
	f.upright(a, b)
	number := f.Units.Inches(k.Spec.Stake.Showing())
	l := paper.StakeName
	up, _ := l.Extent(number)
	rows := [2]paper.Point{{X: x + 2, Y: -1}, {X: x + 2, Y: 0.5 + up}} // of the baselines, from where the two meet
	for share := range 9 {
		y := a.Y + (b.Y-a.Y)*[9]paper.Length{.5, .4, .6, .3, .7, .2, .8, .1, .9}[share]
		word, figure := rows[0].Add(paper.Point{X: wordLettering.Width("showing") / 2, Y: y}), rows[1].Add(paper.Point{X: l.Width(number) / 2, Y: y})
		if f.FreeText(word, 0, "showing", wordLettering) && f.FreeText(figure, 0, number, l) {
			f.TurnedText(word, 0, "showing", wordLettering)
			f.TurnedText(figure, 0, number, l)
			return
		}
	}
	f.Label(place.Label{At: a.Add(b).Times(0.5), Text: "showing " + number, Lettering: paper.Dimension, Toward: paper.Point{X: 1}, Leader: place.Bare})
}

// below writes what is under the ground: span and depth.
func (f *elevation) below() {
	k := f.Kind
	left, right := f.foot(spec.Left), f.foot(spec.Right)
	low := max(left.Y, right.Y)
	span := f.Units.Inches(k.Span)
	if f.Units == measure.Imperial && k.Span >= measure.Foot {
		span = fmt.Sprintf("%s (%s)", span, f.Units.Tape(k.Span))
	}
	y := low + spanRow
	f.between(paper.Point{X: left.X, Y: y}, paper.Point{X: right.X, Y: y}, "span "+span, "stake to stake", " at the ground")

	tip := f.tip(spec.Right)
	x := min(right.X, tip.X) - 5
	f.upright(paper.Point{X: x, Y: tip.Y}, paper.Point{X: x, Y: right.Y})
	y = low + lastRow
	depth := f.Units.Inches(k.Spec.Stake.Depth) + " deep"
	if tip.Y < y-6 { // too short to reach the last line
		f.Label(place.Label{At: paper.Point{X: x, Y: (right.Y + tip.Y) / 2}, Text: depth, Lettering: paper.Dimension, Toward: paper.Point{X: -1, Y: 1}, Leader: place.Bare})
	} else {
		f.Text(paper.Point{X: x - 2, Y: y}, paper.AtRight, depth, paper.Dimension)
	}
}

// The lines under the ground, from the lower foot: the span's dimension line, and the foot of the last line of words.
const (
	spanRow     paper.Length = 12
	lastRow     paper.Length = 24.5
	underground paper.Length = lastRow + 2
)

// leastThrust is the force in N that is worth an arrow.
const leastThrust = 0.05

// feet draws the names of the stakes and the push on each.
func (f *elevation) feet() {
	k := f.Kind
	out := paper.Length(1)
	if k.Thrust < 0 {
		out = -1
	}
	for _, side := range [2]spec.Side{spec.Left, spec.Right} {
		sign := paper.Length(-1)
		if side == spec.Right {
			sign = 1
		}
		foot := f.foot(side)
		up, _ := paper.StakeName.Extent("L")
		for _, aside := range [2]paper.Length{6, -6} { // outside, or where the crown's words are, inside
			if p := (paper.Point{X: foot.X + sign*aside, Y: foot.Y + 6.5 + up}); f.FreeText(p, 0, side.Letter(), paper.StakeName) {
				f.Text(p, paper.AtMiddle, side.Letter(), paper.StakeName)
				break
			}
		}
		if math.Abs(float64(k.Thrust)) < leastThrust {
			continue
		}
		// Just under the ground's hatching, where nothing else is.
		y := foot.Y + 4.3
		near, far := paper.Point{X: foot.X + sign*1.2, Y: y}, paper.Point{X: foot.X + sign*10, Y: y}
		if !f.Free(paper.Rect{X: min(near.X+sign, far.X), Y: y - 0.6, W: 7.8, H: 1.2}) {
			continue // the words of a low arch's crown
		}
		if out < 0 {
			near, far = far, near
		}
		f.Arrow(near, far, paper.Thick)
	}
}
