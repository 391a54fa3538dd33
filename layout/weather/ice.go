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

// iced returns the rod with the share left of its modulus and ice on pipe, wraps and all that hangs on it.
func (k *Kind) iced(left float64, ice measure.Length) bend.Rod {
	rod := k.Aged(left)
	for _, l := range k.In.Loads {
		if w := onto(l.Run, l.Thick, ice); w > 0 {
			rod.Loads = append(rod.Loads, bend.Load{From: k.Within(l.From), To: k.Within(l.To), Weight: w})
		}
	}
	rod.Loads = append(rod.Loads, bend.Load{To: rod.Length(), Weight: onto(k.Length, k.thick(), ice)})
	return rod
}

// iceOn returns the weight of that ice, N.
func (k *Kind) iceOn(ice measure.Length) float64 {
	sum := onto(k.Length, k.thick(), ice)
	for _, l := range k.In.Loads {
		sum += onto(l.Run, l.Thick, ice)
	}
	return sum
}

// iceUnder returns the ice that brings the weight of all a row's arches to so many times what it is.
func (r row) iceUnder(times float64) measure.Length {
	more := 0.0
	for _, m := range r {
		more += (times - 1) * float64(m.kind.Weight) * float64(len(m.arches))
	}
	low, high := measure.Length(0), mostIce
	for range 20 {
		mid, on := (low+high)/2, 0.0
		for _, m := range r {
			on += m.kind.iceOn(mid) * float64(len(m.arches))
		}
		if on < more {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
