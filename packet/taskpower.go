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

// layCords says how cords are laid; which lies where stands on the circuit diagram and on the map.
func (w taskWords) layCords() string {
	p := w.plan.Power
	where := "Arches up: lay "
	if w.plan.Crew.Schedule.LaysBeside() {
		where = "Beside standing arches only: lay "
	}
	text := where + cordsSaid(p.Cords, power.Cord.Laid) + " against the feet, outside, spare looped. Tag both ends: number, owner."
	if used(w.plan, crew.RibbonPosts) > 0 {
		text += " Ribbon posts: drive none."
	}
	if w.plan.Spec.Site.Cords.Cover() && slices.ContainsFunc(p.Cords, passesOver) {
		text += " Over the way: under a cord cover."
	}
	if w.plan.Crew.Schedule.LiesOvernight() {
		text += " Sockets covered, off the ground for the night."
	}
	return text
}

// hangCords says how cords go up: by people who do nothing else then, once nothing leans and before the opening is tried under them.
func (w taskWords) hangCords() string {
	text := "Caps counted"
	if slices.ContainsFunc(w.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.TryOpening }) {
		text += ", opening untried"
	}
	cords := w.plan.Power.Cords
	hung := 0
	for _, c := range cords {
		if c.Hung() {
			hung++
		}
	}
	text += ": hang " + cordsSaid(cords, power.Cord.Hung) + " up " + say.Agree(hung, "its leg", "their legs")
	var along []string
	if slices.ContainsFunc(cords, passesOver) && !w.plan.Spec.Site.Cords.Cover() {
		along = append(along, "arch", "ridge")
	}
	last := cordsSaid(cords, func(c power.Cord) bool { return c.Hung() && c.To.At.MidBay() })
	if last != "" {
		along, last = append(along, "row"), ", "+last+" once rows hang"
	}
	if len(along) > 0 {
		text += ", along " + say.Or(along)
	}
	return text + ", tied, joined" + last + "."
}

func passesOver(c power.Cord) bool { return c.Over }

// cordsSaid names those cords of a list that are of some sort.
func cordsSaid(list []power.Cord, are func(power.Cord) bool) string {
	var names []numbered
	for i, c := range list {
		if are(c) {
			names = append(names, numbered{"C", i + 1, ""})
		}
	}
	return inRanges(names)
}

// joinPlugs says how cords and runs are joined before anything is live. Strings are joined to each other as they are hung.
func (w taskWords) joinPlugs() string {
	p := w.plan.Power
	to := "the pipe"
	if w.plan.Spec.Lights.Rows != nil { // whose sockets are between arches too
		to = "pipe or row"
	}
	text := fmt.Sprintf("Prongs whole: join all as drawn but LAST, covers on. Tie every socket to %s, %s up or more, facing down, a loop below.", to, block.Figure(w.units.Inches(practice.JointHigh(w.units))))
	if p.Loose() > 0 {
		text += " Open before the feet: on a brick."
	}
	var boxed []string
	it := "all"
	if len(p.Boxes) > 0 {
		boxed = append(boxed, placesSaid(p.Boxes))
	}
	if p.Supplies > 0 {
		boxed, it = append(boxed, "each supply"), "it, its joints"
	}
	if boxed != nil {
		text += " At " + say.And(boxed) + " instead: " + it + " in a plug box, tied up."
	}
	return text
}

// checkCords says how plugs are looked at.
func (w taskWords) checkCords() string {
	if plugsHigh(w.plan.Power) {
		return "Ten checks: one reads, one touches, crowns by eye."
	}
	return "Ten checks: one reads, one touches."
}

// plugsHigh reports whether a plug or an open end is anywhere but at a foot, or a cord goes up.
func plugsHigh(p power.Plan) bool {
	foot := func(e lights.End) bool { return e.At.Spot == lights.AtFoot || e.At.Spot == lights.AtOutlet }
	return slices.ContainsFunc(p.Cords, func(c power.Cord) bool { return c.Lifts || c.Over }) || slices.ContainsFunc(p.Chains, func(c power.Chain) bool { return !foot(c.From) || !foot(c.To) })
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
	timers := map[string]int{}
	for _, timer := range w.plan.Power.Timers {
		timers[timer.Outlet]++
	}
	var where []string
	one := true // at each outlet
	for _, name := range t.Of.Outlets {
		one = one && timers[name] == 1
		switch n := timers[name]; {
		case n > 1:
			name = fmt.Sprintf("%s %d", name, n)
			fallthrough
		case n == 1:
			where = append(where, name)
		}
	}
	text := "Timers:"
	if n := len(w.plan.Power.Timers); n > 0 {
		into := outletsSaid(where)
		if one {
			into = say.Agree(n, "the outlet", "each outlet")
		}
		most, sockets := 0, ""
		for _, t := range w.plan.Power.Timers {
			most = max(most, t.Plugs)
		}
		if most > 1 {
			sockets = fmt.Sprintf(" of %d sockets", most)
		}
		text = fmt.Sprintf("Plug %s%s, %s or more, into %s.", say.Agree(n, "an outdoor timer", "outdoor timers"), sockets, block.Figure(timerSize(w.plan.Power)), into)
	}
	return text + " Set ON."
}
