package crew

import (
	"cmp"
	"slices"
	"time"

	"hoopwright/layout/practice"
)

// board lays jobs out quarter by quarter: whatever may begin does, the highest rank first, as far as hands are free.
type board struct {
	in     Input
	jobs   []Job
	rank   []float64
	hands  int
	lunch  Clock // when it is, on a day that has one
	days   []Workday
	marked int // days of marking
	takes  int // minutes of building, lunch left out

	left    []float64 // minutes of one pair of hands still to do, by job
	at      [][]int   // who is at each job
	phase   []Work    // what each person did last
	worked  []int     // quarters that each person has worked
	started []bool
}

func (in Input) newBoard(jobs []Job, rank []float64, lunch Clock) *board {
	hands := in.Spec.Crew.Helpers + 1
	b := &board{in: in, jobs: slices.Clone(jobs), rank: rank, hands: hands, lunch: lunch, at: make([][]int, len(jobs)), phase: make([]Work, hands), worked: make([]int, hands), started: make([]bool, len(jobs))}
	for p := range b.phase {
		b.phase[p] = -1
	}
	for i := range b.jobs {
		b.jobs[i].Stints = nil
		b.left = append(b.left, b.jobs[i].work())
	}
	return b
}

// most is how many days a building may take before the schedule gives up: what is left then has no time.
const most = 60

// run lays the marking on its day, the building on the days from its own, and the light-up at the dusk of the last.
func (b *board) run() {
	b.marked, _ = b.until(b.in.Spec.Dates.Mark, func(w Work) bool { return w == MarkGround })
	_, b.takes = b.until(b.in.first(), func(w Work) bool { return w != MarkGround && w != LightUp })
	b.lightUp()
}

// until works day by day from a date on until some works are done, and returns the days and minutes it takes.
func (b *board) until(first time.Time, of func(Work) bool) (days, minutes int) {
	for ; days < most && b.todo(of); days++ {
		date := first
		if !date.IsZero() {
			date = date.AddDate(0, 0, days)
		}
		minutes += b.day(b.in.dayOf(date), of)
	}
	return days, minutes
}

func (b *board) todo(of func(Work) bool) bool {
	for i := range b.jobs {
		if !b.done(i) && of(b.jobs[i].Work) {
			return true
		}
	}
	return false
}

// waiting lists the jobs that nobody is at and that may begin as far as other jobs go.
func (b *board) waiting(of func(Work) bool) (list []int) {
	for i := range b.jobs {
		if len(b.at[i]) == 0 && !b.done(i) && of(b.jobs[i].Work) && b.ready(i) {
			list = append(list, i)
		}
	}
	return list
}

func (b *board) done(i int) bool {
	return b.left[i] <= 1e-9 && (b.started[i] || b.jobs[i].Minutes == 0)
}

// day works through one day and returns the minutes worked. Lunch is left out where all is done by an hour after noon.
func (b *board) day(d Workday, of func(Work) bool) int {
	before := b.saved()
	if worked := b.through(d, of); !b.todo(of) && d.Begin+Clock(worked) <= practice.Lunch+60 || d.Begin >= practice.Lunch-60 || d.End <= practice.Lunch+60 {
		return worked
	}
	b.restore(before)
	d.Lunch = b.lunch
	return b.through(d, of)
}

// saved and restore let a day be tried.
func (b *board) saved() board {
	c := *b
	c.jobs, c.left, c.phase, c.worked, c.started = slices.Clone(b.jobs), slices.Clone(b.left), slices.Clone(b.phase), slices.Clone(b.worked), slices.Clone(b.started)
	for i := range c.jobs {
		c.jobs[i].Stints = slices.Clone(c.jobs[i].Stints)
	}
	return c
}

func (b *board) restore(c board) { *b = c }

// through goes through a day's quarters.
func (b *board) through(d Workday, of func(Work) bool) (worked int) {
	b.days = append(b.days, d)
	b.at = make([][]int, len(b.jobs))
	for now := d.Begin; now < d.End && b.todo(of); now += quarter {
		if d.Lunch > 0 && now >= d.Lunch && now < d.Lunch+practice.MinutesLunch {
			b.at = make([][]int, len(b.jobs))
			continue
		}
		b.give(now, d, of)
		worked += quarter
		for i, who := range b.at {
			if len(who) == 0 {
				continue
			}
			b.note(i, now)
			if b.left[i] -= quarter * float64(len(who)); b.left[i] <= 1e-9 {
				b.at[i] = nil
			}
		}
	}
	return worked
}

