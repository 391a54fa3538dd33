package layout_test

import (
	"testing"
	"time"

	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// FuzzSolve: whatever the reader accepts is solved without a panic in a moment, and the plan is sound enough to print: every number is
// one, no list is missing, findings are well said, and none forbids building for what the spec did not give.
func FuzzSolve(f *testing.F) {
	f.Add(examples.Starter)
	for _, s := range ours {
		f.Add([]byte(s.text()))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		s, err := spec.Read("fuzz.yaml", source)
		if err != nil || s.Tunnel.Arches > 60 {
			return
		}
		began := time.Now()
		p := (*layout.Plan)(nil)
		if once, ok := plans.Load(string(source)); ok { // as other tests have solved it
			p = once.(func() *layout.Plan)()
		} else {
			p = layout.Solve(s)
		}
		if took := time.Since(began); took > 10*time.Second {
			t.Errorf("took %v", took)
		}
		numbersAreNumbers(t, p)
		listsAreThere(t, p)
		findingsAreWell(t, p)
		mustFixIsGiven(t, p)
		stringsAreFed(t, p)
		stringsAddUp(t, p)
		barsHold(t, p)
		circuitsHold(t, p)
	})
}
