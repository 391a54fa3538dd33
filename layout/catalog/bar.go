package catalog

import (
	"fmt"
	"strings"

	"hoopwright/layout/measure"
)

const (
	a615Source  = "diameter and weight ASTM A615; over the ribs from memory; yield 40 000 psi, the lower grade"
	b500Source  = "diameter and mass EN 10080; over the ribs and yield 500 MPa (B500) from memory"
	mostBarName = 1e-3 // how far, in mm, a written size may be from a bar's
)

// Bars returns the steel bars, smallest first within their kind.
func Bars() []Bar {
	return []Bar{
		a615("3/8 in", 3, 0.376, 7.0/16),
		a615("1/2 in", 4, 0.668, 9.0/16),
		a615("5/8 in", 5, 1.043, 11.0/16),
		b500(10, 0.617, 11.5),
		b500(12, 0.888, 13.5),
		b500(16, 1.58, 18),
	}
}

// a615 takes the bar's number, which is its diameter in eighths of an inch, pounds a foot, and inches over the ribs.
func a615(size string, number int, weight, overRibs float64) Bar {
	return Bar{
		Name:     size,
		Number:   number,
		Diameter: measure.Length(number) * inch / 8, OverRibs: measure.Length(overRibs) * inch,
		Mass:    measure.LineMass(weight) * measure.PoundPerFoot,
		Modulus: 29e6 * measure.PSI, Yield: 40000 * measure.PSI,
		Source: a615Source,
	}
}

// b500 takes millimetres and kilograms a metre.
func b500(diameter measure.Length, mass measure.LineMass, overRibs measure.Length) Bar {
	return Bar{
		Name:     fmt.Sprintf("%.0f mm", float64(diameter)),
		Diameter: diameter, OverRibs: overRibs,
		Mass:    mass,
		Modulus: 200000 * measure.MPa, Yield: 500 * measure.MPa,
		Source: b500Source,
	}
}

// FindBar returns the bar of that size, written as any length, or of that number: 1/2 in, 0.5 in, no. 4, #4, steel bar 1/2 in.
func FindBar(name string) (Bar, bool) {
	size := key(name)
	for _, said := range []string{"steel bar ", "bar ", "rebar "} {
		size = strings.TrimPrefix(size, said)
	}
	length, err := measure.ParseLength(size)
	for _, b := range Bars() {
		if b.Number > 0 && size == fmt.Sprintf("no. %d", b.Number) || err == nil && measure.Abs(length-b.Diameter) < mostBarName {
			return b, true
		}
	}
	return Bar{}, false
}
