package weather_test

import (
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// By hand: lines every spacing, 18 in or 450 mm free on either side, in half feet or decimetres; where bays are narrower than twice that, mid-bay to the inch. Past the row's last arch there is no line.
func TestGuyStakesKeepOffLanes(t *testing.T) {
	const in, ft = measure.Inch, measure.Foot
	for _, c := range []struct {
		units       measure.System
		arches      int
		apart       measure.Length
		guyed       []int
		least, want measure.Length
	}{
		{measure.Metric, 10, 1400, []int{1, 4, 7, 10}, 1600, 1900},
		{measure.Metric, 10, 1400, []int{1, 4, 7, 10}, 2300, 2300},
		{measure.Metric, 10, 1400, []int{1, 4, 7, 10}, 2500, 3300},
		{measure.Metric, 10, 1400, []int{1, 10}, 1600, 1600},
		{measure.Metric, 13, 1250, []int{5, 13}, 2100, 3000},
		{measure.Imperial, 60, 51 * in, []int{1, 7, 60}, 102 * in, 10 * ft},
		{measure.Imperial, 9, 3 * ft, []int{4}, 3 * ft, 54 * in},
		{measure.Imperial, 9, 38 * in, []int{4}, 38 * in, 56 * in},
		{measure.Imperial, 9, 2 * ft, []int{4}, 4 * ft, 5 * ft},
		{measure.Imperial, 4, 5 * ft, []int{2, 4}, 114 * in, 138 * in},
		{measure.Imperial, 4, 5 * ft, []int{2, 4}, 15 * ft, 15 * ft},
	} {
		s := &spec.Spec{Units: c.units, Tunnel: spec.Tunnel{Arches: c.arches, Spacing: c.apart}}
		if got := weather.LaneOut(s, c.guyed, c.least); measure.Abs(got-c.want) > 1e-6 {
			t.Errorf("%d arches %v apart, %v out: %v, want %v", c.arches, c.apart, c.least, got, c.want)
		}
	}
}
