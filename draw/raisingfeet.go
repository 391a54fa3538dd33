package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

const elbowRoom = 900 * measure.Millimetre // beside the arch, for a person

// Together draws how a crown is put together on the ground: both legs in the fitting, the marks at its mouths.
func (r Raising) Together(page *paper.Page, room paper.Rect, depth string, stub bool) {
	b := place.NewBoard(page, room)
	mid := room.Centre()
	mid.Y += 3
	const wide, body, mouth = 3.2, 9, 1.4 // half the pipe, half the fitting, its lip
	for _, side := range [2]paper.Length{-1, 1} {
		edge := mid.X + side*body
		out := mid.X + side*(room.W/2-2)
		b.Line(paper.Point{X: edge, Y: mid.Y - wide}, paper.Point{X: out, Y: mid.Y - wide}, paper.Thick)
		b.Line(paper.Point{X: edge, Y: mid.Y + wide}, paper.Point{X: out, Y: mid.Y + wide}, paper.Thick)
		b.Line(paper.Point{X: edge + side*mouth, Y: mid.Y - wide}, paper.Point{X: edge + side*mouth, Y: mid.Y + wide}, paper.Emphasis)
		b.Line(paper.Point{X: mid.X + side*2, Y: mid.Y - wide}, paper.Point{X: mid.X + side*2, Y: mid.Y + wide}, paper.Hidden)
		for _, edgeY := range [2]paper.Length{-wide, wide} {
			b.Line(paper.Point{X: edge, Y: mid.Y + edgeY}, paper.Point{X: mid.X + side*2, Y: mid.Y + edgeY}, paper.Hidden)
		}
	}
	outline := paper.Rect{X: mid.X - body, Y: mid.Y - wide - 1.2, W: 2 * body, H: 2*wide + 2.4}
	b.Stroke(paper.Box(outline), paper.Thick)
	if stub {
		b.Stroke(paper.Polyline(paper.Point{X: mid.X - wide, Y: outline.Bottom()}, paper.Point{X: mid.X - wide, Y: outline.Bottom() + 4},
			paper.Point{X: mid.X + wide, Y: outline.Bottom() + 4}, paper.Point{X: mid.X + wide, Y: outline.Bottom()}), paper.Thick)
		b.Label(place.Label{At: paper.Point{X: mid.X, Y: outline.Bottom() + 4}, Text: "ridge socket, toward arch 2", Lettering: paper.Floor, Toward: paper.Point{Y: 1}, Clear: 0.5})
	}
	b.Dimension(place.Dimension{From: paper.Point{X: mid.X + 2, Y: outline.Y}, To: paper.Point{X: mid.X + body + mouth, Y: outline.Y}, Offset: 6, Text: depth, Lettering: paper.DimSmall})
	left := mid.X - room.W/2 + 3
	b.Text(paper.Point{X: left, Y: mid.Y - wide - 2.5}, paper.AtLeft, "left leg", paper.Floor)
	b.Text(paper.Point{X: room.Right() - 3, Y: mid.Y + wide + 5.5}, paper.AtRight, "right leg", paper.Floor)
	b.Label(place.Label{At: paper.Point{X: mid.X - body - mouth, Y: mid.Y + wide}, Text: "mark at the mouth", Lettering: paper.Floor, Toward: paper.Point{X: -1, Y: 1}, Clear: 0.5, Leader: place.Arrow, Pointed: true})
}

// LeftFoot draws the left leg slipped over its stake, with the cap off only now in a picture of its own beside it.
func (r Raising) LeftFoot(page *paper.Page, room paper.Rect, number int) {
	const beside = 27
	main, inset := room.SplitLeft(room.W - beside)
	span := r.First.Span
	const wide = 1.75
	s := r.newScene(page, main, span/2+elbowRoom, measure.Length(wide-0.5)*span+elbowRoom/3, r.First.Crown)
	s.ground()
	bent := s.drawnOut(wide, 0)
	high := r.First.Spec.Stake.Showing()
	a := s.helper("A", -span/2-elbowRoom/2, s.at(-span/2, high*0.8), s.at(-span/2, high*1.15))
	b := s.helper("B", -span/2+elbowRoom*0.62, bent[near(bent, s.at(-span/2+elbowRoom*0.2, helperTall*0.9))])
	c := s.helper("C", span*(wide-1)*0.28, bent[len(bent)*2/5-2], bent[len(bent)*2/5+2])
	s.crew(bent, a, b, c)
	s.stake(span/2, true)
	s.below(-span/2, fmt.Sprintf("L%d", number))
	s.below(span/2, fmt.Sprintf("R%d", number))
	s.name(a, b, c)
	r.capOff(page, inset, number)
}

