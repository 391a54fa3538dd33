package practice

import "hoopwright/layout/measure"

// Strings on the frame.

// ShortTapeRead is how finely a short tape is read along a pipe. Common practice, no source.
func ShortTapeRead(u measure.System) measure.Length { return measure.By(u, measure.Inch/8, 1) }

// ClimbTie is how far apart a row that climbs a leg is tied to it. Our own choice.
func ClimbTie(u measure.System) measure.Length { return measure.By(u, 12*measure.Inch, 300) }

// RidgePitch is how far apart the turns of a wrap lie on a ridge piece where the spec gives neither pitch nor count. Common practice, no source.
func RidgePitch(u measure.System) measure.Length {
	return measure.By[measure.Length](u, 3*measure.Inch, 75)
}

// RowSag is how far a row sags where the spec does not say. Common practice, no source.
func RowSag(u measure.System) measure.Length { return measure.By(u, measure.Inch, 25) }

// BareFoot is how far up the pipe a wrap begins: no plug lies on the ground or in wet grass. Common practice, no source.
func BareFoot(u measure.System) measure.Length { return measure.By(u, 6*measure.Inch, 150) }

// PlugFree is how much string hangs free of a wrap that begins or ends at a foot: down, round and up into a socket that faces down, so that water drips off the loop. Common practice, no source.
func PlugFree(u measure.System) measure.Length { return measure.By(u, 8*measure.Inch, 200) }

// JointFree is how much hangs free at a crown: half of what two plugs bridge there, over both bare ends of pipe and round the fitting, with a loop below. Our own choice.
func JointFree(u measure.System) measure.Length { return measure.By(u, 4*measure.Inch, 100) }

// FlagEvery is how far apart the flags are at which a wrapper checks the pitch. Our own choice.
func FlagEvery(u measure.System) measure.Length { return measure.By(u, 30*measure.Inch, 750) }

// Common practice, no source.
const (
	PlugHigh   = 3 * measure.Inch  // how high above the ground a plug hangs at least: clear of wet grass
	TieStep    = 12 * measure.Inch // from zip tie to zip tie along pipe where a string hangs on it
	WrapTies   = 4                 // at both ends of a wrap and at its thirds
	BackTies   = 2                 // about what is left over, laid to and fro
	BundleTies = 3                 // about the legs of an arch, put away
	CordStep   = 24 * measure.Inch // from zip tie to zip tie along a cord that hangs
	FlagOff    = 4 * measure.Inch  // how near to its end a wrap needs no flag
	LoosePitch = 3 * measure.Inch  // what a wrap falls back to that cannot reach at all
	ToNext     = 4 * measure.Inch  // what a lead takes more than a bay to the next foot: down to the height of the plugs and up again, and some for a bend
	LeastSag   = measure.Inch / 4  // no hand holds a row closer than this to a straight line
)

// WrapEnd is how far from its place a wound string may end: a hand, taken up in its last third. Our own choice.
func WrapEnd(u measure.System) measure.Length {
	return measure.By(u, 4*measure.Inch, 100*measure.Millimetre)
}

// RowGive is how far off its place each string of a row may bring its socket, and so how far from its leg a row may end that is tied to it: a hand, which is what a string may be
// longer or shorter than its label says. Our own choice.
func RowGive(u measure.System) measure.Length {
	return measure.By(u, 4*measure.Inch, 100*measure.Millimetre)
}

// LaneSeen is how far before the entrance or beyond the exit an outlet on the way in or out is told of: nearer than that people have not spread out. Our own choice.
const LaneSeen = 10 * measure.Metre

// OutletRise is how high the outlet hangs that a first cord comes down from, the timer at it. Common practice, no source.
func OutletRise(u measure.System) measure.Length {
	return measure.By(u, 18*measure.Inch, 500*measure.Millimetre)
}

// MostBow is how far rows may bow an end arch: more is seen from the side. Our own choice.
const MostBow = 3 * measure.Inch / 2

// Cords and plugs. Common practice, no source.
const (
	EndSlack    = 12 * measure.Inch // what a cord needs beyond its way at each end: down to the ground as a drip loop and up to the plug
	SocketSlack = 9 * measure.Inch  // what a cord from socket to socket takes more than the way between two feet: down from a hand above the ground and up again, with a loop
	CordsClear  = 6 * measure.Inch  // how far a cord's corners stay from what it keeps off
	CoverPast   = 4 * measure.Inch  // how far a cord cover goes past the feet on either side: a hand
	LowJoint    = 12 * measure.Inch // how high a joint is counted as low: in the wet and in the way
	EndToEnd    = 1 * measure.Inch  // prongs come to a socket: laid end to end on one path
	HandReach   = 12 * measure.Inch // the loose inches at both plugs
	HipReach    = 42 * measure.Inch // how high plugs hang that a socket on their leg reaches, tied as high as a hip, 30 in
	LooseReach  = 36 * measure.Inch // most of a left-over end that is not tied back
)
