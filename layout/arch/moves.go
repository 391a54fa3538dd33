package arch

import (
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Move is what one departure from the plan does to the arch: by how much the crown rises and the clear width at shoulder
// height grows.
type Move struct{ Crown, Shoulder measure.Length }

// Moves is what the usual departures do, each by itself. They are small: twice as much does about twice as much, and the
// other way does about the opposite.
type Moves struct {
	By    measure.Length // how much of each length: 1 in or 25 mm
	Wider Move           // the stakes farther apart at the ground by By
	Lean  Move           // the top of each stake out by By over the length that shows; none without a showing stake
	Long  Move           // the pipe longer by By, shared between the legs
	Rock  Move           // the crown joint turned by 1°, peaked; none without a joint
	Give  Move           // give or take of both figures, from the same causes as Kind.Band
}

// Moves solves the arch again with each departure in turn, the first time it is asked. It reports false where the arch is only drawn or a departure has
// no solution.
func (k *Kind) Moves() (Moves, bool) {
	if k.built == nil {
		return Moves{}, false
	}
	return k.moves()
}

func (k *Kind) moved() (Moves, bool) {
	m := k.built
	moves := Moves{By: measure.Inch}
	if m.in.Units == measure.Metric {
		moves.By = 25 * measure.Millimetre
	}
	solver, ok := m.in.solver(), true
	move := func(n *model, err error) Move {
		if err != nil {
			ok = false
			return Move{}
		}
		o := n.outline()
		o.ShoulderWidth = n.clearWidth(o, k.ShoulderHeight)
		return Move{o.Crown - k.Crown, o.ShoulderWidth - k.ShoulderWidth}
	}
	again := func(in Input, a spec.Arch) Move {
		fr := in.lay(a)
		return move(fr.stand(solver, new([2]lean)))
	}

	wider := m.spec
	wider.Span += moves.By
	moves.Wider = again(*m.in, wider)

	lean := measure.Angle(math.Atan2(float64(moves.By), float64(m.sleeve)))
	if m.sleeve > 0 {
		leaning := m.spec
		leaning.Stake.Lean += lean
		moves.Lean = again(*m.in, leaning)
	}

	moves.Long = again(m.lengthened(moves.By))

	if m.fitting.to > m.fitting.from {
		n := *m
		n.rod = m.rocked(-jointRock)
		var err error
		n.shape, err = solver.Solve(n.rod)
		moves.Rock = move(&n, err)
	}
	moves.Give.add(moves.Wider, float64(spanError/moves.By))
	moves.Give.add(moves.Lean, groundLean/float64(lean))
	if m.spec.Joints.DryCrown() {
		moves.Give.add(moves.Rock, 1)
	}
	return moves, ok
}

// add adds so many times what another move comes to, whichever way.
func (m *Move) add(o Move, times float64) {
	m.Crown += measure.Abs(o.Crown) * measure.Length(times)
	m.Shoulder += measure.Abs(o.Shoulder) * measure.Length(times)
}

// lengthened returns the arch with pipe longer by as much, and what hangs on it moved along.
func (m *model) lengthened(by measure.Length) (Input, spec.Arch) {
	in, a := *m.in, m.spec
	share := (m.length + by) / m.length
	in.Loads = append([]Load(nil), in.Loads...)
	for i := range in.Loads {
		in.Loads[i].From *= share
		in.Loads[i].To *= share
	}
	grown := func(sticks []measure.Length, by measure.Length) []measure.Length {
		return append([]measure.Length{sticks[0] + by}, sticks[1:]...)
	}
	if a.OneStick {
		a.Left = grown(a.Left, by)
	} else {
		a.Left, a.Right = grown(a.Left, by/2), grown(a.Right, by/2)
	}
	return in, a
}
