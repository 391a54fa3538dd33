package packet

import (
	"cmp"
	"fmt"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/catalog"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// buying writes what is bought.
type buying struct {
	plan *layout.Plan
	spec *spec.Spec
}

// blocks is the list of what to buy by where it is bought, in two columns, and what it comes to.
func (b buying) blocks(width paper.Length) []block.Block {
	rows := b.rows()
	if len(rows) == 0 {
		return nil
	}
	first, second := halved(rows, (width-buyGap)/2)
	table := func(rows []place.Row) []block.Block {
		return []block.Block{{Name: buyingList, Body: block.Table{Table: buyTable(), Rows: rows}}}
	}
	columns := block.Columns{Gap: buyGap, Cols: []block.Column{{Share: 1, Blocks: table(first)}, {Share: 1, Blocks: table(second)}}}
	return []block.Block{{Name: buyingList, Body: columns, Facts: b.facts()},
		{Name: "what it comes to", Gap: 1.5, Body: block.Words{Text: b.total()}, Facts: []block.Fact{{What: "what is loaded", Value: haul(b.plan)}}}}
}

// buyingList names the blocks of the list.
const buyingList = "buying list"

// buyGap is the free room between the two columns of the list.
const buyGap paper.Length = 4

func buyTable() place.Table {
	return place.Table{Columns: []place.Column{
		{Tick: true, Width: 7.8}, {Head: "Buy", Width: 14, Align: paper.AtRight, Lettering: paper.Cell}, {Head: "Item", Lettering: paper.Floor},
		{Head: "Each", Width: 16.5, Align: paper.AtRight, Lettering: paper.Floor}}}
}

// rows are the list's lines under their stores.
func (b buying) rows() []place.Row {
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
				heading += ": " + rebar(material)
			}
			if i.Kind == stock.ReadyStake {
				heading += ", shop cuts"
			}
			rows = append(rows, place.Row{Heading: heading})
		}
		rows = append(rows, buyRow(i, b.spec, material))
	}
	return rows
}

// buyRow is one line of the list.
func buyRow(i stock.Item, s *spec.Spec, material string) place.Row {
	name := itemName(i, s, material)
	if w := rightOne(i, s); w != "" {
		name += ", " + w
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
func halved(rows []place.Row, width paper.Length) (first, second []place.Row) {
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
			right = append([]place.Row{{Heading: heading + ", more"}}, right...)
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

// facts declares the figures of the list.
func (b buying) facts() []block.Fact {
	var list []block.Fact
	for _, i := range b.plan.Shopping {
		name := itemName(i, b.spec, "")
		list = append(list, block.Fact{What: fmt.Sprintf("to buy, %s %s %d", name, i.Of, i.Kind), Value: fmt.Sprintf("%d %s %s %s %s", i.Buy, name, i.Of, stock.Sold(i.Length, b.spec.Units), rightOne(i, b.spec))})
	}
	return list
}

// total is what all of it comes to, and from what sum on somebody is asked.
func (b buying) total() string {
	sum := b.plan.Cost.Bought
	text := "Total "
	if len(readLabels(b.plan)) == 0 && buyingWaits(remarksOf(b.plan.Findings)) { // else it stands over the labels
		text = fmt.Sprintf("Buy once leaf %d says yes. Total ", leafNumber("board"))
	}
	text += block.Figure(fmt.Sprintf("%.2f", sum.Money)) + currencyWords(b.spec)
	if sum.Assumed > 0 {
		text += " (≈ assumed)"
	}
	if sum.Unpriced > 0 {
		text += fmt.Sprintf(", %s without price", say.Count(sum.Unpriced, "line"))
	}
	if day, _ := crew.MarkOn(b.spec, drives(b.plan)); !day.IsZero() {
		text += ", here by " + day.Format("2 Jan 2006")
	}
	spares := sparesSaid(b.plan)
	if spares != "" {
		spares = " Spares in all: " + spares + "."
	}
	return text + fmt.Sprintf(". A tenth over: ask %s.", askWhom(b.spec)) + spares + haul(b.plan)
}

// sparesSaid says how much of what is bought and fetched is spare.
func sparesSaid(p *layout.Plan) string {
	var words []string
	for _, s := range sparesOf(p) {
		words = append(words, say.Count(s.count, s.noun))
	}
	return strings.Join(words, ", ")
}

// sparesOf counts what is spare of what is bought and fetched from the shed, by what it is.
func sparesOf(p *layout.Plan) (list []stored) {
	ready := "stake"
	if !drives(p) {
		ready = "bar"
	}
	sorts := []struct {
		noun string
		is   func(stock.Kind) bool
	}{{"stick", func(k stock.Kind) bool { return k == stock.PipeStick }}, {"fitting", stock.Kind.Fitting}, {"bar", func(k stock.Kind) bool { return k == stock.SteelBar }},
		{ready, func(k stock.Kind) bool { return k == stock.ReadyStake }}, {"cap", func(k stock.Kind) bool { return k == stock.StakeCap }}, {"string", func(k stock.Kind) bool { return k == stock.LightString }}, {"supply", func(k stock.Kind) bool { return k == stock.Supply }}}
	for _, sort := range sorts {
		n := 0
		for _, i := range p.Shopping {
			if sort.is(i.Kind) {
				n += i.Spare
			}
		}
		if n > 0 {
			list = append(list, stored{noun: sort.noun, count: n})
		}
	}
	return list
}

// haul says what the pipe rides home from the shop on, and what pipe and strings, what steel as it is sold, whole bars too, and what bags weigh.
func haul(p *layout.Plan) string {
	hung, steel, long := pipeLoad(p), measure.Mass(0), measure.Length(0)
	for _, i := range p.Shopping {
		switch i.Kind {
		case stock.PipeStick:
			long = max(long, i.Length*measure.Length(min(1, i.Buy)))
		case stock.SteelBar, stock.ReadyStake:
			bar, _ := catalog.FindBar(i.Of)
			steel += measure.Mass(float64(bar.Mass) * i.Length.Metres() * float64(i.Need))
		}
	}
	words := fmt.Sprintf(" Haul: %s, %s; steel %s", rides[practice.Rides(p.Spec.Units, long, hung)], p.Spec.Units.Mass(hung), p.Spec.Units.Mass(steel))
	if bags := bagsBought(p); bags > 0 {
		words += fmt.Sprintf("; bags %s, boards extra", p.Spec.Units.Mass(measure.Mass(bags)*practice.Bag(p.Spec.Units).Mass()))
	}
	return words + "."
}

// pipeLoad is what all arches weigh, with what hangs on them.
func pipeLoad(p *layout.Plan) (load measure.Mass) {
	for _, a := range standingOf(p) {
		load += a.Weight.Mass()
	}
	return load
}

// bagsBought counts the weights of feet that are bought.
func bagsBought(p *layout.Plan) (n int) {
	for _, i := range p.Shopping {
		if i.Kind == stock.SandBag {
			n += i.Buy
		}
	}
	return n
}

// askWhom is whom the crews ask, or a line to write the name on.
func askWhom(s *spec.Spec) string {
	return cmp.Or(strings.TrimSpace(s.Crew.Ask.Name+" "+s.Crew.Ask.Phone), "________________")
}