// capOff draws a stake from near by, its cap lifted off under the pipe that comes down.
func (r Raising) capOff(page *paper.Page, room paper.Rect, number int) {
	b := place.NewBoard(page, room)
	b.Stroke(paper.Box(room.Inset(0.5)), paper.Thin)
	x, foot := room.X+room.W*0.38, room.Bottom()-4
	b.Line(paper.Point{X: room.X + 2, Y: foot}, paper.Point{X: room.Right() - 2, Y: foot}, paper.Thick)
	const bar, pipe = 1.1, 2.6
	top := room.Y + room.H*0.58
	b.Stroke(paper.Polyline(paper.Point{X: x - bar, Y: foot}, paper.Point{X: x - bar, Y: top}, paper.Point{X: x + bar, Y: top}, paper.Point{X: x + bar, Y: foot}), paper.Thick)
	end := top - 3.5
	for _, side := range [2]paper.Length{-pipe, pipe} {
		b.Line(paper.Point{X: x + side, Y: end}, paper.Point{X: x + side, Y: room.Y + 2}, paper.Thick)
	}
	b.Line(paper.Point{X: x - pipe, Y: end}, paper.Point{X: x + pipe, Y: end}, paper.Thick)
	b.Arrow(paper.Point{X: x, Y: room.Y + 4}, paper.Point{X: x, Y: end - 3}, paper.Thick)
	b.Fill(paper.Box(paper.Rect{X: x + 6.5, Y: top + 2, W: 5.5, H: 5}), paper.Black)
	b.Arrow(paper.Point{X: x + 2, Y: top}, paper.Point{X: x + 6, Y: top + 3}, paper.Thin)
	b.Text(paper.Point{X: x + 6, Y: top + 0.5}, paper.AtLeft, "cap", paper.Floor)
	b.Text(paper.Point{X: x + 5, Y: room.Y + 7}, paper.AtLeft, "pipe", paper.Floor)
	b.Text(paper.Point{X: x - 5.5, Y: foot - 6}, paper.AtMiddle, fmt.Sprintf("L%d", number), paper.CellSmall)
}

// RightFoot draws the right leg walked in over its stake.
func (r Raising) RightFoot(page *paper.Page, room paper.Rect, number int) {
	span, high := r.First.Span, r.First.Spec.Stake.Showing()
	const wide = 1.12
	s := r.newScene(page, room, span/2+elbowRoom*1.3, span*(wide-0.5)+elbowRoom*2.3, r.First.Crown)
	s.ground()
	bent := s.drawnOut(wide, high*1.1)
	last := bent[len(bent)-1]
	a := s.helper("A", -span/2-elbowRoom*0.55, s.at(-span/2, high*0.9), s.at(-span/2, high*1.3))
	hold := bent[near(bent, last.Add(paper.Point{Y: -s.long(helperTall * 0.35)}))]
	b := s.helper("B", span*(wide-0.5)+elbowRoom*0.55, last.Add(paper.Point{Y: -1.5}), hold)
	held := bent[near(bent, s.at(-span*0.36, helperTall*1.12))]
	c := s.helper("C", -span*0.16, held, held.Add(paper.Point{Y: 3}))
	s.crew(bent, a, b, c)
	s.stake(span/2, false)
	s.cap(s.at(span/2-elbowRoom*0.35, 0))
	s.below(-span/2, fmt.Sprintf("L%d", number))
	s.below(span/2, fmt.Sprintf("R%d", number))
	tip := s.at(span*(wide-0.5)+elbowRoom*1.1, helperTall*0.6)
	s.WalkArrow(paper.Point{X: min(tip.X+14, room.Right()-0.5), Y: tip.Y}, tip)
	s.name(a, b, c)
}

// Measured draws the first arch with the figures that it is measured by.
func (r Raising) Measured(page *paper.Page, room paper.Rect, number int, crown, span string) {
	k := r.First
	side := max(k.Widest, k.Span)/2 + 60
	room.H -= 5                                           // the span's number, under the ground
	room.Y, room.H = room.Y-overHead+1, room.H+overHead-1 // nothing stands over the crown
	s := r.newScene(page, room, side, side+elbowRoom*1.3, k.Crown)
	s.Area.H += 5
	s.zero.X = max(s.zero.X, room.X+paper.DimSmall.Width(crown)+6.5+s.long(side)) // the crown's number stands left of it
	s.ground()
	s.pipe(s.curve())
	s.Line(s.at(-k.Span/2, 60), s.at(k.Span/2, 60), paper.Tied)
	foot, top := s.at(-side, 60).X-3.5, s.at(0, k.Crown).Y
	s.Line(paper.Point{X: foot - 2, Y: top}, s.at(0, k.Crown), paper.Thin)
	middle := paper.Point{X: foot, Y: (top + s.zero.Y) / 2}
	s.Arrow(middle, paper.Point{X: foot, Y: top}, paper.Thin)
	s.Arrow(middle, paper.Point{X: foot, Y: s.at(0, 60).Y}, paper.Thin)
	s.Text(middle.Add(paper.Point{X: -2, Y: 1.6}), paper.AtRight, crown, paper.DimSmall)
	base := s.zero.Y + groundDepth + 4.2
	s.Text(paper.Point{X: s.zero.X, Y: base}, paper.AtMiddle, fmt.Sprintf("L%d   %s   R%d", number, span, number), paper.DimSmall)
	h := s.helper("B", side+elbowRoom*0.6)
	h.draw(s.Board)
	s.name(h)
}

// crew draws the people, then the pipe over them, then their hands over the pipe.
func (s *scene) crew(pipe []paper.Point, people ...helper) {
	for _, h := range people {
		h.draw(s.Board)
	}
	s.pipe(pipe)
	for _, h := range people {
		h.grip(s.Board)
	}
}

// name sets the people's letters, after all lines.
func (s *scene) name(people ...helper) {
	for _, h := range people {
		h.name(s.Board)
	}
}

// below sets a stake's name beside its foot.
func (s *scene) below(x measure.Length, name string) {
	s.Label(place.Label{At: s.at(x, 0), Text: name, Lettering: paper.CellSmall, Toward: paper.Point{X: 1, Y: -1}, Clear: 1.2, Leader: place.Bare, Reach: 14})
}

// near returns the index of the point that is nearest.
func near(points []paper.Point, to paper.Point) int {
	best := 0
	for i, p := range points {
		if p.Sub(to).Long() < points[best].Sub(to).Long() {
			best = i
		}
	}
	return best
}
