package ground

import (
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// route is the centreline as a chain of straights and arcs, each tangent to the one before. Before arch 1 and beyond the
// last arch it runs on straight, which is where the end arches' guys go.
type route struct {
	length measure.Length // arch 1 to the last
	legs   []leg          // at least one; they cover 0 to length
}

// leg is one straight or arc, cut off at the end of the tunnel.
type leg struct {
	from   Station
	length measure.Length
	curve  float64 // one over the radius in 1/mm, right positive; zero for a straight
}

// newRoute lays the legs of the site's route end to end from arch 1. A route that is too short runs on straight; legs of
// no length, and bends of no radius, are passed over.
func newRoute(site *spec.Site, length measure.Length) route {
	r := route{length: length}
	at := Station{At: site.Start, Heading: site.Heading}
	var asked measure.Length
	for _, l := range site.Route {
		asked += l.Length()
	}
	for _, l := range site.Route {
		next := leg{from: at, length: l.Length()}
		switch {
		case l.Rest:
			next.length = length - asked
			asked = length
		case l.Turn != 0:
			next.curve = math.Copysign(1/float64(l.Radius), float64(l.Turn))
		}
		next.length = min(next.length, length-at.Along)
		if next.length > 0 {
			r.legs = append(r.legs, next)
			at = next.at(next.length)
		}
	}
	if at.Along < length || len(r.legs) == 0 {
		r.legs = append(r.legs, leg{from: at, length: length - at.Along})
	}
	return r
}

// at returns the station d beyond the leg's start. An arc of length d is crossed by a chord of 2/k·sin(k·d/2), which
// leaves at half the arc's turn: exact, and well behaved as the curve k goes to zero.
func (l leg) at(d measure.Length) Station {
	s := Station{Along: l.from.Along + d, Heading: l.from.Heading}
	chord, half := d, float64(d)*l.curve/2
	if half != 0 {
		chord = measure.Length(float64(d) * math.Sin(half) / half)
		s.Heading += measure.Angle(2 * half)
	}
	s.At = along(l.from.At, ahead(l.from.Heading+measure.Angle(half)), chord)
	return s
}

// at returns the station at a distance from arch 1, which may be negative or beyond the last arch.
func (r route) at(d measure.Length) Station {
	last := r.legs[len(r.legs)-1]
	switch {
	case d < 0:
		return leg{from: r.legs[0].from}.at(d)
	case d > r.length:
		end := last.at(last.length)
		end.Along = r.length
		return leg{from: end}.at(d - r.length)
	}
	for _, l := range r.legs {
		if d <= l.from.Along+l.length {
			return l.at(d - l.from.Along)
		}
	}
	return last.at(d - last.from.Along)
}

func (r route) straight() bool {
	return !slices.ContainsFunc(r.legs, func(l leg) bool { return l.curve != 0 })
}

// path returns the centreline as a polyline that strays from it by 2 mm at most, which no drawing shows; where a whole
// route would need more than a thousand points it is content with fewer.
func (r route) path() []spec.Point {
	const sagitta, most = 2.0, 1000
	var total float64
	for _, l := range r.legs {
		total += math.Abs(l.curve) * float64(l.length)
	}
	points := []spec.Point{r.legs[0].from.At}
	for _, l := range r.legs {
		pieces := 1
		if turn := math.Abs(l.curve) * float64(l.length); turn > 0 {
			step := min(math.Sqrt(8*sagitta*math.Abs(l.curve)), math.Pi/8)
			pieces = int(math.Ceil(turn / max(step, total/most)))
		}
		for i := 1; i <= pieces; i++ {
			points = append(points, l.at(l.length*measure.Length(i)/measure.Length(pieces)).At)
		}
	}
	return points
}
