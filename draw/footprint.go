package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/measure"
)

// Footprint is the ground that a tunnel takes, guys included, seen from above: straight ahead at the entrance runs up the page.
type Footprint struct {
	Plan          *layout.Plan
	Width, Length measure.Length // over all stakes, square to the heading at the entrance and along it

	left, near float64 // of the box, from the start
}

// NewFootprint measures the ground that a plan takes, and reports false where nothing stands on it.
func NewFootprint(plan *layout.Plan) (Footprint, bool) {
	f, m := Footprint{Plan: plan}, newSiteMap(&plan.Spec.Site, paper.Scale{Ratio: 1})
	if len(plan.Stakes) == 0 {
		return f, false
	}
	var e box
	for _, s := range plan.Stakes {
		e.add(m.at(s.At()), 0, 0, 0, 0)
	}
	f.left, f.near = float64(e.low.X), float64(-e.high.Y)
	f.Width, f.Length = measure.Length(e.rect().W), measure.Length(e.rect().H)
	return f, true
}

// Scale returns the largest scale of the series at which the footprint and its dimensions fit the room; of what is too long for all of them half the last one, halved
// again until it fits.
func (f Footprint) Scale(series []paper.Scale, room paper.Rect) paper.Scale {
	room.W, room.H = room.W-2*footprintSide, room.H-2*footprintTop
	s := paper.Fit(series, float64(f.Width), float64(f.Length), room)
	for s.Length(float64(f.Width)) > room.W || s.Length(float64(f.Length)) > room.H {
		s.Ratio *= 2
		s.Words = fmt.Sprintf("1:%.0f", s.Ratio)
	}
	return s
}

const (
	footprintSide paper.Length = 24 // for a dimension's number
	footprintTop  paper.Length = 13
)

// Draw draws the footprint in the room at the scale: arches, guys, the box about them with its sizes, and what lies there.
func (f Footprint) Draw(page *paper.Page, room paper.Rect, scale paper.Scale) {
	b := place.NewBoard(page, room)
	m := newSiteMap(&f.Plan.Spec.Site, scale)
	wide, long := m.length(f.Width), m.length(f.Length)
	box := paper.Rect{X: room.Centre().X - wide/2, Y: room.Centre().Y - long/2, W: wide, H: long}
	m.origin = paper.Point{X: box.X - scale.Length(f.left), Y: box.Bottom() + scale.Length(f.near)}
	var names []place.Label // set once all lines stand
	for _, s := range f.Plan.Spec.Site.Features {
		outline := m.outline(s)
		if seen := cropOutline(outline, room); seen != nil {
			for i := range outline {
				if p, q, ok := cropSegment(outline[i], outline[(i+1)%len(outline)], room); ok {
					b.Line(p, q, paper.Thin)
				}
			}
			names = append(names, place.Label{At: middleOf(seen), Text: s.Name, Lettering: paper.Floor, Leader: place.Dot})
		}
	}
	b.Stroke(paper.Box(box), paper.Other)
	stakes := f.Plan.Stakes
	for i := range f.Plan.Ground.Stations {
		b.Line(m.at(stakes[2*i].At()), m.at(stakes[2*i+1].At()), paper.Thick)
	}
	for _, s := range stakes {
		if s.Guy {
			b.Line(m.at(stakes[2*s.Arch-2+int(s.Side)].At()), m.at(s.At()), paper.Thin)
		}
		b.Fill(paper.Circle(m.at(s.At()), 0.8), paper.Black)
	}
	u := f.Plan.Spec.Units
	b.Dimension(place.Dimension{From: paper.Point{X: box.X, Y: box.Y}, To: paper.Point{X: box.Right(), Y: box.Y}, Offset: 6, Text: u.Room(f.Width), Lettering: paper.DimSmall})
	b.Dimension(place.Dimension{From: paper.Point{X: box.Right(), Y: box.Y}, To: paper.Point{X: box.Right(), Y: box.Bottom()}, Offset: 7, Text: u.Room(f.Length), Lettering: paper.DimSmall})
	for _, l := range names {
		b.Label(l)
	}
	entrance := m.at(f.Plan.Ground.Stations[0].At)
	b.Label(place.Label{At: entrance, Text: "way in", Lettering: paper.Floor, Toward: paper.Point{Y: 1}, Leader: place.Arrow, Reach: 40, Pointed: true})
	b.Label(place.Label{At: m.at(f.Plan.Ground.Stations[len(f.Plan.Ground.Stations)-1].At), Text: "way out", Lettering: paper.Floor, Toward: paper.Point{Y: -1}, Leader: place.Arrow, Reach: 40, Pointed: true})
}

// middleOf returns the middle of the box about some points.
func middleOf(points []paper.Point) paper.Point {
	sum := paper.Point{}
	for _, p := range points {
		sum = sum.Add(p)
	}
	return sum.Times(1 / float64(len(points)))
}
