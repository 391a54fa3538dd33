// Which outlet feeds which plug, and what is built of it: the sharing is tried with more outlets, with fewer, and with plugs exchanged.

package power

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/power/sharing"
	"hoopwright/layout/spec"
)

// overWay is what a way passed by a cord counts for in length when outlets are chosen: more than any way around.
const overWay = 1000 * measure.Metre

// mostMore is how many further groups of outlets are tried at each step, the nearest first, where something is amiss; to save cords it is the nearest.
const mostMore = 3

// pose puts the question which outlet feeds which unit, with the units of two parts kept apart or not.
func (f *feeding) pose(split spec.Split) sharing.Problem {
	p := sharing.Problem{Groups: f.trips(split), Parts: 1}
	if split != spec.SplitNone {
		p.Parts = 2
	}
	for _, c := range f.in.Spec.Power.Circuits {
		p.Allowed = append(p.Allowed, float64(max(0, allowance(f.in.Spec.Power, c)-c.OtherLoad)))
	}
	for _, s := range f.sources {
		limit := s.most * measure.Current(s.outlet.Sockets)
		if t := s.outlet.Timer; t > 0 {
			limit = min(limit, t)
		}
		p.Sources = append(p.Sources, sharing.Source{Circuit: s.circuit, Limit: float64(limit), Socket: float64(s.most)})
	}
	for _, u := range f.units {
		one := sharing.Plug{Part: sharing.Any}
		if split != spec.SplitNone && u.part != anyPart {
			one.Part = u.part
		}
		for _, s := range f.sources {
			draw := sharing.Cannot
			if u.takes(s.volts) {
				draw = float64(u.draws(s.volts))
				if one.Wants == 0 {
					one.Wants = draw
				}
			}
			one.Draws = append(one.Draws, draw)
			one.Ways = append(one.Ways, math.Round(float64(f.nearest(s, u)))) // whole millimetres: no plan hangs on how the site lies
		}
		p.Plugs = append(p.Plugs, one)
	}
	return p
}

// nearest returns how a cord lies from a source to a unit by its shortest way, ways passed counted.
func (f *feeding) nearest(s source, u unit) measure.Length {
	best := measure.Length(-1)
	for _, o := range u.ways {
		way := s.ways[o.side]
		at := f.site.spot(o.end, o.side)
		d := f.site.toFoot(way, o.side, at.arch) + at.climb + overWay*measure.Length(f.site.past)*measure.Length(way.over+f.site.crosses(o.side, way.arch, at.arch))
		if best < 0 || d < best {
			best = d
		}
	}
	return best
}

// trips returns the sources in groups that go dark together: by circuit; where a split is asked for and one circuit has all, by where
// their GFCIs are reset.
func (f *feeding) trips(split spec.Split) [][]int {
	circuits := f.in.Spec.Power.Circuits
	var out [][]int
	for c := range circuits {
		var set []int
		for k, s := range f.sources {
			if s.circuit == c {
				set = append(set, k)
			}
		}
		if len(set) > 0 {
			out = append(out, set)
		}
	}
	if split == spec.SplitNone || len(out) != 1 || !circuits[f.sources[out[0][0]].circuit].GFCI {
		return out
	}
	var apart [][]int
	var resets []string
	for _, k := range out[0] {
		r := f.sources[k].outlet.ResetAt
		at := slices.Index(resets, r)
		if at < 0 {
			at = len(resets)
			resets = append(resets, r)
			apart = append(apart, nil)
		}
		apart[at] = append(apart[at], k)
	}
	return apart
}

// assign shares the units out and builds the feeders. All fed comes before the split. While circuits are left, one more is taken up where a way is passed no more, where
// a run loses no more than 3 % of its volts, or where it saves more than it takes; then each that does not is given back.
func (f *feeding) assign() {
	f.split = f.in.Spec.Power.Split
	if f.split != spec.SplitNone && len(f.trips(f.split)) < 2 {
		f.split = spec.SplitNone
	}
	f.problem = f.pose(f.split)
	f.sharing = sharing.Share(&f.problem)
	if f.split != spec.SplitNone && f.sharing.Missing > hair {
		whole := f.pose(spec.SplitNone)
		if one := sharing.Share(&whole); one.Missing < f.sharing.Missing-hair {
			f.problem, f.sharing, f.split = whole, one, spec.SplitNone
		}
	}
	f.plan.Fewest, f.plan.FewestProven = f.sharing.Used, f.sharing.Proven
	best := f.build(f.sharing)
	for better := true; better; {
		better = false
		more, tries := f.problem.More(f.sharing), 1
		if best.mark.over > 0 || best.dim > hair || len(best.dry) > 0 {
			tries = mostMore
		}
		for _, s := range more[:min(tries, len(more))] {
			if b := f.build(s); b.needs(best) || !best.needs(b) && b.work() < best.work() {
				f.sharing, best, better = s, b, true
				break
			}
		}
	}
	for fewer := true; fewer; {
		fewer = false
		for _, s := range f.problem.Fewer(f.sharing) {
			if b := f.build(s); !best.needs(b) && b.work() <= best.work() {
				f.sharing, best, fewer = s, b, true
				break
			}
		}
	}
	best = f.swap(best)
	f.take(best)
}

