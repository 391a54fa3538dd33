package layout_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/dice"
	"hoopwright/layout/finding"
)

// comesBefore is the order of the trade, action by action: common practice, no source. What stands on the left is done, on every stretch that the right one has, before
// the right one begins.
var comesBefore = [][2]crew.Action{
	{crew.CheckDots, crew.CheckAgain}, {crew.CheckDots, crew.PullTest}, {crew.CheckDots, crew.DriveStakes}, {crew.CheckDots, crew.SetBases},
	{crew.ReadTicket, crew.DriveStakes}, {crew.PullTest, crew.DriveStakes}, {crew.DriveStakes, crew.RaiseRest}, {crew.MeasureWidths, crew.RaiseRest},
	{crew.SetBases, crew.WeighDown}, {crew.MeasureWidths, crew.WeighDown}, {crew.WeighDown, crew.JoinCrown}, {crew.WeighDown, crew.RaiseRest}, {crew.NameSticks, crew.CutTrial}, {crew.CutTrial, crew.SpringRidge},
	{crew.NameSticks, crew.WindPipe}, {crew.TestOutlets, crew.TestStrings}, {crew.TestOutlets, crew.TryWrapped}, {crew.NameSticks, crew.TryWrapped}, {crew.JoinSticks, crew.WindPipe}, {crew.JoinSticks, crew.JoinCrown}, {crew.TryWrapped, crew.JoinCrown}, {crew.TestStrings, crew.WindPipe}, {crew.TestStrings, crew.HangRows}, {crew.TestStrings, crew.HangDrops},
	{crew.CutLegs, crew.JoinCrown}, {crew.NameSticks, crew.JoinCrown}, {crew.CheckDay, crew.RaiseSame}, {crew.MeasureArch, crew.CutRidge}, {crew.MeasureBay, crew.CutRidge},
	{crew.CutRidge, crew.RaiseRest}, {crew.RaiseRest, crew.SightAlong}, {crew.SightAlong, crew.HangRows}, {crew.SightAlong, crew.HangDrops}, {crew.SightAlong, crew.TryOpening},
	{crew.TestOutlets, crew.LayCords}, {crew.RaiseSame, crew.LayCords}, {crew.RaiseRest, crew.LayCords}, {crew.SightAlong, crew.JoinPlugs}, {crew.LayCords, crew.JoinPlugs}, {crew.LayCords, crew.HangCords}, {crew.SightAlong, crew.HangCords}, {crew.HangCords, crew.TryOpening}, {crew.HangCords, crew.JoinPlugs}, {crew.HangRows, crew.JoinPlugs}, {crew.HangDrops, crew.JoinPlugs}, {crew.JoinPlugs, crew.CheckCords}, {crew.CheckCords, crew.SetTimers}, {crew.SetTimers, crew.PlugRuns}, {crew.PlugRuns, crew.TestLoaded}, {crew.TryOpening, crew.DarkWalk}, {crew.TestLoaded, crew.DarkWalk},
}

// minuteOf puts a moment of the schedule on one line.
func minuteOf(day int, at crew.Clock) int { return day*24*60 + int(at) }

