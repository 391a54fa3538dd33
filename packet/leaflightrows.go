package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
)

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
