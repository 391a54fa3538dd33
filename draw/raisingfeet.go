package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

const elbowRoom = 900 * measure.Millimetre // beside the arch, for a person

// FirstFoot draws the whole pipe lifted into a low bow: its first leg, drawn at the left, goes down over its stake, whose cap is off only now, while the other end is
// carried far out. The other stake keeps its cap.
func (r Raising) FirstFoot(page *paper.Page, room paper.Rect, number int) {
	span, high := r.First.Span, r.First.Spec.Stake.Showing()
	const ofWhole = 0.78 // feet apart, of the pipe's length: low enough to be held from beside it
	wide := ofWhole * float64(r.First.Length/span)
	right := span * measure.Length(wide-0.5)
	beside := r.beside(wide)
	drawn := r.drawnOut(wide, high/2)
	s := r.newScene(page, room, span/2+beside, max(right, span/2)+beside, drawn.top(), Foot1, Crown, Foot2)
	bow := s.bent(drawn)
	last := bow[len(bow)-1]
	one := s.helper(Foot1, -span/2-elbowRoom*0.5, s.at(-span/2, high*0.9), s.at(-span/2, high*1.2))
	two := s.helper(Foot2, right+elbowRoom*0.5, last, last.Add(paper.Point{Y: -1}))
	middle := (right - span/2) / 2
	if middle < span/2 { // off the other stake
		middle = min(middle, span/2-elbowRoom)
	} else {
		middle = max(middle, span/2+elbowRoom)
	}
	held := near(bow, s.at(middle, helperTall))
	crown := s.helper(Crown, middle, held.Add(paper.Point{X: -1}), held.Add(paper.Point{X: 1}))
	s.pipe(bow) // behind Crown, who stands beside it
	s.play([]helper{one, two, crown}, func() {
		s.stake(span/2, true)
		s.cap(s.at(-span/2+elbowRoom*0.7, 0))
		s.feetOf(number)
	})
}

// LastFoot draws the other leg walked in over its stake; taken down, out from it by two, the cap on again. Who has it stands
// beside it, behind the leg on paper, never between it and its stake: that is under the arch. Nor outside, where it springs. Who uncaps that stake, aside of the arch, is told, not drawn.
func (r Raising) LastFoot(page *paper.Page, room paper.Rect, number int) {
	span, high := r.First.Span, r.First.Spec.Stake.Showing()
	const wide = 1.3
	beside := r.beside(wide)
	who := Foot2
	if r.Down {
		who = lifters
	}
	drawn := r.drawnOut(wide, high*1.1)
	s := r.newScene(page, room, span/2+beside, span*(wide-0.5)+beside, max(r.First.Crown, drawn.top()), Foot1, who)
	bent := s.bent(drawn)
	last := bent[len(bent)-1]
	hold := near(bent, last.Add(paper.Point{Y: -s.long(helperTall * 0.35)}))
	people := []helper{s.helper(Foot1, -span/2-elbowRoom*0.55, s.at(-span/2, high*0.9), s.at(-span/2, high*1.3)),
		s.helper(who, span*(wide-0.5)+elbowRoom*0.16, last.Add(paper.Point{Y: -1.5}), hold)}
	s.play(people, func() {
		s.pipe(bent)
		s.stake(span/2, r.Down)
		s.feetOf(number)
		s.moves(s.at(span*(wide-0.52), high*0.4), s.at(span*0.52, high*0.4).Add(paper.Point{X: 1}))
	})
}

// Measured draws the first arch, still held, with the string between its feet and the tape from it up to the crown.
func (r Raising) Measured(page *paper.Page, room paper.Rect, number int, ladder bool) {
	k := r.First
	side := max(k.Widest, k.Span)/2 + 60
	s := r.newScene(page, room, side+elbowRoom*0.9, side+elbowRoom*0.3, max(k.Crown*1.03, r.top()), Guard, Foot1, Crown, Ladder)
	low := s.at(0, 60)
	people := []helper{s.holds(Guard, -side-elbowRoom*0.4, -k.Span/2), s.helper(Foot1, -elbowRoom*0.45, s.at(0, helperTall*0.45))}
	if ladder {
		people = append(people, s.onLadder(Ladder, elbowRoom*0.6, k.Crown, s.at(0, k.Crown*0.985)), s.atLadder(elbowRoom*1.35, elbowRoom*0.6))
	}
	s.pipe(s.curve())
	s.Line(s.at(-k.Span/2, 60), s.at(k.Span/2, 60), paper.Tied)
	s.Line(low, s.at(0, k.Crown), paper.Thin)
	s.Arrowhead(s.at(0, k.Crown), paper.Point{Y: -1}, paper.Black)
	s.Arrowhead(low, paper.Point{Y: 1}, paper.Black)
	s.play(people, func() { s.feetOf(number) })
}

// beside is the room beside each foot of an arch drawn out to so many spans: a person's, or what the pipe bulges beyond its feet.
func (r Raising) beside(wide float64) measure.Length {
	return max(elbowRoom*1.1, (r.First.Widest-r.First.Span)/2*measure.Length(wide))
}

// feetOf names the stakes of an arch, under it, the names no nearer than they can be read apart.
func (s *scene) feetOf(number int) {
	left, right := fmt.Sprintf("L%d", number), fmt.Sprintf("R%d", number)
	if s.FromFar {
		left, right = right, left
	}
	least := (paper.CellSmall.Width(left)+paper.CellSmall.Width(right))/4 + 0.6
	half := max(s.First.Span/2, measure.Length(float64(least)*s.ratio))
	s.under(-half, left)
	s.under(half, right)
}
