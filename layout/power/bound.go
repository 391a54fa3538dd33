// How few cords and three-ways there must be, whatever is tried.

package power

import (
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// wallBound is what bounds the pieces along one wall from below.
type wallBound struct {
	risers int // cords and three-ways up to what hangs high
	wants  int // sockets wanted at its feet
	feet   int // that a cord must come to: those with wants of their own, out of reach of the outlet; to what hangs high one may lead right up
	covers int // most feet that one cord with several sockets comes to
	led    int // 1 where only a plain cord leads from the outlet to any of its feet
}

// bound returns how many pieces there must be for what is picked, however they are laid and branch. Each cord with several sockets gives as many sockets
// more than it takes, and comes to so many feet; a three-way gives as many, and comes to none; a plain cord gives none and comes to one foot. Each
// wall is led to from the outlet.
func (s *searcher) bound(picks []pick) int {
	var all wallBound
	for _, side := range sides {
		b := s.wall(side, picks).bound
		all.risers += b.risers
		all.wants += b.wants
		all.feet += b.feet
		all.led += b.led
		all.covers = max(all.covers, b.covers)
	}
	most := 1
	src := s.sources[s.source]
	for _, kind := range src.cords {
		for _, in := range kind.inline {
			most = max(most, in.Sockets)
		}
	}
	best := -1
	for inline := range all.feet + all.wants + 1 {
		if inline > 0 && most == 1 {
			break
		}
		plain := max(all.led, all.feet-inline*all.covers)
		lines := all.wants - inline*(most-1)
		if lines > src.outlet.Sockets && s.fans < 2 {
			continue
		}
		if n := inline + plain + s.tapsIn(src.outlet.Sockets, lines); best < 0 || n < best {
			best = n
		}
	}
	return all.risers + max(0, best)
}

func (s *searcher) wallBound(side spec.Side, stops []stop) wallBound {
	m := riserMark(stops, s.liner)
	b := wallBound{risers: int(m.pieces)}
	way := s.sources[s.source].ways[side]
	led, low := false, 0
	for i, one := range stops {
		b.wants += len(one.wants)
		if !slices.ContainsFunc(one.wants, func(w want) bool { return w.riser == nil }) {
			continue
		}
		low++
		gap := s.site.toFoot(way, side, one.arch)
		if gap > practice.HandReach {
			b.feet++
		} else {
			led = true
		}
		for _, kind := range s.sources[s.source].cords {
			for _, in := range kind.inline {
				b.covers = max(b.covers, s.covers(side, stops[i:], in))
				_, reaches := skipped(in, gap)
				led = led || reaches
			}
		}
	}
	if low > 0 && !led {
		b.led = 1
	}
	return b
}

// covers returns to how many of some stops, from the first on, a cord with several sockets comes.
func (s *searcher) covers(side spec.Side, stops []stop, in catalog.Inline) int {
	n, left := 1, in.Sockets-1
	for i := 1; i < len(stops); i++ {
		left -= stepsOver(in.Apart, s.site.runs(side, stops[i-1].arch, stops[i].arch))
		if left < 0 {
			break
		}
		n++
	}
	return n
}
