package layout

import (
	"fmt"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// WaysOut is the ground beside the walk that arches, joined straight, are raised from and walked out onto: the longest way, the arches at which something of the site lies in the right
// leg's, and those at which it lies in both, with its names.
type WaysOut struct {
	Long   measure.Length
	Left   []int // the left leg is walked out
	Ask    []int
	InLeft []string // what they go round
	InBoth []string
}

// WaysOut returns the ways of the arches that stand.
func (p *Plan) WaysOut() (w WaysOut) {
	for _, a := range p.Arches {
		if a.Kind == nil {
			continue
		}
		out := p.wayOut(a)
		w.Long = max(w.Long, out)
		there := p.Ground.OnWayOut(p.Spec, ground.Leg(spec.Right, a.Number), out)
		arches, names := &w.Left, &w.InLeft
		if len(p.Ground.OnWayOut(p.Spec, ground.Leg(spec.Left, a.Number), out)) > 0 {
			arches, names = &w.Ask, &w.InBoth
		}
		for i, name := range there {
			if i == 0 {
				*arches = append(*arches, a.Number)
			}
			if !slices.Contains(*names, name) {
				*names = append(*names, name)
			}
		}
	}
	return w
}

// wayOut is how far beside its stake an arch that lies flat reaches, with a step beyond for who holds its end.
func (p *Plan) wayOut(a arch.Arch) measure.Length {
	return a.Length - a.Span + practice.OnGround(p.Spec.Units).Aside
}

// First is the leg of an arch that goes over its stake first and comes off it last: the other is walked in, and out.
func (w WaysOut) First(arch int) spec.Side {
	if slices.Contains(w.Left, arch) {
		return spec.Right
	}
	return spec.Left
}

// Unlike are those of some arches whose legs go on and off in another order than one's. Of those at which it is asked nothing is known.
func (w WaysOut) Unlike(one int, arches []arch.Arch) (list []int) {
	for _, a := range arches {
		if n := a.Number; w.First(n) != w.First(one) && !slices.Contains(w.Ask, n) {
			list = append(list, n)
		}
	}
	return list
}

// noRoomToRaise tells of arches that find no free ground on either side to be raised from, before stakes are driven.
func (p *Plan) noRoomToRaise() {
	if w := p.WaysOut(); len(w.Ask) > 0 {
		p.note([]finding.Finding{{Level: finding.LookAt, Code: "no-room-to-raise", Key: "site.start",
			Text: fmt.Sprintf("Joined straight, %s %s %s clear beyond the far stake, and %s in the way on the right, others on the left. Clear one side, or move the walk.",
				say.Numbered("arch", w.Ask), say.Agree(len(w.Ask), "needs", "need"), p.Spec.Units.Room(w.Long), say.And(w.InBoth)+say.Agree(len(w.InBoth), " is", " are"))}})
	}
}
