package ground

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A quarter turn to the right at radius R ends R ahead and R to the right, heading along +x; to the left it is mirrored.
// Plane geometry of the circle.
func TestQuarterTurn(t *testing.T) {
	const radius = 30 * ft
	quarter := measure.Length(math.Pi/2) * radius
	for _, sign := range []measure.Angle{1, -1} {
		site := spec.Site{Route: []spec.Leg{{Turn: sign * math.Pi / 2, Radius: radius}, {Rest: true}}}
		r := newRoute(&site, quarter+10*ft)
		end := r.at(quarter)
		near(t, "x", end.At.X, measure.Length(sign)*radius, 1e-9)
		near(t, "y", end.At.Y, radius, 1e-9)
		near(t, "heading", end.Heading, sign*math.Pi/2, 1e-12)
		half := r.at(quarter / 2)
		near(t, "x half way", half.At.X, measure.Length(sign)*radius*(1-math.Sqrt2/2), 1e-9)
		near(t, "y half way", half.At.Y, radius*math.Sqrt2/2, 1e-9)
		// beyond the arc the route runs on straight, tangent to it, also past its own end
		for _, d := range []measure.Length{5 * ft, 10 * ft, 17 * ft} {
			on := r.at(quarter + d)
			near(t, "x beyond", on.At.X, measure.Length(sign)*(radius+d), 1e-9)
			near(t, "y beyond", on.At.Y, radius, 1e-9)
		}
		before := r.at(-4 * ft)
		near(t, "x before", before.At.X, 0, 1e-9)
		near(t, "y before", before.At.Y, -4*ft, 1e-9)
		near(t, "along before", before.Along, -4*ft, 1e-9)
	}
}

// On an arc of radius R stakes at half the span b stand on circles of radius R±b: neighbours an arc s apart on the
// centreline are 2(R±b)·sin(s/2R) apart, and the diagonal follows from the law of cosines.
func TestStakesOnAnArc(t *testing.T) {
	const radius = 25 * ft
	s := row(6)
	s.Guys.Arches = nil
	s.Site.Route = []spec.Leg{{Turn: -3, Radius: radius}}
	l := lay(s)
	if l.Straight {
		t.Error("a bend is said to be straight")
	}
	half := float64(s.Tunnel.Spacing) / float64(2*radius)
	inner, outer := radius-45*in, radius+45*in // a left bend has its inside on the left
	left := 2 * inner * measure.Length(math.Sin(half))
	right := 2 * outer * measure.Length(math.Sin(half))
	cos := measure.Length(math.Cos(2 * half))
	diagonal := measure.Length(math.Sqrt(float64(inner*inner + outer*outer - 2*inner*outer*cos)))
	for i := range 5 {
		near(t, "left", Distance(l.Stakes[2*i].At(), l.Stakes[2*i+2].At()), left, 1e-8)
		near(t, "right", Distance(l.Stakes[2*i+1].At(), l.Stakes[2*i+3].At()), right, 1e-8)
		near(t, "running left", l.Stakes[2*i].Running, left*measure.Length(i), 1e-8)
		near(t, "running right", l.Stakes[2*i+1].Running, right*measure.Length(i), 1e-8)
		near(t, "diagonal", l.Diagonals[2*i].Distance, diagonal, 1e-8)
		near(t, "other diagonal", l.Diagonals[2*i+1].Distance, diagonal, 1e-8)
	}
}

func TestPathStaysWithinTwoMillimetres(t *testing.T) {
	site := spec.Site{Route: []spec.Leg{{Straight: 3 * ft}, {Turn: 2, Radius: 20 * ft}, {Rest: true}}}
	r := newRoute(&site, 60*ft)
	path := r.path()
	var sum measure.Length
	for i := range path[1:] {
		sum += Distance(path[i], path[i+1])
	}
	for d := measure.Length(0); d <= r.length; d += 7 {
		if off := toPath(r.at(d).At, path); off > 2.001 {
			t.Fatalf("the path strays %v mm at %v", off, d)
		}
	}
	near(t, "length", sum, 60*ft, 5)
}

// A route of any length takes bounded work and memory: a tiny radius wound thousands of times round.
func TestWoundUpRoute(t *testing.T) {
	site := spec.Site{Route: []spec.Leg{{Turn: 1e6, Radius: 1}, {Rest: true}}}
	if n := len(newRoute(&site, 2000*ft).path()); n > 1100 {
		t.Errorf("%d points", n)
	}
}

func TestRestInTheMiddle(t *testing.T) {
	site := spec.Site{Route: []spec.Leg{{Straight: 5 * ft}, {Rest: true}, {Turn: 1, Radius: 10 * ft}}}
	r := newRoute(&site, 40*ft)
	near(t, "heading where the rest ends", r.at(30*ft).Heading, 0, 1e-12)
	near(t, "heading at the end", r.at(40*ft).Heading, 1, 1e-12)
}

// A bend that begins beyond the last arch is no bend of the tunnel, and the guys beyond the exit stand straight on.
func TestBendBeyondTheTunnel(t *testing.T) {
	s := row(3)
	s.Site.Route = []spec.Leg{{Straight: 126 * in}, {Turn: 1, Radius: 12 * ft}}
	l := lay(s)
	if !l.Straight {
		t.Error("not straight")
	}
	near(t, "G3L x", stakeOf(t, l, "G3L").X, stakeOf(t, l, "L3").X, 1e-9)
}

func TestLevels(t *testing.T) {
	s := row(9)
	s.Site.Levels = []spec.Level{{Arch: 7, Left: 9 * in, Right: 12 * in}, {Arch: 3, Left: 1 * in, Right: 0}}
	for _, c := range []struct {
		arch        int
		left, right measure.Length
	}{{1, 1 * in, 0}, {3, 1 * in, 0}, {4, 3 * in, 3 * in}, {5, 5 * in, 6 * in}, {7, 9 * in, 12 * in}, {9, 9 * in, 12 * in}} {
		left, right := Levels(s, c.arch)
		near(t, "left", left, c.left, 1e-9)
		near(t, "right", right, c.right, 1e-9)
	}
	s.Guys.Arches = []int{5}
	l := lay(s)
	near(t, "L4", stakeOf(t, l, "L4").Ground, 3*in, 1e-9)
	near(t, "G5La, 72 in back from arch 5 at 63 in a bay", stakeOf(t, l, "G5La").Ground, (5-2*72./63)*in, 1e-9)
	s.Site.Levels = nil
	if left, right := Levels(s, 5); left != 0 || right != 0 {
		t.Error("no levels, yet the ground is not at the datum")
	}
}
