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

const (
	marksChosen              = "marks chosen"
	leastChosen paper.Length = 86 // how wide its table is at least: room to write a thing's name
)

// chosenMarks is a table to write down the marks that are chosen where the spec names none, with their tapes to the corners.
func (s *stakeLeaf) chosenMarks() block.Block {
	columns := []place.Column{{Head: "For next year: thing, which side"}}
	for _, arch := range slices.Compact([]int{1, len(s.ground.Stations)}) {
		for _, side := range "LR" {
			columns = append(columns, place.Column{Head: fmt.Sprintf("to %c%d", side, arch), Width: 15})
		}
	}
	return block.Block{Name: marksChosen, Body: block.Table{Table: place.Table{RowMin: 7, Columns: columns}, Rows: []place.Row{{Cells: []string{"A"}}, {Cells: []string{"B"}}, {Cells: []string{"C"}}}}}
}

// markTape is a tape from a mark to a corner of straight rows.
type markTape struct {
	spot, mark ground.Spot
	length     measure.Length
	check      bool // it finds nothing
}

// markTapes are the tapes from marks to what is on a part.
func (p stakePart) markTapes() (list []markTape) {
	here := func(x ground.Spot) bool { return p.on(x) && (p.First == 1 || p.ground.Stakes[x.Index].Arch > p.First) }
	for _, d := range p.dots {
		if d.How == ground.TwoTapes && d.From.Kind == ground.AtMark && here(d.Spot) {
			list = append(list, markTape{d.Spot, d.From, d.A, false}, markTape{d.Spot, d.To, d.B, false})
		}
	}
	for _, c := range p.checks {
		if c.From.Kind == ground.AtMark && here(c.To) {
			list = append(list, markTape{c.To, c.From, c.Distance, true})
		}
	}
	return list
}

// markTable has the tapes from marks to the corners of straight rows: a row a spot, a column a mark. What only checks is in brackets.
func (p stakePart) markTable(list []markTape) block.Block {
	var marks []ground.Spot
	for _, r := range list {
		if !slices.Contains(marks, r.mark) {
			marks = append(marks, r.mark)
		}
	}
	slices.SortFunc(marks, func(a, b ground.Spot) int { return a.Index - b.Index })
	columns := []place.Column{{Head: "Tape\u00a0to"}}
	for _, m := range marks {
		columns = append(columns, place.Column{Head: draw.MarkLetter(m.Index) + " " + p.ground.Marks[m.Index].Name, Align: paper.AtRight})
	}
	table := block.Block{Name: "tapes from the marks"}
	var rows []place.Row
	for _, r := range list {
		spot, text := p.spot(r.spot), p.bare(r.length)
		row := slices.IndexFunc(rows, func(row place.Row) bool { return row.Cells[0] == spot })
		if row < 0 {
			row, rows = len(rows), append(rows, place.Row{Cells: append([]string{spot}, make([]string, len(marks))...)})
		}
		table.Facts = append(table.Facts, block.Fact{What: spot + " from " + p.ground.Marks[r.mark.Index].Name, Value: text})
		if r.check {
			text = "[" + text + "]"
		}
		rows[row].Cells[1+slices.Index(marks, r.mark)] = text
	}
	table.Body = fittedTable{block.Table{Table: place.Table{Columns: columns}, Rows: rows}}
	return table
}

// fittedTable is a table of figures, each on one line, as large as all of them fit the width. Words in its first column give way.
type fittedTable struct{ block.Table }

// figureSizes are the sizes that figures of the ground's tables are set in, the largest that has room.
var figureSizes = []paper.PointSize{14, 12, 11}

// at is the table at a width, and whether its figures fit that.
func (f fittedTable) at(width paper.Length) (t block.Table, fits bool) {
	for _, size := range figureSizes {
		t = f.Table
		t.Columns = slices.Clone(t.Columns)
		for i := range t.Columns {
			if t.Columns[i].Lettering == (paper.Lettering{}) {
				t.Columns[i].Lettering = paper.Cell
			}
			if t.Columns[i].Lettering.Size > size {
				t.Columns[i].Lettering.Size = size
			}
		}
		least := t.Columns[0].Width
		t.Columns = sized(t.Columns, t.Rows)
		last, over := &t.Columns[len(t.Columns)-1], widthOf(t.Columns)-width
		if over <= 0 || least > 0 && t.Columns[0].Width-over >= least {
			t.Columns[0].Width -= max(0, over)
			last.Width = 0 // what is left
			return t, true
		}
	}
	return t, false
}

// widthOf is how wide columns are together.
func widthOf(columns []place.Column) (sum paper.Length) {
	for _, c := range columns {
		sum += c.Width
	}
	return sum
}

// Height implements block.Body: where figures would break there is no room.
func (f fittedTable) Height(width paper.Length) paper.Length {
	t, fits := f.at(width)
	if !fits {
		return endless
	}
	return t.Height(width)
}

// Draw implements block.Body.
func (f fittedTable) Draw(page *paper.Page, box paper.Rect) []string {
	t, _ := f.at(box.W)
	return t.Draw(page, box)
}

// Split implements block's splitter.
func (f fittedTable) Split(width, height paper.Length) (first, rest block.Body, ok bool) {
	t, _ := f.at(width)
	return t.Split(width, height)
}
