package draw

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/draw/paper"
)

// Lettering and room of a string's number with its box.
var unfoldNumber = paper.CellSmall

const (
	labelGap  paper.Length = 1.4 // from the box to the number
	labelHigh paper.Length = paper.TickBoxSide + 0.8
	labelPad  paper.Length = 0.6 // about them, where lines stop
	labelOff  paper.Length = 3.6 // from a line to them, where they stand beside it: clear of its signs
)

// signs keeps free what the strings' ends take.
func (v *unfolding) signs() {
	for _, s := range v.strands {
		v.taken = append(v.taken, s.signRects()...)
	}
}

// signRects are the boxes about a strand's two signs.
func (s strand) signRects() (list []paper.Rect) {
	box := func(from, toward paper.Point, long paper.Length) {
		c := from.Add(toward.Times(float64(long / 2)))
		half, across := long/2+0.3, cupRadius+0.3
		if abs(toward.Y) > abs(toward.X) {
			half, across = across, half
		}
		list = append(list, paper.Rect{X: c.X - half, Y: c.Y - across, W: 2 * half, H: 2 * across})
	}
	first, last := s.path[0], s.path[len(s.path)-1]
	if s.begins {
		box(first, s.path[1].Sub(first).Unit(), matedLong)
	}
	if s.ends {
		box(last, s.path[len(s.path)-2].Sub(last).Unit(), cupRadius*2)
	}
	return list
}

// labels finds each string's number its place: in its line, else beside it. Where less than half of a string is on this picture, its number may be left out.
func (v *unfolding) labels() {
	shortest := make([]int, len(v.strands)) // they have the least choice
	for i := range shortest {
		shortest[i] = i
	}
	slices.SortStableFunc(shortest, func(i, j int) int { return cmp.Compare(long(v.strands[i].path), long(v.strands[j].path)) })
	var later []int
	for _, own := range []bool{true, false} {
		for _, i := range shortest {
			if s := &v.strands[i]; s.own == own && !v.label(s, i) && own {
				later = append(later, i)
			}
		}
	}
	for _, over := range []bool{false, true} {
		later = slices.DeleteFunc(later, func(i int) bool { return v.labelFarOff(&v.strands[i], over) })
	}
	for _, i := range later {
		v.missing = append(v.missing, v.strands[i].Name)
	}
}

// form is how a string's number stands with its box.
type form int

const (
	abreast form = iota // the box, then the number
	stacked             // the box over the number
	turned              // the box over the number, which reads upward
)

// size is what a form takes.
func (s strand) size(f form) paper.Rect {
	r := paper.Rect{W: unfoldNumber.Width(s.Name), H: unfoldNumber.Ascent() * 0.8}
	if f == turned {
		r.W, r.H = r.H, r.W
	}
	switch {
	case s.own && f == abreast:
		r.W, r.H = r.W+paper.TickBoxSide+labelGap, labelHigh
	case s.own:
		r.W, r.H = max(r.W, paper.TickBoxSide), r.H+paper.TickBoxSide+labelGap
	}
	return r
}

// shares returns where along a straight part a number is tried: from its middle outward.
func shares() (list []float64) {
	const steps = 24
	for k := range steps {
		off := 0.5 * float64(k) / steps
		list = append(list, 0.5-off, 0.5+off)
	}
	return list
}

// label finds one string's number its place.
func (v *unfolding) label(s *strand, own int) bool {
	parts := longestFirst(s.path)
	for _, part := range parts {
		run := part[1].Sub(part[0])
		forms, upright := []form{abreast}, abs(run.Y) > abs(run.X)
		if upright {
			forms = []form{stacked, turned}
		}
		for _, f := range forms {
			size := s.size(f)
			need := size.W
			if upright {
				need = size.H
			}
			if run.Long() < need+2 {
				continue
			}
			for _, clear := range []bool{true, false} {
				for _, share := range shares() {
					c := part[0].Add(run.Times(share))
					if (!clear || v.offArches(c.Y, size.H)) && v.take(s, own, f, c, size) {
						return true
					}
				}
			}
		}
	}
	return v.labelBeside(s, parts)
}

