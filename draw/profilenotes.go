package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// radii names the bend's radius at each tight place, in two short lines where there is height for them, as r where there is hardly room.
func (f *elevation) radii() {
	for _, q := range f.tight() {
		radius := f.taped(q.Radius)
		l := place.Label{At: f.on(q), Align: paper.AtMiddle, Toward: paper.Polar(-1, float64(q.Heading)+math.Pi/2), Clear: f.pipeWide() / 2, Leader: place.Arrow, Pointed: true}
		set := false
		for _, lettering := range []paper.Lettering{wordLettering, paper.DimSmall} {
			for _, word := range []string{"radius\n", "radius ", "r "} {
				l.Text, l.Lettering = word+radius, lettering
				set = set || f.Label(l)
			}
		}
		if !set {
			f.lost = append(f.lost, l.Text)
		}
	}
}

// couplings names one of the couplings, which all look alike, where there is room: the sleeve on the pipe is plain enough without.
func (f *elevation) couplings() {
	for _, j := range f.Kind.Joints() {
		if j.Crown {
			continue
		}
		q := f.Kind.PointAt(j.Middle())
		inward := paper.Polar(-1, float64(q.Heading)).Left()
		for _, toward := range []paper.Point{inward, inward.Times(-1)} {
			if f.Label(place.Label{At: f.on(q), Text: "coupling", Lettering: wordLettering, Toward: toward, Clear: f.pipeWide()/2 + 1, Leader: place.Arrow, Pointed: true}) {
				return
			}
		}
	}
}
