package bend

import "math"

// The rod in space, leaning out of its plane. Every cross-section takes a small turn about an axis in the plane,
// φ = (φx, φy), beside its place in the plane shape. To second order, with t the tangent, n the normal, M the bending
// moment and f = (H, V) the force the rod carries, the energy then changes by half of
//
//	∫ B·(φ'·n)² + C·(φ'·t)² − M·(φ×φ') + (φ·t)(φ·f) − |φ|²·(f·t) ds
//
// (the rotation vector's exponential map carried to second order, as in J. C. Simo and L. Vu-Quoc, Comput. Methods Appl. Mech.
// Engrg. 58, 1986), and each point moves aside by ∫ φx·sin θ − φy·cos θ ds. Weight keeps its direction, so nothing else
// joins in. Both feet are clamped, and the far foot and each held place stay in the plane. The form is taken with φ
// straight over each piece, which is right to the second power of the pieces' length.

// surplusAside returns how many directions there are in which the present state, an equilibrium in the plane, loses energy by
// leaning out of it while the places held, in m along the rod and at most two, keep to the plane.
func (s *Solver) surplusAside(sh *Shape, held []float64) (int, *band) {
	b := s.setAside(sh, held)
	return b.factor() - b.m, b
}

// Factors are the least multiples of all weight at which a rod is no longer stable in its plane and out of it.
type Factors struct{ Sideways, Along float64 }

// Factors is as Factor, both ways; held are places, in m along the rod and at most one, kept in the plane.
func (s *Solver) Factors(rod Rod, held ...float64) (f Factors, err error) {
	if f.Sideways, err = s.Factor(rod, Most); err != nil {
		return f, err
	}
	light, _ := s.lighten(rod)
	var base state
	base.copyFrom(&s.now)
	f.Along = s.limit(&base, light, Most, func() int {
		s.surplus() // brings the foot's moment up to date
		var sh Shape
		s.read(&sh)
		n, _ := s.surplusAside(&sh, held)
		return n
	})
	return f, nil
}

// setAside sets up the quadratic form, unknowns φx and φy of each node in turn, with its conditions.
func (s *Solver) setAside(sh *Shape, held []float64) *band {
	m := 1 + len(held)
	b := &band{}
	b.reset(2*s.nodes, 3, m)
	for i := range s.pieces {
		p, sp := &s.pieces[i], &sh.spans[i]
		angle := (sp.left.Angle + sp.right.Angle) / 2
		sin, cos := math.Sincos(angle)
		h, v := sp.thrust+sp.push/2, sp.lift-sp.weight/2
		ft := h*cos + v*sin
		l, r := 2*p.node, 2*p.node+2
		gxx, gyy, gxy := h*cos-ft, v*sin-ft, (h*sin+v*cos)/2
		if p.stiff == 0 {
			b.add(l, l, p.length*gxx)
			b.add(l+1, l+1, p.length*gyy)
			b.add(l+1, l, p.length*gxy)
			for c := range m {
				if share := before(sp, held, c); share > 0 {
					b.a[l][c] += share * p.length * sin
					b.a[l+1][c] -= share * p.length * cos
				}
			}
			continue
		}
		q := p.length / 4
		bx, by, bxy := p.stiff*sin*sin+p.torsion*cos*cos, p.stiff*cos*cos+p.torsion*sin*sin, (p.torsion-p.stiff)*sin*cos
		bx, by, bxy = bx/p.length, by/p.length, bxy/p.length
		moment := (sp.left.Moment + sp.right.Moment) / 2
		for _, e := range [2]int{l, r} {
			b.add(e, e, bx+q*gxx)
			b.add(e+1, e+1, by+q*gyy)
			b.add(e+1, e, bxy+q*gxy)
		}
		b.add(r, l, -bx+q*gxx)
		b.add(r+1, l+1, -by+q*gyy)
		b.add(r+1, l, -bxy+q*gxy-moment/2)
		b.add(r, l+1, -bxy+q*gxy+moment/2)
		for c := range m {
			if share := before(sp, held, c); share > 0 {
				for _, e := range [2]int{l, r} {
					b.a[e][c] += share * p.length / 2 * sin
					b.a[e+1][c] -= share * p.length / 2 * cos
				}
			}
		}
	}
	for _, i := range [4]int{0, 1, 2*s.nodes - 2, 2*s.nodes - 1} {
		b.hold(i)
	}
	return b
}

// before returns the share of a span that lies before condition c's place: the far foot for 0, else a held place.
func before(sp *span, held []float64, c int) float64 {
	if c == 0 {
		return 1
	}
	return min(max((held[c-1]-sp.left.S)/(sp.right.S-sp.left.S), 0), 1)
}
