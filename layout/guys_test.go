package layout_test

import (
	"math"
	"testing"

	"hoopwright/layout"
)

// TestGuysWithoutRidge: the guys of an end arch hold it one way only, so without a ridge it leans over the other way as one without guys does; those of an arch between
// hold both ways, as do those of a lone arch.
func TestGuysWithoutRidge(t *testing.T) {
	along := func(tunnel, guys string) []float64 {
		p := layout.Solve(read(t, "guys", base.with("tunnel", tunnel, "ridge", "false", "lights", wrapLegs, "guys", guys).text()))
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
