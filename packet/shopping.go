package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/stock"
)

// shoppingList sets what to buy by where it is bought, then what the plan took a label to say.
func (b *binder) shoppingList() []leaf {
	if len(b.plan.Shopping) == 0 {
		f := b.newFlow("Nothing to buy: the plan needs nothing.", "")
		f.findings("shopping")
		return f.leaves
	}
	f := b.newFlow("Buy what the Buy column says. Tick it, write what you paid.", "this list, a tape and a pen. Measure pipe and read every label before you pay.")
	f.findings("shopping")
	if shed := b.inShed(); shed != "" {
		f.text(shed, paper.Body)
	}
	f.gap(1)
	f.table(shoppingTable(), b.shoppingRows())
	f.gap(2)
	f.text(b.spares(), paper.Body)
	f.together(150, func(f *flow) {
		f.labels()
		f.gap(3)
		f.buyerAsks()
	})
	return f.leaves
}

// buyerAsks ends the list.
func (f *flow) buyerAsks() {
	f.framed("Stop and ask when", func(f *flow) {
		f.text("A thing comes in another length, size or count than this list says. A label says less length, more watts, fewer end to end, or indoor use only. A thing is not to be had: bring nothing else in its place before you have asked.", paper.Body)
	})
}

func shoppingTable() place.Table {
	number := func(head string, width paper.Length, l paper.Lettering) place.Column {
		return place.Column{Head: head, Width: width, Align: paper.AtRight, Lettering: l}
	}
	return place.Table{Columns: []place.Column{
		{Tick: true, Width: 10}, {Head: "Item", Lettering: paper.Strong}, number("Need", 16, paper.CellSmall), number("Own", 16, paper.CellSmall),
		number("Buy", 19, paper.StakeName), number("Each", 18, paper.CellSmall), number("Sum", 22, paper.CellSmall), {Head: "Paid", Width: 22},
	}}
}

// stores are the headings of the places where things are bought.
var stores = map[string]string{
	"pipe": "Pipe and fittings", "steel": "Steel", "lights": "Lights", "electrical": "Cords, three-wire, and plugs: all for outdoor use", "sundries": "Sundries",
}

// shoppingRows are the list's lines under their stores, a sum for each store, and the total.
func (b *binder) shoppingRows() []place.Row {
	var rows []place.Row
	sum, priced, unpriced, assumed := 0.0, 0, 0, 0
	list := slices.DeleteFunc(slices.Clone(b.plan.Shopping), func(i stock.Item) bool { return i.Buy == 0 })
	for i, item := range list {
		if i == 0 || item.Where != list[i-1].Where {
			name, known := stores[item.Where]
			if !known {
				name = item.Where
			}
			rows = append(rows, place.Row{Heading: name})
		}
		rows = append(rows, itemRow(item))
		switch {
		case item.Priced:
			sum += float64(item.Buy) * item.Price
			if priced++; item.Assumed {
				assumed++
			}
		default:
			unpriced++
		}
	}
	words := "Total"
	if b.spec.Currency != "" {
		words += ", " + b.spec.Currency
	}
	total := place.Row{Cells: []string{" ", words, "", "", "", "", fmt.Sprintf("%.2f", sum)}, Total: true}
	switch {
	case priced == 0:
		total.Cells[6] = ""
		total.Note = "No line has a price yet: write it in."
	case unpriced == 1:
		total.Note = "Of what has a price here. 1 line has none: write it in."
	case unpriced > 1:
		total.Note = fmt.Sprintf("Of what has a price here. %d lines have none: write it in.", unpriced)
	}
	if assumed > 0 {
		if total.Note != "" {
			total.Note += " "
		}
		total.Note += havePrices(assumed) + " assumed: ask your shop."
	}
	return append(rows, total)
}

// noted adds a remark to a note, if there is one.
func noted(note, remark string) string {
	if note == "" {
		return remark
	}
	return joined(note, remark)
}

// havePrices begins a sentence on lines with assumed prices.
func havePrices(n int) string {
	if n == 1 {
		return "The price of 1 line is"
	}
	return fmt.Sprintf("The prices of %d lines are", n)
}

// inShed says what the shed gives whole, so that nothing of it is bought.
func (b *binder) inShed() string {
	var words []string
	for _, i := range b.plan.Shopping {
		if i.Buy == 0 {
			text := fmt.Sprintf("%d of %s", i.Need, itemName(i))
			if longer := i.StandInWords(b.spec.Units); longer != "" {
				text += " (take " + longer + ")"
			}
			words = append(words, text)
		}
	}
	if len(words) == 0 {
		return ""
	}
	return "From the shed, nothing to buy: " + strings.Join(words, "; ") + "."
}

// itemRow is one line of the list; prices that are not known stay blank, to be written in.
func itemRow(i stock.Item) place.Row {
	row := place.Row{Cells: []string{"", itemName(i), fmt.Sprint(i.Need), fmt.Sprint(i.Own), fmt.Sprint(i.Buy), "", ""}}
	if i.Own == 0 {
		row.Cells[3] = "–"
	}
	if i.Priced {
		row.Cells[5], row.Cells[6] = fmt.Sprintf("%.2f", i.Price), fmt.Sprintf("%.2f", float64(i.Buy)*i.Price)
	}
	row.Note = i.Why
	if unit := unitWords(i); unit != "" {
		row.Note = joined(unit, i.Why)
	}
	if i.Assumed {
		row.Note = noted(row.Note, "price assumed")
	}
	return row
}

// itemName is what the list calls an item; what is sold by length says by what.
func itemName(i stock.Item) string {
	name := strings.ReplaceAll(i.Item, "mm2", "mm²")
	switch i.Unit {
	case stock.Feet:
		return name + ", feet"
	case stock.Metres:
		return name + ", metres"
	}
	return name
}

// unitWords is what one of the item is, where its name does not say so.
func unitWords(i stock.Item) string {
	switch i.Unit {
	case stock.Each, stock.Feet, stock.Metres, stock.StickOf, stock.BarOf:
		return ""
	}
	return "each a " + i.Unit.String()
}

// spares states the rule by which spares were counted.
func (b *binder) spares() string {
	share := b.spec.Stock.Spares
	if share <= 0 {
		return "No spares are counted."
	}
	return fmt.Sprintf("Spares counted: %s of strings and ties, rounded up; none of pipe, fittings and stakes.", measure.Percent(share))
}
