package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// table sets a table that goes on over pages, its head repeated.
func (f *flow) table(t place.Table, rows []place.Row) {
	t = t.Fitted(f.room.W, rows)
	part := ""
	for len(rows) > 0 {
		page := rows
		if part != "" && rows[0].Heading == "" {
			page = append([]place.Row{{Heading: part + goingOn}}, rows...)
		}
		used, rest := t.Draw(f.page, f.room, page)
		_, f.room = f.room.SplitTop(used)
		if len(rest) > 0 {
			part = partOf(part, rows[:max(0, len(rows)-len(rest))])
			f.turn()
		}
		rows = rows[max(0, len(rows)-len(rest)):]
	}
}

// partOf returns the heading that what follows some rows stands under; part is the one before them.
func partOf(part string, rows []place.Row) string {
	for _, r := range rows {
		if r.Heading != "" {
			part = r.Heading
		}
	}
	return part
}

// goingOn is put behind what began on the page before.
const goingOn = ", going on"

// numberedSteps sets steps in their order, one action each, behind bold numbers.
func (f *flow) numberedSteps(steps []string) {
	const indent paper.Length = 9
	for i, s := range steps {
		lines := paper.Body.Wrap(s, f.room.W-indent)
		box := f.take(paper.Length(len(lines))*paper.Body.Leading() + 1.2)
		number := fmt.Sprint(i + 1)
		f.page.Text(paper.Point{X: box.X + indent - 3, Y: box.Y + paper.Body.Ascent()}, paper.AtRight, number, paper.CellSmall)
		_, right := box.SplitLeft(indent)
		f.page.Paragraph(right, strings.Join(lines, "\n"), paper.Body)
	}
}

// ticks sets lines to tick, a box before each.
func (f *flow) ticks(lines []string) {
	const indent = paper.TickBoxSide + 2.5
	for _, s := range lines {
		wrapped := paper.Body.Wrap(s, f.room.W-indent)
		h := max(paper.TickBoxSide, paper.Length(len(wrapped))*paper.Body.Leading()+1.2) + 1.8
		box := f.take(h)
		f.page.TickBox(paper.Point{X: box.X + 0.35, Y: box.Y + 0.35})
		_, right := box.SplitLeft(indent)
		right.Y += 1.4 // the line's capitals in the middle of the box
		f.page.Paragraph(right, strings.Join(wrapped, "\n"), paper.Body)
	}
}

// tickStep sets one step of an order: a box to tick, its number, what to do.
func (f *flow) tickStep(number int, text string) {
	const left, gap = paper.TickBoxSide + 10, 2.2
	lines := paper.Body.Wrap(text, f.room.W-left)
	r := f.take(max(paper.TickBoxSide, paper.Length(len(lines))*paper.Body.Leading()) + gap)
	f.page.TickBox(paper.Point{X: r.X + 0.35, Y: r.Y})
	f.page.Text(paper.Point{X: r.X + left - 2.5, Y: r.Y + paper.Body.Ascent()}, paper.AtRight, fmt.Sprint(number), paper.Strong)
	_, right := r.SplitLeft(left)
	f.page.Paragraph(right, strings.Join(lines, "\n"), paper.Body)
}

// framed sets what fill sets within a heavy frame under a title, on one page.
func (f *flow) framed(title string, fill func(*flow)) {
	const pad paper.Length = 3
	inside := func(f *flow) {
		f.text(title, paper.Heading)
		f.gap(0.8)
		fill(f)
	}
	full := f.take(f.height(f.room.W-2*pad, inside) + 2*pad)
	f.page.Stroke(paper.Box(full), paper.Emphasis)
	rest := f.room
	f.room = full.Inset(pad)
	f.room.H += pad // what was measured fits, whatever the last bit of a sum says
	inside(f)
	f.room = rest
}

// together sets what fill sets on one page where it is no higher than most.
func (f *flow) together(most paper.Length, fill func(*flow)) {
	if h := f.height(f.room.W, fill); h <= most {
		f.need(h)
	}
	fill(f)
}

// height returns the height of what fill sets at a width.
func (f *flow) height(width paper.Length, fill func(*flow)) paper.Length {
	const endless = 1e5
	trial := &flow{b: f.b, page: &paper.Page{}, leaves: make([]leaf, 1), room: paper.Rect{W: width, H: endless}}
	fill(trial)
	return endless - trial.room.H
}
