package place

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"hoopwright/draw/paper"
)

// End is how a leader ends at what it points to.
type End int

// The ends of a leader, after ASME Y14.2: an arrow on an edge, a dot within a surface.
const (
	Dot      End = iota // within a surface or at a point
	Arrow               // on an edge
	Bare                // at a mark drawn there
	NoLeader            // none: the label is set close by or not at all
)

// Label is a short text that belongs to a point.
type Label struct {
	At        paper.Point
	Text      string // lines parted by \n
	Lettering paper.Lettering
	Align     paper.Align  // of several lines among themselves
	Toward    paper.Point  // the side to prefer, as a vector; zero: right, then above, left, below
	Clear     paper.Length // radius of what is drawn at the point: the text keeps out of it and a leader ends at its edge
	Within    paper.Rect   // where it may go; zero: the board's area
	Beyond    bool         // only past the line through the point that lies square to Toward
	Reach     paper.Length // how far to look; zero: 60 mm
	Leader    End
	Pointed   bool // draw the leader even where the text could stand close by
}

// Distances of a label from its point.
const (
	closeBy    paper.Length = 2.5 // farther off, a leader is drawn
	firstGap   paper.Length = 1.0
	ring       paper.Length = 1.5 // how fast the search widens
	leaderRoom paper.Length = 4   // a shorter leader is a smudge
	usualReach paper.Length = 60
)

// Label sets the label at the nearest free place, with a leader where that is not close by, and reports whether it found one. Where it found none nothing is drawn.
func (b *Board) Label(l Label) bool {
	lines := strings.Split(l.Text, "\n")
	size := blockSize(lines, l.Lettering)
	l.Within = cmp.Or(l.Within, b.Area)
	l.Reach = cmp.Or(l.Reach, usualReach)
	ways := directions(l.Toward)
	for gap := firstGap; gap <= closeBy && !l.Pointed; gap += ring / 2 {
		for _, way := range ways {
			bx := beside(l.At, way, l.Clear+gap, size)
			if l.mayLie(bx) && b.free(bx) && b.nearestIsOwn(bx, l.At) {
				b.setBlock(bx, lines, l)
				return true
			}
		}
	}
	if l.Leader == NoLeader {
		return false
	}
	best, ok := b.ledPlace(l, size, ways)
	if !ok {
		return false
	}
	b.Led += best.cost
	b.leader(best.from, best.to, l.Leader, l.Lettering.Colour)
	b.setBlock(best.box, lines, l)
	return true
}

// ledPlace returns the cheapest free place for a label with a leader.
func (b *Board) ledPlace(l Label, size paper.Rect, ways []paper.Point) (candidate, bool) {
	const perLine, perRank = 3, 0.4 // millimetres of leader that a line crossed, or a less wanted side, counts for
	best := candidate{cost: math.Inf(1)}
	first := leaderRoom
	if l.Leader == Arrow {
		first += headLong
	}
	for gap := first; gap <= l.Reach && float64(gap) < best.cost; gap += ring {
		for rank, way := range ways {
			bx := beside(l.At, way, l.Clear+gap, size)
			if !l.mayLie(bx) || !b.free(bx) {
				continue
			}
			c := candidate{box: bx}
			c.from, c.to = leaderEnds(bx, l.At, l.Clear)
			crossed, ok := b.crossings(c.from, c.to, l.At)
			if !ok {
				continue
			}
			if c.cost = float64(gap) + perLine*float64(crossed) + perRank*float64(rank); c.cost < best.cost {
				best = c
			}
		}
	}
	return best, !math.IsInf(best.cost, 1)
}

// mayLie reports whether the label may go to a box, free or not.
func (l Label) mayLie(bx box) bool {
	return within(bx, l.Within) && (!l.Beyond || dot(bx.centre.Sub(l.At), l.Toward) >= bx.along(l.Toward))
}

// candidate is a place for a label with its leader.
type candidate struct {
	box      box
	from, to paper.Point
	cost     float64 // of its leader: how long it is, what it crosses, how unwanted its side
}

// directions returns sixteen unit vectors, the most wanted first.
func directions(toward paper.Point) []paper.Point {
	const n = 16
	ways := make([]paper.Point, n)
	for i := range ways {
		ways[i] = paper.Polar(1, 2*math.Pi*float64(i)/n)
	}
	want := func(w paper.Point) float64 {
		if toward == (paper.Point{}) {
			// Right, above, left, below, each ahead of the slanting ways between.
			for i, s := range [4]paper.Point{{X: 1}, {Y: -1}, {X: -1}, {Y: 1}} {
				if dot(w, s) > 0.999 {
					return float64(i)
				}
			}
			return 4 - float64(w.X) + 0.5*float64(w.Y)
		}
		return -float64(dot(w, toward.Unit()))
	}
	slices.SortStableFunc(ways, func(p, q paper.Point) int {
		switch d := want(p) - want(q); {
		case d < -1e-9:
			return -1
		case d > 1e-9:
			return 1
		}
		return 0
	})
	return ways
}

