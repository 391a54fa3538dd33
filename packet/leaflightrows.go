package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// rowMarks shows a leg with the marks of the rows and the bulbs of the kind of string that hangs at each.
func (l lighting) rowMarks() []block.Block {
	rows := l.plan.Lights.Rows
	if len(rows) == 0 {
		return nil
	}
	kinds := draw.StringKinds(l.plan)
	longest := measure.Length(0)
	var legs []lights.Part
	for _, a := range l.plan.Arches {
		longest = max(longest, a.CrownTape)
	}
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		if slices.ContainsFunc(rows, func(r lights.Row) bool { return r.Wall == side }) {
			for _, a := range l.plan.Arches {
				legs = append(legs, lights.Leg(side, a.Number))
			}
		}
	}
	chart := draw.PipeChart{Long: longest, Start: "foot", End: "crown end", Units: l.u}
	var line draw.PipeLine
	var facts []block.Fact
	for _, r := range rows {
		if slices.Contains(chart.Marks, r.Tape) {
			continue
		}
		chart.Marks = append(chart.Marks, r.Tape)
		line.At = append(line.At, draw.PipeMark{Tape: r.Tape, Text: draw.KindDots(kinds, r.Kind)})
		facts = append(facts, block.Fact{What: fmt.Sprintf("mark of row %d", r.Number), Value: l.u.Inches(r.Tape)})
	}
	var hung []string
	for _, k := range kinds {
		if slices.ContainsFunc(rows, func(r lights.Row) bool { return r.Kind == k }) {
			hung = append(hung, draw.KindDots(kinds, k)+" "+k)
		}
	}
	ruler := block.Picture{Least: chart.RulerHeight(l.chartWide()), Paint: chart.Ruler}
	picture := block.Picture{Least: chart.LineHeight(l.chartWide(), line), Paint: func(page *paper.Page, box paper.Rect) []string { return chart.Line(page, box, line) }}
	return []block.Block{
		{Name: "rows", Gap: 3, Keep: true, Body: withWords(ruler, block.Words{Text: "Rows: flag every leg", Lettering: paper.Strong})},
		{Name: "marks of the rows", Gap: 1.5, Facts: facts, Body: withWords(picture, block.Words{Text: partsInRanges(legs) + "\n" + strings.Join(hung, "\n")})},
	}
}

// dropList lists the drops, those alike and next to each other in one line.
func (l lighting) dropList() []block.Block {
	drops := l.plan.Lights.Drops
	if len(drops) == 0 {
		return nil
	}
	byName := map[string]lights.String{}
	for _, s := range l.plan.Strings {
		byName[s.Name] = s
	}
	var rows []place.Row
	var facts []block.Fact
	for i := 0; i < len(drops); {
		d, s := drops[i], byName[drops[i].String]
		last := i
		for last+1 < len(drops) && l.dropWords(drops[last+1], byName) == l.dropWords(d, byName) {
			last++
		}
		var on []lights.Part
		var hung []numbered
		for _, one := range drops[i : last+1] {
			if !slices.Contains(on, one.On) {
				on = append(on, one.On)
			}
			hung = append(hung, numbered{"S", byName[one.String].Number, ""})
		}
		names := inRanges(hung)
		rows = append(rows, place.Row{Cells: []string{names, onParts(on), l.tied(s), l.u.Inches(d.Hang)}})
		facts = append(facts, block.Fact{What: "drops hang, " + names, Value: l.u.Inches(d.Hang)}, block.Fact{What: "drops tied, " + names, Value: l.tied(s)})
		i = last + 1
	}
	table := place.Table{Columns: []place.Column{{Head: "Drops", Lettering: paper.CellSmall}, {Head: "Under"}, {Head: "Tied, from 0"}, {Head: "Hang below pipe", Lettering: paper.Cell, Align: paper.AtRight, Width: 40}}}
	return []block.Block{{Name: "drops", Gap: 4, Facts: facts, Body: block.Table{Table: table, Rows: rows}}}
}

// dropWords is what drops share that are told in one line.
func (l lighting) dropWords(d lights.Drop, byName map[string]lights.String) string {
	return fmt.Sprint(l.u.Inches(d.Hang), l.tied(byName[d.String]), byName[d.String].Kind)
}

// tied says between which tapes of its pipe a drop is tied.
func (l lighting) tied(s lights.String) string {
	from, to := s.From.At, s.To.At
	if from.Part != to.Part || from.Spot != lights.Along || to.Spot != lights.Along {
		return "end to end"
	}
	return l.u.BareInches(from.Tape) + " to " + l.u.Inches(to.Tape)
}

// onParts lists parts of one or more nouns by their numbers: arch 1, 8; ridge 1 to 7.
func onParts(parts []lights.Part) string {
	var nouns, named []string
	called := map[string][]lights.Part{}
	for _, p := range parts {
		noun := p.Kind.Noun()
		if called[noun] == nil {
			nouns = append(nouns, noun)
		}
		called[noun] = append(called[noun], p)
	}
	for _, n := range nouns {
		named = append(named, n+" "+partsInRanges(called[n]))
	}
	return strings.Join(named, "; ")
}

// rowSteps is what the raising crew, who hang the rows, find on this leaf alone, numbered on from those before.
func (l lighting) rowSteps(before int) []block.Block {
	if len(l.plan.Lights.Rows) == 0 {
		return nil
	}
	list := []block.Step{
		{Text: "Hang only when " + say.And(append([]string{"ridge"}, heldBy(l.plan).pick("guys", "braces")...)) + " hold. Lay a wall's strings out as on the picture. Plug them together, light them, unplug."},
		{Text: "At the end arch go up the leg to the next row of the same kind, a tie every " + block.Figure(l.u.Inches(practice.ClimbTie(l.u))) + "."},
		{Text: "Sockets come where drawn, give or take " + block.Figure(l.handHigh()) + " a bay. Tie each turned down, off the ground.", Then: "Short of it: too much sag. Past it: too little."},
		l.bowStep(),
	}
	blocks := []block.Block{block.Heading(fmt.Sprintf("Rows: for the raising crew, with leaf %d", leafNumber("raise")))}
	for i, s := range list {
		s.Number = before + i + 1
		blocks = append(blocks, block.Block{Name: fmt.Sprintf("row step %d", s.Number), Gap: 1.6, Body: s})
	}
	return blocks
}

// bowStep is what to look for at the arch that the rows bow most.
func (l lighting) bowStep() block.Step {
	s := block.Step{Text: "Look from the side along the legs where rows end: straight?", Then: "Bowed in: let out sag in the bay next to it."}
	var worst lights.EndPull
	for _, e := range l.plan.Lights.Pulls {
		if e.Known && (worst.Arch == 0 || e.Bow > worst.Bow) {
			worst = e
		}
	}
	if worst.Arch != 0 {
		s.Text = fmt.Sprintf("Look from the side at arch %d, where %d rows end: bowed in by %s at most.", worst.Arch, worst.Rows, block.Figure(l.u.Inches(worst.Bow)))
	}
	return s
}