// offArches reports whether what stands about a height on paper keeps off the arches' lines; what lies in one of them does not count.
func (v *unfolding) offArches(y, high paper.Length) bool {
	pos := float64((v.foot - y) / v.pitch)
	off := v.pitch * paper.Length(math.Abs(pos-math.Round(pos)))
	return off > high/2+labelPad || off < 0.01
}

// labelBeside finds a place beside a string's line, nearest first.
func (v *unfolding) labelBeside(s *strand, parts [][2]paper.Point) bool {
	for _, off := range []paper.Length{labelOff, 2 * labelOff} {
		for _, f := range []form{abreast, stacked} {
			size := s.size(f)
			for _, part := range parts {
				run := part[1].Sub(part[0])
				aside := paper.Point{X: size.W/2 + off}
				if abs(run.X) > abs(run.Y) {
					aside = paper.Point{Y: -size.H/2 - off}
				}
				for _, share := range shares() {
					c := part[0].Add(run.Times(share))
					if v.take(s, noStrand, f, c.Add(aside), size) || v.take(s, noStrand, f, c.Sub(aside), size) {
						return true
					}
				}
			}
		}
	}
	return false
}

// labelFarOff finds the free place nearest to a string's middle, with a leader from there that crosses no number; where there is none, to other places of its
// longest part. Only where there is room nowhere else it may stand over another's leader, which then stops at it.
func (v *unfolding) labelFarOff(s *strand, over bool) bool {
	size, part := s.size(abreast), longestFirst(s.path)[0]
	run := part[1].Sub(part[0])
	places := []paper.Point{halfway(s.path)}
	for _, share := range []float64{0.5, 0.25, 0.75, 0.4, 0.6, 0.1, 0.9} {
		places = append(places, part[0].Add(run.Times(share)))
	}
	for _, at := range places {
		r, ok := v.nearest(size, at, 70, func(r paper.Rect) bool {
			about := r.Inset(-labelPad)
			return v.inRoom(about) && v.apartFrom(about, noStrand) && (over || !v.led(about)) && v.clear(edgeToward(r, at), at)
		})
		if ok && v.take(s, noStrand, abreast, r.Centre(), size) {
			s.leader = []paper.Point{edgeToward(s.label, at), at}
			return true
		}
	}
	return false
}

// nearest returns the box of a size nearest to a point, within a reach, that is free.
func (v *unfolding) nearest(size paper.Rect, at paper.Point, reach paper.Length, free func(paper.Rect) bool) (best paper.Rect, ok bool) {
	xs, ys := steps(at.X, reach), steps(at.Y, reach)
	far, bestX, bestY := paper.Length(math.Inf(1)), 0, 0
	for _, i := range outward(len(xs)) {
		for _, k := range outward(len(ys)) {
			r := paper.Rect{X: xs[i] - size.W/2, Y: ys[k] - size.H/2, W: size.W, H: size.H}
			d := r.Centre().Sub(at).Long()
			if first := i < bestX || i == bestX && k < bestY; (d < far || d == far && first) && free(r) {
				best, far, bestX, bestY, ok = r, d, i, k, true
			}
		}
	}
	return best, ok
}

// steps returns places within a reach of one, in order.
func steps(at, reach paper.Length) (list []paper.Length) {
	for x := at - reach; x <= at+reach; x += reach / 35 {
		list = append(list, x)
	}
	return list
}

// outward returns the numbers below n from the middle outward: what is near is looked at first, and what is far seldom.
func outward(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = n/2 + (i+1)/2*(1-2*(i%2))
	}
	return list
}

// edgeToward returns the middle of the side of a box that faces a point.
func edgeToward(r paper.Rect, at paper.Point) paper.Point {
	c := r.Centre()
	switch {
	case at.X < r.X:
		return paper.Point{X: r.X - 0.4, Y: c.Y}
	case at.X > r.Right():
		return paper.Point{X: r.Right() + 0.4, Y: c.Y}
	case at.Y < r.Y:
		return paper.Point{X: c.X, Y: r.Y - 0.4}
	}
	return paper.Point{X: c.X, Y: r.Bottom() + 0.4}
}

// clear reports whether a leader crosses neither words nor a number.
func (v *unfolding) clear(from, to paper.Point) bool {
	hit := func(r paper.Rect) bool {
		_, _, ok := r.Part(from, to)
		return ok && r.W > 0
	}
	return !slices.ContainsFunc(v.strands, func(s strand) bool { return hit(s.label) }) && !slices.ContainsFunc(v.said, hit)
}

