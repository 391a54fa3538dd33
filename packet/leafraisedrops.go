package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
)

// dropTable lists the drops, those alike and next to each other in one line.
func (r raising) dropTable() []block.Block {
	t, ok := r.tasks.first(crew.HangDrops, 0)
	if !ok {
		return nil
	}
	byName := map[string]lights.String{}
	for _, s := range r.Plan.Strings {
		byName[s.Name] = s
	}
	told := func(d lights.Drop) [4]string {
		s := byName[d.String]
		under, way := r.dropWay(d, s)
		return [4]string{under, way, r.u.Inches(d.Hang), s.Kind}
	}
	var rows []place.Row
	facts := []block.Fact{{What: "lowest end of a drop", Value: r.u.Inches(figureOf(t, crew.LowestDrop).Length)}}
	for drops := r.Plan.Lights.Drops; len(drops) > 0; {
		n, one := 1, told(drops[0])
		for n < len(drops) && told(drops[n]) == one {
			n++
		}
		var on []lights.Part
		var hung []numbered
		for _, d := range drops[:n] {
			if !slices.Contains(on, d.On) {
				on = append(on, d.On)
			}
			hung = append(hung, numbered{"S", byName[d.String].Number, ""})
		}
		under, names := onParts(on), inRanges(hung)
		if one[0] != "" {
			under = one[0]
		}
		rows = append(rows, place.Row{Cells: []string{names, under, one[1], one[2]}})
		facts = append(facts, block.Fact{What: "drops hang, " + names, Value: one[2]}, block.Fact{What: "drops tied, " + names, Value: one[1]})
		drops = drops[n:]
	}
	table := place.Table{Columns: []place.Column{{Head: "Drops", Lettering: paper.CellSmall}, {Head: "Under"}, {Head: "Prongs to socket"}, {Head: "Below pipe", Lettering: paper.Cell, Align: paper.AtRight, Width: 30}}}
	return []block.Block{{Name: "drops", Gap: 2, Facts: facts, Body: block.Table{Table: table, Rows: rows}}}
}

// dropWay says from where to where a drop's string is tied, its prongs first; and under what, where that is more than the part that it begins on.
func (r raising) dropWay(d lights.Drop, s lights.String) (under, way string) {
	from, to := s.From.At, s.To.At
	switch {
	case from.Spot == lights.Along && to.Spot == lights.Along && from.Part == to.Part:
		start, _ := endsOf(from.Part.Kind)
		if from.Part.Kind == lights.Ridge {
			start = "the end " + start
		}
		return "", fmt.Sprintf("%s to %s from %s", r.u.BareInches(from.Tape), r.u.Inches(to.Tape), start)
	case from.Spot == lights.AtCrown && to.Spot == lights.AtCrown && max(from.Arch-to.Arch, to.Arch-from.Arch) == 1: // many of them are alike
		return "", fmt.Sprintf("all along, toward arch %d", map[bool]int{true: r.stand[len(r.stand)-1].Number, false: r.stand[0].Number}[from.Arch < to.Arch])
	}
	return d.On.Kind.Noun(), fmt.Sprintf("%v to %v", from, to)
}
