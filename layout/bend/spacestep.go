package bend

import "math"

// Step is one step of Newton's method from a state of a Space: what the ridge would bear at the crown after it.
type Step struct {
	Ridge float64 // N, square to the plane, of the ridge on the crown
	Slope float64 // N/m, by which Ridge grows with the crown's place aside

	ok         bool
	free, more [mostColumns]float64 // the forces' changes: without, and for each metre that the crown goes farther
}

// The columns of forces: the far foot's three, the ridge's, each tie's three.
const (
	ofRidge     = 3
	ofTies      = 4
	mostColumns = 16 // four ties
)

// Step takes the second variation about the present state in a wind, and solves for the crown so far aside, m.
func (s *Space) Step(wind, aside float64) Step {
	s.pull()
	s.assemble(wind)
	s.eliminate(ofTies + 3*len(s.ties))
	return s.forces(aside)
}

// Stands reports whether a Step was found.
func (s Step) Stands() bool { return s.ok }

// pull looks at the ties. Their forces are unknowns of their own, so that a stiff one never answers the curved way of its place with a great force: off is what Newton's
// method still has to make good.
func (s *Space) pull() {
	for i, t := range s.ties {
		p := &s.pulls[i]
		way := vec{t.X, t.Y, t.Z}.plus(-1, s.place(s.levers[i]))
		p.length = way.length()
		p.toward = vec{}.plus(1/p.length, way)
		stretched := t.Stiffness * (p.length - s.slack[i])
		p.off = stretched - p.force
		if p.gives = p.force <= -t.Pushes && stretched < -t.Pushes-1e-9*t.Stiffness*s.slack[i]; p.gives {
			p.force, p.off = -t.Pushes, 0
		}
	}
}

// stiffness returns how the force of a tie turns against a move of its place: none where it is slack.
func (s *Space) stiffness(i int) (k mat) {
	p := &s.pulls[i]
	along, across := s.ties[i].Stiffness, p.force/p.length
	if p.gives {
		along = 0
	}
	for r := range 3 {
		for c := range 3 {
			k[3*r+c] = (along - across) * p.toward[r] * p.toward[c]
		}
		k[4*r] += across
	}
	return k
}

// assemble fills in the second variation, the levers' columns and, last, the residual.
func (s *Space) assemble(wind float64) {
	n := len(s.knots)
	clear(s.block)
	clear(s.side)
	last := ofTies + 3*len(s.ties)
	for i := range n {
		t := s.tangent(i)
		force := s.foot.times(s.full[i])
		force[1] -= s.dead[i]
		force[2] += wind*s.wind[i] + s.ridge*s.crown[i]
		for j := range s.ties {
			force.add(s.pulls[j].force*s.levers[j][i], &s.pulls[j].toward)
		}
		along := force.dot(t)
		b := &s.block[i]
		for r := range 3 {
			for c := range 3 {
				b[3*r+c] = -(force[r]*t[c] + t[r]*force[c]) / 2
			}
			b[4*r] += along
		}
		s.columns[last][i] = force.cross(t)
		s.lift(0, s.full[i], i, t)
		s.columns[ofRidge][i] = vec{t[1], -t[0], 0}.times(s.crown[i])
		for j := range s.ties {
			s.lift(ofTies+3*j, s.levers[j][i], i, t)
		}
	}
	for i := range s.links {
		s.link(i, last)
	}
}

func (a vec) times(t float64) vec { return vec{t * a[0], t * a[1], t * a[2]} }

// lift fills in lever·(t × e) for the three axes e.
func (s *Space) lift(column int, lever float64, i int, t vec) {
	t = t.times(lever)
	s.columns[column][i] = vec{0, t[2], -t[1]}
	s.columns[column+1][i] = vec{-t[2], 0, t[0]}
	s.columns[column+2][i] = vec{t[1], -t[0], 0}
}

