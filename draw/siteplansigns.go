package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/spec"
)

// Radii of the map's signs.
const (
	siteOutlet paper.Length = 2.4
	sitePlace  paper.Length = 2.2
	siteMark   paper.Length = 1.8
)

// signs draws what stands at a point: outlets, places, marks.
func (d *siteSheet) signs() {
	site := d.plan.Spec.Site
	for _, o := range site.Outlets {
		if at, ok := d.shown(o.At); ok {
			outletSquare(d.b, at)
		}
	}
	for _, p := range site.Places {
		if at, ok := d.shown(p.At); ok {
			placeSign(d.b, at, p.For == spec.FirstAid)
		}
	}
	for _, m := range d.plan.Ground.Marks {
		if at, ok := d.shown(m.At); ok {
			markSign(d.b, at)
		}
	}
}

// stakes draws the stakes of the map's arches.
func (d *siteSheet) stakes() {
	for _, k := range d.plan.Stakes {
		if k.Arch < d.sec.First || k.Arch > d.sec.Last {
			continue
		}
		at := d.m.at(k.At())
		if k.Guy {
			d.b.Page.Stroke(diamond(at), paper.Pen{Width: 0.8, Colour: paper.White}) // of two that all but meet each is seen
			d.b.Fill(diamond(at), paper.Black)
			d.b.Mark(at, guyRadius)
			continue
		}
		d.b.Fill(paper.Circle(at, 0.9), paper.Black)
	}
}

// outletSquare is an outlet: a heavy square with two slots.
func outletSquare(b *place.Board, at paper.Point) {
	b.Page.Fill(paper.Box(around(at, siteOutlet)), paper.White)
	b.Page.Stroke(paper.Box(around(at, siteOutlet)), paper.Thick)
	for _, x := range []paper.Length{-0.8, 0.8} {
		b.Page.Line(at.Add(paper.Point{X: x, Y: -1}), at.Add(paper.Point{X: x, Y: 1}), paper.Thin)
	}
	b.Mark(at, siteOutlet)
}

// placeSign is a place to find: a black square, with a white cross for first aid.
func placeSign(b *place.Board, at paper.Point, cross bool) {
	b.Page.Fill(paper.Box(around(at, sitePlace)), paper.Black)
	if cross {
		pen := paper.Pen{Width: 1, Colour: paper.White}
		b.Page.Line(at.Add(paper.Point{X: -1.5}), at.Add(paper.Point{X: 1.5}), pen)
		b.Page.Line(at.Add(paper.Point{Y: -1.5}), at.Add(paper.Point{Y: 1.5}), pen)
	}
	b.Mark(at, sitePlace)
}

// markSign is a mark that tapes start from: a ring with a point.
func markSign(b *place.Board, at paper.Point) {
	b.Page.Stroke(paper.Circle(at, siteMark), paper.Thick)
	b.Page.Fill(paper.Circle(at, 0.5), paper.Black)
	b.Mark(at, siteMark)
}

// around is the square about a point.
func around(at paper.Point, half paper.Length) paper.Rect {
	return paper.Rect{X: at.X - half, Y: at.Y - half, W: 2 * half, H: 2 * half}
}
