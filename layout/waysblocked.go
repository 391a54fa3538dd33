package layout

import (
	"fmt"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// waysBlocked tells of what stands before side ways, the entrance and the exit, and of hard ground there, or where arches are raised, that may stand up for all the spec says.
func (p *Plan) waysBlocked() {
	s := p.Spec
	unsure := make([][]string, len(s.Site.Features)) // where each lies
	look := func(there []spec.Point, place, key string, cure []finding.Change, or string) {
		tell := func(names []string, verb [2]string, do string) {
			if len(names) > 0 {
				p.note([]finding.Finding{{Level: finding.LookAt, Code: "way-is-blocked", Key: key, Cure: cure, Text: fmt.Sprintf("%s %s within %s before %s, where people step out. %s%s.",
					say.Capital(say.And(names)), say.Agree(len(names), verb[0], verb[1]), s.Units.Room(practice.OnGround(s.Units).Ahead), place, do, or)}})
			}
		}
		names := ground.Standing(s, there)
		tell(names, [2]string{"stands", "stand"}, "Clear the ground")
		var marks []string // of what stands up or lies flush
		for _, m := range p.Ground.Marks {
			if ground.Inside(m.At, there) && !slices.Contains(names, m.Name) {
				marks = append(marks, m.Name)
			}
		}
		tell(marks, [2]string{"is a mark", "are marks"}, "Light it up and bar it off if it stands up")
		for _, i := range ground.Unsure(s, there) {
			unsure[i] = append(unsure[i], "before "+place)
		}
	}
	for _, w := range s.SideWays() {
		i := slices.Index(s.Tunnel.Ways, w)
		look(p.Ground.BeforeWay(s, w), fmt.Sprintf("the way at bay %d %s", w.Bay, w.Wall), fmt.Sprintf("tunnel.ways[%d]", i), p.freeBay(i), "")
	}
	look(p.Ground.BeforeEnd(s, false), "the entrance", "site.start", nil, ", or move the tunnel")
	look(p.Ground.BeforeEnd(s, true), "the exit", "site.start", nil, ", or move the tunnel")

	raised, ways := make([][]int, len(unsure)), p.WaysOut()
	for _, a := range p.Arches {
		if a.Kind == nil {
			continue
		}
		foot := ground.Leg(ways.First(a.Number).Other(), a.Number)
		for _, i := range ground.Unsure(s, p.Ground.WayOut(s, foot, p.wayOut(a))) {
			raised[i] = append(raised[i], a.Number)
		}
	}
	for i, where := range unsure {
		if n := len(raised[i]); n > 0 {
			where = append(where, fmt.Sprintf("where %s %s raised", say.Numbered("arch", raised[i]), say.Agree(n, "is", "are")))
		}
		if len(where) > 0 {
			p.note([]finding.Finding{{Level: finding.Note, Code: "height-not-known", Key: fmt.Sprintf("site.features[%d]", i),
				Text: fmt.Sprintf("%s lies %s: taken as flat paving. Give its height if it stands up.", say.Capital(s.Site.Features[i].Name), say.And(where))}})
		}
	}
}

// freeBay finds the nearest bay of a side way's wall that opens onto free ground and that nothing closes. A gap in the rows is none of the ways.
func (p *Plan) freeBay(way int) []finding.Change {
	s := p.Spec
	if way < 0 || len(ground.Standing(s, p.Ground.BeforeWay(s, s.Tunnel.Ways[way]))) == 0 {
		return nil
	}
	w := s.Tunnel.Ways[way]
	free := func(bay int) bool {
		n, there := *s, p.Ground.BeforeWay(s, spec.Way{Bay: bay, Wall: w.Wall})
		if there == nil || s.IsWay(w.Wall, bay) || len(ground.Standing(s, there))+len(ground.Unsure(s, there)) > 0 {
			return false
		}
		n.Tunnel.Ways = slices.Clone(s.Tunnel.Ways)
		n.Tunnel.Ways[way].Bay = bay
		return !finding.Has(ground.Lay(&n, p.onGround(&n)).Findings, "way-is-closed")
	}
	for off := 1; off < s.Tunnel.Arches; off++ {
		for _, bay := range []int{w.Bay + off, w.Bay - off} {
			if free(bay) {
				return []finding.Change{{Key: fmt.Sprintf("tunnel.ways[%d].bay", way), Value: fmt.Sprint(bay)}}
			}
		}
	}
	return nil
}
