package layout

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// leastKept is the least of its modulus that creep leaves to rigid PVC in a season: half of the share that our assumption of arch.late modulus leaves for good, 1400 of 3200 MPa. What
// is found softer has another cause.
const leastKept = 0.22

// changed takes into the spec what was found of arches that stood, then what it leaves open, and reports whether the arches are to be solved again for either.
func (p *Plan) changed() (again bool) { return p.asFound() || p.choose() }

// asFound reads what the arches' measured crowns tell, makes the softest of them the stiffness at season's end, and reports whether the arches are to be solved again for it. A tunnel
// that was found as planned, within what the plan gives or takes, is left as it is: a crown tells little of a stiff pipe.
func (p *Plan) asFound() (again bool) {
	s := p.Spec
	if len(s.Found.Arches) == 0 || p.Found != nil {
		return false
	}
	p.Found = []arch.AsFound{}
	share := measure.Share(1)
	stood := map[*arch.Kind]*arch.Kind{}
	for _, m := range s.Found.Arches {
		k := p.Arches[m.Arch-1].Kind
		if stood[k] == nil {
			own := *k
			own.Stand()
			stood[k] = &own
		}
		f, ok := stood[k].Found(m, s.Found.Trial)
		if !ok {
			continue
		}
		p.Found = append(p.Found, f)
		if !f.Off {
			continue
		}
		p.note([]finding.Finding{offPlan(f, s)})
		left := f.Left
		if !s.Found.Trial {
			left /= s.ArchOf(m.Arch).LateModulus
		}
		if f.Left >= leastKept {
			share = min(share, left)
		}
	}
	if share >= 1 {
		return false
	}
	n := *s
	n.Except = append([]spec.Except{}, s.Except...)
	n.Arch.LateModulus *= share
	for i := range n.Except {
		n.Except[i].Arch.LateModulus *= share
	}
	n.Defaults = append([]spec.Default{}, s.Defaults...)
	n.Chosen(spec.Default{Key: "arch.late modulus", Value: measure.Percent(n.Arch.LateModulus), Why: "as the crowns under found tell"})
	p.Spec = &n
	return true
}

// offPlan says what a crown means that was not found as planned.
func offPlan(f arch.AsFound, s *spec.Spec) finding.Finding {
	u, at := s.Units, "at season's end"
	if s.Found.Trial {
		at = "as raised"
	}
	text := fmt.Sprintf("Arch %d was found %s high, planned %s %s.", f.Arch, u.Tape(f.Crown), u.Tape(f.Planned), at)
	var may []string
	switch {
	case f.Crown > f.Planned:
		text += " Its sticks are longer, its feet closer, or the tape was not from the ground line: measure again."
	case f.Left >= leastKept:
		may = append(may, fmt.Sprintf("pipe with %s of its stiffness left does that, and the plan now reckons with it", measure.Percent(f.Left)))
	default:
		may = append(may, "that is more than soft pipe alone: look for a crease, a joint that slipped, a stake that leans, and replace that leg")
	}
	if f.Spread > 0 {
		may = append(may, fmt.Sprintf("so do feet %s farther apart: tape the span too, and print again", u.Inches(f.Spread)))
	}
	if len(may) > 0 {
		text += " " + say.Capital(strings.Join(may, "; ")) + "."
	}
	return finding.Finding{Level: finding.LookAt, Code: "found-off-plan", Key: fmt.Sprintf("found.crown.%d", f.Arch), Text: text}
}

// wrappedOwned tells of legs that come out of the shed wrapped, and that the spec's shed has not: they are made again.
func (p *Plan) wrappedOwned() {
	if !p.Spec.Found.Wrapped {
		return
	}
	if w := p.Stock.Wrapped; w.Lack > 0 {
		p.note([]finding.Finding{{Level: finding.LookAt, Code: "wrapped-not-owned", Key: "found.wrapped",
			Text: fmt.Sprintf("The legs are said to be in the shed, wrapped. By what the shed is said to have, %d of %d are not: %s as long as theirs and %s are missing. They are made and wound like new ones. List what is there.",
				w.Lack, w.Lack+len(w.Legs), say.Count(w.Sticks, "stick"), say.Count(w.Strings, "string"))}})
	}
}

// keptStripped tells that nothing is kept wrapped as the spec has it: where no string is wound on legs alone, for one that goes over a crown comes off when the arch is parted there, and in
// every second year.
func (p *Plan) keptStripped() {
	onLegs := slices.ContainsFunc(p.Strings, func(s lights.String) bool { return s.Run.Wound() && s.Run.IsLeg() })
	switch {
	case p.Spec.Store != spec.Wrapped:
	case !onLegs:
		p.note([]finding.Finding{{Level: finding.Note, Code: "nothing-kept-wrapped", Key: "store",
			Text: "Only strings wound on legs alone stay on in the shed, and here none are: one over the crown comes off when the arch is parted. All are unwound and bagged."}})
	case !crew.KeepsOn(p.Spec):
		p.note([]finding.Finding{{Level: finding.Note, Code: "nothing-kept-wrapped", Key: "store",
			Text: "Legs that came wrapped are stripped this time, so that nothing wears through unseen: take found.wrapped out of next year's spec."}})
	}
}
