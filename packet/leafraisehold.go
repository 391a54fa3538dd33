package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// held is one figure of an arch that is measured, with how far it may be off.
type held struct {
	name, how  string
	want, give measure.Length
}

// held lists what is measured on an arch. The crown's limits are the plan's give or take; the width's come from the same causes.
func (r raising) held(k *arch.Kind) []held {
	u, n := r.spec.Units, k.Numbers[0]
	list := []held{
		{draw.FeetWord, fmt.Sprintf("L%d to R%d at the ground", n, n), u.Taped(k.Span), practice.FootGive(u)},
		{draw.CrownWord, "string between the feet, up to the pipe's middle", u.Taped(k.Crown), k.GiveOrTake(u)},
	}
	if m, ok := k.Moves(); ok && k.ShoulderWidth > 0 {
		list = append(list, held{draw.WidthWord, fmt.Sprintf("inside, %s up", u.Inches(k.ShoulderHeight)), u.Taped(k.ShoulderWidth), arch.Printed(m.Give.Shoulder, u)})
	}
	return list
}

// holds is the table of what is measured on the first arch of a group, and on the first of each kind in it where that differs in print.
func (r raising) holds(g archGroup) []block.Block {
	u := r.spec.Units
	var rows []place.Row
	var facts []block.Fact
	var told [][]held // what differs, for each kind already in the table
	for i, k := range g {
		list := r.held(k)
		if i > 0 {
			list = differing(list, r.held(g[0]))
		}
		if slices.ContainsFunc(told, func(t []held) bool { return sameFigures(t, list) }) {
			continue // measured on the first of them
		}
		told = append(told, list)
		numbers := r.alike(g, list, i)
		rows = append(rows, place.Row{Heading: r.heldOn(numbers, i > 0)})
		for _, h := range list {
			value := u.Inches(h.want)
			rows = append(rows, place.Row{Cells: []string{h.name + ": " + h.how, value, fmt.Sprintf("%s to %s", u.Inches(h.want-h.give), u.Inches(h.want+h.give)), ""}})
			facts = append(facts, block.Fact{What: h.name + ", " + say.Numbered("arch", numbers), Value: value})
		}
	}
	t := place.Table{RowMin: 8.2, Columns: []place.Column{{Head: "Measure"}, {Head: "Wanted", Lettering: paper.Cell, Align: paper.AtRight, Width: 27},
		{Head: "Go on between", Lettering: paper.CellSmall, Width: 42}, {Head: "Found", Width: 27}}}
	return []block.Block{
		{Name: "hold table", Gap: 2.5, Keep: true, Body: block.Table{Table: t, Rows: rows}, Facts: facts},
		{Name: "signed", Body: block.Blanks{{Word: "Inside the limits: signed"}, {Word: "time", Share: 0.4}}},
	}
}

// alike are the arches of the group that have the same figures in print as its i-th kind, rising.
func (r raising) alike(g archGroup, list []held, i int) []int {
	var numbers []int
	for j, k := range g {
		other := r.held(k)
		if i > 0 {
			other = differing(other, r.held(g[0]))
		} else if j > 0 {
			if len(differing(other, list)) > 0 {
				continue
			}
		}
		if j == i || i == 0 || sameFigures(other, list) {
			numbers = append(numbers, k.Numbers...)
		}
	}
	slices.Sort(numbers)
	return numbers
}

// heldOn says which arch is measured, and for which others it stands.
func (r raising) heldOn(numbers []int, differs bool) string {
	text := fmt.Sprintf("Arch %d, before any other is touched", numbers[0])
	if differs {
		text = fmt.Sprintf("Arch %d, held until it is measured; only what differs", numbers[0])
	}
	if others := numbers[1:]; len(others) > 0 {
		text += ". Stands for " + say.Numbered("arch", others)
	}
	return text
}

// differing are the figures that do not print as those of another arch.
func differing(list, from []held) []held {
	return slices.DeleteFunc(slices.Clone(list), func(h held) bool {
		return slices.ContainsFunc(from, func(o held) bool { return o.name == h.name && o.want == h.want })
	})
}

func sameFigures(a, b []held) bool {
	return slices.EqualFunc(a, b, func(x, y held) bool { return x.name == y.name && x.want == y.want })
}

// reading is a running distance along the crowns.
type reading struct {
	arch int
	want measure.Length
}

// readings are the distances along the ridge from crown 1 that are taken while the row grows: bay 1, then every third bay and the last.
func (r raising) readings() []reading {
	var list []reading
	sum := measure.Length(0)
	for i, piece := range r.plan.Ridge {
		if piece.Bay != i+1 {
			break
		}
		sum += piece.Centres
		if n := piece.Bay + 1; i == 0 || (n-1)%practice.CheckEvery == 0 || i == len(r.plan.Ridge)-1 {
			list = append(list, reading{n, sum})
		}
	}
	return list
}

