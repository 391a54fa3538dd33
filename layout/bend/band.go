package bend

import "math"

// border is the most conditions a bordered matrix carries.
const border = 2

// bordered is a symmetric matrix with a narrow band, bordered by a few conditions:
//
//	K  A
//	Aᵀ S
//
// K is n×n with half as many side diagonals as width, A n×m, S m×m, m ≤ 2.
type bordered struct {
	n, width, m int
	k           []float64 // k[i·(width+1)+j] is K[i][i−j]
	a           [][border]float64
	s           [border][border]float64
	det         float64
}

// reset makes all entries zero.
func (b *bordered) reset(n, width, m int) {
	b.n, b.width, b.m = n, width, m
	b.k = resize(b.k, n*(width+1))
	b.a = resize(b.a, n)
	clear(b.k)
	clear(b.a)
	b.s = [border][border]float64{}
}

// add adds v to K[i][j] and K[j][i].
func (b *bordered) add(i, j int, v float64) {
	if i < j {
		i, j = j, i
	}
	b.k[i*(b.width+1)+i-j] += v
}

// hold takes unknown i out of the system: its row and column become the identity's.
func (b *bordered) hold(i int) {
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
	b.a[i] = [border]float64{}
}

// factor overwrites K by L·D·Lᵀ, A by L⁻¹A and S by S − AᵀK⁻¹A, and returns how many eigenvalues of the whole are
// negative. A pivot lost to cancellation is replaced by a tiny one.
func (b *bordered) factor() (negative int) {
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
	switch b.m {
	case 1:
		b.det = b.s[0][0]
		if b.det < 0 {
			negative++
		}
	case 2:
		b.det = b.s[0][0]*b.s[1][1] - b.s[0][1]*b.s[1][0]
		switch {
		case b.det < 0:
			negative++
		case b.s[0][0]+b.s[1][1] < 0:
			negative += 2
		}
	}
	return negative
}

// solve overwrites r (n) and g (m) by the solution, after factor.
func (b *bordered) solve(r []float64, g *[border]float64) {
	w := b.width
	for i := range b.n {
		for j := max(0, i-w); j < i; j++ {
			r[i] -= b.k[i*(w+1)+i-j] * r[j]
		}
		for c := range b.m {
			g[c] -= b.a[i][c] * r[i] / b.k[i*(w+1)]
		}
	}
	switch b.m {
	case 1:
		g[0] /= b.det
	case 2:
		g[0], g[1] = (g[0]*b.s[1][1]-g[1]*b.s[0][1])/b.det, (g[1]*b.s[0][0]-g[0]*b.s[1][0])/b.det
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

func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}
