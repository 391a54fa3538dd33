package weather

import (
	"hoopwright/layout/anchor"
	"hoopwright/layout/arch"
	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
)

// braced is what weather needs to know of an arch that has been stood.
type braced struct {
	free, tied lengthwise // along the tunnel, without guys of its own and with
	sides      [2][]side  // in side winds, as built and stripped: as raised and late, from either side where they differ
	ends       [2]pull    // in a wind of 1 Pa along the tunnel, the most of any arch of the kind: as built and stripped
	iceShares  [2]float64 // as new and late, the share of what it bears beyond its dead load that it bears where that is ice
}

// The number of parts an arch is cut into: for wind from the side and ice, whose shapes converge with the fourth power of the parts' length; and along the
// tunnel, where leans converge with the second and what is left of the stiffness under the dead load is a small difference of large ones: to 2 in 100.
const (
	weatherParts = 20
	alongParts   = 64
)

// Brace works out what wind and ice do to an arch that has been stood. Tunnel.Weather then puts the arches together.
func Brace(solved *arch.Kind) *Kind {
	k := &Kind{Kind: solved}
	body := solved.Body()
	if body == nil {
		return k
	}
	m := modelOf(solved, body)
	k.built = m
	b := &braced{}
	lengths := bend.NewSolver(alongParts)
	b.free = m.leanings(lengths, k.Sideways, nil)
	b.tied = m.leanings(lengths, k.Sideways, k.TiedAt(k.TieHeight()))
	solver := bend.NewSolver(weatherParts)
	for stripped := range 2 {
		if stripped == 1 && !m.loose() {
			b.sides[1] = b.sides[0]
			continue
		}
		for _, late := range []float64{1, float64(m.spec.LateModulus)} {
			for _, sign := range m.signs() {
				b.sides[stripped] = append(b.sides[stripped], m.sideGusts(solver, late, stripped == 1, sign, m.enough))
			}
		}
	}
	k.braced = b
	m.underIce(k)
	return k
}

// loose reports whether anything is stripped before a storm.
func (m *model) loose() bool {
	for _, l := range m.in.Loads {
		if l.Loose {
			return true
		}
	}
	return false
}

// signs returns the sides that wind is tried from: one where the arch mirrors.
func (m *model) signs() []float64 {
	if m.rod.DY == 0 && m.crown*2 == m.length {
		return []float64{1}
	}
	return []float64{1, -1}
}

// enough reports a wind beyond which no more need be known: the arch is past its bar, its pipe or every soil it may stand in, and the winds
// that sway is told of are behind.
func (m *model) enough(g gust) bool {
	if speedAt(g.q) < swayGusts[1]-gustStep/2 {
		return false
	}
	holds := false
	for _, soil := range anchor.Named(m.in.Soil.String()) {
		holds = holds || m.stakeHolds(soil, g)
	}
	return !holds || g.strength > 1 || m.barBends(g)
}

// swayGusts are the winds whose sway is told.
var swayGusts = [2]measure.Speed{20 * measure.MPH, 30 * measure.MPH}

// stakeHolds reports whether the soil holds both stakes.
func (m *model) stakeHolds(soil anchor.Soil, g gust) bool {
	for i := range g.push {
		if soil.Depth(m.spec.Stake.Bar.Diameter, measure.Force(g.push[i]), g.moment[i]) > m.spec.Stake.Depth {
			return false
		}
	}
	return true
}

// barBends reports whether a foot's moment bends its bar for good.
func (m *model) barBends(g gust) bool {
	yields := anchor.Yields(m.spec.Stake.Bar.Diameter, m.spec.Stake.Bar.Yield)
	return max(g.moment[0], g.moment[1]) > yields
}
