package packet

import (
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// newStakeLeafFor solves a spec and begins its leaf.
func newStakeLeafFor(t *testing.T, name string, source []byte) *stakeLeaf {
	t.Helper()
	s, err := spec.Read(name, source)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	plan := layout.Solve(s)
	return newStakeLeaf(&binder{plan: plan, spec: plan.Spec, size: mustSheet(t, plan.Spec.Paper), twoSided: true})
}
