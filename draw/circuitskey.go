package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// CircuitKey draws what the signs of the circuit diagram mean, from the box's top: prongs in a socket, a cord, a three-way, a string, a run of strings, an open socket.
func CircuitKey(page *paper.Page, box paper.Rect) []string {
	b := place.NewBoard(page, box)
	right := paper.Point{X: 1}
	boxed := func(name string) func(at paper.Point) {
		return func(at paper.Point) {
			outlinedBox(b, paper.Rect{X: at.X, Y: at.Y - 2.5, W: 9, H: 5}, paper.Thick)
			centredText(b, at.Add(right.Times(4.5)), name, paper.Floor)
		}
	}
	signs := []struct {
		words string
		wide  paper.Length
		draw  func(at paper.Point)
	}{
		{"prongs in socket", 10, func(at paper.Point) {
			page.Line(at, at.Add(right.Times(2.4)), paper.Thick)
			Mated(b, at.Add(right.Times(2.4)), right)
			page.Line(at.Add(right.Times(float64(2.4+matedLong-0.2))), at.Add(right.Times(9)), paper.Thick)
		}},
		{"cord", 10, boxed("C2")},
		{"open: cover it", 10, func(at paper.Point) {
			page.Line(at, at.Add(right.Times(5)), paper.Thick)
			Socket(b, at.Add(right.Times(5)), right)
		}},
		{"three-way", 10, boxed("T1")},
		{"run of strings", 10, func(at paper.Point) {
			page.Line(at, at.Add(right.Times(2)), paper.Thick)
			b.Text(at.Add(paper.Point{X: 3.4, Y: 1.5}), paper.AtLeft, "A", paper.CellSmall)
		}},
		{"string", 10, boxed("S4")},
	}
	columns := []paper.Length{0, 44}
	for i, s := range signs {
		at := paper.Point{X: box.X + columns[i%2], Y: box.Y + 2.8 + paper.Length(i/2)*5.8}
		s.draw(at)
		b.Text(paper.Point{X: at.X + s.wide + 1, Y: at.Y + 1.4}, paper.AtLeft, s.words, paper.Floor)
	}
	return nil
}
