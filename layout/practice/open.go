package practice

import (
	"math"

	"hoopwright/layout/measure"
)

// InsideMost is the forecast gust from which nobody is inside, whatever is computed: tents are left at 30 to 38 mph whatever their rating (tent trade
// magazine), the lower end.
const InsideMost = 30 * measure.MPH

// JointHigh is how far off the ground a plug and socket hang. Common practice, no source.
func JointHigh(u measure.System) measure.Length {
	return measure.By(u, 4*measure.Inch, 100*measure.Millimetre)
}

// WarmAfter is after how many minutes of full load plugs are felt. Common practice, no source.
const WarmAfter = 15

// TimerAfter is how many minutes after closing the timers switch the lights off, so that nobody leaves in the dark. Common practice, no source.
const TimerAfter = 30

// Lanterns is how many battery lanterns stand along a tunnel, so that people find the way out when all lights trip: at both ends, and no more than 30 ft apart.
// Common practice, no source.
func Lanterns(long measure.Length) int {
	const apart = 30 * measure.Foot
	return 1 + int(math.Ceil(max(1, float64(long/apart))*(1-1e-9)))
}

// MatLong is how long a mat is that is laid on mud. Common practice, no source.
func MatLong(u measure.System) measure.Length {
	return measure.By(u, 5*measure.Foot, 1500*measure.Millimetre)
}

// Mats is how many of them cover a walk that turns to mud, from a mat before it to one behind it. Common practice, no source.
func Mats(u measure.System, long measure.Length) int {
	return 2 + int(math.Ceil(float64(long/MatLong(u))-1e-9))
}

// RibbonPosts is how many posts carry a ribbon hip-high from an outlet so far off to the feet, where a leg holds its end. Common practice, no source.
func RibbonPosts(lead measure.Length) int {
	const apart = 12 * measure.Foot
	return int(math.Ceil(float64(lead/apart) - 1e-9))
}

// CrownFell is how far a crown may have come down since the first night, at most: a hand. Our own choice.
func CrownFell(u measure.System) measure.Length {
	return measure.By(u, 4*measure.Inch, 100*measure.Millimetre)
}

// CrownTells is the least that a crown must come down to be told from a cold night, by a mark on a stick. Our own choice.
func CrownTells(u measure.System) measure.Length {
	return measure.By(u, measure.Inch, 25*measure.Millimetre)
}

// Paced is how coarse a distance is told that is paced or cut by eye. Our own choice.
func Paced(u measure.System) measure.Length {
	return measure.By(u, measure.Foot, 300*measure.Millimetre)
}

// CoverStep is the length that cord covers are counted up to. Common practice, no source.
func CoverStep(u measure.System) measure.Length {
	return measure.By(u, measure.Foot, 500*measure.Millimetre)
}

// Watchers is how many watch a night: one counts at the way in, one at the way out, one walks. Common practice, no source.
const Watchers = 3

// Spares returns how many to have over so many: the share, and never less than one, for one cracked stick stops a day.
func Spares(count int, share measure.Share) int {
	if count == 0 {
		return 0
	}
	over := 0
	for measure.Share(over) < measure.Share(count)*share-1e-9 {
		over++
	}
	return max(1, over)
}
