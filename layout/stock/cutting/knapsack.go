package cutting

// number is what worth is reckoned in: floats while the relaxation is solved, integers for the proof.
type number interface{ int64 | float64 }

// table is a bounded knapsack table: for every capacity the greatest worth that fits, and how many of each size make it.
type table[T number] struct {
	sizes []int
	best  []T       // by capacity
	takes [][]int32 // by size, by capacity: how many of it the best of the sizes so far takes
}

// fill works out the table for capacities up to length, taking at most most[i] of size i. Sizes without worth are left out. It
// returns the number of cells visited.
//
// Counts are split into 1, 2, 4, … and a rest, each then taken or not; the sum of any such choice is any count up to most.
func (t *table[T]) fill(sizes, most []int, worth []T, length int) int64 {
	t.sizes = sizes
	t.best = clean(t.best, length+1)
	for len(t.takes) < len(sizes) {
		t.takes = append(t.takes, nil)
	}
	cells := int64(0)
	for i, w := range sizes {
		t.takes[i] = clean(t.takes[i], length+1)
		left := min(most[i], length/w)
		if worth[i] <= 0 {
			continue
		}
		takes := t.takes[i]
		for lot := 1; left > 0; lot *= 2 {
			n := min(lot, left)
			left -= n
			weight, value := n*w, T(n)*worth[i]
			for c := length; c >= weight; c-- {
				if with := t.best[c-weight] + value; with > t.best[c] {
					t.best[c] = with
					takes[c] = takes[c-weight] + int32(n)
				}
			}
			cells += int64(length - weight + 1)
		}
	}
	return cells
}

// counts returns how many of each size make the best worth at the capacity.
func (t *table[T]) counts(capacity int) []int {
	counts := make([]int, len(t.sizes))
	for i := len(t.sizes) - 1; i >= 0; i-- {
		counts[i] = int(t.takes[i][capacity])
		capacity -= counts[i] * t.sizes[i]
	}
	return counts
}

// clean returns n zeros, in the old slice where it is long enough.
func clean[T any](old []T, n int) []T {
	if cap(old) < n {
		return make([]T, n)
	}
	old = old[:n]
	clear(old)
	return old
}
