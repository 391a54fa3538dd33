package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// LineLegend draws what the symbols of the one-line diagram mean, in two columns from the room's top, and the two ends that must never meet. It returns the height used.
func LineLegend(b *place.Board, room paper.Rect) paper.Length {
	const row, sign = 8.8, 26
	right := paper.Point{X: 1}
	left := paper.Point{X: -1}
	entries := []struct {
		words string
		draw  func(p paper.Point)
	}{
		{"prongs: the end that plugs in", func(p paper.Point) {
			b.Line(p.Sub(right.Times(8)), p, paper.Thick)
			Prongs(b, p, right)
		}},
		{"socket: the end that takes prongs", func(p paper.Point) {
			b.Line(p, p.Add(right.Times(8)), paper.Thick)
			Socket(b, p, left)
		}},
		{"outlet", func(p paper.Point) {
			outlinedBox(b, paper.Rect{X: p.X - nodeWide/2, Y: p.Y - 4, W: nodeWide, H: 8}, paper.Thick)
			OutletSymbol(b, p.Sub(right.Times(2.9)), right)
		}},
		{"three-way tap", func(p paper.Point) {
			outlinedBox(b, paper.Rect{X: p.X - nodeWide/2, Y: p.Y - 4, W: nodeWide, H: 8}, paper.Thick)
			centredText(b, p, "tap", paper.Floor)
		}},
		{"cord, with its number", func(p paper.Point) {
			b.Line(p.Sub(right.Times(10)), p.Sub(right.Times(3.4)), paper.Thick)
			b.Line(p.Add(right.Times(3.4)), p.Add(right.Times(10)), paper.Thick)
			centredText(b, p, "7", paper.CellSmall)
		}},
		{"string: its number, where it hangs", func(p paper.Point) {
			outlinedBox(b, paper.Rect{X: p.X - 9, Y: p.Y - boxHigh/2 + 1, W: 18, H: boxHigh - 1.4}, paper.Thick)
			b.Text(p.Add(paper.Point{Y: -0.4}), paper.AtMiddle, "S4", paper.CellSmall)
			b.Text(p.Add(paper.Point{Y: 4.2}), paper.AtMiddle, "leg L2", paper.Floor)
		}},
		{"chain, its watts, amps at its plug", func(p paper.Point) {
			b.Line(p.Sub(right.Times(10)), p.Add(right.Times(10)), paper.Thick)
			b.Text(p.Add(paper.Point{X: -9, Y: -1.2}), paper.AtLeft, "D", paper.CellSmall)
			b.Text(p.Add(paper.Point{X: -5, Y: -1.2}), paper.AtLeft, "4.8 W", paper.Floor)
			b.Text(p.Add(paper.Point{X: -9, Y: 4.4}), paper.AtLeft, "0.04 A", paper.Floor)
		}},
		{"at its last bulb: volts, share lost", func(p paper.Point) {
			b.Text(p.Add(paper.Point{X: -7, Y: -1.2}), paper.AtLeft, "119.4 V", paper.Floor)
			b.Text(p.Add(paper.Point{X: -7, Y: 4.4}), paper.AtLeft, "−0.5 %", paper.Floor)
		}},
	}
	half := room.W / 2
	for i, e := range entries {
		x := room.X + paper.Length(i%2)*half
		y := room.Y + paper.Length(i/2)*(row+1.2) + row/2
		e.draw(paper.Point{X: x + sign/2, Y: y})
		b.Text(paper.Point{X: x + sign, Y: y + 1.5}, paper.AtLeft, e.words, paper.Floor)
	}
	y := room.Y + paper.Length((len(entries)+1)/2)*(row+1.2) + 1
	foot := Facing(b, paper.Rect{X: room.X, Y: y, W: room.W, H: 22})
	return foot - room.Y
}

// Facing draws the two ends that must never meet: prongs facing prongs, with what to do. It returns the y below.
func Facing(b *place.Board, r paper.Rect) paper.Length {
	r.H = 23
	outlinedBox(b, r, paper.Emphasis)
	right := paper.Point{X: 1}
	mid := paper.Point{X: r.X + 25, Y: r.Y + r.H/2}
	b.Line(mid.Sub(right.Times(21)), mid.Sub(right.Times(7)), paper.Thick)
	Prongs(b, mid.Sub(right.Times(7)), right)
	b.Line(mid.Add(right.Times(7)), mid.Add(right.Times(21)), paper.Thick)
	Prongs(b, mid.Add(right.Times(7)), right.Times(-1))
	const arm = 5
	b.Line(mid.Add(paper.Point{X: -2.4, Y: -arm}), mid.Add(paper.Point{X: 2.4, Y: arm}), paper.Emphasis)
	b.Line(mid.Add(paper.Point{X: 2.4, Y: -arm}), mid.Add(paper.Point{X: -2.4, Y: arm}), paper.Emphasis)
	x := r.X + 51
	b.Text(paper.Point{X: x, Y: r.Y + 6.4}, paper.AtLeft, "Prongs facing prongs: stop.", paper.Heading)
	b.Text(paper.Point{X: x, Y: r.Y + 12.6}, paper.AtLeft, "A string was put on backwards. Turn it round. There is no adaptor:", paper.Floor)
	b.Text(paper.Point{X: x, Y: r.Y + 17.6}, paper.AtLeft, "a lead with prongs at both ends has bare live prongs and can kill.", paper.Floor)
	return r.Bottom()
}
