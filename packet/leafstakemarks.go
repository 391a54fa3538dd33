package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// chosenMarks is a table to write down the marks that are chosen where the spec names none, with their tapes to the corners.
func (s *stakeLeaf) chosenMarks() block.Block {
	n := len(s.ground.Stations)
	t := place.Table{RowMin: 7, Columns: []place.Column{{Head: "For next year: what, its face"}, {Head: "to L1", Width: 18}, {Head: "to R1", Width: 18}}}
	if n > 1 {
		t.Columns = append(t.Columns, place.Column{Head: fmt.Sprintf("to L%d", n), Width: 18}, place.Column{Head: fmt.Sprintf("to R%d", n), Width: 18})
	}
	return block.Block{Name: "marks chosen", Gap: stakeGap, Body: block.Table{Table: t, Rows: []place.Row{{Cells: []string{"A"}}, {Cells: []string{"B"}}, {Cells: []string{"C"}}}}}
}

// markTape is a tape from a mark to a corner of straight rows.
type markTape struct {
	spot, mark ground.Spot
	length     measure.Length
	check      bool // it finds nothing
}

// markTapes are the tapes from marks to what is on a part.
func (s *stakeLeaf) markTapes(part ground.TapeLength) (list []markTape) {
	here := func(x ground.Spot) bool {
		arch := s.ground.Stakes[x.Index].Arch
		return arch >= part.First && arch <= part.Last && (arch > part.First || part.First == 1)
	}
	for _, d := range s.dots {
		if d.How == ground.TwoTapes && d.From.Kind == ground.AtMark && here(d.Spot) {
			list = append(list, markTape{d.Spot, d.From, d.A, false}, markTape{d.Spot, d.To, d.B, false})
		}
	}
	for _, c := range s.checks {
		if c.From.Kind == ground.AtMark && here(c.To) {
			list = append(list, markTape{c.To, c.From, c.Distance, true})
		}
	}
	return list
}

// markTable has the tapes from marks to the corners of straight rows: a row a spot, a column a mark. What checks a spot that two others find is in brackets; under
// a heading, what checks one that is found from the row.
func (s *stakeLeaf) markTable(part ground.TapeLength) (block.Block, bool) {
	list := s.markTapes(part)
	if len(list) == 0 {
		return block.Block{}, false
	}
	var spots, found, marks []ground.Spot
	for _, r := range list {
		if !slices.Contains(spots, r.spot) {
			spots = append(spots, r.spot)
		}
		if !r.check {
			found = append(found, r.spot)
		}
		if !slices.Contains(marks, r.mark) {
			marks = append(marks, r.mark)
		}
	}
	slices.SortFunc(marks, func(a, b ground.Spot) int { return a.Index - b.Index })
	columns := s.markHeads(marks)
	var rows []place.Row
	var facts []block.Fact
	checks := false
	for _, spot := range spots {
		only := !slices.Contains(found, spot)
		if only && !checks {
			checks = true
			rows = append(rows, place.Row{Heading: "Only to check, and to find again"})
		}
		cells := make([]string, len(columns))
		cells[0] = s.spot(spot)
		n := 1
		for _, r := range list {
			if r.spot != spot {
				continue
			}
			text := s.bare(r.length)
			facts = append(facts, block.Fact{What: s.spot(spot) + " from " + s.ground.Marks[r.mark.Index].Name, Value: text})
			if r.check && !only {
				text = "[" + text + "]"
			}
			at := 1 + slices.Index(marks, r.mark)
			if len(marks) > markColumns {
				at, text = n, draw.MarkLetter(r.mark.Index)+"\u00a0"+text
				n++
			}
			cells[at] = text
		}
		rows = append(rows, place.Row{Cells: cells})
	}
	return block.Block{Name: "tapes from the marks", Gap: stakeGap, Facts: facts, Body: block.Table{Table: place.Table{Columns: fitting(columns, rows, stakeAside)}, Rows: rows}}, true
}

// markColumns is the most marks that have a column each.
const markColumns = 3

// markHeads are a column a mark, or where there are more the first, second and check tape.
func (s *stakeLeaf) markHeads(marks []ground.Spot) []place.Column {
	columns := []place.Column{{Head: "Tapes from", Lettering: paper.Cell}}
	heads := []string{"First tape", "Second tape", "Check tape"}
	if len(marks) <= markColumns {
		heads = nil
		for _, m := range marks {
			heads = append(heads, draw.MarkLetter(m.Index)+" "+s.ground.Marks[m.Index].Name)
		}
	}
	for _, h := range heads {
		columns = append(columns, place.Column{Head: h, Align: paper.AtRight, Lettering: paper.Cell})
	}
	return columns
}

// fitting sets the figures of a table's columns as large as all of them stand on one line within a width.
func fitting(columns []place.Column, rows []place.Row, width paper.Length) []place.Column {
	for _, size := range []paper.PointSize{14, 12, 11} {
		for i := range columns {
			columns[i].Lettering, columns[i].Width = paper.Cell.Sized(size), 0
		}
		columns = sized(columns, rows)
		sum := paper.Length(0)
		for _, c := range columns {
			sum += c.Width
		}
		if sum <= width {
			columns[len(columns)-1].Width = 0 // what is left
			break
		}
	}
	return columns
}
