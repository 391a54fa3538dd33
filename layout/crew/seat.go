// People by number for the hands that were counted.

package crew

import (
	"cmp"
	"slices"
)

// mostKept is how many quarters more somebody may at most have worked and still go on with what they did before.
const mostKept = 6

// seat names the people of what was laid: whoever has worked least, those who did the same before ahead of the others by so much that whoever waits most waits least. Those
// under age are the last of them.
func (l *laid) seat(jobs []Job) {
	best, most := 0, -1
	for keep := mostKept; keep >= 0; keep-- {
		if busy := l.seated(jobs, keep); busy > most {
			best, most = keep, busy
		}
	}
	l.seated(jobs, best)
}

// seated seats them, and returns the quarters of whoever works least.
func (l *laid) seated(jobs []Job, keep int) int {
	for i := range jobs {
		jobs[i].Stints = nil
	}
	s := seating{laid: l, keep: keep, did: make([]Work, l.hands), worked: make([]int, l.hands), busy: make([]bool, l.hands)}
	for p := range s.did {
		s.did[p] = -1
	}
	for k := 0; k < len(l.log); {
		end := k
		for end < len(l.log) && l.log[end].day == l.log[k].day && l.log[end].at == l.log[k].at {
			end++
		}
		s.quarter(jobs, l.log[k:end])
		k = end
	}
	return slices.Min(s.worked)
}

type seating struct {
	*laid
	keep   int
	did    []Work // what each did last
	worked []int  // quarters that each has worked
	busy   []bool
}

// quarter seats the entries of one quarter hour: first those who go on, so that nobody is taken from a job.
func (s seating) quarter(jobs []Job, list []entry) {
	clear(s.busy)
	stays := make([][]int, len(list))
	for k, e := range list {
		stints := jobs[e.job].Stints
		if n := len(stints); n > 0 && stints[n-1].Day == e.day && stints[n-1].End == e.at && s.holds(e, stints[n-1].Hands) {
			stays[k] = stints[n-1].Hands
			for _, p := range stays[k] {
				s.busy[p] = true
			}
		}
	}
	for k, e := range list {
		stints := &jobs[e.job].Stints
		if len(stays[k]) == e.n {
			(*stints)[len(*stints)-1].End += quarter
		} else {
			*stints = append(*stints, Stint{e.day, e.at, e.at + quarter, s.pick(jobs[e.job].Work, stays[k], e)})
		}
		for _, p := range (*stints)[len(*stints)-1].Hands {
			s.did[p] = jobs[e.job].Work
			if s.days[e.day].works.has(Unload) {
				s.worked[p]++
			}
		}
	}
}

// holds reports whether an entry has room for those who were at its job: else they left it and fewer came back.
func (s seating) holds(e entry, hands []int) bool {
	young := 0
	for _, p := range hands {
		young += b2i(p >= s.hands-s.young)
	}
	return young <= e.young && len(hands)-young <= e.n-e.young
}

// keepsHolds reports whether somebody has holds to tick, which takes them off a raising: the organiser.
func (s seating) keepsHolds(person int, w Work) bool {
	return person == 0 && w.Raises()
}

// pick takes people for an entry besides those who stay.
func (s seating) pick(w Work, stay []int, e entry) []int {
	young := func(p int) bool { return p >= s.hands-s.young }
	taken := slices.Clone(stay)
	want := crowd{e.n - len(stay), e.young}
	for _, p := range stay {
		want.young -= b2i(young(p))
	}
	var free []int
	for p := range s.hands {
		if !s.busy[p] {
			free = append(free, p)
		}
	}
	slices.SortStableFunc(free, func(p, q int) int {
		if holds := cmp.Compare(b2i(s.keepsHolds(p, w)), b2i(s.keepsHolds(q, w))); holds != 0 {
			return holds
		}
		return cmp.Compare(s.worked[p]-s.keep*b2i(s.did[p] == w), s.worked[q]-s.keep*b2i(s.did[q] == w))
	})
	grown := want.n - want.young
	for _, p := range free {
		room := &grown
		if young(p) {
			room = &want.young
		}
		if *room > 0 {
			*room--
			taken, s.busy[p] = append(taken, p), true
		}
	}
	slices.Sort(taken)
	return taken
}
