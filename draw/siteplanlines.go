package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/spec"
)

// lines draws what lies on, in and over the ground.
func (d *siteSheet) lines() {
	for _, f := range d.plan.Spec.Site.Features {
		rim := d.m.outline(f)
		d.path(append(rim[:len(rim):len(rim)], rim[0]), paper.Thin)
	}
	for _, l := range d.plan.Spec.Site.Buried {
		d.path(d.m.points(l.Line), buriedPen)
	}
	for _, l := range d.plan.Spec.Site.Overhead {
		d.path(d.m.points(l.Line), overheadPen)
	}
}

func (d *siteSheet) path(line []paper.Point, pen paper.Pen) {
	for i := 1; i < len(line); i++ {
		if p, q, ok := cropSegment(line[i-1], line[i], d.room); ok {
			d.b.LineRound(p, q, pen)
		}
	}
}

// feature names a feature in what is seen of it, else beside it.
func (d *siteSheet) feature(seen []paper.Point, name string) {
	at := middleOf(seen)
	if d.b.FreeText(at, 0, name, paper.Floor) {
		centredText(d.b, at, name, paper.Floor)
		return
	}
	d.lacks(name, d.b.Label(place.Label{At: at, Text: name, Lettering: paper.Floor, Leader: place.Dot}))
}

// along names a line beside its longest stretch on the map.
func (d *siteSheet) along(line []paper.Point, name string, clear paper.Length) {
	var p, q paper.Point
	for i := 1; i < len(line); i++ {
		if a, b, ok := cropSegment(line[i-1], line[i], d.room.Inset(4)); ok && b.Sub(a).Long() > q.Sub(p).Long() {
			p, q = a, b
		}
	}
	if p == q {
		return
	}
	for _, reach := range []paper.Length{16, clear + 20, clear + 45} {
		for _, share := range []float64{0.5, 0.7, 0.3, 0.85, 0.15, 0.95, 0.05} {
			if d.b.Label(place.Label{At: p.Add(q.Sub(p).Times(share)), Text: name, Lettering: paper.Floor, Leader: place.Arrow, Pointed: true, Reach: reach}) {
				return
			}
		}
	}
	d.lacks(name, false)
}

// hatches fills hard ground, the bands of buried lines and those of overhead lines, each its own way. Hatching keeps off every text.
func (d *siteSheet) hatches() {
	for _, f := range d.plan.Spec.Site.Features {
		if seen := cropOutline(d.m.outline(f), d.room); f.Hard && seen != nil {
			d.b.Hatch(paper.Polygon(seen...), math.Pi/4, 3)
		}
	}
	band := func(sides [2][]paper.Point, angle float64, apart paper.Length) {
		for i := 1; i < len(sides[0]); i++ {
			if piece := cropOutline([]paper.Point{sides[0][i-1], sides[0][i], sides[1][i], sides[1][i-1]}, d.room); piece != nil {
				d.b.Hatch(paper.Polygon(piece...), angle, apart)
			}
		}
	}
	for _, l := range d.plan.Spec.Site.Buried {
		band(d.m.band(l), -math.Pi/4, 2.5)
	}
	for _, l := range d.plan.Spec.Site.Overhead {
		band(d.m.band(spec.Buried{Line: l.Line, Keep: l.Keep}), math.Pi/2.2, 5)
	}
}
