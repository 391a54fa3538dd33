package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

// foot draws the ground bar and what the signs mean, under the picture.
func (d *stakeSheet) foot(r paper.Rect) {
	unit, word := float64(measure.Foot), "ft"
	if d.units() == measure.Metric {
		unit, word = float64(measure.Metre), "m"
	}
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
	guys := false
	for _, s := range d.stakes {
		guys = guys || s.Guy
	}
	if guys {
		sign("guy stake", func(at paper.Point) {
			page.Fill(paper.Polygon(at.Add(paper.Point{X: -guyRadius}), at.Add(paper.Point{Y: -guyRadius}), at.Add(paper.Point{X: guyRadius}), at.Add(paper.Point{Y: guyRadius})), paper.Black)
		})
	}
	if len(d.ground.Marks) > 0 {
		sign("mark", func(at paper.Point) {
			page.Stroke(paper.Circle(at, markRadius), paper.Thick)
			page.Line(at.Sub(paper.Point{X: markRadius}), at.Add(paper.Point{X: markRadius}), paper.Thin)
			page.Line(at.Sub(paper.Point{Y: markRadius}), at.Add(paper.Point{Y: markRadius}), paper.Thin)
		})
	}
	if len(d.spec.Site.Outlets) > 0 {
		sign("outlet", func(at paper.Point) {
			page.Stroke(paper.Circle(at, 1.8), paper.Thin)
			for _, dx := range []paper.Length{-0.6, 0.6} {
				page.Line(at.Add(paper.Point{X: dx, Y: -0.8}), at.Add(paper.Point{X: dx, Y: 0.8}), paper.Thin)
			}
		})
	}
}
