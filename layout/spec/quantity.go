package spec

import (
	"math"
	"strconv"

	"hoopwright/layout/measure"
)

const (
	inch   = measure.Inch
	foot   = measure.Foot
	degree = measure.Degree
)

// kind is a sort of quantity: how it is printed in a spec, and the unit of that size in which it is written in full where that is not exact.
type kind[T ~float64] struct {
	print func(measure.System, T) string
	unit  string
	size  T
}

// The sorts of quantity.
var (
	lengths      = &kind[measure.Length]{measure.System.Written, "mm", 1}
	masses       = &kind[measure.Mass]{measure.System.Mass, "kg", 1}
	lineMasses   = &kind[measure.LineMass]{measure.System.LineMass, "kg/m", 1}
	pressures    = &kind[measure.Pressure]{measure.System.Pressure, "MPa", measure.MPa}
	temperatures = &kind[measure.Temperature]{measure.System.Temperature, "C", 1}
	speeds       = &kind[measure.Speed]{measure.System.Speed, "m/s", 1}
	angles       = inOne[measure.Angle]("deg", degree)
	currents     = inOne[measure.Current]("A", 1)
	voltages     = inOne[measure.Voltage]("V", 1)
	powers       = inOne[measure.Power]("W", 1)
	areas        = inOne[measure.Area]("mm2", 1)
	shares       = inOne[measure.Share]("%", 0.01)

	sorts = []interface {
		typed(value any, units measure.System) (string, bool)
	}{lengths, masses, lineMasses, pressures, temperatures, speeds, angles, currents, voltages, powers, areas, shares}
)

// inOne is a sort of quantity that has one unit in both systems.
func inOne[T ~float64](unit string, size T) *kind[T] {
	return &kind[T]{func(_ measure.System, v T) string { return round(float64(v/size)) + " " + unit }, unit, size}
}

// round prints a number of the spec's own units with no more digits than it has.
func round(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) }

// sameness is how near to a value what is written must come, as a share of it: what multiplying leaves in the last bits is no difference.
const sameness = 1e-12

// typed prints a value of the sort as one types it, so that it is read back the same: as it is printed, or else in full.
func (k *kind[T]) typed(value any, units measure.System) (string, bool) {
	v, ok := value.(T)
	if !ok {
		return "", false
	}
	text := k.print(units, v)
	if back, err := measure.Parse[T](text); err != nil || measure.Abs(back-v) > sameness*measure.Abs(v) {
		text = strconv.FormatFloat(float64(v/k.size), 'f', -1, 64) + " " + k.unit
	}
	return text, true
}
