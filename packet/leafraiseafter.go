package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
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
		return block.Step{Text: fmt.Sprintf("Ridge 1: its lights. %s (leaf %d).", r.climbs(), leafNumber("lights"))}
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
	from := "A"
	if r.ladder() {
		from = "From the ladder: a"
	}
	return block.Step{Text: fmt.Sprintf("%s line along crowns %s to %s, knotted round each fitting, hand tight.", from, block.Figure("1"), block.Figure(fmt.Sprint(r.stand[len(r.stand)-1].Number)))}
}

// sight has the whole looked along and the caps counted.
func (r raising) sight(t crew.Task) block.Step {
	text := "Look along ridge and feet."
	if len(t.Of.Stakes) > 0 {
		if heldBy(r.plan).guys {
			text += " Tighten guys alike."
		}
		text += " A ribbon on each."
	}
	return block.Step{Text: text + " Count caps, " + block.Figure("sign") + ".", Then: "A cap missing: a stake stands bare. Find it."}
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
		add(panel{do: fmt.Sprintf("Drops, unplugged. %s. No end lower than %s. Strings: leaf %d.", r.climbs(), block.Figure(r.spec.Units.Inches(low.Length)), leafNumber("lights")),
			off: "If not: take up slack with a tie at the pipe.", facts: []block.Fact{{What: "lowest end of a drop", Value: r.spec.Units.Inches(low.Length)}}, paint: func(page *paper.Page, room paper.Rect) []string { return r.Dropped(page, room, r.ladder()) }})
	}
	if _, ok := r.task(crew.TryOpening, 0); ok {
		add(panel{do: walkThrough(), hold: true, off: hangsIn, paint: func(page *paper.Page, room paper.Rect) []string { return r.WalkedThrough(page, room) }})
	}
	return list
}

// hangsIn is what is done where the sticks touch.
const hangsIn = "Touches: tie up what hangs in. Pipe: ask."

// walkThrough says how the opening is tried: a stick across the top of another has its two upper corners.
func walkThrough() string {
	return "Opening sticks through, one across the top of the other. Nothing touches: " + block.Figure("sign") + "."
}

// rows hangs the rows of all walls.
func (r raising) rows(t crew.Task) panel {
	sag, _ := wantedOf(t, crew.Sag)
	most := 0
	for _, row := range r.plan.Lights.Rows {
		most = max(most, row.Number)
	}
	do := fmt.Sprintf("Rows, unplugged: %s a wall, from the middle arch out. A tie at every flag, %s of sag a bay. Strings: leaf %d.", block.Figure(fmt.Sprint(most)), block.Figure(r.spec.Units.Inches(sag.Length)), leafNumber("lights"))
	if slices.ContainsFunc(t.Uses, func(n crew.Need) bool { return n.Thing == crew.Stepladder }) {
		do += " High ones: " + r.climbs() + "."
	}
	return panel{do: do, off: "Tight: let out slack, never stretch a string.", facts: []block.Fact{{What: "sag of a row in a bay", Value: r.spec.Units.Inches(sag.Length)}}, paint: func(page *paper.Page, room paper.Rect) []string { return r.Rows(page, room) }}
}
