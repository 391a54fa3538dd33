// What is open of how strings are plugged end to end: the ridge in runs of its own or on legs that end at crowns, whole arches from left feet or from right ones.

package power

import (
	"math"
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// joining is one way to plug strings end to end. Those of one line are never kept apart.
type joining struct {
	bridge spec.Side   // between whose feet leads sooner bridge the bays: what they join is fed from the other feet
	starts []int       // lines before which the ridge is cut
	on     []spec.Side // by bay: the leg on whose string, where that ends at the crown, the ridge hangs sooner; none where it is in runs of its own
}

// cuts reports whether two ridge strings, one after the other, are kept apart.
func (w joining) cuts(s *site, a, b int) bool {
	la, lb := s.lineOf[a], s.lineOf[b]
	return la != lb && slices.Contains(w.starts, max(la, lb))
}

// joinings returns the ways to plug strings end to end: those of the ridge, and where leads bridge the bays, each so from the feet of either side.
func joinings(s *site) []joining {
	out := s.ridgeWays()
	if !slices.ContainsFunc(s.Strings, func(one lights.String) bool { return one.Off > 0 }) {
		return out
	}
	for _, w := range out {
		w.bridge = spec.Right
		out = append(out, w)
	}
	return out
}

// ridgeWays returns the ways to feed the ridge: in runs of no more than may be dark together, in the fewest that labels and volts allow, each all of about one
// length or all full but the last; and on legs, where strings end at crowns. The shorter runs come first: they stay where the longer ones save nothing. Of a walk too
// long to try all, they are left out.
func (s *site) ridgeWays() []joining {
	var ridge []int // lines
	for n, l := range s.Lines {
		if ridgeRun(s.Strings[l.First]) {
			ridge = append(ridge, n)
		}
	}
	if len(ridge) == 0 {
		return []joining{{}}
	}
	most := s.mostRidge(ridge)
	few := max(1, min(most, s.Spec.Power.Together/s.Lines[ridge[0]].Count))
	var out []joining
	if most == few || len(s.Strings) <= mostGain {
		out = s.cutRidge(ridge, few)
	}
	if most > few {
		out = append(out, s.cutRidge(ridge, most)...)
	}
	for _, w := range s.onLegs() {
		if slices.ContainsFunc(join(s, w), func(r *run) bool { return !ridgeRun(s.at(r.seats[0])) && ridgeRun(s.at(r.seats[len(r.seats)-1])) }) {
			out = append(out, w)
		}
	}
	return out
}

// onLegs returns the ways to hang the ridge on legs: on those whose foot an outlet is nearer to, and on left and right in turn.
func (s *site) onLegs() []joining {
	var near, turns joining
	for i := range s.feet[spec.Left] {
		var least [2]measure.Length
		for side := range least {
			least[side] = math.MaxFloat64
			for _, o := range s.Spec.Site.Outlets {
				least[side] = min(least[side], ground.Distance(o.At, s.feet[side][i].At()))
			}
		}
		near.on, turns.on = append(near.on, sides[b2i(least[spec.Right] < least[spec.Left])]), append(turns.on, sides[i%2])
	}
	return []joining{near, turns}
}

// place says in which order a ridge string is plugged in: behind a leg's string, sooner on the leg that is named, then behind another of the ridge; first of
// all where the ridge is in runs of its own. Not ok where it may not be.
func (w joining) place(socket, ridge lights.String) (order int, ok bool) {
	switch {
	case ridgeRun(socket):
		return 3 * b2i(w.on != nil), true
	case w.on == nil || !socket.Run.IsLeg() || socket.Run.Drop:
		return 0, false
	}
	wall, _ := socket.Run.Wall()
	return 1 + b2i(wall != w.on[ridge.Run.Number-1]), true
}

// mostRidge returns how many lines of the ridge, from the first on, make one run.
func (s *site) mostRidge(ridge []int) int {
	var seats []seat
	for n, line := range ridge {
		for i := range s.Lines[line].Count {
			seats = append(seats, seat{string: s.Lines[line].First + i})
		}
		if s.over(seats) {
			return max(1, n)
		}
	}
	return len(ridge)
}

// cutRidge cuts the ridge into the fewest runs of no more lines than so many: all of about one length, and all full but the last.
func (s *site) cutRidge(ridge []int, each int) []joining {
	n := len(ridge)
	runs := (n + each - 1) / each
	var even, full joining
	for i := 1; i < runs; i++ {
		even.starts, full.starts = append(even.starts, ridge[n*i/runs]), append(full.starts, ridge[each*i])
	}
	if slices.Equal(even.starts, full.starts) {
		return []joining{even}
	}
	return []joining{even, full}
}
