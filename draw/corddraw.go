package draw

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/power"
)

// Draw draws a section in the middle of a room, and returns what found no place.
func (c *CordPlan) Draw(b *place.Board, room paper.Rect, s Section) (missing []string) {
	v := c.placed(s, room)
	b.Area = room
	at := c.outletsIn(v, room)
	for _, o := range at {
		b.Keep(around(o.at, outletHalf*1.9))
	}
	missing = c.numbers(b, v, s)
	wayIn, shown := c.walk(b, v, s, room)
	ways := c.ways(v, s)
	left := c.tags(b, ways, room)
	c.arches(b, v, s, room)
	lay := func(fromOutlet bool) {
		for i, k := range c.cords {
			if k.outlet == fromOutlet {
				drawWay(b, ways[i], room)
			}
		}
	}
	lay(false)
	for _, o := range at {
		b.Page.Fill(paper.Circle(o.at, outletHalf*1.9), paper.White) // a cord that only passes by stops short of it
	}
	lay(true)
	missing = append(missing, c.tagsBeside(b, ways, left, room)...)
	for _, o := range at {
		if !c.outlet(b, o) {
			missing = append(missing, "outlet "+o.name)
		}
	}
	c.matchLines(b, v, s)
	if shown {
		b.Label(wayIn)
	}
	return missing
}

// meets reports whether a cord comes to a section's arches or passes them; one that touches no foot may.
func (c *CordPlan) meets(k cordLine, s Section) bool {
	low, high := math.MaxInt, 0
	for _, p := range k.path {
		if f, ok := c.footAt(p); ok {
			low, high = min(low, f.Arch), max(high, f.Arch)
		}
	}
	return high == 0 || low <= s.Last && high >= s.First
}

// numberRoom is how far apart feet are whose arch's number is set large.
const numberRoom paper.Length = 18

// numbers sets each arch's number between its feet, else beside it.
func (c *CordPlan) numbers(b *place.Board, v siteMap, s Section) (missing []string) {
	for n := s.First; n <= s.Last; n++ {
		l, r := c.pair(v, n)
		as := paper.StakeName
		if r.Sub(l).Long() < numberRoom {
			as = paper.CellSmall
		}
		beside := place.Label{At: l, Text: fmt.Sprint(n), Lettering: paper.CellSmall, Clear: 1.5, Leader: place.Bare, Toward: l.Sub(r), Reach: 30}
		near, far := l, r
		if c.rightTaken(n) {
			near, far = r, l
		}
		if !numberArch(b, near, far, beside.Text, as) && !b.Label(beside) {
			missing = append(missing, "arch "+beside.Text)
		}
		for _, p := range []paper.Point{l, r} {
			b.Keep(around(p, 1.2))
		}
	}
	return missing
}

// arches draws each arch as a line from foot to foot, and the stakes of the end arches' guys.
func (c *CordPlan) arches(b *place.Board, v siteMap, s Section, room paper.Rect) {
	for n := s.First; n <= s.Last; n++ {
		l, r := c.pair(v, n)
		b.LineRound(l, r, paper.Thin)
		for _, p := range []paper.Point{l, r} {
			b.Fill(paper.Circle(p, 1.1), paper.Black)
			b.Mark(p, 1.2)
		}
	}
	for _, k := range c.plan.Stakes { // of the guys that stand in the walk's ways in and out, for cords go round outside them
		if at := v.at(k.At()); k.Guy && (k.Arch == 1 || k.Arch == len(c.plan.Ground.Stations)) && s.First <= k.Arch && k.Arch <= s.Last && room.Contains(at) {
			guySign(b, at, k.Kind())
			b.Mark(at, siteGuy)
		}
	}
}

// ways are how the cords that come to a section are drawn there, each under its cord's place in the list.
func (c *CordPlan) ways(v siteMap, s Section) [][]leg {
	ways := make([][]leg, len(c.cords))
	for i, k := range c.cords {
		if k.number > 0 && c.meets(k, s) {
			ways[i] = c.way(v, k, s)
		}
	}
	return ways
}

