package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// back is what is counted, how it is kept, and what next year wants to know.
func (l lowering) back() []block.Block {
	return slices.Concat(stakesOut(l.plan.Stakes, standsOn(l.plan)), l.countedIn(), l.kept(), nextYear())
}

// countedIn is what there is, with room for what came back and what of it is good.
func (l lowering) countedIn() []block.Block {
	var things []stored
	var facts []block.Fact
	for _, it := range inventory(l.plan) {
		if it.named {
			continue // ticked one by one
		}
		things = append(things, it)
		facts = append(facts, block.Fact{What: "counted in, " + it.item, Value: it.item})
	}
	spare := 0
	for _, s := range sparesOf(l.plan) {
		spare += s.count
	}
	if spare > 0 {
		things = append(things, stored{item: "spares, unused", count: spare})
		facts = append(facts, block.Fact{What: "counted in, spares", Value: fmt.Sprint(spare)})
	}
	columns := beside(place.Column{Head: "Counted in", Lettering: paper.Floor}, place.Column{Head: "was", Width: 12, Align: paper.AtRight, Lettering: paper.CellSmall},
		place.Column{Head: "back", Width: 13.5}, place.Column{Head: "good", Width: 14.5})
	rows := inTwo(things, func(it stored) []string {
		return []string{it.item, fmt.Sprint(it.count), "", ""}
	})
	return []block.Block{
		{Name: "counted in", Gap: 3, Body: block.Table{Table: place.Table{RowMin: 7.2, Columns: columns}, Rows: rows}, Facts: facts},
		{Name: "who counted", Body: block.Blanks{{Word: "Counted by"}, {Word: "on", Share: 0.6}, {Word: "Missing"}}},
	}
}

// kept says how each kind of thing is bundled, labelled and stored, and where.
func (l lowering) kept() []block.Block {
	list := []block.Block{block.Heading("Store it dry")}
	for _, k := range keptSo(l.plan) {
		list = append(list, block.Block{Name: k.what, Gap: 0.8, Body: block.Words{Text: block.Figure(k.what+":") + " " + k.how, Lettering: paper.Floor, Figures: paper.Strong.Sized(11)}})
	}
	return append(list, block.Block{Name: "where it is stored", Body: block.Blanks{{Word: "Pipe at"}, {Word: "the rest at"}, {Word: "bagged by"}}})
}

// nextYear is what is written down before it is forgotten.
func nextYear() []block.Block {
	return []block.Block{block.Heading("For next year"),
		{Name: "who wrote it", Body: block.Blanks{{Word: "Written by"}, {Word: "phone"}, {Word: "on", Share: 0.6}}},
		{Name: "what was changed", Body: writing{"What was changed, why; what to do better", 1}}}
}

// writing is lines to write on under a word; it takes room that is left over.
type writing struct {
	word  string
	least int // lines
}

const (
	writingHead paper.Length = 5
	writingLine paper.Length = 8.2
	writingMost              = 12 // lines
)

// Height implements block.Body.
func (w writing) Height(paper.Length) paper.Length {
	return writingHead + paper.Length(w.least)*writingLine
}

// Most lets there be more lines.
func (w writing) Most(paper.Length) paper.Length { return writingHead + writingMost*writingLine }

// Draw implements block.Body.
func (w writing) Draw(page *paper.Page, box paper.Rect) []string {
	page.Text(paper.Point{X: box.X, Y: box.Y + paper.Strong.Ascent()}, paper.AtLeft, w.word, paper.Strong.Sized(11))
	for y := box.Y + writingHead + writingLine; y <= box.Bottom()+0.01; y += writingLine {
		page.Line(paper.Point{X: box.X, Y: y}, paper.Point{X: box.Right(), Y: y}, paper.Thin)
	}
	return nil
}

// beside repeats the columns of a table for two lists beside each other.
func beside(columns ...place.Column) []place.Column { return append(columns, columns...) }

// inTwo sets a list as two columns of cells beside each other, the first half at the left.
func inTwo[T any](list []T, cells func(T) []string) []place.Row {
	half := (len(list) + 1) / 2
	rows := make([]place.Row, half)
	for i := range rows {
		rows[i].Cells = cells(list[i])
		if half+i < len(list) {
			rows[i].Cells = append(rows[i].Cells, cells(list[half+i])...)
		} else { // nothing to tick there
			for range rows[i].Cells {
				rows[i].Cells = append(rows[i].Cells, " ")
			}
		}
	}
	return rows
}
