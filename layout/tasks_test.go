package layout_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/dice"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// bringer says which lines of the buying list bring a thing: by their kinds, all of them or their spares alone.
type bringer struct {
	kinds  []stock.Kind
	spares bool
}

var bringers = map[crew.Thing]bringer{
	crew.WhitePaint: {[]stock.Kind{stock.MarkingPaint}, false}, crew.Flags: {[]stock.Kind{stock.MarkingFlag}, false}, crew.Lath: {[]stock.Kind{stock.Lath}, false},
	crew.Stakes: {[]stock.Kind{stock.ReadyStake, stock.SteelBar}, false}, crew.SpareStake: {[]stock.Kind{stock.ReadyStake, stock.SteelBar}, true},
	crew.Caps: {[]stock.Kind{stock.StakeCap}, false}, crew.SpareCap: {[]stock.Kind{stock.StakeCap}, true}, crew.Ribbon: {[]stock.Kind{stock.Ribbon}, false},
	crew.Sticks: {[]stock.Kind{stock.PipeStick}, false}, crew.SpareStick: {[]stock.Kind{stock.PipeStick}, true},
	crew.LegCouplings: {[]stock.Kind{stock.Coupling}, false}, crew.CrownCouplings: {[]stock.Kind{stock.Coupling}, false}, crew.CrownTees: {[]stock.Kind{stock.Tee}, false},
	crew.CrownCrosses: {[]stock.Kind{stock.Cross}, false}, crew.SpareTee: {[]stock.Kind{stock.Tee}, true}, crew.SpareCross: {[]stock.Kind{stock.Cross}, true},
	crew.Strings: {[]stock.Kind{stock.LightString}, false}, crew.SpareString: {[]stock.Kind{stock.LightString}, true}, crew.StringTags: {[]stock.Kind{stock.WriteOnTags}, false},
	crew.ZipTies: {[]stock.Kind{stock.ZipTies}, false}, crew.GuyLine: {[]stock.Kind{stock.GuyLine}, false}, crew.CrownLine: {[]stock.Kind{stock.GuyLine}, false},
	crew.Tighteners: {[]stock.Kind{stock.Tightener}, false}, crew.GuyClamps: {[]stock.Kind{stock.GuyClamp}, false}, crew.Screws: {[]stock.Kind{stock.Screw}, false},
	crew.Cement: {[]stock.Kind{stock.Cement}, false}, crew.Cords: {[]stock.Kind{stock.ExtensionCord}, false}, crew.ThreeWays: {[]stock.Kind{stock.ThreeWay}, false},
	crew.PlugCovers: {[]stock.Kind{stock.PlugCover}, false}, crew.SocketCovers: {[]stock.Kind{stock.SocketCover}, false}, crew.CordCovers: {[]stock.Kind{stock.CordCover}, false},
	crew.Timers: {[]stock.Kind{stock.Timer}, false}, crew.PortableGFCIs: {[]stock.Kind{stock.PortableGFCI}, false}, crew.PlugBoxes: {[]stock.Kind{stock.PlugBox}, false},
	crew.Braces: {[]stock.Kind{stock.PipeStick}, false}, crew.BraceClamps: {[]stock.Kind{stock.BraceClamp}, false}, crew.Webbing: {[]stock.Kind{stock.Webbing}, false},
	crew.SoleBoards: {[]stock.Kind{stock.SoleBoard}, false}, crew.BarSockets: {[]stock.Kind{stock.BarSocket}, false},
	crew.SandBags: {[]stock.Kind{stock.SandBag}, false},
	crew.Lanterns: {[]stock.Kind{stock.Lantern}, false},
}

// inBulk are things that are bought by length, bag, can or roll, or cut from what is: one line is enough.
var inBulk = []crew.Thing{crew.ZipTies, crew.StringTags, crew.WhitePaint, crew.Ribbon, crew.GuyLine, crew.CrownLine, crew.Braces, crew.Webbing, crew.Stakes, crew.SpareStake, crew.Sticks, crew.SpareStick}

