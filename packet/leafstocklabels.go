package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// labelRow is the height of a row with room to write beside its figures.
const labelRow paper.Length = 7

// readLabels is what the plan took each label to say, with room for what it does say.
func readLabels(p *layout.Plan) []block.Block {
	var list []block.Block
	if rows, facts := stringLabels(p); len(rows) > 0 {
		number := func(head string, width paper.Length) place.Column {
			return place.Column{Head: head, Lettering: paper.CellSmall, Width: width}
		}
		table := place.Table{RowMin: labelRow, Columns: []place.Column{{Head: "Light string", Lettering: paper.Floor}, number("Lead", 21), number("Lit length", 25), number("Total", 28), number("Bulbs", 15),
			number("Volts", 17), number("Watts", 16), number("In a row", 20)}}
		list = append(list, block.Block{Name: "labels of the strings", Gap: 1, Body: block.Table{Table: table, Rows: rows}, Facts: facts})
	}
	var cords []string
	for _, c := range p.Power.Lots {
		known, ok := catalog.FindCord(c.Name)
		if !ok || slices.Contains(cords, c.Name) {
			continue
		}
		cords = append(cords, c.Name)
		name, amps := strings.ReplaceAll(c.Name, "mm2", "mm²"), measure.Amps(known.AmpsAt(c.Length))
		list = append(list, block.Block{Name: "labels of the cords", Gap: 0.5,
			Body:  block.Blanks{{Word: fmt.Sprintf("Cords %s: three wires, %s or more; label says", name, amps)}},
			Facts: []block.Fact{{What: "least amps, cord " + name, Value: amps}}})
	}
	if len(list) == 0 {
		return nil
	}
	u := p.Spec.Units
	off := u.Inches(labelGive(p))
	return append(titled(labelsHead(p), list...),
		block.Block{Name: "marks on labels", Gap: 1, Facts: []block.Fact{{What: "how far a string's length may be off", Value: off}},
			Body: block.Words{Text: fmt.Sprintf("All outdoor, marked %s. Over %s off, or anything else: buy no more, ask.", measure.By(u, "UL, ETL or CSA", "GS, VDE or BSI"), off)}})
}

// labelGive is how far a string's lead, its lit length and all of it may each be off. Where one is wound its lead shifts every bulb that is counted from the prongs: by no more than the count
// may be off.
func labelGive(p *layout.Plan) measure.Length {
	u := p.Spec.Units
	off, step := practice.WrapEnd(u), practice.Reading(u)
	bulbs := measure.Length(lighting{plan: p, u: u}.bulbGive())
	for _, w := range p.Wraps {
		if l := w.Label; len(w.Flags) > 0 && l.Bulbs > 1 {
			apart := (l.Length - l.Lead - l.Tail) / measure.Length(l.Bulbs-1)
			off = min(off, max(step, step*measure.Length(math.Floor(float64(bulbs*apart/step)+1e-9))))
		}
	}
	return off
}

// labelsHead says what is done before the rest is bought: of strings that are all in the shed one is read, and none is bought.
func labelsHead(p *layout.Plan) string {
	head, more := "Labels: write in what differs", false
	which, rest := "One string of each", "; then the rest"
	for _, i := range p.Shopping {
		if i.Kind == stock.LightString {
			more = more || i.Buy > 1
			if i.Own > 0 {
				which = "One string each, shop and shed"
			}
		}
	}
	if more {
		head = which + ": read label, measure"
	} else {
		rest = ""
	}
	if buyingWaits(remarksOf(p.Findings)) {
		rest = fmt.Sprintf("; rest once leaf %d says yes", leafNumber("board"))
	}
	return head + rest
}

// stringLabels lists each kind of light string that hangs.
func stringLabels(p *layout.Plan) (rows []place.Row, facts []block.Fact) {
	var done []string
	for _, s := range p.Strings {
		if slices.Contains(done, s.Kind) {
			continue
		}
		done = append(done, s.Kind)
		l := s.Label
		joins := joined(p, s.Kind)
		lead, lit, long := p.Spec.Units.Inches(l.Lead), p.Spec.Units.Tape(l.Length-l.Lead-l.Tail), p.Spec.Units.Tape(l.Length)
		row := place.Row{Cells: []string{s.Kind, lead, lit, long, fmt.Sprint(l.Bulbs), measure.Volts(l.Volts), measure.Watts(l.Watts), joins}}
		if l.Supply != nil {
			row.Note = fmt.Sprintf("supply: %s, %s", measure.Watts(l.Supply.Watts), say.Count(l.Supply.Sockets, "socket"))
		}
		rows = append(rows, row)
		facts = append(facts, block.Fact{What: "lead, " + s.Kind, Value: lead}, block.Fact{What: "lit length, " + s.Kind, Value: lit}, block.Fact{What: "plug to socket, " + s.Kind, Value: long},
			block.Fact{What: "volts, " + s.Kind, Value: measure.Volts(l.Volts)}, block.Fact{What: "watts, " + s.Kind, Value: measure.Watts(l.Watts)},
			block.Fact{What: "joined at least, " + s.Kind, Value: joins}, block.Fact{What: "supply, " + s.Kind, Value: row.Note})
	}
	return rows, facts
}

// joined is how many strings the longest run has that one of a kind is in, all kinds of it counted: the label must allow as many in a row, wherever its own hang.
func joined(p *layout.Plan, kind string) string {
	most := 0
	for _, c := range p.Power.Chains {
		if slices.ContainsFunc(p.Strings, func(s lights.String) bool { return s.Kind == kind && slices.Contains(c.Strings, s.Name) }) {
			most = max(most, len(c.Strings))
		}
	}
	return fmt.Sprintf("%d+", most)
}
