package packet

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/power"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// takeDown prints how it comes down, in reverse order, with everything counted out.
func (b *binder) takeDown() []leaf {
	stand := b.standing()
	if len(stand) == 0 {
		return nil
	}
	f := b.newFlow("Take it down in this order, count everything out, mark it for next year.",
		"gloves, eye protection, "+b.reachWith()+"all caps, tape, marker, ties and tags, bags.")
	f.framed("Stop and ask", func(f *flow) {
		f.text("A bent arch is a spring: eye protection on, faces out of its plane, nobody under it. Frost, gusts, thunder: another day. "+b.coldRule()+" That holds for walking it out too: take the warmest hours. A pipe that is cracked, a stake that does not come, a count that does not come out.", paper.Body)
	})
	f.gap(3)
	for i, s := range b.downSteps(stand) {
		f.tickStep(i+1, s)
		if i == b.measureStep() {
			f.sagged(stand)
		}
	}
	f.stakesOut()
	f.together(tallTable, (*flow).counts)
	f.keepingTable()
	return f.leaves
}

// reachWith names the ladder where one is needed.
func (b *binder) reachWith() string {
	if b.ladder() {
		return "a stepladder, "
	}
	return ""
}

// measureStep is the index of the step under which the crowns are written down: the first, or the second where lights are unplugged before it.
func (b *binder) measureStep() int {
	if len(b.plan.Strings) > 0 {
		return 1
	}
	return 0
}

// downSteps are the take-down in order.
func (b *binder) downSteps(stand []arch.Arch) []string {
	first, last := stand[0].Number, stand[len(stand)-1].Number
	var list []string
	if len(b.plan.Strings) > 0 {
		list = append(list, fmt.Sprintf("Unplug first, at every outlet: %s. Say aloud: all unplugged.", say.And(outletNames(b.plan.Power.Feeders))))
	}
	list = append(list, "Before anything is loosened, measure these crowns from a string between the feet:")
	list = append(list, fmt.Sprintf("Mark every leg on its inside face at the foot: name and an arrow up (L%d, R%d …). It has taken a set and bends the same way next year. Number ridge pieces at both ends, arrow toward arch %d.", first, first, first))
	if len(b.plan.Power.Cords) > 0 {
		list = append(list, "Cords and taps: from the far end to the outlet, looked at along their length, coiled loosely, labelled with where they lay.")
	}
	if n := len(b.plan.Lights.Rows) + len(b.plan.Lights.Drops); n > 0 {
		list = append(list, "Drops and rows: cut ties, never wires; coil as they come, ends together, tag each with its place.")
	}
	down := fmt.Sprintf("Arches, the last first: %d, then %d, to %d.", last, last-1, first)
	if last == first {
		down = fmt.Sprintf("Arch %d.", first)
	}
	if len(b.plan.Ridge) > 0 {
		down += " One person holds the arch. Ridge piece out of the older crown, then out of this one."
	}
	if _, guys := b.stakeCounts(); guys > 0 {
		down += fmt.Sprintf(" Slacken an arch's guys only when it is next; those of arch %d last of all.", first)
	}
	down += " Two at the feet, one at the crown: right foot off, cap on its stake at once, walk it out slowly until the pipe lies straight; left foot off, cap on."
	list = append(list, down)
	if len(b.plan.Wraps) > 0 {
		list = append(list, "Wraps come off on trestles, once the pipe lies straight: unwind toward the plug, do not pull.")
	}
	switch b.spec.Arch.Joints {
	case spec.Pinned:
		list = append(list, "Screws out of the sockets, counted into a bag, then the crowns apart.")
	case spec.Dry:
		list = append(list, "Crowns apart: twist and pull. A socket that is stuck: warm water, never a hammer.")
	}
	legs, guys := b.stakeCounts()
	list = append(list, fmt.Sprintf("Stakes out, capped to the last moment: twist with a grip, pull straight. Tick each below, %d of %d: one left in the grass hurts someone next summer. Fill the holes.", legs+guys, legs+guys))
	return append(list, "Look at every pipe and fitting: one with a crack or a white line is cut through and thrown away. Everything dry before it is stored.")
}

