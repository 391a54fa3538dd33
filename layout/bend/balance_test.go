package bend_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"hoopwright/layout/bend"
)

const (
	inch  = 0.0254
	pound = 4.4482216152605
)

// stiff is E·I of half-inch schedule 40 pipe at 400 000 psi, bar that of a 3/8 in steel bar; torsion with Poisson's ratios 0.4 and 0.3.
const (
	stiff = 6836.74 * pound * inch * inch
	bar   = 28150 * pound * inch * inch
)

// sticks returns two 10 ft half-inch sticks, 1 in apart at the crown, feet 90 in apart, w lb/ft. The lowest 28 in are a
// rigid stub or pipe over bar; the crown fitting is rigid over fit inches.
func sticks(w, fit float64, stub bool) bend.Rod {
	const length, show = 241.0, 28.0
	piece := func(l, ei, gj float64) bend.Stretch {
		return bend.Stretch{Length: l * inch, Stiffness: ei, Torsion: gj, Weight: w / 12 * l * pound}
	}
	foot := piece(show, stiff+bar, stiff/1.4+bar/1.3)
	if stub {
		foot = piece(show, math.Inf(1), 0)
	}
	leg := piece((length-fit)/2-show, stiff, stiff/1.4)
	all := []bend.Stretch{foot, leg, leg, foot}
	if fit > 0 {
		all = []bend.Stretch{foot, leg, piece(fit, math.Inf(1), 0), leg, foot}
	}
	return bend.Rod{Stretches: all, Start: bend.End{Angle: math.Pi / 2}, Finish: bend.End{Angle: -math.Pi / 2}, DX: 90 * inch}
}

// TestSticks meets figures found by two independent methods (first three rows) and by one other solver (last two).
func TestSticks(t *testing.T) {
	for _, row := range []struct {
		w, fit                float64
		stub                  bool
		crown, radius, thrust float64
	}{
		{0, 0, true, 97.06430, 37.72021, 2.38206},
		{.161, 0, true, 96.93960, 38.16109, 2.65134},
		{0, 2.376, true, 96.52287, 36.66082, 2.53093},
		{.161, 0, false, 96.6133, 38.8072, 2.52986},
		{.161, 2.376, false, 96.0143, 37.8741, 2.64707},
	} {
		sh, err := bend.Solve(sticks(row.w, row.fit, row.stub))
		if err != nil {
			t.Fatal(err)
		}
		tight, _ := sh.Tightest(0, 1000)
		near(t, row.w, "crown", sh.At(120.5*inch).Y/inch, row.crown, 2e-6)
		near(t, row.w, "radius", 1/math.Abs(tight.Curvature)/inch, row.radius, 2e-6)
		near(t, row.w, "thrust", sh.Thrust/pound, row.thrust, 5e-6)
	}
}

// random returns a rod that may be anything an arch is: uneven feet, leaning stakes, stiff sleeves, fittings, loads.
func random(r *rand.Rand) bend.Rod {
	in := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	var rod bend.Rod
	for range 2 + r.IntN(5) {
		s := bend.Stretch{Length: in(.2, 1.5), Stiffness: in(10, 100), Torsion: 10, Weight: in(0, 3)}
		rod.Stretches = append(rod.Stretches, s)
		if r.IntN(2) == 0 {
			rod.Stretches = append(rod.Stretches, bend.Stretch{Length: in(.02, .1), Stiffness: math.Inf(1), Weight: in(0, .3), Turn: in(-.02, .02)})
		}
	}
	length := rod.Length()
	for range r.IntN(6) {
		a, b := in(0, length), in(0, length)
		if r.IntN(2) == 0 {
			a = b
		}
		rod.Loads = append(rod.Loads, bend.Load{From: min(a, b), To: max(a, b), Weight: in(0, 1), Push: in(-.4, .4)})
	}
	rod.Start = bend.End{Angle: math.Pi/2 + in(-.1, .1)}
	rod.Finish = bend.End{Angle: -math.Pi/2 + in(-.1, .1)}
	rod.DX, rod.DY = length*in(.33, .75), length*in(-.05, .05)
	return rod
}

