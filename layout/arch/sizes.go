package arch

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"slices"
	"sync"
	"sync/atomic"

	"hoopwright/layout/anchor"
	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Size is what a pair of sticks makes over one span: what a builder looks at before buying. Where it does not stand as an arch at all, all
// but Span is zero.
type Size struct {
	Span       measure.Length // stake to stake at the ground, level
	Crown      measure.Length // centre of the crown fitting above the ground line
	Clear      measure.Length // underside there, wraps and drops counted
	HeadWidth  measure.Length // clear inside width at head height; 0 where the crown is lower
	HeadHeight measure.Length // 80 in or 2100 mm
	BendRadius measure.Length // least radius outside fittings
	Strain     float64        // od/2 over the least radius, as raised
	Strength   float64        // modulus × strain over the pipe's strength: beyond 1 it is bent too tight
	Thrust     measure.Force  // positive: the pipe pushes the stakes apart
	Footings   []Footing      // what its stakes hold in still air, one for each soil it may be
	StakeBends bool           // the foot's moment bends the bar for good
	Pulls      bool           // the crown joint is dry and is pulled apart
	Opens      bool           // the box for people stands clear
	Bend       Bend
	Standing   Standing

	built *model // nil where there is no arch
}

// Buildable reports whether the pipe bears the bend and the arch stands, with guys at the most.
func (s Size) Buildable() bool { return s.Bend != TooTight && s.Standing < Falls }

// Bend says how hard a pipe is bent at its tightest place, by the part of its strength that modulus × strain takes up. Where easy ends is
// common practice, no source.
type Bend int

// The bends.
const (
	Easy     Bend = iota // up to half of its strength
	Firm                 // from there to where the bend is worth a look
	Tight                // within the pipe's strength
	TooTight             // beyond it
)

// String returns the word.
func (b Bend) String() string { return [...]string{"easy", "firm", "tight", "too tight"}[b] }

// Bend returns how hard the arch's pipe is bent.
func (k *Kind) Bend() Bend { return bendOf(k.Strength) }

// bendOf returns the word for a part of the pipe's strength.
func bendOf(strength float64) Bend {
	switch {
	case strength > 1:
		return TooTight
	case strength >= muchStrength:
		return Tight
	case strength >= 0.5:
		return Firm
	}
	return Easy
}

// Standing says how an arch stands at season's end under its own weight and lights; the later word is the worse.
type Standing int

// The ways of standing.
const (
	Stands    Standing = iota // bears twofold each way
	NeedsGuys                 // less along the tunnel, which guys at some crowns mend
	Sways                     // less than twofold sideways, which guys do not mend
	Falls                     // does not bear its weight, with guys either
	NoArch                    // no such arch exists
)

// String returns the words.
func (s Standing) String() string {
	return [...]string{"stands", "needs guys", "sways", "falls", "no arch"}[s]
}

// Sizes returns what the sticks of the input make over each of the spans, whatever span or height the input has itself. Every span is solved by
// itself, side by side with others, so that the result is the same on any machine.
func Sizes(in Input, spans []measure.Length) []Size {
	sizes := make([]Size, len(spans))
	SideBySide(len(spans), func(i int) { sizes[i] = in.size(spans[i]) })
	return sizes
}

// SideBySide does n things at the same time that know nothing of each other. A panic in one of them is the caller's, as if it had done them in turn.
func SideBySide(n int, do func(int)) {
	var next atomic.Int64
	var wait sync.WaitGroup
	var fell atomic.Pointer[string]
	for range min(runtime.GOMAXPROCS(0), n) {
		wait.Go(func() {
			defer func() {
				if p := recover(); p != nil {
					text := fmt.Sprintf("%v\n%s", p, debug.Stack())
					fell.CompareAndSwap(nil, &text)
				}
			}()
			for i := next.Add(1); i <= int64(n); i = next.Add(1) {
				do(int(i) - 1)
			}
		})
	}
	if wait.Wait(); fell.Load() != nil {
		panic(*fell.Load())
	}
}

// size solves one span. No search for a near arch: the next span is the near one.
func (in *Input) size(span measure.Length) Size {
	none := Size{Span: span, Standing: NoArch}
	own := *in
	own.Loads = slices.Clone(in.Loads) // for LoadFactor, whatever the caller does with his
	own.Spec.Missing, own.Spec.Span, own.Spec.Height = spec.Height, span, 0
	f := finder{in: &own, solver: bend.NewSolver(0)}
	if fr := own.lay(own.Spec); f.chord(span)*widest > fr.length.Metres() {
		return none // all but straight
	}
	m, err := f.at(own.Spec, spec.Height, 0)
	if err != nil || m.crownHeight() <= 0 {
		return none
	}
	k := m.describe()
	m.footings(k)
	bar := m.spec.Stake.Bar
	s := Size{
		Span: span, Crown: k.Crown, Clear: k.Clear, HeadWidth: k.HeadWidth, HeadHeight: k.HeadHeight,
		BendRadius: k.BendRadius, Strain: k.Strain, Strength: m.strength(), Thrust: k.Thrust,
		Footings: k.Footings, StakeBends: k.FootMoment > anchor.Yields(bar.Diameter, bar.Yield),
		Pulls: m.spec.Joints.DryCrown() && !m.spec.OneStick && k.Thrust < -PullTells,
		Opens: k.room.fits(own.OpeningWidth, own.OpeningHeight), Standing: m.standing(), built: m,
	}
	s.Bend = bendOf(s.Strength)
	return s
}

// LoadFactor returns the least multiple of all dead load that topples the arch at season's end, as Kind.LoadFactor, and its way. It is worked
// out on call, for it takes longer than all other figures together; it is 0 where there is no arch.
func (s Size) LoadFactor() (factor float64, way string) {
	if s.built == nil {
		return 0, ""
	}
	k := Kind{LoadFactorWay: "sideways"}
	s.built.age(&k, bend.NewSolver(0))
	return k.LoadFactor, k.LoadFactorWay
}

// standing puts what an arch bears at season's end into a word. It tries a few multiples of the load, up to the one that is wanted, which takes
// less than to find the one that topples it.
func (m *model) standing() Standing {
	sideways, along := m.bears(m.in.Guyed)
	switch {
	case sideways < 1, along < 1 && m.in.Guyed:
		return Falls
	case along < 1:
		if _, guyed := m.bears(true); guyed < 1 {
			return Falls
		}
	}
	switch {
	case sideways < WantedFactor:
		return Sways
	case along < WantedFactor && !m.in.Guyed:
		return NeedsGuys
	}
	return Stands
}

// bears raises the load of the arch at season's end in steps up to the multiple that is wanted, and returns the last at which it did not
// fall each way. From step to step the shape is followed, so that one that has folded is not taken for the arch.
func (m *model) bears(guyed bool) (sideways, along float64) {
	const step = 0.5
	solver, leant := bend.NewSolver(factorParts), false
	for times := step; times <= WantedFactor; times += step {
		rod := m.loaded(times)
		shape, err := solver.Solve(rod)
		if err != nil || !shape.Stable {
			break
		}
		sideways = times
		if leant = leant || !m.standsAside(rod, shape, factorParts, guyed); !leant {
			along = times
		}
	}
	return sideways, along
}

// loaded returns the arch at season's end under so many times its own weight and all that hangs on it.
func (m *model) loaded(times float64) bend.Rod {
	return m.frame.rod(float64(m.spec.LateModulus), m.feet).Heavier(times)
}
