// The way of a cord from an outlet round what cords keep off.

package power

import (
	"math"
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// obstacle is the outline of a feature that cords keep off, with corners a little outside it to go round by.
type obstacle struct{ outline, corners []spec.Point }

// obstacles returns the features that the spec's cords keep off. A circle is taken as the twelve-sided outline around it.
func obstacles(s *spec.Spec) []obstacle {
	var out []obstacle
	for _, f := range s.Site.Features {
		if !slices.Contains(s.Site.Cords.KeepOff, f.Name) {
			continue
		}
		outline := f.Outline
		if len(outline) == 0 {
			outline = ring(f.At, f.Radius)
		}
		out = append(out, obstacle{outline, spread(outline)})
	}
	return out
}

// ring returns a regular outline of twelve corners around a circle.
func ring(c spec.Point, radius measure.Length) []spec.Point {
	const n = 12
	r := float64(radius) / math.Cos(math.Pi/n)
	var out []spec.Point
	for i := range n {
		a := 2 * math.Pi * float64(i) / n
		out = append(out, spec.Point{X: c.X + measure.Length(r*math.Cos(a)), Y: c.Y + measure.Length(r*math.Sin(a))})
	}
	return out
}

// spread moves each corner away along its bisector, to the outside.
func spread(outline []spec.Point) []spec.Point {
	turn := 0.0
	n := len(outline)
	for i, p := range outline {
		q := outline[(i+1)%n]
		turn += float64(p.X*q.Y - q.X*p.Y)
	}
	out := make([]spec.Point, n)
	for i, p := range outline {
		a, b := direction(outline[(i+n-1)%n], p), direction(p, outline[(i+1)%n])
		nx, ny := a[1]+b[1], -(a[0] + b[0]) // to the right of both edges
		if turn < 0 {
			nx, ny = -nx, -ny
		}
		if size := math.Sqrt(nx*nx + ny*ny); size > 1e-9 {
			k := measure.Length(math.Sqrt2) * practice.CordsClear / measure.Length(size)
			p.X += k * measure.Length(nx)
			p.Y += k * measure.Length(ny)
		}
		out[i] = p
	}
	return out
}

// direction returns the unit vector from one point to another.
func direction(a, b spec.Point) [2]float64 {
	d := float64(ground.Distance(a, b))
	if d == 0 {
		return [2]float64{}
	}
	return [2]float64{float64(b.X-a.X) / d, float64(b.Y-a.Y) / d}
}

// around returns the shortest way between two points past the obstacles: Dijkstra's search over their corners. An
// obstacle that holds either point is left out of account, and where there is no way the straight one is returned.
func around(from, to spec.Point, list []obstacle) []spec.Point {
	list = slices.DeleteFunc(slices.Clone(list), func(o obstacle) bool { return ground.Inside(from, o.outline) || ground.Inside(to, o.outline) })
	if clear(from, to, list) {
		return []spec.Point{from, to}
	}
	points := []spec.Point{from, to}
	for _, o := range list {
		points = append(points, o.corners...)
	}
	far := make([]float64, len(points))
	back := make([]int, len(points))
	done := make([]bool, len(points))
	for i := range far {
		far[i] = math.Inf(1)
	}
	far[0] = 0
	for {
		near := -1
		for i := range points {
			if !done[i] && !math.IsInf(far[i], 1) && (near < 0 || far[i] < far[near]) {
				near = i
			}
		}
		if near < 0 {
			return []spec.Point{from, to}
		}
		if near == 1 {
			break
		}
		done[near] = true
		for i := range points {
			if d := far[near] + float64(ground.Distance(points[near], points[i])); !done[i] && d < far[i] && clear(points[near], points[i], list) {
				far[i], back[i] = d, near
			}
		}
	}
	var way []spec.Point
	for i := 1; i != 0; i = back[i] {
		way = append(way, points[i])
	}
	way = append(way, from)
	slices.Reverse(way)
	return way
}

// clear reports whether a straight line keeps off every obstacle, one of its ends outside them: it never leaves one that it has not come into.
func clear(a, b spec.Point, list []obstacle) bool {
	for _, o := range list {
		n := len(o.outline)
		for i, p := range o.outline {
			if ground.Meet(a, b, p, o.outline[(i+1)%n]) {
				return false
			}
		}
	}
	return true
}
