package arch

import (
	"math"
	"strings"
	"testing"

	"hoopwright/layout/bend"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// TestSmaller: an arch that falls is told a size of the same proportions that stands, and one a tenth larger falls.
func TestSmaller(t *testing.T) {
	const foot, pound = measure.Foot, measure.PoundForce
	pipe, _ := catalog.FindPipe("pvc sch40 1/2 in")
	bar, _ := catalog.FindBar("1/2 in")
	in := Input{Spec: spec.Arch{Pipe: pipe, Missing: spec.Height, LateModulus: .6, Stake: spec.Stake{Bar: bar, Length: 48 * measure.Inch, Depth: 20 * measure.Inch}}}
	in.Spec.Left, in.Spec.Right, in.Spec.Span = []measure.Length{20 * foot}, []measure.Length{20 * foot}, 7*foot
	in.Loads = []Load{{To: 481 * measure.Inch, Weight: 4 * pound}}
	k := Shape(in)
	k.Stand()
	j := &judge{model: k.built, kind: k}
	legs, span, ok := j.standsAs()
	if !ok || !strings.HasPrefix(legs, "legs of about ") {
		t.Fatalf("%q over %g in, %v", legs, span.Inches(), ok)
	}
	told, err := measure.ParseLength(strings.TrimPrefix(legs, "legs of about "))
	if err != nil {
		t.Fatal(err)
	}
	share := told / (20 * foot)
	if got := span / in.Spec.Span; math.Abs(float64(got-share)) > .01*float64(share) {
		t.Errorf("span %g times, legs %g", float64(got), float64(share))
	}
	solver := bend.NewSolver(0)
	for size, stands := range map[measure.Length]bool{share: true, share * 1.1: false} {
		m, err := j.scaled(size, solver)
		if err != nil {
			t.Fatal(err)
		}
		f, _ := solver.Factor(m.frame.rod(.6, m.feet), bend.Most)
		if f = min(f, m.leansAt()); (f >= 1) != stands {
			t.Errorf("legs of %g ft bear %g times their weight", float64(20*size), f)
		}
	}
}
