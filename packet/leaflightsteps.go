package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// turns draws which way round each side is wound, once.
func (l lighting) turns() []block.Block {
	if len(l.plan.Wraps) == 0 {
		return nil
	}
	var hands []draw.WrapTurns
	var who []string
	for _, mirror := range []bool{false, true} {
		var nouns []string
		d := draw.WrapTurns{Mirror: mirror}
		for _, w := range l.plan.Wraps {
			noun := map[lights.Kind]string{lights.LegLeft: "left legs", lights.LegRight: "right legs", lights.Arch: "whole arches", lights.Ridge: "ridge pieces"}[w.On.Kind]
			if w.Mirror == mirror && !slices.Contains(nouns, noun) {
				if nouns = append(nouns, noun); len(nouns) == 1 {
					d.Wrap, d.Pipe = w, l.under(w.On)
				}
			}
		}
		if len(nouns) > 0 {
			hands, who = append(hands, d), append(who, say.Capital(say.And(nouns)))
		}
	}
	columns := block.Columns{Gap: 6}
	for i, d := range hands {
		for _, s := range draw.Scales(l.u) {
			if d.Scale = s; d.High() <= 14 {
				break
			}
		}
		columns.Cols = append(columns.Cols, block.Column{Share: 1, Blocks: []block.Block{
			{Body: block.Words{Text: who[i], Lettering: paper.Strong}},
			{Gap: 1, Body: block.Picture{Least: d.High(), Paint: func(page *paper.Page, box paper.Rect) []string { d.Draw(page, box); return nil }}},
		}})
	}
	return []block.Block{{Name: "which way to wind", Gap: 4, Keep: true, Body: block.Words{Text: "Wind this way round (0 at the left, the wire in front):"}}, {Name: "turns", Gap: 1, Body: columns}}
}

// told is a step with its figures.
type told struct {
	block.Step
	facts []block.Fact
}

// steps is the work on the strings, and then that on each pipe, in the order of the tasks. What is told once for every wrap is told at the first.
func (l lighting) steps() (bench, winding []block.Block) {
	var on, wind []told
	said := newTaskWords(l.plan)
	wound, joined := false, false
	for _, t := range l.plan.Crew.Tasks {
		in := said.of(t)
		switch t.Action {
		case crew.TestStrings:
			on = append(on, l.testStep(t, in))
		case crew.TryWrapped:
			on = append(on, told{Step: block.Step{Hold: t.Hold, Text: in.Do + " " + in.Want, Then: "Dark, bare or cracked: unwind it, wind a spare.", Sign: []block.Blank{{Word: in.Sign}}}})
		case crew.TagStrings:
			on = append(on, told{Step: block.Step{Text: in.Do}})
		case crew.FlagRows:
			wind = append(wind, told{Step: block.Step{Text: in.Do, Then: "Each by tape from the foot, never from flag to flag."}})
		case crew.JoinForWrap:
			if !joined {
				wind, joined = append(wind, told{Step: block.Step{Text: in.Do}}), true
			}
		case crew.WindPipe, crew.WindInPlace:
			if !wound {
				wind, wound = append(wind, l.windingSteps()...), true
			}
		}
	}
	number := 0
	blocks := func(list []told) (out []block.Block) {
		for _, s := range list {
			number++
			s.Number = number
			out = append(out, block.Block{Name: fmt.Sprintf("step %d", number), Gap: 1.6, Body: s.Step, Facts: s.facts})
		}
		return out
	}
	bench, winding = blocks(on), blocks(wind)
	if wound {
		winding[0].Gap = 4
	}
	return bench, winding
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
	return told{block.Step{Hold: t.Hold, Text: in.Do + " Its label: " + label + ".", Then: "A dark bulb, bare wire, a crack, heat: reject bag, no tape; a spare of its kind. None left: ask.",
		Sign: []block.Blank{{Word: in.Sign}, {Word: "spares used", Share: 0.4}}}, []block.Fact{{What: "volts on the strings' labels", Value: label}}}
}

// windingSteps is how one pipe is wound.
func (l lighting) windingSteps() (list []told) {
	step := func(text, then string, facts ...block.Fact) {
		list = append(list, told{block.Step{Text: text, Then: then}, facts})
	}
	strip := ""
	if front, back, _ := l.onEdges(); len(front)+len(back) > 0 {
		strip = "Or by the edge strip, folded at its dashes, if the top bar measures true."
	}
	give, off := l.u.Inches(practice.FlagGive(l.u)), l.u.Inches(practice.WrapEnd(l.u))
	step("Pipe on trestles. Measure from 0, tie one-knot ribbon at every flag, within "+block.Figure(give)+".", l.notYet(), block.Fact{What: "give of a flag on a pipe", Value: give})
	step(fmt.Sprintf("Start where prongs are drawn, left past the pipe’s end. %d turns fill the length printed.", lights.CountTurns), strip)
	step("Count bulbs from the prongs: at a flag the one printed, or "+block.Figure(fmt.Sprint(l.bulbGive()))+" either way.", "Number too big: turns too close. Too small: too wide. Unwind to the last good flag.")
	if slices.ContainsFunc(l.plan.Wraps, func(w lights.Wrap) bool { return len(w.Bare) > 0 }) {
		step("White band: a "+say.Or(heldBy(l.plan).pick("guy", "brace"))+" goes there. Run the wire straight, no turn.", "")
	}
	step("Ends up to "+block.Figure(off)+" short: widen the last third. Over: close up, or tie the end back.", "Farther off: unwind. Never stretch, never cut.",
		block.Fact{What: "how far a string's end may be off", Value: off})
	step("Zip ties at both ends, 1/3, 2/3. Crew lead checks the first of a kind.", "")
	step("All wound strings ticked, every plug out. Lay each pipe at its stakes.", "")
	list[len(list)-1].Sign = []block.Blank{{Word: "Lights wrapped, UNPLUGGED: signed"}}
	return list
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

// notYet names what is wound only when it is up.
func (l lighting) notYet() string {
	for _, t := range l.plan.Crew.Tasks {
		if t.Action == crew.WindInPlace {
			w := l.plan.Lights.Wraps[t.Of.Wraps[0]]
			return fmt.Sprintf("Not %v: give it and %s to the raising crew, who wind it once it is up.", w.On, say.And(w.Strings))
		}
	}
	return ""
}

// aloud is what is said before the first string is plugged in.
func (l lighting) aloud() block.Block {
	return saidAloud(fmt.Sprintf("Bring: leaf %d. Test on %s outlet, dry.", leafNumber("stock"), withArticle(device(l.plan))), "Nothing is plugged in while it is wound.")
}

// saidAloud are lines that are said aloud before the work, and who has heard them.
func saidAloud(lines ...string) block.Block {
	return block.Block{Name: "said aloud", Gap: 2, Body: block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 3, Cols: []block.Column{
		{Share: 1, Blocks: []block.Block{{Body: block.Words{Lettering: paper.Floor, Text: strings.Join(lines, "\n")}}}},
		{Width: signWide, Blocks: []block.Block{{Body: block.Blanks{{Word: "Heard by"}}}}}}}}}}}
}