// scheduleKeeps holds a schedule to what a day bears, by other means than it was laid by: every task is in the jobs it belongs to and in no other work, all of it gets its
// hands, nobody is at two places, nobody works in the dark or at lunch, what must come before does.
func scheduleKeeps(t *testing.T, p *layout.Plan) {
	s := p.Crew.Schedule
	for i, task := range p.Crew.Tasks {
		in := 0
		for k, j := range s.Jobs {
			if slices.Contains(j.Tasks, i) && (k == 0 || s.Jobs[k-1].Work != j.Work) {
				in++
			}
		}
		later := task.Phase == crew.Nights || task.Phase == crew.TakeDown || task.Action == crew.SawOpenings || task.Action == crew.SawSteel // by whoever is free, or elsewhere
		if later != (in == 0) || in > 1 {
			t.Errorf("task %d, action %d of %s, is in %d works", i, task.Action, task.Phase, in)
		}
	}
	at := func(a crew.Action) int {
		return slices.IndexFunc(p.Crew.Tasks, func(t crew.Task) bool { return t.Action == a })
	}
	if flags := at(crew.FlagDots); flags >= 0 && flags < at(crew.CallLocator) { // a flag's wire goes into the ground
		t.Error("flags are set before the lines are marked")
	}
	if dots, call, ticket := at(crew.CheckDots), at(crew.CallLocator), at(crew.ReadTicket); dots >= 0 && call >= 0 && (dots > call || call > ticket) {
		t.Errorf("dots are checked, the locator called, the ticket read in the order %d, %d, %d", dots, call, ticket)
	}
	jobsHaveHands(t, p)
	toolsGoRound(t, p)
	kitsGoRound(t, p)
	nobodyTwice(t, s)
	if apart := s.BegunApart(); (apart != nil || p.Crew.Lowerers > 1) && !crew.LineByBay(p.Spec) {
		t.Errorf("stretches from %v, %d crews take them down, and one line ties all crowns", apart, p.Crew.Lowerers)
	}
	firstRidgeWaits(t, p)
	ridgesWait(t, p)
	archesWait(t, p)
	daysAreRead(t, p)
	eyesAreCounted(t, p)
	powerBeforeClearing(t, s)
	cementSets(t, s)
	for _, pair := range comesBefore {
		inOrder(t, p, pair[0], pair[1])
	}
	if len(s.Left) == 0 && s.Takes < s.Least-1e-6 {
		t.Errorf("takes %v minutes, under its bound of %v", s.Takes, s.Least)
	}
}

// cementSets holds the raising off as long as cement sets.
func cementSets(t *testing.T, s crew.Schedule) {
	for _, j := range s.Jobs {
		day, end, ok := j.End()
		for _, o := range s.Jobs {
			if ok && j.Sets > 0 && o.Work == crew.RaiseFirst && len(o.Stints) > 0 && minuteOf(o.Stints[0].Day, o.Stints[0].Begin) < minuteOf(day, end)+j.Sets {
				t.Errorf("cemented till %s, for %d minutes, and bent at %s", end, j.Sets, o.Stints[0].Begin)
			}
		}
	}
}

// indoors are the works that need no daylight.
var indoors = []crew.Work{crew.MakeLegs, crew.TryStrings, crew.WrapLegs, crew.FirstRidge, crew.CutRidges, crew.WrapRidges}

// jobsHaveHands holds every stint to its day and every job to its people and its work; what found no time must be told of.
func jobsHaveHands(t *testing.T, p *layout.Plan) {
	s := p.Crew.Schedule
	undone := 0
	for i, j := range s.Jobs {
		given := 0.0
		for _, st := range j.Stints {
			given += float64(int(st.End-st.Begin) * len(st.Hands))
			stintKeeps(t, p, i, st)
		}
		known := j.Work != crew.LightUp || s.Days[len(s.Days)-1].Light != nil
		if need := j.Minutes * float64(j.Most); known && (given < need-1e-6 || len(j.Stints) == 0 && need > 0) {
			if undone++; j.Work != crew.LightUp && !slices.Contains(s.Left, i) {
				t.Errorf("job %d of work %d gets %v minutes of hands and needs %v", i, j.Work, given, need)
			}
		}
		if day, end, ok := j.End(); j.Work == crew.RaiseFirst && ok && (day != j.Stints[0].Day || len(j.Stints) > 1 && float64(end-j.Stints[0].Begin) < j.Minutes) {
			t.Errorf("the first arches are left half up: %+v", j.Stints)
		}
	}
	told := slices.ContainsFunc(p.Crew.Findings, func(f finding.Finding) bool { return f.Code == "days-too-short" })
	if (undone > 0) != told {
		t.Errorf("%d jobs find no time; told of: %v", undone, told)
	}
}

