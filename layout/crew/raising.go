package crew

import (
	"fmt"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// checkEvery is how many bays lie between running checks of the crowns.
const checkEvery = 3

// raising stands the arches up one by one. The first is measured before the second is touched, bay 1 is tried before the other ridge
// pieces are cut, and the crowns are checked by running distance so that small gaps in sockets do not add up.
func (b *builder) raising() {
	stand := b.standing()
	if len(stand) == 0 {
		return
	}
	b.overhead()
	first := stand[0]
	b.assemble(first)
	b.bend(first, "A bent arch is a spring: keep your face out of its plane. Eye protection and gloves on, nobody underneath, no raising in gusts or with thunder about.")
	if !b.guy(first) && len(stand) > 1 {
		b.add(0, Step{Phase: Raising, People: 1,
			Do:   fmt.Sprintf("Name one person who holds arch %d upright and does nothing else until the last arch is joined.", first.Number),
			Want: "A name, said aloud. Nothing else holds the tunnel lengthwise: it has no guys.",
			Off:  "Raise no second arch."})
	}
	b.measureFirst(first)
	if len(stand) > 1 {
		b.second(stand)
		b.others(stand[2:])
	}
	b.finish(stand)
}

// standing lists the arches that have a shape.
func (b *builder) standing() []arch.Arch {
	var list []arch.Arch
	for _, a := range b.Arches {
		if a.Kind != nil {
			list = append(list, a)
		}
	}
	return list
}

func (b *builder) overhead() {
	for _, line := range b.Spec.Site.Overhead {
		b.add(minutesMeasure, Step{Phase: Raising, People: 1, Hold: true,
			Warning: "Pipe, ladder and people stay away from overhead lines. Nobody measures up to a wire.",
			Do:      fmt.Sprintf("Point out the %s to everyone and name one person who watches it while pipe stands up.", line.Name),
			Want:    fmt.Sprintf("Nothing comes nearer to it than %s.", b.units.Room(line.Keep)),
			Off:     "Stop and ask the organiser; the line's owner alone says what may be done near it."})
	}
}

func (b *builder) assemble(a arch.Arch) {
	if a.Kind.Spec.OneStick {
		return
	}
	b.add(minutesLabel*4, Step{Phase: Raising, Part: Together, People: 2,
		Do: fmt.Sprintf("Lay arch %d flat beside its stakes and drive both legs into the %s with a rubber mallet. Mark %s from each pipe's end first: the mark must reach the socket's mouth.",
			a.Number, b.Spec.CrownFitting(a.Number), b.units.Cut(a.Kind.Spec.Pipe.Socket)),
		Want: "Both marks at the sockets' mouths.",
		Off:  "Twist, wipe, drive again: a socket not home makes the arch crooked."})
}

func (b *builder) bend(a arch.Arch, warning string) {
	l, r := fmt.Sprintf("L%d", a.Number), fmt.Sprintf("R%d", a.Number)
	b.add(b.Spec.Crew.Rates.Raise, Step{Phase: Raising, Part: Bent, People: raisers, Warning: warning,
		Do:   fmt.Sprintf("One at each leg, one at the crown. Slip the left leg over %s, then walk the right leg to %s, bending slowly, and slip it down. A cap comes off only as the pipe comes to it. Let go when both feet are on the ground.", l, r),
		Want: "Both feet on the ground, names facing in, caps in the bucket.",
		Off:  "Lift it off, wipe the stake, never hammer. A crack or white line: walk it back, take another stick."})
}

// guy ties an arch's guys, where it has any.
func (b *builder) guy(a arch.Arch) bool {
	names := b.guyStakes(a.Number)
	if len(names) == 0 {
		return false
	}
	b.add(b.Spec.Crew.Rates.Guy*float64(len(names)), Step{Phase: Raising, Part: Guyed, People: 2,
		Do:   b.hold(a.Number) + ", one side after the other, and flag them.",
		Want: "Plumb seen from the side; guys just tight, not humming.",
		Off:  "Slacken one side, draw in the other."})
	return true
}

// hold says how an arch is held lengthwise: its guys, and its braces once the neighbour stands.
func (b *builder) hold(number int) string {
	var guys, pegs []string
	for _, s := range b.Ground.Stakes {
		switch {
		case !s.Guy || s.Arch != number:
		case s.Bay > 0:
			pegs = append(pegs, s.String())
		default:
			guys = append(guys, s.String())
		}
	}
	var parts []string
	if len(guys) > 0 {
		parts = append(parts, fmt.Sprintf("tie guys to both legs of arch %d at %s above the ground and to %s", number, b.units.Tape(b.Spec.Guys.From), say.And(guys)))
	}
	if len(pegs) > 0 {
		fix := "clamp a brace to each leg"
		if b.Spec.Braces.Line {
			fix = "tie webbing to each leg"
		}
		parts = append(parts, fmt.Sprintf("%s of arch %d at %s above the ground and to %s", fix, number, b.units.Tape(b.Spec.Braces.From), say.And(pegs)))
	}
	return say.Capital(strings.Join(parts, "; "))
}

// guyBetween ties an arch's guys, unless it is the last one, whose guys end the work.
func (b *builder) guyBetween(a arch.Arch, stand []arch.Arch) {
	if a.Number != stand[len(stand)-1].Number {
		b.guy(a)
	}
}

func (b *builder) measureFirst(a arch.Arch) {
	band := a.GiveOrTake(b.units)
	if a.Crown > 0 {
		b.add(minutesMeasure*4, Step{Phase: Raising, Part: Measured, People: 2, Hold: true,
			Do: fmt.Sprintf("Measure arch %d before the next is touched: from a string between its two feet up to the middle of the crown fitting.", a.Number),
			Want: fmt.Sprintf("Crown %s, give or take %s. Feet %s, within %s. Clear under the crown %s or more.",
				b.units.Inches(a.Crown), b.units.Inches(band), b.units.Inches(a.Span), b.units.Inches(b.limit), b.units.Inches(a.Clear-band)),
			Off: "Too low: feet too far apart or leaning out; too high: too near or leaning in. Drive that stake again. Still off: stop, ask."})
	}
}

// second stands arch 2, tries the first ridge piece and has the rest cut and wound.
func (b *builder) second(stand []arch.Arch) {
	a := stand[1]
	step := Step{Phase: Raising, Part: Joined, People: raisers,
		Do:   fmt.Sprintf("Raise arch %d the same way: crown together, left foot on L%d, right foot on R%d, caps off as the pipe comes.", a.Number, a.Number, a.Number),
		Want: fmt.Sprintf("Both feet on the ground; arch %d plumb.", a.Number),
		Off:  "A crack or a white line in the bend: walk it back and take another stick."}
	if len(b.Ridge) == 0 {
		b.add(b.Spec.Crew.Rates.Raise, step)
		b.guyBetween(a, stand)
		return
	}
	r := b.Ridge[0]
	step.Warning = "Use a stepladder on firm ground with one person at its foot. Never lean a ladder on pipe."
	step.Do += fmt.Sprintf(" Put ridge piece %d into the crown of arch %d first, then spring it into arch %d, and drive both ends home. Measure bay %d at the crowns, middle of fitting to middle of fitting.",
		r.Bay, a.Number, stand[0].Number, r.Bay)
	step.Want = fmt.Sprintf("Crown to crown %s, within %s; arch %d plumb.", b.units.Tape(r.Centres), b.units.Inches(b.limit/2), a.Number)
	step.Off = "Sockets home and still off: cut every other ridge piece by that much shorter or longer."
	step.Hold = true
	b.add(b.Spec.Crew.Rates.Raise+b.Spec.Crew.Rates.Ridge+minutesMeasure*3, step)
	b.guyBetween(a, stand)
	rest := b.Ridge[1:]
	if len(rest) > 0 {
		b.add(b.Spec.Crew.Rates.Cut*float64(len(rest)), Step{Phase: Cutting, People: 2,
			Do:       fmt.Sprintf("Eye protection on, pipe clamped. Cut the other %s, each longer or shorter by what bay %d has taught.", say.Count(len(rest), "ridge piece"), r.Bay),
			Readings: b.cuts(rest),
			Want:     "Each named at both ends, square, burrs scraped off.",
			Off:      "Too short: keep it for a bay that asks less, and cut another."})
	}
	for _, k := range b.windings(true) {
		b.wind(k)
	}
}

// cuts lists ridge pieces by length.
func (b *builder) cuts(list []RidgePiece) []Reading {
	var readings []Reading
	first := 0
	for i := range list {
		if cut := b.units.Cut(list[i].Cut); i+1 == len(list) || b.units.Cut(list[i+1].Cut) != cut {
			readings = append(readings, Reading{say.Numbered("bay", say.From(list[first].Bay, list[i].Bay)), cut})
			first = i + 1
		}
	}
	return readings
}

// others stands the rest, with a check of the crowns' running distance after each third bay and at the end, so that small gaps in sockets
// do not add up. Arches on the way that have guys of their own get them at once.
func (b *builder) others(stand []arch.Arch) {
	n := len(stand)
	if n == 0 {
		return
	}
	rates := b.Spec.Crew.Rates
	step := Step{Phase: Raising, Part: Row, People: raisers * max(1, min(2, b.hands/(2*raisers))),
		Do:   fmt.Sprintf("Raise %s, the same way: crown together, left foot, right foot, caps off as the pipe comes", say.Numbered("arch", say.From(stand[0].Number, stand[n-1].Number))),
		Want: "Every socket home, every arch plumb.",
		Off:  "Never go on past a socket that is not home."}
	work := rates.Raise * float64(n)
	if len(b.Ridge) > 0 {
		step.Do += ", then its ridge piece into the new crown first"
		work += rates.Ridge * float64(n)
	}
	step.Do += "."
	if n > 1 {
		step.Do += " One arch at a time."
	}
	if step.People > raisers {
		step.Do += " One team puts the next arch together while the other stands one up."
	}
	var guyed []string
	for i, a := range stand {
		last := i == n-1
		if guys := b.guyStakes(a.Number); len(guys) > 0 && !last {
			guyed = append(guyed, fmt.Sprint(a.Number))
			work += rates.Guy * float64(len(guys))
		}
		if run, ok := b.running(a.Number); ok && ((a.Number-1)%checkEvery == 0 || last) {
			step.Crowns = append(step.Crowns, a.Number)
			step.Readings = append(step.Readings, Reading{fmt.Sprintf("crown %d", a.Number), b.units.Tape(run)})
			work += minutesMeasure * 2
		}
	}
	if len(guyed) > 0 {
		step.Do += fmt.Sprintf(" Guy or brace arch %s at once, before the next: both legs, to the stakes of its number, just tight, flagged.", say.And(guyed))
	}
	if len(step.Readings) > 0 {
		step.Record = true
		step.Do += " At each crown named below stop, and lay the tape along the ridge from the middle of crown 1 to its middle."
		step.Want += fmt.Sprintf(" Running distances within %s.", b.units.Inches(b.limit))
		step.Off = "Long: drive sockets home, last bay first, or trim the next piece. Short: leave a gap in the next socket."
	}
	b.add(work, step)
}

// guyStakes names the guy stakes of an arch.
func (b *builder) guyStakes(number int) []string {
	var names []string
	for _, s := range b.Ground.Stakes {
		if s.Guy && s.Arch == number {
			names = append(names, s.String())
		}
	}
	return names
}

// running is the distance along the ridge from crown 1 to another, and false where a bay between has no ridge piece.
func (b *builder) running(number int) (measure.Length, bool) {
	sum, bays := measure.Length(0), 0
	for _, r := range b.Ridge {
		if r.Bay < number {
			sum += r.Centres
			bays++
		}
	}
	return sum, bays > 0 && bays == number-1
}

// finish holds what stands: joints, guys, caps.
func (b *builder) finish(stand []arch.Arch) {
	legs := 0
	guys := []ground.Stake(nil)
	for _, s := range b.Ground.Stakes {
		if s.Guy {
			guys = append(guys, s)
		} else {
			legs++
		}
	}
	switch b.Spec.Arch.Joints {
	case spec.Pinned:
		b.add(minutesLabel*float64(len(stand)*4), Step{Phase: Raising, People: 2,
			Do: "Drive one screw through every socket, from the outside, clear of where people walk.", Want: "No point stands out on the inside.", Off: "File it flush."})
	case spec.Glued:
		b.add(minutesLabel*float64(len(stand)*4), Step{Phase: Raising, People: 2, Warning: "Primer and cement burn and their vapour harms: open air, no flame, gloves.",
			Do: "Prime and cement the sockets one at a time, as the label says.", Want: "Held still as long as the label says.", Off: "A cemented joint does not come apart: cut it out."})
	}
	step := Step{Phase: Raising, Part: Counted, People: 2, Hold: true,
		Do:   "Look along the ridge and both rows of feet from each end; count the caps.",
		Want: say.Count(legs, "cap") + " in the bucket",
		Off:  "A cap missing: a stake stands bare, find it."}
	work := float64(minutesTalk)
	if len(guys) > 0 {
		step.Do = "Look along the ridge and both rows of feet from each end; tighten the guys evenly; count the caps."
		step.Want += fmt.Sprintf(", %s still capped; no arch leans along the tunnel", say.Count(len(guys), "guy stake"))
		step.Off = "It leans: draw in the guys behind it. " + step.Off
	}
	last := stand[len(stand)-1].Number
	if names := b.guyStakes(last); len(names) > 0 && len(stand) > 1 {
		step.Do = b.hold(last) + ". " + step.Do
		work += b.Spec.Crew.Rates.Guy * float64(len(names))
	}
	step.Want += "."
	b.add(work, step)
}
