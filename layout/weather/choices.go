package weather

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// sold are the lengths that bars are sold in, the depths they are driven to, and how much of one stands in the pipe at least and at most.
type sold struct {
	lengths, depths []measure.Length
	least, most     measure.Length
}

// sizes returns what bars are sold in.
func sizes(u measure.System) sold {
	const in = measure.Inch
	return measure.By(u,
		sold{[]measure.Length{36 * in, 48 * in, 60 * in}, []measure.Length{12 * in, 15 * in, 18 * in, 20 * in, 24 * in, 30 * in}, 15 * in, 30 * in},
		sold{[]measure.Length{900, 1200, 1500}, []measure.Length{300, 400, 450, 500, 600, 750}, 400, 750})
}

// Stakes lists what may be driven under the arches where the spec leaves it open, or else all that might be, cheapest first and shallowest of equals: bars that enter the pipe, as sold, most of the
// bar in the pipe or the ground.
func Stakes(s *spec.Spec, all bool) (list []spec.Stake) {
	given, of := s.Arch.Stake, sizes(s.Units)
	fixed := func(key string) bool { return !all && s.Given("arch.stake."+key) }
	var bars []catalog.Bar
	for _, bar := range catalog.Bars() {
		if bar.OverRibs <= s.Arch.Pipe.ID() && (bar.Number > 0) == (s.Units == measure.Imperial) {
			bars = append(bars, bar)
		}
	}
	if fixed("bar") {
		bars = []catalog.Bar{given.Bar}
	}
	if fixed("length") {
		of.lengths, of.least, of.most = []measure.Length{given.Length}, 0, given.Length
	}
	if fixed("depth") {
		of.depths = []measure.Length{given.Depth}
	}
	for _, bar := range bars {
		for _, length := range of.lengths {
			for _, depth := range of.depths {
				show := length - depth
				if show > 0 && (fixed("depth") || depth <= length*2/3 && show >= of.least && show <= of.most) {
					list = append(list, spec.Stake{Bar: bar, Length: length, Depth: depth, Lean: given.Lean})
				}
			}
		}
	}
	slices.SortStableFunc(list, func(a, b spec.Stake) int {
		return cmp.Or(cmp.Compare(priceOfBars(s, a, 1), priceOfBars(s, b, 1)), cmp.Compare(a.Depth, b.Depth))
	})
	return list
}

// Bracing is what may hold a tunnel lengthwise.
type Bracing struct {
	Guys   spec.Guys
	Braces spec.Braces
}

// On returns the spec with this bracing.
func (b Bracing) On(s *spec.Spec) *spec.Spec {
	n := *s
	n.Guys, n.Braces = b.Guys, b.Braces
	return &n
}

// Bracings lists what may hold a tunnel of such arches lengthwise, cheapest first, of equal ones braces of pipe; guys at the way in, which a child runs into, come after all others.
// Bays that people pass are left free.
func Bracings(s *spec.Spec, k *arch.Kind) (list []Bracing) {
	n := s.Tunnel.Arches
	peg := spec.Peg(s.Arch.Stake.Bar, s.Units)
	tie := max(k.HighestTie(), k.Crown/2)
	guys := func(arches []int) (list []spec.Guys) {
		add := func(from, out measure.Length) {
			list = append(list, spec.Guys{Arches: freeArches(s, slices.Clone(arches), out), From: from, Out: out, Stake: peg})
		}
		for _, least := range []measure.Length{OutFor(tie, s.Units), OutFor(tie*5/4, s.Units)} {
			add(tie, LaneOut(s, arches, least))
		}
		if near := offLanes(s, arches, roundDown(tie, s.Units), -1); list[0].Out > OutFor(tie, s.Units) && near >= k.Crown/2 {
			add(near, near) // tied lower, short of the line that they would reach past
		}
		return list
	}
	if n == 1 || !s.Ridge.Present {
		for _, g := range guys(spread(n, 1)) {
			list = append(list, Bracing{Guys: g})
		}
		return list
	}
	from := shoulder(s, k)
	for _, every := range []int{n, 6, 4, 3, 2, 1} {
		bays := freeBays(s, spread(n-1, every))
		if every == n {
			bays = ends(s)
		}
		arches := spread(n, every)
		if len(bays) > 0 {
			pipes := spec.Braces{Bays: bays, From: from, Peg: peg}
			list = append(list, Bracing{Braces: pipes})
			for _, g := range append(guys([]int{n}), guys(arches)...) {
				list = append(list, Bracing{Braces: pipes, Guys: g})
			}
		}
		for _, g := range append(guys(arches[1:]), guys(arches)...) {
			list = append(list, Bracing{Guys: g})
		}
	}
	atWayIn := func(b Bracing) int { return map[bool]int{true: 1}[GuysAtWayIn(b.On(s))] }
	slices.SortStableFunc(list, func(a, b Bracing) int {
		return cmp.Or(cmp.Compare(atWayIn(a), atWayIn(b)), cmp.Compare(PriceOfBracing(a.On(s)), PriceOfBracing(b.On(s))))
	})
	return slices.CompactFunc(list, func(a, b Bracing) bool {
		return slices.Equal(a.Guys.Arches, b.Guys.Arches) && a.Guys.Out == b.Guys.Out && slices.Equal(a.Braces.Bays, b.Braces.Bays)
	})
}

