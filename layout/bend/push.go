package bend

import "math"

// Push is a force out of the rod's plane.
type Push struct {
	At    float64 // m along the rod
	Force float64 // N
}

// Moved is how far the rod stands out of its plane, at the ends of its parts.
type Moved struct {
	s, aside []float64
}

// At returns how far the place s, in m along the rod, has moved.
func (m Moved) At(s float64) float64 {
	for i := 1; i < len(m.s); i++ {
		if s <= m.s[i] {
			t := (s - m.s[i-1]) / (m.s[i] - m.s[i-1])
			return m.aside[i-1] + (m.aside[i]-m.aside[i-1])*t
		}
	}
	return m.aside[len(m.aside)-1]
}

// Most returns the place that has moved farthest, and how far.
func (m Moved) Most() (s, aside float64) {
	for i, a := range m.aside {
		if math.Abs(a) > math.Abs(aside) {
			s, aside = m.s[i], a
		}
	}
	return s, aside
}

// Aside finds how pushes out of the plane move the rod, its own weight and loads on it; held as for Factors. It is the least of the
// energy's second variation less the pushes' work, so it holds for moves that are small beside the rod. ok is false where
// the rod has no shape, or does not stand without being pushed.
func (s *Solver) Aside(rod Rod, held []float64, pushes []Push) (moved Moved, ok bool) {
	if s.find(rod) != nil {
		return Moved{}, false
	}
	s.surplus() // brings the foot's moment up to date
	s.read(&s.scratch)
	sh := &s.scratch
	s.setAside(sh, held)
	work := make([]float64, 2*s.nodes)
	for i := range s.pieces {
		p, sp := &s.pieces[i], &sh.spans[i]
		force := 0.0 // the pushes beyond, and what of those within the piece lies beyond its parts
		for _, f := range pushes {
			force += f.Force * min(max((f.At-sp.left.S)/(sp.right.S-sp.left.S), 0), 1)
		}
		p.aside(sp, func(node int, x, y float64) {
			work[2*node] += force * x
			work[2*node+1] += force * y
		})
	}
	for _, i := range [4]int{0, 1, 2*s.nodes - 2, 2*s.nodes - 1} {
		work[i] = 0 // clamped
	}
	if s.system.factor() > s.system.m {
		return Moved{}, false
	}
	var g [border]float64
	s.system.solve(work, &g)
	at := 0.0
	moved = Moved{s: []float64{0}, aside: []float64{0}}
	for i := range s.pieces {
		p, sp := &s.pieces[i], &sh.spans[i]
		p.aside(sp, func(node int, x, y float64) { at += x*work[2*node] + y*work[2*node+1] })
		moved.s, moved.aside = append(moved.s, sp.right.S), append(moved.aside, at)
	}
	return moved, true
}

// aside tells by how much a unit of φx and of φy at each node of a piece moves its far end out of the plane.
func (p *piece) aside(sp *span, tell func(node int, x, y float64)) {
	sin, cos := math.Sincos((sp.left.Angle + sp.right.Angle) / 2)
	if p.stiff == 0 {
		tell(p.node, p.length*sin, -p.length*cos)
		return
	}
	for n := p.node; n <= p.node+1; n++ {
		tell(n, p.length/2*sin, -p.length/2*cos)
	}
}
