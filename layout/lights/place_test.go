package lights

import (
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The words of places and runs are those of the file format.
func TestPlaceAndRun(t *testing.T) {
	leg, row, ridge := Leg(spec.Left, 3), RowOf(spec.Left, 2), Part{Ridge, 2}
	two := func(p Part) Place { return Place{Spot: Along, Part: p, Tape: 2 * measure.Foot} }
	for _, c := range []struct {
		at        Place
		run       Run
		words, of string
	}{
		{Place{Spot: AtFoot, Part: leg}, Run{Part: leg}, "foot of leg L3", "leg L3"},
		{Place{Spot: AtCrown, Arch: 3}, Run{Part: leg}, "crown 3", "leg L3"},
		{two(leg), Run{Part: leg}, "leg L3, 2′-0″ up the pipe", "leg L3"},
		{two(leg), Run{leg, true}, "leg L3, 2′-0″ up the pipe", "drop L3"},
		{two(ridge), Run{ridge, true}, "ridge 2, 2′-0″ along the piece", "drop ridge 2"},
		{two(Part{Arch, 3}), Run{Part{Arch, 3}, true}, "arch 3, 2′-0″ along the pipe from its left foot", "drop arch 3"},
		{Place{Spot: InBay, Part: row, Bay: 4, Arch: 5, Tape: 9 * measure.Inch}, Run{Part: row}, "row left 2, bay 4, 9″ from arch 5", "row left 2"},
		{Place{Spot: Climbing, Part: row, Arch: 5, Tape: 2 * measure.Foot}, Run{Part: row}, "row left 2, leg L5 at 2′-0″ up the pipe", "row left 2"},
		{Place{Spot: AtArch, Part: RowOf(spec.Right, 4), Arch: 5}, Run{Part: row}, "row right 4, arch 5", "row left 2"},
		{Place{}, Run{Part: row}, "", "row left 2"},
	} {
		if got := [2]string{c.at.String(), c.run.String()}; got != [2]string{c.words, c.of} {
			t.Errorf("%q, want %q, %q", got, c.words, c.of)
		}
	}
}
