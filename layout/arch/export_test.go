package arch

import "hoopwright/layout/finding"

// Solve solves one kind of arch by itself: its shape, how it stands, and what is wrong with it.
func Solve(in Input) (*Kind, []finding.Finding) {
	k := Shape(in)
	k.Stand()
	return k, k.Judge()
}
