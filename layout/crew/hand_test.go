package crew

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/sun"
)

// The hours of a day from 9:00 to 17:00, by what the spec gives for it; with a sunset at 16:20 it ends at 16:15. By hand.
func TestHoursGiven(t *testing.T) {
	const nine, five, quarterPastFour = 9 * 60, 17 * 60, 16*60 + 15
	outside, inside := allOfWork&^aside, worksOf(WrapLegs)
	at := func(h, m int) time.Duration { return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute }
	for _, c := range []struct {
		name        string
		works       works
		lit         bool // by the sun, whose setting is known
		from, until time.Duration
		begin, end  Clock
	}{
		{"as usual", outside, false, 0, 0, nine, five},
		{"begun later it goes on later", outside, false, at(10, 5), 0, 10*60 + 15, 18*60 + 15},
		{"but not beyond midnight", outside, false, at(18, 0), 0, 18 * 60, 24 * 60},
		{"ended earlier", outside, false, 0, at(16, 10), nine, 16 * 60},
		{"ended before it begins", outside, false, at(10, 0), at(9, 0), 10 * 60, 10 * 60},
		{"the sun ends it", outside, true, at(10, 0), 0, 10 * 60, quarterPastFour},
		{"begun in the dark", outside, true, at(18, 0), 0, 18 * 60, 18 * 60},
		{"at the bench by day", inside, true, at(10, 0), 0, 10 * 60, quarterPastFour},
		{"an evening at the bench", inside, true, at(18, 0), 0, 18 * 60, 20*60 + 30},
		{"a late one", inside, true, at(22, 30), 0, 22*60 + 30, 24 * 60},
	} {
		d := Workday{Begin: nine, End: five, works: c.works}
		if c.lit {
			d.End, d.Light = quarterPastFour, &Light{Set: 16*60 + 20}
		}
		if d.between(spec.CrewDay{From: c.from, Until: c.until}); d.Begin != c.begin || d.End != c.end {
			t.Errorf("%s: %v to %v, want %v to %v", c.name, d.Begin, d.End, c.begin, c.end)
		}
	}
}

// Circuits tell where the NEC is law, 120 V and what is near it; without any the units do.
func TestLikelyNEC(t *testing.T) {
	for _, c := range []struct {
		units measure.System
		volts []measure.Voltage
		want  bool
	}{
		{measure.Imperial, nil, true}, {measure.Metric, nil, false}, {measure.Metric, []measure.Voltage{120}, true},
		{measure.Imperial, []measure.Voltage{230}, false},
		{measure.Imperial, []measure.Voltage{24}, false}, {measure.Imperial, []measure.Voltage{100, 230}, true},
	} {
		s := &spec.Spec{Units: c.units}
		for _, v := range c.volts {
			s.Power.Circuits = append(s.Power.Circuits, spec.Circuit{Volts: v})
		}
		if got := LikelyNEC(s); got != c.want {
			t.Errorf("%v, circuits of %v V: %v", c.units, c.volts, got)
		}
	}
}

