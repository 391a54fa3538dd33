package layout_test

import (
	"slices"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"
)

// comesBefore is the order of the trade, action by action: common practice, no source. What stands on the left is done, on every stretch that the right one has, before
// the right one begins.
var comesBefore = [][2]crew.Action{
	{crew.ReadTicket, crew.DriveStakes}, {crew.PullTest, crew.DriveStakes}, {crew.DriveStakes, crew.RaiseRest}, {crew.MeasureWidths, crew.RaiseRest},
	{crew.NameSticks, crew.WindPipe}, {crew.TestOutlets, crew.TestStrings}, {crew.TestStrings, crew.WindPipe}, {crew.TestStrings, crew.HangRows}, {crew.TestStrings, crew.HangDrops},
	{crew.CutLegs, crew.JoinCrown}, {crew.NameSticks, crew.JoinCrown}, {crew.CheckDay, crew.RaiseSame}, {crew.MeasureArch, crew.CutRidge}, {crew.MeasureBay, crew.CutRidge},
	{crew.CutRidge, crew.RaiseRest}, {crew.RaiseRest, crew.SightAlong}, {crew.SightAlong, crew.HangRows}, {crew.SightAlong, crew.HangDrops}, {crew.SightAlong, crew.TryOpening},
	{crew.TestOutlets, crew.LayCords}, {crew.CheckCords, crew.PlugRuns}, {crew.HangRows, crew.PlugRuns}, {crew.HangDrops, crew.PlugRuns}, {crew.TryOpening, crew.DarkWalk}, {crew.TestLoaded, crew.DarkWalk},
}

// minuteOf puts a moment of the schedule on one line.
func minuteOf(day int, at crew.Clock) int { return day*24*60 + int(at) }

// scheduleKeeps holds a schedule to what a day bears, by other means than it was laid by: every task is in the jobs it belongs to and in no other work, all of it gets its
// hands, nobody is at two places, nobody works in the dark or at lunch, what must come before does.
func scheduleKeeps(t *testing.T, p *layout.Plan) {
	s := p.Crew.Schedule
	for i, task := range p.Crew.Tasks {
		in := 0
		for k, j := range s.Jobs {
			if slices.Contains(j.Tasks, i) && (k == 0 || s.Jobs[k-1].Work != j.Work) {
				in++
			}
		}
		if later := task.Phase == crew.Nights || task.Phase == crew.TakeDown; later != (in == 0) || in > 1 {
			t.Errorf("task %d, action %d of %s, is in %d works", i, task.Action, task.Phase, in)
		}
	}
	at := func(a crew.Action) int {
		return slices.IndexFunc(p.Crew.Tasks, func(t crew.Task) bool { return t.Action == a })
	}
	if flags := at(crew.FlagDots); flags >= 0 && flags < at(crew.CallLocator) { // a flag's wire goes into the ground
		t.Error("flags are set before the lines are marked")
	}
	if dots, call, ticket := at(crew.CheckDots), at(crew.CallLocator), at(crew.ReadTicket); dots >= 0 && (dots > call || call > ticket) {
		t.Errorf("dots are checked, the locator called, the ticket read in the order %d, %d, %d", dots, call, ticket)
	}
	jobsHaveHands(t, s)
	nobodyTwice(t, s)
	for _, pair := range comesBefore {
		inOrder(t, p, pair[0], pair[1])
	}
	if s.Takes < s.Least-1e-6 {
		t.Errorf("takes %v minutes, under its bound of %v", s.Takes, s.Least)
	}
}

// jobsHaveHands holds every stint to its day and every job to its people and its work.
func jobsHaveHands(t *testing.T, s crew.Schedule) {
	for i, j := range s.Jobs {
		given := 0.0
		for _, st := range j.Stints {
			d, n := s.Days[st.Day], len(st.Hands)
			given += float64(int(st.End-st.Begin) * n)
			if n < j.Least || n > j.Most || n > s.Hands {
				t.Errorf("job %d: %d people, not %d to %d", i, n, j.Least, j.Most)
			}
			if st.Begin%15 != 0 || st.End%15 != 0 || st.End <= st.Begin {
				t.Errorf("job %d: %s to %s is not by quarter hours", i, st.Begin, st.End)
			}
			if j.Work == crew.LightUp {
				if d.Light == nil || st.Begin < d.Light.Dusk {
					t.Errorf("the light-up is at %s, before dark", st.Begin)
				}
				continue
			}
			if st.Begin < d.Begin || st.End > d.End || d.Light != nil && st.End > d.Light.Set {
				t.Errorf("job %d: %s to %s is outside its day's %s to %s", i, st.Begin, st.End, d.Begin, d.End)
			}
			if d.Lunch > 0 && st.Begin < d.Lunch+45 && st.End > d.Lunch {
				t.Errorf("job %d: %s to %s goes into lunch", i, st.Begin, st.End)
			}
		}
		known := j.Work != crew.LightUp || s.Days[len(s.Days)-1].Light != nil
		if need := j.Minutes * float64(j.Most); known && (given < need-1e-6 || len(j.Stints) == 0 && need > 0) {
			t.Errorf("job %d of work %d gets %v minutes of hands and needs %v", i, j.Work, given, need)
		}
		if day, end, ok := j.End(); j.Work == crew.RaiseFirst && ok && (day != j.Stints[0].Day || len(j.Stints) > 1 && float64(end-j.Stints[0].Begin) < j.Minutes) {
			t.Errorf("the first arches are left half up: %+v", j.Stints)
		}
	}
}

// nobodyTwice reports people at two jobs at once.
func nobodyTwice(t *testing.T, s crew.Schedule) {
	at := map[[2]int]int{} // person and quarter: the job
	for i, j := range s.Jobs {
		for _, st := range j.Stints {
			for _, who := range st.Hands {
				for q := st.Begin; q < st.End; q += 15 {
					key := [2]int{who, minuteOf(st.Day, q)}
					if other, busy := at[key]; busy {
						t.Errorf("person %d is at jobs %d and %d on day %d at %s", who, other, i, st.Day, q)
					}
					at[key] = i
				}
			}
		}
	}
}

// inOrder holds two actions to their order, on stretches that share arches.
func inOrder(t *testing.T, p *layout.Plan, first, then crew.Action) {
	has := func(j crew.Job, a crew.Action) bool {
		return slices.ContainsFunc(j.Tasks, func(i int) bool { return p.Crew.Tasks[i].Action == a })
	}
	for i, a := range p.Crew.Schedule.Jobs {
		for k, b := range p.Crew.Schedule.Jobs {
			apart := a.First > 0 && b.First > 0 && (a.Last < b.First || b.Last < a.First)
			if i == k || apart || a.Work == b.Work || !has(a, first) || !has(b, then) || len(b.Stints) == 0 {
				continue
			}
			// Bench work on the ridge comes after what is wound on legs: the same action, another job.
			if first == crew.MeasureArch && a.Work != crew.RaiseFirst {
				continue
			}
			day, end, ok := a.End()
			if begin := b.Stints[0]; !ok || minuteOf(day, end) > minuteOf(begin.Day, begin.Begin) {
				t.Errorf("action %d ends on day %d at %s, after action %d begins on day %d at %s", first, day, end, then, begin.Day, begin.Begin)
			}
		}
	}
}
