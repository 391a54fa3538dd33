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
)

// bayTable has the sides and diagonals of every bay of a bend; bays that are alike and follow each other share a row.
func (s *stakeLeaf) bayTable(part ground.TapeLength) block.Block {
	type bay struct {
		first, last int
		figures     [4]string
	}
	var bays []bay
	legs := s.ground.Stakes
	for k := part.First; k < part.Last; k++ {
		l, r, nl, nr := legs[2*k-2], legs[2*k-1], legs[2*k], legs[2*k+1]
		figures := [4]string{s.bare(ground.Between(l, nl)), s.bare(ground.Between(r, nr)), s.bare(ground.Between(l, nr)), s.bare(ground.Between(r, nl))}
		if n := len(bays); n > 0 && bays[n-1].figures == figures {
			bays[n-1].last = k
			continue
		}
		bays = append(bays, bay{k, k, figures})
	}
	heads := []string{"L to next L", "R to next R", "L to next R", "R to next L"}
	t := place.Table{Columns: []place.Column{{Head: "Each bay, from arch" + s.inMM(), Lettering: paper.Cell, Width: 36}}}
	for _, h := range heads {
		t.Columns = append(t.Columns, place.Column{Head: h, Lettering: paper.Cell, Align: paper.AtRight, Width: 36})
	}
	var rows []place.Row
	var facts []block.Fact
	for _, b := range bays {
		name := say.Range(b.first, b.last)
		rows = append(rows, place.Row{Cells: append([]string{name}, b.figures[:]...)})
		for i, f := range b.figures {
			facts = append(facts, block.Fact{What: heads[i] + ", bay " + name, Value: f})
		}
	}
	return block.Block{Name: "bays", Gap: stakeGap, Facts: facts, Body: block.Table{Table: t, Rows: rows}}
}

// checkTable has what is measured while the dots are paint, with the limit and room for the worst that was found.
func (s *stakeLeaf) checkTable(part ground.TapeLength) block.Block {
	t := place.Table{RowMin: 6.8, Columns: []place.Column{{Head: "Check, in this order"}, {Head: "Give or take", Lettering: paper.Cell, Width: 31}, {Head: "Worst", Width: 22}}}
	var rows []place.Row
	var facts []block.Fact
	for _, c := range s.checkLines(part) {
		if c.distance != "" {
			facts = append(facts, block.Fact{What: c.what, Value: c.distance})
		}
		rows = append(rows, place.Row{Cells: []string{c.words, c.limit}})
		facts = append(facts, block.Fact{What: "give or take, " + c.words, Value: c.limit})
	}
	return block.Block{Name: "checks", Gap: stakeGap, Facts: facts, Body: block.Table{Table: t, Rows: rows}}
}

// checkLine is a line of the table of checks.
type checkLine struct {
	words, limit   string
	what, distance string // of a distance told in the words
}

// checkLines are a part's checks, those of one kind in a line; a distance that is on no plan stands in its line.
func (s *stakeLeaf) checkLines(part ground.TapeLength) (list []checkLine) {
	for kind := ground.ThirdTape; kind <= ground.GuyToLeg; kind++ {
		var here []ground.Check
		for _, c := range s.checks {
			if c.Kind == kind && s.checkedOn(c, part) {
				here = append(here, c)
			}
		}
		switch {
		case len(here) == 0:
		case kind == ground.GuyToLeg:
			list = append(list, s.guyLines(here)...)
		case kind == ground.WholeDiagonal && !(s.on(here[0].From, part) && s.on(here[0].To, part)):
			for _, c := range here {
				what, distance := s.spot(c.From)+" to "+s.spot(c.To), s.bare(c.Distance)
				list = append(list, checkLine{what + ": " + distance, s.units.Inches(c.Limit), what, distance})
			}
		default:
			list = append(list, checkLine{words: s.checkWords(kind, here), limit: s.units.Inches(here[0].Limit)})
		}
	}
	return list
}

// guyLines are the checks of guys' and braces' stakes, those alike in a line: what stands on no plan with its distance.
func (s *stakeLeaf) guyLines(here []ground.Check) (list []checkLine) {
	onPlan := slices.DeleteFunc(slices.Clone(here), func(c ground.Check) bool {
		return !s.onPlan(c.Kind) || s.ground.Stakes[c.To.Index].Kind() == ground.OfBrace
	})
	if len(onPlan) > 0 {
		list = append(list, checkLine{words: "each G to its leg", limit: s.units.Inches(here[0].Limit)})
	}
	for _, g := range ground.Similar(here, s.units) {
		var names []string
		what := ""
		for _, c := range g {
			if stake := s.ground.Stakes[c.To.Index]; stake.Kind() == ground.OfBrace {
				if name := fmt.Sprintf("%s%d–L%d", stake.Before(), stake.Number(), stake.Arch); !slices.Contains(names, name) {
					names = append(names, name)
				}
			}
		}
		switch {
		case len(names) > 0:
			what = strings.Join(names, ", ") + " and R"
		case s.onPlan(ground.GuyToLeg):
			continue
		default:
			what = "G to leg, " + say.Numbered("arch", s.archesOf(g))
		}
		distance := s.bare(g[0].Distance)
		list = append(list, checkLine{what + ": " + distance, s.units.Inches(g[0].Limit), what, distance})
	}
	return list
}

// on reports whether a spot is on a part; marks are on all.
func (s *stakeLeaf) on(x ground.Spot, part ground.TapeLength) bool {
	arch := s.ground.Stakes[x.Index].Arch
	return x.Kind == ground.AtMark || arch >= part.First && arch <= part.Last
}

// checkedOn reports whether a check is done on a part: where both its ends are, along a row where its far end is, the diagonals of a tape's length where that begins.
func (s *stakeLeaf) checkedOn(c ground.Check, part ground.TapeLength) bool {
	switch c.Kind {
	case ground.Row, ground.FoundRow:
		return s.on(c.To, part)
	case ground.WholeDiagonal:
		return s.on(c.From, part) && (s.on(c.To, part) || part.First == s.tapeOf(part).First)
	}
	return s.on(c.From, part) && s.on(c.To, part)
}

// archesOf are the arches of what checks end at, each once.
func (s *stakeLeaf) archesOf(checks []ground.Check) (numbers []int) {
	for _, c := range checks {
		if n := s.ground.Stakes[c.To.Index].Arch; !slices.Contains(numbers, n) {
			numbers = append(numbers, n)
		}
	}
	return numbers
}

// checkWords says what checks of a kind measure.
func (s *stakeLeaf) checkWords(kind ground.CheckKind, list []ground.Check) string {
	var to []string
	for _, c := range list {
		if name := s.spot(c.To); !slices.Contains(to, name) {
			to = append(to, name)
		}
	}
	ends := strings.Join(to, ", ")
	switch kind {
	case ground.ThirdTape:
		if !s.byRow() {
			return "each check tape"
		}
		return "tapes in [ ]: " + ends
	case ground.FromMark:
		return "tapes to " + ends
	case ground.FoundRow:
		return "row tape at " + ends
	case ground.FoundWidth:
		return "each R cross to its L"
	case ground.Row:
		return "row tapes at " + ends
	case ground.Width:
		return "L to R, every arch"
	case ground.Side:
		return "sides, every bay"
	case ground.BayDiagonal:
		return "diagonals, every bay"
	}
	return "long diagonals"
}
