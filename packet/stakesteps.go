package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// marking writes how the spots are found and painted, days before a stake is driven.
func (w *stakeWords) marking() {
	for _, x := range w.b.plan.Findings {
		if x.Sheet == "stake" && x.Code != "ties-missing" { // the step that chooses marks says that
			w.text(say.Capital(x.Level.String())+": "+x.Text, paper.Body)
			w.gap(1)
		}
	}
	w.heading("First, on another day: mark", 0)
	bricks := ""
	if w.ground.Straight && !w.lone() {
		bricks = ", four bricks to hold its ends"
	}
	w.text("Bring: two tapes of "+w.tapeSize()+", string"+bricks+", white marking paint, pencil, phone.", paper.Body)
	w.gap(1)
	w.warning("Paint only. Nothing goes into the ground until every buried line has been located and marked.")
	w.step("Stand at the ENTRANCE and look in. L stakes are on your left, R stakes on your right; up the page is straight ahead. " + w.lookAtMarks())
	atMark := ""
	if len(w.ground.Ties) > 0 {
		atMark = " Start at the middle of the mark, at the ground."
	}
	w.step("Always: hold both tapes level and pull them tight; on a slope drop a weight on a string from the high end." + atMark + " Read out, hear it read back, then paint a dot and write the stake's name beside it.")
	switch {
	case !w.ground.Straight:
		w.markBend()
	case w.lone():
		w.markLone()
	default:
		w.markStraight()
	}
	if len(w.ground.Ties) == 0 {
		w.chooseMarks()
	}
	w.step("Check the dots by the table that follows the tapes, while they are still paint.")
}

// call has the locating service called, once the dots are right.
func (w *stakeWords) call() {
	w.heading("When every check is right: call", 30)
	w.step("Call the locating service and tell them of the white dots.\nTicket ____________________ good from ____________ to ____________")
	private := "Private lines they do not mark: water to a shed, lights, drains."
	for _, l := range w.b.spec.Site.Buried {
		who := l.MarkedBy
		if who == "" {
			who = "its owner"
		}
		private += fmt.Sprintf(" Who marks the %s: %s.", l.Name, who)
	}
	w.step(private + " Ask whoever may know of others.")
	w.step("Wait until all have marked or answered. A dot near a marked line: stop and ask.")
}

// tapeSize is the shortest usual tape that reaches all that is taped.
func (w *stakeWords) tapeSize() string {
	sizes, unit, word := measure.By(w.units, []measure.Length{25, 50, 100, 200, 300}, []measure.Length{10, 20, 30, 50, 100}), measure.By(w.units, measure.Foot, measure.Metre), measure.By(w.units, "ft", "m")
	longest := w.ground.LongestTape(w.units)
	size := sizes[len(sizes)-1]
	for _, s := range slices.Backward(sizes) {
		if longest <= s*unit {
			size = s
		}
	}
	return fmt.Sprintf("%.0f %s", float64(size), word)
}

// lookAtMarks has the fixed marks found before the tapes come out.
func (w *stakeWords) lookAtMarks() string {
	if len(w.ground.Ties) == 0 {
		return ""
	}
	var names []string
	for _, m := range w.ground.Marks {
		name := w.mark(m.Name)
		if m.Misclosure >= measure.Inch/16 {
			name += fmt.Sprintf(" (its own tapes agree within %s)", w.units.Inches(m.Misclosure))
		}
		names = append(names, name)
	}
	return "Go to each mark the tapes start from: " + strings.Join(names, ", ") + "."
}

// markStraight sets out two straight rows, each off one tape that lies still.
func (w *stakeWords) markStraight() {
	if first, last, ok := w.ground.Anchors(w.units); ok && (first > 1 || last < len(w.ground.Stations)) {
		w.markCarried(first, last)
		return
	}
	l1, r1, ln, rn := w.ends()
	row := w.tape(ln.Running - l1.Running)
	width1, widthN := w.tape(ground.Between(l1, r1)), w.tape(ground.Between(ln, rn))
	if how := w.found(l1.StakeID); how != "" {
		w.step("L1 is the zero. Paint it where " + how)
		w.step(fmt.Sprintf("Paint %s where %s", ln.String(), w.found(ln.StakeID)))
	} else {
		w.step("L1 is the zero. Paint it where the organiser wants the left side of the entrance.")
		w.step(fmt.Sprintf("Paint %s %s straight ahead of L1, where the organiser wants the left side of the exit.", ln.String(), row))
	}
	w.crosses(l1, ln)
	from, to := w.lineEnd(l1), w.lineEnd(ln)
	long := len(w.lengths()) > 1
	if long {
		w.step(fmt.Sprintf("Pull a string from %s to %s.", from, to))
		w.nextZeros(spec.Left)
	} else {
		w.step(fmt.Sprintf("Pull a string from %s to %s, a brick on each end, and measure it: %s, within %s. If it is off, find %s again.", from, to, row, w.limit(), ln.String()))
	}
	w.step("Lay a tape along the string, its zero at " + from + ", and do not move it. Paint every L stake of the table off this one tape; never measure from dot to dot." + w.offLine() + w.guysOnLine(spec.Left) + w.again(long))
	if how := w.found(r1.StakeID); how != "" {
		w.step(fmt.Sprintf("Paint R1 where %s Across to L1: %s.", how, width1))
		w.step(fmt.Sprintf("Paint %s where %s Across to %s: %s.", rn.String(), w.found(rn.StakeID), ln.String(), widthN))
	} else {
		w.step(w.squareOff(l1, r1, ln, width1))
		w.step(fmt.Sprintf("Paint %s where two tapes meet: %s from R1 and %s from %s.", rn.String(), w.tape(ground.Between(r1, rn)), widthN, ln.String()))
	}
	w.crosses(r1, rn)
	w.step(fmt.Sprintf("Pull a string from %s to %s.", w.lineEnd(r1), w.lineEnd(rn)))
	w.nextZeros(spec.Right)
	w.step("Lay the tape along it, its zero at " + w.lineEnd(r1) + ", and paint every R stake of the table off it." + w.guysOnLine(spec.Right) + w.again(long))
}

