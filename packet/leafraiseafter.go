package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/say"
)

// after is what comes when all arches stand: measuring arches of another shape, sockets or a line along the crowns, caps, the way through. Where
// it finds no room beside the pictures it says more, on the next side. next is the number that follows.
func (r raising) after(number int) (list []block.Block, next int) {
	for _, t := range r.tasks() {
		step := r.step(t)
		if step.Text == "" {
			continue
		}
		step.Number, step.Hold = number, t.Hold
		short := step
		short.Then = ""
		list = append(list, block.Block{Name: fmt.Sprintf("step %d", number), Gap: 1.2, Rank: block.Should, Body: step, Short: short})
		number++
	}
	return list, number
}

// climbs says who works at the crowns.
func (r raising) climbs() string {
	if r.ladder() {
		return "Ladder up, Crown at its foot"
	}
	return "Ladder, from the ground"
}

// step writes a task that has no picture; it is empty for those that have one.
func (r raising) step(t crew.Task) block.Step {
	switch t.Action {
	case crew.MeasureArch:
		if own := r.measuredApart(); len(own) > 0 && t.Of.Arches[0] == own[0] {
			return block.Step{Text: fmt.Sprintf("%s %s: own profile and table, on the next sheets. Hold it as it stands, measure, %s there.", say.Agree(len(own), "Arch", "Arches"), block.Figure(say.Numbers(own)), block.Figure("sign")),
				Then: "If not: the faults on the front, in order."}
		}
	case crew.WindInPlace:
		if len(r.stand) > 2 {
			return block.Step{} // told before the third arch
		}
		return block.Step{Text: r.wrapInPlace() + r.climbs() + "."}
	case crew.RunCrownLine, crew.ScrewSockets, crew.GlueSockets:
		return r.sockets(t.Action)
	case crew.SightAlong:
		return r.sight(t)
	case crew.TryOpening:
		if r.hangs() {
			return block.Step{} // when rows and drops hang
		}
		return block.Step{Text: walkThrough(), Then: hangsIn}
	}
	return block.Step{}
}

// measuredApart lists the arches that are measured for themselves though they are not the first.
func (r raising) measuredApart() []int {
	var list []int
	for _, t := range r.tasks() {
		if t.Action == crew.MeasureArch && t.Of.Arches[0] != r.stand[0].Number {
			list = append(list, t.Of.Arches[0])
		}
	}
	return list
}

// sockets holds the sockets, each in its way.
func (r raising) sockets(action crew.Action) block.Step {
	switch action {
	case crew.ScrewSockets:
		return block.Step{Text: "One screw through every socket, from the outside, " + r.climbs() + ".", Then: "A point stands out inside: file it flush."}
	case crew.GlueSockets:
		return block.Step{Text: "Prime and cement the sockets one by one, " + r.climbs() + ". Open air, no flame, gloves on.", Then: "A cemented joint does not come apart: cut it out."}
	}
	return block.Step{Text: fmt.Sprintf("Crown line, crown %s to %s: turn and knot at each fitting, hand tight.", block.Figure("1"), block.Figure(fmt.Sprint(r.stand[len(r.stand)-1].Number))),
		Then: "Slack: knot again."}
}

// sight has the whole looked along and the caps counted.
func (r raising) sight(t crew.Task) block.Step {
	text, off := "Look along: nothing leans.", "It leans: stop, ask."
	if len(t.Of.Stakes) > 0 {
		if heldBy(r.plan).guys {
			text += " Tighten guys alike."
			off = "Leans: slacken one guy, draw the other."
		}
		text += " A ribbon on each."
	}
	return block.Step{Text: text + " Count caps, " + block.Figure("sign") + ".", Then: off + " Cap missing: find the bare stake."}
}

// hangs reports whether rows or drops are hung on the arches that stand.
func (r raising) hangs() bool { return len(r.plan.Lights.Rows)+len(r.plan.Lights.Drops) > 0 }

