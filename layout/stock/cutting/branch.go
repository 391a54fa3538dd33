package cutting

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// search is a best-first search over how many of each stock are drawn: the part of the plans with the least bound is looked at
// first and parted by the stock whose count in the relaxation is least whole. Where all counts are whole, dives look for a plan with
// just these counts.
type search struct {
	job   *job
	open  []*node
	root  *Part
	pool  []pattern
	known map[string]bool // patterns in the pool, and stock counts that dives have tried
	noise *rand.Rand
	keep  func(plan)
	cost  func() int64 // of the best plan so far
	least int64        // bound of the parts that can be parted no further
}

// node is a part of the plans that is still open.
type node struct {
	in     box
	part   *Part
	bound  int64
	counts []float64 // of each stock in the part's relaxation
}

// mostNodes keeps a proof within what a reader's machine can check in a moment.
const mostNodes = 3000

// triesInside is how many dives look for a plan with given stock counts.
const triesInside = 4

// branch searches until the best plan is proven, or the work is spent. It returns the proof and its bound.
func (j *job) branch(first *relaxation, worth []int64, bound int64, keep func(plan), cost func() int64, noise *rand.Rand) (*Part, int64) {
	s := &search{job: j, root: &Part{Worth: worth}, known: map[string]bool{}, noise: noise, keep: keep, cost: cost, least: math.MaxInt64}
	s.learn(first)
	s.open = []*node{{in: j.all(), part: s.root, bound: bound, counts: first.drawn()}}
	for nodes := 1; nodes < mostNodes && j.budget > 0; nodes += 2 {
		n := s.best()
		if n == nil || s.closed(n.bound) {
			break
		}
		s.remove(n)
		at, whole := s.split(n)
		if whole {
			s.inside(n)
			if s.closed(n.bound) {
				s.open = append(s.open, n)
				continue
			}
		}
		if at < 0 {
			s.least = min(s.least, n.bound)
			continue
		}
		most := int(math.Floor(n.counts[at] + whollyNear))
		if most >= n.in.hi[at] {
			most = n.in.hi[at] - 1
		}
		s.part(n, at, most)
	}
	for _, n := range s.open {
		s.least = min(s.least, n.bound)
	}
	return s.root, s.least
}

// whollyNear is how near a count must be to a whole number to pass for it.
const whollyNear = 1e-4

func (s *search) closed(bound int64) bool { return s.job.attainable(bound, s.cost()) >= s.cost() }

func (s *search) best() *node {
	var best *node
	for _, n := range s.open {
		if best == nil || n.bound < best.bound {
			best = n
		}
	}
	return best
}

func (s *search) remove(n *node) {
	for k := range s.open {
		if s.open[k] == n {
			s.open = append(s.open[:k], s.open[k+1:]...)
			return
		}
	}
}

// split chooses the stock to part by: the one whose count is farthest from whole, or where all are whole the first whose
// limits leave a choice; −1 where none does.
func (s *search) split(n *node) (at int, whole bool) {
	at, whole = -1, true
	far := whollyNear
	for k, c := range n.counts {
		if d := math.Abs(c - math.Round(c)); d > far && n.in.lo[k] < n.in.hi[k] {
			at, far, whole = k, d, false
		}
	}
	if whole {
		for k := range n.counts {
			if n.in.lo[k] < n.in.hi[k] {
				return k, true
			}
		}
	}
	return at, whole
}

// part opens the two parts of a node's plans: those that draw at most so many of a stock, and those that draw more.
func (s *search) part(n *node, stock, most int) {
	worth := n.part.Worth
	n.part.Worth, n.part.Stock, n.part.AtMost = nil, stock, most
	n.part.Fewer, n.part.More = &Part{}, &Part{}
	fewer, more := n.in.clone(), n.in.clone()
	fewer.hi[stock], more.lo[stock] = most, most+1
	s.add(fewer, n.part.Fewer, worth, n.bound)
	s.add(more, n.part.More, worth, n.bound)
}

// add opens a part. The worths of the part it comes from hold in it too, and serve where its own were cut short.

func (s *search) add(in box, part *Part, inherited []int64, atLeast int64) {
	r := s.job.newRelaxation(s.job.demand, in, s.pool)
	worth, bound := s.job.prove(r.solve(), in)
	if bound < atLeast {
		s.job.exact.fill(s.job.sizes, s.job.demand, inherited, s.job.length)
		worth, bound = inherited, s.job.weigh(inherited, in)
	}
	part.Worth = worth
	s.learn(r)
	s.open = append(s.open, &node{in, part, bound, r.drawn()})
}

// learn adds a relaxation's patterns to the pool.
func (s *search) learn(r *relaxation) {
	for _, p := range r.patterns() {
		if key := fmt.Sprint("pattern", p.stock, p.counts); !s.known[key] {
			s.known[key] = true
			s.pool = append(s.pool, p)
		}
	}
}

// inside dives for a plan with a node's stock counts exactly, unless that has been tried.
func (s *search) inside(n *node) {
	counts := make([]int, len(n.counts))
	for k, c := range n.counts {
		counts[k] = int(math.Round(c))
	}
	key := fmt.Sprint("counts", counts)
	if s.known[key] {
		return
	}
	s.known[key] = true
	r := s.job.newRelaxation(s.job.demand, box{make([]int, len(counts)), counts}, s.pool)
	r.solve()
	for turn := 0; turn < triesInside && !s.closed(n.bound) && s.job.budget > 0; turn++ {
		s.job.dive(r, counts, turn, s.noise, s.keep)
	}
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

func (b box) clone() box {
	return box{append([]int(nil), b.lo...), append([]int(nil), b.hi...)}
}
