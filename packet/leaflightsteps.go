package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// turns draws which way round each side is wound, once.
func (l lighting) turns() []block.Block {
	if len(l.plan.Wraps) == 0 {
		return nil
	}
	columns := block.Columns{Gap: 6}
	for _, mirror := range []bool{false, true} {
		var nouns []string
		d := draw.WrapTurns{Mirror: mirror}
		for _, w := range l.plan.Wraps {
			noun := map[lights.Kind]string{lights.LegLeft: "left legs", lights.LegRight: "right legs", lights.Arch: "whole arches", lights.Ridge: ridgePieces}[w.On.Kind]
			if w.Mirror == mirror && !slices.Contains(nouns, noun) {
				if nouns = append(nouns, noun); len(nouns) == 1 {
					d.Wrap, d.Pipe = w, l.under(w.On)
				}
			}
		}
		if len(nouns) == 0 {
			continue
		}
		for _, s := range draw.Scales(l.u) {
			if d.Scale = s; d.High() <= 14 {
				break
			}
		}
		columns.Cols = append(columns.Cols, block.Column{Share: 1, Blocks: []block.Block{
			{Body: block.Words{Text: "Wind " + say.And(nouns) + " so:", Lettering: paper.Strong}},
			{Gap: 1, Body: block.Picture{Least: d.High(), Paint: func(page *paper.Page, box paper.Rect) []string { d.Draw(page, box); return nil }}},
		}})
	}
	return []block.Block{{Name: "turns", Gap: 3, Body: columns}}
}

// told is a step with its figures.
type told struct {
	block.Step
	facts []block.Fact
}

// steps is the work on the strings, and then that on each pipe.
func (l lighting) steps() (bench, winding []block.Block) {
	said, seen := newTaskWords(l.plan), map[crew.Action]bool{}
	var on, wind []told
	if len(l.plan.Wraps) > 0 {
		wind = l.windingSteps(slices.ContainsFunc(l.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.JoinForWrap }))
	}
	for _, t := range l.plan.Crew.Tasks {
		if seen[t.Action] {
			continue
		}
		seen[t.Action] = true
		switch in := said.of(t); t.Action {
		case crew.TestStrings:
			on = append(on, l.testStep(t, in))
		case crew.TryWrapped:
			on = append(on, told{Step: block.Step{Hold: t.Hold, Text: in.Do + " " + in.Want, Then: "Dark, bare or cracked: unwind it, wind a spare.", Sign: []block.Blank{{Word: in.Sign}}}})
		case crew.TagStrings:
			on = append(on, told{Step: block.Step{Text: in.Do}})
		case crew.JoinForWrap:
			wind = slices.Insert(wind, 0, told{Step: block.Step{Text: in.Do}})
		case crew.FlagRows: // while the pipe is on the trestles
			wind = slices.Insert(wind, min(1, len(wind)), l.rowStep(in))
		}
	}
	number := 0
	blocks := func(list []told) (out []block.Block) {
		for _, s := range list {
			number++
			s.Number = number
			out = append(out, block.Block{Name: fmt.Sprintf("step %d", number), Gap: 1.2, Body: s.Step, Facts: s.facts})
		}
		return out
	}
	bench, winding = blocks(on), blocks(wind)
	if len(winding) > 0 {
		winding[0].Gap = 3
	}
	return bench, winding
}

// rowStep has the legs of walls with rows marked where these are tied.
func (l lighting) rowStep(in instruction) told {
	var tapes []string
	var legs []lights.Part
	s := told{Step: block.Step{Then: "Each by tape from the foot, never from ribbon to ribbon."}}
	walls := map[spec.Side]bool{}
	for _, r := range l.plan.Lights.Rows {
		if tape := l.u.BareInches(r.Tape); !slices.Contains(tapes, tape) {
			tapes = append(tapes, tape)
			s.facts = append(s.facts, block.Fact{What: fmt.Sprintf("mark of row %d", r.Number), Value: tape})
		}
		if !walls[r.Wall] {
			walls[r.Wall] = true
			for _, a := range l.plan.Arches {
				legs = append(legs, lights.Leg(r.Wall, a.Number))
			}
		}
	}
	s.Text = fmt.Sprintf("%s %s: at %s up.", in.Do, partsInRanges(legs), block.Figure(strings.Join(tapes, ", ")+" "+measure.By(l.u, "in", "mm")))
	return s
}

