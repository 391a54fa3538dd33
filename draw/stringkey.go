package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/lights"
)

// SignKey is signs with their words, set in lines.
type SignKey []keyItem

// keyItem is one sign with its words.
type keyItem struct {
	wide  paper.Length // of the sign
	words string
	draw  func(b *place.Board, at paper.Point) // at the middle of its left side
}

const keyLine paper.Length = 6.4

// Height is the key's height at a width.
func (k SignKey) Height(width paper.Length) paper.Length {
	return k.set(place.NewBoard(&paper.Page{}, paper.Rect{}), paper.Rect{W: width})
}

// Draw draws it.
func (k SignKey) Draw(page *paper.Page, box paper.Rect) []string {
	k.set(place.NewBoard(page, box), box)
	return nil
}

// set sets the items line after line and returns the height they take.
func (k SignKey) set(b *place.Board, box paper.Rect) paper.Length {
	at := paper.Point{X: box.X, Y: box.Y + keyLine/2}
	for _, item := range k {
		wide := item.wide + 2 + paper.Floor.Width(item.words)
		if at.X > box.X && at.X+wide > box.Right() {
			at = paper.Point{X: box.X, Y: at.Y + keyLine}
		}
		item.draw(b, at)
		b.Text(paper.Point{X: at.X + item.wide + 2, Y: at.Y + 1.4}, paper.AtLeft, item.words, paper.Floor)
		at.X += wide + 6
	}
	return at.Y + keyLine/2 - box.Y
}

// StringKey says how strings are drawn: prongs, a socket, the two together, a cord, the end of a run, a drop where some hang, each kind's bulbs where there are several.
func StringKey(plan *layout.Plan) SignKey {
	right := paper.Point{X: 1}
	past := func(at paper.Point, x paper.Length) paper.Point { return at.Add(right.Times(float64(x))) }
	tail := func(b *place.Board, at paper.Point) { b.Line(at, past(at, 4), paper.Thick) }
	const cord = "C1" // there is no plan with cords without it
	sign := cordSign(cord)
	items := SignKey{
		{barLong + 4, "prongs", func(b *place.Board, at paper.Point) { Prongs(b, at, right); tail(b, past(at, barLong)) }},
		{4 + cupRadius, "socket", func(b *place.Board, at paper.Point) { tail(b, at); Socket(b, past(at, 4), right) }},
		{matedLong, "later plugged together", func(b *place.Board, at paper.Point) { mated(b, at, right) }},
		{sign.W + 4 + matedLong, "later on a cord", func(b *place.Board, at paper.Point) {
			drawCordSign(b, paper.Rect{X: at.X, Y: at.Y - sign.H/2, W: sign.W, H: sign.H}, cord)
			tail(b, past(at, sign.W))
			mated(b, past(at, sign.W+4), right)
		}},
		{4 + cupRadius + 1, "end: nothing plugs in", func(b *place.Board, at paper.Point) { tail(b, at); Capped(b, past(at, 4), right) }},
	}
	if len(plan.Lights.Drops) > 0 {
		items = append(items, keyItem{10, "drop", func(b *place.Board, at paper.Point) {
			b.Line(at, past(at, 10), paper.Thick)
			teeth(at, past(at, 10), paper.Point{Y: dropTeeth}, func(p, q paper.Point) { b.Line(p, q, paper.Thin) })
		}})
	}
	kinds := stringKinds(plan)
	if len(kinds) < 2 {
		return items
	}
	for i, kind := range kinds {
		of := plan.Strings[slices.IndexFunc(plan.Strings, func(s lights.String) bool { return s.Kind == kind })]
		const sample = 16
		items = append(items, keyItem{sample, kind, func(b *place.Board, at paper.Point) {
			b.Line(at, past(at, sample), paper.Thick)
			beads(b.Page, at, past(at, sample), StringInks(of.Label), i, 0)
		}})
	}
	return items
}
