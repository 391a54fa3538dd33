package arch

import (
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// KnotAt returns the tape from that side's ground point at which a guy or a brace is fixed so high above the ground line, and false where its leg is nowhere so high: knot, clamp and
// the wrap's bare band want bare pipe, so that next to a coupling it is the nearer place that is clear of it.
func (k *Kind) KnotAt(u measure.System, side spec.Side, height measure.Length) (measure.Length, bool) {
	tape, reached := k.TapeAt(side, height)
	return k.from(side, k.offCouplings(u, k.from(side, tape))), reached
}

// offCouplings returns the tape from the left foot nearest to another at which the bare band meets no coupling, nor the crown fitting for one.
func (k *Kind) offCouplings(u measure.System, tape measure.Length) measure.Length {
	need := practice.BareBand(u)/2 + practice.Reading(u) // the mark is put down to a reading
	joints := k.Joints()
	meets := func(tape measure.Length, j Joint) bool { return tape > j.From-need && tape < j.To+need }
	for _, j := range joints {
		if j.Crown || !meets(tape, j) {
			continue
		}
		near, far := j.From-need, j.To+need
		if far-tape < tape-near {
			near, far = far, near
		}
		if near < 0 || slices.ContainsFunc(joints, func(o Joint) bool { return meets(near, o) }) {
			return far
		}
		return near
	}
	return tape
}
