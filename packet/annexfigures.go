package packet

import (
	"fmt"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/say"
)

// figuresAnnex is every planned figure of arches, ridge pieces and ties, for whoever wants to look one up at a table.
func (b *binder) figuresAnnex() []folio {
	var blocks []block.Block
	for _, t := range []struct {
		name    string
		columns []place.Column
		rows    []place.Row
	}{{"Arches", b.archColumns(), b.archRows()}, {"Ridge pieces", ridgeColumns(), b.ridgeRows()}, {"Stakes, by tape from marks", b.tieColumns(), b.tieRows()}} {
		if len(t.rows) > 0 {
			blocks = append(blocks, block.Heading(t.name), block.Block{Name: t.name, Gap: 1, Body: block.Table{Table: place.Table{Head: paper.SmallHead, Columns: append(t.columns, place.Column{})}, Rows: t.rows}})
		}
	}
	if len(blocks) == 0 {
		return nil
	}
	return []folio{{front: side{title: "Figures", blocks: blocks}}}
}

// tableColumn is a column read at a table, in the hand.
func tableColumn(head string, number bool) place.Column {
	if number {
		return place.Column{Head: head, Lettering: paper.SmallCell, Align: paper.AtRight}
	}
	return place.Column{Head: head, Lettering: paper.Small}
}

func (b *binder) archColumns() []place.Column {
	var list []place.Column
	for _, head := range []string{"Arches", "Foot to foot, level", "Crown", "Clear under it", "Widest", "Bend radius", "Crown late in the season", "Pipe, foot to foot", "Pushes the stakes"} {
		list = append(list, tableColumn(head, true))
	}
	list[0] = tableColumn("Arches", false)
	return list
}

// archRows are the kinds of arch, each with all its numbers.
func (b *binder) archRows() []place.Row {
	u := b.spec.Units
	var rows []place.Row
	for _, k := range b.plan.Kinds {
		rows = append(rows, place.Row{Cells: []string{say.Numbers(k.Numbers), u.Inches(k.Span), u.Inches(k.Crown), u.Inches(k.Clear), u.Inches(k.Widest), u.Inches(k.BendRadius), u.Inches(k.SeasonCrown), u.Inches(k.Length), u.Force(k.Thrust)}})
	}
	return rows
}

func ridgeColumns() []place.Column {
	return []place.Column{tableColumn("Bays", false), tableColumn("Crown to crown", true), tableColumn("Piece", true)}
}

// ridgeRows are the ridge pieces, those alike together.
func (b *binder) ridgeRows() []place.Row {
	u := b.spec.Units
	var rows []place.Row
	var bays [][]int
	var last layout.RidgePiece
	for _, r := range b.plan.Ridge {
		if n := len(bays); n > 0 && u.Cut(last.Cut) == u.Cut(r.Cut) && u.Tape(last.Centres) == u.Tape(r.Centres) {
			bays[n-1] = append(bays[n-1], r.Bay)
			rows[n-1].Cells[0] = say.Numbers(bays[n-1])
			continue
		}
		last = r
		bays = append(bays, []int{r.Bay})
		rows = append(rows, place.Row{Cells: []string{fmt.Sprint(r.Bay), u.Tape(r.Centres), u.Cut(r.Cut)}})
	}
	return rows
}

func (b *binder) tieColumns() []place.Column {
	return []place.Column{tableColumn("Stake", false), tableColumn("Along its row", true), tableColumn("First tape", true), tableColumn("Second tape", true), tableColumn("Check", true)}
}

// tieRows are the stakes with their tapes; a legend of the marks' letters stands over them.
func (b *binder) tieRows() []place.Row {
	if len(b.plan.Ties) == 0 {
		return nil
	}
	u, letter := b.spec.Units, map[string]string{}
	legend := ""
	for i, m := range b.plan.Ground.Marks {
		letter[m.Name] = draw.MarkLetter(i)
		legend += fmt.Sprintf("%s %s   ", letter[m.Name], m.Name)
	}
	tied := map[ground.StakeID]ground.Tie{}
	for _, t := range b.plan.Ties {
		tied[t.Stake] = t
	}
	rows := []place.Row{{Heading: "Marks: " + legend}}
	for _, s := range b.plan.Stakes {
		cells := []string{s.String(), u.Tape(s.Running), "", "", ""}
		if t, ok := tied[s.StakeID]; ok {
			cells[2], cells[3] = letter[t.MarkA]+" "+u.Tape(t.A), letter[t.MarkB]+" "+u.Tape(t.B)
			if t.MarkC != "" {
				cells[4] = letter[t.MarkC] + " " + u.Tape(t.C)
			}
		}
		rows = append(rows, place.Row{Cells: cells})
	}
	return rows
}
