package stock

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock/cutting"
)

// bench cuts one material.
type bench struct {
	spec     *spec.Spec
	offer    offer
	byLength bool
	pieces   []Piece // to be cut
}

func (b *bench) grid() measure.Length { return b.spec.Units.Grid() }

// up and down turn lengths into grid steps: pieces and losses never short, stock never long.
func (b *bench) up(l measure.Length) int64 {
	return int64(math.Round(float64(measure.RoundUp(l, b.grid()) / b.grid())))
}
func (b *bench) down(l measure.Length) int64 {
	return int64(math.Floor(float64(l/b.grid()) + 1e-6))
}

// usable is how many grid steps of a stock length can become pieces: all but the trim at both ends.
func (b *bench) usable(l stick) int64 { return b.down(l.length) - 2*b.up(b.spec.Stock.Trim) }

// gives reports whether a stick gives a piece of so many grid steps: cut from it, or as the whole stick, which is not trimmed.
func (b *bench) gives(l stick, n int64) bool { return n <= b.usable(l) || n == b.down(l.length) }

// take sorts this material's pieces: those to cut, and those that no stock can give.
func (b *bench) take(all []Piece) []finding.Finding {
	var long []Piece
	longest := int64(0)
	sticks := slices.Concat(b.offer.sells, b.offer.owns)
	for _, l := range sticks {
		longest = max(longest, b.usable(l))
	}
	for _, p := range all {
		n := b.up(p.Length)
		switch {
		case p.Item != b.offer.item:
		case slices.ContainsFunc(sticks, func(l stick) bool { return b.gives(l, n) }):
			b.pieces = append(b.pieces, p)
		default:
			long = append(long, p)
		}
	}
	if len(long) == 0 {
		return nil
	}
	return []finding.Finding{b.tooLong(long, measure.Length(longest)*b.grid())}
}

// tooLong says which pieces no stock length can give, and how a coupling would help.
func (b *bench) tooLong(long []Piece, longest measure.Length) finding.Finding {
	s, p := b.spec, slices.MaxFunc(long, func(a, c Piece) int { return cmp.Compare(a.Length, c.Length) })
	level, key := finding.LookAt, "stock.sell"
	if !b.offer.assumed && s.Given("stock.sell") {
		level = finding.MustFix
	}
	var cure []finding.Change
	fix := "have it cut to length where it is bought, or list a longer bar as sold"
	if !b.offer.bar {
		first, least := longest, practice.LeastPiece(s.Units)
		if p.Length < longest+b.stop()+least { // a stub is not worth joining on
			first = measure.RoundUp(p.Length-b.stop()-least, b.grid()) - b.grid()
		}
		rest := measure.RoundUp(p.Length-first-b.stop(), b.grid())
		fix = fmt.Sprintf("join it from %s and %s with a coupling, or list a longer stick as sold", s.Units.Cut(first), s.Units.Cut(rest))
		if !p.ID.Ridge() {
			if !slices.ContainsFunc(long, func(p Piece) bool { return p.ID.Ridge() }) {
				cure = b.jointed(p.Length, longest)
			}
			list := "write that stick as a list"
			if key = "arch.sticks"; !s.Given(key) {
				list, key = "give the sticks in place of span or height, each as a list", "stock.sell"
			}
			fix = fmt.Sprintf("%s from the ground up, [%s, %s], and a coupling joins them, or list a longer stick as sold", list, s.Units.Cut(first), s.Units.Cut(rest))
		}
	}
	return finding.Finding{
		Level: level, Code: "piece-too-long", Key: key, Cure: cure,
		Text: fmt.Sprintf("No %s to be had gives %s: %s asked for, the longest gives %s. To mend it, %s.", b.offer.item, names(long), s.Units.Cut(p.Length), s.Units.Cut(longest), fix),
	}
}

