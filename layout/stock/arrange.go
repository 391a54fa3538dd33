package stock

import (
	"cmp"
	"slices"

	"hoopwright/layout/stock/cutting"
)

// batch is bars that are cut alike: the first length from all of them, then the next, so that the saw's stop is set once for each.
type batch struct {
	stock  int
	pieces []int // indices into the problem's pieces
	times  int
}

// mostStarts is how many first batches arrange tries; tunnels with more differ in every piece, and no order helps them much.
const mostStarts = 12

// arrange puts the bars in batches, and the batches and the pieces within each in an order in which the stop is set seldom: sticks
// that need no cut come first; then, for the best first batch, each batch that follows has the length the stop is at.
func arrange(p cutting.Problem, bars []cutting.Bar) []cutting.Bar {
	list := batches(p, bars)
	whole := 0
	for whole < len(list) && list[whole].uncut(p) {
		whole++
	}
	var best []batch
	least := 0
	for first := range min(len(list)-whole, mostStarts) {
		order, settings := follow(p, list[whole:], first)
		if best == nil || settings < least {
			best, least = order, settings
		}
	}
	var out []cutting.Bar
	for _, b := range slices.Concat(list[:whole], best) {
		for range b.times {
			out = append(out, cutting.Bar{Stock: b.stock, Pieces: b.pieces})
		}
	}
	return out
}

// follow orders batches from the first on: each goes on with the length the stop is at, where any can, and ends with the length that
// most others wait for. It returns how often the stop is set.
func follow(p cutting.Problem, list []batch, first int) (order []batch, settings int) {
	left := slices.Clone(list)
	stop := -1
	for next := first; len(left) > 0; next = max(0, slices.IndexFunc(left, func(b batch) bool { return slices.Contains(b.pieces, stop) })) {
		b := left[next]
		b.pieces = slices.Clone(b.pieces)
		left = slices.Delete(left, next, next+1)
		last := b.pieces[len(b.pieces)-1]
		for _, k := range b.pieces {
			if last == stop || k != stop && waiting(left, k) > waiting(left, last) {
				last = k
			}
		}
		rank := map[int]int{stop: -1}
		if last != stop {
			rank[last] = 1
		}
		slices.SortStableFunc(b.pieces, func(a, c int) int {
			return cmp.Or(cmp.Compare(rank[a], rank[c]), cmp.Compare(p.Pieces[c].Length, p.Pieces[a].Length))
		})
		for _, k := range b.pieces {
			if k != stop {
				settings, stop = settings+1, k
			}
		}
		order = append(order, b)
	}
	return order, settings
}

// batches gathers equal bars: those without a cut first, then those of fewest lengths, longest pieces first.
func batches(p cutting.Problem, bars []cutting.Bar) []batch {
	var list []batch
	for _, bar := range bars {
		same := func(b batch) bool { return b.stock == bar.Stock && slices.Equal(b.pieces, bar.Pieces) }
		entry(&list, batch{stock: bar.Stock, pieces: slices.Clone(bar.Pieces)}, same).times++
	}
	rank := func(b batch) int {
		if b.uncut(p) {
			return 0
		}
		return len(slices.Compact(slices.Clone(b.pieces)))
	}
	slices.SortStableFunc(list, func(a, b batch) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)),
			slices.CompareFunc(b.pieces, a.pieces, func(i, k int) int { return cmp.Compare(p.Pieces[i].Length, p.Pieces[k].Length) }),
			cmp.Compare(a.stock, b.stock))
	})
	return list
}

// uncut reports whether the bars are used as they are sold.
func (b batch) uncut(p cutting.Problem) bool {
	return len(b.pieces) == 1 && p.Pieces[b.pieces[0]].Length == p.Stocks[b.stock].Length
}

// waiting counts the batches that hold the piece.
func waiting(list []batch, piece int) int {
	n := 0
	for _, b := range list {
		if slices.Contains(b.pieces, piece) {
			n++
		}
	}
	return n
}
