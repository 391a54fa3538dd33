package cutting

import (
	"encoding/json"
	"errors"
	"math/rand/v2"
	"os"
	"reflect"
	"testing"
)

// known is a case with a published optimum; the file names where each comes from.
type known struct {
	Name, Origin   string
	Kerf           int64
	Stocks, Pieces [][2]int64
	Optimum        int64
}

func (k known) problem() Problem {
	p := Problem{Kerf: k.Kerf}
	for _, s := range k.Stocks {
		p.Stocks = append(p.Stocks, Stock{s[0], s[1], Unlimited})
	}
	for _, q := range k.Pieces {
		p.Pieces = append(p.Pieces, Piece{q[0], int(q[1])})
	}
	return p
}

func readKnown(t testing.TB) []known {
	t.Helper()
	data, err := os.ReadFile("testdata/known.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []known
	if err := json.Unmarshal(data, &cases); err != nil {
		t.Fatal(err)
	}
	return cases
}

// Plan and bound must bracket every published optimum, whatever the solver claims.
func TestKnownOptima(t *testing.T) {
	for _, k := range readKnown(t) {
		s, err := Solve(k.problem(), Effort)
		if err != nil {
			t.Errorf("%s: %v", k.Name, err)
			continue
		}
		if err := Check(k.problem(), s); err != nil {
			t.Errorf("%s: %v", k.Name, err)
		}
		if s.Bound > k.Optimum || s.Cost < k.Optimum {
			t.Errorf("%s: bound %d, cost %d, published optimum %d (%s)", k.Name, s.Bound, s.Cost, k.Optimum, k.Origin)
		}
		if s.Proven && s.Cost != k.Optimum {
			t.Errorf("%s: proven at %d, published optimum %d", k.Name, s.Cost, k.Optimum)
		}
		if !s.Proven && k.Name != "nirup_fieldhouse" { // no bound of this kind reaches its optimum
			t.Errorf("%s: cost %d, bound %d", k.Name, s.Cost, s.Bound)
		}
	}
}

// No bar is overfull: pieces and the kerfs between them, added up here, are never longer than the stock, whatever the effort.
func TestNoBarIsOverfull(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 2))
	bars := 0
	for k := range 500 {
		p := packets(r, k%10 == 0).problem
		s, err := Solve(p, r.Int64N(1_000_000))
		if err != nil {
			t.Fatalf("case %d: %v", k, err)
		}
		for _, b := range s.Bars {
			bars++
			used := int64(0)
			for i, q := range b.Pieces {
				if i > 0 {
					used += p.Kerf
				}
				used += p.Pieces[q].Length
			}
			if used > p.Stocks[b.Stock].Length {
				t.Errorf("case %d: %d of %d", k, used, p.Stocks[b.Stock].Length)
			}
		}
	}
	if bars < 5_000 {
		t.Errorf("%d bars only", bars)
	}
}

// small makes a problem that the exhaustive search below can settle: few pieces, a few lengths, at times something owned.
func small(r *rand.Rand) Problem {
	p := Problem{Kerf: r.Int64N(4)}
	for range 1 + r.IntN(3) {
		p.Stocks = append(p.Stocks, Stock{40 + r.Int64N(60), 100 + r.Int64N(400), Unlimited})
	}
	if r.IntN(2) == 0 {
		p.Stocks = append(p.Stocks, Stock{20 + r.Int64N(60), 0, 1 + r.IntN(2)})
	}
	for range 1 + r.IntN(4) {
		p.Pieces = append(p.Pieces, Piece{5 + r.Int64N(35), r.IntN(3)})
	}
	return p
}

// exhaustive returns the least cost by putting each piece into every open bar and every new one.
func exhaustive(p Problem) int64 {
	var pieces []int64
	for _, q := range p.Pieces {
		for range q.Count {
			pieces = append(pieces, q.Length)
		}
	}
	drawn := make([]int, len(p.Stocks))
	var room []int64
	best := int64(-1)
	var place func(k int, cost int64)
	place = func(k int, cost int64) {
		if best >= 0 && cost >= best {
			return
		}
		if k == len(pieces) {
			best = cost
			return
		}
		for b := range room {
			if need := pieces[k] + p.Kerf; room[b] >= need {
				room[b] -= need
				place(k+1, cost)
				room[b] += need
			}
		}
		for i, s := range p.Stocks {
			if s.Length < pieces[k] || s.Most != Unlimited && drawn[i] == s.Most {
				continue
			}
			drawn[i]++
			room = append(room, s.Length-pieces[k])
			place(k+1, cost+s.Price)
			room = room[:len(room)-1]
			drawn[i]--
		}
	}
	place(0, 0)
	return best
}

