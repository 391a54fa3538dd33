// Tasks gathered into jobs of the schedule: which wait for which, how many people each takes.

package crew

import (
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/practice"
)

// Work is one line of the schedule: tasks that one group does in one go, or stretch by stretch of the tunnel.
type Work int

// The works, in the order of the run sheet.
const (
	TryArch     Work = iota // one wrapped arch, a week before
	Unload                  // and read the dangers aloud: all hands
	MarkGround              // on a day of its own, or on the first day of building
	TryStake                // ticket, look up, first stake
	Drive                   // the stakes, by stretches; where nothing is driven bases
	LayBags                 // on them, by stretches
	MakeLegs                // cut, name, join, mark
	TryOutlets              // before any string is tried
	TryStrings              // and tag
	WrapLegs                // by stretches
	FirstRidge              // the ridge piece that is tried: cut and wound once the stakes of arches 1 and 2 stand
	RaiseFirst              // arches 1 and 2 and the first ridge piece: never broken off
	CutRidges               // the other ridge pieces, where none is wound
	WrapRidges              // by stretches: cut, then wound
	RaiseOthers             // by stretches
	HoldRidge               // sockets, guys, caps
	HangLights              // rows and drops, and try the way through where no cord is hung
	Lay                     // cords, by stretches
	HangUp                  // cords, up the legs
	TryWay                  // once cords hang
	Join                    // all but what is at the outlets, and look at every joint
	PlugIn                  // burn, test
	ClearUp
	LightUp // at dusk
	Works   // how many there are
)

// Job is a work, or a stretch of it, with when it is done and by whom.
type Job struct {
	Work        Work
	Tasks       []int  // of Plan.Tasks; where the work goes by stretches each job has its share of them
	First, Last int    // arches of its stretch; 0 where it is one job for all
	After       []int  // jobs that are done before it begins
	Partly      []part // jobs of which a share is
	Along       []beside
	Least, Most int // people: never fewer; more do not help
	Grown       int // of them, of age
	Uses        tools
	Minutes     float64
	Sets        int     // minutes that what it made lies then, before an arch is raised
	Stints      []Stint // when, by whom; none for a light-up whose dusk nobody knows
}

// part is a share of a job that is done before another begins.
type part struct {
	job   int
	share float64
}

// beside is a job that another one goes along with: until all of it is done, of the other no more is than a share that is free and so much for each share of it that is done.
type beside struct {
	job        int
	free, rate float64
}

// tools counts stepladders, trestles and long tapes.
type tools [3]int

var toolThings = [len(tools{})]Thing{Stepladder, Trestles, LongTape}

// uses is how many tools of a kind so many at the job take: of ladders each crew its share, of trestles every two people two.
func (j Job) uses(k, n int) int {
	switch toolThings[k] {
	case Stepladder:
		return (j.Uses[k]*n + j.Most - 1) / j.Most
	case Trestles:
		n += n % 2
	}
	return min(j.Uses[k], n)
}

// grown is how many of so many at the job are of age.
func (j Job) grown(n int) int { return min(n, j.Grown) }

// Raises reports whether arches are stood up at a work: only people of age do, and where the spec has too few of them the others are still to be found.
func (w Work) Raises() bool { return w == TryArch || w == RaiseFirst || w == RaiseOthers }

// ofAge leaves empty what seats so few of age cannot take: nobody younger gets one. Raising takes no longer for it, for whoever lacks is found first; other work does.
func (j Job) ofAge(there int) Job {
	lacks := j.Grown - there
	if lacks <= 0 {
		return j
	}
	work := j.work()
	j.Grown, j.Most = there, j.Most-lacks
	if j.Least = min(j.Least, j.Most); !j.Work.Raises() {
		j.Minutes = work / float64(j.Most)
	}
	return j
}

// work is what the job takes of one pair of hands, in minutes.
func (j Job) work() float64 { return j.Minutes * float64(j.Most) }

// byStretches are the works that go by stretches, so that raising need not wait for the last wrap of a long tunnel. They may rest over lunch or the night.
var byStretches = []Work{Drive, LayBags, WrapLegs, CutRidges, WrapRidges, RaiseOthers, Lay}

// afterSecond are those of them that begin with arch 3 and the ridge piece to it: a stretch of arches 1 and 2 alone has none of their work.
var afterSecond = worksOf(CutRidges, WrapRidges, RaiseOthers)

// pairWork is what a pair that comes free may join.
var pairWork = worksOf(Drive, LayBags, MakeLegs, TryStrings, WrapLegs, WrapRidges, Lay, HangUp, Join)

// shared are the works that several groups do side by side: pairs, at rows a crew for each wall.
var shared = []Work{Drive, LayBags, MakeLegs, TryStrings, WrapLegs, WrapRidges, HangLights, Lay, HangUp, Join}

