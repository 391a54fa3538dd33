package packet

import (
	"crypto/sha256"
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/ground"
)

// rebuildFile is what next year's organiser opens: every planned figure with a blank for what was built, the ties from fixed marks, what there is and
// where it is kept, what the spec left open, and the spec itself. It alone, with the tags, goes down to 9 pt: it is read at a table.
func (b *binder) rebuildFile() []leaf {
	f := b.newFlow("For next year: write what was built beside what was planned. Keep it with the pipe.", "")
	if len(b.plan.Kinds) > 0 {
		f.text("Raised on ______________ by ____________________   Kept at ____________________   Season of this pipe no. ____", paper.Small)
		f.gap(2)
		f.archesAsBuilt()
		f.ridgeAsBuilt()
		f.tiesAsBuilt()
		f.inventoryTable()
	}
	f.leftOpen()
	f.printedSpec()
	f.changed()
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

// changed leaves lines for what was done otherwise than planned: what is left of the last page, and no fewer than five.
func (f *flow) changed() {
	const lines, row = 5, 8
	f.gap(2)
	f.heading("What was changed, what to do better", lines*row)
	for f.room.H >= row {
		r := f.take(row)
		f.page.Line(paper.Point{X: r.X, Y: r.Bottom()}, paper.Point{X: r.Right(), Y: r.Bottom()}, paper.Thin)
	}
}

// inventoryTable sets what there is, with boxes for what came back and what is good.
func (f *flow) inventoryTable() {
	f.heading("What there is", 40)
	f.smallTable(beside(small("Thing", 0, false), small("There are", 16, true), small("came back", 17, false), small("good", 14, false)), inTwo(f.b.inventory(), func(it stored) []string {
		return []string{it.item, fmt.Sprint(it.count), "", ""}
	}))
}

// leftOpen lists every value that the spec did not give.
func (f *flow) leftOpen() {
	var list []string
	for _, d := range f.b.spec.Defaults {
		text := d.Key + " " + d.Value
		if d.Why != "" {
			text += " (" + d.Why + ")"
		}
		list = append(list, text)
	}
	if len(list) == 0 {
		return
	}
	f.heading("Not in the spec, so assumed", 12)
	for _, line := range paper.Small.Wrap(strings.Join(list, " · "), f.room.W) { // line by line: it may go on overleaf
		f.text(line, paper.Small)
	}
	f.gap(3)
}

// Room of the printed spec.
const (
	lineNumbers = 5   // characters for the number of a line and the space after it
	printedLead = 3.9 // from line to line
)

// printedSpec sets the spec line by line as it was written, with its checksum. A long line goes on under itself; what no face can set prints as ?.
func (f *flow) printedSpec() {
	sum := sha256.Sum256(f.b.spec.Source)
	f.heading("The spec", 40)
	f.text("The packet's PDF carries this file; `hoopwright recover` gets it back byte for byte. By hand: type it as it stands, numbers at the left and the sign ↪ of a line that goes on left out. SHA-256 of the file:", paper.Small)
	var groups []string
	for i := 0; i < len(sum); i += 4 {
		groups = append(groups, fmt.Sprintf("%x", sum[i:i+4]))
	}
	f.text(strings.Join(groups, " "), paper.Printed)
	f.gap(2)
	source := strings.TrimSuffix(strings.ReplaceAll(string(f.b.spec.Source), "\r\n", "\n"), "\n")
	room := int(f.room.W/paper.Printed.Width("0")) - lineNumbers
	for i, line := range strings.Split(source, "\n") {
		for k, part := range folded(strings.ReplaceAll(line, "\t", "    "), room) {
			r := f.take(printedLead)
			base := r.Y + paper.Printed.Ascent()
			number := fmt.Sprint(i + 1)
			if k > 0 {
				number = "↪"
			}
			x := r.X + paper.Printed.Width("0")*(lineNumbers-1)
			f.page.Text(paper.Point{X: x - paper.Printed.Width("0")*0.5, Y: base}, paper.AtRight, number, paper.Small)
			if part != "" {
				f.page.Text(paper.Point{X: x + paper.Printed.Width("0"), Y: base}, paper.AtLeft, part, paper.Printed)
			}
		}
	}
}

// folded cuts a line into pieces of so many characters.
func folded(line string, room int) []string {
	runes := []rune(line)
	if len(runes) <= room {
		return []string{line}
	}
	var parts []string
	for len(runes) > room {
		n := room
		for k := room; k > room*2/3; k-- { // after a space, where one is near
			if runes[k-1] == ' ' {
				n = k
				break
			}
		}
		parts = append(parts, string(runes[:n]))
		runes = runes[n:]
	}
	return append(parts, string(runes))
}