// The independent method is an exhaustive search with its own way of counting kerfs: one more for each piece after a bar's first.
func TestAgainstExhaustiveSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	proven := 0
	const cases = 10_000
	for k := range cases {
		p := small(r)
		s, err := Solve(p, Effort)
		if err != nil {
			t.Fatalf("case %d: %v", k, err)
		}
		if err := Check(p, s); err != nil {
			t.Fatalf("case %d: %v\n%+v\n%+v", k, err, p, s)
		}
		if want := exhaustive(p); s.Bound > want || s.Cost < want || s.Proven && s.Cost != want {
			t.Errorf("case %d: bound %d, cost %d, proven %v; least cost %d: %+v", k, s.Bound, s.Cost, s.Proven, want, p)
		}
		if s.Proven {
			proven++
		}
	}
	if proven < cases*9/10 {
		t.Errorf("proven %d of %d", proven, cases)
	}
}

// packet makes a problem like a tunnel's: 1/16 in grid, kerf 1/8 in, priced lengths, offcuts owned. Invented.
func packet(r *rand.Rand) Problem {
	p := Problem{Kerf: 2}
	lengths := []int64{1920, 3840, 1280, 960, 2560}
	for _, l := range lengths[:1+r.IntN(len(lengths))] {
		p.Stocks = append(p.Stocks, Stock{l, l/5 + r.Int64N(120), Unlimited})
	}
	for range r.IntN(4) {
		p.Stocks = append(p.Stocks, Stock{400 + r.Int64N(900), 0, 1 + r.IntN(3)})
	}
	for range 1 + r.IntN(12) {
		p.Pieces = append(p.Pieces, Piece{96 + r.Int64N(1825), 1 + r.IntN(60)})
	}
	return p
}

func TestPacketsHoldTogether(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 5))
	proven := 0
	const cases = 30
	for k := range cases {
		p := packet(r)
		s, err := Solve(p, Effort)
		if err != nil {
			t.Fatalf("case %d: %v", k, err)
		}
		if err := Check(p, s); err != nil {
			t.Errorf("case %d: %v", k, err)
		}
		if s.Proven {
			proven++
		}
	}
	if proven < cases*9/10 {
		t.Errorf("proven %d of %d; the method is known to prove nearly all of this kind", proven, cases)
	}
}

// Two pieces and one kerf that fill a 10 ft length exactly: 59 15/16 + 1/8 + 59 15/16 in, on a 1/16 in grid.
func TestExactFit(t *testing.T) {
	p := Problem{Kerf: 2, Stocks: []Stock{{1920, 400, Unlimited}}, Pieces: []Piece{{959, 2}}}
	s, err := Solve(p, Effort)
	if err != nil || s.Cost != 400 || !s.Proven {
		t.Errorf("cost %d, proven %v, %v; want one bar at 400, proven", s.Cost, s.Proven, err)
	}
	p.Pieces[0].Length = 960
	if s, err = Solve(p, Effort); err != nil || s.Cost != 800 || !s.Proven {
		t.Errorf("a piece 1/16 in longer: cost %d, proven %v, %v; want two bars at 800, proven", s.Cost, s.Proven, err)
	}
}

func TestSameProblemSamePlan(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	p := packet(r)
	a, errA := Solve(p, Effort)
	b, errB := Solve(p, Effort)
	if errA != nil || errB != nil || !reflect.DeepEqual(a, b) {
		t.Errorf("two runs differ: %v %v", errA, errB)
	}
}

func TestSenselessProblems(t *testing.T) {
	good := Problem{Kerf: 1, Stocks: []Stock{{100, 5, Unlimited}}, Pieces: []Piece{{30, 2}}}
	if _, err := Solve(good, Effort); err != nil {
		t.Fatal(err)
	}
	if s, err := Solve(Problem{}, Effort); err != nil || s.Cost != 0 || !s.Proven {
		t.Errorf("nothing to cut: %+v, %v", s, err)
	}
	for name, change := range map[string]func(*Problem){
		"no stock":       func(p *Problem) { p.Stocks = nil },
		"long piece":     func(p *Problem) { p.Pieces[0].Length = 101 },
		"zero length":    func(p *Problem) { p.Pieces[0].Length = 0 },
		"negative count": func(p *Problem) { p.Pieces[0].Count = -1 },
		"negative kerf":  func(p *Problem) { p.Kerf = -1 },
		"negative price": func(p *Problem) { p.Stocks[0].Price = -1 },
		"huge stock":     func(p *Problem) { p.Stocks[0].Length = 1 << 40 },
		"fits nothing":   func(p *Problem) { p.Stocks[0].Most = 0 },
	} {
		p := Problem{Kerf: good.Kerf, Stocks: []Stock{good.Stocks[0]}, Pieces: []Piece{good.Pieces[0]}}
		change(&p)
		if _, err := Solve(p, Effort); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	few := Problem{Stocks: []Stock{{100, 5, 1}}, Pieces: []Piece{{60, 2}}}
	if _, err := Solve(few, Effort); !errors.Is(err, ErrTooFew) {
		t.Errorf("one bar for two that do not share it: %v", err)
	}
}

// With little effort allowed there is still a plan and an honest bound.
func TestLittleEffort(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for _, effort := range []int64{0, 1000, 100_000, 1_000_000} {
		p := packet(r)
		s, err := Solve(p, effort)
		if err != nil {
			t.Fatal(err)
		}
		if err := Check(p, s); err != nil {
			t.Errorf("effort %d: %v", effort, err)
		}
	}
}