// oneMore are those of them at which one alone helps a pair: there is no ladder or sledge for every two.
var oneMore = worksOf(LayBags, MakeLegs, TryStrings, WrapLegs, WrapRidges, Lay, Join)

// oneAlone are the works at which one alone can be, where no saw or ladder is at hand.
var oneAlone = worksOf(MakeLegs, TryStrings, WrapLegs, Lay, HangLights, TryWay, ClearUp)

// crew is how many come to the job together.
func (j Job) crew() int {
	if oneMore.has(j.Work) {
		return 1
	}
	return j.Least
}

// workOfAction are the works of actions that belong to one whatever was done before.
var workOfAction = map[Action]Work{
	ReadTicket: TryStake, LookUp: TryStake, CheckAgain: TryStake, PullTest: TryStake, TapeDepths: Drive, DriveStakes: Drive, SetBases: Drive, MeasureWidths: Drive, WeighDown: LayBags,
	TestOutlets: TryOutlets, TrialArch: TryArch, TestStrings: TryStrings, TagStrings: TryStrings, CutTrial: FirstRidge, RaiseRest: RaiseOthers,
	ScrewSockets: HoldRidge, SightAlong: HoldRidge, LayCords: Lay, HangCords: HangUp, JoinPlugs: Join, CheckCords: Join, DarkWalk: LightUp,
}

// workOf tells which work a task belongs to; at is the work of the task before it. Tasks after the day belong to none.
func (in Input) workOf(t Task, at Work) (Work, bool) {
	if t.Phase == Marking {
		return MarkGround, true
	}
	if w, ok := workOfAction[t.Action]; ok {
		return w, true
	}
	switch t.Action {
	case SawOpenings, SawSteel: // whoever is free, before the way is tried; in the yard or before the day
		return 0, false
	case CutRidge:
		if slices.ContainsFunc(in.Lights.Wraps, func(w lights.Wrap) bool { return in.woundLater(w.On) }) {
			return WrapRidges, true
		}
		return CutRidges, true
	case WindPipe:
		switch on := in.Lights.Wraps[t.Of.Wraps[0]].On; {
		case in.woundLater(on):
			return WrapRidges, true
		case on.Kind == lights.Ridge:
			return FirstRidge, true
		}
	}
	switch t.Phase {
	case Cutting:
		return MakeLegs, true
	case Wrapping:
		return WrapLegs, true
	case Raising: // guys and measures go with the arch before them
		switch at {
		case RaiseOthers, HoldRidge:
			return at, true
		case CutRidges, WrapRidges:
			return HoldRidge, true
		}
		return RaiseFirst, true
	case Hanging:
		if t.Action == TryOpening && in.Hung > 0 {
			return TryWay, true
		}
		return HangLights, true
	case Powering:
		return PlugIn, true
	}
	return 0, false
}

// waitsFor lists what must be done before a work; of works by stretches the same stretch, or all where the one after is in one piece.
var waitsFor = map[Work][]Work{
	MarkGround: {Unload}, TryStake: {Unload, MarkGround}, Drive: {MarkGround, TryStake}, LayBags: {Drive}, MakeLegs: {TryArch, Unload}, TryOutlets: {Unload}, TryStrings: {Unload, TryOutlets}, WrapLegs: {MakeLegs, TryOutlets, TryStrings},
	FirstRidge: {MakeLegs, TryStrings}, RaiseFirst: {Unload, MakeLegs, Drive, LayBags, WrapLegs, FirstRidge}, CutRidges: {RaiseFirst}, WrapRidges: {RaiseFirst, CutRidges, TryStrings},
	RaiseOthers: {RaiseFirst, Drive, LayBags, WrapLegs, CutRidges, WrapRidges}, HoldRidge: {RaiseFirst, RaiseOthers, WrapRidges}, HangLights: {HoldRidge, TryStrings},
	Lay: {RaiseFirst, RaiseOthers, TryOutlets}, HangUp: {HoldRidge, Lay, TryOutlets}, TryWay: {HoldRidge, HangLights, HangUp},
	Join: {HoldRidge, HangLights, Lay, HangUp, TryStrings}, PlugIn: {HoldRidge, HangLights, Lay, HangUp, TryStrings, TryWay, Join}, ClearUp: {HoldRidge, HangLights, Lay, HangUp, TryWay, Join}, LightUp: {HangLights, TryWay, PlugIn},
}

// closeness is what is done side by side where that saves a day.
type closeness int

const (
	apart      closeness = iota
	clearEarly           // clearing up begins beside the joining
	alone                // whoever is left over by pairs does bench work, lays cords, tries the way, clears up without another
	layEarly             // cords too are laid beside arches that stand, while others are raised
)

