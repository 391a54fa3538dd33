package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// CircuitKey says what the signs of the circuit diagram mean: prongs in a socket, an open socket, a cord, a string, a run of strings.
func CircuitKey() SignKey {
	right := paper.Point{X: 1}
	past := func(at paper.Point, x paper.Length) paper.Point { return at.Add(right.Times(float64(x))) }
	boxed := func(name string) func(*place.Board, paper.Point) {
		return func(b *place.Board, at paper.Point) {
			outlinedBox(b, paper.Rect{X: at.X, Y: at.Y - 2.5, W: 9, H: 5}, paper.Thick)
			centredText(b, past(at, 4.5), name, paper.Floor)
		}
	}
	return SignKey{
		{9, "joined", func(b *place.Board, at paper.Point) {
			b.Line(at, past(at, 2.4), paper.Thick)
			mated(b, past(at, 2.4), right)
			b.Line(past(at, 2.2+matedLong), past(at, 9), paper.Thick)
		}},
		{5 + cupRadius, "open: cover it", func(b *place.Board, at paper.Point) {
			b.Line(at, past(at, 5), paper.Thick)
			Socket(b, past(at, 5), right)
		}},
		{9, "cord", boxed("C2")},
		{9, "string", boxed("S4")},
		{6, "run of strings", func(b *place.Board, at paper.Point) {
			b.Line(at, past(at, 2), paper.Thick)
			b.Text(past(at, 3.4).Add(paper.Point{Y: 1.5}), paper.AtLeft, "A", paper.CellSmall)
		}},
	}
}
