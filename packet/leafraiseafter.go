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
		return block.Step{Text: fmt.Sprintf("Ridge piece %s gets its lights in place, %s (leaf %d). The others go up with theirs on.", block.Figure("1"), r.climbs(), leafNumber("lights"))}
	case crew.RunCrownLine, crew.ScrewSockets, crew.GlueSockets:
		return r.sockets(t.Action)
	case crew.SightAlong:
		return r.sight(t)
	case crew.TryOpening:
		if r.hangs() {
			return block.Step{} // when rows and drops hang
		}
		return block.Step{Text: "Walk two sticks through, upright and across. Nothing touches. " + block.Figure("Sign") + " the front.",
			Then: "If not: tie up what hangs in. Pipe in the way: ask before anyone walks through."}
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
	return block.Step{Text: fmt.Sprintf("Dry ridge sockets: a line along the crowns, %s to %s, knotted round each fitting, hand tight, %s. Or one screw in each socket.",
		block.Figure("1"), block.Figure(fmt.Sprint(r.stand[len(r.stand)-1].Number)), r.climbs()), Then: "A socket not home: drive it home before the line is tied."}
}

// sight has the whole looked along and the caps counted.
func (r raising) sight(t crew.Task) block.Step {
	text := "Sight along ridge and feet from each end"
	if len(t.Of.Stakes) > 0 {
		text += ", draw guys even"
	}
	return block.Step{Text: text + ". Count caps, " + block.Figure("sign") + " the front.", Then: "A cap missing: a stake stands bare. Find it. Guy stakes stay capped."}
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
		add(panel{do: "Walk two sticks through, upright and across. Nothing touches. " + block.Figure("Sign") + " the front.", hold: true,
			off: "If not: tie up what hangs in. Pipe in the way: ask.", paint: func(page *paper.Page, room paper.Rect) []string { return r.WalkedThrough(page, room) }})
	}
	return list
}

// rows hangs the rows of all walls.
func (r raising) rows(t crew.Task) panel {
	sag, _ := wantedOf(t, crew.Sag)
	do := fmt.Sprintf("Rows, unplugged, from the middle arch out. A tie at every flag, %s of sag a bay. Strings: leaf %d.", block.Figure(r.spec.Units.Inches(sag.Length)), leafNumber("lights"))
	if slices.ContainsFunc(t.Uses, func(n crew.Need) bool { return n.Thing == crew.Stepladder }) {
		do += " High ones: " + r.climbs() + "."
	}
	return panel{do: do, off: "Tight: let out slack, never stretch a string.", facts: []block.Fact{{What: "sag of a row in a bay", Value: r.spec.Units.Inches(sag.Length)}}, paint: func(page *paper.Page, room paper.Rect) []string { return r.Rows(page, room) }}
}
