package lights

import (
	"slices"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A lap up to half a string is taken; a longer one is not, is told, and half of the string is offered.
func TestLapTakesNoMoreThanHalf(t *testing.T) {
	for lap, want := range map[measure.Length]measure.Length{0: 0, 6 * inch: 6 * inch, 30 * inch: 30 * inch, 31 * inch: 0} {
		d := spec.Drop{Where: []spec.Place{{Part: spec.RidgePieces}}, String: mini("drop", 60*inch), Hang: 6 * inch, Lap: lap}
		near(t, "lap taken, in", lapOf(d).Inches(), want.Inches(), 1e-9)
		l := Lay(plain(6, spec.Lights{Drops: []spec.Drop{d}}))
		k := slices.IndexFunc(l.Findings, func(f finding.Finding) bool { return f.Code == "drop-lap-too-long" })
		if (k >= 0) != (want < lap) || k >= 0 && l.Findings[k].Cure[0].Value != measure.Imperial.Written(30*inch) {
			t.Errorf("lap %v of 60 in: %+v", lap, l.Findings)
		}
	}
}
