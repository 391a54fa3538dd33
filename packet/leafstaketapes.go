package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// tables are a part's tables, the first needed first.
func (s *stakeLeaf) tables(part ground.TapeLength) (list []block.Block) {
	list = append(list, s.tapeTable(part))
	if s.byRow() {
		if t, ok := s.markTable(part); ok {
			list = append(list, t)
		}
	}
	list = append(list, s.checkTable(part))
	if !s.ground.Straight {
		list = append(list, s.bayTable(part))
	}
	if len(s.ground.Ties) == 0 {
		list = append(list, s.chosenMarks())
	}
	return list
}

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
	t := place.Table{Columns: []place.Column{{Head: "Bay, from arch" + s.inMM(), Lettering: paper.Cell, Width: 36}}}
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

// chosenMarks is a table to write down the marks that are chosen where the spec names none, with their tapes to the corners.
func (s *stakeLeaf) chosenMarks() block.Block {
	n := len(s.ground.Stations)
	t := place.Table{RowMin: 8.4, Columns: []place.Column{{Head: "For next year"}, {Head: "to L1", Width: 18}, {Head: "to R1", Width: 18}}}
	if n > 1 {
		t.Columns = append(t.Columns, place.Column{Head: fmt.Sprintf("to L%d", n), Width: 18}, place.Column{Head: fmt.Sprintf("to R%d", n), Width: 18})
	}
	return block.Block{Name: "marks chosen", Gap: stakeGap, Body: block.Table{Table: t, Rows: []place.Row{{Cells: []string{"A"}}, {Cells: []string{"B"}}, {Cells: []string{"C"}}}}}
}

// tapeRow is a row of the table of tapes: a stake, or the left and the right one whose figures print alike.
type tapeRow struct {
	heading string
	stakes  []ground.Stake
	cells   []string // its tapes
}

// name names a row's stakes, a guy stake's pair by its side alone: "L2 R2", "G4La Ra".
func (r tapeRow) name() string {
	first := r.stakes[0]
	switch {
	case len(r.stakes) == 1:
		return first.String()
	case first.Guy:
		return first.String() + " " + r.stakes[1].After()
	}
	return first.String() + " " + r.stakes[1].String()
}

// bare is a tape's figure in a table: in metric without its unit, which the head names once.
func (s *stakeLeaf) bare(l measure.Length) string {
	if s.units.Taped(l) == 0 {
		return "0"
	}
	return s.units.GroundFigure(l)
}

// inMM is what a table's head says of its unit.
func (s *stakeLeaf) inMM() string {
	if s.units == measure.Metric {
		return ", mm"
	}
	return ""
}

// rowsOf are the rows of a part's table.
func (s *stakeLeaf) rowsOf(part ground.TapeLength) []tapeRow {
	if s.byRow() {
		return s.straightRows(part)
	}
	return s.pairRows(part)
}

// straightRows are the stakes along two straight rows in the order of the tape, left and right together.
func (s *stakeLeaf) straightRows(part ground.TapeLength) (rows []tapeRow) {
	stakes := draw.NewStakePlan(s.ground, s.b.spec, part.First, part.Last).Stakes()
	guy := map[bool]int{true: 1}
	slices.SortStableFunc(stakes, func(a, b ground.Stake) int {
		return cmp.Or(cmp.Compare(s.units.Taped(a.Along), s.units.Taped(b.Along)), guy[a.Guy]-guy[b.Guy], a.Arch-b.Arch, cmp.Compare(a.Side, b.Side))
	})
	zero := s.tapeOf(part).First
	for i := 0; i+1 < len(stakes); i += 2 { // every stake of a straight tunnel has its other one across
		rows = append(rows, tapeRow{stakes: stakes[i : i+2], cells: []string{s.fromZero(stakes[i], stakes[i+1], zero)}})
	}
	return rows
}

