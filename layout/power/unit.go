package power

import (
	"math"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
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
	return math.Abs(float64(v-u.volts)) <= 0.1*float64(u.volts)
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
		for _, side := range []spec.Side{spec.Left, spec.Right} {
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
	if r.turns {
		add(s.at(s.turn(r.seats)[0]).From, true)
	}
	if len(out) == 0 { // a wall's run whose plug hangs on the other: it is fed where it hangs
		e := s.at(r.seats[0]).From
		out = append(out, option{false, e, e.Side})
	}
	return out
}

// units makes a plug of each run. Low-voltage runs whose prongs a hand brings together share a supply, as far as its sockets and
// watts go.
func (f *feeding) makeUnits() {
	for i, r := range f.runs {
		list := f.site.strings(r.seats)
		label := list[0].Label
		watts := measure.Power(0)
		amps := measure.Current(0)
		for _, s := range list {
			watts += s.Watts
			amps += ampsOf(s.Label)
		}
		if label.Supply == nil {
			f.units = append(f.units, unit{runs: []int{i}, amps: amps, volts: label.Volts, part: r.part, ways: f.site.options(r)})
			continue
		}
		if !f.share(i, list, watts) {
			f.units = append(f.units, unit{runs: []int{i}, supply: true, watts: max(label.Supply.Watts, watts), part: r.part, ways: f.site.options(r)[:1]})
		}
	}
}

// share plugs a low-voltage run into a supply that is there already, if one has a socket and watts left.
func (f *feeding) share(i int, list []lights.String, watts measure.Power) bool {
	for k := range f.units {
		u := &f.units[k]
		if !u.supply || u.part != f.runs[i].part || len(u.runs) >= list[0].Label.Supply.Sockets || distance(u.ways[0].end, list[0].From) > practice.HandReach {
			continue
		}
		sum := watts
		for _, other := range u.runs {
			for _, s := range f.site.strings(f.runs[other].seats) {
				sum += s.Watts
			}
		}
		if f.site.at(f.runs[u.runs[0]].seats[0]).Kind == list[0].Kind && sum <= u.watts+hair {
			u.runs = append(u.runs, i)
			return true
		}
	}
	return false
}
