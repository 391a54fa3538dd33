package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

const elbowRoom = 900 * measure.Millimetre // beside the arch, for a person

// LeftFoot draws the left leg from near by, coming down over its stake, the cap off only now.
func (r Raising) LeftFoot(page *paper.Page, room paper.Rect, number int) (missing []string) {
	s := &scene{Board: place.NewBoard(page, room), Raising: r}
	x, foot := room.X+room.W*0.36, room.Bottom()-1.5
	s.zero = paper.Point{X: x, Y: foot}
	s.ground()
	const stake, pipe = 1.1, 2.6
	top := room.Y + room.H*0.55
	s.Stroke(paper.Polyline(paper.Point{X: x - stake, Y: foot}, paper.Point{X: x - stake, Y: top}, paper.Point{X: x + stake, Y: top}, paper.Point{X: x + stake, Y: foot}), paper.Thick)
	end := top - 2
	for _, side := range [2]paper.Length{-pipe, pipe} {
		s.Line(paper.Point{X: x + side, Y: end}, paper.Point{X: x + side, Y: room.Y + 0.5}, paper.Thick)
	}
	s.Line(paper.Point{X: x - pipe, Y: end}, paper.Point{X: x + pipe, Y: end}, paper.Thick)
	s.Arrow(paper.Point{X: x, Y: room.Y + 2.5}, paper.Point{X: x, Y: end - 2}, paper.Thick)
	cap := paper.Rect{X: room.Right() - 9, Y: foot - 4.6, W: 6, H: 4.4}
	s.Fill(paper.Box(cap), paper.Black)
	s.Arrow(paper.Point{X: x + 1.8, Y: top + 0.5}, paper.Point{X: cap.X - 0.5, Y: cap.Y - 0.5}, paper.Thin)
	s.label(place.Label{At: paper.Point{X: cap.X + 3, Y: cap.Y}, Text: "cap", Lettering: paper.Floor, Toward: paper.Point{Y: -1}, Clear: 0.5, Leader: place.Bare})
	s.label(place.Label{At: paper.Point{X: x - stake, Y: foot - 5}, Text: fmt.Sprintf("L%d", number), Lettering: paper.CellSmall, Toward: paper.Point{X: -1}, Clear: 0.4, Leader: place.Bare})
	s.label(place.Label{At: paper.Point{X: x + pipe, Y: room.Y + 4}, Text: "left leg,\nby " + Foot1, Lettering: paper.Floor, Toward: paper.Point{X: 1}, Clear: 0.6, Leader: place.Bare})
	return s.lost
}

// RightFoot draws the right leg walked in over its stake; taken down, out from it, the cap on again.
func (r Raising) RightFoot(page *paper.Page, room paper.Rect, number int) (missing []string) {
	span, high := r.First.Span, r.First.Spec.Stake.Showing()
	const wide = 1.12
	s := r.newScene(page, room, span/2+elbowRoom*1.1, span*(wide-0.5)+elbowRoom*1.9, r.First.Crown, Foot1, Crown, Foot2)
	s.ground()
	bent := s.drawnOut(wide, high*1.1)
	last := bent[len(bent)-1]
	one := s.helper(Foot1, -span/2-elbowRoom*0.55, s.at(-span/2, high*0.9), s.at(-span/2, high*1.3))
	hold := bent[near(bent, last.Add(paper.Point{Y: -s.long(helperTall * 0.35)}))]
	two := s.helper(Foot2, span*(wide-0.5)+elbowRoom*0.55, last.Add(paper.Point{Y: -1.5}), hold)
	held := bent[near(bent, s.at(-span*0.36, helperTall*1.12))]
	crown := s.helper(Crown, -span*0.16, held, held.Add(paper.Point{Y: 3}))
	s.crew(bent, one, two, crown)
	s.stake(span/2, r.Down)
	if !r.Down {
		s.cap(s.at(span/2-elbowRoom*0.35, 0))
	}
	s.under(-span/2, fmt.Sprintf("L%d", number))
	s.under(span/2, fmt.Sprintf("R%d", number))
	s.moves(s.at(span*(wide-0.5)+elbowRoom*1.9, helperTall*0.55), s.at(span*(wide-0.5)+elbowRoom*1.05, helperTall*0.55), paper.Emphasis)
	s.name(one, two, crown)
	return s.lost
}

// Measured draws the first arch with the string between its feet and the tape from it up to the crown.
func (r Raising) Measured(page *paper.Page, room paper.Rect, number int, ladder bool) (missing []string) {
	k := r.First
	side := max(k.Widest, k.Span)/2 + 60
	s := r.newScene(page, room, side+elbowRoom*0.3, side+elbowRoom*0.3, k.Crown*1.03, Foot1, Ladder)
	s.ground()
	s.pipe(s.curve())
	low := s.at(0, 60)
	s.Line(s.at(-k.Span/2, 60), s.at(k.Span/2, 60), paper.Tied)
	s.Line(low, s.at(0, k.Crown), paper.Thin)
	s.Arrowhead(s.at(0, k.Crown), paper.Point{Y: -1}, paper.Black)
	s.Arrowhead(low, paper.Point{Y: 1}, paper.Black)
	reader := s.helper(Foot1, -elbowRoom*0.45, s.at(0, helperTall*0.45))
	people := []helper{reader}
	if ladder {
		people = append(people, s.onLadder(Ladder, elbowRoom*0.75, k.Crown, s.at(0, k.Crown*0.985)))
	}
	s.crew(nil, people...)
	s.name(people...)
	s.under(-k.Span/2, fmt.Sprintf("L%d", number))
	s.under(k.Span/2, fmt.Sprintf("R%d", number))
	return s.lost
}