// Which work a task is part of, by what was done before it: the trade's parting of the day.
func TestWorkOfATask(t *testing.T) {
	wound := []lights.Wrap{{On: lights.Leg(spec.Left, 1)}, {On: lights.Part{Kind: lights.Ridge, Number: 2}}, {On: lights.Part{Kind: lights.Ridge, Number: 1}}}
	for _, c := range []struct {
		task  Task
		after Work
		wraps []lights.Wrap
		want  Work
	}{
		{Task{Phase: Marking, Action: CheckDots}, MarkGround, nil, MarkGround},
		{Task{Phase: Driving, Action: PullTest}, MarkGround, nil, TryStake},
		{Task{Phase: Driving, Action: MeasureWidths}, TryStake, nil, Drive},
		{Task{Phase: Cutting, Action: CutLegs}, Drive, nil, MakeLegs},
		{Task{Phase: Wrapping, Action: TagStrings}, MakeLegs, nil, TryStrings},
		{Task{Phase: Wrapping, Action: FlagRows}, TryStrings, nil, WrapLegs},
		{Task{Phase: Wrapping, Action: WindPipe, Of: Scope{Wraps: []int{0}}}, WrapLegs, wound, WrapLegs},
		{Task{Phase: Wrapping, Action: WindPipe, Of: Scope{Wraps: []int{1}}}, RaiseFirst, wound, WrapRidges},
		{Task{Phase: Wrapping, Action: WindPipe, Of: Scope{Wraps: []int{2}}}, WrapLegs, wound, FirstRidge}, // the ridge piece that is measured in place
		{Task{Phase: Cutting, Action: CutRidge}, RaiseFirst, wound, WrapRidges},
		{Task{Phase: Cutting, Action: CutRidge}, RaiseFirst, wound[:1], CutRidges},
		{Task{Phase: Raising, Action: StretchGuys}, RaiseFirst, nil, RaiseFirst},
		{Task{Phase: Raising, Action: StretchGuys}, RaiseOthers, nil, RaiseOthers},
		{Task{Phase: Raising, Action: StretchGuys}, CutRidges, nil, HoldRidge},
		{Task{Phase: Raising, Action: StretchGuys}, WrapRidges, nil, HoldRidge},
		{Task{Phase: Raising, Action: SightAlong}, RaiseOthers, nil, HoldRidge},
		{Task{Phase: Hanging, Action: TryOpening}, HoldRidge, nil, HangLights},
		{Task{Phase: Powering, Action: TestOutlets}, HangLights, nil, TryOutlets},
		{Task{Phase: Powering, Action: HangCords}, Lay, nil, HangUp},
		{Task{Phase: Powering, Action: JoinPlugs}, Lay, nil, Join},
		{Task{Phase: Powering, Action: CheckCords}, Join, nil, Join},
		{Task{Phase: Powering, Action: SetTimers}, Join, nil, PlugIn},
		{Task{Phase: Driving, Action: WeighDown}, Drive, nil, LayBags},
		{Task{Phase: Cutting, Action: CutTrial}, MakeLegs, nil, FirstRidge},
		{Task{Phase: Powering, Action: DarkWalk}, PlugIn, nil, LightUp},
	} {
		in := Input{Lights: lights.Layout{Wraps: c.wraps}, Ridge: []RidgePiece{{Bay: 1}}}
		if got, ok := in.workOf(c.task, c.after); !ok || got != c.want {
			t.Errorf("action %d after work %d with %d wraps: work %d, %v; want %d", c.task.Action, c.after, len(c.wraps), got, ok, c.want)
		}
	}
	for _, after := range []Phase{Nights, TakeDown} {
		if w, ok := (Input{}).workOf(Task{Phase: after, Action: NoonCall}, LightUp); ok {
			t.Errorf("%s belongs to work %d of the day", after, w)
		}
	}
}

