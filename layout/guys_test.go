package layout_test

import (
	"math"
	"testing"
)

// TestGuysWithoutRidge: the guys of an end arch hold it one way only, so without a ridge it leans over the other way as one without guys does; those of an arch between
// hold both ways, as do those of a lone arch.
func TestGuysWithoutRidge(t *testing.T) {
	along := func(tunnel, guys string) []float64 {
		p := solved(t, base.with("tunnel", tunnel, "ridge", "false", "lights", wrapLegs, "guys", guys).text())
		var list []float64
		for _, a := range p.Arches {
			list = append(list, a.Along)
		}
		return list
	}
	const four, one = "{arches: 4, spacing: 4 ft 3 in}", "{arches: 1}"
	free := along(four, "none")[0]
	held := along(four, "{arches: all, from: 7 ft, out: 5 ft}")
	for i, a := range held {
		if between := i > 0 && i < 3; between != (a > 1.5*free) || !between && math.Abs(a-free) > .03*free {
			t.Errorf("arch %d guyed: %.2f times, without guys %.2f", i+1, a, free)
		}
	}
	if lone, bare := along(one, "{arches: [1], from: 7 ft, out: 5 ft}")[0], along(one, "none")[0]; lone < 1.5*bare {
		t.Errorf("a lone arch guyed: %.2f times, without guys %.2f", lone, bare)
	}
}

// Guys that pull down are set farther out only where the ground there is free: not into the keep band of a line 2 ft behind their stakes.
func TestGuysAreNotSentIntoALine(t *testing.T) {
	cured := func(site string) (cured, told bool) {
		for _, f := range solved(t, base.with("tunnel", "{arches: 4, spacing: 4 ft 3 in}", "lights", wrapLegs, "guys", "{arches: [1, last], from: 7 ft, out: 5 ft}", "site", site).text()).Findings {
			if f.Code == "guy-pulls-down" {
				cured, told = len(f.Cure) > 0, true
			}
		}
		return cured, told
	}
	const start = "start: {at: [10 ft, 20 ft], heading: 0 deg}, soil: firm"
	if is, told := cured("{" + start + "}"); !told || !is {
		t.Errorf("free ground: told %v, cured %v", told, is)
	}
	if is, told := cured("{" + start + ", buried: [{name: hose, line: [[-9 ft, 12 ft 6 in], [40 ft, 12 ft 6 in]], keep: 24 in}]}"); !told || is {
		t.Errorf("a line where the stakes would go: told %v, cured %v", told, is)
	}
}