// GuysAtWayIn reports whether guys stand beside where people come in.
func GuysAtWayIn(s *spec.Spec) bool {
	return s.Tunnel.Arches > 1 && slices.Contains(s.Guys.Arches, 1)
}

// spread returns 1, the last number and those between at about equal steps of at most every.
func spread(last, every int) (list []int) {
	steps := max((last+every-2)/every, 1)
	for i := range steps + 1 {
		list = append(list, 1+(last-1)*i/steps)
	}
	return slices.Compact(list)
}

// ends returns the free bays nearest to both ends.
func ends(s *spec.Spec) []int {
	free := freeBays(s, spread(s.Tunnel.Arches-1, 1))
	if len(free) > 2 {
		free = []int{free[0], free[len(free)-1]}
	}
	return free
}

// freeBays leaves out the bays that people may pass sideways.
func freeBays(s *spec.Spec, bays []int) []int { return slices.DeleteFunc(bays, s.Passed) }

// freeArches leaves out the arches between others whose guys, which stand out that far, would run across such a bay.
func freeArches(s *spec.Spec, arches []int, out measure.Length) []int {
	n, reach := s.Tunnel.Arches, int(math.Ceil(float64(out/s.Tunnel.Spacing)))
	return slices.DeleteFunc(arches, func(a int) bool {
		for bay := max(a-reach, 1); bay < min(a+reach, n); bay++ {
			if a > 1 && a < n && s.Passed(bay) {
				return true
			}
		}
		return false
	})
}

// shoulder is how high braces are tied at most: where a hand reaches, and no higher than braces may be.
func shoulder(s *spec.Spec, k *arch.Kind) measure.Length {
	return min(practice.BraceFrom(s.Units), roundDown(k.Crown*3/4, s.Units))
}

// OutFor returns how far out the stake of a guy tied so high stands at the least, that it pulls along as much as down: in whole half feet or decimetres, rounded up.
func OutFor(l measure.Length, u measure.System) measure.Length { return measure.RoundUp(l, step(u)) }

// LaneOut returns the nearest place, that far out at least, where the guy stakes of some arches between others stand off the lines of those they reach past: along these sprung legs are walked over
// their stakes and out again. Where bays are too narrow for that it is mid-bay.
func LaneOut(s *spec.Spec, arches []int, least measure.Length) measure.Length {
	return offLanes(s, arches, least, 1)
}

// offLanes is LaneOut, or the nearest place so far out at most.
func offLanes(s *spec.Spec, arches []int, out, way measure.Length) measure.Length {
	n, apart, fine, past := s.Tunnel.Arches, s.Tunnel.Spacing, practice.Round(s.Units), 0
	for _, a := range arches {
		if a > 1 && a < n {
			past = max(past, a-1, n-a)
		}
	}
	lane := min(practice.OnGround(s.Units).Lane, (apart-fine)/2)
	off := func(out measure.Length) bool {
		nearest := min(max(math.Round(float64(out/apart)), 1), float64(past))
		return measure.Abs(out-apart*measure.Length(nearest)) >= lane-measure.Length(1e-6)
	}
	if past == 0 || off(out) {
		return out
	}
	for _, grid := range []measure.Length{step(s.Units), fine} {
		for next := way * measure.RoundUp(way*out, grid); measure.Abs(next-out) < apart; next += way * grid {
			if off(next) {
				return next
			}
		}
	}
	return out
}

// FarOut returns how far out a spec's guys pull along as much as down, their stakes off the lines of other arches.
func FarOut(s *spec.Spec) measure.Length {
	return LaneOut(s, s.Guys.Arches, OutFor(s.Guys.From, s.Units))
}

// roundDown brings a length to whole half feet or decimetres.
func roundDown(l measure.Length, u measure.System) measure.Length {
	return measure.Length(math.Floor(float64(l/step(u)))) * step(u)
}

func step(u measure.System) measure.Length { return measure.By(u, 6*measure.Inch, 100) }

// roughMargin is on the aims of a rough solution.
const roughMargin = 1.015

// Reaches says how near a tunnel's gusts come to the spec's aims, 1 where both are met.
func (w *Weather) Reaches() float64 {
	if len(w.Bears) == 0 {
		return min(w.Factor/100, .01)
	}
	aim := w.of.Spec.Weather
	share := func(g, aim measure.Speed) float64 {
		if w.of.Rough { // its figures are no closer than that
			aim *= roughMargin
		}
		return min(float64((g+slack)/aim), 1)
	}
	reach := min(share(w.exact.Inside, aim.Inside), share(w.exact.Down, aim.Stand))
	if w.Factor < standsStill {
		reach = min(reach, w.Factor/standsStill/2)
	}
	return reach
}