// stintKeeps holds a stint to its day: its hours, its rests, daylight outdoors, people of age where it matters, nobody alone at a saw, a ladder or a sledge.
func stintKeeps(t *testing.T, p *layout.Plan, i int, st crew.Stint) {
	s := p.Crew.Schedule
	j, d, n := s.Jobs[i], s.Days[st.Day], len(st.Hands)
	if n < j.Least || n > j.Most || n > s.Hands {
		t.Errorf("job %d: %d people, not %d to %d", i, n, j.Least, j.Most)
	}
	grown := 0
	for _, who := range st.Hands {
		if who < s.Hands-s.Young {
			grown++
		}
	}
	if grown < min(n, j.Grown) {
		t.Errorf("job %d: %d of age at it, not %d", i, grown, min(n, j.Grown))
	}
	if cuts := j.Work == crew.MakeLegs || j.Work == crew.FirstRidge || j.Work == crew.CutRidges || j.Work == crew.WrapRidges; cuts && grown == 0 {
		t.Errorf("job %d: nobody of age where a saw is at hand", i)
	}
	for _, i := range j.Tasks {
		for _, u := range p.Crew.Tasks[i].Uses {
			if n == 1 && s.Hands > 1 && (u.Thing == crew.Saw || u.Thing == crew.Stepladder || u.Thing == crew.Hammer) {
				t.Errorf("job %d: person %d saws, climbs or drives stakes alone", i, st.Hands[0])
			}
		}
	}
	if st.Begin%15 != 0 || st.End%15 != 0 || st.End <= st.Begin {
		t.Errorf("job %d: %s to %s is not by quarter hours", i, st.Begin, st.End)
	}
	if j.Work == crew.LightUp {
		if d.Light == nil || st.Begin < d.Light.Dusk {
			t.Errorf("the light-up is at %s, before dark", st.Begin)
		}
		return
	}
	if st.Begin < d.Begin || st.End > d.End || d.Light != nil && st.End > d.Light.Set && !slices.Contains(indoors, j.Work) {
		t.Errorf("job %d: %s to %s is outside its day's %s to %s", i, st.Begin, st.End, d.Begin, d.End)
	}
	if d.Lunch > 0 && st.Begin < d.Lunch+45 && st.End > d.Lunch || d.TieOff > 0 && st.End > d.TieOff {
		t.Errorf("job %d: %s to %s goes into lunch or the tying off", i, st.Begin, st.End)
	}
}

// toolsGoRound counts the ladders, trestles and long tapes at work in every quarter hour, by what the tasks of each job use: one task at a time.
func toolsGoRound(t *testing.T, p *layout.Plan) {
	s, have := p.Crew.Schedule, p.Spec.Crew.Tools
	for thing, most := range map[crew.Thing]int{crew.Stepladder: have.Ladders, crew.Trestles: have.Trestles, crew.LongTape: have.Tapes} {
		used := map[int]int{}
		for _, j := range s.Jobs {
			need := 0
			for _, i := range j.Tasks {
				for _, n := range p.Crew.Tasks[i].Uses {
					if n.Thing == thing {
						need = max(need, n.Count)
					}
				}
			}
			for _, st := range j.Stints {
				share := min(need, len(st.Hands))
				if thing == crew.Stepladder { // of several that all who may be at it have, so many as are at it need
					share = int(math.Ceil(float64(need*len(st.Hands))/float64(j.Most) - 1e-9))
				}
				for q := st.Begin; q < st.End; q += 15 {
					used[minuteOf(st.Day, q)] += min(share, most)
				}
			}
		}
		for at, n := range used {
			if n > most {
				t.Errorf("%d of thing %d are used at minute %d of day %d, and there are %d", n, thing, at%(24*60), at/(24*60), most)
			}
		}
	}
}

