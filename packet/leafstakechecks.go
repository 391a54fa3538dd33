package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// bayTable has the sides and diagonals of every bay of a bend; bays that are alike and follow each other share a row.
func (p stakePart) bayTable() block.Block {
	type bay struct {
		first, last int
		figures     [4]string
	}
	var bays []bay
	legs := p.ground.Stakes
	for k := p.First; k < p.Last; k++ {
		l, r, nl, nr := legs[2*k-2], legs[2*k-1], legs[2*k], legs[2*k+1]
		figures := [4]string{p.bare(ground.Between(l, nl)), p.bare(ground.Between(r, nr)), p.bare(ground.Between(l, nr)), p.bare(ground.Between(r, nl))}
		if n := len(bays); n > 0 && bays[n-1].figures == figures {
			bays[n-1].last = k
			continue
		}
		bays = append(bays, bay{k, k, figures})
	}
	heads := []string{"L to next L", "R to next R", "L to next R", "R to next L"}
	t := place.Table{Columns: []place.Column{{Head: "Bay after" + p.inMM(), Lettering: paper.Cell, Width: 36}}}
	for _, h := range heads {
		t.Columns = append(t.Columns, place.Column{Head: h, Lettering: paper.Cell, Align: paper.AtRight, Width: 36})
	}
	table := block.Block{Name: "bays"}
	var rows []place.Row
	for _, b := range bays {
		name := say.Range(b.first, b.last)
		if b.last > b.first {
			name += ", each"
		}
		rows = append(rows, place.Row{Cells: append([]string{name}, b.figures[:]...)})
		for i, f := range b.figures {
			table.Facts = append(table.Facts, block.Fact{What: heads[i] + ", bay " + name, Value: f})
		}
	}
	table.Body = block.Table{Table: t, Rows: rows}
	return table
}

// checkTable has what is measured while the dots are paint: where the figure that is wanted stands, or the figure where it stands nowhere else, the limit, and room for the worst that was found.
func (p stakePart) checkTable() block.Block {
	t := place.Table{Columns: []place.Column{{Head: "Check in order", Lettering: paper.Body, Width: checkWords}, {Head: "Wanted", Lettering: paper.CellSmall}, {Head: "Within", Lettering: paper.CellSmall}, {Head: "Worst", Width: 11}}}
	table := block.Block{Name: "checks"}
	var rows []place.Row
	for _, c := range p.checkLines() {
		limit := p.units.Inches(c.list[0].Limit)
		if c.wanted == "" {
			c.wanted = p.bare(c.list[0].Distance)
			table.Facts = append(table.Facts, block.Fact{What: c.words, Value: c.wanted})
		}
		rows = append(rows, place.Row{Cells: []string{c.words, c.wanted, limit}})
		table.Facts = append(table.Facts, block.Fact{What: "within, " + c.words, Value: limit})
	}
	table.Body = fittedTable{block.Table{Table: t, Rows: rows}}
	return table
}

// checkWords is how wide the words of checks are at least.
const checkWords paper.Length = 30

// checkLine is a line of the table of checks: some that are alike.
type checkLine struct {
	words, wanted string // where their figures stand; empty: nowhere but here
	list          []ground.Check
}

// onPlan is where figures stand that checks are held against, if not in a table; a table is called by the head of their column.
const onPlan = "on plan"

// checkLines are a part's checks, those of one kind in a line.
func (p stakePart) checkLines() (list []checkLine) {
	for kind := ground.ThirdTape; kind <= ground.GuyToLeg; kind++ {
		var here []ground.Check
		for _, c := range p.checks {
			if c.Kind == kind && p.checkedOn(c) {
				here = append(here, c)
			}
		}
		switch {
		case len(here) == 0:
		case kind == ground.GuyToLeg:
			list = append(list, p.guyLines(here)...)
		case kind == ground.WholeDiagonal && !(p.onPlan(kind) && p.on(here[0].From) && p.on(here[0].To)):
			for _, c := range here {
				list = append(list, checkLine{words: p.spot(c.From) + " to " + p.spot(c.To), list: []ground.Check{c}})
			}
		case (kind == ground.Width || kind == ground.BayDiagonal && p.ground.Straight) && !p.onPlan(kind):
			list = append(list, p.namedLines(here)...)
		default:
			list = append(list, p.checkLine(kind, here))
		}
	}
	return list
}

// namedLines are checks whose figures differ from arch to arch or from bay to bay, those alike in a line that names which.
func (p stakePart) namedLines(here []ground.Check) (list []checkLine) {
	words := map[ground.CheckKind][2]string{ground.Width: {"L to R", "arch"}, ground.BayDiagonal: {"diagonals", "bay"}, ground.GuyToLeg: {"G to L, R", "arch"}}[here[0].Kind]
	of := map[string]int{} // lines by their words
	for _, g := range ground.Similar(here, p.units) {
		var numbers []int
		for _, c := range g {
			numbers = append(numbers, min(p.ground.Stakes[c.From.Index].Arch, p.ground.Stakes[c.To.Index].Arch))
		}
		slices.Sort(numbers)
		line := checkLine{words: words[0] + ", " + say.Numbered(words[1], slices.Compact(numbers)), list: g}
		of[line.words]++
		list = append(list, line)
	}
	for i, line := range list {
		if of[line.words] > 1 { // an arch's stakes differ: by their names
			from, to := p.stakesOf(line.list)
			if list[i].words = words[0] + ": " + to; here[0].Kind == ground.GuyToLeg {
				list[i].words = to + " to " + from
			}
		}
	}
	return list
}