// TestBalance: whatever the rod, it ends on its foot and keeps its length, and forces and moments on the whole balance
// (statics, worked out here from the places alone).
func TestBalance(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	solved := 0
	for i := range 300 {
		rod := random(r)
		sh, err := bend.Solve(rod)
		if err != nil {
			var u *bend.Unsolved
			if !errors.As(err, &u) || len(u.Tried) == 0 {
				t.Errorf("%d: %v", i, err)
			}
			continue
		}
		solved++
		weight, push, about := 0.0, 0.0, 0.0 // and their moment about the start
		spread := func(from, to, w, q float64) {
			const n = 400
			weight += w
			push += q
			for j := range n {
				at := sh.At(from + (to-from)*(float64(j)+.5)/n)
				about += w/n*at.X + q/n*at.Y
			}
		}
		from := 0.0
		for _, s := range rod.Stretches {
			spread(from, from+s.Length, s.Weight, 0)
			from += s.Length
		}
		for _, l := range rod.Loads {
			spread(l.From, l.To, l.Weight, l.Push)
		}
		if d := math.Abs(sh.StartLift + sh.FinishLift - weight); d > 1e-9 {
			t.Errorf("%d: feet bear %g of %g N", i, sh.StartLift+sh.FinishLift, weight)
		}
		if d := math.Abs(sh.Thrust - sh.StartThrust - push); d > 1e-9 {
			t.Errorf("%d: feet bear %g of %g N sideways", i, sh.Thrust-sh.StartThrust, push)
		}
		// Moments about the start, left-handed ones of the feet on the rod: −M at the start, +M at the finish.
		sum := -sh.Start.Moment + sh.Finish.Moment + rod.DX*sh.FinishLift + rod.DY*sh.Thrust - about
		if scale := math.Abs(about) + math.Abs(sh.Start.Moment); math.Abs(sum) > 1e-5*scale {
			t.Errorf("%d: moments miss by %g of %g N·m", i, sum, scale)
		}
		if sh.Residual > 1e-9 || math.Abs(sh.Start.Angle-rod.Start.Angle) > 1e-12 || math.Abs(sh.Finish.Angle-rod.Finish.Angle) > 1e-12 {
			t.Errorf("%d: feet off: %g m, %v, %v", i, sh.Residual, sh.Start, sh.Finish)
		}
		walked, last := 0.0, sh.Start
		for j := 1; j <= 4000; j++ {
			p := sh.At(rod.Length() * float64(j) / 4000)
			walked += math.Sqrt((p.X-last.X)*(p.X-last.X) + (p.Y-last.Y)*(p.Y-last.Y))
			last = p
		}
		if math.Abs(walked/rod.Length()-1) > 1e-5 {
			t.Errorf("%d: curve is %g m long, rod %g", i, walked, rod.Length())
		}
	}
	if solved < 280 {
		t.Errorf("only %d of 300 rods solved", solved)
	}
}

// TestRefusals: what is no rod is refused with a reason, never answered with NaN.
func TestRefusals(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(*bend.Rod){
		"too far":       func(r *bend.Rod) { r.DX = 4 },
		"as far":        func(r *bend.Rod) { r.DX = 2.5 },
		"nan span":      func(r *bend.Rod) { r.DX = nan },
		"nan lean":      func(r *bend.Rod) { r.Start.Angle = nan },
		"nan weight":    func(r *bend.Rod) { r.Stretches[0].Weight = nan },
		"no stiffness":  func(r *bend.Rod) { r.Stretches[0].Stiffness = 0 },
		"no length":     func(r *bend.Rod) { r.Stretches[0].Length = 0 },
		"all rigid":     func(r *bend.Rod) { r.Stretches[0].Stiffness = math.Inf(1) },
		"nothing":       func(r *bend.Rod) { r.Stretches = nil },
		"load off it":   func(r *bend.Rod) { r.Loads = []bend.Load{{From: 3, To: 3, Weight: 1}} },
		"crushing load": func(r *bend.Rod) { r.Stretches[0].Weight = 1e7 },
	} {
		rod := plumb(2.5)
		change(&rod)
		sh, err := bend.Solve(rod)
		if err == nil && sh.Stable {
			t.Errorf("%s: stands", name)
		}
		if err == nil && !(sh.Residual < 1e-6) {
			t.Errorf("%s: answered with residual %g", name, sh.Residual)
		}
	}
}

func BenchmarkSolve(b *testing.B) {
	rod := sticks(.161, 2.376, false)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := bend.Solve(rod); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSolveAgain(b *testing.B) {
	rod, s := sticks(.161, 2.376, false), bend.NewSolver(0)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Solve(rod); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFactor(b *testing.B) {
	rod, s := sticks(.4, 2.376, false), bend.NewSolver(0)
	for b.Loop() {
		if _, err := s.Factor(rod, bend.Most); err != nil {
			b.Fatal(err)
		}
	}
}
