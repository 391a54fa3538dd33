package stock

import (
	"math"
	"slices"
	"testing"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A belt about two bars: of equal ones (π + 2)/π times one of them, by hand; of 3 and 1, whose straight parts are √3 each over arcs of 240° and 120°; of one and none its own size.
func TestBandRound(t *testing.T) {
	for _, c := range []struct{ one, other, want float64 }{{1.05, 1.05, 1.05 * (math.Pi + 2) / math.Pi}, {3, 1, (2*math.Sqrt(3) + 2*math.Pi + math.Pi/3) / math.Pi}, {2, 0, 2}} {
		if got := float64(BandRound(measure.Length(c.one), measure.Length(c.other))); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%g and %g: %g, want %g", c.one, c.other, got, c.want)
		}
	}
}

// Boards end midway between feet, or where a bay is longer than a board on both sides of that; none is longer than is sold. By hand, bases 400 mm wide.
func TestBoardRows(t *testing.T) {
	for _, c := range []struct {
		arches  int
		spacing measure.Length
		bent    bool
		want    []measure.Length
		joints  int
	}{
		{6, 1500, false, []measure.Length{950, 1500, 1500, 1500, 1500, 950}, 10},
		{7, 1000, false, []measure.Length{1700, 2000, 2000, 700}, 6},
		{7, 1000, true, []measure.Length{700, 1000, 1000, 1000, 1000, 1000, 700}, 12},
		{2, 1500, false, []measure.Length{1900}, 0},
		{2, 3000, false, []measure.Length{2200, 1200}, 2},
	} {
		s := &spec.Spec{Units: measure.Metric}
		s.Arch.Foot = &spec.Foot{Width: 400}
		if c.bent {
			s.Site.Route = []spec.Leg{{Turn: 0.1}}
		}
		in := Input{Spec: s}
		for i := range 2 * c.arches {
			in.Stakes = append(in.Stakes, ground.Stake{StakeID: ground.Leg(spec.Side(i%2), i/2+1), Running: measure.Length(i/2) * c.spacing, Base: true})
		}
		rows, joints := boardRows(in)
		for side, got := range rows {
			if !slices.EqualFunc(got, c.want, sameLength) || joints != c.joints {
				t.Errorf("%d arches, %v apart, side %d: %v, %d joints, want %v, %d", c.arches, c.spacing, side, got, joints, c.want, c.joints)
			}
		}
	}
}
