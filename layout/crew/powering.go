package crew

import (
	"fmt"
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// powering tests each outlet, lays the cords and plugs one chain at a time.
func (b *builder) powering() {
	var outlets []string
	fed := 0
	for _, c := range b.Chains {
		if c.Outlet == "" {
			continue
		}
		fed++
		if !slices.Contains(outlets, c.Outlet) {
			outlets = append(outlets, c.Outlet)
		}
	}
	if fed == 0 {
		return
	}
	b.add(minutesMeasure*2*float64(len(outlets)), Step{Phase: Powering, People: 1, Hold: true,
		Warning: "Water and mains: dry hands, plugs off the ground. Wiring, breakers and outlets are work for a licensed electrician.",
		Do:      fmt.Sprintf("Plug a lamp into %s in turn. Press TEST, then RESET.", say.And(outlets)),
		Want:    "TEST puts the lamp out at once, RESET lights it again.",
		Off:     "Use no outlet that fails or has no ground-fault protection. Tell the organiser."})
	if b.Cords > 0 {
		what := say.Count(b.Cords, "cord")
		if b.Taps > 0 {
			what += fmt.Sprintf(" and %s", say.Count(b.Taps, "tap"))
		}
		b.add(b.Spec.Crew.Rates.Cord*float64(b.Cords), Step{Phase: Powering, People: max(2, b.hands/4*2),
			Do:   fmt.Sprintf("Lay the %s as the circuit sheet shows, plugging nothing in: behind the legs, off the way, a loop hanging lower than each plug, each joint in its cover off the ground.", what),
			Want: "No cord crosses where people walk uncovered, none is coiled, none is pinched.",
			Off:  "Lay it again. A cord that is too short: ask, never add an indoor one."})
	}
	for i, outlet := range outlets {
		var sum measure.Current
		step := Step{Phase: Powering, People: 2,
			Do:  fmt.Sprintf("Plug in %s, then one run at a time where it is named below, on a leg at its foot. Look along each before the next.", outlet),
			Off: "Trips: unplug the last run, look for water in its plugs, try it by itself. Dark from one string on: that string's plug or fuse."}
		for _, c := range b.Chains {
			if c.Outlet == outlet {
				sum += c.Amps
				step.Readings = append(step.Readings, Reading{c.Name, before(c.At) + measure.Amps(c.Amps)})
			}
		}
		step.Want = fmt.Sprintf("Every bulb lit, no plug warm after ten minutes, %s in all at %s.", measure.Amps(sum), outlet)
		if i > 0 {
			step.Do = fmt.Sprintf("Plug in %s and its runs the same way, one at a time.", outlet)
		}
		b.add(minutesMeasure*2*float64(len(step.Readings)), step)
	}
	b.add(minutesTalk, Step{Phase: Powering, People: 2, Hold: true,
		Do:   "Set the timers, wait for dark with everything lit, and walk through once from each end.",
		Want: "All lit, nothing in the way, nobody can reach a bare stake, the outlets named on the opening sheet.",
		Off:  "Switch off, mend, look again. It opens when the organiser signs."})
}

// before puts a place before what is there; a foot goes by its leg.
func before(place lights.Place) string {
	switch place.Spot {
	case lights.Nowhere:
		return ""
	case lights.AtFoot:
		return place.Part.String() + ": "
	}
	return place.String() + ": "
}
