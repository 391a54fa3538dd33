package arch_test

import (
	"slices"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
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

// A drop from the ridge hangs at the crown alone: as long as it clears the opening there the arch beside it is free to come lower.
func TestRidgeDropHangsAtTheCrown(t *testing.T) {
	blocked := func(change func(*arch.Input)) bool {
		in := garden()
		in.OpeningWidth, in.OpeningHeight = 48*measure.Inch, 80*measure.Inch
		change(&in)
		_, found := arch.Solve(in)
		return slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Code == "opening-blocked" })
	}
	k, _ := arch.Solve(garden())
	room := k.Clear - 80*measure.Inch
	for _, c := range []struct {
		ridge, drop measure.Length
		want        bool
	}{{0, 0, false}, {room - 1, 0, false}, {0, room - 1, true}, {room + 1, 0, true}} {
		if got := blocked(func(in *arch.Input) { in.RidgeDrop, in.Drop = c.ridge, c.drop }); got != c.want {
			t.Errorf("ridge drop %v, drop %v: blocked %v, want %v", c.ridge, c.drop, got, c.want)
		}
	}
}
