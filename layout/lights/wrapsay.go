package lights

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// wrapSays reports what is wrong with a solved wrap, or left over from it, and the nearest choice that works.
func (l *layer) wrapSays(i int, st stretch, j job, c coil) {
	w, units := l.Spec.Lights.Wraps[i], l.Spec.Units
	out := complaint{level: finding.LookAt, key: fmt.Sprintf("lights.wraps[%d]", i), on: []stretch{st}}
	set := func(key, value string) {
		out.cure = append(out.cure, finding.Change{Key: out.key + "." + key, Value: value})
	}
	wound := fmt.Sprintf("%d × %s (%s)", c.count, w.String.Name, units.Tape(w.String.Length))
	switch {
	case c.fault == tooShort:
		better := j
		better.pitch, better.count = w.Pitch, 0
		fits := better.wind()
		out.code, out.worse = "wrap-too-short", 1-c.covers
		set("count", fmt.Sprint(fits.count))
		out.text = fmt.Sprintf("%s will not reach; wound at %s, %.0f %% of %s is covered. Take %d, wound at %s.",
			wound, units.Inches(c.pitch), 100*c.covers, units.Tape(j.pipe), fits.count, units.Inches(fits.pitch))
	case c.fault == touching && w.Pitch > 0:
		out.code, out.worse = "wrap-turns-touch", float64(c.leftOver)
		set("pitch", units.Written(max(measure.RoundUp(j.wire, units.Grid()), measure.Inch/4)))
		out.text = fmt.Sprintf("the pitch is less than the wire is thick, so the turns lie side by side%s. Take a pitch of %s or more.",
			over(units, c.leftOver), units.Cut(measure.RoundUp(j.wire, units.Grid())))
	case c.fault == touching:
		unwound := measure.Length(max(j.count, c.count))*j.string - c.wound
		out.code, out.worse = "wrap-turns-touch", float64(unwound)
		count, best := l.goesOn(w.String, j)
		advice := "take a shorter string"
		switch {
		case count > 0:
			advice = fmt.Sprintf("take %d", count)
			set("count", fmt.Sprint(count))
		case best.Name != "":
			advice = fmt.Sprintf("take one %s (%s)", best.Name, units.Tape(best.Length))
			set("string", typed(best.Name))
			if w.Count > 1 {
				set("count", "1")
			}
		}
		out.text = fmt.Sprintf("%d × %s (%s) will not go on: with the turns side by side, %s is left over. No more than %s goes on; %s.",
			max(j.count, c.count), w.String.Name, units.Tape(w.String.Length), units.Tape(unwound), units.Tape(j.longest()), advice)
	case c.leftOver-j.free > practice.TieStep:
		out.level, out.code, out.worse = finding.Note, "wrap-left-over", float64(c.leftOver)
		out.text = fmt.Sprintf("of %s at a pitch of %s, %s is left over: %s.",
			wound, units.Inches(c.pitch), units.Tape(c.leftOver), l.useUp(j, c))
	default:
		return
	}
	l.says.add(out)
}

// typed is a name as one types it as a value in YAML, in quotes where it has characters that mean something there.
func typed(name string) string {
	if strings.ContainsAny(name, "\"'`,:#[]{}&*!|>%@") {
		return strconv.Quote(name)
	}
	return name
}

// goesOn returns what goes on a stretch instead of too much: fewer of the strings, else the longest of the same volts and colour that does, if any.
func (l *layer) goesOn(s catalog.String, j job) (count int, best catalog.String) {
	if n := int(j.longest() / j.string); n > 0 {
		return n, best
	}
	for _, o := range append(slices.Clone(l.Spec.Lights.Strings), catalog.Strings()...) {
		if o.Volts == s.Volts && o.Colour == s.Colour && o.Drop == 0 && o.Length <= j.longest() && o.Length >= j.shortest() && o.Length > best.Length {
			best = o
		}
	}
	return 0, best
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
