package weather

import (
	"math"

	"hoopwright/layout/bend"
)

// sideways lets the wind rise across the tunnel in a state, sign 1 from the left and −1 from the right, until the arch folds or may bear no more.
func (k *Kind) sideways(of int, sign float64, seen *watch) *curve {
	st := &k.states[of]
	wind := k.sideWind()
	lie := k.Lie()
	solver := bend.NewSolver(sideParts)
	c := &curve{kind: k, arch: k.Numbers[0], way: Sideways}
	still := 0.0
	c.falls = seen.rising(func(q float64) (stands, done bool) {
		solve := solver.Next
		if q == 0 {
			solve = solver.Solve
		}
		was := lie
		sh, err := k.Rest(solve, &lie, func(feet [2]bend.End) bend.Rod {
			rod := st.rod
			rod.Start, rod.Finish = feet[0], feet[1]
			rod.Loads = append([]bend.Load(nil), rod.Loads...)
			for _, l := range wind {
				l.Push *= q * sign
				rod.Loads = append(rod.Loads, l)
			}
			return rod
		})
		if err != nil || !sh.Stable {
			lie = was
			return false, false
		}
		d := k.across(sh)
		if q == 0 {
			still = d.sway
		}
		d.sway = math.Abs(d.sway - still)
		c.samples = append(c.samples, sample{q, d})
		return true, seen.enough(q, k, &d)
	})
	return c
}

// across reads what a shape in the plane asks; sway is where the crown is.
func (k *Kind) across(sh *bend.Shape) demand {
	return demand{
		tip:    [2]float64{math.Abs(sh.Start.Moment), math.Abs(sh.Finish.Moment)},
		sway:   sh.At(k.CrownTape.Metres()).X,
		push:   [2]float64{math.Abs(sh.StartThrust), math.Abs(sh.Thrust)},
		lift:   [2]float64{sh.StartLift, sh.FinishLift},
		moment: [2]float64{math.Abs(sh.Start.Moment), math.Abs(sh.Finish.Moment)},

		strength: k.strength(sh.Strained()),
	}
}
