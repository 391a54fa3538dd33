// The search for the ends and walls by which one outlet feeds its plugs with the fewest pieces.

package power

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// sides are the two walls.
var sides = [2]spec.Side{spec.Left, spec.Right}

// mostChoices is up to how many choices of plug ends and walls are all tried for an outlet; of more, some are.
const mostChoices = 1024

// mostSweeps bounds how often single choices are changed for the better where not all are tried.
const mostSweeps = 60

// searcher looks for the best way to feed some units from one source.
type searcher struct {
	*feeding
	source int
	units  []int
	liner  *liner
}

// searcherOf readies a search.
func (f *feeding) searcherOf(k int, units []int) *searcher {
	return &searcher{feeding: f, source: k, units: units, liner: f.linerOf(f.sources[k].searched())}
}

// every visits every choice of ways for the units; it reports false, and visits none, where there are too many.
func (s *searcher) every(visit func([]pick)) bool {
	choices := 1
	for _, i := range s.units {
		if choices *= len(s.feeding.units[i].ways); choices > mostChoices {
			return false
		}
	}
	picks := make([]pick, len(s.units))
	var try func(n int)
	try = func(n int) {
		if n == len(picks) {
			visit(picks)
			return
		}
		for _, o := range s.feeding.units[s.units[n]].ways {
			picks[n] = pick{s.units[n], o}
			try(n + 1)
		}
	}
	try(0)
	return true
}

// choose picks for each unit one of its ways, so that the outlet needs the best mark, and returns the fewest pieces that any choice could do with; 0
// where not every choice was tried.
func (f *feeding) choose(k int, units []int) (best []pick, bound int) {
	s := f.searcherOf(k, units)
	top := none
	bound = math.MaxInt
	if !s.every(func(picks []pick) {
		least := s.bound(picks)
		if bound = min(bound, least); best != nil && top.over == 0 && least > int(top.pieces) {
			return
		}
		if m, ok := s.mark(picks); best == nil || ok && m.better(top) {
			best, top = slices.Clone(picks), m
		}
	}) {
		return s.some(), 0
	}
	return best, bound
}

// fewestAt returns the fewest pieces that any choice could do with to feed some units from a source, 0 where there are too many choices to say.
func (f *feeding) fewestAt(k int, units []int) int {
	s := f.searcherOf(k, units)
	bound := math.MaxInt
	if !s.every(func(picks []pick) { bound = min(bound, s.bound(picks)) }) {
		return 0
	}
	return bound
}

// searched returns the kind of cord that choices are tried with: the thinnest that is sold with several sockets, else the thinnest.
func (s source) searched() cordKind {
	for _, c := range s.cords {
		if len(c.inline) > 0 {
			return c
		}
	}
	return s.cords[0]
}

// walled is what is picked for one wall, laid out once for the same picks.
type walled struct {
	stops   []stop
	bound   wallBound
	courses []course // nil until asked for
}

// mark returns the mark of what is picked, over both walls; not ok where the outlet has too few sockets.
func (s *searcher) mark(picks []pick) (mark, bool) {
	c, _, ok := s.outletCourse(s.laidOn(spec.Left, picks), s.laidOn(spec.Right, picks), s.source)
	return c, ok
}

// laidOn returns the courses of what is picked for a wall.
func (s *searcher) laidOn(side spec.Side, picks []pick) []course {
	w := s.wall(side, picks)
	if w.courses == nil {
		w.courses = s.courses(s.source, side, w.stops, s.liner, false)
	}
	return w.courses
}

func (s *searcher) wall(side spec.Side, picks []pick) *walled {
	key := append(make([]byte, 0, 4*len(picks)), byte(s.source), byte(side))
	for _, p := range picks {
		if p.option.side != side {
			continue
		}
		key = append(key, byte(p.unit), byte(p.unit>>8), byte(b2i(p.option.turned)))
	}
	w, ok := s.walls[string(key)]
	if !ok {
		w = &walled{stops: s.stops(s.source, side, picks)}
		w.bound = s.wallBound(side, w.stops)
		s.walls[string(key)] = w
	}
	return w
}

