package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// What is drawn from near by, an arch that lies flat on the ground: not to scale.
const (
	flatPipe paper.Length = 3 // half its width
	turn     paper.Length = 4 // from one turn of the lights to the next
)

// turns draws lights wound on a pipe that lies across the picture at y, from one place to another.
func turns(b *place.Board, y, from, to paper.Length) {
	for x := from; x+turn*0.6 <= to; x += turn {
		b.Line(paper.Point{X: x, Y: y + flatPipe}, paper.Point{X: x + turn*0.6, Y: y - flatPipe}, paper.Thick)
		b.Dot(paper.Point{X: x + turn*0.3, Y: y}, paper.Black)
	}
}

// Together draws how a crown is put together on the ground: both legs in the fitting, the marks at its mouths, lights already on the legs. depth is how far a
// pipe goes in; stub says that the fitting has a socket for a ridge piece.
func (r Raising) Together(page *paper.Page, room paper.Rect, depth string, stub bool) (missing []string) {
	s := &scene{Board: place.NewBoard(page, room), Raising: r}
	mid := room.Centre()
	mid.Y += 1.5
	const body, mouth = 9, 1.4 // half the fitting, its lip
	for _, side := range [2]paper.Length{-1, 1} {
		edge, out := mid.X+side*body, mid.X+side*(room.W/2-8)
		for _, y := range [2]paper.Length{mid.Y - flatPipe, mid.Y + flatPipe} {
			s.Line(paper.Point{X: edge, Y: y}, paper.Point{X: out, Y: y}, paper.Thick)
			s.Line(paper.Point{X: edge, Y: y}, paper.Point{X: mid.X + side*2, Y: y}, paper.Hidden)
		}
		s.Line(paper.Point{X: edge + side*mouth, Y: mid.Y - flatPipe}, paper.Point{X: edge + side*mouth, Y: mid.Y + flatPipe}, paper.Emphasis)
		s.Line(paper.Point{X: mid.X + side*2, Y: mid.Y - flatPipe}, paper.Point{X: mid.X + side*2, Y: mid.Y + flatPipe}, paper.Hidden)
	}
	if r.Wrapped {
		turns(s.Board, mid.Y, mid.X-room.W/2+9, mid.X-body-7)
		turns(s.Board, mid.Y, mid.X+body+7, mid.X+room.W/2-9)
	}
	outline := paper.Rect{X: mid.X - body, Y: mid.Y - flatPipe - 1.2, W: 2 * body, H: 2*flatPipe + 2.4}
	s.Stroke(paper.Box(outline), paper.Thick)
	if stub {
		low := outline.Bottom() + 3
		s.Stroke(paper.Polyline(paper.Point{X: mid.X - flatPipe, Y: outline.Bottom()}, paper.Point{X: mid.X - flatPipe, Y: low}, paper.Point{X: mid.X + flatPipe, Y: low}, paper.Point{X: mid.X + flatPipe, Y: outline.Bottom()}), paper.Thick)
		s.label(place.Label{At: paper.Point{X: mid.X + flatPipe, Y: low - 1}, Text: "toward arch 2", Lettering: paper.Floor, Toward: paper.Point{X: 1, Y: 0.3}, Clear: 0.8})
	}
	if !s.Dimension(place.Dimension{From: paper.Point{X: mid.X + 2, Y: outline.Y}, To: paper.Point{X: mid.X + body + mouth, Y: outline.Y}, Offset: 4, Text: depth, Lettering: paper.DimSmall}) {
		s.lost = append(s.lost, depth)
	}
	s.label(place.Label{At: paper.Point{X: mid.X - body - mouth, Y: mid.Y + flatPipe}, Text: "mark", Lettering: paper.Floor, Toward: paper.Point{X: -1, Y: 1}, Clear: 0.5, Leader: place.Arrow, Pointed: true})
	s.label(place.Label{At: paper.Point{X: room.X + 10, Y: mid.Y - flatPipe}, Text: "left leg", Lettering: paper.Floor, Toward: paper.Point{Y: -1}, Clear: 0.5})
	s.label(place.Label{At: paper.Point{X: room.Right() - 12, Y: mid.Y - flatPipe}, Text: "right leg", Lettering: paper.Floor, Toward: paper.Point{Y: -1}, Clear: 0.5})
	return s.lost
}

