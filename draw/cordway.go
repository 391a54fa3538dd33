package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
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
	over bool // up a leg and along an arch, drawn right beside it, along the ridge, or under a cover
}

// besideArch is how far beside its arch's line a cord is drawn that goes up it: no farther than both need to be told apart.
const besideArch paper.Length = 1.3

// wayDrawer gathers the legs of a cord's way.
type wayDrawer struct {
	*CordPlan
	v    siteMap
	s    Section
	legs []leg

	at              paper.Point
	inside, started bool
}

// to goes on to a point at an arch, 0 for none; it goes one bay past the section.
func (w *wayDrawer) to(p paper.Point, arch int, over bool) {
	in := arch == 0 || w.s.First <= arch && arch <= w.s.Last
	if w.started && p != w.at && (in || w.inside) {
		w.legs = append(w.legs, leg{w.at, p, over})
	}
	w.at, w.inside, w.started = p, in, true
}

// beside moves a point at an arch right beside its line: into the bay toward another arch.
func (w *wayDrawer) beside(p paper.Point, arch, toward int) paper.Point {
	l, r := w.pair(w.v, arch)
	ahead := r.Sub(l).Unit().Left().Times(float64(besideArch))
	if toward < arch {
		return p.Sub(ahead)
	}
	return p.Add(ahead)
}

// arch goes up the leg of a foot and along its arch to points there, into the bay toward another arch.
func (w *wayDrawer) arch(foot ground.Stake, toward int, points ...paper.Point) {
	for _, p := range points {
		w.to(w.beside(p, foot.Arch, toward), foot.Arch, true)
	}
}

// up goes up the leg of a foot to a place: along the arch as far as it lies over, and on to it where it is in a bay, along the ridge or on the wall.
func (w *wayDrawer) up(foot ground.Stake, to paper.Point) {
	l, r := w.pair(w.v, foot.Arch)
	at, across, toward := w.v.at(foot.At()), r.Sub(l).Unit(), w.inward(foot.Arch)
	way := to.Sub(at)
	over := at.Add(across.Times(float64(way.X*across.X + way.Y*across.Y)))
	off := to.Sub(over)
	if ahead := across.Left(); off.Long() > besideArch/5 && off.X*ahead.X+off.Y*ahead.Y > 0 {
		toward = foot.Arch + 1
	} else if off.Long() > besideArch/5 {
		toward = foot.Arch - 1
	}
	w.arch(foot, toward, at, over)
	if off.Long() > besideArch {
		w.to(to, foot.Arch, true)
	}
}

// pass goes from foot to foot past a side way, or over an arch to the other wall: overhead, or on the ground under a cover.
func (w *wayDrawer) pass(from, to ground.Stake) {
	p, q := w.v.at(from.At()), w.v.at(to.At())
	switch {
	case from.Arch == to.Arch: // on the other side of the arch than what goes up a leg there
		w.arch(from, 2*from.Arch-w.inward(from.Arch), p, q)
	case w.plan.Spec.Site.Cords.Cover():
	default:
		middle := func(arch int) paper.Point { l, r := w.pair(w.v, arch); return l.Add(r).Times(0.5) }
		w.arch(from, to.Arch, p, middle(from.Arch))
		w.arch(to, from.Arch, middle(to.Arch), q)
	}
	w.to(q, to.Arch, true)
}

// inward is an arch beside another: the one before it, or the next where there is none before it or a cord may pass over a side way there.
func (c *CordPlan) inward(arch int) int {
	if n := len(c.plan.Ground.Stations); arch == 1 || arch < n && c.plan.Spec.Passed(arch-1) {
		return arch + 1
	}
	return arch - 1
}