// link adds a bending piece. With Q = (s, v) the turn from its left knot to its right one in the left one's axes, c = 2v, and rotation vectors a and b of the two knots, w = b − a
// in those axes:
//
//	c' = c + s·w + w×v − ½·A·(a×b) − ¼·|w|²·v,  A = s·1 − [v]×
func (s *Space) link(i, last int) {
	l := &s.links[i]
	q, moment := s.bent(i)
	v := q.v
	a := mat{q.s, v[2], -v[1], -v[2], q.s, v[0], v[1], -v[0], q.s} // s·1 − [v]×
	t := a.transposed()
	d := mat{l.stiff[0], 0, 0, 0, l.stiff[1], 0, 0, 0, l.stiff[2]}
	k := d.by(&a)
	k = t.by(&k)
	k0 := moment.dot(v) / 2
	k[0], k[4], k[8] = k[0]-k0, k[4]-k0, k[8]-k0
	ax := &s.axes[i]
	axt := ax.transposed()
	k = k.by(&axt)
	k = ax.by(&k)
	m := ax.times(t.times(moment))
	for e := range 9 {
		s.block[i][e] += k[e]
		s.block[i+1][e] += k[e]
		s.side[i][e] = -k[e]
	}
	h := m.times(0.5)
	s.side[i][1], s.side[i][2] = s.side[i][1]-h[2], s.side[i][2]+h[1]
	s.side[i][3], s.side[i][5] = s.side[i][3]+h[2], s.side[i][5]-h[0]
	s.side[i][6], s.side[i][7] = s.side[i][6]-h[1], s.side[i][7]+h[0]
	r := s.columns[last]
	r[i], r[i+1] = r[i].plus(-1, m), r[i+1].plus(1, m)
}

// bent returns the turn over a link and the moments it makes, both in the axes of its left knot.
func (s *Space) bent(i int) (q turn, moment vec) {
	l := &s.links[i]
	q = s.knots[i].back().after(s.knots[i+1])
	if q.s < 0 {
		q = turn{-q.s, q.v.times(-1)}
	}
	return q, vec{l.stiff[0] * 2 * q.v[0], l.stiff[1] * 2 * q.v[1], l.stiff[2] * (2*q.v[2] - l.turn)}
}

// moment returns the moment that a link carries at its middle, in space.
func (s *Space) moment(i int) vec {
	q, m := s.bent(i)
	v := q.v
	t := mat{q.s, -v[2], v[1], v[2], q.s, -v[0], -v[1], v[0], q.s}
	return s.axes[i].times(t.times(m))
}

// eliminate factors the second variation of the inner knots and forms all products of the columns with its inverse. It returns how many of its
// eigenvalues are negative.
func (s *Space) eliminate(last int) (negative int) {
	n, count := len(s.knots), last+1
	clear(s.small.a[:])
	for i := 1; i < n-1; i++ {
		if i > 1 {
			up := s.side[i-1].transposed()
			l := up.by(&s.inverse[i-1])
			p := l.by(&s.side[i-1])
			for e := range 9 {
				s.block[i][e] -= p[e]
			}
			for c := range count {
				s.columns[c][i] = s.columns[c][i].plus(-1, l.times(s.columns[c][i-1]))
			}
		}
		var less int
		s.inverse[i], less = s.block[i].inverse()
		negative += less
		for c := range count {
			x, row := s.inverse[i].times(s.columns[c][i]), &s.small.a[c]
			for e := c; e < count; e++ {
				row[e] += x.on(&s.columns[e][i])
			}
		}
	}
	for c := range count {
		for e := range c {
			s.small.a[c][e] = s.small.a[e][c]
		}
	}
	return negative
}

