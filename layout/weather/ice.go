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

// iceUnder returns the ice that brings all weight to so many newtons.
func (k *Kind) iceUnder(whole float64) measure.Length {
	low, high := measure.Length(0), mostIce
	for range 20 {
		if mid := (low + high) / 2; k.weight()+k.iceOn(mid) < whole {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
