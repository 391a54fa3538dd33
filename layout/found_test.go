package layout_test

import (
	"fmt"
	"math"
	"testing"

	"hoopwright/layout/measure"
)

// TestFoundBecomesNextYears types back the crown of a tunnel whose pipe kept 30 % of its stiffness: the new plan's season is that tunnel's, and its arches as raised are what they were.
func TestFoundBecomesNextYears(t *testing.T) {
	arches := "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in, stake: {bar: 3/8 in, length: 48 in, depth: 20 in}"
	soft := solved(t, base.with("arch", arches+", late modulus: 30 %}").text())
	crown := soft.Arches[1].SeasonCrown
	plain := solved(t, base.text())
	found := solved(t, base.with("found", fmt.Sprintf("{crown: {2: %.4f in}, span: {2: 86 in}}", crown.Inches())).text())
	for i, a := range found.Arches {
		if d := a.Crown - plain.Arches[i].Crown; math.Abs(float64(d)) > 1e-6 {
			t.Errorf("arch %d as raised: %v mm off", a.Number, d)
		}
		if math.Abs(float64(a.Spec.LateModulus-.3)) > .002 || math.Abs(float64(a.SeasonCrown-soft.Arches[i].SeasonCrown)) > .1 || math.Abs(a.LoadFactor-soft.Arches[i].LoadFactor) > .03 {
			t.Errorf("arch %d: %v left, crown %v, factor %v; want %v, %v, %v", a.Number, a.Spec.LateModulus, a.SeasonCrown, a.LoadFactor, measure.Share(.3), soft.Arches[i].SeasonCrown, soft.Arches[i].LoadFactor)
		}
	}
	if f := found.Found; len(f) != 1 || !f[0].Off || math.Abs(float64(f[0].Left-.3)) > .002 {
		t.Errorf("%+v, want what was found held against the plan before it", f)
	}
	if !has(found, "found-off-plan") || has(plain, "found-off-plan") {
		t.Errorf("the finding is there: %v; without found: %v", has(found, "found-off-plan"), has(plain, "found-off-plan"))
	}
	near := solved(t, base.with("found", fmt.Sprintf("{crown: {2: %.4f in}}", (plain.Arches[1].SeasonCrown+measure.Inch/4).Inches())).text())
	if has(near, "found-off-plan") || near.Arches[1].Spec.LateModulus != .6 {
		t.Errorf("a quarter inch changes the plan: %v", near.Arches[1].Spec.LateModulus)
	}
}
