package spec

import "hoopwright/layout/measure"

const (
	inch   = measure.Inch
	foot   = measure.Foot
	degree = measure.Degree
)

// The sorts of quantity.
var (
	lengths      = kind[measure.Length]{measure.ParseLength, func(v measure.Length, s measure.System) string { return s.Written(v) }}
	angles       = kind[measure.Angle]{measure.ParseAngle, in("deg", degree)}
	masses       = kind[measure.Mass]{measure.ParseMass, func(v measure.Mass, s measure.System) string { return s.Mass(v) }}
	lineMasses   = kind[measure.LineMass]{measure.ParseLineMass, func(v measure.LineMass, s measure.System) string { return s.LineMass(v) }}
	pressures    = kind[measure.Pressure]{measure.ParsePressure, func(v measure.Pressure, s measure.System) string { return s.Pressure(v) }}
	currents     = kind[measure.Current]{measure.ParseCurrent, in[measure.Current]("A", 1)}
	voltages     = kind[measure.Voltage]{measure.ParseVoltage, in[measure.Voltage]("V", 1)}
	powers       = kind[measure.Power]{measure.ParsePower, in[measure.Power]("W", 1)}
	areas        = kind[measure.Area]{measure.ParseArea, in[measure.Area]("mm2", 1)}
	temperatures = kind[measure.Temperature]{measure.ParseTemperature, func(v measure.Temperature, s measure.System) string { return s.Temperature(v) }}
	speeds       = kind[measure.Speed]{measure.ParseSpeed, func(v measure.Speed, s measure.System) string { return s.Speed(v) }}
	shares       = kind[measure.Share]{measure.ParseShare, in[measure.Share]("%", 0.01)}
)

