// Package paper is the drawing board: millimetres on paper, points, paths, the table of pens and lettering, scales, and a page as a plain
// list of operations that tests can read and draw/pdf turns into a sheet.
//
// The origin is the sheet's top left corner; x runs right and y runs down. Every operation carries its whole pen
// or lettering, so no state leaks from one to the next.
package paper

import (
	"cmp"
	"math"
	"slices"
)

// Length is a length on paper in millimetres. Real lengths are another type; a Scale is the only bridge.
type Length float64

// PointSize is a type size in points, 1/72 in.
type PointSize float64

// Mm returns the type size as a length on paper.
func (p PointSize) Mm() Length { return Length(float64(p) * 25.4 / 72) }

// Point is a place on a sheet.
type Point struct{ X, Y Length }

// Add returns the point moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the vector from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns the vector scaled by f.
func (p Point) Times(f float64) Point { return Point{p.X * Length(f), p.Y * Length(f)} }

// Long returns the vector's length.
func (p Point) Long() Length { return Length(math.Sqrt(float64(p.X*p.X) + float64(p.Y*p.Y))) }

// Unit returns the vector at length 1, or the zero vector for the zero vector.
func (p Point) Unit() Point {
	if l := p.Long(); l > 0 {
		return p.Times(1 / float64(l))
	}
	return Point{}
}

// Left returns the vector turned a quarter to the left as seen on paper (y runs down).
func (p Point) Left() Point { return Point{p.Y, -p.X} }

// Angle returns the vector's angle, radians counter-clockwise from the right as seen on paper.
func (p Point) Angle() float64 { return math.Atan2(float64(-p.Y), float64(p.X)) }

// Polar returns the vector of length l at an angle in radians, counter-clockwise from the right as seen on paper.
func Polar(l Length, angle float64) Point {
	sin, cos := math.Sincos(angle)
	return Point{l * Length(cos), -l * Length(sin)}
}

// Rect is an upright box: its top left corner and its size.
type Rect struct{ X, Y, W, H Length }

// Bounds returns the box about some points.
func Bounds(points ...Point) Rect {
	low, high := points[0], points[0]
	for _, p := range points[1:] {
		low, high = Point{min(low.X, p.X), min(low.Y, p.Y)}, Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return Rect{low.X, low.Y, high.X - low.X, high.Y - low.Y}
}

// Right returns the x of the right edge.
func (r Rect) Right() Length { return r.X + r.W }

// Bottom returns the y of the bottom edge.
func (r Rect) Bottom() Length { return r.Y + r.H }

// Centre returns the middle.
func (r Rect) Centre() Point { return Point{r.X + r.W/2, r.Y + r.H/2} }

// Inset returns the box with d taken off each side.
func (r Rect) Inset(d Length) Rect { return Rect{r.X + d, r.Y + d, r.W - 2*d, r.H - 2*d} }

// SplitTop cuts h off the top and returns the two boxes.
func (r Rect) SplitTop(h Length) (top, rest Rect) {
	return Rect{r.X, r.Y, r.W, h}, Rect{r.X, r.Y + h, r.W, r.H - h}
}

// SplitLeft cuts w off the left and returns the two boxes.
func (r Rect) SplitLeft(w Length) (left, rest Rect) {
	return Rect{r.X, r.Y, w, r.H}, Rect{r.X + w, r.Y, r.W - w, r.H}
}

// Part returns the part of the way from one point to another that lies within the box, not on its edge alone, in shares of the way, and whether there is any.
func (r Rect) Part(p, q Point) (from, to float64, ok bool) {
	right, bottom := r.Right(), r.Bottom()
	if p.X <= r.X && q.X <= r.X || p.X >= right && q.X >= right || p.Y <= r.Y && q.Y <= r.Y || p.Y >= bottom && q.Y >= bottom {
		return 0, 0, false
	}
	from, to = 0, 1
	for _, side := range [2][4]Length{{p.X, q.X, r.X, right}, {p.Y, q.Y, r.Y, bottom}} {
		if run := side[1] - side[0]; run != 0 {
			a, b := float64((side[2]-side[0])/run), float64((side[3]-side[0])/run)
			from, to = max(from, min(a, b)), min(to, max(a, b))
		}
	}
	return from, to, from < to
}

// Without returns what is left of the stretch from 0 to 1 when others are cut out of it.
func Without(cuts [][2]float64) (left [][2]float64) {
	slices.SortFunc(cuts, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	at := 0.0
	for _, c := range append(cuts, [2]float64{1, 1}) {
		if c[0] > at {
			left = append(left, [2]float64{at, c[0]})
		}
		at = max(at, c[1])
	}
	return left
}

// Contains reports whether the point lies in the box, its edges included.
func (r Rect) Contains(p Point) bool {
	return p.X >= r.X && p.X <= r.Right() && p.Y >= r.Y && p.Y <= r.Bottom()
}