// kitsGoRound walks through the days: in every quarter hour all who are at work of one kit have in it what they use there, each of them the most that one task of theirs takes. What a task takes for
// all the pairs that it may have is shared by fewer pairs. Who hangs lights brings what who raises does: it is one kit.
func kitsGoRound(t *testing.T, p *layout.Plan) {
	type use struct {
		minute int
		phase  crew.Phase
		thing  crew.Thing
	}
	one := func(phase crew.Phase) crew.Phase {
		if phase == crew.Hanging {
			return crew.Raising
		}
		return phase
	}
	used := map[use]int{}
	for _, j := range p.Crew.Schedule.Jobs {
		for _, st := range j.Stints {
			most := map[use]int{}
			for _, i := range j.Tasks {
				task := p.Crew.Tasks[i]
				share := 1.0
				if all := task.Who.People; len(task.Who.Roles) == 0 && all > len(st.Hands) {
					share = float64(len(st.Hands)) / float64(all)
				}
				for _, n := range task.Uses {
					if n.Thing.Source() == crew.Fetched && n.Thing != crew.BarrierNet { // which stays where one stretch hangs it
						key := use{phase: one(task.Phase), thing: n.Thing}
						most[key] = max(most[key], int(math.Ceil(float64(n.Count)*share-1e-9)))
					}
				}
			}
			for key, n := range most {
				for q := st.Begin; q < st.End; q += 15 {
					key.minute = minuteOf(st.Day, q)
					used[key] += n
				}
			}
		}
	}
	kits := map[crew.Phase]map[crew.Thing]int{}
	for key, n := range used {
		if kits[key.phase] == nil {
			phases := []crew.Phase{key.phase}
			if key.phase == crew.Raising {
				phases = append(phases, crew.Hanging)
			}
			kits[key.phase] = map[crew.Thing]int{}
			for _, k := range p.Crew.Kit(phases...) {
				kits[key.phase][k.Thing] += k.Count
			}
		}
		if have := kits[key.phase][key.thing]; n > have {
			t.Errorf("%d of thing %d are used of the kit of %s at minute %d of day %d, and it has %d", n, key.thing, key.phase, key.minute%(24*60), key.minute/(24*60), have)
		}
	}
}

// firstRidgeWaits holds the cutting of the first ridge piece to the driving: before it begins hands have been at the first driving for as long as the stakes of arches 1 and 2 take.
func firstRidgeWaits(t *testing.T, p *layout.Plan) {
	least := 0.0
	for _, s := range p.Stakes {
		if s.Arch <= 2 && !s.Guy && !s.Base {
			least += p.Spec.Crew.Rates.Stake
		}
	}
	begins, driven := -1, 0.0
	for _, j := range p.Crew.Schedule.Jobs {
		if j.Work == crew.FirstRidge && len(j.Stints) > 0 {
			begins = minuteOf(j.Stints[0].Day, j.Stints[0].Begin)
		}
	}
	for _, j := range p.Crew.Schedule.Jobs {
		if j.Work == crew.Drive && j.First <= 1 {
			driven += handsBy(j, begins)
		}
	}
	if begins >= 0 && driven < least-1e-6 {
		t.Errorf("ridge 1 is cut after %v minutes of driving, and the stakes beside it take %v", driven, least)
	}
}

// handsBy is the work of one pair of hands that a job has got by a moment, in minutes.
func handsBy(j crew.Job, at int) (sum float64) {
	for _, st := range j.Stints {
		sum += float64(max(0, min(minuteOf(st.Day, st.End), at)-minuteOf(st.Day, st.Begin)) * len(st.Hands))
	}
	return sum
}

// ridgesWait holds the cutting of ridge pieces to the stakes beside them, quarter hour by quarter hour: as many pieces of a stretch as are cut by its end, so many arches' stakes are taped and driven.
func ridgesWait(t *testing.T, p *layout.Plan) {
	work := map[crew.Action]float64{}
	for _, task := range p.Crew.Tasks {
		work[task.Action] += task.Minutes * float64(task.Who.People) / float64(len(p.Arches)) // an arch
	}
	for _, ridge := range p.Crew.Schedule.Jobs {
		for _, drive := range p.Crew.Schedule.Jobs {
			if ridge.Work != crew.CutRidges && ridge.Work != crew.WrapRidges || drive.Work != crew.Drive || drive.First != ridge.First || drive.First <= 1 {
				continue
			}
			arches := float64(ridge.Last - ridge.First + 1)
			for _, st := range ridge.Stints {
				for q := st.Begin + 15; q <= st.End; q += 15 {
					at := minuteOf(st.Day, q)
					cut := math.Ceil(handsBy(ridge, at)/ridge.Minutes/float64(ridge.Most)*arches - 1e-6)
					need := arches*work[crew.TapeDepths] + min(cut, arches)*work[crew.DriveStakes]
					if given := handsBy(drive, at); given < need-1e-6 && work[crew.DriveStakes] > 0 {
						t.Errorf("%v ridge pieces from arch %d on are cut by %s of day %d, after %v of the %v minutes of driving that their stakes take", cut, ridge.First, q, st.Day, given, need)
					}
				}
			}
		}
	}
}