// some tries the walls whole, with plugs over the opening at the nearest end and in pairs, and then changes single picks for the better.
func (s *searcher) some() []pick {
	var best []pick
	least := none
	tries := 0
	try := func(picks []pick) bool {
		tries++
		m, ok := s.mark(picks)
		if best != nil && !(ok && m.better(least)) {
			return false
		}
		best, least = slices.Clone(picks), m
		return true
	}
	for _, side := range sides {
		for _, paired := range []bool{false, true} {
			try(s.all(side, paired))
		}
	}
	for better := true; better && tries < mostSweeps; {
		better = false
		for n, p := range best {
			for _, o := range s.feeding.units[p.unit].ways {
				if o == best[n].option || tries >= mostSweeps || s.low(o) && len(s.units) > 40 {
					continue
				}
				picks := slices.Clone(best)
				picks[n].option = o
				better = try(picks) || better
			}
		}
	}
	return best
}

// low reports whether an option's plug is in reach of a socket on its leg.
func (s *searcher) low(o option) bool { return s.site.spot(o.end, o.side).climb <= practice.HipReach }

// all picks one wall for every unit that can be fed along it. A plug over the opening is taken at its run's end nearer the outlet, or, in pairs, where it
// meets the plug of the run beside it.
func (s *searcher) all(side spec.Side, paired bool) []pick {
	near := s.sources[s.source].ways[side].arch + 1
	var out []pick
	high := 0
	for _, i := range s.units {
		ways := slices.Clone(s.feeding.units[i].ways)
		over := !s.low(ways[0])
		away := func(o option) int {
			d := o.end.Arch - near
			switch {
			case over && paired && high%2 == 0:
				return -o.end.Arch // of a pair, the first meets the second at its far end
			case over && paired:
				return o.end.Arch
			}
			return max(d, -d)
		}
		other := func(o option) int { return b2i(o.side != side) }
		slices.SortStableFunc(ways, func(a, b option) int { return cmp.Or(cmp.Compare(other(a), other(b)), cmp.Compare(away(a), away(b))) })
		if over {
			high++
		}
		out = append(out, pick{i, ways[0]})
	}
	return out
}

// outletCourse chooses for both walls of an outlet the courses with the best mark together that its sockets feed, three-ways in the outlet
// counted. It is not ok where its sockets are too few for any; then it returns the courses that need fewest.
func (f *feeding) outletCourse(left, right []course, k int) (least mark, best [2]course, found bool) {
	sockets, few := f.sources[k].outlet.Sockets, math.MaxInt
	least = none
	for _, a := range left {
		for _, b := range right {
			lines := len(a.lines) + len(b.lines)
			if lines > sockets && (a.tapped() || b.tapped()) {
				continue
			}
			taps := f.tapsIn(sockets, lines)
			m := a.mark.plus(b.mark).plus(mark{pieces: int32(taps), low: int32(taps + f.timersMore(k, lines)), cents: int64(taps) * f.prices.tap})
			switch {
			case taps <= sockets && (!found || m.better(least)):
				least, best, found = m, [2]course{a, b}, true
			case !found && lines < few:
				best, few = [2]course{a, b}, lines
			}
		}
	}
	return least, best, found
}

// timersMore is how many timers beyond the first so many lines take at an outlet without one: each is a joint more there.
func (f *feeding) timersMore(k, lines int) int {
	o, each := f.sources[k].outlet, max(1, f.in.Spec.Power.Timer.Sockets)
	if o.Timer > 0 {
		return 0
	}
	return max(0, (min(lines, o.Sockets)-1)/each)
}

// tapsIn is how many three-ways make sockets enough for so many lines, more than there are sockets where none do.
func (f *feeding) tapsIn(sockets, lines int) int {
	switch {
	case lines <= sockets:
		return 0
	case f.fans < 2:
		return sockets + 1
	}
	return (lines - sockets + f.fans - 2) / (f.fans - 1)
}
