package stock

import (
	"math"
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// braces lists what holds braces: a clamp at each end of a pipe, or webbing with a buckle.
func (b *basket) braces(in Input) {
	if !in.Spec.Braces.Line {
		b.add(Item{Item: "hose clamp", Kind: BraceClamp, Need: 2 * len(pegsOf(in)), Unit: Each, Where: whereSundries})
		return
	}
	n := linesOf(in)
	per, unit := measure.By(in.Spec.Units, measure.Foot, measure.Metre), measure.By(in.Spec.Units, Feet, Metres)
	long := measure.RoundUp(webbingOf(in), ropeStep(in.Spec.Units))
	b.add(Item{Item: "webbing", Kind: Webbing, Need: int(math.Ceil(float64(long/per)*float64(n) - 1e-9)), Unit: unit, Where: whereSundries, Ropes: []Rope{{BraceRope, n, long}}})
}

// pegsOf are what braces end on.
func pegsOf(in Input) []ground.Stake {
	return slices.DeleteFunc(slices.Clone(in.Stakes), func(s ground.Stake) bool { return s.Kind() != ground.OfBrace })
}

// linesOf counts braces of webbing. Each has a clamp below its knot: of a pull T down along smooth pipe at an angle, T·sin, what lies round it holds by friction no more than
// µ·π/2·T·cos, as both halves of a loop press on it half round with T/2 each. That is enough up to a slope of about 1 in 3 with µ = 0.2; braces are steeper than 1 in 1.
func linesOf(in Input) int {
	if !in.Spec.Braces.Line {
		return 0
	}
	return len(pegsOf(in))
}

// webbingOf is how long braces of webbing are cut, all alike: from leg to peg, twice round the leg with a knot, round the peg or through the bags' handles, and back through the buckle.
func webbingOf(in Input) (long measure.Length) {
	for _, peg := range pegsOf(in) {
		end := math.Pi * in.Spec.Braces.Peg.Bar.Diameter
		if !peg.Steel() {
			end = practice.ThroughBags
		}
		long = max(long, reach(in, peg)+2*math.Pi*in.Spec.ArchOf(peg.Arch).Pipe.OD+end)
	}
	return long + practice.KnotOfBrace + practice.TailOfBuckle
}

// braceOf is how long braces of pipe are cut, all alike: an odd one would have to be told from the others.
func braceOf(in Input) (long measure.Length) {
	for _, peg := range pegsOf(in) {
		long = max(long, reach(in, peg))
	}
	return measure.RoundUp(long, practice.Reading(in.Spec.Units)) + practice.BraceLap
}

// reach is how far it is from where a brace is marked on its leg to the ground at its peg: over slopes too, and from legs that lean out of the wall.
func reach(in Input, peg ground.Stake) measure.Length {
	foot := func(side spec.Side) int {
		return slices.IndexFunc(in.Stakes, func(s ground.Stake) bool { return s.StakeID == ground.Leg(side, peg.Arch) })
	}
	own, other := foot(peg.Side), foot(1-peg.Side)
	if own < 0 || other < 0 || in.Arches[peg.Arch-1].Kind == nil || len(in.Arches[peg.Arch-1].Curve) == 0 {
		return in.Spec.BraceLength()
	}
	k, from, to := in.Arches[peg.Arch-1].Kind, in.Stakes[own], in.Stakes[other]
	tape := lights.Knot(in.Spec.Units, k, peg.Side, peg.Tied)
	at := k.PointAt(tape)
	inward, up := k.Span/2+at.X, at.Y-k.LeftGround // from the middle of the ground line
	if peg.Side == spec.Right {
		at = k.PointAt(k.Length - tape)
		inward, up = k.Span/2-at.X, at.Y-k.RightGround
	}
	share := inward / ground.Between(from, to)
	level := ground.Distance(spec.Point{X: from.X + (to.X-from.X)*share, Y: from.Y + (to.Y-from.Y)*share}, peg.At())
	return measure.Length(math.Hypot(float64(level), float64(up+from.Ground-peg.Ground)))
}
