package crew

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// absolute returns the length without its sign.
func absolute(l measure.Length) measure.Length { return measure.Length(math.Abs(float64(l))) }

// driving checks the dots, tries one stake, drives the rest and checks the widths.
func (b *builder) driving() {
	left, right, guys := b.rows()
	if len(left)+len(right) == 0 {
		return
	}
	b.add(minutesTalk, Step{Phase: Driving, People: 1, Hold: true,
		Warning: "A stake through a buried line can kill. Paint and flags show a line's middle, not its edge.",
		Do:      "Walk round with the locating ticket in hand and look at every painted or flagged line.",
		Want:    fmt.Sprintf("The ticket is good today, and no white dot lies within %s of a marked line.", b.units.Inches(b.keep())),
		Off:     "Do not drive that stake. Call the organiser, who moves the tunnel or leaves the arch out."})
	b.diagonals()
	b.depthTapes()
	b.pull(slices.Concat(left, right)[0])
	b.drive(left, right, guys)
	b.widths(left, right)
}

// drive drives all the stakes.
func (b *builder) drive(left, right, guys []ground.Stake) {
	legs := slices.Concat(left, right)
	lean := "stand plumb, looked at from two sides"
	if a := b.Spec.ArchOf(legs[0].Arch).Stake.Lean; a > 0 {
		lean = fmt.Sprintf("lean %s away from the opening", measure.Degrees(a))
	} else if a < 0 {
		lean = fmt.Sprintf("lean %s toward the opening", measure.Degrees(-a))
	}
	order := run(left) + ", then " + run(right)
	want := fmt.Sprintf("%s %s", say.Count(len(legs), "leg stake"), lean)
	if len(guys) > 0 {
		order += ", then " + run(guys)
		want += fmt.Sprintf("; %s lean well back from their arch, square to the guy, never toward it", say.Count(len(guys), "guy stake"))
	}
	b.add(b.Spec.Crew.Rates.Stake*float64(len(legs)+len(guys)), Step{Phase: Driving, People: b.drivers(),
		Warning: "Gloves and eye protection on. Nobody holds a stake that is being hit. A bare stake is a spike: put its cap on at once.",
		Do:      fmt.Sprintf("Drive %s, until the tape meets the ground, and cap each at once.", order),
		Want:    want + "; tape at the ground, all capped.",
		Off:     "Pull it out and drive it again beside the hole, on its dot; a stone under it: ask the organiser."})
}

// drivers is how many drive stakes, in pairs: a third of all hands, so that the bench has the rest.
func (b *builder) drivers() int { return max(2, b.hands/3/2*2) }

// run names a row of stakes: all of a few, the ends of many.
func run(row []ground.Stake) string {
	if len(row) > 4 {
		return fmt.Sprintf("%s to %s", row[0].StakeID, row[len(row)-1].StakeID)
	}
	var names []string
	for _, s := range row {
		names = append(names, s.String())
	}
	return say.And(names)
}

// depth is the stakes that go equally deep.
type depth struct {
	depth, showing measure.Length
	stakes         []ground.Stake
	whose          string
}

// depthTapes has the depth marked on every stake.
func (b *builder) depthTapes() {
	var on, showing []string
	for _, d := range b.depths() {
		on = append(on, fmt.Sprintf("%s on %s", b.units.Inches(d.depth), d.whose))
		showing = append(showing, fmt.Sprintf("%s on %s", b.units.Inches(d.showing), d.whose))
	}
	b.add(minutesLabel*float64(len(b.Ground.Stakes)), Step{Phase: Driving, People: 2,
		Do:   fmt.Sprintf("Wrap tape round every stake, measured from its point: %s.", say.And(on)),
		Want: fmt.Sprintf("Bar above the tape: %s.", say.And(showing)),
		Off:  "Another length above the tape: the wrong bar or the wrong end; measure the whole bar."})
}

// keep is how far stakes stay from a located line: 18 to 24 in by state (US 811).
func (b *builder) keep() measure.Length {
	return measure.By(b.units, 24*measure.Inch, 600*measure.Millimetre)
}

func (b *builder) depths() []depth {
	var list []depth
	for _, s := range b.Ground.Stakes {
		k := 0
		for k < len(list) && (list[k].depth != s.Depth || list[k].showing != s.Length-s.Depth) {
			k++
		}
		if k == len(list) {
			list = append(list, depth{depth: s.Depth, showing: s.Length - s.Depth})
		}
		list[k].stakes = append(list[k].stakes, s)
	}
	for i := range list {
		legs, guys := 0, 0
		for _, s := range list[i].stakes {
			if s.Guy {
				guys++
			} else {
				legs++
			}
		}
		var whose []string
		if legs > 0 {
			whose = append(whose, fmt.Sprintf("%d leg stakes", legs))
		}
		if guys > 0 {
			whose = append(whose, fmt.Sprintf("%d guy stakes", guys))
		}
		list[i].whose = say.And(whose)
	}
	return list
}

