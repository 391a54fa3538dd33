package arch

import (
	"math"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Pull is a force along the tunnel on a leg.
type Pull struct {
	Side  spec.Side
	Tape  measure.Length // from that side's ground point
	Force measure.Force
}

// Pulled is what pulls along the tunnel do to an arch.
type Pulled struct {
	Bow       measure.Length // of the pipe where it gives most, the crown held by its ridge piece
	BowHeight measure.Length // of that place above the ground line
	Free      bool           // it bears them with nothing at its crown
	Lean      measure.Length // of its crown then, the play of the pipe on its bars counted
}

// PulledAlong finds what pulls along the tunnel do to the arch as raised, guys not counted. It reports false where the arch is
// only drawn or does not stand under them.
func (k *Kind) PulledAlong(pulls []Pull) (Pulled, bool) {
	m := k.built
	if m == nil {
		return Pulled{}, false
	}
	pushes := make([]bend.Load, len(pulls))
	for i, p := range pulls {
		at := m.within(k.from(p.Side, p.Tape))
		pushes[i] = bend.Load{From: at, To: at, Push: float64(p.Force)}
	}
	crown := m.frame.crown.Metres()
	// lean is how far places go aside, the crown kept in place or free: a step of Newton's method for a small part of the pulls, which all is taken to be in proportion to.
	lean := func(free bool) (aside func(at float64) float64, stands bool) {
		const part = 1e-4
		space, ok := bend.NewSpace(m.rod, m.shape, bend.Parts, pushes, crown, nil)
		if !ok {
			return nil, false
		}
		if stiffness, held := space.CrownStiffness(); !held || free && stiffness <= 0 {
			return nil, false
		}
		step, more := space.Step(part, 0), 0.0
		if free {
			more = -step.Ridge / step.Slope
		}
		space.Move(step, more)
		return func(at float64) float64 { return space.Place(at)[2] / part }, step.Stands()
	}
	tied, ok := lean(false)
	if !ok {
		return Pulled{}, false
	}
	at, bow := 0.0, 0.0
	for i := range bend.Parts {
		place := m.rod.Length() * float64(i) / bend.Parts
		if by := math.Abs(tied(place)); by > bow {
			at, bow = place, by
		}
	}
	out := Pulled{Bow: measure.Length(bow) * measure.Metre, BowHeight: k.above(k.PointAt(measure.Length(at) * measure.Metre))}
	if free, ok := lean(true); ok {
		out.Free = true
		out.Lean = measure.Length(free(crown))*measure.Metre + measure.Length(k.PlayLean)*k.Crown
	}
	return out, true
}
