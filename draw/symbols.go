package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// The ends of cords and strings, after IEC 60617: a black bar for prongs (its male contact), a cup for a socket (its female contact).
const (
	barLong   paper.Length = 3.2
	barWide   paper.Length = 1.7
	cupRadius paper.Length = 1.9
	matedLong paper.Length = barLong + 1.3 // from a cup's back to the far end of the bar in it
)

// Prongs draws a bar that begins at the point and sticks out along the unit vector.
func Prongs(b *place.Board, at, toward paper.Point) {
	side := toward.Left().Times(float64(barWide / 2))
	tip := at.Add(toward.Times(float64(barLong)))
	b.Fill(paper.Polygon(at.Add(side), tip.Add(side), tip.Sub(side), at.Sub(side)), paper.Black)
}

// Socket draws a cup whose back is at the point and whose mouth opens along the unit vector.
func Socket(b *place.Board, at, toward paper.Point) {
	halfCircle(b, at, toward, cupRadius)
}

// halfCircle draws a half circle whose back is at the point and that opens along the unit vector.
func halfCircle(b *place.Board, back, toward paper.Point, radius paper.Length) {
	angle := toward.Angle()
	b.Stroke(paper.Arc(back.Add(toward.Times(float64(radius))), radius, angle+math.Pi/2, angle+3*math.Pi/2), paper.Thick)
}

// mated draws prongs in a socket. The socket's back is at the point and its mouth opens along the unit vector; the prongs' far end is matedLong away.
func mated(b *place.Board, socket, toward paper.Point) {
	Socket(b, socket, toward)
	Prongs(b, socket.Add(toward.Times(float64(matedLong))), toward.Times(-1))
}

// Capped draws a socket that nothing goes into, as Socket does: a bar across its mouth.
func Capped(b *place.Board, at, toward paper.Point) {
	Socket(b, at, toward)
	mouth, side := at.Add(toward.Times(float64(cupRadius+0.3))), toward.Left().Times(float64(cupRadius+0.8))
	b.Line(mouth.Add(side), mouth.Sub(side), paper.Emphasis)
}

// outlinedBox draws an outlined rectangle.
func outlinedBox(b *place.Board, r paper.Rect, pen paper.Pen) { b.Stroke(paper.Box(r), pen) }

// centredText sets a line of lettering centred on the point.
func centredText(b *place.Board, at paper.Point, s string, l paper.Lettering) {
	up, _ := l.Extent(s)
	b.Text(paper.Point{X: at.X, Y: at.Y + up*0.47}, paper.AtMiddle, s, l)
}

// outletSymbol draws a socket outlet on a wall, after IEC 60617: a half circle on its stem. The stem's foot is at the point and the circle opens along the unit vector.
func outletSymbol(b *place.Board, at, toward paper.Point) {
	const stem, radius = 2.5, 3.2
	back := at.Add(toward.Times(stem))
	b.Line(at, back, paper.Thick)
	halfCircle(b, back, toward, radius)
	side := toward.Left().Times(radius)
	b.Line(back.Sub(side), back.Add(side), paper.Thick)
}
