package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A picture from the side: arches edge on, the first of them at x = 0, the walk to the right.

// Held draws the first arch from the side, held upright by the guard while its guys and braces, where it has any, are fixed.
func (r Raising) Held(page *paper.Page, room paper.Rect, number int) {
	ties := r.ties(number)
	reach := [2]measure.Length{elbowRoom * 0.6, elbowRoom * 1.3} // before the arch, beyond it
	var tied [2]measure.Length                                   // how far out the farthest tie ends
	for _, t := range ties {
		tied[t.way] = max(tied[t.way], t.out)
		reach[t.way] = max(reach[t.way], t.out+elbowRoom*0.9)
	}
	aside := elbowRoom * 0.55 // the guard's place: where nothing is tied
	if tied[1] > 0 && tied[0] == 0 {
		aside = -aside
		reach[0] = max(reach[0], elbowRoom*1.2)
	}
	s := r.newScene(page, room, reach[0], reach[1], r.First.Crown, Foot1, Guard, Foot2)
	people := []helper{s.holds(Guard, aside, 0)}
	for i, out := range tied {
		if out > 0 {
			way := measure.Length(2*i - 1)
			people = append(people, s.helper([2]string{Foot1, Foot2}[i], way*(out+elbowRoom*0.3), s.at(way*out*0.82, helperTall*0.22)))
		}
	}
	s.play(people, func() {
		s.arch(0)
		s.tie(ties)
		s.under(0, fmt.Sprint("arch ", number))
	})
}

// tie is what holds an arch lengthwise on one way: a guy, or a brace.
type tie struct {
	way       int // 0 before the arch, 1 beyond it
	from, out measure.Length
	stiff     bool // it is of pipe
}

// ties are the guys and the braces of an arch, one for both of its legs.
func (r Raising) ties(number int) (list []tie) {
	leg, ok := r.Plan.Ground.Stake(ground.Leg(spec.Left, number))
	for _, s := range r.Plan.Stakes {
		if !ok || !s.Guy || s.Arch != number || s.Side != spec.Left {
			continue
		}
		t := tie{from: s.Tied, out: s.Along - leg.Along, stiff: s.Kind() == ground.OfBrace && !r.Plan.Spec.Braces.Line}
		if t.way = 1; t.out < 0 {
			t.way, t.out = 0, -t.out
		}
		list = append(list, t)
	}
	return list
}

// arch draws an arch edge on with its crown fitting.
func (s *scene) arch(x measure.Length) {
	s.pipe([]paper.Point{s.at(x, 0), s.at(x, s.First.Crown)})
	top := s.at(x, s.First.Crown)
	fitting := paper.Box(paper.Rect{X: top.X - 1.4, Y: top.Y - 1.4, W: 2.8, H: 2.8})
	s.Fill(fitting, paper.White)
	s.Stroke(fitting, paper.Thick)
}

// clearOfFitting is how far under a crown a guy's knot is drawn at least, or it reads as tied to the fitting; on an arch drawn low, halfway down.
const clearOfFitting paper.Length = 3

// tie draws what holds an arch lengthwise, with the stakes that it goes to.
func (s *scene) tie(ties []tie) {
	for _, t := range ties {
		out := measure.Length(2*t.way-1) * t.out
		knot, pen := s.at(0, t.from), paper.Thin
		top := s.at(0, s.First.Crown).Y
		knot.Y = max(knot.Y, min(top+clearOfFitting, (top+s.zero.Y)/2))
		if t.stiff {
			pen = paper.Emphasis
		}
		s.Line(knot, s.at(out, 0), pen)
		s.Fill(paper.Circle(knot, 1), paper.Black)
		s.Line(s.at(out, 0), s.at(out*1.04, 150), paper.Emphasis)
		s.cap(s.at(out*1.04, 150))
	}
}

// Second draws the second arch raised and the first ridge piece put in: into the new crown first, then sprung into the old one; taken down, out of the old
// crown first, the guard at the arch that will stand alone. Where a line alone joins the arches it is knotted to both crowns.
func (r Raising) Second(page *paper.Page, room paper.Rect, first, second int, ridge, ladder bool) {
	spacing := max(r.Plan.Spec.Tunnel.Spacing, elbowRoom)
	s := r.newScene(page, room, elbowRoom*1.2, spacing+elbowRoom*1.2, r.First.Crown*1.14, Guard, Crown, Ladder, bothFeet)
	top := r.First.Crown
	people := []helper{s.holds(Guard, -elbowRoom*0.5, 0), s.holds(bothFeet, spacing+elbowRoom*0.5, spacing)}
	line := r.onLine(ridge)
	if ladder && (ridge || line) {
		hands := []paper.Point{s.at(spacing*0.36, top*1.03), s.at(spacing*0.7, top*1.02)}
		if line {
			hands = []paper.Point{s.at(spacing*0.82, top), s.at(spacing*0.96, top*1.02)}
		}
		people = append(people, s.onLadder(Ladder, spacing*0.55, top, hands...), s.atLadder(spacing*0.18, spacing*0.55))
	}
	s.play(people, func() {
		s.arch(0)
		s.arch(spacing)
		if ridge {
			s.Stroke(paper.Path{{Verb: paper.Move, To: s.at(spacing, top)}, {Verb: paper.Cubic, A: s.at(spacing*0.7, top), B: s.at(spacing*0.5, top*1.1), To: s.at(spacing*0.34, top*1.1)}}, paper.Pen{Width: pipeOnPaper})
			s.moves(s.at(spacing*0.32, top*1.1), s.at(10, top).Add(paper.Point{X: 1.8, Y: -0.8}))
		}
		if line {
			s.crownLine(spacing, 1)
		}
		if a, b := fmt.Sprint(first), fmt.Sprint(second); s.at(spacing, 0).X-s.at(0, 0).X > (paper.CellSmall.Width(a)+paper.CellSmall.Width(b))/2+1 {
			s.under(0, a)
			s.under(spacing, b)
		} else { // arches high and near each other: small, their numbers would touch
			s.under(spacing/2, a+", "+b)
		}
	})
}

