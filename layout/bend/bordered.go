package bend

import "math"

// bordered is a symmetric matrix with one side diagonal, bordered by two conditions:
//
//	K  A
//	Aᵀ S
//
// K is n×n, A n×2, S 2×2.
type bordered struct {
	diagonal, side []float64 // side[i] is K[i][i−1]
	a              [][2]float64
	s              [2][2]float64
}

// reset makes all entries zero.
func (b *bordered) reset(n int) {
	b.diagonal, b.side, b.a = resize(b.diagonal, n), resize(b.side, n), resize(b.a, n)
	clear(b.diagonal)
	clear(b.side)
	clear(b.a)
	b.s = [2][2]float64{}
}

// hold takes unknown i out of the system: its row and column become the identity's.
func (b *bordered) hold(i int) {
	b.side[i] = 0
	if i+1 < len(b.side) {
		b.side[i+1] = 0
	}
	b.diagonal[i], b.a[i] = 1, [2]float64{}
}

// lost is the share of the greatest entry below which a pivot is lost to cancellation: it is replaced by a tiny one.
const lost = 1e-15

// pivot keeps a pivot off zero, and adds to negative where it is below it.
func pivot(d, scale float64, negative *int) float64 {
	if math.Abs(d) < lost*scale {
		d = math.Copysign(lost*scale, d)
	}
	if d < 0 {
		*negative++
	}
	return d
}

// factor overwrites K by L·D·Lᵀ, A by L⁻¹A and S by the factors of S − AᵀK⁻¹A, and returns how many eigenvalues of the whole are negative.
func (b *bordered) factor() (negative int) {
	scale := 0.0
	for _, d := range b.diagonal {
		scale = max(scale, math.Abs(d))
	}
	for i := range b.diagonal {
		a := &b.a[i]
		if i > 0 {
			l := b.side[i] / b.diagonal[i-1]
			b.diagonal[i] -= l * b.side[i]
			b.side[i] = l
			a[0] -= l * b.a[i-1][0]
			a[1] -= l * b.a[i-1][1]
		}
		d := pivot(b.diagonal[i], scale, &negative)
		b.diagonal[i] = d
		b.s[0][0] -= a[0] * a[0] / d
		b.s[1][0] -= a[1] * a[0] / d
		b.s[1][1] -= a[1] * a[1] / d
	}
	s := &b.s
	scale = max(math.Abs(s[0][0]), math.Abs(s[1][1]))
	s[0][0] = pivot(s[0][0], scale, &negative)
	l := s[1][0] / s[0][0]
	s[1][1] = pivot(s[1][1]-l*s[1][0], scale, &negative)
	s[1][0] = l
	return negative
}

// solve overwrites r (n) and g by the solution, after factor.
func (b *bordered) solve(r []float64, g *[2]float64) {
	for i := range r {
		if i > 0 {
			r[i] -= b.side[i] * r[i-1]
		}
		d := r[i] / b.diagonal[i]
		g[0] -= b.a[i][0] * d
		g[1] -= b.a[i][1] * d
	}
	g[1] -= b.s[1][0] * g[0]
	g[1] /= b.s[1][1]
	g[0] = g[0]/b.s[0][0] - b.s[1][0]*g[1]
	for i := len(r) - 1; i >= 0; i-- {
		r[i] = (r[i] - b.a[i][0]*g[0] - b.a[i][1]*g[1]) / b.diagonal[i]
		if i+1 < len(r) {
			r[i] -= b.side[i+1] * r[i+1]
		}
	}
}

func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}
