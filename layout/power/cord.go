package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// stringOhms is the resistance of one conductor of 1 mm², in ohm per km at 20 °C: IEC 60228 class 5, 26.0 at 0.75 mm² and 19.5 at
// 1 mm². A string's wire is out in the cold and carries far less than it could, so it is not taken hot.
const stringOhms = 19.5

// assumedGauge is a string's conductor where nothing is known of it: 22 AWG, ASTM B258.
const assumedGauge = measure.Area(0.3255)

// plugMost is the least an outdoor plug and its socket carry where no cord is in the catalog to say: 15 A.
const plugMost = measure.Current(15)

// cordsFor returns the cords of a circuit's world, thinnest first.
func cordsFor(v measure.Voltage) []catalog.Cord {
	var out []catalog.Cord
	for _, c := range catalog.Cords() {
		if (c.Volts >= 200) == (v >= 200) {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b catalog.Cord) int { return cmp.Compare(a.Area, b.Area) })
	return out
}

// mostThrough returns the most current that any of the cords carries.
func mostThrough(cords []catalog.Cord) measure.Current {
	if len(cords) == 0 {
		return plugMost
	}
	var most measure.Current
	for _, c := range cords {
		most = max(most, c.Amps)
	}
	return most
}

// dust is what rounding may make a way longer than a cord that just reaches, mm.
const dust measure.Length = 1e-6

// lay returns the stock lengths that together reach along a way: the shortest one cord that does, else the fewest.
func lay(c catalog.Cord, way measure.Length) []measure.Length {
	sold := slices.Sorted(slices.Values(c.Lengths))
	if len(sold) == 0 {
		return []measure.Length{way + 2*practice.EndSlack}
	}
	longest := sold[len(sold)-1]
	need := way + 2*practice.EndSlack - dust
	var out []measure.Length
	for ; need > longest; need -= longest {
		out = append(out, longest)
	}
	for _, l := range sold {
		if l >= need {
			return append(out, l)
		}
	}
	return append(out, longest)
}

// ohms returns the resistance of a length of one conductor.
func ohms(perKm float64, l measure.Length) float64 { return perKm * l.Metres() / 1000 }

// wireOhms returns the resistance per km of one conductor of a string.
func wireOhms(l catalog.String) float64 {
	if l.Gauge <= 0 {
		return stringOhms / float64(assumedGauge)
	}
	return stringOhms / float64(l.Gauge)
}

// dropAlong returns the current through each string's plug, first to last, and the volts lost from the first plug to the last
// bulb, both wires counted. Each string carries all that is behind its plug through its whole length, as if its own lamps sat
// at its far end: for N equal strings R′·s·I·N·(N+1).
func dropAlong(labels []catalog.String, amps []measure.Current) ([]measure.Current, measure.Voltage) {
	running := make([]measure.Current, len(amps))
	var sum measure.Current
	var volts float64
	for i := len(amps) - 1; i >= 0; i-- {
		sum += amps[i]
		running[i] = sum
		volts += 2 * ohms(wireOhms(labels[i]), labels[i].Length) * float64(sum)
	}
	return running, measure.Voltage(volts)
}

// ampsOf returns a string's current: its label's, else from its watts and volts.
func ampsOf(l catalog.String) measure.Current {
	if l.Amps > 0 || l.Volts <= 0 {
		return l.Amps
	}
	return measure.Current(float64(l.Watts) / float64(l.Volts))
}
