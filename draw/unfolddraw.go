package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout"
)

// Lettering and room of a string's number with its box.
var unfoldNumber = paper.CellSmall

const (
	labelGap  paper.Length = 1.4 // from the box to the number
	labelHigh paper.Length = paper.TickBoxSide + 0.8
	labelPad  paper.Length = 0.8 // about them, where lines stop
	labelOff  paper.Length = 3.6 // from a line to them, where they stand beside it: clear of its signs
)

// StringKinds returns the kinds of string of a plan, those in rows first and in their order. The k-th goes by the k-th letter.
func StringKinds(plan *layout.Plan) []string {
	var kinds []string
	add := func(kind string) {
		if !slices.Contains(kinds, kind) {
			kinds = append(kinds, kind)
		}
	}
	for _, r := range plan.Lights.Rows {
		add(r.Kind)
	}
	for _, s := range plan.Strings {
		add(s.Kind)
	}
	return kinds
}

// KindLetter returns the letter that a kind of string goes by.
func KindLetter(kinds []string, kind string) string {
	return string(rune('A' + slices.Index(kinds, kind)%26))
}

// text is what stands at a string: its number, with its kind's letter where there are several.
func (v *unfolding) text(s strand) string {
	if len(v.kinds) > 1 {
		return s.Name + " " + KindLetter(v.kinds, s.Kind)
	}
	return s.Name
}

// signs keeps free what the strings' ends take.
func (v *unfolding) signs() {
	for _, s := range v.strands {
		for _, r := range s.signRects() {
			v.taken = append(v.taken, r)
		}
	}
}

