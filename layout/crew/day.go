// What the job is figured from, and the finding on too few hands or too long a day.

package crew

import (
	"fmt"
	"math"

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
	Spec     *spec.Spec
	Arches   []arch.Arch
	Ground   ground.Layout
	Lights   lights.Layout
	Ridge    []RidgePiece
	Line     []measure.Length     // from crown to crown, of the line along them; none where there is none
	LegCuts  int                  // leg pieces that are cut from longer stock
	Stick    measure.Length       // the longest of pipe that is measured or sawn
	Whole    bool                 // some sticks are used as they are sold: one that is longer is trimmed
	Steel    bool                 // bars are sawn to stakes
	Rope     measure.Length       // the longest line that is cut
	Screws   int                  // in boards under feet
	InShed   map[lights.Part]bool // legs that the shed can hold with their strings on
	Cemented map[lights.Part]bool // legs that it holds with their couplings cemented
	Chains   []Chain
	Wiring
	Inside                measure.Speed // the gust from which on nobody is inside; 0 where none is worked out
	Felt                  measure.Speed // the same, by a meter at head height
	Down                  measure.Speed // the gust before which the tunnel is down; 0 where none is worked out
	FootWeight, TieWeight measure.Force // on each weighted foot, and at each end of guys and braces there
	Asks                  float64       // N·m that the gusts the tunnel is to bear ask of a stake at the ground; 0 where none are worked out
}

// Wiring counts what is laid and plugged.
type Wiring struct {
	Cords    int
	Laid     int // of them, with a part on the ground
	Posts    int // that carry the ribbon over those parts from the outlets to the feet
	Hung     int // of them, with a part tied to pipe or row out of reach or over a way
	HungTies int // that hold those parts
	OnRows   int // of HungTies, those of cords that end on a row
	Taps     int // three-ways
	Loose    int // sockets that stay free between an outlet and the first foot
	Joints   int // plugs put together, whoever does: one cover each
	Open     int // sockets that nothing is plugged into: one cover each
	High     int // places out of reach where cords, three-ways and runs are joined
	Over     int // cords on the ground over a way: one cord cover each
	Boxes    int // places where three or more plugs meet low down
	Bare     int // outlets without ground-fault protection: a portable one each
	Timers   []Timer
}

// Timer is one to be put into an outlet, of so many amps or more.
type Timer struct {
	Outlet string
	Amps   measure.Current
}

// RidgePiece is the pipe of one bay.
type RidgePiece struct {
	Bay     int
	Centres measure.Length // between fitting centres
	Cut     measure.Length
}

// Chain is strings end to end behind one plug.
type Chain struct {
	Outlet string          // empty where nothing feeds it
	Runs   []lights.Run    // that its strings are on, one a string in order
	To     lights.Spot     // of its last socket, that stays open
	Amps   measure.Current // at the first plug
}

// Day orders the work from the first white dot to the last plug, and lays it along the clock.
func Day(in Input) Plan {
	plan := Plan{Tasks: tasksOf(in), Crowns: in.alongCrowns()}
	plan.Schedule, plan.Kept = in.schedule(plan.Tasks), in.kept()
	plan.Findings = append(dayFindings(in, plan.Schedule), calendarFindings(in.Spec, in.drives())...)
	finding.Sort(plan.Findings)
	return plan
}

// dayFindings tells of too few hands, and of a building that takes days.
func dayFindings(in Input, s Schedule) []finding.Finding {
	var list []finding.Finding
	few := func(key, text string, more int) {
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "few-hands", Key: key, Text: text, Cure: []finding.Change{{Key: "crew.helpers", Value: fmt.Sprint(s.Hands - 1 + more)}}})
	}
	takes, wires := Raisers(in.Spec), ""
	if takes > practice.Raisers {
		wires = ", one who watches each line overhead"
	}
	if grown := s.Hands - s.Young; s.Young > 0 && grown < takes {
		few("crew.young", fmt.Sprintf("Raising an arch takes %d people of %d or older. There are %d with the organiser; find %s for the build day.", takes, practice.Least, grown, say.Count(takes-grown, "more grown helper")), takes-grown)
	} else if s.Hands < takes {
		few("crew.helpers", fmt.Sprintf("Raising an arch takes %d people: one at each foot, one at the crown, one on the ladder, one who holds arch 1%s. There are %d with the organiser; find %s for the build day.", takes, wires, s.Hands, say.Count(takes-s.Hands, "more helper")), takes-s.Hands)
	}
	if f, ok := tooLong(s); ok {
		list = append(list, f)
	}
	return list
}

// tooLong tells of a building that takes days where nobody has named them, and of work that the days named leave undone.
func tooLong(s Schedule) (finding.Finding, bool) {
	f := finding.Finding{Level: finding.LookAt, Code: "long-day", Key: "crew.helpers"}
	switch days := len(s.Built()); {
	case len(s.Left) > 0:
		undone := 0.0
		for _, i := range s.Left {
			undone += s.Jobs[i].work()
			for _, st := range s.Jobs[i].Stints {
				undone -= float64(int(st.End-st.Begin) * len(st.Hands))
			}
		}
		f.Level, f.Code, f.Key = finding.MustFix, "days-too-short", "crew.days"
		f.Text = fmt.Sprintf("With %d people the days there are leave %.0f hours of one person's work undone, and nothing is done outdoors in the dark but the light-up", s.Hands, math.Ceil(undone/60))
	case len(s.Fit.Cures) > 0: // nobody has named the days
		f.Text = fmt.Sprintf("With %d people the building takes %d days", s.Hands, days)
		if s.Built()[0].Light != nil {
			f.Text += " of daylight"
		}
	default:
		return f, false
	}
	var ways []string
	if s.Fit.Helpers > 0 {
		ways = append(ways, say.Count(s.Fit.Helpers+1-s.Hands, "more helper"))
	}
	if s.Fit.Start > 0 {
		ways = append(ways, "a start at "+clockOf(s.Fit.Start))
	}
	if s.Fit.Evenings > 0 {
		ways = append(ways, say.Count(s.Fit.Evenings, "evening")+" before at cutting and wrapping")
	}
	if s.Fit.Wrapped {
		ways = append(ways, "legs kept wrapped since last year")
	}
	if s.Fit.MoreDays > 0 {
		ways = append(ways, say.Count(s.Fit.MoreDays, "more day"))
	}
	switch {
	case len(ways) > 0 && f.Code == "long-day":
		f.Text += "; " + say.Or(ways) + " would have it done in one"
	case len(ways) > 0:
		f.Text += "; " + say.Or(ways) + " would do"
	}
	f.Text += "."
	if s.Overnight() {
		f.Text += " Leave no arch standing untied overnight."
	}
	for i, c := range s.Fit.Cures {
		if i == 0 {
			f.Cure = []finding.Change{c}
			continue
		}
		f.Else = append(f.Else, []finding.Change{c})
	}
	return f, true
}
