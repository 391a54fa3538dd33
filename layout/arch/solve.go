package arch

import (
	"cmp"
	"math"
	"sync"

	"hoopwright/layout/bend"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Shape finds the shape of one kind of arch as raised. The Kind is never nil: where no such arch stands it is the nearest one that
// does, and Refused says so.
func Shape(in Input) *Kind {
	f := finder{in: &in, solver: in.solver()}
	fig := f.find()
	k := fig.model.describe()
	k.LoadFactorWay, k.found = "sideways", fig
	if !fig.drawn {
		k.built, k.moves = fig.model, sync.OnceValues(k.moved)
	}
	return k
}

// Refused reports that no arch has the figures the spec gives.
func (k *Kind) Refused() bool { return !k.found.exact }

// Stand works out how a shaped arch stands by itself: at season's end, before it falls either way, within which give and take, and in
// its soil.
func (k *Kind) Stand() {
	m := k.built
	if m == nil {
		return
	}
	solver := m.in.solver()
	m.age(k, solver)
	k.Band = m.band(k, solver)
	m.footings(k)
}

// Judge says what is wrong with an arch that has been shaped and stood.
func (k *Kind) Judge() []finding.Finding { return k.found.model.judge(k, k.found) }

// solver returns one that cuts the arch as finely as is asked.
func (in *Input) solver() *bend.Solver {
	if in.Rough {
		return bend.NewSolver(roughParts)
	}
	return bend.NewSolver(0)
}

// factorParts is the number of parts an arch is cut into for its load factors. Sideways they then are good to 1 in 10 000, along the tunnel, where they converge with
// the second power only, to 1 in 100.
const factorParts = 48

// outline is the arch as raised, its curve and no more.
func (m *model) outline() *Kind {
	rise := m.in.RightGround - m.in.LeftGround
	return &Kind{
		Spec: m.spec, Numbers: m.in.Numbers,
		Span: m.spec.Span, Length: m.length,
		Left: m.spec.Left, Right: m.spec.Right,
		LeftGround: -rise / 2, RightGround: rise / 2,
		CrownTape: m.crown,
		Crown:     measure.Length(m.crownHeight()) * measure.Metre,
		Curve:     m.curve(m.shape),
	}
}

// describe fills in what the arch is as raised.
func (m *model) describe() *Kind {
	in, pipe, k := m.in, m.spec.Pipe, m.outline()
	k.Thrust = measure.Force(m.shape.Thrust)
	k.Weight = measure.Force(m.shape.StartLift + m.shape.FinishLift)
	k.PlayLean = measure.Angle(m.play())
	if measure.Abs(k.Thrust) < 1e-9 {
		k.Thrust = 0
	}
	k.FootMoment = max(math.Abs(m.shape.Start.Moment), math.Abs(m.shape.Finish.Moment))
	k.Clear = k.Crown - m.half(m.crown) - max(in.Drop, in.RidgeDrop)
	k.Energy, k.Strength = m.shape.Energy, m.strength()
	k.SeasonCrown, k.Season = k.Crown, k.Curve

	if at, ok := m.shape.Tightest(0, m.length.Metres()); ok && at.Curvature != 0 {
		k.BendRadius, k.BendAt = m.point(at).Radius, m.point(at).Tape
		k.Strain = float64(pipe.OD / 2 / k.BendRadius)
	}
	k.tightest = m.tightest()

	k.HeadHeight, k.ShoulderHeight = practice.Heads(in.Units), practice.Shoulders(in.Units)
	k.Widest, k.WidestAt = k.widest()
	k.BoxWidth = m.clearWidth(k, in.OpeningHeight)
	if k.room = m.opens(k); in.OpeningWidth > 0 {
		k.BoxHeight = max(k.room.head, 0)
	}
	k.HeadWidth = m.clearWidth(k, k.HeadHeight)
	k.ShoulderWidth = m.clearWidth(k, k.ShoulderHeight)
	k.Spec.Height = cmp.Or(k.Spec.Height, k.Crown)
	return k
}

// age fills in what the arch is at season's end, with the late modulus: the pipe's position sets its bend, so its set moves the shape
// little; what it takes is thrust and stability. An arch that does not stand then is drawn under nearly the most it bears.
func (m *model) age(k *Kind, solver *bend.Solver) {
	rod := m.frame.rod(float64(m.spec.LateModulus), m.feet)
	parts, most := factorParts, float64(Most)
	if m.in.Rough {
		parts, most = roughParts, WantedFactor
	}
	k.Sideways, _ = bend.NewSolver(parts).Factor(rod, most) // 0 where there is no shape at all
	if k.Along = bend.Most; !m.in.Together {
		k.Along = m.leansAt()
	}
	k.lesser()
	if k.Sideways <= 1 {
		for i := range rod.Stretches {
			rod.Stretches[i].Weight *= 0.98 * k.Sideways
		}
		for i := range rod.Loads {
			rod.Loads[i].Weight *= 0.98 * k.Sideways
		}
	}
	if shape, err := solver.Solve(rod); err == nil {
		k.Season, k.SeasonThrust = m.curve(shape), measure.Force(shape.Thrust)
		k.SeasonCrown = measure.Length(shape.At(m.crown.Metres()).Y-m.rod.DY/2) * measure.Metre
	}
}

// Most is the greatest load factor: it means this or more.
const Most = bend.Most

// LeansAt lowers the load factor along the tunnel.
func (k *Kind) LeansAt(factor float64) {
	k.Along = min(k.Along, factor)
	k.lesser()
}

// lesser notes the lesser of the load factors.
func (k *Kind) lesser() {
	k.LoadFactor, k.LoadFactorWay = k.Sideways, "sideways"
	if k.Along < k.Sideways {
		k.LoadFactor, k.LoadFactorWay = k.Along, "along"
	}
}

// half returns how far pipe, fitting and wrap reach from the pipe's centre at the tape. A fitting's wall is taken to be as
// thick as the pipe's, the least its standard allows.
func (m *model) half(tape measure.Length) measure.Length {
	half := m.spec.Pipe.OD / 2
	for _, j := range m.joints {
		if tape >= j.from && tape <= j.to {
			half += m.spec.Pipe.Wall
			break
		}
	}
	return half + m.in.Wrap
}
