package cutting

import "math/rand/v2"

// Effort is how many steps of its tables Solve takes before it hands out what it has: one to two seconds. Work is counted, not timed, so that
// the same problem gives the same plan on every machine.
const Effort = 800_000_000

// dives is how often the relaxation is rounded down to a plan before stock counts are searched; all but the first two choose a
// little at random.
const dives = 4

// incumbent is the best plan so far.
type incumbent struct {
	job   *job
	plan  plan
	cost  int64
	found bool
}

// offer keeps a plan if it is the best so far.
func (b *incumbent) offer(p plan) {
	p = b.job.settle(p)
	c := b.job.cost(p)
	if b.found && c > b.cost {
		return
	}
	if p = p.gathered(); !b.found || c < b.cost || b.job.tidier(p, b.plan) < 0 {
		b.plan, b.cost, b.found = p, c, true
	}
}

// met reports whether no plan that costs at least the bound can better the best.
func (b *incumbent) met(bound int64) bool {
	return b.found && b.job.attainable(bound, b.cost) >= b.cost
}

// done reports whether a plan in the making costs as much already.
func (b *incumbent) done(p plan) bool { return b.found && b.job.cost(p) >= b.cost }

// Solve plans the cheapest bars it can find within the effort, and proves how cheap any plan could be. Pieces longer than every
// stock, and figures without sense, are errors; so is a limited stock that runs out (ErrTooFew).
func Solve(p Problem, effort int64) (Solution, error) {
	if err := p.check(); err != nil {
		return Solution{}, err
	}
	j := newJob(p, effort)
	best := &incumbent{job: j, found: j.pieces == 0}
	for _, how := range []lead{byLargest, byValue} {
		if q, ok := j.greedy(j.demand, j.counts(), how); ok {
			best.offer(q)
		}
	}
	worth := j.worths(j.material())
	j.budget -= j.exact.fill(j.sizes, j.demand, worth, j.length)
	worth, bound := j.prove(worth, j.all())
	part := &Part{Worth: worth}
	if !best.met(bound) {
		r := j.newRelaxation()
		if w, b := j.prove(r.solve(), j.all()); b > bound {
			part.Worth, bound = w, b
		}
		noise := rand.New(rand.NewPCG(1961, 9)) // any fixed seed does
		for turn := 0; turn < dives && !best.met(bound) && j.budget > 0; turn++ {
			j.dive(r, j.counts(), turn, noise, best)
		}
		if best.found && !best.met(bound) {
			part, bound = j.branch(r, part.Worth, bound, best, noise)
		}
	}
	if !best.found {
		return Solution{}, ErrTooFew
	}
	s := Solution{Bars: j.bars(j.tidy(best.plan), p), Bound: j.attainable(bound, best.cost)}
	for _, b := range s.Bars {
		s.Cost += p.Stocks[b.Stock].Price
	}
	j.spread(part, len(p.Pieces))
	s.Proof = Proof{j.scale(), *part}
	s.Proven = s.Bound == s.Cost
	return s, nil
}

// spread turns a proof's worths from sizes to the problem's pieces.
func (j *job) spread(part *Part, pieces int) {
	if part.Worth == nil {
		j.spread(part.Fewer, pieces)
		j.spread(part.More, pieces)
		return
	}
	worth := make([]int64, pieces)
	for i, owners := range j.owners {
		for _, o := range owners {
			worth[o] = part.Worth[i]
		}
	}
	part.Worth = worth
}
