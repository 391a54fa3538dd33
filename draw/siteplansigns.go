package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// Radii of the map's signs.
const (
	siteOutlet paper.Length = 2.4
	sitePlace  paper.Length = 2.2
	siteMark   paper.Length = 1.8
	siteGuy    paper.Length = 1.4 // of a diamond, half its width
)

// signs draws what stands at a point: outlets, places, marks.
func (d *siteSheet) signs() {
	sign := func(p spec.Point, draw func(b *place.Board, at paper.Point)) {
		if at, ok := d.shown(p); ok {
			draw(d.b, at)
		}
	}
	for _, o := range d.plan.Spec.Site.Outlets {
		sign(o.At, outletSquare)
	}
	for _, p := range d.plan.Spec.Site.Places {
		sign(p.At, func(b *place.Board, at paper.Point) { placeSign(b, at, p.For == spec.FirstAid) })
	}
	for _, m := range d.plan.Ground.Marks {
		sign(m.At, markSign)
	}
}

// stakes draws what the legs of the map's arches stand on.
func (d *siteSheet) stakes() {
	for _, k := range d.plan.Stakes {
		if !k.Guy && d.sec.First <= k.Arch && k.Arch <= d.sec.Last {
			d.b.Fill(paper.Circle(d.m.at(k.At()), 0.9), paper.Black)
		}
	}
}

// guyStakes draws where the guys and braces of the map's arches end.
func (d *siteSheet) guyStakes() {
	for _, k := range d.plan.Stakes {
		if k.Guy && d.sec.First <= k.Arch && k.Arch <= d.sec.Last {
			at := d.m.at(k.At())
			guySign(d.b, at, k.Kind())
			d.b.Mark(at, siteGuy)
		}
	}
}

// guySign is a diamond: black in a white ring where a guy ends, so that it is seen beside another one and on hatching; open where a brace does, for its neighbour's stake to be seen.
func guySign(b *place.Board, at paper.Point, kind ground.Kind) {
	if kind == ground.OfBrace {
		b.Page.Stroke(diamond(at, siteGuy), paper.Thin)
		return
	}
	b.Page.Stroke(diamond(at, siteGuy), paper.Pen{Width: 0.8, Colour: paper.White})
	b.Page.Fill(diamond(at, siteGuy), paper.Black)
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
