package power

import (
	"cmp"
	"slices"
)

// leastCords returns how many cords there must be, whatever feeds what: one for each of some units of which no tap can take two, its
// plugs being within tapReach of its first, save what might plug straight into an outlet.
func (f *feeding) leastCords() int {
	order := make([]int, 0, len(f.units))
	for i := range f.units {
		if f.sharing.of[i] >= 0 && !slices.Contains(f.dry, i) && !f.byOutlet(i) {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		u, v := f.units[a].end, f.units[b].end
		return cmp.Or(cmp.Compare(u.Arch, v.Arch), cmp.Compare(u.Z, v.Z))
	})
	var apart []int
	for _, i := range order {
		with := func(k int) bool {
			u, v := f.units[i].end, f.units[k].end
			return u.Arch == v.Arch && distance(u, v) <= 2*tapReach
		}
		if !slices.ContainsFunc(apart, with) {
			apart = append(apart, i)
		}
	}
	return len(apart)
}

// byOutlet reports whether a unit might do without a cord: its prongs, or a tap's with it, near an outlet.
func (f *feeding) byOutlet(i int) bool {
	return slices.ContainsFunc(f.sharer.sources, func(s source) bool {
		return level(s.outlet.At, at(f.units[i].end)) <= handReach+2*tapReach
	})
}
