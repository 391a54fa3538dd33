package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// tapes sets one row a stake, in the order a crew walks: on a straight the whole left row off one tape, then the right; on a bend pair by pair.
func (w *stakeWords) tapes() {
	w.heading("Tapes: one row a stake, in the order you walk", 60)
	w.text(w.tableHead(), paper.Body)
	w.gap(1.5)
	names := w.usedMarks()
	columns := []place.Column{{Head: "Stake", Lettering: paper.Cell}}
	add := func(c place.Column) { columns = append(columns, c) }
	number := func(head string) place.Column {
		return place.Column{Head: head, Lettering: paper.CellSmall, Align: paper.AtRight}
	}
	running := w.ground.Straight && !w.lone()
	if running {
		c := number("From zero")
		c.Lettering = paper.Cell
		add(c)
	}
	if !running {
		add(number("Across to its pair"))
	}
	own := len(names) <= 3
	first := number("First tape")
	if !own { // three letters and three long numbers
		first.Lettering = paper.CellSmall.Sized(11)
	}
	switch {
	case len(names) == 0:
	case own:
		for _, m := range names {
			add(number("From " + w.letter(m) + " " + m))
		}
	default:
		for _, head := range []string{"First tape", "Second tape", "Check tape"} {
			first.Head = head
			add(first)
		}
	}
	add(place.Column{Head: "Dot", Tick: true, Width: 12})
	add(place.Column{Head: "In", Tick: true, Width: 9.8})
	add(place.Column{Head: "As built"})

	var rows []place.Row
	for _, s := range w.walk() {
		if s.heading != "" {
			rows = append(rows, place.Row{Heading: s.heading})
			continue
		}
		cells := []string{s.String()}
		if running {
			cells = append(cells, w.running(s)+under(w.beside(s.Stake)))
		}
		if !running {
			cells = append(cells, w.across(s.Stake))
		}
		tapes := w.tapeCells(s.StakeID, names)
		if _, found := w.tie(s.StakeID); !found && len(tapes) > 0 && !s.Guy && w.ground.ByChord(s.Arch) {
			tapes[0] = "by string"
		}
		cells = append(cells, tapes...)
		rows = append(rows, place.Row{Cells: cells})
	}
	w.table(place.Table{Columns: unbroken(columns, rows), RowMin: 8.4}, rows)
}

