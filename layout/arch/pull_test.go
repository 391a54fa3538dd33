package arch_test

import (
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Pulls alike on both legs of an even arch: held at the crown its legs bow at some height between the stake's top and the crown; free there the crown
// goes farthest, farther for twice the pull, and the more for weight that helps it over. The figures are checked in package bend.
func TestPulledAlong(t *testing.T) {
	in := garden()
	k, _ := arch.Solve(in)
	pulls := func(f measure.Force) (list []arch.Pull) {
		for _, side := range []spec.Side{spec.Left, spec.Right} {
			for tape := 12 * measure.Inch; tape <= 72*measure.Inch; tape += 12 * measure.Inch {
				list = append(list, arch.Pull{side, tape, f})
			}
		}
		return list
	}
	one, ok := k.PulledAlong(pulls(1))
	two, _ := k.PulledAlong(pulls(2))
	none, _ := k.PulledAlong(nil)
	if !ok || !one.Free {
		t.Fatalf("%+v", one)
	}
	play := measure.Length(k.PlayLean) * k.Crown
	near(t, "lean by play alone", float64(none.Lean/play), 1, 1e-9)
	near(t, "twice the bow", float64(two.Bow/one.Bow), 2, 1e-6)
	near(t, "twice the lean", float64((two.Lean-play)/(one.Lean-play)), 2, 1e-6)
	if one.Lean < 5*one.Bow || one.BowHeight < 30*measure.Inch || one.BowHeight > 80*measure.Inch {
		t.Errorf("%+v", one)
	}
	if _, ok := (&arch.Kind{}).PulledAlong(pulls(1)); ok {
		t.Error("a sketch was pulled")
	}
}
