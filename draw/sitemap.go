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