// crosses has crosses painted where the row's string runs beside its end stakes.
func (w *stakeWords) crosses(ends ...ground.Stake) {
	var where []string
	for _, s := range ends {
		off := w.ground.OffLine(s)
		switch {
		case w.beside(s) == "":
		case off > 0:
			where = append(where, fmt.Sprintf("one %s from %s toward its pair", w.tape(off), s.String()))
		default:
			where = append(where, fmt.Sprintf("one %s outside %s, in line with its pair", w.tape(-off), s.String()))
		}
	}
	if len(where) > 0 {
		w.step("The string does not run through every end stake. Paint crosses for it: " + strings.Join(where, "; ") + ".")
	}
}

// lineEnd names what the string runs through at a stake.
func (w *stakeWords) lineEnd(s ground.Stake) string {
	if w.beside(s) != "" {
		return "the cross at " + s.String()
	}
	return s.String()
}

// lengths returns the stretches of the rows that one tape reaches.
func (w *stakeWords) lengths() []ground.TapeLength { return w.ground.TapeLengths(w.units) }

// nextZeros finds the stakes where the tape is laid again, in a row that is longer than it.
func (w *stakeWords) nextZeros(side spec.Side) {
	for i, part := range w.lengths() {
		if i == 0 {
			continue
		}
		s := w.ground.Stakes[2*part.First-2+int(side)]
		lies := "on the string"
		if beside := w.beside(s); beside != "" {
			lies = beside + " from the string, and the tape’s zero on the string beside it"
		}
		if how := w.found(s.StakeID); how != "" {
			w.step(fmt.Sprintf("Next zero: paint %s where %s It lies %s; if not within %s, look for the wrong tape first.", s.String(), how, lies, w.limit()))
		}
	}
}

// again says that a long row takes more than one tape.
func (w *stakeWords) again(long bool) string {
	if !long {
		return ""
	}
	for _, part := range w.lengths()[1:] {
		if _, found := w.tie(w.ground.Stakes[2*part.First-2].StakeID); !found {
			return " Then lay it again with its zero at the last dot, as the table says."
		}
	}
	return " Then lay it again with its zero at the next zero, as the table says."
}

// squareOff turns the right angle at L1 with tapes.
func (w *stakeWords) squareOff(l1, r1, ln ground.Stake, width string) string {
	sq := ground.SquaringFigures(w.units, ground.Between(l1, r1), ground.Between(l1, ln))
	if sq == (ground.Square{}) {
		return fmt.Sprintf("Paint R1 %s from L1, square to the left row. The diagonals below are what squares it.", width)
	}
	return fmt.Sprintf("Square at L1: paint a cross on the left row %s from L1. Hold one tape at L1 and one at the cross: where %s from L1 meets %s from the cross, the line from L1 is square. "+
		"Paint R1 on that line, %s from L1.", w.tape(sq.B), w.tape(sq.A), w.tape(sq.C), width)
}

// offLine says that some stakes stand beside the string.
func (w *stakeWords) offLine() string {
	for _, s := range w.ground.Stakes {
		if w.beside(s) != "" {
			return " “Out” is away from the walk, “in” toward it, square to the string."
		}
	}
	return ""
}

// beside says how far a stake stands off its row's string, nothing where it stands under it.
func (w *stakeWords) beside(s ground.Stake) string {
	switch off := w.ground.OffLine(s); {
	case w.tape(off) == w.tape(0):
		return ""
	case off > 0:
		return w.tape(off) + " out"
	default:
		return w.tape(-off) + " in"
	}
}

// guysOnLine says where the guy stakes before the zero and past the end are measured.
func (w *stakeWords) guysOnLine(side spec.Side) string {
	for _, s := range w.ground.Stakes {
		if s.Guy && s.Side == side && s.Running < 0 {
			return fmt.Sprintf(" “Back” is measured from %s1 the other way, on the same line.", side.Letter())
		}
	}
	return ""
}

// chooseMarks has two fixed marks chosen and written down where the spec names none.
func (w *stakeWords) chooseMarks() {
	_, _, ln, rn := w.ends()
	w.step("Choose two marks, better three, that will be there next year: a wall's corner, a gate hinge, a lamp post. From each a tape must reach every corner stake, and the tapes should cross about square. Write them down with their tapes:")
	t := place.Table{RowMin: 8.4, Columns: []place.Column{{Head: "Mark (name it exactly)"}, {Head: "to L1", Width: 27}, {Head: "to R1", Width: 27}, {Head: "to " + ln.String(), Width: 27}, {Head: "to " + rn.String(), Width: 27}}}
	row := place.Row{Cells: []string{"A"}}
	if w.lone() {
		t.Columns = t.Columns[:3]
	}
	w.table(t, []place.Row{row, {Cells: []string{"B"}}, {Cells: []string{"C"}}})
	w.gap(3)
}
