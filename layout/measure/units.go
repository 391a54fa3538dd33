package measure

import (
	"fmt"
	"math"
	"reflect"
	"strings"
)

// unit is one written unit of a kind: base = (written − zero)·scale/per. Scale and per are whole where they can be, so that what
// is written in decimal is read to the last bit: 7 ft is 2133.6 mm.
type unit struct {
	name  string   // as the conventions write it
	also  []string // other spellings that are read, lower case, after plain
	scale float64
	per   float64 // zero counts as one
	zero  float64
	gauge bool // counted by the AWG formula instead
}

// kind is a sort of quantity with every unit it may be written in.
type kind struct {
	name    string // with its article, for messages
	units   []unit // the first two serve as examples
	example string // a right one
}

// The kinds. Scales are exact by definition (international foot and pound of 1959, standard gravity of 1901) unless the line
// says otherwise.
var (
	lengths = kind{"a length", []unit{
		{name: "ft", also: []string{"'", "feet", "foot"}, scale: 3048, per: 10},
		{name: "in", also: []string{`"`, "inch", "inches"}, scale: 254, per: 10},
		{name: "mm", scale: 1},
		{name: "cm", scale: 10},
		{name: "m", scale: 1000},
	}, "7 ft 6 in"}
	angles = kind{"an angle", []unit{
		{name: "deg", also: []string{"°"}, scale: math.Pi, per: 180},
	}, "30 deg"}
	masses = kind{"a mass", []unit{
		{name: "lb", also: []string{"lbs"}, scale: float64(Pound)},
		{name: "oz", scale: float64(Pound), per: 16},
		{name: "kg", scale: 1},
		{name: "g", scale: 1, per: 1000},
	}, "3.2 lb"}
	lineMasses = kind{"a mass per length", []unit{
		{name: "lb/ft", scale: float64(PoundPerFoot)},
		{name: "kg/m", scale: 1},
	}, "0.16 lb/ft"}
	pressures = kind{"a pressure", []unit{
		{name: "psi", scale: float64(PSI)},
		{name: "MPa", scale: float64(MPa)},
	}, "400000 psi"}
	currents     = kind{"a current", []unit{{name: "A", scale: 1}}, "15 A"}
	voltages     = kind{"a voltage", []unit{{name: "V", scale: 1}}, "120 V"}
	powers       = kind{"a power", []unit{{name: "W", scale: 1}, {name: "kW", scale: 1e3}}, "4.8 W"}
	temperatures = kind{"a temperature", []unit{
		{name: "F", also: []string{"°f"}, scale: 5, per: 9, zero: 32},
		{name: "C", also: []string{"°c"}, scale: 1},
	}, "20 F"}
	speeds = kind{"a speed", []unit{
		{name: "mph", scale: float64(MPH)},
		{name: "m/s", scale: 1},
		{name: "km/h", scale: 1, per: 3.6},
	}, "30 mph"}
	areas = kind{"a conductor's size", []unit{
		{name: "AWG", gauge: true},
		{name: "mm2", scale: 1},
	}, "16 AWG"}
	shares = kind{"a share", []unit{{name: "%", scale: 1, per: 100}}, "80 %"}

	kinds = []struct {
		of any
		*kind
	}{
		{Length(0), &lengths}, {Angle(0), &angles}, {Mass(0), &masses}, {LineMass(0), &lineMasses}, {Pressure(0), &pressures}, {Current(0), &currents},
		{Voltage(0), &voltages}, {Power(0), &powers}, {Temperature(0), &temperatures}, {Speed(0), &speeds}, {Area(0), &areas}, {Share(0), &shares},
	}
)

// kindOf finds the kind of a quantity, nil for what is none.
func kindOf(quantity any) *kind {
	for _, k := range kinds {
		if reflect.TypeOf(quantity) == reflect.TypeOf(k.of) {
			return k.kind
		}
	}
	return nil
}

// Name says what a quantity is and in which units it is written: a length (ft, in, mm, cm, m). It is empty for what is no quantity.
func Name(quantity any) string {
	k := kindOf(quantity)
	if k == nil {
		return ""
	}
	return k.name + " (" + k.unitNames() + ")"
}

func (k *kind) find(word string) (unit, bool) {
	word = strings.ToLower(word)
	for _, u := range k.units {
		if strings.ToLower(u.name) == word {
			return u, true
		}
		for _, other := range u.also {
			if other == word {
				return u, true
			}
		}
	}
	return unit{}, false
}

func (k *kind) wanted() string { return k.name + " is written " + k.written() }

// written lists the units that are read, with a right example.
func (k *kind) written() string { return "in " + k.unitNames() + ", as in " + k.example }

func (k *kind) unitNames() string {
	names := make([]string, len(k.units))
	for i, u := range k.units {
		names[i] = u.name
	}
	return strings.Join(names, ", ")
}

// convert turns a written number into the base unit.
func (u unit) convert(v float64) (float64, error) {
	if !u.gauge {
		return (v - u.zero) * u.scale / max(u.per, 1), nil
	}
	if v != math.Trunc(v) || v < 0 || v > mostGauge {
		return 0, fmt.Errorf("is not a gauge: they are whole numbers from 0 to %d", mostGauge)
	}
	return float64(AWG(int(v))), nil
}

const mostGauge = 40

// AWG returns the cross-section of a solid conductor of an American wire gauge from 0 to 40: the diameter is
// 0.005 in · 92^((36−n)/39) (ASTM B258).
func AWG(n int) Area {
	mm := 0.005 * float64(Inch) * math.Pow(92, float64(36-n)/39)
	return Area(math.Pi / 4 * mm * mm)
}
