package crew

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"time"

	"hoopwright/layout/practice"
	"hoopwright/layout/sun"
)

// Clock is a time of day in minutes after midnight.
type Clock int

// String prints it: 09:15.
func (c Clock) String() string { return fmt.Sprintf("%02d:%02d", c/60, c%60) }

// quarter is the grid of the schedule, in minutes.
const quarter = 15

// Stint is a stretch of time that some people are at a job without a break.
type Stint struct {
	Day        int // of Schedule.Days
	Begin, End Clock
	Hands      []int // who, counted from 0
}

// Workday is one day of work.
type Workday struct {
	Date       time.Time // zero where the spec does not give it
	Begin, End Clock     // of the work outdoors; the end is what daylight or the usual day allows
	Lunch      Clock     // all rest from then on; 0 on a day that has no lunch
	Light      *Light    // nil where the place or the day is not given
}

// Light is a day's light by the clock of Zone.
type Light struct {
	Rise, Set, Dusk Clock // dusk ends civil twilight: from then on it is dark
	Zone            string
}

// Schedule is who does what when. The first days are those of the marking; the days of building follow each other.
type Schedule struct {
	Days   []Workday
	Jobs   []Job
	Hands  int     // people, the organiser among them
	Marked int     // days of marking
	Least  float64 // minutes that the building takes at least with these hands: its longest chain of jobs, or all its work shared out
	Takes  float64 // minutes it takes as laid, lunch and nights left out, the light-up too
	Idle   float64 // share of the hands' time of Takes that nothing is given to
	Fit    Fit
}

// Fit is what would save a building of several days one of them. Zero values stand for what would not.
type Fit struct {
	Helpers    int     // so many, besides the organiser
	Beforehand float64 // minutes of all hands on days before, cutting, trying and wrapping
}

// Built returns the days of building.
func (s Schedule) Built() []Workday {
	return s.Days[s.Marked:]
}

// End returns when a job is done, and false for one that no time is known of.
func (j Job) End() (day int, at Clock, ok bool) {
	if len(j.Stints) == 0 {
		return 0, 0, false
	}
	last := j.Stints[len(j.Stints)-1]
	return last.Day, last.End, true
}

// schedule lays the tasks along their days.
func (in Input) schedule(tasks []Task) Schedule {
	s := in.best(tasks)
	if len(s.Built()) > 1 {
		s.Fit = in.fit(s)
	}
	return s
}

// best lays the tasks by stretches of several lengths, long ones first, and returns the schedule that takes least. Shorter stretches mean more changes of hands:
// they have to save half an hour, or a day.
func (in Input) best(tasks []Task) Schedule {
	const worth = 30
	list := []int{2 * practice.StretchArches, practice.StretchArches, practice.StretchArches / 2}
	if in.Spec.Tunnel.Arches > 2*practice.StretchArches {
		list = list[1:2]
	}
	s := in.laid(in.jobs(tasks, list[0]))
	for _, stretch := range list[1:] {
		o := in.laid(in.jobs(tasks, stretch))
		least := min(s.Least, o.Least)
		if o.Takes <= s.Takes-worth || len(o.Built()) < len(s.Built()) {
			s = o
		}
		s.Least = least
	}
	return s
}

// fit looks for what would save a day: more helpers, at most twice the hands; or the bench work done before.
func (in Input) fit(s Schedule) (f Fit) {
	days := len(s.Built()) - 1
	spec := *in.Spec
	more := in
	more.Spec = &spec
	for spec.Crew.Helpers = in.Spec.Crew.Helpers + 1; spec.Crew.Helpers < 2*s.Hands; spec.Crew.Helpers++ {
		tasks := Tasks(more)
		if more.may(more.jobs(tasks, practice.StretchArches), days) && len(more.best(tasks).Built()) <= days {
			f.Helpers = spec.Crew.Helpers
			break
		}
	}
	early := slices.Clone(s.Jobs)
	work := 0.0
	for i, j := range early {
		if j.Work == MakeLegs || j.Work == TryStrings || j.Work == WrapLegs {
			work += j.work()
			early[i].Minutes = 0
		}
	}
	if work > 0 && in.may(early, days) && len(in.laid(early).Built()) <= days {
		f.Beforehand = work / float64(s.Hands)
	}
	return f
}

