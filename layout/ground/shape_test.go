package ground

import (
	"math"
	"strings"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// bulging is an invented arch that swings out: a circle of 50 in radius whose feet, 90 in apart, lie below its middle, as the geometry of the circle has it:
// √(50² − 45²) = 21.79 in below. It is widest, 100 in, at that height, and 71.79 in high.
func bulging() []spec.Point {
	var curve []spec.Point
	const n = 400
	foot := math.Asin(math.Sqrt(50*50-45*45) / 50) // below the level through the middle
	for i := range n + 1 {
		a := math.Pi + foot - (math.Pi+2*foot)*float64(i)/n
		curve = append(curve, spec.Point{X: measure.Length(50*math.Cos(a)) * in, Y: measure.Length(50*math.Sin(a)+math.Sqrt(50*50-45*45)) * in})
	}
	return curve
}

func layBulging(s *spec.Spec, stick measure.Length) Layout {
	shapes := make([]Shape, s.Tunnel.Arches)
	curve := bulging()
	for i := range shapes {
		shapes[i] = Shape{Curve: curve, Stick: stick}
	}
	return Lay(s, Arches{same(s.Tunnel.Arches, 90*in), same(s.Tunnel.Arches, 71.79*in), shapes, 12 * in})
}

// At 10 in up the circle lies √(50² − 11.79²) = 48.59 in out, 3.59 in outside its stake; from 21.79 in on, 50.
func TestHowFarAnArchReaches(t *testing.T) {
	tunnel := newTunnel(row(2), Arches{same(2, 90*in), same(2, 71.79*in), []Shape{{Curve: bulging()}, {Curve: bulging()}}, 12 * in})
	for height, out := range map[measure.Length]measure.Length{0: 45 * in, 10 * in: 48.59 * in, 30 * in: 50 * in, 60 * in: 50 * in} {
		legs := tunnel.low(0, height)
		if len(legs) != 2 {
			t.Fatalf("%v high: %v", height, legs)
		}
		near(t, "left", legs[0].left, -out, .01*in)
		near(t, "right", legs[1].right, out, .01*in)
		if height < 20*in {
			near(t, "inside of the left leg", legs[0].right, -45*in, .01*in)
		}
	}
	// at 60 in the pipe has come in to √(50² − 38.21²) = 32.25 in
	near(t, "inside at 60 in", tunnel.low(0, 60*in)[0].right, -32.25*in, .05*in)
	if whole := tunnel.low(1, 72*in); len(whole) != 1 {
		t.Errorf("over the crown: %v", whole)
	}
}

// A hedge 7 in outside the stakes, which stand at x = 195 in, clears them by more than the 4 in wanted, but not the pipe: that swings out 5 in from 22 in up. A kerb as near
// but 3 in high meets nothing.
func TestFeatureAgainstTheTrueCurve(t *testing.T) {
	s := row(4)
	hedge := block("hedge", 100*in, 100*in, 188*in, 150*in)
	hedge.Height = 4 * ft
	s.Site.Features = []spec.Feature{hedge}
	if text := want(t, layBulging(s, 0), "feature-in-tunnel", finding.MustFix); !strings.Contains(text, "leg L2 rises") || !strings.Contains(text, "5 in beyond") {
		t.Error(text)
	}
	wantNone(t, lay(s), "feature-in-tunnel") // upright legs would clear it
	s.Site.Features[0].Height = 2 * in
	wantNone(t, layBulging(s, 0), "feature-in-tunnel")
	s.Site.Features[0] = block("hedge", 100*in, 100*in, 185*in, 150*in) // 5 in clear of the widest place
	s.Site.Features[0].Height = 4 * ft
	wantNone(t, layBulging(s, 0), "feature-in-tunnel")
}

// A wire 17 ft up right over the walk: 17 ft − (71.79 in + 3 ft) = 8.0 ft, less than 10 ft; without the arch's own height known to the line, but with a 20 ft stick stood
// upright over a stake, the wire is touched by the stick. A wire beside the tunnel counts from the widest place, 50 in out, not from the stakes, 45 in out.
func TestOverheadLineAgainstWidestAndStick(t *testing.T) {
	s := row(4)
	wire := func(x, height measure.Length) {
		s.Site.Overhead = []spec.Overhead{{Name: "drop", Line: []spec.Point{{X: x, Y: -99 * ft}, {X: x, Y: 99 * ft}}, Height: height, Keep: 10 * ft}}
	}
	wire(240*in, 71.79*in+3*ft+121*in)
	wantNone(t, layBulging(s, 0), "near-overhead-line")
	if text := want(t, layBulging(s, 20*ft), "near-overhead-line", finding.LookAt); !strings.Contains(text, "sprung upright") {
		t.Error(text)
	}
	wire(190*in-119*in, 6*ft)
	want(t, layBulging(s, 0), "near-overhead-line", finding.LookAt)
	wantNone(t, lay(s), "near-overhead-line")
	wire(190*in-121*in, 6*ft)
	wantNone(t, layBulging(s, 0), "near-overhead-line")
}

// 1 in 15 along and 3 in over 90 in, 1 in 30, across.
func TestWalkSlopes(t *testing.T) {
	s := row(9)
	s.Tunnel.Spacing = 60 * in
	s.Site.Levels = []spec.Level{{Arch: 1, Right: 3 * in}, {Arch: 9, Left: 32 * in, Right: 35 * in}}
	lengthwise, across := slopes(newTunnel(s, Arches{}))
	near(t, "along", lengthwise, 1./15, 1e-12)
	near(t, "across", across, 1./30, 1e-12)
	if text := want(t, lay(s), "walk-slopes", finding.Note); !strings.Contains(text, "1 in 15 along") || !strings.Contains(text, "1 in 30 across") {
		t.Error(text)
	}
	s.Site.Levels = []spec.Level{{Arch: 1, Right: 90 * in / 48}, {Arch: 9, Left: 24 * in, Right: 24*in + 90*in/48}} // 1 in 20 and 1 in 48 are within
	wantNone(t, lay(s), "walk-slopes")
}
