package ground

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The worked example of a simple curve in US Army Field Manual FM 5-233, Construction Surveying (1985, public domain), chapter 3, from memory: a road turns by
// I = 75° at a degree of curve D = 15° (100 ft of arc), point of intersection at station 18+00. The manual's figures: R = 381.97 ft, T = 293.1 ft, L = 500 ft, long
// chord 465.1 ft, external distance 99.5 ft, middle ordinate 78.9 ft; so the curve begins at 15+06.9 and ends at 20+06.9. Stakes stand at the full and half
// stations, by deflection angles of 0.3·c·D minutes from the tangent for an arc of c ft: 3°14′ to 15+50, then 3°45′ for every 50 ft, 37°30′ to the end.
func TestFieldManualCurve(t *testing.T) {
	const radius = 381.97 * ft
	turn := measure.Angle(75 * math.Pi / 180)
	site := spec.Site{Route: []spec.Leg{{Turn: turn, Radius: radius}, {Rest: true}}}
	r := newRoute(&site, 600*ft)
	foot := func(what string, got measure.Length, want float64) {
		t.Helper()
		near(t, what+" (ft)", float64(got/ft), want, .06)
	}
	begin, end := r.at(0), r.at(500*ft)
	foot("long chord", Distance(begin.At, end.At), 465.1)
	near(t, "turned", float64(end.Heading), float64(turn), 1e-4)
	// The tangents at both ends meet at the point of intersection, T ahead of the start and T back from the end.
	meet := along(begin.At, ahead(begin.Heading), 293.1*ft)
	foot("from the end back to the point of intersection", Distance(meet, along(end.At, ahead(end.Heading), -293.1*ft)), 0)
	middle := r.at(250 * ft)
	foot("external distance", Distance(middle.At, meet), 99.5)
	foot("middle ordinate", toSegment(middle.At, begin.At, end.At), 78.9)

	const toFifty = 50 - 6.9 // 15+06.9 to 15+50
	minutes := 3*60 + 14.0
	for c := toFifty; c < 500; c += 50 {
		way := sub(r.at(measure.Length(c)*ft).At, begin.At)
		deflection := math.Atan2(float64(way.X), float64(way.Y)) * 180 / math.Pi * 60
		near(t, "deflection in minutes", deflection, minutes, .6)
		minutes += 3*60 + 45
	}
	way := sub(end.At, begin.At)
	near(t, "deflection to the end", math.Atan2(float64(way.X), float64(way.Y))*180/math.Pi, 37.5, .01)
}

// The same curve as a tunnel of 11 arches whose marks stand at its beginning and its point of intersection: the tapes to the stakes come from the manual's deflection angles and
// chords alone, by the law of cosines, with no coordinates in between. An arch of no width stands on the curve itself.
func TestFieldManualCurveByTapes(t *testing.T) {
	const radius, tangent = 381.97 * ft, 293.1 * ft
	s := row(11)
	s.Tunnel.Spacing, s.Tunnel.Length = 50*ft, 500*ft
	s.Guys.Arches = nil
	s.Site.Start, s.Site.Heading = spec.Point{}, 0
	s.Site.Route = []spec.Leg{{Turn: 75 * math.Pi / 180, Radius: radius}, {Rest: true}}
	s.Site.Marks = []spec.Mark{mark("beginning", 0, 0), mark("intersection", 0, tangent)}
	thin := same(11, 1e-6)
	l := Lay(s, Arches{Spans: thin, Crowns: same(11, 2000)})
	if len(l.Ties) != 20 { // arch 1 stands on a mark
		t.Fatalf("%d ties", len(l.Ties))
	}
	for _, tie := range l.Ties {
		arch := stakeOf(t, l, tie.Stake.String()).Arch
		arc := 50 * float64(arch-1)
		deflection := .3 * arc * 15 / 60 * math.Pi / 180
		chord := 2 * 381.97 * math.Sin(deflection)
		toIntersection := math.Sqrt(chord*chord + 293.1*293.1 - 2*chord*293.1*math.Cos(deflection))
		near(t, tie.Stake.String()+" from the beginning (ft)", float64(tie.A/ft), chord, .01)
		near(t, tie.Stake.String()+" from the intersection (ft)", float64(tie.B/ft), toIntersection, .01)
	}
}
