package stock

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// How far things go. Common practice, no source.
const (
	InBag         = 100  // ties, tags in one
	stakesToPaint = 60   // marks one can of paint makes
	archesToRoll  = 30   // one roll of flagging tape
	slackOfGuy    = 1.02 // a line tied by hand is never quite straight
)

// stakes lists stakes by bar and length, ready-cut, or the bars they are cut from; and a cap for every one: bare steel is capped
// until a pipe covers it, a guy stake for good, and a spare stake that is driven as well.
func (b *basket) stakes(in Input, cuts Cuts, offers []offer) {
	in.Stakes = slices.DeleteFunc(slices.Clone(in.Stakes), func(s ground.Stake) bool { return !s.Steel() })
	count := withSpares(len(in.Stakes), in.Spec.Stock.Spares)
	bought := 0
	for _, o := range offers {
		if o.ready {
			bought += b.readyStakes(in, o, cuts)
		}
		if o.bar {
			b.sticks(o, cuts, in.Spec)
		}
	}
	count = max(count, bought+b.sawnStakes(cuts))
	b.add(Item{Item: "stake cap", Kind: StakeCap, Need: count, Spare: count - len(in.Stakes), Unit: Each, Where: whereSteel})
}

// readyStakes lists stakes bought cut to length, all but those that bars of the shed give, and returns how many with their spares.
func (b *basket) readyStakes(in Input, o offer, cuts Cuts) (count int) {
	cut := cuts.Given()
	var list []Item
	for _, s := range in.Stakes {
		if barItem(s.Bar(in.Spec)) != o.item || cut[PieceID{Steel: true, Stake: s.StakeID}] {
			continue
		}
		words := o.item + ", " + Sold(s.Length, in.Spec.Units) // lengths may be chosen in one unit, given in another
		named(&list, Item{Item: words, Kind: ReadyStake, Of: o.item, Length: s.Length, Unit: Each, Where: whereSteel}).Need++
	}
	for _, i := range list {
		count += withSpares(i.Need, b.spec.Stock.Spares)
		b.addSpared(i)
	}
	return count
}

// sawnStakes is how many stakes are cut from bars.
func (b *basket) sawnStakes(cuts Cuts) (n int) {
	for _, bar := range cuts.Bars {
		if bar.Steel() {
			n += len(bar.Pieces)
		}
	}
	return n
}

// bases lists the boards, what joins them, the sockets on them and the weights of feet where nothing is driven.
func (b *basket) bases(in Input) {
	sockets, bags := 0, 0
	for _, s := range in.Stakes {
		if !s.Base {
			continue
		}
		weight := in.FootWeight
		if s.Guy {
			weight = in.TieWeight
		}
		bags += practice.Bags(weight, in.Spec.Units)
		if s.Steel() {
			sockets++
		}
	}
	rows, joints := boardRows(in)
	add := func(item string, kind Kind, need int) {
		b.add(Item{Item: item, Kind: kind, Need: need, Unit: Each, Rows: rows, Where: whereSundries})
	}
	add("sole board", SoleBoard, len(rows[spec.Left])+len(rows[spec.Right]))
	add("joint plate", JointPlate, joints)
	add("wood screw "+in.Spec.Units.Cut(practice.PlateScrew(in.Spec.Units)), PlateScrew, practice.PlateScrews*joints)
	add("bar socket", BarSocket, sockets)
	add("sandbag", SandBag, bags)
}

// BandRound is the size of a hose clamp that holds two bars side by side: a belt about both, as a circle.
func BandRound(one, other measure.Length) measure.Length {
	apart, less := float64(one+other)/2, float64(one-other)/2
	tilt := math.Asin(less / apart)
	return measure.Length(2*math.Sqrt(apart*apart-less*less)+apart*math.Pi+2*tilt*less) / math.Pi
}

// ropeStep is what lines are cut to whole numbers of.
func ropeStep(u measure.System) measure.Length { return measure.By(u, measure.Foot, measure.Metre/2) }

// ropesOf are the lines of guys, along the crowns and to tie arches down that stand on bases, and how long they are in all.
func ropesOf(in Input) (ropes []Rope, line measure.Length) {
	guys, longest := 0, measure.Length(0)
	rope := func(kind RopeKind, long measure.Length) {
		long = measure.RoundUp(long, ropeStep(in.Spec.Units))
		line += long
		entry(&ropes, Rope{Kind: kind, Length: long}, func(r Rope) bool { return r.Kind == kind && sameLength(r.Length, long) }).Count++
	}
	for _, g := range in.Stakes {
		if !g.Guy || g.Bay > 0 {
			continue
		}
		guys++
		out := in.Spec.Guys.Out
		if k := slices.IndexFunc(in.Stakes, func(s ground.Stake) bool { return !s.Guy && s.Arch == g.Arch && s.Side == g.Side }); k >= 0 {
			out = ground.Between(in.Stakes[k], g)
		}
		from := in.Spec.Guys.From
		longest = max(longest, measure.Length(math.Hypot(float64(out), float64(from)))*slackOfGuy+practice.KnotsOfGuy)
	}
	for range guys { // all alike: an odd one would have to be told from the others
		rope(GuyRope, longest)
	}
	for _, long := range crownLines(in) {
		rope(CrownRope, long)
	}
	for _, s := range in.Stakes {
		if s.Base && !s.Guy {
			rope(DownRope, 2*practice.KnotsOfGuy)
		}
	}
	return ropes, line
}

