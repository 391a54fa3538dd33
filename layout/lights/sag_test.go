package lights

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"hoopwright/layout/measure"
)

const inch, foot = measure.Inch, measure.Foot

// A worked example printed in textbooks of engineering mechanics: a cable over 30 m that sags 0.5 m is 30.022222 m long, by
// the first correction term of the series; the next is −14.8 µm.
func TestSagOfTheTextbookCable(t *testing.T) {
	near(t, "length, m", sagged(30*measure.Metre, 500).Metres(), 30.022222, 20e-6)
	near(t, "length by two terms, m", sagged(30*measure.Metre, 500).Metres(), 30*(1+8./3/3600-32./5/3600/3600), 5e-8)
}

// The arc length of y = 4d·s(1−s) by Gauss–Legendre quadrature, from a thread to a wire that hangs to the ground.
func TestSagByQuadrature(t *testing.T) {
	for _, c := range []struct{ chord, sag float64 }{{1371.6, 0}, {1371.6, 1e-4}, {1371.6, 25.4}, {1371.6, 300}, {300, 900}, {12, 2000}} {
		want := quad.Fixed(func(x float64) float64 {
			slope := 4 * c.sag / c.chord * (1 - 2*x/c.chord)
			return math.Hypot(1, slope)
		}, 0, c.chord, 4000, quad.Legendre{}, 0)
		near(t, "length, mm", float64(sagged(measure.Length(c.chord), measure.Length(c.sag))), want, 1e-4)
	}
	near(t, "a wire with both ends together", float64(sagged(0, 7)), 14, 0)
	near(t, "one that nearly has", float64(sagged(1e-5, 7)), 14, 1e-4)
}

// near fails where two figures differ by more than a tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %v, want %v ± %v", what, got, want, tolerance)
	}
}

// A wire between places of different heights by the same quadrature, and back from the length to the place.
func TestHungOnASlope(t *testing.T) {
	for _, w := range []hung{{1371.6, 200, 25.4}, {1371.6, -900, 300}, {300, 40, 0}, {0, 500, 0}} {
		for _, share := range []float64{.2, .5, 1} {
			want := quad.Fixed(func(u float64) float64 {
				return math.Hypot(float64(w.level), float64(w.rise)-4*float64(w.sag)*(1-2*u))
			}, 0, share, 200, quad.Legendre{}, 0)
			near(t, "length, mm", float64(w.upTo(share)), want, 1e-6)
			near(t, "share", w.share(w.upTo(share)), share, 1e-9)
		}
	}
}
