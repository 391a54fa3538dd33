package bend

import (
	"math"
	"sort"
)

// Lean is how a rod moves out of its plane under level pushes square to it. The pushes are taken to be small: everything
// here is in proportion to them, and leans of one rod held alike add up.
type Lean struct {
	Reactions []float64  // N, what each held place takes of the pushes
	Holds     [2]float64 // N, what the first and the far foot take
	Feet      [2]float64 // N·m, bending moment out of the plane at the first and the far foot; positive where the foot holds against pushes aside

	places []leaning
}

// leaning is what one piece of the rod does.
type leaning struct {
	s, length float64
	aside     float64 // m, of its left end out of the plane
	slope     float64 // of its middle
	bend      float64 // 1/m, out of the plane
	in        float64 // 1/m, the bend it has in the plane
	bends     bool    // it is no rigid piece
}

// Leans finds how the rod leans out of its plane under its weight and each set of pushes by itself, while the places held, in m along
// the rod and at most two, keep to the plane. surplus is the number of directions in which it loses energy by leaning without any push: where it
// is not 0 the leans are of a rod that would not stand. The error is an *Unsolved.
func (s *Solver) Leans(rod Rod, held []float64, pushes ...[]Load) (surplus int, leans []*Lean, err error) {
	if _, err := s.find(rod); err != nil {
		return 0, nil, err
	}
	if n := s.surplus(); n > 0 {
		return n, nil, &Unsolved{Reason: "it does not stand in its plane", Tried: []string{"its upright shape"}}
	}
	sh := &Shape{}
	s.read(sh)
	surplus, form := s.surplusAside(sh, held)
	for _, set := range pushes {
		leans = append(leans, s.lean(form, sh, held, set))
	}
	return surplus, leans, nil
}

// lean solves the factored form for one set of pushes.
func (s *Solver) lean(form *band, sh *Shape, held []float64, pushes []Load) *Lean {
	r := make([]float64, 2*s.nodes)
	first := 0.0 // what is left of the pushes for the first foot
	for _, l := range pushes {
		first += l.Push
	}
	for i := range s.pieces {
		p, sp := &s.pieces[i], &sh.spans[i]
		sin, cos := math.Sincos((sp.left.Angle + sp.right.Angle) / 2)
		sum := 0.0
		for _, l := range pushes {
			sum += l.Push * l.beyond(p)
		}
		sum *= p.length
		if l := 2 * p.node; p.stiff == 0 {
			r[l] += sum * sin
			r[l+1] -= sum * cos
		} else {
			for _, e := range [2]int{l, l + 2} {
				r[e] += sum / 2 * sin
				r[e+1] -= sum / 2 * cos
			}
		}
	}
	for _, i := range [4]int{0, 1, len(r) - 2, len(r) - 1} {
		r[i] = 0 // the feet do not turn
	}
	var g [broad]float64
	form.solve(r, &g)
	for _, reaction := range g[:1+len(held)] {
		first -= reaction
	}
	n := s.leaned(sh, r, g[1:1+len(held)])
	n.Holds = [2]float64{first, g[0]}
	return n
}

// beyond returns the share of a load that lies beyond the middle of a piece; of a point load, the share of the piece before it.
func (l Load) beyond(p *piece) float64 {
	if width := l.To - l.From; width > closest*p.length {
		return min(max((l.To-p.s-p.length/2)/width, 0), 1)
	}
	return min(max((l.From-p.s)/p.length, 0), 1)
}

// leaned reads a lean from the turns φ of the nodes.
func (s *Solver) leaned(sh *Shape, phi, reactions []float64) *Lean {
	n := &Lean{Reactions: append([]float64(nil), reactions...), places: make([]leaning, len(s.pieces))}
	aside := 0.0
	for i := range s.pieces {
		p, sp := &s.pieces[i], &sh.spans[i]
		sin, cos := math.Sincos((sp.left.Angle + sp.right.Angle) / 2)
		at := leaning{s: p.s, length: p.length, aside: aside, bends: p.stiff > 0}
		l := 2 * p.node
		x, y := phi[l], phi[l+1]
		if at.bends {
			dx, dy := phi[l+2]-x, phi[l+3]-y
			x, y = x+dx/2, y+dy/2
			at.bend = (dy*cos - dx*sin) / p.length
			at.in = (sp.left.Curvature + sp.right.Curvature) / 2
		}
		at.slope = x*sin - y*cos
		aside += at.slope * p.length
		n.places[i] = at
	}
	n.Feet = [2]float64{s.footMoment(n.places, 0, 1), s.footMoment(n.places, len(n.places)-1, -1)}
	return n
}

// footMoment carries the moments of the two pieces next to a foot on to the foot itself.
func (s *Solver) footMoment(places []leaning, i, step int) float64 {
	a := s.pieces[i].stiff * places[i].bend
	if j := i + 2*step; j >= 0 && j < len(places) && places[i].bends && places[i+step].bends {
		b := s.pieces[i+step].stiff * places[i+step].bend
		a += (a - b) * places[i].length / (places[i].length + places[i+step].length)
	}
	return -a
}

// Out returns how far the place at s moves out of the plane, m.
func (n *Lean) Out(at float64) float64 {
	i := max(sort.Search(len(n.places), func(i int) bool { return n.places[i].s > at })-1, 0)
	p := n.places[i]
	return p.aside + p.slope*(at-p.s)
}

// Most returns the place that moves farthest out of the plane, in m along the rod, and how far.
func (n *Lean) Most() (at, aside float64) {
	for _, p := range n.places {
		if math.Abs(p.aside) > math.Abs(aside) {
			at, aside = p.s, p.aside
		}
	}
	return at, aside
}

// Plus returns this lean and so many times another of the same rod, held alike, together.
func (n *Lean) Plus(o *Lean, times float64) *Lean {
	sum := &Lean{Reactions: append([]float64(nil), n.Reactions...), Holds: n.Holds, Feet: n.Feet, places: append([]leaning(nil), n.places...)}
	for i := range sum.Reactions {
		sum.Reactions[i] += times * o.Reactions[i]
	}
	for i := range sum.Feet {
		sum.Holds[i] += times * o.Holds[i]
		sum.Feet[i] += times * o.Feet[i]
	}
	for i := range sum.places {
		sum.places[i].aside += times * o.places[i].aside
		sum.places[i].slope += times * o.places[i].slope
		sum.places[i].bend += times * o.places[i].bend
	}
	return sum
}

// Tightest returns the greatest curvature, 1/m, of so many times the lean together with the bend the rod has in its plane, rigid stretches left out.
func (n *Lean) Tightest(times float64) float64 {
	most := 0.0
	for _, p := range n.places {
		if p.bends {
			most = max(most, math.Hypot(p.in, times*p.bend))
		}
	}
	return most
}