// What the reader takes of each quantity. Spacing, voltage and breaker are the format's own limits; the others keep out slips of the pen
// and nonsense, and leave what is merely unwise to the findings.
var (
	spacings = bounds[measure.Length]{lengths, 12 * inch, 20 * foot}
	totals   = bounds[measure.Length]{lengths, 12 * inch, (MostArches - 1) * 20 * foot} // of the whole tunnel
	openings = bounds[measure.Length]{lengths, 12 * inch, 20 * foot}

	diameters    = bounds[measure.Length]{lengths, 0.25 * inch, 6 * inch}
	walls        = bounds[measure.Length]{lengths, 0.02 * inch, 1 * inch}
	fittingSizes = bounds[measure.Length]{lengths, 0, 6 * inch}
	moduli       = bounds[measure.Pressure]{pressures, 50_000 * measure.PSI, 2_000_000 * measure.PSI}
	strengths    = bounds[measure.Pressure]{pressures, 500 * measure.PSI, 50_000 * measure.PSI}
	pipeWeights  = bounds[measure.LineMass]{lineMasses, 0.01 * measure.PoundPerFoot, 5 * measure.PoundPerFoot}
	sticks       = bounds[measure.Length]{lengths, 6 * inch, 40 * foot}
	spans        = bounds[measure.Length]{lengths, 12 * inch, 40 * foot}
	heights      = bounds[measure.Length]{lengths, 12 * inch, 30 * foot}
	barLengths   = bounds[measure.Length]{lengths, 6 * inch, 10 * foot}
	depths       = bounds[measure.Length]{lengths, 2 * inch, 8 * foot}
	leans        = bounds[measure.Angle]{angles, -30 * degree, 30 * degree}
	lateModuli   = bounds[measure.Share]{shares, 0.10, 1}
	guyHeights   = bounds[measure.Length]{lengths, 12 * inch, 30 * foot}
	braceHeights = bounds[measure.Length]{lengths, 12 * inch, 5 * foot}
	footWeights  = bounds[measure.Mass]{masses, 1 * measure.Pound, 2000 * measure.Pound}
	footWidths   = bounds[measure.Length]{lengths, 4 * inch, 6 * foot}
	guyReaches   = bounds[measure.Length]{lengths, 12 * inch, 40 * foot}

	coordinates = bounds[measure.Length]{lengths, -10_000 * foot, 10_000 * foot}
	offsets     = bounds[measure.Length]{lengths, 0, 10_000 * foot}        // from the start
	tapes       = bounds[measure.Length]{lengths, 6 * inch, 10_000 * foot} // from mark to mark
	straights   = bounds[measure.Length]{lengths, 1 * inch, 10_000 * foot}
	radii       = bounds[measure.Length]{lengths, 3 * foot, 10_000 * foot} // of bends
	turns       = bounds[measure.Angle]{angles, 0.5 * degree, 360 * degree}
	headings    = bounds[measure.Angle]{angles, -360 * degree, 360 * degree}
	groundLevel = bounds[measure.Length]{lengths, -100 * foot, 100 * foot}
	circles     = bounds[measure.Length]{lengths, 1 * inch, 1000 * foot} // features with a radius
	obstacles   = bounds[measure.Length]{lengths, 0, 100 * foot}
	keeps       = bounds[measure.Length]{lengths, 0, 100 * foot}
	wireHeights = bounds[measure.Length]{lengths, 3 * foot, 200 * foot}
	timers      = bounds[measure.Current]{currents, 1, 100}
	fuses       = bounds[measure.Current]{currents, 0.5, 13}

	places       = bounds[measure.Length]{lengths, 0, 60 * foot} // heights and tape
	pitches      = bounds[measure.Length]{lengths, 0.25 * inch, 3 * foot}
	rowTapes     = bounds[measure.Length]{lengths, 1 * inch, 60 * foot}
	rowSteps     = bounds[measure.Length]{lengths, 2 * inch, 10 * foot}
	sags         = bounds[measure.Length]{lengths, 0, 2 * foot}
	hangs        = bounds[measure.Length]{lengths, 0, 10 * foot}
	laps         = bounds[measure.Length]{lengths, 0, 40 * foot}
	stringSize   = bounds[measure.Length]{lengths, 6 * inch, 300 * foot}
	leads        = bounds[measure.Length]{lengths, 0, 50 * foot}
	stringDrops  = bounds[measure.Length]{lengths, 0, 10 * foot}
	watts        = bounds[measure.Power]{powers, 0.1, 2000}
	amps         = bounds[measure.Current]{currents, 0.001, 20}
	lampVolts    = bounds[measure.Voltage]{voltages, 3, 250}
	supplies     = bounds[measure.Power]{powers, 1, 2000}
	mostWatts    = bounds[measure.Power]{powers, 1, 5000}
	stringMasses = bounds[measure.Mass]{masses, 0, 100 * measure.Pound}
	wireMasses   = bounds[measure.LineMass]{lineMasses, 0, 1 * measure.PoundPerFoot}
	wires        = bounds[measure.Length]{lengths, 0.02 * inch, 1 * inch}
	gauges       = bounds[measure.Area]{areas, 0.05, 10}

	circuitVolts = bounds[measure.Voltage]{voltages, 12, 250}
	breakers     = bounds[measure.Current]{currents, 1, 100}
	otherLoads   = bounds[measure.Current]{currents, 0, 100}
	socketSteps  = bounds[measure.Length]{lengths, 0, 30 * foot}
	continuous   = bounds[measure.Share]{shares, 0.10, 1}

	gusts = bounds[measure.Speed]{speeds, 1 * measure.MPH, 100 * measure.MPH}
	ices  = bounds[measure.Length]{lengths, 0, 3 * inch}
	colds = bounds[measure.Temperature]{temperatures, -60, 50}

	stockLengths = bounds[measure.Length]{lengths, 1 * inch, 300 * foot}
	kerfs        = bounds[measure.Length]{lengths, 0, 1 * inch}
	trims        = bounds[measure.Length]{lengths, 0, 12 * inch}
	spares       = bounds[measure.Share]{shares, 0, 1}
)
