package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// crowns is the table of the running distances that are not in the table of holds, with room for what is found.
func (r raising) crowns() []block.Block {
	list := r.readings()[r.readingsHeld():]
	if len(list) == 0 {
		return nil
	}
	u := r.spec.Units
	var cells [][]string
	var facts []block.Fact
	for _, g := range list {
		cells = append(cells, []string{fmt.Sprint(g.arch), u.Ground(g.want), ""})
		facts = append(facts, block.Fact{What: fmt.Sprintf("along the crowns, 1 to %d", g.arch), Value: u.Ground(g.want)})
	}
	_, room := r.newSide(false)
	body := abreast(room.W, []place.Column{{Head: "To", Lettering: paper.Strong, Width: 9}, {Head: "Tape", Lettering: paper.CellSmall, Align: paper.AtRight, Width: measure.By[paper.Length](u, 22, 28)}, {Head: "Found"}}, cells, measure.By(u, 4, 3))
	return []block.Block{
		{Name: "along the crowns", Gap: 2, Keep: true, Body: block.Words{Lettering: paper.Strong, Text: fmt.Sprintf("Step %d: the same way, always from crown 1, within %s", r.stepNumbers()[crew.RaiseRest], u.Inches(practice.RunGive(u)))}},
		{Name: "along the crowns", Gap: 0.6, Body: body, Facts: facts},
	}
}

// abreast sets a long table of few columns as several beside each other, each read to its foot.
// The last column takes what the others leave of its share of the width.
func abreast(width paper.Length, columns []place.Column, cells [][]string, most int) block.Table {
	across := min(most, len(cells))
	last := &columns[len(columns)-1]
	last.Width = width / paper.Length(across)
	for _, c := range columns[:len(columns)-1] {
		last.Width -= c.Width
	}
	t := block.Table{Rows: make([]place.Row, (len(cells)+across-1)/across)}
	for range across {
		t.Columns = append(t.Columns, columns...)
	}
	for i, c := range cells {
		row := &t.Rows[i%len(t.Rows)]
		row.Cells = append(row.Cells, c...)
	}
	for i := range t.Rows { // nothing to write there
		for len(t.Rows[i].Cells) < len(t.Columns) {
			t.Rows[i].Cells = append(t.Rows[i].Cells, " ")
		}
	}
	return t
}

// bays says which bays turn and climb, where the walk bends or slopes: the stakes set both.
func (r raising) bays() []block.Block {
	turning := map[bool][]int{} // by whether they turn left
	var climbs []measure.Length
	for _, t := range r.tasks() {
		for _, f := range t.Want {
			switch f.What {
			case crew.BayTurn:
				turning[f.Angle < 0] = append(turning[f.Angle < 0], f.Bays[0])
			case crew.BayClimb:
				climbs = append(climbs, f.Length)
			}
		}
	}
	var words []string
	for _, left := range []bool{false, true} {
		if n := turning[left]; len(n) > 0 {
			slices.Sort(n)
			words = append(words, fmt.Sprintf("%s %s %s", say.Numbered("bay", slices.Compact(n)), say.Agree(len(n), "turns", "turn"), map[bool]string{false: "right", true: "left"}[left]))
		}
	}
	if len(climbs) > 0 {
		words = append(words, r.climbing(climbs))
	}
	if len(words) == 0 {
		return nil
	}
	text := say.Capital(strings.Join(words, ", ")) + ": the stakes set it. Arches stand plumb."
	if len(turning) > 0 {
		text += " Turn each fitting half the bay’s turn."
	}
	return []block.Block{{Name: "bays", Gap: 2.5, Body: block.Words{Text: text}}}
}

// climbing says by how much bays climb: one figure where all climb alike, else from the least to the most.
func (r raising) climbing(climbs []measure.Length) string {
	u := r.spec.Units
	least, most := u.Taped(slices.Min(climbs)), u.Taped(slices.Max(climbs))
	verb := func(l measure.Length) string {
		if l < 0 {
			return "falls " + u.Inches(-l)
		}
		return "climbs " + u.Inches(l)
	}
	switch {
	case len(climbs) < len(r.plan.Ridge):
		return "some bays climb or fall"
	case least == most:
		return "every bay " + verb(most)
	}
	return fmt.Sprintf("a bay %s to %s", verb(least), verb(most))
}
