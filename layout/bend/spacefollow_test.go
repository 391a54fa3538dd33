package bend

import (
	"math"
	"testing"
)

// gardenRod is a half-inch pipe 6.12 m long over 2.13 m, bars in its feet, a rigid fitting at its crown.
func gardenRod() (Rod, float64) {
	const ei, bar = 19.62, 80.8
	pipe := func(length, stiff float64) Stretch { return Stretch{length, stiff, ei / 1.4, 2.35 * length, 0} }
	leg, sleeve, half := 3.06, .71, .03
	rod := Rod{Start: End{Angle: math.Pi/2 + .01}, Finish: End{Angle: -math.Pi/2 - .01}, DX: 2.13,
		Stretches: []Stretch{pipe(sleeve, ei+bar), pipe(leg-sleeve-half, ei), {2 * half, math.Inf(1), math.Inf(1), .2, 0}, pipe(leg-sleeve-half, ei), pipe(sleeve, ei+bar)},
		Loads:     []Load{{From: 0, To: 2 * leg, Weight: 12}, {From: leg, To: leg, Weight: 5}}}
	return rod, leg
}

func followed(t *testing.T, rod Rod, parts int, wind []Load, crown float64, ties []Tie) *Space {
	t.Helper()
	rest, err := NewSolver(160).Solve(rod)
	if err != nil {
		t.Fatal(err)
	}
	s, ok := NewSpace(rod, rest, parts, wind, crown, ties)
	if !ok {
		t.Fatal("no rest")
	}
	return s
}

// blown brings it to its state in a wind, the crown free.
func blown(t *testing.T, s *Space, wind float64) Aside {
	t.Helper()
	aside := s.place(s.crown)[2]
	for range 40 {
		step := s.Step(wind, aside)
		if !step.Stands() {
			break
		}
		more := -step.Ridge / step.Slope
		aside += more
		if s.Move(step, more) < 1e-10 {
			return s.Read(wind)
		}
	}
	t.Fatalf("no state in a wind of %g", wind)
	return Aside{}
}

