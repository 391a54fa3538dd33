package draw

import (
	"fmt"
	"math"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// Pens of the site, by what their line means.
var (
	buriedPen   = paper.Pen{Width: 0.70, Dash: []paper.Length{6, 1.4, 1.4, 1.4}}
	overheadPen = paper.Pen{Width: 0.70, Dash: []paper.Length{9, 3}}
)

// siteLines draws what is on, in and over the ground.
func (d *stakeSheet) siteLines() {
	for _, f := range d.spec.Site.Features {
		d.edges(d.m.outline(f), paper.Thick)
	}
	for _, l := range d.spec.Site.Buried {
		d.path(d.m.points(l.Line), buriedPen)
		for _, side := range d.m.band(l) {
			d.path(side, paper.Other)
		}
	}
	for _, l := range d.spec.Site.Overhead {
		d.path(d.m.points(l.Line), overheadPen)
	}
}

// siteNames says what those lines are, and what they forbid.
func (d *stakeSheet) siteNames() {
	for _, f := range d.spec.Site.Features {
		if seen := cropOutline(d.m.outline(f), d.room); seen != nil {
			name := f.Name
			if f.Hard {
				name += ", hard:\nno stake here"
			}
			if f.Height > 0 {
				name += ",\n" + d.units().Room(f.Height) + " high"
			}
			d.name(seen, name)
		}
	}
	for _, l := range d.spec.Site.Buried {
		d.nameLine(d.m.points(l.Line), d.m.length(l.Keep), fmt.Sprintf("%s: drive no\nstake within %s", l.Name, d.units().Inches(l.Keep)))
	}
	for _, l := range d.spec.Site.Overhead {
		d.nameLine(d.m.points(l.Line), 0, fmt.Sprintf("%s overhead, %s up:\nkeep pipe and ladders %s off", l.Name, d.units().Room(l.Height), d.units().Room(l.Keep)))
	}
}

// outletRadius is that of an outlet's sign on paper.
const outletRadius paper.Length = 1.8

// outlets draws the outlets in the picture where there is room for their sign.
func (d *stakeSheet) outlets() {
	for _, o := range d.spec.Site.Outlets {
		at := d.m.at(o.At)
		if d.room.Inset(3).Contains(at) && d.b.Free(paper.Rect{X: at.X - 2, Y: at.Y - 2, W: 4, H: 4}) {
			outletSign(d.b.Page, at)
			d.b.Mark(at, outletRadius)
			d.plugs = append(d.plugs, o)
		}
	}
}

// outletNames names them, once all that must be read for setting out has its place.
func (d *stakeSheet) outletNames() {
	for _, o := range d.plugs {
		d.b.Label(place.Label{At: d.m.at(o.At), Text: o.Name + " outlet", Lettering: paper.Floor, Clear: outletRadius + 0.4, Leader: place.Bare, Reach: 20})
	}
}

// outletSign draws an outlet: a ring with its two slots.
func outletSign(page *paper.Page, at paper.Point) {
	page.Stroke(paper.Circle(at, outletRadius), paper.Thin)
	for _, x := range []paper.Length{-0.6, 0.6} {
		page.Line(at.Add(paper.Point{X: x, Y: -0.8}), at.Add(paper.Point{X: x, Y: 0.8}), paper.Thin)
	}
}

// edges draws a closed outline inside the picture, edge by edge, round the texts that already stand.
func (d *stakeSheet) edges(outline []paper.Point, pen paper.Pen) {
	d.path(append(outline[:len(outline):len(outline)], outline[0]), pen)
}

// path draws an open line inside the picture.
func (d *stakeSheet) path(line []paper.Point, pen paper.Pen) {
	for i := 1; i < len(line); i++ {
		if p, q, ok := cropSegment(line[i-1], line[i], d.room); ok {
			d.b.LineRound(p, q, pen)
		}
	}
}

// name sets a feature's name inside what is seen of it, else beside it.
func (d *stakeSheet) name(seen []paper.Point, name string) {
	var e box
	for _, p := range seen {
		e.add(p, 0, 0, 0, 0)
	}
	centre := e.rect().Centre()
	for _, share := range []float64{0, 0.3, 0.6} {
		for _, p := range seen {
			if d.centred(centre.Add(p.Sub(centre).Times(share)), name, paper.Body) {
				return
			}
		}
	}
	label := place.Label{At: centre, Text: name, Lettering: paper.Body, Align: paper.AtMiddle, Leader: place.Dot}
	placed := d.b.Label(label)
	for i := 0; i < len(seen) && !placed; i++ { // pointing nearer to the rim
		label.At = centre.Add(seen[i].Sub(centre).Times(0.7))
		placed = d.b.Label(label)
	}
	d.lacks(name, placed)
}

// centred sets lines of text about a point, if all are free there.
func (d *stakeSheet) centred(at paper.Point, text string, l paper.Lettering) bool {
	lines := strings.Split(text, "\n")
	baseline := func(i int) paper.Point {
		return paper.Point{X: at.X, Y: at.Y + l.Ascent()/2 + l.Leading()*(paper.Length(i)-paper.Length(len(lines)-1)/2)}
	}
	for i, line := range lines {
		if !d.b.FreeText(baseline(i), 0, line, l) {
			return false
		}
	}
	for i, line := range lines {
		d.b.Text(baseline(i), paper.AtMiddle, line, l)
	}
	return true
}

// nameLine sets a line's name beside the longest stretch of it that is on the page, clear of its band.
func (d *stakeSheet) nameLine(line []paper.Point, clear paper.Length, name string) {
	var p, q paper.Point
	for i := 1; i < len(line); i++ {
		if a, b, ok := cropSegment(line[i-1], line[i], d.room.Inset(4)); ok && b.Sub(a).Long() > q.Sub(p).Long() {
			p, q = a, b
		}
	}
	if p == q {
		return
	}
	narrow := strings.Join(paper.Body.Wrap(strings.ReplaceAll(name, "\n", " "), 30), "\n")
	for _, text := range []string{name, narrow} {
		for _, share := range []float64{0.9, 0.1, 0.75, 0.25, 0.5, 0.02, 0.98, 0.35, 0.65} {
			if d.b.Label(place.Label{At: p.Add(q.Sub(p).Times(share)), Text: text, Lettering: paper.Body, Leader: place.Arrow, Pointed: true, Reach: clear + 50}) {
				return
			}
		}
	}
	d.lacks(name, false)
}

// hatches fills hard ground and the bands of buried lines. They come last: a hatch keeps off every text.
func (d *stakeSheet) hatches() {
	for _, f := range d.spec.Site.Features {
		if seen := cropOutline(d.m.outline(f), d.room); f.Hard && seen != nil {
			d.b.Hatch(paper.Polygon(seen...), math.Pi/4, 3)
		}
	}
	for _, l := range d.spec.Site.Buried {
		sides := d.m.band(l)
		for i := 1; i < len(sides[0]); i++ {
			piece := cropOutline([]paper.Point{sides[0][i-1], sides[0][i], sides[1][i], sides[1][i-1]}, d.room)
			if piece != nil {
				d.b.Hatch(paper.Polygon(piece...), -math.Pi/4, 3.5)
			}
		}
	}
}
