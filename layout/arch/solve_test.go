package arch_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

const (
	in    = measure.Inch
	pound = measure.PoundForce
)

// garden is two 10 ft half-inch sticks over 90 in, 3/8 in bars showing 28 in, a ridge.
func garden() arch.Input {
	pipe, _ := catalog.FindPipe("pvc sch40 1/2 in")
	bar, _ := catalog.FindBar("3/8 in")
	return arch.Input{
		Spec: spec.Arch{
			Pipe: pipe, Left: []measure.Length{120 * in}, Right: []measure.Length{120 * in},
			Span: 90 * in, Missing: spec.Height,
			Stake:       spec.Stake{Bar: bar, Length: 48 * in, Depth: 20 * in},
			LateModulus: .6,
		},
		Numbers: []int{2, 3, 4}, Joined: true,
		OpeningWidth: 54 * in, OpeningHeight: 82 * in, Wrap: .15 * in,
		Soil: spec.Soft,
	}
}

// snug is the garden arch with no room between bar and pipe.
func snug() arch.Input {
	i := garden()
	i.Spec.Stake.Bar.OverRibs = i.Spec.Pipe.ID()
	return i
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.6g, want %.6g ± %g", what, got, want, within)
	}
}

// TestGarden meets figures that another solver found for that arch with no play.
func TestGarden(t *testing.T) {
	k, list := arch.Solve(snug())
	near(t, "length", k.Length.Inches(), 241, 1e-9)
	near(t, "crown", k.Crown.Inches(), 96.0143, 2e-4)
	near(t, "radius", k.BendRadius.Inches(), 37.8741, 4e-4)
	near(t, "thrust", float64(k.Thrust/pound), 2.64707, 1e-4)
	near(t, "beside the fitting", k.BendAt.Inches(), 120.5-.5-.688, .3)
	near(t, "strain", k.Strain, .42/37.8741, 1e-7)
	near(t, "clear", (k.Crown - k.Clear).Inches(), .42+.109+.15, 1e-9)
	near(t, "weight", float64(k.Weight/pound), .161*241/12, 1e-6)
	if len(list) > 0 {
		t.Errorf("found %v", list)
	}
}

// TestBand: crown per degree of outward lean −0.47 in (rigid stubs), per ±1° rock ±0.3 in, per inch of span −0.28 in, by another
// solver; half a degree, one degree and one inch add up to about 1 in.
func TestBand(t *testing.T) {
	base, _ := arch.Solve(snug())
	lean := snug()
	lean.Spec.Stake.Lean = math.Pi / 180
	k, _ := arch.Solve(lean)
	near(t, "lean", (k.Crown - base.Crown).Inches(), -.47, .12)
	wide := snug()
	wide.Spec.Span += in
	k, _ = arch.Solve(wide)
	near(t, "span", (k.Crown - base.Crown).Inches(), -.28, .05)
	near(t, "band", base.Band.Inches(), .47/2+.3+.28, .3)
	glued := snug() // its crown is dry too
	glued.Spec.Joints = spec.Glued
	k, _ = arch.Solve(glued)
	near(t, "glued", (base.Band - k.Band).Inches(), 0, 1e-9)
	pinned := snug()
	pinned.Spec.Joints = spec.Pinned
	k, _ = arch.Solve(pinned)
	near(t, "rock", (base.Band - k.Band).Inches(), .3, .2)
}

// TestHalfCircle: one stick over 2/π of its length, no stake showing and next to no weight, stands as a half circle, whose every figure
// is school geometry.
func TestHalfCircle(t *testing.T) {
	const r = 1200.0
	i := garden()
	i.Spec.OneStick, i.Joined = true, false
	i.Spec.Left, i.Spec.Right = []measure.Length{math.Pi * r}, nil
	i.Spec.Span = 2 * r
	i.Spec.Pipe.Mass = 1e-9
	i.Spec.Stake.Depth = i.Spec.Stake.Length
	i.OpeningHeight, i.OpeningWidth = 900, 1000
	i.Units = measure.Metric
	k, list := arch.Solve(i)
	half := float64(i.Spec.Pipe.OD/2 + i.Wrap)
	near(t, "crown", float64(k.Crown), r, 1e-4)
	near(t, "clear", float64(k.Clear), r-half, 1e-4)
	near(t, "widest", float64(k.Widest), 2*r, 1e-3)
	near(t, "radius", float64(k.BendRadius), r, 1e-3)
	near(t, "thrust", float64(k.Thrust), 0, 1e-4)
	near(t, "box", float64(k.BoxWidth), 2*math.Sqrt((r-half)*(r-half)-900*900), 1e-2)
	near(t, "head", float64(k.HeadWidth), 0, 0)
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		near(t, "height", float64(k.HeightAt(side, r*math.Pi/6)), r/2, 1e-3)
		tape, ok := k.TapeAt(side, r/2)
		near(t, "tape", float64(tape), r*math.Pi/6, 1e-3)
		if _, over := k.TapeAt(side, r+1); over || !ok {
			t.Errorf("%v leg reaches %v, over the crown %v", side, ok, over)
		}
	}
	p := k.PointAt(measure.Length(r * math.Pi / 4))
	near(t, "x", float64(p.X), -r*math.Sqrt2/2, 1e-3)
	near(t, "y", float64(p.Y), r*math.Sqrt2/2, 1e-3)
	near(t, "heading", float64(p.Heading), math.Pi/4, 1e-5)
	near(t, "bend", float64(p.Radius), r, 1e-2)
	if k.LoadFactor != 20 {
		t.Errorf("weightless arch bears %g", k.LoadFactor)
	}
	for _, f := range list {
		if f.Code == "opening-blocked" {
			t.Error(f.Text)
		}
	}
}

