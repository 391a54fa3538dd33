// What would have the work done in time, each tried by laying it anew.

package crew

import (
	"fmt"
	"slices"
	"sort"
	"strings"
	"time"

	"hoopwright/layout/finding"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Fit is what would have the work done on the days there are, or where nobody has named them in a day. Each was tried by laying the work anew. Zero values stand for what
// would not.
type Fit struct {
	Helpers  int              // so many, besides the organiser
	Start    time.Duration    // begun then, where nobody has named the days
	Evenings int              // so many evenings before, at cutting, trying and wrapping
	Wrapped  bool             // with legs that were kept wrapped since last year
	MoreDays int              // so many days more after the last, where the spec names the days
	Cures    []finding.Change // the same, one key each, the fewest people's trouble first
}

// mostEvenings and mostMoreDays are how many evenings and days more are looked for.
const (
	mostEvenings = 4
	mostMoreDays = 3
)

// fit looks for what would do: an earlier start, evenings before, more helpers, at most twice the hands, more days, legs that are wrapped already.
func (in Input) fit(c calendar, tasks []Task, s Schedule) (f Fit) {
	days := 1
	if !c.open {
		days = len(s.Built()) + mostMoreDays
	}
	does := func(change func(*spec.Spec)) bool { return in.does(change, tasks, days) }
	cure := func(key, value string) { f.Cures = append(f.Cures, finding.Change{Key: key, Value: value}) }
	for start := in.Spec.Crew.Start - 30*time.Minute; c.open && start >= practice.EarlyStart*time.Minute && f.Start == 0; start -= 30 * time.Minute {
		if does(func(sp *spec.Spec) { sp.Crew.Start = start }) {
			f.Start = start
			cure("crew.start", clockOf(start))
		}
	}
	for n := 1; n <= mostEvenings && f.Evenings == 0; n++ {
		if more := in.evenings(n); does(func(sp *spec.Spec) { sp.Crew.Days = more }) {
			f.Evenings = n
			cure("crew.days", written(more))
		}
	}
	n := sort.Search(s.Hands, func(i int) bool { // more hands do no worse
		return does(func(sp *spec.Spec) { sp.Crew.Helpers += i + 1 })
	})
	if n < s.Hands {
		f.Helpers = in.Spec.Crew.Helpers + n + 1
		cure("crew.helpers", fmt.Sprint(f.Helpers))
	}
	for n := 1; n <= mostMoreDays && !c.open && f.MoreDays == 0; n++ {
		if more := longer(in.Spec.Crew.Days, n); does(func(sp *spec.Spec) { sp.Crew.Days = more }) {
			f.MoreDays = n
			cure("crew.days", written(more))
		}
	}
	if f.Wrapped = len(in.InShed) > 0 && !in.Spec.Found.Wrapped && does(func(sp *spec.Spec) { sp.Found.Wrapped = true }); f.Wrapped {
		cure("found.wrapped", "true")
	}
	if c.open {
		cure("crew.days", written(planned(s)))
	}
	return f
}

// does reports whether all is done in so many days with a change of the spec. The tasks are those of the spec as it is: hands and wrapped legs alone change them.
func (in Input) does(change func(*spec.Spec), tasks []Task, days int) bool {
	was, sp := in.Spec, *in.Spec
	change(&sp)
	if in.Spec = &sp; sp.Crew.Helpers != was.Crew.Helpers || sp.Found.Wrapped != was.Found.Wrapped {
		tasks = tasksOf(in)
	}
	c := in.calendar()
	ways := in.ways(tasks, layEarly, c)
	if least, _ := c.least(ways); least > c.room(days) {
		return false
	}
	l := c.best(ways, fewTries)
	return !l.todo(allOfWork&^worksOf(LightUp)) && len(outdoors(l.days[l.marked:])) <= days
}

// room is the minutes from begin to end of the first so many days outdoors.
func (c calendar) room(days int) (minutes float64) {
	list := outdoors(c.others)
	for _, d := range list[:min(days, len(list))] {
		minutes += float64(d.End - d.Begin)
	}
	return minutes
}

// evenings are the days of the spec with so many evenings at the bench more, on the evenings before the first day outdoors.
func (in Input) evenings(n int) []spec.CrewDay {
	list := slices.Clone(in.Spec.Crew.Days)
	first := in.first()
	at := slices.IndexFunc(list, func(d spec.CrewDay) bool {
		return len(d.Work) == 0 || slices.ContainsFunc(d.Work, func(w string) bool { return w != "trial" && w != "marking" && byWord[w]&^bench != 0 })
	})
	if at < 0 {
		at = len(list)
	} else if !list[at].Date.IsZero() {
		first = list[at].Date
	}
	var more []spec.CrewDay
	for back := 1; len(more) < n; back++ {
		d := spec.CrewDay{From: practice.EveningFrom * time.Minute, Until: (practice.EveningFrom + practice.Evening) * time.Minute, Work: []string{"cutting", "wrapping"}}
		if !first.IsZero() {
			d.Date = first.AddDate(0, 0, -back)
		}
		if d.Date.IsZero() || !slices.ContainsFunc(list, func(o spec.CrewDay) bool { return o.Date.Equal(d.Date) }) {
			more = append(more, d)
		}
	}
	slices.Reverse(more)
	list = slices.Insert(list, at, more...)
	slices.SortStableFunc(list, func(a, b spec.CrewDay) int { return a.Date.Compare(b.Date) })
	return list
}

// longer are the days of the spec with so many more like the last.
func longer(days []spec.CrewDay, n int) []spec.CrewDay {
	list := slices.Clone(days)
	for range n {
		d := list[len(list)-1]
		if !d.Date.IsZero() {
			d.Date = d.Date.AddDate(0, 0, 1)
		}
		list = append(list, d)
	}
	return list
}

// planned are the days that the building takes, as days of the spec.
func planned(s Schedule) (list []spec.CrewDay) {
	for _, d := range s.Days[s.Marked:] {
		day := spec.CrewDay{Date: d.Date, From: time.Duration(d.Begin) * time.Minute}
		if d.Bench() {
			day.Until, day.Work = time.Duration(d.End)*time.Minute, []string{"cutting", "wrapping"}
		}
		list = append(list, day)
	}
	return list
}

// clockOf is a time of day as one types it.
func clockOf(t time.Duration) string { return Clock(t.Minutes()).String() }

// written is days as one types them.
func written(days []spec.CrewDay) string {
	var list []string
	for _, d := range days {
		var words []string
		if !d.Date.IsZero() {
			words = append(words, "date: "+d.Date.Format(time.DateOnly))
		}
		if d.From > 0 {
			words = append(words, "from: "+clockOf(d.From))
		}
		if d.Until > 0 {
			words = append(words, "until: "+clockOf(d.Until))
		}
		if len(d.Work) > 0 {
			words = append(words, "work: ["+strings.Join(d.Work, ", ")+"]")
		}
		list = append(list, "{"+strings.Join(words, ", ")+"}")
	}
	return "[" + strings.Join(list, ", ") + "]"
}
