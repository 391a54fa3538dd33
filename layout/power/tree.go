package power

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// tapReach is how far from a tap the plugs in it may be: one in a hand's reach above it and one below.
const tapReach = 2 * handReach

// farTap is how much farther along the wall a free socket may be than a full tap.
const farTap = 3 * measure.Metre

// node is a place where units are plugged in together.
type node struct {
	spot  spot
	units []int
	amps  measure.Current
	way   measure.Length // from the outlet
	up    []node         // at crowns, fed by cords up the leg from here
}

// branch is what one cord from an outlet feeds: nodes on one wall, nearest first.
type branch struct {
	wall  spec.Side
	nodes []node
	amps  measure.Current
}

// nodes gathers units on one wall into places, each within what one cord carries, nearest to the source first.
func (f *feeding) nodes(k int, side spec.Side, list []int) []node {
	src := f.sharer.sources[k]
	height := func(i int) measure.Length { return f.units[i].end.Z }
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(a, b int) int {
		return cmp.Or(cmp.Compare(f.units[a].end.Arch, f.units[b].end.Arch), cmp.Compare(height(a), height(b)))
	})
	var out []node
	for _, i := range list {
		u := f.units[i]
		if n := len(out); n > 0 {
			last := &out[n-1]
			first := f.units[last.units[0]].end
			if first.Arch == u.end.Arch && distance(first, u.end) <= tapReach && last.amps+u.draws(src.volts) <= src.most+hair {
				last.units = append(last.units, i)
				last.amps += u.draws(src.volts)
				continue
			}
		}
		out = append(out, node{units: []int{i}, amps: u.draws(src.volts)})
	}
	for i := range out {
		n := &out[i]
		n.spot = f.site.spot(f.middle(n.units), side)
		n.way = f.site.fromOutlet(src.ways[side], n.spot)
	}
	slices.SortStableFunc(out, func(a, b node) int { return cmp.Compare(a.way, b.way) })
	return out
}

// middle returns the place of a tap for some units: between the first and the last.
func (f *feeding) middle(list []int) lights.End {
	a, b := f.units[list[0]].end, f.units[list[len(list)-1]].end
	a.X, a.Y, a.Z = (a.X+b.X)/2, (a.Y+b.Y)/2, (a.Z+b.Z)/2
	return a
}

// branches cuts nodes, nearest first, into as many branches as their currents need.
func branches(side spec.Side, nodes []node, most measure.Current) []branch {
	var out []branch
	for _, n := range nodes {
		if k := len(out); k == 0 || out[k-1].amps+n.amps > most+hair {
			out = append(out, branch{wall: side})
		}
		b := &out[len(out)-1]
		b.nodes = append(b.nodes, n)
		b.amps += n.amps
	}
	return out
}

// tree grows a feeder's joints with one kind of cord.
type tree struct {
	*feeding
	source source
	cord   catalog.Cord
	joints []Joint
	spots  []spot
}

// grow returns the joints of some branches from one socket. More than one begin at a tap in the outlet.
func (f *feeding) grow(src source, list []branch, cord catalog.Cord) []Joint {
	t := tree{feeding: f, source: src, cord: cord}
	from := -1
	if len(list) > 1 {
		from = 0
		here := lights.End{At: "outlet " + src.outlet.Name, X: src.outlet.At.X, Y: src.outlet.At.Y}
		t.joints = append(t.joints, Joint{At: here.At, From: -1, Path: []spec.Point{src.outlet.At}})
		t.spots = append(t.spots, spot{end: here})
	}
	for _, b := range list {
		b.nodes = t.underfoot(b.nodes)
		root := t.first(from, b)
		var ahead, behind []node
		for _, n := range b.nodes[1:] {
			if t.site.runAt(n.spot) < t.site.runAt(b.nodes[0].spot) {
				behind = append(behind, n)
			} else {
				ahead = append(ahead, n)
			}
		}
		t.extend(root, ahead)
		t.extend(root, behind)
	}
	for i := range t.joints {
		j := &t.joints[i]
		j.Taps = taps(len(j.Plugs) + j.Onward)
	}
	t.flow()
	return t.joints
}

