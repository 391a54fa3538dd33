package bend_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"hoopwright/layout/bend"
)

// TestShooting solves heavy, uneven, leaning, pushed arches a second way: the moment balance B·θ″ = −H·sin θ + V·cos θ, H gaining the push passed and V losing the weight, as an initial
// value problem by an adaptive Runge–Kutta–Fehlberg 4(5) integrator (E. Fehlberg, NASA TR R-315, 1969), shot at the far foot by
// Newton's method on the three unknowns at the near one.
func TestShooting(t *testing.T) {
	for _, c := range []struct{ length, weight, push, dx, dy, lean float64 }{
		{2.5, 3, 0, 1, 0, 0}, {2.5, 6, 0, 1, .1, 0}, {2, 8, 0, 1, -.05, .05}, {3, 1, 0, 1.2, .15, -.08}, {1.3, 20, 0, 1, 0, 0},
		{2.5, 3, 2, 1, 0, 0}, {2.5, 4, -3, 1, .1, .02}, {2, 1, 6, 1, 0, 0},
	} {
		rod := plumb(c.length)
		rod.Stretches[0].Weight = c.weight
		rod.Loads = []bend.Load{{To: c.length, Push: c.push}}
		rod.DX, rod.DY = c.dx, c.dy
		rod.Start.Angle += c.lean
		rod.Finish.Angle -= c.lean
		sh, err := bend.NewSolver(128).Solve(rod)
		if err != nil {
			t.Errorf("%+v: %v", c, err)
			continue
		}
		end := func(x [3]float64) []float64 { // θ' at the start, H, V at the start
			w, q := c.weight/c.length, c.push/c.length
			y := integrate(func(s float64, y []float64, d []float64) {
				sin, cos := math.Sincos(y[0])
				d[0], d[1], d[2], d[3] = y[1], -(x[1]+q*s)*sin+(x[2]-w*s)*cos, cos, sin
			}, []float64{rod.Start.Angle, x[0], 0, 0}, c.length)
			return []float64{y[0] - rod.Finish.Angle, y[2] - c.dx, y[3] - c.dy}
		}
		x := [3]float64{sh.Start.Moment * 1.003, sh.StartThrust*1.003 + .003, sh.StartLift * .997}
		for range 12 {
			f := end(x)
			jac := mat.NewDense(3, 3, nil)
			for j := range 3 {
				y := x
				y[j] += 1e-6
				g := end(y)
				for i := range 3 {
					jac.Set(i, j, (g[i]-f[i])/1e-6)
				}
			}
			var d mat.VecDense
			if err := d.SolveVec(jac, mat.NewVecDense(3, f)); err != nil {
				t.Fatal(err)
			}
			for j := range 3 {
				x[j] -= d.AtVec(j)
			}
		}
		near(t, c.length, "foot moment", sh.Start.Moment, x[0], 1e-5)
		near(t, c.length, "thrust", sh.StartThrust, x[1], 1e-5)
		near(t, c.length, "lift", sh.StartLift, x[2], 1e-5)
		w, q := c.weight/c.length, c.push/c.length
		mid := integrate(func(s float64, y []float64, d []float64) {
			sin, cos := math.Sincos(y[0])
			d[0], d[1], d[2], d[3] = y[1], -(x[1]+q*s)*sin+(x[2]-w*s)*cos, cos, sin
		}, []float64{rod.Start.Angle, x[0], 0, 0}, c.length*.4)
		at := sh.At(c.length * .4)
		near(t, c.length, "x", at.X, mid[2], 1e-5)
		near(t, c.length, "y", at.Y, mid[3], 1e-5)
		near(t, c.length, "curvature", at.Curvature, mid[1], 1e-5)
	}
}

// integrate carries y from 0 to end with errors below 1e-11 a step.
func integrate(rate func(s float64, y, d []float64), y []float64, end float64) []float64 {
	a := [][]float64{{}, {1. / 4}, {3. / 32, 9. / 32}, {1932. / 2197, -7200. / 2197, 7296. / 2197},
		{439. / 216, -8, 3680. / 513, -845. / 4104}, {-8. / 27, 2, -3544. / 2565, 1859. / 4104, -11. / 40}}
	at := []float64{0, 1. / 4, 3. / 8, 12. / 13, 1, 1. / 2}
	fifth := []float64{16. / 135, 0, 6656. / 12825, 28561. / 56430, -9. / 50, 2. / 55}
	fourth := []float64{25. / 216, 0, 1408. / 2565, 2197. / 4104, -1. / 5, 0}
	n := len(y)
	k := make([][]float64, 6)
	for s, h := 0.0, end/50; s < end; {
		h = min(h, end-s)
		for i := range k {
			k[i] = make([]float64, n)
			z := append([]float64(nil), y...)
			for j, c := range a[i] {
				for m := range z {
					z[m] += h * c * k[j][m]
				}
			}
			rate(s+at[i]*h, z, k[i])
		}
		next, miss := append([]float64(nil), y...), 0.0
		for m := range n {
			e := 0.0
			for i := range k {
				next[m] += h * fifth[i] * k[i][m]
				e += h * (fifth[i] - fourth[i]) * k[i][m]
			}
			miss = max(miss, math.Abs(e))
		}
		if miss < 1e-11 {
			s, y = s+h, next
		}
		h *= min(max(.9*math.Pow(1e-11/(miss+1e-30), .2), .2), 4)
	}
	return y
}
