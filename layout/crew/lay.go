package crew

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/practice"
)

// order is one way to lay the jobs: which goes first, how many people each is given at most, when lunch is, whether a job that begins takes all it can use before the
// next one gets anybody.
type order struct {
	rank   []float64
	most   []int
	lunch  Clock
	greedy bool
	joins  bool // a pair that is free joins work that pairs share
}

// entry is a quarter hour of a job: how many are at it, of them under age.
type entry struct {
	job, day int
	at       Clock
	n, young int
}

// laid is the jobs along their days, quarter by quarter: whatever may begin does, the highest rank first, as far as hands and tools are free. People are counted here, not
// named: whoever is free will do.
type laid struct {
	order
	jobs         []Job
	hands, young int
	tools        tools
	days         []Workday
	marked       int

	left    []float64 // minutes of one pair of hands still to do, by job
	started []bool
	at      []crowd // who is at each job
	open    []int   // what may begin in the quarter at hand
	log     []entry
	worked  []int // quarters worked, by day
	last    int   // minutes from the first day's midnight to the end
	joined  int   // how often a crew came to a job
}

// crowd counts people.
type crowd struct{ n, young int }

// lay lays jobs in an order, in the room of a laying that nobody wants any more. An open list of days ends when all is done.
func lay(jobs []Job, o order, c calendar, used laid) *laid {
	l := &laid{order: o, jobs: jobs, hands: c.hands, young: c.young, tools: c.tools, left: make([]float64, len(jobs)), started: make([]bool, len(jobs)), at: make([]crowd, len(jobs)),
		log: used.log[:0], open: used.open}
	for i := range jobs {
		l.left[i] = jobs[i].work()
	}
	mark := worksOf(MarkGround)
	for _, d := range c.marking {
		if l.todo(mark) {
			l.day(d, mark)
			l.marked++
		}
	}
	for _, d := range c.others {
		if !l.todo(allOfWork &^ worksOf(MarkGround, LightUp)) {
			break
		}
		l.day(d, d.works)
	}
	return l
}

func (l *laid) todo(of works) bool {
	for i := range l.jobs {
		if of.has(l.jobs[i].Work) && !l.done(i) {
			return true
		}
	}
	return false
}

// over reports whether works take all hands longer than from one time of a day to another, whatever their order.
func (l *laid) over(of works, from, until Clock) bool {
	minutes := 0.0
	for i := range l.jobs {
		if of.has(l.jobs[i].Work) && !l.done(i) {
			minutes += l.left[i]
		}
	}
	return minutes > float64(l.hands)*float64(until-from+quarter)
}

func (l *laid) done(i int) bool {
	return l.left[i] <= 1e-9 && (l.started[i] || l.jobs[i].Minutes == 0)
}

// day works through one day: without a lunch and to its end where all is done then, else with them. What cannot be done in the time is not tried.
func (l *laid) day(d Workday, of works) {
	left, started, log, joined := slices.Clone(l.left), slices.Clone(l.started), len(l.log), l.joined
	back := func() {
		l.joined = joined
		copy(l.left, left)
		copy(l.started, started)
		l.log, l.days, l.worked = l.log[:log], l.days[:len(l.days)-1], l.worked[:len(l.worked)-1]
	}
	rest, own := allOfWork&^worksOf(MarkGround, LightUp), of&^worksOf(LightUp) // a day for some works alone is the last of them, not of all
	alone := of == worksOf(MarkGround) || d.Bench()
	eats, soon := d.Begin < practice.Lunch-60 && d.End > practice.Lunch+60, d.End
	if eats {
		soon = practice.Lunch + 60
	}
	if !l.over(own, d.Begin, soon) {
		l.through(d, of, soon)
		if (alone || !l.todo(rest)) && (!eats || !l.todo(own)) {
			return
		}
		back()
	}
	if eats {
		d.Lunch = l.lunch
	}
	if alone || !l.over(rest, d.Begin, d.End) {
		l.through(d, of, d.End)
		if alone || !l.todo(rest) {
			return
		}
		back()
	}
	d.TieOff = d.End - practice.MinutesTieOff
	if d.Light != nil && d.Light.Set < d.End {
		d.TieOff = d.Light.Set/quarter*quarter - practice.MinutesTieOff
	}
	l.through(d, of, d.End)
}

// through goes through a day's quarters until a time.
func (l *laid) through(d Workday, of works, until Clock) {
	l.days = append(l.days, d)
	l.worked = append(l.worked, 0)
	day := len(l.days) - 1
	clear(l.at)
	quarters, end := 0, Clock(0)
	for now := d.Begin; now < until && l.todo(of); now += quarter {
		if d.rests(now) {
			clear(l.at)
			continue
		}
		for i := range l.jobs {
			if l.at[i].n > 0 && !d.allows(l.jobs[i].Work, now) { // dusk
				l.at[i] = crowd{}
			}
		}
		l.give(now, d, of)
		quarters++
		for i, who := range l.at {
			if who.n == 0 {
				continue
			}
			end, l.worked[day] = now+quarter, quarters
			l.log = append(l.log, entry{i, day, now, who.n, who.young})
			if l.left[i] -= quarter * float64(who.n); l.left[i] <= 1e-9 {
				l.at[i] = crowd{}
			}
		}
	}
	if end > 0 {
		l.last = day*24*60 + int(end)
	}
}

