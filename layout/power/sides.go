package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// sides gives each unit its wall. What is on either goes, under split, to the wall with less on it, else to the wall that some
// outlet reaches by the shorter way.
func (h *sharer) sides(split bool) []spec.Side {
	out := make([]spec.Side, len(h.units))
	var on [2]measure.Power
	watts := func(u unit) measure.Power {
		if u.supply {
			return u.watts
		}
		return measure.Power(float64(u.amps) * float64(u.volts))
	}
	for i, u := range h.units {
		if u.wall != either {
			out[i] = u.wall.side()
			on[out[i]] += watts(u)
		}
	}
	for i, u := range h.units {
		if u.wall != either {
			continue
		}
		switch {
		case split && on[spec.Right] < on[spec.Left], !split && h.nearest(u, spec.Right) < h.nearest(u, spec.Left):
			out[i] = spec.Right
		}
		on[out[i]] += watts(u)
	}
	return out
}

// nearest returns the shortest way from any source to a unit by a wall.
func (h *sharer) nearest(u unit, side spec.Side) measure.Length {
	best := measure.Length(-1)
	for k := range h.sources {
		if d := h.way(k, u, side); best < 0 || d < best {
			best = d
		}
	}
	return best
}

// way returns how a cord lies from a source to a unit by a wall.
func (h *sharer) way(k int, u unit, side spec.Side) measure.Length {
	return h.site.fromOutlet(h.sources[k].ways[side], h.site.spot(u.end, side))
}

// trips returns the sources in groups that go dark together: by circuit; where split is asked for and one circuit has all, by where
// their GFCIs are reset.
func (h *sharer) trips(split bool) [][]int {
	var out [][]int
	for c := range h.circuit {
		var set []int
		for k, s := range h.sources {
			if s.circuit == c {
				set = append(set, k)
			}
		}
		if len(set) > 0 {
			out = append(out, set)
		}
	}
	if !split || len(out) != 1 || !h.circuit[h.sources[out[0][0]].circuit].GFCI {
		return out
	}
	var apart [][]int
	var resets []string
	for _, k := range out[0] {
		r := h.sources[k].outlet.ResetAt
		at := slices.Index(resets, r)
		if at < 0 {
			at = len(resets)
			resets = append(resets, r)
			apart = append(apart, nil)
		}
		apart[at] = append(apart[at], k)
	}
	return apart
}

// wayTo is a unit with sources from the nearest on.
type wayTo struct {
	unit    int
	sources []int
	length  measure.Length
}

// ways orders units by their shortest way, and each unit's sources by theirs.
func (h *sharer) ways(part, from []int) []wayTo {
	in := make([]bool, len(h.sources))
	for _, k := range from {
		in[k] = true
	}
	out := make([]wayTo, 0, len(part))
	for _, i := range part {
		w := wayTo{unit: i, sources: make([]int, 0, len(from))}
		for _, k := range h.near[i] {
			if in[k] {
				w.sources = append(w.sources, k)
			}
		}
		if len(w.sources) > 0 {
			w.length = h.far[w.sources[0]][i]
		}
		out = append(out, w)
	}
	slices.SortFunc(out, func(a, b wayTo) int { return cmp.Or(cmp.Compare(a.length, b.length), cmp.Compare(a.unit, b.unit)) })
	return out
}
