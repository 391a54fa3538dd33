package place

import (
	"slices"

	"hoopwright/draw/paper"
)

// Ends is what a dimension line ends in.
type Ends int

// The ends of a dimension line.
const (
	Ticks  Ends = iota // slanting ticks
	Arrows             // arrowheads, turned to point inwards where the line is short
)

// Dimension is a distance between two points with its written number.
type Dimension struct {
	From, To  paper.Point
	Offset    paper.Length // from From to the dimension line, to the left of the direction as seen on paper; negative to the right
	Text      string
	Lettering paper.Lettering
	Ends      Ends
}

// Extension lines, after ISO 129-1: clear of the object, a little past the dimension line.
const (
	extensionGap  paper.Length = 1.5
	extensionPast paper.Length = 2.0
	overLine      paper.Length = 1.0 // from the dimension line to the text's foot
)

// Dimension draws the dimension: extension lines, the line with its ends, the number over it and read from the bottom or the right. Where the number finds no
// room over or under the line it is set past an end, then at the end of a leader; where a text lies on the line's ends the line moves farther out, twice at most and never off the board.
// Lines leave a gap for texts in their way. It reports whether the number found a place; where it did not, nothing is drawn.
func (b *Board) Dimension(d Dimension) bool {
	const step = 7
	out := paper.Length(step)
	if d.Offset < 0 {
		out = -step
	}
	for range 3 {
		if m := measured(d); b.Area.Contains(m.p) && b.Area.Contains(m.q) && !b.endsOnText(d.Ends, m) && (b.dimension(d, m, b.besideLine(d, m)) || b.dimensionByLeader(d, m)) {
			return true
		}
		d.Offset += out
	}
	return false
}

// dimensionLine is a dimension's line on paper.
type dimensionLine struct {
	p, q       paper.Point // its ends, q along u from p
	u          paper.Point
	extensions [][2]paper.Point
}

func measured(d Dimension) dimensionLine {
	u := d.To.Sub(d.From).Unit()
	p := d.From.Add(u.Left().Times(float64(d.Offset)))
	q := p.Add(d.To.Sub(d.From))
	m := dimensionLine{p: p, q: q, u: u}
	for _, e := range [2][2]paper.Point{{d.From, p}, {d.To, q}} {
		way := e[1].Sub(e[0])
		if way.Long() > extensionGap+0.5 {
			w := way.Unit()
			m.extensions = append(m.extensions, [2]paper.Point{e[0].Add(w.Times(float64(extensionGap))), e[1].Add(w.Times(float64(extensionPast)))})
		}
	}
	return m
}

// numberPlace is a place for a dimension's number: the middle of its baseline, and for a number past an end the lead from that end to it.
type numberPlace struct {
	centre paper.Point
	lead   *[2]paper.Point
}

// besideLine returns the places for the number by its line, the most wanted first.
func (b *Board) besideLine(d Dimension, m dimensionLine) []numberPlace {
	r := readable(m.u)
	mid := m.p.Add(m.q).Times(0.5)
	up, down := d.Lettering.Extent(d.Text)
	half, reach := d.Lettering.Width(d.Text)/2, m.q.Sub(m.p).Long()/2
	at := func(along, above paper.Length) paper.Point {
		return mid.Add(r.Times(float64(along))).Add(r.Left().Times(float64(above)))
	}
	var places []numberPlace
	if slack := reach - half - tickHalf - 0.8; slack >= 0 {
		for _, above := range [2]paper.Length{overLine + down, -overLine - up} {
			for _, share := range []paper.Length{0, 0.35, -0.35, 0.7, -0.7, 1, -1} {
				places = append(places, numberPlace{centre: at(slack*share, above)})
			}
		}
	}
	for _, more := range [3]paper.Length{0, 4, 8} {
		for _, sign := range [2]paper.Length{1, -1} {
			start := reach + outside(d.Ends, 2*reach) + 1.2 + more
			places = append(places, numberPlace{at(sign*(start+half), (down-up)/2), &[2]paper.Point{at(sign*reach, 0), at(sign*(start-1.2), 0)}})
		}
	}
	return places
}

