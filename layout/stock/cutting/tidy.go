package cutting

import (
	"cmp"
	"slices"
)

// Of plans that cost the same, the one that draws the least length of stock is better, then the one with fewest different patterns, then
// the one with the longest single offcut. Nothing is proven of these three.

// tidier compares two plans of one cost: below zero where the first is better.
func (j *job) tidier(p, q plan) int {
	length := func(p plan) (sum int64) {
		for k, q := range p.patterns {
			sum += j.stocks[q.stock].Length * int64(p.times[k])
		}
		return sum
	}
	return cmp.Or(cmp.Compare(length(p), length(q)), cmp.Compare(len(p.patterns), len(q.patterns)), cmp.Compare(j.longestRest(q), j.longestRest(p)))
}

func (j *job) longestRest(p plan) int {
	most := 0
	for _, q := range p.patterns {
		most = max(most, j.rest(q))
	}
	return most
}

// rest returns the length that a pattern leaves.
func (j *job) rest(p pattern) int { return int(j.stocks[p.stock].Length) - j.used(p.counts) }

// tidy betters a plan in small steps that keep its cost: bars of two patterns cut alike, and pieces moved so that one offcut grows.
func (j *job) tidy(p plan) plan {
	p = p.gathered()
	for better := true; better; {
		p, better = j.alike(p)
	}
	until := j.budget - tidying
	for better := true; better; {
		p, better = j.moved(p, until)
	}
	return p
}

// tidying is how many steps may go into longer offcuts: a few milliseconds.
const tidying = 3_000_000

// gathered returns the plan with each pattern once.
func (p plan) gathered() plan {
	var out plan
	for k, q := range p.patterns {
		at := slices.IndexFunc(out.patterns, func(o pattern) bool { return o.stock == q.stock && slices.Equal(o.counts, q.counts) })
		if at < 0 {
			out.add(q, p.times[k])
			continue
		}
		out.times[at] += p.times[k]
	}
	return out
}

// alike finds two patterns on one stock whose pieces spread evenly over all their bars, and cuts these alike. The even pattern fits: it
// is as long as the two on average.
func (j *job) alike(p plan) (plan, bool) {
	for a := range p.patterns {
	pair:
		for b := a + 1; b < len(p.patterns); b++ {
			if p.patterns[a].stock != p.patterns[b].stock {
				continue
			}
			bars := p.times[a] + p.times[b]
			counts := make([]int, len(j.sizes))
			for i := range counts {
				pieces := p.times[a]*p.patterns[a].counts[i] + p.times[b]*p.patterns[b].counts[i]
				if pieces%bars != 0 {
					continue pair
				}
				counts[i] = pieces / bars
			}
			out := plan{slices.Clone(p.patterns), slices.Clone(p.times)}
			out.patterns[a].counts, out.times[a] = counts, bars
			out.patterns, out.times = slices.Delete(out.patterns, b, b+1), slices.Delete(out.times, b, b+1)
			return out.gathered(), true
		}
	}
	return p, false
}

// moved finds two single bars of which one can be filled from both so well that the other leaves the longest offcut of the plan. It looks
// until the budget is down so far.
func (j *job) moved(p plan, until int64) (plan, bool) {
	longest := j.longestRest(p)
	for a, first := range p.patterns {
		for b, second := range p.patterns {
			if a == b || p.times[a] != 1 || p.times[b] != 1 || j.rest(first)+j.rest(second) <= longest || j.budget <= until {
				continue
			}
			both := slices.Clone(first.counts)
			for i, n := range second.counts {
				both[i] += n
			}
			room := int(j.stocks[first.stock].Length)
			j.budget -= j.filled.fill(j.sizes, both, j.lengths(), room)
			full := j.filled.counts(room)
			for i, n := range full {
				both[i] -= n
			}
			if rest := (pattern{second.stock, both}); j.rest(rest) > longest && j.used(both) > 0 {
				out := plan{slices.Clone(p.patterns), slices.Clone(p.times)}
				out.patterns[a].counts, out.patterns[b] = full, rest
				return out.gathered(), true
			}
		}
	}
	return p, false
}

// lengths returns the sizes as worths.
func (j *job) lengths() []int64 {
	worth := make([]int64, len(j.sizes))
	for i, w := range j.sizes {
		worth[i] = int64(w)
	}
	return worth
}
