package bend

import (
	"math"
	"testing"
)

// leant finds one lean, of a rod that stands by itself.
func leant(s *Solver, rod Rod, held []float64, pushes []Load) (*Lean, bool) {
	surplus, leans, err := s.Leans(rod, held, pushes)
	if err != nil || surplus > 0 {
		return nil, false
	}
	return leans[0], true
}

// A half ring that is round when nothing acts on it, both feet clamped, pushed aside at its top. By Castigliano's theorem with the bending
// moment 2QR/π that the cut at the top carries (the bow girder of strength-of-materials texts; worked here from its moments M = M₀cos φ − QR sin φ,
// T = M₀ sin φ − QR(1 − cos φ)): δ = QR³·((π/4 − 1/π)/EI + (3π/4 − 2 − 1/π)/GJ), Q half the push.
func TestHalfRingPushedAside(t *testing.T) {
	const r, ei, gj, push = 1.2, 30.0, 21.0, 3.0
	rod := Rod{
		Stretches: []Stretch{{Length: math.Pi * r, Stiffness: ei, Torsion: gj, Turn: -math.Pi}},
		Start:     End{Angle: math.Pi / 2}, Finish: End{Angle: -math.Pi / 2}, DX: 2 * r,
	}
	moved, ok := leant(NewSolver(400), rod, nil, []Load{{From: math.Pi * r / 2, To: math.Pi * r / 2, Push: push}})
	if !ok {
		t.Fatal("it does not stand")
	}
	want := push / 2 * r * r * r * ((math.Pi/4-1/math.Pi)/ei + (3*math.Pi/4-2-1/math.Pi)/gj)
	if got := moved.Out(math.Pi * r / 2); math.Abs(got/want-1) > 1e-4 {
		t.Errorf("the top moves %v m, want %v", got, want)
	}
	if s, most := moved.Most(); math.Abs(s-math.Pi*r/2) > .02 || most < moved.Out(1) {
		t.Errorf("it moves most, %v m, at %v", most, s)
	}
}

// bentRod is an uneven arch of straight pipe with weight, a fitting and a load, bent and stressed by it.
func bentRod() Rod {
	return Rod{
		Stretches: []Stretch{{.7, 60, 22, 2, 0}, {2.2, 20, 14, 4, 0}, {.1, math.Inf(1), 0, .5, 0}, {2.5, 20, 14, 4, 0}, {.7, 60, 22, 2, 0}},
		Loads:     []Load{{From: 1.5, To: 1.5, Weight: 2}},
		Start:     End{Angle: math.Pi/2 + .02}, Finish: End{Angle: -math.Pi / 2}, DX: 2.3, DY: .1,
	}
}

// Maxwell and Betti: a push at one place moves another as far as the same push there moves the one; and what is held stays, both feet too.
func TestPushesAreReciprocal(t *testing.T) {
	for _, held := range [][]float64{nil, {2.95}} {
		s := NewSolver(200)
		a, okA := leant(s, bentRod(), held, []Load{{From: 1.1, To: 1.1, Push: 5}})
		b, okB := leant(s, bentRod(), held, []Load{{From: 4.6, To: 4.6, Push: 5}})
		both, okBoth := leant(s, bentRod(), held, []Load{{From: 1.1, To: 1.1, Push: 5}, {From: 4.6, To: 4.6, Push: 5}})
		if !okA || !okB || !okBoth {
			t.Fatal("it does not stand")
		}
		if x, y := a.Out(4.6), b.Out(1.1); math.Abs(x-y) > 2e-3*math.Abs(a.Out(1.1)) {
			t.Errorf("%v against %v", x, y)
		}
		if got, want := both.Out(2), a.Out(2)+b.Out(2); math.Abs(got-want) > 1e-9 {
			t.Errorf("together %v, one by one %v", got, want)
		}
		if a.Out(1.1) <= 0 || math.Abs(a.Out(6.2)) > 1e-9 {
			t.Errorf("the pushed place moves %v, the far foot %v", a.Out(1.1), a.Out(6.2))
		}
		for _, h := range held {
			if math.Abs(a.Out(h)) > 1e-4 {
				t.Errorf("the held place moves %v", a.Out(h))
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
	if _, ok := leant(NewSolver(0), rod, nil, []Load{{From: 1, To: 1, Push: 1}}); ok {
		t.Error("it stands")
	}
}