// underfoot hangs the nodes at crowns from the foot nearest along the wall, sooner where its tap has a socket free, so that no line along
// the ground goes up a leg and down again. Where no node is at a foot they stay as they are.
func (t *tree) underfoot(nodes []node) []node {
	var feet, crowns []node
	for _, n := range nodes {
		if n.spot.climb > tapReach {
			crowns = append(crowns, n)
		} else {
			feet = append(feet, n)
		}
	}
	if len(feet) == 0 {
		return nodes
	}
	for _, n := range crowns {
		nearest, least := 0, measure.Length(math.Inf(1))
		for i, foot := range feet {
			d := measure.Length(math.Abs(float64(t.site.runAt(foot.spot) - t.site.runAt(n.spot))))
			if len(foot.units)+len(foot.up) > 1 {
				d += farTap
			}
			if d < least-hair { // of equal ones the first, however the site lies
				nearest, least = i, d
			}
		}
		feet[nearest].up = append(feet[nearest].up, n)
	}
	return feet
}

// runAt returns how far along its wall a spot is.
func (s *site) runAt(p spot) measure.Length { return s.run[p.wall][p.arch] }

// first lays the cord from the outlet to a branch's nearest node.
func (t *tree) first(from int, b branch) int {
	n := b.nodes[0]
	a := t.source.ways[b.wall]
	j := Joint{From: from, Lies: n.way, Over: a.over, Path: t.site.pathFrom(a, n.spot)}
	if level(t.source.outlet.At, at(n.spot.end)) <= handReach {
		j.Lies, j.Path, j.Over = 0, j.Path[:1], false
	} else {
		j.Cords = lay(t.cord, n.way)
	}
	return t.add(j, n)
}

// add puts a joint on the tree and what is plugged in there, the cords up to its crowns with it.
func (t *tree) add(j Joint, n node) int {
	j.At, j.Wall, j.Arch, j.Climb = n.spot.end.At, n.spot.wall, n.spot.arch+1, n.spot.climb
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
	here := len(t.joints) - 1
	for _, crown := range n.up {
		t.onward(here, crown)
	}
	return here
}

// extend carries the line on from a joint over the nodes in one direction, nearest first. A tap with two sockets free sends one cord on to
// the farthest node that the same length of cord reaches, where the line goes on, and one to the middle of those between, which
// fans out from there: that way few cords are in line, at no more cords or taps. With one socket free, or where the longer way takes two cords, the line goes from node
// to node.
func (t *tree) extend(from int, list []node) {
	for len(list) > 0 {
		sockets := len(t.joints[from].Plugs) + t.joints[from].Onward
		hop := 1
		if sockets+2 <= 3 {
			hop = t.hop(from, list)
		}
		between, next := list[:hop-1], list[hop-1]
		t.fan(from, between)
		from = t.onward(from, next)
		list = list[hop:]
	}
}

// hop returns how many of the nodes one cord passes: as many as the stock length that gets to the second, while a fan can feed those
// between.
func (t *tree) hop(from int, list []node) int {
	if len(list) < 2 || len(t.cords(from, list[1])) > 1 {
		return 1
	}
	length := t.cords(from, list[1])[0]
	n := 2
	for n < len(list) && t.fits(list[:n]) && slices.Equal(t.cords(from, list[n]), []measure.Length{length}) {
		n++
	}
	return n
}

// fits reports whether each node that a fan over these would branch from has a socket for it.
func (t *tree) fits(list []node) bool {
	for _, n := range list {
		if len(n.units)+len(n.up) > 1 && len(list) > 1 {
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

// flow adds up the currents from the ends to the outlet and takes the volts lost in the cords from the outlet on.
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
	for i := range t.joints {
		j := &t.joints[i]
		j.Volts = t.source.volts
		if j.From >= 0 {
			j.Volts = t.joints[j.From].Volts
		}
		for _, l := range j.Cords {
			j.Volts -= measure.Voltage(2 * ohms(t.cord.Ohms, l) * float64(j.Amps))
		}
	}
}
