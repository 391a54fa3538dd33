// Package crew orders the work: the tasks from the first dot of paint to the last stake out of the ground, who does them, how long they take at the stated rates, where
// someone must measure before the next one, and when each is done by the hands and the daylight there are.
//
// The way through the files: Day (day.go) takes the solved tunnel. tasksOf (tasks.go) lists everything to do, each phase in a file of its own (taskmark.go to tasknights.go); a task
// (task.go) is made of the values of action.go and kit.go. For the clock, tasks are gathered into jobs (work.go) and days are made (workday.go). Jobs are laid along the days in
// one order (lay.go), the best order is searched for (search.go), people are seated (seat.go) and the whole is summed up (schedule.go) beside what no order comes under (bound.go).
// Where the time is too short, fit.go looks for what would do. calendar.go has the days of the season, shape.go the arches that come out alike.
package crew

import (
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/spec"
)

// Phase is a crew's job.
type Phase string

// The phases, in order.
const (
	Marking  Phase = "marking"
	Driving  Phase = "driving"
	Cutting  Phase = "cutting"
	Wrapping Phase = "wrapping"
	Raising  Phase = "raising"
	Hanging  Phase = "hanging"
	Powering Phase = "power"
)

// Plan is the whole job, and the marking and the building along their days.
type Plan struct {
	Tasks    []Task
	Schedule Schedule
	Crowns   Crowns  // that are measured as the row grows
	Lowerers int     // crews that take arches down side by side
	Kept     float64 // minutes of one pair of hands that legs kept wrapped this year save: of the taking down and of the next building
	Findings []finding.Finding
}

// Hours returns the hours of all people together: at the marking, the trial and the building, their waiting too; at the checks of one night; and at the taking down.
func (p Plan) Hours() (building, night, down float64) {
	building = p.Schedule.Takes * float64(p.Schedule.Hands)
	for _, d := range p.Schedule.Days {
		if d.Bench() {
			building += float64(int(d.Read) * p.Schedule.Hands)
		}
	}
	for _, j := range p.Schedule.Jobs {
		for _, st := range j.Stints {
			if d := p.Schedule.Days[st.Day]; st.Day < p.Schedule.Marked || d.Bench() || j.Work == LightUp {
				building += float64(int(st.End-st.Begin) * len(st.Hands))
			}
		}
	}
	return building / 60, work(p.Tasks, Nights) / 60, work(p.Tasks, TakeDown) / 60
}

// work sums what the tasks of some phases take of one pair of hands, in minutes.
func work(tasks []Task, phases ...Phase) (minutes float64) {
	for _, t := range tasks {
		if slices.Contains(phases, t.Phase) {
			minutes += t.Minutes * float64(t.Who.people())
		}
	}
	return minutes
}

// kept is what keeping the legs wrapped saves: the strings stay on this year, and come out on next year, on legs that are put together.
func (in Input) kept() (minutes float64) {
	takes := func(store spec.Store) float64 {
		now, next := *in.Spec, *in.Spec
		now.Store, now.Found.Wrapped, next.Found.Wrapped = store, false, store == spec.Wrapped
		this, then := in, in
		this.Spec, then.Spec = &now, &next
		then.LegCuts, then.InShed = 0, map[lights.Part]bool{} // what stood
		for _, w := range in.Lights.Wraps {
			then.InShed[w.On] = true
		}
		return work(tasksOf(this, TakeDown), TakeDown) + work(tasksOf(then, Cutting, Wrapping), Cutting, Wrapping)
	}
	return takes(spec.Stripped) - takes(spec.Wrapped)
}