// may reports whether jobs may fit so many days, by the bound alone.
func (in Input) may(jobs []Job, days int) bool {
	d := in.dayOf(in.first())
	return leastOf(jobs, chainsOf(jobs), in.Spec.Crew.Helpers+1) <= float64(days*int(d.End-d.Begin))
}

// first is the day of building, or the first of several; zero where the spec does not give it.
func (in Input) first() time.Time {
	if d := in.Spec.Crew.Date; !d.IsZero() {
		return d
	}
	return in.Spec.Dates.Build
}

// tries is how many orders of the jobs are tried, the longest chain first and the others strewn about it: of many jobs fewer.
func tries(jobs int) int { return min(12, max(3, 600/max(1, jobs))) }

// laid lays jobs along their days, the best of several orders: fewest days, earliest end, fewest hands idle.
func (in Input) laid(jobs []Job) Schedule {
	chains := chainsOf(jobs)
	dice := rand.New(rand.NewPCG(7, 23)) // the same orders for the same spec
	var best *board
	for try := range tries(len(jobs)) {
		rank := slices.Clone(chains)
		for i := range rank {
			if try > 0 {
				rank[i] *= 0.7 + 0.6*dice.Float64()
			}
		}
		for _, lunch := range []Clock{practice.Lunch, practice.Lunch - 30, practice.Lunch + 30} {
			b := in.newBoard(jobs, rank, lunch)
			b.run()
			if best == nil || b.takes < best.takes {
				best = b
			}
		}
	}
	s := Schedule{Days: best.days, Jobs: best.jobs, Hands: best.hands, Marked: best.marked, Least: leastOf(jobs, chains, best.hands), Takes: float64(best.takes)}
	work := 0.0
	for _, j := range jobs {
		if j.Work != MarkGround && j.Work != LightUp {
			work += j.work()
		}
	}
	if s.Takes > 0 {
		s.Idle = 1 - work/s.Takes/float64(s.Hands)
	}
	return s
}

// chainsOf returns for each job the minutes from its begin to the end of the longest chain of jobs that waits for it.
func chainsOf(jobs []Job) []float64 {
	chain := make([]float64, len(jobs))
	for i := len(jobs) - 1; i >= 0; i-- { // jobs stand after those they wait for
		chain[i] += jobs[i].Minutes
		for _, k := range jobs[i].After {
			if jobs[i].Work != LightUp {
				chain[k] = max(chain[k], chain[i])
			}
		}
	}
	return chain
}

// leastOf is a bound on the minutes of building: no order of the jobs takes less than the longest chain, nor than all their work shared by all hands.
func leastOf(jobs []Job, chains []float64, hands int) float64 {
	work, longest := 0.0, 0.0
	for i, j := range jobs {
		if j.Work != MarkGround && j.Work != LightUp {
			work += j.work()
			longest = max(longest, chains[i])
		}
	}
	return max(longest, work/float64(hands))
}

// dayOf returns the working hours of a day: to sunset where it is known, else as long as a usual day.
func (in Input) dayOf(date time.Time) Workday {
	begin := Clock(in.Spec.Crew.Start.Minutes())
	d := Workday{Date: date, Begin: (begin + quarter - 1) / quarter * quarter, End: min((begin+practice.LongDay)/quarter*quarter, 24*60)}
	place := in.Spec.Site.Place
	if place == nil || date.IsZero() {
		return d
	}
	day, ok := sun.Over(place.Lat, place.Long, date)
	if !ok {
		return d
	}
	zone := sun.Zone(place.Long)
	clock := func(t time.Time) Clock {
		t = t.In(zone)
		return Clock(t.Hour()*60 + t.Minute()) // down to the minute: too early is the careful side of a sunset
	}
	d.Light = &Light{Rise: clock(day.Rise) + 1, Set: clock(day.Set), Dusk: clock(day.Dusk) + 1, Zone: zone.String()}
	if end := d.Light.Set / quarter * quarter; end > d.Begin {
		d.End = end
	}
	return d
}
