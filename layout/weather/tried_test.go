package weather

import (
	"testing"

	"hoopwright/layout/anchor"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// weaker is a soil of which so much strength is left.
func weaker(s anchor.Soil, left float64) anchor.Soil {
	s.Cohesion *= measure.Pressure(left)
	s.UnitWeight *= left
	return s
}

// justPasses returns what is left of a soil's strength where a stake of that depth just bears what it is pulled with by hand: found by halving.
func justPasses(soil anchor.Soil, stake spec.Stake, depth measure.Length, moment float64) float64 {
	low, high, up := 0.0, 10.0, practice.PullUp(measure.Imperial)
	for range 50 {
		mid := (low + high) / 2
		if float64(weaker(soil, mid).Holds(stake.Bar.Diameter, depth, up))*up.Metres() < moment {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// TestPulledStakeSpeaksForAll: in ground so weak that the tried stake just passes, the stakes of guys and braces hold what the same gust asks of them; where it passes only deeper, those do that
// stand no less deep than it did, and not all others. Stakes that stand shallow beside deep legs ask for a harder pull than the legs alone.
func TestPulledStakeSpeaksForAll(t *testing.T) {
	harder, doubted := 0, 0
	for _, soil := range []spec.Soil{spec.Soft, spec.Firm, spec.Sandy} {
		for _, deep := range []measure.Length{12, 30} {
			for _, peg := range []measure.Length{12, 20} {
				in, held := hoop(), guyed(7*foot, 6)
				in.Soil, in.Spec.Stake.Depth, held.Stake.Depth = soil, deep*measure.Inch, peg*measure.Inch
				tun := tunnel(6, in, held, func(s *spec.Spec) {
					s.Braces = spec.Braces{Bays: []int{1, 5}, From: 5 * foot, Line: true, Peg: held.Stake}
				})
				w := Solve(tun)
				if _, legs := w.stakeAsks(w.Test); w.Asks > legs {
					harder++
				}
				loose := func(left float64) (guys, braces bool) {
					uses := w.endsUse(weaker(tun.soils()[0], left))
					return uses[0] > 1+1e-6, uses[1] > 1+1e-6
				}
				stake := in.Spec.Stake
				most := anchor.Yields(stake.Bar.Diameter, stake.Bar.Yield) // a bar that bends tells no more
				bends := tun.soils()[0].Moment(stake.Bar.Diameter, measure.Force(w.Asks/practice.PullUp(measure.Imperial).Metres()), w.Asks)
				if guys, braces := loose(justPasses(tun.soils()[0], stake, stake.Depth, w.Asks)); (guys || braces) && bends < most*.9 {
					t.Errorf("%v, legs %v in deep, others %v: the tried stake passes, guys loose %v, braces %v", soil, deep, peg, guys, braces)
				}
				deeper := justPasses(tun.soils()[0], stake, stake.Depth+practice.Deeper(measure.Imperial), w.Asks)
				switch guys, braces := loose(deeper); {
				case !guys && !braces:
				case peg >= deep:
					t.Errorf("%v, legs %v in deep, others %v: it passes deeper, guys loose %v, braces %v", soil, deep, peg, guys, braces)
				default:
					doubted++
				}
				if bends > most {
					t.Errorf("pulled with %g N·m its bar bends", w.Asks)
				}
			}
		}
	}
	if harder == 0 || doubted == 0 {
		t.Errorf("%d pulled harder, %d doubted: the cases test nothing", harder, doubted)
	}
}
