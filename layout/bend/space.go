package bend

import "math"

// Space is a rod that leaves its plane by any amount, its feet clamped: what a gust along the tunnel does to an arch with guys.
//
// Each node has a rotation. Between two nodes the rod turns by half-angle vectors c = 2·sin(ψ/2) in its own axes, twist and two bends, and stores
// ½·(GJ·c₁² + EI·(c₂² + (c₃ − c₀)²))/h; loads, feet, crown and ties pull at places, each the sum of the nodes' tangents times their levers. Rotations are moved by
// small rotation vectors and the energy is taken to second order about each state, so that Newton's method settles in a few steps
// (J. C. Simo and L. Vu-Quoc, Comput. Methods Appl. Mech. Engrg. 58, 1986, for the kinematics; quaternions in place of their matrices).
type Space struct {
	cut   *Solver // its pieces
	links []link
	knots []turn
	axes  []mat // of the knots

	dead, wind []float64   // N·m, lever times weight, and times push for a wind of 1
	full       []float64   // m, levers of the far foot
	crown      []float64   // and of the crown
	ties       []Tie       // with
	levers     [][]float64 // theirs
	slack      []float64   // m, their lengths without tension
	dx, dy     float64
	weight     float64 // N
	push       float64 // N, in a wind of 1
	held       float64 // m, where the crown is

	arcs []float64 // m, of the pieces: see bow

	foot  vec       // N, of the far foot on the rod
	ridge float64   // N, of the ridge on the crown
	pulls []tension // of the ties

	block, side []mat // of the second variation, inner nodes; side[i] couples knot i to i+1
	inverse     []mat
	columns     [][]vec // right sides by column and knot: tangents by levers; the residual last
	small       dense
}

// link is a piece that bends, between a knot and the next.
type link struct {
	s, length float64
	stiff     vec     // over the length: twist, out of the plane, in it
	turn      float64 // in the plane, without moment

	dead, wind float64 // N, weight, and push in a wind of 1, beyond its middle
}

// Tie holds a place of the rod to a fixed point: a guy, which only pulls, or a strut. At rest it bears nothing.
type Tie struct {
	At        float64 // m along the rod
	X, Y, Z   float64 // m, where it ends
	Stiffness float64 // N/m
	Pushes    float64 // N, with which it pushes at most, and bows under more; 0: it only pulls
}

// tension is what a tie does.
type tension struct {
	force, length float64 // N, pulling; m
	toward        vec     // unit, from the rod to the end
	off           float64 // N, by which the force is less than the tie's stiffness makes of its length
	gives         bool    // it is slack, or bows: its length does not change its force
}

// NewSpace returns the rod as it rests in a plane shape, cut into about so many parts; wind is the pushes square to the plane in a wind of 1, crown is the
// place that the ridge holds. It reports false where no rest is found.
func NewSpace(rod Rod, rest *Shape, parts int, wind []Load, crown float64, ties []Tie) (*Space, bool) {
	cut := NewSolver(parts)
	bare := rod
	bare.Loads = nil
	cut.rod = bare
	cut.mesh(bare)
	s := &Space{cut: cut, held: crown, ties: ties, dx: rod.DX, dy: rod.DY, foot: vec{-rest.Thrust, rest.FinishLift}, pulls: make([]tension, len(ties))}
	s.knots, s.dead, s.wind = make([]turn, cut.nodes), make([]float64, cut.nodes), make([]float64, cut.nodes)
	for i := range cut.pieces {
		p := &cut.pieces[i]
		if p.stiff == 0 {
			continue
		}
		for end := range 2 {
			angle := rest.At(p.s + float64(end)*p.length).Angle
			sin, cos := math.Sincos(angle / 2)
			s.knots[p.node+end] = turn{cos, vec{0, 0, sin}}
		}
		s.links = append(s.links, link{s: p.s, length: p.length, stiff: vec{p.torsion / p.length, p.stiff / p.length, p.stiff / p.length}, turn: 2 * math.Sin(p.turn/2)})
	}
	s.bow()
	for _, load := range rod.Loads {
		s.lay(s.dead, load, load.Weight)
		s.weight += load.Weight
	}
	at := 0.0
	for _, st := range rod.Stretches {
		s.lay(s.dead, Load{From: at, To: at + st.Length}, st.Weight)
		s.weight += st.Weight
		at += st.Length
	}
	for _, load := range wind {
		s.lay(s.wind, load, load.Push)
		s.push += load.Push
	}
	s.beyond(rod, wind)
	s.full, s.crown = s.lever(at), s.lever(crown)
	for _, t := range ties {
		s.levers = append(s.levers, s.lever(t.At))
	}
	n := len(s.knots)
	s.axes, s.block, s.side, s.inverse = make([]mat, n), make([]mat, n), make([]mat, n), make([]mat, n)
	s.columns = make([][]vec, 5+3*len(ties))
	for c := range s.columns {
		s.columns[c] = make([]vec, n)
	}
	s.turnAxes()
	return s, s.settle()
}

