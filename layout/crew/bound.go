// How short the building can be at the least, whatever the order.

package crew

import (
	"math"
	"slices"
)

// builds reports whether a job is part of the building: not the trial, the light-up, or a marking that waits for no unloading.
func (j Job) builds() bool { return !aside.has(j.Work) || j.Work == MarkGround && len(j.After) > 0 }

// chainsOf returns for each job, all so long, the minutes from its begin to the end of the longest chain of jobs that waits for it.
func chainsOf(jobs []Job, long []float64) []float64 {
	chain := slices.Clone(long)
	for i := len(jobs) - 1; i >= 0; i-- { // jobs stand after those they wait for
		if jobs[i].Work == LightUp {
			continue
		}
		for _, k := range jobs[i].After {
			chain[k] = max(chain[k], long[k]+chain[i])
		}
	}
	return chain
}

// headsOf returns for each job the minutes of the longest chain that it waits for.
func headsOf(jobs []Job, long []float64) []float64 {
	head := make([]float64, len(jobs))
	for i, j := range jobs {
		for _, k := range j.After {
			if jobs[k].builds() {
				head[i] = max(head[i], head[k]+long[k])
			}
		}
	}
	return head
}

// bound returns minutes of building that no order of the jobs comes under, and what forbids less. Every job takes whole quarters of an hour. Of the jobs that begin so late at
// the earliest and have so much behind them at the least, the work shared by all hands, or by all tools of a kind, lies between; that is tried for all such pairs. Work at
// the bench that waits for nothing outdoors costs nothing where an evening can take it.
func (c calendar) bound(jobs []Job) (minutes float64, why Limit) {
	early, long := c.early(jobs), make([]float64, len(jobs))
	for i, j := range jobs {
		if !early[i] {
			long[i] = math.Ceil(j.Minutes/quarter-1e-9) * quarter
		}
	}
	heads, tails := headsOf(jobs, long), chainsOf(jobs, long)
	var list []int
	for i, j := range jobs {
		if j.builds() {
			minutes = max(minutes, heads[i]+tails[i])
			if !early[i] {
				list = append(list, i)
			}
		}
		tails[i] -= long[i]
	}
	for k := range len(c.tools) + 1 {
		if m := c.shared(jobs, list, heads, tails, k); m > minutes {
			minutes, why = m, ByTools
			if k == 0 {
				why = ByHands
			}
		}
	}
	return minutes, why
}

// shared is the bound by what all hands (0), or the tools of a kind, have to do in the listed jobs.
func (c calendar) shared(jobs []Job, list []int, heads, tails []float64, k int) (minutes float64) {
	of := func(all []float64) []float64 {
		var some []float64
		for _, i := range list {
			some = append(some, all[i])
		}
		slices.Sort(some)
		return slices.Compact(some)
	}
	takes := make([]float64, len(jobs))
	for _, i := range list {
		takes[i] = jobs[i].least(k)
	}
	for _, head := range of(heads) {
		for _, tail := range of(tails) {
			demand := 0.0
			for _, i := range list {
				if heads[i] >= head && tails[i] >= tail {
					demand += takes[i]
				}
			}
			if between := math.Ceil(demand/float64(c.has(k)) - 1e-9); demand > 0 {
				minutes = max(minutes, head+between*quarter+tail)
			}
		}
	}
	return minutes
}

// has is how many there are: of hands for 0, of tools for the others.
func (c calendar) has(k int) int {
	if k == 0 {
		return c.hands
	}
	return c.tools[k-1]
}

// least is how many quarters of hands (0) or of a tool a job takes at the least, whatever crews it is given.
func (j Job) least(k int) float64 {
	least := math.Inf(1)
	for n := j.Least; n <= j.Most; n++ {
		use := n
		if k > 0 {
			use = j.uses(k-1, n)
		}
		least = min(least, float64(use)*math.Ceil(j.work()/float64(n)/quarter-1e-9))
	}
	if k == 0 && j.Work == ClearUp { // whoever is done joins it
		least = math.Ceil(j.work()/quarter - 1e-9)
	}
	return least
}

// early reports for each job whether it may be done on an evening at the bench, or at one between days of building: it waits for nothing outdoors.
func (c calendar) early(jobs []Job) []bool {
	list := make([]bool, len(jobs))
	for i, j := range jobs {
		free := len(j.Partly) == 0 && !slices.ContainsFunc(j.After, func(k int) bool { return !list[k] && jobs[k].builds() })
		list[i] = free && slices.ContainsFunc(c.others, func(d Workday) bool { return d.Bench() && d.works.has(j.Work) })
	}
	return list
}
