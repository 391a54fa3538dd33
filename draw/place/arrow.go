package place

import "hoopwright/draw/paper"

// Sizes of arrowheads and dots: an arrowhead is three times as long as wide (ASME Y14.2).
const (
	headLong  paper.Length = 3.6
	headWide  paper.Length = 1.2
	dotRadius paper.Length = 0.75
	tickHalf  paper.Length = 1.6 // half of a slanting tick's shadow on its line
)

// Arrowhead draws a filled arrowhead with its tip at the point, pointing along the vector.
func (b *Board) Arrowhead(tip, toward paper.Point, c paper.Colour) {
	u := toward.Unit()
	foot := tip.Sub(u.Times(float64(headLong)))
	side := u.Left().Times(float64(headWide / 2))
	b.Fill(paper.Polygon(tip, foot.Add(side), foot.Sub(side)), c)
}

// Dot draws the filled dot that a leader ends in within a surface.
func (b *Board) Dot(at paper.Point, c paper.Colour) { b.Fill(paper.Circle(at, dotRadius), c) }

// Arrow draws a line with an arrowhead at its end. The line stops inside the head, so that the tip stays sharp.
func (b *Board) Arrow(from, to paper.Point, pen paper.Pen) {
	u := to.Sub(from).Unit()
	if to.Sub(from).Long() > headLong {
		b.Line(from, to.Sub(u.Times(float64(headLong*0.8))), pen)
	}
	b.Arrowhead(to, u, pen.Colour)
}

// slanting returns half of a tick across a line along u, at 45° to it.
func slanting(u paper.Point) paper.Point { return u.Add(u.Left()).Times(float64(tickHalf)) }

func (b *Board) leader(from, to paper.Point, end End, c paper.Colour) {
	pen := paper.Thin.In(c)
	switch end {
	case Arrow:
		b.Arrow(from, to, pen)
	case Dot:
		b.Line(from, to, pen)
		b.Dot(to, c)
	case Bare:
		b.Line(from, to, pen)
	}
}

// North draws a north arrow: a circle of 8 mm radius with the needle at the angle (radians, counter-clockwise from the right as seen on paper) and an N past its tip.
func (b *Board) North(centre paper.Point, angle float64) {
	const radius = 8
	tip, tail := centre.Add(paper.Polar(radius, angle)), centre.Sub(paper.Polar(radius, angle))
	half := paper.Polar(2.4, angle).Left()
	b.Stroke(paper.Circle(centre, radius), paper.Thin)
	b.Fill(paper.Polygon(tip, centre.Add(half), centre.Sub(half)), paper.Black)
	b.Stroke(paper.Polygon(tail, centre.Add(half), centre.Sub(half)), paper.Thin)
	l := paper.Heading
	up, _ := l.Extent("N")
	at := centre.Add(paper.Polar(radius+4.2, angle))
	b.Text(paper.Point{X: at.X, Y: at.Y + 0.47*up}, paper.AtMiddle, "N", l)
}

// WalkArrow draws the broad outlined arrow that shows which way people walk, from its tail to its tip.
func (b *Board) WalkArrow(from, to paper.Point) {
	u := to.Sub(from).Unit()
	side := u.Left()
	const shaft, head = 2.0, 4.0 // half widths
	neck := to.Sub(u.Times(2 * head))
	at := func(p paper.Point, v float64) paper.Point { return p.Add(side.Times(v)) }
	b.Stroke(paper.Polygon(at(from, shaft), at(neck, shaft), at(neck, head), to, at(neck, -head), at(neck, -shaft), at(from, -shaft)), paper.Thick)
}

// BreakLine draws a thin line with a zigzag at its middle: the thing goes on, but not on this sheet.
func (b *Board) BreakLine(from, to paper.Point) {
	u := to.Sub(from).Unit()
	v := u.Left()
	mid := from.Add(to).Times(0.5)
	at := func(along, across float64) paper.Point { return mid.Add(u.Times(along)).Add(v.Times(across)) }
	b.Stroke(paper.Polyline(from, at(-2, 0), at(-1, 4), at(1, -4), at(2, 0), to), paper.Thin)
}

// CentreMark draws the crossed centre lines of a circle, past its edge by 2 mm.
func (b *Board) CentreMark(centre paper.Point, radius paper.Length) {
	r := radius + 2
	pen := paper.Centre
	if radius < 8 { // too small for a chain line
		pen = paper.Thin
	}
	b.Line(paper.Point{X: centre.X - r, Y: centre.Y}, paper.Point{X: centre.X + r, Y: centre.Y}, pen)
	b.Line(paper.Point{X: centre.X, Y: centre.Y - r}, paper.Point{X: centre.X, Y: centre.Y + r}, pen)
}

// readable returns the direction that a text along u is set in: read from the bottom of the sheet, or from its right where u runs straight up or down.
func readable(u paper.Point) paper.Point {
	if u.X < -1e-9 || u.X < 1e-9 && u.Y > 0 {
		return u.Times(-1)
	}
	return u
}
