package practice

import (
	"math"

	"hoopwright/layout/measure"
)

// BayGive is how far crown to crown of the first bay may be off before the other ridge pieces are changed: what a tape at a crown can tell. Our own choice.
func BayGive(u measure.System) measure.Length {
	return measure.By(u, measure.Inch/4, 5*measure.Millimetre)
}

// RunGive is how far the running distance along the crowns may be off. Our own choice: two readings and a joint.
func RunGive(u measure.System) measure.Length {
	return measure.By(u, measure.Inch/2, 10*measure.Millimetre)
}

// CheckEvery is how many bays lie between running checks of the crowns. Common practice, no source.
const CheckEvery = 3

// BareBand is the length of pipe that a wrap leaves bare where a guy is tied, half of it each side of the guy's mark: a line on a wire cuts it. Our own choice.
func BareBand(u measure.System) measure.Length {
	return measure.By(u, 3*measure.Inch, 75*measure.Millimetre)
}

// Bag is what a sandbag weighs filled, as one person carries it. Common practice, no source.
func Bag(u measure.System) measure.Force {
	return measure.By(u, 20*measure.PoundForce, measure.Mass(10).Weight())
}

// Bags is how many of them make a weight.
func Bags(weight measure.Force, u measure.System) int {
	return int(math.Ceil(float64(weight/Bag(u)) - 1e-9))
}

// SocketBare is the end of a wrapped pipe that stays bare for its socket. Common practice, no source.
func SocketBare(u measure.System) measure.Length {
	return measure.By(u, measure.Inch, 25*measure.Millimetre)
}

// TapeMarks is the step of the tape marks on a leg. Common practice, no source.
func TapeMarks(u measure.System) measure.Length {
	return measure.By(u, measure.Foot, 500*measure.Millimetre)
}

// FlagGive is how far a flag on a pipe may be off. Our own choice.
func FlagGive(u measure.System) measure.Length {
	return measure.By(u, measure.Inch/4, 5*measure.Millimetre)
}

// BulbGive is how many bulbs either way a flag is met. Our own choice.
const BulbGive = 2

// CrownGive is how far a crown may be off the height that was asked for so that arches share one width: half of what the raising crew's tape is let off. Our own choice.
func CrownGive(u measure.System) measure.Length {
	return measure.By(u, measure.Inch/2, 10*measure.Millimetre)
}

// LeastPiece is the shortest piece of pipe worth joining on with a coupling (common practice, no source).
func LeastPiece(u measure.System) measure.Length {
	return measure.By(u, measure.Foot, 300*measure.Millimetre)
}
