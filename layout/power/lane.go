// The lanes before the entrance and beyond the exit, where people walk and cords do not lie if they can go round.

package power

import (
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// lane is the way before the entrance or beyond the exit: between the lines of its arch's guys as far as they reach, then as wide as the opening.
type lane struct {
	obstacle
	at       spec.Point // of the arch, on the centreline
	sin, cos float64    // of the heading out of the tunnel
	half     measure.Length
	feet     measure.Length // how far the feet are off the centreline, the farther one's
	guys     measure.Length // how far its guys reach ahead
}

// laneFar is how far a lane is drawn on: past any cord's way round its end.
const laneFar = 20 * practice.LaneSeen

// lanes are the two lanes of a tunnel.
func lanes(in Input) []lane {
	stations := in.Ground.Stations
	if len(stations) == 0 {
		return nil
	}
	first, last := stations[0], stations[len(stations)-1]
	out := []lane{{at: first.At}, {at: last.At}}
	out[0].sin, out[0].cos = math.Sincos(float64(first.Heading) + math.Pi)
	out[1].sin, out[1].cos = math.Sincos(float64(last.Heading))
	out[0].fence(in, 1)
	out[1].fence(in, len(stations))
	return out
}

// seen returns how far ahead of the arch a point lies as one walks out, and how far to the right.
func (l lane) seen(p spec.Point) (ahead, right measure.Length) {
	dx, dy := float64(p.X-l.at.X), float64(p.Y-l.at.Y)
	return measure.Length(dx*l.sin + dy*l.cos), measure.Length(dx*l.cos - dy*l.sin)
}

// point returns the point that lies so far ahead and to the right.
func (l lane) point(ahead, right measure.Length) spec.Point {
	a, r := float64(ahead), float64(right)
	return spec.Point{X: l.at.X + measure.Length(a*l.sin+r*l.cos), Y: l.at.Y + measure.Length(a*l.cos-r*l.sin)}
}

// fence draws the lane's outline, with a corner outside each guy's stake to go round by. At a foot it begins beside it, for cords come to the foot itself.
func (l *lane) fence(in Input, arch int) {
	const clear = practice.CordsClear
	l.half = in.Spec.Tunnel.OpeningWidth / 2
	var halves [2][]spec.Point
	for i, sign := range []measure.Length{-1, 1} {
		var foot, guy measure.Length // off the centreline
		ahead := measure.Length(0)
		for _, k := range in.Ground.Stakes {
			far, right := l.seen(k.At())
			switch right *= sign; {
			case k.Arch != arch || right <= 0:
			case !k.Guy:
				foot = right
			case far > ahead:
				ahead, guy = far, right
			}
		}
		line := []spec.Point{l.point(0, sign*max(0, foot-clear))}
		if ahead > 0 {
			guy = max(guy, l.half)
			line = append(line, l.point(ahead, sign*guy))
			l.corners = append(l.corners, l.point(ahead+clear, sign*(guy+clear)))
		}
		halves[i] = append(line, l.point(ahead, sign*l.half), l.point(laneFar, sign*l.half))
		l.feet, l.guys = max(l.feet, foot), max(l.guys, ahead)
	}
	slices.Reverse(halves[1])
	l.outline = slices.Concat(halves[0], halves[1])
}

// amidst reports whether a point lies in the middle of a lane, as wide as the opening: from there a cord lies to either wall without passing the way.
func (s *site) amidst(p spec.Point) bool {
	return slices.ContainsFunc(s.lanes, func(l lane) bool {
		ahead, right := l.seen(p)
		return ahead > 0 && measure.Abs(right) <= l.half
	})
}

// standsInLane returns how far before the entrance or beyond the exit an outlet stands in a lane as wide as its arch; 0 where it stands in none.
func (s *site) standsInLane(p spec.Point) (ahead measure.Length, exit bool) {
	for i, l := range s.lanes {
		if ahead, right := l.seen(p); ahead > 0 && ahead <= practice.LaneSeen && measure.Abs(right) <= l.feet {
			return ahead, i == 1
		}
	}
	return 0, false
}

// way returns how a cord lies from an outlet to a foot: out of a lane by the shortest way, then round lanes and what cords keep off. Where lanes leave no way it keeps off the
// rest alone.
func (s *site) way(from, to spec.Point, side spec.Side) []spec.Point {
	start := from
	all := slices.Clone(s.offs)
	for i, l := range s.lanes {
		all = append(all, l.obstacle)
		if ahead, right := l.seen(from); ahead > l.guys && measure.Abs(right) <= l.half {
			out := l.half + practice.CordsClear
			if (side == spec.Left) == (i == 1) { // left as one walks in is left beyond the exit and right before the entrance
				out = -out
			}
			start = l.point(ahead, out)
		}
	}
	path := around(start, to, all)
	if len(path) == 2 {
		path = around(start, to, s.offs)
	}
	if start != from {
		path = append(around(from, start, s.offs), path[1:]...)
	}
	return path
}
