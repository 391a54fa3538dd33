package draw

import "hoopwright/draw/paper"

// outletRoom is what an outlet takes on the page beyond its place, half its name beside it.
const outletRoom paper.Length = 16

// width returns what a section takes across the page, about the middle of its extent: its feet with their lanes, its outlets with their names.
func (c *CordPlan) width(s Section) paper.Length {
	e, margin := c.extent(s), c.margins(s)
	m := newSiteMap(&c.plan.Spec.Site, paper.Scale{Ratio: 1})
	left, right := c.Scale.Length(float64(e.W))/2, c.Scale.Length(float64(e.W))/2
	middle := e.Centre().X
	for _, o := range c.outletsOf(s) {
		at := c.Scale.Length(float64(m.at(o).X - middle))
		left, right = max(left, outletRoom-at), max(right, outletRoom+at)
	}
	for _, k := range c.feet {
		if s.First <= k.Arch && k.Arch <= s.Last {
			at := c.Scale.Length(float64(m.at(k.At()).X - middle))
			left, right = max(left, margin-at), max(right, margin+at)
		}
	}
	return 2 * max(left, right)
}

// Height is what a row of sections takes down the page.
func (c *CordPlan) Height(row []Section) (most paper.Length) {
	for _, s := range row {
		most = max(most, c.Scale.Length(float64(c.extent(s).H))+2*planMargin)
	}
	return most
}

// Rows shares the sections out over pages, as many side by side as a room is wide.
func (c *CordPlan) Rows(room paper.Rect) [][]Section {
	var out [][]Section
	var used paper.Length
	for _, s := range c.Sections {
		w := c.width(s)
		if len(out) == 0 || used+w > room.W {
			out, used = append(out, nil), 0
		}
		used += w
		out[len(out)-1] = append(out[len(out)-1], s)
	}
	return out
}

// Columns cuts a room into one strip for each section of a row, from the left, what is left over shared among them.
func (c *CordPlan) Columns(room paper.Rect, row []Section) []paper.Rect {
	free := room.W
	for _, s := range row {
		free -= c.width(s)
	}
	var out []paper.Rect
	rest := room
	for _, s := range row {
		var r paper.Rect
		r, rest = rest.SplitLeft(c.width(s) + free/paper.Length(len(row)))
		out = append(out, r)
	}
	return out
}