// stop is what a coupling adds between two ends of the material.
func (b *bench) stop() measure.Length {
	pipes := []catalog.Pipe{b.spec.Arch.Pipe, b.spec.Ridge.Pipe}
	for _, e := range b.spec.Except {
		pipes = append(pipes, e.Arch.Pipe)
	}
	for _, p := range pipes {
		if p.Name == b.offer.item {
			return p.CouplingStop
		}
	}
	return 0
}

// problem states the cuts in integers: what is owned at no price, then stock as sold. It returns the stick behind each of its stocks.
//
// A stick that some piece is as long as counts with its whole length, as if it were never trimmed: that leaves out no plan, and may let
// in some that cannot be sawn (see honest).
func (b *bench) problem() (cutting.Problem, []stick) {
	p := cutting.Problem{Kerf: b.up(b.spec.Stock.Kerf)}
	var sticks []stick
	for _, l := range slices.Concat(b.offer.owns, b.offer.sells) {
		full := b.down(l.length)
		stock := cutting.Stock{Length: b.usable(l), Most: cutting.Unlimited}
		if slices.ContainsFunc(b.pieces, func(q Piece) bool { return b.up(q.Length) == full }) {
			stock.Length = full
		}
		if stock.Length < 1 {
			continue
		}
		if l.most > 0 {
			stock.Most = l.most
		}
		stock.Price = b.price(l)
		p.Stocks, sticks = append(p.Stocks, stock), append(sticks, l)
	}
	for _, q := range b.pieces {
		n := b.up(q.Length)
		entry(&p.Pieces, cutting.Piece{Length: n}, func(c cutting.Piece) bool { return c.Length == n }).Count++
	}
	return p, sticks
}

// cut plans the material's bars and adds them to the cuts.
func (b *bench) cut(cuts *Cuts) []finding.Finding {
	p, sticks := b.problem()
	solution, found, err := b.solve(p, sticks)
	var whole []Bar
	if err == nil && !b.honest(p, sticks, solution) {
		bound := solution.Bound
		if len(found) > 0 {
			b.lift()
		}
		var price int64
		whole, price = b.aside()
		p, sticks = b.problem()
		var more []finding.Finding
		solution, more, err = b.solve(p, sticks)
		found = append(found, more...)
		solution.Cost += price
		solution.Bound, solution.Proven = bound, bound == solution.Cost
	}
	if err != nil {
		cuts.Proven = false
		level := finding.LookAt
		if !b.offer.assumed && b.spec.Given("stock.sell") {
			level = finding.MustFix
		}
		return append(found, finding.Finding{Level: level, Code: "no-cut-plan", Key: "stock",
			Text: fmt.Sprintf("No cut plan could be made for %s: %v.", b.offer.item, err)})
	}
	unit := 0.01 // the solver's prices are hundredths of the currency, or grid steps
	if b.byLength {
		unit = float64(b.grid())
	}
	cuts.Cost += float64(solution.Cost) * unit
	cuts.Bound += float64(solution.Bound) * unit
	cuts.Proven = cuts.Proven && solution.Proven
	cuts.Bars = append(cuts.Bars, whole...)
	cuts.Bars = append(cuts.Bars, b.lay(p, arrange(p, b.roomy(p, sticks, solution.Bars)), sticks)...)
	return found
}

// spare is how much of a bar that is sawn is left over at least where a stick may be as short as is accepted.
func spare(u measure.System) measure.Length { return practice.AsSold(u) + u.Grid() }

