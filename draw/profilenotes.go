package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// bendCircles draws at each tight place the arc of the circle that the pipe follows there.
func (f *elevation) bendCircles() {
	for _, q := range f.tight() {
		r := f.scale.Length(float64(q.Radius))
		out := float64(q.Heading) + math.Pi/2 // from the centre to the pipe
		centre := f.on(q).Sub(paper.Polar(r, out))
		reach := f.scale.Length(float64(f.Kind.Span / 2)) // as much of the circle as shows where the pipe leaves it
		sweep := min(5*math.Pi/12, float64(reach/r))
		f.Stroke(paper.Arc(centre, r, out-sweep, out+sweep), paper.Centre)
	}
}

// radii names the circles' radii.
func (f *elevation) radii() {
	for _, q := range f.tight() {
		radius := "radius " + f.taped(q.Radius)
		if !f.Label(place.Label{At: f.on(q), Text: radius, Lettering: paper.Dimension, Toward: paper.Polar(-1, float64(q.Heading)+math.Pi/2), Clear: f.pipeWide() / 2, Leader: place.Arrow, Pointed: true}) {
			f.lost = append(f.lost, radius)
		}
	}
}

// couplings names one of the couplings, which all look alike; the crown fitting needs no name.
func (f *elevation) couplings() {
	k := f.Kind
	any := false
	for _, j := range k.Joints() {
		if j.Crown {
			continue
		}
		any = true
		q := k.PointAt(j.Middle())
		inward := paper.Polar(-1, float64(q.Heading)).Left()
		for _, toward := range []paper.Point{inward, inward.Times(-1)} {
			if f.Label(place.Label{At: f.on(q), Text: "coupling", Lettering: wordLettering, Toward: toward, Clear: f.pipeWide()/2 + 1, Leader: place.Arrow, Pointed: true}) {
				return
			}
		}
	}
	if any {
		f.lost = append(f.lost, "coupling")
	}
}
