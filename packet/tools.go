package packet

import "hoopwright/layout/practice"

// ladder reports whether the crowns are out of reach from the ground.
func (b *binder) ladder() bool {
	for _, k := range b.plan.Kinds {
		if k.Crown > practice.Reach(b.spec.Units) {
			return true
		}
	}
	return false
}
