// Jobs laid along their days in one order, quarter hour by quarter hour.

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

	left   []float64 // minutes of one pair of hands still to do, by job
	at     []crowd   // who is at each job
	idle   crowd     // who is at none
	spare  tools     // that are in no use
	log    []entry
	worked []int // quarters worked, by day
	last   int   // minutes from the first day's midnight to the end
	joined int   // how often a crew came to a job

	open  []int     // room for give
	heads []float64 // and for tooMuch
}

// crowd counts people.
type crowd struct{ n, young int }

// building is what must be done before the work is.
var building = allOfWork &^ worksOf(MarkGround, LightUp)

// newLaid returns jobs of which none is laid.
func newLaid(jobs []Job, c calendar) *laid {
	n := len(jobs)
	return &laid{jobs: jobs, hands: c.hands, young: c.young, tools: c.tools, left: make([]float64, n), at: make([]crowd, n), heads: make([]float64, n)}
}

// lay lays the jobs anew in an order. An open list of days ends when all is done.
func (l *laid) lay(o order, c calendar) {
	l.order, l.marked, l.last, l.joined = o, 0, 0, 0
	l.days, l.log, l.worked = l.days[:0], l.log[:0], l.worked[:0]
	for i := range l.jobs {
		l.left[i] = l.jobs[i].work()
	}
	mark := worksOf(MarkGround)
	for _, d := range c.marking {
		if l.todo(mark) {
			l.day(d, mark)
			l.marked++
		}
	}
	for _, d := range c.others {
		if !l.todo(building) {
			break
		}
		l.day(d, d.works)
	}
}

func (l *laid) todo(of works) bool {
	for i := range l.jobs {
		if !l.done(i) && of.has(l.jobs[i].Work) {
			return true
		}
	}
	return false
}

func (l *laid) done(i int) bool { return l.left[i] <= 1e-9 }

// begun reports whether somebody has been at a job.
func (l *laid) begun(i int) bool { return l.left[i] < l.jobs[i].work() }

// tooMuch reports whether all hands have more to do of some works than so many minutes see done, or jobs that wait for each other take longer.
func (l *laid) tooMuch(of works, minutes Clock) bool {
	sum, long := 0.0, 0.0
	for i := range l.jobs { // jobs stand after those they wait for
		j, head := &l.jobs[i], 0.0
		for _, k := range j.After {
			head = max(head, l.heads[k])
		}
		if of.has(j.Work) && !l.done(i) {
			sum += l.left[i]
			head += l.quarters(i, j.Most) * quarter
		}
		l.heads[i], long = head, max(long, head)
	}
	return sum > float64(l.hands*int(minutes))+1e-3 || long > float64(minutes)
}

// day works through one day: without a lunch where all is done soon after its hour, and to its end where all is done then. Else there is a lunch, and what stands is tied off at the end.
func (l *laid) day(d Workday, of works) {
	left, log, last, joined := slices.Clone(l.left), len(l.log), l.last, l.joined
	back := func() {
		copy(l.left, left)
		l.log, l.days, l.worked, l.last, l.joined = l.log[:log], l.days[:len(l.days)-1], l.worked[:len(l.worked)-1], last, joined
	}
	stands := of != worksOf(MarkGround) && !d.Bench()
	const late = practice.Lunch + 60
	if d.Begin < practice.Lunch-60 && d.End > late {
		if !l.tooMuch(of, late-d.Begin) {
			if l.through(d, of, late); !l.todo(of) && !(stands && l.todo(building)) {
				return
			}
			back()
		}
		d.Lunch = l.lunch
	}
	if !stands || !l.tooMuch(building, d.End-d.Begin) {
		if l.through(d, of, d.End); !stands || !l.todo(building) {
			return
		}
		back()
	}
	d.works &^= worksOf(ClearUp) // it ends the work, and the tying off a day
	d.TieOff = d.End - practice.MinutesTieOff
	if d.Light != nil && d.Light.Set < d.End {
		d.TieOff = d.Light.Set/quarter*quarter - practice.MinutesTieOff
	}
	l.through(d, of, d.End)
}

