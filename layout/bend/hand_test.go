package bend

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The system that Newton's method solves is the slope of what it brings to nothing: against differences, on a rod with rigid pieces in no shape of
// equilibrium, its bubbles at rest in each shape.
func TestSystemIsTheSlope(t *testing.T) {
	s := NewSolver(8)
	rod := Rod{
		Stretches: []Stretch{{Length: .3, Stiffness: 30, Weight: 8}, {Length: 1.2, Stiffness: 4, Weight: 3}, {Length: .1, Stiffness: math.Inf(1), Weight: 2}, {Length: 1.4, Stiffness: 4, Weight: 3}, {Length: .2, Stiffness: 30, Weight: 8}},
		Loads:     []Load{{From: .4, To: 1.1, Weight: 5, Push: 2}}, Start: End{Hinged: true}, Finish: End{Hinged: true}, DX: 1.9, DY: .1,
	}
	s.rod = rod
	s.mesh(rod)
	s.aim = aim{dx: rod.DX, dy: rod.DY, load: 1}
	s.guess(s.aim)
	s.now.thrust, s.now.lift = 3, -4
	for i := range s.now.theta {
		s.now.theta[i] += .1 * math.Sin(float64(3*i))
	}
	at := func() ([]float64, [2]float64) {
		for range 8 {
			s.assemble()
			for i := range s.pieces {
				if s.pieces[i].stiff > 0 {
					s.now.bubble[i] -= s.inner[i].residual / s.inner[i].pivot
				}
			}
		}
		s.assemble()
		return append([]float64(nil), s.r...), s.g
	}
	at()
	n := s.nodes
	k := make([][]float64, n+2)
	for i := range k {
		k[i] = make([]float64, n+2)
	}
	for i := range n {
		k[i][i] = s.system.diagonal[i]
		if i > 0 {
			k[i][i-1], k[i-1][i] = s.system.side[i], s.system.side[i]
		}
		for j := range 2 {
			k[i][n+j], k[n+j][i] = s.system.a[i][j], s.system.a[i][j]
		}
	}
	for i := range 2 {
		for j := range 2 {
			k[n+i][n+j] = s.system.s[i][j]
		}
	}
	for j := range n + 2 {
		const by = 1e-5
		var of *float64
		switch j {
		case n:
			of = &s.now.thrust
		case n + 1:
			of = &s.now.lift
		default:
			of = &s.now.theta[j]
		}
		was := *of
		*of = was + by
		r1, g1 := at()
		*of = was - by
		r0, g0 := at()
		*of = was
		for i := range n + 2 {
			var slope float64
			if i < n {
				slope = (r1[i] - r0[i]) / (2 * by)
			} else {
				slope = (g1[i-n] - g0[i-n]) / (2 * by)
			}
			if math.Abs(slope-k[i][j]) > 1e-5*(1+math.Abs(slope)) {
				t.Errorf("equation %d by unknown %d of %d: %g, by differences %g", i, j, n+2, k[i][j], slope)
			}
		}
	}
}

// Small systems by hand: rows that must change places, and rows that say the same.
func TestSmallSystems(t *testing.T) {
	d := dense{}
	d.a[0][1], d.a[1][0], d.a[1][1] = 2, 1, 3 // 2y = 4, 8; x + 3y = 7, 2
	d.b[0], d.b[1] = [2]float64{4, 8}, [2]float64{7, 2}
	if !d.solve(2) || d.b[0] != [2]float64{1, -10} || d.b[1] != [2]float64{2, 4} {
		t.Errorf("%v", d.b[:2])
	}
	d = dense{}
	d.a[0][0], d.a[0][1], d.a[1][0], d.a[1][1] = 1, 2, 2, 4
	if d.solve(2) {
		t.Error("two rows that say the same were solved")
	}
}

// A factor is where a shape ends that is followed by small even steps: past a fold a pipe that hangs between its feet stands again, but not this one.
func TestFactorFollowsOneShape(t *testing.T) {
	const by, upTo = .01, 3.
	s, ends := NewSolver(0), 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 3))
		half := 1 + 3.5*r.Float64()
		rod := Rod{DX: 2 * half * (.15 + .8*r.Float64()), Start: End{Hinged: true}, Finish: End{Hinged: seed%2 == 0},
			Stretches: []Stretch{{Length: half, Stiffness: 2 + 58*r.Float64(), Weight: 30 * r.Float64()}, {Length: half, Stiffness: 2 + 58*r.Float64(), Weight: 30 * r.Float64()}}}
		got, err := s.Factor(rod, upTo)
		if err != nil {
			t.Fatal(seed, err)
		}
		light, _ := s.lighten(rod)
		var last state
		last.copyFrom(&s.now)
		load := 0.
		for s.aim = light; load < upTo; last.copyFrom(&s.now) {
			if s.aim.load = load + by; !s.newton() || !s.now.near(&last) || !s.stable() {
				break
			}
			load += by
		}
		if load < upTo-by {
			ends++
		}
		if math.Abs(got-min(load+by/2, upTo)) > by {
			t.Errorf("rod %d: factor %v, by small steps between %v and %v", seed, got, load, load+by)
		}
	}
	if ends < 10 {
		t.Errorf("only %d shapes end", ends)
	}
}
