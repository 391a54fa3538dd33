package weather

import (
	"math"

	"hoopwright/layout/measure"
)

// demand is what one gust asks of an arch.
type demand struct {
	push     [2]float64 // N, at each foot, level
	lift     [2]float64 // N, of the ground on each foot, upward; less than 0 where it is pulled out
	moment   [2]float64 // N·m, at each foot
	tip      [2]float64 // N·m, of that in the arch's plane
	strength float64    // part of the pipe's strength
	sway     float64    // m, of the crown
	lean     float64    // m, of the crown along the tunnel
	pull     float64    // N, the most of a guy along it
	brace    float64    // N, the most of a brace
	ridge    float64    // N, of the ridge on the crown
}

// sample is a gust's pressure and what it asks.
type sample struct {
	q float64 // Pa
	demand
}

// curve is what rising gusts of one way ask of the arches of one member: up to the one at which they fall, or enough is seen.
type curve struct {
	kind    *Kind
	arch    int
	way     Way
	samples []sample
	falls   float64 // Pa, at which no state is found that stands; 0 where the samples end before
}

// Way is how the wind blows: across the tunnel or along it.
type Way int

// The ways.
const (
	Sideways Way = iota
	Along
)

// String returns the word of the plan's JSON.
func (w Way) String() string { return [...]string{"sideways", "along"}[w] }

// MarshalText is String.
func (w Way) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// at returns what a gust of pressure q asks, by parabolas through three samples in the wind's speed squared; the last beyond.
func (c *curve) at(q float64) demand {
	n := len(c.samples)
	if n == 0 {
		return demand{}
	}
	if q >= c.samples[n-1].q {
		return c.samples[n-1].demand
	}
	i := 1
	for i < n-1 && c.samples[i].q < q {
		i++
	}
	mix := func(of func(*sample) float64) float64 { return c.through(i, q, of) }
	d := demand{
		strength: mix(func(s *sample) float64 { return s.strength }), sway: mix(func(s *sample) float64 { return s.sway }), lean: mix(func(s *sample) float64 { return s.lean }),
		pull: mix(func(s *sample) float64 { return s.pull }), brace: mix(func(s *sample) float64 { return s.brace }), ridge: mix(func(s *sample) float64 { return s.ridge }),
	}
	for f := range 2 {
		d.push[f] = mix(func(s *sample) float64 { return s.push[f] })
		d.lift[f] = mix(func(s *sample) float64 { return s.lift[f] })
		d.moment[f] = mix(func(s *sample) float64 { return s.moment[f] })
		d.tip[f] = mix(func(s *sample) float64 { return s.tip[f] })
	}
	return d
}

// through interpolates one figure at q between the samples i−1 and i: by the parabola through the one before too, where there is one.
func (c *curve) through(i int, q float64, of func(*sample) float64) float64 {
	a, b := &c.samples[i-1], &c.samples[i]
	fa, fb := of(a), of(b)
	t := (q - a.q) / (b.q - a.q)
	v := fa + (fb-fa)*t
	if i < 2 || math.IsInf(fb, 0) {
		return v
	}
	o := &c.samples[i-2]
	slope := (fa - of(o)) / (a.q - o.q)
	bow := ((fb-fa)/(b.q-a.q) - slope) / (b.q - o.q)
	return v + bow*(q-a.q)*(q-b.q)
}

// first returns the pressure at which a figure first comes to 1, and false where it does not within the samples.
func (c *curve) first(of func(*demand) float64) (float64, bool) {
	for i := range c.samples {
		if of(&c.samples[i].demand) < 1 {
			continue
		}
		if i == 0 {
			return 0, true
		}
		figure := func(s *sample) float64 { return of(&s.demand) }
		low, high := c.samples[i-1].q, c.samples[i].q
		for range 40 {
			if mid := (low + high) / 2; c.through(i, mid, figure) >= 1 {
				high = mid
			} else {
				low = mid
			}
		}
		return low, true
	}
	return 0, false
}

// The gusts tried: close enough together for parabolas between them.
const (
	gustStep = 4 * measure.MPH
	mostGust = 75 * measure.MPH
)

// gusts are the speeds tried, rising from none.
func gusts() (list []measure.Speed) {
	list = []measure.Speed{0, 8 * measure.MPH, 12 * measure.MPH}
	for v := 16 * measure.MPH; v <= mostGust; v += gustStep {
		list = append(list, v)
	}
	return list
}

// rising lets the pressure of the wind rise, at saying whether what it blows on stands in it and whether no more need be known, and returns the pressure at which it falls: 0 where it does not.
func (s *watch) rising(at func(q float64) (stands, done bool)) (falls float64) {
	last := measure.Speed(0)
	for _, v := range gusts() {
		stands, done := at(pressure(v))
		if done {
			return 0
		}
		if stands {
			last = v
			continue
		}
		low, high := last, v
		s.fell(pressure(v))
		for high-low > measure.MPH/4 && !s.damaged(pressure(high)) {
			mid := (low + high) / 2
			if stands, _ := at(pressure(mid)); stands {
				low = mid
			} else {
				high = mid
				s.fell(pressure(high))
			}
			if s.past(pressure(low)) {
				return 0
			}
		}
		return pressure(max(low, measure.MPH/100))
	}
	return 0
}