// blockSize returns the size of lines set under each other, from the top of the first to the foot of the last.
func blockSize(lines []string, l paper.Lettering) paper.Rect {
	up, _ := l.Extent(lines[0])
	_, down := l.Extent(lines[len(lines)-1])
	return paper.Rect{W: l.Widest(lines), H: paper.Length(len(lines)-1)*pitch(lines, l) + (up + down)}
}

// pitch returns the distance between baselines: the usual leading, or what built fractions need.
func pitch(lines []string, l paper.Lettering) paper.Length {
	p := l.Leading()
	for i := 1; i < len(lines); i++ {
		_, down := l.Extent(lines[i-1])
		up, _ := l.Extent(lines[i])
		p = max(p, up+down+0.3)
	}
	return p
}

// beside returns the upright box of that size that lies from the point in a direction, its edge about gap away.
func beside(at, way paper.Point, gap paper.Length, size paper.Rect) box {
	// Straight ways touch the middle of a side, slanting ones the corner; between, the box slides.
	slide := func(v paper.Length) paper.Length { return max(-1, min(1, v*math.Sqrt2)) }
	centre := at.Add(way.Times(float64(gap)))
	centre.X += slide(way.X) * size.W / 2
	centre.Y += slide(way.Y) * size.H / 2
	return box{centre, paper.Point{X: 1}, size.W / 2, size.H / 2}
}

// nearestIsOwn reports whether a label set here without a leader lies nearer to its own mark than to any other.
func (b *Board) nearestIsOwn(bx box, at paper.Point) bool {
	own := bx.distance(at)
	return !slices.ContainsFunc(b.marks, func(m paper.Point) bool { return m != at && bx.distance(m) <= own+1 })
}

// leaderEnds returns where a leader from the box to the point begins and ends: at the nearest middle of a side that it leaves without crossing
// the box.
func leaderEnds(bx box, at paper.Point, clear paper.Length) (from, to paper.Point) {
	const off = 0.8
	w, h := bx.w+off, bx.h+off
	best := paper.Length(math.Inf(1))
	for _, side := range [4]paper.Point{{X: -w}, {X: w}, {Y: -h}, {Y: h}} {
		p := bx.centre.Add(side)
		if d := p.Sub(at).Long(); d < best && !bx.struck(p, at, 0) {
			from, best = p, d
		}
	}
	return from, at.Add(from.Sub(at).Unit().Times(float64(clear)))
}

// crossings counts the lines a leader would cross, and reports false where it would cross a text or a kept area other than the one its point lies in.
func (b *Board) crossings(from, to, at paper.Point) (lines int, ok bool) {
	span := paper.Bounds(from, to)
	var crossed []thing
	blocked := b.near(span, func(t *thing) bool {
		switch t.kind {
		case text:
			return t.box.struck(from, to, lineGap)
		case area:
			return t.box.distance(at) != 0 && t.box.struck(from, to, 0)
		}
		if cross(from, to, t.a, t.b) && !slices.Contains(crossed, *t) {
			crossed = append(crossed, *t)
		}
		return false
	})
	return len(crossed), !blocked
}

func cross(a, b, c, d paper.Point) bool {
	side := func(p, q, r paper.Point) paper.Length { return dot(q.Sub(p).Left(), r.Sub(p)) }
	return (side(a, b, c) > 0) != (side(a, b, d) > 0) && (side(c, d, a) > 0) != (side(c, d, b) > 0)
}

// setBlock draws the label's lines in the box and records them as one text.
func (b *Board) setBlock(bx box, lines []string, l Label) {
	r := bx.bounds()
	x := [...]paper.Length{paper.AtLeft: r.X, paper.AtMiddle: r.X + r.W/2, paper.AtRight: r.Right()}[l.Align]
	setLines(b.Page, paper.Point{X: x, Y: r.Y}, lines, l.Align, l.Lettering)
	b.note(thing{kind: text, box: bx})
}

// setLines sets lines under each other from the top, each with its end or its middle at the point's x.
func setLines(page *paper.Page, top paper.Point, lines []string, align paper.Align, l paper.Lettering) {
	if len(lines) == 0 {
		return
	}
	up, _ := l.Extent(lines[0])
	at, step := top.Add(paper.Point{Y: up}), pitch(lines, l)
	for _, s := range lines {
		if s != "" {
			page.Text(at, align, s, l)
		}
		at.Y += step
	}
}
