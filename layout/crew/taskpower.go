// Tasks of cords, outlets and timers.

package crew

import (
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// powering tests each outlet before any cord is laid, lays the cords, joins all of them and the runs while nothing is live, looks at every joint, then plugs in
// outlet by outlet, its timer first, and looks at everything by dark. Cords, three-ways and covers are counted whole; which lies where stands on the circuit diagram.
func (b *tasker) powering() {
	outlets := b.outlets()
	if len(outlets) == 0 && (len(b.Chains) == 0 || !b.Spec.Site.NotKnown(spec.OutletsGFCI)) {
		return
	}
	grown := Who{People: 2, Grown: true}
	test := Task{Action: TestOutlets, Of: Scope{Outlets: outlets}, Who: Who{People: 1, Grown: true}, Hold: true, IfOff: cures(Electrician), Uses: []Need{one(Lamp)}}
	if b.Bare > 0 {
		test.Uses = append(test.Uses, many(PortableGFCIs, b.Bare))
	}
	for _, o := range outlets {
		test.Want = append(test.Want, Figure{What: TestTrips, Outlet: o})
	}
	if b.Spec.Site.NotKnown(spec.BreakerAmps) {
		for _, c := range b.Spec.Power.Circuits {
			test.Want = append(test.Want, Figure{What: BreakerReads, Amps: c.Breaker})
		}
	}
	if len(outlets) == 0 { // any that something is tried at
		test.Want = append(test.Want, state(TestTrips))
		b.add(practice.MinutesMeasure*2, test)
		return
	}
	b.add(practice.MinutesMeasure*2*float64(len(outlets)), test)
	high := Figure{What: JointsHigh, Length: practice.JointHigh(b.units)}
	if b.Cords+b.Taps > 0 {
		look := practice.MinutesTalk + 2*practice.MinutesLook*float64(b.Joints+b.Open)
		b.laying(high, look)
		b.add(look, Task{Action: CheckCords, Who: Who{People: b.list[len(b.list)-1].Who.People, Grown: true}, Want: []Figure{state(PlugsDry), state(NoneAcross), high}, IfOff: cures(LayAgain, SwapIt), Hold: true})
	}
	b.timers(outlets)
	for _, o := range outlets {
		b.plug(o)
	}
	all := Scope{Outlets: outlets}
	pair := func(each float64, n int) float64 { return each * float64(n) / 2 }
	lit := max(practice.WarmAfter, pair(practice.MinutesMeasure, len(b.Chains))) + pair(practice.MinutesLook, b.Joints) // who waits looks along the runs, then feels the joints
	b.add(2*lit, Task{Action: FeelPlugs, Of: all, Who: grown, Want: []Figure{{What: NotWarm, Minutes: practice.WarmAfter}}, IfOff: cures(SwapIt)})
	b.add(practice.MinutesMeasure*float64(len(outlets)), Task{Action: TestLoaded, Of: all, Who: grown, Want: []Figure{state(TestTrips)}, IfOff: cures(Electrician), Hold: true, Uses: []Need{b.bars()}})
	walk := Task{Action: DarkWalk, Who: grown, Hold: true, Want: []Figure{state(BothWays)}, IfOff: cures(Mend), Uses: []Need{many(Torch, 2)}}
	if d := b.Spec.Dates; !d.Build.IsZero() && d.Build.Before(d.Open) { // nobody watches over it till then
		walk.Want[0] = state(LitEarly)
	}
	b.add(practice.MinutesTalk*2, walk)
}

// laying lays the cords and joins what is plugged into what, with the outlets empty; who joins looks at so much work of others after it.
func (b *tasker) laying(high Figure, look float64) {
	some := func(needs ...Need) []Need {
		return slices.DeleteFunc(needs, func(n Need) bool { return n.Count == 0 })
	}
	lay := b.Spec.Crew.Rates.Cord * float64(b.Laid)
	b.add(lay, Task{Action: LayCords, Who: Who{People: b.pairs(lay)}, Want: []Figure{{What: AsDrawn, Count: b.Cords + b.Taps}, state(NoneAcross)}, IfOff: cures(LayAgain, Ask),
		Uses: b.climbs(some(many(Cords, b.Cords), many(ZipTies, b.Laid), one(Ribbon), many(RibbonPosts, b.Posts), many(CordCovers, b.Over))...)})
	if b.Hung > 0 { // each tie from a stepladder of its own stand; what does not lie on the ground is uncoiled and tagged here
		hang := b.Spec.Crew.Rates.Cord*float64(b.Cords-b.Laid) + 2*practice.MinutesClimb*float64(b.HungTies)
		b.add(hang, Task{Action: HangCords, Who: Who{People: min(b.atLadders(hang), 2*b.Hung), Grown: true}, Want: []Figure{{What: AsDrawn, Count: b.Hung}}, IfOff: cures(LayAgain, Ask),
			Uses: b.climbing(b.atLadders(hang)/2, many(Cords, b.Hung), many(ZipTies, b.HungTies))})
	}
	joints, open := b.Joints, b.Open // less what others join and cover
	for _, t := range b.list {
		joints, open = joints-used(t, PlugCovers), open-used(t, SocketCovers)
	}
	join := practice.MinutesPlug*float64(joints+open) + 2*practice.MinutesClimb*float64(b.High)
	uses := some(many(ThreeWays, b.Taps), many(PlugCovers, joints), many(SocketCovers, open), many(PlugBoxes, b.Boxes), many(Bricks, b.Loose), many(ZipTies, b.Joints+b.Open))
	if b.High > 0 {
		uses = b.climbs(uses...)
	}
	b.add(join, Task{Action: JoinPlugs, Who: Who{People: b.pairs(join + look)}, Want: []Figure{high}, IfOff: cures(Ask), Uses: uses})
}

// timers puts a timer into each outlet before anything is plugged in, so that the tests are made through it.
func (b *tasker) timers(outlets []string) {
	timers := Task{Action: SetTimers, Of: Scope{Outlets: outlets}, Who: Who{People: 2, Grown: true}, IfOff: cures(SwapIt)}
	for _, o := range b.Spec.Site.Outlets {
		if !slices.Contains(outlets, o.Name) {
			continue
		}
		amps := o.Timer
		for _, t := range b.Timers {
			if t.Outlet == o.Name {
				amps = max(amps, t.Amps)
			}
		}
		timers.Want = append(timers.Want, Figure{What: TimersRight, Outlet: o.Name, Amps: amps})
	}
	if n := len(b.Timers); n > 0 {
		timers.Uses = []Need{many(Timers, n)}
	}
	b.add(practice.MinutesLabel*5*float64(len(timers.Want)), timers)
}

// outlets are those that something is plugged into, in the order of the runs.
func (b *tasker) outlets() (names []string) {
	for _, c := range b.Chains {
		if c.Outlet != "" && !slices.Contains(names, c.Outlet) {
			names = append(names, c.Outlet)
		}
	}
	return names
}

// plug plugs in an outlet's cords: their runs are looked along while they are lit.
func (b *tasker) plug(outlet string) {
	t := Task{Action: PlugRuns, Of: Scope{Outlets: []string{outlet}}, Who: Who{People: 2, Grown: true}, IfOff: cures(DryAndTry, SwapIt)}
	var sum measure.Current
	for i, c := range b.Chains {
		if c.Outlet == outlet {
			sum += c.Amps
			t.Of.Runs = append(t.Of.Runs, i)
		}
	}
	t.Want = []Figure{{What: AllLit, Count: len(t.Of.Runs)}, {What: RunAmps, Outlet: outlet, Amps: sum}}
	b.add(practice.MinutesLabel*2, t)
}