// testStep has every string tested and its label read.
func (l lighting) testStep(t crew.Task, in instruction) told {
	var volts []string
	for _, s := range l.plan.Strings {
		if v := measure.Volts(s.Label.Volts); !slices.Contains(volts, v) {
			volts = append(volts, v)
		}
	}
	label := say.And(volts)
	return told{block.Step{Hold: t.Hold, Text: in.Do + " Its label: " + label + ", outdoor.", Then: "Dark bulb, bare wire, crack, heat: reject bag; spare of its kind. None: ask.",
		Sign: []block.Blank{{Word: in.Sign}, {Word: "spares used", Share: 0.4}}}, []block.Fact{{What: "volts on the strings' labels", Value: label}}}
}

// windingSteps is how one pipe is wound; legs that are joined before have their arrows read then.
func (l lighting) windingSteps(joined bool) (list []told) {
	step := func(text, then string, facts ...block.Fact) {
		list = append(list, told{block.Step{Text: text, Then: then}, facts})
	}
	turns := fmt.Sprintf("%d turns by tape", lights.CountTurns)
	if front, back := l.onEdges(); len(front)+len(back) > 0 {
		turns += ", or the strip so marked, folded at the dashes, if the top bar is true"
	}
	nouns := wrapped(l.plan)
	standing := slices.DeleteFunc(slices.Clone(nouns), func(noun string) bool { return noun == ridgePieces })
	start := "Pipe on trestles."
	joint, loop := l.u.Inches(practice.JointFree(l.u)), l.u.Inches(practice.PlugFree(l.u))
	free := "String left for plugs: " + block.Figure(joint) + " at crowns"
	if len(standing) > 0 {
		free += ", " + block.Figure(loop) + " at feet, tied up"
	}
	if slices.Contains(nouns, "legs") && !joined {
		start = "Pipe on trestles, a leg’s arrow to its crown."
	}
	give, off := l.u.Inches(practice.FlagGive(l.u)), l.u.Inches(practice.WrapEnd(l.u))
	step(start+" From 0 tie a one-knot ribbon at each thick mark, within "+block.Figure(give)+".", "", block.Fact{What: "give of a flag on a pipe", Value: give})
	clear := ""
	if slices.ContainsFunc(l.plan.Wraps, func(w lights.Wrap) bool { return len(w.Bare) > 0 }) {
		clear = "One-knot ribbons at white gaps: wire along the pipe, loose, " + say.Or(heldBy(l.plan).pick("guy", "brace")) + " and clamp go under it."
	}
	if slices.ContainsFunc(l.plan.Wraps, func(w lights.Wrap) bool { return w.On.Kind == lights.Arch }) && len(l.plan.Ridge) > 0 {
		clear = strings.TrimSpace(clear + " Where ridge pieces go in: no wire.")
	}
	if clear != "" {
		step(clear, "")
	}
	step("Wind from where prongs are drawn, lead too"+l.leadOff()+", counting bulbs. "+free+".", turns+".", block.Fact{What: "string left at a crown", Value: joint}, block.Fact{What: "string left at a foot", Value: loop})
	step("Bulbs from the prongs: at a ribbon the one printed, or "+block.Figure(fmt.Sprint(l.bulbGive()))+" either way.", "Too big: turns too close. Too small: too wide. Unwind to the last good ribbon.")
	long, facts := leftOver(l.plan, func(s lights.String) bool { return s.Run.Wound() })
	step("Turns up to "+block.Figure(off)+" short: widen the last third; long: closer, tie back.", strings.TrimSpace("Farther: unwind. Never stretch, never cut. "+long),
		append(facts, block.Fact{What: "how far a string's end may be off", Value: off})...)
	ribbons := "ribbons"
	if len(l.plan.Lights.Rows) > 0 { // their two-knot ones stay
		ribbons = "one-knot ribbons"
	}
	step("Crew lead checks the first of each kind. Zip ties at both ends, 1/3, 2/3; "+ribbons+" off.", "")
	step(l.ticked(standing), "")
	for i, noun := range nouns {
		to := "" // the first arches go up while others are wound
		if noun != ridgePieces {
			to = " to arch"
		}
		list[len(list)-1].Sign = append(list[len(list)-1].Sign, block.Blank{Word: [2]string{"UNPLUGGED, signed: ", ""}[min(i, 1)] + noun + to})
	}
	return list
}

