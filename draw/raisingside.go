package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A picture from the side: arches edge on, the first of them at x = 0, the walk to the right.

// Held draws the first arch from the side, held lengthwise: by its guys, else by a person.
func (r Raising) Held(page *paper.Page, room paper.Rect, number int) {
	guys := r.guyWays(number)
	_, out := r.Plan.Spec.Held()
	left, right := elbowRoom*1.4, elbowRoom*1.8
	if guys[0] {
		left = max(left, out+elbowRoom*0.5)
	}
	if guys[1] {
		right = max(right, out+elbowRoom*0.5)
	}
	s := r.newScene(page, room, left, right, r.First.Crown)
	s.ground()
	holder := s.helper("C", elbowRoom*0.55, s.at(0, helperTall*0.62), s.at(0, helperTall*0.85))
	holder.draw(s.Board)
	s.arch(0)
	s.guys(0, number)
	holder.grip(s.Board)
	s.name(holder)
	s.archName(0, number)
	s.guyNames(0, number)
}

// guyWays says whether an arch has guy stakes before it and beyond it.
func (r Raising) guyWays(number int) (ways [2]bool) {
	leg, ok := r.Plan.Ground.Stake(ground.Leg(spec.Left, number))
	for _, s := range r.Plan.Stakes {
		if ok && s.Guy && s.Arch == number {
			if s.Along < leg.Along {
				ways[0] = true
			} else {
				ways[1] = true
			}
		}
	}
	return ways
}

// guyStakes names the guy stakes of an arch on one side of it.
func (r Raising) guyStakes(number int, beyond bool) (names []string) {
	leg, _ := r.Plan.Ground.Stake(ground.Leg(spec.Left, number))
	for _, s := range r.Plan.Stakes {
		if s.Guy && s.Arch == number && (s.Along >= leg.Along) == beyond {
			names = append(names, s.String())
		}
	}
	return names
}

// arch draws an arch edge on with its crown fitting.
func (s *scene) arch(x measure.Length) {
	s.pipe([]paper.Point{s.at(x, 0), s.at(x, s.First.Crown)})
	top := s.at(x, s.First.Crown)
	s.Fill(paper.Box(paper.Rect{X: top.X - 1.5, Y: top.Y - 1.5, W: 3, H: 3}), paper.Black)
}

// guys draws the guys of an arch with their stakes.
func (s *scene) guys(x measure.Length, number int) {
	from, out := s.Plan.Spec.Held()
	for i, there := range s.guyWays(number) {
		if there {
			way := measure.Length(2*i - 1)
			s.Line(s.at(x, from), s.at(x+way*out, 0), paper.Thin)
			s.Line(s.at(x+way*out, 0), s.at(x+way*out*1.04, 150), paper.Emphasis)
			s.cap(s.at(x+way*out*1.04, 150))
		}
	}
}

func (s *scene) guyNames(x measure.Length, number int) {
	_, out := s.Plan.Spec.Held()
	for i, there := range s.guyWays(number) {
		if there {
			way := measure.Length(2*i - 1)
			text := ""
			for k, name := range s.guyStakes(number, i == 1) {
				if k > 0 {
					text += "\n"
				}
				text += name
			}
			s.Label(place.Label{At: s.at(x+way*out, 0), Text: text, Lettering: paper.CellSmall, Toward: paper.Point{X: paper.Length(-way) * 0.6, Y: -1}, Clear: 2.5, Leader: place.Bare, Reach: 20})
		}
	}
}

// archName sets an arch's number over its crown.
func (s *scene) archName(x measure.Length, number int) {
	s.Label(place.Label{At: s.at(x, s.First.Crown), Text: fmt.Sprint(number), Lettering: paper.CellSmall, Toward: paper.Point{Y: -1}, Clear: 1.6, Leader: place.Bare, Reach: 10})
}

// Second draws the second arch raised and the first ridge piece put in: into the new crown first, then sprung into the old one.
func (r Raising) Second(page *paper.Page, room paper.Rect, first, second int, ridge bool) {
	spacing := r.Plan.Spec.Tunnel.Spacing
	s := r.newScene(page, room, elbowRoom*1.5, spacing+elbowRoom*2.6, r.First.Crown*1.06)
	s.ground()
	top := r.First.Crown
	a := s.helper("A", -elbowRoom*0.55, s.at(0, helperTall*0.62), s.at(0, helperTall*0.85))
	b := s.helper("B", spacing+elbowRoom*0.55, s.at(spacing, helperTall*0.62), s.at(spacing, helperTall*0.85))
	people := []helper{a, b}
	if ridge {
		c := r.onLadder(s, "C", spacing/2, s.at(spacing*0.36, top*1.03), s.at(spacing*0.66, top*1.02))
		people = append(people, c)
	}
	for _, h := range people {
		h.draw(s.Board)
	}
	s.arch(0)
	s.arch(spacing)
	if ridge {
		s.Stroke(paper.Path{{Verb: paper.Move, To: s.at(spacing, top)}, {Verb: paper.Cubic, A: s.at(spacing*0.7, top), B: s.at(spacing*0.4, top*1.06), To: s.at(spacing*0.14, top*1.06)}}, paper.Pen{Width: pipeOnPaper})
		s.Arrow(s.at(spacing*0.1, top*1.06), s.at(10, top*1.0).Add(paper.Point{X: 1.4, Y: -1.2}), paper.Thin)
	}
	for _, h := range people {
		h.grip(s.Board)
	}
	if ridge {
		s.Label(place.Label{At: s.at(spacing, top), Text: "1st", Lettering: paper.Strong, Toward: paper.Point{X: 1, Y: -0.2}, Clear: 2})
		s.Label(place.Label{At: s.at(0, top), Text: "2nd", Lettering: paper.Strong, Toward: paper.Point{X: -1, Y: -0.2}, Clear: 2})
	}
	s.name(people...)
	for i, x := range [2]measure.Length{0, spacing} {
		s.Label(place.Label{At: s.at(x, 0), Text: fmt.Sprintf("arch %d", [2]int{first, second}[i]), Lettering: paper.Floor, Toward: paper.Point{X: paper.Length(2*i - 1), Y: -1}, Clear: 1.5, Leader: place.Bare, Reach: 30})
	}
}

