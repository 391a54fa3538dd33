package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// holdPoint is the table of what is measured on the first arch of each group before the others are made.
func (b *binder) holdPoint(f *flow, groups []archGroup) {
	u := b.spec.Units
	var rows []place.Row
	for _, g := range groups {
		k := g[0]
		title := say.Capital(say.Numbered("arch", k.Numbers[:1]))
		if n := g.numbers(); len(n) > 1 {
			title += ", before any other of " + say.Numbered("arch", n)
		}
		rows = append(rows, place.Row{Heading: title})
		give := k.GiveOrTake(u)
		rows = append(rows, limits(u, "Stake to stake at the ground", k.Span, ground.CheckLimit(u)),
			limits(u, "Crown, from a string foot to foot up to the pipe's middle", k.Crown, give))
		if m, ok := k.Moves(); ok && k.ShoulderWidth > 0 {
			rows = append(rows, limits(u, fmt.Sprintf("Clear between the legs, %s up", u.Inches(k.ShoulderHeight)), k.ShoulderWidth, arch.Printed(m.Give.Shoulder, u)))
		}
		rows = append(rows, place.Row{Cells: []string{"Clear under the crown", u.Inches(k.Clear), fmt.Sprintf("%s or more", u.Inches(max(k.Clear-give, 0))), ""}})
	}
	t := place.Table{Columns: []place.Column{{Head: "Measure"}, {Head: "Plan", Lettering: paper.Cell, Align: paper.AtRight},
		{Head: "Go on between", Lettering: paper.CellSmall}, {Head: "Measured", Width: 32}}, RowMin: 9}
	f.heading("Hold point: measure and write down", min(t.Height(f.room.W, rows)+8, tallTable))
	f.table(t, rows)
	f.gap(1)
	f.signLine("Inside all limits: measured by", "time")
	f.gap(1)
	f.text("All the others: both feet on the ground; the crown of every third within these limits.", paper.Body)
}

// tallTable is the height from which a table is not kept on one page.
const tallTable paper.Length = 120

// limits is a row of a figure with the limits about it.
func limits(u measure.System, name string, plan, give measure.Length) place.Row {
	return place.Row{Cells: []string{name, u.Inches(plan), u.Inches(plan-give) + " and " + u.Inches(plan+give), ""}}
}

// differences says what to look at where the arch comes out otherwise, and how much each does.
func (b *binder) differences(f *flow, k *arch.Kind) {
	m, ok := k.Moves()
	if !ok {
		return
	}
	u := b.spec.Units
	by := u.Inches(m.By)
	row := func(look, state string, move arch.Move, mend string) place.Row {
		return place.Row{Cells: []string{look, state, b.moved(move.Crown, "up", "down"), b.moved(move.Shoulder, "wider", "narrower"), mend}}
	}
	rows := []place.Row{row("Feet", "one foot "+by+" off the ground", arch.Move{Crown: m.By / 2}, "Press it down; wipe the stake.")}
	if !k.Spec.OneStick {
		rows = append(rows, row("Sockets, sticks", by+" of pipe too much", m.Long, "Drive the sockets home; measure the sticks."))
	} else {
		rows = append(rows, row("Stick", by+" of pipe too much", m.Long, "Measure the stick."))
	}
	if m.Lean != (arch.Move{}) {
		rows = append(rows, row("Stakes' tops", "both "+by+" too far out", m.Lean, "Pull and drive again, beside the hole."))
	}
	rows = append(rows, row("Span", by+" too wide", m.Wider, "Drive one stake again on its dot."))
	if m.Rock != (arch.Move{}) {
		rows = append(rows, row("Crown joint", "bent 1°, peaked", m.Rock, "Turn the fitting, or take another."))
	}
	t := place.Table{Columns: []place.Column{{Head: "Look at"}, {Head: "If"}, {Head: "Crown", Lettering: paper.CellSmall},
		{Head: "Width " + u.Inches(k.ShoulderHeight) + " up", Lettering: paper.CellSmall}, {Head: "Then"}}}
	f.heading("If it comes out different", t.Height(f.room.W, rows)+15)
	f.text("Look in this order, put right, measure again. The opposite fault does the opposite.", paper.Body)
	f.gap(1)
	f.table(t, rows)
	f.gap(2)
	f.text("Still outside: stop and ask the organiser. Raise no other arch, force nothing.", paper.Strong)
}

// moved prints by how much a figure moves and which way.
func (b *binder) moved(l measure.Length, more, less string) string {
	word := more
	if l < 0 {
		l, word = -l, less
	}
	s := b.spec.Units.Inches(l)
	if s == b.spec.Units.Inches(0) {
		return "none"
	}
	return s + " " + word
}

// archFigures is the table of every kind's figures, those that print alike on one line.
func (b *binder) archFigures(f *flow) {
	u, first := b.spec.Units, b.plan.Kinds[0]
	word := measure.By(u, "inches", "millimetres")
	var lines [][]string
	var numbers [][]int // of the arches with each line
	for _, k := range b.plan.Kinds {
		var line []string
		for _, l := range []measure.Length{k.Span, k.Crown, k.Clear, k.ShoulderWidth, k.HeadWidth, k.Widest, k.BendRadius} {
			line = append(line, u.BareInches(l))
		}
		at := slices.IndexFunc(lines, func(o []string) bool { return slices.Equal(o, line) })
		if at < 0 {
			at, lines, numbers = len(lines), append(lines, line), append(numbers, nil)
		}
		numbers[at] = append(numbers[at], k.Numbers...)
	}
	var rows []place.Row
	for i, line := range lines {
		slices.Sort(numbers[i])
		rows = append(rows, place.Row{Cells: append([]string{say.Numbers(numbers[i])}, line...)})
	}
	heads := []string{"Span", "Crown", "Clear under it", "Clear " + u.BareInches(first.ShoulderHeight) + " up", "Clear " + u.BareInches(first.HeadHeight) + " up", "Widest", "Bend radius"}
	const names = 30
	t := place.Table{Columns: []place.Column{{Head: "Arches", Lettering: paper.CellSmall, Width: names}}}
	for _, head := range heads {
		t.Columns = append(t.Columns, place.Column{Head: head, Lettering: paper.CellSmall, Align: paper.AtRight, Width: (f.room.W - names) / paper.Length(len(heads))})
	}
	f.heading("The figures of all arches, in "+word, min(t.Height(f.room.W, rows), tallTable))
	f.table(t, rows)
}

// archFindings prints what was found of the arches, of each kind of finding the first two: uneven ground may give every arch its own.
func (b *binder) archFindings(f *flow) {
	const most = 2
	seen := map[string]int{}
	var codes []string // in the order they are met
	for _, x := range b.plan.Findings {
		if x.Sheet != "arch" || x.Level == finding.Note {
			continue
		}
		if seen[x.Code]++; seen[x.Code] == 1 {
			codes = append(codes, x.Code)
		}
		if seen[x.Code] <= most {
			f.text(say.Capital(x.Level.String())+": "+x.Text, paper.Body)
		}
	}
	for _, c := range codes {
		if more := seen[c] - most; more > 0 {
			f.text(fmt.Sprintf("And %d more like it (%s).", more, c), paper.Body)
		}
	}
}
