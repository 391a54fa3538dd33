package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/spec"
)

// leastPipe is the least width of pipe on paper, which a copy keeps.
const leastPipe paper.Length = 1

// pipe draws the arch as raised at its true width.
func (f *elevation) pipe() {
	curve := f.Kind.Curve
	points, headings := make([]paper.Point, len(curve)), make([]float64, len(curve))
	for i, q := range curve {
		points[i], headings[i] = f.on(q), float64(q.Heading)
	}
	f.Stroke(paper.Smooth(points, headings), paper.Pen{Width: max(f.pipeWide(), leastPipe)})
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

// boardHigh is how high the board of a weighted base is on paper: from the ground to where heights are taken from.
const boardHigh paper.Length = 1.2

// stakes draws the top of what is in the ground, broken off, for that is not measured here; a weighted base as a board that the leg stands on.
func (f *elevation) stakes() {
	for _, side := range [2]spec.Side{spec.Left, spec.Right} {
		foot := f.foot(side)
		if base := f.Kind.Spec.Foot; base != nil {
			half := f.scale.Length(float64(base.Width / 2))
			f.Stroke(paper.Box(paper.Rect{X: foot.X - half, Y: foot.Y, W: 2 * half, H: boardHigh}), paper.Thick)
			continue
		}
		lean := float64(f.Kind.Spec.Stake.Lean)
		if side == spec.Right {
			lean = -lean
		}
		f.Line(foot, foot.Add(paper.Polar(stakeDrop, lean-math.Pi/2)), paper.HiddenBar)
	}
}
