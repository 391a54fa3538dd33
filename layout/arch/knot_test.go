package arch_test

import (
	"math"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Wherever the coupling of a leg's two sticks comes to lie, the bare band about the mark of a guy, as it is printed, lies on pipe: no farther from the height that was asked for than
// past the coupling, and where the wind's reckoning has it. A mark that no coupling is near stays.
func TestKnotIsClearOfCouplings(t *testing.T) {
	for _, u := range []measure.System{measure.Imperial, measure.Metric} {
		half, moved := practice.BareBand(u)/2, 0
		for first := measure.Length(48 * in); first <= 96*in; first += in / 2 {
			i := garden()
			i.Units = u
			i.Spec.Left = []measure.Length{first, 120*in - first}
			i.Spec.Right = []measure.Length{120*in - first, first}
			k, _ := arch.Solve(i)
			tied := k.TiedAt(72 * in)
			for _, side := range []spec.Side{spec.Left, spec.Right} {
				asked, _ := k.TapeAt(side, 72*in)
				at, ok := k.KnotAt(u, side, 72*in)
				if !ok {
					t.Fatalf("sticks from %v: no mark", first)
				}
				wind, mark := measure.Length(tied[side]*1000), u.Taped(at)
				if side == spec.Right {
					wind, mark = k.Length-wind, k.Length-mark
				}
				if math.Abs(float64(wind-at)) > 0.1 {
					t.Errorf("sticks from %v, %s: the wind has it at %v, the paper at %v", first, side, wind, at)
				}
				near := false
				for _, j := range k.Joints() {
					if mark+half > j.From && mark-half < j.To {
						t.Errorf("sticks from %v, %s: the mark at %v is on the joint from %v to %v", first, side, mark, j.From, j.To)
					}
					place := asked
					if side == spec.Right {
						place = k.Length - asked
					}
					near = near || place > j.From-half-practice.Reading(u) && place < j.To+half+practice.Reading(u)
				}
				if shift := at - asked; !near && shift != 0 || measure.Abs(shift) > half+practice.Reading(u)+2*in {
					t.Errorf("sticks from %v, %s: moved by %v", first, side, shift)
				} else if shift != 0 {
					moved++
				}
			}
		}
		if moved < 4 {
			t.Errorf("%v: %d marks moved: no coupling came near", u, moved)
		}
	}
}
