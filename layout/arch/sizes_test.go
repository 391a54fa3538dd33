package arch_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"runtime"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// TestSizesMeetTheElastica: one weightless stick that stands on plumb stubs of no length is half a wave of Euler's elastica, whose closed form is
// taken from gonum's elliptic integrals: from the crown sin(θ/2) = p·sin φ, the foot at φ = asin(sin 45°/p), half the length F/λ, half the span
// (2E − F)/λ, height 2p(1 − cos φ)/λ, curvature at the crown 2pλ, thrust λ²·EI.
func TestSizesMeetTheElastica(t *testing.T) {
	const length = 3000.0
	i := garden()
	i.Spec.OneStick, i.Joined = true, false
	i.Spec.Left, i.Spec.Right = []measure.Length{length}, nil
	i.Spec.Pipe.Mass = 1e-9
	i.Spec.Stake.Depth = i.Spec.Stake.Length
	pipe := i.Spec.Pipe
	od, id := pipe.OD.Metres(), pipe.ID().Metres()
	stiff := float64(pipe.Modulus) * math.Pi / 64 * (math.Pow(od, 4) - math.Pow(id, 4))
	var spans []measure.Length
	var want [][3]float64 // height and radius in mm, thrust in N
	for _, p := range []float64{.75, .8, .85, .9, .95, .98} {
		phi, m := math.Asin(math.Sqrt2/2/p), p*p
		f, e := mathext.EllipticF(phi, m), mathext.EllipticE(phi, m)
		lambda := 2 * f / length
		spans = append(spans, measure.Length(2*(2*e-f)/lambda))
		want = append(want, [3]float64{2 * p * (1 - math.Cos(phi)) / lambda, 1 / (2 * p * lambda), lambda * lambda * 1e6 * stiff})
	}
	for n, s := range arch.Sizes(i, spans) {
		near(t, "crown", float64(s.Crown), want[n][0], 1e-3)
		near(t, "radius", float64(s.BendRadius), want[n][1], 1e-3*want[n][1])
		near(t, "thrust", float64(s.Thrust), want[n][2], 1e-5*want[n][2])
		near(t, "strain", s.Strain, float64(pipe.OD)/2/want[n][1], 1e-3*s.Strain)
		if f, _ := s.LoadFactor(); f != 20 || s.Standing != arch.Stands {
			t.Errorf("a weightless arch bears %g and %v", f, s.Standing)
		}
	}
}

// TestSizesOfTheGarden meets figures that another solver found for two 10 ft half-inch sticks over 90 in, the bar without play. What is longer
// than the pipe is no arch: a published hoop plan has 240 in of pipe over 264 in.
func TestSizesOfTheGarden(t *testing.T) {
	i := snug()
	i.Spec.Missing, i.Spec.Height = spec.Span, 80*in // whatever the input asks for itself
	list := arch.Sizes(i, []measure.Length{90 * in, 264 * in, 240 * in})
	s := list[0]
	near(t, "crown", s.Crown.Inches(), 96.0143, 2e-4)
	near(t, "radius", s.BendRadius.Inches(), 37.8741, 4e-4)
	near(t, "thrust", float64(s.Thrust/pound), 2.64707, 1e-4)
	near(t, "strength", s.Strength, 400000*.42/37.8741/7000, 1e-4)
	if s.Bend != arch.Firm || !s.Opens || s.StakeBends || s.HeadHeight != 80*in {
		t.Errorf("%v, opens %v, bar bends %v, head at %v", s.Bend, s.Opens, s.StakeBends, s.HeadHeight)
	}
	for _, s := range list[1:] {
		if f, way := s.LoadFactor(); s.Standing != arch.NoArch || s.Buildable() || s.Crown != 0 || f != 0 || way != "" {
			t.Errorf("%v over %v in", s.Standing, s.Span.Inches())
		}
	}
}