// jobs parts tasks into the jobs of the marking and of the building, in an order in which each comes after those it waits for; stretches have so many arches at most.
func (in Input) jobs(tasks []Task, stretch int, close closeness, c calendar) []Job {
	hands := in.Spec.Crew.Helpers + 1
	of := make([][]int, Works)
	at := MarkGround
	for i, t := range tasks {
		if w, ok := in.workOf(t, at); ok {
			of[w], at = append(of[w], i), w
		}
	}
	var list []Job
	for w, indexes := range of {
		work := Work(w)
		j := Job{Work: work, Tasks: indexes}
		switch {
		case work == Unload:
			j.Least, j.Most, j.Minutes = hands, hands, practice.MinutesUnload
		case work == ClearUp:
			j.Least, j.Most, j.Minutes = min(2, hands), hands, practice.MinutesClear
		case len(indexes) == 0:
			continue
		default:
			j = j.sized(tasks, hands)
			j = j.ofAge(c.hands - c.young)
			for k := range j.Uses {
				j.Uses[k] = min(j.Uses[k], c.tools[k])
			}
		}
		if close >= alone && j.bySelf(tasks) {
			j.Least = 1
		}
		first := in.stretches(stretch)
		if work == Lay && close < layEarly {
			first = nil
		}
		list = append(list, in.stretched(j, first)...)
	}
	for i := range list {
		list[i].After = slices.DeleteFunc(in.waits(list, i, close), func(k int) bool { return in.spares(list[i], list[k], c) })
		in.alongside(tasks, list, i)
	}
	return list
}

// alongside has ridge pieces cut to where stakes stand, and cords that end on rows hung after those: of each job a part that goes along with another job.
func (in Input) alongside(tasks []Task, list []Job, i int) {
	j := &list[i]
	for k, o := range list[:i] {
		switch {
		case j.Work == FirstRidge && o.Work == Drive && o.First <= 1:
			before, driving := driven(tasks, o)
			j.Partly = []part{{k, before + driving*firstStakes(tasks, o)}}
		case (j.Work == CutRidges || j.Work == WrapRidges) && o.Work == Drive && o.First > 1 && o.First == j.First: // of the first stretch they stand before arch 1 does
			if before, driving := driven(tasks, o); driving > 0 {
				j.Along = append(j.Along, beside{k, -before/driving - 1/float64(o.Last-o.First+1), 1 / driving})
			}
		case j.Work == HangUp && o.Work == HangLights && in.OnRows < in.HungTies:
			j.Along = append(j.Along, beside{job: k, free: 1 - float64(in.OnRows)/float64(in.HungTies)})
		}
	}
}

// driven is the share of a driving's work before the first stake goes in, and that of the stakes. Any may be moved along the row, and a ridge piece is cut to where those
// beside it stand. Bases stand on their dots: they are all set before any is gauged.
func driven(tasks []Task, drive Job) (before, driving float64) {
	all := 0.0
	for _, i := range drive.Tasks {
		t := tasks[i]
		work := t.Minutes * float64(t.Who.people())
		all += work
		switch t.Action {
		case TapeDepths, SetBases:
			before += work
		case DriveStakes:
			driving += work
		}
	}
	return before / all, driving / all
}

// firstStakes is the share of the first driving's stakes that are those of arches 1 and 2, driven arch by arch.
func firstStakes(tasks []Task, drive Job) float64 {
	first, stretch := 0, 0
	for _, i := range drive.Tasks {
		for _, s := range tasks[i].Of.Stakes {
			if tasks[i].Action == DriveStakes {
				first, stretch = first+b2i(s.Arch <= 2), stretch+b2i(drive.Last == 0 || s.Arch <= drive.Last)
			}
		}
	}
	return float64(first) / float64(max(1, stretch))
}

// spares reports whether a job need not wait for another that its kind waits for: the way is tried beside cords and joints, not beside the plugging in, where nothing was hung; what an evening at the bench
// takes does not wait for the day, nor strings for the outlets of the site. Marking that has days of its own waits for no unloading, and nothing for it; whoever looks overhead alone needs no dots.
func (in Input) spares(j, o Job, c calendar) bool {
	switch {
	case j.Work == MarkGround:
		return len(c.marking) > 0
	case o.Work == MarkGround:
		return c.marksBefore(o.Minutes) || j.Work == TryStake && !in.drives()
	case o.Work == HangLights && j.Work != LightUp && j.Work != PlugIn:
		return len(in.Lights.Rows)+len(in.Lights.Drops) == 0
	case o.Work == Unload || o.Work == TryOutlets:
		for _, d := range c.others {
			if !d.Bench() {
				break
			}
			if bench.has(j.Work) && d.works.has(j.Work) {
				return true
			}
		}
	}
	return false
}

