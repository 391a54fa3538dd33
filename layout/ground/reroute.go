package ground

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// with returns the tunnel on another route.
func (t tunnel) with(route []spec.Leg) tunnel {
	site, before := t.spec.Site, t.stations
	site.Route = route
	t.route, t.stations = newRoute(&site, t.route.length), nil
	for _, s := range before {
		t.stations = append(t.stations, t.route.at(s.Along))
	}
	return t
}

// clear reports whether the tunnel keeps clear of itself, with room on the inside of its bends.
func (t tunnel) clear() bool {
	tight, far := t.overlaps()
	_, narrow := t.narrow()
	return len(tight) == 0 && len(far) == 0 && !narrow && !crossesItself(t.route.path())
}

// widened returns the route with no bend tighter than a radius.
func (t tunnel) widened(radius measure.Length) []spec.Leg {
	route := toTheEnd(t.spec.Site.Route)
	for i := range route {
		if l := &route[i]; l.Turn != 0 {
			l.Radius = max(l.Radius, radius)
		}
	}
	return route
}

// toTheEnd returns a copy of a route with a leg that takes the rest, so that it does not matter how long the others are.
func toTheEnd(route []spec.Leg) []spec.Leg {
	route = slices.Clone(route)
	if !slices.ContainsFunc(route, func(l spec.Leg) bool { return l.Rest }) {
		route = append(route, spec.Leg{Rest: true})
	}
	return route
}

// writtenRoute is a route as the spec has it.
func writtenRoute(route []spec.Leg, u measure.System) string {
	var legs []string
	for _, l := range route {
		switch {
		case l.Rest:
			legs = append(legs, "{straight: rest}")
		case l.Turn == 0:
			legs = append(legs, "{straight: "+u.Written(l.Straight)+"}")
		default:
			legs = append(legs, fmt.Sprintf("{%s: %.6g deg, radius: %s}", toward(l), measure.Abs(l.Turn/measure.Degree), u.Written(l.Radius)))
		}
	}
	return "[" + strings.Join(legs, ", ") + "]"
}

// written is a bend as the spec has it.
func written(l spec.Leg, u measure.System) string {
	return fmt.Sprintf("{%s: %.0f deg, radius: %s}", toward(l), math.Abs(float64(l.Turn))*180/math.Pi, legible(l.Radius, u))
}

// toward is the key of a bend: left or right.
func toward(l spec.Leg) spec.Side {
	if l.Turn < 0 {
		return spec.Left
	}
	return spec.Right
}

// legible is a length in whole feet or tenths of a metre, as a spec would give it.
func legible(l measure.Length, u measure.System) string {
	return measure.By(u, fmt.Sprintf("%.0f ft", float64(l/measure.Foot)), fmt.Sprintf("%.1f m", l.Metres()))
}