// tags sets the cords' numbers on them, off all others, and returns the places in the list of those that found none there.
func (c *CordPlan) tags(b *place.Board, ways [][]leg, room paper.Rect) (left []int) {
	for _, fromOutlet := range []bool{true, false} { // a cord from an outlet has only one straight leg to be numbered on
		for i, k := range c.cords {
			if k.outlet == fromOutlet && !c.tag(b, ways, i, room) {
				left = append(left, i)
			}
		}
	}
	return left
}

// offOthers reports whether a number at a place on a cord's way lies on no other's.
func offOthers(at paper.Point, ways [][]leg, own int) bool {
	const numberHalf = 3.6
	for i, way := range ways {
		for _, g := range way {
			along, w := g.q.Sub(g.p), at.Sub(g.p)
			t := max(0, min(1, float64(along.X*w.X+along.Y*w.Y)/float64(along.X*along.X+along.Y*along.Y)))
			if i != own && at.Sub(g.p.Add(along.Times(t))).Long() < numberHalf {
				return false
			}
		}
	}
	return true
}

const (
	tagLeast paper.Length = 13 // the least length of a leg of which a number on it leaves something to be seen
	tagAgain paper.Length = 20 // and of a further leg of the same cord that has its number again: between them it comes in to a foot
)

// seen are the legs of a way in the room, the longest first.
func seen(way []leg, room paper.Rect) (list []leg) {
	for _, g := range way {
		if p, q, ok := cropSegment(g.p, g.q, room); ok {
			list = append(list, leg{p, q, g.over})
		}
	}
	slices.SortStableFunc(list, func(a, d leg) int { return cmp.Compare(d.q.Sub(d.p).Long(), a.q.Sub(a.p).Long()) })
	return list
}

// tag sets a cord's number on its longest legs on the ground in the room, as near the middle as is free, and reports whether it found a place; a cord that lies outside the room needs none.
func (c *CordPlan) tag(b *place.Board, ways [][]leg, own int, room paper.Rect) (set bool) {
	all := seen(ways[own], room)
	for _, g := range all {
		if long := g.q.Sub(g.p).Long(); !g.over && (long >= tagAgain || !set && long >= tagLeast) {
			set = g.numbered(b, c.cords[own].name(), func(at paper.Point) bool { return offOthers(at, ways, own) }) || set
		}
	}
	return set || len(all) == 0
}

// tagsBeside sets, once all cords are drawn, the number of each that goes overhead beside it there, and those that found no place on their cords
// beside them, each where its cord lies alone if it does. It returns those that find none.
func (c *CordPlan) tagsBeside(b *place.Board, ways [][]leg, left []int, room paper.Rect) (missing []string) {
	for own, way := range ways {
		text := c.cords[own].name()
		set := func(at, toward paper.Point, leader place.End, reach paper.Length) bool {
			return b.Label(place.Label{At: at, Text: text, Lettering: paper.CellSmall, Leader: leader, Clear: 1, Reach: reach, Toward: toward})
		}
		list := seen(way, room)
		if c.tagOver(list, set) || !slices.Contains(left, own) {
			continue
		}
		spots := []paper.Point{way[0].p, way[len(way)-1].q} // a cord up a leg is short on paper: by its foot or its end
		for _, g := range slices.Backward(list) {
			spots = slices.Insert(spots, 0, g.p.Add(g.q).Times(0.5))
		}
		any := func(alone bool) bool {
			return slices.ContainsFunc(spots, func(at paper.Point) bool {
				return offOthers(at, ways, own) == alone && set(at, way[0].q.Sub(way[0].p), place.Bare, 30)
			})
		}
		if !any(true) && !any(false) {
			missing = append(missing, "cord "+text)
		}
	}
	return missing
}

// tagOver sets a number beside what goes overhead of a cord's legs, the longest first, close by if it can, and reports whether it found a place.
func (c *CordPlan) tagOver(list []leg, set func(at, toward paper.Point, leader place.End, reach paper.Length) bool) bool {
	for _, leader := range []place.End{place.NoLeader, place.Bare} {
		for _, g := range list {
			for _, share := range []float64{0.5, 0.3, 0.7, 0.1, 0.9} {
				along := g.q.Sub(g.p)
				if g.over && set(g.p.Add(along.Times(share)), along.Unit().Left().Times(-1), leader, 15) {
					return true
				}
			}
		}
	}
	return false
}