// dimension draws the dimension with its number at the first place that is free.
func (b *Board) dimension(d Dimension, m dimensionLine, places []numberPlace) bool {
	angle := readable(m.u).Angle()
	near := func(bx box) bool { // an extension line comes too near
		return slices.ContainsFunc(m.extensions, func(l [2]paper.Point) bool { return bx.struck(l[0], l[1], lineGap+paper.Thin.Width/2) })
	}
	for _, place := range places {
		bx := textBox(place.centre.Sub(paper.Polar(d.Lettering.Width(d.Text)/2, angle)), angle, d.Text, d.Lettering)
		if !within(bx, b.Area) || !b.free(bx) || near(bx) || place.lead != nil && b.OnText(place.lead[0], place.lead[1]) {
			continue
		}
		b.dimensionLines(d.Ends, m)
		if place.lead != nil {
			b.Line(place.lead[0], place.lead[1], paper.Thin)
		}
		b.TurnedText(place.centre, angle, d.Text, d.Lettering)
		return true
	}
	return false
}

// dimensionByLeader sets the number away from its line and points to the line's middle.
func (b *Board) dimensionByLeader(d Dimension, m dimensionLine) bool {
	before := b.state() // the number must keep off lines that are drawn only if it finds a place
	b.dimensionLines(d.Ends, m)
	side := m.u.Left()
	if dot(side, m.p.Sub(d.From)) < 0 {
		side = side.Times(-1)
	}
	if b.Label(Label{At: m.p.Add(m.q).Times(0.5), Text: d.Text, Lettering: d.Lettering, Toward: side, Leader: Dot}) {
		return true
	}
	b.restore(before)
	return false
}

// endsOnText reports whether a text lies where the line's ticks or heads would be drawn.
func (b *Board) endsOnText(ends Ends, m dimensionLine) bool {
	past := outside(ends, m.q.Sub(m.p).Long())
	for _, end := range [2]paper.Point{m.p, m.q} {
		bx := box{end, m.u, max(past, headLong), tickHalf}.grown(lineGap)
		if b.near(bx.bounds(), func(t *thing) bool { return t.kind == text && t.box.meets(bx) }) {
			return true
		}
	}
	return false
}

// OnText reports whether a segment runs through or too close by a text.
func (b *Board) OnText(p, q paper.Point) bool {
	return b.near(paper.Bounds(p, q), func(t *thing) bool { return t.kind == text && t.box.struck(p, q, lineGap) })
}

// outside returns how far the ends of a dimension line reach past the points.
func outside(ends Ends, length paper.Length) paper.Length {
	switch {
	case ends == Ticks:
		return tickHalf
	case length >= 3*headLong:
		return 0
	}
	return headLong + 2 // heads stand outside with a tail
}

func (b *Board) dimensionLines(ends Ends, m dimensionLine) {
	p, q, u := m.p, m.q, m.u
	for _, e := range m.extensions {
		b.LineRound(e[0], e[1], paper.Thin)
	}
	switch {
	case ends == Ticks:
		past := u.Times(float64(tickHalf))
		b.LineRound(p.Sub(past), q.Add(past), paper.Thin)
		for _, end := range [2]paper.Point{p, q} {
			b.Line(end.Sub(slanting(u)), end.Add(slanting(u)), paper.Thick)
		}
	case outside(ends, q.Sub(p).Long()) == 0:
		b.LineRound(p.Add(u.Times(float64(headLong)*0.8)), q.Sub(u.Times(float64(headLong)*0.8)), paper.Thin)
		b.Arrowhead(p, u.Times(-1), paper.Black)
		b.Arrowhead(q, u, paper.Black)
	default: // too short to hold two heads: they stand outside and point in
		out := u.Times(float64(outside(ends, q.Sub(p).Long())))
		b.LineRound(p.Sub(out), q.Add(out), paper.Thin)
		b.Arrowhead(p, u, paper.Black)
		b.Arrowhead(q, u.Times(-1), paper.Black)
	}
}
