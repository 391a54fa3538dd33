package cutting

import (
	"math/rand/v2"
	"testing"
)

// figures returns a plan's cost, length of stock, number of different patterns and longest offcut, counted from its bars.
func figures(p Problem, bars []Bar) (cost, length int64, patterns int, rest int64) {
	seen := map[string]bool{}
	for _, b := range bars {
		cost += p.Stocks[b.Stock].Price
		length += p.Stocks[b.Stock].Length
		key, end := string(rune(b.Stock)), -p.Kerf
		for _, k := range b.Pieces {
			key += string(rune(k))
			end += p.Kerf + p.Pieces[k].Length
		}
		seen[key] = true
		rest = max(rest, p.Stocks[b.Stock].Length-end)
	}
	return cost, length, len(seen), rest
}

// By hand: pieces of two patterns spread evenly over their bars or they do not.
func TestBarsAreCutAlike(t *testing.T) {
	p := Problem{Stocks: []Stock{{100, 5, Unlimited}}, Pieces: []Piece{{70, 4}, {20, 4}}}
	j := newJob(p, Effort)
	uneven := plan{[]pattern{{0, []int{1, 0}}, {0, []int{1, 1}}, {0, []int{0, 3}}}, []int{3, 1, 1}}
	if got := j.tidy(uneven); len(got.patterns) != 3 {
		t.Errorf("pieces of five bars do not spread over four: %v", got)
	}
	uneven = plan{[]pattern{{0, []int{1, 0}}, {0, []int{1, 1}}}, []int{2, 2}}
	if got := j.tidy(uneven); len(got.patterns) != 2 {
		t.Errorf("two pieces do not spread over four bars: %v", got)
	}
	p.Pieces = []Piece{{30, 4}, {20, 4}}
	j = newJob(p, Effort)
	uneven = plan{[]pattern{{0, []int{2, 1}}, {0, []int{0, 3}}, {0, []int{2, 0}}}, []int{1, 1, 1}}
	// 2 + 1 and 0 + 3 become 1 + 2 twice.
	if got := j.tidy(uneven); len(got.patterns) != 2 || got.times[0]+got.times[1] != 3 {
		t.Errorf("%v, want two patterns on three bars", got)
	}
}

// By hand: 60 + 20 and 30 + 20 from two bars of 100 leave 20 and 50. 60 + 20 + 20 fill a bar, and the 30 leaves 70 of the other: all there is.
func TestOneOffcutGrows(t *testing.T) {
	j := newJob(Problem{Stocks: []Stock{{100, 5, Unlimited}}, Pieces: []Piece{{60, 1}, {30, 1}, {20, 2}}}, Effort)
	got := j.tidy(plan{[]pattern{{0, []int{1, 0, 1}}, {0, []int{0, 1, 1}}}, []int{1, 1}})
	if rest := j.longestRest(got); rest != 70 {
		t.Errorf("the longest offcut is %d, want 70: %v", rest, got)
	}
}

// Of equal prices the shortest stock is drawn.
func TestLeastWaste(t *testing.T) {
	p := Problem{Stocks: []Stock{{120, 5, Unlimited}, {100, 5, Unlimited}, {80, 0, 1}, {60, 0, 1}}, Pieces: []Piece{{50, 1}, {90, 1}}}
	s, err := Solve(p, Effort)
	if err != nil {
		t.Fatal(err)
	}
	if cost, length, _, _ := figures(p, s.Bars); cost != 5 || length != 160 {
		t.Errorf("cost %d, %d of stock; want 5 for the bar of 100, and the 60 that is owned: %v", cost, length, s.Bars)
	}
}

// What tidying gives must still be a plan, at the same cost, and no worse in what it looks to.
func TestTidyingLosesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	alike, longer := 0, 0
	for k := range 200 {
		p := packet(r)
		for i := range p.Pieces {
			p.Pieces[i].Count = 1 + r.IntN(8)
		}
		j := newJob(p, Effort)
		before, ok := j.greedy(j.demand, j.counts(), byValue)
		if !ok {
			continue
		}
		before = before.gathered()
		after := j.tidy(before)
		if j.cost(after) != j.cost(before) || j.tidier(after, before) > 0 {
			t.Errorf("case %d: %v became %v", k, before, after)
		}
		if err := checkBars(p, Solution{Bars: j.bars(after, p), Cost: j.cost(after)}); err != nil {
			t.Errorf("case %d: %v", k, err)
		}
		if len(after.patterns) < len(before.patterns) {
			alike++
		} else if j.longestRest(after) > j.longestRest(before) {
			longer++
		}
	}
	if alike == 0 || longer == 0 {
		t.Errorf("%d plans with fewer patterns and %d with a longer offcut: the cases test nothing", alike, longer)
	}
}
