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
		text = fmt.Sprintf("Lay the cords by number, C1 to C%d", n)
	}
	text += ", outlet outward, outside the feet. Number both ends. Fold spare length in long loops, never a coil."
	over := slices.ContainsFunc(p.Cords, func(c power.Cord) bool { return c.Over })
	switch {
	case over && w.plan.Spec.Site.Cords.Cover:
		text += " To a crown: up the leg, tied on. Over the way: under a cord cover."
	case over:
		text += " To a crown or over the way: up the leg, along the arch, tied on."
	default:
		text += " To a crown: up the leg, tied on."
	}
	return text
}

// joinPlugs says how cords and runs are joined before anything is live.
func (w taskWords) joinPlugs() string {
	p := w.plan.Power
	text := fmt.Sprintf("Join all as drawn, covers on. Tie joints %s up or more, mouth down, cord lower.", block.Figure(w.units.Inches(practice.JointHigh(w.units))))
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
	for _, o := range w.plan.Spec.Site.Outlets {
		if !slices.Contains(t.Of.Outlets, o.Name) {
			continue
		}
		timers, cords := 0, 0
		for _, timer := range w.plan.Power.Timers {
			if timer.Outlet == o.Name {
				timers++
			}
		}
		for _, d := range w.plan.Power.Feeders {
			if d.Outlet == o.Name {
				cords++
			}
		}
		switch {
		case timers == 0:
			there = append(there, o.Name)
		case timers == cords && timers > 1:
			bought = append(bought, o.Name+" (one in each socket)")
		case timers == 1 && cords > 1:
			bought = append(bought, fmt.Sprintf("%s (%d plugs)", o.Name, cords))
		case timers < cords:
			bought = append(bought, fmt.Sprintf("%s (%d for %d plugs)", o.Name, timers, cords))
		default:
			bought = append(bought, o.Name)
		}
	}
	text := "Set timers"
	if n := len(w.plan.Power.Timers); n > 0 {
		text = fmt.Sprintf("Plug in %s, %s or more: %s", say.Count(n, "timer"), block.Figure(timerSize(w.plan.Power)), outletsSaid(bought))
	}
	if len(there) > 0 {
		text += ", there already at " + outletsSaid(there)
	}
	return text + fmt.Sprintf(". On ______, off ______, %s minutes after closing. Keep ON till the dark walk.", block.Figure(fmt.Sprint(practice.TimerAfter)))
}
