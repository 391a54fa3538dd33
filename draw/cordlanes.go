package draw

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
)

// cordsOf gathers the cords of a plan with their lanes.
func cordsOf(p *layout.Plan) *CordPlan {
	c := &CordPlan{plan: p, first: planFirst, feet: map[spec.Point]ground.Stake{}}
	for _, s := range p.Stakes {
		if !s.Guy {
			c.feet[whole(s.At())] = s
		}
	}
	c.lanes()
	return c
}

// cordBefore is the number of the cord that comes to a joint, past three-ways; 0 at an outlet.
func cordBefore(f power.Feeder, joint int) int {
	for ; joint >= 0; joint = f.Joints[joint].From {
		if n := f.Joints[joint].Cord; n > 0 {
			return n
		}
	}
	return 0
}

// lanes gives every cord a lane beside its wall, no two that pass between the same feet in one: those along fewest arches next to the wall.
func (c *CordPlan) lanes() {
	for _, f := range c.plan.Power.Feeders {
		for _, j := range f.Joints {
			if j.Cord == 0 {
				continue
			}
			at := slices.IndexFunc(c.cords, func(k cordLine) bool { return k.number == j.Cord })
			if at < 0 { // else a further socket in the line of one cord
				at = len(c.cords)
				c.cords = append(c.cords, cordLine{number: j.Cord, inLine: max(0, len(j.Cords)-1), from: cordBefore(f, j.From), wall: j.Wall, outlet: j.From < 0 || f.Joints[j.From].Arch == 0, first: math.MaxInt})
			}
			k := &c.cords[at]
			k.path = append(k.path[:len(k.path):len(k.path)], j.Path...)
			for _, p := range j.Path {
				if foot, ok := c.footAt(p); ok && foot.Side == j.Wall {
					k.first, k.last = min(k.first, foot.Arch), max(k.last, foot.Arch)
				}
			}
		}
	}
	order := make([]*cordLine, len(c.cords))
	for i := range order {
		order[i] = &c.cords[i]
	}
	slices.SortStableFunc(order, func(a, b *cordLine) int { return cmp.Compare(a.last-a.first, b.last-b.first) })
	for i, k := range order {
		taken := func(o *cordLine) bool {
			return o.wall == k.wall && o.lane == k.lane && o.first < k.last && k.first < o.last
		}
		for slices.ContainsFunc(order[:i], taken) {
			k.lane++
		}
	}
}
