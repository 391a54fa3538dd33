// Tasks of testing, winding and hanging lights.

package crew

import (
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// keptOn reports whether what is on a part comes out of the shed as it was wound last year. Whole arches and ridge pieces do not: they are taken apart.
func (b *tasker) keptOn(p lights.Part) bool { return b.Spec.Found.Wrapped && p.IsLeg() && b.InShed[p] }

// wrapping tests every string, flags the rows and winds the legs, and the trial ridge piece where it has lights: what is cut before the first arch stands.
func (b *tasker) wrapping() {
	if len(b.Lights.Strings) == 0 {
		return
	}
	b.testStrings()
	b.tryWrapped()
	b.flagRows()
	b.windAll(b.wound(func(p lights.Part) bool { return p.Kind != lights.Ridge && !b.keptOn(p) }))
	b.windAll(b.wound(func(p lights.Part) bool { return p.Kind == lights.Ridge && !b.woundLater(p) })) // the one that is tried
}

// tryWrapped has legs that were kept wrapped bent a little, looked over, and burnt on an outlet that trips before one is raised.
func (b *tasker) tryWrapped() {
	of := Scope{}
	for i, s := range b.Lights.Strings {
		if s.Run.Wound() && b.keptOn(s.Run.Part) {
			of.Strings = append(of.Strings, i)
		}
	}
	n := len(of.Strings)
	if n == 0 {
		return
	}
	work := practice.MinutesFlex*float64(n) + practice.MinutesBurn
	who := Who{People: b.pairs(work), Grown: true} // who plugs in
	b.add(work, Task{Action: TryWrapped, Of: of, Who: who, Hold: true, Want: []Figure{{What: AllLit, Count: n, Minutes: practice.MinutesBurn}}, IfOff: cures(RejectString, Ask),
		Uses: []Need{many(Strings, n), many(SpareString, b.spares(n)), many(TestOutlet, who.People/2), one(RejectBag)}})
}

// testStrings has every string tried and named that is not on its leg already.
func (b *tasker) testStrings() {
	all := Scope{}
	for i, s := range b.Lights.Strings {
		if !s.Run.Wound() || !b.keptOn(s.Run.Part) {
			all.Strings = append(all.Strings, i)
		}
	}
	n := len(all.Strings)
	if n == 0 {
		return
	}
	who := Who{People: b.pairs((practice.MinutesTest + practice.MinutesLabel) * float64(n)), Grown: true}
	b.add(practice.MinutesTest*float64(n), Task{Action: TestStrings, Of: all, Who: who, Hold: true, Want: []Figure{{What: AllLit, Count: n}},
		IfOff: cures(RejectString, Ask), Uses: []Need{many(Strings, n), many(SpareString, b.spareStrings()), many(TestOutlet, who.People/2), one(RejectBag)}})
	b.add(practice.MinutesLabel*float64(n), Task{Action: TagStrings, Of: all, Who: who, Want: []Figure{{What: Tagged, Count: n}}, Uses: []Need{many(StringTags, n), many(Marker, who.People/2)}})
}

// windAll winds groups of wraps by as many pairs as all of it is worth and as there are trestles for.
func (b *tasker) windAll(groups [][]int) {
	work := 0.0
	for _, g := range groups {
		work += b.winding(g)
	}
	people := b.atTrestles(work)
	for _, g := range groups {
		if len(g) > 0 {
			b.wind(g, people)
		}
	}
}

// atTrestles is how many people share so much work that takes two trestles a pair.
func (b *tasker) atTrestles(work float64) int {
	return max(2, min(b.pairs(work), b.Spec.Crew.Tools.Trestles/2*2))
}

// winding is the work of a group of wraps alike.
func (b *tasker) winding(group []int) float64 {
	if len(group) == 0 {
		return 0
	}
	return b.Spec.Crew.Rates.Wrap * float64(len(group)*max(1, len(b.Lights.Wraps[group[0]].Strings)))
}

// flagRows flags the rows' tapes on the legs while they lie straight.
func (b *tasker) flagRows() {
	if len(b.Lights.Rows) == 0 {
		return
	}
	t := Task{Action: FlagRows, Of: Scope{Rows: indexes(len(b.Lights.Rows)), Arches: numbers(b.Arches)}, Who: Who{People: 2}, IfOff: cures(MeasureFromFoot),
		Uses: []Need{one(Ribbon)}}
	for _, r := range b.Lights.Rows {
		if !slices.Contains(t.Of.Walls, r.Wall) {
			t.Of.Walls = append(t.Of.Walls, r.Wall)
		}
		if !slices.ContainsFunc(t.Want, func(f Figure) bool { return f.Length == r.Tape }) {
			t.Want = append(t.Want, Figure{What: FlagAt, Length: r.Tape, Limit: practice.FlagGive(b.units)})
		}
	}
	t.Uses = append(t.Uses, b.reaching(1, farthest(t.Want)))
	b.add(practice.MinutesLabel*float64(len(b.Arches)*len(t.Of.Walls)), t)
}

// wound gathers the wraps that are wound alike: same part, string, turns, ends and flags.
func (b *tasker) wound(of func(lights.Part) bool) (groups [][]int) {
	like := func(v, w lights.Wrap) bool {
		return v.On.Kind.Noun() == w.On.Kind.Noun() && v.Label.Name == w.Label.Name && v.Crown == w.Crown && len(v.Strings) == len(w.Strings) &&
			b.units.Taped(v.From) == b.units.Taped(w.From) && b.units.Taped(v.To) == b.units.Taped(w.To) && int(v.Turns+0.5) == int(w.Turns+0.5)
	}
	for i, w := range b.Lights.Wraps {
		if !of(w.On) {
			continue
		}
		k := slices.IndexFunc(groups, func(g []int) bool { return like(b.Lights.Wraps[g[0]], w) })
		if k < 0 {
			k = len(groups)
			groups = append(groups, nil)
		}
		groups[k] = append(groups[k], i)
	}
	return groups
}

// wind winds wraps alike, on trestles. Both legs are in their crown before a wrap that runs from foot to foot, and a leg that is guyed or braced keeps a bare band.
func (b *tasker) wind(group []int, people int) {
	w := b.Lights.Wraps[group[0]]
	of := Scope{Wraps: group}
	if w.On.Kind == lights.Arch {
		b.joinCrowns(JoinForWrap, numbers(b.Arches), Wrapping)
	}
	who := Who{People: people}
	t := Task{Phase: Wrapping, Action: WindPipe, Of: of, Who: who, IfOff: cures(OpenTurns),
		Want: []Figure{{What: Wound, Count: len(group)}, {What: EndsBare, Length: practice.SocketBare(b.units)}},
		Uses: []Need{many(Trestles, who.People), many(ZipTies, practice.WrapTies*len(group)), many(Cutters, who.People/2), b.reaching(who.People/2, taped(b.Lights.Wraps, group)), one(Ribbon)}}
	var tied []int
	for _, i := range group {
		if w := b.Lights.Wraps[i]; len(w.Bare) > 0 && !slices.Contains(tied, w.On.Number) {
			tied = append(tied, w.On.Number)
		}
	}
	if len(tied) > 0 {
		t.Want = append(t.Want, Figure{What: BandBare, Arches: tied, Length: practice.BareBand(b.units)})
	}
	together := 0 // strings end to end on one pipe, by whoever winds its last wrap
	b.joins(func(one, two lights.Run) {
		last := 0
		for i, w := range b.Lights.Wraps {
			if w.On == one.Part {
				last = i
			}
		}
		together += b2i(one.Wound() && one == two && slices.Contains(group, last))
	}, func(lights.Run, lights.Spot) {})
	joined := t.covers(together, 0)
	b.add(b.winding(group)+joined, t)
}

// taped is the farthest along its pipe that a ribbon is tied on some wraps.
func taped(wraps []lights.Wrap, some []int) (far measure.Length) {
	for _, i := range some {
		for _, f := range wraps[i].Flags {
			far = max(far, f.Tape)
		}
		for _, gap := range wraps[i].Bare {
			far = max(far, gap.To)
		}
	}
	return far
}

// woundLater reports whether a part is a ridge piece that is cut only once the trial piece is measured in place.
func (in Input) woundLater(p lights.Part) bool {
	return p.Kind == lights.Ridge && (len(in.Ridge) == 0 || p.Number != in.Ridge[0].Bay)
}

// hanging puts up rows and drops after ridge and guys hold, and has the way through measured.
func (b *tasker) hanging() {
	for _, wall := range []spec.Side{spec.Left, spec.Right} {
		t := Task{Action: HangRows, Of: Scope{Walls: []spec.Side{wall}}, Who: Who{People: 3}, IfOff: cures(LetOut)}
		strung, high := 0, measure.Length(0)
		for i, r := range b.Lights.Rows {
			if r.Wall != wall {
				continue
			}
			t.Of.Rows = append(t.Of.Rows, i)
			t.Want = append(t.Want, Figure{What: RowAt, Walls: []spec.Side{wall}, Length: r.Tape, Count: r.Number})
			strung += max(1, len(r.Strings))
			for _, h := range r.Heights {
				high = max(high, h)
			}
		}
		if len(t.Of.Rows) == 0 {
			continue
		}
		sag := practice.BayGive(b.units)
		if b.Spec.Lights.Rows != nil {
			sag = b.Spec.Lights.Rows.Sag
		}
		t.Want = append(t.Want, Figure{What: Sag, Length: sag})
		t.Uses = []Need{many(ZipTies, len(b.Arches)*len(t.Of.Rows)), one(Cutters)}
		if high > practice.Reach(b.units) {
			t.Uses = b.climbs(t.Uses...)
		}
		joined := t.covers(b.hung(func(r lights.Run) bool { w, _ := r.Wall(); return !r.Drop && w == wall }))
		b.add(b.Spec.Crew.Rates.Row*float64(strung)+joined, t)
	}
	if n := len(b.Lights.Drops); n > 0 {
		lowest, give := b.Lights.Drops[0].Lowest, measure.Length(0)
		for _, d := range b.Lights.Drops {
			lowest = min(lowest, d.Lowest)
		}
		for _, a := range b.Arches { // one that stands as low as passes hangs its drops as much lower
			give = max(give, a.GiveOrTake(b.units))
		}
		t := Task{Action: HangDrops, Who: Who{People: 2, Grown: true}, Want: []Figure{{What: LowestDrop, Length: lowest - give}}, IfOff: cures(TieUp), Uses: b.climbs(many(ZipTies, 2*n), one(Cutters))}
		joined := t.covers(b.hung(func(r lights.Run) bool { return r.Drop }))
		b.add(b.Spec.Crew.Rates.Drop*float64(n)+joined, t)
	}
	if sticks := b.openingSticks(); sticks != nil {
		b.add(practice.MinutesMeasure*float64(len(b.Arches)), Task{Action: TryOpening, Of: Scope{Arches: numbers(b.Arches)}, Who: Who{People: 2}, Hold: true, IfOff: cures(TieUp, Ask),
			Want: []Figure{{What: OpeningHigh, Length: sticks[0].Length}, {What: OpeningWide, Length: sticks[1].Length}}, Uses: sticks})
	}
}

// openingSticks are as high and as wide as the opening; none where that is not given.
func (b *tasker) openingSticks() []Need {
	o := b.Spec.Tunnel
	if o.OpeningWidth <= 0 || o.OpeningHeight <= 0 {
		return nil
	}
	return []Need{long(OpeningSticks, 1, o.OpeningHeight), long(OpeningSticks, 1, o.OpeningWidth)}
}
