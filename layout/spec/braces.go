package spec

import (
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Brace is one pair of braces of a bay, one in each wall: from the legs of an arch to pegs of its own.
type Brace struct {
	Bay, Arch int
	Along     measure.Length // of the pegs from the arch, toward the far end
}

// Pairs returns the braces. A pipe pushes and pulls and a bay takes one in each wall, its foot away from the nearer end of the walk; lines are crossed.
func (s *Spec) Pairs() (list []Brace) {
	reach := s.Tunnel.Spacing - practice.PegShort(s.Units)
	for _, bay := range s.Braces.Bays {
		ahead, back := Brace{bay, bay, reach}, Brace{bay, bay + 1, -reach}
		switch {
		case s.Braces.Line:
			list = append(list, ahead, back)
		case 2*bay <= s.Tunnel.Arches:
			list = append(list, ahead)
		default:
			list = append(list, back)
		}
	}
	return list
}

// Held returns how high on the legs guys are tied, and how far out along the tunnel their stakes stand; the same of braces where there are no guys.
func (s *Spec) Held() (from, out measure.Length) {
	if len(s.Guys.Arches) == 0 && len(s.Braces.Bays) > 0 {
		return s.Braces.From, s.Tunnel.Spacing - practice.PegShort(s.Units)
	}
	return s.Guys.From, s.Guys.Out
}

// TieEnds is what guys end on: stakes, or weights where arches stand on weighted bases.
func (s *Spec) TieEnds() string {
	if s.Arch.Foot != nil {
		return "weights"
	}
	return "stakes"
}

// TiedAt lists how high on an arch's legs its guys are tied and its braces clamped.
func (s *Spec) TiedAt(arch int) (heights []measure.Length) {
	if slices.Contains(s.Guys.Arches, arch) {
		heights = append(heights, s.Guys.From)
	}
	if slices.ContainsFunc(s.Pairs(), func(b Brace) bool { return b.Arch == arch }) {
		heights = append(heights, s.Braces.From)
	}
	return heights
}

// Netted reports whether nets hang on an arch's guys: those of an end arch stand beside where people come in or go out.
func (s *Spec) Netted(arch int) bool {
	return (arch == 1 || arch == s.Tunnel.Arches) && slices.Contains(s.Guys.Arches, arch)
}

// BraceLength is how long a brace is, from the leg to its peg at the ground.
func (s *Spec) BraceLength() measure.Length {
	return measure.Length(math.Hypot(float64(s.Braces.From), float64(s.Tunnel.Spacing-practice.PegShort(s.Units))))
}
