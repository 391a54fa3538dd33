package ground

import (
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// CheckKind is what a check measures.
type CheckKind int

// The kinds, in the order they are done.
const (
	ThirdTape  CheckKind = iota // from a mark to a dot, or a cross, that two other tapes found
	FromMark                    // from a mark to a dot that was found without it
	FoundRow                    // along the row, from its zero to where tapes met for its end
	FoundWidth                  // from a left dot to where tapes met for the right one
	Row                         // along a row, first dot of a tape's length to the last
	Width                       // across an arch
	Side                        // along one side of a bay
	BayDiagonal
	WholeDiagonal // of a stretch that one tape reaches
	GuyToLeg
	checkKinds // how many there are
)

// Mend is what is moved when a check is off.
type Mend int

// The mends. Each concerns the check's To.
const (
	FindAgain  Mend = iota // find it again by its tapes
	MoveAcross             // move it on the line across its arch
	ReadAgain              // read the row's tape there again
	SlideRow               // slide the right row along its string: see Layout.Slide
)

// Check is a distance between two spots that were not set from each other by it alone. Distance is exact; printed and read to the step of the ground.
type Check struct {
	Kind     CheckKind
	From, To Spot
	Distance measure.Length
	Limit    measure.Length // a reading further off than this is no reading error
	Mend     Mend
	Worth    measure.Length // of SlideRow: how far the row slides for an inch (10 mm) by which the two diagonals differ
}

// holds is the share of honest markings that pass every check.
const holds = 0.95

// Checks returns the checks of the dots that Marking paints, in their order, each with its limit.
//
// A limit is the error carried on to that distance: what the printed figures' rounding puts there, and the spread of all readings that went into both of its
// dots and into the check itself. The spread is linear in each reading; its standard deviation is taken times the normal score that leaves one marking in
// twenty over all checks together (Bonferroni), less for the thin tails of few readings, never more than the readings add up to at worst, and up to the next step of the ground. Checks of one kind
// share the widest limit, so that a crew has one figure to remember.
func (l Layout) Checks(units measure.System) []Check {
	m := newMarker(l, units)
	m.dots = l.Marking(units)
	list := m.checks()
	c := carry(l, units, m.dots)
	var widest [checkKinds]measure.Length
	score := math.Sqrt2 * math.Erfinv(1-(1-holds)/float64(len(list)))
	for _, k := range list {
		widest[k.Kind] = max(widest[k.Kind], c.limit(k, score))
	}
	for i := range list {
		list[i].Limit = units.TapedUp(widest[list[i].Kind])
	}
	return list
}

func (m *marker) checks() (list []Check) {
	add := func(kind CheckKind, from, to Spot, mend Mend) {
		list = append(list, Check{Kind: kind, From: from, To: to, Distance: Distance(m.at(from), m.at(to)), Mend: mend})
	}
	m.tapeChecks(add)
	m.foundChecks(add)
	for _, p := range m.TapeLengths(m.units) {
		add(Row, m.stake(p.First, spec.Left), m.stake(p.Last, spec.Left), FindAgain)
		add(Row, m.stake(p.First, spec.Right), m.stake(p.Last, spec.Right), FindAgain)
	}
	across := MoveAcross
	if !m.Straight {
		across = FindAgain
	}
	for i := range m.Stations {
		add(Width, m.stake(i+1, spec.Left), m.stake(i+1, spec.Right), across)
	}
	m.diagonalChecks(add)
	for i, s := range m.Stakes {
		if s.Guy {
			add(GuyToLeg, m.stake(s.Arch, s.Side), Spot{AtStake, i}, FindAgain)
		}
	}
	m.slides(list)
	return list
}

// stretches are what one tape reaches, of a straight or a bend.
func (m *marker) stretches() []TapeLength {
	if m.Straight {
		return m.TapeLengths(m.units)
	}
	return m.checkStretches(m.units)
}

// tapeChecks are tapes from marks that found nothing: the third to what two found, and two to a corner that was squared off.
func (m *marker) tapeChecks(add func(CheckKind, Spot, Spot, Mend)) {
	for _, d := range m.dots {
		t, ok := m.tie(m.Stakes[d.Spot.Index].StakeID)
		if d.Spot.Kind > AtFound || !ok {
			continue
		}
		switch {
		case d.How == TwoTapes && d.From.Kind == AtMark:
			if t.MarkC != "" {
				add(ThirdTape, m.mark(t.MarkC), d.Spot, FindAgain)
			}
		case d.How == TwoTapes && m.Straight && m.corner(m.Stakes[d.Spot.Index]):
			add(FromMark, m.mark(t.MarkA), d.Spot, FindAgain)
			add(FromMark, m.mark(t.MarkB), d.Spot, FindAgain)
		}
	}
}

// corner reports whether a leg's stake stands at the end of a stretch that one tape reaches.
func (m *marker) corner(s Stake) bool {
	return !s.Guy && slices.ContainsFunc(m.stretches(), func(p TapeLength) bool { return s.Arch == p.First || s.Arch == p.Last })
}

// fromMarks reports whether a stake's tapes from marks are pulled when the ground is marked: along a straight row only those to where it is fixed, or would be, and checked.
func (m *marker) fromMarks(id StakeID) bool {
	if !m.Straight || len(m.Stations) < 2 {
		return true
	}
	first, last, _ := m.Anchors(m.units)
	s, _ := m.Stake(id)
	return m.corner(s) || !s.Guy && (s.Arch == first || s.Arch == last)
}

// foundChecks measure how far a dot is from where tapes met for it.
func (m *marker) foundChecks(add func(CheckKind, Spot, Spot, Mend)) {
	for _, d := range m.dots {
		if d.Spot.Kind != AtFound || d.How != TwoTapes {
			continue
		}
		if s := m.Stakes[d.Spot.Index]; s.Side == spec.Right {
			add(FoundWidth, m.stake(s.Arch, spec.Left), d.Spot, FindAgain)
			continue
		}
		for _, p := range m.TapeLengths(m.units) {
			if from := m.stake(p.First, spec.Left); p.First < m.Stakes[d.Spot.Index].Arch && p.Last >= m.Stakes[d.Spot.Index].Arch {
				add(FoundRow, from, d.Spot, FindAgain)
			}
		}
	}
}

func (m *marker) diagonalChecks(add func(CheckKind, Spot, Spot, Mend)) {
	mend := FindAgain
	if m.Straight {
		mend = ReadAgain
	}
	n := len(m.Stations)
	for arch := 1; arch < n; arch++ {
		l, r, nl, nr := m.stake(arch, spec.Left), m.stake(arch, spec.Right), m.stake(arch+1, spec.Left), m.stake(arch+1, spec.Right)
		if !m.Straight {
			add(Side, l, nl, mend)
			add(Side, r, nr, mend)
		}
		if n > 2 || !m.Straight {
			add(BayDiagonal, l, nr, mend)
			add(BayDiagonal, r, nl, mend)
		}
	}
	for _, p := range m.stretches() {
		if m.Straight || p.Last > p.First+1 {
			add(WholeDiagonal, m.stake(p.First, spec.Left), m.stake(p.Last, spec.Right), FindAgain)
			add(WholeDiagonal, m.stake(p.First, spec.Right), m.stake(p.Last, spec.Left), FindAgain)
		}
	}
}

// slides has the right row slid where the two diagonals of a tunnel that one tape reaches differ.
func (m *marker) slides(list []Check) {
	share, ok := m.slide()
	if !ok || len(m.stretches()) != 1 {
		return
	}
	per := measure.By(m.units, measure.Inch, 10)
	for i := range list {
		if list[i].Kind == WholeDiagonal {
			list[i].Mend, list[i].Worth = SlideRow, measure.Length(share)*per
		}
	}
}

// Similar gathers checks of one kind that print the same distance, in their order.
func Similar(list []Check, units measure.System) (groups [][]Check) {
	for _, c := range list {
		k := slices.IndexFunc(groups, func(g []Check) bool {
			return g[0].Kind == c.Kind && units.Taped(g[0].Distance) == units.Taped(c.Distance)
		})
		if k < 0 {
			groups = append(groups, []Check{c})
			continue
		}
		groups[k] = append(groups[k], c)
	}
	return groups
}

// FromFeature returns how far a stake stands from a feature's edge; negative within it.
func FromFeature(s Stake, f spec.Feature) measure.Length { return toFeature(s.At(), f) }

// FromLine returns how far a stake stands from the middle of a buried line.
func FromLine(s Stake, line spec.Buried) measure.Length { return toPath(s.At(), line.Line) }
