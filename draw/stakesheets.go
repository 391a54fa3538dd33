package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// StakePlan is one page of the stake plan's picture: the whole tunnel where it fits at a legible scale, else some of its arches. Neighbouring
// pages share an arch, where they match.
type StakePlan struct {
	Scale       paper.Scale
	Page, Of    int // of the pictures, from 1
	First, Last int // arches on it
	Zero        int // the arch at whose stakes the tape's zero lies

	ground ground.Layout
	spec   *spec.Spec
	stakes []ground.Stake // those on this page
	m      siteMap
	room   paper.Length // width of the picture
	pages  []StakePlan  // all of them, for the key map
}

// Room about the stakes on paper: what stands beside them.
const (
	nameRoom   paper.Length = 20 // a stake's name
	numberRoom paper.Length = 40 // the running distances left of the row
	beyondRoom paper.Length = 5  // names and matters beyond the outermost stakes
	exitRoom   paper.Length = 18 // the word past the last arch
	matchRoom  paper.Length = 14 // a match line with its words
	footRoom   paper.Length = 10 // the ground bar and the signs, under the picture
	markRoom   paper.Length = 5  // a mark's target
)

// Scales: beyond the coarsest a plan is laid over several pages; a finer one than the finest shows nothing more.
const (
	finest   = 20
	coarsest = 100
	// leastPitch is how close on paper two stakes of a row may lie, so that the names beside them keep apart.
	leastPitch paper.Length = 6.2
	// widerFor is how much coarser than need be a scale may be, so that the marks are on the picture too.
	widerFor = 2.7
)

// StakePlans lays the stake plan out for pages that give its picture the room. The scale is the largest of the series at which
// all stakes fit, or the marks with them if that costs little; where that would be coarser than 1:100, or the stakes too close
// for their names, it goes over several pages.
func StakePlans(l ground.Layout, s *spec.Spec, room paper.Rect) []StakePlan {
	series := Scales(s.Units)
	whole := StakePlan{Page: 1, Of: 1, First: 1, Last: len(l.Stations), Zero: 1, ground: l, spec: s, stakes: l.Stakes, room: room.W}
	room.H -= footRoom
	pitch := closest(l)
	var usable []paper.Scale
	for _, scale := range series {
		if scale.Ratio >= finest && scale.Ratio <= coarsest && (pitch/scale.Ratio >= float64(leastPitch) || len(usable) == 0) {
			usable = append(usable, scale)
		}
	}
	for i, scale := range usable {
		fit := whole.scaled(scale)
		if !fit.fits(fit.extent(), room) {
			continue
		}
		for _, wider := range usable[i:] {
			if wider.Ratio > widerFor*scale.Ratio {
				break
			}
			if p := whole.scaled(wider); len(l.Marks) > 0 && p.fits(p.extentWithMarks(), room) {
				fit = p
				break
			}
		}
		return []StakePlan{fit}
	}
	whole.Of = 0 // not known yet, and more than one
	return whole.scaled(usable[len(usable)-1]).tiled(room)
}

// closest returns the least distance between neighbouring stakes of a row, in millimetres.
func closest(l ground.Layout) float64 {
	least := math.Inf(1)
	for i := 2; i < 2*len(l.Stations); i++ {
		least = min(least, float64(ground.Between(l.Stakes[i-2], l.Stakes[i])))
	}
	return least
}

// fits reports whether an extent fits the room under the page's lists.
func (p StakePlan) fits(extent, room paper.Rect) bool {
	return extent.W <= room.W && extent.H <= room.H-p.lists().height()
}

// scaled returns the plan at a scale, not yet placed on a page.
func (p StakePlan) scaled(scale paper.Scale) StakePlan {
	p.Scale = scale
	p.m = newSiteMap(&p.spec.Site, scale)
	return p
}

// tiled parts the plan over pages by whole bays: each tape length of a straight tunnel, or the whole of one that bends, as evenly as its pages fit.
func (p StakePlan) tiled(room paper.Rect) []StakePlan {
	stretches := p.ground.TapeLengths(p.spec.Units)
	if len(stretches) == 0 {
		stretches = []ground.TapeLength{{First: 1, Last: p.Last}}
	}
	var pages []StakePlan
	for _, stretch := range stretches {
		ends := p.greedy(room, stretch, stretch.Last)
		for most := (stretch.Last - stretch.First + len(ends) - 1) / len(ends); most < stretch.Last; most++ { // the fewest bays a page that do with as few pages
			if even := p.greedy(room, stretch, most); len(even) == len(ends) {
				ends = even
				break
			}
		}
		first := stretch.First
		for _, last := range ends {
			page := p.part(first, last)
			page.Zero = stretch.First
			pages = append(pages, page)
			first = last
		}
	}
	for i := range pages {
		pages[i].Page, pages[i].Of = i+1, len(pages)
	}
	for i := range pages {
		pages[i].pages = pages
	}
	return pages
}

