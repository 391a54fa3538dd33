package ground

import (
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// tunnel is what the stakes are laid out from.
type tunnel struct {
	spec     *spec.Spec
	spans    []measure.Length // one per arch, all positive
	crowns   []measure.Length // heights of the crowns, one per arch, all positive
	shapes   []Shape          // one per arch, or none
	aside    measure.Length   // of the guy stakes of arches between others
	lows     map[lowKey]low   // what low has worked out
	route    route
	stations []Station
	baseline measure.Length // distance of each side's baseline from the centreline
}

func newTunnel(s *spec.Spec, of Arches) tunnel {
	n := s.Tunnel.Arches
	t := tunnel{spec: s, shapes: of.Shapes, aside: of.Aside, lows: map[lowKey]low{}, route: newRoute(&s.Site, s.Tunnel.Spacing*measure.Length(n-1))}
	for i := range n {
		own := s.ArchOf(i + 1)
		t.spans = append(t.spans, firstPositive(at(of.Spans, i), own.Span, s.Tunnel.OpeningWidth, measure.Metre))
		t.crowns = append(t.crowns, firstPositive(at(of.Crowns, i), own.Height, s.Tunnel.OpeningHeight, 2*measure.Metre))
		t.stations = append(t.stations, t.route.at(s.Tunnel.Spacing*measure.Length(i)))
	}
	sorted := slices.Sorted(slices.Values(t.spans))
	t.baseline = sorted[n/2] / 2
	return t
}

// firstPositive returns the first of the lengths that is a positive number. Where no arch stands there is no span to
// lay out, and the packet, which is then banded DO NOT BUILD, still needs a plan to draw.
func firstPositive(lengths ...measure.Length) measure.Length {
	for _, l := range lengths {
		if l > 0 && !math.IsInf(float64(l), 1) {
			return l
		}
	}
	return lengths[len(lengths)-1]
}

func at(list []measure.Length, i int) measure.Length {
	if i < len(list) {
		return list[i]
	}
	return 0
}

// stakes returns L1, R1, L2, R2 …, then the guy stakes.
func (t tunnel) stakes() []Stake {
	var stakes []Stake
	running := t.running()
	for i, station := range t.stations {
		arch := i + 1
		own := t.spec.ArchOf(arch).Stake
		ground := levelAt(t.spec.Site.Levels, float64(arch))
		for _, side := range []spec.Side{spec.Left, spec.Right} {
			stake := t.stake(Leg(side, arch), station, t.spans[i]/2)
			stake.Ground, stake.Running = ground[side], running[side][i]
			stake.Length, stake.Depth, stake.Base = own.Length, own.Depth, t.onBase(arch)
			stakes = append(stakes, stake)
		}
	}
	return append(append(stakes, t.guyStakes(running)...), t.pegs(running)...)
}

// guyStakes returns two stakes for each way a guyed arch is held. The first arch is held from before the entrance and the
// last from beyond the exit, on their own baselines carried on straight: G1L, G1R. An arch between is held both ways along
// the wall, aside from it: G15La, G15Ra toward arch 1, G15Lb, G15Rb away from it. A lone arch is held both ways too.
func (t tunnel) guyStakes(running [2][]measure.Length) []Stake {
	n := len(t.stations)
	arches := slices.Compact(slices.Sorted(slices.Values(t.spec.Guys.Arches)))
	var stakes []Stake
	for _, arch := range arches {
		if arch < 1 || arch > n {
			continue
		}
		type way struct {
			sign measure.Length
			name Way
		}
		ways := []way{{-1, Toward}, {1, Away}}
		out := t.aside
		switch {
		case n == 1:
			out = 0
		case arch == 1:
			ways, out = []way{{-1, OneWay}}, 0
		case arch == n:
			ways, out = []way{{1, OneWay}}, 0
		}
		for _, w := range ways {
			id := StakeID{Arch: arch, Guy: true, Way: w.name}
			along := t.stations[arch-1].Along + w.sign*t.spec.Guys.Out
			stakes = append(stakes, t.holding(id, along, t.spans[arch-1]/2+out, running, t.spec.Guys.Stake, t.spec.Guys.From)...)
		}
	}
	return stakes
}

// holding returns the stakes of both sides that hold an arch lengthwise: where along the route, how far out, of which bar, and how high they are tied.
func (t tunnel) holding(id StakeID, along, out measure.Length, running [2][]measure.Length, bar spec.Stake, tied measure.Length) (stakes []Stake) {
	station := t.route.at(along)
	ground := levelAt(t.spec.Site.Levels, t.archAt(station.Along))
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		id.Side = side
		stake := t.stake(id, station, out)
		stake.Ground, stake.Running = ground[side], t.runningAt(running[side], station.Along)
		stake.Length, stake.Depth, stake.Tied, stake.Base = bar.Length, bar.Depth, tied, t.onBase(id.Arch)
		stakes = append(stakes, stake)
	}
	return stakes
}