// diagonals is the hold before driving: every bay and the whole, with what to move when they are off.
func (b *builder) diagonals() {
	all := b.Ground.Diagonals
	if len(all) == 0 {
		return
	}
	if len(all) == 4 && all[0] == all[2] {
		all = all[:2] // of two arches the bay is the whole
	}
	step := Step{Phase: Driving, People: 2, Hold: true, Record: true,
		Warning: "No stake is driven before the diagonals are right: a dot moves in a minute.",
		Do:      "Measure the diagonals between the dots, of every bay both ways. Write the worst.",
		Want:    fmt.Sprintf("Each within %s.", b.units.Inches(b.limit)),
		Off:     "Measure the widths and the rows again, then find the dot that is off with its two tapes."}
	bays := all[:min(len(all), 2*(b.Spec.Tunnel.Arches-1))]
	step.Readings = b.bays(bays)
	for _, d := range all[len(bays):] {
		step.Readings = append(step.Readings, Reading{fmt.Sprintf("%v to %v", d.From, d.To), b.units.Tape(d.Distance)})
	}
	if d, slide, ok := b.slide(); ok {
		step.Off = fmt.Sprintf("The two of a pair differ: slide the right row along its line, toward arch 1 if %s to %s is the longer, else away, %s for each %s of difference. Both off alike: measure the widths.",
			d.From, d.To, b.units.Inches(slide), b.units.Inches(b.unit()))
	}
	b.add(minutesMeasure*float64(len(all)), step)
}

// bays lists the diagonals of the bays, those that are alike and follow each other once: from the left stake to the next right one, and the other way.
func (b *builder) bays(diagonals []ground.Diagonal) []Reading {
	var list []Reading
	for first, i := 0, 0; i+1 < len(diagonals); i += 2 {
		one, other := b.units.Tape(diagonals[i].Distance), b.units.Tape(diagonals[i+1].Distance)
		if i+3 < len(diagonals) && one == b.units.Tape(diagonals[i+2].Distance) && other == b.units.Tape(diagonals[i+3].Distance) {
			continue
		}
		switch name := say.Numbered("bay", say.From(first/2+1, i/2+1)); {
		case first == i:
			for _, d := range diagonals[i : i+2] {
				list = append(list, Reading{fmt.Sprintf("%v to %v", d.From, d.To), b.units.Tape(d.Distance)})
			}
		case one == other:
			list = append(list, Reading{name, one})
		default:
			list = append(list, Reading{name + ", L to next R", one}, Reading{name + ", R to next L", other})
		}
		first = i + 2
	}
	return list
}

// unit is a length of one as people say it: an inch, or ten millimetres.
func (b *builder) unit() measure.Length {
	return measure.By(b.units, measure.Inch, 10*measure.Millimetre)
}

// slide is how far the right row moves along its line for each unit of difference between the diagonals of the whole, and the
// diagonal that grows when the row is too far ahead. A row that slides by s makes one diagonal longer and the other shorter by s·along/diagonal each.
func (b *builder) slide() (ground.Diagonal, measure.Length, bool) {
	all := b.Ground.Diagonals
	if !b.Ground.Straight || len(all) < 2 {
		return ground.Diagonal{}, 0, false
	}
	stakes := map[ground.StakeID]ground.Stake{}
	for _, s := range b.Ground.Stakes {
		stakes[s.StakeID] = s
	}
	for _, d := range all[len(all)-2:] {
		from, to := stakes[d.From], stakes[d.To]
		if along := to.Along - from.Along; from.Side == spec.Left && to.Side == spec.Right && along > 0 {
			return d, b.unit() * d.Distance / (2 * along), true
		}
	}
	return ground.Diagonal{}, 0, false
}

// pull tries the first stake by hand, with the moment that the gusts it is to bear ask of it at the ground; where none is worked out, with half as much again as
// the pipe asks in still air, a margin of our own.
func (b *builder) pull(s ground.Stake) {
	moment := b.Asks
	for _, a := range b.Arches {
		if a.Kind != nil {
			moment = max(moment, 1.5*math.Abs(a.FootMoment))
		}
	}
	if moment == 0 {
		return
	}
	up := measure.By(b.units, min(24*measure.Inch, s.Length-s.Depth-measure.Inch), min(600*measure.Millimetre, s.Length-s.Depth-20*measure.Millimetre))
	if up <= 0 {
		return
	}
	force := measure.Force(moment / up.Metres())
	inch := b.units.Inches(b.unit())
	b.add(minutesTalk, Step{Phase: Driving, People: 2, Hold: true,
		Do:   fmt.Sprintf("Drive %s alone. Hook a luggage scale on it %s above the ground and pull sideways, away from the opening, to %s.", s.StakeID, b.units.Inches(up), b.units.Force(force)),
		Want: fmt.Sprintf("The stake moves less than %s at the hook and springs back.", inch),
		Off:  "Drive it deeper by a hand and try again. If it still moves, stop: the organiser gets longer stakes for the whole tunnel."})
}

// widths is the check after driving: every pair of stakes at the ground.
func (b *builder) widths(left, right []ground.Stake) {
	step := Step{Phase: Driving, People: 2, Hold: true, Record: true,
		Do:   "Measure across each arch at the ground, level, stake middle to middle. Write the worst.",
		Want: fmt.Sprintf("Each within %s.", b.units.Inches(b.limit)),
		Off:  "Pull the stake that is off its dot and drive it again; a leaning one is not bent straight."}
	stand := b.standing()
	for first, i := 0, 0; i < len(stand); i++ {
		span := b.units.Tape(stand[i].Span)
		if i+1 < len(stand) && b.units.Tape(stand[i+1].Span) == span && stand[i+1].Number == stand[i].Number+1 {
			continue
		}
		step.Readings = append(step.Readings, Reading{say.Numbered("arch", say.From(stand[first].Number, stand[i].Number)), span})
		first = i + 1
	}
	if len(stand) > 0 {
		b.add(minutesMeasure*2*float64(len(stand)), step)
	}
}
