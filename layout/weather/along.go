package weather

import (
	"math"

	"hoopwright/layout/bend"
)

// Along the tunnel. The ridge keeps all crowns at the same distance from each other, so they lean together, and it hands each arch the force that
// makes its own lean come to that: the forces' sum is none. The tunnel stands as long as the sum of all stiffnesses against that lean is positive and every arch
// stands with its crown kept in place. Guys pull down as well as along: the shoulders they are tied to sink, and the arch bears their pull with its weight.
//
// Feet are taken not to twist about their bars, which friction alone sees to, and ridge pieces not to bend. By a frame of three kinds of tunnel with a ridge, checked
// once, the two make up for each other: load factors with feet free and ridge pieces stiff in their sockets came to the same within 2 in 100. An arch without a ridge
// has friction only: with its feet free to twist it bore half.

// member is the arches of a row that are of one kind and held alike.
type member struct {
	kind   *Kind
	ties   []bend.Tie // against the wind's way, guys before braces
	guys   int        // how many are guys
	arches []int
	rough  bool // whether it reaches its aims is all that is asked
	space  *bend.Space
	plane  *bend.Solver
	step   bend.Step
	kept   bend.Kept
	still  float64 // m, where the crown is at rest
	curve  *curve
	aside  float64 // m, of the crowns; the first member's is the row's
	before float64 // m, and where it was kept
}

// row is the arches that lean together: those of one ridge, or one alone.
type row []*member

// parts is the number of parts that a member's arches are cut into.
func (m *member) parts() int {
	if m.rough {
		return roughParts
	}
	return alongParts
}

// enter brings the members to rest in a state, and reports whether there is one.
func (r row) enter(of int) bool {
	for _, m := range r {
		st := &m.kind.states[of]
		var ok bool
		m.space, ok = bend.NewSpace(st.rod, st.shape, m.parts(), m.kind.endWind(), m.kind.CrownTape.Metres(), m.ties)
		if !ok {
			return false
		}
		m.curve = &curve{kind: m.kind, arch: m.arches[0], way: Along}
	}
	return true
}

// settles brings the row to its state in a wind of pressure q, and reports whether it stands there.
func (r row) settles(q float64) bool {
	for range 25 {
		push, stiff := 0.0, 0.0
		for _, m := range r {
			m.step = m.space.Step(q, r[0].aside)
			if !m.step.Stands() {
				return false
			}
			n := float64(len(m.arches))
			push += n * m.step.Ridge
			stiff += n * m.step.Slope
		}
		if stiff <= 0 {
			return false
		}
		most, more := 0.0, -push/stiff
		for _, m := range r {
			most = max(most, m.space.Move(m.step, more))
		}
		r[0].aside += more
		if most < 1e-6 {
			return true
		}
		if math.IsInf(most, 0) {
			return false
		}
	}
	return false
}

// blow lets the wind rise along the tunnel until the row falls or no arch may bear more, and adds to each member's curve.
func (r row) blow(of int, seen *watch) []*curve {
	if !r.enter(of) {
		return nil
	}
	falls := seen.rising(func(q float64) (stands, done bool) {
		r.keep()
		if stands = r.settles(q); !stands {
			r.back()
			return false, false
		}
		return true, r.sample(q, seen)
	})
	var curves []*curve
	for _, m := range r {
		m.curve.falls = falls
		curves = append(curves, m.curve)
	}
	return curves
}

func (r row) keep() {
	for _, m := range r {
		m.space.Keep(&m.kept)
		m.before = m.aside
	}
}

func (r row) back() {
	for _, m := range r {
		m.space.Back(&m.kept)
		m.aside = m.before
	}
}

// sample notes what the present wind asks, and reports whether any arch has enough.
func (r row) sample(q float64, seen *watch) (done bool) {
	for _, m := range r {
		a := m.space.Read(q)
		d := demand{strength: m.kind.strength(a.Bend), lean: math.Abs(a.Crown[2]), ridge: a.Ridge}
		if len(m.curve.samples) == 0 {
			m.still = a.Crown[0]
		}
		d.sway = math.Hypot(a.Crown[0]-m.still, a.Crown[2])
		for f := range 2 {
			d.push[f] = math.Hypot(a.Feet[f][0], a.Feet[f][2])
			d.lift[f] = a.Feet[f][1]
			d.moment[f] = math.Hypot(a.Moments[f][0], a.Moments[f][2])
			d.tip[f] = math.Abs(a.Moments[f][2])
		}
		for i, p := range a.Pulls {
			if i < m.guys {
				d.pull = max(d.pull, p)
			} else {
				d.brace = max(d.brace, p)
			}
		}
		m.curve.samples = append(m.curve.samples, sample{q, d})
		done = done || seen.enough(q, m.kind, &d)
	}
	return done
}
