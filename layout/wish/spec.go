package wish

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Made is a spec made from answers, and its plan.
type Made struct {
	Source []byte
	Plan   *layout.Plan
	Chosen string // the pipe, where it was chosen; empty where it was given
}

// Make makes a spec from answers by the questions' names; what is missing takes its default. An error says which answer cannot be read, or which reader's limit the wish breaks.
// The spec may still have findings that must be fixed, where nothing stands as wished.
func Make(u measure.System, answers map[string]string) (Made, error) {
	w := &wishes{units: u}
	for _, q := range Questions(u) {
		if err := q.answer(w, answers[q.Name]); err != nil {
			return Made{}, fmt.Errorf("%s: %w", q.Name, err)
		}
	}
	best, score := Made{}, 0
	for _, pipe := range w.pipes() {
		m, err := w.try(pipe)
		if err != nil {
			return Made{}, err
		}
		switch s := badness(m.Plan); {
		case best.Plan == nil || s < score:
			best, score = m, s
			if w.pipe == "" {
				best.Chosen = pipe
			}
		case score < mustFixCounts: // one stands, and a thicker one is no better
			return best, nil
		}
	}
	return best, nil
}

// pipes are those to try, the thinner and cheaper first.
func (w *wishes) pipes() (names []string) {
	if w.pipe != "" {
		return []string{w.pipe}
	}
	for _, p := range catalog.Pipes() {
		if metric := strings.HasSuffix(p.Name, " mm"); metric == (w.units == measure.Metric) {
			names = append(names, p.Name)
		}
	}
	return names
}

// mustFixCounts is how many things to look at weigh as much as one to be fixed: more than a plan ever has.
const mustFixCounts = 100

// badness orders plans: what must be fixed first, then what is to be looked at.
func badness(p *layout.Plan) (n int) {
	for _, f := range p.Findings {
		switch f.Level {
		case finding.MustFix:
			n += mustFixCounts
		case finding.LookAt:
			n++
		}
	}
	return n
}

// try makes the spec with a pipe. Legs longer than a stick as sold are joined from several.
func (w *wishes) try(pipe string) (Made, error) {
	made, err := w.made(pipe, "")
	if err != nil || w.stick == 0 {
		return made, err
	}
	var leg measure.Length
	for _, l := range made.Plan.Kinds[0].Left {
		leg += l
	}
	if leg <= w.stick {
		return made, nil
	}
	one := "[" + strings.Join(w.joined(leg, made.Plan.Spec.Arch.Pipe.CouplingStop), ", ") + "]"
	return w.made(pipe, "["+one+", "+one+"]")
}

// made is the spec of a pipe and of sticks, solved.
func (w *wishes) made(pipe, sticks string) (Made, error) {
	source := []byte(w.text(pipe, sticks))
	s, err := spec.Read("wish", source)
	if err != nil {
		return Made{}, inAnswers(err)
	}
	return Made{Source: source, Plan: layout.Solve(s)}, nil
}

// joined divides a leg among sticks as sold, from the ground up, with a coupling between each two that adds its stop. Each piece is a whole inch (10 mm) or more, the last not
// shorter than a foot (300 mm), which is the least worth joining on.
func (w *wishes) joined(leg, stop measure.Length) (pieces []string) {
	grid, least := measure.By(w.units, measure.Inch, 10), practice.LeastPiece(w.units)
	for leg > w.stick {
		piece := min(w.stick, measure.RoundUp(leg-stop-least, grid))
		pieces = append(pieces, w.units.Written(piece))
		leg -= piece + stop
	}
	return append(pieces, w.units.Written(measure.RoundUp(leg, grid)))
}

// inAnswers tells a limit of the reader's by the answer that breaks it.
func inAnswers(err error) error {
	var list spec.Errors
	if !errors.As(err, &list) {
		return err
	}
	by := map[string]string{"arch.span": "width", "arch.height": "height", "tunnel.length": "length", "stock.sell[0].length": "stick", "title": "title", "site.overhead[0].height": "overhead", "power.circuits.house.volts": "volts", "power.circuits.house.breaker": "breaker"}
	return fmt.Errorf("%s: %s", cmp.Or(by[list[0].Key], list[0].Key), list[0].Text)
}

