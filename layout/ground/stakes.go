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
		ground := sides(Levels(t.spec, arch))
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
			station := t.route.at(t.stations[arch-1].Along + w.sign*t.spec.Guys.Out)
			ground := sides(levelAt(t.spec.Site.Levels, t.archAt(station.Along)))
			for _, side := range []spec.Side{spec.Left, spec.Right} {
				stake := t.stake(StakeID{Arch: arch, Side: side, Guy: true, Way: w.name}, station, t.spans[arch-1]/2+out)
				stake.Ground = ground[side]
				stake.Running = t.runningAt(running[side], station.Along)
				stake.Length, stake.Depth, stake.Tied = t.spec.Guys.Stake.Length, t.spec.Guys.Stake.Depth, t.spec.Guys.From
				stake.Base = t.onBase(arch)
				stakes = append(stakes, stake)
			}
		}
	}
	return stakes
}

// pegs returns the pegs of braces, in the wall and short of the neighbour's foot.
func (t tunnel) pegs(running [2][]measure.Length) (stakes []Stake) {
	for _, b := range t.spec.Pairs() {
		station := t.route.at(t.stations[b.Arch-1].Along + b.Along)
		ground := sides(levelAt(t.spec.Site.Levels, t.archAt(station.Along)))
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
		for _, side := range []spec.Side{spec.Left, spec.Right} {
			peg := t.stake(StakeID{Arch: b.Arch, Side: side, Guy: true, Way: way, Bay: b.Bay}, station, t.spans[next]/2)
			peg.Ground, peg.Tied, peg.Base = ground[side], t.spec.Braces.From, t.onBase(b.Arch)
			peg.Running = t.runningAt(running[side], station.Along)
			if peg.Length, peg.Depth = t.spec.Braces.Peg.Length, t.spec.Braces.Peg.Depth; peg.Base {
				peg.Depth = 0
			}
			stakes = append(stakes, peg)
		}
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

func sides(left, right measure.Length) [2]measure.Length { return [2]measure.Length{left, right} }
