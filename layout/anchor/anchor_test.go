package anchor_test

import (
	"math"
	"testing"

	"hoopwright/layout/anchor"
	"hoopwright/layout/measure"
)

const (
	m       = measure.Metre
	in      = measure.Inch
	pound   = 4.4482216152605
	inPound = pound * .0254
)

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

// Two worked examples of Broms's method for short free-headed piles in clay, as published in textbooks' example sheets.
func TestClayExamples(t *testing.T) {
	first := anchor.Soil{Cohesion: 47.9e3}
	near(t, "load of pile .305 × 2.44 m at .61 m", float64(first.Holds(.305*m, 2.44*m, .61*m)), 59.486e3, 1e-4)

	second := anchor.Soil{Cohesion: 50e3} // 102 kN·m from 7.5 m up on .75 m
	push := measure.Force(102e3 / 7.5)
	near(t, "greatest moment", second.Moment(.75*m, push, 102e3), 117.57e3, 1e-3)
	near(t, "length", float64(second.Depth(.75*m, push, 102e3)/m), 2.35, 3e-3)
}

// A no. 3 bar pushed 30 in up: moments at the ground by hand calculation with the same formulas.
func TestStake(t *testing.T) {
	for _, c := range []struct {
		soil  anchor.Soil
		depth measure.Length
		want  float64 // lb·in
	}{{anchor.Soft(), 8, 89}, {anchor.Sandy(), 8, 15}, {anchor.Soft(), 18, 421}, {anchor.Sandy(), 18, 136}} {
		got := float64(c.soil.Holds(.375*in, c.depth*in, 30*in)) / pound * 30
		if math.Abs(got-c.want) > .6 {
			t.Errorf("%s, %g in: %.2f lb·in, want %g", c.soil.Name, float64(c.depth), got, c.want)
		}
	}
	// ASTM A615 grade 40 is 40 000 psi; S = π·d³/32.
	near(t, "yield", anchor.Yields(.375*in, 40000*6894.757293168)/inPound, 207, 2e-3)
}

// Depth is the inverse of Holds.
func TestInverse(t *testing.T) {
	for _, s := range []anchor.Soil{anchor.Soft(), anchor.Firm(), anchor.Sandy()} {
		for _, depth := range []float64{150, 300, 700} {
			for _, arm := range []float64{0, 200, 1500} {
				push := s.Holds(12, measure.Length(depth), measure.Length(arm))
				got := s.Depth(12, -push, float64(push)*arm/1000)
				near(t, s.Name+" depth", float64(got), depth, 1e-9)
			}
		}
		if d := s.Depth(12, 0, 0); !(d >= 0 && d < 20) {
			t.Errorf("%s: nothing to hold asks %g mm", s.Name, float64(d))
		}
		if h := s.Holds(12, 5, 100); h < 0 || math.IsNaN(float64(h)) {
			t.Errorf("%s: holds %g", s.Name, float64(h))
		}
	}
	for word, n := range map[string]int{"firm": 1, "soft": 1, "sandy": 1, "frozen": 1, "unknown": 2} {
		if got := len(anchor.Named(word)); got != n {
			t.Errorf("%s: %d soils", word, got)
		}
	}
}
