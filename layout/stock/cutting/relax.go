package cutting

import "slices"

// relaxation is the linear relaxation of a demand over patterns that may be cut a fraction of a time: at least the demand of each
// size, no more of each stock than the box holds and no fewer than it asks for, least cost. All patterns take part though few are ever
// written down: those that would lower the cost are found by the knapsack table.
//
// Rows: one for each size, then two for each stock, its most and its least. They are the same for every box, so that a part of
// the plans begins where the part that it comes from ended.
type relaxation struct {
	job    *job
	in     box
	demand []int

	columns []column
	start   []int       // the basis it began with
	basis   []int       // by row: index into columns
	inverse [][]float64 // of the basis
	right   []float64   // right sides, nudged a little against stalling
	values  []float64   // of the basic columns at the nudged right sides
	duals   []float64   // the worth of one more unit on each row's right side
	pivots  int
}

// column is a pattern, or with no counts a helper in one row: a surplus, a slack, or what a row needs from nowhere, at a price that
// drives it out. An entry is what one unit of the column gives in a row; in the rows of its stock a pattern gives one.
type column struct {
	pattern
	rows    []int
	entries []float64
	cost    float64
}

// nudge keeps right sides from tying, which would let the simplex method turn in circles. It bends the dual values not at all, and
// those are all that the proof takes from here.
const nudge = 1e-6

// newRelaxation sets up the whole demand with all the stock there is, starting from bars cut into one size only.
func (j *job) newRelaxation() *relaxation {
	r := &relaxation{job: j, in: j.all(), demand: j.demand}
	r.setRight()
	dear := j.dear()
	for i := range j.sizes {
		r.basis = append(r.basis, len(r.columns))
		r.columns = append(r.columns, helper(i, 1, dear), helper(i, -1, 0))
	}
	for s := range j.stocks {
		most, least := r.rowsOf(s)
		r.basis = append(r.basis, len(r.columns), len(r.columns)+1)
		r.columns = append(r.columns, helper(most, 1, 0), helper(least, -1, 0), helper(least, 1, dear))
	}
	for i := range j.sizes {
		if p, ok := j.single(i); ok {
			r.basis[i] = len(r.columns)
			r.columns = append(r.columns, r.column(p))
		}
	}
	r.start = slices.Clone(r.basis)
	r.invert() // each row has its own
	return r
}

// within sets up the same demand within another box, starting from a basis of the columns, of which the relaxation's own are the first.
func (r *relaxation) within(in box, columns []column, basis []int) *relaxation {
	child := &relaxation{job: r.job, in: in, demand: r.demand, columns: slices.Clip(columns), start: r.start, basis: slices.Clone(basis)}
	child.setRight()
	child.begin()
	return child
}

// begin reckons the inverse of the basis, of the first one where it has none.
func (r *relaxation) begin() {
	if !r.invert() {
		r.basis = slices.Clone(r.start)
		r.invert()
	}
}

// less sets up what is left of the demand within another box, starting from where this relaxation ended. Patterns are trimmed to what is
// left; those that hold none of it go, unless they served last.
func (r *relaxation) less(demand []int, in box) *relaxation {
	child := &relaxation{job: r.job, in: in, demand: demand, start: r.start, basis: make([]int, len(r.basis))}
	place := make([]int, len(r.columns)) // in the basis, counted from one
	for row, b := range r.basis {
		place[b] = row + 1
	}
	same := true
	for k, c := range r.columns {
		at := len(child.columns)
		if c.counts != nil && !proper(c.counts, demand) {
			counts, some := trimmed(c.counts, demand)
			switch {
			case some:
				c = r.column(pattern{c.stock, counts})
				same = same && place[k] == 0
			case place[k] == 0 && !slices.Contains(r.start, k):
				continue
			}
		}
		child.columns = append(child.columns, c)
		if place[k] > 0 {
			child.basis[place[k]-1] = at
		}
	}
	r.job.budget -= int64(len(r.columns) * len(demand))
	child.setRight()
	if same {
		child.inverse = make([][]float64, len(r.inverse))
		for row := range r.inverse {
			child.inverse[row] = slices.Clone(r.inverse[row])
		}
		child.refresh()
	} else {
		child.begin()
	}
	return child
}

