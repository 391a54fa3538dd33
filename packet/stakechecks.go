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
)

// stakeCheck is one distance to measure between dots.
type stakeCheck struct {
	what, want, off string
}

// checks sets the table of checks: what is wanted, what was measured, what to move.
func (w *stakeWords) checks() {
	var list []stakeCheck
	if w.ground.Straight {
		list = w.straightChecks()
	} else {
		list = w.bendChecks()
	}
	w.gap(2)
	w.heading(fmt.Sprintf("Check the dots: each within %s", w.limit()), 40)
	w.text("In this order, with the dots still paint: measure, write, move what is off, measure again. Where one row stands for many, measure them all and write the worst.", paper.Body)
	w.gap(1)
	t := place.Table{RowMin: 8.4, Columns: []place.Column{{Head: "Measure", Width: 42}, {Head: "Wanted", Lettering: paper.Cell, Align: paper.AtRight}, {Head: "Measured", Width: 25}, {Head: "If it is off"}, {Tick: true, Width: 9.7}}}
	var rows []place.Row
	for _, c := range list {
		rows = append(rows, place.Row{Cells: []string{c.what, c.want, "", c.off}})
	}
	w.table(t, rows)
	w.gap(3)
	if !w.ground.Straight {
		w.bayByBay()
	}
}

// straightChecks are rows, widths and diagonals: each alone can be right while the tunnel is not.
func (w *stakeWords) straightChecks() []stakeCheck {
	parts := w.lengths()
	var list []stakeCheck
	for _, part := range parts {
		for _, at := range []int{0, 1} {
			from, to := w.ground.Stakes[2*part.First-2+at], w.ground.Stakes[2*part.Last-2+at]
			list = append(list, stakeCheck{from.String() + " to " + to.String(), w.tape(ground.Between(from, to)), "Find " + to.String() + " again."})
		}
	}
	list = append(list, w.widthChecks("Move the R dot along the line across.")...)
	diagonals := w.ground.Diagonals
	if len(parts) == 1 {
		whole := diagonals[len(diagonals)-2:]
		list = append(list, crossed(w.tape, whole[0].From.String(), whole[0].To.String(), whole[0].Distance, whole[1].From.String(), whole[1].To.String(), whole[1].Distance, w.slide(whole[1])))
	}
	for _, part := range parts {
		if len(parts) > 1 {
			l, r, nl, nr := w.ground.Stakes[2*part.First-2], w.ground.Stakes[2*part.First-1], w.ground.Stakes[2*part.Last-2], w.ground.Stakes[2*part.Last-1]
			list = append(list, crossed(w.tape, l.String(), nr.String(), ground.Between(l, nr), r.String(), nl.String(), ground.Between(r, nl), "Find "+nr.String()+" again, then "+nl.String()+"."))
		}
	}
	if len(diagonals) > 4 {
		list = append(list, w.bayChecks(diagonals[:len(diagonals)-2])...)
	}
	return append(list, w.guyChecks()...)
}

// guyChecks are the distances from guy stakes to the leg they stand by, those alike together.
func (w *stakeWords) guyChecks() (list []stakeCheck) {
	var groups []alikes
	first := map[string]string{}
	for _, s := range w.ground.Stakes {
		if !s.Guy {
			continue
		}
		leg := w.ground.Stakes[2*s.Arch-2+int(s.Side)]
		text := w.tape(ground.Between(s, leg))
		if first[text] == "" {
			first[text] = s.String() + " to " + leg.String()
		}
		groups = gather(groups, text, s.Arch)
	}
	for _, g := range groups {
		what := first[g.text]
		if len(g.numbers) > 1 {
			what += "\nand so at " + say.Numbered("arch", slices.Compact(g.numbers))
		}
		list = append(list, stakeCheck{what, g.text, "Find the guy stake again."})
	}
	return list
}

// crossed is the check of two diagonals that cross.
func crossed(tape func(measure.Length) string, from, to string, one measure.Length, otherFrom, otherTo string, other measure.Length, off string) stakeCheck {
	want := tape(one)
	if second := tape(other); second != want {
		want += "\n" + second
	}
	return stakeCheck{fmt.Sprintf("%s to %s\n%s to %s", from, to, otherFrom, otherTo), want, off}
}

// slide says how the right row is moved when the diagonals of the whole differ. shrinks is the one from the right row to the left: too short
// where the right row lies too far toward the exit.
func (w *stakeWords) slide(shrinks ground.Diagonal) string {
	share, ok := w.ground.Slide()
	if !ok {
		return ""
	}
	unit := measure.By(w.units, measure.Inch, 10)
	return fmt.Sprintf("Slide the R row along its line, to the exit if %s–%s is longer, else back: %s for each %s of difference.",
		shrinks.From, shrinks.To, w.units.Inches(measure.Length(share)*unit), w.units.Inches(unit))
}

