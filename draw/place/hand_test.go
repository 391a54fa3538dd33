package place

import (
	"math"
	"testing"

	"hoopwright/draw/paper"
)

// How far places lie outside a box of 6 by 2 whose long way runs 3 over and 4 up, by hand: along it, across it, off its corner, within.
func TestDistanceFromABox(t *testing.T) {
	b := box{centre: paper.Point{X: 10, Y: 20}, dir: paper.Point{X: .6, Y: .8}, w: 3, h: 1}
	for _, c := range []struct{ on, off, want float64 }{
		{0, 0, 0}, {2.9, .9, 0}, {5, 0, 2}, {-5, .5, 2}, {0, 4, 3}, {1, -1.5, .5}, {6, 5, 5}, {-6, -5, 5},
	} {
		p := b.centre.Add(b.dir.Times(c.on)).Add(b.dir.Left().Times(c.off))
		if got := b.distance(p); math.Abs(float64(got)-c.want) > 1e-9 {
			t.Errorf("%v on and %v off the middle: %v outside, want %v", c.on, c.off, got, c.want)
		}
	}
}
