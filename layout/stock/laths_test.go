package stock

import (
	"math/rand/v2"
	"testing"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// lathsReach is how long a stick of so many laths is, end over end by more than 12 in: 8 ft and 18 in, 2.4 m and 450 mm.
func lathsReach(u measure.System, laths int) (long measure.Length) {
	for i := range laths {
		long += measure.By(u, 96*measure.Inch, 2400*measure.Millimetre)
		if i > 0 {
			long -= measure.By(u, 18*measure.Inch, 450*measure.Millimetre)
		}
	}
	return long
}

// serve tries every use of so many laths: of each whether it is in the gauge stick, then in the stick for crowns, in both, or sawn for the opening's width or height.
func serve(u measure.System, laths int, gauge, crown, wide, high measure.Length) bool {
	const uses = 5
	ways := 1
	for range laths {
		ways *= uses
	}
	for way := range ways {
		var in [4]int // gauge, crown, wide, high
		for rest, i := way, 0; i < laths; i, rest = i+1, rest/uses {
			for _, stick := range [uses][]int{{0}, {1}, {0, 1}, {2}, {3}}[rest%uses] {
				in[stick]++
			}
		}
		if lathsReach(u, in[0]) >= gauge && lathsReach(u, in[1]) >= crown && lathsReach(u, in[2]) >= wide && lathsReach(u, in[3]) >= high {
			return true
		}
	}
	return false
}

// As many laths are bought as make every stick, and none more, against every use of them; two zip ties hold each lap of each stick, also of one that is made of another's laths.
func TestLathsMakeEveryStick(t *testing.T) {
	d := rand.New(rand.NewPCG(11, 2))
	met := map[int]bool{}
	for range 400 {
		u := []measure.System{measure.Imperial, measure.Metric}[d.IntN(2)]
		size := func(least, most int) measure.Length {
			return measure.By(u, measure.Length(least+d.IntN(most-least))*measure.Foot, measure.Length(3*(least+d.IntN(most-least)))*100*measure.Millimetre)
		}
		in := Input{Spec: &spec.Spec{Units: u}}
		gauge, crown, wide, high := size(5, 16), size(0, 14), size(0, 9), measure.Length(0)
		if wide > 0 {
			high = size(5, 10)
		}
		in.Stakes = []ground.Stake{{X: -gauge / 2}, {X: gauge / 2}}
		in.CrownStick, in.Spec.Tunnel.OpeningWidth, in.Spec.Tunnel.OpeningHeight = crown, wide, high
		laths, ties := lathsOf(in)
		if !serve(u, laths, gauge, crown, wide, high) || serve(u, laths-1, gauge, crown, wide, high) {
			t.Errorf("gauge %v, crowns %v, opening %v by %v: not %d laths", gauge, crown, wide, high, laths)
		}
		laps := 0
		for _, long := range []measure.Length{gauge, crown, wide, high} {
			for n := 1; lathsReach(u, n) < long; n++ {
				laps++
			}
		}
		if ties != 2*laps {
			t.Errorf("gauge %v, crowns %v, opening %v by %v: %d ties for %d laps", gauge, crown, wide, high, ties, laps)
		}
		met[laths] = true
	}
	if len(met) < 4 {
		t.Errorf("only %v laths were met", met)
	}
}