// sized sums a job's tasks: its people are the most that one of them takes, its tools too. What is shared takes a pair at least, or one of the crews that hang rows.
func (j Job) sized(tasks []Task, hands int) Job {
	work, crews := 0.0, 0
	for _, i := range j.Tasks {
		people := min(tasks[i].Who.people(), hands)
		j.Most = max(j.Most, people)
		if tasks[i].Who.Grown {
			j.Grown = max(j.Grown, people)
		}
		for _, n := range tasks[i].Uses {
			if k := slices.Index(toolThings[:], n.Thing); k >= 0 {
				j.Uses[k] = max(j.Uses[k], n.Count)
			}
		}
		work += tasks[i].Minutes * float64(people)
		j.Minutes += tasks[i].Minutes
		j.Sets = max(j.Sets, tasks[i].Sets)
		crews += b2i(tasks[i].Action == HangRows)
	}
	j.Least = j.Most
	if !slices.Contains(shared, j.Work) {
		return j
	}
	if j.Work == HangLights {
		j.Most *= max(1, min(crews, hands/j.Least))
	} else {
		j.Least = min(2, hands)
	}
	if j.Grown > 2 || j.Grown == j.Least {
		j.Grown = j.Most // every crew of it
	}
	j.Grown = max(j.Grown, j.Uses[0]) // nobody younger climbs a stepladder
	if j.Work == MakeLegs {
		j.Grown = max(j.Grown, 1) // who trims a stick that is too long
	}
	j.Minutes = work / float64(j.Most)
	return j
}

// bySelf reports whether one alone can do a job's tasks: nobody saws or climbs alone, and rows and drops are hung by crews. Common practice, no source.
func (j Job) bySelf(tasks []Task) bool {
	return oneAlone.has(j.Work) && !slices.ContainsFunc(j.Tasks, func(i int) bool {
		return tasks[i].Action == HangRows || tasks[i].Action == HangDrops || slices.ContainsFunc(tasks[i].Uses, func(n Need) bool { return n.Thing == Saw || n.Thing == Stepladder })
	})
}

// stretches are the first arches of equal stretches of so many arches at most; where arches have guys of their own a stretch begins at the nearest of them, so that a second
// crew can raise it from there.
func (in Input) stretches(most int) (first []int) {
	n := in.Spec.Tunnel.Arches
	for k, count := 0, (n+most-1)/most; k < count; k++ {
		at := k*n/count + 1
		for by := range most / 2 {
			if k > 0 && at-by > 2 && in.guyed(at-by) { // arches 1 and 2 are raised in one go
				at -= by
				break
			}
			if k > 0 && in.guyed(at+by) {
				at += by
				break
			}
		}
		if len(first) == 0 || at > first[len(first)-1] && at < n {
			first = append(first, at)
		}
	}
	return first
}

// guyed reports whether an arch has guys of its own.
func (in Input) guyed(arch int) bool { return slices.Contains(in.Spec.Guys.Arches, arch) }

// stretched parts a job into stretches, where its work goes by stretches.
func (in Input) stretched(j Job, first []int) []Job {
	n := in.Spec.Tunnel.Arches
	if len(first) < 2 || !slices.Contains(byStretches, j.Work) {
		return []Job{j}
	}
	var list []Job
	all, from := j.Minutes, 1
	if afterSecond.has(j.Work) {
		from = 3
	}
	for k, at := range first {
		j.First, j.Last = at, n
		if k+1 < len(first) {
			j.Last = first[k+1] - 1
		}
		if has := j.Last - max(at, from) + 1; has > 0 {
			j.Minutes = all * float64(has) / float64(n-from+1)
			list = append(list, j)
		}
	}
	return list
}

// waits lists the jobs that a job comes after: of a work by stretches the same stretch, for the first arches the first one, and its own stretch before. The raising may begin
// anew at an arch with guys of its own.
func (in Input) waits(list []Job, i int, close closeness) (after []int) {
	j := list[i]
	for k, o := range list[:i] {
		same := o.First == 0 || j.First == 0 || o.First == j.First
		if j.Work == RaiseFirst && (o.Work == Drive || o.Work == LayBags || o.Work == WrapLegs) {
			same = o.First <= 1
		}
		switch {
		case j.Work == Lay && o.Work == RaiseOthers:
			same = same || close < layEarly
		case j.Work == ClearUp && o.Work == Join:
			same = close < clearEarly
		}
		next := o.Work == j.Work && o.Last == j.First-1 && !(j.Work == RaiseOthers && in.guyed(j.First))
		rows := j.Work == HangUp && o.Work == HangLights && in.OnRows > 0 && in.OnRows == in.HungTies // they hang first
		if same && (rows || slices.Contains(waitsFor[j.Work], o.Work)) || next {
			after = append(after, k)
		}
	}
	return after
}