// bow finds how long the pieces that bend are for lay, as they are bent now.
func (s *Space) bow() {
	s.arcs = make([]float64, len(s.cut.pieces))
	for i := range s.cut.pieces {
		if p := &s.cut.pieces[i]; p.stiff != 0 {
			s.arcs[i] = p.length * s.chord(p)
		}
	}
}

// chord is how much shorter than twice its half a bending piece is for its two tangents' mean to carry it along its arc.
func (s *Space) chord(p *piece) float64 {
	half := s.knots[p.node].back().after(s.knots[p.node+1]).v.length() // sin(ψ/2)
	return 1 + half*half/3
}

// lever returns by how much each knot's tangent carries a place along the rod.
func (s *Space) lever(at float64) []float64 {
	levers := make([]float64, s.cut.nodes)
	s.lay(levers, Load{From: at, To: at}, 1)
	return levers
}

// lay adds a load's levers, times its size, to those of others.
func (s *Space) lay(sum []float64, load Load, size float64) {
	width := load.To - load.From
	spread := width > closest*s.cut.length
	beyond, hung := 0.0, false
	for i := len(s.cut.pieces) - 1; i >= 0; i-- {
		p := &s.cut.pieces[i]
		own, at := 0.0, 0.0 // what hangs on the piece, and where on it
		if from, to := max(load.From, p.s), min(load.To, p.s+p.length); spread && to > from {
			own, at = size*(to-from)/width, ((from+to)/2-p.s)/p.length
		} else if !spread && !hung && load.From > p.s {
			own, at, hung = size, min((load.From-p.s)/p.length, 1), true
		}
		if p.stiff == 0 {
			sum[p.node] += p.length * (beyond + own*at)
		} else {
			l := s.arcs[i]
			sum[p.node] += l * (beyond/2 + own*at*(1-at/2))
			sum[p.node+1] += l * (beyond/2 + own*at*at/2)
		}
		beyond += own
	}
}

// beyond fills in what hangs and pushes beyond the middle of each link.
func (s *Space) beyond(rod Rod, wind []Load) {
	for i := range s.links {
		l := &s.links[i]
		from := 0.0
		for _, st := range rod.Stretches {
			l.dead += st.Weight * (Load{From: from, To: from + st.Length}).past(l.s+l.length/2)
			from += st.Length
		}
		for _, load := range rod.Loads {
			l.dead += load.Weight * load.past(l.s+l.length/2)
		}
		for _, load := range wind {
			l.wind += load.Push * load.past(l.s+l.length/2)
		}
	}
}

// past returns the share of a load that lies beyond a place.
func (l Load) past(at float64) float64 {
	if l.To <= l.From {
		if l.From > at {
			return 1
		}
		return 0
	}
	return min(max((l.To-at)/(l.To-l.From), 0), 1)
}

func (s *Space) turnAxes() {
	for i, k := range s.knots {
		s.axes[i] = k.axes()
	}
}

// place returns where a place with these levers is.
func (s *Space) place(levers []float64) (at vec) {
	for i := range s.axes {
		at = at.plus(levers[i], s.tangent(i))
	}
	return at
}

func (s *Space) tangent(i int) vec { return vec{s.axes[i][0], s.axes[i][3], s.axes[i][6]} }

// settle finds the rest, without wind, ridge or ties.
func (s *Space) settle() bool {
	ties := s.ties
	s.ties = nil
	defer func() { s.ties = ties }()
	for range 12 {
		step := s.Step(0, 0)
		if !step.ok {
			return false
		}
		if s.Move(step, 0) < 1e-6 {
			for i, t := range ties {
				s.slack = append(s.slack, vec{t.X, t.Y, t.Z}.plus(-1, s.place(s.levers[i])).length())
			}
			return true
		}
	}
	return false
}

// Kept is a state of a Space to go back to.
type Kept struct {
	knots  []turn
	foot   vec
	ridge  float64
	forces []float64
}

// Keep puts the present state into k.
func (s *Space) Keep(k *Kept) {
	k.knots = append(k.knots[:0], s.knots...)
	k.foot, k.ridge = s.foot, s.ridge
	k.forces = k.forces[:0]
	for _, p := range s.pulls {
		k.forces = append(k.forces, p.force)
	}
}

// Back returns to a kept state.
func (s *Space) Back(k *Kept) {
	copy(s.knots, k.knots)
	s.foot, s.ridge = k.foot, k.ridge
	for i, f := range k.forces {
		s.pulls[i].force = f
	}
	s.turnAxes()
}