// take makes a building the plan's, and turns each run as it is fed.
func (f *feeding) take(b built) {
	f.plan.Feeders, f.dry = ownCords(b.feeders), b.dry
	f.bound = b.bound
	for _, p := range b.picks {
		for n, i := range f.units[p.unit].runs {
			r := f.runs[i]
			turned := p.option.turned
			if n > 0 { // behind the same supply as the first
				own, _ := f.site.beside(r, p.option)
				turned = own.turned
			}
			if turned {
				r.seats, r.back = r.back, r.seats
				f.site.settle(r)
			}
		}
	}
	f.stock(f.plan.Feeders)
	f.plan.Missing = measure.Current(f.sharing.Missing)
	for i, of := range f.sharing.Of {
		switch {
		case of >= 0:
		case slices.ContainsFunc(f.sources, func(s source) bool { return f.units[i].takes(s.volts) }):
			f.unfed = append(f.unfed, i)
		default:
			f.strange = append(f.strange, i)
		}
	}
}

// mostSwaps is up to how many other ways to give the same units to the same outlets are all tried.
const mostSwaps = 16

// swap tries the other ways to give the units to the outlets in use, the parts exchanged and what either part may have put on each, where there are few of
// them. Nothing is claimed of the pieces where not all were tried.
func (f *feeding) swap(best built) built {
	used := []int{}
	for k := range f.sources {
		if slices.Contains(f.sharing.Of, k) {
			used = append(used, k)
		}
	}
	if len(used) < 2 {
		return best
	}
	var loose []int // units that several of the outlets in use may feed
	for i, of := range f.sharing.Of {
		if of >= 0 && (f.problem.Plugs[i].Part == sharing.Any || f.problem.Parts == 1 || len(used) > 2) {
			loose = append(loose, i)
		}
	}
	choices := 2
	for range loose {
		if choices *= len(used); choices > mostSwaps {
			best.bound = 0
			return best
		}
	}
	bound := best.bound
	for c := range choices {
		s := f.sharing
		s.Of = slices.Clone(s.Of)
		digits := c / 2
		for i, of := range s.Of {
			switch k := slices.Index(loose, i); {
			case of < 0:
			case k >= 0:
				s.Of[i] = used[digits%len(used)]
				digits /= len(used)
			case c%2 == 1:
				s.Of[i] = used[1-slices.Index(used, of)]
			}
		}
		if !f.problem.Holds(s.Of) {
			continue
		}
		if least := f.bounds(s); least >= int(best.mark.pieces) && best.mark.over == 0 {
			continue // nothing fewer there, and farther from the outlets
		}
		b := f.build(s)
		bound = min(bound, b.bound)
		if b.better(best) {
			f.sharing, best = s, b
		}
	}
	best.bound = bound
	return best
}

// bounds returns the fewest pieces that any choice could do with where a sharing is kept, 0 where that is not known.
func (f *feeding) bounds(s sharing.Plan) int {
	sum := 0
	for k := range f.sources {
		units := s.Units(k)
		if len(units) == 0 {
			continue
		}
		n := f.fewestAt(k, units)
		if n == 0 {
			return 0
		}
		sum += n
	}
	return sum
}

// built is the feeders of a sharing.
type built struct {
	feeders []Feeder
	picks   []pick
	dry     []int   // units for which no outlet has a socket
	dim     float64 // shares of the volts lost beyond 3 %, over all feeders
	outlets int32   // in use
	mark    mark
	bound   int // fewest pieces that any choice of ends, walls and cords could do with, 0 where that is not known
}

// needs reports whether more is fed than in the other, or as much over fewer ways, or with less lost beyond 3 %.
func (b built) needs(o built) bool {
	if c := cmp.Or(cmp.Compare(len(b.dry), len(o.dry)), cmp.Compare(b.mark.over, o.mark.over)); c != 0 {
		return c < 0
	}
	return b.dim < o.dim-hair
}

// work is what is laid, and the outlets that are tested and get a timer.
func (b built) work() int32 { return b.mark.pieces + b.outlets }

// better reports whether a building comes before the other by all aims.
func (b built) better(o built) bool {
	return b.needs(o) || !o.needs(b) && b.mark.better(o.mark)
}

// build makes the feeders of a sharing.
func (f *feeding) build(s sharing.Plan) built {
	var b built
	known := true
	for k := range f.sources {
		units := s.Units(k)
		if len(units) == 0 {
			continue
		}
		o := f.outlet(k, units)
		b.outlets++
		for _, l := range o.laid {
			b.feeders = append(b.feeders, f.feeder(fmt.Sprintf("F%d", len(b.feeders)+1), k, l))
			b.dim += l.dim
		}
		b.picks = append(b.picks, o.picks...)
		b.dry = append(b.dry, o.dry...)
		b.mark = b.mark.plus(o.mark)
		b.bound += o.bound
		known = known && o.bound > 0
	}
	if !known {
		b.bound = 0
	}
	return b
}

// ownCords copies feeders as deep as their cords change hands: what is laid once is kept for other sharings.
func ownCords(feeders []Feeder) []Feeder {
	out := slices.Clone(feeders)
	for d := range out {
		out[d].Joints = slices.Clone(out[d].Joints)
		for i := range out[d].Joints {
			out[d].Joints[i].Cords = slices.Clone(out[d].Joints[i].Cords)
		}
	}
	return out
}
