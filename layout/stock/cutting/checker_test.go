package cutting

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"slices"
)

// Check goes over a solution without the solver: every piece is cut as often as asked, every bar holds its pieces and the kerfs
// between them, no stock is overdrawn, the prices add up, and the proof gives the bound. It shares no code with Solve.
func Check(p Problem, s Solution) error {
	if err := checkBars(p, s); err != nil {
		return err
	}
	if s.Proof.Scale < 1 {
		return fmt.Errorf("cutting: proof with scale %d", s.Proof.Scale)
	}
	all := 0
	for _, q := range p.Pieces {
		all += q.Count
	}
	lo, hi := make([]int, len(p.Stocks)), make([]int, len(p.Stocks))
	for i, stock := range p.Stocks {
		if hi[i] = stock.Most; stock.Most == Unlimited || stock.Most > all {
			hi[i] = all // each bar holds a piece at least
		}
	}
	bound, err := bound(p, s.Proof.Scale, &s.Proof.Part, lo, hi)
	if err != nil {
		return err
	}
	bound = nextSum(p, bound, s.Cost)
	switch {
	case s.Bound > bound:
		return fmt.Errorf("cutting: bound %d, the proof gives %d", s.Bound, bound)
	case s.Bound > s.Cost:
		return fmt.Errorf("cutting: bound %d above the cost, %d", s.Bound, s.Cost)
	case s.Proven != (s.Bound == s.Cost):
		return fmt.Errorf("cutting: proven is %v at cost %d and bound %d", s.Proven, s.Cost, s.Bound)
	}
	return nil
}

func checkBars(p Problem, s Solution) error {
	cut := make([]int, len(p.Pieces))
	drawn := make([]int, len(p.Stocks))
	cost := int64(0)
	for k, b := range s.Bars {
		if b.Stock < 0 || b.Stock >= len(p.Stocks) || len(b.Pieces) == 0 {
			return fmt.Errorf("cutting: bar %d is of stock %d with %d pieces", k, b.Stock, len(b.Pieces))
		}
		stock := p.Stocks[b.Stock]
		end := -p.Kerf // a kerf lies between pieces only
		for _, i := range b.Pieces {
			if i < 0 || i >= len(p.Pieces) {
				return fmt.Errorf("cutting: bar %d holds piece %d of %d", k, i, len(p.Pieces))
			}
			end += p.Kerf + p.Pieces[i].Length
			cut[i]++
		}
		if end > stock.Length {
			return fmt.Errorf("cutting: bar %d uses %d of %d", k, end, stock.Length)
		}
		drawn[b.Stock]++
		cost += stock.Price
	}
	for i, q := range p.Pieces {
		if cut[i] != q.Count {
			return fmt.Errorf("cutting: piece %d is cut %d times, not %d", i, cut[i], q.Count)
		}
	}
	for i, stock := range p.Stocks {
		if stock.Most != Unlimited && drawn[i] > stock.Most {
			return fmt.Errorf("cutting: stock %d is drawn %d times of %d", i, drawn[i], stock.Most)
		}
	}
	if cost != s.Cost {
		return fmt.Errorf("cutting: the bars cost %d, not %d", cost, s.Cost)
	}
	return nil
}

// bound reckons what a part of the proof shows for plans that draw from lo to hi of each stock.
func bound(p Problem, scale int64, part *Part, lo, hi []int) (int64, error) {
	if part.Worth != nil {
		return worthBound(p, scale, part.Worth, lo, hi)
	}
	if part.Fewer == nil || part.More == nil || part.Stock < 0 || part.Stock >= len(p.Stocks) {
		return 0, errors.New("cutting: a part of the proof is missing")
	}
	fewer, more := slices.Clone(hi), slices.Clone(lo)
	fewer[part.Stock] = min(fewer[part.Stock], part.AtMost)
	more[part.Stock] = max(more[part.Stock], part.AtMost+1)
	least := int64(math.MaxInt64) // of no plans at all
	if fewer[part.Stock] >= lo[part.Stock] {
		b, err := bound(p, scale, part.Fewer, lo, fewer)
		if err != nil {
			return 0, err
		}
		least = min(least, b)
	}
	if more[part.Stock] <= hi[part.Stock] {
		b, err := bound(p, scale, part.More, more, hi)
		if err != nil {
			return 0, err
		}
		least = min(least, b)
	}
	return least, nil
}

// worthBound weighs one set of worths with the plainest knapsack there is, in integers of any size.
func worthBound(p Problem, scale int64, worth []int64, lo, hi []int) (int64, error) {
	if len(worth) != len(p.Pieces) {
		return 0, fmt.Errorf("cutting: %d worths for %d pieces", len(worth), len(p.Pieces))
	}
	longest := int64(0)
	for _, s := range p.Stocks {
		longest = max(longest, s.Length)
	}
	sum := new(big.Int)
	best := make([]int64, longest+p.Kerf+1)
	for i, q := range p.Pieces {
		w := worth[i]
		if w < 0 {
			return 0, fmt.Errorf("cutting: piece %d has worth %d", i, w)
		}
		if sum.Add(sum, new(big.Int).Mul(big.NewInt(w), big.NewInt(int64(q.Count)))); !sum.IsInt64() {
			return 0, fmt.Errorf("cutting: worths add up to %v, more than can be weighed", sum)
		}
		size := q.Length + p.Kerf
		for c := int64(len(best)) - 1; c >= size; c-- {
			for n := int64(1); n <= int64(q.Count) && n*size <= c; n++ {
				best[c] = max(best[c], best[c-n*size]+n*w)
			}
		}
	}
	price := new(big.Int)
	for i, s := range p.Stocks {
		lack := price.Mul(big.NewInt(scale), big.NewInt(s.Price))
		lack.Sub(lack, big.NewInt(best[s.Length+p.Kerf]))
		times := lo[i]
		if lack.Sign() < 0 {
			times = hi[i]
		}
		sum.Add(sum, lack.Mul(lack, big.NewInt(int64(times))))
	}
	if sum.Sign() <= 0 {
		return 0, nil
	}
	sum.Add(sum, big.NewInt(scale-1))
	if sum.Div(sum, big.NewInt(scale)); !sum.IsInt64() {
		return math.MaxInt64, nil
	}
	return sum.Int64(), nil
}

// nextSum raises a bound to the next sum of prices of what is to be had, counting up from nothing one price at a time, no further than the cost. Where that
// would take too long it is the next multiple of the prices' common divisor.
func nextSum(p Problem, bound, cost int64) int64 {
	if bound >= cost {
		return cost // some plan does cost that
	}
	common, prices := new(big.Int), []int64{}
	for _, s := range p.Stocks {
		if s.Most != 0 {
			common.GCD(nil, nil, common, big.NewInt(s.Price))
			prices = append(prices, s.Price)
		}
	}
	unit := common.Int64() // above zero, since the cost is
	bound, cost = (bound+unit-1)/unit, cost/unit
	if cost > 1<<24 {
		return bound * unit
	}
	reached := make([]bool, cost+1)
	reached[0] = true
	for sum := int64(0); sum < cost; sum++ {
		if !reached[sum] {
			continue
		}
		if sum >= bound {
			return sum * unit
		}
		for _, price := range prices {
			if price /= unit; price > 0 && price <= cost-sum {
				reached[sum+price] = true
			}
		}
	}
	return cost * unit
}
