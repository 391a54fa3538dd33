package bend_test

import (
	"math"
	"testing"

	"hoopwright/layout/bend"
)

// TestLeanOfPortal: beam formulas of Timoshenko and Gere, Theory of Elastic Stability, ch. 1 (beam-columns), and Roark's Formulas for Stress and Strain (beams),
// both from memory. Out of its plane the portal is two cantilevers of length 1, B = 1.
func TestLeanOfPortal(t *testing.T) {
	tops := [2]float64{1, 1.7}
	pushed := func(f float64) []bend.Load {
		return []bend.Load{{From: tops[0], To: tops[0], Push: f}, {From: tops[1], To: tops[1], Push: f}}
	}
	spread := []bend.Load{{From: 0, To: 1, Push: 3}, {From: 1.7, To: 2.7, Push: 3}}
	s := bend.NewSolver(256)
	solve := func(rod bend.Rod, held []float64, pushes []bend.Load) *bend.Lean {
		t.Helper()
		surplus, leans, err := s.Leans(rod, held, pushes)
		if err != nil || surplus != 0 {
			t.Fatal(surplus, err)
		}
		return leans[0]
	}

	free := solve(portal(0, 0), nil, pushed(.2))
	near(t, 0, "tip of a cantilever, F/3", free.Out(1), .2/3, 1e-4)
	near(t, 0, "half way, F·5/48", free.Out(.5), .2*5/48, 1e-3)
	near(t, 0, "foot, F", free.Feet[0], .2, 1e-4)
	near(t, 0, "far foot", free.Feet[1], .2, 1e-4)
	near(t, 0, "spread load, tip q/8", solve(portal(0, 0), nil, spread).Out(1), 3./8, 1e-3)
	near(t, 0, "spread load, foot q/2", solve(portal(0, 0), nil, spread).Feet[0], 1.5, 1e-3)

	const p = 1.5 // on each leg: tip F/(P·k)·(tan k − k), foot F·tan k/k
	k := math.Sqrt(p)
	heavy := solve(portal(0, p), nil, pushed(.2))
	near(t, p, "tip of a beam-column", heavy.Out(1), .2/(p*k)*(math.Tan(k)-k), 2e-4)
	near(t, p, "foot of a beam-column", heavy.Feet[0], .2*math.Tan(k)/k, 1e-3)

	held := solve(portal(0, 0), tops[:], spread)
	for i := range 2 {
		near(t, 0, "propped cantilever, prop 3/8·q", held.Reactions[i], 3*3./8, 1e-3)
		near(t, 0, "propped cantilever, foot q/8", held.Feet[i], 3./8, 2e-3)
		near(t, 0, "propped cantilever, foot takes 5/8·q", held.Holds[i], 3*5./8, 1e-3)
	}
	near(t, 1, "nothing gives way at the prop", 1+held.Out(1), 1, 1e-9)

	// With a prop on one leg alone the feet and it hold all the pushes between them.
	one := solve(portal(0, 0), tops[:1], pushed(.2))
	near(t, 0, "pushes are held by feet and prop", one.Holds[0]+one.Holds[1]+one.Reactions[0], .4, 1e-9)

	// Leans add up.
	twice := free.Plus(free, 1)
	near(t, 0, "twice", twice.Out(.7), 2*free.Out(.7), 1e-12)
	near(t, 0, "twice the curvature", free.Tightest(2), 2*free.Tightest(1), 1e-12)
}

// TestLeanMeetsFactors: as the weights near the factor at which an arch leans by itself, a push moves its crown ever farther, past it the arch does not stand.
func TestLeanMeetsFactors(t *testing.T) {
	const crown = 120.5 * inch
	rod := sticks(.4, 2.376, false)
	s := bend.NewSolver(0)
	f, err := s.Factors(rod)
	if err != nil {
		t.Fatal(err)
	}
	at := func(share float64) (int, float64) {
		heavy := rod
		heavy.Stretches = append([]bend.Stretch(nil), rod.Stretches...)
		for i := range heavy.Stretches {
			heavy.Stretches[i].Weight *= f.Along * share
		}
		surplus, leans, err := s.Leans(heavy, nil, []bend.Load{{From: crown, To: crown, Push: 1}})
		if err != nil {
			t.Fatal(err)
		}
		return surplus, leans[0].Out(crown)
	}
	before, gives := at(.95)
	if before != 0 || gives < 10*.02 {
		t.Errorf("at 0.95 of its factor: surplus %d, %g m", before, gives)
	}
	if past, gives := at(1.05); past != 1 || gives > 0 {
		t.Errorf("at 1.05 of its factor: surplus %d, %g m", past, gives)
	}
}
