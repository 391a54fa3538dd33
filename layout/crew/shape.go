// Arches that come out alike.

package crew

import (
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// Shape is arches that come out alike: one of them is measured, the first to stand, and one picture serves all. Only their feet may be apart by more than is held of feet.
type Shape []arch.Arch

// Shapes gathers arches by shape, in the order of their lowest numbers.
func Shapes(stand []arch.Arch, u measure.System) (list []Shape) {
	for _, a := range stand {
		i := slices.IndexFunc(list, func(s Shape) bool { return s.holds(a.Kind, u) })
		if i < 0 {
			i, list = len(list), append(list, nil)
		}
		list[i] = append(list[i], a)
	}
	return list
}

// Numbers lists the arches of the shape, rising.
func (s Shape) Numbers() []int { return numbers(s) }

// holds reports whether what is held of the shape's first arch holds of another: the same pipe, sticks and stakes, a crown as high, a way as wide.
func (s Shape) holds(k *arch.Kind, u measure.System) bool {
	o := s[0].Kind
	if !slices.Equal(k.Left, o.Left) || !slices.Equal(k.Right, o.Right) || k.Spec.Stake != o.Spec.Stake || k.Spec.Pipe.Name != o.Spec.Pipe.Name {
		return false
	}
	give := min(k.GiveOrTake(u), o.GiveOrTake(u))
	near := func(p, q measure.Length) bool { return measure.Abs(p-q) <= give }
	return near(k.Crown, o.Crown) && near(k.ShoulderWidth, o.ShoulderWidth)
}