// onLadder stands a person on a stepladder so high that they reach the crown.
func (r Raising) onLadder(s *scene, letter string, x measure.Length, hands ...paper.Point) helper {
	up := max(0, r.First.Crown*1.03-helperTall*1.1)
	if up > 0 {
		const spread = 0.34
		for _, way := range [2]measure.Length{-1, 1} {
			s.Line(s.at(x, up+helperTall*0.3), s.at(x+way*(up+helperTall*0.3)*spread, 0), paper.Thick)
		}
		for h := up; h > 150; h -= 260 {
			half := (up + helperTall*0.3 - h) * spread
			s.Line(s.at(x-half, h), s.at(x+half*0.2, h), paper.Thick)
		}
	}
	h := s.helper(letter, x, hands...)
	h.feet = s.at(x, up)
	return h
}

// Running draws a row of arches from the side with the tape along the ridge that is read at the crown of the last of them.
func (r Raising) Running(page *paper.Page, room paper.Rect, from, to int, ridge bool, distance string) {
	spacing := r.Plan.Spec.Tunnel.Spacing
	bays := measure.Length(to - from)
	room.Y += 7 // the tape's number, over the crowns
	room.H -= 7
	s := r.newScene(page, room, elbowRoom*0.4, bays*spacing+elbowRoom*0.4, r.First.Crown)
	s.Area.Y -= 7
	s.Area.H += 7
	s.ground()
	for n := from; n <= to; n++ {
		s.arch(measure.Length(n-from) * spacing)
	}
	if ridge {
		s.pipe([]paper.Point{s.at(0, r.First.Crown), s.at(bays*spacing, r.First.Crown)})
	}
	s.Dimension(place.Dimension{From: s.at(0, r.First.Crown), To: s.at(bays*spacing, r.First.Crown), Offset: 6, Text: distance, Lettering: paper.DimSmall, Ends: place.Arrows})
	for n := from; n <= to; n++ {
		s.Label(place.Label{At: s.at(measure.Length(n-from)*spacing, r.First.Crown*0.45), Text: fmt.Sprint(n), Lettering: paper.CellSmall, Toward: paper.Point{X: 1}, Clear: 0.8})
	}
}

// Finished draws the end of the row: its last arches, the guys of the last, and the bucket that the caps are counted in.
func (r Raising) Finished(page *paper.Page, room paper.Rect, last int, ridge bool, caps string) {
	spacing := r.Plan.Spec.Tunnel.Spacing
	_, out := r.Plan.Spec.Held()
	before := min(2, last-1)
	right := elbowRoom * 1.6
	if r.guyWays(last)[1] {
		right = max(right, out+elbowRoom*0.9)
	}
	left := measure.Length(before)*spacing + elbowRoom*1.5
	if r.guyWays(last)[0] {
		left = max(left, out+elbowRoom*0.9)
	}
	s := r.newScene(page, room, left, right, r.First.Crown)
	s.ground()
	for n := last - before; n <= last; n++ {
		s.arch(measure.Length(n-last) * spacing)
	}
	if ridge && before > 0 {
		s.pipe([]paper.Point{s.at(-measure.Length(before)*spacing, r.First.Crown), s.at(0, r.First.Crown)})
	}
	s.guys(0, last)
	bucket := s.at(-measure.Length(before)*spacing-elbowRoom*0.9, 0)
	s.Stroke(paper.Polygon(bucket.Add(paper.Point{X: -2.2}), bucket.Add(paper.Point{X: -3, Y: -5.5}), bucket.Add(paper.Point{X: 3, Y: -5.5}), bucket.Add(paper.Point{X: 2.2})), paper.Thick)
	s.archName(0, last)
	s.guyNames(0, last)
	s.Label(place.Label{At: bucket.Add(paper.Point{Y: -5.5}), Text: caps, Lettering: paper.CellSmall, Toward: paper.Point{Y: -1}, Clear: 0.5, Leader: place.Bare, Reach: 20})
}
