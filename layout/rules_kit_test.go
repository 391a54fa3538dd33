package layout_test

import (
	"slices"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/stock"
)

// measuredBy is the longest figure that a crew reads off a tape, from the plan itself: sticks, lines and laths at the saw, ribbons and rows' marks at the bench, feet and crowns.
func measuredBy(p *layout.Plan) map[crew.Phase]measure.Length {
	far := map[crew.Phase]measure.Length{crew.Cutting: max(p.Spec.Tunnel.OpeningHeight, p.Spec.Tunnel.OpeningWidth)}
	add := func(l measure.Length, phases ...crew.Phase) {
		for _, phase := range phases {
			far[phase] = max(far[phase], l)
		}
	}
	for _, b := range p.Cuts.Bars {
		if !b.Wrapped {
			add(b.Stock, crew.Cutting)
		}
	}
	for _, i := range p.Shopping {
		for _, r := range i.Ropes {
			add(r.Length, crew.Cutting)
		}
	}
	for _, r := range p.Lights.Rows {
		add(r.Tape, crew.Wrapping)
	}
	for _, task := range p.Crew.Tasks {
		for _, i := range task.Of.Wraps {
			if task.Action == crew.WindPipe {
				for _, f := range p.Lights.Wraps[i].Flags {
					add(f.Tape, crew.Wrapping)
				}
			}
		}
	}
	for _, a := range p.Arches {
		add(a.Span, crew.Driving, crew.Raising)
		add(a.Crown, crew.Raising)
	}
	return far
}

// tapesReach: whoever measures brings a tape as long as what is measured, or as any tape over grass; at the saw and the bench a long one only where a pocket tape does not reach, and none longer than that takes.
func tapesReach(t *testing.T, p *layout.Plan) {
	u := p.Spec.Units
	pocket, most := measure.By(u, 16*measure.Foot, 5*measure.Metre), practice.OnGround(u).Reach
	for phase, far := range measuredBy(p) {
		kit := p.Crew.Kit(phase)
		tape := func(thing crew.Thing) int {
			return slices.IndexFunc(kit, func(n crew.Need) bool { return n.Thing == thing })
		}
		reach, long := measure.Length(0), tape(crew.LongTape)
		if tape(crew.ShortTape) >= 0 {
			reach = pocket
		}
		if long >= 0 {
			reach = max(reach, kit[long].Length)
		}
		measures := slices.ContainsFunc(p.Crew.Tasks, func(task crew.Task) bool {
			return task.Phase == phase && slices.Contains([]crew.Action{crew.CutLegs, crew.CutTrial, crew.NameSticks, crew.CutLines, crew.FlagRows, crew.WindPipe, crew.MeasureWidths, crew.MeasureArch}, task.Action)
		})
		if measures && reach < min(far, most) {
			t.Errorf("%s measures up to %s and brings tapes of up to %s", phase, u.Room(far), u.Room(reach))
		}
		if long < 0 || phase != crew.Cutting && phase != crew.Wrapping {
			continue
		}
		for _, a := range p.Lights.Wraps { // a band where a guy is tied is beyond a flag at times
			if phase == crew.Wrapping {
				far = max(far, a.To)
			}
		}
		shorter := slices.DeleteFunc(practice.Tapes(u), func(l measure.Length) bool { return l >= kit[long].Length })
		if far <= pocket || len(shorter) > 0 && far <= shorter[len(shorter)-1] {
			t.Errorf("%s measures up to %s and brings a tape of %s", phase, u.Room(far), u.Room(kit[long].Length))
		}
	}
}

// sawsAreGuarded: where sticks are sawn or may be trimmed, laths sawn or bars, there is a clamp and eye protection; where it is pipe a saw and a scraper too.
func sawsAreGuarded(t *testing.T, p *layout.Plan) {
	var kit []crew.Thing
	for _, n := range p.Crew.Kit(crew.Cutting) {
		kit = append(kit, n.Thing)
	}
	var want []crew.Thing
	if p.Spec.Tunnel.OpeningWidth > 0 && p.Spec.Tunnel.OpeningHeight > 0 {
		want = []crew.Thing{crew.Saw, crew.Clamp, crew.EyeProtection, crew.Lath}
	}
	for _, b := range p.Cuts.Bars {
		switch {
		case b.Wrapped:
		case !b.Steel():
			want = append(want, crew.Saw, crew.Clamp, crew.EyeProtection, crew.Scraper)
		case !b.Whole():
			want = append(want, crew.Clamp, crew.EyeProtection)
		}
	}
	for _, thing := range want {
		if !slices.Contains(kit, thing) {
			t.Errorf("the crew at the saw brings no thing %d: %v", thing, kit)
			return
		}
	}
}

// lathsSuffice: beside the laths that are sawn for the opening there are those of the gauge stick, and of the stick that crowns are marked on.
func lathsSuffice(t *testing.T, p *layout.Plan) {
	left := 0
	for _, i := range p.Shopping {
		if i.Kind == stock.Lath {
			left += i.Need
		}
	}
	for _, n := range p.Crew.Kit(crew.Cutting) {
		if n.Thing == crew.Lath {
			left -= n.Count
		}
	}
	for _, n := range slices.Concat(p.Crew.Kit(crew.Marking), p.Crew.Kit(crew.Driving), p.Crew.Kit(crew.Nights)) {
		need := n.Count
		switch n.Thing {
		case crew.CrownStick:
			need = practice.Laths(p.Spec.Units, n.Length)
		case crew.Lath:
		default:
			continue
		}
		if left < need {
			t.Errorf("a stick is made of %d laths, and %d are left beside the opening's", need, left)
		}
	}
}

// stringReaches: the line that a straight row is painted along reaches past all that stands along the row, farthest stake to farthest; one without a length is a usual reel of 100 ft or 30 m.
func stringReaches(t *testing.T, p *layout.Plan) {
	u, far := p.Spec.Units, measure.Length(0)
	for _, a := range p.Stakes {
		for _, b := range p.Stakes {
			if p.Ground.Straight && a.Side == b.Side {
				far = max(far, ground.Distance(a.At(), b.At()))
			}
		}
	}
	for _, task := range p.Crew.Tasks {
		for _, n := range task.Uses {
			long := max(n.Length, measure.By(u, 100*measure.Foot, 30*measure.Metre))
			if n.Thing == crew.StringLine && task.Phase == crew.Marking && long <= far {
				t.Errorf("a row of %s is painted along a line of %s", u.Room(far), u.Room(long))
			}
		}
	}
}
