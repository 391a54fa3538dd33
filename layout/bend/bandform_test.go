package bend

import "math"

// broad is the most conditions a band carries.
const broad = 3

// band is a symmetric matrix with a narrow band, bordered by a few conditions:
//
//	K  A
//	Aᵀ S
//
// K is n×n with half as many side diagonals as width, A n×m, S m×m.
type band struct {
	n, width, m int
	k           []float64 // k[i·(width+1)+j] is K[i][i−j]
	a           [][broad]float64
	s           [broad][broad]float64
}

// reset makes all entries zero.
func (b *band) reset(n, width, m int) {
	b.n, b.width, b.m = n, width, m
	b.k = resize(b.k, n*(width+1))
	b.a = resize(b.a, n)
	clear(b.k)
	clear(b.a)
	b.s = [broad][broad]float64{}
}

// add adds v to K[i][j] and K[j][i].
func (b *band) add(i, j int, v float64) {
	if i < j {
		i, j = j, i
	}
	b.k[i*(b.width+1)+i-j] += v
}

// hold takes unknown i out of the system: its row and column become the identity's.
func (b *band) hold(i int) {
	w := b.width
	for j := 1; j <= w; j++ {
		if i-j >= 0 {
			b.k[i*(w+1)+j] = 0
		}
		if i+j < b.n {
			b.k[(i+j)*(w+1)+j] = 0
		}
	}
	b.k[i*(w+1)] = 1
	b.a[i] = [broad]float64{}
}

// factor overwrites K by L·D·Lᵀ, A by L⁻¹A and S by the factors of S − AᵀK⁻¹A, and returns how many eigenvalues of the whole are
// negative. A pivot lost to cancellation is replaced by a tiny one.
func (b *band) factor() (negative int) {
	w := b.width
	scale := 0.0
	for i := range b.n {
		scale = max(scale, math.Abs(b.k[i*(w+1)]))
	}
	for i := range b.n {
		row := b.k[i*(w+1) : i*(w+1)+w+1]
		low := max(0, i-w)
		for j := low; j < i; j++ { // row[i−j] becomes L[i][j]·D[j]
			other := b.k[j*(w+1) : j*(w+1)+w+1]
			for t := max(low, j-w); t < j; t++ {
				row[i-j] -= row[i-t] * other[j-t]
			}
		}
		for j := low; j < i; j++ {
			d := b.k[j*(w+1)]
			ld := row[i-j]
			row[i-j] = ld / d
			row[0] -= ld * row[i-j]
			for c := range b.m {
				b.a[i][c] -= row[i-j] * b.a[j][c]
			}
		}
		if math.Abs(row[0]) < 1e-15*scale {
			row[0] = math.Copysign(1e-15*scale, row[0])
		}
		if row[0] < 0 {
			negative++
		}
		for c := range b.m {
			for e := range b.m {
				b.s[c][e] -= b.a[i][c] * b.a[i][e] / row[0]
			}
		}
	}
	return negative + b.factorConditions()
}

// factorConditions factors S likewise, its lower half.
func (b *band) factorConditions() (negative int) {
	scale := 0.0
	for c := range b.m {
		scale = max(scale, math.Abs(b.s[c][c]))
	}
	for c := range b.m {
		for e := range c {
			ld := b.s[c][e]
			for t := range e {
				ld -= b.s[c][t] * b.s[e][t] * b.s[t][t]
			}
			b.s[c][e] = ld / b.s[e][e]
			b.s[c][c] -= ld * b.s[c][e]
		}
		if math.Abs(b.s[c][c]) < 1e-15*scale {
			b.s[c][c] = math.Copysign(1e-15*scale, b.s[c][c])
		}
		if b.s[c][c] < 0 {
			negative++
		}
	}
	return negative
}

// solve overwrites r (n) and g (m) by the solution, after factor.
func (b *band) solve(r []float64, g *[broad]float64) {
	w := b.width
	for i := range b.n {
		for j := max(0, i-w); j < i; j++ {
			r[i] -= b.k[i*(w+1)+i-j] * r[j]
		}
		for c := range b.m {
			g[c] -= b.a[i][c] * r[i] / b.k[i*(w+1)]
		}
	}
	for c := range b.m {
		for e := range c {
			g[c] -= b.s[c][e] * g[e]
		}
	}
	for c := b.m - 1; c >= 0; c-- {
		g[c] /= b.s[c][c]
		for e := c + 1; e < b.m; e++ {
			g[c] -= b.s[e][c] * g[e]
		}
	}
	for i := range b.n {
		for c := range b.m {
			r[i] -= b.a[i][c] * g[c]
		}
		r[i] /= b.k[i*(w+1)]
	}
	for i := b.n - 1; i >= 0; i-- {
		for j := max(0, i-w); j < i; j++ {
			r[j] -= b.k[i*(w+1)+i-j] * r[i]
		}
	}
}
