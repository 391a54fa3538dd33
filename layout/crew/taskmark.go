// Tasks of marking, and the calls before anything is driven.

package crew

import (
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// marking paints every dot, checks them while they are paint, and has the ground looked at before anything is driven.
func (b *tasker) marking() {
	dots := b.Ground.Marking(b.units)
	if len(dots) == 0 {
		return
	}
	checks := b.Ground.Checks(b.units)
	marked := len(b.Ground.Ties) > 0
	if marked {
		b.add(practice.MinutesTalk, Task{Action: FindMarks, Who: Who{People: practice.Markers}, Want: []Figure{state(MarkAsNamed)}, IfOff: cures(Ask), Uses: []Need{one(Pencil)}})
	}
	for _, g := range b.painting(dots) {
		b.paint(b.paints(g[0]), g, checks)
	}
	if b.drives() {
		b.list[0].Warning = PaintOnly
	}
	if b.Ground.Slopes() {
		b.list[0].Uses = append(b.list[0].Uses, one(PlumbBob))
	}
	b.checkDots(checks)
	if !marked {
		b.add(practice.MinutesTwoTape*4, Task{Action: ChooseMarks, Who: Who{People: practice.Markers}, Record: []Record{MarkTapes}, Uses: []Need{b.tape(2), one(Pencil)}})
	}
	b.calls()
}

// painting parts the dots into those that one task paints: those of one action that follow each other, or, round a bend, that take turns with the other action
// of a pair.
func (b *tasker) painting(dots []ground.Dot) (groups [][]ground.Dot) {
	inPairs := func(a Action) bool { return a == FindByTapes || a == SetWidths }
	for _, d := range dots {
		action := b.paints(d)
		k := len(groups) - 1
		for k >= 0 && b.paints(groups[k][0]) != action && inPairs(action) && inPairs(b.paints(groups[k][0])) {
			k--
		}
		if k < 0 || b.paints(groups[k][0]) != action {
			groups = append(groups, []ground.Dot{d})
			continue
		}
		groups[k] = append(groups[k], d)
	}
	return groups
}

// paints tells by which action a dot is painted.
func (b *tasker) paints(d ground.Dot) Action {
	s := b.Ground.Stakes[d.Spot.Index]
	chord := d.Spot.Kind == ground.AtStake && !s.Guy && b.Ground.ByChord(s.Arch)
	switch {
	case s.Guy && d.Spot.Kind == ground.AtStake:
		return PaintGuys
	case d.Spot.Kind == ground.AtAhead || d.Spot.Kind == ground.AtAside || d.From.Kind == ground.AtStake && d.To.Kind == ground.AtAside:
		return SquareByTriangle
	case chord:
		return PaintChords
	case d.How == ground.Chosen:
		return ChooseFirst
	case d.How == ground.ChosenAt:
		return ChooseEnd
	case d.How == ground.TwoTapes && d.From.Kind == ground.AtMark:
		return FindByTapes
	case d.How == ground.OnString && d.To.Kind == ground.AtFound && s.Side == spec.Right:
		return SetWidths
	case d.How == ground.OnString && d.To.Kind == ground.AtFound:
		return SetEnd
	case d.How == ground.OnString:
		return PaintRow
	case !b.Ground.Straight:
		return PaintByBays
	case s.Arch == 1:
		return SquareFirst
	}
	return PaintByGauge
}

// tape is so many long tapes, of the size sold that reaches all that is taped.
func (b *tasker) tape(n int) Need {
	return long(LongTape, n, practice.Tape(b.units, b.Ground.LongestTape(b.units)))
}

// reaching is so many tapes for figures up to one: short ones where they reach, else long ones, no more than there are. What no tape on the ground reaches is taped in parts.
func (b *tasker) reaching(n int, far measure.Length) Need {
	if far <= practice.ShortTape(b.units) {
		return many(ShortTape, n)
	}
	return long(LongTape, max(1, min(n, b.Spec.Crew.Tools.Tapes)), practice.Tape(b.units, min(far, practice.OnGround(b.units).Reach)))
}

// rowString is the line that a row is painted along: of a straight row longer than a usual reel it has to be fetched long enough, past the guy stakes at both ends.
func (b *tasker) rowString() Need {
	if !b.Ground.Straight {
		return one(StringLine)
	}
	first, last := measure.Length(0), measure.Length(0)
	for _, s := range b.Ground.Stakes {
		first, last = min(first, s.Along), max(last, s.Along)
	}
	return long(StringLine, 1, practice.RowString(b.units, last-first))
}

// farthest is the longest figure of some.
func farthest(list []Figure) (far measure.Length) {
	for _, f := range list {
		far = max(far, f.Length)
	}
	return far
}

// paint adds the task that paints dots of one action, with the checks that are tried at once and the gauge stick before it is needed.
func (b *tasker) paint(action Action, dots []ground.Dot, checks []ground.Check) {
	t := Task{Action: action, Of: Scope{Dots: dots}, Who: Who{People: practice.Markers}, Uses: []Need{b.tape(1), one(WhitePaint)}}
	per := float64(practice.MinutesDot)
	try := func(kinds ...ground.CheckKind) {
		for _, c := range checks {
			if slices.Contains(kinds, c.Kind) && slices.ContainsFunc(dots, func(d ground.Dot) bool { return d.Spot == c.To || d.To == c.To && d.How == ground.OnString }) {
				t.Want = append(t.Want, Figure{What: DotCheck, Checks: []ground.Check{c}, Length: c.Distance, Limit: c.Limit})
			}
		}
	}
	switch action {
	case FindByTapes:
		per = practice.MinutesTwoTape
		t.Uses[0].Count, t.Who.People = 2, practice.Markers+1
		try(ground.ThirdTape)
		if len(t.Want) > 0 {
			t.Uses[0].Count = 3
		}
		t.IfOff = cures(FindDotAgain)
	case SetEnd:
		try(ground.FoundRow)
		for _, f := range t.Want {
			t.IfOff = []Cure{{Do: MoveOnString, By: f.Limit}, {Do: FindDotAgain}}
		}
		t.Uses = append(t.Uses, b.rowString(), many(Bricks, 2))
	case SetWidths:
		try(ground.FoundWidth)
		t.IfOff = cures(FindDotAgain)
		t.Uses = append(t.Uses, one(Lath))
	case PaintRow, PaintChords:
		t.Uses = append(t.Uses, b.rowString(), many(Bricks, 2))
	case SquareFirst, PaintByGauge, PaintByBays:
		t.Uses[0].Count = 2
		t.Uses = append(t.Uses, one(Lath))
	case SquareByTriangle:
		t.Uses[0].Count = 2
		for _, d := range dots {
			for _, l := range []measure.Length{d.A, d.B} {
				if d.How == ground.TwoTapes || d.Spot.Kind == ground.AtAhead && l == d.A {
					t.Want = append(t.Want, Figure{What: TriangleSide, Length: l})
				}
			}
		}
	}
	if slices.Contains([]Action{SetWidths, SquareFirst, SquareByTriangle, PaintByBays}, action) {
		b.gauge()
	}
	b.add(per*float64(len(dots)), t)
}

// gauge has one stick made for all widths, once.
func (b *tasker) gauge() {
	if slices.ContainsFunc(b.list, func(t Task) bool { return t.Action == MakeGauge }) {
		return
	}
	laths := practice.Laths(b.units, ground.Widest(b.Ground.Stakes))
	t := Task{Action: MakeGauge, Who: Who{People: 1}, Uses: []Need{many(Lath, laths), one(Pencil)}}
	if laths > 1 {
		t.Uses = append(t.Uses, many(ZipTies, practice.LathTies*(laths-1)))
	}
	for i := range b.Ground.Stations {
		width := ground.Between(b.Ground.Stakes[2*i], b.Ground.Stakes[2*i+1])
		k := slices.IndexFunc(t.Want, func(f Figure) bool { return b.units.Taped(f.Length) == b.units.Taped(width) })
		if k < 0 {
			k = len(t.Want)
			t.Want = append(t.Want, Figure{What: GaugeLength, Length: width})
		}
		t.Want[k].Arches = append(t.Want[k].Arches, i+1)
	}
	t.Uses = append(t.Uses, b.reaching(1, farthest(t.Want)))
	b.add(practice.MinutesLabel*float64(len(t.Want)), t)
}

// checkDots is the hold while the dots are paint.
func (b *tasker) checkDots(checks []ground.Check) {
	tried := map[ground.CheckKind]bool{ground.ThirdTape: true, ground.FoundRow: true, ground.FoundWidth: true}
	var list []ground.Check
	for _, c := range checks {
		if !tried[c.Kind] {
			list = append(list, c)
		}
	}
	b.add(practice.MinutesMeasure*float64(len(list)), Task{Action: CheckDots, Who: Who{People: practice.Markers}, Want: b.checked(list), IfOff: mends(list),
		Uses: []Need{b.tape(1), one(Pencil), one(Lath)}, Hold: true, Record: []Record{Worst}})
}

// checked gathers checks that print alike into figures.
func (b *tasker) checked(list []ground.Check) (out []Figure) {
	for _, g := range ground.Similar(list, b.units) {
		out = append(out, Figure{What: DotCheck, Checks: g, Length: g[0].Distance, Limit: g[0].Limit})
	}
	return out
}

// mends are the remedies of some checks, each once.
func mends(list []ground.Check) (out []Cure) {
	remedy := map[ground.Mend]Remedy{ground.FindAgain: FindDotAgain, ground.MoveAcross: MoveDotAcross, ground.ReadAgain: ReadTapeAgain, ground.SlideRow: SlideTheRow}
	for _, c := range list {
		cure := Cure{Do: remedy[c.Mend], Then: c.Worth}
		if !slices.Contains(out, cure) {
			out = append(out, cure)
		}
	}
	return out
}

// clear returns how far every stake near a buried line is from it: those within twice the distance that is kept.
func (b *tasker) clear(line int) (list []Figure) {
	l := b.Spec.Site.Buried[line]
	for _, s := range b.Ground.Stakes {
		if away := ground.FromLine(s, l); away < 2*l.Keep {
			list = append(list, Figure{What: ClearOfLine, Stakes: []ground.Stake{s}, Line: line, Length: away, Limit: l.Keep})
		}
	}
	return list
}

// calls has what nobody knows looked into, private lines marked, the locating service rung, and waiting dots flagged once all have marked: a flag's wire is
// pushed into the ground.
func (b *tasker) calls() {
	if b.Spec.Site.NotKnown(spec.OverheadLines) {
		b.lookUp(true)
	}
	if !b.drives() {
		return // nothing goes into the ground, not even a flag
	}
	if b.Spec.Site.NotKnown(spec.BuriedLines) {
		b.add(practice.MinutesTalk, Task{Action: AskOwner, Who: Who{People: 1, Grown: true}, Hold: true, Want: []Figure{state(OwnersAnswered)}, IfOff: cures(LeaveBare, Ask), Uses: []Need{one(Phone)}})
	}
	for i := range b.Spec.Site.Buried {
		t := Task{Action: MarkPrivate, Who: Who{People: 1}, Of: Scope{Buried: []int{i}}, Want: b.clear(i), IfOff: cures(LeaveBare, Ask), Uses: []Need{one(Phone)}}
		b.add(practice.MinutesTalk, t)
	}
	b.add(practice.MinutesTalk, Task{Action: CallLocator, Who: Who{People: 1, Grown: true}, Hold: true, Record: []Record{Ticket, FirstDay, LastDay}, Uses: []Need{one(Phone), one(Pencil)},
		Want: []Figure{{What: NoticeGiven, Count: practice.NoticeDays}, state(OwnersAnswered)}, IfOff: cures(WaitOrCall)})
	d := b.Spec.Dates
	if d.Mark.IsZero() || d.Build.IsZero() || d.Build.Sub(d.Mark).Hours() >= 24*practice.FlagDays {
		n := len(b.Ground.Stakes)
		b.add(practice.MinutesLabel*float64(n)/2, Task{Action: FlagDots, Who: Who{People: 1}, Want: []Figure{{What: AsDrawn, Count: n}}, Uses: []Need{many(Flags, n), one(Marker)}})
	}
}
