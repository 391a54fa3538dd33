package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/lights"
)

// StringKey says how strings are drawn: the signs at their ends and, where there are several kinds, each kind's bulbs.
type StringKey struct {
	Plan *layout.Plan
}

// keyItem is one sign with its words.
type keyItem struct {
	wide  paper.Length // of the sign
	words string
	draw  func(page *paper.Page, at paper.Point) // at the middle of its left side
}

const keyLine paper.Length = 6.4

// Height is the key's height at a width.
func (k StringKey) Height(width paper.Length) paper.Length {
	_, bottom := k.lay(width)
	return bottom
}

// Draw draws it.
func (k StringKey) Draw(page *paper.Page, box paper.Rect) []string {
	places, _ := k.lay(box.W)
	for i, item := range k.items() {
		at := paper.Point{X: box.X + places[i].X, Y: box.Y + places[i].Y}
		item.draw(page, at)
		page.Text(paper.Point{X: at.X + item.wide + 2, Y: at.Y + 1.4}, paper.AtLeft, item.words, paper.Floor)
	}
	return nil
}

// lay returns where the items stand, line after line.
func (k StringKey) lay(width paper.Length) (places []paper.Point, bottom paper.Length) {
	x, y := paper.Length(0), keyLine/2
	for _, item := range k.items() {
		wide := item.wide + 2 + paper.Floor.Width(item.words)
		if x > 0 && x+wide > width {
			x, y = 0, y+keyLine
		}
		places = append(places, paper.Point{X: x, Y: y})
		x += wide + 6
	}
	return places, y + keyLine/2
}

// items are what the key shows: prongs, a socket, the two together, a cord, the end of a run, a drop where some hang, each kind where there are several.
func (k StringKey) items() []keyItem {
	right := paper.Point{X: 1}
	tail := func(page *paper.Page, at paper.Point, from paper.Length) {
		page.Line(paper.Point{X: at.X + from, Y: at.Y}, paper.Point{X: at.X + from + 4, Y: at.Y}, paper.Thick)
	}
	items := []keyItem{
		{barLong + 4, "prongs", func(page *paper.Page, at paper.Point) {
			Prongs(place.NewBoard(page, paper.Rect{}), at, right)
			tail(page, at, barLong)
		}},
		{4 + cupRadius, "socket", func(page *paper.Page, at paper.Point) {
			tail(page, at, 0)
			Socket(place.NewBoard(page, paper.Rect{}), at.Add(right.Times(4)), right)
		}},
		{matedLong, "plug these together", func(page *paper.Page, at paper.Point) { Mated(place.NewBoard(page, paper.Rect{}), at, right) }},
		{cordSign("C2").W + 4 + matedLong, "a cord plugs in", func(page *paper.Page, at paper.Point) {
			b, sign := place.NewBoard(page, paper.Rect{}), cordSign("C2")
			drawCordSign(b, paper.Rect{X: at.X, Y: at.Y - sign.H/2, W: sign.W, H: sign.H}, "C2")
			end := at.Add(right.Times(float64(sign.W + 4)))
			b.Line(at.Add(right.Times(float64(sign.W))), end, paper.Thick)
			Mated(b, end, right)
		}},
		{4 + cupRadius + 1, "end: nothing plugs in", func(page *paper.Page, at paper.Point) {
			tail(page, at, 0)
			Capped(place.NewBoard(page, paper.Rect{}), at.Add(right.Times(4)), right)
		}},
	}
	if len(k.Plan.Lights.Drops) > 0 {
		items = append(items, keyItem{10, "drop", func(page *paper.Page, at paper.Point) {
			end := at.Add(right.Times(10))
			page.Line(at, end, paper.Thick)
			teeth(at, end, paper.Point{Y: dropTeeth}, func(a, b paper.Point) { page.Line(a, b, paper.Thin) })
		}})
	}
	kinds := StringKinds(k.Plan)
	if len(kinds) < 2 {
		return items
	}
	for i, kind := range kinds {
		of := k.Plan.Strings[slices.IndexFunc(k.Plan.Strings, func(s lights.String) bool { return s.Kind == kind })]
		const sample = 16
		items = append(items, keyItem{sample, kind, func(page *paper.Page, at paper.Point) {
			end := at.Add(right.Times(sample))
			page.Line(at, end, paper.Thick)
			beads(page, at, end, StringInks(of.Label), i, 0)
		}})
	}
	return items
}