// A trial stands the first arch that has guys, and where none has the first; it winds two legs where legs are wound.
func TestTrialArch(t *testing.T) {
	trial := func(guyed int, change func(*Input)) (list []Task) {
		in := garden(4)
		in.Spec.Crew.Days = []spec.CrewDay{{Work: []string{"trial"}}}
		in.Ground.Stakes = slices.DeleteFunc(in.Ground.Stakes, func(s ground.Stake) bool { return s.Guy })
		if guyed > 0 {
			in.Ground.Stakes = append(in.Ground.Stakes, ground.Stake{StakeID: ground.StakeID{Arch: guyed, Guy: true}})
		}
		change(&in)
		for _, task := range tasksOf(in) {
			if task.Action == TrialArch {
				list = append(list, task)
			}
		}
		return list
	}
	same := func(*Input) {}
	for guyed, want := range map[int]int{0: 1, 3: 3} {
		list := trial(guyed, same)
		if len(list) != 1 || !slices.Equal(list[0].Of.Arches, []int{want}) || len(list[0].Of.Stakes) != min(1, guyed) {
			t.Fatalf("guys at arch %d: %+v", guyed, list)
		}
		// Three carry: 12 to raise, 8 to lower, four measures of 1.5, five to a guy, and ten for each to carry it there and look; ten to wind each leg.
		bare := trial(guyed, func(in *Input) { in.Lights.Wraps = nil })
		if got, both := bare[0].Minutes*3, list[0].Minutes*3; got != float64(12+8+4*1.5+5*min(1, guyed)+3*10) || both != got+2*10 {
			t.Errorf("guys at arch %d: %v minutes bare, %v wound", guyed, got, both)
		}
	}
	if list := trial(0, func(in *Input) { in.Spec.Crew.Days = nil }); len(list) > 0 {
		t.Errorf("nobody asked for %+v", list)
	}
}

// Line is cut once: of the garden two minutes for each of four guys with its ribbon, one for the line along the crowns; by a pair, with the cutters. Where sockets are pinned there is no such line, without guys
// nothing to cut.
func TestLinesAreCut(t *testing.T) {
	for joints, want := range map[spec.Joints]float64{spec.Dry: 9, spec.Pinned: 8} {
		in := garden(6)
		if in.Spec.Arch.Joints = joints; !in.Spec.CrownLine() {
			in.Line = nil
		}
		list := tasksOf(in)
		k := slices.IndexFunc(list, func(t Task) bool { return t.Action == CutLines })
		if k < 0 || list[k].Minutes*2 != want || list[k].Phase != Cutting || !slices.ContainsFunc(list[k].Uses, func(n Need) bool { return n.Thing == Cutters }) {
			t.Errorf("joints %v: want %v minutes of one pair of hands: %+v", joints, want, list)
		}
	}
}

// What a crew comes to in the evenings and at the end, with people and the minutes of one reckoned by hand, of five who lower the three who carry:
// two outlets, six arches, sixteen stakes, two cords, twelve legs and five ridge pieces wound, and a line along the crowns that comes off crown by crown; three pairs unwind, for
// two would be at it for longer than 20 minutes.
func TestEveningsAndTheEnd(t *testing.T) {
	list := tasksOf(garden(6))
	for _, c := range []struct {
		action  Action
		people  int
		minutes float64
	}{
		{NoonCall, 1, 5}, {NightStakes, 1, 5}, {NightPipe, 1, 5}, {NightTest, 1, 2 * 1.5}, {NightLights, 1, 5}, {NightWay, 1, 5}, {NightClose, 1, 5},
		{Unplug, 1, 2 * 1.5}, {MeasureSag, 2, 3 * 4 * 1.5}, {NameLegs, 2, 12}, {CoilCords, 2, 2 * 3}, {LowerArches, 5, 6 * (8 + 1) * 5},
		{OpenJoints, 2, 6}, {Unwind, 6, 17 * 5}, {PullStakes, 2, 16 * 4}, {LookOver, 2, 6}, {Store, 2, 30}, {NextYear, 1, 10},
	} {
		k := slices.IndexFunc(list, func(task Task) bool { return task.Action == c.action })
		if k < 0 {
			t.Errorf("no action %d", c.action)
			continue
		}
		share := float64(c.people)
		if c.action == LowerArches {
			share = practice.Carriers
		}
		if task := list[k]; task.Who.people() != c.people || task.Minutes*share != c.minutes {
			t.Errorf("action %d: %d people, %v minutes; want %d, %v", c.action, task.Who.people(), task.Minutes, c.people, c.minutes/share)
		}
	}
}

