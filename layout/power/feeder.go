// All that is plugged into one outlet: lines along both walls, in its sockets, by the thinnest cord that keeps the volts.

package power

import (
	"cmp"
	"encoding/binary"
	"slices"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The share of the supply's volts that may be lost before something is said: 3 % on a branch and 5 % in all, informational
// notes of NEC 210.19 and 215.2, and IEC 60364-5-52 annex G.
const (
	dropSeen = 0.03
	dropFar  = 0.05
)

// atOutlet is what is plugged into one source.
type atOutlet struct {
	laid  []laid
	picks []pick
	dry   []int // units for which it has no socket
	mark  mark
	bound int // fewest pieces that any choice there could do with, 0 where that is not known
}

// laid is one socket's joints with one kind of cord.
type laid struct {
	joints []Joint
	cord   catalog.Cord
	dim    float64 // share of the volts lost beyond 3 % by the worst run
}

// outlet lays everything that is plugged into one source. From sharing to sharing most sources feed the same, so what was laid is kept.
func (f *feeding) outlet(k int, units []int) atOutlet {
	key := binary.AppendUvarint(nil, uint64(k))
	for _, i := range units {
		key = binary.AppendUvarint(key, uint64(i))
	}
	if o, ok := f.outlets[string(key)]; ok {
		return o
	}
	picks, bound := f.choose(k, units)
	o := f.lay(k, picks)
	o.bound = bound
	f.outlets[string(key)] = o
	return o
}

// layer looks for the lines of the best mark that keep the loss up to every last bulb within 3 %, and where none does, for those that lose least
// beyond.
type layer struct {
	best  atOutlet
	dim   float64 // of the best
	least mark    // of any, whatever it loses
	found bool
}

// take keeps what is laid where it is better.
func (l *layer) take(o atOutlet) {
	dim := 0.0
	for _, one := range o.laid {
		dim += one.dim
	}
	if !l.found || o.mark.better(l.least) {
		l.least = o.mark
	}
	if !l.found || len(o.dry) < len(l.best.dry) || len(o.dry) == len(l.best.dry) && (dim < l.dim-hair || dim < l.dim+hair && o.mark.better(l.best.mark)) {
		l.best, l.dim, l.found = o, dim, true
	}
}

// settled reports whether nothing better is to be had by more lines.
func (l *layer) settled() bool { return l.found && l.dim <= hair && !l.least.better(l.best.mark) }

// lay lays what is picked with each kind of cord; where the volts ask for a thicker one with more pieces, or for more than any gives, with more
// lines too.
func (f *feeding) lay(k int, picks []pick) atOutlet {
	src := f.sources[k]
	var l layer
	var short atOutlet
	stops := [2][]stop{f.stops(k, spec.Left, picks), f.stops(k, spec.Right, picks)}
	for _, kind := range src.cords {
		courses := f.bothCourses(k, stops, kind, false)
		m, both, ok := f.outletCourse(courses[0], courses[1], k)
		if o := f.plug(k, both, kind.cord, m); ok {
			l.take(o)
		} else {
			short = o
		}
	}
	for _, kind := range src.cords {
		if l.settled() {
			break
		}
		courses := f.bothCourses(k, stops, kind, true)
		for _, a := range courses[0] {
			for _, b := range courses[1] {
				if m, both, ok := f.outletCourse([]course{a}, []course{b}, k); ok {
					l.take(f.plug(k, both, kind.cord, m))
				}
			}
		}
	}
	if !l.found {
		l.best = short
	}
	l.best.picks = picks
	return l.best
}

// bothCourses lists the courses of both walls.
func (f *feeding) bothCourses(k int, stops [2][]stop, kind cordKind, more bool) (out [2][]course) {
	for side := range out {
		out[side] = f.courses(k, spec.Side(side), stops[side], f.linerOf(kind), more)
	}
	return out
}

// plug plugs lines into an outlet. What finds no place stays dry.
func (f *feeding) plug(k int, both [2]course, cord catalog.Cord, m mark) atOutlet {
	src := f.sources[k]
	lines := slices.Concat(both[0].lines, both[1].lines)
	o := atOutlet{mark: m}
	in, rest := pack(lines, src.outlet.Sockets, max(1, f.fans), src.most)
	for _, list := range in {
		l := laid{joints: f.grow(src, list, cord), cord: cord}
		for _, j := range l.joints {
			for _, p := range j.Plugs {
				l.dim = max(l.dim, f.lost(j, p, src.volts)-dropSeen)
			}
		}
		if !carries(cord, l.joints) {
			l.dim += 100
		}
		o.laid = append(o.laid, l)
	}
	for _, l := range rest {
		for _, s := range l.stops {
			for _, w := range s.wants {
				o.dry = append(o.dry, w.all()...)
			}
		}
	}
	return o
}

// all returns the units behind a want.
func (w want) all() []int {
	if w.riser == nil {
		return w.units
	}
	return slices.Concat(w.riser.plugs...)
}

// pack puts lines into an outlet's sockets: one in each while there are enough, then as many as a three-way has sockets behind one in the outlet, as
// far as its plug carries. What finds no place is returned as rest.
func pack(lines []line, sockets, fans int, most measure.Current) (in [][]line, rest []line) {
	if len(lines) <= sockets {
		for _, l := range lines {
			in = append(in, []line{l})
		}
		return in, nil
	}
	order := slices.Clone(lines)
	slices.SortStableFunc(order, func(a, b line) int { return cmp.Compare(b.amps, a.amps) })
	sums := make([]measure.Current, sockets)
	in = make([][]line, sockets)
	for _, l := range order {
		best := -1
		for s := range in {
			if len(in[s]) < fans && sums[s]+l.amps <= most+hair && (best < 0 || len(in[s]) < len(in[best])) {
				best = s
			}
		}
		if best < 0 {
			rest = append(rest, l)
			continue
		}
		in[best] = append(in[best], l)
		sums[best] += l.amps
	}
	return slices.DeleteFunc(in, func(list []line) bool { return len(list) == 0 }), rest
}

// lost returns the share of the volts lost up to the last bulb behind a plug.
func (f *feeding) lost(j Joint, p Plug, volts measure.Voltage) float64 {
	d := float64((volts - j.Volts) / volts)
	if !p.Supply {
		worst := measure.Voltage(0)
		for _, r := range p.runs {
			worst = max(worst, f.runs[r].lost)
		}
		d += float64(worst / volts)
	}
	return d
}

// feeder makes a feeder of one socket's joints.
func (f *feeding) feeder(name string, k int, l laid) Feeder {
	src := f.sources[k]
	one := Feeder{Name: name, Outlet: src.outlet.Name, Circuit: f.in.Spec.Power.Circuits[src.circuit].Name, Joints: l.joints, Amps: l.joints[0].Amps, Volts: src.volts, source: k}
	if slices.ContainsFunc(l.joints, func(j Joint) bool { return len(j.Cords) > 0 }) {
		f.wire(&one, l.cord)
	}
	return one
}

// wire makes a feeder's cords of a kind.
func (f *feeding) wire(one *Feeder, c catalog.Cord) {
	one.cord, one.Cord, one.Gauge = c, c.Name, strings.ReplaceAll(c.Name, "mm2", "mm²")
}

// carries reports whether every cord of some joints is within what its length may carry.
func carries(c catalog.Cord, joints []Joint) bool {
	for _, j := range joints {
		for _, l := range j.Cords {
			if j.Amps > c.AmpsAt(l)+hair {
				return false
			}
		}
	}
	return true
}

// worst returns the greatest share of volts lost up to the end of any run on a feeder.
func (f *feeding) worst(one Feeder) (drop float64) {
	for _, j := range one.Joints {
		for _, p := range j.Plugs {
			drop = max(drop, f.lost(j, p, one.Volts))
		}
	}
	return drop
}

// rank sorts a loss by the limits: 0 within 3 %, 1 within 5 %, 2 over it.
func rank(drop float64) int {
	switch {
	case drop <= dropSeen:
		return 0
	case drop <= dropFar:
		return 1
	}
	return 2
}