// TiedFlat draws a guy tied to a leg while the arch lies flat: the tape from the foot end, the bare pipe between the turns of lights, the clamp on the foot's
// side of the knot. tape is the knot's distance from the foot end, band what stays bare.
func (r Raising) TiedFlat(page *paper.Page, room paper.Rect, tape, band string) (missing []string) {
	s := &scene{Board: place.NewBoard(page, room), Raising: r}
	y := room.Centre().Y - 1
	foot, knot, out := room.X+3, room.X+room.W*0.62, room.Right()-3
	gap := foot + 9 // the leg is longer than it is drawn
	for _, side := range [2]paper.Length{-flatPipe, flatPipe} {
		s.Line(paper.Point{X: foot, Y: y + side}, paper.Point{X: gap, Y: y + side}, paper.Thick)
		s.Line(paper.Point{X: gap + 3, Y: y + side}, paper.Point{X: out, Y: y + side}, paper.Thick)
	}
	s.Line(paper.Point{X: foot, Y: y - flatPipe}, paper.Point{X: foot, Y: y + flatPipe}, paper.Thick)
	for _, x := range [2]paper.Length{gap, gap + 3} {
		s.Line(paper.Point{X: x + 0.8, Y: y - flatPipe - 1}, paper.Point{X: x - 0.8, Y: y + flatPipe + 1}, paper.Thin)
	}
	const half, clamp = 8.5, 4 // of the bare band, from the knot to the clamp's middle
	if r.Wrapped {
		turns(s.Board, y, gap+5, knot-half)
		turns(s.Board, y, knot+half, out)
	}
	s.Fill(paper.Box(paper.Rect{X: knot - clamp - 1.2, Y: y - flatPipe - 0.9, W: 2.4, H: 2*flatPipe + 1.8}), paper.Black)
	for _, x := range [2]paper.Length{-0.7, 0.7} {
		s.Line(paper.Point{X: knot + x, Y: y - flatPipe}, paper.Point{X: knot + x, Y: y + flatPipe}, paper.Thick)
	}
	end := paper.Point{X: room.Right() - 14, Y: room.Bottom() - 1.5}
	s.Line(paper.Point{X: knot + 0.7, Y: y + flatPipe}, end, paper.Thick)
	if !s.Dimension(place.Dimension{From: paper.Point{X: foot, Y: y - flatPipe}, To: paper.Point{X: knot, Y: y - flatPipe}, Offset: 4, Text: tape, Lettering: paper.Dimension, Ends: place.Arrows}) {
		s.lost = append(s.lost, tape)
	}
	s.label(place.Label{At: end, Text: "guy", Lettering: paper.Floor, Toward: paper.Point{X: 1}, Clear: 0.8, Leader: place.Bare})
	s.label(place.Label{At: paper.Point{X: knot - clamp, Y: y + flatPipe + 0.9}, Text: "clamp", Lettering: paper.Floor, Toward: paper.Point{X: -1, Y: 1}, Clear: 0.3, Leader: place.Arrow, Pointed: true})
	s.label(place.Label{At: paper.Point{X: foot, Y: y + flatPipe}, Text: "foot end", Lettering: paper.Floor, Toward: paper.Point{X: 1, Y: 1}, Clear: 1})
	s.label(place.Label{At: paper.Point{X: knot + half*0.6, Y: y - flatPipe}, Text: band + " bare", Lettering: paper.Floor, Toward: paper.Point{X: 1, Y: -1}, Clear: 0.5, Leader: place.Arrow, Pointed: true})
	return s.lost
}
