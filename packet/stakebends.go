package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// markLone sets out one arch.
func (w *stakeWords) markLone() {
	l1, r1, _, _ := w.ends()
	width := w.tape(ground.Between(l1, r1))
	if how := w.found(l1.StakeID); how != "" {
		w.step("Paint L1 where " + how)
		w.step(fmt.Sprintf("Paint R1 where %s Across to L1: %s.", w.found(r1.StakeID), width))
		return
	}
	w.step("Paint L1 where the organiser wants the left foot.")
	w.step(fmt.Sprintf("Paint R1 %s from L1, where the organiser wants the right foot.", width))
	w.guysByLegs(func(ground.Stake) bool { return true })
}

// markBend sets out a tunnel that bends: pair by pair, for no tape lies along a bend.
func (w *stakeWords) markBend() {
	l1, r1, _, _ := w.ends()
	width := w.tape(ground.Between(l1, r1))
	if len(w.ground.Ties) > 0 {
		w.step("Go down the table, pair by pair" + w.beyondReach() + ". For each stake hook the two tapes on the two marks that its row of the table names, and paint it where they meet." + w.side())
		try := "After each pair try the width in the table"
		if checked(w.ties()) {
			try = "After each stake try the check tape, and after each pair the width in the table"
		}
		w.step(fmt.Sprintf("%s: each within %s. If not, find that stake again before going on.", try, w.limit()))
		w.markChords()
		return
	}
	w.step("Paint L1 where the organiser wants the left side of the entrance.")
	w.step(fmt.Sprintf("Paint R1 %s from L1, so that straight ahead is square to the line L1–R1.", width))
	w.step("Go on bay by bay with the table “Bay by bay”: the next L is where the tape along the left side meets the tape across from R; the next R likewise from R and across from L.")
	w.guysByLegs(func(ground.Stake) bool { return true })
}

// guysByLegs gives the tapes to guy stakes from the two stakes of their arch, where there are neither marks nor a straight row to find them by.
func (w *stakeWords) guysByLegs(these func(ground.Stake) bool) {
	t := place.Table{Columns: []place.Column{{Head: "Guy stake", Lettering: paper.Cell}, {Head: "From its L stake", Lettering: paper.Cell, Align: paper.AtRight},
		{Head: "From its R stake", Lettering: paper.Cell, Align: paper.AtRight}, {Head: "Toward the"}, {Head: "Dot", Tick: true, Width: 12}}}
	var rows []place.Row
	for _, s := range w.ground.Stakes {
		if !s.Guy || !these(s) {
			continue
		}
		toward := "entrance"
		if s.Along > w.ground.Stations[s.Arch-1].Along {
			toward = "exit"
		}
		l, r := w.ground.Stakes[2*s.Arch-2], w.ground.Stakes[2*s.Arch-1]
		rows = append(rows, place.Row{Cells: []string{s.String(), l.String() + "  " + w.tape(ground.Between(l, s)), r.String() + "  " + w.tape(ground.Between(r, s)), toward}})
	}
	if len(rows) == 0 {
		return
	}
	w.step("Paint each of these guy stakes where two tapes meet, from the L and the R stake of its arch:")
	w.table(t, rows)
	w.gap(3)
}

// ties are the tapes that the table gives.
func (w *stakeWords) ties() (list []ground.Tie) {
	for _, s := range w.ground.Stakes {
		if t, ok := w.tie(s.StakeID); ok {
			list = append(list, t)
		}
	}
	return list
}

// checked reports whether a third tape checks the two.
func checked(ties []ground.Tie) bool {
	return slices.ContainsFunc(ties, func(t ground.Tie) bool { return t.MarkC != "" })
}

// side says which of the two crossings is meant where no third tape settles it.
func (w *stakeWords) side() string {
	ties := slices.DeleteFunc(w.ties(), func(t ground.Tie) bool { return t.MarkC != "" })
	if len(ties) == 0 {
		return ""
	}
	said := map[string][]ground.Stake{}
	var order []string
	for _, t := range ties {
		if side, ok := w.ground.SideOf(t); ok {
			key := fmt.Sprintf("on your %s as you look from %s to %s", side, w.mark(t.MarkA), w.mark(t.MarkB))
			if said[key] == nil {
				order = append(order, key)
			}
			stake, _ := w.ground.Stake(t.Stake)
			said[key] = append(said[key], stake)
		}
	}
	if len(order) == 0 {
		return ""
	}
	if len(order) == 1 && len(ties) == len(w.ties()) {
		return " They meet twice: take the crossing " + order[0] + "."
	}
	var words []string
	for _, key := range order {
		words = append(words, w.rowsOf(said[key])+" "+key)
	}
	whose := "the stakes"
	if len(ties) < len(w.ties()) {
		whose = "stakes without a check tape"
	}
	return " They meet twice; " + whose + " lie so: " + strings.Join(words, "; ") + "."
}

// rowsOf names stakes in short, row by row: "L1 to 5, R2, guy stakes on the left at arches 1 to 3".
func (w *stakeWords) rowsOf(stakes []ground.Stake) string {
	var words []string
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		var legs, guys []int
		for _, s := range stakes {
			switch {
			case s.Side != side:
			case !s.Guy:
				legs = append(legs, s.Arch)
			case len(guys) == 0 || guys[len(guys)-1] != s.Arch:
				guys = append(guys, s.Arch)
			}
		}
		if len(legs) > 0 {
			words = append(words, side.Letter()+say.Numbers(legs))
		}
		if len(guys) > 0 {
			words = append(words, fmt.Sprintf("guy stakes on the %s at %s", side, say.Numbered("arch", guys)))
		}
	}
	return strings.Join(words, ", ")
}
