package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
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
	return []block.Block{{Name: "which way to wind", Gap: 4, Keep: true, Body: block.Words{Text: "Wind this way round, the zero end at the left:"}}, {Name: "turns", Gap: 1, Body: columns}}
}

// steps is the work on the strings and on each pipe, in the order of the tasks. What is told once for every wrap is told at the first.
func (l lighting) steps() []block.Block {
	var list []block.Step
	said := newTaskWords(l.plan)
	wound, joined := false, false
	for _, t := range l.plan.Crew.Tasks {
		in := said.of(t)
		switch t.Action {
		case crew.TestStrings:
			list = append(list, block.Step{Hold: t.Hold, Text: in.Do + " " + in.Want, Then: in.IfOff, Sign: []block.Blank{{Word: in.Sign}, {Word: "spares used", Share: 0.4}}})
		case crew.TagStrings:
			list = append(list, block.Step{Text: in.Do + " The picture shows where it goes."})
		case crew.FlagRows:
			list = append(list, block.Step{Text: in.Do, Then: in.IfOff})
		case crew.JoinForWrap:
			if !joined {
				list, joined = append(list, block.Step{Text: in.Do}), true
			}
		case crew.WindPipe, crew.WindInPlace:
			if !wound {
				list, wound = append(list, l.windingSteps()...), true
			}
		}
	}
	var blocks []block.Block
	for i, s := range list {
		s.Number = i + 1
		blocks = append(blocks, block.Block{Name: fmt.Sprintf("step %d", s.Number), Gap: 1.6, Body: s})
	}
	if len(blocks) > 0 {
		blocks[0].Gap = 4
		blocks[0].Facts = []block.Fact{{What: "give of a flag on a pipe", Value: l.give()}}
	}
	return blocks
}

// give is how far a flag may be off.
func (l lighting) give() string { return l.u.Inches(practice.FlagGive(l.u)) }

// guyed reports whether a wrap leaves a band bare.
func (l lighting) guyed() bool {
	return slices.ContainsFunc(l.plan.Wraps, func(w lights.Wrap) bool { return len(w.Bare) > 0 })
}

// bandStep is what is done where a guy or a brace will be.
func (l lighting) bandStep() string {
	return "White band: a " + say.Or(heldBy(l.plan).pick("guy", "brace")) + " goes there. Run the wire straight along it, no turn."
}

// windingSteps is how one pipe is wound.
func (l lighting) windingSteps() []block.Step {
	list := []block.Step{
		{Text: "Lay the pipe on trestles. Flag it by tape from its zero, within " + block.Figure(l.give()) + ".", Then: l.notYet()},
		{Text: "Tie the prongs at the end drawn (black bar). Wind to the ten-turn figure."},
		{Text: "At each flag: the bulb drawn, counted from its prongs, or " + block.Figure(fmt.Sprint(practice.BulbGive)) + " either way.", Then: "Higher: turns too close. Lower: too wide. Unwind to the last flag that was right."},
	}
	if front, back, _ := l.onEdges(); len(front)+len(back) > 0 {
		list[len(list)-2].Then = "The strip at this sheet's edge has a stroke for each turn: fold it back, lay it on the pipe."
	}
	if l.guyed() {
		list = append(list, block.Step{Text: l.bandStep()})
	}
	return append(list, block.Step{Text: "Tie both ends and each third of the way. Check the first of each kind."})
}

// notYet names what is wound only when it is up.
func (l lighting) notYet() string {
	for _, t := range l.plan.Crew.Tasks {
		if t.Action == crew.WindInPlace {
			return fmt.Sprintf("Not %v: it is wound once it is up (leaf %d).", l.plan.Lights.Wraps[t.Of.Wraps[0]].On, leafNumber("raise"))
		}
	}
	return ""
}

// endsElsewhere says what to do with a string that does not end where it should.
func (l lighting) endsElsewhere() []block.Block {
	if len(l.plan.Wraps) == 0 {
		return nil
	}
	hand := l.handHigh()
	table := place.Table{Columns: []place.Column{{Head: "The string ends", Width: 44}, {Head: "Do"}}}
	rows := []place.Row{
		{Cells: []string{"up to " + hand + " short", "Open the last third of the turns. Never stretch it."}},
		{Cells: []string{"farther short", "Unwind to the last right flag. Wind on wider."}},
		{Cells: []string{"up to " + hand + " long", "Close the last turns, or tie the end back along the pipe."}},
		{Cells: []string{"farther long", "Unwind to the last right flag. Wind on closer. Never cut."}},
	}
	return []block.Block{{Name: "where a string ends elsewhere", Gap: 4, Rank: block.May, Body: block.Table{Table: table, Rows: rows}, Facts: []block.Fact{{What: "how far a string's end may be off", Value: hand}}}}
}

// aloud is what is said before the first string is plugged in.
func (l lighting) aloud() block.Block {
	lines := []string{
		"Say aloud: 1. We test on an outlet with " + withArticle(device(l.volts())) + ". Nothing is plugged in while we wind or hang.",
		"2. Bare wire, cracked socket, broken bulb: reject bag, no tape. A string that gets warm: unplug, ask.",
		"3. Prongs facing prongs: turn the string round, there is no adaptor. Two kinds at one joint: stop, ask.",
	}
	var blocks []block.Block
	for _, line := range lines {
		blocks = append(blocks, block.Block{Gap: 0.6, Body: block.Words{Text: line}})
	}
	blocks = append(blocks, block.Block{Body: block.Blanks{{Word: "Heard by all: signed"}}})
	return block.Block{Name: "said aloud", Gap: 3, Body: block.Framed{Blocks: blocks}}
}