// TestSizesSayWhatSolveSays: the same figures as the arch that Solve makes, and its findings in a word.
func TestSizesSayWhatSolveSays(t *testing.T) {
	worst := map[string]arch.Standing{"leans-along": arch.NeedsGuys, "sways-sideways": arch.Sways}
	seen := map[arch.Standing]bool{}
	bent := map[arch.Bend]bool{}
	for _, load := range []measure.Force{0, 4, 12, 22, 60} {
		for _, guyed := range []bool{false, true} {
			i := garden()
			i.Guyed, i.Loads = guyed, []arch.Load{{From: 0, To: 241 * in, Weight: load * pound}}
			spans := []measure.Length{20 * in, 50 * in, 84 * in, 130 * in, 190 * in}
			if load == 0 {
				spans = append(spans, 144*in)
			}
			for _, s := range arch.Sizes(i, spans) {
				i.Spec.Span = s.Span
				k, found := arch.Solve(i)
				if s.Standing == arch.NoArch {
					if k.Crown > 0 && k.LoadFactor >= 1 && code(found, "no-arch") == nil {
						t.Errorf("%v lb over %v in: no arch, but one bears %g", float64(load), s.Span.Inches(), k.LoadFactor)
					}
					continue
				}
				near(t, "crown", float64(s.Crown), float64(k.Crown), 1e-6)
				near(t, "clear", float64(s.Clear), float64(k.Clear), 1e-6)
				near(t, "head", float64(s.HeadWidth), float64(k.HeadWidth), 1e-6)
				near(t, "radius", float64(s.BendRadius), float64(k.BendRadius), 1e-6)
				if f, way := s.LoadFactor(); f != k.LoadFactor || way != k.LoadFactorWay {
					t.Errorf("bears %g %s, Solve says %g %s", f, way, k.LoadFactor, k.LoadFactorWay)
				}
				if !reflect.DeepEqual(s.Footings, k.Footings) {
					t.Errorf("footings %v, Solve says %v", s.Footings, k.Footings)
				}
				for what, c := range map[string]bool{"opening-blocked": !s.Opens, "stake-bends": s.StakeBends, "crown-pulls-apart": s.Pulls} {
					if c != (code(found, what) != nil) {
						t.Errorf("%s is %v over %v in", what, c, s.Span.Inches())
					}
				}
				tight := code(found, "bends-too-tight")
				if (s.Bend == arch.TooTight) != (tight != nil && tight.Level == finding.MustFix) || (s.Bend >= arch.Tight) != (tight != nil) {
					t.Errorf("%v, but found %v", s.Bend, tight)
				}
				want := arch.Stands
				for c, word := range worst {
					if code(found, c) != nil {
						want = max(want, word)
					}
				}
				if code(found, "falls-over") != nil { // a fall along the tunnel is mended by guys
					i.Guyed = true
					if g, _ := arch.Solve(i); g.LoadFactor < 1 || guyed {
						want = arch.Falls
					} else if want = arch.NeedsGuys; g.Sideways < 2 {
						want = arch.Sways
					}
					i.Guyed = guyed
				}
				if s.Standing != want {
					t.Errorf("%v lb over %v in, guyed %v: %v, found %v", float64(load), s.Span.Inches(), guyed, s.Standing, found)
				}
				seen[s.Standing], bent[s.Bend] = true, true
			}
		}
	}
	if len(seen) != 4 || len(bent) != 4 {
		t.Errorf("the cases met %v and %v, want all", seen, bent)
	}
}

// TestSizesRunOneWay: with the same sticks the crown sinks as the feet part, and the push on the stakes with it; more weight lowers the crown
// and what it bears; guys take nothing away; thicker pipe is bent harder over the same curve.
func TestSizesRunOneWay(t *testing.T) {
	spans := arch.SpansBetween(48*in, 132*in, measure.Imperial)
	i := garden()
	i.Loads = []arch.Load{{From: 0, To: 241 * in, Weight: 4 * pound}}
	bare := arch.Sizes(i, spans)
	for n := 1; n < len(bare); n++ {
		if a, b := bare[n-1], bare[n]; b.Crown >= a.Crown || b.Thrust >= a.Thrust {
			t.Errorf("from %v to %v in the crown goes from %v to %v, the thrust from %v to %v", a.Span.Inches(), b.Span.Inches(), a.Crown, b.Crown, a.Thrust, b.Thrust)
		}
	}
	i.Loads[0].Weight *= 2
	heavy := arch.Sizes(i, spans)
	i.Loads[0].Weight /= 2
	i.Guyed = true
	guyed := arch.Sizes(i, spans)
	i.Spec.Pipe, _ = catalog.FindPipe("pvc sch40 3/4 in")
	thick := arch.Sizes(i, spans)
	for n, b := range bare {
		f, _ := b.LoadFactor()
		h, _ := heavy[n].LoadFactor()
		g, _ := guyed[n].LoadFactor()
		if heavy[n].Crown >= b.Crown || h >= f || g < f {
			t.Errorf("over %v in: bears %g, twice laden %g, guyed %g; crowns %v and %v", b.Span.Inches(), f, h, g, b.Crown, heavy[n].Crown)
		}
		if thick[n].Strength <= guyed[n].Strength {
			t.Errorf("over %v in thick pipe takes %g of its strength, thin %g", b.Span.Inches(), thick[n].Strength, guyed[n].Strength)
		}
	}
}