// give puts free hands to jobs: first to those that were begun, then to those that may begin; what is left over joins those that begin now and that more hands help.
// Nobody joins later or leaves before the end, save at the
// clearing up: a crew that changes every quarter of an hour is none.
func (b *board) give(now Clock, d Workday, of func(Work) bool) {
	free := b.free()
	if len(free) == 0 {
		return
	}
	waiting := b.waiting(of)
	slices.SortStableFunc(waiting, func(i, k int) int {
		return cmp.Or(cmp.Compare(b2i(b.started[k]), b2i(b.started[i])), cmp.Compare(b.rank[k], b.rank[i]))
	})
	var begun []int
	for _, i := range waiting {
		if b.jobs[i].Least > len(free) || !b.fits(i, now, d) {
			continue
		}
		b.at[i], free = b.pick(i, free, b.jobs[i].Least)
		b.started[i] = true
		begun = append(begun, i)
	}
	for _, i := range append(begun, b.clearing()...) {
		if n := len(b.at[i]); n < b.jobs[i].Most {
			var more []int
			add := min(b.jobs[i].Most-n, len(free))
			if b.jobs[i].Work != ClearUp {
				add = add / b.jobs[i].Least * b.jobs[i].Least // another pair
			}
			more, free = b.pick(i, free, add)
			b.at[i] = append(slices.Clone(b.at[i]), more...)
			slices.Sort(b.at[i])
		}
	}
}

// clearing is the clearing up, if it goes on: whoever is done joins it.
func (b *board) clearing() (list []int) {
	for i, j := range b.jobs {
		if j.Work == ClearUp && len(b.at[i]) > 0 {
			list = append(list, i)
		}
	}
	return list
}

func b2i(v bool) int {
	if v {
		return 1
	}
	return 0
}

// ready reports whether all that a job waits for is done.
func (b *board) ready(i int) bool {
	return !slices.ContainsFunc(b.jobs[i].After, func(k int) bool { return !b.done(k) })
}

// fits keeps the raising of the first arches from being broken off: it is done by lunch or by dark, or begins a half day.
func (b *board) fits(i int, now Clock, d Workday) bool {
	if b.jobs[i].Work != RaiseFirst {
		return true
	}
	end, begin := d.End, d.Begin
	if now < d.Lunch {
		end = d.Lunch
	} else if d.Lunch > 0 {
		begin = d.Lunch + practice.MinutesLunch
	}
	return float64(end-now) >= b.jobs[i].Minutes || now == begin
}

// free lists who is at nothing.
func (b *board) free() (list []int) {
	busy := slices.Concat(b.at...)
	for p := range b.hands {
		if !slices.Contains(busy, p) {
			list = append(list, p)
		}
	}
	return list
}

// pick takes people for a job: those who did the same before, then those who have worked least.
func (b *board) pick(i int, free []int, n int) (taken, rest []int) {
	order := slices.Clone(free)
	work := b.jobs[i].Work
	slices.SortStableFunc(order, func(p, q int) int {
		same := cmp.Compare(b2i(b.phase[q] == work), b2i(b.phase[p] == work))
		return cmp.Or(same, cmp.Compare(b.worked[p], b.worked[q]))
	})
	taken = slices.Sorted(slices.Values(order[:n]))
	rest = slices.Sorted(slices.Values(order[n:]))
	return taken, rest
}

// note writes a quarter down: as part of the stint before where the same people go on.
func (b *board) note(i int, now Clock) {
	for _, p := range b.at[i] {
		b.phase[p] = b.jobs[i].Work
		b.worked[p]++
	}
	day := len(b.days) - 1
	list := b.jobs[i].Stints
	if n := len(list); n > 0 && list[n-1].Day == day && list[n-1].End == now && slices.Equal(list[n-1].Hands, b.at[i]) {
		list[n-1].End += quarter
		return
	}
	b.jobs[i].Stints = append(list, Stint{day, now, now + quarter, b.at[i]})
}

// lightUp has everything looked at by dark on the last day, at dusk or when all is plugged in, whichever is later. Where no dusk is known it has no time.
func (b *board) lightUp() {
	for i, j := range b.jobs {
		if j.Work != LightUp || len(b.days) == 0 || b.days[len(b.days)-1].Light == nil || !b.ready(i) {
			continue
		}
		last := len(b.days) - 1
		at := (b.days[last].Light.Dusk + quarter - 1) / quarter * quarter
		for _, k := range j.After {
			if day, end, ok := b.jobs[k].End(); ok && day == last {
				at = max(at, end)
			}
		}
		var who []int
		for p := range j.Most {
			who = append(who, p)
		}
		long := Clock(j.Minutes+quarter-1) / quarter * quarter
		b.jobs[i].Stints = []Stint{{last, at, at + long, who}}
		b.left[i], b.started[i] = 0, true
	}
}
