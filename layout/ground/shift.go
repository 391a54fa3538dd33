package ground

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// Shift is a move of the whole tunnel, as the walker sees it from the entrance looking in.
type Shift struct {
	Right, Ahead measure.Length // negative: left, back
}

// patience bounds the search for a shift, counted in edges looked at: a fraction of a second.
const patience = 10_000_000

// mover looks where a tunnel may be moved to.
type mover struct {
	tunnel
	stakes []Stake
	list   []hazard
	before []finding.Finding // what the tunnel stands in and under already
	purse  int               // what is left of patience
	last   int               // the stake that was in the way last is the likeliest to be so again
}

// shift returns the smallest move, on a grid of 3 in (50 mm) within 6 ft (2 m), after which all is clear; nil where there is none. It gives
// up, and answers that it does not know, on a site too crowded to look through.
func (m *mover) shift() (shift *Shift, known bool) {
	m.purse = patience
	for _, try := range shifts(practice.OnGround(m.spec.Units)) {
		clear := m.clears(m.vector(try))
		if m.purse < 0 {
			return nil, false
		}
		if clear {
			return &try, true
		}
	}
	return nil, true
}

// clears reports whether after a move no hazard bothers a stake and the tunnel stands in nothing and under nothing that it did not stand in or under before.
func (m *mover) clears(by spec.Point) bool {
	for i := range m.stakes {
		k := (m.last + i) % len(m.stakes)
		if !free(add(m.stakes[k].At(), by), m.list, &m.purse) {
			m.last = k
			return false
		}
	}
	if m.purse < 0 {
		return false
	}
	m.purse -= len(m.stations) * m.edges()
	return !slices.ContainsFunc(surroundings(m.moved(by)), func(f finding.Finding) bool {
		return !slices.ContainsFunc(m.before, func(b finding.Finding) bool { return b.Code == f.Code && b.Key == f.Key && b.Level <= f.Level })
	})
}

// free reports whether no hazard bothers a stake at p, and takes what that cost off the purse.
func free(p spec.Point, list []hazard, purse *int) bool {
	for _, h := range list {
		*purse -= 1
		if h.boxed(p) {
			*purse -= h.cost
		}
		if _, yes := h.bothers(p); yes {
			return false
		}
	}
	return true
}

// shifts returns the moves to try, the shortest first, of equal ones the one straight to a side first.
func shifts(lim practice.Ground) []Shift {
	n := int(lim.Shift / lim.ShiftStep)
	type move struct{ right, ahead int }
	var moves []move
	for right := -n; right <= n; right++ {
		for ahead := -n; ahead <= n; ahead++ {
			if square := right*right + ahead*ahead; square > 0 && square <= n*n {
				moves = append(moves, move{right, ahead})
			}
		}
	}
	size := func(m move) int { return m.right*m.right + m.ahead*m.ahead }
	slices.SortStableFunc(moves, func(a, b move) int {
		return cmp.Or(cmp.Compare(size(a), size(b)), cmp.Compare(a.ahead*a.ahead, b.ahead*b.ahead), -cmp.Compare(a.right, b.right), -cmp.Compare(a.ahead, b.ahead))
	})
	list := make([]Shift, len(moves))
	for i, m := range moves {
		list[i] = Shift{measure.Length(m.right) * lim.ShiftStep, measure.Length(m.ahead) * lim.ShiftStep}
	}
	return list
}

// vector returns the shift on the site plan.
func (t tunnel) vector(s Shift) spec.Point {
	heading := t.stations[0].Heading
	return along(along(spec.Point{}, rightOf(heading), s.Right), ahead(heading), s.Ahead)
}

// startAt is where the spec starts a tunnel that is moved, in figures as round as still clear everything. Tapes to the old start go; a walk that heads for a point
// goes on in the direction it had.
func (m *mover) startAt(s Shift) []finding.Change {
	site, u := m.spec.Site, m.spec.Units
	at := add(site.Start, m.vector(s))
	m.purse = patience
	round := func(p spec.Point) bool { return m.clears(spec.Point{X: p.X - site.Start.X, Y: p.Y - site.Start.Y}) }
	for _, grid := range []measure.Length{practice.Round(u), practice.Reading(u)} {
		corners := cornersAbout(at, grid)
		if k := slices.IndexFunc(corners, round); k >= 0 {
			at = corners[k]
			break
		}
	}
	list := []finding.Change{{Key: "site.start.at", Value: fmt.Sprintf("[%s, %s]", u.Written(at.X), u.Written(at.Y))}}
	for _, key := range []string{"site.start.from", "site.start.side"} {
		if m.spec.Given(key) {
			list = append(list, finding.Change{Key: key})
		}
	}
	if site.Toward != nil {
		list = append(list, finding.Change{Key: "site.start.heading", Value: fmt.Sprintf("%.4f deg", float64(site.Heading/measure.Degree))}, finding.Change{Key: "site.start.toward"})
	}
	return list
}

// cornersAbout returns the points of a grid about a point, the nearest first.
func cornersAbout(p spec.Point, grid measure.Length) (list []spec.Point) {
	x, y := measure.Length(math.Floor(float64(p.X/grid)))*grid, measure.Length(math.Floor(float64(p.Y/grid)))*grid
	list = []spec.Point{{X: x, Y: y}, {X: x + grid, Y: y}, {X: x, Y: y + grid}, {X: x + grid, Y: y + grid}}
	slices.SortStableFunc(list, func(a, b spec.Point) int { return cmp.Compare(Distance(a, p), Distance(b, p)) })
	return list
}

// moved returns the tunnel with its stations moved; the route stays behind, so only what looks at stations may use it.
func (t tunnel) moved(by spec.Point) tunnel {
	t.stations = slices.Clone(t.stations)
	for i := range t.stations {
		t.stations[i].At = add(t.stations[i].At, by)
	}
	return t
}

// says puts the shift into words: 1′-3″ to the right and 6″ ahead.
func (s Shift) says(u measure.System) string {
	var words []string
	if s.Right != 0 {
		words = append(words, fmt.Sprintf("%s to the %s", u.Tape(measure.Abs(s.Right)), map[bool]string{true: "right", false: "left"}[s.Right > 0]))
	}
	if s.Ahead != 0 {
		words = append(words, fmt.Sprintf("%s %s", u.Tape(measure.Abs(s.Ahead)), map[bool]string{true: "ahead", false: "back"}[s.Ahead > 0]))
	}
	return say.And(words)
}
