package crew

import (
	"fmt"
	"math"
	"strings"

	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// marking puts white dots where the stakes will go, and has the ground looked at before anything is driven.
func (b *builder) marking() {
	warning := "Marks only: drive nothing into the ground until the locating service and the owners of private lines have answered."
	left, right, guys := b.rows()
	var taped []ground.Stake
	var lines [][]ground.Stake
	for _, row := range [][]ground.Stake{left, right} {
		parts := b.stretches(row)
		if len(parts) == 0 {
			taped = append(taped, row...)
			continue
		}
		taped = append(taped, row[0])
		for _, part := range parts {
			taped = append(taped, part[len(part)-1])
		}
		lines = append(lines, parts...)
	}
	b.byTapes(append(taped, guys...), warning)
	b.byBaseline(lines)
	for _, line := range b.Spec.Site.Buried {
		who := "Have its owner mark"
		if line.MarkedBy != "" {
			who = fmt.Sprintf("Have it marked by %s:", line.MarkedBy)
		}
		b.add(minutesTalk, Step{Phase: Marking, People: 1,
			Do:   fmt.Sprintf("%s the %s, on the ground. A locating service does not mark private lines.", who, line.Name),
			Want: fmt.Sprintf("No white dot nearer to it than %s.", b.units.Inches(line.Keep)),
			Off:  "Ask the organiser to move the tunnel; leave the dot without a stake until then."})
	}
	b.add(minutesTalk, Step{Phase: Marking, People: 1, Hold: true,
		Do:   "Call the locating service and ask for the ground inside the white dots. Write down ticket ________, good from ________ to ________.",
		Want: "The ticket's first day is on or before the build day, 2 to 3 business days after the call, and every owner has marked or answered clear.",
		Off:  "Wait, or call again. No stake is driven without the ticket."})
}

// stretches parts a row into what one tape reaches along one line, those that follow each other sharing a stake; none where no line runs along the row.
func (b *builder) stretches(row []ground.Stake) [][]ground.Stake {
	if !b.Ground.Straight || len(row) < 2 {
		return nil
	}
	parts := b.Ground.TapeLengths(b.units)
	if len(parts) == 0 {
		parts = []ground.TapeLength{{First: 1, Last: len(row)}}
	}
	var list [][]ground.Stake
	for _, p := range parts {
		part := row[p.First-1 : p.Last]
		if absolute(part[len(part)-1].Offset-row[0].Offset) > b.grid() {
			return nil
		}
		list = append(list, part)
	}
	return list
}

// rows parts the stakes into left legs, right legs and guys.
func (b *builder) rows() (left, right, guys []ground.Stake) {
	for _, s := range b.Ground.Stakes {
		switch {
		case s.Guy:
			guys = append(guys, s)
		case s.Side == spec.Left:
			left = append(left, s)
		default:
			right = append(right, s)
		}
	}
	return left, right, guys
}

// byTapes finds stakes by tapes from marks; without marks, by what there is.
func (b *builder) byTapes(stakes []ground.Stake, warning string) {
	if len(stakes) == 0 {
		return
	}
	step := Step{Phase: Marking, People: 3, Warning: warning,
		Do:   "Where the first two tapes meet, make a white dot, write its name beside it. Left and right: as you look from the first mark to the second.",
		Want: "Both tapes level and tight where they cross.",
		Off:  "Hold both tapes level, pull them tight and try again; then look whether each hooks on the right mark."}
	for _, s := range stakes {
		tie, ok := b.tie(s.StakeID)
		if !ok {
			way := "along the route from"
			if s.Along < 0 {
				way = "before"
			}
			step.Readings = append(step.Readings, Reading{s.String(), fmt.Sprintf("%s %s arch 1, %s to the %s of its middle", b.units.Tape(absolute(s.Along)), way, b.units.Tape(absolute(s.Offset)), s.Side)})
			continue
		}
		if tie.MarkC != "" {
			step.Want = fmt.Sprintf("Both tapes level and tight where they cross; the check tape within %s.", b.units.Inches(b.limit))
		}
		step.Tapes = append(step.Tapes, Tape{tie, b.sideOf(tie, s)})
	}
	if len(step.Tapes) == 0 {
		step.Do = "Make a white dot for each of these, write its name beside it."
		step.Want = "Tapes level and tight."
		step.Off = "Measure again; the diagonals below are the check."
	}
	b.add(minutesTwoTape*float64(len(stakes)), step)
}

// byBaseline dots straight rows, each off one tape that is never moved.
func (b *builder) byBaseline(rows [][]ground.Stake) {
	if len(rows) == 0 {
		return
	}
	step := Step{Phase: Marking, People: 2}
	var lines []string
	work := 0.0
	for _, row := range rows {
		from, to := row[0], row[len(row)-1]
		lines = append(lines, fmt.Sprintf("%s to %s %s", from.StakeID, to.StakeID, b.units.Tape(to.Running-from.Running)))
		work += minutesMeasure*2 + minutesDot*float64(len(row)-2)
		for _, s := range row[1 : len(row)-1] {
			step.Readings = append(step.Readings, Reading{s.String(), b.units.Tape(s.Running-from.Running) + b.beside(s, from)})
		}
	}
	step.Do = fmt.Sprintf("Pull lines tight, one after the other, and measure each: %s.", strings.Join(lines, "; "))
	step.Want = fmt.Sprintf("Each length within %s.", b.units.Inches(b.limit))
	step.Off = "Find the line's far end again with its tapes."
	if len(step.Readings) > 0 {
		step.Do += " Hook the tape at the line's first stake and leave it there. Make a white dot at the line at each of these."
		step.Want += " Every dot read from the line's zero, none measured from its neighbour."
	}
	b.add(work, step)
}

// beside says how far a stake stands off the line of its row's ends: arches of another span do.
func (b *builder) beside(s, first ground.Stake) string {
	off := absolute(s.Offset) - absolute(first.Offset)
	switch {
	case absolute(off) <= b.grid():
		return ""
	case off < 0:
		return fmt.Sprintf(" and %s square in from the line", b.units.Inches(-off))
	}
	return fmt.Sprintf(" and %s square out from the line", b.units.Inches(off))
}

func (b *builder) tie(stake ground.StakeID) (ground.Tie, bool) {
	for _, t := range b.Ground.Ties {
		if t.Stake == stake && t.MarkA != "" && t.MarkB != "" {
			return t, true
		}
	}
	return ground.Tie{}, false
}

// sideOf says on which side of the line between a tie's marks the stake lies: two tapes cross twice.
func (b *builder) sideOf(t ground.Tie, s ground.Stake) string {
	at := map[string]spec.Point{}
	for _, m := range b.Ground.Marks {
		at[m.Name] = m.At
	}
	p, okA := at[t.MarkA]
	q, okB := at[t.MarkB]
	if !okA || !okB {
		return ""
	}
	cross := float64((q.X-p.X)*(s.Y-p.Y) - (q.Y-p.Y)*(s.X-p.X))
	side := "left"
	if cross < 0 {
		side = "right"
	}
	if math.Abs(cross) < 1 {
		return ""
	}
	return side
}
