package power

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// How far prongs come to a socket. Common practice, no source.
const (
	touching   = 1 * measure.Inch  // laid end to end on one path
	handReach  = 12 * measure.Inch // the loose inches at both plugs
	looseReach = 36 * measure.Inch // most of a left-over end that is not tied back
)

// pair is a socket in reach of prongs.
type pair struct {
	socket, prongs int
	band           int            // 0 on one path, 1 in a hand's reach, 2 by a left-over end
	apart          measure.Length // compared in band 2 only: inches decide nothing nearer by
}

// band returns how near a socket is to prongs, not ok where they do not meet. Further apart than a hand brings
// together, both must be on one wall, or both above the opening.
func (j *joiner) band(socket, prongs int) (pair, bool) {
	a, b := j.strings[socket], j.strings[prongs]
	if socket == prongs || a.Kind != b.Kind || a.Label.Volts != b.Label.Volts {
		return pair{}, false
	}
	p := pair{socket: socket, prongs: prongs}
	apart := distance(a.To, b.From)
	switch {
	case apart <= touching:
	case apart <= handReach:
		p.band = 1
	case apart <= handReach+min(max(a.LeftOver, 0), looseReach) && (a.To.Side == b.From.Side || j.high[socket] && j.highIn[prongs]):
		p.band, p.apart = 2, apart
	default:
		return pair{}, false
	}
	return p, true
}

// eachNear visits every pair in reach, by prongs and then sockets in hanging order. A grid of cells as wide as the longest reach keeps the work in
// proportion to the strings.
func (j *joiner) eachNear(visit func(pair)) {
	const cell = handReach + looseReach
	type square struct{ x, y int }
	at := func(e lights.End) square {
		return square{int(math.Floor(float64(e.X / cell))), int(math.Floor(float64(e.Y / cell)))}
	}
	sockets := map[square][]int{}
	for i, s := range j.strings {
		c := at(s.To)
		sockets[c] = append(sockets[c], i)
	}
	for i, s := range j.strings {
		c := at(s.From)
		var near []pair
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				for _, k := range sockets[square{c.x + dx, c.y + dy}] {
					if p, ok := j.band(k, i); ok {
						near = append(near, p)
					}
				}
			}
		}
		slices.SortFunc(near, func(a, b pair) int { return cmp.Compare(a.socket, b.socket) })
		for _, p := range near {
			visit(p)
		}
	}
}

// distance returns the straight distance between two ends.
func distance(a, b lights.End) measure.Length {
	dx, dy, dz := float64(b.X-a.X), float64(b.Y-a.Y), float64(b.Z-a.Z)
	return measure.Length(math.Sqrt(dx*dx + dy*dy + dz*dz))
}
