package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// buying is the list of what to buy by where it is bought, in two columns, and what it comes to.
func (b *binder) buying() []block.Block {
	rows := b.buyRows()
	if len(rows) == 0 {
		return nil
	}
	first, second := halved(rows)
	table := func(rows []place.Row) []block.Block {
		return []block.Block{{Name: "buying list", Body: block.Table{Table: buyTable(), Rows: rows}}}
	}
	columns := block.Columns{Gap: 4, Cols: []block.Column{{Share: 1, Blocks: table(first)}, {Share: 1, Blocks: table(second)}}}
	list := []block.Block{{Name: "buying list", Body: columns, Facts: b.bought()}}
	return append(list, block.Block{Name: "what it comes to", Gap: 1.5, Body: block.Words{Text: b.total() + b.inShed()}})
}

func buyTable() place.Table {
	return place.Table{Columns: []place.Column{
		{Tick: true, Width: 7.8}, {Head: "Buy", Width: 14, Align: paper.AtRight, Lettering: paper.Cell}, {Lettering: paper.Floor},
		{Head: "Each", Width: 16.5, Align: paper.AtRight, Lettering: paper.Floor}}}
}

// buyRows are the list's lines under their stores.
func (b *binder) buyRows() []place.Row {
	var rows []place.Row
	where, material := "", ""
	for _, i := range b.plan.Shopping {
		if i.Buy == 0 {
			continue
		}
		if i.Where != where {
			where, material = i.Where, materialOf(b.plan.Shopping, i.Where)
			heading := stores[where]
			if material != "" {
				heading += ": " + material
			}
			rows = append(rows, place.Row{Heading: heading})
		}
		rows = append(rows, buyRow(i, b.spec, material))
	}
	return rows
}

// buyRow is one line of the list: what is needed and owned is told where it is not what is bought.
func buyRow(i stock.Item, s *spec.Spec, material string) place.Row {
	name := itemName(i, s.Units, material)
	if w := rightOne(i, s); w != "" {
		name += ", " + w
	}
	if i.Buy != i.Need {
		name += fmt.Sprintf(" (need %d, own %d)", i.Need, i.Own)
	}
	return place.Row{Cells: []string{"", fmt.Sprint(i.Buy), name, price(i)}}
}

// price prints what one costs, with ≈ where it is assumed; what has none is left blank to be written in.
func price(i stock.Item) string {
	switch {
	case !i.Priced:
		return ""
	case i.Assumed:
		return fmt.Sprintf("≈%.2f", i.Price)
	}
	return fmt.Sprintf("%.2f", i.Price)
}

// halved parts the lines in two columns of about the same height, between stores or within one, whose heading is then repeated.
func halved(rows []place.Row) (first, second []place.Row) {
	width := paper.Length(90)
	table := block.Table{Table: buyTable()}
	best := paper.Length(-1)
	heading := ""
	for i := range rows {
		if rows[i].Heading != "" {
			heading = rows[i].Heading
		} else if i > 0 && rows[i-1].Heading != "" {
			continue // a heading with nothing under it
		}
		left, right := rows[:i], rows[i:]
		if right[0].Heading == "" {
			right = append([]place.Row{{Heading: heading}}, right...)
		}
		table.Rows = left
		high := table.Height(width)
		table.Rows = right
		if high = max(high, table.Height(width)); best < 0 || high < best {
			best, first, second = high, left, right
		}
	}
	return first, second
}

// bought declares the figures of the list.
func (b *binder) bought() []block.Fact {
	var list []block.Fact
	for _, i := range b.plan.Shopping {
		name := itemName(i, b.spec.Units, "")
		list = append(list, block.Fact{What: fmt.Sprintf("to buy, %s %s %d", name, i.Of, i.Kind), Value: fmt.Sprintf("%d %s %s %s %s", i.Buy, name, i.Of, stock.Sold(i.Length, b.spec.Units), rightOne(i, b.spec))})
	}
	return list
}

// total is what all of it comes to, in one line.
func (b *binder) total() string {
	sum := b.plan.Cost.Bought
	return "Total " + block.Figure(b.money(sum.Money)) + sumWords(sum) + ". Differs: ask before paying."
}

// inShed says what the shed gives whole, so that nothing of it is bought.
func (b *binder) inShed() string {
	var words []string
	for _, i := range b.plan.Shopping {
		if i.Buy == 0 {
			text := fmt.Sprintf("%d of %s", i.Need, itemName(i, b.spec.Units, ""))
			if longer := i.StandInWords(b.spec.Units); longer != "" {
				text += " (take " + longer + ")"
			}
			words = append(words, text)
		}
	}
	if len(words) == 0 {
		return ""
	}
	return " From the shed: " + strings.Join(words, "; ") + "."
}