// What joins legs of two sticks, by hand for six arches: twelve couplings, of a minute each dry, with two screws of 0.7 more, or of two cemented sockets of two minutes; up to 1 1/4 in (42 mm) cement sets in
// 45 minutes, above in 90. Of legs that the shed holds cemented none is joined again. At the end arches come apart at the crowns, and one that is cemented from foot to foot does not; the screws of two
// ridge sockets, a fifth of a minute each, keep five people waiting at each arch, where no line is knotted.
func TestSticksJoined(t *testing.T) {
	for _, c := range []struct {
		joints      spec.Joints
		od          measure.Length
		whole       bool
		came        int
		joining     float64 // of one pair of hands
		sets, opens int
		lowering    float64
	}{
		{spec.Dry, 21, false, 0, 12, 0, 1, 9}, {spec.Pinned, 21, false, 0, 12 * 2.4, 0, 1, 8.4}, {spec.Glued, 21, false, 0, 12 * 4, 45, 1, 9}, {spec.Glued, 42.2, false, 0, 12 * 4, 45, 1, 9},
		{spec.Glued, 50, false, 5, 7 * 4, 90, 1, 9}, {spec.Glued, 21, false, 12, 0, 0, 1, 9}, {spec.Glued, 21, true, 0, 6 * 4, 45, 0, 9}, {spec.Pinned, 21, true, 0, 6 * 2.4, 0, 1, 8.4},
	} {
		in := garden(6)
		in.Spec.Arch.Joints, in.Cemented = c.joints, map[lights.Part]bool{}
		if c.joints == spec.Pinned {
			in.Line = nil
		}
		kind := *in.Arches[0].Kind
		kind.Spec.Pipe.OD, kind.Spec.OneStick = c.od, c.whole
		if kind.Left, kind.Right = []measure.Length{80 * inch, 40 * inch}, []measure.Length{80 * inch, 40 * inch}; c.whole {
			kind.Right, kind.Spec.Left = nil, kind.Left
		}
		for i := range in.Arches {
			in.Arches[i].Kind = &kind
			for side := range 2 {
				in.Cemented[lights.Leg(spec.Side(side), i+1)] = 2*i+side < c.came
			}
		}
		joining, lowering, sets, opens := 0.0, 0.0, 0, 0
		for _, task := range tasksOf(in) {
			switch task.Action {
			case JoinSticks:
				joining, sets = joining+task.Minutes*float64(task.Who.people()), task.Sets
			case OpenJoints:
				opens++
			case LowerArches:
				lowering = task.Minutes
			}
		}
		if math.Abs(joining-c.joining) > 1e-9 || sets != c.sets || opens != c.opens || math.Abs(lowering-6*c.lowering*practice.Raisers/practice.Carriers) > 1e-9 {
			t.Errorf("%v of %v mm: joined in %v minutes, sets in %d, %d tasks open them, lowered in %v; want %+v", c.joints, c.od, joining, sets, opens, lowering, c)
		}
	}
}