// numbered sets a cord's number on a leg of it, where that is free and may be, and reports whether it found a place.
func (g leg) numbered(b *place.Board, text string, may func(at paper.Point) bool) bool {
	for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.9} {
		at := g.p.Add(g.q.Sub(g.p).Times(share))
		if may(at) && b.FreeText(at.Add(paper.Point{Y: 1.6}), 0, text, paper.CellSmall) {
			centredText(b, at, text, paper.CellSmall)
			return true
		}
	}
	return false
}

// overCordPen is the line of a cord that goes overhead, or under a cover: like no guy's.
var overCordPen = paper.Pen{Width: 0.70, Dash: []paper.Length{0.9, 1.3}}

// drawWay draws a cord's legs in the room.
func drawWay(b *place.Board, way []leg, room paper.Rect) {
	for _, g := range way {
		pen := paper.Thick
		if g.over {
			pen = overCordPen
		}
		if p, q, ok := cropSegment(g.p, g.q, room); ok {
			b.LineRound(p, q, pen)
		}
	}
}

// outletHalf is half the side of an outlet's square.
const outletHalf paper.Length = 2.6

// outletSpot is an outlet in use on paper.
type outletSpot struct {
	at   paper.Point
	name string
}

// outletsIn returns the outlets in use that lie in the room.
func (c *CordPlan) outletsIn(v siteMap, room paper.Rect) []outletSpot {
	var out []outletSpot
	for _, o := range c.plan.Spec.Site.Outlets {
		used := slices.ContainsFunc(c.plan.Power.Feeders, func(f power.Feeder) bool { return f.Outlet == o.Name })
		if p := v.at(o.At); used && room.Contains(p) {
			out = append(out, outletSpot{p, o.Name})
		}
	}
	return out
}

// outlet draws an outlet with its name, and reports whether that found room.
func (c *CordPlan) outlet(b *place.Board, o outletSpot) bool {
	r := paper.Rect{X: o.at.X - outletHalf, Y: o.at.Y - outletHalf, W: 2 * outletHalf, H: 2 * outletHalf}
	b.Page.Fill(paper.Box(r), paper.White)
	outlinedBox(b, r, paper.Emphasis)
	b.Mark(o.at, outletHalf+0.4)
	for _, as := range []struct {
		lettering paper.Lettering
		wide      paper.Length
	}{{paper.Strong, 45}, {paper.Strong, 20}, {paper.CellSmall.Sized(11), 17}} {
		words := "outlet\n" + strings.Join(as.lettering.Wrap(o.name, as.wide), "\n")
		if b.Label(place.Label{At: o.at, Text: words, Lettering: as.lettering, Clear: outletHalf*1.9 + 0.1, Align: paper.AtMiddle, Reach: 90}) {
			return true
		}
	}
	return false
}

// matchLines marks where a section goes on on another page.
func (c *CordPlan) matchLines(b *place.Board, v siteMap, s Section) {
	mark := func(n int, ahead float64) {
		l, r := c.pair(v, n)
		along := r.Sub(l).Unit().Left().Times(ahead)
		y := along.Times(6)
		from, to := l.Add(y), r.Add(y)
		b.LineRound(from, to, paper.Centre)
		b.Label(place.Label{At: from, Text: fmt.Sprintf("match line:\non from arch %d", n), Lettering: paper.Floor, Toward: from.Sub(to)})
	}
	if s.First > 1 {
		mark(s.First, -1)
	}
	if s.Last < len(c.plan.Ground.Stations) {
		mark(s.Last, 1)
	}
}

// walk draws the arrow of the way in, where a section has room for it, and returns its name.
func (c *CordPlan) walk(b *place.Board, v siteMap, s Section, room paper.Rect) (name place.Label, ok bool) {
	l, r := c.pair(v, 1)
	mid := l.Add(r).Times(0.5)
	ahead := r.Sub(l).Unit().Left()
	from, to := mid.Sub(ahead.Times(13)), mid.Sub(ahead.Times(2.5))
	if s.First > 1 || !room.Contains(from) {
		return name, false
	}
	b.WalkArrow(from, to)
	return place.Label{At: from.Add(to).Times(0.5), Text: "way in", Lettering: paper.Floor, Clear: 4, Toward: paper.Point{X: 1}, Leader: place.NoLeader}, true
}
