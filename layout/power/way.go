// The site as a cord sees it: feet, side ways, how far things are apart, how an outlet is led to a wall.

package power

import (
	"math"
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// site answers how far things are apart as a cord lies.
type site struct {
	Input
	feet [2][]ground.Stake   // by side, arch 1 first
	run  [2][]measure.Length // distance of each foot along its wall from arch 1's, level differences in
	offs []obstacle          // what cords keep off

	lanes []lane   // before the entrance and beyond the exit
	ways  [2][]int // by side: how many side ways there are before each arch, arch 1 first
	past  int32    // what a way that a cord passes counts for before all else: nothing where the spec says how cords pass

	lineOf []int             // line of each string
	liners map[string]*liner // by cord
}

// newSite measures the walls.
func newSite(in Input) *site {
	s := &site{Input: in, offs: obstacles(in.Spec), lanes: lanes(in), liners: map[string]*liner{}, past: 1}
	if in.Spec.Site.Cords.Crossing != spec.CrossSeldom {
		s.past = 0
	}
	for _, k := range in.Ground.Stakes {
		if !k.Guy {
			s.feet[k.Side] = append(s.feet[k.Side], k)
		}
	}
	for side, feet := range s.feet {
		var along measure.Length
		for i, f := range feet {
			if i > 0 {
				along += lights.Apart(footEnd(feet[i-1]), footEnd(f))
			}
			s.run[side] = append(s.run[side], along)
		}
	}
	for side := range s.ways {
		n := 0
		for i := range s.feet[side] {
			if i > 0 && in.Spec.IsWay(spec.Side(side), i) {
				n++
			}
			s.ways[side] = append(s.ways[side], n)
		}
	}
	s.lineOf = make([]int, len(in.Strings))
	for n, l := range in.Lines {
		for i := range l.Count {
			s.lineOf[l.First+i] = n
		}
	}
	return s
}

// crosses counts the side ways on a wall between two arches, counted from 0.
func (s *site) crosses(side spec.Side, a, b int) int {
	n := s.ways[side][b] - s.ways[side][a]
	return max(n, -n)
}

// passes reports whether a side way lies on a wall between two arches, by their numbers.
func (s *site) passes(side spec.Side, a, b int) bool {
	last := len(s.ways[side]) - 1
	return s.crosses(side, max(0, min(a-1, last)), max(0, min(b-1, last))) > 0
}

// runs returns how a cord lies along the outside of a wall's feet from one arch to another, counted from 0. A side way on it is passed overhead, up one
// leg, along the crowns and down the next, or on the ground under a cover.
func (s *site) runs(side spec.Side, a, b int) measure.Length {
	out := measure.Abs(s.run[side][a] - s.run[side][b])
	ups, _ := s.overWays(side, a, b)
	return out + ups
}

// overWays returns how much longer than along the feet a cord is that passes the side ways between two arches overhead, and how long it is tied to pipe there.
func (s *site) overWays(side spec.Side, a, b int) (more, tied measure.Length) {
	if s.Spec.Site.Cords.Cover() || s.crosses(side, a, b) == 0 {
		return 0, 0
	}
	for i := min(a, b); i < max(a, b); i++ {
		if s.crosses(side, i, i+1) > 0 {
			up := s.Crowns[i] + s.Crowns[i+1] + ground.Distance(s.feet[spec.Left][i].At(), s.feet[spec.Right][i].At())
			more, tied = more+up, tied+up+s.run[side][i+1]-s.run[side][i]
		}
	}
	return more, tied
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
	return spot{arch: i, end: e, climb: ground.Distance(at(e), foot.At()) + max(0, e.Z-foot.Ground)}
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
	tied measure.Length // of that to pipe overhead
	arch int            // whose foot it comes to, from 0
	path []spec.Point
	over int        // ways that it passes: the opening, to the far wall, and side ways before it
	also []approach // straight ways to other feet, as near within a hand's reach and by no way
}

// approach returns the way from an outlet to a wall: straight to the nearest foot on the outlet's own side, either where it is amidst the way, around what
// cords keep off; to the other side from there over the nearest arch, or along to arch 1 and across under a cover.
func (s *site) approach(o spec.Outlet, side spec.Side) approach {
	own := s.sideOf(o.At)
	if s.amidst(o.At) {
		own = side
	}
	near := 0
	for i, f := range s.feet[own] {
		if ground.Distance(o.At, f.At()) < ground.Distance(o.At, s.feet[own][near].At())-dust {
			near = i
		}
	}
	out := s.straight(o.At, own, near)
	if own == side {
		for i := range s.feet[own] {
			if i == near || s.crosses(own, near, i) > 0 || ground.Distance(o.At, s.feet[own][i].At()) > out.lies+practice.HandReach {
				continue
			}
			if a := s.straight(o.At, own, i); a.lies <= out.lies+practice.HandReach {
				out.also = append(out.also, a)
			}
		}
		return out
	}
	at := near
	if s.Spec.Site.Cords.Cover() {
		at = 0 // the way in, where people look down
	}
	out.over = 1 + s.crosses(own, near, at)
	out.lies += s.runs(own, near, at) + s.crossing(at)
	if !s.Spec.Site.Cords.Cover() {
		_, out.tied = s.overWays(own, near, at)
		out.tied += s.crossing(at)
	}
	if at != near {
		out.path = append(out.path, s.along(own, near, at)[1:]...)
	}
	out.path = append(out.path, s.feet[side][at].At())
	out.arch = at
	return out
}

// straight is the way from an outlet right to a foot.
func (s *site) straight(from spec.Point, side spec.Side, arch int) approach {
	out := approach{arch: arch, path: s.way(from, s.feet[side][arch].At(), side)}
	for i := 1; i < len(out.path); i++ {
		out.lies += ground.Distance(out.path[i-1], out.path[i])
	}
	return out
}

// by returns the approach by which a cord to a foot is shortest.
func (s *site) by(a approach, side spec.Side, arch int) approach {
	best := a
	for _, other := range a.also {
		if other.lies+s.runs(side, other.arch, arch) < best.lies+s.runs(side, best.arch, arch)-dust {
			best = other
		}
	}
	return best
}

// crossing returns how long a cord past the opening at an arch is: under a cover along the ground, or up one leg, along the
// crown and down the other, taken square, which is never shorter than the pipe of an arch that does not bulge beyond its feet.
func (s *site) crossing(arch int) measure.Length {
	span := ground.Distance(s.feet[spec.Left][arch].At(), s.feet[spec.Right][arch].At())
	if s.Spec.Site.Cords.Cover() {
		return span
	}
	return 2*s.Crowns[arch] + span
}

// toFoot returns how a cord lies from an outlet by an approach to a foot of its wall, down from the outlet first. A plug at hand there comes up to it.
func (s *site) toFoot(a approach, side spec.Side, arch int) measure.Length {
	a = s.by(a, side, arch)
	way := a.lies + s.runs(side, a.arch, arch)
	if way > practice.HandReach {
		way += practice.OutletRise(s.Spec.Units)
	}
	return way
}

// pathTo returns where the cord of toFoot lies on the plan.
func (s *site) pathTo(a approach, side spec.Side, arch int) []spec.Point {
	a = s.by(a, side, arch)
	return append(slices.Clone(a.path), s.along(side, a.arch, arch)[1:]...)
}

// passed lists the legs that a cord goes up and down on a path: past each side way, and where it goes over an arch to the other wall.
func (s *site) passed(path []spec.Point) (out [][2]lights.Part) {
	var before lights.Part
	for _, p := range path {
		var here lights.Part
		for side, feet := range s.feet {
			if i := slices.IndexFunc(feet, func(k ground.Stake) bool { return k.At() == p }); i >= 0 {
				here = lights.Leg(spec.Side(side), i+1)
			}
		}
		from, _ := before.Wall()
		to, _ := here.Wall()
		if before.Number > 0 && here.Number > 0 && (from != to || before.Number != here.Number && s.passes(to, before.Number, here.Number)) {
			out = append(out, [2]lights.Part{before, here})
		}
		before = here
	}
	return out
}

// sideOf returns the side of the walk's centreline, drawn on straight at both ends, that a point lies on.
func (s *site) sideOf(p spec.Point) spec.Side {
	best, side := math.Inf(1), spec.Left
	for _, k := range s.Ground.Stations {
		d := float64(ground.Distance(p, k.At))
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
