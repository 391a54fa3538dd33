package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// siteMap puts places of the site on paper: true to scale, and turned so that straight ahead, as one stands at the entrance and
// looks in, runs up the page.
type siteMap struct {
	scale    paper.Scale
	start    spec.Point
	sin, cos float64     // of the heading at the entrance
	origin   paper.Point // where the start lies on paper
}

func newSiteMap(site *spec.Site, scale paper.Scale) siteMap {
	m := siteMap{scale: scale, start: site.Start}
	m.sin, m.cos = math.Sincos(float64(site.Heading))
	return m
}

// at returns where a place of the site lies on paper.
func (m siteMap) at(p spec.Point) paper.Point {
	dx, dy := float64(p.X-m.start.X), float64(p.Y-m.start.Y)
	right := float64(dx*m.cos) - float64(dy*m.sin)
	ahead := float64(dx*m.sin) + float64(dy*m.cos)
	return paper.Point{X: m.origin.X + m.scale.Length(right), Y: m.origin.Y - m.scale.Length(ahead)}
}

// centred returns the map moved so that what lies at a point of it at full size comes to the middle of a room.
func (m siteMap) centred(at paper.Point, room paper.Rect) siteMap {
	m.origin = room.Centre().Sub(paper.Point{X: m.scale.Length(float64(at.X)), Y: m.scale.Length(float64(at.Y))})
	return m
}

// points returns a whole line of them.
func (m siteMap) points(line []spec.Point) []paper.Point {
	list := make([]paper.Point, len(line))
	for i, p := range line {
		list[i] = m.at(p)
	}
	return list
}

// angle returns a direction of the site, clockwise from its +y, as an angle on paper.
func (m siteMap) angle(heading measure.Angle) float64 {
	return math.Pi/2 - (float64(heading) - math.Atan2(m.sin, m.cos))
}

// length returns a real length on paper.
func (m siteMap) length(l measure.Length) paper.Length { return m.scale.Length(float64(l)) }

// outline returns a feature's rim on paper; a round one as chords that stray 0.02 mm from it at most.
func (m siteMap) outline(f spec.Feature) []paper.Point {
	if len(f.Outline) > 0 {
		return m.points(f.Outline)
	}
	const chords = 120
	centre, radius := m.at(f.At), m.length(f.Radius)
	rim := make([]paper.Point, chords)
	for i := range rim {
		rim[i] = centre.Add(paper.Polar(radius, 2*math.Pi*float64(i)/chords))
	}
	return rim
}

// band returns the two edges of a buried line's keep-clear band.
func (m siteMap) band(l spec.Buried) [2][]paper.Point {
	line := m.points(l.Line)
	keep := float64(m.length(l.Keep))
	var sides [2][]paper.Point
	for i, p := range line {
		var u, v paper.Point // into the corner and out of it
		if i > 0 {
			u = p.Sub(line[i-1]).Unit()
		}
		if i+1 < len(line) {
			v = line[i+1].Sub(p).Unit()
		}
		if i == 0 {
			u = v
		} else if i+1 == len(line) {
			v = u
		}
		n := u.Left().Add(v.Left()).Unit()
		reach := keep
		if c := float64(n.X*u.Left().X + n.Y*u.Left().Y); c > 0.3 { // mitred, but no spike at a hairpin
			reach = keep / c
		}
		sides[0] = append(sides[0], p.Add(n.Times(reach)))
		sides[1] = append(sides[1], p.Sub(n.Times(reach)))
	}
	return sides
}