// TestThird: solving for span or sticks finds the arch that solving for the height came from.
func TestThird(t *testing.T) {
	base, _ := arch.Solve(garden())
	span := garden()
	span.Spec.Missing, span.Spec.Span, span.Spec.Height = spec.Span, 0, base.Crown
	k, _ := arch.Solve(span)
	near(t, "span", float64(k.Span), float64(base.Span), 1e-3)
	near(t, "span in the spec", float64(k.Spec.Span), float64(k.Span), 0)

	sticks := garden()
	sticks.Spec.Missing, sticks.Spec.Left, sticks.Spec.Right, sticks.Spec.Height = spec.Sticks, nil, nil, base.Crown-1
	k, _ = arch.Solve(sticks)
	grid := measure.Imperial.Grid()
	stick := float64(k.Left[0] / grid)
	near(t, "stick on the grid", stick, math.Round(stick), 1e-9)
	near(t, "stick", k.Left[0].Inches(), 120, .1)
	if k.Crown < base.Crown-1-1e-6 || k.Crown > base.Crown+measure.Length(2) {
		t.Errorf("crown %g, asked %g", k.Crown, base.Crown-1)
	}
	if k.Left[0] != k.Right[0] || k.Spec.Left[0] != k.Left[0] {
		t.Errorf("sticks %v %v %v", k.Left, k.Right, k.Spec.Left)
	}
	one := garden()
	one.Joined, one.Spec.OneStick = false, true
	one.Spec.Missing, one.Spec.Left, one.Spec.Right, one.Spec.Height = spec.Sticks, nil, nil, 80*in
	k, list := arch.Solve(one)
	near(t, "crown of one stick", k.Crown.Inches(), 80, .1)
	if k.Right != nil || code(list, "no-arch") != nil {
		t.Errorf("one stick: %v %v", k.Right, list)
	}
}

func code(list []finding.Finding, code string) *finding.Finding {
	for i := range list {
		if list[i].Code == code {
			return &list[i]
		}
	}
	return nil
}

// TestUneven: feet at different heights. The ground line is the zero of heights, and mirroring the ground mirrors the arch.
func TestUneven(t *testing.T) {
	i := garden()
	i.LeftGround, i.RightGround = 100, 260
	k, _ := arch.Solve(i)
	i.LeftGround, i.RightGround = 260, 100
	other, _ := arch.Solve(i)
	near(t, "mirrored crown", float64(other.Crown), float64(k.Crown), 1e-3)
	near(t, "left ground", float64(k.LeftGround), -80, 0)
	first, last := k.Curve[0], k.Curve[len(k.Curve)-1]
	near(t, "left foot", float64(first.Y), -80, 1e-9)
	near(t, "right foot", float64(last.Y), 80, 1e-6)
	near(t, "feet", float64(last.X-first.X), float64(k.Span), 1e-6)
	near(t, "height at foot", float64(k.HeightAt(spec.Right, 0)), 0, 1e-6)
	for _, h := range []measure.Length{200, 900, 1700} {
		a, _ := k.TapeAt(spec.Left, h)
		b, _ := other.TapeAt(spec.Right, h)
		near(t, "mirrored tape", float64(a), float64(b), 1e-2)
		near(t, "height back", float64(k.HeightAt(spec.Left, a)), float64(h), 1e-5)
	}
}