// All dots are painted once, in their order within a task, each by the task's own action; on a straight no two tasks of one action follow each
// other, and round a bend those that take turns are one task each.
func TestPainting(t *testing.T) {
	for _, turn := range []measure.Angle{0, 1} {
		for _, marked := range []bool{false, true} {
			s := garden(8).Spec
			s.Tunnel.Length = 7 * s.Tunnel.Spacing
			s.Site.Route = []spec.Leg{{Turn: turn, Radius: 40 * foot}}
			if marked {
				s.Site.Marks = []spec.Mark{{Name: "post", At: &spec.Point{X: -8 * foot}}, {Name: "gate", At: &spec.Point{X: 20 * foot}}}
			}
			spans, crowns := slices.Repeat([]measure.Length{84 * inch}, 8), slices.Repeat([]measure.Length{97 * inch}, 8)
			in := Input{Spec: s, Ground: ground.Lay(s, ground.Arches{Spans: spans, Crowns: crowns}), Arches: []arch.Arch{{}}}
			b := &tasker{Input: in, units: s.Units}
			dots, n, seen := b.Ground.Marking(s.Units), 0, map[Action]int{}
			for k, g := range b.painting(dots) {
				action := b.paints(g[0])
				if seen[action]++; k > 0 && turn == 0 && b.paints(b.painting(dots)[k-1][0]) == action {
					t.Errorf("two tasks of action %d in a row", action)
				}
				before := -1
				for _, d := range g {
					at := slices.Index(dots, d)
					if b.paints(d) != action || at <= before {
						t.Errorf("dot %d of action %d in a task of %d, after dot %d", at, b.paints(d), action, before)
					}
					before = at
					n++
				}
			}
			if last := (ground.Spot{Kind: ground.AtStake, Index: 14}); turn == 0 && marked { // the last left stake is the one that is set where tapes met
				for _, d := range dots {
					if a := b.paints(d); (a == SetEnd) != (d.Spot == last) || a == PaintRow && (d.Spot.Index%2 == 1 || d.Spot.Index == 0) {
						t.Errorf("action %d paints %+v", a, d.Spot)
					}
				}
			}
			if n != len(dots) || n == 0 || turn != 0 && marked && (seen[FindByTapes] != 1 || seen[PaintByBays] > 0) {
				t.Errorf("turn %v, marks %v: %d of %d dots, %v", turn, marked, n, len(dots), seen)
			}
		}
	}
}

// Whatever is laid: nobody is at two jobs at once or at work in a rest, jobs have hands, hands of age and tools enough, and there are no more of
// these than there are; what a job waits for is done before it; and all its work is done, with no quarter of an hour too many.
func TestScheduleHolds(t *testing.T) {
	for _, n := range []int{2, 7, 30} {
		for young := range 4 {
			in := garden(n)
			in.Spec.Crew.Helpers, in.Spec.Crew.Young, in.Spec.Site.Place, in.Spec.Site.Clock = 4+young, young, &spec.LatLong{Lat: 45, Long: -75}, sun.Zone(-75)
			in.Spec.Crew.Tools = spec.Tools{Ladders: 1, Trestles: 4, Tapes: 2}
			c := in.calendar()
			l := c.best(in.ways(tasksOf(in), layEarly, c), fewTries)
			s := l.schedule()
			if end := l.log[len(l.log)-1]; l.last != end.day*24*60+int(end.at)+quarter {
				t.Errorf("%d arches: ends %d minutes after the first midnight, by its last entry %+v", n, l.last, end)
			}
			type slot struct {
				day int
				at  Clock
			}
			busy, used := map[slot]map[int]bool{}, map[slot]tools{}
			for _, j := range s.Jobs {
				done := 0.0
				for _, st := range j.Stints {
					grown := 0
					for _, p := range st.Hands {
						if p < s.Hands-s.Young {
							grown++
						}
					}
					if people := len(st.Hands); people < j.Least || people > j.Most || grown < max(j.grown(people), j.Uses[0], b2i(j.Work == MakeLegs)) { // who climbs is of age, who trims
						t.Errorf("%d arches, %d young: %d people at work %d, %d of age, of %d to %d", n, young, people, j.Work, grown, j.Least, j.Most)
					}
					done += float64(int(st.End-st.Begin) * len(st.Hands))
					for at := st.Begin; at < st.End; at += quarter {
						k := slot{st.Day, at}
						if d := s.Days[st.Day]; j.Work != LightUp && (at < d.Begin || at >= d.End || d.rests(at)) {
							t.Errorf("work %d at %v of %v to %v", j.Work, at, d.Begin, d.End)
						}
						if busy[k] == nil {
							busy[k] = map[int]bool{}
						}
						for _, p := range st.Hands {
							if busy[k][p] || p >= s.Hands {
								t.Errorf("%d arches: person %d of %d is at two jobs at %v", n, p, s.Hands, at)
							}
							busy[k][p] = true
						}
						sum := used[k]
						for i := range sum {
							if sum[i] += min(j.Uses[i], len(st.Hands)); sum[i] > c.tools[i] {
								t.Errorf("%d of tool %d at %v", sum[i], i, at)
							}
						}
						used[k] = sum
					}
					for _, k := range j.After {
						if day, end, _ := s.Jobs[k].End(); day > st.Day || day == st.Day && end > st.Begin {
							t.Errorf("%d arches: work %d begins before work %d is done", n, j.Work, s.Jobs[k].Work)
						}
					}
				}
				if j.Work != LightUp && j.Work != ClearUp && (done < j.work()-1e-6 || done >= j.work()+float64(quarter*j.Most)) {
					t.Errorf("%d arches: %v minutes at work %d of %v", n, done, j.Work, j.work())
				}
			}
		}
	}
}

