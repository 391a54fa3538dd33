package measure

import "strings"

// Name says what a quantity is and in which units it is written: a length (ft, in, mm, cm, m). It is empty for what is no quantity.
func Name(quantity any) string {
	var k kind
	switch quantity.(type) {
	case Length:
		k = lengths
	case Angle:
		k = angles
	case Mass:
		k = masses
	case LineMass:
		k = lineMasses
	case Pressure:
		k = pressures
	case Current:
		k = currents
	case Voltage:
		k = voltages
	case Power:
		k = powers
	case Temperature:
		k = temperatures
	case Speed:
		k = speeds
	case Area:
		k = areas
	case Share:
		k = shares
	default:
		return ""
	}
	names := make([]string, len(k.units))
	for i, u := range k.units {
		names[i] = u.name
	}
	return k.name + " (" + strings.Join(names, ", ") + ")"
}
