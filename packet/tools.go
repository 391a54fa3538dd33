package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
)

// ladder reports whether the crowns are out of reach from the ground.
func (b *binder) ladder() bool {
	for _, k := range b.plan.Kinds {
		if k.Crown > practice.Reach(b.spec.Units) {
			return true
		}
	}
	return false
}

// tools says what a crew brings, from what this tunnel has.
func (b *binder) tools(phase crew.Phase) string {
	p := b.plan
	legs, guys := b.stakeCounts()
	var list []string
	add := func(when bool, what string) {
		if when {
			list = append(list, what)
		}
	}
	add(phase == crew.Driving || phase == crew.Cutting || phase == crew.Raising, "gloves, eye protection")
	switch phase {
	case crew.Marking:
		list = append(list, "two long tapes", "a line with two pins", "white marking paint", "the phone")
	case crew.Driving:
		add(true, "the locating ticket")
		add(true, fmt.Sprintf("%d stakes with %d caps", legs+guys, legs+guys))
		list = append(list, "a driving cap or sledge hammer", "a level", "a long tape", "coloured tape", "a luggage scale")
	case crew.Cutting:
		list = append(list, "a saw or pipe cutter with its clamp", "a short tape", "a scraper for burrs", "a marker", "a ground sheet", "a rubber mallet")
	case crew.Wrapping:
		list = append(list, "two trestles", fmt.Sprintf("%d strings and the spares", len(p.Strings)), "a short tape", "flagging tape", "ties and cutters", "an outlet with ground-fault protection", "a reject bag")
	case crew.Raising:
		list = append(list, "a rubber mallet", "crown fittings", "ridge pieces")
		add(guys > 0, fmt.Sprintf("%d guys with their tighteners", guys))
		list = append(list, "a long tape", "a string line", "a bucket for the caps")
		add(b.ladder(), "a stepladder")
	case crew.Hanging:
		t := b.spec.Tunnel
		list = append(list, fmt.Sprintf("a stick %s long and one %s long", b.spec.Units.Room(t.OpeningHeight), b.spec.Units.Room(t.OpeningWidth)), "ties and cutters")
		add(b.ladder() && len(p.Lights.Rows)+len(p.Lights.Drops) > 0, "a stepladder")
	case crew.Powering:
		list = append(list, "cords, taps and plug covers", "a lamp to test with", "the timers", "a torch")
	}
	return strings.Join(list, ", ") + "."
}