// Both legs of arch 1 go into a tee before it is raised, of a lone arch into a coupling; where whole arches are wound, all are joined for that,
// those between the ends into crosses. One stick needs nothing.
func TestCrownFittings(t *testing.T) {
	for _, c := range []struct {
		arches   int
		action   Action
		change   func(*Input)
		joined   []int
		fittings map[Thing]int
	}{
		{6, JoinCrown, func(*Input) {}, []int{1}, map[Thing]int{CrownTees: 1, SpareTee: 1}},
		{1, JoinCrown, func(*Input) {}, []int{1}, map[Thing]int{CrownCouplings: 1}},
		{3, JoinCrown, func(in *Input) { in.Spec.Ridge.Present, in.Ridge = false, nil }, []int{1}, map[Thing]int{CrownCouplings: 1}},
		{5, JoinForWrap, func(in *Input) { in.Lights.Wraps[0].On = lights.Part{Kind: lights.Arch, Number: 1} }, []int{1, 2, 3, 4, 5},
			map[Thing]int{CrownTees: 2, CrownCrosses: 3, SpareTee: 1, SpareCross: 1}},
		{6, JoinCrown, func(in *Input) { in.Arches[0].Kind.Spec.OneStick = true }, nil, nil},
	} {
		in := garden(c.arches)
		c.change(&in)
		var joined []int
		fittings := map[Thing]int{}
		for _, task := range tasksOf(in) {
			if task.Action != c.action {
				continue
			}
			joined = append(joined, task.Of.Arches...)
			for _, n := range task.Uses {
				if slices.Contains([]Thing{CrownTees, CrownCrosses, CrownCouplings, SpareTee, SpareCross}, n.Thing) {
					fittings[n.Thing] += n.Count
				}
			}
			if want := 4 * float64(len(task.Of.Arches)) / 2; task.Minutes != want {
				t.Errorf("%d arches: %v minutes for %v, want %v", c.arches, task.Minutes, task.Of.Arches, want)
			}
		}
		if !slices.Equal(joined, c.joined) || !maps.Equal(fittings, c.fittings) {
			t.Errorf("%d arches, action %d: %v joined with %v, want %v with %v", c.arches, c.action, joined, fittings, c.joined, c.fittings)
		}
	}
}

// Who comes to a job besides those who stay: as many of age and under it as it lacks, whoever has worked least, but those who did the same before
// first while they have not worked so many quarters more.
func TestPick(t *testing.T) {
	for _, c := range []struct {
		stay     []int
		n, young int
		want     []int
	}{
		{[]int{0, 4}, 3, 1, []int{0, 2, 4}},
		{[]int{0}, 3, 1, []int{0, 2, 4}},
		{[]int{0}, 2, 0, []int{0, 2}},
		{nil, 3, 0, []int{1, 2, 3}},
		{nil, 2, 1, []int{2, 4}},
		{[]int{1, 4}, 4, 2, []int{1, 2, 4, 5}},
	} {
		s := seating{laid: &laid{hands: 6, young: 2}, keep: 2, did: []Work{Lay, Lay, Drive, Drive, Lay, Lay}, worked: []int{9, 5, 4, 7, 1, 2}, busy: make([]bool, 6)}
		for _, p := range c.stay {
			s.busy[p] = true
		}
		if got := s.pick(Drive, c.stay, entry{n: c.n, young: c.young}); !slices.Equal(got, c.want) {
			t.Errorf("%d of them %d young, %v stay: %v, want %v", c.n, c.young, c.stay, got, c.want)
		}
	}
}

