package cutting

import (
	"cmp"
	"slices"
)

// lead says how a greedy plan chooses its next bar.
type lead int

const (
	byLargest lead = iota // the bar must hold the largest piece left; of the stocks, the one with the least cost per length used
	byValue               // no piece is bound; the least cost per length used
)

// greedy cuts the demand bar by bar from the stocks there are, the fullest filling each time, and repeats a bar as often as it goes.
// It returns false when the stocks run out.
func (j *job) greedy(demand, stock []int, how lead) (plan, bool) {
	demand, stock = slices.Clone(demand), slices.Clone(stock)
	var out plan
	for {
		largest := slices.IndexFunc(demand, func(n int) bool { return n > 0 })
		if largest < 0 {
			return out, true
		}
		if how == byValue {
			largest = -1
		}
		best, ok := j.fullest(demand, stock, largest)
		if !ok {
			return plan{}, false
		}
		out.add(best, best.takeOut(demand, stock, stock[best.stock]))
	}
}

// takeOut takes a pattern out of demand and stock as often as both have it, most times at most, and returns how often.
func (p pattern) takeOut(demand, stock []int, most int) (times int) {
	times = min(most, stock[p.stock])
	for i, n := range p.counts {
		if n > 0 {
			times = min(times, demand[i]/n)
		}
	}
	for i, n := range p.counts {
		demand[i] -= n * times
	}
	stock[p.stock] -= times
	return times
}

// fullest returns the bar with the least cost per length used that the demand fills from the stocks there are, and false where none holds a piece.
// A bound size is in it at least once; -1 binds none.
func (j *job) fullest(demand, stock []int, bound int) (best pattern, ok bool) {
	if bound >= 0 {
		demand[bound]--
		defer func() { demand[bound]++ }()
	}
	fill := func(room int) []int { return j.stuff(demand, room) }
	if j.budget > 0 {
		j.budget -= j.filled.fill(j.sizes, demand, j.lengths(), j.length)
		fill = j.filled.counts
	}
	var bestCost, bestUsed int64
	for _, s := range j.order {
		room := int(j.stocks[s].Length)
		if bound >= 0 {
			room -= j.sizes[bound]
		}
		if stock[s] == 0 || room < 0 {
			continue
		}
		counts := fill(room)
		if bound >= 0 {
			counts[bound]++
		}
		used := int64(j.used(counts))
		if used == 0 {
			continue
		}
		price := j.stocks[s].Price
		// Cross-multiplied: prices stay below 2^40 and lengths below 2^22.
		if !ok || cmp.Or(cmp.Compare(price*bestUsed, bestCost*used), cmp.Compare(bestUsed, used)) < 0 {
			best, bestCost, bestUsed, ok = pattern{s, counts}, price, used, true
		}
	}
	return best, ok
}

// stuff fills the room with the largest pieces that go, one size after another.
func (j *job) stuff(demand []int, room int) []int {
	counts := make([]int, len(j.sizes))
	for i, w := range j.sizes {
		counts[i] = min(demand[i], room/w)
		room -= counts[i] * w
	}
	return counts
}

// settle moves each bar's pieces to the cheapest stock that holds them, and of equals the shortest: what is owned goes to the bars where it
// saves most.
func (j *job) settle(p plan) plan {
	type bar struct {
		counts []int
		used   int
	}
	var bars []bar
	for k, q := range p.patterns {
		for range p.times[k] {
			bars = append(bars, bar{q.counts, j.used(q.counts)})
		}
	}
	slices.SortStableFunc(bars, func(a, b bar) int { return cmp.Compare(b.used, a.used) })
	stocks := ranked(len(j.stocks), func(a, b int) int {
		return cmp.Or(cmp.Compare(j.stocks[a].Price, j.stocks[b].Price), cmp.Compare(j.stocks[a].Length, j.stocks[b].Length))
	})
	left := j.counts()
	var out plan
	for _, b := range bars {
		at := slices.IndexFunc(stocks, func(s int) bool { return left[s] > 0 && int(j.stocks[s].Length) >= b.used })
		if at < 0 {
			return p // a limited stock went to another bar; leave the plan as it was
		}
		left[stocks[at]]--
		out.add(pattern{stocks[at], b.counts}, 1)
	}
	if cmp.Or(cmp.Compare(j.cost(out), j.cost(p)), j.tidier(out.gathered(), p.gathered())) < 0 {
		return out
	}
	return p
}

// counts returns how many of each stock there are.
func (j *job) counts() []int {
	n := make([]int, len(j.stocks))
	for i, s := range j.stocks {
		n[i] = s.Most
	}
	return n
}
