// Sharing step by step: groups taken up one by one, plugs on the nearest.

package sharing

import (
	"cmp"
	"slices"
)

// Share gives every plug a source.
func Share(p *Problem) Plan {
	best := p.fill(make([][]int, p.Parts))
	try := func(chosen [][]int) bool {
		s := p.fill(chosen)
		if s.compare(best) >= 0 {
			return false
		}
		best = s
		return true
	}
	if p.Parts == 2 { // the best pair of different groups is among the two best of each part
		for _, a := range p.bestTwo(0) {
			for _, b := range p.bestTwo(1) {
				if a != b {
					try([][]int{{a}, {b}})
				}
			}
		}
	}
	for grown := true; grown && best.Missing > hair; {
		base := best.Chosen
		grown = false
		for part := range base {
			for _, g := range p.unused(base) {
				grown = try(with(base, part, g)) || grown
			}
		}
	}
	return p.fewest(best)
}

// More takes up one more group for a part, or for any, each in turn, and returns the plans, shortest ways first, that leave no more unfed.
func (p *Problem) More(now Plan) []Plan {
	var out []Plan
	for part := range now.Chosen {
		for _, g := range p.unused(now.Chosen) {
			if s := p.fill(with(now.Chosen, part, g)); s.Missing <= now.Missing+hair && s.Used > now.Used {
				out = append(out, s)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Plan) int { return cmp.Compare(a.Length, b.Length) })
	return out
}

// Fewer gives back one group, each in turn, and returns the plans that leave no more unfed.
func (p *Problem) Fewer(now Plan) []Plan {
	var out []Plan
	for part, list := range now.Chosen {
		for i := range list {
			chosen := slices.Clone(now.Chosen)
			chosen[part] = slices.Delete(slices.Clone(list), i, i+1)
			if s := p.fill(chosen); s.Missing <= now.Missing+hair {
				out = append(out, s)
			}
		}
	}
	return out
}

// unused returns the groups that no part has chosen.
func (p *Problem) unused(chosen [][]int) []int {
	var out []int
	for g := range p.Groups {
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

// bestTwo returns the two groups of sources that feed a part best alone.
func (p *Problem) bestTwo(part int) []int {
	order := make([]int, len(p.Groups))
	alone := make([]Plan, len(p.Groups))
	for g := range p.Groups {
		order[g] = g
		alone[g] = p.fill(with(make([][]int, p.Parts), part, g))
	}
	slices.SortStableFunc(order, func(a, b int) int { return alone[a].compare(alone[b]) })
	return order[:min(2, len(order))]
}

// fill gives each part's plugs to the sources of its chosen groups, each to the nearest source with room, those with the shortest way first.
func (p *Problem) fill(chosen [][]int) Plan {
	p.ready()
	out := Plan{Of: make([]int, len(p.Plugs)), Chosen: chosen}
	owner := make([]int, len(p.Sources)) // part + 1, 0 for none
	for part, list := range chosen {
		for _, g := range list {
			for _, k := range p.Groups[g] {
				owner[k] = part + 1
			}
		}
	}
	left := slices.Clone(p.Allowed)
	room := make([]float64, len(p.Sources))
	for k, s := range p.Sources {
		room[k] = s.Limit
	}
	used := make([]bool, len(p.Sources))
	for _, i := range p.order(owner) {
		plug := p.Plugs[i]
		out.Of[i] = -1
		nearest := slices.IndexFunc(p.near[i], func(k int) bool {
			return p.fits(i, k, owner[k]) && plug.Draws[k] <= left[p.Sources[k].Circuit]+hair && plug.Draws[k] <= room[k]+hair
		})
		if nearest < 0 {
			out.Missing += plug.Wants
			continue
		}
		best := p.near[i][nearest]
		left[p.Sources[best].Circuit] -= plug.Draws[best]
		room[best] -= plug.Draws[best]
		out.Of[i] = best
		out.Length += plug.Ways[best]
		used[best] = true
	}
	for _, g := range p.Groups {
		if slices.ContainsFunc(g, func(k int) bool { return used[k] }) {
			out.Used++
		}
	}
	return out
}

// fits reports whether a plug may go on a source that an owner has.
func (p *Problem) fits(plug, source, owner int) bool {
	u := p.Plugs[plug]
	return owner > 0 && (u.Part == Any || u.Part == owner-1) && u.Draws[source] >= 0 && u.Draws[source] <= p.Sources[source].Socket+hair
}

// order sorts the plugs by their shortest way to any owned source; those that any part may feed come last.
func (p *Problem) order(owner []int) []int {
	list := make([]int, len(p.Plugs))
	far := make([]float64, len(p.Plugs))
	for i, u := range p.Plugs {
		list[i] = i
		if n := slices.IndexFunc(p.near[i], func(k int) bool { return p.fits(i, k, owner[k]) }); n >= 0 {
			far[i] = u.Ways[p.near[i][n]]
		}
	}
	last := func(i int) int {
		if p.Plugs[i].Part == Any {
			return 1
		}
		return 0
	}
	slices.SortFunc(list, func(a, b int) int {
		return cmp.Or(cmp.Compare(last(a), last(b)), cmp.Compare(far[a], far[b]), cmp.Compare(a, b))
	})
	return list
}