// forces solves for what foot, ridge and ties do.
func (s *Space) forces(aside float64) (step Step) {
	last := ofTies + 3*len(s.ties)
	flex := s.small.a // AᵀK⁻¹A
	m := &s.small
	off := s.place(s.full)
	miss := vec{s.dx - off[0], s.dy - off[1], -off[2]}
	for r := range last {
		m.b[r] = [2]float64{flex[r][last]}
		switch {
		case r < ofRidge:
			m.b[r][0] += miss[r]
		case r == ofRidge:
			m.b[r][0] += aside - s.place(s.crown)[2]
		}
		for c := range ofTies {
			m.a[r][c] = flex[r][c]
		}
		for j := range s.ties {
			k := s.stiffness(j)
			for c := range 3 {
				sum := 0.0
				for e := range 3 {
					sum -= flex[r][ofTies+3*j+e] * k[3*e+c]
				}
				m.a[r][ofTies+3*j+c] = sum
				m.b[r][0] -= flex[r][ofTies+3*j+c] * s.pulls[j].off * s.pulls[j].toward[c]
			}
		}
		if r >= ofTies {
			m.a[r][r]--
		}
	}
	m.b[ofRidge][1] = 1
	if !m.solve(last) {
		return step
	}
	for c := range last {
		step.free[c], step.more[c] = m.b[c][0], m.b[c][1]
	}
	for j := range s.ties { // from moves to forces
		k := s.stiffness(j)
		o := ofTies + 3*j
		f := k.times(vec{step.free[o], step.free[o+1], step.free[o+2]})
		g := k.times(vec{step.more[o], step.more[o+1], step.more[o+2]})
		p := &s.pulls[j]
		for e := range 3 {
			step.free[o+e], step.more[o+e] = p.off*p.toward[e]-f[e], -g[e]
		}
	}
	step.Ridge, step.Slope = s.ridge+step.free[ofRidge], step.more[ofRidge]
	step.ok = finite(step.Ridge) && finite(step.Slope)
	return step
}

// Move takes a Step with the crown going so much farther aside, m, and returns the greatest turn of a knot, rad. A step is cut short where it turns a knot by more
// than mostTurn.
func (s *Space) Move(step Step, aside float64) float64 {
	last := ofTies + 3*len(s.ties)
	var u [mostColumns]float64
	for c := range last {
		u[c] = step.free[c] + aside*step.more[c]
	}
	n := len(s.knots)
	turns := s.columns[last] // becomes the turns
	most := 0.0
	for i := n - 2; i > 0; i-- {
		x := turns[i].times(-1)
		for c := range last {
			x.add(u[c], &s.columns[c][i])
		}
		if i < n-2 {
			x = x.plus(-1, s.side[i].times(turns[i+1]))
		}
		turns[i] = s.inverse[i].times(x)
		most = max(most, turns[i].length())
	}
	if !finite(most) {
		return math.Inf(1)
	}
	share := 1.0
	if most > mostTurn {
		share = mostTurn / most
	}
	for i := 1; i < n-1; i++ {
		q := about(turns[i].times(share)).after(s.knots[i])
		norm := 1 / math.Sqrt(q.s*q.s+q.v.dot(q.v))
		s.knots[i] = turn{q.s * norm, q.v.times(norm)}
	}
	for c := range 3 {
		s.foot[c] += share * u[c]
	}
	s.ridge += share * u[ofRidge]
	for j := range s.ties {
		p := &s.pulls[j]
		p.force += share * p.toward.dot(vec{u[ofTies+3*j], u[ofTies+3*j+1], u[ofTies+3*j+2]})
		p.force = max(p.force, -s.ties[j].Pushes)
	}
	s.turnAxes()
	return most
}

// dense is a small system with two right sides.
type dense struct {
	a [mostColumns + 1][mostColumns + 1]float64
	b [mostColumns][2]float64
}

// solve overwrites b by the solutions of the first n equations, and reports whether there is one.
func (d *dense) solve(n int) bool {
	for i := range n {
		p := i
		for r := i + 1; r < n; r++ {
			if math.Abs(d.a[r][i]) > math.Abs(d.a[p][i]) {
				p = r
			}
		}
		d.a[i], d.a[p], d.b[i], d.b[p] = d.a[p], d.a[i], d.b[p], d.b[i]
		if d.a[i][i] == 0 {
			return false
		}
		for r := i + 1; r < n; r++ {
			f := d.a[r][i] / d.a[i][i]
			if f == 0 {
				continue
			}
			for c := i; c < n; c++ {
				d.a[r][c] -= f * d.a[i][c]
			}
			d.b[r][0] -= f * d.b[i][0]
			d.b[r][1] -= f * d.b[i][1]
		}
	}
	for i := n - 1; i >= 0; i-- {
		for e := range 2 {
			for c := i + 1; c < n; c++ {
				d.b[i][e] -= d.a[i][c] * d.b[c][e]
			}
			d.b[i][e] /= d.a[i][i]
		}
	}
	return true
}