// roomy returns bars as cheap as a plan's, none of those sold so full that a stick which is a little short would leave a piece short, where there are such: what is not used whole is planned
// once more, of sticks that are so much shorter. What is proven of the cost holds for them.
func (b *bench) roomy(p cutting.Problem, sticks []stick, bars []cutting.Bar) []cutting.Bar {
	again := cutting.Problem{Kerf: p.Kerf, Stocks: slices.Clone(p.Stocks), Pieces: slices.Clone(p.Pieces)}
	for k := range again.Pieces {
		again.Pieces[k].Count = 0
	}
	for i, l := range sticks {
		if !l.owned {
			again.Stocks[i].Length = min(b.usable(l), b.down(l.length)-b.up(b.spec.Stock.Trim)-b.up(spare(b.spec.Units)))
		}
	}
	var whole []cutting.Bar
	var cost int64
	tight := false
	for _, bar := range bars {
		stock := &again.Stocks[bar.Stock]
		if len(bar.Pieces) == 1 && p.Pieces[bar.Pieces[0]].Length == b.down(sticks[bar.Stock].length) {
			whole = append(whole, bar)
			if stock.Most > 0 {
				stock.Most--
			}
			continue
		}
		for _, k := range bar.Pieces {
			again.Pieces[k].Count++
		}
		cost += stock.Price
		tight = tight || taken(p, bar) > stock.Length
	}
	if !tight {
		return bars
	}
	if other, err := cutting.Solve(again, cutting.Effort); err == nil && other.Cost <= cost {
		return append(whole, other.Bars...)
	}
	return bars
}

// solve plans the bars. Limits of what is sold that leave too little are passed over, and a finding says so.
func (b *bench) solve(p cutting.Problem, sticks []stick) (cutting.Solution, []finding.Finding, error) {
	solution, err := cutting.Solve(p, cutting.Effort)
	if !errors.Is(err, cutting.ErrTooFew) {
		return solution, nil, err
	}
	for i := range p.Stocks {
		if !sticks[i].owned {
			p.Stocks[i].Most = cutting.Unlimited
		}
	}
	solution, err = cutting.Solve(p, cutting.Effort)
	return solution, []finding.Finding{{Level: finding.LookAt, Code: "stock-limit", Key: "stock.sell",
		Text: fmt.Sprintf("The limits of what is sold leave too little %s for all the pieces; the plan ignores them, so look for another store or raise them.", b.offer.item)}}, err
}

// taken is what a bar's pieces take of it, with the kerfs between them.
func taken(p cutting.Problem, bar cutting.Bar) int64 {
	sum := p.Kerf * int64(len(bar.Pieces)-1)
	for _, k := range bar.Pieces {
		sum += p.Pieces[k].Length
	}
	return sum
}

// lift passes over the limits of what is sold.
func (b *bench) lift() {
	for i := range b.offer.sells {
		b.offer.sells[i].most = 0
	}
}

// honest reports whether every bar of a plan can be sawn: either it is used whole, or its pieces leave room for the trim.
func (b *bench) honest(p cutting.Problem, sticks []stick, s cutting.Solution) bool {
	for _, bar := range s.Bars {
		sum := taken(p, bar)
		if l := sticks[bar.Stock]; sum > b.usable(l) && (len(bar.Pieces) > 1 || sum != b.down(l.length)) {
			return false
		}
	}
	return true
}

// aside takes the pieces that are as long as a stick sold out of the cuts, gives each a whole one, the cheapest there is, and returns what
// these cost.
func (b *bench) aside() (bars []Bar, price int64) {
	var rest []Piece
	for _, q := range b.pieces {
		best := -1
		for i, l := range b.offer.sells {
			if b.up(q.Length) == b.down(l.length) && (best < 0 || l.price < b.offer.sells[best].price) {
				best = i
			}
		}
		if best < 0 {
			rest = append(rest, q)
			continue
		}
		l := &b.offer.sells[best]
		q.Mark = l.length
		bars = append(bars, Bar{Item: q.Item, Stock: l.length, Pieces: []Piece{q}})
		price += b.price(*l)
		if l.most--; l.most == 0 {
			b.offer.sells = slices.Delete(b.offer.sells, best, best+1) // the last of them
		}
	}
	b.pieces = rest
	return bars, price
}

// price is what a stick costs in the solver's units: hundredths of the currency, or grid steps.
func (b *bench) price(l stick) int64 {
	switch {
	case l.owned:
		return 0
	case b.byLength:
		return b.down(l.length)
	}
	return cents(l.price)
}

// cost is what a stick sold costs, in the plan's own terms.
func (b *bench) cost(l stick) float64 {
	if b.byLength {
		return float64(l.length)
	}
	return float64(cents(l.price)) / 100
}
