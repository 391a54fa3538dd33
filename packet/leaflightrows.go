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

// rowWords are what the raising crew, who hang the rows, find on this leaf alone: the rest stands on theirs.
func (l lighting) rowWords() []block.Block {
	if len(l.plan.Lights.Rows) == 0 {
		return nil
	}
	give, tie := l.u.Inches(practice.RowGive(l.u)), l.u.Inches(practice.ClimbTie(l.u))
	text := fmt.Sprintf("Rows (raising crew, leaf %d): up a leg a tie every %s. Sockets come where drawn, give or take %s a bay, turned down. Short: tighten. Past it: let it sag.",
		leafNumber("raise"), block.Figure(tie), block.Figure(give))
	facts := []block.Fact{{What: "tie of a row up a leg", Value: tie}, {What: "how far a row's socket may be off", Value: give}}
	var worst lights.EndPull
	for _, e := range l.plan.Lights.Pulls {
		if e.Known && (worst.Arch == 0 || e.Bow > worst.Bow) {
			worst = e
		}
	}
	if worst.Arch != 0 {
		bow := l.u.Inches(worst.Bow)
		text += fmt.Sprintf(" Arch %d bows in by %s at most.", worst.Arch, block.Figure(bow))
		facts = append(facts, block.Fact{What: "bow of an end arch", Value: bow})
	}
	return []block.Block{{Name: "rows", Gap: 2, Body: block.Words{Text: text}, Facts: facts}}
}