// way returns how a cord is drawn in a section: out from a foot into its lane, along outside the wall, and in again to a foot; up its arch to what hangs there; off the walls as it lies.
func (c *CordPlan) way(v siteMap, k cordLine, s Section) []leg {
	path := slices.CompactFunc(slices.Clone(k.path), func(a, b spec.Point) bool { return whole(a) == whole(b) })
	w := &wayDrawer{CordPlan: c, v: v, s: s}
	ahead := func(n int) paper.Point { return v.at(path[n+1]).Sub(v.at(path[n])).Unit() }
	for i, p := range path {
		var before ground.Stake
		fromFoot := false
		if i > 0 {
			before, fromFoot = c.footAt(path[i-1])
		}
		foot, ok := c.footAt(p)
		switch {
		case !ok && fromFoot: // to a crown, or to where something hangs on the leg or in a bay
			w.up(before, v.at(p))
			continue
		case !ok:
			w.to(v.at(p), 0, false)
			continue
		}
		in := i > 0 && c.along(path[i-1], p)
		out := i+1 < len(path) && c.along(p, path[i+1])
		if fromFoot && !in {
			w.pass(before, foot)
		}
		ground, lane := c.lane(v, foot, k.lane)
		slant := float64(c.first*0.6 + 1.2*paper.Length(k.lane))
		upFrom := i > 0 && !fromFoot && !in && i+1 < len(path) && !c.foot(path[i+1])
		switch {
		case upFrom: // from the yard right up a leg, beside a cord that ends at its foot
			w.to(w.beside(ground, foot.Arch, c.inward(foot.Arch)), foot.Arch, false)
		case !in && !out:
			w.to(ground, foot.Arch, false)
		case !in:
			if i == 0 || fromFoot || !k.outlet || c.plugged(k, p) || c.feeds(k, p) { // from an outlet past its first foot it comes in where something is plugged in
				w.to(ground, foot.Arch, false)
			}
			w.to(lane.Add(ahead(i).Times(slant)), foot.Arch, false)
		case !out:
			w.to(w.round(lane, ahead(i-1).Times(slant), ground), foot.Arch, false)
			w.to(ground, foot.Arch, false)
		case c.feeds(k, p): // comes in to the foot that a further cord goes on from
			w.to(lane.Sub(ahead(i-1).Times(slant)), foot.Arch, false)
			w.to(ground, foot.Arch, false)
			w.to(lane.Add(ahead(i).Times(slant)), foot.Arch, false)
		default:
			w.to(lane, foot.Arch, false)
		}
	}
	return joined(w.legs)
}

// round is where a cord turns from its lane in to a foot that it ends at: before it, or past it where a guy's stake would lie on the cord.
func (w *wayDrawer) round(lane, slant, foot paper.Point) paper.Point {
	turn := lane.Sub(slant)
	in := foot.Sub(turn)
	u := in.Unit()
	for _, s := range w.plan.Stakes {
		at := w.v.at(s.At()).Sub(turn)
		if along, off := at.X*u.X+at.Y*u.Y, at.X*u.Y-at.Y*u.X; s.Guy && along > 0 && along < in.Long() && max(off, -off) < siteGuy+1 {
			return lane.Add(slant)
		}
	}
	return turn
}

// foot reports whether a place is a foot's.
func (c *CordPlan) foot(p spec.Point) bool {
	_, ok := c.footAt(p)
	return ok
}

// feeds reports whether another cord goes on from one at a place.
func (c *CordPlan) feeds(k cordLine, at spec.Point) bool {
	return slices.ContainsFunc(c.cords, func(o cordLine) bool { return o.from == k.number && whole(o.path[0]) == whole(at) })
}

// plugged reports whether something is plugged into a socket of a cord at a place.
func (c *CordPlan) plugged(k cordLine, at spec.Point) bool {
	return slices.ContainsFunc(c.plan.Power.Cords[k.number-1].Places, func(e lights.End) bool { return whole(spec.Point{X: e.X, Y: e.Y}) == whole(at) })
}

// along reports whether a cord lies on the ground from one place to the next along a wall: feet of the same wall, no side way between.
func (c *CordPlan) along(from, to spec.Point) bool {
	a, ok := c.footAt(from)
	b, both := c.footAt(to)
	return ok && both && a.Side == b.Side && !c.plan.Spec.IsWay(a.Side, min(a.Arch, b.Arch))
}

// climbed reports whether a cord goes up the leg of a foot, or down it.
func (c *CordPlan) climbed(foot ground.Stake) bool {
	at := whole(foot.At())
	return slices.ContainsFunc(c.cords, func(k cordLine) bool {
		for i := 1; i < len(k.path); i++ {
			a, b := whole(k.path[i-1]), whole(k.path[i])
			if a != b && (a == at || b == at) && c.foot(a) && !c.along(a, b) {
				return true
			}
		}
		return false
	})
}

// rightTaken reports whether cords lie on an arch's right half alone, so that its number stands on the left one.
func (c *CordPlan) rightTaken(arch int) bool {
	return c.climbed(c.plan.Stakes[2*arch-1]) && !c.climbed(c.plan.Stakes[2*arch-2])
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
