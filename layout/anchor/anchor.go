// Package anchor says what a driven steel bar holds when it is pushed or turned at the ground: by the soil in front of it, and
// by its own strength.
//
// The soil's part is B. B. Broms, Lateral Resistance of Piles in Cohesive Soils, and … in Cohesionless Soils (J. Soil Mech. Found.
// Div. ASCE 90, SM2 and SM3, 1964), for a short pile whose head is free to turn; formulas from memory, checked against
// published worked examples in the tests. A stake is short beside its stiffness, so the soil gives way before the bar bends.
//
// Results are estimates for choosing a depth: no factor is taken off, roots, stones and rain change a lawn within a foot. A pull on
// the driven stake tells more.
package anchor

import (
	"math"

	"hoopwright/layout/measure"
)

// Holds returns the force that the soil bears from a bar driven to depth and pushed level at the height arm above the ground.
func (s Soil) Holds(bar, depth, arm measure.Length) measure.Force {
	b, l, e := bar.Metres(), depth.Metres(), arm.Metres()
	if !s.clay() {
		return measure.Force(s.wedge(b) * l * l * l / (e + l))
	}
	d := l - dead*b // what is left below the skin that bears nothing
	if d <= 0 {
		return 0
	}
	// 9·cu·b·f·(e + 1.5·b + f/2) = 2.25·cu·b·(d − f)², solved for f.
	k := 2*(e+dead*b) + d
	f := d * d / (k + math.Sqrt(k*k+d*d))
	return measure.Force(9 * float64(s.Cohesion) * b * f)
}

// Depth returns the least depth that holds a push at the ground together with a moment there, N·m. Signs are dropped: push and
// moment are taken to help each other.
func (s Soil) Depth(bar measure.Length, push measure.Force, moment float64) measure.Length {
	h, m, b := math.Abs(float64(push)), math.Abs(moment), bar.Metres()
	if s.clay() {
		cu := float64(s.Cohesion)
		f := h / (9 * cu * b)
		g := math.Sqrt((m + h*(dead*b+f/2)) / (2.25 * cu * b))
		return measure.Length(dead*b+f+g) * measure.Metre
	}
	low, high, wedge := 0.0, 1.0, s.wedge(b)
	short := func(l float64) bool { return wedge*l*l*l < m+h*l }
	for short(high) {
		low, high = high, 2*high
	}
	for range 60 {
		if l := (low + high) / 2; short(l) {
			low = l
		} else {
			high = l
		}
	}
	return measure.Length(high) * measure.Metre
}

// Moment returns the greatest moment in the bar below the ground, N·m, under a push and a moment at the ground, signs dropped.
func (s Soil) Moment(bar measure.Length, push measure.Force, moment float64) float64 {
	h, m, b := math.Abs(float64(push)), math.Abs(moment), bar.Metres()
	if s.clay() {
		return m + h*(dead*b+h/(9*float64(s.Cohesion)*b)/2)
	}
	f := 0.82 * math.Sqrt(h/(b*s.passive()*s.UnitWeight))
	return m + h*2/3*f
}

// dead is the depth, in bar widths, over which clay bears nothing.
const dead = 1.5

// wedge is ½·γ·b·Kp, N/m³: sand's resistance is this times depth cubed about the foot.
func (s Soil) wedge(b float64) float64 { return s.UnitWeight * b * s.passive() / 2 }

// Yields returns the moment in N·m at which a round bar starts to take a permanent bend: yield strength × π·d³/32.
func Yields(diameter measure.Length, yield measure.Pressure) float64 {
	d := diameter.Metres()
	return float64(yield) * math.Pi * d * d * d / 32
}
