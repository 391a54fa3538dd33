package bend

import "math"

// The three Gauss points of a part and their shares of its length: exact for polynomials of degree 5.
var gauss = [3]struct{ at, share float64 }{
	{0.5 - 0.3872983346207417, 5.0 / 18}, {0.5, 8.0 / 18}, {0.5 + 0.3872983346207417, 5.0 / 18},
}

// bubbleStiff is ∫ (d/dξ 4ξ(1−ξ))² dξ, the bubble's bending energy twice.
const bubbleStiff = 16.0 / 3

const (
	mostSteps = 20   // of one Newton run
	mostTurn  = 0.4  // rad, by which one Newton step may change an angle
	mostShort = 10   // steps cut short by that, before the run is given up
	settled   = 1e-9 // rad; a quadratic step below this leaves nothing
)

// aim is the problem one Newton run solves: the rod's feet, and its weights times load.
type aim struct{ dx, dy, start, finish, load float64 }

// state is a shape: angles at the nodes, bubbles of the pieces, forces at the start.
type state struct {
	theta, bubble []float64
	thrust, lift  float64 // multipliers: H, and V at the far end of the rod, both as forces carried by the rod
}

func (s *state) copyFrom(o *state) {
	s.theta = append(s.theta[:0], o.theta...)
	s.bubble = append(s.bubble[:0], o.bubble...)
	s.thrust, s.lift = o.thrust, o.lift
}

// condensed is what is needed to find a piece's bubble again: its equation's residual, pivot and couplings.
type condensed struct {
	residual, pivot float64
	left, right     float64
	cond            [2]float64
}

// assemble sets up Newton's system about the present state. It returns the number of bubbles with a negative pivot.
func (s *Solver) assemble() (negative int) {
	n := s.nodes
	s.system.reset(n)
	s.r = resize(s.r, n)
	clear(s.r)
	s.inner = resize(s.inner, len(s.pieces))
	s.g = [2]float64{-s.aim.dx, -s.aim.dy}
	for i := range s.pieces {
		p := &s.pieces[i]
		if p.stiff == 0 {
			s.addRigid(p)
		} else if s.addBending(p, &s.inner[i], s.now.bubble[i]) {
			negative++
		}
	}
	if !s.rod.Start.Hinged {
		s.startMoment = -s.r[0]
		s.system.hold(0)
		s.r[0] = 0
	}
	if !s.rod.Finish.Hinged {
		s.system.hold(n - 1)
		s.r[n-1] = 0
	}
	return negative
}

// addRigid adds a rigid piece to Newton's system.
func (s *Solver) addRigid(p *piece) {
	a, l := s.system.a, p.node
	sin, cos := math.Sincos(s.now.theta[l] + p.offset)
	sin, cos = sin*p.length, cos*p.length
	v, h := s.aim.load*(p.beyond-p.weight/2)+s.now.lift, s.now.thrust-s.aim.load*(p.after-p.push/2)
	s.r[l] += v*cos - h*sin
	s.system.diagonal[l] -= h*cos + v*sin
	a[l][0] -= sin
	a[l][1] += cos
	s.g[0] += cos
	s.g[1] += sin
}

