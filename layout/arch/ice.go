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

// iced returns the rod with ice on pipe, wraps and all that hangs on it.
func (m *model) iced(late float64, ice measure.Length) bend.Rod {
	rod := m.frame.rod(late, m.feet)
	for _, l := range m.in.Loads {
		if w := onto(l.Run, l.Thick, ice); w > 0 {
			rod.Loads = append(rod.Loads, bend.Load{From: m.within(l.From), To: m.within(l.To), Weight: w})
		}
	}
	rod.Loads = append(rod.Loads, bend.Load{To: rod.Length(), Weight: onto(m.length, m.thick(), ice)})
	return rod
}

// iceOn returns the weight of that ice, N.
func (m *model) iceOn(ice measure.Length) float64 {
	sum := onto(m.length, m.thick(), ice)
	for _, l := range m.in.Loads {
		sum += onto(l.Run, l.Thick, ice)
	}
	return sum
}

// iceUnder returns the ice that brings all weight to so many newtons.
func (m *model) iceUnder(whole float64) measure.Length {
	dead := float64(m.weight())
	low, high := measure.Length(0), mostIce
	for range 20 {
		mid := (low + high) / 2
		if dead+m.iceOn(mid) < whole {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// weight returns the dead load, N.
func (m *model) weight() measure.Force {
	return measure.Force(m.shape.StartLift + m.shape.FinishLift)
}

// underIce fills in what ice does to the arch. All weight at which it goes over is nearly the same whether it is ice or not, which gives a first guess;
// the arch under that ice gives the second. As raised it bears more by as much as the pipe is stiffer.
func (m *model) underIce(k *Kind) {
	late := float64(m.spec.LateModulus)
	whole := k.LoadFactor * float64(m.weight())
	k.braced.asIce = 1
	if k.LoadFactor > 1 && k.LoadFactor < Most {
		ice := m.iceUnder(whole)
		solver := bend.NewSolver(weatherParts)
		solver.Precision = icePrecision
		if f, err := solver.Factors(m.iced(late, ice), m.held()...); err == nil {
			under := min(f.Sideways, f.Along) * (float64(m.weight()) + m.iceOn(ice))
			k.braced.asIce, whole = under/whole, under
		}
	}
	k.IceLate, k.IceNew = m.iceUnder(whole), m.iceUnder(whole/late)
	if m.in.Ice > 0 && m.in.Ice < k.IceLate {
		if shape, err := bend.Solve(m.iced(late, m.in.Ice)); err == nil && shape.Stable {
			k.IceCrown = measure.Length(shape.At(m.frame.crown.Metres()).Y-m.rod.DY/2) * measure.Metre
		}
	}
}

// lessIce lowers the ice to what the load factor allows, which has fallen since.
func (k *Kind) lessIce() {
	m := k.built
	whole := k.braced.asIce * k.LoadFactor * float64(m.weight())
	k.IceLate = min(k.IceLate, m.iceUnder(whole))
	k.IceNew = min(k.IceNew, m.iceUnder(whole/float64(m.spec.LateModulus)))
	if k.IceLate <= m.in.Ice {
		k.IceCrown = 0
	}
}

// icePrecision is the share to which the weight an arch bears with its ice is found: a hundredth of it is less than a hundredth of an inch of ice.
const icePrecision = 0.01

// held returns where guys keep the crown in place, in metres along the rod.
func (m *model) held() []float64 { return m.heldIf(m.in.Guyed) }

func (m *model) heldIf(guyed bool) []float64 {
	if guyed {
		return []float64{m.frame.crown.Metres()}
	}
	return nil
}
