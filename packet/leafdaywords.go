package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/power"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// workNames name each work on the run sheet.
var workNames = map[crew.Work]func(p *layout.Plan) string{
	crew.MarkGround: plainWork("Paint the dots"),
	crew.TryArch:    plainWork("Trial: one arch up"),
	crew.Unload:     plainWork("Unload, read aloud, show map"),
	crew.TryStake: func(p *layout.Plan) string {
		if drives(p) {
			return "Ticket, overhead, stake 1"
		}
		if !slices.ContainsFunc(p.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.CheckAgain }) {
			return "Look overhead"
		}
		return "Overhead, dots again"
	},
	crew.Drive: func(p *layout.Plan) string {
		if driven, bases, _ := stoodOn(p); driven == 0 {
			return "Set " + say.Count(bases, "base")
		}
		return "Drive, cap " + say.Count(len(p.Stakes), "stake")
	},
	crew.LayBags: func(p *layout.Plan) string {
		bags := 0
		for _, t := range p.Crew.Tasks {
			for _, n := range t.Uses {
				if n.Thing == crew.SandBags {
					bags += n.Count
				}
			}
		}
		return "Lay " + say.Count(bags, "bag")
	},
	crew.MakeLegs: func(p *layout.Plan) string {
		braces := ""
		if heldBy(p).braces && !p.Spec.Braces.Line {
			braces = ", braces"
		}
		whole := 0 // arches of one stick
		for i := range p.Ground.Stations {
			if p.Spec.ArchOf(i + 1).OneStick {
				whole++
			}
		}
		switch made := 2*(len(p.Ground.Stations)-whole) - legsCame(p); {
		case made > 0 && whole > 0:
			return fmt.Sprintf("Make %s, %s", say.Count(made, "leg"), say.Count(whole, "arch")) + braces
		case made > 0:
			return "Make " + say.Count(made, "leg") + braces
		case whole > 0:
			return "Ready " + say.Count(whole, "arch") + braces
		case braces != "":
			return "Make braces"
		}
		return "Cut " + strings.Join(linesCut(p), ", ")
	},
	crew.TryOutlets: plainWork("TEST at the outlets"),
	crew.TryStrings: func(p *layout.Plan) string { return "Try " + say.Count(tried(p), "string") },
	crew.WrapLegs: func(p *layout.Plan) string {
		if arches := woundOn(p, lights.Arch); arches > 0 {
			return "Wrap " + say.Count(arches, "arch")
		}
		if left, right := woundOn(p, lights.LegLeft), woundOn(p, lights.LegRight); left+right > 0 {
			side := map[[2]bool]string{{true, false}: "left ", {false, true}: "right "}[[2]bool{left > 0, right > 0}]
			if came := legsCame(p); came > 0 {
				return fmt.Sprintf("Flex, light %d, wrap %s", came, say.Count(left+right, side+"leg"))
			}
			return "Wrap " + say.Count(left+right, side+"leg")
		}
		return map[bool]string{true: "Flex, light wrapped legs", false: "Flag the legs for rows"}[legsCame(p) > 0]
	},
	crew.FirstRidge: func(p *layout.Plan) string {
		if slices.ContainsFunc(p.Wraps, func(w lights.Wrap) bool { return firstRidge(p, w.On) }) {
			return "Cut, wrap ridge 1"
		}
		return "Cut ridge 1"
	},
	crew.RaiseFirst: func(p *layout.Plan) string {
		return "Raise " + say.Numbered("arch", say.From(1, min(2, len(p.Ground.Stations)))) + withRidge(p, ", ridge 1")
	},
	crew.CutRidges: func(p *layout.Plan) string { return "Cut " + say.Count(max(0, len(p.Ridge)-1), "ridge piece") },
	crew.WrapRidges: func(p *layout.Plan) string {
		return fmt.Sprintf("Cut %d, wrap %s", max(0, len(p.Ridge)-1), say.Count(woundOn(p, lights.Ridge), "ridge piece"))
	},
	crew.RaiseOthers: func(p *layout.Plan) string {
		return "Raise " + say.Numbered("arch", say.From(3, len(p.Ground.Stations)))
	},
	crew.HoldRidge: func(p *layout.Plan) string {
		switch {
		case !p.Spec.Arch.Joints.DryCrown():
			return "Secure crowns, count caps"
		case len(p.Spec.Guys.Arches) > 0:
			return "Take up guys, count caps"
		}
		return "Look along, count caps"
	},
	crew.HangLights: func(p *layout.Plan) string {
		rows, drops := len(p.Lights.Rows), len(p.Lights.Drops)
		if rows+drops == 0 {
			return throughWords
		}
		what := map[bool]string{true: "Hang rows", false: "Hang lights"}[drops == 0]
		if hung(p) == 0 {
			what += ", try the way"
		}
		return what
	},
	crew.Lay: func(p *layout.Plan) string {
		laid := slices.DeleteFunc(slices.Clone(p.Power.Cords), func(c power.Cord) bool { return !c.Laid() })
		return "Lay " + say.Count(len(laid), "cord")
	},
	crew.HangUp:  func(p *layout.Plan) string { return "Hang " + say.Count(hung(p), "cord") },
	crew.TryWay:  plainWork(throughWords),
	crew.Join:    plainWork("Join, check"),
	crew.PlugIn:  plainWork("Plug in, TEST"),
	crew.ClearUp: plainWork("Clear up"),
	crew.LightUp: plainWork("Walk through in the dark"),
}

