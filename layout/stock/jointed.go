package stock

import (
	"fmt"
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// jointed returns the change of the spec that joins the arches' sticks from ones no longer than the longest to be had. Sticks that the spec does not give are those of
// legs so long. Where arches differ in their sticks it returns nothing: each would want its own.
func (b *bench) jointed(leg, longest measure.Length) []finding.Change {
	s := b.spec
	given := s.Given("arch.sticks")
	for i := range s.Except {
		key := fmt.Sprintf("arch.except[%d].", i)
		if !given || s.Given(key+"sticks") || s.Given(key+"pipe") {
			return nil
		}
	}
	left, right := s.Arch.Left, s.Arch.Right
	if !given {
		left, right = []measure.Length{leg}, []measure.Length{leg}
	}
	var legs []string
	for _, sticks := range [][]measure.Length{left, right} {
		parts := b.parts(sticks, longest)
		if len(parts) == 0 {
			return nil
		}
		legs = append(legs, b.written(parts))
	}
	if s.Arch.OneStick {
		legs = legs[:1]
	}
	cure := []finding.Change{{Key: "arch.sticks", Value: "[" + strings.Join(legs, ", ") + "]"}}
	if !given {
		cure = append(cure, finding.Change{Key: "arch.height"})
	}
	return cure
}

// parts cuts the long sticks of a leg, from the ground up, into some that are to be had; a coupling's stop makes up for some of the length. It returns none where they would
// be more than a leg may have.
func (b *bench) parts(sticks []measure.Length, longest measure.Length) []measure.Length {
	var list []measure.Length
	for _, stick := range sticks {
		for stick > longest {
			part := min(longest, stick-b.stop()-practice.LeastPart)
			if part < practice.LeastPart || len(list) == spec.MostPieces {
				return nil
			}
			list = append(list, part)
			stick -= part + b.stop()
		}
		list = append(list, stick)
	}
	if len(list) > spec.MostPieces {
		return nil
	}
	return list
}

// written is the sticks of a leg as the spec has them.
func (b *bench) written(sticks []measure.Length) string {
	var list []string
	for _, l := range sticks {
		list = append(list, b.spec.Units.Written(l))
	}
	if len(list) == 1 {
		return list[0]
	}
	return "[" + strings.Join(list, ", ") + "]"
}
