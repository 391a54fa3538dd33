package power

import (
	"math"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// unit is one plug to be fed: a chain, or a low-voltage supply with the chains in its sockets.
type unit struct {
	chains []int
	supply bool
	watts  measure.Power   // of a supply
	amps   measure.Current // of a chain
	volts  measure.Voltage // that a chain wants
	wall   wall
	end    lights.End // where its prongs are
}

// takes reports whether the unit belongs on a circuit of some volts: a chain within a tenth of its own, a supply on
// any mains.
func (u unit) takes(v measure.Voltage) bool {
	if u.supply {
		return v > lowVolts
	}
	return math.Abs(float64(v-u.volts)) <= 0.1*float64(u.volts)
}

// draws returns the current at a circuit's volts. A supply is counted at its full watts, whatever hangs on it.
func (u unit) draws(v measure.Voltage) measure.Current {
	if u.supply {
		return measure.Current(float64(u.watts) / float64(v))
	}
	return u.amps
}

// units makes a plug of each chain. Low-voltage chains whose prongs a hand brings together share a supply, as far as its sockets and
// watts go.
func units(list []lights.String, groups []*group, chains []Chain) []unit {
	var out []unit
	for c, g := range groups {
		first := list[g.members[0]]
		s := first.Label.Supply
		if s == nil {
			out = append(out, unit{chains: []int{c}, amps: chains[c].Amps, volts: first.Label.Volts, wall: g.wall, end: first.From})
			continue
		}
		if !share(out, list, groups, c) {
			out = append(out, unit{chains: []int{c}, supply: true, watts: max(s.Watts, g.watts), wall: g.wall, end: first.From})
		}
	}
	return out
}

// share plugs a low-voltage chain into a supply that is there already, if one has a socket and watts left.
func share(all []unit, list []lights.String, groups []*group, c int) bool {
	g := groups[c]
	first := list[g.members[0]]
	for i := range all {
		u := &all[i]
		if !u.supply || u.wall != g.wall || len(u.chains) >= first.Label.Supply.Sockets || distance(u.end, first.From) > handReach {
			continue
		}
		watts := g.watts
		for _, other := range u.chains {
			watts += groups[other].watts
		}
		if list[groups[u.chains[0]].members[0]].Kind == first.Kind && watts <= u.watts+hair {
			u.chains = append(u.chains, c)
			return true
		}
	}
	return false
}
