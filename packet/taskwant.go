package packet

import (
	"fmt"
	"slices"

	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// stated are the wants that no figure belongs to.
var stated = map[crew.Wanted]string{
	crew.MarkAsNamed:    "Each mark is there and as named.",
	crew.TicketInDate:   "The ticket is good today.",
	crew.OwnersAnswered: "Every owner has marked or answered clear.",
	crew.GuyLean:        "Guy stakes lean back, the head a hand farther from its leg than the foot.",
	crew.Ribbons:        "Ribbons on all.",
	crew.NoneAcross:     "No cord lies across the way.",
	crew.BothWays:       "All lit, nothing in the way: set AUTO.",
	crew.LitEarly:       "All lit, way clear: OFF, barred.",
	crew.PipeWhole:      "No crack, white line, open joint.",
	crew.PlugsDry:       "All lit, nothing cracked; plugs dry, covered.",
	crew.WayEven:        "No ice, nothing to slip or fall over; every way open.",
	crew.OpeningKept:    "Sticks touch nothing.",
	crew.LampsOut:       "Ways barred.",
	crew.DryAndLabelled: "All dry, counted, labelled.",
	crew.SaidUnplugged:  "Said aloud: all unplugged.",
}

// want says a figure in a short sentence.
func (w taskWords) want(f crew.Figure) string {
	if f.What == crew.NoneAcross && len(w.plan.Power.Covers) > 0 {
		return "Cord covers flat, whole, in place; no other cord across the way."
	}
	if s, ok := stated[f.What]; ok {
		return s
	}
	for _, words := range []func(crew.Figure) string{w.wantGround, w.wantStakes, w.wantArch, w.wantDay, w.wantPower} {
		if s := words(f); s != "" {
			return s
		}
	}
	return ""
}

// within says a length with its limit either way.
func (w taskWords) within(f crew.Figure) string {
	return w.tape(f.Length) + " within " + w.limit(f.Limit)
}

// inches says a length off a short tape with its limit.
func (w taskWords) inches(f crew.Figure) string {
	return w.units.Inches(f.Length) + " within " + w.units.Inches(f.Limit)
}

func (w taskWords) wantGround(f crew.Figure) string {
	switch f.What {
	case crew.DotCheck:
		return w.checkNames(f.Checks) + ": " + w.within(f) + "."
	case crew.GaugeLength:
		return fmt.Sprintf("For %s: %s.", say.Numbered("arch", f.Arches), w.tape(f.Length))
	case crew.ClearOfLine:
		return w.clearance(f)
	case crew.NoticeGiven:
		return fmt.Sprintf("%d full business days between the call and the first stake.", f.Count)
	case crew.KeepOverhead:
		who := "any wire"
		if f.Line >= 0 {
			who = w.plan.Spec.Site.Overhead[f.Line].Name
		}
		return fmt.Sprintf("People, pipe and ladder %s or more from %s.", w.units.Room(f.Length), who)
	}
	return ""
}

// clearance says how far a stake is from a buried line, or that all keep their distance from every one.
func (w taskWords) clearance(f crew.Figure) string {
	line := "a marked line"
	if f.Line >= 0 {
		line = "the " + w.plan.Spec.Site.Buried[f.Line].Name
	}
	if len(f.Stakes) == 0 {
		return fmt.Sprintf("No dot within %s of %s.", w.units.Inches(f.Limit), line)
	}
	return fmt.Sprintf("%s %s from %s, at least %s.", stakeNames(f.Stakes), w.tape(f.Length), line, w.units.Inches(f.Limit))
}

// checkNames names checks that are alike in a few words.
func (w taskWords) checkNames(list []ground.Check) string {
	pair := func(c ground.Check) string { return w.spot(c.From) + " to " + w.spot(c.To) }
	numbers := func(of func(ground.Check) int) (out []int) {
		for _, c := range list {
			if n := of(c); len(out) == 0 || out[len(out)-1] != n {
				out = append(out, n)
			}
		}
		return out
	}
	arch := func(c ground.Check) int { return w.plan.Ground.Stakes[c.To.Index].Arch }
	bay := func(c ground.Check) int {
		return min(w.plan.Ground.Stakes[c.From.Index].Arch, arch(c))
	}
	switch c := list[0]; c.Kind {
	case ground.Width:
		return "L to R at " + say.Numbered("arch", numbers(arch))
	case ground.BayDiagonal, ground.Side:
		if len(list) > 2 {
			which := "L to next R and R to next L"
			if c.Kind == ground.Side {
				which = "Along the row"
			}
			return which + " in " + say.Numbered("bay", numbers(bay))
		}
	case ground.GuyToLeg:
		if len(list) > 2 {
			return "Each " + say.And(heldBy(w.plan).pick("G", "P")) + " dot to its leg at " + say.Numbered("arch", numbers(arch))
		}
	}
	var names []string
	for _, c := range list {
		names = append(names, pair(c))
	}
	if len(names) > 4 {
		return fmt.Sprintf("%s and %d like it", names[0], len(names)-1)
	}
	return say.And(names)
}

func (w taskWords) wantStakes(f crew.Figure) string {
	switch f.What {
	case crew.DepthTaped:
		return fmt.Sprintf("%s on %s.", w.units.Inches(f.Length), w.whose(f.Stakes))
	case crew.Shows:
		return fmt.Sprintf("Driven, %s shows on %s.", w.units.Inches(f.Length), w.whose(f.Stakes))
	case crew.PullMoves:
		return fmt.Sprintf("It moves less than %s at the ground and springs back.", w.units.Inches(f.Length))
	case crew.Plumb:
		if len(f.Arches) > 0 {
			return say.Capital(say.Numbered("arch", f.Arches)) + " plumb, seen from the side."
		}
		return "Stakes upright, seen from two sides."
	case crew.Leaning:
		if f.Angle < 0 {
			return "Stakes lean " + measure.Degrees(-f.Angle) + " toward the walk."
		}
		return "Stakes lean " + measure.Degrees(f.Angle) + " away from the walk."
	case crew.Capped:
		if f.Count == 0 {
			return "No cap missing."
		}
		return fmt.Sprintf("%s on.", say.Count(f.Count, "cap"))
	case crew.Weighs:
		return fmt.Sprintf("%s: %s or more.", say.Capital(w.whose(f.Stakes)), w.units.Force(f.Force))
	case crew.NoneLeft:
		return fmt.Sprintf("%d of %d out.", f.Count, f.Count)
	case crew.FootWidth:
		return fmt.Sprintf("Feet of %s: %s.", say.Numbered("arch", f.Arches), w.within(f))
	}
	return ""
}

// whose says which stakes: all of some kinds, or by name.
func (w taskWords) whose(list []ground.Stake) string {
	if len(list) == len(w.plan.Ground.Stakes) {
		return "every stake"
	}
	all := true
	for _, kind := range []ground.Kind{ground.OfLeg, ground.OfGuy, ground.OfBrace} {
		count := func(of []ground.Stake) (n int) {
			for _, s := range of {
				if s.Kind() == kind {
					n++
				}
			}
			return n
		}
		n := count(list)
		all = all && (n == 0 || n == count(w.plan.Ground.Stakes))
	}
	if !all {
		return stakeNames(list)
	}
	return say.And(lettersOf(list, -1))
}

func (w taskWords) wantArch(f crew.Figure) string {
	switch f.What {
	case crew.AllLit:
		return "Every bulb lit, nothing bare or cracked."
	case crew.CrownHigh:
		return fmt.Sprintf("Crown %s.", w.inches(f))
	case crew.CrownFound:
		return fmt.Sprintf("Expected now, %s: %s.", say.Numbered("arch", f.Arches), w.units.Inches(f.Length))
	}
	return ""
}

func (w taskWords) wantDay(f crew.Figure) string {
	switch f.What {
	case crew.GustBelow:
		return fmt.Sprintf("Gusts below %s, forecast and felt.", w.units.Speed(f.Gust))
	case crew.WarmerThan:
		return fmt.Sprintf("Warmer than %s: no bending at it or below.", w.units.Temperature(f.Cold))
	case crew.SlowBelow:
		return fmt.Sprintf("Below %s bend slowly, in the sun, eyes covered.", w.units.Temperature(f.Cold))
	case crew.ForecastBelow:
		return fmt.Sprintf("Forecast gusts below %s.", w.units.Speed(f.Gust))
	case crew.LaidFlat:
		return fmt.Sprintf("From %s forecast: LAY FLAT by daylight before.", w.units.Speed(f.Gust))
	case crew.StakesHold:
		return w.stakesHold(f)
	case crew.CrownKept:
		return "Crowns above their lower marks."
	}
	return ""
}

// stakesHold is what is seen of stakes that hold; caps are on those alone that no pipe stands on.
func (w taskWords) stakesHold(f crew.Figure) string {
	text := "None moves " + w.units.Inches(f.Length)
	if heldBy(w.plan).guys {
		text += "; guys straight"
		if raisingOf(w.plan).onLine() {
			text += ", crown line tied"
		}
	}
	if slices.Contains(standsOn(w.plan), "base") {
		text += ", no bag gone or split"
	}
	text += ". Ribbons on"
	if caps := capped(w.plan).pick("guy", "brace"); caps != nil {
		text += ", " + say.And(caps) + map[bool]string{true: " stakes", false: " bars"}[drives(w.plan)] + " capped"
	}
	return text + "."
}

func (w taskWords) wantPower(f crew.Figure) string {
	switch f.What {
	case crew.TestTrips:
		return "Out, then lit."
	case crew.BreakerReads:
		return fmt.Sprintf("Its breaker reads %s or more: write it down.", measure.Amps(f.Amps))
	case crew.JointsHigh:
		return fmt.Sprintf("Every joint %s or more off the ground, its cord hanging below it.", w.units.Inches(f.Length))
	case crew.AsDrawn:
		return fmt.Sprintf("%d in all, none more.", f.Count)
	case crew.RunAmps:
		return fmt.Sprintf("%s in all at %s.", measure.Amps(f.Amps), f.Outlet)
	case crew.NotWarm:
		if f.Minutes == 0 {
			return "No bulb in reach warm."
		}
		return fmt.Sprintf("None warm after %d minutes.", f.Minutes)
	case crew.TimersRight:
		return fmt.Sprintf("%s: a timer of %s or more.", say.Capital(f.Outlet), measure.Amps(f.Amps))
	case crew.PullUp, crew.PullForce, crew.TriangleSide: // told in what is done
	}
	return ""
}
