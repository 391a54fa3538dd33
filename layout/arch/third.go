package arch

import (
	"math"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// The search for the third of sticks, span and height looks at arches whose length is between these multiples of their span. Height is
// not monotone: as feet come together the crown rises, then the legs bulge and it sinks again. The first arch met from the
// wide side is the one builders mean: it bends least.
const (
	widest    = 1.015
	narrowest = 7
	stride    = 1.03
)

// figures is what a search settles on.
type figures struct {
	model *model
	exact bool // it is what the spec asks for
	drawn bool // not even a near one stands: a sketch only
}

// finder finds the third figure.
type finder struct {
	in     *Input
	solver *bend.Solver
	lie    [2]lean
}

// at solves the arch with one stick length or span set to x, metres.
func (f *finder) at(a spec.Arch, missing spec.Third, x float64) (*model, error) {
	l := measure.Length(x) * measure.Metre
	switch missing {
	case spec.Span:
		a.Span = l
	case spec.Sticks:
		a = f.in.equalSticks(a, l)
	}
	fr := f.in.lay(a)
	return fr.stand(f.solver, &f.lie)
}

// equalSticks sets the sticks so that the arch is as long as length.
func (in *Input) equalSticks(a spec.Arch, length measure.Length) spec.Arch {
	if a.OneStick {
		a.Left, a.Right = []measure.Length{length}, nil
		return a
	}
	stick := (length - in.gap()) / 2
	a.Left, a.Right = []measure.Length{stick}, []measure.Length{stick}
	return a
}

// find returns the arch of the spec, or the nearest there is.
func (f *finder) find() figures {
	a := f.in.Spec
	if a.Missing == spec.Height {
		m, err := f.at(a, a.Missing, 0)
		if err == nil && m.crownHeight() > 0 {
			return figures{model: m, exact: true}
		}
		return f.nearestSpan(a)
	}
	if m, ok := f.shared(a); ok {
		return figures{model: m, exact: true}
	}
	var xs []float64
	if a.Missing == spec.Span {
		fr := f.in.lay(a)
		for x := f.reach(fr.length) / widest; x > fr.length.Metres()/narrowest; x /= stride {
			xs = append(xs, x)
		}
	} else {
		chord := f.chord(a.Span)
		for x := chord * widest; x < chord*narrowest; x *= stride {
			xs = append(xs, x)
		}
	}
	return f.search(a, xs)
}

// shared is the arch over the span that others of its sticks and height have, where its crown then is near enough: one width to mark is worth more than the last
// quarter inch of height, which no crew can see.
func (f *finder) shared(a spec.Arch) (*model, bool) {
	if a.Missing != spec.Span || f.in.Shared <= 0 {
		return nil, false
	}
	m, err := f.at(a, a.Missing, f.in.Shared.Metres())
	return m, err == nil && m.upright() && math.Abs(m.crownHeight()-a.Height.Metres()) <= practice.CrownGive(f.in.Units).Metres()
}

// searchParts is the number of parts an arch is cut into while the search only looks where to close in.
const searchParts = 20

// search walks along xs, from flat arches to tall ones, to the first pair whose crowns lie about the height, and closes in on it.
func (f *finder) search(a spec.Arch, xs []float64) figures {
	want := a.Height.Metres()
	fine := f.solver
	f.solver = bend.NewSolver(searchParts)
	var before, best *model
	from, fallen := 0.0, 0
	for _, x := range xs {
		m, err := f.at(a, a.Missing, x)
		if err != nil || !m.upright() {
			before = nil
			if fallen++; best != nil && fallen > 2 {
				break // too tall for its weight, and taller ones more so
			}
			continue
		}
		fallen = 0
		if before != nil && before.crownHeight() < want && m.crownHeight() >= want {
			f.solver = fine
			return f.settle(f.close(a, from, x, want), a)
		}
		if best == nil || nearer(m, best, want) {
			best = m
		}
		before, from = m, x
	}
	f.solver = fine
	if best == nil {
		return f.nearestSpan(a)
	}
	if m, err := f.at(best.spec, spec.Height, 0); err == nil {
		best = m
	}
	return f.settle(best, a)
}

// nearer prefers a crown nearer to the wanted height, and among arches that the pipe can bear over those that break it.
func nearer(m, best *model, want float64) bool {
	if ok, was := m.strength() <= 1, best.strength() <= 1; ok != was {
		return ok
	}
	return math.Abs(m.crownHeight()-want) < math.Abs(best.crownHeight()-want)
}

// close closes in on the height between a low arch at x0 and a tall one at x1.
func (f *finder) close(a spec.Arch, x0, x1, want float64) *model {
	var m *model
	miss := func(x float64) (float64, bool) {
		n, err := f.at(a, a.Missing, x)
		if err != nil {
			return 0, false
		}
		m = n
		return n.crownHeight() - want, true
	}
	y0, _ := miss(x0)
	y1, _ := miss(x1)
	root(miss, x0, y0, x1, y1, 1e-9)
	return m
}

// settle makes what was found into figures: sticks cut up to the grid.
func (f *finder) settle(m *model, a spec.Arch) figures {
	exact := math.Abs(m.crownHeight()-a.Height.Metres()) < 1e-6
	if a.Missing == spec.Sticks {
		cut := m.spec
		grid := f.in.Units.Grid()
		cut.Left = []measure.Length{measure.RoundUp(cut.Left[0], grid)}
		if !cut.OneStick {
			cut.Right = []measure.Length{cut.Left[0]}
		}
		fr := f.in.lay(cut)
		if n, err := fr.stand(f.solver, &f.lie); err == nil {
			m = n
		}
	}
	return figures{model: m, exact: exact}
}

// nearestSpan keeps the sticks and brings the feet together, or where there are none to keep takes a half circle, until an arch stands that
// the pipe can bear.
func (f *finder) nearestSpan(a spec.Arch) figures {
	if a.Missing == spec.Sticks {
		a = f.in.equalSticks(a, a.Span*math.Pi/2)
	}
	length := f.in.lay(a).length
	var any *model
	for x := f.reach(length) / widest; x > length.Metres()/narrowest; x /= stride {
		m, err := f.at(a, spec.Span, x)
		if err != nil || !m.upright() {
			continue
		}
		if m.strength() <= 1 {
			return figures{model: m}
		}
		if any == nil {
			any = m
		}
	}
	if any == nil {
		return figures{model: f.drawn(a), drawn: true}
	}
	return figures{model: any}
}

// drawn is a weightless half circle, for where no arch stands at all: there is something to draw, and no claim that it stands.
func (f *finder) drawn(a spec.Arch) *model {
	fr := f.in.lay(a)
	if !(fr.length > measure.Inch) || math.IsInf(float64(fr.length), 0) {
		a = f.in.equalSticks(a, measure.Metre)
		fr = f.in.lay(a)
	}
	fr.spec.Span = fr.length * 2 / math.Pi
	m := &model{frame: fr, feet: [2]bend.End{{Angle: math.Pi / 2}, {Angle: -math.Pi / 2}}}
	m.rod = bend.Rod{
		Stretches: []bend.Stretch{{Length: fr.length.Metres(), Stiffness: 1, Torsion: 1}},
		Start:     m.feet[0], Finish: m.feet[1], DX: fr.spec.Span.Metres(),
	}
	m.shape, _ = bend.Solve(m.rod) // the half circle itself, which always settles
	m.shape.Stable = false
	return m
}

// chord returns the slope distance between feet a level span apart, metres.
func (f *finder) chord(span measure.Length) float64 {
	x, y := span.Metres(), (f.in.RightGround - f.in.LeftGround).Metres()
	return math.Sqrt(x*x + y*y)
}

// reach returns the widest level span that a straight rod of the length could bridge, metres.
func (f *finder) reach(length measure.Length) float64 {
	l, y := length.Metres(), (f.in.RightGround - f.in.LeftGround).Metres()
	return math.Sqrt(max(l*l-y*y, l*l/100))
}
