package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// spot is a point in space: the site plan's x and y, and the height above its datum.
type spot struct{ X, Y, Z measure.Length }

// towards returns the spot a share t of the way to q.
func (p spot) towards(q spot, t float64) spot {
	part := measure.Length(t)
	return spot{p.X + (q.X-p.X)*part, p.Y + (q.Y-p.Y)*part, p.Z + (q.Z-p.Z)*part}
}

// below returns the spot straight under p.
func (p spot) below(d measure.Length) spot { p.Z -= d; return p }

// sight is a one-point perspective: an eye that looks level along a heading onto a picture plane square to it. A length
// at a depth is drawn focal/depth times as long, so lines along the heading run to one vanishing point at eye height.
type sight struct {
	eye      spot
	heading  measure.Angle // 0 along +y, clockwise positive
	focal    float64       // millimetres of paper for a thing as wide as it is far
	vanish   paper.Point   // where the heading meets the paper
	nearest  float64       // depth before which nothing is drawn, in millimetres of ground
	straight float64       // depth at which the tunnel begins: thickness and dots are judged against it
}

// seen returns how far right, above and ahead of the eye a spot is.
func (s sight) seen(p spot) (right, up, depth float64) {
	sin, cos := math.Sincos(float64(s.heading))
	dx, dy := float64(p.X-s.eye.X), float64(p.Y-s.eye.Y)
	return dx*cos - dy*sin, float64(p.Z - s.eye.Z), dx*sin + dy*cos
}

// scale returns the millimetres of paper that a millimetre of ground takes at a spot's depth.
func (s sight) scale(p spot) float64 {
	_, _, depth := s.seen(p)
	return s.focal / max(depth, s.nearest)
}

// share returns the scale at a spot as a share of that at the tunnel's beginning: 1 there, less beyond.
func (s sight) share(p spot) float64 { return s.scale(p) * s.straight / s.focal }

// at returns where a spot is on paper, and false where it is too near the eye or behind it.
func (s sight) at(p spot) (paper.Point, bool) {
	right, up, depth := s.seen(p)
	if depth < s.nearest {
		return paper.Point{}, false
	}
	f := s.focal / depth
	return s.vanish.Add(paper.Point{X: paper.Length(right * f), Y: paper.Length(-up * f)}), true
}

// line returns the spots of a line on paper, cut off where it comes too near the eye.
func (s sight) line(spots []spot) []paper.Point {
	var points []paper.Point
	for i, p := range spots {
		q, ok := s.at(p)
		switch {
		case ok:
			if i > 0 && len(points) == 0 {
				points = append(points, s.enters(p, spots[i-1]))
			}
			points = append(points, q)
		case len(points) > 0:
			return append(points, s.enters(spots[i-1], p))
		}
	}
	return points
}

// enters returns where the way from a spot in sight to one too near leaves the sight.
func (s sight) enters(in, out spot) paper.Point {
	_, _, a := s.seen(in)
	_, _, b := s.seen(out)
	q, _ := s.at(in.towards(out, (a-s.nearest)/(a-b)*(1-1e-9)))
	return q
}
