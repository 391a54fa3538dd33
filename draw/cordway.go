package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// pair returns the two feet of an arch on paper.
func (c *CordPlan) pair(v siteMap, arch int) (left, right paper.Point) {
	stakes := c.plan.Stakes
	return v.at(stakes[2*arch-2].At()), v.at(stakes[2*arch-1].At())
}

// leg is a straight part of a cord's way on paper.
type leg struct {
	p, q paper.Point
	over bool // past the opening, over arch 1 or under a cover
}

// way returns how a cord is drawn in a section: out from a foot into its lane, along outside the wall, and in again to a foot; off the walls as it lies. It goes one bay past
// the section.
func (c *CordPlan) way(v siteMap, k cordLine, s Section) []leg {
	path := slices.CompactFunc(slices.Clone(k.path), func(a, b spec.Point) bool { return whole(a) == whole(b) })
	var out []leg
	var at paper.Point
	inside, started := false, false
	add := func(p paper.Point, arch int, over bool) {
		in := arch == 0 || s.First <= arch && arch <= s.Last
		if started && (in || inside) {
			out = append(out, leg{at, p, over})
		}
		at, inside, started = p, in, true
	}
	ahead := func(n int) paper.Point { return v.at(path[n+1]).Sub(v.at(path[n])).Unit() }
	for i, p := range path {
		foot, ok := c.footAt(p)
		if !ok {
			add(v.at(p), 0, false)
			continue
		}
		on := func(n int) bool { // whether a neighbour on the path is a foot of the same wall
			if n < 0 || n >= len(path) {
				return false
			}
			f, ok := c.footAt(path[n])
			return ok && f.Side == foot.Side
		}
		across := false
		if i > 0 {
			before, ok := c.footAt(path[i-1])
			across = ok && before.Side != foot.Side
		}
		ground, lane := c.lane(v, foot, k.lane)
		slant := float64(c.first*0.6 + 1.2*paper.Length(k.lane))
		switch {
		case !on(i-1) && !on(i+1):
			add(ground, foot.Arch, across)
		case !on(i - 1):
			if i == 0 || across || !k.outlet {
				add(ground, foot.Arch, across)
			}
			add(lane.Add(ahead(i).Times(slant)), foot.Arch, false)
		case !on(i + 1):
			add(lane.Sub(ahead(i-1).Times(slant)), foot.Arch, false)
			add(ground, foot.Arch, false)
		default:
			add(lane, foot.Arch, false)
		}
	}
	return joined(out)
}

// lane returns a foot's ground point on paper and the point beside it in a lane.
func (c *CordPlan) lane(v siteMap, foot ground.Stake, lane int) (at, beside paper.Point) {
	l, r := c.pair(v, foot.Arch)
	away := l.Sub(r).Unit()
	if foot.Side == spec.Right {
		away, l = away.Times(-1), r
	}
	return l, l.Add(away.Times(float64(c.first + planLane*paper.Length(lane))))
}

// joined runs legs on one line together.
func joined(legs []leg) []leg {
	var out []leg
	for _, g := range legs {
		if n := len(out); n > 0 && out[n-1].over == g.over && inLine(out[n-1].p, g.p, g.q) {
			out[n-1].q = g.q
			continue
		}
		out = append(out, g)
	}
	return out
}

// inLine reports whether three points lie on one line.
func inLine(p, q, r paper.Point) bool {
	u, w := q.Sub(p).Unit(), r.Sub(q).Unit()
	return u.X*w.X+u.Y*w.Y > 0.9999
}