// TestCurve: it meets feet, stake tops and crown, with tape evenly spaced between, and every chord is a little shorter than its tape.
func TestCurve(t *testing.T) {
	k, _ := arch.Solve(garden())
	for _, stop := range []measure.Length{0, 28 * in, k.CrownTape, k.Length - 28*in, k.Length} {
		found := false
		for _, p := range k.Curve {
			found = found || math.Abs(float64(p.Tape-stop)) < 1e-9
		}
		if !found {
			t.Errorf("no point at tape %g", float64(stop))
		}
	}
	if n := len(k.Curve); n < 110 || n > 130 || len(k.Season) != n {
		t.Errorf("%d points", n)
	}
	for i := 1; i < len(k.Curve); i++ {
		a, b := k.Curve[i-1], k.Curve[i]
		tape, dx, dy := float64(b.Tape-a.Tape), float64(b.X-a.X), float64(b.Y-a.Y)
		chord := math.Sqrt(dx*dx + dy*dy)
		if !(chord <= tape*(1+1e-6)) || chord < tape*.999 || tape > float64(k.Length)/115 {
			t.Errorf("points %d and %d: tape %g, chord %g", i-1, i, tape, chord)
		}
	}
	tight := k.LeastRadii()
	if len(tight) != 3 || tight[1].Radius > tight[0].Radius || tight[1].Radius != k.BendRadius {
		t.Errorf("tightest %v, least %g", tight, float64(k.BendRadius))
	}
	near(t, "legs alike", float64(tight[0].Radius), float64(tight[2].Radius), 1e-3)
}

// TestStand: guys help along the tunnel and not sideways; softer pipe and more weight stand worse; the season's crown is lower under load.
func TestStand(t *testing.T) {
	i := garden()
	i.Loads = []arch.Load{{From: 0, To: 241 * in, Weight: 4 * pound}}
	k, list := arch.Solve(i)
	if k.LoadFactorWay != "along" || k.LoadFactor != k.Along || k.Along >= k.Sideways {
		t.Errorf("%s %g of %g, %g", k.LoadFactorWay, k.LoadFactor, k.Along, k.Sideways)
	}
	if code(list, "leans-along") == nil || k.SeasonCrown >= k.Crown {
		t.Errorf("season crown %g of %g, %v", k.SeasonCrown, k.Crown, list)
	}
	i.Guyed = true
	guyed, list := arch.Solve(i)
	if guyed.Sideways != k.Sideways || guyed.Along < 2*k.Along || code(list, "leans-along") != nil {
		t.Errorf("guyed %g, %g; bare %g, %g", guyed.Sideways, guyed.Along, k.Sideways, k.Along)
	}
	i.Guyed, i.Spec.LateModulus = false, 1
	fresh, _ := arch.Solve(i)
	near(t, "share of modulus", k.Along/fresh.Along, .62, .03)

	i.Loads[0].Weight = 40 * pound
	heavy, list := arch.Solve(i)
	if f := code(list, "falls-over"); heavy.LoadFactor >= 1 || f == nil || f.Level != finding.MustFix {
		t.Errorf("heavy arch bears %g, %v", heavy.LoadFactor, list)
	}
	near(t, "weight", float64(heavy.Weight/pound), 40+.161*241/12, 1e-6)
}

// TestPlay: a bar with room leans the pipe to the side that the foot pushes, outward on a tall arch and inward on a flat one, and never
// past where nothing pushes.
func TestPlay(t *testing.T) {
	for _, c := range []struct {
		span measure.Length
		sign float64
	}{{90 * in, 1}, {150 * in, -1}} {
		i := garden()
		i.Spec.Span = c.span
		k, _ := arch.Solve(i)
		lean := float64(i.Spec.Pipe.ID()-i.Spec.Stake.Bar.OverRibs) / float64(28*in)
		near(t, "lean", float64(k.PlayLean), lean, 1e-9)
		near(t, "heading", float64(k.Curve[0].Heading), math.Pi/2+c.sign*lean, 1e-9)
		last := k.Curve[len(k.Curve)-1]
		near(t, "heading", float64(last.Heading), -math.Pi/2-c.sign*lean, 1e-9)
		i.Spec.Stake.Bar.OverRibs = i.Spec.Pipe.ID()
		tight, _ := arch.Solve(i)
		if k.FootMoment >= tight.FootMoment {
			t.Errorf("play raises the foot's moment from %g to %g", tight.FootMoment, k.FootMoment)
		}
	}
	for span := 95 * in; span < 115*in; span += in { // somewhere here the foot stops pushing outward
		i := garden()
		i.Spec.Span = span
		k, _ := arch.Solve(i)
		if off := math.Abs(float64(k.Curve[0].Heading) - math.Pi/2); off > float64(k.PlayLean)+1e-9 {
			t.Errorf("span %g: leans %g of %g", span.Inches(), off, float64(k.PlayLean))
		}
	}
}