// daysAreRead has each day and evening after the marking begin with what is read aloud, to all: as they unload on one of them, before anybody works on the others.
func daysAreRead(t *testing.T, p *layout.Plan) {
	s := p.Crew.Schedule
	unload := -1
	for _, j := range s.Jobs {
		if j.Work == crew.Unload && len(j.Stints) > 0 {
			unload = j.Stints[0].Day
		}
	}
	for day := s.Marked; day < len(s.Days); day++ {
		for _, j := range s.Jobs {
			for _, st := range j.Stints {
				if st.Day == day && st.Begin < s.Days[day].Begin+15 && (day != unload || j.Work != crew.Unload) {
					t.Errorf("work %d begins on day %d at %s, before anything is read aloud", j.Work, day, st.Begin)
				}
			}
		}
	}
}

// eyesAreCounted has eye protection fetched for all who are at a job where somebody saws.
func eyesAreCounted(t *testing.T, p *layout.Plan) {
	have := 0
	for _, k := range p.Crew.Kit(crew.Cutting) {
		if k.Thing == crew.EyeProtection {
			have = k.Count
		}
	}
	for _, j := range p.Crew.Schedule.Jobs {
		saws := slices.ContainsFunc(j.Tasks, func(i int) bool {
			return slices.ContainsFunc(p.Crew.Tasks[i].Uses, func(n crew.Need) bool { return n.Thing == crew.Saw })
		})
		for _, st := range j.Stints {
			if saws && have < len(st.Hands) {
				t.Errorf("%d are at work %d, where pipe is sawn, and eye protection is fetched for %d", len(st.Hands), j.Work, have)
			}
		}
	}
}

// powerBeforeClearing has nobody clear up before cords and runs are joined, or while that wants hands.
func powerBeforeClearing(t *testing.T, s crew.Schedule) {
	begin := map[crew.Work]int{}
	for _, j := range s.Jobs {
		if len(j.Stints) > 0 {
			begin[j.Work] = minuteOf(j.Stints[0].Day, j.Stints[0].Begin)
		}
	}
	if clear, ok := begin[crew.ClearUp]; ok && clear < begin[crew.Join] {
		t.Errorf("clearing up begins at minute %d, joining at %d", clear, begin[crew.Join])
	}
}

// nobodyTwice reports people at two jobs at once.
func nobodyTwice(t *testing.T, s crew.Schedule) {
	type moment struct {
		who  int
		date time.Time
		day  int // where no date is known
		at   crew.Clock
	}
	at := map[moment]int{} // the job
	for i, j := range s.Jobs {
		for _, st := range j.Stints {
			for _, who := range st.Hands {
				for q := st.Begin; q < st.End; q += 15 {
					key := moment{who: who, date: s.Days[st.Day].Date, at: q}
					if key.date.IsZero() {
						key.day = st.Day
					}
					if other, busy := at[key]; busy {
						t.Errorf("person %d is at jobs %d and %d on day %d at %s", who, other, i, st.Day, q)
					}
					at[key] = i
				}
			}
		}
	}
}

// inOrder holds two actions to their order, on stretches that share arches.
func inOrder(t *testing.T, p *layout.Plan, first, then crew.Action) {
	has := func(j crew.Job, a crew.Action) bool {
		return slices.ContainsFunc(j.Tasks, func(i int) bool { return p.Crew.Tasks[i].Action == a })
	}
	for i, a := range p.Crew.Schedule.Jobs {
		for k, b := range p.Crew.Schedule.Jobs {
			apart := a.First > 0 && b.First > 0 && (a.Last < b.First || b.Last < a.First) || a.First > 1 && b.Work == crew.RaiseFirst // of the first stretch
			if i == k || apart || a.Work == b.Work || !has(a, first) || !has(b, then) || len(b.Stints) == 0 {
				continue
			}
			// Bench work on the ridge comes after what is wound on legs: the same action, another job.
			if first == crew.MeasureArch && a.Work != crew.RaiseFirst {
				continue
			}
			// Strings that are tried on an evening at the bench are tried at an outlet there.
			if first == crew.TestOutlets && then != crew.LayCords && p.Crew.Schedule.Days[b.Stints[0].Day].Bench() {
				continue
			}
			// Cutting and winding ridge pieces is one work.
			if a.Work == crew.WrapRidges && then == crew.WindPipe && b.Work == crew.WrapLegs {
				continue
			}
			day, end, ok := a.End()
			if begin := b.Stints[0]; !ok || minuteOf(day, end) > minuteOf(begin.Day, begin.Begin) {
				t.Errorf("action %d ends on day %d at %s, after action %d begins on day %d at %s", first, day, end, then, begin.Day, begin.Begin)
			}
		}
	}
}

