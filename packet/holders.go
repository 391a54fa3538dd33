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

// ofGround is what the leaf of marking and driving, and its crew, are called: by what is set out.
type ofGround struct{ leaf, holder, crew string }

// groundOf returns the names for a plan.
func groundOf(p *layout.Plan) ofGround {
	if drives(p) {
		return ofGround{"Stakes", "marking and driving crew", "stake crew"}
	}
	return ofGround{"Feet", "marking crew", "marking crew"}
}

// staysCapped reports whether a stake wears its cap all the time: no pipe stands on it.
func staysCapped(s ground.Stake) bool { return s.Guy && s.Steel() }

// braceEnds are what braces end on.
func braceEnds(p *layout.Plan) string {
	i := slices.IndexFunc(p.Ground.Stakes, func(s ground.Stake) bool { return s.Kind() == ground.OfBrace })
	switch s := p.Ground.Stakes[i]; {
	case !s.Base:
		return "brace stakes"
	case s.Steel():
		return "brace bars"
	}
	return "brace weights"
}

// firstHeld reports whether the first arch alone is held from beyond the entrance: by a guy, or by pipe braces, which push as well as pull. To the stakes of its neighbour it can be tied
// one way only.
func firstHeld(p *layout.Plan, first int) bool {
	return slices.ContainsFunc(p.Stakes, func(s ground.Stake) bool {
		return s.Arch == first && (s.Kind() == ground.OfGuy || s.Kind() == ground.OfBrace && !p.Spec.Braces.Line)
	})
}