// What a task uses is in its crew's kit, as long and as many, on the days of the building so many as the schedule has at work at once (kitsGoRound); what is bought is on the buying list in that number at least.
func TestTasksUseNothingThatNoListBrings(t *testing.T) {
	specs := map[string]string{}
	for _, name := range []string{"garden", "schoolyard", "millwalk", "parkwalk", "starter"} {
		specs[name] = example(t, name)
	}
	for name, more := range map[string]string{"braced": "braces: {bays: [1, 3, 5], from: 5 ft}\n", "crossed": "braces: {bays: [2], from: 5 ft, kind: line}\n",
		"both": "guys: {from: 7 ft, out: 7 ft}\nbraces: {bays: [3], from: 5 ft}\n"} {
		specs[name] = minimal + more
	}
	specs["wider than a lath"] = "hoopwright: 1\ntitle: Wide\nunits: metric\ntunnel: {arches: 3, spacing: 1.6 m}\narch: {pipe: pvc-u pn16 25 mm, sticks: [3.4 m, 3.4 m], height: 2.5 m}\n"
	specs["on a yard"] = strings.Replace(minimal, "span: 7 ft", "span: 7 ft, foot: {width: 24 in, on: concrete, bar: 1/2 in}", 1)
	specs["braced on a yard"] = strings.Replace(minimal, "span: 7 ft", "span: 7 ft, foot: {width: 24 in, on: concrete, bar: 1/2 in}", 1) + "braces: {bays: [1, 3], from: 5 ft}\n"
	for name, text := range specs {
		plan := solved(t, text)
		for _, task := range plan.Crew.Tasks {
			kit := plan.Crew.Kit(task.Phase)
			later := task.Phase == crew.Nights || task.Phase == crew.TakeDown
			for _, n := range task.Uses {
				many := n.Count
				if n.Thing.Source() == crew.Fetched && !later {
					many = 1
				}
				if !slices.ContainsFunc(kit, func(k crew.Need) bool { return k.Thing == n.Thing && k.Count >= many && k.Length >= n.Length }) {
					t.Errorf("%s: task %d uses thing %d, %d of %v, and the kit has none", name, task.Action, n.Thing, n.Count, n.Length)
				}
			}
		}
		for _, phase := range []crew.Phase{crew.Marking, crew.Driving, crew.Cutting, crew.Wrapping, crew.Raising, crew.Hanging, crew.Powering, crew.Nights, crew.TakeDown} {
			for _, n := range plan.Crew.Kit(phase) {
				if n.Thing.Source() != crew.Bought {
					continue
				}
				by, known := bringers[n.Thing]
				if !known {
					t.Errorf("%s: %s uses thing %d and no list brings it", name, phase, n.Thing)
				}
				have := 0
				for _, item := range plan.Shopping {
					switch {
					case !slices.Contains(by.kinds, item.Kind):
					case by.spares:
						have += item.Spare
					default:
						have += item.Need
					}
				}
				if least := n.Count; have < 1 || have < least && !slices.Contains(inBulk, n.Thing) {
					t.Errorf("%s: %s uses %d of thing %d, the buying list has %d", name, phase, n.Count, n.Thing, have)
				}
			}
		}
	}
}

