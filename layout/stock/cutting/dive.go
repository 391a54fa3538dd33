package cutting

import (
	"math/rand/v2"
	"slices"
)

// dive rounds the relaxation to whole bars: whole parts are cut, then the relaxation of what is left is solved and rounded again, and
// where no part is whole the largest is cut once. At each level what is left is also finished greedily, and every finished plan goes to keep.
// The first two turns differ in how much they cut at a time; later ones choose by size and noise.
func (j *job) dive(root *relaxation, stock []int, turn int, noise *rand.Rand, keep func(plan)) {
	demand, stock := slices.Clone(j.demand), slices.Clone(stock)
	var done plan
	for r := root; ; {
		cut := r.rounded(demand, stock, turn, noise)
		if len(cut.patterns) == 0 {
			return
		}
		done = done.join(cut)
		if !slices.ContainsFunc(demand, func(n int) bool { return n > 0 }) {
			keep(done)
			return
		}
		for _, how := range []lead{byLargest, byValue} {
			if rest, ok := j.greedy(demand, stock, how); ok {
				keep(done.join(rest))
			}
		}
		if j.budget <= 0 {
			return
		}
		r = j.newRelaxation(slices.Clone(demand), box{make([]int, len(stock)), stock}, r.patterns())
		r.solve()
	}
}

// rounded takes whole bars out of the relaxation, and their pieces and stocks out of demand and stock.
func (r *relaxation) rounded(demand, stock []int, turn int, noise *rand.Rand) plan {
	var out plan
	take := func(p pattern, times int) {
		counts, some := trimmed(p.counts, demand)
		if !some || times < 1 || stock[p.stock] < 1 {
			return
		}
		times = min(times, stock[p.stock])
		for i, n := range counts {
			if n > 0 {
				times = min(times, demand[i]/n)
			}
		}
		for i, n := range counts {
			demand[i] -= n * times
		}
		stock[p.stock] -= times
		out.add(pattern{p.stock, counts}, times)
	}
	var best pattern
	most := 0.0
	for row, b := range r.basis {
		c := r.columns[b]
		if c.counts == nil {
			continue
		}
		x := r.values[row]
		whole := int(x + 0.001)
		part := x - float64(whole)
		if turn > 1 {
			part *= 0.5 + noise.Float64()
		}
		if turn == 1 && part > 0.75 {
			whole++
		}
		take(c.pattern, whole)
		if part > most {
			best, most = c.pattern, part
		}
	}
	if len(out.patterns) == 0 && best.counts != nil {
		take(best, 1)
	}
	return out
}

// patterns returns the patterns written down so far.
func (r *relaxation) patterns() []pattern {
	var list []pattern
	for _, c := range r.columns {
		if c.counts != nil {
			list = append(list, c.pattern)
		}
	}
	return list
}