// TestLooseFootIsNoFall: over some spans the pipe hangs between the two sides of its bars. It bears about what its neighbours bear that lean on them.
func TestLooseFootIsNoFall(t *testing.T) {
	i := garden()
	i.Guyed, i.Loads = true, []arch.Load{{From: 0, To: 241 * in, Weight: 4 * pound}}
	loose := 0
	var before float64
	for _, s := range arch.Sizes(i, arch.SpansBetween(100*in, 120*in, measure.Imperial)) {
		i.Spec.Span = s.Span
		if k, _ := arch.Solve(i); k.FootMoment < 1e-9 {
			loose++
		}
		f, _ := s.LoadFactor()
		if before > 0 && math.Abs(f/before-1) > .08 || s.Standing != arch.Stands {
			t.Errorf("over %v in it bears %g and %v, the span before %g", s.Span.Inches(), f, s.Standing, before)
		}
		before = f
	}
	if loose == 0 {
		t.Error("no span has a loose foot: the case tests nothing")
	}
}

// TestGuysDoNotMendEverything: an arch that is upright in its plane and leans over between a guyed crown and its feet falls, guyed or not.
func TestGuysDoNotMendEverything(t *testing.T) {
	met := 0
	for load := measure.Force(24); load < 40; load++ {
		i := garden()
		i.Loads, i.Spec.Span = []arch.Load{{From: 0, To: 241 * in, Weight: load * pound}}, 120*in
		i.Guyed = true
		if k, _ := arch.Solve(i); k.Sideways < 1 || k.Along >= 1 {
			continue
		}
		met++
		for _, i.Guyed = range []bool{true, false} {
			if s := arch.Sizes(i, []measure.Length{i.Spec.Span})[0]; s.Standing != arch.Falls || s.Buildable() {
				t.Errorf("%v lb, guyed %v: %v", float64(load), i.Guyed, s.Standing)
			}
		}
	}
	if met == 0 {
		t.Error("no load fells a guyed arch along the tunnel alone: the case tests nothing")
	}
}

// TestAFoldedArchIsNoArch: a flat arch under a heavy load folds soon after its own, and under half as much again it hangs between its feet, as stable as a
// chain. That is not to be taken for an arch that bears the load.
func TestAFoldedArchIsNoArch(t *testing.T) {
	i := garden()
	i.Spec.Span, i.Loads = 144*in, []arch.Load{{From: 0, To: 241 * in, Weight: 22 * pound}}
	if s := arch.Sizes(i, []measure.Length{i.Spec.Span})[0]; s.Standing != arch.Sways {
		t.Errorf("%v", s.Standing)
	}
}

// TestSizesAreTheSameOnAnyMachine: not a bit depends on how many go side by side.
func TestSizesAreTheSameOnAnyMachine(t *testing.T) {
	spans := arch.SpansAbout(84*in, measure.Imperial)
	all := arch.Sizes(garden(), spans)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for n, s := range arch.Sizes(garden(), spans) {
		a := all[n]
		if s.Crown != a.Crown || s.Thrust != a.Thrust || s.BendRadius != a.BendRadius || s.Standing != a.Standing {
			t.Errorf("%v and %v", s, a)
		}
	}
}

func TestSpans(t *testing.T) {
	list := arch.SpansBetween(60*in, 120*in, measure.Imperial)
	if len(list) != 11 {
		t.Errorf("5 ft to 10 ft: %v", list)
	}
	for n, l := range list {
		near(t, "5 ft to 10 ft", l.Inches(), 60+6*float64(n), 1e-9)
	}
	if list := arch.SpansBetween(2750, 2750, measure.Metric); len(list) != 1 || list[0] != 2750 {
		t.Errorf("one span: %v", list)
	}
	r := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		from := measure.Length(300 + 9000*r.Float64())
		to := from + measure.Length(3000*r.Float64())
		for _, u := range []measure.System{measure.Imperial, measure.Metric} {
			list := arch.SpansBetween(from, to, u)
			if len(list) > arch.MostSpans || list[0] != from || list[len(list)-1] != to {
				t.Errorf("%v to %v: %v", from, to, list)
			}
			about := arch.SpansAbout(from, u)
			if len(about) != 11 || about[0] <= 0 || about[0] > from || about[10] < from || about[0] > from*.7 {
				t.Errorf("about %v: %v", from, about)
			}
			for _, l := range [][]measure.Length{list, about} {
				for n := 1; n < len(l); n++ {
					if l[n] <= l[n-1] {
						t.Errorf("%v does not rise", l)
					}
				}
			}
		}
	}
}

func BenchmarkSizes(b *testing.B) {
	i := garden()
	i.Loads = []arch.Load{{From: 0, To: 241 * in, Weight: 4 * pound}}
	spans := arch.SpansAbout(84*in, measure.Imperial)
	for b.Loop() {
		arch.Sizes(i, spans)
	}
}
