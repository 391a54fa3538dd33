package arch_test

import (
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// stood solves an arch and stands it.
func stood(i arch.Input) *arch.Kind {
	k, _ := arch.Solve(i)
	return k
}

// TestFoundSoftness solves arches of a known stiffness, takes their crowns for measured ones and asks a plan that knows nothing of it: the same stiffness comes back, of a
// season's end and of a trial without its ridge.
func TestFoundSoftness(t *testing.T) {
	for _, share := range []measure.Share{.45, .3, .25, .12} {
		late := snug()
		late.Spec.LateModulus = share
		f, ok := stood(snug()).Found(spec.Measured{Arch: 2, Crown: stood(late).SeasonCrown, Span: 90 * in}, false)
		near(t, "share", float64(f.Left), float64(share), 1e-4)
		near(t, "planned", f.Planned.Inches(), stood(snug()).SeasonCrown.Inches(), 1e-6)
		if !ok || f.Off != (f.Planned-f.Crown > in/2) {
			t.Errorf("share %v: off %v by %g in", share, f.Off, (f.Planned - f.Crown).Inches())
		}

		soft := snug()
		soft.Spec.Pipe.Modulus *= measure.Pressure(share)
		ridged := snug()
		ridged.Loads = []arch.Load{{From: 120.5 * in, To: 120.5 * in, Weight: 2 * pound, Run: 54 * in, Thick: in}}
		if f, ok = stood(ridged).Found(spec.Measured{Arch: 2, Crown: stood(soft).Crown, Span: 90 * in}, true); !ok {
			t.Fatal("the trial tells nothing")
		}
		near(t, "share of a trial", float64(f.Left), float64(share), 1e-4)
	}
}

// TestFoundSpread stands an arch whose feet are farther apart: as far as that comes back. It is 0.28 in of crown for an inch of span, by another solver (TestBand). Over a span that was
// measured nothing is left to tell.
func TestFoundSpread(t *testing.T) {
	wide := snug()
	wide.Spec.Span += 5 * in
	found := spec.Measured{Arch: 2, Crown: stood(wide).SeasonCrown}
	f, _ := stood(snug()).Found(found, false)
	near(t, "spread", f.Spread.Inches(), 5, 1e-3)
	near(t, "crown lower", (f.Planned - f.Crown).Inches(), 5*.28, .15)
	if !f.Off {
		t.Error("an inch and a half is as planned")
	}
	found.Span = 95 * in
	if f, _ = stood(snug()).Found(found, false); f.Off || f.Spread != 0 {
		t.Errorf("with its span: %+v", f)
	}
	near(t, "share with its span", float64(f.Left), .6, 1e-3)
	if f, _ = stood(snug()).Found(spec.Measured{Arch: 2, Crown: 99 * in}, false); !f.Off || f.Spread != 0 {
		t.Errorf("three inches higher: %+v", f)
	}
}
