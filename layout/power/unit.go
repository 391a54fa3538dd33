// Plugs to be fed, and the ways in which each may be.

package power

import (
	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// unit is one plug to be fed: a run of strings, or a low-voltage supply with the runs in its sockets.
type unit struct {
	runs   []int
	supply bool
	watts  measure.Power   // of a supply
	amps   measure.Current // of a run
	volts  measure.Voltage // that a run wants
	part   int             // of the split
	ways   []option        // how it may be fed, at least one
}

// option is one way to feed a unit: where its plug hangs, as its run lies or turned, and along which wall it is fed.
type option struct {
	turned bool
	end    lights.End
	side   spec.Side
}

// takes reports whether the unit belongs on a circuit of some volts: a run within a tenth of its own, a supply on
// any mains.
func (u unit) takes(v measure.Voltage) bool {
	if u.supply {
		return v > lowVolts
	}
	return measure.Abs(v-u.volts) <= 0.1*u.volts
}

// draws returns the current at a circuit's volts. A supply is counted at its full watts, whatever hangs on it.
func (u unit) draws(v measure.Voltage) measure.Current {
	if u.supply {
		return measure.Current(float64(u.watts) / float64(v))
	}
	return u.amps
}

// options lists how a run may be fed: from the wall that its plug hangs on, from either where it hangs over the opening, and from its other end where it
// may turn. Under `left and right` a run of one wall is fed along that wall.
func (s *site) options(r *run) []option {
	var out []option
	add := func(e lights.End, turned bool) {
		for _, side := range sides {
			if side != e.Side && !s.overhead(e) {
				continue
			}
			if s.Spec.Power.Split == spec.SplitWalls && r.part != anyPart && side != spec.Side(r.part) {
				continue
			}
			out = append(out, option{turned, e, side})
		}
	}
	add(s.at(r.seats[0]).From, false)
	if r.back != nil {
		add(s.at(r.back[0]).From, true)
	}
	if len(out) == 0 { // a wall's run whose plug hangs on the other: it is fed where it hangs
		e := s.at(r.seats[0]).From
		out = append(out, option{false, e, e.Side})
	}
	return out
}

// beside returns the way to feed a run from where another is fed, by its prongs that hang nearer to there; not ok where it is fed along the other wall alone.
func (s *site) beside(r *run, o option) (own option, ok bool) {
	for _, one := range s.options(r) {
		if one.side == o.side && (!ok || lights.Apart(one.end, o.end) < lights.Apart(own.end, o.end)) {
			own, ok = one, true
		}
	}
	return own, ok
}

// together returns where a supply hangs that feeds another run too: at the highest of the prongs, for its cord is led up to there. Not ok where one socket's reach is less than they are apart.
func (f *feeding) together(u unit, r *run, o option) (option, bool) {
	own, ok := f.site.beside(r, o)
	for _, i := range u.runs {
		other, _ := f.site.beside(f.runs[i], o)
		ok = ok && lights.Apart(own.end, other.end) <= tapReach
	}
	if own.end.Z > o.end.Z {
		o.end = own.end
	}
	return o, ok
}

// makeUnits makes a plug of each run. Low-voltage runs whose prongs come to one socket share a supply, as far as its sockets and
// watts go, whatever the strings' kinds.
func (f *feeding) makeUnits() {
	for i, r := range f.runs {
		one := unit{runs: []int{i}, amps: r.amps, volts: r.label.Volts, part: r.part, ways: f.site.options(r)}
		if r.label.Supply == nil {
			f.units = append(f.units, one)
		} else if !f.share(i) {
			one.supply, one.watts = true, max(r.label.Supply.Watts, r.watts)
			f.units = append(f.units, one)
		}
	}
}

// share plugs a low-voltage run into a supply that is there already, if one has a socket and watts left; the supply then stands only where its prongs come too.
func (f *feeding) share(i int) bool {
	r := f.runs[i]
	for k := range f.units {
		u := &f.units[k]
		if !u.supply || u.part != r.part || len(u.runs) >= r.label.Supply.Sockets {
			continue
		}
		var both []option
		for _, o := range u.ways {
			if at, ok := f.together(*u, r, o); ok {
				both = append(both, at)
			}
		}
		sum := r.watts
		for _, other := range u.runs {
			sum += f.runs[other].watts
		}
		if sameSupply(f.runs[u.runs[0]].label, r.label) && sum <= u.watts+hair && len(both) > 0 {
			u.runs, u.ways = append(u.runs, i), both
			return true
		}
	}
	return false
}

// sameSupply reports whether strings come with supplies that are alike, so that runs of both may be plugged into one.
func sameSupply(a, b catalog.String) bool {
	return a.Volts == b.Volts && a.Lamp == b.Lamp && *a.Supply == *b.Supply
}
