package lights

import (
	"fmt"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// leftShare is the share of the rows' string that may be left over before something is said. Our own choice.
const leftShare = 0.1

// rowsLeft tells how much of the rows' strings is left over, and which step or height near the given ones uses most of it up, found by laying the rows so.
func (l *layer) rowsLeft() {
	left, all := l.leftOver()
	if all == 0 || left < all*leftShare {
		return
	}
	units := l.Spec.Units
	inch, foot := measure.Inch, 12*measure.Inch
	if units == measure.Metric {
		inch, foot = 20, 300
	}
	best, words := left, ""
	given := *l.Spec.Lights.Rows
	try := func(change func(*spec.Rows), say func() string) {
		rows := given
		change(&rows)
		if rows.Step < 2*measure.Inch || rows.UpTo < rows.First {
			return
		}
		s := *l.Spec
		s.Lights.Rows = &rows
		other := layer{Input: l.Input}
		other.Spec = &s
		for _, wall := range rows.Walls {
			other.wall(wall, other.underCrown(rows.Marks()))
		}
		if n, _ := other.leftOver(); n < best-inch && len(other.out.Paths) > 0 {
			best, words = n, say()
		}
	}
	for k := measure.Length(-3); k <= 3; k++ {
		try(func(r *spec.Rows) { r.Step += k * inch }, func() string { return "a step of " + units.Inches(given.Step+k*inch) })
		try(func(r *spec.Rows) { r.UpTo += k * foot }, func() string { return "rows up to " + units.Room(given.UpTo+k*foot) })
	}
	end := "no step or height near these leaves less"
	if words != "" {
		end = fmt.Sprintf("%s leaves %s", words, units.Room(best))
	}
	l.says.add(complaint{level: finding.Note, code: "rows-left-over", key: "lights.rows", text: fmt.Sprintf(
		"Of %s of strings in rows, %s is left over; %s.", units.Room(all), units.Room(left), end)})
}

// leftOver returns how much of the rows' strings is left over, and how long they are in all.
func (l *layer) leftOver() (left, all measure.Length) {
	for _, p := range l.out.Paths {
		left += p.LeftOver
		all += p.Length + p.LeftOver
	}
	return left, all
}