// unbroken makes every column of numbers as wide as its longest number; what is left goes to the blank for what was built.
func unbroken(columns []place.Column, rows []place.Row) []place.Column {
	for i := range columns[:len(columns)-1] {
		c := &columns[i]
		if c.Tick {
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

// tableHead reminds of what is needed at the table, so that it can be used without the other pages.
func (w *stakeWords) tableHead() string {
	words := []string{"Hold the tape level."}
	if w.ground.Straight && !w.lone() {
		words[0] += " Paint by “From zero”."
	}
	if w.units == measure.Metric {
		words = append(words, "All distances are in mm.")
	}
	names := w.usedMarks()
	if len(names) > 3 {
		var list []string
		for _, m := range names {
			list = append(list, w.mark(m))
		}
		words = append(words, "Marks: "+strings.Join(list, ", ")+".")
	}
	find, check := "Two tapes find a stake", " checks it, within "+w.limit()+"."
	if w.ground.Straight && !w.lone() {
		find = "Two tapes find a stake again when its dot is lost, and next year"
	}
	switch {
	case len(names) > 3:
		words = append(words, find+"; the check tape"+check)
	case len(names) == 3:
		words = append(words, find+"; the one in [ ]"+check)
	case len(names) > 0:
		words = append(words, find+".")
	}
	if worst := w.worstTie(); worst > 0 {
		words = append(words, fmt.Sprintf("Tapes %s off put a stake up to %s off.", w.units.Inches(ground.CheckLimit(w.units)), w.units.Inches(worst)))
	}
	var depths []string
	list := w.depths()
	for _, d := range list {
		whose := d.whose(len(list))
		if len(list) > 2 && len(d.names) > 6 {
			whose = fmt.Sprintf("%s and %d more", strings.Join(d.names[:5], ", "), len(d.names)-5)
		}
		depths = append(depths, fmt.Sprintf("%s on %s", w.units.Inches(d.length-d.depth), whose))
	}
	words = append(words, "In: driven and capped, so much of it above the ground: "+strings.Join(depths, "; ")+".")
	return strings.Join(words, " ")
}

// worstTie is how far off a stake is at worst when each of its two tapes is off by the limit.
func (w *stakeWords) worstTie() (worst measure.Length) {
	for _, t := range w.ties() {
		worst = max(worst, t.Error)
	}
	return worst
}

// usedMarks returns the marks that any tape starts from, in their order on the plan.
func (w *stakeWords) usedMarks() (names []string) {
	used := map[string]bool{}
	for _, t := range w.ties() {
		used[t.MarkA], used[t.MarkB], used[t.MarkC] = true, true, true
	}
	for _, m := range w.ground.Marks {
		if used[m.Name] {
			names = append(names, m.Name)
		}
	}
	return names
}

// walked is a stake in the walk, or a heading.
type walked struct {
	ground.Stake
	zero    int // the arch at whose stake its row's tape begins
	heading string
}

// walk returns the stakes in the order they are set out.
func (w *stakeWords) walk() (list []walked) {
	stakes := w.ground.Walk()
	if !w.ground.Straight {
		for _, s := range stakes {
			list = append(list, walked{Stake: s})
		}
		return list
	}
	parts := w.lengths()
	part := 0
	for i, s := range stakes {
		begins := i == 0 || s.Side != stakes[i-1].Side
		if begins {
			part = 0
		} else if part+1 < len(parts) && !s.Guy && s.Arch == parts[part+1].First { // the last of one tape, and the zero of the next
			list = append(list, walked{Stake: s, zero: parts[part].First})
			part++
			begins = true
		}
		zero := 1
		if len(parts) > 0 {
			zero = parts[part].First
		}
		if begins && !w.lone() {
			list = append(list, walked{heading: w.rowHeading(s.Side, zero, part+1, len(parts))})
		}
		list = append(list, walked{Stake: s, zero: zero})
	}
	return list
}

// rowHeading says where the tape lies.
func (w *stakeWords) rowHeading(side spec.Side, zero, tape, of int) string {
	row := say.Capital(side.String()) + " row"
	if of > 1 {
		row += fmt.Sprintf(", tape %d of %d", tape, of)
	}
	return fmt.Sprintf("%s: zero at %s, not moved", row, w.lineEnd(w.ground.Stakes[2*zero-2+int(side)]))
}

// running is a stake's distance along its row's tape.
func (w *stakeWords) running(s walked) string {
	running := s.Running - w.ground.Stakes[2*s.zero-2+int(s.Side)].Running
	switch {
	case running < -measure.Millimetre/2:
		return w.bare(-running) + " back"
	case running < measure.Millimetre/2:
		return "0"
	}
	return w.bare(running)
}

// under sets a note on a line of its own.
func under(note string) string {
	if note == "" {
		return ""
	}
	return "\n" + note
}

// across is the width to a right stake from its left one.
func (w *stakeWords) across(s ground.Stake) string {
	if s.Guy || s.Side == spec.Left {
		return ""
	}
	return w.bare(ground.Between(s, w.ground.Stakes[2*s.Arch-2]))
}

// tapeCells are a stake's tapes: in a column a mark where there are three marks at most, else as first, second and check.
func (w *stakeWords) tapeCells(stake ground.StakeID, names []string) []string {
	t, ok := w.tie(stake)
	if len(names) > 3 {
		if !ok {
			return make([]string, 3)
		}
		cells := []string{w.letter(t.MarkA) + " " + w.bare(t.A), w.letter(t.MarkB) + " " + w.bare(t.B), ""}
		if t.MarkC != "" {
			cells[2] = w.letter(t.MarkC) + " " + w.bare(t.C)
		}
		return cells
	}
	cells := make([]string, len(names))
	for i, m := range names {
		switch {
		case !ok:
		case m == t.MarkA:
			cells[i] = w.bare(t.A)
		case m == t.MarkB:
			cells[i] = w.bare(t.B)
		case m == t.MarkC:
			cells[i] = "[" + w.bare(t.C) + "]"
		}
	}
	return cells
}

// bare is a tape's figure in the table: in metric without its unit, which the head names once.
func (w *stakeWords) bare(l measure.Length) string {
	if w.units == measure.Metric {
		return w.units.BareInches(l)
	}
	return w.tape(l)
}
