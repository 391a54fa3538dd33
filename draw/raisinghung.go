package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// Rows draws rows of lights being hung on one wall, seen from the side: a tie at every arch, some sag between, begun at the arch from and on toward another.
func (r Raising) Rows(page *paper.Page, room paper.Rect, from, to int) {
	var high []measure.Length // of each row, from below
	for _, row := range r.Plan.Lights.Rows {
		if row.Wall == r.Plan.Lights.Paths[0].Wall {
			high = append(high, row.Heights[0])
		}
	}
	step, bays := 1, min(2, max(to-from, from-to))
	if to < from {
		step = -1
	}
	spacing := max(r.Plan.Spec.Tunnel.Spacing, elbowRoom)
	s := r.newScene(page, room, elbowRoom*0.3, measure.Length(bays)*spacing+elbowRoom*0.3, r.First.Crown, Foot1, Foot2)
	held := (measure.Length(bays) - 0.4) * spacing // so far the highest has been hung
	top := high[len(high)-1]
	one, two := s.helper(Foot1, spacing*0.3, s.at(spacing*0.05, top)), s.helper(Foot2, held+elbowRoom*0.3, s.at(held, top))
	s.play([]helper{one, two}, func() {
		for n := range bays + 1 {
			s.arch(measure.Length(n) * spacing)
			s.under(measure.Length(n)*spacing, fmt.Sprint(from+n*step))
		}
		for _, y := range high {
			for bay := measure.Length(0); bay < measure.Length(bays); bay++ {
				a, b := s.at(bay*spacing, y), s.at((bay+1)*spacing, y)
				if y == top {
					b.X = min(b.X, s.at(held, y).X)
				}
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
	high := top
	if under {
		half, high = max(r.First.Widest, r.First.Span)/2+60, max(top, r.top())
	}
	s := r.newScene(page, room, half+elbowRoom*1.2, half+elbowRoom*0.6, high, Crown, Ladder)
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
			at := s.at(over.X, r.level(over))
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
