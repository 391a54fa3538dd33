package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/say"
)

// bays says which bays turn and which climb, where the walk bends or slopes: the stakes set both.
func (r raising) bays() []block.Block {
	const right, left, climb, fall = 0, 1, 2, 3
	var bays [4][]int
	for _, f := range append(r.tasks.wanted(crew.BayTurn), r.tasks.wanted(crew.BayClimb)...) {
		way := right
		switch {
		case f.What == crew.BayTurn && f.Angle < 0:
			way = left
		case f.What == crew.BayClimb && f.Length < 0:
			way = fall
		case f.What == crew.BayClimb:
			way = climb
		}
		bays[way] = append(bays[way], f.Bays...)
	}
	verbs := [4][3]string{{"turns", "turn", " right"}, {"turns", "turn", " left"}, {"climbs", "climb"}, {"falls", "fall"}}
	var words []string
	for way, v := range verbs {
		if n := rising(bays[way]); len(n) > 0 {
			words = append(words, say.Numbered("bay", n)+" "+say.Agree(len(n), v[0], v[1])+v[2])
		}
	}
	if len(words) == 0 {
		return nil
	}
	text := say.Capital(strings.Join(words, ", ")) + ": ridges follow, arches stand plumb."
	return []block.Block{{Name: "bays", Gap: 2.5, Body: block.Words{Text: text}}}
}

// joining tells of the arches after the first what is too long for their picture: the stakes of their guys, which way round ridge pieces with lights go in, and at
// which crowns two of them are plugged together.
func (r raising) joining() (list []block.Block) {
	add := func(step int, text string) {
		list = append(list, block.Block{Name: "joining", Gap: 2, Body: block.Words{Text: fmt.Sprintf("Step %d. ", step) + strings.TrimSpace(text)}})
	}
	var held []ground.Stake // told here, the last of them in a block
	last := 0
	var later []ground.Stake // of the second arch, past arches that are not up when it stands
	if len(r.stand) > 1 {
		if to := r.heldTo(r.stand[1].Number); len(to) > mostStakes {
			past := func(s ground.Stake) bool { return reachOf(r.Plan, s) > s.Arch }
			now := slices.DeleteFunc(slices.Clone(to), past)
			held, later, last = now, slices.DeleteFunc(to, func(s ground.Stake) bool { return !past(s) }), len(list)
			add(max(r.step[crew.MeasureBay], r.step[crew.RaiseSame]), r.fixing(now))
		}
	}
	shown, unlike := r.stand[0].Number, ": R first, L last ("+say.And(r.ways.InLeft)+" at R)."
	if r.FromFar {
		unlike = ": L first, R last."
	}
	for k, arches := range [2][]int{r.ways.Unlike(shown, r.stand), r.ways.Ask} {
		if len(arches) > 0 {
			list = append(list, block.Block{Name: "ways in", Gap: 2, Body: block.Words{Text: say.Capital(say.Numbered("arch", arches)) + [2]string{unlike, ": ask (" + say.And(r.ways.InBoth) + ")."}[k]}})
		}
	}
	if from := r.prongsFrom(); from > 0 {
		add(r.step[from], r.ridgeProngs())
	}
	if t, ok := r.tasks.first(crew.RaiseRest, 0); ok && len(later)+len(t.Of.Stakes) > mostStakes {
		rest := slices.Concat(later, t.Of.Stakes)
		held, last = append(held, rest...), len(list)
		add(r.step[crew.RaiseRest], r.fixing(rest))
	}
	if slices.ContainsFunc(held, func(s ground.Stake) bool { return reachOf(r.Plan, s) > s.Arch }) { // the next one is walked in there
		words := list[last].Body.(block.Words)
		words.Text += " " + map[bool]string{true: "Stakes", false: "Weights"}[drives(r.Plan)] + " past arches not up: tie as those join."
		list[last].Body = words
	}
	return list
}

// prongsFrom is the step of the first ridge piece with lights, told for all; 0 where none has any.
func (r raising) prongsFrom() crew.Action {
	first := crew.Action(0)
	for _, w := range r.Plan.Wraps {
		switch {
		case firstRidge(r.Plan, w.On):
			return crew.MeasureBay
		case ofRidge(w):
			first = crew.RaiseRest
		}
	}
	return first
}

// ridgeProngs says which way round ridge pieces with lights go in and at which crowns they are plugged together, where that is short.
func (r raising) ridgeProngs() string {
	first, last := r.stand[0].Number, r.stand[len(r.stand)-1].Number
	toward := map[int][]int{} // ridge pieces by the arch that their prongs are toward
	for _, w := range r.Plan.Wraps {
		switch {
		case !ofRidge(w):
		case w.Crown:
			toward[last] = append(toward[last], w.On.Number)
		default:
			toward[first] = append(toward[first], w.On.Number)
		}
	}
	plugged := r.tasks.plugged(bayNumbers)
	var words []string
	runs := len(say.Runs(plugged))
	for _, end := range []int{first, last} {
		if list := rising(toward[end]); len(list) > 0 {
			runs += len(say.Runs(list))
			words = append(words, fmt.Sprintf("%s toward arch %d", say.Numbers(list), end))
		}
	}
	const few = 6 // stretches of numbers
	switch {
	case len(words) == 0:
		return ""
	case runs > few:
		return fmt.Sprintf("Ridge lights: as leaf %d, covered.", leafNumber("lights"))
	}
	text := "Ridge prongs: " + strings.Join(words, ", ") + "."
	var cover []string
	if len(plugged) > 0 {
		text += " Plug " + r.ridgeJoints(plugged) + "."
		cover = append(cover, "joints")
	}
	if len(r.tasks.shut(bayNumbers)) > 0 {
		cover = append(cover, "open sockets")
	}
	if cover != nil {
		text += " " + say.Capital(strings.Join(cover, ", ")) + ": cover."
	}
	return text
}

// ridgeJoints says what is plugged together at crowns.
func (r raising) ridgeJoints(crowns []int) string {
	switch legs, mixed := r.legsToRidge(); {
	case mixed:
		return fmt.Sprintf("ridge ends as leaf %d draws", leafNumber("lights"))
	case len(legs) > 0:
		return "only " + say.And(legs)
	}
	return "only ridge ends at " + say.Numbered("crown", crowns)
}

// legsToRidge says at which crowns a leg's string takes the prongs of a ridge piece; mixed where ridge pieces are plugged together too.
func (r raising) legsToRidge() (list []string, mixed bool) {
	var crowns [2][]int // by wall
	pieces := false
	for _, c := range r.Plan.Chains {
		for i, on := range c.On {
			if i == 0 || on.Kind != lights.Ridge || on.Drop {
				continue
			}
			before := c.On[i-1]
			if wall, ok := before.Wall(); ok {
				crowns[wall] = append(crowns[wall], before.Number)
			} else {
				pieces = pieces || before.Number != on.Number
			}
		}
	}
	into := " to ridge prongs"
	for wall, at := range crowns {
		if len(at) > 0 {
			list = append(list, [2]string{"left", "right"}[wall]+" legs"+into+" at "+say.Numbered("crown", rising(at)))
			into = ""
		}
	}
	return list, pieces && len(list) > 0
}

// rising sorts numbers and drops what is there twice.
func rising(list []int) []int {
	slices.Sort(list)
	return slices.Compact(list)
}
