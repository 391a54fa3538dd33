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
	Cords   int           // cords to lay
	Taps    int           // three-way taps among them
	Inside  measure.Speed // the gust from which on nobody is inside; 0 where none is worked out
	Down    measure.Speed // the gust before which the tunnel is down; 0 where none is worked out
	Asks    float64       // N·m that the gusts the tunnel is to bear ask of a stake at the ground; 0 where none are worked out
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
	Amps         measure.Current // at the first plug
}

// Limits of taped figures. Common practice, no source; a careful tape holds 1:3000.
const (
	limitInches = measure.Inch / 2
	limitMetric = 12 * measure.Millimetre
)

const (
	minutesDot     = practice.MinutesDot
	minutesTwoTape = practice.MinutesTwoTape
	minutesMeasure = practice.MinutesMeasure
	minutesTest    = practice.MinutesTest
	minutesTalk    = practice.MinutesTalk
	minutesLabel   = practice.MinutesLabel
)

// Day orders the work from the first white dot to the last plug, with every figure in the step that needs it.
func Day(in Input) Plan {
	plan := order(in)
	plan.Tasks = Tasks(in)
	plan.Findings = append(dayFindings(in, plan), calendarFindings(in.Spec)...)
	finding.Sort(plan.Findings)
	return plan
}

// order is Day without its findings.
func order(in Input) Plan {
	b := &builder{Input: in, units: in.Spec.Units, hands: in.Spec.Crew.Helpers + 1, limit: limitInches}
	if b.units == measure.Metric {
		b.limit = limitMetric
	}
	b.marking()
	b.driving()
	b.cutting()
	b.wrapping()
	b.raising()
	b.hanging()
	b.powering()
	plan := Plan{Steps: b.steps}
	for i := range plan.Steps {
		plan.Steps[i].Number = i + 1
	}
	plan.Blocks = b.blocks(plan.Steps)
	for _, block := range plan.Blocks {
		if block.Phase == Marking {
			plan.MarkMinutes = max(plan.MarkMinutes, block.End)
		} else {
			plan.Minutes = max(plan.Minutes, block.End)
		}
	}
	if start := in.Spec.Crew.Start; start > 0 {
		plan.began = start.Minutes()
		plan.Start = clockTime(plan.began)
	}
	return plan
}

// enough returns the fewest helpers with whom the day is no longer than a day should be, up to twice the hands there are; not ok where they would not do.
func enough(in Input) (helpers int, ok bool) {
	s := *in.Spec
	in.Spec = &s
	for most := 2*s.Crew.Helpers + 1; s.Crew.Helpers < most; {
		s.Crew.Helpers++
		if order(in).Minutes <= longestDay {
			return s.Crew.Helpers, true
		}
	}
	return 0, false
}

// builder gathers the steps.
type builder struct {
	Input
	units measure.System
	limit measure.Length // of a taped check
	hands int            // helpers and the organiser
	steps []Step
}

// add appends a step that takes so many minutes of one pair of hands, shared among its people.
func (b *builder) add(work float64, s Step) {
	s.People = max(1, min(s.People, b.hands))
	s.Minutes = work / float64(s.People)
	b.steps = append(b.steps, s)
}

const (
	twoCrews   = practice.TwoCrews
	raisers    = 3 // people to raise an arch: one at each leg, one at the crown
	longestDay = practice.LongDay
)

func dayFindings(in Input, p Plan) []finding.Finding {
	var list []finding.Finding
	hands := in.Spec.Crew.Helpers + 1
	if hands < raisers {
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "few-hands", Key: "crew.helpers", Cure: []finding.Change{{Key: "crew.helpers", Value: fmt.Sprint(raisers - 1)}},
			Text: fmt.Sprintf("Raising an arch takes %d people, one at each leg and one at the crown, and there are %d with the organiser; find %s for the build day.", raisers, hands, say.Count(raisers-hands, "more helper"))})
	}
	if p.Minutes > longestDay {
		text := fmt.Sprintf("The build day takes about %.1f hours with %d people", p.Minutes/60, hands)
		if p.Start != "" {
			text += fmt.Sprintf(", from %s to about %s", p.Start, clockTime(in.Spec.Crew.Start.Minutes()+p.Minutes))
		}
		var cure []finding.Change
		if helpers, ok := enough(in); ok {
			cure = []finding.Change{{Key: "crew.helpers", Value: fmt.Sprint(helpers)}}
		}
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "long-day", Key: "crew.helpers", Cure: cure,
			Text: text + "; ask more helpers, cut and wrap on a day before, or build on two days and leave no arch standing without guys overnight."})
	}
	return list
}

// clockTime prints minutes since midnight; past midnight it says so.
func clockTime(minutes float64) string {
	m := int(minutes + 0.5)
	day := ""
	if m >= 24*60 {
		day = " the next day"
	}
	return fmt.Sprintf("%02d:%02d%s", m/60%24, m%60, day)
}
