// Cords as they are sold, and the volts lost in them and in the wire of strings.

package power

import (
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// stringOhms is the resistance of one conductor of 1 mm², in ohm per km at 20 °C: IEC 60228 class 5, 26.0 at 0.75 mm² and 19.5 at
// 1 mm². A string's wire is out in the cold and carries far less than it could, so it is not taken hot.
const stringOhms = 19.5

// cordsFor returns the cords of a circuit's world, thinnest first: there are some for every volts.
func cordsFor(v measure.Voltage) []catalog.Cord {
	return slices.DeleteFunc(catalog.Cords(), func(c catalog.Cord) bool { return (c.Volts >= 200) != (v >= 200) })
}

// dust is what rounding may make a way longer than a cord that just reaches, mm.
const dust measure.Length = 1e-6

// lay returns the stock lengths that together reach along a way: the shortest one cord that does, else the fewest.
func lay(c catalog.Cord, way measure.Length) (out []measure.Length) {
	longest := c.Lengths[len(c.Lengths)-1]
	need := way + 2*practice.EndSlack - dust
	for ; need > longest; need -= longest {
		out = append(out, longest)
	}
	return append(out, c.Lengths[slices.IndexFunc(c.Lengths, func(l measure.Length) bool { return l >= need })])
}

// ohms returns the resistance of a length of one conductor.
func ohms(perKm float64, l measure.Length) float64 { return perKm * l.Metres() / 1000 }

// wireOhms returns the resistance per km of one conductor of a string.
func wireOhms(l catalog.String) float64 { return stringOhms / float64(l.Gauge) }

// along returns the current through each string's plug of a run, first to last, and the volts lost from the first plug to the last
// bulb, both wires counted. Each string carries all that is behind its plug through its whole length, as if its own lamps sat
// at its far end: for N equal strings R′·s·I·N·(N+1).
func along(run []lights.String) ([]measure.Current, measure.Voltage) {
	running := make([]measure.Current, len(run))
	var sum measure.Current
	var volts float64
	for i := len(run) - 1; i >= 0; i-- {
		label := run[i].Label
		sum += label.Amps
		running[i] = sum
		volts += 2 * ohms(wireOhms(label), label.Length) * float64(sum)
	}
	return running, measure.Voltage(volts)
}
