package crew

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"hoopwright/layout/spec"
)

// small is jobs thrown at random: up to six, one to three quarters each, for one to three people, after any of those before; some need a ladder, some people of age.
func small(r *rand.Rand) []Job {
	jobs := make([]Job, 2+r.IntN(5))
	for i := range jobs {
		people := 1 + r.IntN(3)
		jobs[i] = Job{Work: HoldRidge, Minutes: quarter * float64(1+r.IntN(3)), Least: people, Most: people}
		if r.IntN(3) == 0 {
			jobs[i].Uses[0] = 1
		}
		if r.IntN(3) == 0 {
			jobs[i].Grown = people
		}
		for k := range i {
			if r.IntN(4) == 0 {
				jobs[i].After = append(jobs[i].After, k)
			}
		}
	}
	return jobs
}

// shortest tries every way to begin jobs at quarters and returns the earliest end: at each quarter every set of jobs that may begin does, or waits.
func shortest(jobs []Job, hands, grown, ladders int) float64 {
	best := math.Inf(1)
	var try func(now float64, ends []float64)
	try = func(now float64, ends []float64) {
		busy, old, up, last, all := 0, 0, 0, 0.0, true
		var may []int
		for i, j := range jobs {
			switch {
			case ends[i] < 0:
				all = false
				ok := true
				for _, k := range j.After {
					ok = ok && ends[k] >= 0 && ends[k] <= now
				}
				if ok {
					may = append(may, i)
				}
			case ends[i] > now:
				busy, old, up = busy+j.Most, old+j.Grown, up+j.Uses[0]
			}
			last = max(last, ends[i])
		}
		if all {
			best = min(best, last)
			return
		}
		if now > 40*quarter || now >= best {
			return
		}
		for set := 0; set < 1<<len(may); set++ {
			people, ages, ups, next := busy, old, up, append([]float64(nil), ends...)
			for b, i := range may {
				if set>>b&1 == 1 {
					people, ages, ups = people+jobs[i].Most, ages+jobs[i].Grown, ups+jobs[i].Uses[0]
					next[i] = now + jobs[i].Minutes
				}
			}
			if people <= hands && ages <= grown && ups <= ladders {
				try(now+quarter, next)
			}
		}
	}
	ends := make([]float64, len(jobs))
	for i := range ends {
		ends[i] = -1
	}
	try(0, ends)
	return best
}

// Against every schedule there is, on small jobs: the one laid is never shorter, the bound never above, and it is seldom more than a quarter of an hour off.
func TestScheduleAgainstAll(t *testing.T) {
	in := Input{Spec: &spec.Spec{Crew: spec.Crew{Helpers: 3, Young: 1, Start: 6 * time.Hour, Tools: spec.Tools{Ladders: 1, Trestles: 1, Tapes: 1}}}}
	r := rand.New(rand.NewPCG(16, 1))
	late, n := 0, 150
	for range n {
		jobs := small(r)
		c := in.calendar()
		s := searched(jobs, c, allTries).schedule()
		best := shortest(jobs, 4, 3, 1)
		if least, _ := c.bound(jobs); s.Takes < best-1e-9 || least > best+1e-9 {
			t.Fatalf("takes %v, bound %v, but the shortest is %v: %+v", s.Takes, least, best, jobs)
		}
		if s.Takes > best {
			late++
		}
		if s.Takes > best+2*quarter {
			t.Errorf("takes %v where %v would do: %+v", s.Takes, best, jobs)
		}
	}
	t.Logf("%d of %d are longer than need be", late, n)
	if late > n/20 {
		t.Errorf("%d of %d are longer than need be", late, n)
	}
}

// A clock and a day: from nine on, by the light of a place, no later than its sunset.
func TestDayEndsByDaylight(t *testing.T) {
	s := &spec.Spec{Crew: spec.Crew{Helpers: 3, Start: 9*time.Hour + 10*time.Minute}}
	in := Input{Spec: s}
	date := time.Date(2026, 12, 21, 0, 0, 0, 0, time.UTC)
	if d := in.dayOf(date, allOfWork); d.Light != nil || d.Begin != 9*60+15 || d.End != 17*60 {
		t.Errorf("no place: %+v", d)
	}
	s.Site.Place, s.Site.Clock = &spec.LatLong{Lat: 51.51, Long: -0.13}, time.UTC // London, published sunset 15:53 (from memory)
	if d := in.dayOf(date, allOfWork); d.Light == nil || d.End != 15*60+45 {
		t.Errorf("London: %+v", d)
	}
	s.Site.Place.Lat = 78
	if d := in.dayOf(date, allOfWork); d.Light != nil {
		t.Errorf("polar night: %+v", d)
	}
	if got := Clock(9*60 + 5).String(); got != "09:05" {
		t.Errorf("clock %q", got)
	}
}

// A job that goes along with another is nowhere ahead of it: counted from the stints alone; both are done in the end, and it does not wait for all of the other.
func TestAlongsideNeverAhead(t *testing.T) {
	for _, b := range []beside{{free: 0.4}, {free: -0.1, rate: 1}, {free: -0.3, rate: 1.5}} {
		jobs := []Job{{Work: HoldRidge, Minutes: 120, Least: 2, Most: 2}, {Work: WrapRidges, Minutes: 30, Least: 2, Most: 4, Along: []beside{b}}}
		day := Workday{Begin: 8 * 60, End: 16 * 60, works: allOfWork}
		l := searched(jobs, calendar{others: []Workday{day}, hands: 6, tools: tools{1, 4, 1}}, 100)
		s := l.schedule()
		given := [2]float64{}
		for at := day.Begin; at < day.End; at += quarter {
			before := given[0] / jobs[0].work()
			for i, j := range s.Jobs {
				for _, st := range j.Stints {
					if st.Begin <= at && at < st.End {
						given[i] += quarter * float64(len(st.Hands))
					}
				}
			}
			if then := given[1] / jobs[1].work(); before < 1-1e-9 && then > max(0, b.free+b.rate*before)+1e-9 {
				t.Errorf("%+v: %.2f of it is done at %s and %.2f of the other before", b, then, at+quarter, before)
			}
		}
		if len(s.Left) > 0 || given[1] < jobs[1].work()-1e-9 {
			t.Errorf("%+v: %v minutes of hands of %v", b, given[1], jobs[1].work())
		}
		if _, end, _ := s.Jobs[0].End(); s.Jobs[1].Stints[0].Begin >= end {
			t.Errorf("%+v: begun only after the other", b)
		}
	}
}
