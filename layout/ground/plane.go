package ground

import (
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Products are wrapped in Length(…) before they are summed, so that no processor fuses the two and every machine gets the
// same last digit; for the same reason math.Hypot is not used.

func add(p, q spec.Point) spec.Point { return spec.Point{X: p.X + q.X, Y: p.Y + q.Y} }
func sub(p, q spec.Point) spec.Point { return spec.Point{X: p.X - q.X, Y: p.Y - q.Y} }

// along returns the point at distance d from p in direction v, a vector of length one.
func along(p, v spec.Point, d measure.Length) spec.Point {
	return spec.Point{X: p.X + measure.Length(v.X*d), Y: p.Y + measure.Length(v.Y*d)}
}

func dot(p, q spec.Point) measure.Length {
	return measure.Length(p.X*q.X) + measure.Length(p.Y*q.Y)
}

// cross is positive where q points to the left of p.
func cross(p, q spec.Point) measure.Length {
	return measure.Length(p.X*q.Y) - measure.Length(p.Y*q.X)
}

// Distance returns the level distance between two points.
func Distance(p, q spec.Point) measure.Length {
	d := sub(q, p)
	return measure.Length(math.Sqrt(float64(dot(d, d))))
}

// ahead and rightOf are the walker's directions at a heading: unit vectors, 0 along +y, clockwise positive.
func ahead(heading measure.Angle) spec.Point {
	sin, cos := math.Sincos(float64(heading))
	return spec.Point{X: measure.Length(sin), Y: measure.Length(cos)}
}

func rightOf(heading measure.Angle) spec.Point {
	sin, cos := math.Sincos(float64(heading))
	return spec.Point{X: measure.Length(cos), Y: -measure.Length(sin)}
}

// toSegment returns the distance from p to the nearest point of the segment a–b.
func toSegment(p, a, b spec.Point) measure.Length {
	ab, ap := sub(b, a), sub(p, a)
	square := dot(ab, ab)
	if square == 0 {
		return Distance(p, a)
	}
	t := min(max(dot(ap, ab)/square, 0), 1)
	return Distance(p, along(a, ab, t))
}

// toPath returns the distance from p to the nearest point of an open path.
func toPath(p spec.Point, path []spec.Point) measure.Length {
	if len(path) == 0 {
		return measure.Length(math.Inf(1))
	}
	least := Distance(p, path[0])
	for i := 1; i < len(path); i++ {
		least = min(least, toSegment(p, path[i-1], path[i]))
	}
	return least
}

// Meet reports whether the segments a–b and c–d have a point in common.
func Meet(a, b, c, d spec.Point) bool {
	if max(a.X, b.X) < min(c.X, d.X) || max(c.X, d.X) < min(a.X, b.X) ||
		max(a.Y, b.Y) < min(c.Y, d.Y) || max(c.Y, d.Y) < min(a.Y, b.Y) {
		return false
	}
	return opposite(cross(sub(b, a), sub(c, a)), cross(sub(b, a), sub(d, a))) &&
		opposite(cross(sub(d, c), sub(a, c)), cross(sub(d, c), sub(b, c)))
}

func opposite(p, q measure.Length) bool { return p <= 0 && q >= 0 || p >= 0 && q <= 0 }

// apart returns the least distance between two segments, zero where they meet.
func apart(a, b, c, d spec.Point) measure.Length {
	if Meet(a, b, c, d) {
		return 0
	}
	return min(toSegment(a, c, d), toSegment(b, c, d), toSegment(c, a, b), toSegment(d, a, b))
}

// Inside reports whether p lies in the closed outline, by counting the edges that a ray to the right crosses.
func Inside(p spec.Point, outline []spec.Point) bool {
	in := false
	for i, b := range outline {
		a := outline[(i+len(outline)-1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*((p.Y-a.Y)/(b.Y-a.Y)) {
			in = !in
		}
	}
	return in
}
