package lights

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// wrapSays reports what is wrong with a solved wrap, or left over from it, and the nearest choice that works.
func (l *layer) wrapSays(i int, st stretch, j job, c coil) {
	w, units := l.Spec.Lights.Wraps[i], l.Spec.Units
	out := complaint{level: finding.LookAt, key: fmt.Sprintf("lights.wraps[%d]", i), on: []stretch{st}}
	strings := fmt.Sprintf("%d × %s (%s)", c.count, w.String.Name, units.Tape(w.String.Length))
	switch {
	case c.fault == tooShort:
		better := j
		better.pitch, better.count = w.Pitch, 0
		fits := better.wind()
		out.code, out.worse = "wrap-too-short", 1-c.covers
		out.text = fmt.Sprintf("%s will not reach; wound at %s, %.0f %% of %s is covered. Take %d, wound at %s.",
			strings, units.Inches(c.pitch), 100*c.covers, units.Tape(j.pipe), fits.count, units.Inches(fits.pitch))
	case c.fault == touching && w.Pitch > 0:
		out.code, out.worse = "wrap-turns-touch", float64(c.leftOver)
		out.text = fmt.Sprintf("the pitch is less than the wire is thick, so the turns lie side by side%s. Take a pitch of %s or more.",
			over(units, c.leftOver), units.Cut(roundUp(j.wire, units)))
	case c.fault == touching:
		unwound := measure.Length(max(j.count, c.count))*j.string - c.wound
		out.code, out.worse = "wrap-turns-touch", float64(unwound)
		out.text = fmt.Sprintf("%d × %s (%s) will not go on: with the turns side by side, %s is left over. No more than %s goes on; %s.",
			max(j.count, c.count), w.String.Name, units.Tape(w.String.Length), units.Tape(unwound), units.Tape(j.longest()), l.goesOn(w.String, j))
	case c.leftOver > tieStep:
		out.level, out.code, out.worse = finding.Note, "wrap-left-over", float64(c.leftOver)
		out.text = fmt.Sprintf("of %s at a pitch of %s, %s is left over: %s.",
			strings, units.Inches(c.pitch), units.Tape(c.leftOver), l.useUp(j, c))
	default:
		return
	}
	l.says.add(out)
}

// goesOn names what goes on a stretch instead of too much: fewer of the strings, else the longest of the same volts and colour that does.
func (l *layer) goesOn(s catalog.String, j job) string {
	if n := int(j.longest() / j.string); n > 0 {
		return fmt.Sprintf("take %d", n)
	}
	var best catalog.String
	for _, o := range append(slices.Clone(l.Spec.Lights.Strings), catalog.Strings()...) {
		if o.Volts == s.Volts && o.Colour == s.Colour && o.Drop == 0 && o.Length <= j.longest() && o.Length >= j.shortest() && o.Length > best.Length {
			best = o
		}
	}
	if best.Name == "" {
		return "take a shorter string"
	}
	return fmt.Sprintf("take one %s (%s)", best.Name, l.Spec.Units.Tape(best.Length))
}

// roundUp returns a length on the cutting grid, never less.
func roundUp(length measure.Length, units measure.System) measure.Length {
	grid := units.Grid()
	return grid * measure.Length(math.Ceil(float64(length/grid)*(1-1e-9)))
}

// over says what is left over, where that is anything.
func over(units measure.System, length measure.Length) string {
	if length < units.Grid() {
		return ""
	}
	return fmt.Sprintf(", with %s left over", units.Tape(length))
}

// useUp says how to leave nothing over.
func (l *layer) useUp(j job, c coil) string {
	j.pitch, j.count = 0, c.count
	if all := j.wind(); all.fault == sound {
		return fmt.Sprintf("bundle the end, or wind at %s to use it up", l.Spec.Units.Inches(all.pitch))
	}
	return "bundle the end, or take a shorter string"
}