// fromZero is how far along the tapes of their rows two stakes stand, and how far beside the line.
func (s *stakeLeaf) fromZero(left, right ground.Stake, zero int) string {
	l, r := s.along(left, zero), s.along(right, zero)
	text := s.alongWords(l.along)
	if other := s.alongWords(r.along); other != text {
		text = "L " + text + "\nR " + other
	}
	l.off = -l.off // out of the walk
	common := s.guysOut()
	switch {
	case s.units.Taped(l.off) == s.units.Taped(r.off) && (s.units.Taped(l.off) == 0 || left.Guy && s.units.Taped(l.off) == common):
	case s.units.Taped(l.off) == s.units.Taped(r.off):
		text += "\n" + s.out(l.off)
	default:
		for i, off := range []measure.Length{l.off, r.off} {
			if s.units.Taped(off) != 0 {
				text += "\n" + spec.Side(i).Letter() + " " + s.out(off)
			}
		}
	}
	return text
}

// alongTape is where a stake stands by its row's tape: along it, and off the line, right positive.
type alongTape struct{ along, off measure.Length }

// along is how a stake's dot is painted off its row's tape.
func (s *stakeLeaf) along(stake ground.Stake, zero int) alongTape {
	d, ok := s.dotOf(stake)
	switch {
	case !ok || stake.Arch == zero && !stake.Guy:
		return alongTape{}
	case d.How == ground.OnString:
		return alongTape{d.A, d.B}
	case d.How == ground.TwoTapes:
		return alongTape{d.B, 0} // the other tape is the gauge stick
	}
	return alongTape{d.A, 0}
}

// alongWords says a distance from the zero, back from it where it is negative.
func (s *stakeLeaf) alongWords(l measure.Length) string {
	if s.units.Taped(l) < 0 {
		return s.bare(-l) + " back"
	}
	return s.bare(l)
}

// out says how far from its row's line a stake stands: away from the walk, negative toward it.
func (s *stakeLeaf) out(off measure.Length) string {
	if off < 0 {
		return s.bare(-off) + " in"
	}
	return s.bare(off) + " out"
}

// guysOut is how far out the guy stakes of inner arches stand where they all stand alike, which is said once; else 0.
func (s *stakeLeaf) guysOut() (out measure.Length) {
	for _, d := range s.dots {
		stake := s.ground.Stakes[d.Spot.Index]
		if d.Spot.Kind != ground.AtStake || d.How != ground.OnString || !stake.Guy || !s.inner(stake) {
			continue
		}
		off := s.units.Taped(d.B)
		if stake.Side == spec.Left {
			off = -off
		}
		if out != 0 && off != out {
			return 0
		}
		out = off
	}
	return out
}

// innerLeg is how far the guy stakes of inner arches are from their legs where all of them stand alike; else empty.
func (s *stakeLeaf) innerLeg() (text string) {
	for _, c := range s.checks {
		if c.Kind != ground.GuyToLeg || !s.inner(s.ground.Stakes[c.To.Index]) {
			continue
		}
		if this := s.bare(c.Distance); text == "" {
			text = this
		} else if text != this {
			return ""
		}
	}
	return text
}

// inner reports whether a stake belongs to an arch that is at no end.
func (s *stakeLeaf) inner(x ground.Stake) bool { return x.Arch > 1 && x.Arch < len(s.ground.Stations) }

// dotOf returns how a stake's own dot is painted.
func (s *stakeLeaf) dotOf(stake ground.Stake) (ground.Dot, bool) {
	for _, d := range s.dots {
		if d.Spot.Kind == ground.AtStake && s.ground.Stakes[d.Spot.Index].StakeID == stake.StakeID {
			return d, true
		}
	}
	return ground.Dot{}, false
}

