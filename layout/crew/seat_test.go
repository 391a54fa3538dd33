package crew

import (
	"slices"
	"testing"
)

// Where fewer are of age than a work takes, nobody younger gets the seat. Raising is no longer for it, for whoever lacks is found first; the other work of those who are there is as much as it was.
func TestTooFewOfAge(t *testing.T) {
	of := func(young int) Plan {
		in := garden(6)
		in.Spec.Crew.Helpers, in.Spec.Crew.Young = 5, young
		return Day(in)
	}
	all := of(0).Schedule.Jobs
	for young := 2; young <= 5; young++ {
		s := of(young).Schedule
		if len(s.Left) > 0 {
			t.Errorf("%d young: work %v is left", young, s.Left)
		}
		for i, j := range s.Jobs {
			if !j.Work.Raises() && !slices.Contains([]Work{TryStake, Drive, FirstRidge, TryOutlets, TryStrings, Join, PlugIn}, j.Work) {
				continue
			}
			for _, st := range j.Stints {
				if last := st.Hands[len(st.Hands)-1]; last >= s.Hands-young {
					t.Errorf("%d young: person %d of %d is at work %d", young, last, s.Hands, j.Work)
				}
			}
			if was := all[i]; j.Work != was.Work || j.Work.Raises() && j.Minutes != was.Minutes || !j.Work.Raises() && j.work() != was.work() {
				t.Errorf("%d young: work %d takes %v minutes of %d, with all of age work %d %v of %d", young, j.Work, j.Minutes, j.Most, was.Work, was.Minutes, was.Most)
			}
		}
	}
}
