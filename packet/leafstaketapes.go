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
	zero := s.tapeOf(part).First
	heads := []string{fmt.Sprintf("From L%d, R%d%s", zero, zero, s.inMM())}
	if !pairs {
		heads = []string{"First tape" + s.inMM(), "Second tape", "Check tape"}
	}
	columns := tapeColumns(heads, pairs)
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

// tapeColumns are the columns of the table of tapes; of pairs, each with a box for the left and for the right stake.
func tapeColumns(heads []string, pairs bool) []place.Column {
	boxes, under, align := 1, "", paper.AtLeft // the marks' letters under each other
	if pairs {
		boxes, under, align = 2, " L\u00a0\u00a0\u00a0\u00a0R", paper.AtRight
	}
	columns := []place.Column{{Head: "Stake", Lettering: paper.CellSmall}}
	for _, h := range heads {
		columns = append(columns, place.Column{Head: h, Lettering: paper.Cell, Align: align})
	}
	for _, h := range []string{"Painted", "Driven"} {
		columns = append(columns, place.Column{Head: h + under, Tick: true, Boxes: boxes, Width: max(17.2, paper.Strong.Sized(11).Width(h)+3.9), Align: paper.AtMiddle})
	}
	return append(columns, place.Column{Head: "Moved"})
}

// nearLines says how far stakes are from a buried line that they stand near, and where they may not be moved toward it at all.
func (s *stakeLeaf) nearLines(stakes []ground.Stake) (note string, facts []block.Fact) {
	var words []string
	for _, l := range s.b.spec.Site.Buried {
		var far []string
		for _, stake := range stakes {
			if away := ground.FromLine(stake, l); away < 2*l.Keep {
				far = append(far, stake.String()+": "+s.units.Inches(s.units.Taped(away)))
				facts = append(facts, block.Fact{What: stake.String() + " from " + l.Name, Value: s.units.Inches(s.units.Taped(away))})
			}
		}
		if len(far) > 0 {
			words = append(words, fmt.Sprintf("%s from %s.", strings.Join(far, ", "), l.Name))
		}
	}
	if slices.ContainsFunc(stakes, func(stake ground.Stake) bool { return !crew.MayMove(s.b.spec, stake, s.given(stake.Kind())) }) {
		words = append(words, "Do not move: ask.")
	}
	return strings.Join(words, " "), facts
}

// given is how far the ladder lets stakes of a kind be moved.
func (s *stakeLeaf) given(kind ground.Kind) (by measure.Length) {
	for _, t := range s.tasks {
		for _, c := range t.IfOff {
			if t.Action == crew.DriveStakes && c.Do.Moves(kind) {
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
