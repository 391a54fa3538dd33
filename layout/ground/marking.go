package ground

import (
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// SpotKind is what a tape starts from or ends at while the dots are painted.
type SpotKind int

// The kinds. Index is the place in Layout.Marks for a mark, and in Layout.Stakes for the rest.
const (
	AtMark  SpotKind = iota
	AtStake          // the stake's dot
	AtFound          // a cross where the tapes for that stake met, before a row's tape or a gauge stick puts its dot
	AtAhead          // a cross on the left row that squares the first arch off: the long leg of 3-4-5
	AtAside          // a cross beside L1, square to the left row: the short leg
)

// Spot is a fixed mark, a dot, or a cross that helps to find a dot.
type Spot struct {
	Kind  SpotKind
	Index int
}

// How says how a dot is found.
type How int

// The ways.
const (
	Chosen   How = iota // where the organiser wants it
	ChosenAt            // A from From, toward where the organiser wants it
	TwoTapes            // A from From and B from To cross there, on Side of the line for someone at From who looks to To
	OnString            // A along a string through From and To, counted from Zero; B square off it, right positive, 0 under it
)

// Dot is one thing that is painted. A and B are exact; they are printed as the ground is read, see measure.System.Ground.
type Dot struct {
	Spot           Spot
	How            How
	From, To, Zero Spot
	A, B           measure.Length
	Side           spec.Side
}

// Marking returns everything that is painted, in its order.
//
// Of a straight tunnel marks give the left row alone, its place and its line: what is measured within the tunnel is then no worse for marks that are
// far off or cross badly. The row's own tape puts every left dot along it; R1 is squared off the left row, and every other right dot is where the tape
// from R1 meets a gauge stick as long as the arch is wide, laid from its left dot. Round a bend two tapes from marks find each stake, and the stick then puts the
// right one at its width, for the width shapes the arch.
func (l Layout) Marking(units measure.System) []Dot {
	m := newMarker(l, units)
	switch n := len(l.Stations); {
	case n == 0:
		return nil
	case l.Straight && n > 1:
		m.straight()
	default:
		m.byPairs()
	}
	m.guys()
	return m.dots
}

// marker gathers the dots.
type marker struct {
	Layout
	units measure.System
	reach measure.Length
	dots  []Dot

	anchored bool // there are anchors
}

// newMarker readies the marking of a layout.
func newMarker(l Layout, units measure.System) *marker {
	m := &marker{Layout: l, units: units, reach: practice.OnGround(units).Reach}
	_, _, m.anchored = l.Anchors(units)
	return m
}

// tie returns the tapes that a stake is found by.
func (m *marker) tie(stake StakeID) (Tie, bool) {
	return m.TieOf(stake, m.reach, m.anchored)
}

func (l Layout) stake(arch int, side spec.Side) Spot { return Spot{AtStake, 2*arch - 2 + int(side)} }

// At returns where a spot is planned to be. The crosses of a square are those that Marking paints in these units.
func (l Layout) At(s Spot, units measure.System) spec.Point {
	return (&marker{Layout: l, units: units}).at(s)
}

// at returns where a spot is planned to be.
func (m *marker) at(s Spot) spec.Point {
	switch s.Kind {
	case AtMark:
		return m.Marks[s.Index].At
	case AtStake, AtFound:
		return m.Stakes[s.Index].At()
	}
	a, unit345 := m.Stakes[0].At(), m.square()
	ahead := unit(sub(m.at(m.stake(m.first().Last, spec.Left)), a))
	if s.Kind == AtAhead {
		return along(a, ahead, 4*unit345)
	}
	return along(a, turnRight(ahead), 3*unit345)
}

func turnRight(u spec.Point) spec.Point { return spec.Point{X: u.Y, Y: -u.X} }

func (m *marker) add(d Dot) { m.dots = append(m.dots, d) }

// tapes finds a spot by two tapes.
func (m *marker) tapes(spot, from, to Spot) {
	p, a, b := m.at(spot), m.at(from), m.at(to)
	d := Dot{Spot: spot, How: TwoTapes, From: from, To: to, A: Distance(p, a), B: Distance(p, b)}
	if cross(sub(b, a), sub(p, a)) < 0 {
		d.Side = spec.Right
	}
	m.add(d)
}

// string finds a spot along a string. Where the tape's zero stands beside the string, the tape begins square to it.
func (m *marker) string(spot, from, to, zero Spot) {
	u, p, a := unit(sub(m.at(to), m.at(from))), m.at(spot), m.at(from)
	m.add(Dot{Spot: spot, How: OnString, From: from, To: to, Zero: zero, A: dot(u, sub(p, m.at(zero))), B: dot(turnRight(u), sub(p, a))})
}

// tied finds a spot at a stake's place by tapes from marks; false where no marks fix it.
func (m *marker) tied(spot Spot) bool {
	t, ok := m.tie(m.Stakes[spot.Index].StakeID)
	if ok {
		m.tapes(spot, m.mark(t.MarkA), m.mark(t.MarkB))
	}
	return ok
}

func (l Layout) mark(name string) Spot {
	return Spot{AtMark, slices.IndexFunc(l.Marks, func(m Mark) bool { return m.Name == name })}
}

// first is the first stretch of a straight tunnel that one tape reaches.
func (m *marker) first() TapeLength { return m.TapeLengths(m.units)[0] }

// straight paints the left row by marks or by choice, then the right row off it, stretch by stretch.
func (m *marker) straight() {
	first, last, anchored := m.Anchors(m.units)
	if !anchored {
		first, last = 1, len(m.Stations)
	}
	left := func(arch int) Spot { return m.stake(arch, spec.Left) }
	a, z := left(first), left(last)
	marked := len(m.Ties) > 0
	row := Distance(m.at(a), m.at(z))
	if !m.tied(a) {
		m.add(Dot{Spot: a, How: Chosen})
	}
	found := Spot{AtFound, z.Index}
	switch {
	case m.tied(found):
	case row <= m.reach:
		found = z
		m.add(Dot{Spot: z, How: ChosenAt, From: a, A: row})
	default:
		m.add(Dot{Spot: found, How: Chosen})
	}
	if first > 1 {
		m.string(left(1), a, found, a)
	}
	parts := m.TapeLengths(m.units)
	for _, p := range parts {
		if !m.painted(left(p.Last)) {
			m.string(left(p.Last), a, found, left(p.First))
		}
	}
	for _, p := range parts {
		for arch := p.First + 1; arch < p.Last; arch++ {
			if spot := left(arch); !m.painted(spot) {
				m.string(spot, left(p.First), left(p.Last), left(p.First))
			}
		}
	}
	m.firstRight(parts[0], marked)
	for _, p := range parts {
		for arch := p.First + 1; arch <= p.Last; arch++ {
			m.tapes(m.stake(arch, spec.Right), left(arch), m.stake(p.First, spec.Right))
		}
	}
}

func (m *marker) painted(s Spot) bool {
	return slices.ContainsFunc(m.dots, func(d Dot) bool { return d.Spot == s })
}

// firstRight paints R1: off the left row by its width and the long diagonal where marks have fixed that row's end, else by a square of 3-4-5.
func (m *marker) firstRight(p TapeLength, marked bool) {
	l1, r1, end := m.stake(p.First, spec.Left), m.stake(p.First, spec.Right), m.stake(p.Last, spec.Left)
	switch {
	case marked || !m.level(p):
		m.tapes(r1, l1, end)
	case m.square() == 0:
		m.add(Dot{Spot: r1, How: ChosenAt, From: l1, A: Distance(m.at(l1), m.at(r1))})
	default:
		ahead, aside := Spot{AtAhead, 0}, Spot{AtAside, 0}
		m.string(ahead, l1, end, l1)
		m.tapes(aside, l1, ahead)
		m.string(r1, l1, aside, l1)
	}
}

// level reports whether the string of the left row runs square to the first arch: not where its ends stand differently far out.
func (m *marker) level(p TapeLength) bool {
	a, b := m.Stakes[2*p.First-2], m.Stakes[2*p.Last-2]
	return m.units.Taped(a.Offset-b.Offset) == 0
}

// square is the unit of the 3-4-5 triangle that squares the first arch: 3 ft or 1 m where the row is as long as four, 0 where no triangle fits. Its short leg, across the
// tunnel, may reach past R1, for it is a cross on the ground and no stake.
func (m *marker) square() measure.Length {
	p := m.first()
	row := Distance(m.Stakes[2*p.First-2].At(), m.Stakes[2*p.Last-2].At())
	for _, k := range practice.Square(m.units) {
		if 4*k <= row {
			return k
		}
	}
	return 0
}

// byPairs paints a bend, or one arch: left and right stake of each arch together.
func (m *marker) byPairs() {
	chord := map[int]bool{}
	for _, c := range m.Chords {
		for _, arch := range c.Arches {
			chord[arch] = true
		}
	}
	for i := range m.Stations {
		if !chord[i+1] {
			m.pair(i + 1)
		}
	}
	for _, c := range m.Chords {
		m.chord(c)
	}
}

// pair paints the two stakes of an arch.
func (m *marker) pair(arch int) {
	l, r := m.stake(arch, spec.Left), m.stake(arch, spec.Right)
	width := Distance(m.at(l), m.at(r))
	if len(m.Ties) == 0 && arch > 1 {
		before, across := m.stake(arch-1, spec.Left), m.stake(arch-1, spec.Right)
		m.tapes(l, before, across)
		m.tapes(r, l, across)
		return
	}
	if !m.tied(l) {
		m.add(Dot{Spot: l, How: Chosen})
	}
	if found := (Spot{AtFound, r.Index}); m.tied(found) {
		m.string(r, l, found, l)
		return
	}
	m.add(Dot{Spot: r, How: ChosenAt, From: l, A: width})
}

// chord paints what no two marks reach round a bend: left stakes off a string, each right one from its left one and the left one before.
func (m *marker) chord(c Chord) {
	spot := func(id StakeID) Spot {
		return Spot{AtStake, slices.IndexFunc(m.Stakes, func(s Stake) bool { return s.StakeID == id })}
	}
	before := spot(c.Zero)
	for _, arch := range c.Arches {
		l := m.stake(arch, spec.Left)
		m.string(l, spot(c.From), spot(c.To), spot(c.Zero))
		m.tapes(m.stake(arch, spec.Right), l, before)
		before = l
	}
}

// guys paints the guy stakes: on the rows' strings, by marks, or from the two stakes of their arch.
func (m *marker) guys() {
	parts := m.TapeLengths(m.units)
	for i, s := range m.Stakes {
		spot := Spot{AtStake, i}
		switch {
		case !s.Guy:
		case m.Straight && len(parts) > 0:
			p := parts[0]
			for _, q := range parts {
				if q.First < s.Arch || q.First == s.Arch && s.Along >= m.Stations[s.Arch-1].Along { // what stands before a shared arch is on the tape that ends there
					p = q
				}
			}
			m.string(spot, m.stake(p.First, s.Side), m.stake(p.Last, s.Side), m.stake(p.First, s.Side))
		case m.tied(spot):
		default:
			m.tapes(spot, m.stake(s.Arch, spec.Left), m.stake(s.Arch, spec.Right))
		}
	}
}

// place returns where a dot comes to lie by its figures a and b, when what it is measured from lies at from, to and zero, and hint is where it is
// planned: it settles what the organiser chooses.
func (d Dot) place(from, to, zero, hint spec.Point, a, b measure.Length) spec.Point {
	switch d.How {
	case Chosen:
		return hint
	case ChosenAt:
		return along(from, unit(sub(hint, from)), a)
	case OnString:
		u := unit(sub(to, from))
		foot := along(from, u, dot(u, sub(zero, from)))
		return along(along(foot, u, a), turnRight(u), b)
	}
	base := Distance(from, to)
	x := (a*a - b*b + base*base) / (2 * base)
	y := measure.Length(math.Sqrt(max(0, float64(a*a-x*x))))
	u := unit(sub(to, from))
	if d.Side == spec.Left {
		y = -y
	}
	return along(along(from, u, x), turnRight(u), y)
}
