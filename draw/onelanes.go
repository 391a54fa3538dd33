package draw

import (
	"cmp"
	"slices"

	"hoopwright/draw/paper"
)

// ends returns a cord's stations in walking order.
func (c lineCord) ends() (lo, hi int) { return min(c.from, c.to), max(c.from, c.to) }

// stretch gives each cord a lane and each station its ports. A cord lies outside those it passes: shorter ones are laid first, each in the nearest lane
// beyond every cord that it lies beside. Nested cords then do not cross.
func (o *OneLine) stretch() {
	order := make([]int, len(o.cords))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		alo, ahi := o.cords[a].ends()
		blo, bhi := o.cords[b].ends()
		return cmp.Compare(ahi-alo, bhi-blo)
	})
	for n, i := range order {
		c := &o.cords[i]
		lo, hi := c.ends()
		for _, k := range order[:n] {
			if klo, khi := o.cords[k].ends(); klo < hi && lo < khi {
				c.lane = max(c.lane, o.cords[k].lane+1)
			}
		}
		o.lanes = max(o.lanes, c.lane+1)
	}
	for i, c := range o.cords {
		o.stations[c.from].ports = append(o.stations[c.from].ports, linePort{cord: i, source: true, up: c.to < c.from})
		o.stations[c.to].ports = append(o.stations[c.to].ports, linePort{cord: i, up: c.from < c.to})
	}
	for i := range o.stations {
		o.stations[i].ports = o.ported(o.stations[i].ports)
	}
}

// ported orders a station's ports from its top: lines that go up with the nearest lane first, then lines that go down with the nearest lane last, so that none crosses another.
func (o *OneLine) ported(ports []linePort) []linePort {
	slices.SortStableFunc(ports, func(a, b linePort) int {
		if a.up != b.up {
			if a.up {
				return -1
			}
			return 1
		}
		d := cmp.Compare(o.cords[a.cord].lane, o.cords[b.cord].lane)
		if a.up {
			return d
		}
		return -d
	})
	for i := range ports {
		ports[i].dy = portPitch * (paper.Length(i) - paper.Length(len(ports)-1)/2)
	}
	return ports
}