// ticked says where to what is wound and ticked is carried, and what is wound later.
func (l lighting) ticked(standing []string) (words string) {
	var ridge []lights.Part
	for _, w := range l.plan.Wraps {
		if ofRidge(w) && !slices.Contains(ridge, w.On) {
			ridge = append(ridge, w.On)
		}
	}
	if len(standing) > 0 {
		words = "Ticked: "
		if len(l.plan.Lights.Rows) > 0 {
			words = "Ticked, ribboned: "
		}
		words += say.And(standing) + " to stakes. "
	}
	if len(ridge) > 0 {
		words += say.Capital(onParts(ridge)) + ": wind when cut."
	}
	return strings.TrimSpace(words)
}

// wrapped names what is wound, in the order it hangs.
func wrapped(p *layout.Plan) (nouns []string) {
	for _, w := range p.Wraps {
		if noun := map[string]string{"leg": "legs", "arch": "arches", "ridge": ridgePieces}[w.On.Kind.Noun()]; !slices.Contains(nouns, noun) {
			nouns = append(nouns, noun)
		}
	}
	return nouns
}

const ridgePieces = "ridge pieces"

// leadOff says how much of a lead stays off the pipe, where any does.
func (l lighting) leadOff() string {
	off := measure.Length(0)
	for _, s := range l.plan.Strings {
		off = max(off, s.Off)
	}
	if off == 0 {
		return ""
	}
	return " but for " + block.Figure(l.u.Room(off)) + " at the prongs"
}

// bulbGive is how many bulbs a flag may be off: no more than the end of the string may, on the pipe whose bulbs are farthest apart, but never less than one.
func (l lighting) bulbGive() int {
	give := practice.BulbGive
	for _, w := range l.plan.Wraps {
		apart := (w.To - w.From) / measure.Length(max(1, w.Label.Bulbs*len(w.Strings)))
		give = min(give, int(practice.WrapEnd(l.u)/apart))
	}
	return max(1, give)
}

// aloud is what is said before the first string is plugged in.
func (l lighting) aloud() block.Block {
	var low []string // volts of strings that no outlet gives
	for _, s := range l.plan.Strings {
		if v := measure.Volts(s.Label.Volts); s.Label.Supply != nil && !slices.Contains(low, v) {
			low = append(low, v)
		}
	}
	supplied := ""
	if low != nil {
		supplied = ", " + say.And(low) + " strings on their own supply"
	}
	return saidAloud(l.plan.Spec, []string{fmt.Sprintf("Nothing plugged in while winding. Test on %s outlet%s, dry. Bring list: leaf %d.", withArticle(device(l.plan)), supplied, leafNumber("stock"))})
}

// saidBeside are lines that are said aloud, with blanks beside them, one below the other.
func saidBeside(blanks block.Blanks, lines ...string) block.Block {
	var beside []block.Block
	for _, b := range blanks {
		beside = append(beside, block.Block{Body: block.Blanks{b}})
	}
	return block.Block{Name: "said aloud", Gap: 2, Body: block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 3, Cols: []block.Column{
		{Share: 1, Blocks: []block.Block{{Body: block.Words{Lettering: paper.Floor, Text: strings.Join(lines, "\n")}}}},
		{Width: signWide, Blocks: beside}}}}}}}
}
