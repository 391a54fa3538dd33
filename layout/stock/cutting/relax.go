package cutting

import "slices"

// relaxation is the linear relaxation of a demand over patterns that may be cut a fraction of a time: at least the demand of each
// size, at most so many of each limited stock, least cost. The revised simplex method with a dense inverse; columns are priced by
// the knapsack table, so all patterns take part though few are ever written down.
//
// Rows: one for each size with demand, then one for each stock with a most, then one for each with a least. An entry of a column is
// what one unit of it gives there.
type relaxation struct {
	job    *job
	sizes  []int // rows of demand: index into job.sizes
	stocks []int // the rows that follow: index into job.stocks
	demand []int // by job size

	columns []column
	basis   []int       // by row: index into columns
	inverse [][]float64 // of the basis
	right   []float64   // right sides, nudged a little against stalling
	values  []float64   // of the basic columns at the nudged right sides
	table   table[float64]
	pivots  int
}

// column is a pattern, or with no counts a helper: a surplus, a slack, or what a row needs from nowhere, at a price that drives it out.
type column struct {
	pattern
	rows    []int // with an entry
	entries []float64
	cost    float64
}

const (
	tiny = 1e-9
	// nudge keeps right sides from tying, which would let the simplex method turn in circles. It bends the dual values not at all, and
	// those are all that the proof takes from here.
	nudge = 1e-6
	// refreshEvery is how many pivots the basic values are carried along before they are reckoned afresh.
	refreshEvery = 40
)

// newRelaxation sets up the demand with stock counts within the box, starting from bars cut into one size only. The patterns of the
// pool join trimmed to the demand.
func (j *job) newRelaxation(demand []int, in box, pool []pattern) *relaxation {
	r := &relaxation{job: j, demand: demand}
	for i, n := range demand {
		if n > 0 {
			r.sizes = append(r.sizes, i)
			r.right = append(r.right, float64(n))
		}
	}
	for s := range j.stocks {
		if j.bounded(s, in) {
			r.stocks = append(r.stocks, s)
			r.right = append(r.right, float64(in.hi[s]))
		}
	}
	least := len(r.right) // rows from here on are leasts
	for s, n := range in.lo {
		if n > 0 {
			r.stocks = append(r.stocks, s)
			r.right = append(r.right, float64(n))
		}
	}
	rows := len(r.right)
	r.inverse = make([][]float64, rows)
	r.basis = make([]int, rows)
	for row := range rows {
		push := nudge * float64(1+row%97)
		var c column
		switch {
		case row < len(r.sizes):
			c = r.single(row, r.sizes[row])
		case row < least:
			c = r.helper(row, 1, 0)
		default:
			c = r.helper(row, 1, j.dear())
			push = -push // a least must not pass the most of the same stock
		}
		r.right[row] += push
		r.inverse[row] = make([]float64, rows)
		r.inverse[row][row] = 1 / c.entry(row)
		r.basis[row] = len(r.columns)
		r.columns = append(r.columns, c)
	}
	for row := range rows {
		if row < len(r.sizes) || row >= least {
			r.columns = append(r.columns, r.helper(row, -1, 0))
		}
	}
	for _, p := range pool {
		if counts, some := trimmed(p.counts, demand); some {
			r.columns = append(r.columns, r.column(pattern{p.stock, counts}))
		}
	}
	r.refresh()
	return r
}

// trimmed cuts counts down to the demand and says whether any are left.
func trimmed(counts, demand []int) ([]int, bool) {
	some := false
	counts = slices.Clone(counts)
	for i := range counts {
		counts[i] = min(counts[i], demand[i])
		some = some || counts[i] > 0
	}
	return counts, some
}

// dear is a price above that of any plan without waste of whole bars.
func (j *job) dear() float64 {
	dear := 1.0
	for _, s := range j.stocks {
		dear += float64(s.Price) * float64(s.Most)
	}
	return dear
}

// single starts a size's row: the stock of least cost a piece cut into this size only, or, where only stocks with rows of their own could
// hold it, pieces from nowhere dearer than any plan.
func (r *relaxation) single(row, size int) column {
	var best pattern
	bestCost := 0.0
	for _, s := range r.job.order {
		n := min(r.demand[size], int(r.job.stocks[s].Length)/r.job.sizes[size])
		if n == 0 || slices.Contains(r.stocks, s) {
			continue
		}
		if cost := float64(r.job.stocks[s].Price) / float64(n); best.counts == nil || cost < bestCost {
			counts := make([]int, len(r.job.sizes))
			counts[size] = n
			best, bestCost = pattern{s, counts}, cost
		}
	}
	if best.counts != nil {
		return r.column(best)
	}
	return r.helper(row, 1, r.job.dear())
}

