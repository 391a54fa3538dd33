package packet

import (
	"slices"

	"hoopwright/layout"
	"hoopwright/layout/ground"
)

// holders are what holds a tunnel lengthwise, for its words.
type holders struct{ guys, braces bool }

// heldBy returns what holds a plan's tunnel.
func heldBy(p *layout.Plan) holders {
	return heldWhere(p, func(ground.Stake) bool { return true })
}

// capped returns what has stakes that wear their caps all the time.
func capped(p *layout.Plan) holders { return heldWhere(p, staysCapped) }

func heldWhere(p *layout.Plan, is func(ground.Stake) bool) (h holders) {
	for _, s := range p.Ground.Stakes {
		h.guys = h.guys || s.Kind() == ground.OfGuy && is(s)
		h.braces = h.braces || s.Kind() == ground.OfBrace && is(s)
	}
	return h
}

// pick lists a word for each that there is.
func (h holders) pick(guys, braces string) (list []string) {
	if h.guys {
		list = append(list, guys)
	}
	if h.braces {
		list = append(list, braces)
	}
	return list
}

// standsOn names what arches stand on: "stake", "base", or both.
func standsOn(p *layout.Plan) (words []string) {
	for _, a := range p.Arches {
		word := "stake"
		if p.Spec.ArchOf(a.Number).Foot != nil {
			word = "base"
		}
		if !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	return words
}

// staysCapped reports whether a stake wears its cap all the time: no pipe stands on it.
func staysCapped(s ground.Stake) bool { return s.Guy && s.Steel() }
