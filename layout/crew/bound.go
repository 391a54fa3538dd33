package crew

import (
	"math"
	"slices"
)

// minutesOf is a job's least time.
func minutesOf(j Job) float64 { return j.Minutes }

// quartersOf is a job's least time by the grid.
func quartersOf(j Job) float64 { return math.Ceil(j.Minutes/quarter-1e-9) * quarter }

// builds reports whether a job is part of the building: not the marking, the trial or the light-up.
func (j Job) builds() bool { return !aside.has(j.Work) }

// chainsOf returns for each job the minutes from its begin to the end of the longest chain of jobs that waits for it.
func chainsOf(jobs []Job, long func(Job) float64) []float64 {
	chain := make([]float64, len(jobs))
	for i := len(jobs) - 1; i >= 0; i-- { // jobs stand after those they wait for
		chain[i] += long(jobs[i])
		for _, k := range jobs[i].After {
			if jobs[i].Work != LightUp {
				chain[k] = max(chain[k], chain[i])
			}
		}
	}
	return chain
}

// headsOf returns for each job the minutes of the longest chain that it waits for.
func headsOf(jobs []Job, long func(Job) float64) []float64 {
	head := make([]float64, len(jobs))
	for i, j := range jobs {
		for _, k := range j.After {
			if jobs[k].builds() {
				head[i] = max(head[i], head[k]+long(jobs[k]))
			}
		}
	}
	return head
}

// bound returns minutes of building that no order of the jobs comes under, and what forbids less. Every job takes whole quarters of an hour. Of the jobs that begin so late at
// the earliest and have so much behind them at the least, the work shared by all hands, or by all tools of a kind, lies between; that is tried for all such pairs. Work at
// the bench that waits for nothing outdoors costs nothing where an evening can take it.
func (c calendar) bound(jobs []Job) (minutes float64, why Limit) {
	early := c.early(jobs)
	var list []int
	for i, j := range jobs {
		if j.builds() && !early[i] {
			list = append(list, i)
		}
	}
	dropped := slices.Clone(jobs)
	for i := range dropped {
		if early[i] {
			dropped[i].Minutes = 0
		}
	}
	heads, tails := headsOf(dropped, quartersOf), chainsOf(dropped, quartersOf)
	for i := range tails {
		if dropped[i].builds() {
			minutes = max(minutes, heads[i]+tails[i])
		}
		tails[i] -= quartersOf(dropped[i])
	}
	for k := range len(c.tools) + 1 {
		takes := make([]float64, len(jobs))
		for _, i := range list {
			takes[i] = jobs[i].least(k)
		}
		for _, h := range list {
			for _, t := range list {
				demand := 0.0
				for _, i := range list {
					if heads[i] >= heads[h] && tails[i] >= tails[t] {
						demand += takes[i]
					}
				}
				between := math.Ceil(demand/float64(c.has(k))-1e-9) * quarter
				if m := heads[h] + between + tails[t]; demand > 0 && m > minutes {
					minutes, why = m, ByTools
					if k == 0 {
						why = ByHands
					}
				}
			}
		}
	}
	return minutes, why
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
	if j.Minutes == 0 {
		return 0
	}
	least := math.Inf(1)
	for n := j.Least; n <= j.Most; n++ {
		use := n
		if k > 0 {
			use = min(n, j.Uses[k-1])
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
		free := !slices.ContainsFunc(j.After, func(k int) bool { return !list[k] && jobs[k].builds() })
		list[i] = free && slices.ContainsFunc(c.others, func(d Workday) bool { return d.Bench() && d.works.has(j.Work) })
	}
	return list
}