// sundries lists line, what holds it and braces, ties, paint, ribbon and tags.
func (b *basket) sundries(in Input) {
	ropes, line := ropesOf(in)
	guys := 0
	for _, r := range ropes {
		if r.Kind == GuyRope {
			guys += r.Count
		}
	}
	per, unit := measure.By(in.Spec.Units, measure.Foot, measure.Metre), measure.By(in.Spec.Units, Feet, Metres)
	add := func(kind Kind, item string, need int, unit Unit) {
		b.add(Item{Item: item, Kind: kind, Need: need, Unit: unit, Where: whereSundries})
	}
	b.add(Item{Item: "guy line", Kind: GuyLine, Need: int(math.Ceil(float64(line/per) - 1e-9)), Unit: unit, Where: whereSundries, Ropes: ropes})
	laths, ties := lathsOf(in)
	ties += in.Ties + in.HungTies + in.Wiring.Ties + practice.BundleTies*in.Spec.Tunnel.Arches
	add(Tightener, "line tightener", guys, Each)
	add(GuyClamp, "hose clamp", guys+linesOf(in), Each)
	b.braces(in)
	b.bases(in)
	ties += in.HungTies + in.Wiring.Ties // once more, for laid flat they are cut
	tied, tagged := b.onLegs(in)
	b.packs(ZipTies, "zip ties", ties, tied)
	add(MarkingPaint, "marking paint", (len(in.Stakes)+stakesToPaint-1)/stakesToPaint, Can)
	if driven := slices.ContainsFunc(in.Stakes, func(s ground.Stake) bool { return !s.Base }); driven && flagged(in.Spec.Dates) {
		add(MarkingFlag, "marking flag", len(in.Stakes), Each)
	}
	add(Lath, "lath", laths, Each)
	add(Ribbon, "flagging tape", (in.Spec.Tunnel.Arches+archesToRoll-1)/archesToRoll, Roll)
	b.packs(WriteOnTags, "write-on tags", len(in.Strings)+2*len(in.Wiring.Cords), tagged)
}

// lathsOf counts the laths of the gauge stick and of those that are sawn for the opening, with the ties of their laps. Once all is marked the gauge stick is taken apart for the one
// that crowns are marked on.
func lathsOf(in Input) (laths, ties int) {
	lapped := func(long measure.Length) int {
		n := practice.Laths(in.Spec.Units, long)
		ties += practice.LathTies * (n - 1)
		return n
	}
	laths = lapped(ground.Widest(in.Stakes))
	if in.CrownStick > 0 {
		laths = max(laths, lapped(in.CrownStick))
	}
	if o := in.Spec.Tunnel; o.OpeningWidth > 0 && o.OpeningHeight > 0 {
		laths += lapped(o.OpeningWidth) + lapped(o.OpeningHeight)
	}
	return laths, ties
}

// onLegs counts the zip ties and the tags on legs that come out of the shed wrapped.
func (b *basket) onLegs(in Input) (ties, tags int) {
	for leg := range b.came {
		ties += in.LegTies[leg]
	}
	for _, s := range in.Strings {
		if b.onLeg(s) {
			tags++
		}
	}
	return ties, tags
}

// packs lists what is sold by the pack; what so many on legs save of them counts as owned.
func (b *basket) packs(kind Kind, item string, need, on int) {
	all := bags(withSpares(need, b.spec.Stock.Spares))
	saved := all - bags(withSpares(need-on, b.spec.Stock.Spares))
	b.add(Item{Item: fmt.Sprintf("%s %d", item, InBag), Kind: kind, Need: all, Own: saved, Wrapped: saved, Unit: Bag, Where: whereSundries})
}

// flagged reports whether dots wait so long for their stakes, or may, that each has a flag beside it.
func flagged(d spec.Dates) bool {
	return d.Mark.IsZero() || d.Build.IsZero() || d.Build.Sub(d.Mark).Hours() >= 24*practice.FlagDays
}

// bags is how many bags hold so many.
func bags(n int) int { return (n + InBag - 1) / InBag }

// crownLines tie the crowns together, with a turn and a knot at each: one from end to end, or one a bay, all alike.
func crownLines(in Input) []measure.Length {
	if len(in.Line) == 0 {
		return nil
	}
	run := practice.KnotOfCrown
	for _, apart := range in.Line {
		run += apart + practice.KnotOfCrown
	}
	if in.LineByBay {
		return slices.Repeat([]measure.Length{slices.Max(in.Line) + 2*practice.KnotOfCrown}, len(in.Line))
	}
	return []measure.Length{run}
}
