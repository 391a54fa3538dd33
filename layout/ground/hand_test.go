package ground

import (
	"fmt"
	"strings"
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Two tapes leave no error: the step takes each back to its length. By hand: the one runs along x and is 1 too long; the other runs 0.6 along x and
// 0.8 along y and is 2 too long, so 0.6·1 + 0.8·y = 2.
func TestStepOfTwoTapes(t *testing.T) {
	step, ok := improve([]circle{{centre: spec.Point{X: -100}, radius: 99}, {centre: spec.Point{X: -60, Y: -80}, radius: 98}}, spec.Point{})
	if !ok {
		t.Fatal("two tapes that cross leave a step undetermined")
	}
	near(t, "x", step.X, 1, 1e-9)
	near(t, "y", step.Y, 1.75, 1e-9)
	if _, ok := improve([]circle{{centre: spec.Point{X: -100}, radius: 99}, {centre: spec.Point{X: 50}, radius: 49}}, spec.Point{}); ok {
		t.Error("two tapes in one line say nothing across it")
	}
}

// A marking that reads every printed figure without error puts each dot at its place, but for what the figures are rounded by.
func TestMarkingWithoutErrorIsThePlan(t *testing.T) {
	for _, marks := range [][]spec.Mark{nil, {mark("gate", 0, 0), mark("post", 34*ft, -2*ft)}} {
		for _, route := range [][]spec.Leg{nil, {{Straight: 10 * ft}, {Turn: 40, Radius: 30 * ft}}} {
			s := row(9)
			s.Site.Marks, s.Site.Route, s.Site.Heading = marks, route, 30
			l := lay(s)
			m := newMarker(l, s.Units)
			dots := l.Marking(s.Units)
			if len(dots) < len(l.Stakes) {
				t.Fatalf("%d dots for %d stakes", len(dots), len(l.Stakes))
			}
			at := carry(l, s.Units, dots).at
			for _, d := range dots {
				near(t, fmt.Sprintf("%d marks, %d legs: %v is off", len(marks), len(route), d.Spot), Distance(at[d.Spot], m.at(d.Spot)), 0, in)
			}
		}
	}
}

// The same holds where the rows' ends stand farther in than what is between, so that a later tape's zero stands beside the line to the cross.
func TestRowsWithNarrowEndsAreMarkedWhereTheyStand(t *testing.T) {
	s := row(50)
	narrow := s.Arch
	narrow.Span = 3 * ft
	s.Except = []spec.Except{{Arches: []int{1, 50}, Arch: narrow}}
	s.Guys.Arches = nil
	s.Site.Marks = []spec.Mark{mark("gate", 0, 0), mark("post", 40*ft, 0), mark("lamp", 5*ft, 70*ft)}
	l := lay(s)
	m, dots, beside := newMarker(l, s.Units), l.Marking(s.Units), 0
	at := carry(l, s.Units, dots).at
	for _, d := range dots {
		near(t, fmt.Sprintf("%v is off", d.Spot), Distance(at[d.Spot], m.at(d.Spot)), 0, 2*in)
		if d.How == OnString && d.To.Kind == AtFound && d.Zero != d.From {
			beside++
		}
	}
	if len(l.TapeLengths(s.Units)) < 2 || beside == 0 {
		t.Errorf("%d tape lengths, %d dots from a zero of their own", len(l.TapeLengths(s.Units)), beside)
	}
}

// A carried chord sets as many stakes as lie on before it reaches past twice its own length or the tape's, or one lies too far off it to square by
// eye.
func TestCarriedChordGoesAsFarAsItMay(t *testing.T) {
	s := row(60)
	s.Guys.Arches = nil
	s.Site.Route = []spec.Leg{{Straight: 126 * in}, {Turn: 1, Radius: 300 * ft}}
	s.Site.Marks = []spec.Mark{mark("gate", -20*ft, -15*ft), mark("post", 60*ft, -15*ft)}
	l, lim := lay(s), practice.OnGround(s.Units)
	long := 0
	for _, c := range l.Chords {
		last := c.Arches[len(c.Arches)-1]
		if c.Zero != c.To || last == 60 {
			continue
		}
		from, to := stakeOf(t, l, c.From.String()), stakeOf(t, l, c.To.String())
		long = max(long, len(c.Arches))
		for arch := c.Arches[0]; arch <= last+1; arch++ {
			base, far := Between(from, to), Between(from, l.Stakes[2*arch-2])
			rest := Between(to, l.Stakes[2*arch-2])
			ahead := (far*far - rest*rest - base*base) / (2 * base) // by the law of cosines
			off := rest*rest - ahead*ahead
			if fits := ahead <= min(lim.Reach, 2*base) && off <= lim.Offset*lim.Offset; fits != (arch <= last) {
				t.Errorf("the chord %s–%s of %v sets up to arch %d; arch %d lies %v on and %v² off", c.From, c.To, base, last, arch, ahead, off)
			}
		}
	}
	if long < 2 {
		t.Error("no chord sets two")
	}
}

// Of a long straight walk with marks at both ends no tape from a mark is pulled to the stakes between, so none of them is beyond one; without those at the far end it is.
func TestNoTapeToWhatStandsAlongTheRow(t *testing.T) {
	s := row(26)
	ends := []spec.Mark{mark("chapel", -10*ft, -5*ft), mark("sign", 24*ft, -2*ft), mark("stile", -8*ft, 104*ft), mark("oak", 22*ft, 108*ft)}
	for n, want := range map[int]bool{4: false, 2: true} {
		s.Site.Marks = ends[:n]
		l := lay(s)
		longest := measure.Length(0)
		for _, d := range l.Marking(s.Units) {
			if d.From.Kind == AtMark {
				longest = max(longest, d.A, d.B)
			}
		}
		if _, got := codes(l.Findings)["tie-out-of-reach"]; got != want || longest > 100*ft {
			t.Errorf("%d marks: said %v, want %v; tapes up to %v", n, got, want, longest)
		}
	}
}

// One tape of two beyond reach is one too many: the stakes it goes to are named, and the longest there is told.
func TestOneTapeOutOfReach(t *testing.T) {
	s := row(3)
	far := spec.Point{X: 160 * ft, Y: 6 * ft}
	s.Site.Marks = []spec.Mark{mark("gate", 20*ft, -10*ft), mark("tower", far.X, far.Y)}
	l := lay(s)
	longest := measure.Length(0)
	for _, k := range l.Stakes {
		if !k.Guy && k.Arch != 2 { // along a straight row only its corners are taped from marks
			longest = max(longest, Distance(k.At(), far))
		}
	}
	f := codes(l.Findings)["tie-out-of-reach"]
	if !strings.Contains(f.Text, "run up to "+measure.Imperial.Tape(longest)+",") || !strings.Contains(f.Text, "L1") {
		t.Errorf("tapes up to %s: %q", measure.Imperial.Tape(longest), f.Text)
	}
}
