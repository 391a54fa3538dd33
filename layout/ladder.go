package layout

import (
	"math"
	"reflect"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

const (
	mostRungs = 12    // that it climbs
	leastGain = 0.005 // of the score, for which a rung is worth its while
	freeStep  = 2.0   // dollars, that any change is worth of work
	cheap     = 10.0  // dollars, that a ladder may cost without another being looked for
	mostWider = 0.25  // of the span, by which a rung moves the feet: beyond it is another tunnel
)

// rung is a spec on the ladder with the changes that led to it and what it comes to.
type rung struct {
	changes []weather.Change
	spec    *spec.Spec
	weather *weather.Weather
	price   float64
}

// Cures returns the ladder of cures of a tunnel that misses the gusts it is to reach, and whether it reaches them with it: from rung to rung the change that gains most for its price, until it reaches
// them or nothing helps, one rung for each key, less those that it reaches them without. Where that leads too low or is dear, it leaps to the cheapest stakes and bracing there are and climbs from
// there, if that is better. It is worked out on call. A tunnel that reaches its aims has none, nor has one with arches that do not stand in their plane.
func (p *Plan) Cures() (ladder []weather.Cure, reaches bool) {
	if p.Weather == nil || p.Weather.Factor == 0 || p.Weather.Reaches() >= 1 {
		return nil, true
	}
	c := newChooser(p)
	start := rung{spec: p.Spec, weather: p.Weather, price: weather.Price(p.Spec)}
	top := c.needed(start, c.climb(start))
	if top.weather.Reaches() < 1 || top.price-start.price > cheap {
		if other := c.needed(start, c.climb(c.leap(start))); other.better(top) {
			top = other
		}
	}
	before := start
	for i, change := range top.changes {
		n := made(start.spec, top.changes[:i+1])
		kinds := c.shape(n)
		if kinds == nil {
			continue
		}
		at := rung{nil, n, c.tunnel(n, kinds, full, nil, nil), weather.Price(n)}
		ladder = append(ladder, weather.Cure{Change: change, Inside: at.weather.InsideGust(), Down: at.weather.DownGust(), Price: math.Round((at.price-before.price)*100) / 100})
		before = at
	}
	return ladder, before.weather.Reaches() >= 1
}

// better reports whether one rung comes nearer to the aims than another, or reaches them as well for less.
func (a rung) better(b rung) bool {
	if a.weather.Reaches() >= 1 && b.weather.Reaches() >= 1 {
		return a.price < b.price
	}
	return a.weather.Score() > b.weather.Score()
}

// needed leaves out of a rung's changes those that the spec it started from reaches its aims without.
func (c *chooser) needed(start, at rung) rung {
	for i := range at.changes {
		short := slices.Delete(slices.Clone(at.changes), i, i+1)
		n := made(start.spec, short)
		if len(short) == 0 {
			break
		}
		if w := c.solve(n, func(w *weather.Weather) bool { return w.Reaches() < 1 }); w != nil && w.Reaches() >= 1 {
			return c.needed(start, rung{short, n, w, weather.Price(n)})
		}
	}
	return at
}

// made returns the spec with changes made one after the other.
func made(s *spec.Spec, changes []weather.Change) *spec.Spec {
	for _, c := range changes {
		s = c.On(s)
	}
	return s
}

// worth is the score that a rung gains over another for its price, 0 where that is not worth its while.
func (a rung) worth(at rung) float64 {
	gain := a.weather.Score() - at.weather.Score()
	if gain <= leastGain {
		return 0
	}
	return gain / (max(a.price-at.price, 0) + freeStep)
}

// with returns the rung that a change leads to, and false where no such arch stands or its stakes stand on worse ground. It is worked out no further than it is seen to be worth no more than most.
func (c *chooser) with(at rung, change weather.Change, most float64) (rung, bool) {
	n := change.On(at.spec)
	if measure.Abs(n.Arch.Span/c.plan.Spec.Arch.Span-1) > mostWider {
		return at, false
	}
	price := weather.Price(n)
	w := c.solve(n, func(w *weather.Weather) bool { return rung{weather: w, price: price}.worth(at) <= most })
	if w == nil || c.plan.groundWorse(n) {
		return at, false
	}
	changes := slices.Clone(at.changes)
	if i := slices.IndexFunc(changes, func(x weather.Change) bool { return x.Key == change.Key }); i >= 0 {
		changes[i] = change
	} else {
		changes = append(changes, change)
	}
	return rung{changes, n, w, price}, true
}

// climb takes rung after rung. Of each key the last change is kept, where the first was.
func (c *chooser) climb(at rung) rung {
	for range mostRungs {
		if at.weather.Reaches() >= 1 {
			break
		}
		var best rung
		most := 0.0
		for _, change := range weather.Changes(at.spec, c.tune[c.of[0]]) {
			if next, ok := c.with(at, change, most); ok && next.worth(at) > most {
				best, most = next, next.worth(at)
			}
		}
		if most == 0 {
			break
		}
		at = best
	}
	return at
}

// leap returns the rung of the cheapest stakes and bracing of all there are, or of those that come nearest.
func (c *chooser) leap(at rung) rung {
	s := at.spec
	options := []*spec.Spec{s}
	if s.Arch.Foot == nil {
		options = append(withStakes(s, true), s)
	}
	n := c.best(options, true)
	var changes []weather.Change
	if !reflect.DeepEqual(n.Braces, s.Braces) {
		changes = append(changes, weather.Change{Key: "braces", Value: n.Braces})
	}
	if !reflect.DeepEqual(n.Guys, s.Guys) {
		changes = append(changes, weather.Change{Key: "guys", Value: n.Guys})
	}
	if n.Arch.Stake != s.Arch.Stake {
		changes = append(changes, weather.Change{Key: "arch.stake", Value: n.Arch.Stake})
	}
	for _, change := range changes {
		at, _ = c.with(at, change, -1)
	}
	return at
}