// stakesOf names the stakes at which checks begin, each once, and those at which they end.
func (p stakePart) stakesOf(list []ground.Check) (from, to string) {
	var names [2][]numbered
	for _, c := range list {
		for end, at := range [2]int{c.From.Index, c.To.Index} {
			id := p.ground.Stakes[at].StakeID
			if name := (numbered{id.Before(), id.Arch, id.After()}); !slices.Contains(names[end], name) {
				names[end] = append(names[end], name)
			}
		}
	}
	return inRanges(names[0]), inRanges(names[1])
}

// guyLines are the checks of guys' and braces' stakes, those alike in a line.
func (p stakePart) guyLines(here []ground.Check) (list []checkLine) {
	var guys, inner, pegs []ground.Check
	for _, c := range here {
		switch to := p.ground.Stakes[c.To.Index]; {
		case to.Kind() == ground.OfBrace:
			pegs = append(pegs, c)
			continue
		case p.innerTold() && p.inner(to):
			inner = append(inner, c)
		}
		guys = append(guys, c)
	}
	switch {
	case len(guys) == 0:
	case !p.onPlan(ground.GuyToLeg):
		list = p.namedLines(guys)
	default:
		where := onPlan
		switch len(inner) {
		case 0:
		case len(guys):
			where = fmt.Sprint("From L", p.tape.First)
		default:
			where = "plan, table"
		}
		list = []checkLine{{"each G to its L, R", where, guys}}
	}
	for _, g := range ground.Similar(pegs, p.units) {
		var names [2][]string // of the left wall, of the right one
		for _, c := range g {
			stake := p.ground.Stakes[c.To.Index]
			name := fmt.Sprintf("%s–%%s%d", stake.Pair(), stake.Arch)
			names[stake.Side] = append(names[stake.Side], name)
		}
		both := slices.Equal(names[spec.Left], names[spec.Right])
		var words []string
		for side, list := range names {
			if len(list) > 0 && (!both || spec.Side(side) == spec.Left) {
				words = append(words, strings.ReplaceAll(strings.Join(list, ", "), "%s", spec.Side(side).Letter()))
			}
		}
		line := checkLine{words: strings.Join(words, ", "), list: g}
		if both {
			line.words += " and R"
		}
		list = append(list, line)
	}
	return list
}

// checkedOn reports whether a check is done on a part: where both its ends are, along a row or from a mark where its far end is first, the diagonals of a tape's length where that begins.
func (p stakePart) checkedOn(c ground.Check) bool {
	switch c.Kind {
	case ground.Row, ground.FoundRow, ground.FromMark, ground.ThirdTape:
		return p.on(c.To) && (p.First == 1 || p.ground.Stakes[c.To.Index].Arch > p.First)
	case ground.WholeDiagonal:
		return p.on(c.From) && (p.on(c.To) || p.First == p.tape.First)
	}
	return p.on(c.From) && p.on(c.To)
}

// checkLine says what checks of a kind measure, and where the figures stand.
func (p stakePart) checkLine(kind ground.CheckKind, list []ground.Check) checkLine {
	var to []string
	for _, c := range list {
		if name := p.spot(c.To); !slices.Contains(to, name) {
			to = append(to, name)
		}
	}
	ends := strings.Join(to, ", ")
	zero, third, bays := fmt.Sprint("From\u00a0L", p.tape.First), "Check tape", "Bay after"
	if p.byRow() {
		third = "Tape to"
	}
	if p.onPlan(ground.BayDiagonal) {
		bays = onPlan
	}
	words := map[ground.CheckKind][2]string{
		ground.ThirdTape:     {"[tapes] to " + ends, third},
		ground.FromMark:      {"[tapes] to " + ends, "Tape to"},
		ground.FoundRow:      {"row " + p.spot(list[0].From) + " to " + ends, zero},
		ground.FoundWidth:    {"each R cross to its L", onPlan},
		ground.Row:           {"rows to " + ends, zero},
		ground.Width:         {"each width L to R", onPlan},
		ground.Side:          {"sides of bays", "Bay after"},
		ground.BayDiagonal:   {"bay diagonals", bays},
		ground.WholeDiagonal: {"long diagonals", onPlan},
	}[kind]
	if kind == ground.ThirdTape && !p.byRow() {
		words[0] = "each check tape"
	}
	return checkLine{words[0], words[1], list}
}