// onLine reports whether a line along the crowns joins arches that no ridge does.
func (r Raising) onLine(ridge bool) bool { return !ridge && r.Plan.Spec.CrownLine() }

// crownLine draws the line along the crowns over so many bays, a knot at each crown.
func (s *scene) crownLine(spacing measure.Length, bays int) {
	top := s.First.Crown
	s.Line(s.at(0, top), s.at(spacing*measure.Length(bays), top), paper.Thick)
	for i := range bays + 1 {
		s.Fill(paper.Circle(s.at(spacing*measure.Length(i), top), 1), paper.Black)
	}
}

// onLadder stands a person on a stepladder so high that they reach a height; on the ground where that is low.
func (s *scene) onLadder(called string, x, height measure.Length, hands ...paper.Point) helper {
	up := max(0, height*1.03-helperTall*1.1)
	if up > 0 {
		const spread, over = 0.3, helperTall * 0.45 // to their hips: nobody stands on the top
		for _, way := range [2]measure.Length{-1, 1} {
			s.Line(s.at(x, up+over), s.at(x+way*(up+over)*spread, 0), paper.Thick)
		}
		for h := up; h > 150; h -= 260 {
			half := (up + over - h) * spread
			s.Line(s.at(x-half, h), s.at(x+half*0.2, h), paper.Thick)
		}
	}
	h := s.helper(called, x, hands...)
	h.feet = s.at(x, up)
	return h
}

// atLadder returns who holds a ladder at its foot, standing at x.
func (s *scene) atLadder(x, ladder measure.Length) helper {
	grip := x + (ladder-x)*0.55
	return s.helper(Crown, x, s.at(grip, helperTall*0.5), s.at(grip, helperTall*0.62))
}

// Running draws a row of arches from the side: the newest is held until its ridge piece is in; the tape along the ridge starts at the middle of crown 1. Where a line alone joins them
// the guard holds the last that it is knotted to.
func (r Raising) Running(page *paper.Page, room paper.Rect, from, to int, ridge bool) {
	spacing := max(r.Plan.Spec.Tunnel.Spacing, elbowRoom)
	bays := measure.Length(to - from)
	names, line := []string{bothFeet}, r.onLine(ridge)
	if line {
		names = append(names, Guard)
	}
	s := r.newScene(page, room, elbowRoom*0.5, bays*spacing+elbowRoom*1.2, r.First.Crown*1.12, names...)
	top := r.First.Crown
	people := []helper{s.holds(bothFeet, bays*spacing+elbowRoom*0.5, bays*spacing)}
	if line {
		people = append(people, s.holds(Guard, (bays-1)*spacing+elbowRoom*0.5, (bays-1)*spacing))
	}
	s.play(people, func() {
		for n := from; n <= to; n++ {
			s.arch(measure.Length(n-from) * spacing)
			s.under(measure.Length(n-from)*spacing, fmt.Sprint(n))
		}
		if ridge {
			s.pipe([]paper.Point{s.at(0, top), s.at((bays-1)*spacing, top)})
			s.Arrow(s.at(bays*spacing, top).Add(paper.Point{X: -1.5}), s.at((bays-0.8)*spacing, top), paper.Thick)
			s.tapeAlong(s.at(0, top), s.at(bays*spacing, top))
		}
		if line {
			s.crownLine(spacing, to-from-1)
		}
	})
}

// tapeAlong draws a tape a little over a line of crowns.
func (s *scene) tapeAlong(from, to paper.Point) {
	const over = 3.2
	from.Y, to.Y = from.Y-over, to.Y-over
	s.Line(from, to, paper.Thin)
	s.Arrowhead(from, from.Sub(to), paper.Black)
	s.Arrowhead(to, to.Sub(from), paper.Black)
	s.Text(paper.Point{X: s.Area.X, Y: from.Y - 1.2}, paper.AtLeft, "tape", names)
}
