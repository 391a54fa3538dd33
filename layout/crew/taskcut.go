// Tasks at the saw and the bench.

package crew

import (
	"hoopwright/layout/ground"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// cutting prepares the legs, and one ridge piece only: the others wait until bay 1 has been tried.
func (b *tasker) cutting() {
	square := Figure{What: Square, Limit: b.units.Grid()}
	made := b.made()
	if b.LegCuts > 0 {
		b.saw(CutLegs, Scope{Arches: numbers(b.Arches)}, b.LegCuts, []Figure{square})
	}
	if len(b.Ridge) > 0 {
		bays := []int{b.Ridge[0].Bay}
		b.saw(CutTrial, Scope{Bays: bays}, 1, []Figure{{What: CutLength, Bays: bays, Length: b.Ridge[0].Cut, Limit: b.units.Grid()}, square})
	}
	if len(made) > 0 {
		b.makeLegs(made)
	}
	b.cutLines()
	b.sawOpenings()
	if b.Steel {
		b.add(0, Task{Action: SawSteel, Who: Who{People: 1, Grown: true}, Uses: sawing()})
	}
}

// sawOpenings has laths sawn to sticks as high and as wide as the opening.
func (b *tasker) sawOpenings() {
	sticks := b.openingSticks()
	laths, far := 0, measure.Length(0)
	for _, n := range sticks {
		laths, far = laths+practice.Laths(b.units, n.Length), max(far, n.Length)
	}
	if laths > 0 {
		b.add(0, Task{Action: SawOpenings, Who: Who{People: 2, Grown: true}, Uses: sawing(many(Lath, laths), one(Saw), b.reaching(1, far))})
	}
}

// made are the legs that do not come out of the shed wrapped.
func (b *tasker) made() (list []lights.Part) {
	for _, a := range b.Arches {
		for _, side := range []spec.Side{spec.Left, spec.Right} {
			if leg := lights.Leg(side, a.Number); !b.keptOn(leg) {
				list = append(list, leg)
			}
		}
	}
	return list
}

// makeLegs has sticks named, legs joined and marked.
func (b *tasker) makeLegs(made []lights.Part) {
	sticks, couplings, wide := 0, 0, measure.Length(0)
	legs := Scope{}
	for _, a := range b.Arches {
		some := false
		for side, list := range [][]measure.Length{a.Left, a.Right} {
			leg := lights.Leg(spec.Side(side), a.Number)
			if !slices.Contains(made, leg) {
				continue
			}
			if some = true; b.Cemented[leg] {
				list = list[:min(1, len(list))]
			}
			sticks, couplings, wide = sticks+len(list), couplings+max(0, len(list)-1), max(wide, a.Kind.Spec.Pipe.OD)
		}
		if some {
			legs.Arches = append(legs.Arches, a.Number)
		}
	}
	uses := []Need{many(Sticks, sticks), many(SpareStick, b.spares(sticks))}
	if b.Whole {
		uses = append(uses, sawing(one(Saw), one(Scraper), b.reaching(1, b.Stick))...)
	}
	naming, marking := practice.MinutesLabel*float64(sticks), practice.MinutesLabel*float64(len(made))
	each, held := b.fastening(2 * couplings)
	joining := each * float64(couplings)
	who := Who{People: b.pairs(naming + joining + marking)}
	b.add(naming, Task{Action: NameSticks, Of: legs, Who: who, Want: []Figure{{What: NamedAndWhole, Count: sticks}},
		IfOff: cures(PutOut), Uses: append(uses, many(Marker, who.People/2))})
	if couplings > 0 {
		t := Task{Action: JoinSticks, Of: legs, Who: who, Want: []Figure{{What: NoGap, Count: couplings}}, IfOff: cures(DriveHome), Uses: append(held, many(LegCouplings, couplings))}
		if b.Spec.Arch.Joints != spec.Glued { // cement lets them slide home
			t.Uses = append(t.Uses, many(Mallet, who.People/2))
		} else {
			t.IfOff, t.Sets = nil, practice.CementSets(wide)
		}
		b.add(joining, t)
	}
	b.markLegs(legs, who, marking)
}

// cutLines has guys and brace lines cut from what is bought, each with its ribbon, and the line along the crowns.
func (b *tasker) cutLines() {
	guys, lines := 0, 0
	for _, a := range b.Arches {
		guys += len(b.guysOf(a.Number))
		if b.Spec.Braces.Line {
			lines += len(b.pegsOf(a.Number))
		}
	}
	work, uses := practice.MinutesLabel*2*float64(guys+lines), []Need{one(Cutters), b.reaching(1, b.Rope)}
	for _, n := range []Need{many(GuyLine, guys), many(Webbing, lines)} {
		if n.Count > 0 {
			uses = append(uses, n, one(Ribbon))
		}
	}
	for _, n := range b.crownLines(len(b.Line)) {
		work, uses = work+practice.MinutesLabel*float64(n.Count), append(uses, n)
	}
	if work > 0 {
		b.add(work, Task{Action: CutLines, Who: Who{People: b.pairs(work)}, Uses: uses})
	}
}

// fastening is what holds so many sockets of couplings at the bench, and the minutes a coupling takes.
func (b *tasker) fastening(sockets int) (minutes float64, uses []Need) {
	switch b.Spec.Arch.Joints {
	case spec.Pinned:
		return practice.MinutesLabel + 2*practice.MinutesScrew, b.screwing(sockets)
	case spec.Glued:
		return 2 * practice.MinutesCement, []Need{one(Cement), many(Gloves, 2)}
	}
	return practice.MinutesLabel, nil
}

// screwing is what so many sockets are screwed with.
func (b *tasker) screwing(sockets int) []Need {
	return []Need{many(Screws, sockets), one(Screwdriver), one(File)}
}

// saw adds a task at the saw.
func (b *tasker) saw(action Action, of Scope, cuts int, want []Figure) {
	b.add(b.Spec.Crew.Rates.Cut*float64(cuts), Task{Phase: Cutting, Action: action, Of: of, Who: Who{People: 2, Grown: true}, Want: want, IfOff: cures(CutAnother),
		Uses: sawing(many(Sticks, cuts), one(Saw), many(Trestles, 2), one(Scraper), b.reaching(1, b.Stick), one(Marker), one(Tarp))})
}

// sawing adds what safety asks of whoever saws to what is used at it.
func sawing(uses ...Need) []Need { return append(uses, one(Clamp), many(EyeProtection, 2)) }

// markLegs has tape marks put on the legs while they lie straight, and the marks where guys are tied, out of reach once the arch stands, and braces clamped.
func (b *tasker) markLegs(legs Scope, who Who, work float64) {
	n := who.People / 2
	t := Task{Action: MarkLegs, Of: legs, Who: who, IfOff: cures(MeasureFromFoot), Uses: []Need{many(Marker, n)},
		Want: []Figure{{What: TapeMark, Length: practice.TapeMarks(b.units), Limit: practice.FlagGive(b.units)}}}
	for _, a := range b.Arches {
		t.Want = append(t.Want, b.guyMarks(a)...)
		t.Want = append(t.Want, b.marks(BraceMark, a, b.pegsOf(a.Number))...)
	}
	t.Uses = append(t.Uses, b.reaching(n, farthest(t.Want)))
	b.add(work, t)
}

// guyMarks are the tapes at which an arch's guys are tied.
func (b *tasker) guyMarks(a arch.Arch) []Figure { return b.marks(GuyMark, a, b.guysOf(a.Number)) }

// marks are the tapes at which what holds an arch to those stakes is fixed: one figure where both legs print alike, else left, then right; none without stakes.
func (b *tasker) marks(what Wanted, a arch.Arch, to []ground.Stake) []Figure {
	if len(to) == 0 {
		return nil
	}
	left, right := lights.Knot(b.units, a.Kind, spec.Left, to[0].Tied), lights.Knot(b.units, a.Kind, spec.Right, to[0].Tied)
	fig := func(l measure.Length, walls ...spec.Side) Figure {
		return Figure{What: what, Arches: []int{a.Number}, Walls: walls, Length: l, Limit: practice.FlagGive(b.units)}
	}
	if left == right {
		return []Figure{fig(left, spec.Left, spec.Right)}
	}
	return []Figure{fig(left, spec.Left), fig(right, spec.Right)}
}

// cutRidge has the other ridge pieces cut by what bay 1 has taught, those alike in one figure.
func (b *tasker) cutRidge(rest []RidgePiece) {
	var want []Figure
	var bays []int
	for _, r := range rest {
		k := slices.IndexFunc(want, func(f Figure) bool { return f.Length == r.Cut })
		if k < 0 {
			k = len(want)
			want = append(want, Figure{What: CutLength, Length: r.Cut, Limit: b.units.Grid()})
		}
		want[k].Bays, bays = append(want[k].Bays, r.Bay), append(bays, r.Bay)
	}
	b.saw(CutRidge, Scope{Bays: bays}, len(rest), append(want, state(Square)))
}