// Tunnels of ours of all lengths, with and without daylight, and crews thrown at random: every schedule is kept, and told of where it cannot be; the bound is never above what it
// takes. What the finding offers is tried for every one that has it.
func TestSchedulesOfThrownCrews(t *testing.T) {
	d := rand.New(rand.NewPCG(16, 3))
	var cures atomic.Int64
	var crews []string
	for range 8 {
		s := base.with("tunnel", fmt.Sprintf("{arches: %d, spacing: 4 ft 3 in}", 2+d.IntN(16)), "crew", dice.Crew(d), "dates", "{build: 2026-11-21}")
		if d.IntN(2) == 0 {
			s = s.with("site", "{place: [44.1, -76.2], "+siteOf+"}")
		}
		if d.IntN(2) == 0 {
			s = s.with("guys", "{arches: [1, last], from: 6 ft, out: 6 ft}")
		}
		crews = append(crews, s.text())
	}
	t.Run("crews", func(t *testing.T) {
		for i, text := range crews {
			t.Run(fmt.Sprint(i), func(t *testing.T) {
				t.Parallel()
				p := solved(t, text)
				scheduleKeeps(t, p)
				for _, code := range curesHold(t, text, &layout.Plan{Findings: p.Crew.Findings}) {
					if code == "long-day" || code == "days-too-short" {
						cures.Add(1)
					}
				}
				if t.Failed() {
					t.Log(text)
				}
			})
		}
	})
	t.Logf("%d cures", cures.Load())
	if cures.Load() < 4 {
		t.Errorf("only %d schedules had cures to try", cures.Load())
	}
}

// Of three people a pair drives stakes for two hours: whoever is left over readies arches, tries strings and winds meanwhile, and no second day is kept for a quarter of an hour. Nobody is told of a long day then; two
// people are, and rightly: with all the work shared by all hands, half of it theirs, they are at it for longer than the day.
func TestNoDayForAQuarterHour(t *testing.T) {
	s := base.with("arch", "{pipe: pvc sch40 1/2 in, sticks: [20 ft], span: 6 ft 6 in, stake: {bar: 3/8 in, length: 60 in, depth: 30 in}}", "ridge", "false",
		"guys", "{arches: [1, 2, 3, 4], from: 7 ft 9 in, out: 8 ft}", "lights", "{wraps: [{where: arches, string: c7 led 25 multi}]}")
	for helpers, days := range map[int]int{1: 2, 2: 1} {
		p := solved(t, s.with("crew", fmt.Sprintf("{helpers: %d}", helpers)).text())
		scheduleKeeps(t, p)
		c := p.Crew.Schedule
		long := slices.ContainsFunc(p.Crew.Findings, func(f finding.Finding) bool { return f.Code == "long-day" })
		if len(c.Built()) != days || long != (days > 1) {
			t.Errorf("%d helpers: %d days, %v minutes of at least %v, told of: %v", helpers, len(c.Built()), c.Takes, c.Least, long)
		}
		if room := float64(c.Built()[0].End - c.Built()[0].Begin); days > 1 && c.Least <= room-45 {
			t.Errorf("%d helpers could be done in %v minutes, and a day has %v", helpers, c.Least, room)
		}
	}
}

