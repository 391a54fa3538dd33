package packet

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// danger is what can hurt someone: what, why, and what to do about it.
type danger struct{ what, why, do string }

// dangers are those of one part of the work.
type dangers struct {
	part string
	list []danger
}

// safety prints what can hurt someone, in the order of the work, to be read aloud before each part begins. What this tunnel does not have is left out.
func (b *binder) safety() []leaf {
	f := b.newFlow("Read each part aloud before its work begins, and tick it.", "a first-aid box, a charged phone, a torch, the locating ticket.")
	b.emergency(f)
	f.gap(4)
	var rows []place.Row
	for _, part := range b.dangers() {
		rows = append(rows, place.Row{Heading: part.part})
		for _, d := range part.list {
			rows = append(rows, place.Row{Cells: []string{"", d.what, d.why, d.do}})
		}
	}
	f.table(place.Table{Columns: []place.Column{
		{Tick: true, Width: 9.8}, {Head: "What", Width: 31, Lettering: paper.Strong}, {Head: "Why", Width: 48, Lettering: paper.Floor}, {Head: "What to do"}}}, rows)
	f.gap(4)
	box := framed{"Whose word counts", "These are the usual cautions and this tunnel's figures, no judgement that anything will hold. Local codes, the people licensed for the work, " +
		"the owner of the ground and the emergency services overrule this sheet. Anyone may call stop; only the person in charge says go on."}
	box.draw(f.page, f.take(box.height(f.room.W)))
	return f.leaves
}

// emergency sets the box that is wanted first when something has happened: where the site is, whom to ring, who switches off and who closes.
func (b *binder) emergency(f *flow) {
	const row, pad paper.Length = 9, 2.5
	lines := [][]string{{"Emergency phone", "First-aid box is at"}, {"Switches the power off", "Decides to close"}, {"Locating ticket", "Ticket good until"}, {"Person in charge", "Their phone"}}
	box := f.take(2*pad + row*paper.Length(len(lines)+1))
	f.page.Stroke(paper.Box(box), paper.Emphasis)
	blank := func(cell paper.Rect, label, value string) {
		base := cell.Bottom() - 2.4
		f.page.Text(paper.Point{X: cell.X, Y: base}, paper.AtLeft, label, paper.Floor)
		x := cell.X + paper.Floor.Width(label) + 2
		if value != "" {
			f.page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, clip(value, paper.Heading, cell.Right()-x), paper.Heading)
			return
		}
		f.page.Line(paper.Point{X: x, Y: base + 0.8}, paper.Point{X: cell.Right(), Y: base + 0.8}, paper.Thin)
	}
	in := box.Inset(pad)
	in.X, in.W = in.X+1, in.W-2
	cell, rest := in.SplitTop(row)
	blank(cell, "This place is", b.spec.Site.Address)
	for _, pair := range lines {
		cell, rest = rest.SplitTop(row)
		left, right := cell.SplitLeft(cell.W/2 - 2)
		_, right = right.SplitLeft(4)
		blank(left, pair[0], "")
		blank(right, pair[1], "")
	}
}
