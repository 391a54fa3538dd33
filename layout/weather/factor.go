package weather

import (
	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
)

// stiffness sums what the members bear against leaning along, N/m, each as the rod that rods makes of its kind; 0 where one does not stand in its plane or with its crown
// kept in place.
func (r row) stiffness(rods func(*Kind) bend.Rod) (sum float64) {
	for _, m := range r {
		rod := rods(m.kind)
		if m.plane == nil {
			m.plane = bend.NewSolver(m.parts())
		}
		shape, err := m.plane.Solve(rod)
		if err != nil || !shape.Stable {
			return 0
		}
		space, ok := bend.NewSpace(rod, shape, m.parts(), nil, m.kind.CrownTape.Metres(), m.ties)
		if !ok {
			return 0
		}
		k, held := space.CrownStiffness()
		if !held {
			return 0
		}
		sum += k * float64(len(m.arches))
	}
	return sum
}

// falls returns the least load, up to most, at which the row leans over along the tunnel, most where it does not or where it falls in its plane before. guess is
// about where.
func (r row) falls(guess, most float64, rods func(load float64, k *Kind) bend.Rod) float64 {
	return bend.FirstFall(guess, most, func(load float64) (float64, bool) {
		sum := r.stiffness(func(k *Kind) bend.Rod { return rods(load, k) })
		return sum, sum > 0
	})
}

// factor returns the least multiple of the dead load, up to most, at which the row leans over along, with the share left of its pipe's modulus.
func (r row) factor(left, most float64) float64 {
	return r.falls(1, most, func(times float64, k *Kind) bend.Rod { return k.Aged(left).Heavier(times) })
}

// ice returns the radial thickness of ice, up to most, under which the row leans over along, or one of its arches falls, with the share left of its pipe's modulus.
func (r row) ice(most measure.Length, left float64) measure.Length {
	return measure.Length(r.falls(float64(most), float64(most), func(ice float64, k *Kind) bend.Rod { return k.iced(left, measure.Length(ice)) }))
}
