package spec

import "slices"

// readWays reads the side ways in and out.
func (r *reader) readWays(tunnel mapping) {
	for _, m := range tunnel.mappings("ways") {
		var bays []int
		var wall Side
		if okBay, okWall := m.read("bay", &bays), m.read("wall", &wall); okBay && okWall {
			for _, bay := range bays {
				r.spec.Tunnel.Ways = append(r.spec.Tunnel.Ways, Way{bay, wall})
			}
		}
	}
}

// IsWay reports whether a bay of a wall is a side way in or out: one of the tunnel's own, or a gap in the rows.
func (s *Spec) IsWay(wall Side, bay int) bool {
	if slices.Contains(s.Tunnel.Ways, Way{bay, wall}) {
		return true
	}
	return s.Lights.Rows != nil && slices.ContainsFunc(s.Lights.Rows.Gaps, func(g Gap) bool { return g.Wall == wall && slices.Contains(g.Bays, bay) })
}

// Passed reports whether people may pass a bay sideways, by either wall.
func (s *Spec) Passed(bay int) bool { return s.IsWay(Left, bay) || s.IsWay(Right, bay) }

// SideWays lists the ways in and out through the walls, from the first bay on.
func (s *Spec) SideWays() (list []Way) {
	for bay := 1; bay < s.Tunnel.Arches; bay++ {
		for _, wall := range []Side{Left, Right} {
			if s.IsWay(wall, bay) {
				list = append(list, Way{bay, wall})
			}
		}
	}
	return list
}
