// Tasks of driving stakes, or of setting weighted bases.

package crew

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// driving looks for lines once more, tries one stake, drives the rest and measures the widths.
func (b *tasker) driving() {
	left, right, guys := b.stakes()
	based := func(s ground.Stake) bool { return s.Base }
	bases := slices.DeleteFunc(slices.Clone(b.Ground.Stakes), func(s ground.Stake) bool { return !s.Base })
	left, right, guys = slices.DeleteFunc(left, based), slices.DeleteFunc(right, based), slices.DeleteFunc(guys, based)
	driven := len(left)+len(right) > 0
	if driven {
		b.readTicket()
	}
	if !b.Spec.Site.NotKnown(spec.OverheadLines) { // else it was looked for before
		b.lookUp(!driven) // else signed with the ticket
	}
	b.checkAgain()
	if driven {
		b.depths()
		b.pull(slices.Concat(left, right)[0])
		b.drive(left, right, guys)
	}
	if len(bases) > 0 {
		b.bases(bases)
	}
	b.widths()
	if len(bases) > 0 {
		b.weighDown(bases)
	}
}

// readTicket has the locating ticket read before anything is driven.
func (b *tasker) readTicket() {
	ticket := Task{Action: ReadTicket, Who: Who{People: 1, Grown: true}, Warning: BuriedKills, Hold: true, Uses: []Need{one(TicketPaper)}, IfOff: cures(LeaveBare, Ask),
		Want: []Figure{state(TicketInDate), {What: ClearOfLine, Line: -1, Limit: practice.KeepBuried(b.units)}}}
	for i, l := range b.Spec.Site.Buried {
		if l.Keep > practice.KeepBuried(b.units) {
			ticket.Want = append(ticket.Want, Figure{What: ClearOfLine, Line: i, Limit: l.Keep})
		}
	}
	b.add(practice.MinutesTalk, ticket)
}

// checkAgain measures widths and long diagonals a second time, of dots that may have been walked over since the day they were painted.
func (b *tasker) checkAgain() {
	if b.marksAsBuilt() {
		return
	}
	var again []ground.Check
	for _, c := range b.Ground.Checks(b.units) {
		if c.Kind == ground.Width || c.Kind == ground.WholeDiagonal {
			again = append(again, c)
		}
	}
	b.add(practice.MinutesMeasure*float64(len(again)), Task{Action: CheckAgain, Who: Who{People: practice.Drivers}, Want: b.checked(again), IfOff: mends(again),
		Uses: []Need{b.tape(1), one(Lath)}})
}

// bases stands the bars of arches on weighted bases and of their braces of pipe.
func (b *tasker) bases(list []ground.Stake) {
	bars := slices.DeleteFunc(slices.Clone(list), func(s ground.Stake) bool { return !s.Steel() })
	b.add(b.Spec.Crew.Rates.Stake*float64(len(bars))+practice.MinutesScrew*float64(b.Screws), Task{Action: SetBases, Hold: true, Who: Who{People: practice.Drivers, Grown: true}, Of: Scope{Stakes: list}, IfOff: cures(Ask),
		Want: []Figure{{What: Plumb, Stakes: bars}, {What: Capped, Count: len(bars)}},
		Uses: []Need{one(SoleBoards), many(BarSockets, len(bars)), many(Stakes, len(bars)), many(Caps, len(bars)), one(Level), one(Driver), many(Gloves, practice.Drivers)}})
}

// weighDown lays bags on bases and at the ends of guys and braces, once the feet are as wide apart as they are to be: then nobody shifts them.
func (b *tasker) weighDown(list []ground.Stake) {
	bags := 0
	t := Task{Action: WeighDown, Hold: true, Of: Scope{Stakes: list}, IfOff: cures(Ask)}
	for guy, each := range [2]measure.Force{b.FootWeight, b.TieWeight} {
		of := slices.DeleteFunc(slices.Clone(list), func(s ground.Stake) bool { return b2i(s.Guy) != guy })
		if len(of) == 0 {
			continue
		}
		n := practice.Bags(each, b.units)
		t.Want = append(t.Want, Figure{What: Weighs, Stakes: of, Force: each, Count: n})
		bags += n * len(of)
	}
	if bags == 0 { // no arch stands that would be held
		return
	}
	work := practice.MinutesBag * float64(bags)
	t.Who = Who{People: b.pairs(work), Grown: true}
	t.Uses = []Need{many(SandBags, bags), many(Gloves, t.Who.People)}
	b.add(work, t)
}

