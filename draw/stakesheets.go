package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// StakePlan is a picture of where stakes go: those of the whole tunnel, or of some of its arches. Neighbouring plans share an arch.
type StakePlan struct {
	Scale       paper.Scale // set by Fits
	Need        paper.Rect  // the least room at that scale: set by Fits
	First, Last int         // arches on it
	Zero        int         // the arch at whose left stake the tape's zero lies; the ring about that shows where it is on this plan

	Spans []StakeSpan  // distances that are drawn
	Tied  []ground.Dot // dots found by tapes from marks: their tapes are drawn
	Marks []int        // of Layout.Marks, those that tapes to this plan start from

	Finest        float64 // no scale is finer than 1 to this: plans that are laid together have the same
	Before, After int     // the numbers of the plans that share its first arch and its last

	ground ground.Layout
	spec   *spec.Spec
	stakes []ground.Stake // those on it
	m      siteMap
}

// StakeSpan is a distance between two spots, its number written on the line that it measures. One without a number is as long as another that has it.
type StakeSpan struct {
	From, To ground.Spot
	Text     string
	Across   bool         // the width of an arch
	Drawn    bool         // along a line that the plan has already: a row, a guy
	Like     []StakeSpan  // others as long, on whose lines the number may stand as well
	Apart    paper.Length // on a dimension line of its own so far off, to the left of the direction; 0: on the line
}

// Room about the stakes on paper: what stands beside them.
const (
	beyondRoom    paper.Length = 5  // names and matters beyond the outermost stakes
	exitRoom      paper.Length = 9  // the word past the last arch
	matchRoom     paper.Length = 9  // the words at a shared arch
	dimensionRoom paper.Length = 5  // the number of a dimension line of its own
	markRoom      paper.Length = 9  // a mark's target and its name
	enterRoom     paper.Length = 26 // the walk arrow and its word, past arch 1
)

// leastBay is how far apart on paper two stakes of a row stand at least: nearer, a plan is parted.
const leastBay paper.Length = 12

// mostBay leaves room to show what lies about the tunnel.
const mostBay paper.Length = 30

// Scales: a finer one than the finest shows nothing more. The coarsest is for arches very far apart.
const (
	finest   = 20
	coarsest = 500
	// widerFor is how much coarser than need be a scale may be, so that the marks are on the picture too.
	widerFor = 2.1
)

// NewStakePlan returns the plan of the arches from first to last, without a scale. Guy stakes are on it with their arch; those of an arch that two plans
// share are on the one that they stand on.
func NewStakePlan(l ground.Layout, s *spec.Spec, first, last int) StakePlan {
	p := StakePlan{First: first, Last: last, Zero: 1, ground: l, spec: s}
	for _, stake := range l.Stakes {
		on := stake.Arch >= first && stake.Arch <= last
		if at := l.Stations[max(stake.Arch, 1)-1].Along; on && stake.Guy {
			on = (stake.Arch > first || first == 1 || stake.Along >= at) && (stake.Arch < last || last == len(l.Stations) || stake.Along < at)
		}
		if on {
			p.stakes = append(p.stakes, stake)
		}
	}
	return p
}

// Stakes returns the stakes on the plan: legs from the entrance on, left before right, then guy stakes.
func (p StakePlan) Stakes() []ground.Stake { return p.stakes }

// Fits returns the plan at every scale of the series at which it fits the room and its bays are as long as they must be, the one to choose first: the largest, or with
// the marks in the picture if that costs little. None where there is no such scale.
func (p StakePlan) Fits(room paper.Rect) (list []StakePlan) {
	var wide []StakePlan
	for _, scale := range p.scales() {
		fit := p.scaled(scale)
		if fit.Need = fit.extent(); fits(fit.Need, room) {
			list = append(list, fit)
		}
		if fit.Need = fit.extentWithMarks(); len(list) > 0 && len(wide) == 0 && len(p.Tied) > 0 && scale.Ratio <= widerFor*list[0].Scale.Ratio && fits(fit.Need, room) {
			wide = append(wide, fit)
		}
	}
	return append(wide, list...)
}

// Squeezed returns the plan at the finest scale at which it fits the room, though its bays are short there; at the coarsest of all where none does.
func (p StakePlan) Squeezed(room paper.Rect) (fit StakePlan) {
	for _, scale := range Scales(p.spec.Units) {
		if scale.Ratio < max(finest, p.Finest) {
			continue
		}
		fit = p.scaled(scale)
		if fit.Need = fit.extent(); fits(fit.Need, room) {
			break
		}
	}
	return fit
}

