package weather

import (
	"math"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Change is a value for one key of the spec: a measure.Length, a catalog.Bar, an arch set as []int, legs as [2][]measure.Length, or a spec.Braces.
type Change struct {
	Key   string // path
	Value any
}

// Cure is one rung of the ladder of cures: what to change of the spec as the rungs before have it, what the tunnel then comes to, and what it costs more.
type Cure struct {
	Change       Change
	Inside, Down Gust
	Price        float64
}

// Variant is a spec with one change.
type Variant struct {
	Change Change
	Spec   *spec.Spec
}

// Variants lists what may be changed of a spec's stakes, guys, braces, span and sticks for its arches to bear more, a step of each.
func Variants(s *spec.Spec, k *arch.Kind) (list []Variant) {
	add := func(key string, value any, change func(n *spec.Spec)) {
		n := *s
		n.Except = slices.Clone(s.Except)
		change(&n)
		list = append(list, Variant{Change{key, value}, &n})
	}
	all := func(n *spec.Spec, do func(a *spec.Arch)) {
		do(&n.Arch)
		for i := range n.Except {
			do(&n.Except[i].Arch)
		}
	}
	stake := s.Arch.Stake
	if s.Arch.Foot == nil {
		if bar, ok := thicker(stake.Bar, s.Arch.Pipe); ok {
			add("arch.stake.bar", bar, func(n *spec.Spec) { all(n, func(a *spec.Arch) { a.Stake.Bar = bar }) })
		}
		deeper := stake.Depth + grip(s.Units)*4
		add("arch.stake.depth", deeper, func(n *spec.Spec) {
			all(n, func(a *spec.Arch) { a.Stake.Depth = deeper; a.Stake.Length = max(a.Stake.Length, deeper*3/2) })
		})
	}
	if g := s.Guys; len(g.Arches) > 0 {
		guyVariants(s, k, add)
	}
	if n := s.Tunnel.Arches; n > 1 && s.Ridge.Present {
		list = append(list, holdVariants(s, k)...)
	}
	if s.Arch.Missing == spec.Height {
		for _, by := range []measure.Length{-step(s.Units), step(s.Units)} {
			span := s.Arch.Span + by
			add("arch.span", span, func(n *spec.Spec) { all(n, func(a *spec.Arch) { a.Span += by }) })
		}
	}
	if legs, ok := shortLow(s.Arch); ok {
		add("arch.sticks", legs, func(n *spec.Spec) { n.Arch.Left, n.Arch.Right = legs[0], legs[1] })
	}
	return list
}

// guyVariants are those of the guys there are.
func guyVariants(s *spec.Spec, k *arch.Kind, add func(key string, value any, change func(n *spec.Spec))) {
	g := s.Guys
	if out := roundOut(g.From, s.Units); out > g.Out {
		add("guys.out", out, func(n *spec.Spec) { n.Guys.Out = out })
	} else {
		farther := g.Out + 2*step(s.Units)
		add("guys.out", farther, func(n *spec.Spec) { n.Guys.Out = farther })
	}
	if high := k.HighestTie(); high > g.From+3*measure.Inch {
		add("guys.from", high, func(n *spec.Spec) { n.Guys.From = high })
	}
	deeper := g.Stake.Depth + grip(s.Units)*4
	add("guys.stake.depth", deeper, func(n *spec.Spec) {
		n.Guys.Stake.Depth, n.Guys.Stake.Length = deeper, max(n.Guys.Stake.Length, deeper*5/4)
	})
}

// holdVariants guy or brace more of the tunnel.
func holdVariants(s *spec.Spec, k *arch.Kind) (list []Variant) {
	n := s.Tunnel.Arches
	peg := spec.Peg(s.Arch.Stake.Bar, s.Units)
	for _, every := range []int{n, 6, 4, 3, 2, 1} {
		if arches := spread(1, n, every); len(arches) > len(s.Guys.Arches) {
			v := *s
			if v.Guys.Arches = arches; v.Guys.From == 0 {
				tie := max(k.HighestTie(), k.Crown/2)
				v.Guys.From, v.Guys.Out, v.Guys.Stake = tie, roundOut(tie, s.Units), peg
			}
			list = append(list, Variant{Change{"guys.arches", arches}, &v})
			break
		}
	}
	passed := passable(s)
	from := min(practice.BraceFrom(s.Units), roundDown(k.Crown*3/4, s.Units))
	for _, every := range []int{n, 6, 4, 3, 2, 1} {
		bays := slices.DeleteFunc(spread(1, n-1, every), func(bay int) bool { return slices.Contains(passed, bay) })
		if len(bays) > len(s.Braces.Bays) {
			v := *s
			v.Braces = spec.Braces{Bays: bays, From: from, Peg: peg, Line: s.Braces.Line}
			list = append(list, Variant{Change{"braces", v.Braces}, &v})
			break
		}
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
func grip(u measure.System) measure.Length {
	if u == measure.Metric {
		return 10 * measure.Millimetre
	}
	return measure.Inch
}

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
	if w == nil || len(w.Bears) == 0 {
		return 0
	}
	needs := w.of.needs()
	share := func(v measure.Speed) float64 { return math.Min(float64(v/needs), 1) }
	return w.Reaches() + .1*share(w.Damage) + .1*share(w.Collapse)
}
