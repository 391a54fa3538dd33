package layout

import (
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// Cold returns how much lower the crowns are and how much shorter the ridge is, at most, when the pipe has cooled from where its figures are published to the
// spec's cold. It reports false where that is not colder, or no arch stands.
func (p *Plan) Cold() (crown, ridge measure.Length, ok bool) {
	cold := p.Spec.Weather.Cold
	if arch.Shrinks(cold) == 0 {
		return 0, 0, false
	}
	for _, k := range p.Kinds {
		if c, stands := k.ColdCrown(cold); stands {
			crown, ok = max(crown, k.Crown-c), true
		}
	}
	for _, r := range p.Ridge {
		ridge += r.Cut * measure.Length(arch.Shrinks(cold))
	}
	return crown, ridge, ok
}