// signRects are the boxes about a strand's two signs.
func (s strand) signRects() (list []paper.Rect) {
	box := func(from, toward paper.Point, long paper.Length) {
		c := from.Add(toward.Times(float64(long / 2)))
		half := long/2 + 0.3
		list = append(list, paper.Rect{X: c.X - half, Y: c.Y - half, W: 2 * half, H: 2 * half})
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

// labels finds each string's number its place: in its line, else beside it.
func (v *unfolding) labels() {
	for i := range v.strands {
		s := &v.strands[i]
		if !v.label(s, i) {
			v.missing = append(v.missing, s.Name)
		}
	}
}

// shares are where along a straight part a number is tried.
var shares = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85}

func (v *unfolding) label(s *strand, own int) bool {
	text := unfoldNumber.Width(v.text(*s))
	long := paper.Rect{W: text, H: labelHigh}
	tall := paper.Rect{W: text, H: unfoldNumber.Ascent()}
	if s.begins {
		long.W += paper.TickBoxSide + labelGap
		tall.W, tall.H = max(tall.W, paper.TickBoxSide), tall.H+paper.TickBoxSide+labelGap
	}
	for beside := range 2 {
		for _, part := range longestFirst(s.path) {
			a, b := part[0], part[1]
			upright := abs(b.Y-a.Y) > abs(b.X-a.X)
			size := long
			if upright && beside == 0 {
				size = tall
			}
			need := size.W
			if upright {
				need = size.H
			}
			run := b.Sub(a)
			if run.Long() < need+2 && beside == 0 {
				continue
			}
			for _, share := range shares {
				for _, side := range []paper.Length{1, -1} {
					c := a.Add(run.Times(share))
					if beside > 0 && upright {
						c.X += side * (size.W/2 + labelOff)
					} else if beside > 0 {
						c.Y -= side * (size.H/2 + labelOff)
					}
					r := paper.Rect{X: c.X - size.W/2, Y: c.Y - size.H/2, W: size.W, H: size.H}
					if v.open(r.Inset(-labelPad), own, beside == 0) {
						s.label, s.tall = r, upright && beside == 0
						v.taken = append(v.taken, r.Inset(-labelPad))
						return true
					}
					if beside == 0 {
						break
					}
				}
			}
		}
	}
	return false
}

// longestFirst returns the straight parts of a line, longest first.
func longestFirst(line []paper.Point) (parts [][2]paper.Point) {
	for i := 1; i < len(line); i++ {
		parts = append(parts, [2]paper.Point{line[i-1], line[i]})
	}
	slices.SortStableFunc(parts, func(p, q [2]paper.Point) int {
		switch d := q[1].Sub(q[0]).Long() - p[1].Sub(p[0]).Long(); {
		case d > 1e-9:
			return 1
		case d < -1e-9:
			return -1
		}
		return 0
	})
	return parts
}

// open reports whether a box is free of signs, labels and strings, of its own too unless it stands in its line.
func (v *unfolding) open(r paper.Rect, own int, inLine bool) bool {
	if r.X < v.middle-v.half-1 || r.Right() > v.middle+v.half+1 || r.Y < v.room.Y || r.Bottom() > v.room.Bottom() {
		return false
	}
	if slices.ContainsFunc(v.taken, func(o paper.Rect) bool { return boxesMeet(o, r) }) {
		return false
	}
	for i, s := range v.strands {
		if i == own && inLine {
			continue
		}
		for k := 1; k < len(s.path); k++ {
			if boxesMeet(paper.Rect{X: min(s.path[k-1].X, s.path[k].X) - 0.9, Y: min(s.path[k-1].Y, s.path[k].Y) - 0.9,
				W: abs(s.path[k].X-s.path[k-1].X) + 1.8, H: abs(s.path[k].Y-s.path[k-1].Y) + 1.8}, r) {
				return false
			}
		}
	}
	return true
}

// boxesMeet reports whether two boxes have more than an edge in common.
func boxesMeet(a, b paper.Rect) bool {
	return a.X < b.Right() && b.X < a.Right() && a.Y < b.Bottom() && b.Y < a.Bottom()
}

// pieces calls draw with what is left of a line between the boxes that are taken.
func (v *unfolding) pieces(a, b paper.Point, draw func(a, b paper.Point)) {
	free := [][2]float64{{0, 1}}
	way := b.Sub(a)
	for _, r := range v.taken {
		from, to, hit := inBox(r, a, way)
		if !hit {
			continue
		}
		var left [][2]float64
		for _, f := range free {
			for _, part := range [2][2]float64{{f[0], min(f[1], from)}, {max(f[0], to), f[1]}} {
				if part[1] > part[0]+1e-9 {
					left = append(left, part)
				}
			}
		}
		free = left
	}
	for _, f := range free {
		draw(a.Add(way.Times(f[0])), a.Add(way.Times(f[1])))
	}
}

// inBox returns the part of a way that lies in a box.
func inBox(r paper.Rect, a, way paper.Point) (from, to float64, ok bool) {
	from, to = 0, 1
	for _, e := range [2][3]paper.Length{{a.X, way.X, 0}, {a.Y, way.Y, 1}} {
		lo, hi := r.X, r.Right()
		if e[2] == 1 {
			lo, hi = r.Y, r.Bottom()
		}
		if e[1] == 0 {
			if e[0] <= lo || e[0] >= hi {
				return 0, 0, false
			}
			continue
		}
		p, q := float64((lo-e[0])/e[1]), float64((hi-e[0])/e[1])
		from, to = max(from, min(p, q)), min(to, max(p, q))
	}
	return from, to, to > from
}

// strand draws a string: its line with its bulbs, its two ends, its number with the box.
func (v *unfolding) strand(s strand) {
	last := len(s.path) - 1
	line := slices.Clone(s.path)
	first, final := s.path[1].Sub(s.path[0]).Unit(), s.path[last].Sub(s.path[last-1]).Unit()
	switch {
	case s.begins && s.into:
		Mated(v.Board, s.path[0], first)
		line[0] = line[0].Add(first.Times(float64(matedLong)))
	case s.begins:
		Prongs(v.Board, s.path[0], first)
		line[0] = line[0].Add(first.Times(float64(barLong)))
	}
	if s.ends && !s.onward {
		back := s.path[last].Sub(final.Times(float64(cupRadius)))
		Socket(v.Board, back, final)
		line[last] = back
	}
	inks, bulbs := StringInks(s.Label), 0
	for i := 1; i < len(line); i++ {
		v.besideLabel(s, line[i-1], line[i], func(a, b paper.Point) {
			v.Line(a, b, paper.Thick)
			bulbs = v.beads(a, b, inks, bulbs)
		})
	}
	if s.ends && s.onward {
		v.joint(s)
	}
	if s.Run.Drop {
		v.comb(line[0], line[last])
	}
	v.number(s)
}

// besideLabel calls draw with what is left of a line outside its string's label.
func (v *unfolding) besideLabel(s strand, a, b paper.Point, draw func(a, b paper.Point)) {
	way := b.Sub(a)
	from, to, hit := inBox(s.label.Inset(-labelPad), a, way)
	if !hit || s.label.W == 0 {
		draw(a, b)
		return
	}
	if from > 0 {
		draw(a, a.Add(way.Times(from)))
	}
	if to < 1 {
		draw(a.Add(way.Times(to)), b)
	}
}

// beads draws bulbs along a line, and returns how many there have been on the string.
func (v *unfolding) beads(a, b paper.Point, inks []paper.Colour, before int) int {
	way := b.Sub(a)
	n := int(way.Long() / beadStep)
	for i := range n {
		disc := bead(a.Add(way.Times((float64(i)+0.5)/float64(n))), beadRadius)
		v.Page.Fill(disc, inks[(before+i)%len(inks)])
		v.Page.Stroke(disc, ring)
	}
	return before + n
}

// joint draws the way from a string's socket to the prongs that go into it.
func (v *unfolding) joint(s strand) {
	for _, c := range v.Plan.Chains {
		k := slices.Index(c.Strings, s.Name)
		if k < 0 || k+1 == len(c.Strings) {
			continue
		}
		for _, next := range v.strands {
			if from := s.path[len(s.path)-1]; next.Name == c.Strings[k+1] && next.begins && from != next.path[0] {
				v.Line(from, next.path[0], paper.Thick)
			}
		}
	}
}

// comb draws what hangs from a drop.
func (v *unfolding) comb(a, b paper.Point) {
	way := b.Sub(a)
	n := int(way.Long() / (1.5 * beadStep))
	hang := paper.Point{Y: 1.9}
	if abs(way.Y) > abs(way.X) {
		hang = paper.Point{X: -1.9}
	}
	for i := range n {
		p := a.Add(way.Times((float64(i) + 1) / float64(n+1)))
		v.pieces(p, p.Add(hang), func(a, b paper.Point) { v.Line(a, b, paper.Thin) })
	}
}

// number sets a string's number and, where its prongs are on the picture, the box to tick.
func (v *unfolding) number(s strand) {
	r := s.label
	if r.W == 0 {
		return
	}
	text, up := v.text(s), unfoldNumber.Ascent()*0.74
	switch {
	case !s.begins:
		v.Text(paper.Point{X: r.Centre().X, Y: r.Centre().Y + up/2}, paper.AtMiddle, text, unfoldNumber)
	case s.tall:
		v.Page.TickBox(paper.Point{X: r.Centre().X - paper.TickBoxSide/2, Y: r.Y})
		v.Text(paper.Point{X: r.Centre().X, Y: r.Y + paper.TickBoxSide + labelGap + up}, paper.AtMiddle, text, unfoldNumber)
	default:
		v.Page.TickBox(paper.Point{X: r.X, Y: r.Centre().Y - paper.TickBoxSide/2})
		v.Text(paper.Point{X: r.X + paper.TickBoxSide + labelGap, Y: r.Centre().Y + up/2}, paper.AtLeft, text, unfoldNumber)
	}
}

// abs returns a length without its sign.
func abs(l paper.Length) paper.Length { return max(l, -l) }
