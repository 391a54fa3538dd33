package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// LoadBar draws how much of a circuit's allowance is taken, both shares of it: other load hatched from the left, the lights black beside it, the whole bar 100 %.
// What is past the end is drawn past it, up to half the bar's length again.
func LoadBar(b *place.Board, r paper.Rect, other, lights float64) {
	outline := func(from, to float64) paper.Rect {
		from, to = min(from, 1.5), min(to, 1.5)
		return paper.Rect{X: r.X + r.W*paper.Length(from), Y: r.Y, W: r.W * paper.Length(to-from), H: r.H}
	}
	if lights > 0 {
		b.Fill(paper.Box(outline(other, other+lights)), paper.Black)
	}
	if other > 0 {
		o := outline(0, other)
		b.Hatch(paper.Box(o), math.Pi/4, 2)
		outlinedBox(b, o, paper.Thin)
	}
	outlinedBox(b, r, paper.Thick)
	for _, share := range []paper.Length{0.25, 0.5, 0.75} {
		x := r.X + r.W*share
		b.Line(paper.Point{X: x, Y: r.Bottom()}, paper.Point{X: x, Y: r.Bottom() + 1.2}, paper.Thin)
	}
}
