package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// hair is what sums of currents and powers may be off by rounding.
const hair = 1e-9

// source is an outlet that can feed lights, with its circuit.
type source struct {
	outlet  spec.Outlet
	circuit int
	volts   measure.Voltage
	ways    [2]approach     // by wall
	most    measure.Current // through one of its sockets: what the best cord carries
}

// sharing says which source feeds each unit.
type sharing struct {
	of       []int       // source of each unit, −1 for none
	walls    []spec.Side // wall along which each is fed
	missing  measure.Current
	used     int // groups of sources in use: circuits, or GFCIs where one circuit has two
	length   measure.Length
	chosen   [][]int // groups of each part
	possible bool    // split was asked for and is possible here; true without split
	proven   bool    // no sharing leaves fewer amps unfed, or as few on fewer groups
}

// better orders sharings by the aims: all fed, fewest circuits, then length of way for the cords' sake.
func (a sharing) better(b sharing) bool {
	if d := a.missing - b.missing; d > hair || d < -hair {
		return d < 0
	}
	return cmp.Or(cmp.Compare(a.used, b.used), cmp.Compare(a.length, b.length)) < 0
}

// sharer finds a sharing.
type sharer struct {
	site    *site
	units   []unit
	sources []source
	circuit []spec.Circuit
	allowed []measure.Current // by circuit, for lights

	walls []spec.Side        // of each unit
	sets  [][]int            // sources that go dark together
	parts [][]int            // units that are fed apart
	far   [][]measure.Length // by source and unit: how the cord lies
	near  [][]int            // by unit: the sources, nearest first
}

// share gives every unit a source. Circuits are taken up one by one, each time the one that leaves the fewest amps unfed, or by the
// shorter way; under split each wall has its own. Then the search looks for a sharing with less unfed or on fewer circuits, and proves that there is none.
func (h *sharer) share(split bool) sharing {
	h.begin(split)
	best := h.fill(make([][]int, len(h.parts)))
	try := func(chosen [][]int) bool {
		s := h.fill(chosen)
		if !s.better(best) {
			return false
		}
		best = s
		return true
	}
	switch len(h.parts) {
	case 1:
		for a := range h.sets {
			try([][]int{{a}})
		}
	case 2: // the best pair of different groups is among the two best of each wall
		for _, a := range h.bestTwo(0) {
			for _, b := range h.bestTwo(1) {
				if a != b {
					try([][]int{{a}, {b}})
				}
			}
		}
	}
	for grown := true; grown && best.missing > hair; {
		base := best.chosen
		grown = false
		for p := range base {
			for _, g := range h.unused(base) {
				grown = try(with(base, p, g)) || grown
			}
		}
	}
	best, proven := h.fewest(best, split)
	best.possible, best.proven = len(h.sets) >= len(h.parts), proven
	return best
}

// begin sorts units and sources for a sharing: one part, or one for each wall.
func (h *sharer) begin(split bool) {
	h.walls = h.sides(split)
	h.sets = h.trips(split)
	h.far = make([][]measure.Length, len(h.sources))
	for k := range h.sources {
		for i, u := range h.units {
			h.far[k] = append(h.far[k], h.way(k, u, h.walls[i]))
		}
	}
	h.near = make([][]int, len(h.units))
	for i := range h.units {
		for k := range h.sources {
			h.near[i] = append(h.near[i], k)
		}
		slices.SortStableFunc(h.near[i], func(a, b int) int { return cmp.Compare(h.far[a][i], h.far[b][i]) })
	}
	h.parts = make([][]int, 2)
	for i := range h.units {
		p := 0
		if split {
			p = int(h.walls[i])
		}
		h.parts[p] = append(h.parts[p], i)
	}
	h.parts = slices.DeleteFunc(h.parts, func(p []int) bool { return len(p) == 0 })
}

// nearer takes up one more group for the part that a unit is in, the one that shortens the ways most; not ok where none is left.
func (h *sharer) nearer(now sharing, unit int) (sharing, bool) {
	p := slices.IndexFunc(h.parts, func(list []int) bool { return slices.Contains(list, unit) })
	var best sharing
	ok := false
	for _, g := range h.unused(now.chosen) {
		s := h.fill(with(now.chosen, p, g))
		if s.missing <= now.missing+hair && s.length < now.length && (!ok || s.length < best.length) {
			best, ok = s, true
		}
	}
	best.possible = now.possible
	return best, ok
}

// unused returns the groups that no part has chosen.
func (h *sharer) unused(chosen [][]int) []int {
	var out []int
	for g := range h.sets {
		if !slices.ContainsFunc(chosen, func(c []int) bool { return slices.Contains(c, g) }) {
			out = append(out, g)
		}
	}
	return out
}

// with returns the chosen groups with one more for a part.
func with(chosen [][]int, part, group int) [][]int {
	out := slices.Clone(chosen)
	out[part] = append(slices.Clone(out[part]), group)
	return out
}

// without returns the chosen groups less a part's ith.
func without(chosen [][]int, part, i int) [][]int {
	out := slices.Clone(chosen)
	out[part] = slices.Delete(slices.Clone(out[part]), i, i+1)
	return out
}

// bestTwo returns the two groups of sources that feed a part best alone.
func (h *sharer) bestTwo(part int) []int {
	order := make([]int, len(h.sets))
	alone := make([]sharing, len(h.sets))
	for g := range h.sets {
		order[g] = g
		alone[g] = h.fill(with(make([][]int, len(h.parts)), part, g))
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case alone[a].better(alone[b]):
			return -1
		case alone[b].better(alone[a]):
			return 1
		}
		return 0
	})
	return order[:min(2, len(order))]
}

// fill gives each part's units to the sources of its chosen groups, nearest first, each to the nearest source with room.
func (h *sharer) fill(chosen [][]int) sharing {
	out := sharing{of: make([]int, len(h.units)), walls: h.walls, chosen: chosen}
	for i := range out.of {
		out.of[i] = -1
	}
	circuits := slices.Clone(h.allowed)
	outlets := make([]measure.Current, len(h.sources))
	for k, s := range h.sources {
		outlets[k] = s.limit()
	}
	for p, part := range h.parts {
		var from []int
		for _, g := range chosen[p] {
			from = append(from, h.sets[g]...)
		}
		for _, w := range h.ways(part, from) {
			u := h.units[w.unit]
			for _, k := range w.sources {
				s := h.sources[k]
				need := u.draws(s.volts)
				if !u.takes(s.volts) || need > s.most+hair || need > circuits[s.circuit]+hair || need > outlets[k]+hair {
					continue
				}
				circuits[s.circuit] -= need
				outlets[k] -= need
				out.of[w.unit] = k
				out.length += h.far[k][w.unit]
				break
			}
			if out.of[w.unit] < 0 {
				out.missing += h.wanted(u)
			}
		}
		for _, g := range chosen[p] {
			if slices.ContainsFunc(part, func(i int) bool { return slices.Contains(h.sets[g], out.of[i]) }) {
				out.used++
			}
		}
	}
	return out
}

// wanted returns what a unit would draw from the first source that it belongs on; nothing where there is none.
func (h *sharer) wanted(u unit) measure.Current {
	for _, s := range h.sources {
		if u.takes(s.volts) {
			return u.draws(s.volts)
		}
	}
	return 0
}
