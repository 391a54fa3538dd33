package ground

import (
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Between returns the level distance between two stakes.
func Between(a, b Stake) measure.Length { return Distance(a.At(), b.At()) }

// slide returns how far one row of a straight tunnel must slide along its line, as a share of the difference between the diagonals
// of the whole. Sliding a row by s makes the one diagonal longer and the other shorter by s·a/d each, a the tunnel's length and d the
// diagonal; so the share is d/2a, hardly more than a half where the tunnel is long. It is false where there is nothing to slide.
func (l Layout) slide() (share float64, ok bool) {
	n := len(l.Stations)
	if !l.Straight || n < 2 {
		return 0, false
	}
	along := l.Stations[n-1].Along - l.Stations[0].Along
	if along <= 0 {
		return 0, false
	}
	d := Between(l.Stakes[0], l.Stakes[2*n-1])
	share = float64(d / (2 * along))
	return share, !math.IsInf(share, 0)
}

// TapeLength is a stretch of a straight row that one tape reaches: from the stakes of its first arch, where the tape's zero lies, to those
// of its last. Stretches that follow each other share an arch.
type TapeLength struct{ First, Last int }

// TapeLengths parts a straight tunnel into the fewest stretches that a tape of 100 ft (30 m) reaches, as even as whole bays and the guys allow. A tunnel that
// bends has none: no tape lies along it.
func (l Layout) TapeLengths(units measure.System) []TapeLength {
	n := len(l.Stations)
	if !l.Straight || n < 2 {
		return nil
	}
	bays := n - 1
	spacing := (l.Stations[n-1].Along - l.Stations[0].Along) / measure.Length(bays)
	most := bays // in one stretch
	if spacing > 0 {
		most = max(1, min(bays, int(practice.OnGround(units).Reach/spacing+1e-9)))
	}
	count := (bays + most - 1) / most
	list := make([]TapeLength, count)
	first := 1
	for i := range list {
		last := 1 + bays*(i+1)/count
		if i < count-1 {
			last = l.CutAt(last, max(first+1, n-most*(count-1-i)), min(first+most, n-1))
		}
		list[i] = TapeLength{first, last}
		first = last
	}
	return list
}

// CutAt returns the arch from low to high at which a straight tunnel is best parted near another one: it has no guys, and no guy stake stands in a bay beside
// it; near itself where none is within three of it. 1 < low, high < the number of arches.
func (l Layout) CutAt(near, low, high int) int {
	for off := range 4 {
		for _, arch := range []int{near - off, near + off} {
			if arch >= low && arch <= high && !l.guysBeside(arch) {
				return arch
			}
		}
	}
	return max(low, min(near, high))
}

// guysBeside reports whether an arch has guys, or a guy stake stands in a bay beside it.
func (l Layout) guysBeside(arch int) bool {
	before, after := l.Stations[arch-2].Along, l.Stations[arch].Along
	return slices.ContainsFunc(l.Stakes, func(s Stake) bool {
		return s.Guy && (s.Arch == arch || s.Along > before && s.Along < after)
	})
}

// LongestTape returns the longest distance that anybody tapes while setting out: from a mark, along a row, or across it. Marks beyond a tape's reach count
// only where there is no way to do without.
func (l Layout) LongestTape(units measure.System) measure.Length {
	longest, reach := measure.Length(0), practice.OnGround(units).Reach
	_, _, anchored := l.Anchors(units)
	for _, t := range l.Ties {
		s, _ := l.Stake(t.Stake)
		if far := max(t.A, t.B); far > reach && (anchored || l.ByChord(s.Arch)) {
			continue
		}
		longest = max(longest, t.A, t.B, t.C)
	}
	parts := l.TapeLengths(units)
	if len(parts) == 0 {
		parts = l.checkStretches(units)
	}
	if len(l.Stations) == 1 {
		longest = max(longest, Between(l.Stakes[0], l.Stakes[1]))
	}
	for _, c := range l.Chords {
		for _, o := range c.Offsets {
			longest = max(longest, o.Along)
		}
	}
	for _, p := range parts {
		longest = max(longest, l.longest(p))
	}
	return longest
}

// longest is the longest tape of a stretch, from either stake of its first arch to either of its last.
func (l Layout) longest(p TapeLength) (longest measure.Length) {
	for _, near := range l.Stakes[2*p.First-2 : 2*p.First] {
		for _, far := range l.Stakes[2*p.Last-2 : 2*p.Last] {
			longest = max(longest, Between(near, far))
		}
	}
	return longest
}

// Widest returns the most that the two feet of an arch are apart, of stakes whose legs come first, left before right.
func Widest(stakes []Stake) (widest measure.Length) {
	for pair := range slices.Chunk(stakes, 2) {
		if len(pair) == 2 && !pair[1].Guy {
			widest = max(widest, Between(pair[0], pair[1]))
		}
	}
	return widest
}

// diagonals returns the check distances over stakes in the order L1, R1, L2, R2 …: for each bay L to R of the next arch,
// then R to L of the next; last L1 to the far R and R1 to the far L. With two arches the whole is the one bay again.
func diagonals(stakes []Stake) []Diagonal {
	var list []Diagonal
	add := func(from, to Stake) {
		list = append(list, Diagonal{From: from.StakeID, To: to.StakeID, Distance: Distance(from.At(), to.At())})
	}
	n := len(stakes)
	for i := 0; i+3 < n; i += 2 {
		add(stakes[i], stakes[i+3])
		add(stakes[i+1], stakes[i+2])
	}
	if n >= 4 {
		add(stakes[0], stakes[n-1])
		add(stakes[1], stakes[n-2])
	}
	return list
}
