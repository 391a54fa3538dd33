package arch

import (
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// inside returns the point of the arch's inner face beside a point of its centre.
func (m *model) inside(p Point) Point {
	sin, cos := math.Sincos(float64(p.Heading))
	half := float64(m.half(p.Tape))
	p.X += measure.Length(half * sin)
	p.Y -= measure.Length(half * cos)
	return p
}

// across returns the two places where the legs come to a height, the place nearest to its foot where one comes to it more
// than once, and false above the arch.
func (k *Kind) across(height measure.Length, rise func(Point) measure.Length) (left, right Point, ok bool) {
	a, ok1 := k.reaches(spec.Left, height, rise)
	b, ok2 := k.reaches(spec.Right, height, rise)
	if !ok1 || !ok2 {
		return Point{}, Point{}, false
	}
	return k.PointAt(a), k.PointAt(k.Length - b), true
}

// Across returns the two places of the pipe's centre at a height above the ground line, and false above the arch.
func (k *Kind) Across(height measure.Length) (left, right Point, ok bool) {
	return k.across(height, k.above)
}

// Inside returns the two places of the arch's inner face at a height above the ground line, with pipe, fittings and wraps
// taken off, and false above it or where the arch is only drawn.
func (k *Kind) Inside(height measure.Length) (left, right Point, ok bool) {
	if k.built == nil {
		return Point{}, Point{}, false
	}
	return k.built.insides(k, height)
}

func (m *model) insides(k *Kind, height measure.Length) (left, right Point, ok bool) {
	left, right, ok = k.across(height, func(p Point) measure.Length { return k.above(m.inside(p)) })
	return m.inside(left), m.inside(right), ok
}

// clearWidth returns the level distance between the inner faces of the two legs at a height above the ground line, or 0 above
// the arch.
func (m *model) clearWidth(k *Kind, height measure.Length) measure.Length {
	a, b, ok := m.insides(k, height)
	if !ok {
		return 0
	}
	return max(b.X-a.X, 0)
}

// widest returns the greatest level distance between the pipe's centres, and the height it is at.
func (k *Kind) widest() (greatest, at measure.Length) {
	width := func(height measure.Length) measure.Length {
		left, right, _ := k.Across(height)
		return right.X - left.X
	}
	const steps = 24
	greatest = k.Span
	for i := 1; i < steps; i++ {
		h := k.Crown * measure.Length(i) / steps
		if w := width(h); w > greatest {
			greatest, at = w, h
		}
	}
	low, high := max(at-k.Crown/steps, 0), at+k.Crown/steps
	for range 16 { // the width has one peak between
		a, b := low+(high-low)/3, high-(high-low)/3
		if width(a) < width(b) {
			low = a
		} else {
			high = b
		}
	}
	if w := width((low + high) / 2); w > greatest {
		greatest, at = w, (low+high)/2
	}
	return greatest, at
}

// opening is how the box for people fits under the arch.
type opening struct {
	beside measure.Length // twice from the middle to the nearer leg's inner face, least up to the box's height
	head   measure.Length // least height over the box's width, drops counted
}

// fits reports whether a box of width and height stands clear.
func (o opening) fits(width, height measure.Length) bool {
	const touch = measure.Length(1e-3)
	return o.beside >= width-touch && o.head >= height-touch
}

// opens measures the room for the box of people: how near the legs come up to its height, and how low the arch hangs over it.
func (m *model) opens(k *Kind) opening {
	width, height := m.in.OpeningWidth, m.in.OpeningHeight
	o := opening{beside: k.Span, head: k.Clear}
	crown := k.CrownTape
	const fine = 8 // samples between the curve's points
	for i := 1; i < len(k.Curve); i++ {
		for j := range fine + 1 {
			p := m.inside(between(&k.Curve[i-1], &k.Curve[i], float64(j)/fine))
			h := k.above(p)
			flat := measure.Abs(p.Heading) < math.Pi/4
			switch {
			case flat && measure.Abs(p.X) < width/2:
				o.head = min(o.head, h-m.in.Drop)
			case h <= height && p.Tape < crown:
				o.beside = min(o.beside, -2*p.X)
			case h <= height:
				o.beside = min(o.beside, 2*p.X)
			}
		}
	}
	return o
}
