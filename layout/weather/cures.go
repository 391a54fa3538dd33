package weather

import (
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Change is a value for one key of the spec: a measure.Length for arch.span, a spec.Stake for arch.stake, legs as [2][]measure.Length for arch.sticks, spec.Guys for guys, spec.Braces for braces.
type Change struct {
	Key   string
	Value any
}

// On returns the spec with the change made, in the exceptions too; those whose span differs keep their difference.
func (c Change) On(s *spec.Spec) *spec.Spec {
	n := *s
	n.Except = slices.Clone(s.Except)
	arches := []*spec.Arch{&n.Arch}
	for i := range n.Except {
		arches = append(arches, &n.Except[i].Arch)
	}
	switch v := c.Value.(type) {
	case measure.Length:
		by := v - s.Arch.Span
		for _, a := range arches {
			a.Span += by
		}
	case spec.Stake:
		for _, a := range arches {
			a.Stake = v
		}
	case [2][]measure.Length:
		n.Arch.Left, n.Arch.Right = v[0], v[1]
	case spec.Guys:
		n.Guys = v
	case spec.Braces:
		n.Braces = v
	}
	return &n
}

// Cure is one rung of the ladder of cures: what to change of the spec as the rungs before have it, what the tunnel then comes to, and what it costs more.
type Cure struct {
	Change       Change
	Inside, Down Gust
	Price        float64
}

// Changes lists what may be changed of a spec's stakes, guys, braces, span and sticks for its arches to bear more, a step of each.
func Changes(s *spec.Spec, k *arch.Kind) (list []Change) {
	if stake := s.Arch.Stake; s.Arch.Foot == nil {
		if bar, ok := thicker(stake.Bar, s.Arch.Pipe); ok {
			thick := stake
			thick.Bar = bar
			list = append(list, Change{"arch.stake", thick})
		}
		stake.Depth += grip(s.Units) * 4
		stake.Length = max(stake.Length, OutFor(stake.Depth*3/2, s.Units))
		list = append(list, Change{"arch.stake", stake})
	}
	for _, g := range betterGuys(s, k) {
		list = append(list, Change{"guys", g})
	}
	if n := s.Tunnel.Arches; n > 1 && s.Ridge.Present {
		list = append(list, moreHeld(s, k)...)
	}
	if s.Arch.Missing == spec.Height {
		for _, by := range []measure.Length{-step(s.Units), step(s.Units)} {
			list = append(list, Change{"arch.span", s.Arch.Span + by})
		}
	}
	if legs, ok := shortLow(s.Arch); ok {
		list = append(list, Change{"arch.sticks", legs})
	}
	return list
}

// betterGuys are the guys there are with their stakes farther out or deeper, or tied higher.
func betterGuys(s *spec.Spec, k *arch.Kind) (list []spec.Guys) {
	g := s.Guys
	if len(g.Arches) == 0 {
		return nil
	}
	out := g
	if out.Out = FarOut(s); out.Out <= g.Out {
		out.Out = LaneOut(s, g.Arches, g.Out+2*step(s.Units))
	}
	list = append(list, out)
	if high := k.HighestTie(); high > g.From+3*measure.Inch {
		tied := g
		tied.From = high
		list = append(list, tied)
	}
	deep := g
	deep.Stake.Depth += grip(s.Units) * 4
	deep.Stake.Length = max(deep.Stake.Length, OutFor(deep.Stake.Depth*5/4, s.Units))
	return append(list, deep)
}

// moreHeld are the cheapest guys, tied as those that there are, and the cheapest braces that hold more of the tunnel.
func moreHeld(s *spec.Spec, k *arch.Kind) (list []Change) {
	all := Bracings(s, k)
	if i := slices.IndexFunc(all, func(b Bracing) bool { return len(b.Guys.Arches) > len(s.Guys.Arches) }); i >= 0 {
		guys := all[i].Guys
		if len(s.Guys.Arches) > 0 {
			guys = s.Guys
			guys.Arches = all[i].Guys.Arches
			guys.Out = LaneOut(s, guys.Arches, guys.Out)
		}
		list = append(list, Change{"guys", guys})
	}
	if i := slices.IndexFunc(all, func(b Bracing) bool { return len(b.Braces.Bays) > len(s.Braces.Bays) }); i >= 0 {
		braces := all[i].Braces
		braces.Line = s.Braces.Line
		list = append(list, Change{"braces", braces})
	}
	return list
}

// thicker returns the next thicker bar of the same make that enters the pipe.
func thicker(bar catalog.Bar, pipe catalog.Pipe) (best catalog.Bar, ok bool) {
	for _, b := range catalog.Bars() {
		if b.Diameter > bar.Diameter && b.OverRibs <= pipe.ID() && (b.Number > 0) == (bar.Number > 0) && (!ok || b.Diameter < best.Diameter) {
			best, ok = b, true
		}
	}
	return best, ok
}

// grip is the step that depths are told in: an inch or a centimetre.
func grip(u measure.System) measure.Length { return measure.By(u, measure.Inch, 10) }

// shortLow returns the legs with their shortest stick at the ground, where a coupling at the tightest bend gave way to it.
func shortLow(a spec.Arch) (legs [2][]measure.Length, ok bool) {
	for i, leg := range [2][]measure.Length{a.Left, a.Right} {
		legs[i] = slices.Clone(leg)
		slices.Sort(legs[i])
		ok = ok || !slices.Equal(legs[i], leg)
	}
	return legs, ok && !a.OneStick
}

// Score orders specs by how near they come to their aims: by the nearer of the two first, then by both.
func (w *Weather) Score() float64 {
	if w == nil {
		return 0
	}
	const stands = .02 // of one that stands in still air, over one that does not
	if len(w.Bears) == 0 {
		return stands / 2 * min(w.Factor, 1)
	}
	needs := w.of.needs()
	share := func(v measure.Speed) float64 { return min(float64(v/needs), 1) }
	return stands + w.Reaches() + .1*share(w.Damage) + .1*share(w.Collapse)
}
