package paper

import "math"

// Verb is one step of a path.
type Verb int

// The verbs. Cubic uses A and B as control points.
const (
	Move Verb = iota
	Line
	Cubic
	Close
)

// Step is a verb with its points.
type Step struct {
	Verb Verb
	A, B Point // control points of a Cubic
	To   Point
}

// Path is one or more lines and curves.
type Path []Step

// Polyline returns the path through the points.
func Polyline(points ...Point) Path {
	path := make(Path, 0, len(points))
	for i, p := range points {
		v := Line
		if i == 0 {
			v = Move
		}
		path = append(path, Step{Verb: v, To: p})
	}
	return path
}

// Polygon returns the closed path through the points.
func Polygon(points ...Point) Path { return append(Polyline(points...), Step{Verb: Close}) }

// Box returns the rectangle as a closed path.
func Box(r Rect) Path {
	return Polygon(Point{r.X, r.Y}, Point{r.Right(), r.Y}, Point{r.Right(), r.Bottom()}, Point{r.X, r.Bottom()})
}

// mostSweep is the longest arc drawn as one cubic. At 30° the cubic leaves the true circle by 1e-7 of the radius.
const mostSweep = math.Pi / 6

// Arc returns the circular arc about the centre from one angle to another (radians, counter-clockwise from the right as seen
// on paper). Handles are 4/3·tan(sweep/4) of the radius, the cubic that touches the circle at both ends and the middle.
func Arc(centre Point, radius Length, from, to float64) Path {
	return arc(centre, radius, from, to, max(1, int(math.Ceil(math.Abs(to-from)/mostSweep))))
}

// arc returns an arc of so many cubics.
func arc(centre Point, radius Length, from, to float64, n int) Path {
	sweep := (to - from) / float64(n)
	handle := radius * Length(4.0/3.0*math.Tan(sweep/4))
	path := Path{{Verb: Move, To: centre.Add(Polar(radius, from))}}
	for i := range n {
		a := from + float64(i)*sweep
		b := from + float64(i+1)*sweep
		path = append(path, Step{Verb: Cubic,
			A:  centre.Add(Polar(radius, a)).Add(Polar(handle, a+math.Pi/2)),
			B:  centre.Add(Polar(radius, b)).Sub(Polar(handle, b+math.Pi/2)),
			To: centre.Add(Polar(radius, b))})
	}
	return path
}

// Circle returns the whole circle as a closed path.
func Circle(centre Point, radius Length) Path {
	return append(Arc(centre, radius, 0, 2*math.Pi), Step{Verb: Close})
}

// Bead is a small disc. Four cubics leave a true circle by 0.03 % of the radius, which no eye finds at this size.
func Bead(centre Point, radius Length) Path {
	return append(arc(centre, radius, 0, 2*math.Pi, 4), Step{Verb: Close})
}

// Smooth returns the curve through the points whose tangents point along the headings (radians, counter-clockwise from
// the right as seen on paper). Each span is the cubic that an arc of its turn would be, so a finely sampled curve is true to well under 0.01 mm.
func Smooth(points []Point, headings []float64) Path {
	path := Path{{Verb: Move, To: points[0]}}
	for i := 1; i < len(points); i++ {
		p, q := points[i-1], points[i]
		turn := headings[i] - headings[i-1]
		chord := q.Sub(p).Long()
		h := chord / 3
		if t := turn / 2; math.Abs(t) > 1e-6 {
			h = chord / Length(2*math.Sin(t)) * Length(4.0/3.0*math.Tan(turn/4))
		}
		path = append(path, Step{Verb: Cubic,
			A: p.Add(Polar(h, headings[i-1])), B: q.Sub(Polar(h, headings[i])), To: q})
	}
	return path
}

// mostChords bounds what a curve of no sensible size is cut into.
const mostChords = 1000

// Flatten returns the path's pieces as points, curves cut into chords that leave them by no more than off. Closed pieces repeat their first point.
func (p Path) Flatten(off Length) [][]Point {
	var pieces [][]Point
	var cur []Point
	for _, s := range p {
		switch s.Verb {
		case Move:
			if len(cur) > 1 {
				pieces = append(pieces, cur)
			}
			cur = []Point{s.To}
		case Line:
			cur = append(cur, s.To)
		case Cubic:
			from := cur[len(cur)-1]
			bend := max(from.Sub(s.A).Sub(s.A.Sub(s.B)).Long(), s.A.Sub(s.B).Sub(s.B.Sub(s.To)).Long()) // a sixth of the most second derivative
			chords := int(min(mostChords, 1+math.Sqrt(float64(0.75*bend/off))))
			for k := 1; k <= chords; k++ {
				t := float64(k) / float64(chords)
				u := 1 - t
				cur = append(cur, from.Times(u*u*u).Add(s.A.Times(3*u*u*t)).Add(s.B.Times(3*u*t*t)).Add(s.To.Times(t*t*t)))
			}
		case Close:
			cur = append(cur, cur[0])
		}
	}
	if len(cur) > 1 {
		pieces = append(pieces, cur)
	}
	return pieces
}
