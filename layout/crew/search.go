// The search for the best order of jobs: some rules first, then changes of the best.

package crew

import (
	"math"
	"math/rand/v2"
	"slices"

	"hoopwright/layout/practice"
)

// calendar is when there is work, and who and what is there for it.
type calendar struct {
	marking, others []Workday
	open            bool // the work may go on on days after
	hands, young    int
	tools           tools
}

func (in Input) calendar() calendar {
	var c calendar
	c.marking, c.others, c.open = in.days()
	c.hands, c.young = in.hands()
	t := in.Spec.Crew.Tools
	c.tools = tools{t.Ladders, t.Trestles, t.Tapes}
	return c
}

// best lays jobs parted in several ways, long stretches first, and returns the best laying. Shorter stretches mean more changes of hands: they have to save half
// an hour, or a day. So many changes of each are tried at most: more never lead to another day.
func (c calendar) best(ways [][]Job, most int) (best *laid) {
	for _, jobs := range ways {
		if l := searched(jobs, c, most); best == nil || l.saves(best) {
			best = l
		}
	}
	return best
}

// saves reports whether more is done than in another laying, or as much half an hour sooner.
func (l *laid) saves(o *laid) bool {
	const worth = 30
	return l.short() < o.short() || l.short() == o.short() && l.last <= o.last-worth
}

// laidOut lays the tasks, no more closely than saves a day, or half an hour of a second one; ways are those that were tried last.
func (in Input) laidOut(tasks []Task, c calendar) (best *laid, ways [][]Job) {
	for close := apart; close <= layEarly; close++ {
		ways = in.ways(tasks, close, c)
		if best == nil || c.best(ways, fewTries).saves(best) {
			best = c.best(ways, allTries)
		}
		if best.short() == 0 && len(outdoors(best.days[best.marked:])) == 1 {
			break
		}
	}
	return best, ways
}

// ways are the jobs of tasks by stretches of several lengths, long ones first: how the work is parted is ours to choose.
func (in Input) ways(tasks []Task, close closeness, c calendar) (list [][]Job) {
	for _, stretch := range in.partings() {
		list = append(list, in.jobs(tasks, stretch, close, c))
	}
	return list
}

// partings are the lengths of stretches that are tried, long ones first.
func (in Input) partings() []int {
	list := []int{2 * practice.StretchArches, practice.StretchArches, practice.StretchArches / 2}
	switch n := in.Spec.Tunnel.Arches; {
	case n > 2*practice.StretchArches:
		return list[1:2]
	case n <= practice.StretchArches/2:
		return list[:1]
	}
	return list
}

// least is the bound on the building: that of the best parting.
func (c calendar) least(ways [][]Job) (minutes float64, why Limit) {
	for k, jobs := range ways {
		if m, limit := c.bound(jobs); k == 0 || m < minutes {
			minutes, why = m, limit
		}
	}
	return minutes, why
}

// short is the work that found no time, in minutes.
func (l *laid) short() (minutes float64) {
	for i, j := range l.jobs {
		if j.Work != LightUp {
			minutes += max(0, l.left[i])
		}
	}
	return minutes
}

// score is how good a laying is, the first figures first: what found no time, the end, how often a crew comes to a job.
func (l *laid) score() [3]float64 {
	return [3]float64{l.short(), float64(l.last), float64(l.joined)}
}

// searched lays jobs by several rules, longest chain of what waits for it first or least slack or most work behind it, and improves the best by changing a few ranks or
// crews at a time, for as long as a fixed number of tries lasts: the same for the same spec.
func searched(jobs []Job, c calendar, most int) *laid {
	full := make([]int, len(jobs))
	for i, j := range jobs {
		full[i] = j.Most
	}
	best, other := newLaid(jobs, c), newLaid(jobs, c)
	good := [3]float64{math.Inf(1)}
	try := func(o order) {
		other.lay(o, c)
		if now := other.score(); slices.Compare(now[:], good[:]) <= 0 {
			best, other, good = other, best, now
		}
	}
	for _, rank := range rules(jobs) {
		for _, greedy := range []bool{false, true} {
			for _, lunch := range []Clock{practice.Lunch, practice.Lunch - 30, practice.Lunch + 30} {
				try(order{rank, full, lunch, greedy, greedy})
				try(order{rank, full, lunch, greedy, !greedy})
			}
		}
	}
	dice := rand.New(rand.NewPCG(7, 23)) // the same tries for the same spec
	for range min(most, tries(len(jobs))) {
		try(best.order.changed(jobs, dice))
	}
	return best
}

// allTries and fewTries are how many changes are tried at most: for the schedule itself, and to see whether other people or days would do.
const (
	allTries = 600
	fewTries = 30
)

// tries is how many changes are tried: of many jobs fewer, for each takes longer.
func tries(jobs int) int { return min(allTries, max(60, 12000/max(1, jobs))) }

// changed is an order with a few ranks or crews changed.
func (o order) changed(jobs []Job, dice *rand.Rand) order {
	o.rank, o.most = slices.Clone(o.rank), slices.Clone(o.most)
	top := slices.Max(o.rank)
	for range 1 + dice.IntN(3) {
		i := dice.IntN(len(jobs))
		if j := jobs[i]; j.Most > j.Least && dice.IntN(2) == 0 {
			o.most[i] = j.Least + j.crew()*dice.IntN((j.Most-j.Least)/j.crew()+1)
			continue
		}
		o.rank[i] = top * 1.1 * dice.Float64()
	}
	switch dice.IntN(8) {
	case 2:
		o.joins = !o.joins
	case 0:
		o.greedy = !o.greedy
	case 1:
		o.lunch = practice.Lunch + Clock(dice.IntN(3)-1)*30
	}
	return o
}

// rules are ranks to begin with.
func rules(jobs []Job) [][]float64 {
	long := make([]float64, len(jobs))
	for i, j := range jobs {
		long[i] = j.Minutes
	}
	heads, chain, behind, slack := headsOf(jobs, long), chainsOf(jobs, long), make([]float64, len(jobs)), make([]float64, len(jobs))
	for i := len(jobs) - 1; i >= 0; i-- { // jobs stand after those they wait for
		behind[i] += jobs[i].work()
		for _, k := range jobs[i].After {
			behind[k] = max(behind[k], behind[i]+jobs[k].work())
		}
		slack[i] = 1e4 + heads[i] + chain[i]
	}
	return [][]float64{chain, behind, slack}
}
