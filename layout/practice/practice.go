// Package practice holds the figures of safety and of work on the site, each once, with its source or with the words "common practice, no source" or
// "from memory". They are limits to work by, never a rating; local rules win.
package practice

import "hoopwright/layout/measure"

// KeepBuried is how far a stake stays from a located line on each side: 18 to 24 in by state (one-call laws, US 811), the wider; 600 mm in metres.
func KeepBuried(u measure.System) measure.Length {
	return measure.By(u, 24*measure.Inch, 600*measure.Millimetre)
}

// KeepOverhead is how far people, pipe and ladders stay from an overhead line: 10 ft (published advice, seen; up to 50 kV OSHA 1926.1408, from memory), 3.048 m.
func KeepOverhead(u measure.System) measure.Length {
	return measure.By(u, 10*measure.Foot, 3050*measure.Millimetre)
}

// The call before digging.
const (
	// NoticeDays is how many full business days lie between the call to the locating service and the first stake: most places ask for two or three (US 811, by
	// state law).
	NoticeDays = 3
	// FlagDays is how long painted dots are trusted without a flag beside them: grass is cut and rain washes. Common practice, no source.
	FlagDays = 7
	// HolidayDays is how long holiday lighting may stay up where the NEC is law: NFPA 70, 590.3(B).
	HolidayDays = 90
)

// Reach is how high a grown person works with both hands and both feet on the ground. Common practice, no source.
func Reach(u measure.System) measure.Length {
	return measure.By(u, 78*measure.Inch, 1950*measure.Millimetre)
}

// Stepladder is the size of stepladder for work at a height: nobody stands on its top two steps, 2 ft (600 mm). Sizes as they are sold; common practice, no source.
func Stepladder(u measure.System, height measure.Length) measure.Length {
	step := measure.By(u, 2*measure.Foot, 600*measure.Millimetre)
	return max(2*step, measure.RoundUp(height-Reach(u)+step, step))
}

// Least is the least age, in years, of whoever raises, saws, drives, climbs or plugs in. Common practice, no source.
const Least = 16

// People of the jobs. Five raise an arch: one at each foot, one at the crown, one on the ladder or at its foot, and one who holds arch 1 until it is guyed; a line overhead
// has a watcher besides. Common practice, no source.
const (
	Raisers  = 5
	Carriers = 3 // of them: both feet and the crown
	Markers  = 2 // one at each end of a tape; a third where tapes from two marks meet
	Drivers  = 2
)

// Weather of the work.
const (
	// NoBending is the temperature at which, and below, no pipe is bent: PVC is brittle cold, particularly below freezing (pipe makers' guides, seen); the rule
	// is ours.
	NoBending measure.Temperature = 0
	// BendSlowly is the temperature below which pipe is bent slowly, in the sun, with eye protection (most cracks come below 10 °C: makers' advice, seen).
	BendSlowly measure.Temperature = 10
	// ThunderMinutes is how long after the last thunder work goes on: the usual lightning advice (seen).
	ThunderMinutes = 30
)

// RaisingGust is the gust, forecast or felt, from which on no arch is raised: tents are postponed above 20 mph observed (a university's emergency management,
// seen). The tunnel's own closing gust, as it is felt, counts where it is lower.
func RaisingGust(u measure.System) measure.Speed {
	return measure.By(u, 20*measure.MPH, measure.Speed(30/3.6))
}