// Where the ground is marked on the day of building, its people are at it for its hours, feet and stakes wait for it and no dot is checked again; where it is not done the day before, the rest of it comes first. Marked on a
// day before, or where stakes ask for a call days before, nothing of it is among the building. The days are those of the spec, by date or as days of the crew.
func TestMarkedAsItIsBuilt(t *testing.T) {
	onFeet := base.with("arch", feet, "crew", "{helpers: 5}")
	for _, c := range []struct {
		name         string
		s            sections
		before       bool // some of it on a day before
		among, again bool
	}{
		{"on the day", onFeet.with("dates", "{mark: 2026-11-21, build: 2026-11-21}"), false, true, false},
		{"the day before", onFeet.with("dates", "{mark: 2026-11-20, build: 2026-11-21}"), true, false, true},
		{"no days", onFeet, true, false, true},
		{"half an hour the afternoon before", onFeet.with("dates", "{build: 2026-11-21}", "crew", "{helpers: 5, days: [{date: 2026-11-20, from: 15:00, until: 15:30, work: [marking]}, {date: 2026-11-21, work: [marking, driving, cutting, wrapping, raising, hanging, power]}]}"), true, true, true},
		{"a day of the crew", onFeet.with("dates", "{build: 2026-11-21}", "crew", "{helpers: 5, days: [{date: 2026-11-21, work: [marking]}, {date: 2026-11-21}]}"), false, true, false},
		{"that morning, before the others come", onFeet.with("dates", "{build: 2026-11-21}", "crew", "{helpers: 5, days: [{date: 2026-11-21, from: 07:00, until: 09:00, work: [marking]}, {date: 2026-11-21, from: 09:00}]}"), true, false, true},
		{"on stakes, too late for the call", base.with("dates", "{mark: 2026-11-21, build: 2026-11-21}"), true, false, true},
		{"on stakes, by days of the crew", base.with("dates", "{build: 2026-11-21}", "crew", "{helpers: 5, days: [{date: 2026-11-21, work: [marking]}, {date: 2026-11-21}]}"), false, true, false},
	} {
		p := solved(t, c.s.text())
		scheduleKeeps(t, p)
		before, among := false, false
		for _, j := range p.Crew.Schedule.Jobs {
			for _, st := range j.Stints {
				before = before || j.Work == crew.MarkGround && st.Day < p.Crew.Schedule.Marked
				among = among || j.Work == crew.MarkGround && st.Day >= p.Crew.Schedule.Marked
			}
		}
		does := func(a crew.Action) bool {
			return slices.ContainsFunc(p.Crew.Tasks, func(t crew.Task) bool { return t.Action == a })
		}
		if before != c.before || among != c.among || does(crew.CheckAgain) != c.again || len(p.Crew.Schedule.Left) > 0 {
			t.Errorf("%s: marked before %v, on the day %v, checked again %v, left %v", c.name, before, among, does(crew.CheckAgain), p.Crew.Schedule.Left)
		}
		late := slices.ContainsFunc(p.Crew.Findings, func(f finding.Finding) bool { return f.Code == "mark-too-late" })
		if late != (c.name == "on stakes, too late for the call") || does(crew.CallLocator) == strings.Contains(c.s.text(), feet) {
			t.Errorf("%s: told that it is too late %v, called %v", c.name, late, does(crew.CallLocator))
		}
		if t.Failed() {
			t.Fatal(c.name)
		}
	}
}

// What the season asks of the examples: the garden walk in a day with nobody idle more than two fifths of the time, for all
// but a pair wait while that joins and lights; the park walk in two days and evenings, both near their bounds.
func TestExamplesKeepTheirDays(t *testing.T) {
	for name, days := range map[string]int{"garden": 1, "starter": 1, "schoolyard": 1, "millwalk": 1, "parkwalk": 2} {
		text, err := examples.Files.ReadFile(name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		p := solved(t, string(text))
		scheduleKeeps(t, p)
		s := p.Crew.Schedule
		t.Logf("%s: takes %v, at least %v (%.0f %% over), idle %.0f %%, most %.0f %%", name, s.Takes, s.Least, 100*(s.Takes/s.Least-1), 100*s.Idle, 100*s.Most)
		if len(s.Built()) != days || s.Takes > 1.25*s.Least {
			t.Errorf("%s takes %d days, %v minutes of at least %v", name, len(s.Built()), s.Takes, s.Least)
		}
		if days == 1 && (s.Idle > 0.4 || s.Most > 0.4) {
			t.Errorf("%s: idle %.2f, whoever waits most %.2f", name, s.Idle, s.Most)
		}
	}
}
