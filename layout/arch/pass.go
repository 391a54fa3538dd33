package arch

import (
	"cmp"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Pass is a guy of an arch that passes another's leg on the way to its stake, seen in that arch's plane; on a bend as if the walk were straight.
type Pass struct {
	Guy, Leg int       // the arch it holds, the arch it passes
	Side     spec.Side // the wall both are in
	Ahead    bool      // toward the last arch

	share             float64        // of the guy's way along
	knot, stake, pipe measure.Length // from the middle, outward: where it is tied, its own foot's stake, the passed pipe at the guy's height there
}

// Near returns how far outside the middle of the passed pipe the guy runs whose stake stands so far outside its arch's foot; negative: inside.
func (p Pass) Near(aside measure.Length) measure.Length {
	return p.knot + (p.stake+aside-p.knot)*measure.Length(p.share) - p.pipe
}

// clears returns how far outside its arch's foot the guy's stake stands at the least where it passes the pipe on the outer side by as much as is called clear.
func (p Pass) clears(u measure.System) measure.Length {
	return (p.pipe+practice.GuyClear(u)-p.knot)/measure.Length(p.share) + p.knot - p.stake
}

// Passes lists the legs that guys of a spec pass, by guyed arch. arches are all of the tunnel's, in order.
func Passes(s *spec.Spec, arches []Arch) (list []Pass) {
	for _, g := range s.Guys.Arches {
		if g <= 1 || g >= len(arches) {
			continue // it is held from outside the tunnel
		}
		knots, ok := fromMiddle(arches[g-1].Kind, s.Guys.From)
		if !ok {
			continue
		}
		for _, a := range arches {
			apart := s.Tunnel.Spacing * measure.Length(a.Number-g)
			share := float64(measure.Abs(apart) / s.Guys.Out)
			if apart == 0 || share >= 1 {
				continue
			}
			pipes, stands := fromMiddle(a.Kind, s.Guys.From*measure.Length(1-share))
			if !stands {
				continue
			}
			for _, side := range []spec.Side{spec.Left, spec.Right} {
				list = append(list, Pass{g, a.Number, side, apart > 0, share, knots[side], arches[g-1].Span / 2, pipes[side]})
			}
		}
	}
	return list
}

// fromMiddle returns how far out the middle each leg's pipe is at a height, false above the arch.
func fromMiddle(k *Kind, height measure.Length) (out [2]measure.Length, ok bool) {
	left, right, ok := k.Across(height)
	return [2]measure.Length{spec.Left: -left.X, spec.Right: right.X}, ok
}

// Aside returns how far outside their feet the guy stakes of arches between others stand, all alike: as far as keeps them clear of feet and each guy a hand outside the legs it passes, where
// that is no further than practice allows.
func Aside(s *spec.Spec, arches []Arch) measure.Length {
	lim := practice.OnGround(s.Units)
	aside := lim.StepOut
	for _, p := range Passes(s, arches) {
		aside = max(aside, measure.RoundUp(p.clears(s.Units), practice.Round(s.Units)))
	}
	if aside > lim.StepMost {
		return lim.StepOut
	}
	return aside
}

// Clear reports whether the guy of a pass keeps a hand outside the pipe.
func (p Pass) Clear(aside measure.Length, u measure.System) bool {
	return p.Near(aside) >= practice.GuyClear(u)-measure.Length(1e-6)
}

// Nearest returns the pass that is least outside its leg, or furthest inside, and false where no guy passes a leg.
func Nearest(list []Pass, aside measure.Length) (Pass, bool) {
	if len(list) == 0 {
		return Pass{}, false
	}
	return slices.MinFunc(list, func(a, b Pass) int {
		return cmp.Compare(a.Near(aside), b.Near(aside))
	}), true
}
