package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// joiner plugs strings together.
type joiner struct {
	strings []lights.String
	high    []bool // by string: its socket, and then its prongs, hang above the opening
	highIn  []bool
	split   bool
	own     float64  // share of its volts that a chain by itself may lose
	chainOf []int    // chain of each string
	chains  []*group // by first index of their first string; nil once joined to another
	load    [2]measure.Power
}

// group is a chain in the making.
type group struct {
	members []int
	watts   measure.Power
	wall    wall
	why     string // what ended it, in words
}

// join plugs strings end to end: each string's prongs into a free socket of its own kind within reach, while the chain stays within
// the label's limits and loses no more than its own share of the volts, and under split on one wall. On one path first; then what a hand brings together, preferring the shorter
// chain, then the wall with less on it; last what a left-over end reaches.
// It returns the chains in the order of their first strings.
func join(s *site, list []lights.String, split bool, own float64) []*group {
	j := joiner{strings: list, split: split, own: own, chainOf: make([]int, len(list))}
	for i, one := range list {
		j.chainOf[i] = i
		g := &group{members: []int{i}, watts: one.Watts, wall: wallOf(one.Run), why: "no other string of its kind within reach"}
		j.chains = append(j.chains, g)
		j.high = append(j.high, s.overhead(one.To))
		j.highIn = append(j.highIn, s.overhead(one.From))
		if g.wall != either {
			j.load[g.wall] += one.Watts
		}
	}
	byProngs := make([][]pair, len(list))
	j.eachNear(func(p pair) { byProngs[p.prongs] = append(byProngs[p.prongs], p) })
	for band := range 3 {
		for i := range list {
			if best, ok := j.best(byProngs[i], band); ok {
				j.plug(best)
			}
		}
	}
	for _, pairs := range byProngs {
		for _, p := range pairs {
			if why := j.may(p); why != taken {
				j.chains[j.chainOf[p.socket]].why = why
			}
		}
	}
	return slices.DeleteFunc(j.chains, func(g *group) bool { return g == nil })
}

// best returns the pair that one string's prongs should take in a band.
func (j *joiner) best(pairs []pair, band int) (pair, bool) {
	var best pair
	found := false
	for _, p := range pairs {
		if p.band == band && j.may(p) == "" && (!found || j.better(p, best)) {
			best, found = p, true
		}
	}
	return best, found
}

// better orders pairs of one band with the same prongs.
func (j *joiner) better(a, b pair) bool {
	ga, gb := j.chains[j.chainOf[a.socket]], j.chains[j.chainOf[b.socket]]
	return cmp.Or(
		cmp.Compare(a.apart, b.apart),
		cmp.Compare(len(ga.members), len(gb.members)),
		cmp.Compare(j.on(ga.wall), j.on(gb.wall)),
		cmp.Compare(a.socket, b.socket),
	) < 0
}

// on returns the watts on a wall so far; none on either.
func (j *joiner) on(w wall) measure.Power {
	if w == either {
		return 0
	}
	return j.load[w]
}

// taken is why two strings are not plugged together that are plugged in already.
const taken = "taken"

// may returns why a pair cannot be plugged together, empty where it can.
func (j *joiner) may(p pair) string {
	a, b := j.chains[j.chainOf[p.socket]], j.chains[j.chainOf[p.prongs]]
	switch {
	case a == b, a.members[len(a.members)-1] != p.socket, b.members[0] != p.prongs:
		return taken
	case j.split && a.wall != either && b.wall != either && a.wall != b.wall:
		return "the other wall is fed apart"
	}
	label, count := j.strings[p.socket].Label, len(a.members)+len(b.members)
	if why := limitOf(label).stops(count, a.watts+b.watts); why != "" {
		return why
	}
	if count > mostBright(label, j.own) {
		return "more would leave the last bulb under 95 % of its volts"
	}
	return ""
}

// plug joins the two chains of a pair.
func (j *joiner) plug(p pair) {
	to := j.chainOf[p.socket]
	from := j.chainOf[p.prongs]
	a, b := j.chains[to], j.chains[from]
	switch {
	case a.wall == either && b.wall != either:
		j.load[b.wall] += a.watts
	case b.wall == either && a.wall != either:
		j.load[a.wall] += b.watts
	}
	if a.wall == either {
		a.wall = b.wall
	}
	a.members = append(a.members, b.members...)
	a.watts += b.watts
	for _, m := range b.members {
		j.chainOf[m] = to
	}
	j.chains[from] = nil
	if first := a.members[0]; first != to {
		j.chains[to], j.chains[first] = nil, a
		for _, m := range a.members {
			j.chainOf[m] = first
		}
	}
}
