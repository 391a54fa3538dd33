package cutting

import (
	"cmp"
	"slices"
)

// job is the problem made ready: kerf folded into the lengths, equal pieces merged, longest first.
type job struct {
	stocks []Stock // lengths with one kerf added; Most is never Unlimited but as many as could ever be used
	free   []bool  // by stock: no limit was set
	sizes  []int   // piece lengths with one kerf added, falling
	demand []int   // by size
	owners [][]int // by size: indices into Problem.Pieces
	order  []int   // stocks by price per length, cheapest first
	pieces int     // how many in all
	length int     // the longest stock
	budget int64   // steps that may still be taken: cells of tables, entries of matrices

	exact  table  // of the last worths weighed
	filled table  // of greedy fillings
	sums   []bool // see attainable
}

// pattern is a way to cut one stock: how many of each size.
type pattern struct {
	stock  int
	counts []int
}

// plan is patterns, each to be cut so many times.
type plan struct {
	patterns []pattern
	times    []int
}

func (p *plan) add(q pattern, times int) {
	p.patterns = append(p.patterns, q)
	p.times = append(p.times, times)
}

// join returns both plans' patterns.
func (p plan) join(q plan) plan {
	return plan{slices.Concat(p.patterns, q.patterns), slices.Concat(p.times, q.times)}
}

// box bounds how many of each stock a plan draws.
type box struct{ lo, hi []int }

// all is the box of every plan.
func (j *job) all() box { return box{make([]int, len(j.stocks)), j.counts()} }

func newJob(p Problem, effort int64) *job {
	j := &job{budget: effort}
	for _, i := range ranked(len(p.Pieces), func(a, b int) int { return cmp.Compare(p.Pieces[b].Length, p.Pieces[a].Length) }) {
		q := p.Pieces[i]
		if q.Count == 0 {
			continue
		}
		w := int(q.Length + p.Kerf)
		if n := len(j.sizes); n == 0 || j.sizes[n-1] != w {
			j.sizes, j.demand, j.owners = append(j.sizes, w), append(j.demand, 0), append(j.owners, nil)
		}
		k := len(j.sizes) - 1
		j.demand[k] += q.Count
		j.owners[k] = append(j.owners[k], i)
		j.pieces += q.Count
	}
	for _, s := range p.Stocks {
		s.Length += p.Kerf
		free := s.Most == Unlimited
		if free || s.Most > j.pieces {
			s.Most = j.pieces
		}
		j.stocks, j.free = append(j.stocks, s), append(j.free, free)
		j.length = max(j.length, int(s.Length))
	}
	j.order = ranked(len(j.stocks), func(a, b int) int {
		s, t := j.stocks[a], j.stocks[b]
		return cmp.Or(cmp.Compare(float64(s.Price)/float64(s.Length), float64(t.Price)/float64(t.Length)), cmp.Compare(s.Length, t.Length))
	})
	return j
}

// ranked returns the numbers below n in their order by a comparison.
func ranked(n int, compare func(a, b int) int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	slices.SortStableFunc(list, compare)
	return list
}

// cost adds up the plan's prices.
func (j *job) cost(p plan) int64 {
	var sum int64
	for k, q := range p.patterns {
		sum += j.stocks[q.stock].Price * int64(p.times[k])
	}
	return sum
}

// used returns the length a pattern takes, a kerf for each piece.
func (j *job) used(counts []int) int {
	sum := 0
	for i, n := range counts {
		sum += n * j.sizes[i]
	}
	return sum
}

// bars writes the plan out bar by bar, dropping what is cut beyond the demand.
func (j *job) bars(p plan, problem Problem) []Bar {
	queues := make([][]int, len(j.sizes)) // by size: the pieces yet to be cut
	for i, owners := range j.owners {
		for _, o := range owners {
			queues[i] = append(queues[i], slices.Repeat([]int{o}, problem.Pieces[o].Count)...)
		}
	}
	var bars []Bar
	for k, q := range p.patterns {
		for range p.times[k] {
			bar := Bar{Stock: q.stock}
			for i, n := range q.counts {
				n = min(n, len(queues[i]))
				bar.Pieces, queues[i] = append(bar.Pieces, queues[i][:n]...), queues[i][n:]
			}
			if len(bar.Pieces) > 0 {
				bars = append(bars, bar)
			}
		}
	}
	return bars
}
