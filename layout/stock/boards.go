package stock

import (
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// BoardRows are the lengths of the sole boards of the left and of the right row, from arch 1 on.
type BoardRows [2][]measure.Length

// boardRows cuts the boards under both rows of feet: as few as may be, none longer than is sold, joined midway between feet. A bend's go from joint to joint straight under one foot.
func boardRows(in Input) (rows BoardRows, joints int) {
	for side := range rows {
		var feet []ground.Stake // in a row without a gap
		end := func() {
			if len(feet) > 0 {
				boards := boardsUnder(in, feet)
				rows[side], joints = append(rows[side], boards...), joints+len(boards)-1
			}
			feet = nil
		}
		for _, s := range in.Stakes {
			if !s.Base || s.Guy || s.Side != spec.Side(side) {
				continue
			}
			if n := len(feet); n > 0 && feet[n-1].Arch != s.Arch-1 {
				end()
			}
			feet = append(feet, s)
		}
		end()
	}
	return rows, joints
}

// boardsUnder cuts the boards under feet that follow each other, half a base beyond the first and the last. Where a bay alone is longer than a board it has more joints than the one midway,
// all as far from its feet as from each other.
func boardsUnder(in Input, feet []ground.Stake) (boards []measure.Length) {
	u, long := in.Spec.Units, practice.Board(in.Spec.Units)
	half := in.Spec.ArchOf(feet[0].Arch).Foot.Width / 2
	from, last, under := feet[0].Running-half, feet[0].Running-half, 0 // the board begins, the last joint it may end at, feet before that
	joint := func(at measure.Length, feet int, bent bool) {
		if last > from && (at-from > long || bent && under+feet > 1) {
			boards, from, under = append(boards, u.Taped(last-from)), last, 0
		}
		last, under = at, under+feet
	}
	for i, next := range feet[1:] {
		here := feet[i]
		bay := next.Running - here.Running
		parts := 2
		for 2*bay > long*measure.Length(parts) {
			parts++
		}
		for k := 1; k < parts; k++ {
			joint(here.Running+bay*measure.Length(k)/measure.Length(parts), max(0, 2-k), bends(in.Spec))
		}
	}
	joint(feet[len(feet)-1].Running+half, 1, bends(in.Spec))
	return append(boards, u.Taped(last-from))
}

// bends reports whether the rows are not straight.
func bends(s *spec.Spec) bool {
	return slices.ContainsFunc(s.Site.Route, func(l spec.Leg) bool { return l.Turn != 0 })
}

// long is how long all boards are together.
func (r BoardRows) long() (sum measure.Length) {
	for _, l := range slices.Concat(r[:]...) {
		sum += l
	}
	return sum
}
