package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// plainWorks are the works that no figure is said of.
var plainWorks = map[crew.Work]string{
	crew.MarkGround: "Mark the ground", crew.TryArch: "Trial: one arch up", crew.Unload: "Unload, read dangers aloud", crew.TryStake: "Ticket, look up, try a stake", crew.TryOutlets: "TEST at the outlets",
	crew.HoldRidge: "Secure crowns, count caps", crew.PlugIn: "Plug in, test, timers", crew.ClearUp: "Clear up", crew.LightUp: "Walk through in the dark",
}

// wound counts the wraps that are wound on ridge pieces, or on all other pipe but legs that came wrapped.
func (r runSheet) wound(ridge bool) (n int) {
	for _, x := range r.plan.Wraps {
		if (x.On.Kind == lights.Ridge) == ridge && !(r.plan.Spec.Found.Wrapped && x.On.IsLeg()) {
			n++
		}
	}
	return n
}

// tried counts the strings that are tried before they are wound.
func (r runSheet) tried() (n int) {
	for _, t := range r.plan.Crew.Tasks {
		for _, f := range t.Want {
			if t.Action == crew.TestStrings && f.What == crew.AllLit {
				n = f.Count
			}
		}
	}
	return n
}

// workWords names a work on the run sheet.
func (r runSheet) workWords(w crew.Work) string {
	p := r.plan
	legs, guys, pegs := stakeCounts(p)
	braced := func(words string) string {
		for _, j := range r.Jobs {
			if j.Work == w && slices.ContainsFunc(j.Tasks, func(i int) bool { return p.Crew.Tasks[i].Action == crew.FixBraces }) {
				return words + ", braces"
			}
		}
		return words
	}
	first := func(words string) string {
		if len(p.Ridge) == 0 {
			return ""
		}
		return words
	}
	switch n := len(p.Ground.Stations); w {
	case crew.Drive:
		if p.Spec.Arch.Foot != nil {
			return fmt.Sprintf("Boards, bars, weights of %d feet", legs)
		}
		return "Drive " + say.Count(legs+guys+pegs, "stake")
	case crew.MakeLegs:
		return "Cut " + say.Count(2*n, "leg") + first(", ridge piece 1")
	case crew.TryStrings:
		return "Try " + say.Count(r.tried(), "string")
	case crew.WrapLegs:
		if r.wound(false) == 0 {
			return map[bool]string{true: "Flex, light wrapped legs", false: "Flag the legs for rows"}[p.Spec.Found.Wrapped]
		}
		return "Wrap " + say.Count(r.wound(false), "leg")
	case crew.RaiseFirst:
		return braced("Raise " + say.Numbered("arch", say.From(1, min(2, n))) + first(", ridge 1"))
	case crew.CutRidges:
		return "Cut " + say.Count(max(0, len(p.Ridge)-1), "ridge piece")
	case crew.WrapRidges:
		return fmt.Sprintf("Cut %d, wrap %s", max(0, len(p.Ridge)-1), say.Count(r.wound(true), "ridge piece"))
	case crew.RaiseOthers:
		return braced("Raise " + say.Numbered("arch", say.From(3, n)))
	case crew.HangLights:
		switch {
		case len(p.Lights.Rows)+len(p.Lights.Drops) == 0:
			return "Try the way through"
		case len(p.Lights.Drops) == 0:
			return "Hang rows, try the way"
		}
		return "Hang lights, try the way"
	case crew.Lay:
		cords := 0
		for _, f := range p.Power.Feeders {
			for _, j := range f.Joints {
				cords = max(cords, j.Cord)
			}
		}
		return "Lay " + say.Count(cords, "cord")
	}
	return plainWorks[w]
}

// dayStops are the figures that stop the day.
func (b *binder) dayStops() block.Block {
	u := b.spec.Units
	var facts []block.Fact
	figure := func(what, value string) string {
		facts = append(facts, block.Fact{What: what, Value: value})
		return block.Figure(value)
	}
	raise := ""
	for _, t := range b.plan.Crew.Tasks {
		if t.Action != crew.CheckDay {
			continue
		}
		for _, f := range t.Want {
			switch f.What {
			case crew.GustBelow:
				raise += "gusts of " + figure("raising gust", u.Speed(f.Gust)) + " forecast or felt, "
			case crew.WarmerThan:
				raise += figure("raising cold", u.Temperature(f.Cold)) + " or colder, "
			case crew.PeopleThere:
				raise += fmt.Sprintf("fewer than %s", block.Figure(people(f.Count)))
			}
		}
	}
	text := ""
	if raise != "" {
		text = "Raise nothing: " + raise + ".\n"
	}
	text += fmt.Sprintf("Thunder: everyone off and indoors until %d minutes after the last.\nStop and ask: a hold fails, pipe cracks, a line nobody told of.\nUnder %d: no driving, sawing, raising, climbing, plugging in.", practice.ThunderMinutes, practice.Least)
	if len(b.plan.Kinds) > 0 {
		if gust, calm := b.closeAt(); calm {
			text += "\nNobody inside in " + figure(b.closedAs(), b.insideWords())
		} else {
			text += "\nNobody inside from gusts of " + figure(b.closedAs(), b.insideWords()) + toldBy(gust)
		}
		if flat, ok := b.flatAt(); ok {
			text += ", laid flat before " + figure("down before gusts", u.Speed(flat.Called()))
		}
		text += "."
	}
	return block.Block{Name: "stops", Gap: 2, Facts: facts, Body: block.Framed{Blocks: []block.Block{{Body: block.Words{Text: text, Lettering: paper.Floor, Figures: paper.Strong.Sized(13)}}}}}
}
