package packet

import (
	"fmt"

	"hoopwright/layout/crew"
	"hoopwright/layout/say"
)

// doingLights says what is done with strings and power, at opening nights too.
var doingLights = map[crew.Action]func(taskWords, crew.Task) string{
	crew.TestStrings: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Plug in each of the %s by itself. Look along it. Read its label.", say.Count(len(t.Of.Strings), "string"))
	},
	crew.TagStrings:  plainly("Tie its tag on each string, at the prongs."),
	crew.FlagRows:    plainly("Flag the rows' heights on every leg with ribbon, along the pipe from the foot end."),
	crew.WindPipe:    taskWords.windPipe,
	crew.WindInPlace: plainly("Wind the first ridge piece where it hangs, from the ladder. Never bring it down again."),
	crew.HangRows: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Hang the rows of the %s wall from the middle arch outwards, a tie at every arch.", t.Of.Walls[0])
	},
	crew.HangDrops: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Hang the %s where the unfolded picture names them.", say.Count(len(t.Of.Drops), "drop string"))
	},
	crew.TryOpening: plainly("Walk through with one stick held upright and one held across."),

	crew.TestOutlets: plainly("A lamp into each outlet in turn: press TEST, RESET."),
	crew.LayCords:    func(w taskWords, _ crew.Task) string { return w.layCords() },
	crew.JoinPlugs:   func(w taskWords, _ crew.Task) string { return w.joinPlugs() },
	crew.CheckCords:  plainly("Ten checks before power: one reads, one touches."),
	crew.PlugRuns:    plainly("Outlet by outlet: cords in, cover shut, look along its runs."),
	crew.FeelPlugs:   plainly("All lit, by daylight: feel every plug."),
	crew.TestLoaded:  plainly("All lit: press TEST at each outlet, then RESET."),
	crew.SetTimers:   func(w taskWords, t crew.Task) string { return w.setTimers(t) },
	crew.DarkWalk:    plainly("After dark: walk through from each end."),

	crew.NoonCall: plainly("Read the forecast gusts at noon. Ring round: OPEN, CLOSED or LAY FLAT."),
	crew.NightTest: func(_ taskWords, t crew.Task) string {
		return "Press TEST, then RESET, at " + outletsSaid(t.Of.Outlets) + ", a lamp in it."
	},
	crew.NightStakes: func(w taskWords, _ crew.Task) string {
		return "Push every " + say.And(append([]string{"stake"}, heldBy(w.plan).pick("guy", "brace")...)) + " by hand."
	},
	crew.NightPipe:   plainly("Look along every pipe, socket and crown."),
	crew.NightLights: plainly("Look at lights, plugs and cords."),
	crew.NightWay:    plainly("Walk through. Set a lantern at each end."),
	crew.NightClose:  plainly("To shut: walk people out, count the last."),

	crew.Unplug:      func(_ taskWords, t crew.Task) string { return "Unplug first, at " + outletsSaid(t.Of.Outlets) + "." },
	crew.CoilCords:   plainly("Take cords and three-ways from the far end to the outlet. Look along each. Coil it loosely. Label its plug."),
	crew.TakeStrings: plainly("Cut ties, never wires. Coil drops and rows as they come. Tag each with its place."),
	crew.Unwind:      plainly("Unwind wraps on trestles, once the pipe lies straight, toward the plug. Do not pull."),
}

// outletsSaid names a few outlets, or counts them.
func outletsSaid(names []string) string {
	const few = 3
	if len(names) > few {
		return fmt.Sprintf("each of the %d outlets", len(names))
	}
	return say.And(names)
}

// windPipe says what is wound where; the figures stand in the row of that wrap.
func (w taskWords) windPipe(t crew.Task) string {
	wrap := w.plan.Lights.Wraps[t.Of.Wraps[0]]
	s := fmt.Sprintf("Wind %s of %s, the pipe on two trestles: %.0f turns, ten in %s.", say.Count(len(t.Of.Wraps), "stretch"), wrap.Label.Name, wrap.Turns, w.units.Inches(10*wrap.Pitch))
	if len(t.Of.Wraps) > 1 {
		s = fmt.Sprintf("Wind %d stretches with %s, the pipe on two trestles: %.0f turns, ten in %s.", len(t.Of.Wraps), wrap.Label.Name, wrap.Turns, w.units.Inches(10*wrap.Pitch))
	}
	plain, mirror := false, false
	for _, i := range t.Of.Wraps {
		mirror = mirror || w.plan.Lights.Wraps[i].Mirror
		plain = plain || !w.plan.Lights.Wraps[i].Mirror
	}
	if plain && mirror {
		s += " Wind right legs the other way round."
	}
	return s + " Tie both ends and every third of the way."
}
