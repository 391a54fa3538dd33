package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/power"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// doingArches says what is done with arches at the taking down and before the raising; stock and raise show the cutting and the raising in pictures and words of their own.
var doingArches = map[crew.Action]func(taskWords, crew.Task) string{
	crew.JoinForWrap: func(w taskWords, t crew.Task) string {
		crowns := ""
		if last := len(w.plan.Arches); len(w.plan.Ridge) > 0 {
			crowns = fmt.Sprintf("; tees 1, %d, else crosses", last)
		}
		return fmt.Sprintf("Lay %s flat, arrows to the crown, legs driven to pen lines%s.", say.Numbered("arch", t.Of.Arches), crowns)
	},
	crew.TrialArch:  taskWords.tryArch,
	crew.MeasureSag: plainly("Arch 1: way in on the map, L left. Line foot to foot: measure up to mid crown. Found:"),
	crew.NameLegs: func(w taskWords, _ crew.Task) string {
		look := "Look for cracks. Marker, where bare: on legs a line on the walk side, arrow to crown"
		if !w.crowned() { // their sticks have L and R at their ends
			look = "Look for cracks. Marker, where bare: each stick’s walk side a line"
		}
		if len(w.plan.Ridge) > 0 {
			look += "; on ridges one to arch 1"
		}
		return look + "."
	},
	crew.LowerArches: plainly("Take the arches down, the last first."),
	crew.OpenJoints: func(w taskWords, _ crew.Task) string {
		var do []string
		if slices.ContainsFunc(w.plan.Power.Chains, overCrown) {
			do = append(do, "uncover, unplug leg strings")
		}
		unwound := slices.ContainsFunc(w.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.Unwind })
		if tied := w.tiedOn(); tied != "" && !unwound {
			do = append(do, tied+" off")
		}
		joints := w.jointed()
		if joints != "" {
			do = append(do, "twist "+joints+" apart")
		}
		twist := say.Capital(strings.Join(do, ", ")) + "."
		if joints != "" && w.plan.Spec.Arch.Joints == spec.Pinned {
			return "Take the screws out, counted into a bag. " + twist
		}
		return twist
	},
	crew.PullStakes: func(w taskWords, _ crew.Task) string {
		var words []string
		if slices.Contains(standsOn(w.plan), "base") {
			words = append(words, "Bars out of their sockets, caps on. Weights, joint plates off, boards up.")
		}
		if drives(w.plan) {
			words = append(words, "Each stake, cap on: ten turns by wrench, straight out, fill the hole.")
		}
		return strings.Join(words, " ")
	},
	crew.LookOver: plainly("Look again."),
	crew.Store:    plainly("Bundle, label and store all of it dry."),
	crew.NextYear: plainly("Write what was changed, and what to do better."),
}

// tiedOn names the lines that come down with the arches they are knotted to.
func (w taskWords) tiedOn() string {
	var words []string
	if heldBy(w.plan).guys {
		words = append(words, "guys")
	}
	if crownLines(w.plan) > 1 { // one in one piece is off when the last arch is
		words = append(words, "crown lines")
	}
	return strings.Join(words, ", ")
}

// tryArch has one arch stood on stakes of the tunnel's own, which come out again.
func (w taskWords) tryArch(t crew.Task) string {
	feet := ""
	if w.plan.Spec.Arch.Foot == nil {
		feet = fmt.Sprintf("Drive %s of the tunnel’s where you know that no line lies, capped; out again after. ", say.Count(2+len(t.Of.Stakes), "stake"))
	}
	return feet + fmt.Sprintf("Stand %s wrapped and guyed, measure it. Type them under found, after: trial, before the rest is cut.", say.Numbered("arch", t.Of.Arches))
}

// jointed names what the sticks of an arch are joined by; empty where they are whole.
func (w taskWords) jointed() string {
	switch coupled := w.coupled() && !w.woundOver(); {
	case coupled && w.crowned():
		return "crowns and couplings"
	case coupled:
		return "the couplings"
	case w.crowned():
		return "the crowns"
	}
	return ""
}

// crowned reports whether any arch has legs that meet in a fitting at its crown.
func (w taskWords) crowned() bool { return crowned(w.plan) }

func crowned(p *layout.Plan) bool {
	return slices.ContainsFunc(p.Arches, func(a arch.Arch) bool { return !p.Spec.ArchOf(a.Number).OneStick })
}

// coupled reports whether a leg is of several sticks that come apart.
func (w taskWords) coupled() bool {
	return !crew.KeepsOn(w.plan.Spec) && w.plan.Spec.Arch.Joints != spec.Glued && slices.ContainsFunc(w.plan.Stock.Pieces, func(p stock.Piece) bool { return p.ID.Of > 1 })
}

// woundOver reports whether strings are still wound over the couplings as the crowns are parted: twisted apart then, they would tear.
func (w taskWords) woundOver() bool {
	at := func(a crew.Action) int {
		return slices.IndexFunc(w.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == a })
	}
	return at(crew.OpenJoints) < at(crew.Unwind)
}

// overCrown reports whether a run of strings goes on from one leg of an arch to the other, where they are parted.
func overCrown(c power.Chain) bool {
	for i, on := range c.On {
		if i > 0 && on.IsLeg() && c.On[i-1].IsLeg() && on.Number == c.On[i-1].Number && on.Kind != c.On[i-1].Kind {
			return true
		}
	}
	return false
}
