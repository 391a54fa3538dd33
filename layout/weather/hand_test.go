package weather

import (
	"maps"
	"math"
	"slices"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// How far the pegs lie below the feet, by hand, on ground that is level but for the left side of arch 4, 400 mm up, and the right side of arch 2,
// 200 mm down: half way to arch 4 the ground is 200 mm up; a peg beyond an end lies as high as the end.
func TestGroundAtThePegs(t *testing.T) {
	for _, c := range []struct {
		arches, arch int
		bays         measure.Length // along, in bays
		want         [2]measure.Length
	}{
		{5, 3, .5, [2]measure.Length{-200, 0}}, {5, 3, 1, [2]measure.Length{-400, 0}},
		{5, 4, -.25, [2]measure.Length{100, 0}}, {5, 4, 1, [2]measure.Length{400, 0}},
		{5, 2, .5, [2]measure.Length{0, -100}}, {5, 2, -.25, [2]measure.Length{0, -50}},
		{5, 1, .75, [2]measure.Length{0, 150}}, {5, 1, -1, [2]measure.Length{}},
		{5, 5, 1, [2]measure.Length{}}, {4, 4, .5, [2]measure.Length{}}, {1, 1, 1, [2]measure.Length{}},
	} {
		tun := &Tunnel{Spec: &spec.Spec{Tunnel: spec.Tunnel{Spacing: 1200}}, Arches: make([]arch.Arch, c.arches), Level: func(n int) (left, right measure.Length) {
			if n < 1 || n > c.arches {
				t.Errorf("there is no arch %d of %d", n, c.arches)
			}
			return map[int]measure.Length{4: 400}[n], map[int]measure.Length{2: -200}[n]
		}}
		got := tun.drop(hold{arch: c.arch, along: c.bays * 1200})
		for side := range got {
			if math.Abs(float64(got[side]-c.want[side])) > 1e-9 {
				t.Errorf("arch %d of %d, %v bays on: %v below, want %v", c.arch, c.arches, c.bays, got, c.want)
			}
		}
	}
}

// Guys of an arch between others reach so many bays either way; where people pass one of these, that arch has none. The ends' stand before and
// behind.
func TestArchesFreeOfAWay(t *testing.T) {
	s := &spec.Spec{Tunnel: spec.Tunnel{Arches: 7, Spacing: 1200, Ways: []spec.Way{{Bay: 3, Wall: spec.Right}}}}
	for out, want := range map[measure.Length][]int{1200: {1, 2, 5, 6, 7}, 900: {1, 2, 5, 6, 7}, 1300: {1, 6, 7}} {
		if got := freeArches(s, []int{1, 2, 3, 4, 5, 6, 7}, out); !slices.Equal(got, want) {
			t.Errorf("%v out, a way in bay 3: %v, want %v", out, got, want)
		}
	}
	s.Tunnel.Ways[0].Bay = 1
	if got := freeArches(s, []int{1, 2, 3, 7}, 1200); !slices.Equal(got, []int{1, 3, 7}) {
		t.Errorf("a way in bay 1: %v", got)
	}
}

// What hardly stands scores less the less it bears, and less than whatever stands in still air.
func TestScore(t *testing.T) {
	if got := (*Weather)(nil).Score(); got != 0 {
		t.Errorf("nothing scores %v", got)
	}
	for factor, want := range map[float64]float64{0: 0, .5: .005, 1: .01, 3: .01} {
		if got := (&Weather{Factor: factor}).Score(); got != want {
			t.Errorf("%v of its weight borne, no wind: %v, want %v", factor, got, want)
		}
	}
	poor, good := tunnel(4, hoop(), spec.Guys{}), tunnel(4, hoop(), guyed(5*foot, 1, 4))
	p, g := Solve(poor), Solve(good)
	if p == nil || g == nil || p.Score() < .02 || g.Score() <= p.Score() {
		t.Errorf("with guys %v, without %v", g.Score(), p.Score())
	}
}

// More arches are held by guys tied as those that there are; where there are none, as guys would be chosen. More bays are braced with what the spec
// braces with.
func TestMoreHeld(t *testing.T) {
	for _, c := range []struct {
		arches []int
		line   bool
	}{{nil, false}, {[]int{1}, true}, {[]int{1, 6}, false}} {
		tun := tunnel(6, hoop(), spec.Guys{})
		s, k := tun.Spec, tun.Arches[0].Kind
		if s.Braces.Line = c.line; c.arches != nil {
			s.Guys = guyed(5*foot+1, c.arches...)
		}
		list := moreHeld(s, k)
		if len(list) != 2 {
			t.Fatalf("guys at %v: %+v", c.arches, list)
		}
		guys, braces := list[0].Value.(spec.Guys), list[1].Value.(spec.Braces)
		if len(guys.Arches) <= len(c.arches) || (guys.From == s.Guys.From) != (c.arches != nil) || guys.From == 0 {
			t.Errorf("guys at %v from %v: %+v", c.arches, s.Guys.From, guys)
		}
		if len(braces.Bays) == 0 || braces.Line != c.line {
			t.Errorf("braces by line %v: %+v", c.line, braces)
		}
	}
}

// The ice that brings all to so many times its weight weighs the rest.
func TestIceUnderAWeight(t *testing.T) {
	r := rowOf(t, tunnel(4, hoop(), guyed(5*foot, 1, 4)))
	weight, on := 0.0, func(ice measure.Length) (sum float64) {
		for _, m := range r {
			sum += m.kind.iceOn(ice) * float64(len(m.arches))
		}
		return sum
	}
	for _, m := range r {
		weight += float64(m.kind.Weight) * float64(len(m.arches))
	}
	for _, times := range []float64{1, 1.02, 2, 4} {
		ice := r.iceUnder(times)
		if low, high := on(ice), on(ice+2*mostIce/(1<<20)); low > (times-1)*weight+1e-9 || high < (times-1)*weight {
			t.Errorf("%v times: %v of ice weighs %v N of %v", times, ice, low, (times-1)*weight)
		}
	}
}

// Metric bars that may be chosen, by hand: of what is sold, at most two thirds in the ground and 400 to 750 mm in the pipe.
func TestMetricStakes(t *testing.T) {
	pipe, _ := catalog.FindPipe("pvc-u pn16 25 mm")
	got := map[[2]measure.Length]bool{}
	for _, k := range Stakes(&spec.Spec{Arch: spec.Arch{Pipe: pipe}, Units: measure.Metric}, false) {
		got[[2]measure.Length{k.Length, k.Depth}] = true
	}
	want := map[[2]measure.Length]bool{{900, 300}: true, {900, 400}: true, {900, 450}: true, {900, 500}: true, {1200, 450}: true, {1200, 500}: true, {1200, 600}: true, {1200, 750}: true, {1500, 750}: true}
	if !maps.Equal(got, want) {
		t.Errorf("lengths and depths %v, want %v", got, want)
	}
}
