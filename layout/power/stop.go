// What is wanted at each foot of a wall: plugs, plugs in the backs of others, risers to what hangs high.

package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// tapReach is how far apart the plugs in one socket's reach may be: one in a hand's reach above it and one below.
const tapReach = 2 * practice.HandReach

// spot is where something is plugged in: a place on a wall's arch, reached from its foot by going along and up.
type spot struct {
	arch  int            // from 0
	climb measure.Length // from the foot of that arch: level distance and height
	end   lights.End
}

// tied is how much of a cord that climbs there is tied up the leg and along the pipe or the row: nothing where that is in reach from the ground.
func (s spot) tied() measure.Length {
	if s.climb > practice.HipReach || s.end.At.MidBay() {
		return s.climb
	}
	return 0
}

// want is one socket that is wanted at a foot: for a unit's plug, two stacked ones, or a riser.
type want struct {
	units []int // one plug; the second in its back
	amps  measure.Current
	riser *riser
}

// riser is a cord from a foot up to where plugs hang too high for its socket.
type riser struct {
	spot  spot
	plugs [][]int // units, by plug
	taps  int
	fans  int
}

// stop is a foot with what is wanted there.
type stop struct {
	arch  int // from 0
	wants []want
	lift  measure.Length // how far up the leg its cord is tied, above where wraps begin, to the highest of its plugs: the wound string has no inch to spare
}

// pick is a unit fed by one of its ways.
type pick struct {
	unit   int
	option option
}

// stops gathers what is picked for one wall by foot, in the order of the arches.
func (f *feeding) stops(k int, side spec.Side, picks []pick) []stop {
	src := f.sources[k]
	at := map[int][]spotted{}
	var arches []int
	for _, p := range picks {
		if p.option.side != side {
			continue
		}
		s := spotted{p.unit, f.site.spot(p.option.end, side)}
		if _, seen := at[s.spot.arch]; !seen {
			arches = append(arches, s.spot.arch)
		}
		at[s.spot.arch] = append(at[s.spot.arch], s)
	}
	slices.Sort(arches)
	var out []stop
	for _, a := range arches {
		one := stop{arch: a}
		var high []spotted
		least := slices.MinFunc(at[a], func(a, b spotted) int { return cmp.Compare(a.spot.climb, b.spot.climb) }).spot.climb
		for _, s := range at[a] {
			if s.spot.climb > min(practice.HipReach, least+tapReach) {
				high = append(high, s)
			} else {
				one.lift = max(one.lift, s.spot.climb-practice.BareFoot(f.in.Spec.Units))
				one.wants = append(one.wants, want{units: []int{s.unit}, amps: f.units[s.unit].draws(src.volts)})
			}
		}
		one.wants = f.stack(one.wants)
		one.wants = append(one.wants, f.risers(src, high)...)
		out = append(out, one)
	}
	return out
}

// spotted is a unit at a spot.
type spotted struct {
	unit int
	spot spot
}

// risers gathers plugs that hang high into places that one three-way reaches, within what one cord carries.
func (f *feeding) risers(src source, high []spotted) []want {
	slices.SortStableFunc(high, func(a, b spotted) int { return cmp.Compare(a.spot.end.Z, b.spot.end.Z) })
	var out []want
	for len(high) > 0 {
		first := high[0].spot
		var here []want
		var rest []spotted
		for _, s := range high {
			if lights.Apart(first.end, s.spot.end) <= tapReach {
				here = append(here, want{units: []int{s.unit}, amps: f.units[s.unit].draws(src.volts)})
			} else {
				rest = append(rest, s)
			}
		}
		high = rest
		here = f.stack(here)
		for len(here) > 0 {
			r, one := &riser{spot: first}, want{}
			for len(here) > 0 && len(r.plugs) < max(1, f.fans) && (len(r.plugs) == 0 || one.amps+here[0].amps <= src.most+hair) {
				r.plugs = append(r.plugs, here[0].units)
				one.amps += here[0].amps
				here = here[1:]
			}
			if len(r.plugs) > 1 {
				r.taps, r.fans = 1, f.fans
			}
			one.riser = r
			out = append(out, one)
		}
	}
	return out
}

// stack puts one plug in the back of another where the labels say that there is a socket, no more than two, and no more behind the first plug than its
// label, its watts and the spec's together allow, what sits in its back counted.
func (f *feeding) stack(list []want) []want {
	var out []want
	for _, w := range list {
		k := slices.IndexFunc(out, func(o want) bool {
			return len(o.units) == 1 && !f.units[o.units[0]].supply && !f.units[w.units[0]].supply &&
				f.stacks(f.units[o.units[0]].runs[0], f.units[w.units[0]].runs[0])
		})
		if k < 0 {
			out = append(out, w)
			continue
		}
		out[k].units = append(out[k].units, w.units...)
		out[k].amps += w.amps
	}
	return out
}

// stacks reports whether a run's plug may sit in the back of another's. Only mains plugs with such a socket stack, of like kinds.
func (f *feeding) stacks(under, over int) bool {
	return f.back(f.site.at(f.runs[under].seats[0]).Label) && f.fitBehind(under, over)
}

// fitBehind reports whether two runs of like kind fit behind one plug together.
func (f *feeding) fitBehind(under, over int) bool {
	return f.site.at(f.runs[under].seats[0]).Kind == f.site.at(f.runs[over].seats[0]).Kind && breaks(limits(f.both(under, over), f.in.Spec.Power.Together)).Kind == NoLimit
}

// both returns the strings of two runs, the one's plug in the back of the other's.
func (f *feeding) both(under, over int) []lights.String {
	return slices.Concat(f.site.strings(f.runs[under].seats), f.site.strings(f.runs[over].seats))
}

// riserMark is what the stops of one wall need besides the lines along the feet: risers with their three-ways.
func riserMark(stops []stop, by *liner) mark {
	var m mark
	for _, s := range stops {
		for _, w := range s.wants {
			if w.riser == nil {
				continue
			}
			m = m.plus(by.over(w.riser.spot.climb).mark)
			m.pieces += int32(w.riser.taps)
			m.low--
			if w.riser.taps > 0 {
				m.cents += by.tools.tap
			}
		}
	}
	return m
}
