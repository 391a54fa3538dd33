package draw

import (
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/spec"
)

// yard draws what is on, in and over the ground of a picture to scale.
type yard struct {
	b    *place.Board
	m    siteMap
	room paper.Rect
}

// path draws an open line inside the picture, round the texts that already stand.
func (y yard) path(line []paper.Point, pen paper.Pen) {
	for i := 1; i < len(line); i++ {
		if p, q, ok := cropSegment(line[i-1], line[i], y.room); ok {
			y.b.LineRound(p, q, pen)
		}
	}
}

// rims draws the outlines of features.
func (y yard) rims(features []spec.Feature, pen paper.Pen) {
	for _, f := range features {
		rim := y.m.outline(f)
		y.path(append(rim[:len(rim):len(rim)], rim[0]), pen)
	}
}

// longest is the longest stretch of a line that is well inside the picture, else at its edge; none where no part is.
func (y yard) longest(line []paper.Point) (p, q paper.Point, ok bool) {
	for _, in := range []paper.Length{4, 0.3} {
		for i := 1; i < len(line) && !ok; i++ {
			if a, b, seen := cropSegment(line[i-1], line[i], y.room.Inset(in)); seen && b.Sub(a).Long() > q.Sub(p).Long() {
				p, q = a, b
			}
		}
		ok = p != q
	}
	return p, q, ok
}

// named sets a name with an arrow to a stretch of a line, at the first of some shares of it where that finds a place, and reports whether it does.
func (y yard) named(p, q paper.Point, name place.Label, shares ...float64) bool {
	name.Leader, name.Pointed = place.Arrow, true
	return slices.ContainsFunc(shares, func(share float64) bool {
		name.At = p.Add(q.Sub(p).Times(share))
		return y.b.Label(name)
	})
}

// How hard ground is hatched.
const (
	hardAngle              = math.Pi / 4
	hardApart paper.Length = 3
)

// hardGround hatches hard features. A hatch keeps off every text that stands.
func (y yard) hardGround(features []spec.Feature) {
	for _, f := range features {
		if seen := cropOutline(y.m.outline(f), y.room); f.Hard && seen != nil {
			y.b.Hatch(paper.Polygon(seen...), hardAngle, hardApart)
		}
	}
}

// band hatches the band of a line.
func (y yard) band(l spec.Buried, angle float64, apart paper.Length) {
	sides := y.m.band(l)
	for i := 1; i < len(sides[0]); i++ {
		if piece := cropOutline([]paper.Point{sides[0][i-1], sides[0][i], sides[1][i], sides[1][i-1]}, y.room); piece != nil {
			y.b.Hatch(paper.Polygon(piece...), angle, apart)
		}
	}
}
