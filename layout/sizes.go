package layout

import (
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// Sizes returns what the sticks of one of the plan's kinds make over other spans, under the same lights and ridge and over the same ground.
func (p *Plan) Sizes(k *arch.Kind, spans []measure.Length) []arch.Size {
	number := k.Numbers[0]
	in := archInput(p.Spec, number)
	shapes := make([]*arch.Kind, len(p.Arches))
	for i, a := range p.Arches {
		shapes[i] = a.Kind
	}
	shapes[number-1] = k
	in.Spec, in.Loads = k.Spec, archLoads(p.Spec, number, shapes)
	return arch.Sizes(in, spans)
}
