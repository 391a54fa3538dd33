// Package sun tells when the sun rises and sets at a place on a day. The equations are those of the NOAA solar calculator, which follow J. Meeus, Astronomical
// Algorithms (low accuracy); written from memory and tested against figures that are published elsewhere. Good to about a minute between 72° north and south.
package sun

import (
	"fmt"
	"math"
	"time"
)

// Altitudes of the sun's centre in degrees at which a day begins and ends.
const (
	horizon = -0.833 // its upper edge on the horizon: 34′ of refraction, 16′ of radius
	civil   = -6     // civil twilight ends: work outdoors needs lamps
)

// Day is what the sun does on one day, in UTC. Times before midnight UTC of that day or after the next are told as they fall.
type Day struct {
	Dawn, Rise, Set, Dusk time.Time // dawn and dusk are those of civil twilight
}

// Over returns the sun's day at a place, degrees north and east positive, on a calendar day there. It reports false where the sun does not rise and set, or where
// twilight does not end.
func Over(lat, long float64, date time.Time) (Day, bool) {
	midnight := time.Date(date.Year(), date.Month(), date.Day(), 0, 0, 0, 0, time.UTC)
	ok := true
	at := func(altitude, way float64) time.Time {
		minutes := 720 - 4*long // near noon there
		for range 3 {           // what depends on the hour settles at once
			p := positionAt(midnight.Add(time.Duration(minutes * float64(time.Minute))))
			sin, cos := math.Sincos(rad(lat))
			h := (math.Sin(rad(altitude)) - sin*math.Sin(p.Declination)) / (cos * math.Cos(p.Declination))
			if !(math.Abs(h) <= 1) {
				ok = false
				return time.Time{}
			}
			minutes = 720 - 4*long - p.EquationOfTime.Minutes() + way*4*deg(math.Acos(h))
		}
		return midnight.Add(time.Duration(minutes * float64(time.Minute)))
	}
	d := Day{Dawn: at(civil, -1), Rise: at(horizon, -1), Set: at(horizon, 1), Dusk: at(civil, 1)}
	return d, ok
}

// position is where the sun stands among the stars, as far as the hours of daylight follow from it.
type position struct {
	Declination    float64       // apparent, radians, north positive
	EquationOfTime time.Duration // apparent less mean solar time
}

// positionAt returns the sun's position at a moment.
func positionAt(when time.Time) position {
	const unixEpoch, j2000, century = 2440587.5, 2451545, 36525 // Julian days
	t := (unixEpoch + float64(when.Unix())/86400 - j2000) / century
	mean := rad(math.Mod(280.46646+t*(36000.76983+t*0.0003032), 360))
	anomaly := rad(357.52911 + t*(35999.05029-t*0.0001537))
	e := 0.016708634 - t*(0.000042037+t*0.0000001267)
	centre := rad(math.Sin(anomaly)*(1.914602-t*(0.004817+t*0.000014)) + math.Sin(2*anomaly)*(0.019993-t*0.000101) + math.Sin(3*anomaly)*0.000289)
	node := rad(125.04 - 1934.136*t)
	apparent := mean + centre - rad(0.00569+0.00478*math.Sin(node))
	tilt := rad(23 + (26+(21.448-t*(46.815+t*(0.00059-t*0.001813)))/60)/60 + 0.00256*math.Cos(node))
	y := math.Tan(tilt/2) * math.Tan(tilt/2)
	eot := y*math.Sin(2*mean) - 2*e*math.Sin(anomaly) + 4*e*y*math.Sin(anomaly)*math.Cos(2*mean) - y*y/2*math.Sin(4*mean) - 1.25*e*e*math.Sin(2*anomaly)
	return position{Declination: math.Asin(math.Sin(tilt) * math.Sin(apparent)), EquationOfTime: time.Duration(4 * deg(eot) * float64(time.Minute))}
}

// Zone is the clock of a place by its longitude alone: the whole hour nearest to its sun, without summer time. Borders are drawn otherwise: whoever prints a time by it
// says which clock it is.
func Zone(long float64) *time.Location {
	return Ahead(time.Duration(math.Round(long/15)) * time.Hour)
}

// Ahead is the clock that runs so far ahead of UTC, in whole minutes; behind it where negative.
func Ahead(by time.Duration) *time.Location {
	name, minutes := "UTC", int(by.Minutes())
	if minutes != 0 {
		name += fmt.Sprintf("%+d", minutes/60)
		if rest := minutes % 60; rest != 0 {
			name += fmt.Sprintf(":%02d", max(rest, -rest))
		}
	}
	return time.FixedZone(name, minutes*60)
}

func rad(degrees float64) float64 { return degrees * math.Pi / 180 }
func deg(radians float64) float64 { return radians * 180 / math.Pi }
