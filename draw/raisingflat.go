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

// lying draws the two sides of a pipe that lies across the picture at y, and through a line across it.
func (s *scene) lying(y, from, to paper.Length, pen paper.Pen) {
	for _, side := range [2]paper.Length{-flatPipe, flatPipe} {
		s.Line(paper.Point{X: from, Y: y + side}, paper.Point{X: to, Y: y + side}, pen)
	}
}

func (s *scene) through(y, x paper.Length, pen paper.Pen) {
	s.Line(paper.Point{X: x, Y: y - flatPipe}, paper.Point{X: x, Y: y + flatPipe}, pen)
}

// Together draws how a crown is put together on the ground: both legs in the fitting, the lines at its mouths, lights already on the legs. toward says which way its socket for a ridge piece points, empty where it has none.
func (r Raising) Together(page *paper.Page, room paper.Rect, toward string) {
	s := &scene{Board: place.NewBoard(page, room), Raising: r}
	const body, mouth = 6.5, 1.2 // half the fitting, its lip
	const under = 16             // from the pipe's middle to the words at the foot of the picture
	mid := room.Centre()
	if toward != "" {
		mid.Y = min(mid.Y, room.Bottom()-under)
	}
	for _, side := range [2]paper.Length{-1, 1} {
		edge := mid.X + side*body
		s.lying(mid.Y, edge, mid.X+side*(room.W/2-0.5), paper.Thick)
		s.lying(mid.Y, edge, mid.X+side*1.4, paper.Hidden)
		s.through(mid.Y, edge+side*mouth, paper.Emphasis)
		s.through(mid.Y, mid.X+side*1.4, paper.Hidden)
	}
	if r.Wrapped {
		turns(s.Board, mid.Y, mid.X-room.W/2+1, mid.X-body-3)
		turns(s.Board, mid.Y, mid.X+body+3, mid.X+room.W/2-1)
	}
	outline := paper.Rect{X: mid.X - body, Y: mid.Y - flatPipe - 1.2, W: 2 * body, H: 2*flatPipe + 2.4}
	s.Stroke(paper.Box(outline), paper.Thick)
	if toward != "" {
		low := outline.Bottom() + 2.4
		s.Stroke(paper.Polyline(paper.Point{X: mid.X - flatPipe, Y: outline.Bottom()}, paper.Point{X: mid.X - flatPipe, Y: low}, paper.Point{X: mid.X + flatPipe, Y: low}, paper.Point{X: mid.X + flatPipe, Y: outline.Bottom()}), paper.Thick)
		s.Arrow(paper.Point{X: mid.X, Y: low + 0.6}, paper.Point{X: mid.X, Y: low + 4}, paper.Thin)
		s.Text(paper.Point{X: mid.X, Y: low + 8}, paper.AtMiddle, toward, paper.Floor)
	}
	s.Text(paper.Point{X: room.X, Y: mid.Y + flatPipe + 6.2}, paper.AtLeft, "pen line", paper.Floor)
	s.Arrow(paper.Point{X: room.X + 4, Y: mid.Y + flatPipe + 2.8}, paper.Point{X: mid.X - body - mouth, Y: mid.Y + flatPipe}, paper.Thin)
}

// TiedFlat draws a guy tied to a leg while the arch lies flat: the tape from the foot end, the bare pipe between the turns of lights, the clamp on the foot's
// side of the knot. tape is the knot's distance from the foot end, band what stays bare; empty where no lights are.
func (r Raising) TiedFlat(page *paper.Page, room paper.Rect, tape, band string) {
	s := &scene{Board: place.NewBoard(page, room), Raising: r}
	y := room.Centre().Y + 1
	foot, knot, out := room.X+1, room.X+room.W*0.6, room.Right()-0.5
	gap := foot + 3 // the leg is longer than it is drawn
	s.lying(y, foot, gap, paper.Thick)
	s.lying(y, gap+3, out, paper.Thick)
	s.through(y, foot, paper.Thick)
	for _, x := range [2]paper.Length{gap, gap + 3} {
		s.Line(paper.Point{X: x + 0.8, Y: y - flatPipe - 1}, paper.Point{X: x - 0.8, Y: y + flatPipe + 1}, paper.Thin)
	}
	const half, clamp = 5.5, 3 // of the bare band, from the knot to the clamp's middle
	if r.Wrapped {
		turns(s.Board, y, gap+4.5, knot-half)
		turns(s.Board, y, knot+half, out)
	}
	s.Fill(paper.Box(paper.Rect{X: knot - clamp - 1.2, Y: y - flatPipe - 0.9, W: 2.4, H: 2*flatPipe + 1.8}), paper.Black)
	s.through(y, knot-0.7, paper.Thick)
	s.through(y, knot+0.7, paper.Thick)
	if r.Wrapped { // the wire lies over both
		at := func(x paper.Length) paper.Point { return paper.Point{X: knot + x, Y: y} }
		s.Line(at(-clamp-1.2), at(1.1), paper.Pen{Width: 1.4, Colour: paper.White})
		s.Line(at(-half-1.7), at(half+1.2), paper.Thick)
	}
	rows := [2]paper.Length{y + flatPipe + 5, y + flatPipe + 9.5} // of words under the pipe
	s.Line(paper.Point{X: knot, Y: y + flatPipe}, paper.Point{X: knot, Y: rows[1] + 1}, paper.Thick)
	over := y - flatPipe - 6 // the tape's line: too short on paper for a number of four figures within its extension lines
	for _, x := range [2]paper.Length{foot, knot} {
		s.Line(paper.Point{X: x, Y: over - 1}, paper.Point{X: x, Y: y - flatPipe - 0.8}, paper.Thin)
	}
	s.Line(paper.Point{X: foot, Y: over}, paper.Point{X: knot, Y: over}, paper.Thin)
	s.Arrowhead(paper.Point{X: foot, Y: over}, paper.Point{X: -1}, paper.Black)
	s.Arrowhead(paper.Point{X: knot, Y: over}, paper.Point{X: 1}, paper.Black)
	s.Text(paper.Point{X: max((foot+knot)/2, room.X+2.5+paper.Dimension.Width(tape)/2), Y: over - 1.6}, paper.AtMiddle, tape, paper.Dimension)
	s.Text(paper.Point{X: foot + 0.8, Y: y - flatPipe - 1.9}, paper.AtLeft, "foot end", paper.Floor)
	s.Text(paper.Point{X: room.X + 1, Y: rows[0]}, paper.AtLeft, "clamp", paper.Floor)
	s.Arrow(paper.Point{X: room.X + 1.6 + paper.Floor.Width("clamp"), Y: rows[0] - 1.6}, paper.Point{X: knot - clamp, Y: y + flatPipe + 0.9}, paper.Thin)
	s.Text(paper.Point{X: knot - 1.5, Y: rows[1]}, paper.AtRight, "guy", paper.Floor)
	if band == "" {
		return
	}
	s.Line(paper.Point{X: knot + half*0.6, Y: y + flatPipe - 1}, paper.Point{X: knot + half*0.6, Y: rows[0] - 3.8}, paper.Thin)
	s.Text(paper.Point{X: knot + 1.6, Y: rows[0]}, paper.AtLeft, band, paper.Floor)
	s.Text(paper.Point{X: knot + 1.6, Y: rows[1]}, paper.AtLeft, "bare", paper.Floor)
}
