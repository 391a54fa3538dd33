// Strings plugged end to end, as long as labels, volts and the spec allow.

package power

import (
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// seat is a string as it lies: as the lights were laid, or turned.
type seat struct {
	string int
	turned bool
}

// run is strings plugged end to end, prongs first. Back is how else they may lie, every string turned; nil where they may not.
type run struct {
	seats []seat
	back  []seat
	part  int // of the split, see parted

	label catalog.String  // of its first string
	watts measure.Power   // as labelled
	amps  measure.Current // through its plug, at its own volts
	lost  measure.Voltage // from its plug to its last bulb
}

// settle figures what a run draws and loses as it lies.
func (s *site) settle(r *run) {
	list := s.strings(r.seats)
	r.label, r.watts = list[0].Label, 0
	for _, one := range list {
		r.watts += one.Watts
	}
	running, lost := along(list)
	r.amps, r.lost = running[0], lost
}

// joiner plugs strings together.
type joiner struct {
	*site
	joining
	runs []*run // nil once joined to another
	of   []int  // run of each string
}

// at returns a string as it lies.
func (s *site) at(t seat) lights.String {
	if t.turned {
		return s.Turned[t.string]
	}
	return s.Strings[t.string]
}

// strings returns a run's strings as they lie.
func (s *site) strings(seats []seat) []lights.String {
	out := make([]lights.String, len(seats))
	for i, t := range seats {
		out[i] = s.at(t)
	}
	return out
}

// parted returns which of two parts, that one trip must not darken together, a string belongs to, anyPart where either may have it: under `left and right`
// its wall; under `every other` odd and even arches, and of rows the left wall and the right. A whole arch belongs to the wall that its plug is on.
func parted(split spec.Split, p lights.Run) int {
	wall, ok := p.Wall()
	switch {
	case split == spec.SplitNone:
		return 0
	case split == spec.SplitWalls && ok:
		return int(wall)
	case split == spec.SplitArches:
		if n, ok := p.OnArch(); ok {
			return 1 - n%2
		}
		if ok {
			return int(wall)
		}
	}
	return anyPart
}

// ridgeRun reports whether a string is wound along the ridge, which is in runs of its own or hangs on legs.
func ridgeRun(s lights.String) bool { return s.Run.Kind == lights.Ridge && !s.Run.Drop }

// anyPart is the part of what either part may have.
const anyPart = -1

// join makes runs of all strings: each line by itself, cut where it is too long; then socket into prongs wherever two runs meet, the nearest first:
// what touches on one path, what a hand brings together, what a lead off the pipe reaches, what a left-over end reaches; like kinds before
// unlike.
func join(s *site, how joining) []*run {
	j := joiner{site: s, joining: how, of: make([]int, len(s.Strings))}
	for _, l := range s.Lines {
		j.line(l)
	}
	for _, p := range j.pairs() {
		j.plug(p)
	}
	runs := slices.DeleteFunc(j.runs, func(r *run) bool { return r == nil })
	for _, r := range runs {
		s.settle(r)
	}
	return runs
}

// line makes runs of one line: one, or as few as the limits ask for, where it is cut so that their plugs hang low.
func (j *joiner) line(l lights.Line) {
	add := func(seats, back []seat) {
		for _, t := range seats {
			j.of[t.string] = len(j.runs)
		}
		j.runs = append(j.runs, &run{seats: seats, back: back, part: parted(j.Spec.Power.Split, j.at(seats[0]).Run)})
	}
	all := func(turned bool) []seat {
		var out []seat
		for i := range l.Count {
			out = append(out, seat{l.First + i, turned})
		}
		return out
	}
	if !j.over(all(false)) {
		var back []seat
		if l.Open {
			back = all(true)
		}
		add(all(false), back)
		return
	}
	best, price := j.cuts(all(false))
	if l.Open {
		if other, less := j.cuts(all(true)); less < price-practice.EndToEnd {
			best = other
		}
	}
	for _, seats := range best {
		add(seats, nil)
	}
}

// over reports whether a run passes a limit.
func (s *site) over(seats []seat) bool {
	list := s.strings(seats)
	return len(seats) > 1 && breaks(limits(list, s.mostTogether(list))).Kind != NoLimit
}

// cuts cuts a line into the fewest runs that the limits allow, where the climbs to their plugs add up to least, and returns that sum. What a foot's socket
// does not reach counts as a cord's length more.
func (j *joiner) cuts(seats []seat) ([][]seat, measure.Length) {
	const cord = 1000 * measure.Metre
	n := len(seats)
	best := make([]measure.Length, n+1) // of the seats from one on
	next := make([]int, n)
	for i := n - 1; i >= 0; i-- {
		from := j.at(seats[i]).From
		climb := j.spot(from, from.Side).climb
		if climb > practice.HipReach {
			climb += cord
		}
		best[i] = measure.Length(math.MaxFloat64)
		for k := i + 1; k <= n; k++ {
			if k > i+1 && j.over(seats[i:k]) {
				break
			}
			// each run costs more than any climbs, so that there are no more of them than must be
			if sum := best[k] + climb + 100*cord; sum < best[i] {
				best[i], next[i] = sum, k
			}
		}
	}
	var out [][]seat
	for i := 0; i < n; i = next[i] {
		out = append(out, seats[i:next[i]])
	}
	return out, best[0]
}

// plug joins the two runs of a pair, if they may be joined: the socket is the last of its run and the prongs are the first of theirs, either run
// turned round if need be, of one part, within the limits.
func (j *joiner) plug(p pair) {
	a, b := j.of[p.socket.string], j.of[p.prongs.string]
	if a == b {
		return
	}
	first, firstBack := j.runs[a].lying(p.socket, func(s []seat) seat { return s[len(s)-1] })
	then, thenBack := j.runs[b].lying(p.prongs, func(s []seat) seat { return s[0] })
	if first == nil || then == nil {
		return
	}
	pa, pb := j.runs[a].part, j.runs[b].part
	if pa != pb && pa != anyPart && pb != anyPart {
		return
	}
	one := &run{seats: slices.Concat(first, then), part: max(pa, pb)}
	if j.over(one.seats) {
		return
	}
	one.back = j.turned(firstBack, thenBack)
	keep, gone := min(a, b), max(a, b)
	j.runs[keep], j.runs[gone] = one, nil
	for _, t := range one.seats {
		j.of[t.string] = keep
	}
}

// lying returns the way that a run lies with a seat at one end, and the other way; nil where none has it there.
func (r *run) lying(t seat, end func([]seat) seat) (so, other []seat) {
	switch {
	case end(r.seats) == t:
		return r.seats, r.back
	case r.back != nil && end(r.back) == t:
		return r.back, r.seats
	}
	return nil, nil
}

// turned joins two runs whose every string is turned: the one that came first comes last, or where its socket is not in reach so, first again. Nil where neither is.
func (j *joiner) turned(first, then []seat) []seat {
	if first == nil || then == nil {
		return nil
	}
	for _, of := range [][2][]seat{{then, first}, {first, then}} {
		if _, ok := j.meets(of[0][len(of[0])-1], of[1][0]); ok {
			return slices.Concat(of[0], of[1])
		}
	}
	return nil
}
