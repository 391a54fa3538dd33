package packet

import (
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

// height returns the height of what fill sets at a width.
func (f *flow) height(width paper.Length, fill func(*flow)) paper.Length {
	const endless = 1e5
	trial := &flow{b: f.b, page: &paper.Page{}, leaves: make([]leaf, 1), room: paper.Rect{W: width, H: endless}}
	fill(trial)
	return endless - trial.room.H
}
