package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// bench sets what has to lie on the bench, material by material, and how good the plan is.
func (c *cutting) bench() {
	var lines []string
	for _, item := range items(c.cuts.Bars) {
		var words []string
		whole, cut := 0, 0
		for _, lot := range c.lots(item) {
			from := "bought"
			if lot[0].Owned {
				from = "from the shed"
			}
			words = append(words, fmt.Sprintf("%d of %s %s", len(lot), lot[0].Size(c.units), from))
			for _, b := range lot {
				if b.Whole() {
					whole++
				} else {
					cut++
				}
			}
		}
		use := fmt.Sprintf("%d stay whole, %d are cut.", whole, cut)
		switch {
		case cut == 0:
			use = "all stay whole."
		case whole == 0:
			use = "all are cut."
		}
		lines = append(lines, fmt.Sprintf("%s: %s; %s", item, strings.Join(words, ", "), use))
	}
	c.heading("Lay out", 20)
	c.ticks(lines)
	c.whole()
	c.text(c.proof(), paper.Strong)
	c.gap(2)
}

// lots gathers the bars of a material by length and by whether they are owned.
func (c *cutting) lots(item string) [][]stock.Bar {
	var list [][]stock.Bar
	for _, b := range c.cuts.Bars {
		if b.Item != item {
			continue
		}
		k := slices.IndexFunc(list, func(lot []stock.Bar) bool { return lot[0].Stock == b.Stock && lot[0].Owned == b.Owned })
		if k < 0 {
			k = len(list)
			list = append(list, nil)
		}
		list[k] = append(list[k], b)
	}
	return list
}

// proof says how good the plan is, and how much better any could be.
func (c *cutting) proof() string {
	sticks, bars := 0, 0
	for _, b := range c.cuts.Bars {
		switch {
		case b.Owned:
		case b.Steel():
			bars++
		default:
			sticks++
		}
	}
	var bought []string
	if sticks > 0 {
		bought = append(bought, say.Count(sticks, "stick"))
	}
	if bars > 0 {
		bought = append(bought, say.Count(bars, "bar"))
	}
	if len(bought) == 0 {
		return "Nothing to buy: the shed holds it all."
	}
	words := strings.Join(bought, " and ") + " to buy"
	switch {
	case c.cuts.OneLength && c.cuts.Proven:
		return words + "; no plan can use fewer."
	case c.cuts.OneLength:
		return fmt.Sprintf("%s; a plan could be at most %s better: not proven.", words, say.Count(c.cuts.FewerAtMost(), "stick"))
	}
	amount, gap := c.b.money(c.cuts.Cost), c.b.money(c.cuts.Cost-c.cuts.Bound)
	if c.cuts.ByLength {
		amount, gap = c.units.Room(measure.Length(c.cuts.Cost)), c.units.Room(measure.Length(c.cuts.Cost-c.cuts.Bound))
	}
	if c.cuts.Proven {
		return fmt.Sprintf("%s, %s in all; no plan from the lengths sold can do with less.", words, amount)
	}
	return fmt.Sprintf("%s, %s in all; a plan could be at most %s better: not proven.", words, amount, gap)
}

// whole lists the sticks that need no cut.
func (c *cutting) whole() {
	for _, item := range items(c.cuts.Bars) {
		for _, lot := range c.lots(item) {
			lot = slices.DeleteFunc(lot, func(b stock.Bar) bool { return !b.Whole() })
			if len(lot) == 0 {
				continue
			}
			var pieces []stock.Piece
			for _, b := range lot {
				pieces = append(pieces, b.Pieces...)
			}
			var names []string
			for _, g := range alike(pieces) {
				names = append(names, g.sort.Noun()+" "+places(g.pieces))
			}
			c.ticks([]string{fmt.Sprintf("%s of %s stay whole: %s. Measure each: %s, limit ±\u00a0%s. Long: trim it. Short: put it aside to be cut, take another. Name it.",
				say.Count(len(lot), barNoun(lot[0])), lot[0].Size(c.units), strings.Join(names, "; "), c.units.Cut(lot[0].Stock), c.near())})
		}
	}
}

// near is how far a stick may be off that is used as it was sold.
func (c *cutting) near() string {
	return measure.By(c.units, c.units.Inches(measure.Inch/8), c.units.Inches(3*measure.Millimetre))
}

// pieces sets the list of pieces with their checks.
func (c *cutting) pieces() {
	from := c.sources()
	var rows []place.Row
	item := ""
	for _, g := range alike(c.b.plan.Stock.Pieces) {
		if g.item != item {
			item = g.item
			rows = append(rows, place.Row{Heading: item})
		}
		length := c.units.Cut(g.pieces[0].Length)
		rows = append(rows, place.Row{Cells: []string{g.sort.Noun() + " " + places(g.pieces), fmt.Sprint(len(g.pieces)), length, from(g)}})
	}
	c.heading(fmt.Sprintf("Pieces: limit %s, used as bought ±\u00a0%s", c.limit(), c.near()), 30)
	c.table(place.Table{RowMin: 9, Columns: []place.Column{
		{Head: "Piece"}, {Head: "Count", Lettering: paper.Cell, Align: paper.AtRight, Width: 17}, {Head: "Length", Lettering: paper.Cell, Align: paper.AtRight, Width: 37},
		{Head: "From", Width: 26}, {Head: "Measured", Width: 24}, {Head: "All named", Tick: true, Width: 18}}}, rows)
}

// sources returns what says where like pieces come from: the letters of their patterns, whole sticks, bought to length.
func (c *cutting) sources() func(likePieces) string {
	where := map[stock.PieceID]string{}
	for _, b := range c.cuts.Bars {
		if b.Whole() {
			where[b.Pieces[0].ID] = "whole"
		}
	}
	for _, p := range c.patterns {
		for _, b := range p.bars {
			for _, piece := range b.Pieces {
				where[piece.ID] = p.letter
			}
		}
	}
	return func(g likePieces) string {
		var list []string
		for _, p := range g.pieces {
			w, ok := where[p.ID]
			if !ok {
				w = "bought cut"
			}
			if !slices.Contains(list, w) {
				list = append(list, w)
			}
		}
		return strings.Join(list, ", ")
	}
}
