package measure

import (
	"math"
	"strconv"
)

// String returns "imperial" or "metric", the words of the spec.
func (s System) String() string { return By(s, "imperial", "metric") }

// Tape prints a length read off a long tape when setting out: 22′-6 1/2″ to the nearest 1/8 in, or 6 860 mm.
func (s System) Tape(l Length) string { return By(s, feetInches(l, 8), millimetres(l)) }

// Inches prints a length read off a short tape, as one number: 151 7/8 in to the nearest 1/8 in, or 3 858 mm.
func (s System) Inches(l Length) string { return By(s, inchFraction(l, 8), millimetres(l)) }

// Unit is the unit of Inches and Cut: in, or mm.
func (s System) Unit() string { return By(s, "in", "mm") }

// BareInches is Inches without its unit.
func (s System) BareInches(l Length) string { return By(s, bareInches(l, 8), fixed(float64(l), 0)) }

// BareCut is Cut without its unit.
func (s System) BareCut(l Length) string { return By(s, bareInches(l, 16), fixed(float64(l), 0)) }

// Cut prints a length on the cutting grid: 59 1/16 in, or 1 499 mm.
func (s System) Cut(l Length) string { return By(s, inchFraction(l, 16), millimetres(l)) }

// Room prints the size of a room or a person, roughly: 6′-10″ to the nearest inch, or 2.08 m.
func (s System) Room(l Length) string { return By(s, feetInches(l, 1), metres(l, 2)) }

// Size prints the size of a made thing, such as a pipe's wall: 0.109 in, 2.8 mm.
func (s System) Size(l Length) string {
	return By(s, decimal(l.Inches(), 3)+" in", decimal(float64(l), 1)+" mm")
}

// Written prints a length as one types it into a spec, to a ten-thousandth of its last unit: 7 ft 6.5 in, 30 in, 2.3 m, 450 mm.
func (s System) Written(l Length) string {
	number := func(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) }
	if l < 0 {
		return "-" + s.Written(-l)
	}
	feet := math.Floor(float64(l/Foot) + 1e-9)
	inches := number(math.Abs(l.Inches() - 12*feet))
	switch {
	case s == Metric && l >= Metre:
		return number(l.Metres()) + " m"
	case s == Metric:
		return number(float64(l)) + " mm"
	case feet < 3:
		return number(l.Inches()) + " in"
	case inches == "0":
		return number(feet) + " ft"
	}
	return number(feet) + " ft " + inches + " in"
}

// Force prints pounds of force or newtons: 12 lb, 53 N.
func (s System) Force(f Force) string {
	return s.BareForce(f) + " " + s.ForceUnit()
}

// Scale prints what a luggage scale has to show for a pull, in the unit that it shows, up to the next pound or half kilogram: 8 lb, 5.5 kg.
func (s System) Scale(f Force) string {
	return By(s, fixed(math.Ceil(float64(f/PoundForce)), 0)+" lb", decimal(math.Ceil(float64(f)/Gravity*2)/2, 1)+" kg")
}

// BareForce is Force without its unit.
func (s System) BareForce(f Force) string {
	return By(s, figure(float64(f/PoundForce)), figure(float64(f)))
}

// ForceUnit is the unit of Force: lb, or N.
func (s System) ForceUnit() string { return By(s, "lb", "N") }

// Mass prints pounds or kilograms: 3.2 lb, 1.5 kg.
func (s System) Mass(m Mass) string {
	return By(s, figure(float64(m/Pound))+" lb", figure(float64(m))+" kg")
}

// LineMass prints pounds a foot or kilograms a metre to three decimals: 0.161 lb/ft, 0.24 kg/m.
func (s System) LineMass(m LineMass) string {
	return By(s, decimal(float64(m/PoundPerFoot), 3)+" lb/ft", decimal(float64(m), 3)+" kg/m")
}

// Pressure prints psi, to the thousand from ten thousand on, or megapascals: 400 000 psi, 2 758 MPa.
func (s System) Pressure(p Pressure) string {
	v := float64(p / PSI)
	switch {
	case s == Metric:
		return figure(float64(p/MPa)) + " MPa"
	case math.Abs(v) >= 1e4:
		v = math.Round(v/1000) * 1000
	}
	return figure(v) + " psi"
}

