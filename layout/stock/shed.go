package stock

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
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
		k := slices.IndexFunc(list, func(l Lot) bool { return l.Item == item && l.Length == length })
		if k < 0 {
			k = len(list)
			list = append(list, Lot{Item: item, Length: length})
		}
		list[k].Count += count
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
			left := o.Count - taken[lot]
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

// standIns lets owned cords that are longer than needed serve where none of the right length is left: the longest need first. It returns how
// many of each name do, and in words which. A cord that may carry less for its length does not serve.
func (b *basket) standIns(needs map[string]int) (serve map[string]int, from map[string]string) {
	serve, from = map[string]int{}, map[string]string{}
	type owned struct {
		name   string
		length measure.Length
		left   int
	}
	var shed []owned
	for _, o := range b.spec.Stock.Own {
		if _, ok := catalog.FindCord(o.Item); ok && o.Length > 0 {
			name := o.Item + " " + Sold(o.Length, b.spec.Units)
			shed = append(shed, owned{o.Item, o.Length, max(0, o.Count-needs[name])})
		}
	}
	slices.SortStableFunc(shed, func(a, c owned) int { return cmp.Compare(a.length, c.length) })
	type need struct {
		name, item string
		length     measure.Length
		open       int
	}
	var list []need
	for name, n := range needs {
		item, size, ok := splitCord(name)
		if ok {
			list = append(list, need{name, item, size, n - b.owns(name)})
		}
	}
	slices.SortFunc(list, func(a, c need) int { return cmp.Or(cmp.Compare(c.length, a.length), strings.Compare(a.name, c.name)) })
	for _, n := range list {
		cord, ok := catalog.FindCord(n.item)
		for i := range shed {
			o := &shed[i]
			k := min(n.open, o.left)
			if !ok || k <= 0 || o.name != n.item || o.length <= n.length || cord.AmpsAt(o.length) < cord.AmpsAt(n.length) {
				continue
			}
			n.open, o.left = n.open-k, o.left-k
			serve[n.name] += k
			if from[n.name] != "" {
				from[n.name] += ", "
			}
			from[n.name] += fmt.Sprintf("%d of %s", k, Sold(o.length, b.spec.Units))
		}
	}
	return serve, from
}

// standInWords come before what stands in for an item.
const standInWords = "longer ones of the shed serve: "

// StandIns says which longer things of the shed serve for the item; empty where none do.
func (i Item) StandIns() string {
	words, found := strings.CutPrefix(i.Why, standInWords)
	if !found {
		return ""
	}
	return words
}

// splitCord splits a cord's name as sold, "16 AWG 25 ft", into the cord and its length.
func splitCord(name string) (item string, length measure.Length, ok bool) {
	words := strings.Fields(name)
	if len(words) < 4 {
		return "", 0, false
	}
	length, err := measure.ParseLength(strings.Join(words[len(words)-2:], " "))
	return strings.Join(words[:len(words)-2], " "), length, err == nil
}