func within(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

// TestSpaceSmall: from rest, the crown's stiffness and small leans are those of the second variation of the plane rod, which is found by another way.
func TestSpaceSmall(t *testing.T) {
	rod, crown := gardenRod()
	wind := []Load{{From: 0, To: rod.Length(), Push: 1}}
	_, leans, err := NewSolver(400).Leans(rod, nil, []Load{{From: crown, To: crown, Push: 1}}, wind)
	if err != nil {
		t.Fatal(err)
	}
	s := followed(t, rod, 80, wind, crown, nil)
	rest, _ := Solve(rod)
	within(t, "crown at rest", s.place(s.crown)[1], rest.At(crown).Y, 1e-4)
	k, held := s.CrownStiffness()
	within(t, "stiffness", k, 1/leans[0].Out(crown), .005)
	if !held {
		t.Error("it does not stand with its crown held")
	}
	const small = .02
	a := blown(t, s, small)
	within(t, "lean", a.Crown[2], small*leans[1].Out(crown), .005)
	within(t, "moment at a foot", math.Abs(a.Moments[0][0]), small*leans[1].Feet[0], .005)
}

// TestSpaceBalance: what ground and ties do to the rod balances its weight and the wind, forces and moments, far from its plane too.
func TestSpaceBalance(t *testing.T) {
	rod, crown := gardenRod()
	wind := []Load{{From: 0, To: rod.Length(), Push: 1}}
	ties := []Tie{{At: 2.3, X: -.3, Y: -.1, Z: -1.5, Stiffness: 4000}, {At: 3.9, X: 2.3, Y: .2, Z: -1.4, Stiffness: 3000}}
	s := followed(t, rod, 40, wind, crown, ties)
	for _, w := range []float64{15, 25, 40} {
		a := blown(t, s, w)
		if a.Crown[2] < .01 || a.Pulls[0] <= 0 {
			t.Fatalf("%g N: %+v", w, a)
		}
		sum, turning := vec{0, -s.weight, w}, vec{}
		for i := range s.knots { // loads hang on the tangents by their levers; about the first foot
			turning = turning.plus(1, s.tangent(i).cross(vec{0, -s.dead[i], w * s.wind[i]}))
		}
		places := [2]vec{{}, {rod.DX, rod.DY, 0}}
		for f := range 2 {
			sum = sum.plus(1, a.Feet[f])
			turning = turning.plus(1, a.Moments[f]).plus(1, places[f].cross(a.Feet[f]))
		}
		for i, tie := range ties {
			end, at := vec{tie.X, tie.Y, tie.Z}, s.place(s.levers[i])
			way := end.plus(-1, at)
			pull := way.times(a.Pulls[i] / way.length())
			within(t, "a tie pulls by its stretch", a.Pulls[i], tie.Stiffness*(way.length()-s.slack[i]), 1e-6)
			sum, turning = sum.plus(1, pull), turning.plus(1, at.cross(pull))
		}
		if sum.length() > 1e-6*s.weight || turning.length() > 1e-6*s.weight {
			t.Errorf("%g N: forces %v, moments %v are left", w, sum, turning)
		}
	}
}

// TestSpaceConverges: four times as many parts change little of a guyed arch in a strong wind.
func TestSpaceConverges(t *testing.T) {
	rod, crown := gardenRod()
	wind := []Load{{From: 0, To: rod.Length(), Push: 1}}
	ties := []Tie{{At: 2.3, Z: -1.5, Stiffness: 4000}, {At: 3.82, X: rod.DX, Z: -1.5, Stiffness: 4000}}
	var a [2]Aside
	for i, parts := range [2]int{40, 160} {
		a[i] = blown(t, followed(t, rod, parts, wind, crown, ties), 40)
	}
	within(t, "lean", a[0].Crown[2], a[1].Crown[2], .01)
	within(t, "pull", a[0].Pulls[0], a[1].Pulls[0], .01)
	within(t, "greatest bend", a[0].Bend, a[1].Bend, .015)
	within(t, "moment", math.Hypot(a[0].Moments[0][0], a[0].Moments[0][2]), math.Hypot(a[1].Moments[0][0], a[1].Moments[0][2]), .01)
}

// frame is two plumb legs and a beam, joined square by stiff corners: out of its plane each leg is a cantilever, for the beam turns with their tops.
func frame(height, stiff, load float64) (rod Rod, top, middle float64) {
	const corner, beam, hard = .002, 1.0, 1e5
	leg := Stretch{height - corner/2, stiff, hard, 0, 0}
	turn := Stretch{corner, hard, hard, 0, -math.Pi / 2}
	rod = Rod{Start: End{Angle: math.Pi / 2}, Finish: End{Angle: -math.Pi / 2}, DX: beam,
		Stretches: []Stretch{leg, turn, {beam - corner, hard, hard, 0, 0}, turn, leg}}
	top, middle = height, height+beam/2
	if load > 0 {
		rod.Loads = []Load{{From: top, To: top, Weight: load}, {From: rod.Length() - top, To: rod.Length() - top, Weight: load}}
	}
	return rod, top, middle
}

// TestGuyedFrame sets inclined guys on the two tops of a frame. Each top is a cantilever's: by E·I·y″ = F·(L − x) + V·(δ − y) a tip goes δ = F/(V·κ)·(tan κL − κL) aside, κ² = V/EI, under the
// push F and the downward V of its guy (Timoshenko and Gere, Theory of Elastic Stability, art. 1.11, from memory); the guy stretches by its own length. Without the downward
// part the answer is another.
func TestGuyedFrame(t *testing.T) {
	const height, stiff, out, spring = 2.0, 20.0, 1.2, 300.0
	rod, top, middle := frame(height, stiff, 0)
	ties := []Tie{{At: top, Z: -out, Stiffness: spring}, {At: rod.Length() - top, X: rod.DX, Z: -out, Stiffness: spring}}
	wind := []Load{{From: middle, To: middle, Push: 1}}
	s := followed(t, rod, 200, wind, middle, ties)
	slope := out / math.Hypot(out, height)
	k, _ := s.CrownStiffness()
	within(t, "stiffness of a guyed frame", k, 2*(3*stiff/(height*height*height)+spring*slope*slope), .01)
	for _, push := range []float64{3, 8, 15} {
		a := blown(t, s, push)
		rest := math.Hypot(out, height)
		aside := func(d float64) float64 { // by how much the push bears more than frame and guys at a tip d aside
			l := math.Hypot(out+d, height-.6*d*d/height) // a bent cantilever's tip comes down by 3/5·d²/L
			pull := spring * (l - rest)
			along, down := pull*(out+d)/l, pull*height/l
			f := push/2 - along
			kappa := math.Sqrt(down / stiff)
			return f - down*kappa*d/(math.Tan(kappa*height)-kappa*height)
		}
		low, high := 1e-6, .5
		for range 60 {
			if mid := (low + high) / 2; aside(mid) > 0 {
				low = mid
			} else {
				high = mid
			}
		}
		within(t, "tip of a guyed frame", a.Crown[2], low, .015)
	}
}

// TestBracedColumn: a cantilever with a weight P on its tip, held there by a spring β, gives way where P/(β·L) = 1 − tan κL/κL, κ² = P/EI (the characteristic equation of that column); with none where κL is π/2.
// The frame's legs are such columns, its guys the springs, sloped: β is what is left of them along.
func TestBracedColumn(t *testing.T) {
	const height, stiff, out = 2.0, 20.0, 3.0
	for _, spring := range []float64{0, 10, 30} {
		falls := func(load float64) bool {
			rod, top, middle := frame(height, stiff, load)
			var ties []Tie
			if spring > 0 {
				ties = []Tie{{At: top, Z: -out, Stiffness: spring}, {At: rod.Length() - top, X: rod.DX, Z: -out, Stiffness: spring}}
			}
			k, held := followed(t, rod, 200, nil, middle, ties).CrownStiffness()
			return !held || k <= 0
		}
		low, high := 0.0, 40.0
		for range 14 {
			if mid := (low + high) / 2; falls(mid) {
				high = mid
			} else {
				low = mid
			}
		}
		beta := spring * out * out / (out*out + height*height)
		bears := func(p float64) bool { // below the least root
			kl := math.Sqrt(p/stiff) * height
			if kl < math.Pi/2 {
				return true
			}
			return beta > 0 && 1-math.Tan(kl)/kl > p/(beta*height)
		}
		from, to := 0.0, 40.0
		for range 40 {
			if mid := (from + to) / 2; bears(mid) {
				from = mid
			} else {
				to = mid
			}
		}
		within(t, "weight on each leg of a braced frame", low, from, .02)
	}
}

// TestSetTo: a rod that has crept to a shape rests there with that shape's forces, whatever its stiffness, and meets more load with its own.
func TestSetTo(t *testing.T) {
	rod, crown := gardenRod()
	soft := rod
	soft.Stretches = append([]Stretch(nil), rod.Stretches...)
	for i := range soft.Stretches {
		soft.Stretches[i].Stiffness *= .6
	}
	late, err := Solve(soft)
	if err != nil {
		t.Fatal(err)
	}
	set := rod.SetTo(late, 48)
	again, err := Solve(set)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "crown", again.At(crown).Y, late.At(crown).Y, 1e-4)
	within(t, "thrust", again.Thrust, late.Thrust, 2e-3)
	within(t, "moment at the foot", again.Start.Moment, late.Start.Moment, 5e-3)
	sinks := func(r Rod) float64 {
		r.Loads = append(append([]Load(nil), r.Loads...), Load{From: crown, To: crown, Weight: .5})
		sh, err := Solve(r)
		if err != nil {
			t.Fatal(err)
		}
		return sh.At(crown).Y
	}
	if stiffly, softly := again.At(crown).Y-sinks(set), late.At(crown).Y-sinks(soft); !(stiffly < .75*softly && stiffly > .4*softly) {
		t.Errorf("it sinks %g m, with the late modulus %g", stiffly, softly)
	}
}
