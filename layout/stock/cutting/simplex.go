package cutting

import "math"

// The revised simplex method with a dense inverse of the basis.

const (
	tiny = 1e-9
	// firm is the least entry that may be pivoted on.
	firm = 1e-7
	// refreshEvery is how many pivots the basic values are carried along before they are reckoned afresh.
	refreshEvery = 40
)

// solve runs until no pattern would lower the cost or the work is spent. It returns the worths by job size that its dual values come
// to; they serve the proof however far the run got.
func (r *relaxation) solve() []int64 {
	r.mend()
	for {
		enter, more := r.cheapest()
		if more && r.enter(enter) {
			continue
		}
		r.refresh()
		if worth, added := r.price(); more || !added {
			return worth
		}
	}
}

// invert reckons the inverse of the basis, by Gauss and Jordan with the largest pivots, and the basic values. It returns false where
// round-off has left the basis without an inverse.
func (r *relaxation) invert() bool {
	n := len(r.basis)
	rows := make([]float64, 2*n*n)
	r.inverse = make([][]float64, n)
	whole := make([][]float64, n) // the basis and the inverse side by side
	for row := range n {
		whole[row] = rows[2*n*row : 2*n*(row+1)]
		whole[row][n+row] = 1
	}
	for k, b := range r.basis {
		c := &r.columns[b]
		for i, row := range c.rows {
			whole[row][k] = c.entries[i]
		}
	}
	for k := range n {
		best := k
		for row := k + 1; row < n; row++ {
			if math.Abs(whole[row][k]) > math.Abs(whole[best][k]) {
				best = row
			}
		}
		whole[k], whole[best] = whole[best], whole[k]
		by := whole[k][k]
		if math.Abs(by) < tiny {
			return false
		}
		for i := k; i < 2*n; i++ {
			whole[k][i] /= by
		}
		for row := range n {
			if times := whole[row][k]; row != k && times != 0 {
				r.job.budget -= int64(2*n - k)
				for i, v := range whole[k][k:] {
					whole[row][k+i] -= times * v
				}
			}
		}
	}
	for row := range n {
		r.inverse[row] = whole[row][n:]
	}
	r.refresh()
	return true
}

// refresh reckons the basic values from the right sides, and the dual values from the basic columns' costs.
func (r *relaxation) refresh() {
	r.values, r.duals = clean(r.values, len(r.basis)), clean(r.duals, len(r.basis))
	for row, inverse := range r.inverse {
		cost := r.columns[r.basis[row]].cost
		for k, v := range inverse {
			r.values[row] += v * r.right[k]
			r.duals[k] += v * cost
		}
	}
	r.job.budget -= int64(2 * len(r.basis) * len(r.basis))
}

// reduced returns by how much one unit of a column raises the cost.
func (r *relaxation) reduced(k int) float64 { return r.columns[k].cost - r.columns[k].over(r.duals) }

// cheapest finds the known column that lowers the cost most for each unit of it.
func (r *relaxation) cheapest() (int, bool) {
	enter, least := -1, 0.0
	for k := range r.columns {
		if reduced := r.reduced(k); reduced < least && reduced < -tiny*(1+r.columns[k].cost) {
			enter, least = k, reduced
		}
	}
	r.job.budget -= int64(5 * len(r.columns))
	return enter, enter >= 0
}

// enter brings the column into the basis in place of the first that would fall below zero. It returns false when round-off leaves no
// row to leave, or when the work is spent, which ends the run.
func (r *relaxation) enter(k int) bool {
	along := r.along(k)
	leave, least := -1, 0.0
	for row, a := range along {
		if a <= firm {
			continue
		}
		if ratio := max(r.values[row], 0) / a; leave < 0 || ratio < least {
			leave, least = row, ratio
		}
	}
	if leave < 0 || r.job.budget <= 0 {
		return false
	}
	r.pivot(k, leave, along)
	return true
}

// mend makes a basis whose values have fallen below zero, because right sides moved, whole again (the dual simplex method): the row farthest
// below leaves, and the column comes in that raises the cost least. Where it gets no further the run goes on all the same: its dual values prove less then,
// but nothing false.
func (r *relaxation) mend() {
	for range 4 * len(r.basis) {
		leave := -1
		for row, v := range r.values {
			if v < -nudge/2 && (leave < 0 || v < r.values[leave]) {
				leave = row
			}
		}
		if leave < 0 {
			return
		}
		enter, least := -1, 0.0
		for k := range r.columns {
			a := r.columns[k].over(r.inverse[leave])
			if a >= -firm {
				continue
			}
			if ratio := max(0, r.reduced(k)) / -a; enter < 0 || ratio < least {
				enter, least = k, ratio
			}
		}
		r.job.budget -= int64(16 * len(r.columns))
		if enter < 0 || r.job.budget <= 0 {
			return
		}
		r.pivot(enter, leave, r.along(enter))
	}
}

// along returns what one unit of a column takes from each basic value.
func (r *relaxation) along(k int) []float64 {
	along := make([]float64, len(r.basis))
	for row, inverse := range r.inverse {
		along[row] = r.columns[k].over(inverse)
	}
	return along
}

// pivot puts a column in the basis in the place of the row's.
func (r *relaxation) pivot(enter, leave int, along []float64) {
	pivot := r.inverse[leave]
	for k := range pivot {
		pivot[k] /= along[leave]
	}
	step, reduced := r.values[leave]/along[leave], r.reduced(enter)
	for k, v := range pivot {
		r.duals[k] += reduced * v
	}
	for row, inverse := range r.inverse {
		if a := along[row]; row != leave && a != 0 {
			for k, v := range pivot {
				inverse[k] -= a * v
			}
			r.job.budget -= int64(len(pivot))
			r.values[row] -= a * step
		}
	}
	r.values[leave] = step
	r.basis[leave] = enter
	if r.pivots++; r.pivots%refreshEvery == 0 {
		r.refresh()
	}
}