// bendChecks are the widths; the bays have a table of their own.
func (w *stakeWords) bendChecks() []stakeCheck {
	list := w.widthChecks("Find the worse of the two again by its tapes.")
	s := w.ground.Stakes
	for _, part := range w.ground.CheckStretches(w.units) {
		l, r, nl, nr := s[2*part.First-2], s[2*part.First-1], s[2*part.Last-2], s[2*part.Last-1]
		list = append(list, crossed(w.tape, l.String(), nr.String(), ground.Between(l, nr), r.String(), nl.String(), ground.Between(r, nl),
			"Find "+nr.String()+" or "+nl.String()+" again; then go bay by bay."))
	}
	return append(list, w.guyChecks()...)
}

// widthChecks are the widths across, arches of one width together.
func (w *stakeWords) widthChecks(off string) []stakeCheck {
	var list []stakeCheck
	for _, g := range w.widths() {
		list = append(list, stakeCheck{"L to R across at " + say.Numbered("arch", g.numbers), g.text, off})
	}
	return list
}

// alikes are arches or bays whose figures print alike.
type alikes struct {
	text    string
	numbers []int
}

func gather(list []alikes, text string, number int) []alikes {
	for i := range list {
		if list[i].text == text {
			list[i].numbers = append(list[i].numbers, number)
			return list
		}
	}
	return append(list, alikes{text, []int{number}})
}

func (w *stakeWords) widths() (list []alikes) {
	for i := range w.ground.Stations {
		list = gather(list, w.tape(ground.Between(w.ground.Stakes[2*i], w.ground.Stakes[2*i+1])), i+1)
	}
	return list
}

// widthWords says the widths in a sentence.
func (w *stakeWords) widthWords() string {
	var words []string
	for _, g := range w.widths() {
		words = append(words, fmt.Sprintf("%s at %s", g.text, say.Numbered("arch", g.numbers)))
	}
	return strings.Join(words, ", ") + ": each within " + w.limit() + ". If one is off, drive the worse stake again."
}

// bayChecks are the diagonals of the bays, bays alike together.
func (w *stakeWords) bayChecks(diagonals []ground.Diagonal) (list []stakeCheck) {
	var groups []alikes
	for i := 0; i+1 < len(diagonals); i += 2 {
		a, b := w.tape(diagonals[i].Distance), w.tape(diagonals[i+1].Distance)
		if b != a {
			a += "\n" + b
		}
		groups = gather(groups, a, i/2+1)
	}
	for _, g := range groups {
		k := g.numbers[0]
		what := fmt.Sprintf("L%d to R%d\nR%d to L%d", k, k+1, k, k+1)
		if len(g.numbers) > 1 {
			what += fmt.Sprintf("\nand so bays %s", say.Numbers(g.numbers))
		}
		list = append(list, stakeCheck{what, g.text, "Read the row tapes again there."})
	}
	return list
}

// bayByBay sets the sides and diagonals of each bay of a bend; bays that are alike and follow each other share a row.
func (w *stakeWords) bayByBay() {
	s := w.ground.Stakes
	type bay struct {
		first, last int
		figures     [4]string
	}
	var bays []bay
	for k := 1; k < len(w.ground.Stations); k++ {
		l, r, nl, nr := s[2*k-2], s[2*k-1], s[2*k], s[2*k+1]
		figures := [4]string{w.tape(ground.Between(l, nl)), w.tape(ground.Between(r, nr)), w.tape(ground.Between(l, nr)), w.tape(ground.Between(r, nl))}
		if n := len(bays); n > 0 && bays[n-1].figures == figures {
			bays[n-1].last = k
			continue
		}
		bays = append(bays, bay{k, k, figures})
	}
	w.heading("Bay by bay", 30)
	w.text(fmt.Sprintf("Bay 1 lies between arches 1 and 2. Each figure within %s; if one is off, find the stake that both bad figures share again.", w.limit()), paper.Body)
	w.gap(1)
	number := place.Column{Lettering: paper.Cell, Align: paper.AtRight}
	head := func(s string) place.Column { c := number; c.Head, c.Width = s, 33; return c }
	t := place.Table{Columns: []place.Column{{Head: "Bay", Lettering: paper.Cell}, head("L to next L"), head("R to next R"), head("L to next R"), head("R to next L"), {Head: "Right", Tick: true, Width: 16}}}
	var rows []place.Row
	for _, b := range bays {
		name := fmt.Sprint(b.first)
		if b.last > b.first {
			name = fmt.Sprintf("%d to %d", b.first, b.last)
		}
		rows = append(rows, place.Row{Cells: append([]string{name}, b.figures[:]...)})
	}
	w.table(t, rows)
	w.gap(3)
}
