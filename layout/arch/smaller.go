package arch

import (
	"fmt"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
)

// standsAs returns the longest legs, in whole steps, and the span with which an arch of the same pipe and proportions, lights and all, would bear its own weight at season's
// end, for an arch that does not. It reports false where none above a third of its size does.
func (j *judge) standsAs() (legs string, span measure.Length, ok bool) {
	solver := bend.NewSolver(roughParts)
	stands := func(share measure.Length) bool {
		m, err := j.scaled(share, solver)
		if err != nil || !m.upright() {
			return false
		}
		rod := m.loaded(1)
		shape, err := solver.Solve(rod)
		return err == nil && shape.Stable && m.standsAside(rod, shape, roughParts, j.in.Guyed)
	}
	low, high := measure.Length(1.0/3), measure.Length(1)
	if !stands(low) {
		return "", 0, false
	}
	for range 5 {
		if mid := (low + high) / 2; stands(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	step := 6 * measure.Inch
	if j.units == measure.Metric {
		step = 100 * measure.Millimetre
	}
	leg := j.length * low / 2
	whole := measure.Length(int(leg/step)) * step
	return fmt.Sprintf("legs of about %s", j.units.Room(whole)), j.spec.Span * low * whole / leg, true
}

// roughParts is the number of parts an arch is cut into where only whether it stands is asked.
const roughParts = 20

// scaled solves the arch as raised at a share of its size.
func (j *judge) scaled(share measure.Length, solver *bend.Solver) (*model, error) {
	in, a := *j.in, j.spec
	in.Loads = append([]Load(nil), in.Loads...)
	for i := range in.Loads {
		l := &in.Loads[i]
		l.From, l.To, l.Weight = l.From*share, l.To*share, l.Weight*measure.Force(share)
	}
	shorter := func(sticks []measure.Length) (list []measure.Length) {
		for _, s := range sticks {
			list = append(list, s*share)
		}
		return list
	}
	a.Left, a.Right, a.Span = shorter(a.Left), shorter(a.Right), a.Span*share
	f := in.lay(a)
	return f.stand(solver, new([2]lean))
}
