package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// node is a place where units are plugged in together.
type node struct {
	spot  spot
	units []int
	amps  measure.Current
	way   measure.Length // from the outlet
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

// footed parts the nodes at feet from those at crowns. Where none is at a foot, those at crowns count as such.
func footed(nodes []node) (feet, crowns []node) {
	for _, n := range nodes {
		if n.spot.climb > tapReach {
			crowns = append(crowns, n)
		} else {
			feet = append(feet, n)
		}
	}
	if len(feet) == 0 {
		return crowns, nil
	}
	return feet, crowns
}

// bothWays parts nodes, nearest first, into the nearest with those farther along its wall, and those nearer arch 1.
func (s *site) bothWays(nodes []node) (ahead, behind []node) {
	for _, n := range nodes {
		if s.runAt(n.spot) < s.runAt(nodes[0].spot) {
			behind = append(behind, n)
		} else {
			ahead = append(ahead, n)
		}
	}
	return ahead, behind
}