// Speed prints whole miles or kilometres an hour: 30 mph, 48 km/h.
func (s System) Speed(v Speed) string {
	return By(s, fixed(float64(v/MPH), 0)+" mph", fixed(float64(v)*3.6, 0)+" km/h")
}

// Temperature prints whole degrees: 20 °F, −7 °C.
func (s System) Temperature(t Temperature) string {
	return By(s, fixed(float64(t)*9/5+32, 0)+" °F", fixed(float64(t), 0)+" °C")
}

// Gauge prints a conductor's size: the nearest AWG gauge, or mm² to two decimals.
func (s System) Gauge(a Area) string {
	if s == Metric {
		return decimal(float64(a), 2) + " mm²"
	}
	n := 0
	for n < mostGauge && math.Abs(math.Log(float64(a/AWG(n+1)))) < math.Abs(math.Log(float64(a/AWG(n)))) {
		n++
	}
	return fixed(float64(n), 0) + " AWG"
}

// millimetres prints whole millimetres with thousands apart by a no-break space: 6 860 mm.
func millimetres(l Length) string { return fixed(float64(l), 0) + " mm" }

// metres prints metres to a count of decimals: 2.30 m.
func metres(l Length, places int) string { return fixed(l.Metres(), places) + " m" }

// Amps prints amperes, with two decimals under one, so that a column of them adds up, and to one from there on: 0 A, 0.20 A, 11.9 A, 12 A.
func Amps(c Current) string {
	if a := math.Abs(float64(c)); a >= 0.005 && a < 0.995 {
		return fixed(float64(c), 2) + " A"
	}
	return decimal(float64(c), 1) + " A"
}

// Volts prints volts to one decimal: 117.5 V, 120 V.
func Volts(v Voltage) string { return decimal(float64(v), 1) + " V" }

// Watts prints watts: 4.8 W, 210 W.
func Watts(p Power) string { return figure(float64(p)) + " W" }

// Percent prints a share: 80 %, 2.5 %.
func Percent(s Share) string { return figure(float64(s)*100) + " %" }

// Degrees prints an angle to one decimal: 30°, 0.5°.
func Degrees(a Angle) string { return decimal(float64(a/Degree), 1) + "°" }

// figure prints a number as closely as a reader needs it: whole from ten, one decimal from one, two decimals below.
func figure(v float64) string {
	switch a := math.Abs(v); {
	case a < 0.995:
		return decimal(v, 2)
	case a < 9.95:
		return decimal(v, 1)
	}
	return fixed(v, 0)
}

// groundStep is as close as a tape over grass is read and a dot of paint is put: a quarter inch, or 5 mm.
func (s System) groundStep() Length {
	return By(s, Inch/4, 5*Millimetre)
}

// Taped returns a length as it is printed for a tape over the ground: to the nearest quarter inch, or 5 mm.
func (s System) Taped(l Length) Length {
	step := s.groundStep()
	return Length(math.Round(float64(l/step)))*step + 0 // + 0 turns −0 into 0
}

// TapedUp returns the least length of a tape over the ground that is not below l.
func (s System) TapedUp(l Length) Length { return RoundUp(l, s.groundStep()) }

// GroundFigure prints the same as Ground, in metric without its unit: for a table whose head names that once, and for a drawing.
func (s System) GroundFigure(l Length) string {
	return By(s, feetInches(l, 4), fixed(float64(s.Taped(l)), 0))
}

// Ground prints a length that is taped over the ground, 22′-6 1/4″ or 6 860 mm: as coarse as the ground is.
func (s System) Ground(l Length) string { return By(s, feetInches(l, 4), millimetres(s.Taped(l))) }

// slack is how far above a grid line a length may be and still count as on it: far under any saw, far over rounding of floats.
const slack Length = 1e-6

// RoundUp returns the least multiple of the grid that is not below the length, a millionth of a millimetre forgiven. The grid is positive.
func RoundUp(l, grid Length) Length {
	return Length(math.Ceil(float64((l-slack)/grid)))*grid + 0 // + 0 turns −0 into 0
}
