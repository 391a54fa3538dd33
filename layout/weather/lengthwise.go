package weather

import (
	"math"

	"hoopwright/layout/bend"
)

// Along the tunnel. The ridge keeps all crowns at the same distance from each other, so they lean together, by U, and it hands each arch the force
// F that makes its own lean come to U. An arch gives way by out for a unit force at its crown and by q·wind in a wind of pressure q:
//
//	F = (U − q·wind)/out,  ΣF = 0,  hence U = q·Σ(wind/out) / Σ(1/out)
//
// 1/out is the arch's stiffness at its crown. It falls as weights grow and is negative where the arch alone would lean over. The tunnel stands
// as long as the sum of all stiffnesses is positive and every arch stands with its crown kept in place. Guys are taken to be taut and to keep the places
// they are tied to on both legs; those of one arch hold one way, so each way is looked at by itself.
//
// Feet are taken not to twist about their bars, which friction alone sees to, and ridge pieces not to bend. By a frame of three kinds of tunnel with a ridge, checked
// once, the two make up for each other: load factors with feet free and ridge pieces stiff in their sockets came to the same within 2 in 100. An arch without a ridge
// has friction only: with its feet free to twist it bore half.

// lengthwise is how an arch bears out of its plane, as if nothing held it but the ridge, or with its legs tied.
type lengthwise struct {
	stiff []crownStiffness // for each of the weights
	out   *bend.Lean       // for a push of 1 N on the crown
	wind  [2]*bend.Lean    // for a wind of 1 Pa along the tunnel, as built and stripped; nil where the arch does not stand
}

// crownStiffness is N/m, at a multiple of the dead load.
type crownStiffness struct {
	stiffness float64
	stands    bool // with its crown kept in place
}

// weights are the multiples of the dead load at which an arch's stiffness along the tunnel is taken; 1 is among them.
var weights = [...]float64{0.25, 0.5, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 20}

// rigid is the stiffness, N/m, of a crown whose fitting is tied: a micrometre for a newton.
const rigid = 1e6

// theDeadLoad is where 1 is among the weights.
const theDeadLoad = 2

// leanings works out how the arch bears along the tunnel at season's end, for each of the weights that it bears in its plane. ties are the
// tapes of guys on its two legs; none for an arch that the ridge alone holds.
func (m *model) leanings(solver *bend.Solver, sideways float64, ties []float64) lengthwise {
	var l lengthwise
	crown := m.crown.Metres()
	push := []bend.Load{{From: crown, To: crown, Push: 1}}
	late := float64(m.spec.LateModulus)
	for i, times := range weights {
		if times > sideways && i > theDeadLoad {
			break
		}
		rod := m.Aged(late).Heavier(times)
		sets := [][]bend.Load{push}
		if i == theDeadLoad {
			sets = append(sets, m.endWind(false), m.endWind(true))
		}
		surplus, leans, err := solver.Leans(rod, ties, sets...)
		if err != nil {
			break
		}
		k := float64(rigid)
		if out := leans[0].Out(crown); math.Abs(out) > 1.0/rigid {
			k = 1 / out
		}
		if k < 0 {
			surplus-- // keeping the crown in place takes this one away
		}
		l.stiff = append(l.stiff, crownStiffness{k, surplus == 0})
		if i == theDeadLoad {
			l.out, l.wind = leans[0], [2]*bend.Lean{leans[1], leans[2]}
		}
	}
	return l
}

// row is the arches that one ridge joins, each with how it bears along the tunnel one way.
type row struct {
	kinds []*Kind
	tied  []bool
}

// of returns how an arch of the row bears.
func (r row) of(i int) *lengthwise {
	if r.tied[i] {
		return &r.kinds[i].braced.tied
	}
	return &r.kinds[i].braced.free
}

// factor is the least multiple of the dead load at which the row leans over along the tunnel, Most where it falls sideways before.
func (r row) factor() float64 {
	before, at := 0.0, 0.0
	for w, times := range weights {
		sum, stands := 0.0, true
		for i := range r.kinds {
			l := r.of(i)
			if w >= len(l.stiff) {
				return Most // it falls sideways first
			}
			sum += l.stiff[w].stiffness
			stands = stands && l.stiff[w].stands
		}
		switch {
		case !stands:
			return (at + times) / 2
		case sum <= 0 && w == 0:
			return 0
		case sum <= 0:
			return at + (times-at)*before/(before-sum)
		}
		before, at = sum, times
	}
	return Most
}

// Most is the greatest load factor: it means this or more.
const Most = bend.Most

// lean returns by how much all crowns lean in a wind of 1 Pa, m, and the force that the ridge hands to each crown, N. ok is false where the row
// does not stand.
func (r row) lean(stripped bool) (together float64, forces []float64, ok bool) {
	crown := func(k *Kind) float64 { return k.CrownTape.Metres() }
	winds, stiffness := 0.0, 0.0
	for i, k := range r.kinds {
		l := r.of(i)
		if l.out == nil {
			return 0, nil, false
		}
		s := l.stiff[theDeadLoad].stiffness
		winds += l.wind[which(stripped)].Out(crown(k)) * s
		stiffness += s
	}
	if stiffness <= 0 {
		return 0, nil, false
	}
	together = winds / stiffness
	for i, k := range r.kinds {
		l := r.of(i)
		forces = append(forces, (together-l.wind[which(stripped)].Out(crown(k)))*l.stiff[theDeadLoad].stiffness)
	}
	return together, forces, true
}

func which(stripped bool) int {
	if stripped {
		return 1
	}
	return 0
}

// pull is what a wind of 1 Pa along the tunnel asks of one arch in its row.
type pull struct {
	lean   *bend.Lean
	push   [2]float64 // N, level, along the tunnel, at each foot
	moment [2]float64 // N·m, at each foot, along the tunnel
	guy    float64    // N, level, the greater of what its two guys hold; 0 where it is not tied
}

// pulls returns what a wind of 1 Pa asks of each arch, and the greatest pull or push in the ridge, N.
func (r row) pulls(stripped bool) (list []pull, ridge float64, ok bool) {
	_, forces, ok := r.lean(stripped)
	if !ok {
		return nil, 0, false
	}
	passed := 0.0
	for i := range r.kinds {
		l := r.of(i)
		n := l.wind[which(stripped)].Plus(l.out, forces[i])
		p := pull{lean: n}
		for foot := range 2 {
			p.push[foot], p.moment[foot] = math.Abs(n.Holds[foot]), math.Abs(n.Feet[foot])
		}
		for _, reaction := range n.Reactions {
			p.guy = max(p.guy, math.Abs(reaction))
		}
		list = append(list, p)
		passed += forces[i]
		ridge = max(ridge, math.Abs(passed))
	}
	return list, ridge, true
}
