package packet

import (
	"fmt"
	"math"
	"strings"

	"hoopwright/draw/paper"
)

// inkBox is a convex outline about a run of lettering: its corners in order.
type inkBox struct {
	corners [4]paper.Point
	text    string
	order   int
	size    paper.Length
}

// Shares of the type size that ink takes above and below the baseline: capitals and figures, descenders.
const (
	inkAbove = 0.70
	inkBelow = 0.16
)

// inked returns the box of each run of a text, shrunk by a share of its height.
func inked(op paper.Text, order int) []inkBox {
	var list []inkBox
	along := paper.Polar(1, op.Angle)
	up := along.Left()
	for _, r := range op.Lettering.Set(op.String).Runs {
		size := r.Size.Mm()
		low := paper.Length(0)
		if strings.ContainsAny(r.String, "gjpqy,;()[]Q_|") {
			low = inkBelow * size
		}
		start := op.At.Add(along.Times(float64(r.Offset.X))).Add(up.Times(float64(-r.Offset.Y)))
		end := start.Add(along.Times(r.Face.Width(r.String) * float64(size)))
		b := inkBox{text: op.String, order: order, size: size}
		b.corners = [4]paper.Point{start.Add(up.Times(float64(-low))), end.Add(up.Times(float64(-low))), end.Add(up.Times(float64(inkAbove * size))), start.Add(up.Times(float64(inkAbove * size)))}
		list = append(list, b)
	}
	return list
}

// shrunk draws the corners toward the middle: a touch is no fault.
func (b inkBox) shrunk(share float64) inkBox {
	centre := b.corners[0].Add(b.corners[2]).Times(0.5)
	along, up := b.corners[1].Sub(b.corners[0]), b.corners[3].Sub(b.corners[0])
	half := along.Times(0.5).Sub(along.Unit().Times(0.3 * share * float64(b.size)))
	tall := up.Times(0.5 * (1 - share))
	b.corners = [4]paper.Point{centre.Sub(half).Sub(tall), centre.Add(half).Sub(tall), centre.Add(half).Add(tall), centre.Sub(half).Add(tall)}
	return b
}

// overlap reports whether two boxes share more than a sliver, by the axis that parts them best (the separating axis theorem).
func overlap(a, b inkBox) bool {
	for _, x := range [2]inkBox{a, b} {
		for _, axis := range [2]paper.Point{x.corners[1].Sub(x.corners[0]).Unit(), x.corners[3].Sub(x.corners[0]).Unit()} {
			aLow, aHigh := span(a, axis)
			bLow, bHigh := span(b, axis)
			if min(aHigh, bHigh)-max(aLow, bLow) < 0.12 {
				return false
			}
		}
	}
	return true
}

func span(b inkBox, axis paper.Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, c := range b.corners {
		v := float64(c.X*axis.X + c.Y*axis.Y)
		low, high = min(low, v), max(high, v)
	}
	return low, high
}

// inside returns how much of a segment lies in a box.
func inside(p, q paper.Point, b inkBox) paper.Length {
	from, to := 0.0, 1.0
	d := q.Sub(p)
	for _, side := range [2][2]int{{0, 1}, {0, 3}} {
		axis := b.corners[side[1]].Sub(b.corners[side[0]])
		long := float64(axis.Long())
		u := axis.Unit()
		at := p.Sub(b.corners[side[0]])
		start, step := float64(at.X*u.X+at.Y*u.Y), float64(d.X*u.X+d.Y*u.Y)
		if math.Abs(step) < 1e-12 {
			if start < 0 || start > long {
				return 0
			}
			continue
		}
		t0, t1 := -start/step, (long-start)/step
		from, to = max(from, min(t0, t1)), min(to, max(t0, t1))
	}
	return max(0, paper.Length(to-from)*d.Long())
}

// lint returns what a reader of the page would stumble over: text on text, lines through text.
func lint(page *paper.Page) (found []string) {
	var boxes []inkBox
	type stroke struct {
		points []paper.Point
		order  int
	}
	var strokes, whites []stroke
	for i, op := range page.Ops {
		switch op := op.(type) {
		case paper.Text:
			boxes = append(boxes, inked(op, i)...)
		case paper.Stroke:
			for _, piece := range op.Path.Flatten(0.01) {
				strokes = append(strokes, stroke{piece, i})
			}
		case paper.Fill:
			if op.Colour == paper.White {
				for _, piece := range op.Path.Flatten(0.01) {
					whites = append(whites, stroke{piece, i})
				}
			}
		}
	}
	for i, a := range boxes {
		for _, b := range boxes[i+1:] {
			if a.order != b.order && overlap(a.shrunk(0.1), b.shrunk(0.1)) {
				found = append(found, fmt.Sprintf("%q on %q", a.text, b.text))
			}
		}
	}
	var about []paper.Rect // each stroke
	for _, s := range strokes {
		about = append(about, aroundAll(s.points))
	}
	for _, b := range boxes {
		small := b.shrunk(0.25)
		near := aroundAll(small.corners[:])
		for i, s := range strokes {
			if apart(near, about[i]) {
				continue
			}
			hit := paper.Length(0)
			for k := 1; k < len(s.points); k++ {
				hit += inside(s.points[k-1], s.points[k], small)
			}
			if hit > 0.2*b.size && !(s.order < b.order && cleared(b, s.order, whites, func(w stroke) (int, []paper.Point) { return w.order, w.points })) {
				found = append(found, fmt.Sprintf("a line through %q", b.text))
				break
			}
		}
	}
	return found
}

// aroundAll is the upright box around points.
func aroundAll(points []paper.Point) paper.Rect {
	low, high := paper.Point{X: 1e9, Y: 1e9}, paper.Point{X: -1e9, Y: -1e9}
	for _, p := range points {
		low = paper.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = paper.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return paper.Rect{X: low.X, Y: low.Y, W: high.X - low.X, H: high.Y - low.Y}
}

// apart reports whether two upright boxes have a hundredth of a millimetre and more between them.
func apart(a, b paper.Rect) bool {
	const gap = 0.01
	return a.X > b.X+b.W+gap || b.X > a.X+a.W+gap || a.Y > b.Y+b.H+gap || b.Y > a.Y+a.H+gap
}

// cleared reports whether a white fill between the line and the text clears the text's ground.
func cleared[T any](b inkBox, after int, whites []T, parts func(T) (int, []paper.Point)) bool {
	for _, w := range whites {
		order, points := parts(w)
		if order <= after || order >= b.order {
			continue
		}
		white := aroundAll(points)
		all := true
		for _, c := range b.shrunk(0.1).corners {
			all = all && c.X >= white.X && c.X <= white.Right() && c.Y >= white.Y && c.Y <= white.Bottom()
		}
		if all {
			return true
		}
	}
	return false
}

// countOf counts a word.
func countOf(words []string, word string) int {
	n := 0
	for _, w := range words {
		if w == word {
			n++
		}
	}
	return n
}