// scales are the scales that the plan may have: no finer and no coarser than any plan, its bays neither too long nor too short on paper.
func (p StakePlan) scales() (list []paper.Scale) {
	closest := p.closest()
	for _, s := range Scales(p.spec.Units) {
		bay := paper.Length(closest / s.Ratio)
		if p.First == p.Last { // no bay: no larger than needed
			bay = leastBay
		}
		if s.Ratio >= max(finest, p.Finest) && s.Ratio <= coarsest && bay <= mostBay && (bay >= leastBay || len(list) == 0) {
			list = append(list, s)
		}
	}
	return list
}

func fits(extent, room paper.Rect) bool { return extent.W <= room.W && extent.H <= room.H }

// closest returns the least distance between neighbouring stakes of a row, in millimetres.
func (p StakePlan) closest() float64 {
	least := math.Inf(1)
	for i := 2 * p.First; i < 2*p.Last; i++ {
		least = min(least, float64(ground.Between(p.ground.Stakes[i-2], p.ground.Stakes[i])))
	}
	return least
}

// scaled returns the plan at a scale, not yet placed on a page.
func (p StakePlan) scaled(scale paper.Scale) StakePlan {
	p.Scale = scale
	p.m = newSiteMap(&p.spec.Site, scale)
	return p
}

// entrance and exit report whether the tunnel's ends are on the plan.
func (p StakePlan) entrance() bool { return p.First == 1 }
func (p StakePlan) exit() bool     { return p.Last == len(p.ground.Stations) }

// extent returns the box about all that must be on the plan, where the site map has it now.
func (p StakePlan) extent() paper.Rect {
	var e box
	for _, s := range p.stakes {
		name := guyRadius + 2 + paper.StakeName.Width(s.String())
		e.add(p.m.at(s.At()), name, name, beyondRoom, beyondRoom)
	}
	if p.entrance() {
		e.add(p.m.at(p.ground.Stations[0].At).Add(paper.Point{Y: p.entranceRoom()}), 14, 14, 0, 1.5)
	}
	if last := p.ground.Stations[len(p.ground.Stations)-1]; p.exit() {
		e.add(p.m.at(last.At).Add(paper.Polar(exitRoom, p.m.angle(last.Heading))), 8, 8, 4, 0)
	}
	for _, arch := range []int{p.First, p.Last} {
		if p.matches(arch) {
			e.add(p.m.at(p.ground.Stations[arch-1].At), 20, 20, matchRoom, matchRoom)
		}
	}
	for _, s := range p.Spans {
		from, to := p.m.at(p.ground.At(s.From, p.spec.Units)), p.m.at(p.ground.At(s.To, p.spec.Units))
		aside := to.Sub(from).Unit().Left().Times(float64(s.Apart))
		room := paper.Length(3)
		if s.Apart != 0 {
			room = dimensionRoom
		}
		e.add(from.Add(aside), room, room, 3, 3)
		e.add(to.Add(aside), room, room, 3, 3)
	}
	return e.rect()
}

// entranceRoom is how far before arch 1 the word at the entrance stands: past the walk arrow, and clear of guy stakes.
func (p StakePlan) entranceRoom() paper.Length {
	room := enterRoom
	for _, s := range p.stakes {
		if before := p.m.length(-s.Along); before > enterRoom-10 && before < enterRoom+3 {
			room = max(room, before+9.5)
		}
	}
	return room
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
	if all := p.extentWithMarks(); fits(all, room) {
		e = all
	}
	p.m.origin = p.m.origin.Add(room.Centre().Sub(e.Centre()))
	for _, i := range p.Marks { // one that lies across the rim comes in where what must be there leaves room
		at := p.m.at(p.ground.Marks[i].At)
		by := nearestIn(room.Inset(markRadius), at).Sub(at)
		e := p.extent()
		if low, high := (paper.Point{X: e.X, Y: e.Y}).Add(by), (paper.Point{X: e.Right(), Y: e.Bottom()}).Add(by); room.Contains(at) && room.Contains(low) && room.Contains(high) {
			p.m.origin = p.m.origin.Add(by)
		}
	}
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
