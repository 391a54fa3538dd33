package practice

import (
	"testing"

	"hoopwright/layout/measure"
)

// The 2010 ADA Standards print both: clear width 36 inches (915 mm) in 403.5, headroom 80 inches (2030 mm) in 307.4.
func TestOpeningAsPublished(t *testing.T) {
	for units, want := range map[measure.System][2]measure.Length{measure.Imperial: {36 * measure.Inch, 80 * measure.Inch}, measure.Metric: {915, 2030}} {
		if w, h := Opening(units); w != want[0] || h != want[1] {
			t.Errorf("%v: %v by %v, want %v", units, w, h, want)
		}
	}
}