// proper reports whether a pattern holds no more of any size than is wanted.
func proper(counts, demand []int) bool {
	for i, n := range counts {
		if n > demand[i] {
			return false
		}
	}
	return true
}

// setRight sets the right sides from the demand and the box.
func (r *relaxation) setRight() {
	push := func() float64 { return nudge * float64(1+len(r.right)%97) }
	for _, n := range r.demand {
		r.right = append(r.right, float64(n)+push())
	}
	for s := range r.job.stocks {
		r.right = append(r.right, float64(r.in.hi[s])+push())
		r.right = append(r.right, float64(r.in.lo[s])-push()) // a least must not pass the most of the same stock
	}
}

// rowsOf returns the rows of a stock's most and least.
func (r *relaxation) rowsOf(stock int) (most, least int) {
	row := len(r.demand) + 2*stock
	return row, row + 1
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

// single finds the stock of least cost a piece cut into this size only, among those of which there are enough for any plan.
func (j *job) single(size int) (best pattern, ok bool) {
	bestCost := 0.0
	for _, s := range j.order {
		n := min(j.demand[size], int(j.stocks[s].Length)/j.sizes[size])
		if n == 0 || j.stocks[s].Most < j.pieces {
			continue
		}
		if cost := float64(j.stocks[s].Price) / float64(n); !ok || cost < bestCost {
			counts := make([]int, len(j.sizes))
			counts[size] = n
			best, bestCost, ok = pattern{s, counts}, cost, true
		}
	}
	return best, ok
}

func helper(row int, entry, cost float64) column {
	return column{rows: []int{row}, entries: []float64{entry}, cost: cost}
}

func (r *relaxation) column(p pattern) column {
	most, least := r.rowsOf(p.stock)
	c := column{pattern: p, cost: float64(r.job.stocks[p.stock].Price), rows: []int{most, least}, entries: []float64{1, 1}}
	for i, n := range p.counts {
		if n > 0 {
			c.rows, c.entries = append(c.rows, i), append(c.entries, float64(n))
		}
	}
	return c
}

// over returns the sum of the column's entries, each times the vector's value in its row.
func (c *column) over(vector []float64) float64 {
	sum := 0.0
	for k, row := range c.rows {
		sum += c.entries[k] * vector[row]
	}
	return sum
}

func (r *relaxation) cost() float64 {
	sum := 0.0
	for row, b := range r.basis {
		sum += r.columns[b].cost * r.values[row]
	}
	return sum
}

// drawn adds up how many of each stock the relaxation draws.
func (r *relaxation) drawn() []float64 {
	counts := make([]float64, len(r.job.stocks))
	for row, b := range r.basis {
		if c := r.columns[b]; c.counts != nil {
			counts[c.stock] += max(0, r.values[row])
		}
	}
	return counts
}

// price adds, for each stock, the pattern that would lower the cost most; false when none would, or when the work is
// spent. Either way the table then holds the worths of the sizes at these values, for the proof.
func (r *relaxation) price() (worth []int64, added bool) {
	j := r.job
	worth = j.worths(r.duals[:len(j.sizes)])
	j.budget -= j.exact.fill(j.sizes, r.demand, worth, j.length)
	if j.budget <= 0 {
		return worth, false
	}
	scale := float64(j.scale())
	for s, stock := range j.stocks {
		most, least := r.rowsOf(s)
		cost := float64(stock.Price)
		reduced := cost - float64(j.exact.best[stock.Length])/scale - r.duals[most] - r.duals[least]
		if reduced < -gain*(1+cost) && stock.Most > 0 {
			r.columns = append(r.columns, r.column(pattern{s, j.exact.counts(int(stock.Length))}))
			added = true
		}
	}
	return worth, added
}

// gain is the share of a bar's price that a new pattern must save at least.
const gain = 1e-7
