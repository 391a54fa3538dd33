package packet

import (
	"fmt"

	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/say"
)

// ScheduleFigures are the schedule's figures as names with values: how long the building takes, how near that is to a bound, and how much its people wait.
func ScheduleFigures(p *layout.Plan) [][2]string {
	s := p.Crew.Schedule
	if s.Takes == 0 {
		return nil
	}
	why := map[crew.Limit]string{crew.ByChain: "the longest chain of tasks", crew.ByHands: "all the work shared by all hands", crew.ByTools: "the work of one scarce tool"}[s.Why]
	long := fmt.Sprintf("%s in %s, at least %s by %s", clockLong(s.Takes), say.Count(len(s.Built()), "day"), clockLong(s.Least), why)
	if evenings := len(s.Days) - s.Marked - len(s.Built()); evenings > 0 {
		long += fmt.Sprintf(", %d before at the bench or for the trial not counted", evenings)
	}
	if len(s.Left) > 0 {
		long = "finds no room on the days there are, at least " + clockLong(s.Least)
	}
	return [][2]string{{"building", long}, {"people", fmt.Sprintf("%d, idle %.0f %% of their hours on site, nobody more than %.0f %%", s.Hands, 100*s.Idle, 100*s.Most)}}
}

// clockLong prints a time that something takes.
func clockLong(minutes float64) string {
	return fmt.Sprintf("%d h %02d min", int(minutes)/60, int(minutes)%60)
}