// More helpers are told as so many more than there are.
func TestHelpersWanted(t *testing.T) {
	in := garden(14)
	in.Spec.Crew.Helpers = 3
	plan := Day(in)
	want := plan.Schedule.Fit.Helpers - in.Spec.Crew.Helpers
	if want < 1 {
		t.Fatalf("%+v", plan.Schedule.Fit)
	}
	for _, f := range plan.Findings {
		if f.Code == "long-day" && !strings.Contains(f.Text, say.Count(want, "more helper")) {
			t.Errorf("%d helpers would do of %d: %s", plan.Schedule.Fit.Helpers, in.Spec.Crew.Helpers, f.Text)
		}
	}
}

// What stays on the tunnel is brought for every task that takes it, a tool once for all; the longest of a ladder or a line serves for all, of what is cut to a length none for
// another.
func TestKitOfTwoTasks(t *testing.T) {
	stays := []Thing{ZipTies, SocketCovers, PlugCovers, Screws, StringTags, BarrierNet}
	for thing := range Bags + 1 {
		p := Plan{Tasks: []Task{{Phase: Marking, Uses: []Need{long(thing, 3, 5)}}, {Phase: Marking, Uses: []Need{long(thing, 2, 5)}}, {Phase: TakeDown, Uses: []Need{many(thing, 9)}}}}
		want := 3
		if slices.Contains(stays, thing) {
			want = 5
		}
		if got := p.Kit(Marking); !slices.Equal(got, []Need{long(thing, want, 5)}) {
			t.Errorf("thing %d, three and two: %v, want %d", thing, got, want)
		}
	}
	uses := []Need{long(StringLine, 1, 7), long(Stepladder, 1, 3), long(Stepladder, 1, 4), long(StringLine, 1, 6), long(Braces, 1, 6), long(Braces, 1, 7)}
	want := []Need{long(StringLine, 1, 7), long(Stepladder, 1, 4), long(Braces, 1, 6), long(Braces, 1, 7)}
	byThing := func(a, b Need) int { return int(a.Thing - b.Thing) }
	slices.SortStableFunc(want, byThing)
	if got := (Plan{Tasks: []Task{{Phase: Marking, Uses: uses}}}).Kit(Marking); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Two crews that raise at the same hour have a mallet each; one after the other, or the sticks that stay up, are not doubled.
func TestKitOfTwoCrews(t *testing.T) {
	for second, want := range map[Clock]int{90: 2, 120: 1} {
		p := Plan{Tasks: []Task{{Phase: Raising, Who: Who{Roles: []Role{Foot1, Foot2}}, Uses: []Need{one(Mallet), many(Sticks, 8)}}}, Schedule: Schedule{Jobs: []Job{
			{Work: RaiseOthers, Tasks: []int{0}, Stints: []Stint{{Begin: 60, End: 120}}}, {Work: RaiseOthers, Tasks: []int{0}, Stints: []Stint{{Begin: second, End: second + 60}}}}}}
		if got := p.Kit(Raising); !slices.Equal(got, []Need{many(Mallet, want), many(Sticks, 8)}) {
			t.Errorf("second crew from %d: %v, want %d mallets", second, got, want)
		}
	}
}

// Three crews that take down are all at a crown at once: a ladder, a screwdriver each, goggles for their fifteen; the caps are those of all legs, who measures the crowns before brings one tape.
func TestKitOfThreeCrewsDown(t *testing.T) {
	p := Plan{Lowerers: 3, Tasks: []Task{{Phase: TakeDown, Action: MeasureSag, Uses: []Need{one(ShortTape), one(Stepladder)}},
		{Phase: TakeDown, Action: LowerArches, Uses: []Need{many(Caps, 120), one(Stepladder), one(Screwdriver), many(EyeProtection, 5)}}}}
	for _, want := range []Need{one(ShortTape), many(Caps, 120), many(Stepladder, 3), many(Screwdriver, 3), many(EyeProtection, 15)} {
		if got := p.Kit(TakeDown); !slices.Contains(got, want) {
			t.Errorf("%v, want %v in it", got, want)
		}
	}
}

// The line along the crowns is cut a bay where there are people of age for two crews, five each and one more for each wire, and where a second one can begin: at an arch past the third with guys of its own, or in
// a row so long that it is laid flat by several.
func TestWhoHasALineABay(t *testing.T) {
	for _, c := range []struct {
		arches, helpers, young, wires int
		guys                          []int
		want                          bool
	}{
		{60, 16, 0, 0, []int{1, 13, 60}, true}, {60, 16, 0, 0, nil, true}, {60, 8, 0, 0, []int{1, 13, 60}, false}, {60, 9, 0, 0, []int{1, 13, 60}, true}, {60, 9, 1, 0, []int{1, 13, 60}, false},
		{60, 10, 0, 1, nil, false}, {60, 11, 0, 1, nil, true}, {10, 16, 0, 0, []int{1, 3, 10}, false}, {10, 16, 0, 0, []int{1, 6, 10}, true}, {10, 16, 0, 0, nil, false}, {11, 16, 0, 0, nil, true},
	} {
		s := &spec.Spec{}
		s.Tunnel.Arches, s.Crew.Helpers, s.Crew.Young, s.Guys.Arches, s.Site.Overhead = c.arches, c.helpers, c.young, c.guys, make([]spec.Overhead, c.wires)
		if got := LineByBay(s); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// Which stakes a remedy may have moved: a new hole beside the old is for any, the others are for one kind, and who asks moves none.
func TestWhatARemedyMoves(t *testing.T) {
	all := []ground.Kind{ground.OfLeg, ground.OfGuy, ground.OfBrace}
	for r, want := range map[Remedy][]ground.Kind{BesideHole: all, MoveAcross: all[:1], MoveAlong: all[:1], MoveGuy: all[1:2], Ask: nil, DoNotMove: nil} {
		for _, k := range all {
			if r.Moves(k) != slices.Contains(want, k) {
				t.Errorf("remedy %d moves stakes of kind %d: %v", r, k, r.Moves(k))
			}
		}
	}
}

// What an evening at the bench before the day takes waits neither for the unloading nor for the site's outlets; what it does not take, or only an evening after a day outdoors, does.
func TestBenchWaitsForNoDay(t *testing.T) {
	evening, day := Workday{works: worksOf(TryStrings, WrapLegs)}, Workday{works: allOfWork}
	for _, c := range []struct {
		days  []Workday
		work  Work
		after Work
		want  bool
	}{
		{[]Workday{evening, day}, TryStrings, TryOutlets, true}, {[]Workday{evening, day}, WrapLegs, TryOutlets, true}, {[]Workday{evening, day}, TryStrings, Unload, true},
		{[]Workday{evening, day}, MakeLegs, Unload, false}, {[]Workday{evening, day}, Lay, TryOutlets, false}, {[]Workday{evening, day}, WrapLegs, TryStrings, false},
		{[]Workday{day, evening}, TryStrings, TryOutlets, false}, {nil, TryStrings, Unload, false},
	} {
		if got := (Input{}).spares(Job{Work: c.work}, Job{Work: c.after}, calendar{others: c.days}); got != c.want {
			t.Errorf("days %v: work %d need not wait for %d: %v", c.days, c.work, c.after, got)
		}
	}
}
