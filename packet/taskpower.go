package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// layCords says how cords are laid; which lies where stands on the circuit diagram.
func (w taskWords) layCords() string {
	p := w.plan.Power
	text := "Lay C1"
	if n := len(p.Cords); n > 1 {
		text = fmt.Sprintf("Lay C1 to C%d", n)
	}
	text += " outside the feet, spare in loose loops; number and owner on both ends."
	has := func(is func(power.Cord) bool) bool { return slices.ContainsFunc(p.Cords, is) }
	cover := w.plan.Spec.Site.Cords.Cover
	over, lifts := has(func(c power.Cord) bool { return c.Over }), has(func(c power.Cord) bool { return c.Lifts })
	switch {
	case over && !cover:
		where := "Over the way"
		if lifts {
			where = "To a crown or over the way"
		}
		along := "the arch" // past the opening; past a side way along the ridge
		for bay := range w.plan.Arches {
			if w.plan.Spec.Passed(bay) {
				along = "arch or ridge"
			}
		}
		text += " " + where + ": up the leg, along " + along + ", tied on, by daylight."
	case lifts:
		text += " To a crown: up the leg, tied on, by daylight."
	}
	if over && cover {
		text += " Over the way: under a cord cover."
	}
	return text
}

// joinPlugs says how cords and runs are joined before anything is live.
func (w taskWords) joinPlugs() string {
	p := w.plan.Power
	rest := "all"
	for _, t := range w.plan.Crew.Tasks {
		if figureOf(t, crew.Plugged).What == crew.Plugged {
			rest = "all (crowns: the raising crew did)"
		}
	}
	text := fmt.Sprintf("Join %s as drawn, covers on. Tie joints to the leg, %s up or more, sockets down, a loop below.", rest, block.Figure(w.units.Inches(practice.JointHigh(w.units))))
	if len(p.Boxes) > 0 {
		text += " In a plug box too: " + placesSaid(p.Boxes) + "."
	}
	return text
}

// placesSaid lists places, many by their number.
func placesSaid(list []lights.Place) string {
	const few = 6
	if len(list) > few {
		return fmt.Sprintf("the %d places where three or more plugs meet", len(list))
	}
	var names []string
	for _, p := range list {
		names = append(names, draw.PlaceName(p))
	}
	return say.And(names)
}

// timerSize is what the largest timer to buy carries.
func timerSize(p power.Plan) string {
	amps := measure.Current(0)
	for _, timer := range p.Timers {
		amps = max(amps, timer.Size)
	}
	return measure.Amps(amps)
}

// setTimers says which timers go where, and when they switch.
func (w taskWords) setTimers(t crew.Task) string {
	var bought, there []string
	plain := true // one timer at each outlet
	for _, name := range t.Of.Outlets {
		timers := 0
		for _, timer := range w.plan.Power.Timers {
			if timer.Outlet == name {
				timers++
			}
		}
		plain = plain && timers == 1
		switch timers {
		case 0:
			there = append(there, name)
		case 1:
			bought = append(bought, name)
		default:
			bought = append(bought, fmt.Sprintf("%s (%d)", name, timers))
		}
	}
	text := "Set timers"
	switch n := len(w.plan.Power.Timers); {
	case n > 0 && plain:
		text = fmt.Sprintf("Put a timer, %s or more, with a socket for each cord, into each outlet", block.Figure(timerSize(w.plan.Power)))
	case n > 0:
		text = fmt.Sprintf("Plug in %s, %s or more: %s", say.Count(n, "timer"), block.Figure(timerSize(w.plan.Power)), outletsSaid(bought))
	}
	if len(there) > 0 {
		text += ", there already at " + outletsSaid(there)
	}
	return text + fmt.Sprintf(". On ______, off ______ (%d minutes after closing). Set ON till dark.", practice.TimerAfter)
}
