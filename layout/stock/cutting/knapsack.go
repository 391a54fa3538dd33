package cutting

// table is a bounded knapsack table: for every capacity the greatest worth that fits, and how many of each size make it.
type table struct {
	sizes []int
	best  []int64   // by capacity
	takes [][]int32 // by size, by capacity: how many of it the best of the sizes so far takes
}

// fill works out the table for capacities up to length, taking at most most[i] of size i. Sizes without worth are left out. It
// returns the number of cells visited.
//
// Where more of a size are wanted than the length holds, one pass takes one more as often as it pays. Other counts are split into 1, 2, 4, …
// and a rest, each then taken or not; the sum of any such choice is any count up to most.
func (t *table) fill(sizes, most []int, worth []int64, length int) int64 {
	t.sizes = sizes
	t.best = clean(t.best, length+1)
	for len(t.takes) < len(sizes) {
		t.takes = append(t.takes, nil)
	}
	cells := int64(0)
	for i, w := range sizes {
		t.takes[i] = clean(t.takes[i], length+1)
		left := min(most[i], length/w)
		if worth[i] <= 0 || left == 0 {
			continue
		}
		if left == length/w {
			// Both views of the table are one: what was just written is read again, and a count grows by one each time.
			n := length + 1 - w
			before, after := t.best[:n], t.best[w:][:n]
			took, takes := t.takes[i][:n], t.takes[i][w:][:n]
			for c, without := range before {
				if with := without + worth[i]; with > after[c] {
					after[c], takes[c] = with, took[c]+1
				}
			}
			cells += int64(n)
			continue
		}
		for lot := 1; left > 0; lot *= 2 {
			lot = min(lot, left)
			left -= lot
			weight, value := lot*w, int64(lot)*worth[i]
			n := length + 1 - weight
			before, after := t.best[:n], t.best[weight:][:n]
			took, takes := t.takes[i][:n], t.takes[i][weight:][:n]
			for c := n - 1; c >= 0; c-- {
				if with := before[c] + value; with > after[c] {
					after[c], takes[c] = with, took[c]+int32(lot)
				}
			}
			cells += int64(n)
		}
	}
	return cells
}

// counts returns how many of each size make the best worth at the capacity.
func (t *table) counts(capacity int) []int {
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
