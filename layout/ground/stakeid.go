package ground

import (
	"fmt"

	"hoopwright/layout/spec"
)

// StakeID names a stake.
type StakeID struct {
	Arch int // whose leg, guy or brace it holds
	Side spec.Side
	Guy  bool // it holds an arch lengthwise, by a guy or a brace
	Way  Way  // of a guy stake, or of the pegs of a bay whose braces cross
	Bay  int  // of a brace's peg; 0 for others
}

// Kind is what a stake holds.
type Kind int

// The kinds, in the order they are driven.
const (
	OfLeg Kind = iota
	OfGuy
	OfBrace
)

// Kind returns what the stake holds.
func (id StakeID) Kind() Kind {
	switch {
	case id.Bay > 0:
		return OfBrace
	case id.Guy:
		return OfGuy
	}
	return OfLeg
}

// Way says which of an arch's guy stakes of one side is meant.
type Way int

// The ways. An arch held both ways has a stake toward arch 1 and one away from it.
const (
	OneWay Way = iota
	Toward
	Away
)

var ways = [...]string{"", "a", "b"}

// Leg returns the name of the stake under a leg.
func Leg(side spec.Side, arch int) StakeID { return StakeID{Arch: arch, Side: side} }

// Before returns the letters before the arch's number.
func (id StakeID) Before() string {
	return [...]string{id.Side.Letter(), "G", "P"}[id.Kind()]
}

// After returns the letters after the arch's number.
func (id StakeID) After() string {
	if !id.Guy {
		return ""
	}
	return id.Side.Letter() + ways[id.Way]
}

// Neighbour returns the arch beside whose leg a brace's stake stands.
func (id StakeID) Neighbour() int { return 2*id.Bay + 1 - id.Arch }

// String returns the name: L3, G1R; G15La toward arch 1, G15Lb away from it; P1L the peg of a brace of arch 1.
func (id StakeID) String() string { return fmt.Sprintf("%s%d%s", id.Before(), id.Arch, id.After()) }

// Pair names the stake and the one across from it in one: 4 for L4 and R4, G15a for G15La and G15Ra.
func (id StakeID) Pair() string {
	if !id.Guy {
		return fmt.Sprint(id.Arch)
	}
	return fmt.Sprintf("%s%d%s", id.Before(), id.Arch, ways[id.Way])
}

// MarshalText writes the name.
func (id StakeID) MarshalText() ([]byte, error) { return []byte(id.String()), nil }