const throughWords = "Try the way through"

// hung counts the cords that are hung.
func hung(p *layout.Plan) (n int) {
	for _, c := range p.Power.Cords {
		if c.Hung() {
			n++
		}
	}
	return n
}

func plainWork(name string) func(*layout.Plan) string {
	return func(*layout.Plan) string { return name }
}

// withRidge are words that hold where there is a ridge.
func withRidge(p *layout.Plan, words string) string {
	if len(p.Ridge) == 0 {
		return ""
	}
	return words
}

// firstRidge reports whether a part is the first ridge piece: it is cut and wound before the others and measured in place.
func firstRidge(p *layout.Plan, on lights.Part) bool {
	return on.Kind == lights.Ridge && len(p.Ridge) > 0 && on.Number == p.Ridge[0].Bay
}

// woundOn counts the wraps that are wound on parts of a kind: none on legs that came wrapped, nor on the first ridge piece.
func woundOn(p *layout.Plan, on lights.Kind) (n int) {
	for _, w := range p.Wraps {
		if w.On.Kind == on && !(p.Spec.Found.Wrapped && p.Stock.Wrapped.Legs[w.On]) && !firstRidge(p, w.On) {
			n++
		}
	}
	return n
}

// legsCame counts the legs that come out of the shed wrapped.
func legsCame(p *layout.Plan) int {
	if !p.Spec.Found.Wrapped {
		return 0
	}
	return len(p.Stock.Wrapped.Legs)
}

// tried counts the strings that are tried before they are wound.
func tried(p *layout.Plan) (n int) {
	for _, t := range p.Crew.Tasks {
		for _, f := range t.Want {
			if t.Action == crew.TestStrings && f.What == crew.AllLit {
				n = f.Count
			}
		}
	}
	return n
}

// workWords names a work on a day of the run sheet, with the braces that are put in at it; what was begun on a day before is gone on with.
func (r runSheet) workWords(w crew.Work, day int) string {
	if w == crew.Unload && r.Days[day].Read > 0 {
		return "Read aloud"
	}
	name, braces, before := workNames[w](r.plan), "", false
	for _, j := range r.Jobs {
		if j.Work != w {
			continue
		}
		if slices.ContainsFunc(j.Tasks, func(i int) bool { return r.plan.Crew.Tasks[i].Action == crew.FixBraces }) {
			braces = ", braces"
		}
		before = before || slices.ContainsFunc(j.Stints, func(s crew.Stint) bool { return s.Day < day })
	}
	if before {
		braces += ", the rest"
	}
	return name + braces
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
				raise += "gusts forecast or felt from " + figure("raising gust", u.Speed(f.Gust)) + ", "
			case crew.WarmerThan:
				raise += figure("raising cold", u.Temperature(f.Cold)) + " or colder, "
			case crew.PeopleThere:
				raise += "under " + block.Figure(people(f.Count))
				if b.spec.Crew.Young > 0 {
					raise += fmt.Sprintf(" of %d or older", practice.Least)
				}
			}
		}
	}
	text := ""
	if raise != "" {
		text = fmt.Sprintf("Look before each arch. Raise none: flat called, %s.\n", raise)
	}
	ask := b.spec.Crew.Ask.Name
	if ask == "" { // else the phone is on the foot
		ask = "the planner ________, phone ________"
	}
	call := ""
	if len(b.plan.Kinds) > 0 {
		call = fmt.Sprintf(" Before raising, each noon: leaf %d’s call.", leafNumber("nights"))
	}
	text += fmt.Sprintf("Thunder: everyone indoors until %d minutes after the last.%s\n", practice.ThunderMinutes, call)
	text += fmt.Sprintf("Failed hold, cracked pipe: stop, A rings %s.", ask)
	if drives(b.plan) {
		text += " Buried line hit: all away, " + emergency(b.spec, "emergency number") + " first."
	}
	if b.spec.Crew.Young > 0 {
		text += fmt.Sprintf("\nUnder %d: no driving stakes, sawing, raising, climbing, plugging in; well away while arches go up.", practice.Least)
	}
	if len(b.plan.Kinds) > 0 {
		lunch := "leave no arch that somebody has to hold"
		if len(b.plan.Arches) > 1 { // guys hold those that stand from one side alone
			lunch = fmt.Sprintf("newest arch tied first, leaf %d", leafNumber("raise"))
		}
		text += fmt.Sprintf("\nLunch: %s. Day put off to: ____________", lunch)
	}
	return block.Block{Name: "stops", Gap: 2, Facts: facts, Body: block.Framed{Blocks: []block.Block{{Body: block.Words{Text: text, Lettering: paper.Floor, Figures: paper.Strong.Sized(13)}}}}}
}