// tapeTable has a row a stake, in the order they are painted, with room for what became of it.
func (s *stakeLeaf) tapeTable(part ground.TapeLength) block.Block {
	rows := s.rowsOf(part)
	pairs := s.byRow()
	columns := []place.Column{{Head: "Stake", Lettering: paper.CellSmall}}
	zero := s.tapeOf(part).First
	heads := []string{fmt.Sprintf("From L%d, R%d%s", zero, zero, s.inMM())}
	if !pairs {
		heads = []string{"First tape" + s.inMM(), "Second tape", "Check tape"}
	}
	for _, h := range heads {
		columns = append(columns, place.Column{Head: h, Lettering: paper.Cell, Align: paper.AtRight})
	}
	boxes, under := 1, ""
	if pairs {
		boxes, under = 2, "L\u00a0\u00a0\u00a0\u00a0R"
	}
	for _, h := range []string{"Painted", "Driven"} {
		columns = append(columns, place.Column{Head: h + " " + under, Tick: true, Boxes: boxes, Width: 19.4, Align: paper.AtMiddle})
	}
	columns = append(columns, place.Column{Head: "Moved"})
	var list []place.Row
	var facts []block.Fact
	for _, r := range rows {
		if r.heading != "" {
			list = append(list, place.Row{Heading: r.heading})
			continue
		}
		note, near := s.nearLines(r.stakes)
		facts = append(facts, near...)
		list = append(list, place.Row{Cells: append([]string{r.name()}, r.cells...), Note: note})
		for i, c := range r.cells {
			if c != "" {
				facts = append(facts, block.Fact{What: fmt.Sprintf("%s, %s", r.name(), strings.ToLower(heads[i])), Value: c})
			}
		}
	}
	if out := s.guysOut(); out != 0 && pairs && slices.ContainsFunc(rows, func(r tapeRow) bool { return r.stakes[0].Guy && s.inner(r.stakes[0]) }) {
		text := "Inner G: " + s.out(out) + " of the line"
		facts = append(facts, block.Fact{What: "guy stakes out from the line", Value: s.out(out)})
		if leg := s.innerLeg(); leg != "" {
			text += ", " + leg + " from its leg"
			facts = append(facts, block.Fact{What: "inner guy stakes from their legs", Value: leg})
		}
		list = append(list, place.Row{Heading: text})
	}
	if !pairs && !slices.ContainsFunc(rows, func(r tapeRow) bool { return len(r.cells) > 2 && r.cells[2] != "" }) {
		columns = slices.Delete(columns, 3, 4) // no third tape
		for i, r := range list {
			if r.Heading == "" {
				list[i].Cells = r.Cells[:3]
			}
		}
	}
	return block.Block{Name: "table of tapes", Gap: stakeGap, Body: block.Table{Table: place.Table{Columns: sized(columns, list)}, Rows: list}, Facts: facts}
}

// nearLines says how far stakes are from a buried line that they stand near, and where they may not be moved toward it at all.
func (s *stakeLeaf) nearLines(stakes []ground.Stake) (note string, facts []block.Fact) {
	var words []string
	for _, l := range s.b.spec.Site.Buried {
		var far []string
		for _, stake := range stakes {
			if away := ground.FromLine(stake, l); away < 2*l.Keep {
				far = append(far, stake.String()+" "+s.units.Inches(s.units.Taped(away)))
				facts = append(facts, block.Fact{What: stake.String() + " from " + l.Name, Value: s.units.Inches(s.units.Taped(away))})
			}
		}
		if len(far) > 0 {
			words = append(words, fmt.Sprintf("%s from %s, keep %s.", strings.Join(far, ", "), l.Name, s.units.Inches(l.Keep)))
			facts = append(facts, block.Fact{What: "keep from " + l.Name, Value: s.units.Inches(l.Keep)})
		}
	}
	if slices.ContainsFunc(stakes, func(stake ground.Stake) bool { return !crew.MayMove(s.b.spec, stake, s.given(stake.Guy)) }) {
		words = append(words, "Do not move: ask.")
	}
	return strings.Join(words, " "), facts
}

