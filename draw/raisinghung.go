package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// Rows draws rows of lights being hung on one wall, seen from the side: a tie at every arch, some sag between, begun at the arch from and on toward another.
func (r Raising) Rows(page *paper.Page, room paper.Rect, from, to int) {
	const rows = 3
	step, bays := 1, min(2, max(to-from, from-to))
	if to < from {
		step = -1
	}
	spacing := max(r.Plan.Spec.Tunnel.Spacing, elbowRoom)
	s := r.newScene(page, room, elbowRoom*0.3, measure.Length(bays)*spacing+elbowRoom*0.3, r.First.Crown, Foot1, Foot2)
	top := r.First.Crown
	apart := top * 0.62 / rows
	whole := float64(bays)
	last := [rows]float64{whole, whole, whole - 0.4} // how far each has been hung
	held := measure.Length(last[rows-1]) * spacing
	one, two := s.helper(Foot1, spacing*0.3, s.at(spacing*0.05, apart*2.6)), s.helper(Foot2, held+elbowRoom*0.3, s.at(held, apart*2.6))
	s.play([]helper{one, two}, func() {
		for n := range bays + 1 {
			s.arch(measure.Length(n) * spacing)
			s.under(measure.Length(n)*spacing, fmt.Sprint(from+n*step))
		}
		for i := range rows {
			y := apart * (measure.Length(i) + 0.6)
			for bay := 0.0; bay < last[i]; bay++ {
				end := min(bay+1, last[i])
				a, b := s.at(measure.Length(bay)*spacing, y), s.at(measure.Length(end)*spacing, y)
				low := paper.Point{Y: 1.6}
				s.Stroke(paper.Path{{Verb: paper.Move, To: a}, {Verb: paper.Cubic, A: a.Add(b.Sub(a).Times(1.0 / 3)).Add(low), B: a.Add(b.Sub(a).Times(2.0 / 3)).Add(low), To: b}}, paper.Thin)
				for _, p := range []paper.Point{a, b} {
					s.Fill(paper.Circle(p, 0.9), paper.Black)
				}
			}
		}
	})
}

// Dropped draws a string hung from the ridge, seen from the side, or under an arch, seen from the entrance, with who climbs.
func (r Raising) Dropped(page *paper.Page, room paper.Rect, ladder, under bool) {
	top, half := r.First.Crown, max(r.Plan.Spec.Tunnel.Spacing, elbowRoom)/2
	if under {
		half = max(r.First.Widest, r.First.Span)/2 + 60
	}
	s := r.newScene(page, room, half+elbowRoom*1.2, half+elbowRoom*0.6, top, Crown, Ladder)
	from := half * 0.2
	hand := s.at(from, top)
	people := []helper{s.helper(Ladder, from, hand)}
	if ladder {
		people = []helper{s.onLadder(Ladder, from, top, hand), s.atLadder(from-elbowRoom*0.75, from)}
	}
	pipe := []paper.Point{s.at(-half, top), s.at(half, top)}
	if under {
		pipe = s.curve()
	}
	s.play(people, func() {
		s.pipe(pipe)
		for _, x := range [2]measure.Length{-half, half} {
			if !under {
				s.arch(x)
			}
		}
		for _, x := range [3]measure.Length{0.4, 0.55, 0.7} {
			over := r.First.PointAt(r.First.CrownTape + half*x)
			at := s.at(over.X, over.Y)
			if !under {
				at = s.at(half*x*1.2, top)
			}
			end := at.Add(paper.Point{Y: s.long(top / 5)})
			s.Line(at, end, paper.Thin)
			s.Fill(paper.Circle(end, 0.8), paper.Black)
		}
	})
}

// WalkedThrough draws the arch from the entrance with two people who carry the sticks that are to pass: one upright, the other across its top. Pipe is as thick as
// it is and sticks are thin, so that what is clear between them shows.
func (r Raising) WalkedThrough(page *paper.Page, room paper.Rect) {
	k, t := r.First, r.Plan.Spec.Tunnel
	side := max(k.Widest, k.Span, t.OpeningWidth)/2 + 60
	s := r.newScene(page, room, side+elbowRoom*0.2, side+elbowRoom*0.2, max(r.top(), t.OpeningHeight), Foot1, Foot2)
	s.Stroke(paper.Polyline(s.curve()...), paper.Pen{Width: max(paper.Thin.Width, s.long(k.Spec.Pipe.OD))})
	one := s.helper(Foot1, -elbowRoom*0.45, s.at(0, helperTall*0.6))
	two := s.helper(Foot2, elbowRoom*0.45, s.at(0, helperTall*0.7))
	s.play([]helper{one, two}, func() {
		s.Line(s.at(0, 0), s.at(0, t.OpeningHeight), paper.Thin)
		s.Line(s.at(-t.OpeningWidth/2, t.OpeningHeight), s.at(t.OpeningWidth/2, t.OpeningHeight), paper.Thin)
	})
}
