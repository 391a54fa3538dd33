package cutting

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
)

// search is a best-first search over how many of each stock are drawn: the part of the plans with the least bound is looked at
// first and parted by the stock whose count in the relaxation is least whole. Where all counts are whole, dives look for a plan with
// just these counts.
type search struct {
	job  *job
	open []*node
	root *Part

	first   *relaxation
	columns []column // of all relaxations so far

	tried map[string]int // how many dives have tried stock counts
	noise *rand.Rand
	plan  *incumbent
	least int64 // bound of the parts that can be parted no further
}

// node is a part of the plans that is still open.
type node struct {
	in     box
	part   *Part
	bound  int64
	basis  []int     // of the part's relaxation
	counts []float64 // of each stock in it
}

// mostNodes keeps a proof within what a reader's machine can check in a moment.
const mostNodes = 3000

// firstDive is how many parts are looked at before the first dive within one; half as many again lie between two dives.
const firstDive = 16

// How many dives look for a plan with given stock counts: at first, and where no other counts are left to the part.
const (
	triesInside = 4
	lastTries   = 400
)

// branch searches until the best plan is proven, or the work is spent. It returns the proof and its bound.
func (j *job) branch(first *relaxation, worth []int64, bound int64, plan *incumbent, noise *rand.Rand) (*Part, int64) {
	s := &search{job: j, root: &Part{Worth: worth}, first: first, columns: first.columns, tried: map[string]int{}, noise: noise, plan: plan, least: math.MaxInt64}
	s.open = []*node{{in: j.all(), part: s.root, bound: bound, basis: first.basis, counts: first.drawn()}}
	nextDive := firstDive
	for nodes := 0; 2*nodes < mostNodes && j.budget > 0; nodes++ {
		if len(s.open) == 0 {
			break
		}
		n := slices.MinFunc(s.open, func(a, b *node) int { return cmp.Compare(a.bound, b.bound) })
		if s.plan.met(n.bound) {
			break
		}
		s.open = slices.DeleteFunc(s.open, func(o *node) bool { return o == n })
		at, whole := s.split(n)
		if whole {
			tries := triesInside
			if at < 0 {
				tries = lastTries
			}
			s.inside(n, tries)
			if s.plan.met(n.bound) {
				s.open = append(s.open, n)
				continue
			}
		}
		if nodes >= nextDive && !whole {
			nextDive += nextDive / 2
			r := s.first.within(n.in, s.columns, n.basis)
			r.solve()
			j.dive(r, n.in.hi, 2+nodes, noise, plan)
		}
		if at < 0 { // no bound can rise any more, but other parts may still hold a better plan
			s.least = min(s.least, n.bound)
			continue
		}
		s.part(n, at, min(int(math.Floor(n.counts[at]+whollyNear)), n.in.hi[at]-1))
	}
	for _, n := range s.open {
		s.least = min(s.least, n.bound)
	}
	return s.root, s.least
}

// whollyNear is how near a count must be to a whole number to pass for it.
const whollyNear = 1e-4

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
	s.add(n, fewer, n.part.Fewer, worth)
	s.add(n, more, n.part.More, worth)
}

// add opens a part of a node's plans. The node's worths hold in it too, and serve where its own were cut short.
func (s *search) add(from *node, in box, part *Part, inherited []int64) {
	j := s.job
	r := s.first.within(in, s.columns, from.basis)
	worth, bound := j.prove(r.solve(), in)
	if bound < from.bound {
		j.budget -= j.exact.fill(j.sizes, j.demand, inherited, j.length)
		worth, bound = inherited, j.weigh(inherited, in, 1, 1)
	}
	part.Worth = worth
	s.columns = r.columns
	s.open = append(s.open, &node{in, part, bound, r.basis, r.drawn()})
}

// inside dives for a plan with a node's stock counts exactly, as often as told less what has been tried.
func (s *search) inside(n *node, tries int) {
	counts := make([]int, len(n.counts))
	for k, c := range n.counts {
		counts[k] = int(math.Round(c))
	}
	key := fmt.Sprint(counts)
	from := s.tried[key]
	if from >= tries {
		return
	}
	s.tried[key] = tries
	r := s.first.within(box{make([]int, len(counts)), counts}, s.columns, n.basis)
	r.solve()
	for turn := from; turn < tries && !s.plan.met(n.bound) && s.job.budget > 0; turn++ {
		s.job.dive(r, counts, turn, s.noise, s.plan)
	}
}

func (b box) clone() box {
	return box{slices.Clone(b.lo), slices.Clone(b.hi)}
}
