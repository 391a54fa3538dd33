// Package ground lays the tunnel out on the site: the route's centreline, a frame at each arch, the stakes, and every
// figure a crew needs to put them there with tapes.
//
// All distances are level, as a tape held level gives them. The method is plane trigonometry: exact arcs, crossings of
// circles, least squares where there are more tapes than needed.
//
// Lay makes the Layout; its methods give what leaves and tasks ask of it: tapes, checks, the order of marking. Clear only asks whether guy stakes and pegs stand
// where they may; Locate finds the places of a spec that gives tapes to them instead. Lengths are mm, x and y on the spec's own axes; headings run clockwise from +y.
package ground

import (
	"encoding/json"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Station is a place on the route's centreline: its distance from arch 1, where it is, and which way the walk goes there.
type Station struct {
	Along   measure.Length
	At      spec.Point
	Heading measure.Angle // 0 along +y, clockwise positive
}

// Stake is a stake's ground point. L1 and R1 are arch 1's. G1L and G1R are the guy stakes before the entrance or beyond the
// exit; an arch between, and a lone one, is held both ways: G15La toward arch 1, G15Lb away from it. P1L and P1R are the pegs of its braces.
type Stake struct {
	StakeID
	X, Y    measure.Length
	Ground  measure.Length // height above the datum
	Along   measure.Length // route distance from arch 1
	Offset  measure.Length // square distance from the centreline, left negative
	Length  measure.Length
	Depth   measure.Length
	Running measure.Length // distance along the side's own baseline from its first stake; equals Along on a straight
	Base    bool           // it stands on a weighted base, or its guy or brace ends at a weight: nothing is driven
	Tied    measure.Length // height on the leg of the guy or brace that it holds

	heading measure.Angle // of the walk beside it
}

// Bar is the bar that the stake is cut from: its arch's, that of guys or of braces' pegs. One with a guy or a line tied to a weight has none: see Steel.
func (s Stake) Bar(of *spec.Spec) catalog.Bar {
	switch {
	case s.Bay > 0:
		return of.Braces.Peg.Bar
	case s.Guy:
		return of.Guys.Stake.Bar
	}
	return of.ArchOf(s.Arch).Stake.Bar
}

// Steel reports whether a bar stands there at all, driven or in a socket, and not the weight alone that a guy or a line is tied to: a brace of pipe, which never crosses another
// and pushes as well as pulls, is clamped to a bar on any ground.
func (s Stake) Steel() bool { return !s.Base || !s.Guy || s.Bay > 0 && s.Way == OneWay }

// MarshalJSON writes the stake as the file format has it: its name and its place.
func (s Stake) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Name   StakeID        `json:"name"`
		X      measure.Length `json:"x_mm"`
		Y      measure.Length `json:"y_mm"`
		Ground measure.Length `json:"ground_mm"`
		Along  measure.Length `json:"along_mm"`
		Offset measure.Length `json:"offset_mm"`
	}{s.StakeID, s.X, s.Y, s.Ground, s.Along, s.Offset})
}

// At returns the stake's place on the plan.
func (s Stake) At() spec.Point { return spec.Point{X: s.X, Y: s.Y} }

// Tie fixes a stake by tapes from marks. MarkC is empty where only two marks are within reach.
type Tie struct {
	Stake StakeID        `json:"stake"`
	MarkA string         `json:"mark_a"`
	A     measure.Length `json:"a_mm"`
	MarkB string         `json:"mark_b"`
	B     measure.Length `json:"b_mm"`
	MarkC string         `json:"mark_c,omitempty"`
	C     measure.Length `json:"c_mm,omitempty"`

	Crossing measure.Angle  `json:"-"` // at which tapes A and B cross, 0 to π/2
	Error    measure.Length `json:"-"` // how far off the stake is at worst when each tape is 1/2 in (12 mm) off, those to taped marks too
}

// Diagonal is a check distance between two stakes.
type Diagonal struct {
	From     StakeID        `json:"from"`
	To       StakeID        `json:"to"`
	Distance measure.Length `json:"mm"`
}

// Mark is a fixed mark with its place solved.
type Mark struct {
	Name       string
	At         spec.Point
	Misclosure measure.Length // worst tape's disagreement where more than two fix it
	Error      measure.Length // how far off it is at worst when each tape is 1/2 in (12 mm) off; zero where coordinates fix it

	drift drift
}

// Layout is the tunnel on the ground.
type Layout struct {
	Stations  []Station // one per arch
	Stakes    []Stake   // L1, R1, L2, R2 …, then the guy stakes
	Ties      []Tie
	Chords    []Chord    // of a bend beyond the reach of its marks
	Diagonals []Diagonal // of each bay, then of the whole
	Marks     []Mark
	Straight  bool           // one straight run: setting out by a baseline
	Baseline  measure.Length // distance of each side's baseline from the centreline: half the commonest span
	Findings  []finding.Finding

	// ShiftClear is the smallest move of the whole tunnel that clears every stake of hard ground, features and buried lines;
	// nil where none is needed or none was found. The findings say it too.
	ShiftClear *Shift
}

// Arches are what the ground asks of the solved arches, in order. Where a span or a crown's height is not a positive number, because no such arch stands, the spec's own figure takes its place, so
// that there is a plan to draw.
type Arches struct {
	Spans, Crowns []measure.Length
	Shapes        []Shape        // what each fills of the air; where one is missing its legs are taken to stand upright over the stakes
	Aside         measure.Length // how far outside their feet the guy stakes of arches between others stand
}

// Lay lays the tunnel out.
func Lay(s *spec.Spec, arches Arches) Layout {
	t := newTunnel(s, arches)
	l := Layout{
		Stations: t.stations,
		Stakes:   t.stakes(),
		Straight: t.route.straight(),
		Baseline: t.baseline,
	}
	l.Diagonals = diagonals(l.Stakes[:2*len(l.Stations)])
	var markFindings []finding.Finding
	l.Marks, markFindings = marks(s, map[string]spec.Point{spec.StakeL1: l.Stakes[0].At(), spec.StakeR1: l.Stakes[1].At()})
	l.Ties = ties(s, l.walk(), l.Stakes, l.Marks)
	l.Chords = l.chords(practice.OnGround(s.Units))
	site, shift := findings(t, l.Stakes)
	l.ShiftClear = shift
	l.Findings = slices.Concat(markFindings, tieFindings(s, l), site)
	return l
}

// Site returns a point of an arch's plane on the site plan, with its height above the datum. across counts from the
// centreline, right positive; up from the middle of the arch's ground line. 1 ≤ arch ≤ the number of stations.
func (l Layout) Site(arch int, across, up measure.Length) (x, y, z measure.Length) {
	s := l.Stations[arch-1]
	p := along(s.At, rightOf(s.Heading), across)
	left, right := l.Stakes[2*arch-2], l.Stakes[2*arch-1]
	return p.X, p.Y, (left.Ground+right.Ground)/2 + up
}

// Stake returns the stake of that name, and whether there is one.
func (l Layout) Stake(id StakeID) (Stake, bool) {
	for _, s := range l.Stakes {
		if s.StakeID == id {
			return s, true
		}
	}
	return Stake{}, false
}
