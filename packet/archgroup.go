package packet

import (
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// archGroup is arches that one picture serves: the same sticks, span and stakes, and shapes that differ by no more than the give and take of any one.
// The first of them to stand is drawn, and measured.
type archGroup []*arch.Kind

// archGroups gathers the kinds, in the order of their lowest numbers.
func archGroups(kinds []*arch.Kind) []archGroup {
	var groups []archGroup
	for _, k := range kinds {
		i := slices.IndexFunc(groups, func(g archGroup) bool { return sameShape(g[0], k) })
		if i < 0 {
			i, groups = len(groups), append(groups, nil)
		}
		groups[i] = append(groups[i], k)
	}
	return groups
}

// sameShape reports whether two kinds may share a picture.
func sameShape(a, b *arch.Kind) bool {
	if !slices.Equal(a.Left, b.Left) || !slices.Equal(a.Right, b.Right) || a.Span != b.Span || a.Spec.Stake != b.Spec.Stake || a.Spec.Pipe.Name != b.Spec.Pipe.Name {
		return false
	}
	band := max(a.Band, b.Band)
	for _, pair := range [][2]measure.Length{
		{a.Crown, b.Crown}, {a.Widest, b.Widest}, {a.ShoulderWidth, b.ShoulderWidth}, {a.HeadWidth, b.HeadWidth},
	} {
		if d := pair[0] - pair[1]; d > band || d < -band {
			return false
		}
	}
	d := a.RightGround - b.RightGround
	return d <= alikeSlope && d >= -alikeSlope
}

// alikeSlope is how far the right feet of arches in one picture may differ in height over the middle of their ground lines. Heights are
// taken from a string between the feet, so the numbers stay the same; the ground is drawn as it lies under most of them.
const alikeSlope = 2 * measure.Inch

// numbers returns the arches of the group, rising.
func (g archGroup) numbers() []int {
	var list []int
	for _, k := range g {
		list = append(list, k.Numbers...)
	}
	slices.Sort(list)
	return list
}
