package bend

import (
	"math"
	"testing"
)

// A half ring that is round when nothing acts on it, both feet clamped, pushed aside at its top. By Castigliano's theorem with the bending
// moment 2QR/π that the cut at the top carries (the bow girder of strength-of-materials texts; worked here from its moments M = M₀cos φ − QR sin φ,
// T = M₀ sin φ − QR(1 − cos φ)): δ = QR³·((π/4 − 1/π)/EI + (3π/4 − 2 − 1/π)/GJ), Q half the push.
func TestHalfRingPushedAside(t *testing.T) {
	const r, ei, gj, push = 1.2, 30.0, 21.0, 3.0
	rod := Rod{
		Stretches: []Stretch{{Length: math.Pi * r, Stiffness: ei, Torsion: gj, Turn: -math.Pi}},
		Start:     End{Angle: math.Pi / 2}, Finish: End{Angle: -math.Pi / 2}, DX: 2 * r,
	}
	moved, ok := NewSolver(400).Aside(rod, nil, []Push{{math.Pi * r / 2, push}})
	if !ok {
		t.Fatal("it does not stand")
	}
	want := push / 2 * r * r * r * ((math.Pi/4-1/math.Pi)/ei + (3*math.Pi/4-2-1/math.Pi)/gj)
	if got := moved.At(math.Pi * r / 2); math.Abs(got/want-1) > 1e-4 {
		t.Errorf("the top moves %v m, want %v", got, want)
	}
	if s, most := moved.Most(); math.Abs(s-math.Pi*r/2) > .02 || most < moved.At(1) {
		t.Errorf("it moves most, %v m, at %v", most, s)
	}
}

// bentRod is an uneven arch of straight pipe with weight, a fitting and a load, bent and stressed by it.
func bentRod() Rod {
	return Rod{
		Stretches: []Stretch{{.7, 60, 22, 2, 0}, {2.2, 20, 14, 4, 0}, {.1, math.Inf(1), 0, .5, 0}, {2.5, 20, 14, 4, 0}, {.7, 60, 22, 2, 0}},
		Loads:     []Load{{1.5, 1.5, 2}},
		Start:     End{Angle: math.Pi/2 + .02}, Finish: End{Angle: -math.Pi / 2}, DX: 2.3, DY: .1,
	}
}

// Maxwell and Betti: a push at one place moves another as far as the same push there moves the one; and what is held stays, both feet too.
func TestPushesAreReciprocal(t *testing.T) {
	for _, held := range [][]float64{nil, {2.95}} {
		s := NewSolver(200)
		a, okA := s.Aside(bentRod(), held, []Push{{1.1, 5}})
		b, okB := s.Aside(bentRod(), held, []Push{{4.6, 5}})
		both, okBoth := s.Aside(bentRod(), held, []Push{{1.1, 5}, {4.6, 5}})
		if !okA || !okB || !okBoth {
			t.Fatal("it does not stand")
		}
		if x, y := a.At(4.6), b.At(1.1); math.Abs(x-y) > 2e-3*math.Abs(a.At(1.1)) {
			t.Errorf("%v against %v", x, y)
		}
		if got, want := both.At(2), a.At(2)+b.At(2); math.Abs(got-want) > 1e-9 {
			t.Errorf("together %v, one by one %v", got, want)
		}
		if a.At(1.1) <= 0 || math.Abs(a.At(6.2)) > 1e-9 {
			t.Errorf("the pushed place moves %v, the far foot %v", a.At(1.1), a.At(6.2))
		}
		for _, h := range held {
			if math.Abs(a.At(h)) > 1e-4 {
				t.Errorf("the held place moves %v", a.At(h))
			}
		}
	}
}

// An arch that falls aside by itself is not said to stand under a push.
func TestPushOnWhatFalls(t *testing.T) {
	rod := bentRod()
	for i := range rod.Stretches {
		rod.Stretches[i].Weight *= 12
	}
	if _, ok := NewSolver(0).Aside(rod, nil, []Push{{1, 1}}); ok {
		t.Error("it stands")
	}
}
