package ground

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// mostNames is how many stakes, arches or bays a finding names; of more it counts the rest.
const mostNames = 6

// findings returns what the plan of the site has to say about the tunnel, and the smallest move that clears its stakes.
func findings(t tunnel, stakes []Stake) ([]finding.Finding, *Shift) {
	list := hazards(t.spec)
	found := stakeFindings(t.spec, stakes, list)
	around := surroundings(t)
	var shift *Shift
	if len(found) > 0 {
		var known bool
		move := mover{tunnel: t, stakes: stakes, list: list, before: around}
		shift, known = move.shift()
		advice := ""
		switch u := t.spec.Units; {
		case shift != nil:
			advice = fmt.Sprintf(" Moving the whole tunnel %s clears every stake of what this plan knows.", shift.says(u))
		case known:
			advice = fmt.Sprintf(" No move of the whole tunnel by up to %s clears every stake.", u.Tape(practice.OnGround(u).Shift))
		}
		var cure []finding.Change
		if shift != nil {
			cure = move.startAt(*shift)
		}
		for i := range found {
			found[i].Text, found[i].Cure = found[i].Text+advice, cure
		}
	}
	return slices.Concat(found, around, routeFindings(t), guyFindings(t.spec, stakes), closedWays(t), guyHeightFindings(t), slopeFindings(t), walkFindings(t)), shift
}

// stakeFindings says which stakes stand where none should.
//
// A guy stake whose place the spec left to a default never forbids building.
func stakeFindings(s *spec.Spec, stakes []Stake, list []hazard) []finding.Finding {
	guysGiven, bracesGiven := s.Given("guys.arches") && s.Given("guys.out"), s.Given("braces.bays")
	var findings []finding.Finding
	for _, h := range list {
		who := map[finding.Level][]string{}
		least := map[finding.Level]measure.Length{}
		for _, stake := range stakes {
			gap, yes := h.bothers(stake.At())
			if !yes || stake.Base {
				continue
			}
			level := h.level
			if given := guysGiven && stake.Bay == 0 || bracesGiven && stake.Bay > 0; stake.Guy && !given {
				level = max(level, finding.LookAt)
			}
			if len(who[level]) == 0 || gap < least[level] {
				least[level] = gap
			}
			who[level] = append(who[level], stake.String())
		}
		for _, level := range []finding.Level{finding.MustFix, finding.LookAt} {
			if len(who[level]) > 0 {
				findings = append(findings, finding.Finding{
					Level: level, Code: h.code, Text: h.says(who[level], least[level]), Key: h.key,
				})
			}
		}
	}
	return findings
}

// guyFindings says where two guy stakes want the same hole.
func guyFindings(s *spec.Spec, stakes []Stake) []finding.Finding {
	lim := practice.OnGround(s.Units)
	var pairs []string
	for i, a := range stakes {
		if !a.Guy {
			continue
		}
		for _, b := range stakes[:i] {
			if b.Guy && Distance(a.At(), b.At()) < lim.Share {
				pairs = append(pairs, fmt.Sprintf("%v with %v", b.StakeID, a.StakeID))
			}
		}
	}
	if len(pairs) == 0 {
		return nil
	}
	return []finding.Finding{{
		Level: finding.LookAt, Code: "guy-stakes-meet", Key: "guys",
		Text: fmt.Sprintf("Guy stakes come to the same spot: %s. Guy other arches, or change how far out the guys go.", say.Some(pairs, mostNames)),
	}}
}

// guyHigh is the share of the lowest crown's height at which guys go that were to be tied above it. Our own choice.
const guyHigh = 0.75

// leastTie and mostTie are what a spec may give.
const (
	leastTie = measure.Foot
	mostTie  = 30 * measure.Foot
)

// guyHeightFindings says where guys are tied above the arch, or too low on it to hold its crown: under half its height, common
// practice, no source.
func guyHeightFindings(t tunnel) []finding.Finding {
	s := t.spec
	var over, low []string
	least, most := measure.Length(math.Inf(1)), measure.Length(0) // crown
	for _, arch := range slices.Compact(slices.Sorted(slices.Values(s.Guys.Arches))) {
		if arch < 1 || arch > len(t.crowns) {
			continue
		}
		crown := t.crowns[arch-1]
		least, most = min(least, crown), max(most, crown)
		switch {
		case s.Guys.From > crown:
			over = append(over, fmt.Sprint(arch))
		case s.Guys.From < crown/2:
			low = append(low, fmt.Sprint(arch))
		}
	}
	var found []finding.Finding
	step := measure.By(s.Units, 3*measure.Inch, 50)
	report := func(level finding.Level, code string, tie measure.Length, text string) {
		f := finding.Finding{Level: level, Code: code, Text: text, Key: "guys.from"}
		if tie >= max(most/2, leastTie) && tie <= mostTie { // not too low for another arch
			f.Cure = []finding.Change{{Key: "guys.from", Value: s.Units.Written(tie)}}
		}
		found = append(found, f)
	}
	if len(over) > 0 {
		report(finding.MustFix, "guy-above-arch", -measure.RoundUp(-least*guyHigh, step), fmt.Sprintf("Guys are to be tied %s up, but the crown of %s %s is only %s up. Tie them lower.",
			s.Units.Tape(s.Guys.From), say.Agree(len(over), "arch", "arches"), say.Some(over, mostNames), s.Units.Tape(least)))
	}
	if len(low) > 0 {
		report(finding.LookAt, "guy-tied-low", measure.RoundUp(most/2, step), fmt.Sprintf("Guys tied %s up hold the legs of %s %s and leave the crown, %s up, free to lean along the tunnel. Tie them at %s or more.",
			s.Units.Tape(s.Guys.From), say.Agree(len(low), "arch", "arches"), say.Some(low, mostNames), s.Units.Tape(most), s.Units.Tape(most/2)))
	}
	return found
}
