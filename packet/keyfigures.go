package packet

import (
	"slices"

	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// across prints a figure of every kind of arch: the least, and that there is more where another has an inch more.
func (b *binder) across(value func(*arch.Kind) measure.Length) string {
	least, most := value(b.plan.Kinds[0]), value(b.plan.Kinds[0])
	for _, k := range b.plan.Kinds[1:] {
		least, most = min(least, value(k)), max(most, value(k))
	}
	if most-least < measure.Inch {
		return b.spec.Units.Tape(least)
	}
	return b.spec.Units.Tape(least) + " or more"
}

// stoodOn counts the stakes that are driven, the bases that legs stand on, and the weights at the ends of guys and braces.
func stoodOn(p *layout.Plan) (driven, bases, weights int) {
	for _, s := range p.Stakes {
		switch {
		case !s.Base:
			driven++
		case s.Guy:
			weights++
		default:
			bases++
		}
	}
	return driven, bases, weights
}

// stakeCounts counts the stakes of guys and the pegs of braces.
func stakeCounts(p *layout.Plan) (guys, pegs int) {
	for _, s := range p.Stakes {
		switch {
		case s.Bay > 0:
			pegs++
		case s.Guy:
			guys++
		}
	}
	return guys, pegs
}

// lightAmps adds up the lights' current over the circuits that carry any.
func (b *binder) lightAmps() (amps measure.Current, circuits int) {
	for _, c := range b.plan.Circuits {
		if c.Lights > 0 {
			amps += c.Lights
			circuits++
		}
	}
	return amps, circuits
}

// assumed names the defaults that matter on the ground, as "soil unknown"; the rebuild file has them all.
func (b *binder) assumed() []string {
	leg := "leg stake"
	if !drives(b.plan) {
		leg = "bar"
	}
	matter := []struct{ key, name string }{
		{"site.soil", "soil"}, {"arch.stake.bar", leg}, {"arch.stake.length", leg + " length"}, {"arch.stake.depth", leg + " depth"}, {"guys", "guys"},
		{"tunnel.opening.width", "clear width"}, {"tunnel.opening.height", "clear height"}, {"crew.helpers", "helpers"},
	}
	var words []string
	for _, m := range matter {
		if !drives(b.plan) && (m.key == "site.soil" || m.key == "arch.stake.depth") { // nothing goes into it
			continue
		}
		if i := slices.IndexFunc(b.spec.Defaults, func(d spec.Default) bool { return d.Key == m.key }); i >= 0 {
			words = append(words, m.name+" "+b.spec.Defaults[i].Value)
		}
	}
	return words
}
