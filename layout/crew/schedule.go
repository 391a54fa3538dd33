// The schedule as it is printed: who is at what, when.

package crew

import (
	"fmt"
	"math"
	"slices"
	"time"
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
	Hands      []int // who, counted from 0: the organiser; those under age come last
}

// Schedule is who does what when. The first days are those of the marking; the others follow each other, evenings at the bench before them or between them.
type Schedule struct {
	Days   []Workday
	Jobs   []Job
	Hands  int     // people, the organiser among them
	Young  int     // of them, under age
	Marked int     // days of marking
	Least  float64 // minutes of building, evenings at the bench left out, that no order of the jobs comes under
	Why    Limit   // what forbids less
	Takes  float64 // minutes that it takes as laid, lunch and nights left out, the light-up too
	Idle   float64 // share of the hands' time of Takes that no work is given to
	Most   float64 // the same of whoever waits most, by the bars of the sheet
	Left   []int   // jobs that found no time on the days there are
	Fit    Fit
}

// Limit is what a bound on the building comes from.
type Limit int

// The limits.
const (
	ByChain Limit = iota // the longest chain of jobs that wait for each other
	ByHands              // all the work shared by all hands
	ByTools              // the work of one scarce tool
)

// Built returns the days of building, without evenings at the bench.
func (s Schedule) Built() []Workday { return outdoors(s.Days[s.Marked:]) }

// End returns when a job is done, and false for one that no time is known of.
func (j Job) End() (day int, at Clock, ok bool) {
	if len(j.Stints) == 0 {
		return 0, 0, false
	}
	last := j.Stints[len(j.Stints)-1]
	return last.Day, last.End, true
}

// Reached returns when a share of a job is done, at the next full quarter hour: no sooner than whoever is at it can be that far.
func (j Job) Reached(share float64) (day int, at Clock) {
	left := share * j.work()
	for _, st := range j.Stints {
		n := float64(len(st.Hands))
		day, at = st.Day, min(st.End, st.Begin+Clock(math.Ceil(left/n/quarter-1e-9))*quarter)
		if left -= n * float64(st.End-st.Begin); left <= 1e-9 {
			break
		}
	}
	return day, at
}

// Ties reports whether a day ends with arches that nothing holds both ways yet, so that the newest is tied for the night: some stand, and sockets, crown line and guys are not
// looked after.
func (s Schedule) Ties(day int) bool {
	stands, held := false, false
	for _, j := range s.Jobs {
		switch end, _, ok := j.End(); {
		case j.Work == RaiseFirst:
			stands = ok && j.Stints[0].Day <= day
		case j.Work == HoldRidge:
			held = ok && end <= day && !slices.ContainsFunc(s.Left, func(i int) bool { return s.Jobs[i].Work == HoldRidge })
		}
	}
	return s.Days[day].TieOff > 0 && stands && !held
}

// Overnight reports whether any day ends so.
func (s Schedule) Overnight() bool {
	for day := range s.Days {
		if s.Ties(day) {
			return true
		}
	}
	return false
}

// AfterSunset reports whether work of these phases goes on after the sun has set, as far as the place and the day are known.
func (p Plan) AfterSunset(phases ...Phase) bool {
	return slices.ContainsFunc(p.Schedule.Jobs, func(j Job) bool {
		return j.Work != LightUp && slices.ContainsFunc(j.Tasks, func(i int) bool { return slices.Contains(phases, p.Tasks[i].Phase) }) && slices.ContainsFunc(j.Stints, func(s Stint) bool {
			light := p.Schedule.Days[s.Day].Light
			return light != nil && s.End > light.Set
		})
	})
}

// BegunApart are the arches at which a stretch is begun while the one before does not stand yet.
func (s Schedule) BegunApart() (arches []int) {
	when := func(s Stint, c Clock) int { return s.Day*minutesADay + int(c) }
	for _, j := range s.Jobs {
		if j.Work != RaiseOthers || len(j.Stints) == 0 {
			continue
		}
		for _, o := range s.Jobs {
			if o.Work != RaiseOthers || o.Last != j.First-1 || len(o.Stints) == 0 {
				continue
			}
			if end := o.Stints[len(o.Stints)-1]; when(j.Stints[0], j.Stints[0].Begin) < when(end, end.End) {
				arches = append(arches, j.First)
			}
		}
	}
	slices.Sort(arches)
	return arches
}

