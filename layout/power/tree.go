package power

import (
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// tapReach is how far from a tap the plugs in it may be: one in a hand's reach above it and one below.
const tapReach = 2 * handReach

// farTap is how much farther along the wall a free socket, or a foot with fewer cords in line, may be than a full tap.
const farTap = 3 * measure.Metre

// tree grows a feeder's joints with one kind of cord.
type tree struct {
	*feeding
	source source
	cord   catalog.Cord
	step   int // least number of nodes that a cord of the line passes to, where a fan can feed those between
	joints []Joint
	spots  []spot
}

// grow returns the joints of some branches from one socket. More than one begin at a tap in the outlet.
func (f *feeding) grow(src source, list []branch, cord catalog.Cord, step int) []Joint {
	t := tree{feeding: f, source: src, cord: cord, step: step}
	from := -1
	if len(list) > 1 {
		from = 0
		here := lights.End{X: src.outlet.At.X, Y: src.outlet.At.Y}
		t.joints = append(t.joints, Joint{At: "outlet " + src.outlet.Name, From: -1, Path: []spec.Point{src.outlet.At}})
		t.spots = append(t.spots, spot{end: here})
	}
	for _, b := range list {
		feet, crowns := footed(b.nodes)
		root := t.first(from, b.wall, feet[0])
		ahead, behind := t.site.bothWays(feet)
		keep := min(1, len(behind))
		if t.step == 0 && slices.ContainsFunc(crowns, func(n node) bool { return n.spot.arch == feet[0].spot.arch }) {
			keep = 1
		}
		t.extend(root, ahead[1:], keep)
		t.extend(root, behind, 0)
		end := len(t.joints)
		for _, n := range crowns {
			t.climb(root, end, n)
		}
	}
	for i := range t.joints {
		j := &t.joints[i]
		j.Taps = taps(len(j.Plugs) + j.Onward)
	}
	t.flow()
	return t.joints
}

// climb hangs a node at a crown from the foot nearest along the wall among the joints from the root on, sooner where a socket is free and no
// more cords come in line than may, so that no line along the ground goes up a leg and down again.
func (t *tree) climb(root, end int, n node) {
	nearest, least := root, measure.Length(math.Inf(1))
	for i := root; i < end; i++ {
		d := measure.Length(math.Abs(float64(t.site.runAt(t.spots[i]) - t.site.runAt(n.spot))))
		if sockets := len(t.joints[i].Plugs) + t.joints[i].Onward; sockets > 1 && sockets%2 == 1 {
			d += farTap
		}
		if t.inLine(i)+len(t.cords(i, n)) > mostInLine {
			d += farTap
		}
		if d < least-hair { // of equal ones the first, however the site lies
			nearest, least = i, d
		}
	}
	t.onward(nearest, n)
}

// inLine counts the cords from the outlet to a joint.
func (t *tree) inLine(i int) int {
	n := 0
	for ; i >= 0; i = t.joints[i].From {
		n += len(t.joints[i].Cords)
	}
	return n
}

// runAt returns how far along its wall a spot is.
func (s *site) runAt(p spot) measure.Length { return s.run[p.wall][p.arch] }

// first lays the cord from the outlet to a branch's nearest node.
func (t *tree) first(from int, side spec.Side, n node) int {
	a := t.source.ways[side]
	j := Joint{From: from, Lies: n.way, Over: a.over, Path: t.site.pathFrom(a, n.spot)}
	if level(t.source.outlet.At, at(n.spot.end)) <= handReach {
		j.Lies, j.Path, j.Over = 0, j.Path[:1], false
	} else {
		j.Cords = lay(t.cord, n.way)
	}
	return t.add(j, n)
}

// add puts a joint on the tree and what is plugged in there.
func (t *tree) add(j Joint, n node) int {
	j.At, j.Wall, j.Arch, j.Climb = n.spot.end.At.String(), n.spot.wall, n.spot.arch+1, n.spot.climb
	for _, i := range n.units {
		u := t.units[i]
		p := Plug{Supply: u.supply, Amps: u.draws(t.source.volts)}
		for _, c := range u.chains {
			p.Chains = append(p.Chains, t.chains[c].Name)
		}
		j.Plugs = append(j.Plugs, p)
	}
	if j.From >= 0 {
		t.joints[j.From].Onward++
	}
	t.joints = append(t.joints, j)
	t.spots = append(t.spots, n.spot)
	return len(t.joints) - 1
}

// extend carries the line on from a joint over the nodes in one direction, nearest first. A tap with two sockets free sends one cord on to
// the farthest node that the same length of cord reaches, where the line goes on, and one to the middle of those between, which
// fans out from there: that way few cords are in line, at no more cords or taps. With one socket free, or where the longer way takes two cords, the line goes from node
// to node. One socket at the first joint may be kept for the line the other way,
// or for the crown over it.
func (t *tree) extend(from int, list []node, keep int) {
	for len(list) > 0 {
		sockets := len(t.joints[from].Plugs) + t.joints[from].Onward
		hop := 1
		if sockets+keep+2 <= 3 {
			hop = t.hop(from, list)
		}
		between, next := list[:hop-1], list[hop-1]
		t.fan(from, between)
		from = t.onward(from, next)
		list, keep = list[hop:], 0
	}
}

// wideStep is how many plug places a cord passes to at first where steps from each to the next make too long a line; then twice as many, and so on. A fan over the three,
// seven, fifteen between is full and two, three, four cords deep.
const wideStep = 4

// hop returns how many of the nodes one cord passes: as many as the stock length that gets to the second, or as the step asks, while a fan
// can feed those between.
func (t *tree) hop(from int, list []node) int {
	if len(list) < 2 || len(t.cords(from, list[1])) > 1 {
		return 1
	}
	first := t.cords(from, list[1])
	n := 2
	for n < len(list) && t.fits(list[:n]) {
		next := t.cords(from, list[n])
		if !slices.Equal(next, first) && (n >= t.step || len(next) > 1) {
			break
		}
		n++
	}
	return n
}

// fits reports whether each node that a fan over these would branch from has a socket for it.
func (t *tree) fits(list []node) bool {
	for _, n := range list {
		if len(n.units) > 1 && len(list) > 1 {
			return false
		}
	}
	return true
}

// fan feeds nodes from a joint by one cord to the middle one and on to both halves from there.
func (t *tree) fan(from int, list []node) {
	if len(list) == 0 {
		return
	}
	mid := len(list) / 2
	here := t.onward(from, list[mid])
	t.fan(here, list[:mid])
	t.fan(here, list[mid+1:])
}

// cords returns the stock lengths from a joint to a node.
func (t *tree) cords(from int, n node) []measure.Length {
	return lay(t.cord, t.site.between(t.spots[from], n.spot))
}

// onward lays a cord from a joint to a node.
func (t *tree) onward(from int, n node) int {
	a := t.spots[from]
	return t.add(Joint{From: from, Lies: t.site.between(a, n.spot), Cords: t.cords(from, n), Path: t.site.path(a, n.spot)}, n)
}

// flow adds up the currents from the ends to the outlet and takes the volts lost in the cords.
func (t *tree) flow() {
	for i := len(t.joints) - 1; i >= 0; i-- {
		j := &t.joints[i]
		for _, p := range j.Plugs {
			j.Amps += p.Amps
		}
		if j.From >= 0 {
			t.joints[j.From].Amps += j.Amps
		}
	}
	volts(t.joints, t.source.volts, t.cord)
}

// volts takes the volts lost in the cords from the outlet on.
func volts(joints []Joint, at measure.Voltage, cord catalog.Cord) {
	for i := range joints {
		j := &joints[i]
		j.Volts = at
		if j.From >= 0 {
			j.Volts = joints[j.From].Volts
		}
		for _, l := range j.Cords {
			j.Volts -= measure.Voltage(2 * ohms(warmOhms(cord), l) * float64(j.Amps))
		}
	}
}
