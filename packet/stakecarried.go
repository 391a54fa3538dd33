package packet

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// markCarried sets out two straight rows whose marks reach only the arches first to last: strings through those are carried on.
func (w *stakeWords) markCarried(first, last int) {
	s := w.ground.Stakes
	n := len(w.ground.Stations)
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		a, z, begin, end := s[2*first-2+int(side)], s[2*last-2+int(side)], s[int(side)], s[2*n-2+int(side)]
		across := func(stake ground.Stake) string {
			if side == spec.Left {
				return ""
			}
			l := s[2*stake.Arch-2]
			return fmt.Sprintf(" Across to %s: %s.", l.String(), w.tape(ground.Between(l, stake)))
		}
		w.step(fmt.Sprintf("Paint %s where %s%s", a.String(), w.found(a.StakeID), across(a)))
		w.step(fmt.Sprintf("Paint %s where %s%s", z.String(), w.found(z.StakeID), across(z)))
		w.crosses(a, z)
		where := "past where " + end.String() + " will be"
		if first > 1 {
			where = "past where " + begin.String() + " and " + end.String() + " will be"
		}
		w.step(fmt.Sprintf("Pull a string through %s and %s and on, %s, a brick on each end. No mark is near enough to the rest: sight along the string from behind, so that it runs dead straight.",
			w.lineEnd(a), w.lineEnd(z), where))
		zero := w.lineEnd(begin) + "."
		if first > 1 {
			zero = fmt.Sprintf("%s, which lies %s back from %s on the string.", w.lineEnd(begin), w.tape(a.Running-begin.Running), w.lineEnd(a))
		}
		w.nextZeros(side)
		w.step(fmt.Sprintf("Lay a tape along the string and paint every %s stake of the table off it; never measure from dot to dot. Its zero is at %s%s%s%s",
			side.Letter(), zero, w.offLine(), w.guysOnLine(side), w.again(len(w.lengths()) > 1)))
	}
}

// beyondReach says which stakes of a bend the table gives no tapes for.
func (w *stakeWords) beyondReach() string {
	if len(w.ground.Chords) == 0 {
		return ""
	}
	return ", as far as it has tapes"
}

// markChords sets what no two marks reach round a bend: left stakes off strings that are carried on, each right stake from two left ones.
func (w *stakeWords) markChords() {
	if len(w.ground.Chords) == 0 {
		return
	}
	w.step("The other stakes are beyond the marks. Set them off strings, in this order. Lay a tape along the string. “Square off” is measured at right angles to it: swing the second tape until it reads least. " +
		"The last L of each string is a set peg: lay a brick at its dot, for the next string runs through it.")
	number := func(head string, width paper.Length) place.Column {
		return place.Column{Head: head, Width: width, Lettering: paper.CellSmall, Align: paper.AtRight}
	}
	name := func(head string) place.Column { return place.Column{Head: head, Width: 18, Lettering: paper.Cell} }
	columns := []place.Column{name("Stake"), number("Along", 32), number("Square off", 0), name("Then"), number("from its L", 30), number("from the L before", 30), {Head: "Dots", Tick: true, Width: 14}}
	t := place.Table{RowMin: 8.4, Columns: columns}
	var rows []place.Row
	s := w.ground.Stakes
	for _, c := range w.ground.Chords {
		rows = append(rows, place.Row{Heading: chordHeading(c)})
		zero, _ := w.ground.Stake(c.Zero)
		before := zero.Arch
		for i, o := range c.Offsets {
			arch := c.Arches[i]
			l, r := s[2*arch-2], s[2*arch-1]
			rows = append(rows, place.Row{Cells: []string{o.Stake.String(), w.tape(o.Along), w.squareOffString(o), r.String(),
				w.tape(ground.Between(l, r)), w.tape(ground.Between(s[2*before-2], r))}})
			before = arch
		}
	}
	w.table(t, rows)
	w.gap(3)
	w.guysByLegs(func(s ground.Stake) bool {
		_, found := w.tie(s.StakeID)
		return !found
	})
}

// chordHeading says where a string runs and where its tape begins.
func chordHeading(c ground.Chord) string {
	if c.Zero == c.To {
		return fmt.Sprintf("String from %s through %s and on; zero at %s, looking away from %s", c.From, c.To, c.Zero, c.From)
	}
	return fmt.Sprintf("String from %s to %s; zero at %s, looking to %s", c.From, c.To, c.Zero, c.To)
}

// squareOffString says how far and to which side of a string a stake stands.
func (w *stakeWords) squareOffString(o ground.Offset) string {
	switch text := w.tape(o.Off); {
	case text == w.tape(0):
		return "on it"
	case o.Off < 0:
		return w.tape(-o.Off) + " left"
	default:
		return text + " right"
	}
}
