package arch

import (
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
	var pushes []bend.Load
	for _, p := range pulls {
		at := m.within(k.from(p.Side, p.Tape))
		pushes = append(pushes, bend.Load{From: at, To: at, Push: float64(p.Force)})
	}
	solver, crown := bend.NewSolver(0), m.frame.crown.Metres()
	surplus, tied, err := solver.Leans(m.rod, []float64{crown}, pushes)
	if err != nil || surplus > 0 {
		return Pulled{}, false
	}
	at, bow := tied[0].Most()
	out := Pulled{Bow: measure.Length(max(bow, -bow)) * measure.Metre, BowHeight: k.above(k.PointAt(measure.Length(at) * measure.Metre))}
	if surplus, free, err := solver.Leans(m.rod, nil, pushes); err == nil && surplus == 0 {
		out.Free = true
		out.Lean = measure.Length(free[0].Out(crown))*measure.Metre + measure.Length(k.PlayLean)*k.Crown
	}
	return out, true
}
