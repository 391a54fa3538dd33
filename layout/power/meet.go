// Which plugs reach which sockets of other strings.

package power

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// pair is a socket in reach of prongs, each string as it would lie.
type pair struct {
	socket, prongs seat
	unlike         bool // of different kinds
	order          int  // of what is plugged in before other strings, see joining.place
	band           int  // 0 on one path, 1 in a hand's reach, 2 so on one leg, 3 by a lead, 4 by a left-over end
	other          bool // by a lead on the other side than bays are sooner bridged on
	apart          measure.Length
}

// b2i sorts what is not so before what is.
func b2i(so bool) int {
	if so {
		return 1
	}
	return 0
}

// meets returns how near a socket is to prongs, not ok where they do not meet or must not.
func (j *joiner) meets(socket, prongs seat) (pair, bool) {
	a, b := j.at(socket), j.at(prongs)
	p := pair{socket: socket, prongs: prongs, unlike: a.Kind != b.Kind}
	ridge, ok := ridgeRun(a), true
	if ridgeRun(b) {
		p.order, ok = j.joining.place(a, b)
	}
	switch {
	case socket.string == prongs.string, a.Label.Volts != b.Label.Volts, a.Label.Lamp != b.Label.Lamp,
		p.unlike && (a.Label.Supply != nil || b.Label.Supply != nil), ridge && !ridgeRun(b), !ok:
		return p, false
	case ridge && j.joining.cuts(j.site, socket.string, prongs.string):
		return p, false
	}
	apart, reach := lights.Between(a.To, b.From), reaching(a, b)
	hand := min(reach, practice.HandReach)
	along := a.To.Side == b.From.Side && !j.passes(a.To.Side, a.To.Arch, b.From.Arch) || j.overhead(a.To) && j.overhead(b.From)
	switch {
	case apart <= hand && a.Run == b.Run && j.lineOf[socket.string] != j.lineOf[prongs.string]:
		p.band = 2 // two side by side on a leg: up one leg and down the other comes first, and then back
	case apart <= practice.EndToEnd:
	case apart <= hand:
		p.band = 1
	case ridge != ridgeRun(b):
		return p, false
	case along && apart <= b.Off:
		p.band, p.other = 3, a.To.Side != j.joining.bridge
	case along && apart <= reach:
		p.band, p.apart = 4, apart
	default:
		return p, false
	}
	return p, true
}

// reaching is how far a socket comes to prongs elsewhere: by what is left over of its string and by the loose inches at both plugs, as far as that need not be tied back.
// Strings in rows have no loose inches: they lie along their rows whole.
func reaching(a, b lights.String) measure.Length {
	far := max(a.LeftOver, 0)
	for _, s := range []lights.String{a, b} {
		if !s.Run.IsRow() {
			far += practice.HandReach / 2
		}
	}
	return min(far, practice.HandReach+practice.LooseReach)
}

// pairs lists every pair that meets, those to plug together first. A grid of cells as wide as the longest reach keeps the work in proportion to the
// strings.
func (j *joiner) pairs() []pair {
	cell := practice.HandReach + practice.LooseReach
	for _, s := range j.Strings {
		cell = max(cell, s.Off)
	}
	type square struct{ x, y int }
	in := func(e lights.End) square {
		return square{int(math.Floor(float64(e.X / cell))), int(math.Floor(float64(e.Y / cell)))}
	}
	sockets := map[square][]seat{}
	var prongs []seat
	for _, r := range j.runs {
		for _, lie := range [][]seat{r.seats, r.back} {
			if lie != nil {
				tail := lie[len(lie)-1]
				prongs, sockets[in(j.at(tail).To)] = append(prongs, lie[0]), append(sockets[in(j.at(tail).To)], tail)
			}
		}
	}
	var out []pair
	for _, b := range prongs {
		c := in(j.at(b).From)
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				for _, a := range sockets[square{c.x + dx, c.y + dy}] {
					if p, ok := j.meets(a, b); ok {
						out = append(out, p)
					}
				}
			}
		}
	}
	turned := func(t seat) int { return b2i(t.turned) }
	slices.SortFunc(out, func(a, b pair) int {
		return cmp.Or(
			cmp.Compare(a.order, b.order), cmp.Compare(b2i(a.unlike), b2i(b.unlike)), cmp.Compare(a.band, b.band), cmp.Compare(b2i(a.other), b2i(b.other)), cmp.Compare(a.apart, b.apart),
			cmp.Compare(min(a.socket.string, a.prongs.string), min(b.socket.string, b.prongs.string)),
			cmp.Compare(turned(a.socket)+turned(a.prongs), turned(b.socket)+turned(b.prongs)),
			cmp.Compare(a.socket.string, b.socket.string), cmp.Compare(a.prongs.string, b.prongs.string),
			cmp.Compare(turned(a.socket), turned(b.socket)))
	})
	return out
}
