package cutting

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// descent is a plan in the making: what is cut, and the relaxation of what is left.
type descent struct {
	done   plan
	demand []int // left to be cut
	stock  []int // left to cut from
	left   *relaxation
}

// looks is how many bars a dive tries at a level before it gives up.
const looks = 5

// dive rounds the relaxation to whole bars: whole parts are cut, then the relaxation of what is left is solved and rounded again. Where no part is
// whole, one bar is cut of the largest part that leaves a relaxation below the best plan; a dive ends where none of a few does. At
// each level what is left is also finished greedily, and every finished plan is offered. The first two turns differ in how much they cut at
// a time; later ones choose by size and noise.
func (j *job) dive(root *relaxation, stock []int, turn int, noise *rand.Rand, best *incumbent) {
	at := &descent{demand: j.demand, stock: stock, left: root}
	for at != nil {
		bars, parts := at.split(turn, noise)
		if len(bars.patterns) > 0 {
			at = at.cut(bars, turn, best)
			continue
		}
		from := at
		at = nil
		for k := 0; k < min(looks, len(parts)) && at == nil && j.budget > 0 && !best.done(from.done); k++ {
			at = from.cut(plan{[]pattern{parts[k].pattern}, []int{1}}, turn, best)
		}
	}
}

// fraction is a pattern of which a relaxation has less than a bar.
type fraction struct {
	pattern
	size float64
}

// split returns the whole bars of the relaxation, and the patterns of which it has parts of a bar, the largest part first.
func (d *descent) split(turn int, noise *rand.Rand) (bars plan, parts []fraction) {
	for row, b := range d.left.basis {
		c := d.left.columns[b]
		if c.counts == nil {
			continue
		}
		x := d.left.values[row]
		whole := int(x + 0.001)
		part := x - float64(whole)
		if turn > 1 {
			part *= 0.5 + noise.Float64()
		}
		if turn == 1 && part > 0.75 {
			whole++
		}
		if whole > 0 {
			bars.add(c.pattern, whole)
		}
		if part > 0.001 {
			parts = append(parts, fraction{c.pattern, part})
		}
	}
	slices.SortStableFunc(parts, func(a, b fraction) int { return cmp.Compare(b.size, a.size) })
	return bars, parts
}

// cut returns the descent with more bars cut, and nil where nothing is left to cut or no plan below can better the best.
func (d *descent) cut(bars plan, turn int, best *incumbent) *descent {
	j := best.job
	next := &descent{demand: slices.Clone(d.demand), stock: slices.Clone(d.stock)}
	taken := next.take(bars)
	if len(taken.patterns) == 0 {
		return nil
	}
	next.done = d.done.join(taken)
	if !slices.ContainsFunc(next.demand, func(n int) bool { return n > 0 }) {
		best.offer(next.done)
		return nil
	}
	next.left = d.left.less(next.demand, box{make([]int, len(next.stock)), next.stock})
	next.left.solve()
	if j.budget <= 0 || best.met(j.cost(next.done)+int64(math.Ceil(next.left.cost()-nearly))) {
		return nil
	}
	if rest, ok := j.greedy(next.demand, next.stock, lead(turn%2)); ok {
		best.offer(next.done.join(rest))
	}
	return next
}

// nearly is how far below a whole coin the cost of a relaxation may pass for it.
const nearly = 0.05

// take takes bars out of demand and stock, as far as both go, and returns them trimmed to the demand.
func (d *descent) take(bars plan) plan {
	var out plan
	for k, p := range bars.patterns {
		counts, some := trimmed(p.counts, d.demand)
		if !some || d.stock[p.stock] < 1 {
			continue
		}
		p.counts = counts
		out.add(p, p.takeOut(d.demand, d.stock, bars.times[k]))
	}
	return out
}