// pegs returns the pegs of braces, in the wall and short of the neighbour's foot.
func (t tunnel) pegs(running [2][]measure.Length) (stakes []Stake) {
	for _, b := range t.spec.Pairs() {
		next, way := b.Bay, OneWay // the neighbour, by its place in the list
		if b.Along < 0 {
			next--
		}
		if t.spec.Braces.Line {
			way = Away
			if b.Along < 0 {
				way = Toward
			}
		}
		peg := t.spec.Braces.Peg
		if t.onBase(b.Arch) {
			peg.Depth = 0
		}
		id := StakeID{Arch: b.Arch, Guy: true, Way: way, Bay: b.Bay}
		stakes = append(stakes, t.holding(id, t.stations[b.Arch-1].Along+b.Along, t.spans[next]/2, running, peg, t.spec.Braces.From)...)
	}
	return stakes
}

// onBase reports whether an arch stands on weighted bases, and what holds it on weights: nothing of it is driven.
func (t tunnel) onBase(arch int) bool { return t.spec.ArchOf(arch).Foot != nil }

func (t tunnel) stake(id StakeID, at Station, out measure.Length) Stake {
	if id.Side == spec.Left {
		out = -out
	}
	p := along(at.At, rightOf(at.Heading), out)
	return Stake{StakeID: id, X: p.X, Y: p.Y, Along: at.Along, Offset: out, heading: at.Heading}
}

// running returns, for each side, the distance of every arch along that side's baseline. On a straight that is the route
// distance itself. On a bend the baseline is the line of pegs that a tape can follow: from arch to arch through the points
// half the commonest span out.
func (t tunnel) running() (running [2][]measure.Length) {
	for side, sign := range []measure.Length{-1, 1} {
		var sum measure.Length
		var before spec.Point
		for i, s := range t.stations {
			peg := along(s.At, rightOf(s.Heading), sign*t.baseline)
			switch {
			case t.route.straight():
				sum = s.Along
			case i > 0:
				sum += Distance(before, peg)
			}
			before = peg
			running[side] = append(running[side], sum)
		}
	}
	return running
}

// runningAt returns the running distance at a route distance: linear within a bay, straight on beyond the ends.
func (t tunnel) runningAt(running []measure.Length, d measure.Length) measure.Length {
	last := len(running) - 1
	switch {
	case d <= 0 || last == 0:
		return d
	case d >= t.route.length:
		return running[last] + d - t.route.length
	}
	bay := min(int(d/t.spec.Tunnel.Spacing), last-1)
	share := (d - t.stations[bay].Along) / t.spec.Tunnel.Spacing
	return running[bay] + (running[bay+1]-running[bay])*share
}

// archAt returns a route distance as an arch number with fractions.
func (t tunnel) archAt(d measure.Length) float64 {
	if len(t.stations) == 1 {
		return 1
	}
	return 1 + float64(d/t.spec.Tunnel.Spacing)
}
