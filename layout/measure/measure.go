// Package measure holds the typed quantities of a tunnel: it reads every written form the spec
// allows and prints each quantity the way people read it off a tape, in both systems of units.
//
// A quantity is a float64 in one fixed unit behind a named type, so a length can never be passed
// where a mass is meant. Nothing is rounded before it is printed; the one exception, a piece cut to
// the grid, asks System.Grid. Lengths on paper are another type (draw/paper) and never mix with these.
package measure

import (
	"encoding/json"
	"fmt"
	"math"
)

// Length is a real length in millimetres.
type Length float64

// The lengths everything else is written in.
const (
	Millimetre Length = 1
	Inch       Length = 25.4 // exact: international inch, 1959
	Foot       Length = 12 * Inch
	Metre      Length = 1000
)

// Metres returns the length in metres, the unit of the rod solver.
func (l Length) Metres() float64 { return float64(l) / 1000 }

// Inches returns the length in inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Abs returns a quantity without its sign.
func Abs[T ~float64](v T) T { return T(math.Abs(float64(v))) }

// Angle is in radians; positive is clockwise seen from above, or away from the opening for a lean.
type Angle float64

// Mass is in kilograms.
type Mass float64

// LineMass is mass per length in kilograms per metre.
type LineMass float64

// Force is in newtons.
type Force float64

// Pressure is in pascals; moduli and strengths of materials use it.
type Pressure float64

// What else figures are written in. All are exact by definition: pound of 1959, standard gravity of 1901.
const (
	Degree       Angle    = math.Pi / 180
	Pound        Mass     = 0.45359237
	PoundPerFoot LineMass = 0.45359237 / 0.3048
	PoundForce   Force    = 0.45359237 * Gravity
	PSI          Pressure = 0.45359237 * Gravity / (0.0254 * 0.0254)
	MPa          Pressure = 1e6
	MPH          Speed    = 0.44704
)

// Current is in amperes.
type Current float64

// Voltage is in volts.
type Voltage float64

// Power is in watts.
type Power float64

// Area is a conductor's cross-section in square millimetres, also when the spec names an AWG gauge.
type Area float64

// Speed is in metres per second.
type Speed float64

// Temperature is in degrees Celsius.
type Temperature float64

// Share is a fraction of one: 80 % is 0.8.
type Share float64

// Gravity turns mass into weight: standard gravity, 9.80665 m/s² (CGPM 1901).
const Gravity = 9.80665

// Weight returns the force that gravity puts on the mass.
func (m Mass) Weight() Force { return Force(float64(m) * Gravity) }

// Mass returns the mass that gravity puts the force on.
func (f Force) Mass() Mass { return Mass(float64(f) / Gravity) }

// System is the family of units a packet prints in.
type System int

// The two systems. Imperial is the zero value.
const (
	Imperial System = iota
	Metric
)

// By picks between two values: each system has its own round figures, lists and words.
func By[T any](s System, imperial, metric T) T {
	if s == Metric {
		return metric
	}
	return imperial
}

// Grid is the step that pieces are cut to: 1/16 in, or 1 mm.
func (s System) Grid() Length { return By(s, Inch/16, Millimetre) }

// MarshalJSON writes millimetres to a millionth, so that spreadsheets see 7620 and not the dust of binary arithmetic. A
// length that is no number is an error.
func (l Length) MarshalJSON() ([]byte, error) { return millionths("length", float64(l)) }

// MarshalJSON writes volts to a millionth, as lengths are.
func (v Voltage) MarshalJSON() ([]byte, error) { return millionths("voltage", float64(v)) }

func millionths(what string, x float64) ([]byte, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil, fmt.Errorf("measure: a %s of %v", what, x)
	}
	return json.Marshal(math.Round(x*1e6)/1e6 + 0) // + 0 turns -0 into 0
}
