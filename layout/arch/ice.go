package arch

import (
	"math"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
)

// iceWeight is N/m³: 56 lb/ft³ (ASCE 7-16 10.4.1).
const iceWeight = 56 * 157.0874638

// mostIce is the thickest ice looked at: it means that or more.
const mostIce = 4 * measure.Inch

// onto returns what a length with a diameter carries under ice of a radial thickness, N: π·t·(d + t)·γ a metre (ASCE 7-16 10.4.1).
func onto(length, diameter, ice measure.Length) float64 {
	t, d := ice.Metres(), diameter.Metres()
	return math.Pi * t * (d + t) * iceWeight * length.Metres()
}

// iced returns the rod with ice on pipe, wraps and all that hangs on it, and the ice's weight.
func (m *model) iced(late float64, ice measure.Length) (rod bend.Rod, weight float64) {
	rod = m.frame.rod(late, m.feet)
	put := func(from, to, w float64) {
		if w > 0 {
			rod.Loads = append(rod.Loads, bend.Load{From: from, To: to, Weight: w})
			weight += w
		}
	}
	for _, l := range m.in.Loads {
		put(m.within(l.From), m.within(l.To), onto(l.Run, l.Thick, ice))
	}
	put(0, rod.Length(), onto(m.length, m.thick(), ice))
	return rod, weight
}

// flops returns the ice at which the arch no longer stands, given the factor that it stands with. All weight at which it goes over is nearly the same
// whether it is ice or not, which gives a first guess; the arch under that ice gives the second.
func (m *model) flops(solver *bend.Solver, late, factor float64, held []float64) measure.Length {
	dead := float64(m.weight())
	thickness := func(bears float64) measure.Length {
		low, high := measure.Length(0), mostIce
		for range 30 {
			mid := (low + high) / 2
			if _, w := m.iced(late, mid); dead+w < bears {
				low = mid
			} else {
				high = mid
			}
		}
		return low
	}
	if factor >= Most || factor < 1 {
		return thickness(factor * dead)
	}
	ice := thickness(factor * dead)
	rod, weight := m.iced(late, ice)
	if f, err := solver.Factors(rod, held...); err == nil {
		ice = thickness(min(f.Sideways, f.Along) * (dead + weight))
	}
	return ice
}

// weight returns the dead load, N.
func (m *model) weight() measure.Force {
	return measure.Force(m.shape.StartLift + m.shape.FinishLift)
}

// underIce fills in what ice does to the arch.
func (m *model) underIce(k *Kind) {
	late := float64(m.spec.LateModulus)
	solver := bend.NewSolver(iceParts)
	k.IceLate = m.flops(solver, late, k.LoadFactor, m.held())
	k.IceNew = max(m.flops(solver, 1, k.LoadFactor/late, m.held()), k.IceLate)
	if m.in.Ice > 0 && m.in.Ice < k.IceLate {
		rod, _ := m.iced(late, m.in.Ice)
		if shape, err := bend.Solve(rod); err == nil && shape.Stable {
			k.IceCrown = measure.Length(shape.At(m.frame.crown.Metres()).Y-m.rod.DY/2) * measure.Metre
		}
	}
}

// iceParts is the number of parts an arch is cut into for its ice.
const iceParts = 32

// held returns where guys keep the crown in place, in metres along the rod.
func (m *model) held() []float64 {
	if m.in.Guyed {
		return []float64{m.frame.crown.Metres()}
	}
	return nil
}
