package stock

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock/cutting"
)

// Lot is so many of one length.
type Lot struct {
	Item   string
	Length measure.Length
	Count  int
}

// keep lists what goes to the shed for another year: offcuts that give a piece, to the grid and never long, and owned lengths of pipe and bar
// that the cuts do not take. Longest first within an item.
func keep(in Input, cuts Cuts) []Lot {
	var list []Lot
	add := func(item string, length measure.Length, count int) {
		entry(&list, Lot{Item: item, Length: length}, func(l Lot) bool { return l.Item == item && l.Length == length }).Count += count
	}
	grid := in.Spec.Units.Grid()
	taken := map[Lot]int{}
	for _, b := range cuts.Bars {
		if b.Offcut > 0 && b.Offcut >= cuts.Useful(b.Item) {
			add(b.Item, measure.Length(math.Floor(float64(b.Offcut/grid)+1e-6))*grid, 1)
		}
		if b.Owned {
			taken[Lot{Item: b.Item, Length: b.Stock}]++
		}
	}
	for _, item := range materials(cuts.Bars) {
		for _, o := range in.Spec.Stock.Own {
			if o.Length <= 0 || !sameItem(o.Item, item) {
				continue
			}
			lot := Lot{Item: item, Length: o.Length}
			left := o.Good() - taken[lot]
			taken[lot] = max(0, -left)
			if left > 0 {
				add(item, o.Length, left)
			}
		}
	}
	slices.SortStableFunc(list, func(a, b Lot) int { return cmp.Or(cmp.Compare(a.Item, b.Item), cmp.Compare(b.Length, a.Length)) })
	return list
}

// materials lists what bars are of, each once.
func materials(bars []Bar) []string {
	var list []string
	for _, b := range bars {
		if !slices.Contains(list, b.Item) {
			list = append(list, b.Item)
		}
	}
	return list
}

// fromShed cuts stakes that would else be bought ready from bars of other lengths that the shed holds: as many as replace most length of
// bought stakes. Stakes owned at their length are not cut.
func (b *bench) fromShed(all []Piece) []Bar {
	var lengths []measure.Length
	for _, p := range all {
		if p.Item == b.offer.item && !slices.Contains(lengths, p.Length) {
			lengths = append(lengths, p.Length)
		}
	}
	var ready []stick // what is bought stands for itself
	for _, l := range lengths {
		ready = append(ready, stick{length: l})
	}
	have := map[int64]int{}
	var owns []stick
	for _, o := range b.offer.owns {
		if slices.ContainsFunc(lengths, func(l measure.Length) bool { return b.up(l) == b.down(o.length) }) {
			have[b.down(o.length)] += o.most
		} else {
			owns = append(owns, o)
		}
	}
	b.offer.sells, b.offer.owns, b.byLength = ready, owns, true
	for _, p := range all {
		n := b.up(p.Length)
		switch {
		case p.Item != b.offer.item:
		case have[n] > 0:
			have[n]--
		default:
			b.pieces = append(b.pieces, p)
		}
	}
	p, sticks := b.problem()
	solution, err := cutting.Solve(p, cutting.Effort)
	if len(owns) == 0 || err != nil || !b.honest(p, sticks, solution) {
		return nil // all are bought
	}
	owned := slices.DeleteFunc(arrange(p, solution.Bars), func(c cutting.Bar) bool { return !sticks[c.Stock].owned })
	return b.lay(p, owned, sticks)
}

// standIns lets owned cords that are longer than needed serve where none of the right length is left: the longest need first. It notes in the lines of
// cords which do. A cord that may carry less for its length does not serve.
func (b *basket) standIns(lines []Item) {
	type owned struct {
		spec.Owned
		left int
	}
	var shed []owned
	for _, o := range b.spec.Stock.Own {
		if _, ok := catalog.FindCord(o.Item); ok && o.Length > 0 {
			left := o.Good()
			for _, i := range lines {
				if i.is(o.Item, o.Length) {
					left -= i.Need
				}
			}
			shed = append(shed, owned{o, max(0, left)})
		}
	}
	slices.SortStableFunc(shed, func(a, c owned) int { return cmp.Compare(a.Length, c.Length) })
	var needs []*Item
	for i := range lines {
		needs = append(needs, &lines[i])
	}
	slices.SortFunc(needs, func(a, c *Item) int { return cmp.Or(cmp.Compare(c.Length, a.Length), strings.Compare(a.Item, c.Item)) })
	for _, i := range needs {
		cord, ok := catalog.FindCord(i.Of)
		open := i.Need - b.owns(*i)
		for k := range shed {
			o := &shed[k]
			n := min(open, o.left)
			if !ok || i.Sockets > 0 || n <= 0 || !i.of(o.Item) || o.Length <= i.Length || cord.AmpsAt(o.Length) < cord.AmpsAt(i.Length) {
				continue
			}
			open, o.left = open-n, o.left-n
			i.Own += n
			i.StandIns = append(i.StandIns, StandIn{n, o.Length})
		}
	}
}
