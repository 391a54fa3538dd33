package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// tight returns the places where the pipe bends tighter than a little farther on both ways: at the crown, and in the legs of a tall arch.
func (p Profile) tight() []arch.Point {
	const aside = 50 * measure.Millimetre
	k := p.Kind
	var list []arch.Point
	for _, q := range k.LeastRadii() {
		before, after := k.PointAt(q.Tape-aside), k.PointAt(q.Tape+aside)
		if before.Radius >= q.Radius && after.Radius >= q.Radius {
			list = append(list, q)
		}
	}
	return list
}

// bendCircles draws at each tight place the arc of the circle that the pipe follows there, and the radius.
func (f *elevation) bendCircles() {
	for _, q := range f.tight() {
		r := f.scale.Length(float64(q.Radius))
		out := float64(q.Heading) + math.Pi/2 // from the centre to the pipe
		centre := f.on(q).Sub(paper.Polar(r, out))
		reach := f.scale.Length(float64(f.Kind.Span / 2)) // as much of the circle as shows where the pipe leaves it
		sweep := min(5*math.Pi/12, float64(reach/r))
		f.Stroke(paper.Arc(centre, r, out-sweep, out+sweep), paper.Centre)
		f.Label(place.Label{At: f.on(q), Text: "R " + f.Units.Inches(q.Radius), Lettering: paper.Dimension, Toward: paper.Polar(-1, out), Clear: f.pipeWide() / 2, Leader: place.Arrow, Pointed: true})
	}
}

// notes labels couplings and the late curve.
func (f *elevation) notes() {
	k := f.Kind
	for _, j := range k.Joints() {
		if j.Crown {
			continue
		}
		q := k.PointAt(j.Middle())
		f.Label(place.Label{At: f.on(q), Text: "coupling", Lettering: wordLettering, Toward: paper.Polar(1, float64(q.Heading)).Left(), Clear: f.pipeWide()/2 + 1, Leader: place.Arrow, Pointed: true})
	}
	if f.ages(f.scale) {
		q := k.Season[len(k.Season)*5/8]
		f.Label(place.Label{At: f.on(q), Text: "at the season's end", Lettering: wordLettering, Toward: paper.Polar(1, float64(q.Heading)).Left(), Leader: place.Arrow, Pointed: true})
	}
}
