package power

import (
	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// grower makes joints of lines of one kind of cord.
type grower struct {
	*feeding
	source source
	cord   catalog.Cord
	joints []Joint
}

// grow returns the joints of some lines from one socket. More than one begin at a three-way in the outlet.
func (f *feeding) grow(src source, lines []line, cord catalog.Cord) []Joint {
	g := grower{feeding: f, source: src, cord: cord}
	root := -1
	if len(lines) > 1 {
		root = 0
		end := f.outletEnd(src.outlet.Name)
		g.joints = append(g.joints, Joint{End: end, From: -1, Path: []spec.Point{src.outlet.At}, Taps: 1, Fans: f.fans})
	}
	for _, l := range lines {
		g.line(root, l)
	}
	g.flow()
	return g.joints
}

// line adds one line's joints.
func (g *grower) line(from int, l line) {
	cur, used := from, make([]int, len(l.stops))
	for i, d := range l.deeds {
		s := l.stops[d.call]
		if len(d.cords) > 0 || d.inline != nil || cur == from {
			j := g.foot(l.side, s.arch)
			j.From = cur
			g.lead(&j, from, l.side, s.arch)
			if j.Cords = d.cords; d.inline != nil {
				j.Cords = append(j.Cords, d.inline.Length)
				j.Socket, j.Of = 1, d.inline.Sockets
				j.Copper = d.inline.Lead()
			}
			for _, c := range d.cords {
				j.Of = 1
				j.Copper += c
			}
			if len(j.Cords) == 0 { // its plug reaches the outlet
				j.Lies, j.Path, j.Over = 0, j.Path[:1], false
			}
			cur = g.add(j)
			if d.inline != nil {
				g.joints[cur].Copper = d.inline.Lead()
			}
		}
		if d.tap {
			g.joints[cur].Taps, g.joints[cur].Fans = 1, g.fans
		}
		for range d.serves {
			g.want(cur, l.side, s.wants[used[d.call]])
			used[d.call]++
		}
		if d.spare > 0 {
			g.joints[cur].Spare = d.spare
		}
		if len(d.leaf) > 0 {
			g.leaf(cur, l.side, l.stops[d.call+1], d.leaf)
		}
		if d.next > 0 {
			to := l.stops[l.deeds[i+1].call]
			j := g.foot(l.side, to.arch)
			b := g.joints[cur]
			j.From, j.Socket, j.Of, j.Skips = cur, b.Socket+d.next, b.Of, d.next-1
			j.Copper = measure.Length(d.next) * g.apart(b)
			g.lead(&j, from, l.side, to.arch)
			g.joints = append(g.joints, j)
			cur = len(g.joints) - 1
		}
	}
}

// leaf serves a stop by a cord of its own.
func (g *grower) leaf(from int, side spec.Side, s stop, cords []measure.Length) {
	j := g.foot(side, s.arch)
	j.From, j.Cords, j.Of = from, cords, 1
	g.lead(&j, -2, side, s.arch)
	for _, c := range cords {
		j.Copper += c
	}
	g.want(g.add(j), side, s.wants[0])
}

// apart returns how far apart the sockets of a joint's cord are.
func (g *grower) apart(j Joint) measure.Length {
	first := j
	for first.Socket > 1 {
		first = g.joints[first.From]
	}
	for _, in := range g.in.Spec.Power.Inline {
		if in.Cord.Name == g.cord.Name && in.Sockets == first.Of && in.Length == first.Cords[len(first.Cords)-1] {
			return in.Apart
		}
	}
	return 0
}

// foot returns a joint at a foot, its socket tied to the leg.
func (g *grower) foot(side spec.Side, arch int) Joint {
	k := g.site.feet[side][arch]
	end := footEnd(k)
	end.At = lights.Place{Spot: lights.AtFoot, Part: lights.Leg(side, arch+1)}
	return Joint{End: end, Wall: side, Arch: arch + 1}
}

// lead says how the cord to a joint lies: from the outlet, or along the wall from the joint before.
func (g *grower) lead(j *Joint, root int, side spec.Side, arch int) {
	if j.From == root {
		way := g.source.ways[side]
		j.Lies, j.Path = g.site.toFoot(way, side, arch), g.site.pathTo(way, side, arch)
		j.Over = way.over+g.site.crosses(side, way.arch, arch) > 0
		return
	}
	before := g.joints[j.From].Arch - 1
	j.Lies, j.Path = g.site.runs(side, before, arch), g.site.along(side, before, arch)
	j.Over = g.site.crosses(side, before, arch) > 0
}

// add puts a joint on the feeder, its cord plugged in at the joint it is fed from.
func (g *grower) add(j Joint) int {
	if j.From >= 0 {
		g.joints[j.From].Onward++
	}
	g.joints = append(g.joints, j)
	return len(g.joints) - 1
}

// want plugs in what a socket is for: a unit, or a riser with what hangs on it.
func (g *grower) want(at int, side spec.Side, w want) {
	if w.riser == nil {
		g.joints[at].Plugs = append(g.joints[at].Plugs, g.plug(w.units))
		return
	}
	s := w.riser.spot
	end := s.end
	j := Joint{End: end, Wall: side, Arch: s.arch + 1, Climb: s.climb, From: at, Lies: s.climb, Cords: lay(g.cord, s.climb), Of: 1, Taps: w.riser.taps, Fans: w.riser.fans}
	j.Path = []spec.Point{g.site.feet[side][s.arch].At(), {X: end.X, Y: end.Y}}
	for _, l := range j.Cords {
		j.Copper += l
	}
	for _, units := range w.riser.plugs {
		j.Plugs = append(j.Plugs, g.plug(units))
	}
	g.add(j)
}

// plug returns what some units are as a plug: one, or one in the back of the other.
func (g *grower) plug(units []int) Plug {
	var p Plug
	for _, i := range units {
		u := g.units[i]
		p.Supply = u.supply
		p.Amps += u.draws(g.source.volts)
		for _, r := range u.runs {
			p.Chains = append(p.Chains, g.names[r])
		}
	}
	return p
}

// flow adds up the currents from the ends to the outlet and takes the volts lost in the cords.
func (g *grower) flow() {
	for i := len(g.joints) - 1; i >= 0; i-- {
		j := &g.joints[i]
		for _, p := range j.Plugs {
			j.Amps += p.Amps
		}
		if j.From >= 0 {
			g.joints[j.From].Amps += j.Amps
		}
	}
	volts(g.joints, g.source.volts, g.cord)
}

// volts takes the volts lost in the cords from the outlet on.
func volts(joints []Joint, at measure.Voltage, cord catalog.Cord) {
	for i := range joints {
		j := &joints[i]
		j.Volts = at
		if j.From >= 0 {
			j.Volts = joints[j.From].Volts
		}
		j.Volts -= measure.Voltage(2 * ohms(warmOhms(cord), j.Copper) * float64(j.Amps))
	}
}
