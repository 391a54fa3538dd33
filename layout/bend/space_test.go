package bend

import (
	"math"
	"math/rand/v2"
	"testing"
)

type rotation [3]vec // columns

func (r rotation) times(v vec) (w vec) {
	for i := range 3 {
		for j := range 3 {
			w[i] += r[j][i] * v[j]
		}
	}
	return w
}

// turned is the rotation by the vector v (Rodrigues' formula), applied to r.
func turned(v vec, r rotation) rotation {
	a := math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2])
	if a == 0 {
		return r
	}
	k := vec{v[0] / a, v[1] / a, v[2] / a}
	sin, cos := math.Sincos(a)
	var out rotation
	for c, x := range r {
		dot := k[0]*x[0] + k[1]*x[1] + k[2]*x[2]
		cross := vec{k[1]*x[2] - k[2]*x[1], k[2]*x[0] - k[0]*x[2], k[0]*x[1] - k[1]*x[0]}
		for i := range 3 {
			out[c][i] = x[i]*cos + cross[i]*sin + k[i]*dot*(1-cos)
		}
	}
	return out
}

// between2 returns the turn from a to b in a's own axes, as a rotation vector.
func between2(a, b rotation) vec {
	var m [3][3]float64 // aᵀ·b
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				m[i][j] += a[i][k] * b[j][k]
			}
		}
	}
	angle := math.Acos(min(max((m[0][0]+m[1][1]+m[2][2]-1)/2, -1), 1))
	f := .5
	if angle > 1e-9 {
		f = angle / (2 * math.Sin(angle))
	}
	return vec{f * (m[2][1] - m[1][2]), f * (m[0][2] - m[2][0]), f * (m[1][0] - m[0][1])}
}

// TestSpace works the energy of the rod out in space, its sections turned by whole rotations, and compares its second
// difference with the quadratic form that leaning is judged by.
func TestSpace(t *testing.T) {
	rod := Rod{
		Stretches: []Stretch{{1, 30, 22, 2, 0}, {2, 20, 14, 4, 0}, {.1, math.Inf(1), 0, .5, 0}, {2.4, 20, 14, 4, 0}, {1, 30, 22, 2, 0}},
		Start:     End{Angle: math.Pi/2 + .05}, Finish: End{Angle: -math.Pi/2 + .02}, DX: 2.4, DY: .2,
	}
	s := NewSolver(400)
	sh, err := s.Solve(rod)
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(3, 5))
	for range 5 {
		var c [2][4]float64 // a smooth turn, none at the feet
		for i := range c {
			for j := range c[i] {
				c[i][j] = r.NormFloat64()
			}
		}
		phi := make([]vec, s.nodes)
		place := make([]float64, s.nodes)
		for _, p := range s.pieces {
			if p.stiff > 0 {
				place[p.node+1] = p.s + p.length
			}
		}
		for i := range phi {
			for j := range c[0] {
				w := math.Sin(math.Pi * float64(j+1) * place[i] / s.length)
				phi[i][0] += c[0][j] * w
				phi[i][1] += c[1][j] * w
			}
		}
		energy := func(eps float64) float64 {
			frame := func(angle float64, node int) rotation {
				sin, cos := math.Sincos(angle)
				v := phi[node]
				return turned(vec{eps * v[0], eps * v[1], 0}, rotation{{cos, sin, 0}, {-sin, cos, 0}, {0, 0, 1}})
			}
			sum := 0.0
			for i, p := range s.pieces {
				sp := sh.spans[i]
				v := sp.lift - sp.weight/2
				if p.stiff == 0 {
					t := frame(sp.left.Angle, p.node)[0]
					sum += p.length * (sh.Thrust*t[0] + v*t[1])
					continue
				}
				a, b := frame(sp.left.Angle, p.node), frame(sp.right.Angle, p.node+1)
				k := between2(a, b)
				m := (sp.left.Moment + sp.right.Moment) / 2
				bent := k[2] - (sp.right.Angle - sp.left.Angle) + m*p.length/p.stiff
				sum += (p.torsion*k[0]*k[0] + p.stiff*(k[1]*k[1]+bent*bent)) / (2 * p.length)
				mid := rotation{a.times(turned(vec{k[0] / 2, k[1] / 2, k[2] / 2}, rotation{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}})[0])}
				sum += p.length * (sh.Thrust*mid[0][0] + v*mid[0][1])
			}
			return sum
		}
		const eps = 2e-3
		want := (energy(eps) - 2*energy(0) + energy(-eps)) / (eps * eps)

		form := s.setAside(sh, nil)
		x := make([]float64, 2*s.nodes)
		for i, v := range phi {
			x[2*i], x[2*i+1] = v[0], v[1]
		}
		got := 0.0
		w := form.width + 1
		for i := range x {
			got += form.k[i*w] * x[i] * x[i]
			for j := 1; j < w && j <= i; j++ {
				got += 2 * form.k[i*w+j] * x[i] * x[i-j]
			}
		}
		if math.Abs(got-want) > 1e-3*math.Abs(want) {
			t.Errorf("form %g, energy %g", got, want)
		}
	}
}