// give puts free hands to jobs: first to those that were begun, then to those that may begin; what is left over joins those that begin now and that more hands help.
// Nobody leaves before the end; who joins later are pairs that are free, where that ends the work sooner, and whoever is free at the clearing up.
func (l *laid) give(now Clock, d Workday, of works) {
	free, tools := l.free()
	var begun []int
	for _, i := range l.begins(now, d, of) {
		if !l.join(i, l.jobs[i].Least, &free, &tools) {
			continue
		}
		l.started[i] = true
		begun = append(begun, i)
		if l.greedy {
			l.fill(i, &free, &tools)
		}
	}
	for _, i := range begun {
		l.fill(i, &free, &tools)
	}
	for i := range l.jobs {
		if l.at[i].n == 0 {
			continue
		}
		j := &l.jobs[i]
		if l.joins && pairWork.has(j.Work) && !slices.Contains(begun, i) {
			for l.sooner(i) && l.at[i].n+j.Least <= l.most[i] && l.join(i, j.Least, &free, &tools) {
			}
		}
		if j.Work == ClearUp { // whoever is done joins it
			for l.at[i].n < j.Most && l.join(i, 1, &free, &tools) {
			}
		}
	}
}

// begins lists the jobs that may begin, the first to be given hands ahead.
func (l *laid) begins(now Clock, d Workday, of works) []int {
	open := l.open[:0]
	for i := range l.jobs {
		if w := l.jobs[i].Work; l.at[i].n == 0 && of.has(w) && !l.done(i) && d.allows(w, now) && l.ready(i) && l.fits(i, now, d) {
			open = append(open, i)
		}
	}
	l.open = open
	slices.SortStableFunc(open, func(i, k int) int {
		unload := cmp.Compare(b2i(l.jobs[k].Work == Unload), b2i(l.jobs[i].Work == Unload))
		return cmp.Or(unload, cmp.Compare(b2i(l.started[k]), b2i(l.started[i])), cmp.Compare(l.rank[k], l.rank[i]))
	})
	return open
}

// sooner reports whether another crew ends a job sooner.
func (l *laid) sooner(i int) bool {
	return l.quarters(i, l.at[i].n+l.jobs[i].Least) < l.quarters(i, l.at[i].n)
}

// quarters is how long so many still take for a job.
func (l *laid) quarters(i, n int) float64 { return math.Ceil(l.left[i]/quarter/float64(n) - 1e-9) }

// fill adds as many crews more as a job may have, where the last of them still ends it sooner.
func (l *laid) fill(i int, free *crowd, t *tools) {
	can, n := l.at[i].n, l.jobs[i].Least
	for can+n <= l.most[i] && can-l.at[i].n+n <= free.n {
		can += n
	}
	for can > l.at[i].n && l.quarters(i, can-n) == l.quarters(i, can) {
		can -= n
	}
	for l.at[i].n < can && l.join(i, n, free, t) {
	}
}

// join puts so many more to a job, as many of those under age as it may have; false where hands or tools are short.
func (l *laid) join(i, n int, free *crowd, t *tools) bool {
	j, was := &l.jobs[i], l.at[i]
	young := min(free.young, n, was.n+n-j.grown(was.n+n)-was.young)
	if n > free.n || n-young > free.n-free.young {
		return false
	}
	for k := range t {
		if t[k] < min(j.Uses[k], was.n+n)-min(j.Uses[k], was.n) {
			return false
		}
	}
	for k := range t {
		t[k] -= min(j.Uses[k], was.n+n) - min(j.Uses[k], was.n)
	}
	free.n, free.young = free.n-n, free.young-young
	l.at[i] = crowd{was.n + n, was.young + young}
	l.joined++
	return true
}

// free counts who and what is at nothing.
func (l *laid) free() (crowd, tools) {
	free, left := crowd{l.hands, l.young}, l.tools
	for i, who := range l.at {
		if who.n == 0 {
			continue
		}
		free.n, free.young = free.n-who.n, free.young-who.young
		for k := range left {
			left[k] -= min(l.jobs[i].Uses[k], who.n)
		}
	}
	return free, left
}

func b2i(v bool) int {
	if v {
		return 1
	}
	return 0
}

// ready reports whether all that a job waits for is done.
func (l *laid) ready(i int) bool {
	for _, k := range l.jobs[i].After {
		if !l.done(k) {
			return false
		}
	}
	return true
}

// fits keeps the raising of the first arches from being broken off: it is done by lunch or by dark, or begins a half day.
func (l *laid) fits(i int, now Clock, d Workday) bool {
	if w := l.jobs[i].Work; w != RaiseFirst && w != TryArch {
		return true
	}
	end, begin := d.End, d.Begin
	if d.Light != nil {
		end = min(end, d.Light.Set)
	}
	if d.TieOff > 0 {
		end = d.TieOff
	}
	if now < d.Lunch {
		end = d.Lunch
	} else if d.Lunch > 0 {
		begin = d.Lunch + practice.MinutesLunch
	}
	return float64(end-now) >= l.jobs[i].Minutes || now == begin
}
