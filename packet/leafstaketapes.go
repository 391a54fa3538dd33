package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// tables are a part's tables, the first needed first.
func (p stakePart) tables() (list []block.Block) {
	list = append(list, p.tapeTable())
	if tapes := p.markTapes(); p.byRow() && len(tapes) > 0 {
		list = append(list, p.markTable(tapes))
	}
	list = append(list, p.checkTable())
	if !p.ground.Straight {
		list = append(list, p.bayTable())
	}
	if len(p.ground.Ties) == 0 && p.First == 1 {
		list = append(list, p.chosenMarks())
	}
	return list
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
func (s *stakeLeaf) inMM() string { return measure.By(s.units, "", ", mm") }

// rows are the rows of a part's table.
func (p stakePart) rows() []tapeRow {
	if p.byRow() {
		return p.straightRows()
	}
	return p.pairRows()
}

// straightRows are the stakes along two straight rows in the order of the tape, left and right together.
func (p stakePart) straightRows() (rows []tapeRow) {
	stakes := slices.Clone(p.stakes)
	guy := map[bool]int{true: 1}
	slices.SortStableFunc(stakes, func(a, b ground.Stake) int {
		return cmp.Or(cmp.Compare(p.units.Taped(a.Along), p.units.Taped(b.Along)), guy[a.Guy]-guy[b.Guy], a.Arch-b.Arch, cmp.Compare(a.Side, b.Side))
	})
	for pair := range slices.Chunk(stakes, 2) { // every stake of a straight tunnel has its other one across
		rows = append(rows, tapeRow{stakes: pair, cells: []string{p.fromZero(pair)}})
	}
	return rows
}

// fromZero is how far along the tapes of their rows two stakes stand.
func (p stakePart) fromZero(pair []ground.Stake) string {
	var alongs [2]string
	for i, stake := range pair {
		at := p.along(stake)
		if alongs[i] = p.bare(at); at < 0 {
			alongs[i] = p.bare(-at) + " back"
		}
	}
	return bothSides(alongs)
}

// bothSides says two sides' figures: once where they are the same, each with its letter where not.
func bothSides(sides [2]string) string {
	if sides[0] == sides[1] {
		return sides[0]
	}
	var lines []string
	for i, text := range sides {
		if text != "" {
			lines = append(lines, spec.Side(i).Letter()+" "+text)
		}
	}
	return strings.Join(lines, "\n")
}

// along is how far along its row's tape a stake stands, as taped.
func (p stakePart) along(stake ground.Stake) measure.Length {
	d, ok := p.dotOf[stake.StakeID]
	switch {
	case !ok || stake.Arch == p.tape.First && !stake.Guy:
		return 0
	case d.How == ground.TwoTapes: // the other tape is the gauge stick
		d.A = d.B
	}
	return p.units.Taped(d.A)
}

// off is how far off its row's line a stake stands, away from the walk, as taped.
func (s *stakeLeaf) off(stake ground.Stake) measure.Length {
	d := s.dotOf[stake.StakeID]
	if d.How != ground.OnString {
		return 0
	}
	if stake.Side == spec.Left {
		d.B = -d.B
	}
	return s.units.Taped(d.B)
}

// out says how far from its row's line a stake stands: away from the walk, negative toward it. A row whose ends stand beside the line to the cross has a line of its own.
func (s *stakeLeaf) out(stake ground.Stake, off measure.Length) string {
	line := "row"
	if s.dotOf[stake.StakeID].To.Kind == ground.AtFound {
		line = "line to ×"
	}
	if off < 0 {
		return s.bare(-off) + " inside the " + line
	}
	return s.bare(off) + " outside the " + line
}

// innerGuys finds how far out the guy stakes of inner arches stand, and how far from their legs; each 0 where not all stand alike.
func (s *stakeLeaf) innerGuys() (out, leg measure.Length) {
	var outs, legs []measure.Length
	for _, c := range s.checks {
		if stake := s.ground.Stakes[c.To.Index]; c.Kind == ground.GuyToLeg && s.inner(stake) {
			outs, legs = append(outs, s.off(stake)), append(legs, s.units.Taped(c.Distance))
		}
	}
	return common(outs), common(legs)
}

// common is the length that all of a list are, else 0.
func common(list []measure.Length) measure.Length {
	if list = slices.Compact(list); len(list) == 1 {
		return list[0]
	}
	return 0
}

// innerTold reports whether the table says once how far the guy stakes of inner arches are from their legs.
func (s *stakeLeaf) innerTold() bool { return s.guysOut != 0 && s.guysLeg != 0 }

// inner reports whether a stake belongs to an arch that is at no end.
func (s *stakeLeaf) inner(x ground.Stake) bool { return x.Arch > 1 && x.Arch < len(s.ground.Stations) }

// pairRows are the stakes of a bend, or of one arch, in the order they are found: each by two tapes, with the third that checks them.
func (p stakePart) pairRows() (rows []tapeRow) {
	done, strung := map[int]bool{}, map[int]bool{}
	for _, d := range p.dots {
		if d.Spot.Kind > ground.AtFound || done[d.Spot.Index] || !p.on(d.Spot) {
			continue
		}
		done[d.Spot.Index] = true
		stake := p.ground.Stakes[d.Spot.Index]
		for i, c := range p.ground.Chords {
			if !strung[i] && slices.ContainsFunc(c.Offsets, func(o ground.Offset) bool { return o.Stake == stake.StakeID }) { // told again on each plan that it runs on to
				strung[i] = true
				rows = append(rows, tapeRow{heading: chordWords(c)})
			}
		}
		rows = append(rows, tapeRow{stakes: []ground.Stake{stake}, cells: p.pairCells(d)})
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
		off := "on the string"
		switch by := s.units.Taped(d.B); {
		case by > 0:
			off = s.bare(by) + " right"
		case by < 0:
			off = s.bare(-by) + " left"
		}
		return []string{"along " + s.bare(d.A), off, ""}
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

// tapeTable has a row a stake, in the order they are painted, with room for what became of it.
func (p stakePart) tapeTable() block.Block {
	rows, pairs := p.rows(), p.byRow()
	heads := []string{"First tape" + p.inMM(), "Second tape", "Check tape"}
	switch {
	case pairs:
		heads = []string{fmt.Sprintf("From L%d,\u00a0R%[1]d%s", p.tape.First, p.inMM())}
	case !slices.ContainsFunc(rows, func(r tapeRow) bool { return len(r.cells) > 2 && r.cells[2] != "" }):
		heads = heads[:2]
	}
	table := block.Block{Name: "table of tapes"}
	tell := func(what, value string) { table.Facts = append(table.Facts, block.Fact{What: what, Value: value}) }
	var list []place.Row
	for _, r := range rows {
		if r.heading != "" {
			list = append(list, place.Row{Heading: r.heading})
			continue
		}
		note, near := p.nearLines(r.stakes)
		table.Facts = append(table.Facts, near...)
		cells := append([]string{r.name()}, r.cells[:len(heads)]...)
		if first := r.stakes[0]; p.number > 1 && first.Arch == p.First && !first.Guy { // ticked once, where they are painted first
			on := fmt.Sprintf("plan\u00a0%d", p.number-1)
			cells = append(cells, on, on)
		}
		list = append(list, place.Row{Cells: cells, Note: note})
		for i, head := range heads {
			if r.cells[i] != "" {
				tell(r.name()+", "+strings.ToLower(head), r.cells[i])
			}
		}
	}
	if pairs {
		texts, of := p.besides(rows)
		for _, text := range texts {
			tell("beside the row, "+of[text], text)
			list = append(list, place.Row{Heading: of[text] + ": " + text})
		}
	}
	var columns []place.Column
	for _, size := range figureSizes {
		if columns = sized(tapeColumns(heads, pairs, !drives(p.words.plan), size), list); widthOf(columns)+movedLeast <= p.body.W {
			break
		}
	}
	table.Body = block.Table{Table: place.Table{Columns: columns}, Rows: list}
	return table
}

// besides says once for all stakes that are alike how far beside their row they stand, and guy stakes how far from their legs where those of all inner arches are: texts in
// their order, with the stakes of each.
func (p stakePart) besides(rows []tapeRow) (texts []string, of map[string]string) {
	names := map[string][]numbered{}
	of = map[string]string{}
	for _, r := range rows {
		for _, x := range r.stakes {
			out := p.off(x)
			if out == 0 {
				continue
			}
			text := p.out(x, out)
			if x.Guy && p.inner(x) && p.innerTold() {
				text += ", " + p.bare(p.guysLeg) + " from its arch’s L or R"
			}
			if names[text] == nil {
				texts = append(texts, text)
			}
			names[text] = append(names[text], numbered{x.Before(), x.Arch, x.After()})
			of[text] = inRanges(names[text])
		}
	}
	return texts, of
}

// tapeColumns are the columns of the table of tapes; of pairs, each with a box for the left and for the right stake; figures of a size. Where all is stood on bases nothing is moved unasked.
func tapeColumns(heads []string, pairs, stood bool, size paper.PointSize) []place.Column {
	boxes, under, align, last := 1, "", paper.AtLeft, "Driven" // the marks' letters under each other
	if pairs {
		boxes, under, align = 2, "\nL\u00a0\u00a0\u00a0\u00a0R", paper.AtRight
	}
	columns := []place.Column{{Head: "Stake", Lettering: paper.CellSmall}}
	for _, h := range heads {
		columns = append(columns, place.Column{Head: h, Lettering: paper.Cell.Sized(size), Align: align})
	}
	if stood {
		last = "Stood"
	}
	for _, h := range []string{"Painted", last} {
		columns = append(columns, place.Column{Head: h + under, Tick: true, Boxes: boxes, Width: max(17.2, paper.Strong.Sized(11).Width(h)+3.9), Align: paper.AtMiddle})
	}
	if stood { // its last column takes what is left
		columns[len(columns)-1].Width = 0
		return columns
	}
	return append(columns, place.Column{Head: "Moved"})
}

// nearLines says of stakes that may not be moved, for a buried line would come too near, how far they are from it.
func (s *stakeLeaf) nearLines(stakes []ground.Stake) (note string, facts []block.Fact) {
	if !slices.ContainsFunc(stakes, s.words.stays) {
		return "", nil
	}
	for _, l := range s.spec.Site.Buried {
		var far []string
		for _, stake := range stakes {
			if away := ground.FromLine(stake, l); away < 2*l.Keep {
				text := s.units.Inches(s.units.Taped(away))
				far = append(far, stake.String()+": "+text)
				facts = append(facts, block.Fact{What: stake.String() + " from " + l.Name, Value: text})
			}
		}
		if len(far) > 0 {
			note += fmt.Sprintf("%s from %s. ", strings.Join(far, ", "), l.Name)
		}
	}
	return note + "Do not move: ask.", facts
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
		c.Width += cellMargins
	}
	return columns
}

const cellMargins paper.Length = 3.8 // beside the text of a column that is as wide as its longest figure
