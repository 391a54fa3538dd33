// Tasks of raising, guying and joining the arches.

package crew

import (
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// raising stands the arches up one by one. The first is guyed and measured before the second is touched, bay 1 is tried before the other ridge pieces are
// cut, and the crowns are checked by running distance so that small gaps in sockets do not add up.
func (b *tasker) raising() {
	first := b.Arches[0]
	b.checkDay()
	for i := range b.Spec.Site.Overhead {
		b.add(practice.MinutesMeasure, Task{Action: WatchLine, Of: Scope{Overhead: []int{i}}, Who: Who{People: 1, Grown: true}, Hold: true, Record: []Record{Named},
			Want: []Figure{{What: KeepOverhead, Line: i, Length: b.Spec.Site.Overhead[i].Keep}}, IfOff: cures(Ask)})
	}
	b.standFirst(first)
	if len(b.Arches) > 1 {
		b.second(b.Arches[1])
		b.others(b.Arches[2:])
	}
	b.finish()
}

// trial has one arch stood up, wrapped and guyed, on a day of its own before the rest is cut: what it measures there is what the rest is cut for.
func (b *tasker) trial() {
	asked := slices.ContainsFunc(b.Spec.Crew.Days, func(d spec.CrewDay) bool { return slices.Contains(d.Work, "trial") })
	if !asked {
		return
	}
	a := b.Arches[max(0, slices.IndexFunc(b.Arches, func(o arch.Arch) bool { return len(b.guysOf(o.Number)) > 0 }))]
	rates, guys, n := b.Spec.Crew.Rates, b.guysOf(a.Number), []int{a.Number}
	work := practice.Carriers*practice.MinutesTalk + rates.Raise + rates.Guy*float64(len(guys)) + practice.MinutesMeasure*4 + practice.MinutesDown
	if len(b.Lights.Wraps) > 0 {
		work += rates.Wrap * 2
	}
	b.add(work, Task{Action: TrialArch, Of: Scope{Arches: n, Stakes: guys}, Who: Who{Roles: b.roles(), Grown: true}, Hold: true, Record: []Record{Found}, IfOff: cures(LookAtFaults, Ask),
		Want: []Figure{{What: CrownHigh, Arches: n, Length: a.Crown, Limit: a.GiveOrTake(b.units)}, {What: FootWidth, Arches: n, Length: a.Span, Limit: practice.FootGive(b.units)}},
		Uses: b.climbs(one(StringLine), b.reaching(1, max(a.Crown, a.Span)), one(Hammer), many(Gloves, Raisers(b.Spec)), many(EyeProtection, Raisers(b.Spec)))})
}

// checkDay is what has to hold before the first arch: gusts, cold, people.
func (b *tasker) checkDay() {
	b.add(practice.MinutesTalk, Task{Action: CheckDay, Who: Who{Roles: b.roles(), Grown: true}, Hold: true, Record: []Record{Named}, IfOff: cures(OtherDay, NotEnough),
		Want: []Figure{{What: GustBelow, Gust: b.raisingGust()}, {What: WarmerThan, Cold: practice.NoBending}, {What: SlowBelow, Cold: practice.BendSlowly},
			{What: PeopleThere, Count: Raisers(b.Spec)}},
		Uses: []Need{one(WindMeter), one(Thermometer), many(Gloves, Raisers(b.Spec)), many(EyeProtection, Raisers(b.Spec))}})
}

// raisingGust is the gust, forecast or felt, from which on no arch is raised or lowered: the usual one, or that in which nobody is inside the whole tunnel where it is felt as lower.
func (b *tasker) raisingGust() measure.Speed {
	if usual := practice.RaisingGust(b.units); b.Felt <= 0 || usual < b.Felt {
		return usual
	}
	return b.Felt
}

// Raisers is how many people raise an arch or take it down: each line overhead has one more, who only watches it.
func Raisers(s *spec.Spec) int { return practice.Raisers + len(s.Site.Overhead) }

// Crews is how many crews of those there are can raise or lower arches side by side.
func Crews(s *spec.Spec) int { return max(1, (s.Crew.Helpers+1-s.Crew.Young)/Raisers(s)) }

// LineByBay reports whether the line along the crowns is cut a piece a bay: several crews raise and lower stretches of their own, and a line that runs on past the end of one would tie them to each other.
// Any crew begins and ends at any bay then, whatever the day brings, and all pieces are alike. One crew has one line: half the knots.
func LineByBay(s *spec.Spec) bool {
	apart := func(a int) bool { return a > 3 && a < s.Tunnel.Arches }
	return Crews(s) > 1 && (s.Tunnel.Arches > practice.StretchArches || slices.ContainsFunc(s.Guys.Arches, apart))
}

// crownLines are what ties the crowns of so many bays on from bay 1, from where they begin: a line each, or one.
func (b *tasker) crownLines(bays int) []Need {
	if len(b.Line) == 0 {
		return nil
	}
	run := measure.Length(0)
	for _, apart := range b.Line[:bays] {
		run += apart
	}
	if LineByBay(b.Spec) {
		return []Need{long(CrownLine, bays, slices.Max(b.Line[:bays]))}
	}
	return []Need{long(CrownLine, 1, run)}
}

// roles lists the people who raise.
func (b *tasker) roles() []Role {
	return append([]Role{Foot1, Foot2, Crown, Ladder, Guard}, slices.Repeat([]Role{Watcher}, len(b.Spec.Site.Overhead))...)
}

// standFirst stands arch 1, holds it until its guys are tight, and measures it.
func (b *tasker) standFirst(a arch.Arch) {
	one1 := []int{a.Number}
	b.joinCrowns(JoinCrown, one1, Raising)
	b.tieGuys(a)
	feet := Who{Roles: []Role{Foot1, Foot2, Crown}, Grown: true}
	b.add(b.Spec.Crew.Rates.Raise/2, Task{Action: SetFirst, Of: Scope{Arches: one1}, Who: feet, Uses: []Need{one(Bucket)}})
	b.add(b.Spec.Crew.Rates.Raise/2, Task{Action: WalkLast, Of: Scope{Arches: one1}, Who: feet, Uses: []Need{one(Bucket), one(SpareStick)}})
	b.stretch(a)
	b.measure(a)
}

// joinCrowns has both legs of arches put into their crown fittings, on the ground.
func (b *tasker) joinCrowns(action Action, list []int, phase Phase) {
	var joined []int
	tees, crosses, couplings := 0, 0, 0
	for _, a := range b.Arches {
		if a.Kind.Spec.OneStick || len(list) == 1 && a.Number != list[0] {
			continue
		}
		joined = append(joined, a.Number)
		switch n := b.Spec.Tunnel.Arches; {
		case !b.Spec.Ridge.Present || n == 1:
			couplings++
		case a.Number == 1 || a.Number == n:
			tees++
		default:
			crosses++
		}
	}
	if len(joined) == 0 {
		return
	}
	t := Task{Phase: phase, Action: action, Of: Scope{Arches: joined}, Who: Who{Roles: []Role{Foot1, Foot2}}, Uses: []Need{one(Mallet)}}
	lights := 0.0
	if phase == Raising {
		lights = b.plugs(&t, list, nil)
	}
	for _, n := range []Need{many(CrownTees, tees), many(CrownCrosses, crosses), many(CrownCouplings, couplings)} {
		if n.Count > 0 {
			t.Uses = append(t.Uses, n)
		}
	}
	if tees > 0 {
		t.Uses = append(t.Uses, one(SpareTee))
	}
	if crosses > 0 {
		t.Uses = append(t.Uses, one(SpareCross))
	}
	b.add(practice.MinutesLabel*4*float64(len(joined))+lights, t)
}

// tieGuys ties an arch's guys at their marks while it lies flat: once it stands, they are inward and out of reach.
func (b *tasker) tieGuys(a arch.Arch) {
	guys := b.guysOf(a.Number)
	if len(guys) == 0 {
		return
	}
	b.add(b.Spec.Crew.Rates.Guy*float64(len(guys))/2, Task{Action: TieGuysFlat, Of: Scope{Arches: []int{a.Number}, Stakes: guys}, Who: Who{Roles: []Role{Foot1, Foot2}},
		Want: b.guyMarks(a),
		Uses: []Need{many(GuyLine, len(guys)), many(GuyClamps, len(guys)), one(Screwdriver), many(Tighteners, len(guys)), one(Ribbon)}})
}

// stretch pulls an arch's guys to their stakes and fixes its braces.
func (b *tasker) stretch(a arch.Arch) {
	guys, pegs := b.guysOf(a.Number), b.pegsOf(a.Number)
	who := Who{Roles: []Role{Foot1, Foot2, Guard}, Grown: true}
	if len(pegs) > 0 {
		b.add(b.Spec.Crew.Rates.Guy*float64(len(pegs))/2, Task{Action: FixBraces, Of: Scope{Arches: []int{a.Number}, Stakes: pegs}, Who: who,
			Want: b.marks(BraceMark, a, pegs), Uses: b.bracing(len(pegs))})
	}
	if len(guys) == 0 {
		return
	}
	b.add(b.Spec.Crew.Rates.Guy*float64(len(guys))/2, Task{Action: StretchGuys, Of: Scope{Arches: []int{a.Number}, Stakes: guys}, Who: who,
		Uses: append(b.nets(a.Number), many(Tighteners, len(guys)), one(Level))})
}

// nets are hung on the guys of an end arch, which stand beside where people come in or go out.
func (b *tasker) nets(arch int) []Need {
	if !b.Spec.Netted(arch) {
		return nil
	}
	return []Need{long(BarrierNet, len(b.guysOf(arch)), b.Spec.Guys.Out)}
}

// bracing is what so many braces take: a stick with a clamp at either end, or webbing with a clamp below its knot.
func (b *tasker) bracing(n int) []Need {
	if b.Spec.Braces.Line {
		return []Need{many(Webbing, n), many(GuyClamps, n), one(Screwdriver), one(Ribbon), one(Level)}
	}
	return []Need{many(Braces, n), many(BraceClamps, 2*n), one(Screwdriver), one(Ribbon), one(Level)}
}

// measure holds an arch against its figures, its own or those of arch 1 that it shares.
func (b *tasker) measure(a arch.Arch) {
	if a.Crown <= 0 {
		return
	}
	band, n := a.GiveOrTake(b.units), []int{a.Number}
	b.add(practice.MinutesMeasure*4, Task{Action: MeasureArch, Of: Scope{Arches: n}, Who: Who{Roles: []Role{Foot1, Foot2, Ladder}, Grown: true}, Hold: true, Record: []Record{Found},
		Want:  []Figure{{What: CrownHigh, Arches: n, Length: a.Crown, Limit: band}, {What: FootWidth, Arches: n, Length: a.Span, Limit: practice.FootGive(b.units)}},
		IfOff: cures(LookAtFaults, Ask), Uses: b.climbs(one(StringLine), b.reaching(1, max(a.Crown, a.Span)), one(Pencil))})
}

// measureFirsts measures those of the arches that are the first of their shape.
func (b *tasker) measureFirsts(list []arch.Arch) {
	for _, s := range Shapes(b.Arches, b.units) {
		if n := s[0].Number; n >= list[0].Number && n <= list[len(list)-1].Number {
			b.measure(s[0])
		}
	}
}

// second stands arch 2, measures it where it differs, tries the first ridge piece and has the rest cut and wound. Without a ridge it is knotted to arch 1 by the line along the crowns.
func (b *tasker) second(a arch.Arch) {
	b.tieGuys(a)
	n := []int{a.Number}
	same := Task{Action: RaiseSame, Of: Scope{Arches: n}, Who: Who{Roles: b.roles(), Grown: true}, Uses: []Need{one(Mallet), one(Bucket), one(SpareStick)}}
	work := b.Spec.Crew.Rates.Raise + b.plugs(&same, n, nil)
	if len(b.Ridge) == 0 && len(b.Line) > 0 {
		same.Uses, work = b.climbs(append(same.Uses, b.crownLines(1)...)...), work+b.knots(2)
	}
	b.add(work, same)
	b.measureFirsts([]arch.Arch{a})
	if len(b.Ridge) == 0 {
		if len(b.Arches) > 2 {
			b.stretch(a)
		}
		return
	}
	r := b.Ridge[0]
	bays := []int{r.Bay}
	spring := Task{Action: SpringRidge, Of: Scope{Bays: bays, Arches: n}, Who: Who{Roles: b.roles(), Grown: true}, Want: b.turns(bays), Uses: b.climbs(one(Mallet))}
	spring.Uses = append(spring.Uses, b.crownLines(1)...)
	tied := 0.0
	if b.tiesBay() {
		spring.Uses, tied = append(spring.Uses, one(StringLine)), 4*practice.MinutesTie
	}
	b.add(b.Spec.Crew.Rates.Ridge+tied+b.plugs(&spring, nil, bays)+b.knots(2), spring)
	b.add(practice.MinutesMeasure*3, Task{Action: MeasureBay, Of: Scope{Bays: bays}, Who: Who{Roles: []Role{Crown, Ladder}, Grown: true}, Hold: true, Record: []Record{Found},
		Want: []Figure{{What: BayLength, Bays: bays, Length: r.Centres, Limit: practice.BayGive(b.units)}}, IfOff: cures(DriveHome, OtherPieces), Uses: b.climbs(b.reaching(1, r.Centres))})
	if len(b.Arches) > 2 {
		b.stretch(a)
	}
	if rest := b.Ridge[1:]; len(rest) > 0 {
		b.cutRidge(rest)
	}
	b.windAll(b.wound(b.woundLater))
}

// tiesBay reports whether the first two arches are tied to each other's feet as soon as they are joined: else nothing but stakes keeps the row from leaning back over the way in, or either way,
// till guys farther on hold.
func (b *tasker) tiesBay() bool {
	return len(b.Arches) > 2 && len(b.Ridge) > 0 && !slices.ContainsFunc(b.Spec.Pairs(), func(p spec.Brace) bool { return p.Bay == 1 })
}

// knots are the minutes of so many knots in lines along the crowns, from the ladder that stands there.
func (b *tasker) knots(n int) float64 {
	if len(b.Line) == 0 {
		return 0
	}
	return practice.MinutesKnot * float64(n)
}

// perBay is how many knots a bay more takes: one where the line goes on.
func (b *tasker) perBay() int { return 1 + b2i(LineByBay(b.Spec)) }

// turns are the turn and the climb of bays where the route bends or slopes, both from the bay's arch of the lower number: right and up positive.
func (b *tasker) turns(bays []int) (list []Figure) {
	bays = slices.DeleteFunc(slices.Clone(bays), func(bay int) bool { return bay >= len(b.Ground.Stations) })
	for _, bay := range bays {
		turn := b.Ground.Stations[bay].Heading - b.Ground.Stations[bay-1].Heading
		if measure.Abs(turn) > measure.Degree/2 {
			list = append(list, Figure{What: BayTurn, Bays: []int{bay}, Angle: turn})
		}
	}
	for _, bay := range bays {
		if climb := b.level(bay+1) - b.level(bay); b.units.Taped(climb) != 0 {
			list = append(list, Figure{What: BayClimb, Bays: []int{bay}, Length: climb})
		}
	}
	return list
}

// level is the height of the ground midway between an arch's stakes.
func (b *tasker) level(number int) measure.Length {
	left, right := ground.Levels(b.Spec, number)
	return (left + right) / 2
}

// others stands the rest one at a time, each with its ridge piece in the new crown first and its guys tied while it lay flat, with a check of the crowns' running
// distance after each third bay and at the end.
func (b *tasker) others(rest []arch.Arch) {
	if len(rest) == 0 {
		return
	}
	rates := b.Spec.Crew.Rates
	t := Task{Action: RaiseRest, Of: Scope{Arches: numbers(rest)}, Who: Who{Roles: b.roles(), Grown: true},
		Uses: b.climbs(one(Mallet), one(Bucket), one(SpareStick), b.tape(1), one(StringLine), one(Pencil), many(Gloves, Raisers(b.Spec)), many(EyeProtection, Raisers(b.Spec)))}
	work := rates.Raise*float64(len(rest)) + b.knots(b.perBay()*len(rest))
	if len(b.Ridge) > 0 {
		work += rates.Ridge * float64(len(rest))
	}
	t.Uses = append(t.Uses, b.crownLines(len(b.Line))...)
	guys, pegs, runs, crowns := 0, 0, []Figure(nil), b.alongCrowns()
	for i, a := range rest {
		g, p := b.guysOf(a.Number), b.pegsOf(a.Number)
		guys, pegs = guys+len(g), pegs+len(p)
		t.Of.Stakes = append(append(t.Of.Stakes, g...), p...)
		t.Want = append(append(t.Want, b.guyMarks(a)...), b.marks(BraceMark, a, p)...)
		last := i == len(rest)-1
		t.Of.Bays = append(t.Of.Bays, a.Number-1)
		if crowns.Joined(a.Number) && ((a.Number-1)%practice.CheckEvery == 0 || last) {
			runs = append(runs, Figure{What: RunLength, Arches: []int{a.Number}, Length: crowns.Apart(1, a.Number), Limit: practice.RunGive(b.units)})
			work += practice.MinutesMeasure * 2
		}
	}
	if len(b.Ridge) > 0 {
		t.Want = append(t.Want, b.turns(t.Of.Bays)...)
	}
	work += b.plugs(&t, t.Of.Arches, t.Of.Bays)
	t.Want = append(t.Want, runs...)
	work += rates.Guy * float64(guys+pegs)
	if pegs > 0 {
		t.Uses = append(t.Uses, b.bracing(pegs)...)
	}
	if guys > 0 {
		t.Uses = append(t.Uses, many(GuyLine, guys), many(GuyClamps, guys), one(Screwdriver), many(Tighteners, guys), one(Ribbon), one(Level))
		t.Uses = append(t.Uses, b.nets(rest[len(rest)-1].Number)...)
	}
	b.add(work, t)
	b.measureFirsts(rest)
}

// finish holds what stands: sockets, guys, caps.
func (b *tasker) finish() {
	all, n := Scope{Arches: numbers(b.Arches)}, len(b.Arches)
	if len(b.Arches) == 2 {
		b.stretch(b.Arches[1])
	}
	who := Who{People: 2 + len(b.Spec.Site.Overhead), Grown: true} // one climbs, one at its foot, one watches each wire
	if b.Spec.Arch.Joints == spec.Pinned {
		b.add(practice.MinutesLabel*4*float64(n), Task{Action: ScrewSockets, Of: all, Who: who, Uses: b.climbs(b.screwing(4 * n)...)})
	}
	left, right, guys := b.stakes()
	bases := 0
	for _, s := range slices.Concat(left, right) {
		bases += b2i(s.Base)
	}
	b.add(practice.MinutesTalk+practice.MinutesEven*float64(len(guys))+practice.MinutesTie*float64(bases), Task{Action: SightAlong, Of: Scope{Arches: all.Arches, Stakes: guys}, Who: Who{People: 2}, Hold: true, Record: []Record{Found}, IfOff: cures(EvenGuys, FindCap),
		Want: []Figure{{What: CapsBack, Count: len(left) + len(right)}, state(NothingLeans)}, Uses: []Need{one(Bucket)}})
}
