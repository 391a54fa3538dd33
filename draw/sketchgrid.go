package draw

import (
	"math"

	"hoopwright/draw/paper"
)

// gridStep is the side of a square of the sketch grid on paper, and every fifth line of it is heavier.
const gridStep paper.Length = 5

// SketchGrid draws a grid to sketch a yard on, with a ring to draw north into. The grid fills as much of the room
// as whole squares do, from the top, in the middle; its rectangle is returned.
func SketchGrid(page *paper.Page, room paper.Rect) paper.Rect {
	across, down := int(math.Floor(float64(room.W/gridStep)+1e-9)), int(math.Floor(float64(room.H/gridStep)+1e-9))
	grid := paper.Rect{Y: room.Y, W: gridStep * paper.Length(across), H: gridStep * paper.Length(down)}
	grid.X = room.X + (room.W-grid.W)/2
	pen := func(i, last int) paper.Pen {
		if i == 0 || i == last || i%5 == 0 {
			return paper.Thin
		}
		return paper.Hatching
	}
	const corner = 5 * gridStep // left free of lines at the top right, for north
	for i := range across + 1 {
		x, top := grid.X+gridStep*paper.Length(i), grid.Y
		if x > grid.Right()-corner {
			top += corner
		}
		page.Line(paper.Point{X: x, Y: top}, paper.Point{X: x, Y: grid.Bottom()}, pen(i, across))
	}
	for i := range down + 1 {
		y, right := grid.Bottom()-gridStep*paper.Length(i), grid.Right()
		if y < grid.Y+corner {
			right -= corner
		}
		page.Line(paper.Point{X: grid.X, Y: y}, paper.Point{X: right, Y: y}, pen(i, down))
	}

	ring := paper.Point{X: grid.Right() - corner/2, Y: grid.Y + corner/2}
	page.Stroke(paper.Circle(ring, 2*gridStep), paper.Thick)
	page.Fill(paper.Circle(ring, 0.5), paper.Black)
	page.Text(paper.Point{X: ring.X, Y: ring.Y + 1.4*gridStep}, paper.AtMiddle, "north", paper.Floor)
	return grid
}

// StringLevel shows how a fall of the ground is measured: a string pulled level between two pegs, and a tape from it down to the ground at places along
// it.
func StringLevel(page *paper.Page, room paper.Rect) {
	left, right := room.X+5, room.Right()-5
	y, fall := room.Y+5.5, room.H-5.5
	ground := func(x paper.Length) paper.Length { return y + fall*(0.55+0.4*(x-left)/(right-left)) }
	for _, x := range []paper.Length{left, right} {
		page.Line(paper.Point{X: x, Y: y - 2.5}, paper.Point{X: x, Y: ground(x)}, paper.Thick)
	}
	page.Line(paper.Point{X: room.X, Y: ground(room.X)}, paper.Point{X: room.Right(), Y: ground(room.Right())}, paper.Thick)
	page.Line(paper.Point{X: left, Y: y}, paper.Point{X: right, Y: y}, paper.Thin)

	middle := (left + right) / 2
	vial := paper.Rect{X: middle - 5, Y: y - 1.5, W: 10, H: 3}
	page.Fill(paper.Box(vial), paper.White)
	page.Stroke(paper.Box(vial), paper.Thin)
	page.Stroke(paper.Circle(vial.Centre(), 0.9), paper.Thin)
	page.Text(paper.Point{X: (left + vial.X) / 2, Y: y - 1.4}, paper.AtMiddle, "level string", paper.Floor)
	for _, share := range []paper.Length{0.12, 0.62} {
		x := left + share*(right-left)
		page.Line(paper.Point{X: x, Y: y}, paper.Point{X: x, Y: ground(x)}, paper.Tied)
		page.Text(paper.Point{X: x + 1.5, Y: (y+ground(x))/2 + 1.5}, paper.AtLeft, "tape down", paper.Floor)
	}
}
