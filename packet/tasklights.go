package packet

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// doingLights says what is done with strings and power, at opening nights too; lights and raise show the winding and the hanging in words of their own.
var doingLights = map[crew.Action]func(taskWords, crew.Task) string{
	crew.TestStrings: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Look over, plug in each of the %s and spares alone.", say.Count(len(t.Of.Strings), "string"))
	},
	crew.TagStrings: plainly("Write S-numbers, as overleaf, on tags at the prongs. Alike: any order."),
	crew.TryWrapped: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Flex each wrapped leg a little, look along it. Light all of it %d minutes on an outlet that trips.", t.Want[0].Minutes)
	},
	crew.FlagRows: plainly("Rows: two-knot ribbons on"),

	crew.TestOutlets: func(w taskWords, t crew.Task) string {
		timer := ""
		if slices.ContainsFunc(w.plan.Spec.Site.Outlets, func(o spec.Outlet) bool { return o.Timer > 0 && slices.Contains(t.Of.Outlets, o.Name) }) {
			timer = " (timer there: ON)"
		}
		return "First a lamp in " + say.Agree(len(t.Of.Outlets), "the outlet", "each outlet") + timer + ": out at TEST, lit at RESET. Unplug it."
	},
	crew.LayCords:   func(w taskWords, _ crew.Task) string { return w.layCords() },
	crew.HangCords:  func(w taskWords, _ crew.Task) string { return w.hangCords() },
	crew.JoinPlugs:  func(w taskWords, _ crew.Task) string { return w.joinPlugs() },
	crew.CheckCords: func(w taskWords, _ crew.Task) string { return w.checkCords() },
	crew.PlugRuns: func(w taskWords, _ crew.Task) string {
		return say.Agree(len(w.plan.Power.Feeders), "Cord", "Cords") + " into the " + say.Agree(len(w.plan.Power.Timers), "timer", "timers") + ", weather covers shut. Look along every run."
	},
	crew.FeelPlugs: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Feel covers in reach after %d minutes lit.", t.Want[0].Minutes)
	},
	crew.TestLoaded: plainly("Press each TEST: its runs dark. RESET: lit. OFF, ways barred."),
	crew.SetTimers:  func(w taskWords, t crew.Task) string { return w.setTimers(t) },
	crew.DarkWalk:   plainly("After dark: ON, walk through both ways."),

	crew.NoonCall: plainly("Read the forecast gusts at noon. Ring round: OPEN, CLOSED or LAY FLAT."),
	crew.NightTest: func(w taskWords, t crew.Task) string {
		return "Timers ON, clocks right. Press TEST, RESET: " + outletsSaid(w.resetAt(t.Of.Outlets)) + "."
	},
	crew.NightStakes: func(w taskWords, _ crew.Task) string {
		held := heldBy(w.plan)
		return "By daylight, push every " + say.And(append(standsOn(w.plan), holders{braces: held.braces}.pick("", "brace")...)) + "."
	},
	crew.NightPipe: func(_ taskWords, t crew.Task) string {
		stick := "Opening sticks as a T, one upright, through every arch."
		if at := figureOf(t, crew.CrownKept).Arches; at != nil {
			stick = "Crown stick upright at " + say.Numbered("crown", at) + "."
		}
		return "By daylight, look along every pipe. " + stick
	},
	crew.NightLights: plainly("Look at lights, plugs, cords. Timers to AUTO."),
	crew.NightWay:    taskWords.nightWay,
	crew.NightClose:  plainly("All out."),

	crew.Unplug: func(_ taskWords, t crew.Task) string {
		return "Light it, timers ON; coloured tape on each dark string. Unplug all at " + outletsSaid(t.Of.Outlets) + "."
	},
	crew.CoilCords: func(w taskWords, _ crew.Task) string {
		boxed, nets, fed := "", "", ""
		if w.plan.Power.Supplies > 0 {
			boxed, fed = " supplies in their boxes,", " On each supply write which strings it fed."
		}
		if used(w.plan, crew.BarrierNet) > 0 {
			nets = ", nets"
		}
		return "Cords, their covers," + boxed + " timers, lanterns" + nets + " off: cut cord ties only. Coil loosely, far end first." + fed
	},
	crew.TakeStrings: func(w taskWords, _ crew.Task) string {
		stay := ""
		if len(w.plan.Lights.Wraps) > 0 {
			stay = ", what is wound stays"
		}
		return w.hung() + " off, with covers" + stay + ": cut ties, never wires. Coil each, check its S-number."
	},
	crew.Unwind: func(w taskWords, _ crew.Task) string {
		then := ""
		if tied := w.tiedOn(); tied != "" { // guys are clamped under the wire
			then = " " + say.Capital(tied) + " off."
		}
		if w.coupled() && w.woundOver() {
			screws := ""
			if w.plan.Spec.Arch.Joints == spec.Pinned {
				screws = "screws out, "
			}
			then += " Then " + screws + "twist couplings apart."
		}
		return w.wound() + " strings: unwind on trestles, ties cut, socket end first. Never pull. Renew names." + then
	},
}

// resetAt names where the ground-fault protection of outlets is tried: where it is reset, a blank where nobody has told.
func (w taskWords) resetAt(outlets []string) (names []string) {
	for _, name := range outlets {
		for _, o := range w.plan.Spec.Site.Outlets {
			if o.Name == name {
				names = append(names, name+" ("+cmp.Or(o.ResetAt, "button at ____")+")")
			}
		}
	}
	return names
}

func (w taskWords) nightWay(t crew.Task) string {
	walk, lanterns := "Walk through.", "Set a lantern at each end."
	for _, n := range t.Uses {
		switch {
		case n.Thing == crew.Mats:
			walk = "Walk through, mats on mud."
		case n.Thing == crew.Lanterns && n.Count > 2:
			lanterns = fmt.Sprintf("Set %d lanterns outside the legs, from end to end.", n.Count)
		}
	}
	return walk + " " + lanterns
}

// hung names what hangs from arch to arch.
func (w taskWords) hung() string {
	switch rows, drops := len(w.plan.Lights.Rows), len(w.plan.Lights.Drops); {
	case drops == 0:
		return "Rows"
	case rows == 0:
		return "Drops"
	}
	return "Rows and drops"
}

// wound names what strings are wound on.
func (w taskWords) wound() string {
	ridge := slices.ContainsFunc(w.plan.Lights.Wraps, ofRidge)
	keeps := crew.KeepsOn(w.plan.Spec)
	switch legs := slices.ContainsFunc(w.plan.Lights.Wraps, func(wrap lights.Wrap) bool { return !ofRidge(wrap) && !(keeps && wrap.On.IsLeg()) }); {
	case !legs:
		return "Ridge"
	case !ridge:
		return "Leg"
	}
	return "Leg and ridge"
}

func ofRidge(wrap lights.Wrap) bool { return wrap.On.Kind == lights.Ridge }

// outletsSaid names a few outlets, or counts them.
func outletsSaid(names []string) string {
	const few = 3
	if len(names) > few {
		return fmt.Sprintf("each of the %d outlets", len(names))
	}
	return say.And(names)
}
