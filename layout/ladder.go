package layout

import (
	"math"

	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

const (
	mostRungs = 6     // of the ladder
	leastGain = 0.005 // of the score, for which a rung is worth its while
	freeStep  = 2.0   // dollars, that any change is worth of work
)

// rung is a spec on the ladder with what it comes to.
type rung struct {
	weather.Variant
	weather *weather.Weather
	price   float64
}

// Cures returns the ladder of cures of a tunnel that misses the gusts it is to reach: from rung to rung the change that gains most for its price, until it reaches them or nothing helps, less the rungs
// that it reaches them without. It is worked out on call. A tunnel that reaches its aims has none, nor has one with arches that do not stand.
func (p *Plan) Cures() (ladder []weather.Cure) {
	if p.Weather == nil || len(p.Weather.Bears) == 0 || p.Weather.Reaches() >= 1 {
		return nil
	}
	c := newChooser(p)
	start := rung{Variant: weather.Variant{Spec: p.Spec}, weather: p.Weather, price: weather.Price(p.Spec)}
	rungs := c.climb(start)
	for i := 0; i < len(rungs); i++ { // what it reaches its aims without
		if short, ok := c.without(start, rungs, i); ok {
			rungs = short
			i = -1
		}
	}
	before := start
	for _, r := range rungs {
		if kinds := c.shape(r.Spec); kinds != nil {
			r.weather = c.tunnel(r.Spec, kinds, false, false)
		}
		ladder = append(ladder, weather.Cure{Change: r.Change, Inside: r.weather.InsideGust(), Down: r.weather.DownGust(), Price: math.Round((r.price-before.price)*100) / 100})
		before = r
	}
	return ladder
}

// climb takes rung after rung.
func (c *chooser) climb(at rung) (rungs []rung) {
	for range mostRungs {
		if at.weather.Reaches() >= 1 {
			break
		}
		var best rung
		most := 0.0
		for _, v := range weather.Variants(at.Spec, c.tune[c.of[0]]) {
			w := c.solve(v.Spec, false)
			if w == nil || len(w.Bears) == 0 {
				continue
			}
			price := weather.Price(v.Spec)
			gain := w.Score() - at.weather.Score()
			if worth := gain / (math.Max(price-at.price, 0) + freeStep); gain > leastGain && worth > most {
				best, most = rung{v, w, price}, worth
			}
		}
		if most == 0 {
			break
		}
		rungs = append(rungs, best)
		at = best
	}
	return rungs
}

// without leaves out one rung, and reports whether the last of those left reaches the aims all the same.
func (c *chooser) without(start rung, rungs []rung, skip int) (short []rung, ok bool) {
	if len(rungs) < 2 || rungs[len(rungs)-1].weather.Reaches() < 1 {
		return nil, false
	}
	at := start.Spec
	for i, r := range rungs {
		if i == skip {
			continue
		}
		n, ok := again(at, r.Variant, c)
		if !ok {
			return nil, false
		}
		at = n.Spec
		w := c.solve(at, false)
		if w == nil {
			return nil, false
		}
		short = append(short, rung{n, w, weather.Price(at)})
	}
	return short, short[len(short)-1].weather.Reaches() >= 1
}

// again makes a variant's change on another spec.
func again(s *spec.Spec, v weather.Variant, c *chooser) (weather.Variant, bool) {
	for _, n := range weather.Variants(s, c.tune[c.of[0]]) {
		if n.Change.Key == v.Change.Key {
			return n, true
		}
	}
	return weather.Variant{}, false
}
