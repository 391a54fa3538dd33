package draw

import (
	"math"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/spec"
)

func (d *siteSheet) yard() yard { return yard{d.b, d.m, d.room} }

// lines draws what lies on, in and over the ground.
func (d *siteSheet) lines() {
	y, site := d.yard(), d.plan.Spec.Site
	y.rims(site.Features, paper.Thin)
	for _, l := range site.Buried {
		y.path(d.m.points(l.Line), buriedPen)
	}
	for _, l := range site.Overhead {
		y.path(d.m.points(l.Line), overheadPen)
	}
}

// feature names a feature in what is seen of it, else beside it, and reports whether it found room.
func (d *siteSheet) feature(seen []paper.Point, name string) bool {
	at := middleOf(seen)
	if d.b.FreeText(at, 0, name, paper.Floor) {
		centredText(d.b, at, name, paper.Floor)
		return true
	}
	return d.b.Label(place.Label{At: at, Text: name, Lettering: paper.Floor, Leader: place.Arrow})
}

// along names a line beside its longest stretch on the map, by its ends first: stakes stand by its middle.
func (d *siteSheet) along(line []paper.Point, name string, clear paper.Length) []naming {
	p, q, ok := d.yard().longest(line)
	if !ok {
		return nil
	}
	return []naming{{strings.ReplaceAll(name, "\n", " "), func() bool {
		return slices.ContainsFunc([]paper.Length{clear + 20, clear + 45}, func(reach paper.Length) bool {
			return d.yard().named(p, q, place.Label{Text: name, Lettering: paper.Floor, Reach: reach}, 0.85, 0.15, 0.95, 0.05, 0.7, 0.3, 0.5)
		})
	}}}
}

// bands hatches the bands of buried lines. Names set later keep off them: none wipes out a part.
func (d *siteSheet) bands() bool {
	for _, l := range d.plan.Spec.Site.Buried {
		d.band(l, -math.Pi/4, 2.5)
	}
	return true
}

// hatches fills hard ground and the bands of overhead lines, each its own way. Hatching keeps off every text.
func (d *siteSheet) hatches() {
	d.yard().hardGround(d.plan.Spec.Site.Features)
	for _, l := range d.plan.Spec.Site.Overhead {
		d.band(spec.Buried{Line: l.Line, Keep: l.Keep}, math.Pi/2.2, 5)
	}
}

// band hatches the band of a line and draws its edges, for a hatch's own are hard to see beside a stake or another hatch.
func (d *siteSheet) band(l spec.Buried, angle float64, apart paper.Length) {
	d.yard().band(l, angle, apart)
	for _, side := range d.m.band(l) {
		d.yard().path(side, paper.Other)
	}
}
