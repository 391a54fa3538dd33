package cutting

import (
	"math/rand/v2"
	"testing"
)

// By hand: two pieces of 40 fit a bar of 100 that costs 7. A worth of 10 each makes 20 of a bar: 7/20 of it are left, 3.5 each, and four pieces are worth 14.
func TestWorthsAreShrunkToThePrice(t *testing.T) {
	p := Problem{Stocks: []Stock{{100, 7, Unlimited}}, Pieces: []Piece{{40, 4}}}
	j := newJob(p, Effort)
	worth := j.worths([]float64{10})
	j.exact.fill(j.sizes, j.demand, worth, j.length)
	worth, bound := j.prove(worth, j.all())
	if want := 7 * j.scale() / 2; worth[0] != want || bound != 14 {
		t.Errorf("worth %d, bound %d; want %d and 14", worth[0], bound, want)
	}
}

// Whatever the worths, the bound is no higher than what the checker makes of those handed out: it weighs them with a table of its own.
func TestBoundIsWhatTheCheckerFinds(t *testing.T) {
	r := rand.New(rand.NewPCG(22, 4))
	shrunk := 0
	for k := range 300 {
		p := small(r)
		j := newJob(p, Effort)
		if j.pieces == 0 {
			continue
		}
		values := make([]float64, len(j.sizes))
		for i := range values {
			values[i] = 300 * r.Float64()
		}
		given := j.worths(values)
		j.exact.fill(j.sizes, j.demand, given, j.length)
		worth, bound := j.prove(given, j.all())
		if worth[0] < given[0] {
			shrunk++
		}
		part := &Part{Worth: worth}
		j.spread(part, len(p.Pieces))
		lo, hi := make([]int, len(p.Stocks)), j.counts()
		found, err := worthBound(p, j.scale(), part.Worth, lo, hi)
		if err != nil || bound > found {
			t.Errorf("case %d: bound %d, the checker finds %d, %v", k, bound, found, err)
		}
	}
	if shrunk < 100 {
		t.Errorf("%d shrunk only", shrunk)
	}
}
