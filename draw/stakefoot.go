package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// foot draws the ground bar and what the signs on this page mean, under the picture.
func (d *stakeSheet) foot(r paper.Rect) {
	unit, word := measure.By(d.units(), float64(measure.Foot), float64(measure.Metre)), measure.By(d.units(), "ft", "m")
	used := place.GroundBar(d.b.Page, paper.Point{X: r.X, Y: r.Y}, 62, d.Scale, unit, word)
	x := r.X + max(used+14, 62)
	y := r.Y + 5.2
	l := paper.Floor
	sign := func(word string, draw func(at paper.Point)) {
		draw(paper.Point{X: x + 2.6, Y: y - 1.4})
		x += 6.4
		d.b.Page.Text(paper.Point{X: x, Y: y}, paper.AtLeft, word, l)
		x += l.Width(word) + 6
	}
	page := d.b.Page
	sign("stake", func(at paper.Point) { page.Fill(paper.Circle(at, stakeRadius), paper.Black) })
	if slices.ContainsFunc(d.stakes, func(s ground.Stake) bool { return s.Guy }) {
		sign("guy stake", func(at paper.Point) { page.Fill(diamond(at), paper.Black) })
	}
	if slices.ContainsFunc(d.ground.Marks, d.pictured) {
		sign("mark", func(at paper.Point) {
			page.Stroke(paper.Circle(at, markRadius), paper.Thick)
			page.Line(at.Sub(paper.Point{X: markRadius}), at.Add(paper.Point{X: markRadius}), paper.Thin)
			page.Line(at.Sub(paper.Point{Y: markRadius}), at.Add(paper.Point{Y: markRadius}), paper.Thin)
		})
	}
	if len(d.plugs) > 0 {
		sign("outlet", func(at paper.Point) { outletSign(page, at) })
	}
}
