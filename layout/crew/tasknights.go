package crew

import (
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// nights are the checks of every evening it is open, in the order they are made.
func (b *tasker) nights() {
	if len(b.stand) == 0 {
		return
	}
	one1 := Who{People: 1, Grown: true}
	gust := practice.InsideMost
	if b.Inside > 0 {
		gust = b.Inside
	}
	noon := Task{Action: NoonCall, Who: one1, Hold: true, Want: []Figure{{What: ForecastBelow, Bound: AtMost, Gust: gust}}, IfOff: cures(CloseTonight), Uses: []Need{one(Phone)}}
	if b.Down > 0 {
		noon.Want = append(noon.Want, Figure{What: LaidFlat, Bound: AtMost, Gust: b.Down})
	}
	b.add(practice.MinutesTalk/2, noon)
	stakes := Task{Action: NightStakes, Of: Scope{Stakes: b.Ground.Stakes}, Who: one1, Want: []Figure{{What: StakesHold, Bound: AtMost, Length: practice.PullMoves(b.units)}},
		IfOff: cures(CloseTonight), Uses: []Need{one(SpareCap)}}
	b.add(practice.MinutesTalk/2, stakes)
	kept := Figure{What: CrownKept, Limit: practice.CrownFell(b.units)}
	high := measure.Length(0)
	for _, a := range b.watched() {
		kept.Arches, high = append(kept.Arches, a.Number), max(high, a.Crown)
	}
	b.add(practice.MinutesTalk/2, Task{Action: NightPipe, Of: Scope{Arches: numbers(b.stand)}, Who: one1, Want: []Figure{state(PipeWhole), kept}, IfOff: cures(CloseTonight),
		Uses: []Need{long(CrownStick, 1, measure.RoundUp(high, practice.Paced(b.units))), one(ColouredTape)}})
	outlets := b.outlets()
	if len(outlets) > 0 {
		b.add(practice.MinutesMeasure*float64(len(outlets)), Task{Action: NightTest, Of: Scope{Outlets: outlets}, Who: one1, Want: []Figure{state(TestTrips)}, IfOff: cures(Electrician)})
		b.add(practice.MinutesTalk/2, Task{Action: NightLights, Who: one1, Want: []Figure{state(AllLit), state(PlugsDry), state(NotWarm)}, IfOff: cures(DeadWaits)})
	}
	b.add(practice.MinutesTalk/2, Task{Action: NightWay, Who: one1, Want: []Figure{state(WayEven), state(NoneAcross)}, IfOff: cures(CloseTonight),
		Uses: []Need{many(Lanterns, practice.Lanterns(b.Spec.Tunnel.Length)), many(Torch, 2), many(Barriers, 2), one(FirstAid), one(Phone)}})
	b.add(practice.MinutesTalk/2, Task{Action: NightClose, Who: one1, Hold: true, Want: []Figure{state(LampsOut)}, Record: []Record{TimeDone}, Uses: []Need{many(Barriers, 2), one(Pencil)}})
}

// watched are the arches whose crowns are measured: the first, the middle one and the last.
func (b *tasker) watched() (list []arch.Arch) {
	last := -1
	for _, i := range []int{0, len(b.stand) / 2, len(b.stand) - 1} {
		if i != last {
			list = append(list, b.stand[i])
		}
		last = i
	}
	return list
}

// takeDown is the reverse, with everything counted out.
func (b *tasker) takeDown() {
	if len(b.stand) == 0 {
		return
	}
	all, pair := Scope{Arches: numbers(b.stand)}, Who{People: 2}
	if outlets := b.outlets(); len(outlets) > 0 {
		b.add(practice.MinutesMeasure*float64(len(outlets)), Task{Action: Unplug, Of: Scope{Outlets: outlets}, Who: Who{People: 1, Grown: true}, Hold: true, Want: []Figure{state(SaidUnplugged)}, IfOff: cures(NeverGoOn), Uses: []Need{one(ColouredTape)}})
	}
	sag := Task{Action: MeasureSag, Who: pair, Record: []Record{Found}, Uses: b.climbs(one(StringLine), one(ShortTape), one(Pencil))}
	for _, a := range b.watched() {
		sag.Of.Arches = append(sag.Of.Arches, a.Number)
		sag.Want = append(sag.Want, Figure{What: CrownFound, Arches: []int{a.Number}, Length: a.SeasonCrown})
	}
	b.add(practice.MinutesMeasure*4*float64(len(sag.Want)), sag)
	b.add(practice.MinutesLabel*2*float64(len(b.stand)), Task{Action: NameLegs, Of: all, Who: pair, Want: []Figure{state(SetMarked)}, Uses: []Need{one(Marker)}})
	if b.Cords > 0 {
		b.add(practice.MinutesCoil*float64(b.Cords), Task{Action: CoilCords, Who: pair, Want: []Figure{{What: AsDrawn, Bound: Exactly, Count: b.Cords + b.Taps}}, Uses: b.climbs(one(Cutters), many(Tags, b.Cords))})
	}
	if n := len(b.Lights.Rows) + len(b.Lights.Drops); n > 0 {
		b.add(practice.MinutesCoil*float64(n), Task{Action: TakeStrings, Of: Scope{Rows: indexes(len(b.Lights.Rows)), Drops: indexes(len(b.Lights.Drops))}, Who: pair, Want: []Figure{state(EndsTogether)},
			Uses: b.climbs(one(Cutters), many(Tags, n))})
	}
	b.lower(all)
	if n := len(b.Lights.Wraps); n > 0 {
		b.add(practice.MinutesUnwrap*float64(n), Task{Action: Unwind, Of: Scope{Wraps: indexes(n)}, Who: pair, Want: []Figure{state(EndsTogether)}, Uses: []Need{many(Trestles, 2), one(Cutters), many(Bags, n)}})
	}
	if b.Spec.Arch.Joints != spec.Glued {
		b.add(practice.MinutesLabel*float64(len(b.stand)), Task{Action: OpenJoints, Of: all, Who: pair, Want: []Figure{state(PipeSound)}, IfOff: cures(WarmWater), Uses: []Need{one(Bags), one(Kettle)}})
	}
	n := len(b.Ground.Stakes)
	b.add(practice.MinutesOut*float64(n), Task{Action: PullStakes, Of: Scope{Stakes: b.Ground.Stakes}, Who: pair, Hold: true, Record: []Record{Found}, Want: []Figure{{What: NoneLeft, Bound: Exactly, Count: n}},
		IfOff: cures(FindStake), Uses: []Need{one(StakeGrip), many(Gloves, 2)}})
	b.add(practice.MinutesLabel*float64(len(b.stand)), Task{Action: LookOver, Of: all, Who: pair, Want: []Figure{state(PipeSound)}, IfOff: cures(CutThrough)})
	b.add(practice.MinutesTalk*3, Task{Action: Store, Who: pair, Want: []Figure{state(DryAndLabelled)}, Hold: true, Record: []Record{Found}, Uses: []Need{one(Tags), one(Marker), one(Bags)}})
	b.add(practice.MinutesTalk, Task{Action: NextYear, Who: Who{People: 1}, Want: []Figure{state(Written)}, Record: []Record{Moved}, Uses: []Need{one(Pencil)}})
}

// lower takes the arches down, the last first; guys of an arch are slackened only when it is next, those of arch 1 last of all.
func (b *tasker) lower(all Scope) {
	_, _, all.Stakes = b.stakes()
	for _, r := range b.Ridge {
		all.Bays = append(all.Bays, r.Bay)
	}
	legs := 2 * len(b.stand)
	b.add(practice.MinutesDown*practice.Raisers*float64(len(b.stand)), Task{Action: LowerArches, Of: all, Who: Who{Roles: roles(), Grown: true}, IfOff: cures(OtherDay, Ask),
		Want: []Figure{{What: GustBelow, Bound: AtMost, Gust: b.raisingGust()}, {What: WarmerThan, Bound: AtLeast, Cold: practice.NoBending}, {What: SlowBelow, Cold: practice.BendSlowly}, {What: Capped, Bound: Exactly, Count: legs}},
		Uses: b.climbs(many(Caps, legs), many(Gloves, practice.Raisers), many(EyeProtection, practice.Raisers), one(Bucket))})
}
