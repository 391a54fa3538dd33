package arch

import (
	"math"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
)

// What a careful crew still gets wrong or the parts leave open: common practice, no source.
const (
	groundLean = math.Pi / 360 // ½°, both stakes the same way out
	jointRock  = math.Pi / 180 // 1°, of a dry crown joint
	spanError  = measure.Inch
)

// band returns the give or take at the crown: what each of lean, rock and span moves it, added up.
func (m *model) band(k *Kind, solver *bend.Solver) measure.Length {
	moves := func(change func(*model)) float64 {
		most := 0.0
		n := *m
		change(&n)
		if shape, err := solver.Solve(n.rod); err == nil {
			n.shape = shape
			most = math.Abs(n.crownHeight() - k.Crown.Metres())
		}
		return most
	}
	sum := moves(func(n *model) {
		n.rod.Start.Angle += groundLean
		n.rod.Finish.Angle -= groundLean
	})
	sum += moves(func(n *model) { n.rod.DX += spanError.Metres() })
	if m.spec.Joints.DryCrown() && m.fitting.to > m.fitting.from {
		sum += moves(func(n *model) { n.rod = n.rocked(jointRock) })
	}
	return measure.Length(sum) * measure.Metre
}

// rocked returns the rod with its crown joint turned by an angle; negative peaks it.
func (m *model) rocked(turn float64) bend.Rod {
	rod := m.rod
	rod.Stretches = append([]bend.Stretch(nil), rod.Stretches...)
	from, crown := 0.0, m.frame.crown.Metres()
	for i := range rod.Stretches {
		s := &rod.Stretches[i]
		if s.Rigid() && from <= crown && crown <= from+s.Length {
			s.Turn = turn
		}
		from += s.Length
	}
	return rod
}

// GiveOrTake returns the band as it is printed.
func (k *Kind) GiveOrTake(u measure.System) measure.Length { return Printed(k.Band, u) }

// Printed returns a give or take up to the next half inch or 10 mm, for no crew measures a bent arch closer.
func Printed(give measure.Length, u measure.System) measure.Length {
	step := measure.Inch / 2
	if u == measure.Metric {
		step = 10 * measure.Millimetre
	}
	return max(measure.RoundUp(give, step), step)
}