// crowns is the table of running distances with room for what is found.
func (r raising) crowns() []block.Block {
	list := r.readings()
	if len(list) == 0 {
		return nil
	}
	u := r.spec.Units
	t := place.Table{RowMin: 8.2}
	const across = 3
	for range min(across, len(list)) {
		t.Columns = append(t.Columns, place.Column{Head: "Crown", Lettering: paper.Strong, Width: 15}, place.Column{Head: "Tape", Lettering: paper.Cell, Align: paper.AtRight, Width: 25}, place.Column{Head: "Found"})
	}
	rows := make([]place.Row, (len(list)+across-1)/across)
	var facts []block.Fact
	for i, g := range list {
		row := &rows[i%len(rows)]
		row.Cells = append(row.Cells, fmt.Sprint(g.arch), u.Ground(g.want), "")
		facts = append(facts, block.Fact{What: fmt.Sprintf("along the crowns, 1 to %d", g.arch), Value: u.Ground(g.want)})
	}
	for i := range rows { // nothing to write there
		for len(rows[i].Cells) < len(t.Columns) {
			rows[i].Cells = append(rows[i].Cells, " ")
		}
	}
	words := fmt.Sprintf("Tape along the ridge, from the middle of crown 1. Crown 2 within %s: a hold. The others within %s.", u.Inches(practice.BayGive(u)), u.Inches(practice.RunGive(u)))
	if len(list) == 1 {
		words = fmt.Sprintf("Tape along the ridge, from the middle of crown 1, within %s: a hold.", u.Inches(practice.BayGive(u)))
	}
	return []block.Block{
		{Name: "along the crowns", Gap: 2, Keep: true, Body: block.Words{Text: words}},
		{Name: "along the crowns", Gap: 1, Keep: true, Body: block.Table{Table: t, Rows: rows}, Facts: facts},
		{Name: "bay 1 signed", Body: block.Blanks{{Word: "Crown 2 signed"}, {Word: "time", Share: 0.4}}},
	}
}

// bays tells how each bay turns and climbs, where the walk bends or slopes.
func (r raising) bays() []block.Block {
	u, ground := r.spec.Units, r.plan.Ground
	var rows []place.Row
	var cells [][]string
	for i := 0; i+1 < len(r.stand); i++ {
		a, b := r.stand[i], r.stand[i+1]
		if b.Number != a.Number+1 {
			continue
		}
		turn := ground.Stations[b.Number-1].Heading - ground.Stations[a.Number-1].Heading
		_, _, low := ground.Site(a.Number, 0, a.Crown)
		_, _, high := ground.Site(b.Number, 0, b.Crown)
		turned, climbs := turnWords(turn), climbWords(u, high-low)
		if turned != "" || climbs != "" {
			cells = append(cells, []string{fmt.Sprint(a.Number), turned, climbs})
		}
	}
	if len(cells) == 0 {
		return nil
	}
	const across = 3
	t := place.Table{}
	for range across {
		t.Columns = append(t.Columns, place.Column{Head: "Bay", Lettering: paper.Strong, Width: 12}, place.Column{Head: "Turns", Lettering: paper.CellSmall}, place.Column{Head: "Climbs", Lettering: paper.CellSmall})
	}
	rows = make([]place.Row, (len(cells)+across-1)/across)
	for i, c := range cells {
		rows[i%len(rows)].Cells = append(rows[i%len(rows)].Cells, c...)
	}
	for i := range rows {
		for len(rows[i].Cells) < len(t.Columns) {
			rows[i].Cells = append(rows[i].Cells, " ")
		}
	}
	return []block.Block{
		{Name: "bays", Gap: 3, Keep: true, Body: block.Words{Text: "Bays that turn or climb, walking in, crown to crown. Half the turn is at each crown: twist its fitting that way before the piece goes in. Arches stand plumb."}},
		{Name: "bays", Gap: 1, Body: block.Table{Table: t, Rows: rows}},
	}
}

// turnWords prints which way a bay turns; empty where that is less than a crew sees.
func turnWords(turn measure.Angle) string {
	const seen = measure.Degree / 2
	switch {
	case turn >= seen:
		return "right " + measure.Degrees(turn)
	case turn <= -seen:
		return "left " + measure.Degrees(-turn)
	}
	return ""
}

// climbWords prints by how much a bay's crowns climb; empty where no tape shows it.
func climbWords(u measure.System, climb measure.Length) string {
	switch l := u.Taped(climb); {
	case l > 0:
		return "up " + u.Inches(l)
	case l < 0:
		return "down " + u.Inches(-l)
	}
	return ""
}
