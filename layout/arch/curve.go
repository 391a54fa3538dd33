package arch

import (
	"math"
	"sort"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// curvePoints is about how many points a curve has.
const curvePoints = 120

// point brings a place of the rod into the arch's axes.
func (m *model) point(p bend.Place) Point {
	radius := measure.Length(math.Inf(1))
	if c := math.Abs(p.Curvature); c > 1e-6 { // straighter than 1 km is straight
		radius = measure.Length(1/c) * measure.Metre
	}
	return Point{
		Tape: measure.Length(p.S) * measure.Metre,
		X:    measure.Length(p.X-m.rod.DX/2) * measure.Metre, Y: measure.Length(p.Y-m.rod.DY/2) * measure.Metre,
		Heading: measure.Angle(p.Angle), Radius: radius,
	}
}

// curve samples a shape evenly between the feet, the stake tops and the crown, all of which it meets.
func (m *model) curve(shape *bend.Shape) []Point {
	stops := []measure.Length{0, m.sleeve, m.frame.crown, m.length - m.sleeve, m.length}
	points := []Point{m.point(shape.At(0))}
	for i, to := range stops[1:] {
		from := stops[i]
		n := max(int(math.Ceil(float64((to-from)/m.length*curvePoints)-1e-9)), 0)
		for j := 1; j <= n; j++ {
			t := from + (to-from)*measure.Length(j)/measure.Length(n)
			p := m.point(shape.At(t.Metres()))
			p.Tape = t
			points = append(points, p)
		}
	}
	return points
}

// tightest returns the tightest places of the left leg's lower half, of what is about the crown, and of the right leg's lower half.
func (m *model) tightest() []Point {
	left, right := m.frame.crown/2, (m.frame.crown+m.length)/2
	var list []Point
	for _, part := range [3][2]measure.Length{{0, left}, {left, right}, {right, m.length}} {
		if at, ok := m.shape.Tightest(part[0].Metres(), part[1].Metres()); ok && at.Curvature != 0 {
			list = append(list, m.point(at))
		}
	}
	return list
}

// LeastRadii returns where the pipe bends tightest: on the left leg below the middle of it, about the crown, and on the right leg.
// Places inside fittings do not count.
func (k *Kind) LeastRadii() []Point { return k.tightest }

// PointAt returns the point of the curve at the tape from the left foot, which is brought within the arch.
func (k *Kind) PointAt(tape measure.Length) Point { return along(k.Curve, tape) }

// along interpolates a curve: the cubic through two neighbours and their tangents.
func along(curve []Point, tape measure.Length) Point {
	last := len(curve) - 1
	i := sort.Search(last, func(i int) bool { return curve[i+1].Tape >= tape })
	if i >= last {
		return curve[last]
	}
	a, b := &curve[i], &curve[i+1]
	return between(a, b, min(max(float64((tape-a.Tape)/(b.Tape-a.Tape)), 0), 1))
}

// between returns the point at a share of the tape from a to b, 0 to 1.
func between(a, b *Point, t float64) Point {
	switch t {
	case 0:
		return *a
	case 1:
		return *b
	}
	u, h := 1-t, float64(b.Tape-a.Tape)
	mix := func(pa, pb measure.Length, da, db float64) measure.Length {
		return measure.Length(u*u*(1+2*t)*float64(pa) + t*t*(1+2*u)*float64(pb) + u*u*t*h*da - t*t*u*h*db)
	}
	sa, ca := math.Sincos(float64(a.Heading))
	sb, cb := math.Sincos(float64(b.Heading))
	p := Point{Tape: a.Tape + measure.Length(t*h), X: mix(a.X, b.X, ca, cb), Y: mix(a.Y, b.Y, sa, sb)}
	p.Heading = a.Heading*measure.Angle(u) + b.Heading*measure.Angle(t)
	p.Radius = measure.Length(1 / (u/float64(a.Radius) + t/float64(b.Radius)))
	return p
}

// above returns a point's height above the ground line, which joins the two ground points.
func (k *Kind) above(p Point) measure.Length {
	return p.Y - (k.RightGround-k.LeftGround)*p.X/k.Span
}

// from turns a tape from one side's ground point into one from the left foot, and back.
func (k *Kind) from(side spec.Side, tape measure.Length) measure.Length {
	if side == spec.Right {
		return k.Length - tape
	}
	return tape
}

// HeightAt returns the height above the ground line of the pipe's centre at the tape from that side's ground point.
func (k *Kind) HeightAt(side spec.Side, tape measure.Length) measure.Length {
	return k.above(k.PointAt(k.from(side, tape)))
}

// TapeAt returns the tape from that side's ground point to where its leg first reaches the height above the ground line, and
// false where the leg does not reach it before the crown.
func (k *Kind) TapeAt(side spec.Side, height measure.Length) (measure.Length, bool) {
	tape, ok := k.reaches(side, height, k.above)
	return tape, ok && tape <= k.from(side, k.CrownTape)+measure.Length(1e-6)
}

// reaches walks the whole curve from one side's foot to where rise first comes to height, and returns the tape from that foot.
func (k *Kind) reaches(side spec.Side, height measure.Length, rise func(Point) measure.Length) (measure.Length, bool) {
	n := len(k.Curve)
	at := func(i int) *Point {
		if side == spec.Right {
			i = n - 1 - i
		}
		return &k.Curve[i]
	}
	if n == 0 || rise(*at(0)) > height {
		return 0, false
	}
	for i := 1; i < n; i++ {
		if rise(*at(i)) < height {
			continue
		}
		a, b := at(i-1), at(i)
		miss := func(t float64) (float64, bool) { return float64(rise(between(a, b, t)) - height), true }
		t := root(miss, 0, float64(rise(*a)-height), 1, float64(rise(*b)-height), 1e-7)
		return k.from(side, a.Tape+(b.Tape-a.Tape)*measure.Length(t)), true
	}
	return 0, false
}