// through goes through a day's quarters until so late.
func (l *laid) through(d Workday, of works, until Clock) {
	l.days = append(l.days, d)
	l.worked = append(l.worked, 0)
	day := len(l.days) - 1
	l.rest()
	quarters := 0
	for now := d.Begin; now < until && l.todo(of); now += quarter {
		if d.rests(now) {
			l.rest()
			quarters += b2i(now < d.Begin+d.Read)
			continue
		}
		for i := range l.at {
			if l.at[i].n > 0 && (!d.allows(l.jobs[i].Work, now) || l.ahead(i, l.at[i].n)) { // dusk
				l.leave(i)
			}
		}
		l.give(now, &d, of)
		quarters++
		for i, who := range l.at {
			if who.n == 0 {
				continue
			}
			l.last, l.worked[day] = day*24*60+int(now+quarter), quarters
			l.log = append(l.log, entry{i, day, now, who.n, who.young})
			if l.left[i] -= quarter * float64(who.n); l.done(i) {
				l.leave(i)
			}
		}
	}
}

// rest has everybody leave what they are at.
func (l *laid) rest() {
	clear(l.at)
	l.idle, l.spare = crowd{l.hands, l.young}, l.tools
}

// leave has everybody leave a job.
func (l *laid) leave(i int) {
	who := l.at[i]
	l.at[i] = crowd{}
	l.idle.n, l.idle.young = l.idle.n+who.n, l.idle.young+who.young
	for k := range l.spare {
		l.spare[k] += l.jobs[i].uses(k, who.n)
	}
}

// give puts free hands to jobs: first to those that were begun, then to those that may begin; what is left over joins those that begin now and that more hands help.
// Nobody leaves before the end.
func (l *laid) give(now Clock, d *Workday, of works) {
	if l.idle.n == 0 {
		return
	}
	open := l.open[:0]
	for i := range l.jobs {
		if w := l.jobs[i].Work; l.at[i].n == 0 && !l.done(i) && of.has(w) && d.allows(w, now) && l.ready(i, now) && l.fits(i, now, d) && !l.ahead(i, l.jobs[i].Least) {
			open = append(open, i)
		}
	}
	l.open = open
	slices.SortStableFunc(open, func(i, k int) int {
		unload := cmp.Compare(b2i(l.jobs[k].Work == Unload), b2i(l.jobs[i].Work == Unload))
		clear := cmp.Compare(b2i(l.jobs[i].Work == ClearUp), b2i(l.jobs[k].Work == ClearUp)) // nobody is kept by it from what lights the tunnel
		return cmp.Or(unload, clear, cmp.Compare(b2i(l.begun(k)), b2i(l.begun(i))), cmp.Compare(l.rank[k], l.rank[i]))
	})
	begun := open[:0]
	for _, i := range open {
		if !l.inTurn(i) || !l.join(i, l.jobs[i].Least) {
			continue
		}
		begun = append(begun, i)
		if l.greedy {
			l.fill(i)
		}
	}
	for _, i := range begun {
		l.fill(i)
	}
	l.comeLater(begun)
}

// inTurn reports whether all stretches of arches before a job's are raised or being raised: no gap is left between those that stand that nobody is at.
func (l *laid) inTurn(i int) bool {
	for k := range l.jobs {
		if j := &l.jobs[k]; j.Work == RaiseOthers && l.jobs[i].Work == RaiseOthers && j.First < l.jobs[i].First && !l.begun(k) && l.at[k].n == 0 {
			return false
		}
	}
	return true
}

// comeLater has whoever is still free join what was begun before: pairs where that ends the work sooner, and anybody at the clearing up.
func (l *laid) comeLater(begun []int) {
	for i := range l.jobs {
		j := &l.jobs[i]
		if l.at[i].n == 0 {
			continue
		}
		if l.joins && pairWork.has(j.Work) && !slices.Contains(begun, i) {
			for n := j.crew(); l.sooner(i) && l.at[i].n+n <= l.cap(i) && !l.ahead(i, l.at[i].n+n) && l.join(i, n); {
			}
		}
		if j.Work == ClearUp {
			for l.at[i].n < j.Most && l.join(i, 1) {
			}
		}
	}
}

