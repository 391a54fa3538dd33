package power

import (
	"math"

	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// site answers how far things are apart as a cord lies.
type site struct {
	Input
	feet [2][]ground.Stake   // by side, arch 1 first
	run  [2][]measure.Length // distance of each foot along its wall from arch 1's, level differences in
	offs []obstacle          // what cords keep off
}

// spot is where something is plugged in: a place on a wall's arch, reached from its foot by going along and up.
type spot struct {
	wall  spec.Side
	arch  int            // from 0
	climb measure.Length // from the foot of that arch: level distance and height
	end   lights.End
}

// newSite measures the walls.
func newSite(in Input) *site {
	s := &site{Input: in, offs: obstacles(in.Spec)}
	for _, k := range in.Ground.Stakes {
		if !k.Guy {
			s.feet[k.Side] = append(s.feet[k.Side], k)
		}
	}
	for side, feet := range s.feet {
		var along measure.Length
		for i, f := range feet {
			if i > 0 {
				along += distance(footEnd(feet[i-1]), footEnd(f))
			}
			s.run[side] = append(s.run[side], along)
		}
	}
	return s
}

// footEnd returns the place of a stake's ground point.
func footEnd(k ground.Stake) lights.End {
	return lights.End{X: k.X, Y: k.Y, Z: k.Ground, Arch: k.Arch, Side: k.Side}
}

// spot returns the place of a string's end as fed along a wall. A climb is taken square, level and then up, which is never
// shorter than along the pipe's slope.
func (s *site) spot(e lights.End, side spec.Side) spot {
	i := max(0, min(e.Arch-1, len(s.feet[side])-1))
	foot := s.feet[side][i]
	return spot{wall: side, arch: i, end: e, climb: level(at(e), foot.At()) + max(0, e.Z-foot.Ground)}
}

// between returns how a cord lies from one spot to another on the same wall: on one leg straight to it, else down, along outside the
// feet, and up.
func (s *site) between(a, b spot) measure.Length {
	if a.arch == b.arch {
		return level(at(a.end), at(b.end)) + measure.Length(math.Abs(float64(a.end.Z-b.end.Z)))
	}
	run := s.run[a.wall]
	return a.climb + measure.Length(math.Abs(float64(run[a.arch]-run[b.arch]))) + b.climb
}

// path returns where the cord of between lies on the plan.
func (s *site) path(a, b spot) []spec.Point {
	out := []spec.Point{at(a.end)}
	if a.arch != b.arch {
		out = append(out, s.along(a.wall, a.arch, b.arch)...)
	}
	return append(out, at(b.end))
}

// along returns the ground points of a wall from one arch to another, both included.
func (s *site) along(side spec.Side, from, to int) []spec.Point {
	step := 1
	if to < from {
		step = -1
	}
	var out []spec.Point
	for i := from; ; i += step {
		out = append(out, s.feet[side][i].At())
		if i == to {
			return out
		}
	}
}

// overhead reports whether an end hangs above the opening.
func (s *site) overhead(e lights.End) bool {
	i := max(0, min(e.Arch-1, len(s.feet[spec.Left])-1))
	line := (s.feet[spec.Left][i].Ground + s.feet[spec.Right][i].Ground) / 2
	return e.Z-line >= s.Spec.Tunnel.OpeningHeight
}

// approach is how a cord gets from an outlet to a wall.
type approach struct {
	lies measure.Length
	arch int // whose foot it comes to, from 0
	path []spec.Point
	over bool // by way of arch 1, to the far wall
}

// approach returns the way from an outlet to a wall: straight to the nearest foot on the outlet's own side, around what
// cords keep off; to the other side from there along to arch 1 and across.
func (s *site) approach(o spec.Outlet, side spec.Side) approach {
	own := s.sideOf(o.At)
	near := 0
	for i, f := range s.feet[own] {
		if level(o.At, f.At()) < level(o.At, s.feet[own][near].At()) {
			near = i
		}
	}
	path := around(o.At, s.feet[own][near].At(), s.offs)
	out := approach{arch: near, path: path}
	for i := 1; i < len(path); i++ {
		out.lies += level(path[i-1], path[i])
	}
	if own == side {
		return out
	}
	out.over = true
	out.lies += s.run[own][near] + s.crossing()
	if near > 0 {
		out.path = append(out.path, s.along(own, near-1, 0)...)
	}
	out.path = append(out.path, s.feet[side][0].At())
	out.arch = 0
	return out
}

// crossing returns how long a cord past the opening at arch 1 is: under a cover along the ground, or up one leg, along the
// crown and down the other, taken square, which is never shorter than the pipe of an arch that does not bulge beyond its feet.
func (s *site) crossing() measure.Length {
	span := level(s.feet[spec.Left][0].At(), s.feet[spec.Right][0].At())
	if s.Spec.Site.Cords.Cover {
		return span
	}
	return 2*s.Crowns[0] + span
}

// fromOutlet returns how a cord lies from an outlet by an approach to a spot.
func (s *site) fromOutlet(a approach, p spot) measure.Length {
	run := s.run[p.wall]
	return a.lies + measure.Length(math.Abs(float64(run[a.arch]-run[p.arch]))) + p.climb
}

// pathFrom returns where the cord of fromOutlet lies on the plan.
func (s *site) pathFrom(a approach, p spot) []spec.Point {
	out := append([]spec.Point{}, a.path...)
	out = append(out, s.along(p.wall, a.arch, p.arch)[1:]...)
	return append(out, at(p.end))
}

// sideOf returns the side of the walk's centreline, drawn on straight at both ends, that a point lies on.
func (s *site) sideOf(p spec.Point) spec.Side {
	best, side := math.Inf(1), spec.Left
	for _, k := range s.Ground.Stations {
		d := float64(level(p, k.At))
		if d < best {
			best = d
			h := float64(k.Heading)
			side = spec.Left
			if float64(p.X-k.At.X)*math.Cos(h)-float64(p.Y-k.At.Y)*math.Sin(h) > 0 {
				side = spec.Right
			}
		}
	}
	return side
}

// at returns where an end is on the plan.
func at(e lights.End) spec.Point { return spec.Point{X: e.X, Y: e.Y} }

// level returns the level distance between two points.
func level(a, b spec.Point) measure.Length {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	return measure.Length(math.Sqrt(dx*dx + dy*dy))
}
