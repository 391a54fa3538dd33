package stock

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
)

// A belt about two bars: of equal ones (π + 2)/π times one of them, by hand; of 3 and 1, whose straight parts are √3 each over arcs of 240° and 120°; of one and none its own size.
func TestBandRound(t *testing.T) {
	for _, c := range []struct{ one, other, want float64 }{{1.05, 1.05, 1.05 * (math.Pi + 2) / math.Pi}, {3, 1, (2*math.Sqrt(3) + 2*math.Pi + math.Pi/3) / math.Pi}, {2, 0, 2}} {
		if got := float64(BandRound(measure.Length(c.one), measure.Length(c.other))); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%g and %g: %g, want %g", c.one, c.other, got, c.want)
		}
	}
}
