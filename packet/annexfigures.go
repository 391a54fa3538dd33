package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/ground"
)

// figuresSheet is what next year's organiser compares with: every arch, ridge piece and tie as planned, with room for what was built. Read at a table, so it
// goes down to 9 pt.
func (b *binder) figuresSheet() []leaf {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	f := b.newFlow("Every planned figure, with room for what was built.", "")
	f.archesAsBuilt()
	f.ridgeAsBuilt()
	f.tiesAsBuilt()
	return f.leaves
}

// small is a column of the rebuild file.
func small(head string, width paper.Length, numbers bool) place.Column {
	c := place.Column{Head: head, Width: width, Lettering: paper.Small}
	if numbers {
		c.Lettering = paper.SmallCell
	}
	return c
}

// smallTable is a table at the rebuild file's size, its rows high enough to write in.
func (f *flow) smallTable(columns []place.Column, rows []place.Row) {
	f.table(place.Table{Head: paper.SmallHead, RowMin: 6.2, Columns: columns}, rows)
	f.gap(3)
}

// archesAsBuilt sets each arch's span, crown and depth as planned and as built.
func (f *flow) archesAsBuilt() {
	u := f.b.spec.Units
	var rows []place.Row
	for _, a := range f.b.standing() {
		rows = append(rows, place.Row{Cells: []string{fmt.Sprint(a.Number), u.Inches(a.Span), "", u.Inches(a.Crown), "", u.Inches(a.SeasonCrown), "", u.Inches(a.Length), u.Inches(a.Spec.Stake.Depth), ""}})
	}
	f.heading("Arches", 30)
	f.smallTable([]place.Column{small("Arch", 13, true), small("Feet apart", 20, true), small("built", 18, false), small("Crown", 20, true), small("built", 18, false),
		small("Late crown", 21, true), small("found", 18, false), small("Foot to foot", 23, true), small("Stake depth", 19, true), small("driven", 0, false)}, rows)
}

// ridgeAsBuilt sets each bay's ridge piece, planned and cut.
func (f *flow) ridgeAsBuilt() {
	if len(f.b.plan.Ridge) == 0 {
		return
	}
	u := f.b.spec.Units
	f.heading("Ridge pieces", 30)
	f.smallTable(beside(small("Bay", 11, true), small("Crown to crown", 28, true), small("Piece", 24, true), small("as cut", 30, false)), inTwo(f.b.plan.Ridge, func(p layout.RidgePiece) []string {
		return []string{fmt.Sprint(p.Bay), u.Tape(p.Centres), u.Cut(p.Cut), ""}
	}))
}

// tiesAsBuilt sets each stake's distances from fixed marks, with a blank for where it was moved to. Marks go by letters.
func (f *flow) tiesAsBuilt() {
	u, ties := f.b.spec.Units, f.b.plan.Ties
	rows := []place.Row{}
	letters := map[string]string{}
	var legend []string
	for i, m := range f.b.plan.Ground.Marks {
		letters[m.Name] = draw.MarkLetter(i)
		legend = append(legend, letters[m.Name]+" "+m.Name)
	}
	tied := map[ground.StakeID]ground.Tie{}
	for _, t := range ties {
		tied[t.Stake] = t
	}
	for _, s := range f.b.plan.Stakes {
		cells := []string{s.String(), u.Tape(s.Running), "", "", "", ""}
		if t, ok := tied[s.StakeID]; ok {
			cells[2], cells[3] = letters[t.MarkA]+"  "+u.Tape(t.A), letters[t.MarkB]+"  "+u.Tape(t.B)
			if t.MarkC != "" {
				cells[4] = letters[t.MarkC] + "  " + u.Tape(t.C)
			}
		}
		if s.Guy {
			cells[1] = "guy"
		}
		rows = append(rows, place.Row{Cells: cells})
	}
	f.heading("Stakes, by tape from fixed marks", 40)
	if len(legend) > 0 {
		f.text("Marks: "+strings.Join(legend, " · ")+". Running is along the row from its first stake.", paper.Small)
	} else {
		f.text("The spec names no two fixed marks: measure two stakes from things that will still be there, and write it here: ________________________________", paper.Small)
	}
	f.gap(1)
	f.smallTable([]place.Column{small("Stake", 16, true), small("Running", 25, true), small("Tape 1", 29, true), small("Tape 2", 29, true), small("Check", 29, true), small("as driven, and why", 0, false)}, rows)
}