// The order of the raising, as it is done: guys tied while the arch lies flat, arch 1 guyed and measured before arch 2 is touched, bay 1 measured before the other
// ridge pieces are cut, and those wound before they go up. Common practice, no source.
func TestOrderOfRaising(t *testing.T) {
	data, err := examples.Files.ReadFile("garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	tasks := solved(t, string(data)).Crew.Tasks
	last := -1
	for _, a := range []crew.Action{crew.CheckDots, crew.CallLocator, crew.ReadTicket, crew.PullTest, crew.DriveStakes, crew.MeasureWidths, crew.CutTrial, crew.MarkLegs, crew.TestStrings, crew.WindPipe, crew.WindPipe,
		crew.CheckDay, crew.JoinCrown, crew.TieGuysFlat, crew.SetFirst, crew.WalkLast, crew.StretchGuys, crew.MeasureArch, crew.RaiseSame, crew.SpringRidge, crew.MeasureBay,
		crew.CutRidge, crew.WindPipe, crew.RaiseRest, crew.SightAlong, crew.TestOutlets, crew.LayCords, crew.PlugRuns, crew.DarkWalk,
		crew.Unplug, crew.LowerArches, crew.PullStakes} {
		k := slices.IndexFunc(tasks[last+1:], func(t crew.Task) bool { return t.Action == a })
		if k < 0 {
			t.Fatalf("action %d does not come after the one before", a)
		}
		last += 1 + k
	}
	for _, task := range tasks {
		if task.Action == crew.CheckDay && len(task.Who.Roles) != 5 {
			t.Errorf("%d people raise", len(task.Who.Roles))
		}
		if task.Minutes < 0 || task.Hold && len(task.Want) == 0 {
			t.Errorf("action %d: %v minutes, holds for nothing", task.Action, task.Minutes)
		}
	}
}

// What nobody has looked into is a hold: a line that a stake may meet, a wire that an arch may meet, an outlet without protection, a breaker that nobody read. Where it is known the
// hold for it alone goes.
func TestWhatNobodyKnowsIsAHold(t *testing.T) {
	data, err := examples.Files.ReadFile("garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	holds := func(dangers ...spec.Danger) (list []crew.Action, reads bool) {
		s := read(t, "garden", string(data))
		s.Site.Unknown = dangers
		for _, task := range layout.Solve(s).Crew.Tasks {
			if task.Hold {
				list = append(list, task.Action)
			}
			for _, f := range task.Want {
				reads = reads || f.What == crew.BreakerReads && f.Amps > 0
			}
		}
		return list, reads
	}
	known, reads := holds()
	if slices.Contains(known, crew.AskOwner) || slices.Contains(known, crew.LookUp) || reads {
		t.Errorf("all is known, and the holds are %v", known)
	}
	list, reads := holds(spec.BuriedLines, spec.OverheadLines, spec.OutletsGFCI, spec.BreakerAmps)
	call := slices.Index(list, crew.CallLocator)
	for _, a := range []crew.Action{crew.AskOwner, crew.LookUp} {
		if at := slices.Index(list, a); at < 0 || at > call {
			t.Errorf("action %d is hold %d, the locator's call %d", a, at, call)
		}
	}
	if !slices.Contains(list, crew.TestOutlets) || !reads {
		t.Errorf("holds %v; a breaker is read: %v", list, reads)
	}
}

// dotsArePainted: each stake has one dot; what a dot is measured from is a mark or was painted before; every check is between what is there, and its limit is a
// figure. With marks that stand apart no leg's dot is without a check that could fail.
func dotsArePainted(t *testing.T, p *layout.Plan) {
	there := map[ground.Spot]bool{}
	for i := range p.Ground.Marks {
		there[ground.Spot{Kind: ground.AtMark, Index: i}] = true
	}
	for _, d := range p.Ground.Marking(p.Spec.Units) {
		from := []ground.Spot{d.From, d.To, d.Zero}[:[...]int{0, 1, 2, 3}[d.How]]
		for _, s := range from {
			if !there[s] {
				t.Errorf("%v is measured from %v, which is not there", d.Spot, s)
			}
		}
		if there[d.Spot] {
			t.Errorf("%v is painted twice", d.Spot)
		}
		there[d.Spot] = true
	}
	for i, s := range p.Ground.Stakes {
		if !there[ground.Spot{Kind: ground.AtStake, Index: i}] {
			t.Errorf("%v has no dot", s.StakeID)
		}
	}
	checked := map[int]bool{}
	for _, c := range p.Ground.Checks(p.Spec.Units) {
		if !there[c.From] || !there[c.To] || math.IsNaN(float64(c.Limit)) || c.Limit <= 0 || c.Distance < 0 {
			t.Errorf("check %v", c)
		}
		checked[c.To.Index], checked[c.From.Index] = true, true
	}
	for i, s := range p.Ground.Stakes {
		if !checked[i] {
			t.Errorf("no check of %v", s.StakeID)
		}
	}
}

// tasksAreWhole: a task takes time of somebody and, if it holds, wants something; its figures are numbers.
func tasksAreWhole(t *testing.T, p *layout.Plan) {
	for _, task := range p.Crew.Tasks {
		if task.Phase == "" || task.Minutes < 0 || math.IsNaN(task.Minutes) || math.IsInf(task.Minutes, 0) || task.Hold && len(task.Want) == 0 {
			t.Errorf("task %d of %q: %v minutes, hold %v, %d wants", task.Action, task.Phase, task.Minutes, task.Hold, len(task.Want))
		}
		for _, u := range task.Uses {
			if u.Count < 1 {
				t.Errorf("task %d of %q takes %d of thing %d", task.Action, task.Phase, u.Count, u.Thing)
			}
		}
		for _, f := range task.Want {
			for _, v := range []float64{float64(f.Length), float64(f.Limit), float64(f.Angle), float64(f.Force), float64(f.Gust)} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("task %d wants %d of %v", task.Action, f.What, v)
				}
			}
		}
	}
}

