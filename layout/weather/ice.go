package weather

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
	rod := m.Aged(late)
	for _, l := range m.in.Loads {
		if w := onto(l.Run, l.Thick, ice); w > 0 {
			rod.Loads = append(rod.Loads, bend.Load{From: m.Within(l.From), To: m.Within(l.To), Weight: w})
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

// underIce fills in what ice does to the arch.
func (m *model) underIce(k *Kind) {
	late := float64(m.spec.LateModulus)
	whole := k.LoadFactor * float64(m.weight())
	for i, left := range [2]float64{1, late} {
		share := 1.0
		if k.LoadFactor < Most {
			share = m.iceShare(left, whole*left/late)
		}
		k.braced.iceShares[i] = share
	}
	k.IceNew, k.IceLate = m.ices(k)
	if m.in.Ice > 0 && m.in.Ice < k.IceLate {
		if shape, err := bend.Solve(m.iced(late, m.in.Ice)); err == nil && shape.Stable {
			k.IceCrown = measure.Length(shape.At(m.crown.Metres()).Y-m.rod.DY/2) * measure.Metre
		}
	}
}

// ices returns the ice, as new and late, under which the arch goes over by its load factor: as raised it bears more by as much as the pipe is stiffer.
func (m *model) ices(k *Kind) (raised, late measure.Length) {
	dead, left, shares := float64(m.weight()), float64(m.spec.LateModulus), k.braced.iceShares
	under := func(whole, share float64) measure.Length {
		return m.iceUnder(dead + share*(whole-dead))
	}
	return under(k.LoadFactor*dead/left, shares[0]), under(k.LoadFactor*dead, shares[1])
}

// iceShare returns which share of what the arch bears beyond its dead load, with so much of its pipe's modulus left, it bears where that is ice; whole is all
// the weight under which it goes over. It is nearly 1, for ice lies nearly as the rest does; the arch under the ice that whole allows tells.
// More than 1 is not believed: a flat arch that goes over in its sag may hang again under ice.
func (m *model) iceShare(left, whole float64) float64 {
	dead := float64(m.weight())
	if whole <= dead {
		return 1
	}
	ice := m.iceUnder(whole)
	solver := bend.NewSolver(weatherParts)
	solver.Precision = icePrecision
	f, err := solver.Factors(m.iced(left, ice), m.Held(m.in.Guyed)...)
	if err != nil {
		return 1
	}
	return min(max((min(f.Sideways, f.Along)*(dead+m.iceOn(ice))-dead)/(whole-dead), 0), 1)
}

// lessIce lowers the ice to what the load factor allows, which has fallen since.
func (k *Kind) lessIce() {
	raised, late := k.built.ices(k)
	k.IceNew, k.IceLate = min(k.IceNew, raised), min(k.IceLate, late)
	if k.IceLate <= k.built.in.Ice {
		k.IceCrown = 0
	}
}

// icePrecision is the share to which the weight an arch bears with its ice is found: a hundredth of it is less than a hundredth of an inch of ice.
const icePrecision = 0.01
