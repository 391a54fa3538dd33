package draw

import (
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The eye that looks into the tunnel, and the people in it. Their heights are ours, for scale alone.
const (
	eyeHeight   = 1600 * measure.Millimetre // 5 ft 3 in: a grown person of middling height
	adultHeight = 1720 * measure.Millimetre
	childHeight = 1180 * measure.Millimetre
)

const (
	standOff   = 1.35              // of the first span: how far before the entrance the eye stands
	nearShare  = 0.25              // of that: nothing nearer to the eye is drawn
	widestTurn = math.Pi / 3       // arches turned farther from the entrance do not shape the picture's size
	groundMark = 0.12              // of the span: how far the ground is drawn outside a foot
	guyLeast   = 0.5               // guys that are drawn smaller than this share of the first arch are left out
	leastStep  = paper.Length(1.3) // between the crowns, or the feet, of two arches on paper: nearer ones fill in
)

// Perspective draws the tunnel in depth as it is seen from before its entrance, filling the room: the solved curves of its
// arches, nearer ones heavier, their ridge, rows and drops with bulbs, and two people for scale. Arches that would lie too close on paper are
// left out, the last one never. Its parts are named where that is wanted. It reports whether there was an arch to draw.
func Perspective(page *paper.Page, room paper.Rect, plan *layout.Plan, named bool) bool {
	if len(plan.Arches) == 0 || plan.Arches[0].Kind == nil || len(plan.Arches[0].Curve) == 0 {
		return false
	}
	p := &perspective{page: page, room: room, plan: plan, wound: map[lights.Part][]lights.Wrap{}, hung: map[string]lights.String{}}
	for _, w := range plan.Wraps {
		p.wound[w.On] = append(p.wound[w.On], w)
	}
	for _, s := range plan.Strings {
		p.hung[s.Name] = s
	}
	p.look()
	p.choose()
	p.floor()
	for k := len(p.shown) - 1; k >= 0; k-- {
		if k+1 < len(p.shown) {
			p.bay(p.shown[k], p.shown[k+1])
		}
		if k == max(0, min(2, len(p.shown)-2)) {
			p.people(p.shown[k])
		}
		p.arch(p.shown[k])
	}
	p.guys()
	if named {
		p.names()
	}
	return true
}

// perspective is one picture in the making.
type perspective struct {
	sight
	page  *paper.Page
	room  paper.Rect
	plan  *layout.Plan
	shown []int                         // numbers of the arches drawn, 1 first
	wound map[lights.Part][]lights.Wrap // by what they are on
	hung  map[string]lights.String      // by name
	guyed []spot                        // a guy or brace that is drawn, of arch 1 if it has any, from its tie to its stake
	holds ground.Kind                   // which of them it is
}

func (p *perspective) kind(number int) *arch.Kind { return p.plan.Arches[number-1].Kind }

// spot places a point of an arch's plane in space.
func (p *perspective) spot(number int, across, up measure.Length) spot {
	x, y, z := p.plan.Ground.Site(number, across, up)
	return spot{x, y, z}
}

// onPipe places a point along an arch's pipe, by tape from its left foot.
func (p *perspective) onPipe(number int, tape measure.Length) spot {
	at := p.kind(number).PointAt(tape)
	return p.spot(number, at.X, at.Y)
}

func (p *perspective) crown(number int) spot { return p.onPipe(number, p.kind(number).CrownTape) }

// foot places a stake's ground point.
func (p *perspective) foot(number int, side spec.Side) spot {
	s := p.plan.Ground.Stakes[2*number-2+int(side)]
	return spot{s.X, s.Y, s.Ground}
}

// curve places an arch's whole pipe.
func (p *perspective) curve(number int) []spot {
	var spots []spot
	for _, at := range p.kind(number).Curve {
		spots = append(spots, p.spot(number, at.X, at.Y))
	}
	return spots
}

// stands reports whether an arch has a shape to draw.
func (p *perspective) stands(number int) bool {
	k := p.kind(number)
	return k != nil && len(k.Curve) > 0
}

// look puts the eye before the entrance and fits what it sees into the room.
func (p *perspective) look() {
	first := p.plan.Ground.Stations[0]
	back := measure.Length(standOff) * p.kind(1).Span
	sin, cos := math.Sincos(float64(first.Heading))
	middle := p.spot(1, 0, eyeHeight)
	p.sight = sight{heading: first.Heading, focal: 1, straight: float64(back), nearest: nearShare * float64(back),
		eye: spot{middle.X - back*measure.Length(sin), middle.Y - back*measure.Length(cos), middle.Z}}

	var e box
	for n, st := range p.plan.Ground.Stations {
		if !p.stands(n+1) || math.Abs(float64(st.Heading-first.Heading)) > widestTurn {
			continue
		}
		for _, s := range p.curve(n + 1) {
			if q, ok := p.at(s); ok {
				e.add(q, 0, 0, 0, 0)
			}
		}
	}
	size, room := e.rect(), p.room.Inset(paper.Emphasis.Width) // bulbs and pipe stand out by that much
	f := min(room.W/size.W, room.H/size.H)
	p.focal = float64(f)
	p.vanish = paper.Point{X: room.Centre().X - f*(e.low.X+e.high.X)/2, Y: room.Bottom() - f*e.high.Y}
}

// choose picks the arches that lie far enough apart on paper, and the last.
func (p *perspective) choose() {
	var before [3]paper.Point // crown and feet of the arch picked last
	last := len(p.plan.Arches)
	for !p.stands(last) { // the first does
		last--
	}
	for n := 1; n <= last; n++ {
		if !p.stands(n) {
			continue
		}
		var at [3]paper.Point
		seen, apart := true, len(p.shown) == 0
		for i, s := range []spot{p.crown(n), p.foot(n, spec.Left), p.foot(n, spec.Right)} {
			q, ok := p.sight.at(s)
			at[i], seen, apart = q, seen && ok, apart || q.Sub(before[i]).Long() >= leastStep
		}
		switch k := len(p.shown); {
		case !seen:
		case apart:
			p.shown, before = append(p.shown, n), at
		case n == last && k > 1:
			p.shown[k-1] = n
		}
	}
}

// stroke draws a line in space, as far as it lies in the room.
func (p *perspective) stroke(spots []spot, pen paper.Pen) {
	for _, piece := range crop(p.line(spots), p.room) {
		p.page.Stroke(paper.Polyline(piece...), pen)
	}
}

// pen is the line for pipe at a place: heavy near, and never under what a copy keeps.
func (p *perspective) pen(at spot) paper.Pen {
	pen := paper.Thin
	pen.Width = min(paper.Emphasis.Width, max(paper.Thin.Width, paper.Emphasis.Width*paper.Length(p.share(at))))
	return pen
}

// arch draws one arch with its wraps and the drops on it.
func (p *perspective) arch(number int) {
	p.stroke(p.curve(number), p.pen(p.crown(number)))
	p.wraps(number)
}

// bay draws what runs from one drawn arch to the next: ridge, rows and drops.
func (p *perspective) bay(from, to int) {
	if len(p.plan.Ridge) > 0 {
		p.stroke([]spot{p.crown(from), p.crown(to)}, p.pen(p.crown(from).towards(p.crown(to), 0.5)))
		if from+1 == to {
			p.ridgeWraps(from)
		}
	}
	p.rows(from, to)
	p.drops(from, to)
}

// floor draws the two lines of feet on the ground, and at each foot the ground outside it.
func (p *perspective) floor() {
	for k, n := range p.shown {
		left, right := p.foot(n, spec.Left), p.foot(n, spec.Right)
		p.stroke([]spot{left, left.towards(right, -groundMark)}, paper.Thin)
		p.stroke([]spot{right, right.towards(left, -groundMark)}, paper.Thin)
		if k > 0 {
			p.stroke([]spot{p.foot(p.shown[k-1], spec.Left), left}, paper.Thin)
			p.stroke([]spot{p.foot(p.shown[k-1], spec.Right), right}, paper.Thin)
		}
	}
}

// people stands two people, one where no more may be inside, for scale behind an arch: in the next bay, or behind a lone arch.
func (p *perspective) people(number int) {
	st := p.plan.Ground.Stations[number-1]
	ahead := p.plan.Spec.Tunnel.Spacing / 2
	if number == len(p.plan.Arches) {
		ahead = p.kind(number).Span / 4
	}
	sin, cos := math.Sincos(float64(st.Heading))
	pen := paper.Pen{Width: 0.5}
	span := p.kind(number).Span
	both := []struct {
		figure
		height, across measure.Length
	}{{adult, adultHeight, span * 0.22}, {child, childHeight, span * 0.04}}
	for _, who := range both[:max(1, min(p.plan.MostInside()-1, len(both)))] { // the watcher is not shown
		feet := p.spot(number, who.across, 0)
		feet.X, feet.Y = feet.X+ahead*measure.Length(sin), feet.Y+ahead*measure.Length(cos)
		at, ok := p.at(feet)
		if height := paper.Length(p.scale(feet) * float64(who.height)); ok && height > 6 && p.room.Contains(at) {
			who.stand(p.page, at, height, pen)
		}
	}
}

// guys draws the guys that come toward the eye; those beyond would run through the arches' openings.
func (p *perspective) guys() {
	for _, s := range p.plan.Ground.Stakes {
		stake := spot{s.X, s.Y, s.Ground}
		if !s.Guy || !slices.Contains(p.shown, s.Arch) || p.share(stake) < p.share(p.crown(s.Arch)) || p.share(stake) < guyLeast {
			continue
		}
		k := p.kind(s.Arch)
		tape, ok := k.KnotAt(p.plan.Spec.Units, s.Side, s.Tied)
		if !ok {
			continue
		}
		if s.Side == spec.Right {
			tape = k.Length - tape
		}
		guy := []spot{p.onPipe(s.Arch, tape), stake}
		if p.stroke(guy, paper.Thin); p.guyed == nil || s.Arch == 1 {
			p.guyed, p.holds = guy, s.Kind()
		}
	}
}
