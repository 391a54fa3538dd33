package arch

import "hoopwright/layout/bend"

// standsAside reports whether a rod of the arch, at rest in its plane shape and cut into about so many parts, stands without leaning along the tunnel; guys keep its crown in place.
func (m *model) standsAside(rod bend.Rod, shape *bend.Shape, parts int, guyed bool) bool {
	space, ok := bend.NewSpace(rod, shape, parts, nil, m.frame.crown.Metres(), nil)
	if !ok {
		return false
	}
	stiffness, held := space.CrownStiffness()
	return held && (guyed || stiffness > 0)
}

// leansAt returns the least multiple of all dead load at which the arch at season's end leans over along the tunnel, or falls in its plane.
func (m *model) leansAt() float64 {
	solver := bend.NewSolver(factorParts)
	return bend.FirstFall(1, bend.Most, func(times float64) (float64, bool) {
		rod := m.loaded(times)
		shape, err := solver.Solve(rod)
		return 0, err == nil && shape.Stable && m.standsAside(rod, shape, factorParts, m.in.Guyed)
	})
}
