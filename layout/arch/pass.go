package arch

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Pass is a guy of an arch that passes another's leg or crosses the height of a row of lights on the way to its stake, seen in the plane of an arch there; on a bend as if it were the
// tightest of the walk, and the wall the outer one.
type Pass struct {
	Guy   int       // the arch it holds
	Leg   int       // the arch whose leg it passes, or 0
	Row   int       // the row of lights, from the ground up, or 0
	Side  spec.Side // the wall all are in
	Ahead bool      // toward the last arch

	share             float64        // of the guy's way along
	high              measure.Length // of the knot above the ground line
	knot, stake, pipe measure.Length // from the middle, outward: where it is tied, its own foot's stake, the pipe or row at the guy's height there
}

// Near returns how far outside the middle of the passed pipe, or the row, the guy runs whose stake stands so far outside its arch's foot; negative: inside.
func (p Pass) Near(aside measure.Length) measure.Length {
	return p.knot + (p.stake+aside-p.knot)*measure.Length(p.share) - p.pipe
}

// room returns what counts of that: outside a leg, where nobody walks; off a row on either side, which all guys must cross.
func (p Pass) room(aside measure.Length) measure.Length {
	if p.Row > 0 {
		return measure.Abs(p.Near(aside))
	}
	return p.Near(aside)
}

// Clear reports whether the guy of a pass keeps a hand off what it passes.
func (p Pass) Clear(aside measure.Length, u measure.System) bool {
	return p.room(aside) >= practice.GuyClear(u)-measure.Length(1e-6)
}

// Passes lists what guys of a spec pass, by guyed arch. arches are all of the tunnel's, in order.
func Passes(s *spec.Spec, arches []Arch) (list []Pass) {
	for _, g := range s.Guys.Arches {
		if g <= 1 || g >= len(arches) {
			continue // it is held from outside the tunnel
		}
		k := arches[g-1].Kind
		for _, side := range []spec.Side{spec.Left, spec.Right} {
			tape, ok := k.KnotAt(s.Units, side, s.Guys.From)
			if !ok {
				break
			}
			from := Pass{Guy: g, Side: side, high: k.HeightAt(side, tape), knot: measure.Abs(k.PointAt(k.from(side, tape)).X), stake: k.Span / 2}
			list = append(append(list, from.legs(s, arches)...), from.rows(s, k, len(arches))...)
		}
	}
	return list
}

// legs lists the legs that a guy's arch's guys pass on a side.
func (p Pass) legs(s *spec.Spec, arches []Arch) (list []Pass) {
	for _, a := range arches {
		apart := s.Tunnel.Spacing * measure.Length(a.Number-p.Guy)
		p.Leg, p.Ahead, p.share = a.Number, apart > 0, float64(measure.Abs(apart)/s.Guys.Out)
		if apart == 0 || p.share >= 1 {
			continue
		}
		if pipes, stands := fromMiddle(a.Kind, p.high*measure.Length(1-p.share)); stands {
			p.pipe = pipes[p.Side] + measure.Length(p.share*(1-p.share))*bulge(s, 2*p.stake)
			list = append(list, p)
		}
	}
	return list
}

// bulge is four times as far as the middle of a guy's length along the walk's tightest bend lies outside its chord: at a share f of it the bend is f(1−f) of this outside.
func bulge(s *spec.Spec, span measure.Length) (most measure.Length) {
	for _, leg := range s.Site.Route {
		if leg.Radius > 0 {
			most = max(most, s.Guys.Out*s.Guys.Out*(leg.Radius+span)/(2*leg.Radius*leg.Radius)) // out there it is longer and of a larger radius
		}
	}
	return most
}

// rows lists the rows that they cross, ways out and gaps counted as full.
func (p Pass) rows(s *spec.Spec, k *Kind, n int) (list []Pass) {
	rows := s.Lights.Rows
	if rows == nil || !slices.Contains(rows.Walls, p.Side) {
		return nil
	}
	for i, mark := range rows.Marks() {
		at := k.PointAt(k.from(p.Side, mark))
		p.Row, p.share, p.pipe = i+1, 1-float64(k.above(at)/p.high), measure.Abs(at.X)
		out := s.Guys.Out * measure.Length(p.share)
		for _, p.Ahead = range []bool{false, true} {
			bays := p.Guy - 1
			if p.Ahead {
				bays = n - p.Guy
			}
			if p.share > 0 && out < s.Tunnel.Spacing*measure.Length(bays) {
				list = append(list, p)
			}
		}
	}
	return list
}

// fromMiddle returns how far out the middle each leg's pipe is at a height, false above the arch.
func fromMiddle(k *Kind, height measure.Length) (out [2]measure.Length, ok bool) {
	left, right, ok := k.Across(height)
	return [2]measure.Length{spec.Left: -left.X, spec.Right: right.X}, ok
}

// Aside returns how far outside their feet the guy stakes of arches between others stand, all alike: as far as keeps them clear of feet and each guy a hand off the legs and rows it passes, where
// that is no further than practice allows; else where the most room is.
func Aside(s *spec.Spec, arches []Arch) measure.Length {
	lim, list := practice.OnGround(s.Units), Passes(s, arches)
	best, most := lim.StepOut, measure.Length(math.Inf(-1))
	for aside := lim.StepOut; aside <= lim.StepMost; aside += practice.Round(s.Units) {
		worst, passes := Nearest(list, aside)
		if !passes || worst.Clear(aside, s.Units) {
			return aside
		}
		if room := worst.room(aside); room > most {
			best, most = aside, room
		}
	}
	return best
}

// Nearest returns the pass of least room, and false where no guy passes anything.
func Nearest(list []Pass, aside measure.Length) (Pass, bool) {
	if len(list) == 0 {
		return Pass{}, false
	}
	return slices.MinFunc(list, func(a, b Pass) int { return cmp.Compare(a.room(aside), b.room(aside)) }), true
}
