package arch

import (
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Sketch returns the arch as a weightless half circle over its sticks' length, which says where along the pipe lights lie before the
// arch is solved for their weight. Where the sticks are to be solved they are taken as plumb legs under a half circle.
func Sketch(in Input) *Kind {
	a := in.Spec
	if a.Missing == spec.Sticks {
		a = in.equalSticks(a, max(2*a.Height+a.Span*(math.Pi/2-1), measure.Metre))
	}
	f := finder{in: &in}
	k := f.drawn(a).describe()
	k.LoadFactorWay = "sideways"
	return k
}