// LaysBeside reports whether cords are laid while arches are still raised.
func (s Schedule) LaysBeside() bool {
	first, _ := s.from(Lay)
	_, last := s.from(RaiseFirst, RaiseOthers)
	return first < last
}

// LiesOvernight reports whether cords lie for a night or more before they are joined and covered.
func (s Schedule) LiesOvernight() bool {
	first, _ := s.from(Lay)
	_, joined := s.from(Join)
	return first/minutesADay < joined/minutesADay
}

const minutesADay = 24 * 60

// from returns when the first of some works begins and the last ends, in minutes from the first day's midnight on; where there is none the first is later than anything.
func (s Schedule) from(works ...Work) (first, last int) {
	first = math.MaxInt
	for _, j := range s.Jobs {
		if !slices.Contains(works, j.Work) {
			continue
		}
		for _, st := range j.Stints {
			first, last = min(first, st.Day*minutesADay+int(st.Begin)), max(last, st.Day*minutesADay+int(st.End))
		}
	}
	return first, last
}

// schedule lays the tasks along their days.
func (in Input) schedule(tasks []Task) Schedule {
	c := in.calendar()
	l, ways := in.laidOut(tasks, c)
	s := l.schedule()
	s.Least, s.Why = c.least(ways)
	if len(s.Left) > 0 || c.open && len(s.Built()) > 1 {
		s.Fit = in.fit(c, tasks, s)
	}
	return s
}

// first is the day of building, or the first of several; zero where the spec does not give it.
func (in Input) first() time.Time {
	if d := in.Spec.Crew.Date; !d.IsZero() {
		return d
	}
	return in.Spec.Dates.Build
}

// hands counts the people and those of them who are under age. The organiser is not.
func (in Input) hands() (all, young int) {
	all = in.Spec.Crew.Helpers + 1
	return all, min(in.Spec.Crew.Young, all-1)
}

// schedule makes what is printed of what was laid: stints with people, and the figures of the whole.
func (l *laid) schedule() Schedule {
	s := Schedule{Days: l.days, Jobs: slices.Clone(l.jobs), Marked: l.marked}
	s.Hands, s.Young = l.hands, l.young
	l.seat(s.Jobs)
	for i := range s.Jobs {
		if s.Jobs[i].Work != LightUp && !l.done(i) {
			s.Left = append(s.Left, i)
		}
	}
	s.lightUp()
	quarters, work, given := 0, 0.0, make([]int, l.hands)
	for day := l.marked; day < len(l.days); day++ {
		if l.days[day].Bench() {
			continue
		}
		quarters += l.worked[day]
		read := int(l.days[day].Read) / quarter
		work += float64(read * quarter * l.hands)
		for p := range given {
			given[p] += read
		}
	}
	for _, j := range s.Jobs {
		if j.Work == LightUp {
			continue
		}
		work += j.work()
		for _, st := range j.Stints {
			if st.Day < l.marked || s.Days[st.Day].Bench() {
				work -= float64(int(st.End-st.Begin) * len(st.Hands))
				continue
			}
			for _, p := range st.Hands {
				given[p] += int(st.End-st.Begin) / quarter
			}
		}
	}
	if s.Takes = float64(quarters * quarter); quarters > 0 {
		s.Idle = max(0, 1-work/s.Takes/float64(s.Hands))
		for p := range given {
			s.Most = max(s.Most, 1-float64(given[p])/float64(quarters))
		}
	}
	return s
}

// lightUp has everything looked at by dark on the last day, at dusk or when all is plugged in, whichever is later. Where no dusk is known it has no time.
func (s *Schedule) lightUp() {
	for i, j := range s.Jobs {
		last := len(s.Days) - 1
		if j.Work != LightUp || last < 0 || s.Days[last].Light == nil || len(s.Left) > 0 {
			continue
		}
		at := (s.Days[last].Light.Dusk + quarter - 1) / quarter * quarter
		for _, k := range j.After {
			if day, end, ok := s.Jobs[k].End(); ok && day == last {
				at = max(at, end)
			}
		}
		var who []int
		for p := range j.Most {
			who = append(who, p)
		}
		long := Clock(j.Minutes+quarter-1) / quarter * quarter
		s.Jobs[i].Stints = []Stint{{last, at, at + long, who}}
	}
}
