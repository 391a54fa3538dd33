package layout

import (
	"math"
	"slices"

	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

const (
	mostRungs = 12    // that it climbs
	leastGain = 0.005 // of the score, for which a rung is worth its while
	freeStep  = 2.0   // dollars, that any change is worth of work
)

// rung is a spec on the ladder with the change that led to it and what it comes to.
type rung struct {
	change  weather.Change
	spec    *spec.Spec
	weather *weather.Weather
	price   float64
}

// Cures returns the ladder of cures of a tunnel that misses the gusts it is to reach: from rung to rung the change that gains most for its price, until it reaches them or nothing helps, one rung
// for each key, less those that it reaches them without. It is worked out on call. A tunnel that reaches its aims has none, nor has one with arches that do not stand in their plane.
func (p *Plan) Cures() (ladder []weather.Cure) {
	if p.Weather == nil || p.Weather.Factor == 0 || p.Weather.Reaches() >= 1 {
		return nil
	}
	c := newChooser(p)
	start := rung{spec: p.Spec, weather: p.Weather, price: weather.Price(p.Spec)}
	changes := c.climb(start)
	for i := 0; i < len(changes) && len(changes) > 1; i++ { // what it reaches its aims without
		short := slices.Delete(slices.Clone(changes), i, i+1)
		if w := c.solve(made(start.spec, short), false); w != nil && w.Reaches() >= 1 {
			changes = short
			i = -1
		}
	}
	before := start
	for i, change := range changes {
		n := made(start.spec, changes[:i+1])
		kinds := c.shape(n)
		if kinds == nil {
			continue
		}
		at := rung{change, n, c.tunnel(n, kinds, false, false), weather.Price(n)}
		ladder = append(ladder, weather.Cure{Change: change, Inside: at.weather.InsideGust(), Down: at.weather.DownGust(), Price: math.Round((at.price-before.price)*100) / 100})
		before = at
	}
	return ladder
}

// made returns the spec with changes made one after the other.
func made(s *spec.Spec, changes []weather.Change) *spec.Spec {
	for _, c := range changes {
		s = c.On(s)
	}
	return s
}

// climb takes rung after rung, and returns the changes: of each key the last, where the first was.
func (c *chooser) climb(at rung) (changes []weather.Change) {
	for range mostRungs {
		if at.weather.Reaches() >= 1 {
			break
		}
		var best rung
		most := 0.0
		for _, change := range weather.Changes(at.spec, c.tune[c.of[0]]) {
			n := change.On(at.spec)
			w := c.solve(n, false)
			if w == nil || c.plan.groundWorse(n) {
				continue
			}
			price := weather.Price(n)
			gain := w.Score() - at.weather.Score()
			if worth := gain / (math.Max(price-at.price, 0) + freeStep); gain > leastGain && worth > most {
				best, most = rung{change, n, w, price}, worth
			}
		}
		if most == 0 {
			break
		}
		if i := slices.IndexFunc(changes, func(x weather.Change) bool { return x.Key == best.change.Key }); i >= 0 {
			changes[i] = best.change
		} else {
			changes = append(changes, best.change)
		}
		at = best
	}
	return changes
}
