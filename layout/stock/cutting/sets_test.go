package cutting

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"testing"
	"time"
)

// instance is a problem of a set; optimum is −1 where none is known.
type instance struct {
	name    string
	problem Problem
	optimum int64
}

// binPacking reads a file of one-dimensional bin packing problems in the layout of J. E. Beasley's OR-Library: their number; then for each its name,
// capacity, number of items and best known number of bins, and the items. Both files are E. Falkenauer's, "A hybrid grouping
// genetic algorithm for bin packing", Journal of Heuristics 2, 1996. Four of their best known numbers are one too high: the proven optima of u120_08, u120_19,
// u250_07 and u250_12 are 50, 49, 103 and 105 (bounds table of the BPPLIB, M. Delorme, M. Iori, S. Martello).
func binPacking(t testing.TB, file string) []instance {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	in := bufio.NewReader(f)
	number := func() (n int64) {
		if _, err := fmt.Fscan(in, &n); err != nil {
			t.Fatal(err)
		}
		return n
	}
	list := make([]instance, number())
	for k := range list {
		c := &list[k]
		if _, err := fmt.Fscan(in, &c.name); err != nil {
			t.Fatal(err)
		}
		c.problem.Stocks = []Stock{{number(), 1, Unlimited}}
		items := number()
		if c.optimum = number(); slices.Contains([]string{"u120_08", "u120_19", "u250_07", "u250_12"}, c.name) {
			c.optimum--
		}
		for range items {
			c.problem.Pieces = append(c.problem.Pieces, Piece{number(), 1})
		}
	}
	return list
}

// triplets makes problems as Falkenauer's triplet sets are made: each bin of 1000 is filled exactly by three items, the first of 380 to 490, so that the
// optimum is a third of the items and no bin of it has waste.
func triplets(r *rand.Rand, items int) instance {
	p := Problem{Stocks: []Stock{{1000, 1, Unlimited}}}
	for range items / 3 {
		a := 380 + r.Int64N(111)
		b := 250 + r.Int64N((1000-a)/2-250+1)
		p.Pieces = append(p.Pieces, Piece{a, 1}, Piece{b, 1}, Piece{1000 - a - b, 1})
	}
	return instance{fmt.Sprintf("t%d", items), p, int64(items / 3)}
}

// several makes problems with several stock lengths priced by length, as M. Monaci's sets are made (Algorithms for Packing and Scheduling Problems, thesis, Bologna
// 2002): 25 to 200 items of 1, 20 or 50 to 100. The lengths are partly ours.
func several(r *rand.Rand, items int) instance {
	var p Problem
	for _, l := range [][]int64{{100, 120, 150}, {60, 80, 100, 120, 150}, {70, 100, 130, 160, 200, 250, 300}}[r.IntN(3)] {
		p.Stocks = append(p.Stocks, Stock{l, l, Unlimited})
	}
	least := []int64{1, 20, 50}[r.IntN(3)]
	for range items {
		p.Pieces = append(p.Pieces, Piece{least + r.Int64N(101-least), 1})
	}
	return instance{fmt.Sprintf("v%d", items), p, -1}
}

// packets makes problems like a tunnel's at most twelve lengths, 600 pieces, five stock lengths with prices to the cent and three kinds of offcut, in sixteenths of an
// inch or in millimetres with the usual kerfs; full has all of these at their most. Invented.
func packets(r *rand.Rand, full bool) instance {
	p := Problem{Kerf: 2}
	lengths, least, most := []int64{960, 1280, 1920, 2560, 3840}, int64(96), int64(1920)
	if r.IntN(2) == 0 {
		p.Kerf, lengths, least, most = 3, []int64{2000, 3000, 4000, 5000, 6000}, 150, 2850
	}
	r.Shuffle(len(lengths), func(i, k int) { lengths[i], lengths[k] = lengths[k], lengths[i] })
	stocks, sizes, pieces, offcuts := 1+r.IntN(5), 1+r.IntN(12), 20+r.IntN(581), r.IntN(4)
	if full {
		stocks, sizes, pieces, offcuts = 5, 12, 600, 3
	}
	for _, l := range lengths[:stocks] {
		p.Stocks = append(p.Stocks, Stock{l, l/6 + r.Int64N(l/20) + r.Int64N(60), Unlimited})
	}
	most = min(most, slices.Max(lengths[:stocks]))
	for range offcuts {
		p.Stocks = append(p.Stocks, Stock{least + r.Int64N(most-least+1), 0, 1 + r.IntN(3)})
	}
	for left := sizes; left > 0; left-- {
		n := pieces / left
		if left > 1 && !full {
			n = min(1+r.IntN(2*n+1), pieces-left+1)
		}
		if pieces -= n; n > 0 {
			p.Pieces = append(p.Pieces, Piece{least + r.Int64N(most-least+1), n})
		}
	}
	return instance{"packet", p, -1}
}

