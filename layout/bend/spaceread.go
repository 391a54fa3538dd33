package bend

// Aside is what a Space has come to: forces in N, moments in N·m, places in m.
type Aside struct {
	Crown   [3]float64    // where it is
	Feet    [2][3]float64 // force of the ground on the first and the far foot; y up
	Moments [2][3]float64 // and its moment there; y twists the foot
	Pulls   []float64     // of the ties, along them; less than 0 pushes
	Bend    float64       // 1/m, greatest of the moment over the stiffness: the bend that stresses the pipe
	Ridge   float64       // of the ridge on the crown
}

// Read returns the present state in a wind, which Step has just looked at.
func (s *Space) Read(wind float64) Aside {
	s.pull()
	a := Aside{Crown: s.place(s.crown), Ridge: s.ridge}
	whole := vec{0, -s.weight, wind * s.push}
	whole = whole.plus(1, s.foot).plus(s.ridge, vec{0, 0, 1})
	for _, p := range s.pulls {
		whole = whole.plus(p.force, p.toward)
		a.Pulls = append(a.Pulls, p.force)
	}
	a.Feet = [2][3]float64{whole.times(-1), s.foot}
	s.assemble(wind)
	r := s.columns[ofTies+3*len(s.ties)]
	a.Moments = [2][3]float64{r[0], r[len(r)-1]}
	s.strained(&a, wind)
	return a
}

// strained finds the greatest bend beyond the rod's own. A link knows its moment at its middle; to its ends it grows by the force n that the rod carries there,
// M′ = −t × n, all that hangs beyond and holds the far foot.
func (s *Space) strained(a *Aside, wind float64) {
	for i := range s.links {
		l := &s.links[i]
		middle := l.s + l.length/2
		n := s.foot.plus(1, vec{0, -l.dead, wind * l.wind})
		if s.held > middle {
			n[2] += s.ridge
		}
		for j, t := range s.ties {
			if t.At > middle {
				n = n.plus(s.pulls[j].force, s.pulls[j].toward)
			}
		}
		m := s.moment(i)
		t := s.tangent(i).plus(1, s.tangent(i+1))
		t = t.times(1 / t.length())
		more := t.cross(n).times(l.length / 2)
		for _, way := range [2]float64{-1, 1} {
			end := m.plus(-way, more)
			across := end.plus(-end.dot(t), t)
			a.Bend = max(a.Bend, across.length()/(l.stiff[2]*l.length))
		}
	}
}

// CrownStiffness returns by how much a push square to the plane at the crown grows with the crown's way aside, N/m, from the rest, ties taut, and
// whether the rest is stable with the crown held there. It is below 0 where the rod by itself would lean over.
func (s *Space) CrownStiffness() (stiffness float64, held bool) {
	s.pull()
	s.assemble(0)
	last := ofTies + 3*len(s.ties)
	negative := s.eliminate(last)
	// The bordered form: three conditions at the far foot, each tie's own force with its compliance, and the crown.
	n := ofRidge + len(s.ties)
	rows := make([][mostColumns]float64, n+1) // each of them as a mix of columns
	var m dense
	for r := range ofRidge {
		rows[r][r] = 1
	}
	for j := range s.ties {
		for e, d := range s.pulls[j].toward {
			rows[ofRidge+j][ofTies+3*j+e] = d
		}
	}
	rows[n][ofRidge] = 1
	for r := range rows {
		for c := range rows {
			sum := 0.0
			for i := range last {
				for j := range last {
					sum += rows[r][i] * s.small.a[i][j] * rows[c][j]
				}
			}
			m.a[r][c] = -sum
		}
	}
	for j, t := range s.ties {
		m.a[ofRidge+j][ofRidge+j] -= 1 / t.Stiffness
	}
	for i := range n { // without pivoting, for the signs
		if m.a[i][i] < 0 {
			negative++
		}
		for r := i + 1; r <= n; r++ {
			f := m.a[r][i] / m.a[i][i]
			for c := i; c <= n; c++ {
				m.a[r][c] -= f * m.a[i][c]
			}
		}
	}
	out := -m.a[n][n] // the crown's way for a push of 1
	if out > 0 {
		negative++
	}
	return 1 / out, negative == n+1
}

// Place returns where a place of the rod is, m.
func (s *Space) Place(at float64) [3]float64 {
	s.bow()
	return s.place(s.lever(at))
}
