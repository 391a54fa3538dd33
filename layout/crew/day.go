package crew

import (
	"fmt"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// Input is the solved tunnel as far as it makes work.
type Input struct {
	Spec    *spec.Spec
	Arches  []arch.Arch
	Ground  ground.Layout
	Lights  lights.Layout
	Ridge   []RidgePiece
	Bars    int // stock bars that a saw goes through
	LegCuts int // leg pieces that are cut from longer stock
	Chains  []Chain
	Wiring
	Inside measure.Speed // the gust from which on nobody is inside; 0 where none is worked out
	Down   measure.Speed // the gust before which the tunnel is down; 0 where none is worked out
	Asks   float64       // N·m that the gusts the tunnel is to bear ask of a stake at the ground; 0 where none are worked out
}

// Wiring counts what is laid and plugged.
type Wiring struct {
	Cords  int // to lay
	Taps   int // three-ways
	Joints int // plugs put together: one cover each
	Open   int // sockets that nothing is plugged into: one cover each
	Over   int // cords on the ground over a way: one cord cover each
	Timers int // that outlets in use do not have yet
	Boxes  int // places where three or more plugs meet low down
	Bare   int // outlets without ground-fault protection: a portable one each
}

// RidgePiece is the pipe of one bay.
type RidgePiece struct {
	Bay     int
	Centres measure.Length // between fitting centres
	Cut     measure.Length
}

// Chain is strings end to end behind one plug.
type Chain struct {
	Name, Outlet string          // Outlet is empty where nothing feeds it
	At           lights.Place    // where it is plugged in
	Runs         []lights.Run    // that its strings are on, one a string in order
	Amps         measure.Current // at the first plug
}

// Day orders the work from the first white dot to the last plug, and lays it along the clock.
func Day(in Input) Plan {
	plan := Plan{Tasks: Tasks(in)}
	plan.Schedule = in.schedule(plan.Tasks)
	plan.Findings = append(dayFindings(in, plan.Schedule), calendarFindings(in.Spec)...)
	finding.Sort(plan.Findings)
	return plan
}

// dayFindings tells of too few hands, and of a building that takes days.
func dayFindings(in Input, s Schedule) []finding.Finding {
	var list []finding.Finding
	if s.Hands < practice.Raisers {
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "few-hands", Key: "crew.helpers", Cure: []finding.Change{{Key: "crew.helpers", Value: fmt.Sprint(practice.Raisers - 1)}},
			Text: fmt.Sprintf("Raising an arch takes %d people: one at each foot, one at the crown, one on the ladder, one who holds arch 1. There are %d with the organiser; find %s for the build day.", practice.Raisers, s.Hands, say.Count(practice.Raisers-s.Hands, "more helper"))})
	}
	if days := len(s.Built()); days > 1 {
		text := fmt.Sprintf("With %d people the building takes %d days", s.Hands, days)
		if s.Built()[0].Light != nil {
			text += " of daylight"
		}
		var cure []finding.Change
		var ways []string
		if s.Fit.Helpers > 0 {
			if days == 2 { // fewer days are still too long
				cure = []finding.Change{{Key: "crew.helpers", Value: fmt.Sprint(s.Fit.Helpers)}}
			}
			ways = append(ways, say.Count(s.Fit.Helpers+1-s.Hands, "more helper"))
		}
		if s.Fit.Beforehand > 0 {
			ways = append(ways, fmt.Sprintf("%.0f hours of all hands at cutting, trying and wrapping on days before", max(1, s.Fit.Beforehand/60)))
		}
		if len(ways) > 0 {
			text += "; " + say.Or(ways) + " saves a day"
		}
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "long-day", Key: "crew.helpers", Cure: cure, Text: text + ". Leave no arch standing without guys overnight."})
	}
	return list
}