func (r *relaxation) helper(row int, entry, cost float64) column {
	return column{rows: []int{row}, entries: []float64{entry}, cost: cost}
}

func (r *relaxation) column(p pattern) column {
	c := column{pattern: p, cost: float64(r.job.stocks[p.stock].Price)}
	for row, i := range r.sizes {
		if p.counts[i] > 0 {
			c.rows, c.entries = append(c.rows, row), append(c.entries, float64(p.counts[i]))
		}
	}
	for k, s := range r.stocks {
		if s == p.stock {
			c.rows, c.entries = append(c.rows, len(r.sizes)+k), append(c.entries, 1)
		}
	}
	return c
}

// entry returns the column's entry in a row.
func (c column) entry(row int) float64 {
	if k := slices.Index(c.rows, row); k >= 0 {
		return c.entries[k]
	}
	return 0
}

// over returns the sum of the column's entries, each times the vector's value in its row.
func (c column) over(vector []float64) float64 {
	sum := 0.0
	for k, row := range c.rows {
		sum += c.entries[k] * vector[row]
	}
	return sum
}

// refresh reckons the basic values from the right sides.
func (r *relaxation) refresh() {
	r.values = make([]float64, len(r.basis))
	for row, inverse := range r.inverse {
		for k, v := range r.right {
			r.values[row] += inverse[k] * v
		}
	}
}

// duals returns the worth of one more unit on each row's right side.
func (r *relaxation) duals() []float64 {
	y := make([]float64, len(r.basis))
	for row, b := range r.basis {
		if cost := r.columns[b].cost; cost != 0 {
			for k, v := range r.inverse[row] {
				y[k] += cost * v
			}
		}
	}
	return y
}

// solve runs until no pattern would lower the cost or the work is spent. It returns the dual values by job size, none below zero;
// they serve the proof however far the run got.
func (r *relaxation) solve() []float64 {
	for {
		y := r.duals()
		if enter, ok := r.cheapest(y); ok {
			if !r.pivot(enter) {
				return r.worth(y)
			}
			continue
		}
		if !r.price(y) {
			r.refresh()
			return r.worth(y)
		}
	}
}

func (r *relaxation) worth(y []float64) []float64 {
	worth := make([]float64, len(r.job.sizes))
	for row, i := range r.sizes {
		worth[i] = max(y[row], 0)
	}
	return worth
}

// cheapest finds the known column that lowers the cost most for each unit of it.
func (r *relaxation) cheapest(y []float64) (int, bool) {
	enter, least := -1, 0.0
	for k, c := range r.columns {
		reduced := c.cost - c.over(y)
		if reduced < least && reduced < -tiny*(1+c.cost) {
			enter, least = k, reduced
		}
	}
	r.job.budget -= int64(4 * len(r.columns))
	return enter, enter >= 0
}

// price adds, for each stock, the pattern that would lower the cost most; false when none would, or when the work is spent.
func (r *relaxation) price(y []float64) bool {
	j := r.job
	if j.budget <= 0 {
		return false
	}
	j.budget -= r.table.fill(j.sizes, r.demand, r.worth(y), j.length)
	added := false
	for s, stock := range j.stocks {
		cost := float64(stock.Price)
		reduced := cost - r.table.best[stock.Length]
		for k, other := range r.stocks {
			if other == s {
				reduced -= y[len(r.sizes)+k]
			}
		}
		if reduced < -1e-7*(1+cost) && stock.Most > 0 {
			r.columns = append(r.columns, r.column(pattern{s, r.table.counts(int(stock.Length))}))
			added = true
		}
	}
	return added
}

// pivot brings the column into the basis in place of the first that would fall below zero. It returns false when round-off leaves no
// row to leave, which ends the run.
func (r *relaxation) pivot(enter int) bool {
	along := make([]float64, len(r.basis))
	for row, inverse := range r.inverse {
		along[row] = r.columns[enter].over(inverse)
	}
	leave, least := -1, 0.0
	for row, a := range along {
		if a <= tiny {
			continue
		}
		if ratio := max(r.values[row], 0) / a; leave < 0 || ratio < least {
			leave, least = row, ratio
		}
	}
	if leave < 0 || r.job.budget <= 0 {
		return false
	}
	pivot := r.inverse[leave]
	for k := range pivot {
		pivot[k] /= along[leave]
	}
	for row := range r.inverse {
		if row == leave || along[row] == 0 {
			continue
		}
		for k, v := range pivot {
			r.inverse[row][k] -= along[row] * v
		}
	}
	r.basis[leave] = enter
	r.job.budget -= int64(3 * len(pivot) * len(pivot))
	if r.pivots++; r.pivots%refreshEvery == 0 {
		r.refresh()
		return true
	}
	for row, a := range along {
		r.values[row] -= a * least
	}
	r.values[leave] = least
	return true
}