// hung are the pictures of what is hung when all arches stand, of a bay that turns, and of the walk through.
func (r raising) hung(number int) []panel {
	var list []panel
	add := func(p panel) {
		p.number = number + len(list)
		list = append(list, p)
	}
	if t, ok := r.task(crew.HangRows, 0); ok {
		add(r.rows(t))
	}
	if t, ok := r.task(crew.HangDrops, 0); ok {
		low, _ := wantedOf(t, crew.LowestDrop)
		add(panel{action: crew.HangDrops, large: true, do: fmt.Sprintf("Drops, with no power. %s. No end lower than %s. Strings: leaf %d.", r.climbs(), block.Figure(r.spec.Units.Inches(low.Length)), leafNumber("lights")),
			off: "If not: take up slack with a tie at the pipe.", facts: []block.Fact{{What: "lowest end of a drop", Value: r.spec.Units.Inches(low.Length)}}, paint: func(page *paper.Page, room paper.Rect) []string { return r.Dropped(page, room, r.ladder()) }})
	}
	if _, ok := r.task(crew.TryOpening, 0); ok {
		add(panel{action: crew.TryOpening, large: true, do: walkThrough(), hold: true, off: hangsIn, paint: func(page *paper.Page, room paper.Rect) []string { return r.WalkedThrough(page, room) }})
	}
	return list
}

// hangsIn is what is done where the sticks touch.
const hangsIn = "Lights: tie up. Pipe touches: ask."

// walkThrough says how the opening is tried: a stick across the top of another has its two upper corners.
func walkThrough() string {
	return "Sticks through every arch, one across the other’s top. Nothing touches: " + block.Figure("sign") + "."
}

// rows hangs the rows of all walls.
func (r raising) rows(t crew.Task) panel {
	sag, _ := wantedOf(t, crew.Sag)
	hangs := r.spec.Units.Inches(sag.Length)
	do := fmt.Sprintf("Rows, with no power: as the table below, from its first arch, prongs first; at the end up the leg. A tie at every flag; at mid bay it hangs %s, no more. The strings’ ends: leaf %d.", block.Figure(hangs), leafNumber("lights"))
	if slices.ContainsFunc(t.Uses, func(n crew.Need) bool { return n.Thing == crew.Stepladder }) {
		do += " High ones: " + r.climbs() + "."
	}
	p := r.plan.Lights.Paths[0]
	return panel{action: crew.HangRows, large: true, do: do, off: "Tight: let out slack, never stretch a string.", facts: []block.Fact{{What: "sag of a row in a bay", Value: hangs}},
		paint: func(page *paper.Page, room paper.Rect) []string {
			from, to := r.ends(p)
			return r.Rows(page, room, from, to)
		}}
}

// ends are the arches that a way of rows begins and turns at: its first row may run back.
func (r raising) ends(p lights.Path) (from, to int) {
	for _, row := range r.plan.Lights.Rows {
		if row.Wall == p.Wall && row.Number == p.Rows[0] && row.Back {
			return p.Last, p.First
		}
	}
	return p.First, p.Last
}

// rowTable lists the ways that strings take along the rows, with their names in the order they are hung, and the flags that the rows are tied at.
func (r raising) rowTable() []block.Block {
	if len(r.plan.Lights.Paths) == 0 {
		return nil
	}
	var rows []place.Row
	for _, p := range r.plan.Lights.Paths {
		from, to := r.ends(p)
		var way []string
		for i, n := range p.Rows {
			way = append(way, fmt.Sprintf("%d to arch %d", n, [2]int{to, from}[i%2]))
		}
		var names []numbered
		for _, s := range r.plan.Strings {
			if slices.Contains(p.Strings, s.Name) {
				names = append(names, numbered{"S", s.Number, ""})
			}
		}
		rows = append(rows, place.Row{Cells: []string{say.Capital(p.Wall.String()), fmt.Sprint(from), strings.Join(way, ", "), inRanges(names), p.Kind}})
	}
	var flags []string
	seen := map[int]bool{}
	for _, row := range r.plan.Lights.Rows {
		if !seen[row.Number] {
			seen[row.Number] = true
			flags = append(flags, fmt.Sprintf("row %d %s", row.Number, r.spec.Units.Inches(row.Tape)))
		}
	}
	table := place.Table{Columns: []place.Column{{Head: "Wall", Width: 15}, {Head: "From arch", Lettering: paper.CellSmall, Width: 24}, {Head: "Rows"}, {Head: "Strings", Lettering: paper.CellSmall, Width: 30}, {Head: "Kind", Width: 43}}}
	return []block.Block{
		{Name: "rows", Gap: 3, Keep: true, Body: block.Words{Text: "Flags, up each leg: " + strings.Join(flags, ", ") + "."}},
		{Name: "ways of the rows", Gap: 1.5, Body: block.Table{Table: table, Rows: rows}},
	}
}