// led reports whether a leader goes through a box.
func (v *unfolding) led(r paper.Rect) bool {
	return slices.ContainsFunc(v.strands, func(s strand) bool {
		if s.leader == nil {
			return false
		}
		_, _, hit := r.Part(s.leader[0], s.leader[1])
		return hit
	})
}

// take puts a number at a place if that is free of signs, labels and strings, save the one in whose line it stands.
func (v *unfolding) take(s *strand, save int, f form, c paper.Point, size paper.Rect) bool {
	r := paper.Rect{X: c.X - size.W/2, Y: c.Y - size.H/2, W: size.W, H: size.H}
	about := r.Inset(-labelPad)
	if !v.inRoom(about) || !v.apartFrom(about, save) {
		return false
	}
	s.label, s.form = r, f
	v.taken = append(v.taken, about)
	return true
}

// longestFirst returns the straight parts of a line, longest first.
func longestFirst(line []paper.Point) (parts [][2]paper.Point) {
	for i := 1; i < len(line); i++ {
		parts = append(parts, [2]paper.Point{line[i-1], line[i]})
	}
	const hair = 1e-6 // what differs by no more is as long
	size := func(p [2]paper.Point) float64 { return math.Round(float64(p[1].Sub(p[0]).Long() / hair)) }
	slices.SortStableFunc(parts, func(p, q [2]paper.Point) int { return cmp.Compare(size(q), size(p)) })
	return parts
}

// noStrand stands for no string's place in the list.
const noStrand = -1

// apartFrom reports whether a box is free of signs, labels and strings, save one.
func (v *unfolding) apartFrom(r paper.Rect, save int) bool {
	return !slices.ContainsFunc(v.taken, func(o paper.Rect) bool { return boxesMeet(o, r) }) &&
		!v.anyLine(save, func(a, b paper.Point) bool { return boxesMeet(about(a, b), r) })
}

// anyLine reports whether some line of a cord, a joint or a string, save one, is such.
func (v *unfolding) anyLine(save int, is func(a, b paper.Point) bool) bool {
	for i := range v.strands {
		path := v.strands[i].path
		for k := 1; k < len(path) && i != save; k++ {
			if is(path[k-1], path[k]) {
				return true
			}
		}
	}
	return slices.ContainsFunc(v.feeds, func(f feed) bool { return is(nearestIn(f.box, f.at), f.at) }) ||
		slices.ContainsFunc(v.joints, func(j [2]paper.Point) bool { return is(j[0], j[1]) })
}

// inRoom reports whether a box is between the feet and within the picture's height.
func (v *unfolding) inRoom(r paper.Rect) bool {
	return r.X >= v.middle-v.half-1 && r.Right() <= v.middle+v.half+1 && r.Y >= v.room.Y && r.Bottom() <= v.room.Bottom()
}

// onPicture reports whether a box is on the picture.
func (v *unfolding) onPicture(r paper.Rect) bool {
	return r.X >= v.room.X && r.Right() <= v.room.Right() && r.Y >= v.room.Y && r.Bottom() <= v.room.Bottom()
}

// about is the box about a line with the bulbs on it.
func about(a, b paper.Point) paper.Rect {
	const bulb = beadRadius + 0.15
	return paper.Bounds(a, b).Inset(-bulb)
}

// boxesMeet reports whether two boxes have more than an edge in common.
func boxesMeet(a, b paper.Rect) bool {
	return a.X < b.Right() && b.X < a.Right() && a.Y < b.Bottom() && b.Y < a.Bottom()
}

// pieces calls draw with what is left of a line between the boxes that are taken.
func (v *unfolding) pieces(a, b paper.Point, draw func(a, b paper.Point)) {
	outside(v.taken, a, b, draw)
}

// outside calls draw with what is left of a line outside boxes.
func outside(boxes []paper.Rect, a, b paper.Point, draw func(a, b paper.Point)) {
	var cuts [][2]float64
	for _, r := range boxes {
		if from, to, hit := r.Part(a, b); hit {
			cuts = append(cuts, [2]float64{from, to})
		}
	}
	way := b.Sub(a)
	for _, f := range paper.Without(cuts) {
		draw(a.Add(way.Times(f[0])), a.Add(way.Times(f[1])))
	}
}

