// Tasks of every evening, and of taking down.

package crew

import (
	"math"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// nights are the checks of every evening it is open, in the order they are made.
func (b *tasker) nights() {
	one1 := Who{People: 1, Grown: true}
	gust := practice.InsideMost
	if b.Inside > 0 {
		gust = b.Inside
	}
	noon := Task{Action: NoonCall, Who: one1, Hold: true, Want: []Figure{{What: ForecastBelow, Gust: gust}}, IfOff: cures(CloseTonight), Uses: []Need{one(Phone)}}
	if b.Down > 0 {
		noon.Want = append(noon.Want, Figure{What: LaidFlat, Gust: b.Down})
	}
	b.add(practice.MinutesTalk/2, noon)
	stakes := Task{Action: NightStakes, Of: Scope{Stakes: b.Ground.Stakes}, Who: one1, Want: []Figure{{What: StakesHold, Length: practice.HandMoves(b.units)}},
		IfOff: cures(CloseTonight)}
	if slices.ContainsFunc(b.Ground.Stakes, func(s ground.Stake) bool { return s.Guy && s.Steel() }) { // on others stand legs
		stakes.Uses = []Need{one(SpareCap)}
	}
	b.add(practice.MinutesTalk/2, stakes)
	pipe := Task{Action: NightPipe, Of: Scope{Arches: numbers(b.Arches)}, Who: one1, IfOff: cures(CloseTonight)}
	kept, uses := b.crowns()
	pipe.Want, pipe.Uses = []Figure{state(PipeWhole), kept}, uses
	b.add(practice.MinutesTalk/2, pipe)
	outlets := b.outlets()
	if len(outlets) > 0 {
		b.add(practice.MinutesMeasure*float64(len(outlets)), Task{Action: NightTest, Of: Scope{Outlets: outlets}, Who: one1, Want: []Figure{state(TestTrips)}, IfOff: cures(Electrician, CloseTonight)})
		b.add(practice.MinutesTalk/2, Task{Action: NightLights, Who: one1, Want: []Figure{state(PlugsDry), state(NotWarm)}, IfOff: cures(DeadWaits), Uses: []Need{many(Bags, 2)}})
	}
	var mats []Need
	if b.Spec.Arch.Foot == nil || b.Spec.Arch.Foot.On == spec.Grass {
		mats = []Need{{Thing: Mats, Count: practice.Mats(b.units, b.Spec.Tunnel.Length), Length: practice.MatLong(b.units)}}
	}
	side := len(b.Spec.SideWays())
	bars := b.bars()
	b.add(practice.MinutesTalk/2, Task{Action: NightWay, Who: one1, Want: []Figure{state(WayEven), state(NoneAcross)}, IfOff: cures(CloseTonight),
		Uses: append(mats, many(Lanterns, practice.Lanterns(b.Spec.Tunnel.Length)), many(Torch, practice.Watchers+side), bars, one(Ribbon), one(WindMeter), one(FirstAid), one(Phone))})
	b.add(practice.MinutesTalk/2, Task{Action: NightClose, Who: one1, Hold: true, Want: []Figure{state(LampsOut)}, Record: []Record{TimeDone}, Uses: []Need{bars, one(Pencil)}})
}

// crowns is what is looked for at the crowns, and with what: that some keep above their marks on a stick, or, where they may come down by too little to be told, that all leave the
// opening clear.
func (b *tasker) crowns() (Figure, []Need) {
	stick := b.CrownStick()
	if stick == 0 {
		return state(OpeningKept), b.openingSticks()
	}
	kept := Figure{What: CrownKept, Limit: b.crownsFall()}
	for _, a := range b.watched() {
		kept.Arches = append(kept.Arches, a.Number)
	}
	return kept, []Need{long(CrownStick, 1, stick), one(Marker)}
}

// CrownStick is how long the stick is that crowns are marked on, where they may come down by enough to be told; 0 where they may not.
func (in Input) CrownStick() measure.Length {
	u, high := in.Spec.Units, measure.Length(0)
	if in.crownsFall() < practice.CrownTells(u) {
		return 0
	}
	for _, a := range in.watched() {
		high = max(high, a.Crown)
	}
	return measure.RoundUp(high, practice.Paced(u))
}

// crownsFall is how far crowns may come down since the first night: a hand, and no farther than keeps the opening clear of all that hangs, under an arch that was raised as low as passes.
func (in Input) crownsFall() measure.Length {
	u := in.Spec.Units
	most, step := practice.CrownFell(u), practice.Reading(u)
	if o := in.Spec.Tunnel; o.OpeningWidth > 0 && o.OpeningHeight > 0 {
		for _, a := range in.Arches {
			spare := a.BoxHeight - o.OpeningHeight - a.GiveOrTake(u)
			most = min(most, step*measure.Length(math.Floor(float64(spare/step))))
		}
	}
	return most
}

// bars are what every way is closed with.
func (b *tasker) bars() Need { return many(Barriers, 2+len(b.Spec.SideWays())) }

// watched are the arches whose crowns are measured: the first, the middle one and the last.
func (in Input) watched() (list []arch.Arch) {
	last := -1
	for _, i := range []int{0, len(in.Arches) / 2, len(in.Arches) - 1} {
		if i != last {
			list = append(list, in.Arches[i])
		}
		last = i
	}
	return list
}

// takeDown is the reverse, with everything counted out.
func (b *tasker) takeDown() {
	all, pair := Scope{Arches: numbers(b.Arches)}, Who{People: 2}
	if outlets := b.outlets(); len(outlets) > 0 {
		b.add(practice.MinutesMeasure*float64(len(outlets)), Task{Action: Unplug, Of: Scope{Outlets: outlets}, Who: Who{People: 1, Grown: true}, Hold: true, Want: []Figure{state(SaidUnplugged)}, Uses: []Need{one(ColouredTape)}})
	}
	sag := Task{Action: MeasureSag, Who: pair, Record: []Record{Found}, Uses: b.climbs(one(StringLine), one(Pencil))}
	for _, a := range b.watched() {
		sag.Of.Arches = append(sag.Of.Arches, a.Number)
		sag.Want = append(sag.Want, Figure{What: CrownFound, Arches: []int{a.Number}, Length: a.SeasonCrown})
	}
	sag.Uses = append(sag.Uses, b.reaching(1, farthest(sag.Want)))
	b.add(practice.MinutesMeasure*4*float64(len(sag.Want)), sag)
	b.add(practice.MinutesLabel*2*float64(len(b.Arches)), Task{Action: NameLegs, Of: all, Who: pair, Uses: []Need{one(Marker)}})
	if b.Cords > 0 {
		b.add(practice.MinutesCoil*float64(b.Cords), Task{Action: CoilCords, Who: pair, Uses: b.climbs(one(Cutters))})
	}
	if n := len(b.Lights.Rows) + len(b.Lights.Drops); n > 0 {
		b.add(practice.MinutesCoil*float64(n), Task{Action: TakeStrings, Of: Scope{Rows: indexes(len(b.Lights.Rows))}, Who: pair,
			Uses: b.climbs(one(Cutters))})
	}
	b.lower(all)
	if whole := slices.ContainsFunc(b.Lights.Wraps, func(w lights.Wrap) bool { return w.On.Kind == lights.Arch }); whole { // one string over both legs: off before they are parted
		b.unwind()
		b.part(all)
	} else {
		b.part(all)
		b.unwind()
	}
	n, pull := len(b.Ground.Stakes), []Need{many(Gloves, 2)}
	if slices.ContainsFunc(b.Ground.Stakes, func(s ground.Stake) bool { return !s.Base }) {
		pull = append(pull, one(StakeGrip))
	}
	if slices.ContainsFunc(b.Ground.Stakes, func(s ground.Stake) bool { return s.Base }) {
		pull = append(pull, one(Driver))
	}
	b.add(practice.MinutesOut*float64(n)+practice.MinutesUnscrew*float64(b.Screws), Task{Action: PullStakes, Of: Scope{Stakes: b.Ground.Stakes}, Who: pair, Hold: true, Record: []Record{Found}, Want: []Figure{{What: NoneLeft, Count: n}},
		IfOff: cures(FindStake), Uses: pull})
	b.add(practice.MinutesLabel*float64(len(b.Arches)), Task{Action: LookOver, Of: all, Who: pair, IfOff: cures(CutThrough), Uses: []Need{one(Marker)}})
	b.add(practice.MinutesTalk*3, Task{Action: Store, Who: pair, Want: []Figure{state(DryAndLabelled)}, Hold: true, Record: []Record{Found}, Uses: []Need{one(Marker), many(Boxes, b.boxes()), many(Bags, len(b.Lights.Strings)+1)}})
	b.add(practice.MinutesTalk, Task{Action: NextYear, Who: Who{People: 1}, Record: []Record{Moved}, Uses: []Need{one(Pencil)}})
}

// boxes are what is put away in boxes: fittings, cords, and strings, of which a box holds a dozen. Common practice, no source.
func (b *tasker) boxes() int {
	const dozen = 12
	return 1 + min(1, b.Cords) + (len(b.Lights.Strings)+dozen-1)/dozen
}

// unwind takes the strings off legs and ridge pieces, save those that stay on, by as many pairs as wound so much.
func (b *tasker) unwind() {
	off := Scope{}
	for i, w := range b.Lights.Wraps {
		if !KeepsOn(b.Spec) || !w.On.IsLeg() {
			off.Wraps = append(off.Wraps, i)
		}
	}
	if n := len(off.Wraps); n > 0 {
		work := practice.MinutesUnwrap * float64(n)
		people := b.atTrestles(work)
		b.add(work, Task{Action: Unwind, Of: off, Who: Who{People: people}, Uses: []Need{many(Trestles, people), many(Cutters, people/2)}})
	}
}

// part takes the arches apart at their crowns, and at couplings that are not cemented; else what no unwinding takes guys off.
func (b *tasker) part(all Scope) {
	var uses []Need
	parts := func(a arch.Arch) bool {
		return a.Kind.Spec.Joins() && !(a.Kind.Spec.OneStick && b.Spec.Arch.Joints == spec.Glued)
	}
	if !slices.ContainsFunc(b.Arches, parts) && (len(b.Lights.Wraps) > 0 || len(b.Spec.Guys.Arches) == 0) {
		return
	}
	if b.Spec.Arch.Joints == spec.Pinned {
		uses = append(uses, one(Screwdriver))
	}
	b.add(practice.MinutesLabel*float64(len(b.Arches)), Task{Action: OpenJoints, Of: all, Who: Who{People: 2}, Uses: uses})
}

// KeepsOn reports whether legs are put away with their strings on: every second year they are stripped, so that nothing wears through unseen.
func KeepsOn(s *spec.Spec) bool { return s.Store == spec.Wrapped && !s.Found.Wrapped }

// screwedRidge reports whether ridge pieces are held by screws, which come out before the pieces do.
func (b *tasker) screwedRidge() bool { return len(b.Ridge) > 0 && b.Spec.Arch.Joints == spec.Pinned }

// lower takes the arches down, the last first; guys of an arch are slackened only when it is next, those of arch 1 last of all, and the line along the crowns is untied crown by crown:
// nothing else keeps the ridge pieces of those that still stand in their sockets, or without a ridge those that stand from falling back over the way in.
func (b *tasker) lower(all Scope) {
	_, _, all.Stakes = b.stakes()
	for _, r := range b.Ridge {
		all.Bays = append(all.Bays, r.Bay)
	}
	legs := 2 * len(b.Arches)
	uses := []Need{many(Caps, legs), many(Gloves, Raisers(b.Spec)), many(EyeProtection, Raisers(b.Spec)), one(WindMeter), one(Thermometer), one(Phone), one(Kettle)}
	if len(b.Arches) > 1 { // what stands is tied with it
		uses = append(uses, one(StringLine))
	}
	if len(all.Stakes) > 0 || b.screwedRidge() { // clamps at their marks
		uses = append(uses, one(Screwdriver))
	}
	each := practice.MinutesDown + b.knots(b.perBay())
	if b.screwedRidge() { // both sockets of a piece, while all hold
		each += 2 * practice.MinutesUnscrew
	}
	b.add(each*practice.Raisers*float64(len(b.Arches)), Task{Action: LowerArches, Of: all, Who: Who{Roles: b.roles(), Grown: true}, IfOff: cures(OtherDay, WarmWater, Ask),
		Want: []Figure{{What: GustBelow, Gust: b.raisingGust()}, {What: WarmerThan, Cold: practice.NoBending}, {What: SlowBelow, Cold: practice.BendSlowly}, {What: Capped, Count: legs}},
		Uses: b.climbs(uses...)})
}
