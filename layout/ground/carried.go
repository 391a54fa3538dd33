package ground

import (
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// wander is how a spot moves with each reading that went into it: to first order, by the vector for a reading that is one step of the reading error too
// long. Readings are numbered in the order they are taken, and the list rises by them.
type wander []moved

type moved struct {
	reading int
	by      spec.Point
}

// mix returns how a spot moves that follows others: f turns the moves of those by one reading into its own.
func mix(a, b, c wander, f func(a, b, c spec.Point) spec.Point) wander {
	var out wander
	left := [3]wander{a, b, c}
	for {
		next := math.MaxInt
		for _, w := range left {
			if len(w) > 0 {
				next = min(next, w[0].reading)
			}
		}
		if next == math.MaxInt {
			return out
		}
		var by [3]spec.Point
		for i, w := range left {
			if len(w) > 0 && w[0].reading == next {
				by[i], left[i] = w[0].by, w[1:]
			}
		}
		out = append(out, moved{next, f(by[0], by[1], by[2])})
	}
}

// carried is where a marking from printed figures puts every spot, and how each wanders with the readings.
type carried struct {
	units   measure.System
	at      map[Spot]spec.Point
	wander  map[Spot]wander
	reading measure.Length
	taken   int // readings so far
}

// carry follows a marking with the figures as they are printed; a reading is off by practice.Reading at most, evenly spread. A mark's own place is a reading too: one each way where coordinates give it, one
// for each tape where tapes do.
func carry(l Layout, units measure.System, dots []Dot) *carried {
	c := &carried{units: units, at: map[Spot]spec.Point{}, wander: map[Spot]wander{}, reading: practice.Reading(units)}
	for i, m := range l.Marks {
		spot := Spot{AtMark, i}
		c.at[spot] = m.At
		moves := drift{{X: c.reading}, {Y: c.reading}}
		if len(m.drift) > 0 {
			moves = nil
			for _, by := range m.drift { // those are for tapes that are off by limits.Tape
				share := c.reading / practice.OnGround(units).Tape
				moves = append(moves, spec.Point{X: by.X * share, Y: by.Y * share})
			}
		}
		for _, by := range moves {
			c.wander[spot] = append(c.wander[spot], moved{c.take(), by})
		}
	}
	for _, d := range dots {
		hint := spec.Point{}
		if d.How == Chosen || d.How == ChosenAt {
			hint = l.Stakes[d.Spot.Index].At()
		}
		c.at[d.Spot] = d.place(c.at[d.From], c.at[d.To], c.at[d.Zero], hint, units.Taped(d.A), units.Taped(d.B))
		c.wander[d.Spot] = c.follow(d)
	}
	return c
}

func (c *carried) take() int {
	c.taken++
	return c.taken
}

// follow returns how a dot wanders, with the readings that put it there.
func (c *carried) follow(d Dot) wander {
	p, from, to := c.at[d.Spot], c.at[d.From], c.at[d.To]
	switch d.How {
	case ChosenAt:
		u := unit(sub(p, from))
		w := mix(c.wander[d.From], nil, nil, func(a, _, _ spec.Point) spec.Point { return a })
		return append(w, moved{c.take(), along(spec.Point{}, u, c.reading)})
	case OnString:
		u := unit(sub(to, from))
		n := turnRight(u)
		t := dot(u, sub(p, from)) / Distance(from, to)
		w := mix(c.wander[d.From], c.wander[d.To], c.wander[d.Zero], func(a, b, z spec.Point) spec.Point {
			off := dot(n, a)*(1-t) + dot(n, b)*t
			return along(along(spec.Point{}, u, dot(u, z)), n, off)
		})
		off := c.reading
		if c.units.Taped(d.B) == 0 {
			off /= 2 // put under a string by eye, without a tape
		}
		return append(w, moved{c.take(), along(spec.Point{}, u, c.reading)}, moved{c.take(), along(spec.Point{}, n, off)})
	case TwoTapes:
		u, v := unit(sub(p, from)), unit(sub(p, to))
		w := mix(c.wander[d.From], c.wander[d.To], nil, func(a, b, _ spec.Point) spec.Point { return meetAt(u, v, dot(u, a), dot(v, b)) })
		return append(w, moved{c.take(), meetAt(u, v, c.reading, 0)}, moved{c.take(), meetAt(u, v, 0, c.reading)})
	}
	return nil
}

// meetAt returns the move of the crossing of two tapes in the directions u and v when the one is a longer and the other b.
func meetAt(u, v spec.Point, a, b measure.Length) spec.Point {
	det := cross(u, v)
	if measure.Abs(det) < 0.02 { // tapes in one line: the first order says nothing
		det = measure.Length(math.Copysign(0.02, float64(det)))
	}
	return spec.Point{X: (a*v.Y - b*u.Y) / det, Y: (b*u.X - a*v.X) / det}
}

// limit returns how far a check may honestly be off at the normal score: a sum of few readings evenly spread has thinner tails than the normal curve, and
// less is enough (Cornish–Fisher's correction for kurtosis, which is −1.2 of one such reading).
func (c *carried) limit(k Check, score float64) measure.Length {
	from, to := c.at[k.From], c.at[k.To]
	u := unit(sub(to, from))
	list := mix(c.wander[k.From], c.wander[k.To], nil, func(a, b, _ spec.Point) spec.Point { return spec.Point{X: dot(u, sub(b, a))} })
	list = append(list, moved{c.taken + 1, spec.Point{X: c.reading}}) // of the check itself
	squares, fourths, worst := 0.0, 0.0, 0.0
	for _, m := range list {
		x := math.Abs(float64(m.by.X))
		squares, fourths, worst = squares+x*x, fourths+x*x*x*x, worst+x
	}
	kurtosis := -1.2 * fourths / (squares * squares)
	score += score * (score*score - 3) * kurtosis / 24
	spread := min(worst, score*math.Sqrt(squares/3)) // a reading evenly spread over ±e has the variance e²/3
	return measure.Abs(Distance(from, to)-c.units.Taped(k.Distance)) + measure.Length(spread)
}
