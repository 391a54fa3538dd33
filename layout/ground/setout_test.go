package ground

import (
	"math"
	"slices"
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// same returns n equal lengths.
func same(n int, l measure.Length) []measure.Length { return slices.Repeat([]measure.Length{l}, n) }

// The right row of a finished layout is slid along by a little, the diagonals are taped again, and the row is slid back by the share of their
// difference: it must come home. Checked by Pythagoras on the moved stakes, not by the formula.
func TestSlideBringsTheRowHome(t *testing.T) {
	for _, n := range []int{2, 3, 9, 60} {
		s := &spec.Spec{Tunnel: spec.Tunnel{Arches: n, Spacing: 1200, Length: 1200 * measure.Length(n-1)}}
		l := Lay(s, Arches{Spans: same(n, 2300), Crowns: same(n, 2500)})
		share, ok := l.slide()
		if !ok {
			t.Fatalf("%d arches: no slide", n)
		}
		const slid = 20.0
		length, width := 1200*float64(n-1), 2300.0
		grown := math.Sqrt(width*width + (length+slid)*(length+slid)) // L1 to the far R
		shrunk := math.Sqrt(width*width + (length-slid)*(length-slid))
		if back := share * (grown - shrunk); math.Abs(back-slid) > 0.02 {
			t.Errorf("%d arches: slid %v, sent back %.3f", n, slid, back)
		}
	}
	if _, ok := Lay(&spec.Spec{Tunnel: spec.Tunnel{Arches: 1}}, Arches{Spans: same(1, 2000), Crowns: same(1, 2000)}).slide(); ok {
		t.Error("a lone arch has no row to slide")
	}
}

// A tunnel 9.6 m long and 2.3 m wide: its diagonal √(9.6² + 2.3²) = 9.872 m is the longest tape, until a mark asks for a longer one. One of 59
// bays of 1.3 m is taped in three stretches, 26 m at most.
func TestLongestTape(t *testing.T) {
	s := &spec.Spec{Units: measure.Metric, Tunnel: spec.Tunnel{Arches: 9, Spacing: 1200, Length: 9600}}
	l := Lay(s, Arches{Spans: same(9, 2300), Crowns: same(9, 2500)})
	if got := l.LongestTape(measure.Metric); math.Abs(float64(got)-9872) > 1 {
		t.Errorf("longest %v, want the diagonal", got)
	}
	l.Ties = []Tie{{Stake: Leg(spec.Left, 1), A: 4000, B: 5000, C: 12345}}
	if got := l.LongestTape(measure.Metric); got != 12345 {
		t.Errorf("longest %v, want the check tape", got)
	}
	s.Tunnel = spec.Tunnel{Arches: 60, Spacing: 1300, Length: 59 * 1300}
	if got := float64(Lay(s, Arches{Spans: same(60, 2300), Crowns: same(60, 2500)}).LongestTape(measure.Metric)); math.Abs(got-math.Hypot(20*1300, 2300)) > 1 {
		t.Errorf("longest %v, want the diagonal of 20 bays", got)
	}
}

// Every bay belongs to one stretch, no stretch is longer than the tape, and one stretch fewer would be.
func TestTapeLengths(t *testing.T) {
	for _, tt := range []struct {
		n, want int
		spacing measure.Length
	}{{2, 1, 1200}, {26, 1, 1200}, {27, 2, 1200}, {60, 3, 1295}, {240, 120, 12 * measure.Metre}} {
		s := &spec.Spec{Units: measure.Metric, Tunnel: spec.Tunnel{Arches: tt.n, Spacing: tt.spacing, Length: tt.spacing * measure.Length(tt.n-1)}}
		list := Lay(s, Arches{Spans: same(tt.n, 2300), Crowns: same(tt.n, 2500)}).TapeLengths(measure.Metric)
		if len(list) != tt.want {
			t.Errorf("%d arches: %d stretches, want %d", tt.n, len(list), tt.want)
		}
		at := 1
		for _, part := range list {
			if part.First != at || part.Last <= part.First || tt.spacing*measure.Length(part.Last-part.First) > 30*measure.Metre {
				t.Errorf("%d arches: stretch %+v after arch %d", tt.n, part, at)
			}
			at = part.Last
		}
		if at != tt.n {
			t.Errorf("%d arches: the stretches end at %d", tt.n, at)
		}
	}
}