// Every joint of two strings on pipe is plugged by the crew that raises: as many as the runs have strings after their first. Where nothing hangs from pipe and
// no part has two strings there are no others.
func TestJointsOfLightsArePluggedWhileWithinReach(t *testing.T) {
	for _, name := range []string{"garden", "schoolyard", "parkwalk", "starter"} {
		data, err := examples.Files.ReadFile(name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		plan := solved(t, string(data))
		joints, plugged, counted := 0, 0, 0
		for _, c := range plan.Chains {
			joints += len(c.Strings) - 1
		}
		for _, task := range plan.Crew.Tasks {
			for _, f := range task.Want {
				if f.What == crew.Plugged {
					plugged, counted = plugged+len(f.Arches)+len(f.Bays), counted+f.Count
				}
			}
		}
		if joints == 0 || plugged != joints || counted != joints {
			t.Errorf("%s: %d joints, %d of them plugged, %d counted", name, joints, plugged, counted)
		}
	}
}

// Whoever joins covers: every cover of the plan is some task's, once. The power crew has those of cords, three-ways and the plugs of runs, and of sockets those of cords and three-ways and
// of runs that end at a foot; what ends or meets at a crown or hangs is covered by whoever has it in reach, counted here run by run.
func TestWhoeverJoinsCovers(t *testing.T) {
	plans := map[string]*layout.Plan{}
	for _, name := range []string{"garden", "schoolyard", "millwalk", "parkwalk", "starter"} {
		plans[name] = solved(t, example(t, name))
	}
	for seed := range uint64(8) {
		name := fmt.Sprintf("thrown %d", seed)
		plans[name] = solved(t, dice.Modest(seed))
	}
	elsewhere := 0
	for name, p := range plans {
		on := map[string]lights.Run{}
		for _, s := range p.Strings {
			on[s.Name] = s.Run
		}
		shut := 0
		for _, c := range p.Power.Chains {
			last := on[c.Strings[len(c.Strings)-1]]
			if hangs := last.Drop || last.IsRow(); c.Feeder != "" && (hangs || c.To.At.Spot != lights.AtFoot) {
				shut++
			}
		}
		elsewhere += shut
		all, power := map[crew.Thing]int{}, map[crew.Thing]int{}
		for _, task := range p.Crew.Tasks {
			for _, n := range task.Uses {
				all[n.Thing] += n.Count
				if task.Phase == crew.Powering {
					power[n.Thing] += n.Count
				}
			}
		}
		if len(p.Cords)+len(p.Taps) == 0 { // nothing is laid, and what there is stays with the outlet
			continue
		}
		if all[crew.PlugCovers] != p.Power.Covered() || all[crew.SocketCovers] != p.Power.Open {
			t.Errorf("%s: %d of %d joints, %d of %d sockets are covered by some task", name, all[crew.PlugCovers], p.Power.Covered(), all[crew.SocketCovers], p.Power.Open)
		}
		if power[crew.PlugCovers] < p.Power.Joints-p.Power.Boxed || power[crew.SocketCovers] != p.Power.Open-shut {
			t.Errorf("%s: the power crew covers %d joints of %d, %d sockets of %d without %d at crowns and on rows", name, power[crew.PlugCovers], p.Power.Joints, power[crew.SocketCovers], p.Power.Open, shut)
		}
	}
	if elsewhere == 0 {
		t.Error("no socket stays open at a crown or on a row")
	}
}

// By hand: the yard of minimal has boards with joints of eight screws, and a socket of four on each at a foot. Setting those bases takes what their screws do more than the driving of
// as many stakes; who sets them, and who takes them up, has a driver with a drill.
func TestScrewsHaveTheirTime(t *testing.T) {
	s := read(t, "on a yard", strings.Replace(minimal, "span: 7 ft", "span: 7 ft, foot: {width: 24 in, on: grass, bar: 1/2 in}", 1))
	p := layout.Solve(s)
	screws := 0
	for _, i := range p.Shopping {
		screws += map[stock.Kind]int{stock.JointPlate: 8, stock.BarSocket: 4}[i.Kind] * i.Need
	}
	set, drivers := 0.0, 0
	for _, task := range p.Crew.Tasks {
		if slices.ContainsFunc(task.Uses, func(n crew.Need) bool { return n.Thing == crew.Driver }) {
			drivers++
		}
		if task.Action == crew.SetBases {
			set = task.Minutes * float64(task.Who.People)
		}
	}
	feet := 2 * len(p.Arches)
	if least := s.Crew.Rates.Stake*float64(feet) + 0.5*float64(screws); screws <= 4*feet || set < least || drivers != 2 {
		t.Errorf("%d feet, %d screws: %v minutes of hands, want %v at least; %d tasks with a driver", feet, screws, set, least, drivers)
	}
}

// Bags are laid by people of their own between the hold of the widths and the first arch, as long as their number takes: 20 lb in a minute each.
func TestBagsHaveTheirTime(t *testing.T) {
	p := solved(t, strings.Replace(minimal, "span: 7 ft", "span: 7 ft, foot: {width: 24 in, on: concrete, bar: 1/2 in}", 1)+"guys: {arches: [1, last], from: 5 ft, out: 5 ft}\n")
	scheduleKeeps(t, p)
	bought, found := 0, false
	for _, i := range p.Shopping {
		if i.Kind == stock.SandBag {
			bought += i.Need
		}
	}
	for _, j := range p.Crew.Schedule.Jobs {
		if j.Work != crew.LayBags {
			continue
		}
		found = true
		hands := 0
		for _, st := range j.Stints {
			hands += int(st.End-st.Begin) * len(st.Hands)
		}
		if hands < bought || bought == 0 {
			t.Errorf("%d bags get %d minutes of hands", bought, hands)
		}
	}
	if !found {
		t.Error("nobody lays bags")
	}
}