// addBending adds a bending piece with its bubble eliminated, notes in c how to find that again, and reports whether its pivot is negative.
func (s *Solver) addBending(p *piece, c *condensed, bubble float64) bool {
	l := p.node
	tl, tr := s.now.theta[l]+p.offset, s.now.theta[l+1]
	bh := p.stiff / p.length
	pull := bh * (tr - tl - p.turn)
	rl, rr := -pull, pull
	kll, klr, krr := bh, -bh, bh
	*c = condensed{residual: bubbleStiff * bh * bubble, pivot: bubbleStiff * bh}
	var al, ar [2]float64
	for _, q := range gauss {
		n1, n0, nb := q.at, 1-q.at, 4*q.at*(1-q.at)
		sin, cos := math.Sincos(tl*n0 + tr*n1 + bubble*nb)
		v, h := s.aim.load*(p.beyond-p.weight*q.at)+s.now.lift, s.now.thrust-s.aim.load*(p.after-p.push*q.at)
		dl := q.share * p.length
		cos, sin = cos*dl, sin*dl
		f1, f2 := v*cos-h*sin, -h*cos-v*sin
		rl += f1 * n0
		rr += f1 * n1
		c.residual += f1 * nb
		kll += f2 * n0 * n0
		klr += f2 * n0 * n1
		krr += f2 * n1 * n1
		c.left += f2 * n0 * nb
		c.right += f2 * n1 * nb
		c.pivot += f2 * nb * nb
		al[0] -= sin * n0
		al[1] += cos * n0
		ar[0] -= sin * n1
		ar[1] += cos * n1
		c.cond[0] -= sin * nb
		c.cond[1] += cos * nb
		s.g[0] += cos
		s.g[1] += sin
	}
	k, a, bb := s.system.diagonal, s.system.a, &s.system.s
	cl, cr := c.left/c.pivot, c.right/c.pivot
	k[l] += kll - cl*c.left
	k[l+1] += krr - cr*c.right
	s.system.side[l+1] += klr - cl*c.right
	s.r[l] += rl - cl*c.residual
	s.r[l+1] += rr - cr*c.residual
	for i, ci := range c.cond {
		a[l][i] += al[i] - cl*ci
		a[l+1][i] += ar[i] - cr*ci
		s.g[i] -= ci / c.pivot * c.residual
		for j, cj := range c.cond {
			bb[i][j] -= ci / c.pivot * cj
		}
	}
	return c.pivot < 0
}

// newton runs Newton's method to the present aim from the present state, and reports whether it settled.
func (s *Solver) newton() bool {
	if !s.rod.Start.Hinged {
		s.now.theta[0] = s.aim.start
	}
	if !s.rod.Finish.Hinged {
		s.now.theta[s.nodes-1] = s.aim.finish - s.turns[s.nodes-1]
	}
	if s.mirrored {
		s.evenOut()
	}
	for step, short := 0, 0; step < mostSteps && short < mostShort; step++ {
		s.assemble()
		s.system.factor()
		s.system.solve(s.r, &s.g)
		s.mirror()
		most := 0.0
		for _, d := range s.r {
			most = max(most, math.Abs(d)) // max keeps a NaN
		}
		if !(most < 1e6) || !finite(s.g[0]) || !finite(s.g[1]) {
			return false
		}
		share := 1.0
		if most > mostTurn {
			share = mostTurn / most
			short++
		}
		for i := range s.pieces {
			p := &s.pieces[i]
			if p.stiff == 0 {
				continue
			}
			c := &s.inner[i]
			d := (c.residual - c.left*s.r[p.node] - c.right*s.r[p.node+1] - c.cond[0]*s.g[0] - c.cond[1]*s.g[1]) / c.pivot
			s.now.bubble[i] -= share * d
		}
		for i, d := range s.r {
			s.now.theta[i] -= share * d
		}
		s.now.thrust -= share * s.g[0]
		s.now.lift -= share * s.g[1]
		if most < settled {
			return true
		}
	}
	return false
}

// evenOut makes the state even about the middle.
func (s *Solver) evenOut() {
	theta := s.now.theta
	for i, j := 0, s.nodes-1; i <= j; i, j = i+1, j-1 {
		mean := (theta[i] - theta[j] - s.turns[j]) / 2
		theta[i], theta[j] = mean, -mean-s.turns[j]
	}
	bubble := s.now.bubble
	for i, j := 0, len(bubble)-1; i <= j; i, j = i+1, j-1 {
		mean := (bubble[i] - bubble[j]) / 2
		bubble[i], bubble[j] = mean, -mean
	}
}

// mirror makes the step just solved for even about the middle where the rod is. A shape then stays on its own path past the
// load at which leaning ones branch off, where rounding would otherwise choose among them.
func (s *Solver) mirror() {
	if !s.mirrored {
		return
	}
	for i, j := 0, len(s.r)-1; i <= j; i, j = i+1, j-1 {
		d := (s.r[i] - s.r[j]) / 2
		s.r[i], s.r[j] = d, -d
	}
	s.g[1] = s.now.lift + s.weight*s.aim.load/2 // each foot bears half
}

// surplus returns how many directions there are in which the present state, an equilibrium, loses energy between the same
// feet: the bordered matrix has one negative eigenvalue for each of its two conditions, and one more for each of them.
func (s *Solver) surplus() int {
	negative := s.assemble()
	return negative + s.system.factor() - 2
}

// stable reports whether the present state is a minimum of energy among the shapes between the same feet.
func (s *Solver) stable() bool { return s.surplus() == 0 }