// sooner reports whether another crew ends a job sooner.
func (l *laid) sooner(i int) bool {
	return l.quarters(i, l.at[i].n+l.jobs[i].crew()) < l.quarters(i, l.at[i].n)
}

// quarters is how long so many still take for a job.
func (l *laid) quarters(i, n int) float64 { return math.Ceil(l.left[i]/quarter/float64(n) - 1e-9) }

// cap is how many people a job is given at most. At the bench nothing else waits for hands: whoever came is put to use.
func (l *laid) cap(i int) int {
	if l.days[len(l.days)-1].Bench() {
		return l.jobs[i].Most
	}
	return l.most[i]
}

// fill adds as many crews more as a job may have, where the last of them still ends it sooner.
func (l *laid) fill(i int) {
	can, n := l.at[i].n, l.jobs[i].crew()
	for can+n <= l.cap(i) && can-l.at[i].n+n <= l.idle.n {
		can += n
	}
	for can > l.at[i].n && (l.quarters(i, can-n) == l.quarters(i, can) || l.ahead(i, can)) {
		can -= n
	}
	for l.at[i].n < can && l.join(i, n) {
	}
}

// join puts so many more to a job, as many of those under age as it may have; false where hands or tools are short.
func (l *laid) join(i, n int) bool {
	j, was := &l.jobs[i], l.at[i]
	all := was.n + n
	young := min(l.idle.young, n, all-j.grown(all)-was.young)
	if n-young > l.idle.n-l.idle.young {
		return false
	}
	spare := l.spare
	for k := range spare {
		if spare[k] -= j.uses(k, all) - j.uses(k, was.n); spare[k] < 0 {
			return false
		}
	}
	l.idle.n, l.idle.young, l.spare = l.idle.n-n, l.idle.young-young, spare
	l.at[i] = crowd{all, was.young + young}
	l.joined++
	return true
}

func b2i(v bool) int {
	if v {
		return 1
	}
	return 0
}

// ready reports whether all that a job waits for is done by now, and set where it is bent.
func (l *laid) ready(i int, now Clock) bool {
	behind := func(p part) bool { return l.left[p.job] > (1-p.share)*l.jobs[p.job].work()+1e-9 }
	waits := func(k int) bool { return !l.done(k) || l.jobs[i].Work == RaiseFirst && l.sets(k, now) }
	return !slices.ContainsFunc(l.jobs[i].After, waits) && !slices.ContainsFunc(l.jobs[i].Partly, behind)
}

// sets reports whether what a job that is done made still sets.
func (l *laid) sets(k int, now Clock) bool {
	if l.jobs[k].Sets == 0 {
		return false
	}
	today := len(l.days) - 1
	return slices.ContainsFunc(l.log, func(e entry) bool { return e.job == k && e.day == today && e.at+quarter+Clock(l.jobs[k].Sets) > now })
}

// ahead reports whether so many would do more of a job in a quarter hour than goes along with what is done of another.
func (l *laid) ahead(i, n int) bool {
	for _, b := range l.jobs[i].Along {
		if l.done(b.job) {
			continue
		}
		work, other := l.jobs[i].work(), 1-l.left[b.job]/l.jobs[b.job].work()
		if then := max(0, l.left[i]-quarter*float64(n)); work-then > (b.free+b.rate*other)*work+1e-9 {
			return true
		}
	}
	return false
}

// fits keeps the raising of the first arches from being broken off: it is done by lunch or by dark, or begins a half day.
func (l *laid) fits(i int, now Clock, d *Workday) bool {
	if w := l.jobs[i].Work; w != RaiseFirst && w != TryArch {
		return true
	}
	end, begin := d.End, d.Begin+d.Read
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
