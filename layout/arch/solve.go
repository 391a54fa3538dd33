package arch

import (
	"math"

	"hoopwright/layout/bend"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// Heights at which the clear width counts: head height, 80 in of headroom (2010 ADA Standards 307.4) or 2100 mm, and shoulder
// height (common practice, no source).
const (
	headImperial, headMetric         = 80 * measure.Inch, 2100 * measure.Millimetre
	shoulderImperial, shoulderMetric = 5 * measure.Foot, 1500 * measure.Millimetre
)

// Solve solves one kind of arch. The Kind is never nil: where no such arch stands it is the nearest one that does, and a
// finding says so.
func Solve(in Input) (*Kind, []finding.Finding) {
	solver := bend.NewSolver(0)
	f := finder{in: &in, solver: solver}
	fig := f.find()
	m := fig.model
	k := m.describe()
	k.LoadFactorWay = "sideways"
	if !fig.drawn {
		m.age(k, solver)
		k.Band = m.band(k, solver)
		m.footings(k)
		k.built = m
	}
	return k, m.judge(k, fig)
}

// factorParts is the number of parts an arch is cut into for its load factors, which are good to 1 in 500 with it.
const factorParts = 40

// describe fills in what the arch is as raised.
func (m *model) describe() *Kind {
	in, pipe := m.in, m.spec.Pipe
	k := &Kind{
		Spec: m.spec, Numbers: in.Numbers,
		Span: m.spec.Span, Length: m.length,
		Left: m.spec.Left, Right: m.spec.Right,
		LeftGround: (in.LeftGround - in.RightGround) / 2, RightGround: (in.RightGround - in.LeftGround) / 2,
		CrownTape: m.crown,
		Crown:     measure.Length(m.crownHeight()) * measure.Metre,
		Thrust:    measure.Force(m.shape.Thrust),
		Weight:    measure.Force(m.shape.StartLift + m.shape.FinishLift),
		PlayLean:  measure.Angle(m.play()),
	}
	if math.Abs(float64(k.Thrust)) < 1e-9 {
		k.Thrust = 0
	}
	k.FootMoment = max(math.Abs(m.shape.Start.Moment), math.Abs(m.shape.Finish.Moment))
	k.Clear = k.Crown - m.half(m.crown) - max(in.Drop, in.RidgeDrop)
	k.Curve = m.curve(m.shape)
	k.SeasonCrown, k.Season = k.Crown, k.Curve

	if at, ok := m.shape.Tightest(0, m.length.Metres()); ok && at.Curvature != 0 {
		k.BendRadius, k.BendAt = m.point(at).Radius, m.point(at).Tape
		k.Strain = float64(pipe.OD / 2 / k.BendRadius)
	}
	k.tightest = m.tightest()

	k.HeadHeight, k.ShoulderHeight = headImperial, shoulderImperial
	if in.Units == measure.Metric {
		k.HeadHeight, k.ShoulderHeight = headMetric, shoulderMetric
	}
	k.Widest, k.WidestAt = k.widest()
	k.BoxWidth = m.clearWidth(k, in.OpeningHeight)
	k.HeadWidth = m.clearWidth(k, k.HeadHeight)
	k.ShoulderWidth = m.clearWidth(k, k.ShoulderHeight)

	if k.Spec.Height == 0 {
		k.Spec.Height = k.Crown
	}
	return k
}

// age fills in what the arch is at season's end, with the late modulus: the pipe's position sets its bend, so its set moves the shape
// little; what it takes is thrust and stability. An arch that does not stand then is drawn under nearly the most it bears.
func (m *model) age(k *Kind, solver *bend.Solver) {
	rod := m.frame.rod(float64(m.spec.LateModulus), m.feet)
	var held []float64
	if m.in.Guyed {
		held = []float64{m.crown.Metres()}
	}
	factors, err := bend.NewSolver(factorParts).Factors(rod, held...)
	if err != nil {
		factors = bend.Factors{}
	}
	m.aside = factors.Along >= 1 || solver.StandsAside(m.rod, held...)
	k.Sideways, k.Along = factors.Sideways, factors.Along
	k.LoadFactor = k.Sideways
	if k.Along < k.Sideways {
		k.LoadFactor, k.LoadFactorWay = k.Along, "along"
	}
	if k.Sideways <= 1 {
		for i := range rod.Stretches {
			rod.Stretches[i].Weight *= 0.98 * k.Sideways
		}
		for i := range rod.Loads {
			rod.Loads[i].Weight *= 0.98 * k.Sideways
		}
	}
	if shape, err := solver.Solve(rod); err == nil {
		k.Season = m.curve(shape)
		k.SeasonCrown = measure.Length(shape.At(m.crown.Metres()).Y-m.rod.DY/2) * measure.Metre
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