// lookUp looks for what hangs above, named or not: all wait for it where nobody knows.
func (b *tasker) lookUp(hold bool) {
	t := Task{Action: LookUp, Hold: hold, Who: Who{People: 1, Grown: true}, IfOff: cures(Ask), Of: Scope{Overhead: indexes(len(b.Spec.Site.Overhead))}}
	for i, l := range b.Spec.Site.Overhead {
		t.Want = append(t.Want, Figure{What: KeepOverhead, Line: i, Length: l.Keep})
	}
	if len(t.Want) == 0 {
		t.Want = []Figure{{What: KeepOverhead, Line: -1, Length: practice.KeepOverhead(b.units)}}
	}
	b.add(practice.MinutesMeasure, t)
}

// depths has the depth taped on every stake, from its point.
func (b *tasker) depths() {
	t := Task{Action: TapeDepths, Who: Who{People: practice.Drivers}, Uses: []Need{one(ColouredTape)}, IfOff: cures(Ask)}
	for _, s := range b.Ground.Stakes {
		if s.Base {
			continue
		}
		k := slices.IndexFunc(t.Want, func(f Figure) bool {
			return f.What == DepthTaped && f.Length == s.Depth && f.Stakes[0].Length == s.Length
		})
		if k < 0 {
			k = len(t.Want)
			t.Want = append(t.Want, Figure{What: DepthTaped, Length: s.Depth}, Figure{What: Shows, Length: s.Length - s.Depth})
		}
		t.Want[k].Stakes = append(t.Want[k].Stakes, s)
		t.Want[k+1].Stakes = append(t.Want[k+1].Stakes, s)
	}
	for i := 0; i < len(t.Want); i += 2 {
		t.Uses = append(t.Uses, long(Stakes, len(t.Want[i].Stakes), t.Want[i].Stakes[0].Length))
	}
	t.Uses = append(t.Uses, b.reaching(1, farthest(t.Want)))
	b.add(practice.MinutesLabel*float64(len(b.Ground.Stakes)), t)
}

// pull tries the first stake by hand, with the moment that the gusts it is to bear ask of it at the ground; where none is worked out, with a margin over what
// the pipe asks in still air.
func (b *tasker) pull(s ground.Stake) {
	moment := b.Asks
	for _, a := range b.Arches {
		moment = max(moment, practice.PullMargin*math.Abs(a.FootMoment))
	}
	up := min(practice.PullUp(b.units), s.Length-s.Depth-practice.Deeper(b.units)-practice.OverHook(b.units)) // the hook's height when it has been driven deeper too
	if moment == 0 || up <= 0 {
		return
	}
	stakes := []ground.Stake{s}
	b.add(practice.MinutesTalk, Task{Action: PullTest, Who: Who{People: practice.Drivers, Grown: true}, Warning: NoHolding, Hold: true, Record: []Record{Found}, Of: Scope{Stakes: stakes},
		Want: []Figure{{What: PullUp, Stakes: stakes, Length: up}, {What: PullForce, Stakes: stakes, Force: measure.Force(moment / up.Metres())},
			{What: PullMoves, Stakes: stakes, Length: practice.PullGives(b.units)}},
		IfOff: []Cure{{Do: DriveDeeper, By: practice.Deeper(b.units)}, {Do: LongerStakes}},
		Uses:  []Need{one(Hammer), one(LuggageScale), one(Lath), one(StakeGrip), many(Gloves, practice.Drivers), many(EyeProtection, practice.Drivers), one(Caps)}})
}

// drive drives all the stakes and caps each at once. A stake that will not go has a ladder of remedies.
func (b *tasker) drive(left, right, guys []ground.Stake) {
	legs := slices.Concat(left, right)
	n := len(legs) + len(guys)
	work := b.Spec.Crew.Rates.Stake * float64(n)
	drivers := min(b.pairs(work), practice.Drivers*max(1, b.Spec.Crew.Tools.Sledges))
	t := Task{Action: DriveStakes, Who: Who{People: drivers, Grown: true}, Warning: NoHolding, Of: Scope{Stakes: slices.Concat(legs, guys)},
		Uses: []Need{many(Hammer, drivers/2), many(Level, drivers/2), one(Ribbon), many(Caps, n), many(Gloves, drivers), many(EyeProtection, drivers), many(SpareStake, b.spares(n)), many(SpareCap, b.spares(n))}}
	if lean := b.Spec.ArchOf(legs[0].Arch).Stake.Lean; lean != 0 {
		t.Want = append(t.Want, Figure{What: Leaning, Stakes: legs, Angle: lean})
	} else {
		t.Want = append(t.Want, Figure{What: Plumb, Stakes: legs})
	}
	upright := func(s ground.Stake) bool { return s.Kind() == ground.OfBrace && !b.Spec.Braces.Line } // pipe pushes as well as pulls
	if pulled := slices.DeleteFunc(slices.Clone(guys), upright); len(pulled) > 0 {
		t.Want = append(t.Want, Figure{What: GuyLean, Stakes: pulled})
	}
	t.Want = append(t.Want, Figure{What: Capped, Count: n}, state(Ribbons))
	t.IfOff = b.wontGo()
	t.Record = []Record{Moved}
	b.add(work, t)
}

