package layout

import (
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// Sizes returns what the sticks of one of the plan's kinds make over other spans, under the same lights and ridge and over the same ground.
func (p *Plan) Sizes(k *arch.Kind, spans []measure.Length) []arch.Size {
	number := k.Numbers[0]
	in := archInput(p.Spec, number)
	in.Spec, in.Loads = k.Spec, archLoads(p.Spec, number, k)
	return arch.Sizes(in, spans)
}