// given is how far the ladder lets a guy stake, or a leg's, be moved.
func (s *stakeLeaf) given(guy bool) (by measure.Length) {
	for _, t := range s.tasks {
		if t.Action != crew.DriveStakes {
			continue
		}
		for _, c := range t.IfOff {
			if c.Do == crew.BesideHole || guy == (c.Do == crew.MoveGuy) {
				by = max(by, c.By)
			}
		}
	}
	return by
}

// sized makes every column of figures as wide as its longest one; what is left goes to the blank at the end.
func sized(columns []place.Column, rows []place.Row) []place.Column {
	for i := range columns {
		c := &columns[i]
		if c.Tick || c.Lettering == (paper.Lettering{}) {
			continue
		}
		for _, word := range paper.Words(c.Head) {
			c.Width = max(c.Width, paper.Strong.Sized(11).Width(word))
		}
		for _, r := range rows {
			if i < len(r.Cells) {
				for _, line := range strings.Split(r.Cells[i], "\n") {
					c.Width = max(c.Width, c.Lettering.Width(line))
				}
			}
		}
		c.Width += 3.8
	}
	return columns
}

// pairRows are the stakes of a bend, or of one arch, in the order they are found: each by two tapes, with the third that checks them.
func (s *stakeLeaf) pairRows(part ground.TapeLength) (rows []tapeRow) {
	done := map[int]bool{}
	for _, d := range s.dots {
		stake := s.ground.Stakes[d.Spot.Index]
		if d.Spot.Kind > ground.AtFound || done[d.Spot.Index] || stake.Arch < part.First || stake.Arch > part.Last {
			continue
		}
		done[d.Spot.Index] = true
		for _, c := range s.ground.Chords {
			if c.Offsets[0].Stake == stake.StakeID {
				rows = append(rows, tapeRow{heading: chordWords(c)})
			}
		}
		rows = append(rows, tapeRow{stakes: []ground.Stake{stake}, cells: s.pairCells(d)})
	}
	return rows
}

// pairCells are how a dot is found: first, second and check tape.
func (s *stakeLeaf) pairCells(d ground.Dot) []string {
	from := func(x ground.Spot, l measure.Length) string { return s.spot(x) + "\u00a0 " + s.bare(l) }
	switch d.How {
	case ground.TwoTapes:
		check := ""
		for _, c := range s.checks {
			if c.Kind == ground.ThirdTape && c.To == d.Spot {
				check = from(c.From, c.Distance)
			}
		}
		return []string{from(d.From, d.A), from(d.To, d.B), check}
	case ground.OnString:
		switch off := s.units.Taped(d.B); {
		case off > 0:
			return []string{"along " + s.bare(d.A), s.bare(d.B) + " right", ""}
		case off < 0:
			return []string{"along " + s.bare(d.A), s.bare(-d.B) + " left", ""}
		}
		return []string{"along " + s.bare(d.A), "on the string", ""}
	case ground.ChosenAt:
		return []string{"stick from " + s.spot(d.From), "ask where", ""}
	}
	return []string{"ask where", "", ""}
}

// chordWords says where a string runs and where its tape begins.
func chordWords(c ground.Chord) string {
	if c.Zero == c.To {
		return fmt.Sprintf("String from %s through %s and on. Zero at %s, looking away from %s", c.From, c.To, c.Zero, c.From)
	}
	return fmt.Sprintf("String from %s to %s. Zero at %s, looking to %s", c.From, c.To, c.Zero, c.To)
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
		case kind == ground.GuyToLeg && !s.onPlan(kind):
			for _, g := range ground.Similar(here, s.units) {
				what, distance := "G to leg, "+say.Numbered("arch", s.archesOf(g)), s.bare(g[0].Distance)
				list = append(list, checkLine{what + ": " + distance, s.units.Inches(g[0].Limit), what, distance})
			}
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
	case ground.GuyToLeg:
		return "guy stakes to their legs"
	}
	return "long diagonals"
}
