package lights

import (
	"math"
	"slices"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A ridge of five 54 in bays takes three 9 ft strings end to end, running through the crowns.
func TestDropsRunThroughTheRidge(t *testing.T) {
	d := spec.Drop{Where: []spec.Place{{Part: spec.RidgePieces}}, String: mini("drop", 9*foot), Hang: 6 * inch}
	in := plain(6, spec.Lights{Drops: []spec.Drop{d}})
	l := Lay(in)
	if len(l.Strings) != 3 || l.Strings[1].Run.String() != "drop ridge 3" {
		t.Fatalf("%+v", l.Strings)
	}
	near(t, "end of the second, in", l.Strings[1].To.Y.Inches(), 4*54, 1e-6)
	near(t, "left over, in", l.Strings[2].LeftOver.Inches(), 54, 1e-6)
	crown := 241 / math.Pi
	near(t, "lowest, in", l.Drops[0].Lowest.Inches(), crown-.42-6, .01)
	if len(l.Findings) > 0 {
		t.Errorf("%+v", l.Findings)
	}
	in.Spec.Lights.Drops[0].Where[0].Of = []int{1, 2, 4}
	if l = Lay(in); len(l.Strings) != 2 || l.Strings[1].Run.String() != "drop ridge 4" {
		t.Errorf("with bay 3 free: %+v", l.Strings)
	}
}

func TestLapsOfDrops(t *testing.T) {
	d := spec.Drop{Where: []spec.Place{{Part: spec.RidgePieces}}, String: mini("drop", 60*inch), Hang: 6 * inch, Lap: 6 * inch}
	l := Lay(plain(6, spec.Lights{Drops: []spec.Drop{d}}))
	// Five strings reach 5·60 − 4·6 = 276 in over 270 in of ridge; each begins 54 in after the one before.
	if len(l.Strings) != 5 {
		t.Fatalf("%d strings", len(l.Strings))
	}
	near(t, "last begins, in", l.Strings[4].From.Y.Inches(), 4*54, 1e-6)
	near(t, "left over, in", l.Strings[4].LeftOver.Inches(), 6, 1e-6)
}

func TestDropsFromLegs(t *testing.T) {
	d := spec.Drop{
		Where:  []spec.Place{{Part: spec.Legs, Bound: spec.ByHeight, From: 50 * inch, To: measure.Length(math.Inf(1))}},
		String: mini("drop", 20*foot), Hang: 8 * inch,
	}
	l := Lay(plain(1, spec.Lights{Drops: []spec.Drop{d}}))
	if len(l.Strings) != 2 || l.Strings[1].Run.String() != "drop R1" || l.Strings[0].To.At.String() != "crown 1" {
		t.Fatalf("%+v", l.Strings)
	}
	r := 241 / math.Pi
	near(t, "used, in", l.Strings[0].Used.Inches(), 241/2.-r*math.Asin(50/r), .1)
	near(t, "lowest, in", l.Drops[0].Lowest.Inches(), 50-.42-8, .1)
}

func TestDropInTheOpening(t *testing.T) {
	d := spec.Drop{Where: []spec.Place{{Part: spec.RidgePieces}}, String: mini("drop", 9*foot), Hang: 20 * inch}
	l := Lay(plain(3, spec.Lights{Drops: []spec.Drop{d}}))
	if got := codes(l); !slices.Equal(got, []string{"drop-in-opening"}) || l.Findings[0].Level != finding.LookAt {
		t.Errorf("%+v", l.Findings)
	}
	d.Hang = 0
	if got := codes(Lay(plain(3, spec.Lights{Drops: []spec.Drop{d}}))); !slices.Equal(got, []string{"drop-without-hang"}) {
		t.Errorf("%v", got)
	}
}
