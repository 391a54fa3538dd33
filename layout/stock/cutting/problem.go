// Package cutting finds the cheapest set of stock lengths from which a list of pieces can be cut, and a lower bound on what
// any plan must cost. It knows integers only: lengths on a grid, prices in the smallest coin.
//
// Method: greedy plans first; then the linear relaxation over cutting patterns, grown column by column (Gilmore & Gomory,
// "A Linear Programming Approach to the Cutting-Stock Problem", Operations Research 9, 1961) with a bounded knapsack table that
// prices every stock length in one pass; then dives that round the relaxation down and solve it again for what is left; then a
// best-first search over how many of each stock are drawn, each part of it taking up the basis of the part it comes from (dual simplex).
// The bound is reckoned in exact integers from the relaxations' dual values, and these are handed out as a Proof, so that Check can
// reckon it again without trusting anything here. Last the plan is tidied at its cost: bars cut alike, one long offcut.
//
// Measured with BenchmarkSets, one run of each problem, processor time in ms of one core of a busy two-core machine:
//
//	set                                           proven   in 50 ms   median    99 %    most
//	textbook cases                                18/19       17        0.4      6      61
//	OR-Library u120                               20/20       20        2.5     31      38
//	OR-Library u250                               20/20       20        4.7     36      44
//	triplets of 60                                10/10       10         28     35      41
//	triplets of 120                               10/10        0        170    399     582
//	triplets of 249                                8/10        0        547   1362    1921
//	triplets of 501                                6/10        0       1219   1982    2170
//	several lengths, 25 to 200 pieces             95/100      84        6.6    660    1296
//	tunnels, to 12 lengths, 600 pieces, 5 stocks 495/500     492        2.7     93    1091
//	tunnels, all of these at their most          194/200     169         18    542    1165
//
// A plan that is not proven is handed out with its bound: parting plans by stock counts lifts it no further then, and parting them by patterns
// would be the next step.
//
// Kerf: n pieces fit a length L when their sum and n−1 kerfs do, since the last piece may end at the bar's end. Adding one kerf to
// every piece and to every stock length makes that exact and the kerf disappears.
package cutting

import (
	"errors"
	"fmt"
)

// Problem is what to cut and what to cut it from. Lengths are in any one unit, prices in any one coin.
type Problem struct {
	Kerf   int64
	Stocks []Stock
	Pieces []Piece
}

// Stock is one length to be had. Most is how many there are, or Unlimited. Price zero is for what is owned.
type Stock struct {
	Length, Price int64
	Most          int
}

// Unlimited is Stock.Most where there is no limit.
const Unlimited = -1

// Piece is one length needed Count times.
type Piece struct {
	Length int64
	Count  int
}

// Bar is one stock length with the pieces cut from it, as indices into Problem.Stocks and Problem.Pieces, longest piece first.
type Bar struct {
	Stock  int
	Pieces []int
}

// Solution is a plan with what it costs and what any plan must cost at least. Proven says that the two meet.
type Solution struct {
	Bars   []Bar
	Cost   int64
	Bound  int64
	Proven bool
	Proof  Proof
}

// Proof shows the bound. Give each piece the worth Worth/Scale coins. If no pattern on a stock holds more worth than the stock's price,
// no plan costs less than the worth of all pieces. Where a pattern may hold more, the excess is taken off as often as that stock may be
// drawn; where every pattern holds less, the lack is added as often as it must be drawn. One set of worths serves all plans, or
// else plans are parted by how many of one stock they draw, and each part has its own. A plan's cost is a sum of prices, so the
// bound rises to the next such sum.
type Proof struct {
	Scale int64
	Part
}

// Part is the plans within some limits of stock: either Worth bounds them, or they are parted into those that draw at most AtMost
// of Stock and those that draw more.
type Part struct {
	Worth []int64 // by index into Problem.Pieces; nil where parted

	Stock, AtMost int
	Fewer, More   *Part
}

// The limits of a problem keep every sum within 62 bits and every table within memory.
const (
	mostLength = 1 << 21 // 2 km at 1 mm
	mostPrice  = 1 << 40
	mostCount  = 1 << 20
)

// ErrTooFew says that no plan was found with the number of stocks there are.
var ErrTooFew = errors.New("cutting: not enough stock found for all the pieces")

// check reports what makes the problem senseless. A piece longer than every stock is senseless too: callers sort those out first.
func (p Problem) check() error {
	if p.Kerf < 0 || p.Kerf > mostLength {
		return fmt.Errorf("cutting: kerf %d outside 0 to %d", p.Kerf, mostLength)
	}
	longest := int64(0)
	for i, s := range p.Stocks {
		switch {
		case s.Length < 1 || s.Length > mostLength:
			return fmt.Errorf("cutting: stock %d: length %d outside 1 to %d", i, s.Length, mostLength)
		case s.Price < 0 || s.Price > mostPrice:
			return fmt.Errorf("cutting: stock %d: price %d outside 0 to %d", i, s.Price, int64(mostPrice))
		case s.Most < Unlimited || s.Most > mostCount:
			return fmt.Errorf("cutting: stock %d: count %d outside 0 to %d", i, s.Most, mostCount)
		case s.Most != 0:
			longest = max(longest, s.Length)
		}
	}
	total := 0
	for i, q := range p.Pieces {
		switch {
		case q.Length < 1:
			return fmt.Errorf("cutting: piece %d: length %d below 1", i, q.Length)
		case q.Count < 0 || q.Count > mostCount:
			return fmt.Errorf("cutting: piece %d: count %d outside 0 to %d", i, q.Count, mostCount)
		case q.Count > 0 && q.Length > longest:
			return fmt.Errorf("cutting: piece %d: length %d is longer than the longest stock, %d", i, q.Length, longest)
		}
		total += q.Count
	}
	if total > mostCount {
		return fmt.Errorf("cutting: %d pieces, more than %d", total, mostCount)
	}
	return nil
}
