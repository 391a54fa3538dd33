package lights

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// rows lays the rows of each wall, left to right as the spec has them.
func (l *layer) rows() {
	rows := l.Spec.Lights.Rows
	if rows == nil {
		return
	}
	if len(l.Arches) < 2 {
		l.says.add(complaint{level: finding.LookAt, code: "rows-need-two-arches", key: "lights.rows", cure: []finding.Change{{Key: "lights.rows"}},
			text: "Rows run from arch to arch, and this tunnel has one arch; leave them out."})
		return
	}
	all := rows.Marks()
	kept := l.underCrown(all)
	for _, wall := range rows.Walls {
		l.wall(wall, kept)
	}
	l.rowsLeft()
	l.pulls()
}

// underCrown returns the marks that every leg has, so that both walls get the same rows.
func (l *layer) underCrown(all []measure.Length) []measure.Length {
	rows := l.Spec.Lights.Rows
	shortest := measure.Length(math.Inf(1))
	for _, a := range l.Arches {
		for _, wall := range rows.Walls {
			shortest = min(shortest, crownTape(a.Kind, wall))
		}
	}
	n := len(all)
	for n > 0 && all[n-1] > shortest {
		n--
	}
	switch units := l.Spec.Units; {
	case n == 0:
		l.says.add(complaint{level: finding.LookAt, code: "row-above-crown", key: "lights.rows.first", text: fmt.Sprintf(
			"No row hangs: the first mark is at %s of tape, and the shortest leg reaches its crown at %s. Start lower.", units.Tape(all[0]), units.Tape(shortest))})
	case n < len(all):
		cure := []finding.Change{{Key: "lights.rows.up to", Value: units.Written(all[n-1])}}
		l.says.add(complaint{level: finding.LookAt, code: "row-above-crown", key: "lights.rows.up to", cure: cure, text: fmt.Sprintf(
			"The rows end at %s of tape, for the shortest leg reaches its crown at %s; the marks up to %s were left out.",
			units.Tape(all[n-1]), units.Tape(shortest), units.Tape(all[len(all)-1]))})
	}
	if low := all[0] - rows.Sag; n > 0 && low < practice.PlugHigh {
		u := l.Spec.Units
		first := measure.RoundUp(rows.Sag+practice.PlugHigh, markStep(u))
		cure := []finding.Change{{Key: "lights.rows.first", Value: u.Written(first)}}
		if rows.UpTo < first {
			cure = append(cure, finding.Change{Key: "lights.rows.up to", Value: u.Written(first)})
		}
		l.says.add(complaint{level: finding.LookAt, code: "row-on-ground", key: "lights.rows.first", cure: cure, text: fmt.Sprintf(
			"The first row %s: its mark is at %s and it sags %s. A plug there would lie in wet grass; start at %s or more.",
			lowRow(l.Spec.Units, low), l.Spec.Units.Inches(all[0]), l.Spec.Units.Inches(rows.Sag), l.Spec.Units.Inches(rows.Sag+practice.PlugHigh))})
	}
	return all[:n]
}

// markStep is the step that marks and hangs are changed by: what a tape shows at a glance.
func markStep(u measure.System) measure.Length { return measure.By(u, measure.Inch/4, 5) }

// lowRow says how low a row comes.
func lowRow(units measure.System, low measure.Length) string {
	if low <= 0 {
		return "lies on the ground"
	}
	return "hangs " + units.Inches(low) + " above the ground"
}

// wall lays one wall: each block of bays between ways out has a path of its own for each kind of string.
func (l *layer) wall(wall spec.Side, kept []measure.Length) {
	rows := l.Spec.Lights.Rows
	blocks := openBlocks(l.Spec, wall, len(l.Arches))
	if len(blocks) == 0 {
		return // every bay is a way out: nothing hangs
	}
	first := len(l.out.Rows)
	for i, mark := range kept {
		r := Row{Wall: wall, Number: i + 1, Tape: mark, Kind: rows.Strings[i%len(rows.Strings)].Name}
		for _, a := range l.Arches {
			r.Heights = append(r.Heights, a.HeightAt(wall, mark))
			r.Marks = append(r.Marks, l.mark(r, mark, a.Number))
		}
		l.out.Rows = append(l.out.Rows, r)
	}
	if rows.FromBack {
		slices.Reverse(blocks)
	}
	hung := l.out.Rows[first:]
	for _, b := range blocks {
		var done []string
		for i, label := range rows.Strings {
			if i >= len(kept) || slices.Contains(done, label.Name) {
				continue
			}
			done = append(done, label.Name)
			l.path(b, label, hung)
		}
	}
	l.rowsInOpening(hung)
}

// block is a run of bays without a way out, given by the arches at its two ends.
type block struct{ first, last int }

// openBlocks returns a wall's blocks from the front.
func openBlocks(s *spec.Spec, wall spec.Side, arches int) []block {
	var out []block
	for bay := 1; bay < arches; bay++ {
		switch n := len(out); {
		case s.IsWay(wall, bay):
		case n > 0 && out[n-1].last == bay:
			out[n-1].last = bay + 1
		default:
			out = append(out, block{bay, bay + 1})
		}
	}
	return out
}
