package practice

import "hoopwright/layout/measure"

// What is taken where a spec does not say.

// Opening is how wide and high the way stays: clear width and headroom, 2010 ADA Standards 403.5 and 307.4, which give both systems.
func Opening(u measure.System) (width, height measure.Length) {
	return measure.By(u, 36*measure.Inch, 915), measure.By(u, 80*measure.Inch, 2030)
}

// Heads is the height at which heads pass, the headroom of Opening; in metric a whole decimetre.
func Heads(u measure.System) measure.Length {
	return measure.By(u, 80*measure.Inch, 2100*measure.Millimetre)
}

// Shoulders is the height at which shoulders pass. Common practice, no source.
func Shoulders(u measure.System) measure.Length {
	return measure.By(u, 5*measure.Foot, 1500*measure.Millimetre)
}

// Bar is the length of bar that is commonly sold for stakes. Common practice, no source.
func Bar(u measure.System) measure.Length { return measure.By(u, 36*measure.Inch, 900) }

// Driven is how deep a stake goes, deeper where the soil may be sand. Common practice, no source.
func Driven(u measure.System, sand bool) measure.Length {
	if sand {
		return measure.By(u, 18*measure.Inch, 450)
	}
	return measure.By(u, 12*measure.Inch, 300)
}

// Peg is the length of a brace's peg or a chosen guy's stake, and how much of it is driven: most. Common practice, no source.
func Peg(u measure.System) (length, depth measure.Length) {
	return measure.By(u, 24*measure.Inch, 600), measure.By(u, 20*measure.Inch, 500)
}

// PegShort is how far short of the neighbour's foot a brace's peg stands, in its wall: beside it, never on it, for a sleeve has no hold-down. Our own choice.
func PegShort(u measure.System) measure.Length { return measure.By(u, 6*measure.Inch, 150) }

// OnBase is what stands of the bar on a weighted base. Our own choice.
func OnBase(u measure.System) measure.Length { return measure.By(u, 24*measure.Inch, 600) }

// BraceFrom is how high braces begin, where the arch is high enough. Our own choice.
func BraceFrom(u measure.System) measure.Length {
	return measure.By(u, 5*measure.Foot, 1500*measure.Millimetre)
}

// BelowCrown is how near the crown guys are tied that hold its fitting, or as much of a single stick: a hand. Common practice, no source.
const BelowCrown = 3 * measure.Inch

// GuyArm is how far above the ground a guy pulls on its stake, of which so much shows: under the cap, which covers 2 in and keeps the knot on, or at the ground where that would be too
// high a lever; a knot takes 2 in there too. The stake is taken to be driven leaning, square to its guy, so that all of the guy's pull is across it. Common practice, no source; the cap
// from memory.
func GuyArm(shows measure.Length, u measure.System) measure.Length {
	const knot, capOver = 50 * measure.Millimetre, 50 * measure.Millimetre
	if TiedLow(shows, u) {
		return knot
	}
	return max(knot, shows-capOver)
}

// TiedLow reports whether so much of a stake shows that its guy is tied at the ground: more than two hands. Our own choice.
func TiedLow(shows measure.Length, u measure.System) bool {
	return shows > measure.By(u, 8*measure.Inch, 200*measure.Millimetre)
}

// Deepest is the deepest that a stake is driven by hand. Common practice, no source.
func Deepest(u measure.System) measure.Length { return measure.By(u, 30*measure.Inch, 750) }

// Kerf is what a hand saw or a ratchet cutter takes at most.
func Kerf(u measure.System) measure.Length { return measure.By(u, measure.Inch/8, 3) }

// AsSold is how far a stick may be off that is used as it was sold. Common practice, no source.
func AsSold(u measure.System) measure.Length {
	return measure.By(u, measure.Inch/8, 3*measure.Millimetre)
}

// Lengths of material. Common practice, no source.
const (
	LeastPart    = 6 * measure.Inch // the shortest stick worth joining on
	BraceLap     = 6 * measure.Inch // how much longer a brace is than the way from leg to peg: a hand beyond each clamp
	KnotsOfGuy   = 3 * measure.Foot
	KnotOfCrown  = measure.Foot
	KnotOfBrace  = measure.Foot // two half hitches of webbing with their tail
	TailOfBuckle = measure.Foot // that a hand pulls
	ThroughBags  = measure.Foot // through the handles of a few bags
)
