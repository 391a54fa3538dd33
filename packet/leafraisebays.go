package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
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
	body := abreast(room.W, []place.Column{{Head: "To", Lettering: paper.Strong, Width: 11}, {Head: "Tape", Lettering: paper.CellSmall, Align: paper.AtRight, Width: measure.By[paper.Length](u, 23, 29)}, {Head: "Off"}}, cells, measure.By(u, 4, 3))
	return []block.Block{
		{Name: "along the crowns", Gap: 2, Keep: true, Body: block.Words{Lettering: paper.Strong, Text: fmt.Sprintf("Along the ridge from the middle of crown 1 to crown …, within %s", u.Inches(practice.RunGive(u)))}},
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

// Room of the picture of a bay that turns, beside the table.
const (
	turnedWide paper.Length = 42
	turnedGap  paper.Length = 4
)

// bays tells how each bay turns and climbs, where the walk bends or slopes.
func (r raising) bays() []block.Block {
	u := r.spec.Units
	turns, climbs, bays := map[int]string{}, map[int]string{}, []int{}
	for _, t := range r.tasks() {
		for _, f := range t.Want {
			switch f.What {
			case crew.BayTurn:
				turns[f.Bays[0]] = turnWords(f.Angle)
			case crew.BayClimb:
				climbs[f.Bays[0]] = climbWords(u, f.Length)
			default:
				continue
			}
			if !slices.Contains(bays, f.Bays[0]) {
				bays = append(bays, f.Bays[0])
			}
		}
	}
	if len(bays) == 0 {
		return nil
	}
	slices.Sort(bays)
	var cells [][]string
	for _, bay := range bays {
		cells = append(cells, []string{fmt.Sprint(bay), turns[bay], climbs[bay]})
	}
	_, room := r.newSide(false)
	across, width, pictured := 3, room.W, r.hangs() && len(turns) > 0
	if pictured {
		across, width = 2, room.W-turnedWide-turnedGap
	}
	body := abreast(width, []place.Column{{Head: "Bay", Lettering: paper.Strong, Width: 12}, {Head: "Turns", Lettering: paper.CellSmall.Sized(11), Width: 23}, {Head: "Climbs", Lettering: paper.CellSmall.Sized(11)}}, cells, across)
	words := "Bays that turn or climb, walking in. Arches stand plumb."
	if len(turns) > 0 {
		words = "Bays that turn or climb, walking in. Half the turn is at each crown: twist its fitting that way before the piece goes in. Arches stand plumb."
	}
	list := []block.Block{{Name: "bays", Gap: 2, Keep: true, Body: block.Words{Text: words}}, {Name: "bays", Gap: 0.6, Body: body}}
	if !pictured {
		return list
	}
	picture := block.Picture{Least: 44, Paint: r.Turned}
	return []block.Block{{Name: "bays", Gap: 3, Body: block.Columns{Gap: turnedGap, Cols: []block.Column{{Width: turnedWide, Blocks: []block.Block{{Name: "a bay that turns", Body: picture}}}, {Share: 1, Blocks: list}}}}}
}

// turnWords prints which way a bay turns.
func turnWords(turn measure.Angle) string {
	if turn < 0 {
		return "left " + measure.Degrees(-turn)
	}
	return "right " + measure.Degrees(turn)
}

// climbWords prints by how much a bay climbs.
func climbWords(u measure.System, climb measure.Length) string {
	if climb < 0 {
		return "down " + u.Inches(u.Taped(-climb))
	}
	return "up " + u.Inches(u.Taped(climb))
}