// text writes the spec: sections in the order of the format, with a comment where an answer or a choice stands behind a line. Sticks are solved where none are given.
func (w *wishes) text(pipe, sticks string) string {
	u := w.units
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("# A light tunnel, from answers. Change what you like, then:  hoopwright packet THISFILE")
	line("# What is left out takes a default that the packet lists; hoopwright keys  tells every key.")
	line("hoopwright: 1\ntitle: %s\nunits: %s\n", strconv.Quote(w.title), u)
	line("tunnel:\n  length: %s\n  spacing: up to %s           # divided into equal bays", u.Written(w.length), measure.By(u, "4 ft 6 in", "1.4 m"))
	if width := w.way(); width != "" {
		line("  opening: {width: %s, height: %s}   # what stays clear for people", width, measure.By(u, "6 ft 8 in", "2.05 m"))
	}
	chosen := ""
	if w.pipe == "" {
		chosen = "   # chosen: it stands with the least to look at"
	}
	line("\narch:\n  pipe: %s%s", pipe, chosen)
	line("  span: %s                    # stake to stake at the ground", u.Written(w.width))
	if sticks == "" {
		line("  height: %s                  # of the crown; the sticks are solved", u.Written(w.height))
	} else {
		line("  sticks: %s   # joined from what is sold, for a crown of %s", sticks, u.Written(w.height))
	}
	line("  # stakes, guys and braces are chosen by the solver; give them to have them so")
	w.site(line)
	w.lights(line)
	if w.mains() {
		line("\npower:\n  circuits:")
		gfci := map[answer]string{yes: ", gfci: true", no: ", gfci: false"}[w.gfci]
		why := ""
		if !w.breakerKnown {
			why = "   # the breaker's amps stand on it; the least that outlets have is taken"
		}
		line("    house: {volts: %g V, breaker: %g A%s}%s", float64(w.volts), float64(w.breaker), gfci, why)
	}
	if w.stick > 0 {
		line("\nstock:\n  sell: [{item: %s, length: %s}]", pipe, u.Written(w.stick))
	}
	return b.String()
}

// way is how wide the way must stay for who comes: 60 in for two wheelchairs to pass (2010 ADA Standards 403.5.3), four feet for the public; empty: the default does. A way wider
// than the arch allows would be no help.
func (w *wishes) way() string {
	switch {
	case slices.Contains(w.people, "wheelchairs") && w.width >= measure.By[measure.Length](w.units, 8*measure.Foot, 2400):
		return measure.By(w.units, "60 in", "1525 mm")
	case slices.Contains(w.people, "public") && w.width >= measure.By[measure.Length](w.units, 7*measure.Foot, 2100):
		return measure.By(w.units, "4 ft", "1.2 m")
	}
	return ""
}

func (w *wishes) site(line func(format string, args ...any)) {
	u := w.units
	line("\nsite:\n  start: {at: [0, 0], heading: 0 deg}   # the plan begins at the middle of the entrance and looks ahead")
	if w.soil != "" {
		line("  soil: %s", w.soil)
	} else {
		line("  soil: unknown                 # write firm, soft, sandy or frozen once you know")
	}
	if w.around != "" {
		line("  exposure: %s", w.around)
	}
	var dangers []string
	for _, d := range []struct {
		open bool
		word spec.Danger
	}{
		{w.buried != no, spec.BuriedLines}, // of a yes too: where it lies has not been said
		{w.overhead == unknown, spec.OverheadLines},
		{w.mains() && w.gfci == unknown, spec.OutletsGFCI},
		{w.mains() && !w.breakerKnown, spec.BreakerAmps},
	} {
		if d.open {
			dangers = append(dangers, d.word.String())
		}
	}
	if len(dangers) > 0 {
		line("  unknown: [%s]   # to be looked into first; take each out once it is", strings.Join(dangers, ", "))
	}
	if w.overhead == yes {
		line("  overhead: [{name: lowest wire or branch, line: [[0, 0], [0, %s]], height: %s}]   # taken to run above the whole walk", u.Written(w.length), u.Written(w.wire))
	}
	if len(w.marks) > 0 {
		line("  marks:                        # taped from the pegs L1 and R1 of the entrance")
		for _, m := range w.marks {
			side := spec.Right // of the line from L1 to R1: behind
			if m.ahead {
				side = spec.Left
			}
			line("    - {name: %s, from: {L1: %s, R1: %s}, side: %s}", strconv.Quote(m.name), u.Written(m.left), u.Written(m.right), side)
		}
	}
	if w.hasOutlet {
		o := w.outlet
		line("  outlets:\n    - {name: house, from start: {%s: %s, %s: %s}, circuit: house}", o.side, u.Written(o.across), o.along, u.Written(o.depth))
	}
}

// mains reports whether anything is plugged in: lights are, wherever the outlet is.
func (w *wishes) mains() bool { return w.hasOutlet || len(w.strings) > 0 }

func (w *wishes) lights(line func(format string, args ...any)) {
	u := w.units
	switch {
	case len(w.strings) == 0:
	case w.rows:
		top := measure.RoundUp(w.height*0.6, measure.By(u, 6*measure.Inch, 100))
		line("\nlights:\n  rows: {first: %s, step: %s, up to: %s, strings: [%s]}", measure.By(u, "14 in", "350 mm"), measure.By(u, "14 in", "350 mm"), u.Written(top), strings.Join(w.strings, ", "))
	default:
		line("\nlights:\n  wraps:")
		for i, s := range w.strings {
			of := ""
			if len(w.strings) == 2 {
				of = [...]string{" of odd", " of even"}[i]
			}
			line("    - {where: legs%s, string: %s}", of, s)
		}
	}
}