// TestFinite: whatever legal figures go in, a drawable Kind comes out whose JSON has no NaN or infinity in it.
func TestFinite(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	pipes, bars := catalog.Pipes(), catalog.Bars()
	pick := func(a, b float64) measure.Length { return measure.Length(a + (b-a)*r.Float64()) }
	for n := range 60 {
		i := garden()
		i.Spec.Pipe, i.Spec.Stake.Bar = pipes[r.IntN(len(pipes))], bars[r.IntN(len(bars))]
		i.Spec.Stake.Length = pick(200, 1800)
		i.Spec.Stake.Depth = i.Spec.Stake.Length * pick(.1, 1)
		i.Spec.Missing = spec.Third(r.IntN(3))
		i.Joined = r.IntN(2) == 0
		i.Spec.OneStick = !i.Joined && r.IntN(2) == 0
		i.Spec.Left, i.Spec.Right = []measure.Length{pick(300, 6000)}, []measure.Length{pick(300, 4000), pick(100, 2000)}
		i.Spec.Span, i.Spec.Height = pick(100, 9000), pick(100, 6000)
		switch i.Spec.Missing {
		case spec.Height:
			i.Spec.Height = 0
		case spec.Span:
			i.Spec.Span = 0
		case spec.Sticks:
			i.Spec.Left, i.Spec.Right = nil, nil
		}
		if i.Spec.OneStick {
			i.Spec.Right = nil
		}
		i.RightGround = pick(-600, 600)
		i.Loads = []arch.Load{{From: pick(0, 9000), To: pick(0, 9000), Weight: measure.Force(pick(0, 60))}}
		k, list := arch.Solve(i)
		if k == nil || len(k.Curve) < 2 {
			t.Fatalf("%d: nothing to draw", n)
		}
		if _, err := json.Marshal(k); err != nil {
			t.Errorf("%d: %v", n, err)
		}
		for _, p := range append(k.Curve, k.Season...) {
			if v := float64(p.X + p.Y + p.Tape + measure.Length(p.Heading)); math.IsNaN(v) || math.IsInf(v, 0) || math.IsNaN(float64(p.Radius)) {
				t.Errorf("%d: point %v", n, p)
			}
		}
		for _, v := range []float64{float64(k.BoxWidth), float64(k.HeadWidth), float64(k.ShoulderWidth), float64(k.Band), k.FootMoment, k.Sideways, k.Along, float64(k.Weight)} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				t.Errorf("%d: %g among widths, band, moment, factors", n, v)
			}
		}
		if k.LoadFactor < 0 || k.LoadFactor > 20 || k.BendRadius <= 0 {
			t.Errorf("%d: load factor %g, radius %g", n, k.LoadFactor, k.BendRadius)
		}
		for _, f := range list {
			if f.Level == finding.MustFix && f.Code == "opening-blocked" {
				t.Errorf("%d: an opening that nobody gave is a must fix", n)
			}
		}
	}
}

func BenchmarkSolve(b *testing.B) {
	for b.Loop() {
		arch.Solve(garden())
	}
}

// TestLooseFoot: where the pipe comes to rest between the two sides of its bar, the arch bears about what its neighbours of an inch more or less bear.
func TestLooseFoot(t *testing.T) {
	bears := func(span measure.Length) (k *arch.Kind, loose bool) {
		i := garden()
		i.Spec.Span = span
		k, _ = arch.Solve(i)
		off := math.Abs(float64(k.Curve[0].Heading) - math.Pi/2)
		return k, off < float64(k.PlayLean)-1e-6
	}
	met := 0
	for span := 98 * in; span < 116*in; span += in / 2 {
		k, loose := bears(span)
		if !loose {
			continue
		}
		met++
		less, _ := bears(span - 12*in)
		more, _ := bears(span + 12*in)
		if low, high := min(less.Sideways, more.Sideways), max(less.Sideways, more.Sideways); k.Sideways < .9*low || k.Sideways > 1.1*high {
			t.Errorf("span %g: bears %g sideways, a foot less %g, a foot more %g", span.Inches(), k.Sideways, less.Sideways, more.Sideways)
		}
		if k.FootMoment > 1e-3 {
			t.Errorf("span %g: a loose foot bears %g N·m", span.Inches(), k.FootMoment)
		}
	}
	if met == 0 {
		t.Error("no loose foot met")
	}
}

// TestFold: sticks of 10 ft over 12 ft with 22 lb on them fold at little more than that; past the fold, where they hang between their feet, they are stable
// again, which is no standing. Under 60 lb there is no arch over 190 in at all.
func TestFold(t *testing.T) {
	i := garden()
	i.Spec.Span = 144 * in
	i.Loads = []arch.Load{{To: 241 * in, Weight: 22 * pound}}
	i.Spec.LateModulus = 1
	if k, _ := arch.Solve(i); k.Sideways > 2 {
		t.Errorf("bears %g sideways", k.Sideways)
	}
	i.Spec.Span = 190 * in
	i.Loads[0].Weight = 60 * pound
	if k, list := arch.Solve(i); code(list, "no-arch") == nil {
		t.Errorf("crown %g in up, found %v", k.Crown.Inches(), list)
	}
}