// sagged sets the crowns as they were to be, as they are expected late, and a blank for what is found.
func (f *flow) sagged(stand []arch.Arch) {
	u := f.b.spec.Units
	picks := []int{0, len(stand) / 2, len(stand) - 1}
	var rows []place.Row
	for i, k := range picks {
		if i > 0 && k == picks[i-1] {
			continue
		}
		a := stand[k]
		rows = append(rows, place.Row{Cells: []string{fmt.Sprintf("Arch %d", a.Number), u.Inches(a.Crown), u.Inches(a.SeasonCrown), ""}})
	}
	f.table(place.Table{RowMin: 8.5, Columns: []place.Column{{Head: "Crown of", Width: 30, Lettering: paper.Strong}, {Head: "Planned, as raised", Lettering: paper.Cell, Width: 46}, {Head: "Expected now", Lettering: paper.Cell, Width: 46}, {Head: "Found"}}}, rows)
	f.gap(2)
}

// stakesOut sets a box to tick for every stake.
func (f *flow) stakesOut() {
	const wide, high paper.Length = 23, 8
	legs, guys := f.b.stakeCounts()
	f.heading(fmt.Sprintf("Stakes out: ______ of %d", legs+guys), 2*high)
	across := int(f.room.W / wide)
	stakes := f.b.plan.Stakes
	for i := 0; i < len(stakes); i += across {
		r := f.take(high)
		for k, s := range stakes[i:min(i+across, len(stakes))] {
			x := r.X + paper.Length(k)*wide
			f.page.TickBox(paper.Point{X: x + 0.35, Y: r.Y + 0.5})
			f.page.Text(paper.Point{X: x + paper.TickBoxSide + 2, Y: r.Y + 5.2}, paper.AtLeft, clip(s.String(), paper.CellSmall, wide-paper.TickBoxSide-3), paper.CellSmall)
		}
	}
	f.gap(2)
}

// counts sets what must come back, with a box to tick and a blank for the count.
func (f *flow) counts() {
	var list []stored
	for _, it := range f.b.inventory() {
		if !it.named { // those are ticked one by one above
			list = append(list, it)
		}
	}
	f.heading("Counted in", 30)
	f.table(place.Table{Columns: beside(place.Column{Tick: true, Width: 9.8}, place.Column{Head: "What", Lettering: paper.Floor},
		place.Column{Head: "There are", Width: 15, Align: paper.AtRight, Lettering: paper.CellSmall}, place.Column{Head: "Came back", Width: 18})}, inTwo(list, func(it stored) []string {
		return []string{"", it.item, fmt.Sprint(it.count), ""}
	}))
	f.gap(3)
}

// beside repeats the columns of a table for two lists beside each other.
func beside(columns ...place.Column) []place.Column { return append(columns, columns...) }

// inTwo sets a list as two columns of cells beside each other, the first half at the left.
func inTwo[T any](list []T, cells func(T) []string) []place.Row {
	half := (len(list) + 1) / 2
	rows := make([]place.Row, half)
	for i := range rows {
		rows[i].Cells = cells(list[i])
		if half+i < len(list) {
			rows[i].Cells = append(rows[i].Cells, cells(list[half+i])...)
		} else { // nothing to tick there
			for range rows[i].Cells {
				rows[i].Cells = append(rows[i].Cells, " ")
			}
		}
	}
	return rows
}

// keepingTable says how things are bundled and stored.
func (f *flow) keepingTable() {
	f.heading("Bundle, label, store", 40)
	var lines []string
	for _, k := range f.b.keeping() {
		lines = append(lines, fmt.Sprintf("%s: %s %s", k.what, k.why, k.do))
	}
	f.ticks(lines)
	f.text("Counted and stored by __________________   on ____________   kept at __________________", paper.Body)
}

// outletNames are the outlets that something is plugged into.
func outletNames(feeders []power.Feeder) []string {
	var names []string
	seen := map[string]bool{}
	for _, f := range feeders {
		if !seen[f.Outlet] {
			seen[f.Outlet] = true
			names = append(names, f.Outlet)
		}
	}
	return names
}
