package arch

import (
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The pipe is stiffened by the bar as far as that shows, but no farther than to the first joint of either leg, nor to nearly half of the arch.
func TestBarGoesToTheFirstJoint(t *testing.T) {
	const inch = measure.Inch
	pipe, _ := catalog.FindPipe("pvc sch40 1/2 in")
	for _, c := range []struct {
		left, right []measure.Length
		want        measure.Length
	}{
		{[]measure.Length{120 * inch}, []measure.Length{120 * inch}, 28 * inch},
		{[]measure.Length{20 * inch, 100 * inch}, []measure.Length{120 * inch}, 20 * inch},
		{[]measure.Length{120 * inch}, []measure.Length{20 * inch, 100 * inch}, 20 * inch},
		{[]measure.Length{120 * inch}, []measure.Length{25 * inch}, 25 * inch},
		{[]measure.Length{30 * inch}, []measure.Length{30 * inch}, .45 * (60*inch + pipe.CouplingStop)},
	} {
		a := spec.Arch{Pipe: pipe, Left: c.left, Right: c.right, Stake: spec.Stake{Length: 48 * inch, Depth: 20 * inch}}
		in := Input{Spec: a}
		if got := in.lay(a).sleeve; (got-c.want).Inches() > 1e-9 || (c.want-got).Inches() > 1e-9 {
			t.Errorf("sticks %v and %v: bar up to %v, want %v", c.left, c.right, got, c.want)
		}
	}
}

// A tape beyond either end is at the end.
func TestTapeWithinTheRod(t *testing.T) {
	pipe, _ := catalog.FindPipe("pvc sch40 1/2 in")
	bar, _ := catalog.FindBar("3/8 in")
	m := Shape(Input{Spec: spec.Arch{Pipe: pipe, Left: []measure.Length{3000}, Right: []measure.Length{3000}, Span: 2200, Missing: spec.Height, LateModulus: .6,
		Stake: spec.Stake{Bar: bar, Length: 1200, Depth: 500}}}).built
	for tape, want := range map[measure.Length]float64{-10: 0, 0: 0, 250: .25, 5900: 5.9, 9000: m.rod.Length()} {
		if got := m.within(tape); got != want {
			t.Errorf("%v of tape is %v m up the rod of %v, want %v", tape, got, m.rod.Length(), want)
		}
	}
}

// An arch with one leg longer leaves as much room as its mirror image: that beside the nearer leg, twice.
func TestRoomBesideTheNearerLeg(t *testing.T) {
	pipe, _ := catalog.FindPipe("pvc sch40 1/2 in")
	bar, _ := catalog.FindBar("3/8 in")
	room := func(left, right measure.Length) measure.Length {
		k, _ := Solve(Input{Units: measure.Metric, OpeningWidth: 1200, OpeningHeight: 2000, Spec: spec.Arch{Pipe: pipe, Left: []measure.Length{left}, Right: []measure.Length{right}, Span: 2200, Missing: spec.Height, LateModulus: .6,
			Stake: spec.Stake{Bar: bar, Length: 1200, Depth: 500}}})
		return k.room.beside
	}
	if one, mirrored := room(3000, 3300), room(3300, 3000); one < 1000 || one-mirrored > .1 || mirrored-one > .1 {
		t.Errorf("room of %v, mirrored %v", one, mirrored)
	}
}