// strand draws a string: its line with its bulbs, its two ends, its number with the box.
func (v *unfolding) strand(s strand) {
	last := len(s.path) - 1
	line := slices.Clone(s.path)
	first, final := s.path[1].Sub(s.path[0]).Unit(), s.path[last].Sub(s.path[last-1]).Unit()
	switch {
	case s.begins && (s.into || s.cord != ""):
		mated(v.Board, s.path[0], first)
		line[0] = line[0].Add(first.Times(float64(matedLong)))
	case s.begins:
		Prongs(v.Board, s.path[0], first)
		line[0] = line[0].Add(first.Times(float64(barLong)))
	}
	if s.ends && !s.onward {
		back := s.path[last].Sub(final.Times(float64(cupRadius)))
		Capped(v.Board, back, final)
		line[last] = back
	}
	if s.afoot {
		Socket(v.Board, s.path[last].Sub(final.Times(float64(cupRadius))), final)
	}
	bulbs := 0
	var label []paper.Rect
	if s.label.W > 0 {
		label = append(label, s.label.Inset(-labelPad))
	}
	for i := 1; i < len(line); i++ {
		outside(label, line[i-1], line[i], func(a, b paper.Point) {
			v.Line(a, b, paper.Thick)
			bulbs = beads(v.Page, a, b, StringInks(s.Label), slices.Index(v.kinds, s.Kind), bulbs)
		})
	}
	if s.Run.Drop {
		v.comb(line[0], line[last])
	}
	if s.leader != nil {
		outside(v.texts(), s.leader[0], s.leader[1], func(a, b paper.Point) { v.Line(a, b, paper.Thin) })
		v.Dot(s.leader[1], paper.Black)
	}
	v.number(s)
}

// texts are the boxes about all that is written, where leaders stop.
func (v *unfolding) texts() (list []paper.Rect) {
	const pad = 0.3 // a leader begins farther from its number
	for _, r := range v.said {
		list = append(list, r.Inset(-pad))
	}
	for _, s := range v.strands {
		if s.label.W > 0 {
			list = append(list, s.label.Inset(-pad))
		}
	}
	return list
}

// dropTeeth is how long the lines are that hang from a drop.
const dropTeeth paper.Length = 1.9

// comb draws what hangs from a drop.
func (v *unfolding) comb(a, b paper.Point) {
	hang := paper.Point{Y: dropTeeth}
	if abs(b.Y-a.Y) > abs(b.X-a.X) {
		hang = paper.Point{X: -dropTeeth}
	}
	teeth(a, b, hang, func(p, q paper.Point) { v.pieces(p, q, func(a, b paper.Point) { v.Line(a, b, paper.Thin) }) })
}

// teeth calls draw with the short lines that hang from a line.
func teeth(a, b, hang paper.Point, draw func(p, q paper.Point)) {
	way := b.Sub(a)
	n := int(way.Long() / beadStep)
	for i := range n {
		p := a.Add(way.Times((float64(i) + 0.5) / float64(n)))
		draw(p, p.Add(hang))
	}
}

// number sets a string's number and, where its middle is on the picture, the box to tick.
func (v *unfolding) number(s strand) {
	r, up := s.label, unfoldNumber.Ascent()*0.74
	if r.W == 0 {
		return
	}
	if s.own {
		at := paper.Point{X: r.Centre().X - paper.TickBoxSide/2, Y: r.Y}
		if s.form == abreast {
			at = paper.Point{X: r.X, Y: r.Centre().Y - paper.TickBoxSide/2}
			_, r = r.SplitLeft(paper.TickBoxSide + labelGap)
		} else {
			_, r = r.SplitTop(paper.TickBoxSide + labelGap)
		}
		v.Page.TickBox(at)
	}
	c := r.Centre()
	if s.form == turned {
		v.TurnedText(paper.Point{X: c.X + up/2, Y: c.Y}, math.Pi/2, s.Name, unfoldNumber)
		return
	}
	v.Text(paper.Point{X: c.X, Y: c.Y + up/2}, paper.AtMiddle, s.Name, unfoldNumber)
}

// abs returns a length without its sign.
func abs(l paper.Length) paper.Length { return max(l, -l) }
