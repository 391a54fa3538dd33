// All tasks in their order, and what their makers share.

package crew

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// tasker lays the tasks in their order.
type tasker struct {
	Input
	units measure.System
	hands int // helpers and the organiser
	phase Phase
	list  []Task
}

// tasksOf orders the whole job, from the first dot of paint to the last stake out of the ground, or some phases of it alone.
func tasksOf(in Input, only ...Phase) []Task {
	b := &tasker{Input: in, units: in.Spec.Units, hands: in.Spec.Crew.Helpers + 1}
	steps := []struct {
		phase Phase
		do    func()
	}{{Marking, b.marking}, {Raising, b.trial}, {Driving, b.driving}, {Cutting, b.cutting}, {Wrapping, b.wrapping}, {Raising, b.raising}, {Hanging, b.hanging},
		{Powering, b.powering}, {Nights, b.nights}, {TakeDown, b.takeDown}}
	for _, s := range steps {
		if len(only) > 0 && !slices.Contains(only, s.phase) {
			continue
		}
		b.phase = s.phase
		s.do()
	}
	return b.list
}

// add appends a task that takes so many minutes of one pair of hands, shared among its people, in the phase at hand unless it says another. Of those who raise an arch
// the ones who carry it share the work: whoever stands by makes it no shorter.
func (b *tasker) add(work float64, t Task) {
	t.Phase = cmp.Or(t.Phase, b.phase)
	if len(t.Who.Roles) == 0 {
		t.Who.People = max(1, min(t.Who.People, b.hands))
	}
	share := min(t.Who.people(), b.hands)
	if len(t.Who.Roles) > 0 {
		share = min(share, practice.Carriers)
	}
	t.Minutes = work / float64(share)
	b.list = append(b.list, t)
}

// pairs is how many people share so much work that goes by pairs, as far as there are hands: a pair more for each so many minutes that it would take one pair. How many of
// them come at a time the schedule says.
func (b *tasker) pairs(work float64) int {
	return max(2, min(2*int(math.Ceil(work/2/practice.PairMinutes)), b.hands/2*2))
}

// state is a wanted state without a figure.
func state(w Wanted) Figure { return Figure{What: w} }

// cures lists remedies that serve whatever the amount.
func cures(list ...Remedy) []Cure {
	var out []Cure
	for _, r := range list {
		out = append(out, Cure{Do: r})
	}
	return out
}

// stakes parts the stakes into left legs, right legs and guys.
func (b *tasker) stakes() (left, right, guys []ground.Stake) {
	for _, s := range b.Ground.Stakes {
		switch {
		case s.Guy:
			guys = append(guys, s)
		case s.Side == spec.Left:
			left = append(left, s)
		default:
			right = append(right, s)
		}
	}
	return left, right, guys
}

// drives reports whether any stake is driven.
func (in Input) drives() bool {
	return slices.ContainsFunc(in.Ground.Stakes, func(s ground.Stake) bool { return !s.Base })
}

// guysOf returns an arch's guy stakes.
func (b *tasker) guysOf(number int) []ground.Stake { return b.tiesOf(number, false) }

// pegsOf returns the pegs of an arch's braces.
func (b *tasker) pegsOf(number int) []ground.Stake { return b.tiesOf(number, true) }

func (b *tasker) tiesOf(number int, braces bool) (list []ground.Stake) {
	for _, s := range b.Ground.Stakes {
		if s.Guy && s.Arch == number && s.Bay > 0 == braces {
			list = append(list, s)
		}
	}
	return list
}

// ladder returns the tallest crown's height, and whether it is out of reach from the ground.
func (b *tasker) ladder() (measure.Length, bool) {
	top := measure.Length(0)
	for _, a := range b.Arches {
		top = max(top, a.Crown)
	}
	return top, top > practice.Reach(b.units)
}

// climbs returns the ladder where one is needed, for a task at the crowns.
func (b *tasker) climbs(uses ...Need) []Need { return b.climbing(1, uses...) }

// climbing returns a ladder for each of so many pairs where one is needed.
func (b *tasker) climbing(pairs int, uses ...Need) []Need {
	if top, need := b.ladder(); need {
		uses = append(uses, long(Stepladder, pairs, top))
	}
	return uses
}

// atLadders is how many people share so much work of which every pair has a ladder, where one is needed.
func (b *tasker) atLadders(work float64) int {
	if _, need := b.ladder(); !need {
		return b.pairs(work)
	}
	return max(2, min(b.pairs(work), 2*b.Spec.Crew.Tools.Ladders))
}

// spares is how many to have over so many.
func (b *tasker) spares(n int) int { return practice.Spares(n, b.Spec.Stock.Spares) }

// spareStrings is how many strings to have over: of each kind so many as are bought.
func (b *tasker) spareStrings() (n int) {
	kinds := map[string]int{}
	for _, s := range b.Lights.Strings {
		kinds[s.Kind]++
	}
	for _, count := range kinds {
		n += b.spares(count)
	}
	return n
}

func numbers(list []arch.Arch) (n []int) {
	for _, a := range list {
		n = append(n, a.Number)
	}
	return n
}

// indexes lists 0 to n−1.
func indexes(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}
