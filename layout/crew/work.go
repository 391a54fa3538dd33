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
	MarkGround  Work = iota // on a day of its own
	Unload                  // and read the dangers aloud: all hands
	TryStake                // ticket, look up, first stake
	Drive                   // the stakes, by stretches
	MakeLegs                // cut, name, join, mark
	TryOutlets              // before any string is tried
	TryStrings              // and tag
	WrapLegs                // by stretches
	RaiseFirst              // arches 1 and 2 and the first ridge piece: never broken off
	CutRidges               // the other ridge pieces
	WrapRidges              // by stretches
	RaiseOthers             // by stretches
	HoldRidge               // sockets, guys, caps
	HangLights              // rows and drops, and try the way through
	Lay                     // cords, by stretches
	PlugIn
	ClearUp
	LightUp // at dusk
	lastWork
)

// Works returns every work, for whoever has to have words for all.
func Works() []Work {
	list := make([]Work, lastWork)
	for i := range list {
		list[i] = Work(i)
	}
	return list
}

// Job is a work, or a stretch of it, with when it is done and by whom.
type Job struct {
	Work        Work
	Tasks       []int // of Plan.Tasks; where the work goes by stretches each job has its share of them
	First, Last int   // arches of its stretch; 0 where it is one job for all
	After       []int // jobs that are done before it begins
	Least, Most int   // people: never fewer; more do not help
	Minutes     float64
	Stints      []Stint // when, by whom; none for a light-up whose dusk nobody knows
}

// work is what the job takes of one pair of hands, in minutes.
func (j Job) work() float64 { return j.Minutes * float64(j.Most) }

// byStretches are the works that go by stretches, so that raising need not wait for the last wrap of a long tunnel. They may rest over lunch or the night.
var byStretches = []Work{Drive, WrapLegs, CutRidges, WrapRidges, RaiseOthers, Lay}

// shared are the works that several groups do side by side: pairs, at rows a crew for each wall.
var shared = []Work{Drive, MakeLegs, TryStrings, WrapLegs, WrapRidges, HangLights, Lay, PlugIn}

// workOf tells which work a task belongs to; at is the work of the task before it. Tasks after the day belong to none.
func (in Input) workOf(t Task, at Work) (Work, bool) {
	switch t.Action {
	case ReadTicket, LookUp, CheckAgain, PullTest:
		return TryStake, true
	case TapeDepths, DriveStakes, SetBases, MeasureWidths:
		return Drive, true
	case TestOutlets:
		return TryOutlets, true
	case TestStrings, TagStrings:
		return TryStrings, true
	case CutRidge:
		return CutRidges, true
	case WindInPlace:
		return WrapRidges, true
	case WindPipe:
		if in.Lights.Wraps[t.Of.Wraps[0]].On.Kind == lights.Ridge {
			return WrapRidges, true
		}
	case RaiseRest:
		return RaiseOthers, true
	case RunCrownLine, ScrewSockets, GlueSockets, SightAlong:
		return HoldRidge, true
	case LayCords, CheckCords:
		return Lay, true
	case DarkWalk:
		return LightUp, true
	}
	switch t.Phase {
	case Marking:
		return MarkGround, true
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
		return HangLights, true
	case Powering:
		return PlugIn, true
	}
	return 0, false
}

// waitsFor lists what must be done before a work; of works by stretches the same stretch, or all where the one after is in one piece.
var waitsFor = map[Work][]Work{
	TryStake: {Unload}, Drive: {TryStake}, MakeLegs: {Unload}, TryOutlets: {Unload}, TryStrings: {Unload, TryOutlets}, WrapLegs: {MakeLegs, TryStrings},
	RaiseFirst: {Unload, MakeLegs, Drive, WrapLegs}, CutRidges: {RaiseFirst}, WrapRidges: {RaiseFirst, CutRidges, TryStrings},
	RaiseOthers: {RaiseFirst, Drive, WrapLegs, CutRidges, WrapRidges}, HoldRidge: {RaiseFirst, RaiseOthers, WrapRidges}, HangLights: {HoldRidge, TryStrings},
	Lay: {RaiseFirst, RaiseOthers, TryOutlets}, PlugIn: {HoldRidge, HangLights, Lay, TryStrings}, ClearUp: {HoldRidge}, LightUp: {HangLights, PlugIn},
}

// jobs parts tasks into the jobs of the marking and of the building, in an order in which each comes after those it waits for; stretches have so many arches at most.
func (in Input) jobs(tasks []Task, stretch int) []Job {
	hands := in.Spec.Crew.Helpers + 1
	of := make([][]int, lastWork)
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
		case work == Unload && !in.builds(of):
			continue
		case work == Unload:
			j.Least, j.Most, j.Minutes = hands, hands, practice.MinutesUnload
		case work == ClearUp && in.builds(of):
			j.Least, j.Most, j.Minutes = min(2, hands), hands, practice.MinutesClear
		case len(indexes) == 0:
			continue
		default:
			j = j.sized(tasks, hands)
		}
		list = append(list, in.stretched(j, stretch)...)
	}
	hung := len(in.Lights.Rows)+len(in.Lights.Drops) > 0
	for i := range list {
		list[i].After = slices.DeleteFunc(waits(list, i), func(k int) bool {
			return list[i].Work == PlugIn && list[k].Work == HangLights && !hung // the way is tried beside it
		})
	}
	return list
}

// builds reports whether anything is built.
func (in Input) builds(of [][]int) bool {
	return slices.ContainsFunc(of[Unload:], func(list []int) bool { return len(list) > 0 })
}

// sized sums a job's tasks: its people are the most that one of them takes. What is shared takes a pair at least, or one of the crews that hang rows; each outlet is
// plugged in by a pair of its own.
func (j Job) sized(tasks []Task, hands int) Job {
	work, crews := 0.0, 0
	for _, i := range j.Tasks {
		people := min(tasks[i].Who.people(), hands)
		j.Most = max(j.Most, people)
		work += tasks[i].Minutes * float64(people)
		j.Minutes += tasks[i].Minutes
		if a := tasks[i].Action; a == PlugRuns || a == HangRows {
			crews++
		}
	}
	j.Least = j.Most
	if !slices.Contains(shared, j.Work) {
		return j
	}
	if j.Work == HangLights || j.Work == PlugIn {
		j.Most *= max(1, min(crews, hands/j.Least))
	} else {
		j.Least = min(2, hands)
	}
	j.Minutes = work / float64(j.Most)
	return j
}

// stretched parts a job into equal stretches of so many arches at most, where its work goes by stretches.
func (in Input) stretched(j Job, most int) []Job {
	n := in.Spec.Tunnel.Arches
	count := (n + most - 1) / most
	if count < 2 || !slices.Contains(byStretches, j.Work) {
		return []Job{j}
	}
	var list []Job
	j.Minutes /= float64(count)
	for k := range count {
		j.First, j.Last = k*n/count+1, (k+1)*n/count
		list = append(list, j)
	}
	return list
}

// waits lists the jobs that a job comes after: of a work by stretches the same stretch, for the first arches the first one, and its own stretch before.
func waits(list []Job, i int) (after []int) {
	j := list[i]
	for k, o := range list[:i] {
		same := o.First == 0 || j.First == 0 || o.First == j.First
		if j.Work == RaiseFirst && (o.Work == Drive || o.Work == WrapLegs) {
			same = o.First <= 1
		}
		if same && slices.Contains(waitsFor[j.Work], o.Work) || o.Work == j.Work && o.Last == j.First-1 {
			after = append(after, k)
		}
	}
	return after
}
