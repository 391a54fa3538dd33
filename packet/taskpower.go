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
	text += ", outlet outward, outside the feet. Number both ends. Spare length goes out and back, never in a coil. To a crown: up the leg, tied on."
	over := slices.ContainsFunc(p.Cords, func(c power.Cord) bool { return c.Over })
	switch {
	case over && w.plan.Spec.Site.Cords.Cover:
		text += " Over the way: under a cord cover."
	case over:
		text += " Over the way: along the arch, tied on."
	}
	text += fmt.Sprintf(" Tie each joint %s or more up, mouth down, its cord lower.", block.Figure(w.units.Inches(practice.JointHigh(w.units))))
	if len(p.Boxes) > 0 {
		text += " In a box: " + placesSaid(p.Boxes) + "."
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

// setTimers says where timers go and when they switch off.
func (w taskWords) setTimers(t crew.Task) string {
	var bought, there []string
	for _, o := range w.plan.Spec.Site.Outlets {
		switch {
		case !slices.Contains(t.Of.Outlets, o.Name):
		case o.Timer > 0:
			there = append(there, o.Name)
		default:
			bought = append(bought, o.Name)
		}
	}
	text := "Timer"
	if len(bought) > 0 {
		text += fmt.Sprintf(", %s or more, %s", block.Figure(timerSize(w.plan.Power)), outletsSaid(bought))
	}
	if len(there) > 0 {
		text += ", there already at " + outletsSaid(there)
	}
	return text + fmt.Sprintf(": off %s minutes after closing.", block.Figure(fmt.Sprint(practice.TimerAfter)))
}