// The forty uniform problems of the OR-Library, all to be proven.
func TestBinPacking(t *testing.T) {
	for _, file := range []string{"testdata/binpack1.txt", "testdata/binpack2.txt"} {
		for _, c := range binPacking(t, file) {
			prove(t, c)
		}
	}
}

// Problems whose best plan wastes nothing are the hardest to find a plan for; those with several lengths to prove.
func TestTripletsAndSeveralLengths(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 96))
	for range 3 {
		prove(t, triplets(r, 60))
	}
	for k := range 12 {
		prove(t, several(r, []int{25, 50, 100}[k%3]))
	}
}

// prove wants a plan that is proven, holds to the checker, and is what is known.
func prove(t *testing.T, c instance) {
	t.Helper()
	s, err := Solve(c.problem, Effort)
	if err != nil {
		t.Errorf("%s: %v", c.name, err)
		return
	}
	if err := Check(c.problem, s); err != nil {
		t.Errorf("%s: %v", c.name, err)
	}
	if !s.Proven || c.optimum >= 0 && s.Cost != c.optimum {
		t.Errorf("%s: cost %d, bound %d, optimum %d", c.name, s.Cost, s.Bound, c.optimum)
	}
}

// BenchmarkSets measures what the package's documentation says: go test -bench Sets -benchtime 1x. Each set's times are of its problems, one run each.
func BenchmarkSets(b *testing.B) {
	make := func(n int, one func(r *rand.Rand, k int) instance) func(testing.TB) []instance {
		return func(testing.TB) (list []instance) {
			r := rand.New(rand.NewPCG(2026, uint64(n)))
			for k := range n {
				list = append(list, one(r, k))
			}
			return list
		}
	}
	for _, set := range []struct {
		name string
		list func(testing.TB) []instance
	}{
		{"textbook", func(t testing.TB) (list []instance) {
			for _, k := range readKnown(t) {
				list = append(list, instance{k.Name, k.problem(), k.Optimum})
			}
			return list
		}},
		{"u120", func(t testing.TB) []instance { return binPacking(t, "testdata/binpack1.txt") }},
		{"u250", func(t testing.TB) []instance { return binPacking(t, "testdata/binpack2.txt") }},
		{"t60", make(10, func(r *rand.Rand, _ int) instance { return triplets(r, 60) })},
		{"t120", make(10, func(r *rand.Rand, _ int) instance { return triplets(r, 120) })},
		{"t249", make(10, func(r *rand.Rand, _ int) instance { return triplets(r, 249) })},
		{"t501", make(10, func(r *rand.Rand, _ int) instance { return triplets(r, 501) })},
		{"several", make(100, func(r *rand.Rand, k int) instance { return several(r, []int{25, 50, 100, 200}[k%4]) })},
		{"packets", make(500, func(r *rand.Rand, _ int) instance { return packets(r, false) })},
		{"full-packets", make(200, func(r *rand.Rand, _ int) instance { return packets(r, true) })},
	} {
		b.Run(set.name, func(b *testing.B) {
			list := set.list(b)
			for range b.N {
				var times []time.Duration
				proven, quick := 0, 0
				for _, c := range list {
					start := time.Now()
					s, err := Solve(c.problem, Effort)
					took := time.Since(start)
					times = append(times, took)
					if err != nil || c.optimum >= 0 && (s.Bound > c.optimum || s.Cost < c.optimum) {
						b.Fatalf("%s: cost %d, bound %d, optimum %d, %v", c.name, s.Cost, s.Bound, c.optimum, err)
					}
					if s.Proven {
						proven++
						if took < 50*time.Millisecond {
							quick++
						}
					}
				}
				slices.Sort(times)
				at := func(share int) float64 { return times[(len(times)-1)*share/100].Seconds() * 1000 }
				b.ReportMetric(float64(len(list)), "problems")
				b.ReportMetric(float64(proven), "proven")
				b.ReportMetric(float64(quick), "in-50ms")
				b.ReportMetric(at(50), "ms-median")
				b.ReportMetric(at(99), "ms-p99")
				b.ReportMetric(at(100), "ms-most")
			}
		})
	}
}
