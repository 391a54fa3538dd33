package practice_test

import (
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Keep distances against what the law and published advice name, in both systems: 18 in of a buried line at the least (one-call laws, the narrowest of the states) and
// 24 in in feet and inches; 10 ft of an overhead line.
func TestKeepDistances(t *testing.T) {
	if got := practice.KeepBuried(measure.Imperial); got != 24*measure.Inch {
		t.Errorf("%v from a buried line", got)
	}
	if got := practice.KeepBuried(measure.Metric); got < 18*measure.Inch {
		t.Errorf("%v from a buried line in metres", got)
	}
	for _, u := range []measure.System{measure.Imperial, measure.Metric} {
		if got := practice.KeepOverhead(u); got < 3047.9*measure.Millimetre {
			t.Errorf("%v: %v from an overhead line", u, got)
		}
	}
}

// No limit in metres is looser than the one in feet and inches where looser is the worse side: gusts, gives, moves. The pair is the same rule, rounded.
func TestMetresAreNoLooser(t *testing.T) {
	for name, of := range map[string]func(measure.System) measure.Length{
		"foot give": practice.FootGive, "off its dot": practice.OffDot, "moved along": practice.MovedAlong, "guy moved": practice.GuyMoved, "pull": practice.PullGives, "hand": practice.HandMoves,
		"bay": practice.BayGive, "run": practice.RunGive, "reading": practice.Reading, "flag": practice.FlagGive, "reach": practice.Reach, "crown fell": practice.CrownFell,
	} {
		if in, mm := of(measure.Imperial), of(measure.Metric); mm > in || mm < in*0.75 {
			t.Errorf("%s: %v mm beside %v mm in feet and inches", name, mm, in)
		}
	}
	if in, mm := practice.RaisingGust(measure.Imperial), practice.RaisingGust(measure.Metric); mm > in || in > 20*measure.MPH {
		t.Errorf("raising gusts %v and %v m/s", in, mm)
	}
}

// A tape that reaches is taken, the shortest; past the longest the longest. One spare at the least, and the share rounded up.
func TestTapesAndSpares(t *testing.T) {
	for _, c := range []struct{ reach, want float64 }{{20, 25}, {25, 25}, {25.1, 50}, {101, 200}, {900, 300}} {
		if got := practice.Tape(measure.Imperial, measure.Length(c.reach)*measure.Foot); got != measure.Length(c.want)*measure.Foot {
			t.Errorf("%v ft: a tape of %v mm", c.reach, got)
		}
	}
	for _, c := range []struct{ count, want int }{{0, 0}, {1, 1}, {20, 1}, {21, 2}, {100, 5}, {101, 6}} {
		if got := practice.Spares(c.count, 0.05); got != c.want {
			t.Errorf("%d spares over %d, want %d", got, c.count, c.want)
		}
	}
}

// What pipe rides on, at the edges, and how many mats cover a walk of 22 ft 6 in: five on it, one before it, one behind.
func TestHaulAndMats(t *testing.T) {
	for _, c := range []struct {
		u    measure.System
		long measure.Length
		load measure.Mass
		want practice.Ride
	}{
		{measure.Imperial, 5 * measure.Foot, 60, practice.InCar}, {measure.Imperial, 61 * measure.Inch, 60, practice.InVan}, {measure.Imperial, 10 * measure.Foot, 60, practice.OnRoof}, {measure.Imperial, 20 * measure.Foot, 60, practice.OnTrailer},
		{measure.Metric, 1500, 60, practice.InCar}, {measure.Metric, 2500, 60, practice.InVan}, {measure.Metric, 4000, 60, practice.OnRoof}, {measure.Metric, 4001, 60, practice.OnTrailer}, {measure.Metric, 4000, 76, practice.OnTrailer}, {measure.Metric, 2500, 76, practice.InVan},
	} {
		if got := practice.Rides(c.u, c.long, c.load); got != c.want {
			t.Errorf("%v rides on %v, want %v", c.long, got, c.want)
		}
	}
	if got := practice.Mats(measure.Imperial, 22.5*measure.Foot); got != 7 {
		t.Errorf("%d mats, want 7", got)
	}
}

// A gauge stick of laths of 8 ft or 2.4 m, each 18 in or 450 mm over the next: two reach 14 ft 6 in or 4 350 mm, by adding them up.
func TestLathsReachAcross(t *testing.T) {
	for _, c := range []struct {
		units measure.System
		width measure.Length
		want  int
	}{
		{measure.Imperial, 7 * measure.Foot, 1}, {measure.Imperial, 8 * measure.Foot, 1}, {measure.Imperial, 8.1 * measure.Foot, 2}, {measure.Imperial, 14.5 * measure.Foot, 2},
		{measure.Imperial, 14.6 * measure.Foot, 3}, {measure.Metric, 2400, 1}, {measure.Metric, 3365, 2}, {measure.Metric, 4350, 2}, {measure.Metric, 4360, 3},
	} {
		if got := practice.Laths(c.units, c.width); got != c.want {
			t.Errorf("%v across: %d laths, want %d", c.width, got, c.want)
		}
	}
}
