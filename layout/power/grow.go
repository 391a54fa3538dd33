// Joints of lines: each foot with its cord, plugs, amps and volts.

package power

import (
	"slices"

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
		g.joints = append(g.joints, Joint{End: outletEnd(src.outlet), From: -1, Path: []spec.Point{src.outlet.At}, Taps: 1, Fans: f.fans})
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
	deeds := l.laid.deeds()
	for i, d := range deeds {
		s := l.stops[d.call]
		if len(d.cords) > 0 || d.inline != nil || cur == from {
			cur = g.laid(cur, from, l.side, s.arch, d)
		}
		if d.tap {
			g.joints[cur].Taps, g.joints[cur].Fans = 1, g.fans
		}
		if d.serves > 0 && l.up && d.call == len(l.stops)-1 {
			g.right(cur, s)
			continue
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
			to := l.stops[deeds[i+1].call].arch
			j, b := g.foot(l.side, to), g.joints[cur]
			j.From, j.Socket, j.Of, j.Skips, j.inline = cur, b.Socket+d.next, b.Of, d.next-1, b.inline
			j.Copper = measure.Length(d.next) * b.inline.Apart
			g.lead(&j, from, l.side, to)
			g.joints = append(g.joints, j)
			cur = len(g.joints) - 1
		}
	}
}

// laid adds the joint at a foot that a deed's cords lead to.
func (g *grower) laid(cur, from int, side spec.Side, arch int, d deed) int {
	j := g.foot(side, arch)
	j.From = cur
	g.lead(&j, from, side, arch)
	switch {
	case d.inline != nil:
		j.Cords, j.Socket, j.Of, j.Skips, j.inline = []measure.Length{d.inline.Length}, 1, d.inline.Sockets, d.skip, d.inline
		j.Copper = d.inline.Lead() + measure.Length(d.skip)*d.inline.Apart
	case len(d.cords) > 0:
		j.plain(d.cords)
	default: // its plug reaches the outlet
		j.Lies, j.Tied, j.Path, j.Over = 0, 0, j.Path[:1], false
	}
	return g.add(j)
}

// plain has plain cords in line lead to a joint.
func (j *Joint) plain(cords []measure.Length) {
	j.Cords, j.Of = cords, 1
	for _, l := range cords {
		j.Copper += l
	}
}

// leaf serves a stop by a cord of its own.
func (g *grower) leaf(from int, side spec.Side, s stop, cords []measure.Length) {
	j := g.foot(side, s.arch)
	j.From = from
	j.plain(cords)
	g.lead(&j, -2, side, s.arch)
	g.want(g.add(j), side, s.wants[0])
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
		_, j.Tied = g.site.overWays(side, way.arch, arch)
		j.Tied += way.tied
		return
	}
	before := g.joints[j.From].Arch - 1
	j.Lies, j.Path = g.site.runs(side, before, arch), g.site.along(side, before, arch)
	j.Over = g.site.crosses(side, before, arch) > 0
	_, j.Tied = g.site.overWays(side, before, arch)
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
	j := Joint{End: end, Wall: side, Arch: s.arch + 1, Climb: s.climb, From: at, Lies: s.climb, Tied: s.tied(), Taps: w.riser.taps, Fans: w.riser.fans}
	j.Path = []spec.Point{g.site.feet[side][s.arch].At(), {X: end.X, Y: end.Y}}
	j.plain(lay(g.cord, s.climb))
	for _, units := range w.riser.plugs {
		j.Plugs = append(j.Plugs, g.plug(units))
	}
	g.add(j)
}

// right has the cord that has come to a foot lead on up to the riser's place, and plugs in what hangs there.
func (g *grower) right(at int, s stop) {
	j, r := &g.joints[at], s.wants[0].riser
	j.End, j.Climb, j.Lies, j.Tied = r.spot.end, r.spot.climb, j.Lies+r.spot.climb, j.Tied+r.spot.tied()
	j.Path = append(slices.Clone(j.Path), spec.Point{X: r.spot.end.X, Y: r.spot.end.Y})
	j.Taps, j.Fans = r.taps, r.fans
	for _, units := range r.plugs {
		j.Plugs = append(j.Plugs, g.plug(units))
	}
}

// plug returns what some units are as a plug: one, or one in the back of the other.
func (g *grower) plug(units []int) Plug {
	var p Plug
	for _, i := range units {
		u := g.units[i]
		p.Supply = u.supply
		p.Amps += u.draws(g.source.volts)
		if u.supply {
			p.Open = max(0, g.runs[u.runs[0]].label.Supply.Sockets-len(u.runs))
		}
		for _, r := range u.runs {
			p.Chains, p.runs = append(p.Chains, letters(r)), append(p.runs, r)
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
