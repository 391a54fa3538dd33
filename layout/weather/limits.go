package weather

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Figures that decide when people leave and when the tunnel lies down, each with where it comes from.
const (
	// insideShare of the gust of first damage empties the tunnel: act at 60 % and 80 % of a limit (published event plans for marquees). A gust presses by the
	// square of its speed, so that is a load of 36 %.
	insideShare = 0.6
	// collapseShare of the gust of collapse lays the tunnel flat where first damage has not before: half of the load; our own choice.
	collapseShare = 0.7
	// gustOfMean is a 3 s gust over the 10 min mean of inland wind (Harper and others, World Meteorological Organization 2010; from memory).
	gustOfMean = 1.66
	// gustOfApp is what a forecast without gusts is multiplied by: near the 1.52 of a 3 s gust over the hourly mean (Durst; ASCE 7, from memory).
	gustOfApp = 1.5
	// mostLean is the lean along the tunnel, as a share of the crown's height, at which an arch is on its way down; our own choice.
	mostLean = 0.25
	// depthFactor is on the load that a depth of stakes is told for: 1.5, as on sliding and tipping; common practice, no source.
	depthFactor = 1.5
	// standsStill is the least load factor without wind that people may walk under; our own choice.
	standsStill = 1.5
)

// air is the density of dry air at the sea, kg/m³: 1.2929 at 0 °C and one atmosphere (handbook value), by the gas law.
func air(t measure.Temperature) float64 { return 1.2929 * 273.15 / (273.15 + float64(t)) }

// exposure returns what a gust forecast for 10 m up in open country comes to at an arch (AS/NZS 1170.2 table 4.1, terrain multipliers at 3 m and less over
// the one at 10 m in open country; sheltered: with its shielding), and false where only a wind meter tells.
func exposure(e spec.Exposure) (factor float64, forecast bool) {
	switch e {
	case spec.Shore:
		return 0.99, true
	case spec.Suburban:
		return 0.83, true
	case spec.Sheltered:
		return 0.70, true
	case spec.Hilltop, spec.WindGap:
		return 1, false
	}
	return 0.91, true
}

// closes returns the factor that people are sent out by: shelter never keeps a tunnel open longer than a suburb does.
func closes(e spec.Exposure) float64 {
	factor, _ := exposure(e)
	if e == spec.Sheltered {
		factor, _ = exposure(spec.Suburban)
	}
	return factor
}

// Gust is one gust as it is measured at head height beside the arches, and as a forecast gives it for 10 m up in open country.
type Gust struct {
	Local    measure.Speed
	Forecast measure.Speed // 0 where only a meter tells
}

// Called returns the gust that a forecast is asked for: the forecast one, or the measured one where no forecast tells.
func (g Gust) Called() measure.Speed { return cmp.Or(g.Forecast, g.Local) }

// Beaufort is a force of the Beaufort scale.
type Beaufort int

// beauforts are the least 10 min mean of each force, mph (National Weather Service; forces below 4 from memory).
var beauforts = []float64{0, 1, 4, 8, 13, 19, 25, 32, 39, 47, 55, 64, 73}

// Sign returns the Beaufort force of the mean wind that belongs to a forecast gust, the lower where it lies between: what is seen when such gusts come.
func (g Gust) Sign() Beaufort {
	force, least := slices.BinarySearch(beauforts, float64(g.Forecast/measure.MPH)/gustOfMean)
	if !least {
		force--
	}
	return Beaufort(force)
}

// App returns the wind, without gusts, that an app shows when such gusts come.
func (g Gust) App() measure.Speed { return g.Forecast / gustOfApp }

// whole returns a speed down to a whole number as it is printed.
func whole(v measure.Speed, u measure.System) measure.Speed {
	unit := measure.By(u, measure.MPH, 1/3.6)
	return measure.Speed(math.Floor(float64(v/unit)+1e-9)) * unit
}
