package packet

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// strings lists every string in the order it hangs: those that have a length of pipe to themselves side by side, since the wrap's page says all
// else of them, then those whose ends each lie somewhere of their own.
func (f *flow) strings() {
	var alone, others []lights.String
	for _, s := range f.b.plan.Strings {
		switch {
		case s.From.Row.Row > 0: // in the list of splices
		case f.b.alone(s):
			alone = append(alone, s)
		default:
			others = append(others, s)
		}
	}
	f.need(90) // room for some strings, else a page of their own
	f.gap(3)
	f.text("Every string, in the order it hangs", paper.Heading.Sized(18))
	f.text("Tick Lit when it lit by itself, Up when it is tied. Where it says “into”, its prongs go into the socket of that string; all other prongs stay free for the cords of the power crew. Prongs facing prongs: turn the string round; there is no adaptor.", paper.Body)
	f.gap(1)
	f.framed("Stop and ask when", func(f *flow) {
		f.text("A label says another length, watts or “most end to end” than the one before. Two strings to be joined differ in kind. The first one wound does not come out as drawn. A string gets warm. Wind shakes the ladder.", paper.Body)
	})
	f.gap(2)
	f.stringGrid(alone)
	f.stringTable(others)
}

// alone reports whether a string has a length of pipe to itself and ends where that does, with nothing left over.
func (b *binder) alone(s lights.String) bool {
	k := slices.IndexFunc(b.plan.Wraps, func(w lights.Wrap) bool { return slices.Contains(w.Strings, s.Name) })
	return k >= 0 && len(b.plan.Wraps[k].Strings) == 1 && s.LeftOver < b.spec.Units.Grid()
}

// stringGrid lists strings side by side: a leg, its other leg and the ridge piece beyond in one row where all three have lights.
func (f *flow) stringGrid(list []lights.String) {
	if len(list) == 0 {
		return
	}
	across := 2
	if slices.ContainsFunc(list, func(s lights.String) bool { return s.Run.Kind == lights.Ridge }) {
		across = 3
	}
	var columns []place.Column
	for range across {
		columns = append(columns, place.Column{Head: "Lit", Width: 9.2, Tick: true, Align: paper.AtMiddle}, place.Column{Head: "Up", Width: 9.2, Tick: true, Align: paper.AtMiddle},
			place.Column{Head: "String", Lettering: paper.Cell, Width: 18}, place.Column{Head: "On", Lettering: paper.Floor})
	}
	var rows []place.Row
	for some := range slices.Chunk(list, across) {
		var cells []string
		for _, s := range some {
			cells = append(cells, "", "", s.Name, s.Run.String()+f.b.into(s))
		}
		for len(cells) < len(columns) {
			cells = append(cells, place.NoTick)
		}
		rows = append(rows, place.Row{Cells: cells})
	}
	f.table(place.Table{Columns: columns}, rows)
}

// into says, after a place, which string's socket a string's prongs go into; nothing where a cord feeds it.
func (b *binder) into(s lights.String) string {
	if other := b.socketFor(s); other != "" {
		return ", into " + other
	}
	return ""
}

// socketFor names the string whose socket a string's prongs go into; empty where a cord feeds it.
func (b *binder) socketFor(s lights.String) string {
	for _, c := range b.plan.Chains {
		if k := slices.Index(c.Strings, s.Name); k > 0 {
			return c.Strings[k-1]
		}
	}
	return ""
}

// stringTable lists strings with their two ends.
func (f *flow) stringTable(list []lights.String) {
	if len(list) == 0 {
		return
	}
	var rows []place.Row
	for _, s := range list {
		rows = append(rows, place.Row{Cells: []string{"", "", s.Name, s.Run.String(), s.Kind, s.From.At.On(s.Run) + f.b.into(s), s.To.At.On(s.Run), f.b.leftWords(s)}})
	}
	f.gap(2)
	f.table(place.Table{Columns: []place.Column{
		{Head: "Lit", Width: 9.5, Tick: true, Align: paper.AtMiddle},
		{Head: "Up", Width: 9.5, Tick: true, Align: paper.AtMiddle},
		{Head: "String", Lettering: paper.Cell, Width: 18.5},
		{Head: "On", Lettering: paper.Floor, Width: 26},
		{Head: "Kind", Lettering: paper.Floor, Width: 28},
		{Head: "Prongs at", Lettering: paper.Floor},
		{Head: "Socket at", Lettering: paper.Floor},
		{Head: "Left over", Lettering: paper.CellSmall, Align: paper.AtRight, Width: 20},
	}}, rows)
}

// leftWords prints what is left over of a string, a dash where that is nothing to speak of.
func (b *binder) leftWords(s lights.String) string {
	if s.LeftOver < measure.Inch/2 {
		return "–"
	}
	return b.spec.Units.Room(s.LeftOver)
}