// greedy returns the last arch of each page of a stretch when every page takes as many bays as fit, and no more than most; one at least.
func (p StakePlan) greedy(room paper.Rect, stretch ground.TapeLength, most int) (ends []int) {
	p.Zero = stretch.First
	for first := stretch.First; first < stretch.Last || len(ends) == 0; {
		last := min(first+1, stretch.Last)
		for last < stretch.Last && last-first < most {
			if more := p.part(first, last+1); !more.fits(more.extent(), room) {
				break
			}
			last++
		}
		ends = append(ends, last)
		first = last
	}
	return ends
}

// part returns the plan of some arches, with the guy stakes that stand along them.
func (p StakePlan) part(first, last int) StakePlan {
	p.First, p.Last = first, last
	p.stakes = nil
	from, to := p.ground.Stations[first-1].Along, p.ground.Stations[last-1].Along
	n := len(p.ground.Stations)
	for _, s := range p.ground.Stakes {
		if (s.Along >= from || first == 1) && (s.Along <= to || last == n) {
			p.stakes = append(p.stakes, s)
		}
	}
	return p
}

// entrance and exit report whether the tunnel's ends are on this page.
func (p StakePlan) entrance() bool { return p.First == 1 }
func (p StakePlan) exit() bool     { return p.Last == len(p.ground.Stations) }

// widthFits reports whether the number of the width fits between the stakes of an end arch; where it does not, the list over the picture has it.
func (p StakePlan) widthFits(arch int) bool {
	width := ground.Between(p.ground.Stakes[2*arch-2], p.ground.Stakes[2*arch-1])
	return paper.Dimension.Width(p.spec.Units.Tape(width))+6 <= p.m.length(width)
}

// entranceRoom returns how far the walk arrow and its word reach before arch 1, past the width's dimension if it is there.
func (p StakePlan) entranceRoom() paper.Length {
	if p.widthFits(1) {
		return 34
	}
	return 28
}

// extent returns the box about all that must be on this page, where the site map has it now.
func (p StakePlan) extent() paper.Rect {
	var e box
	left := nameRoom
	if p.ground.Straight {
		left = nameRoom + numberRoom
	}
	for _, s := range p.stakes {
		at := p.m.at(s.At())
		e.add(at, left, nameRoom, beyondRoom, beyondRoom)
	}
	if p.entrance() {
		at := p.m.at(p.ground.Stations[0].At)
		e.add(at.Add(paper.Point{Y: p.entranceRoom()}), 14, 14, 0, 0)
	}
	if last := p.ground.Stations[len(p.ground.Stations)-1]; p.exit() {
		e.add(p.m.at(last.At).Add(paper.Polar(exitRoom, p.m.angle(last.Heading))), 8, 8, 4, 0)
	}
	if p.Of != 1 { // the words of the match lines
		for _, arch := range []int{p.First, p.Last} {
			e.add(p.m.at(p.ground.Stations[arch-1].At), 30, 30, matchRoom, matchRoom)
		}
	}
	return e.rect()
}

// extentWithMarks is the extent with all marks too.
func (p StakePlan) extentWithMarks() paper.Rect {
	r := p.extent()
	e := box{low: paper.Point{X: r.X, Y: r.Y}, high: paper.Point{X: r.Right(), Y: r.Bottom()}, any: true}
	for _, m := range p.ground.Marks {
		e.add(p.m.at(m.At), markRoom, markRoom, markRoom, markRoom)
	}
	return e.rect()
}

// placed returns the plan put into the room: what must be there in the middle of it, the marks with it where they fit.
func (p StakePlan) placed(room paper.Rect) StakePlan {
	e := p.extent()
	if all := p.extentWithMarks(); all.W <= room.W && all.H <= room.H {
		e = all
	}
	p.m.origin = p.m.origin.Add(room.Centre().Sub(e.Centre()))
	return p
}

// box grows about points.
type box struct {
	low, high paper.Point
	any       bool
}

func (b *box) add(p paper.Point, left, right, up, down paper.Length) {
	low, high := paper.Point{X: p.X - left, Y: p.Y - up}, paper.Point{X: p.X + right, Y: p.Y + down}
	if !b.any {
		b.low, b.high, b.any = low, high, true
		return
	}
	b.low = paper.Point{X: min(b.low.X, low.X), Y: min(b.low.Y, low.Y)}
	b.high = paper.Point{X: max(b.high.X, high.X), Y: max(b.high.Y, high.Y)}
}

func (b box) rect() paper.Rect {
	return paper.Rect{X: b.low.X, Y: b.low.Y, W: b.high.X - b.low.X, H: b.high.Y - b.low.Y}
}
