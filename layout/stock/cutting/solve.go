package cutting

import "math/rand/v2"

// Effort is how many knapsack cells Solve fills before it hands out what it has: about a second. Work is counted, not timed, so that the
// same problem gives the same plan on every machine.
const Effort = 400_000_000

// dives is how often the relaxation is rounded down to a plan before stock counts are searched; all but the first two choose a
// little at random.
const dives = 4

// Solve plans the cheapest bars it can find within the effort, and proves how cheap any plan could be. Pieces longer than every
// stock, and figures without sense, are errors; so is a limited stock that runs out (ErrTooFew).
func Solve(p Problem, effort int64) (Solution, error) {
	if err := p.check(); err != nil {
		return Solution{}, err
	}
	j := newJob(p, effort)
	var best plan
	found := j.pieces == 0
	cost := int64(0)
	keep := func(q plan) {
		q = j.settle(q)
		if c := j.cost(q); !found || c < cost {
			best, cost, found = q, c, true
		}
	}
	for _, how := range []lead{byLargest, byValue} {
		if q, ok := j.greedy(j.demand, j.counts(), how); ok {
			keep(q)
		}
	}
	worth, bound := j.prove(j.material(), j.all())
	part := &Part{Worth: worth}
	met := func() bool { return found && j.attainable(bound, cost) >= cost }
	if !met() {
		r := j.newRelaxation(j.demand, j.all(), nil)
		if w, b := j.prove(r.solve(), j.all()); b > bound {
			part.Worth, bound = w, b
		}
		noise := rand.New(rand.NewPCG(1961, 9)) // any fixed seed does
		for turn := 0; turn < dives && !met() && j.budget > 0; turn++ {
			j.dive(r, j.counts(), turn, noise, keep)
		}
		if found && !met() {
			part, bound = j.branch(r, part.Worth, bound, keep, func() int64 { return cost }, noise)
		}
	}
	if !found {
		return Solution{}, ErrTooFew
	}
	s := Solution{Bars: j.bars(best, p), Bound: j.attainable(bound, cost)}
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
