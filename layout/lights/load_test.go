package lights

import (
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// What hangs on all arches and ridge pieces is the weight of all strings in wraps, and of all that lies along the walls in
// rows, the climbs apart.
func TestLoadsAddUp(t *testing.T) {
	in := everything(5)
	l := Lay(in)
	var sum measure.Force
	for _, a := range in.Arches {
		for _, load := range Loads(in.Spec, a.Number, a.Kind) {
			if load.From > load.To || load.From < 0 || load.To > a.Length {
				t.Errorf("arch %d: %+v", a.Number, load)
			}
			sum += load.Weight
		}
	}
	for i, piece := range in.Ridge {
		wraps, drops := RidgeLoad(in.Spec, i+1, piece, 76*inch, 76*inch)
		sum += wraps.Weight + drops.Weight
	}
	const weight = 0.0223 * 9.80665 / 1000 // N for each mm
	var want float64
	for _, s := range l.Strings {
		if s.Run.Wound() {
			want += weight * float64(s.Label.Length)
		}
	}
	for _, p := range l.Paths {
		want += weight * (float64(p.Length) - 2*24*25.4)
	}
	want += weight * 4 * 54 * 25.4 * 108 / 105 // drops on the ridge, lapped by 3 in of 9 ft
	near(t, "weight, N", float64(sum), want, 1e-6)
}

func TestRowsLoadBothLegsAtTheirMarks(t *testing.T) {
	in := plain(3, spec.Lights{Rows: sixRows()})
	ends, middle := Loads(in.Spec, 1, in.Arches[0].Kind), Loads(in.Spec, 2, in.Arches[1].Kind)
	if len(ends) != 12 || len(middle) != 12 {
		t.Fatalf("%d and %d loads", len(ends), len(middle))
	}
	for i := range 6 {
		near(t, "left mark, in", ends[i].From.Inches(), 12*float64(i+1), 1e-9)
		near(t, "right mark, in", ends[6+i].To.Inches(), 241-12*float64(i+1), 1e-9)
		near(t, "a middle arch bears two halves", float64(middle[i].Weight), 2*float64(ends[i].Weight), 1e-9)
	}
}