// wontGo is the ladder for a stake that will not go where it should. A rung is there where any stake may take it; a stake that it would bring into the keep distance of
// a buried line may not: see MayMove.
func (b *tasker) wontGo() []Cure {
	may := func(by measure.Length, kinds ...ground.Kind) bool {
		return slices.ContainsFunc(b.Ground.Stakes, func(s ground.Stake) bool { return slices.Contains(kinds, s.Kind()) && MayMove(b.Spec, s, by) })
	}
	if off := practice.OffDot(b.units); !may(off, ground.OfLeg, ground.OfGuy, ground.OfBrace) {
		return cures(DoNotMove)
	}
	list := []Cure{{Do: BesideHole, By: practice.OffDot(b.units)}}
	if by, drop := b.across(); by > practice.OffDot(b.units) && may(by, ground.OfLeg) {
		list = append(list, Cure{Do: MoveAcross, By: by, Then: drop})
	}
	if by := practice.MovedAlong(b.units); len(b.Arches) > 1 && may(by, ground.OfLeg) {
		list = append(list, Cure{Do: MoveAlong, By: by})
	}
	if by := practice.GuyMoved(b.units); may(by, ground.OfGuy) {
		list = append(list, Cure{Do: MoveGuy, By: by})
	}
	return append(list, Cure{Do: Ask})
}

// Moves reports whether a remedy moves stakes of a kind. A brace's stake stands between its own leg and the neighbour's: it leaves its dot no farther than any.
func (r Remedy) Moves(k ground.Kind) bool {
	switch r {
	case BesideHole:
		return true
	case MoveAcross, MoveAlong:
		return k == ground.OfLeg
	case MoveGuy:
		return k == ground.OfGuy
	}
	return false
}

// MayMove reports whether a stake keeps its distance from every buried line wherever it is moved so far.
func MayMove(s *spec.Spec, stake ground.Stake, by measure.Length) bool {
	return !slices.ContainsFunc(s.Site.Buried, func(l spec.Buried) bool { return ground.FromLine(stake, l)-by < l.Keep })
}

// across returns how far a leg's stake may stand across the walk from its dot, no farther than the headroom has to spare, and how much the crown of the
// commonest kind comes down then.
func (b *tasker) across() (by, drop measure.Length) {
	most := slices.MaxFunc(b.Arches, func(p, q arch.Arch) int { return cmp.Compare(len(p.Numbers), len(q.Numbers)) }).Kind
	m, ok := most.Moves()
	if !ok || m.By <= 0 || m.Wider.Crown >= 0 {
		return 0, 0
	}
	share := -m.Wider.Crown / m.By
	step := practice.Reading(b.units)
	by = min(m.By, step*measure.Length(math.Floor(float64((most.Clear-b.Spec.Tunnel.OpeningHeight)/share/step))))
	return by, by * share
}

// widths is the hold after driving: every pair of stakes at the ground.
func (b *tasker) widths() {
	t := Task{Action: MeasureWidths, Who: Who{People: practice.Drivers}, Hold: true, Record: []Record{Worst}, IfOff: cures(DriveAgain), Uses: []Need{one(Lath)}}
	for _, a := range b.Arches {
		k := slices.IndexFunc(t.Want, func(f Figure) bool { return b.units.Taped(f.Length) == b.units.Taped(a.Span) })
		if k < 0 {
			k = len(t.Want)
			t.Want = append(t.Want, Figure{What: FootWidth, Length: a.Span, Limit: practice.FootGive(b.units)})
		}
		t.Want[k].Arches = append(t.Want[k].Arches, a.Number)
	}
	t.Uses = append(t.Uses, b.reaching(1, farthest(t.Want)))
	b.add(practice.MinutesMeasure*2*float64(len(b.Arches)), t)
}
