package ground

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// routeFindings says where the route is too tight for the arches, or runs into itself.
func routeFindings(t tunnel) []finding.Finding {
	if t.route.straight() {
		return nil
	}
	var found []finding.Finding
	report := func(level finding.Level, code string, cure []spec.Leg, text string) {
		f := finding.Finding{Level: level, Code: code, Text: text, Key: "site.route"}
		if cure != nil && t.with(cure).clear() {
			f.Cure = []finding.Change{{Key: "site.route", Value: writtenRoute(cure, t.spec.Units)}}
		}
		found = append(found, f)
	}
	tight, far := t.overlaps()
	if len(tight) > 0 {
		wide, wider := t.widerBend()
		report(finding.MustFix, "arches-overlap", wide, fmt.Sprintf(
			"Arches %s cross on the plan: the route bends tighter than the arches are wide. Give the bend a wider radius, %s.", say.Some(tight, mostNames), wider))
	}
	switch crosses := crossesItself(t.route.path()); {
	case crosses:
		less, lesser := t.lesserTurn()
		report(finding.MustFix, "route-crosses-itself", less, "The route's centreline crosses itself: one tunnel cannot pass through another. Turn less"+lesser+".")
	case len(far) > 0:
		less, lesser := t.lesserTurn()
		report(finding.MustFix, "arches-overlap", less, fmt.Sprintf(
			"Arches %s cross on the plan: the route comes back too close to itself. Turn less%s.", say.Some(far, mostNames), lesser))
	}
	if n, ok := t.narrow(); ok {
		report(finding.LookAt, "bay-too-narrow-inside", n.cure, n.says(t.spec.Units))
	}
	return found
}

// overlaps returns the pairs of arches whose ground lines meet, "3 with 4": those that a tight bend turns into each other, and those of parts of the route that come
// back to each other.
func (t tunnel) overlaps() (tight, far []string) {
	feet := t.feet()
	for i := range feet {
		for j := i + 1; j < len(feet); j++ {
			if !Meet(feet[i][0], feet[i][1], feet[j][0], feet[j][1]) {
				continue
			}
			pair := fmt.Sprintf("%d with %d", i+1, j+1)
			if t.stations[j].Along-t.stations[i].Along <= t.spans[i]+t.spans[j] {
				tight = append(tight, pair)
			} else {
				far = append(far, pair)
			}
		}
	}
	return tight, far
}

// tightest returns the bend of the smallest radius, and the one of the greatest turn.
func (t tunnel) tightest() (radius, turn *spec.Leg) {
	for i := range t.spec.Site.Route {
		l := &t.spec.Site.Route[i]
		if l.Rest || l.Straight != 0 || l.Turn == 0 {
			continue
		}
		if radius == nil || l.Radius < radius.Radius {
			radius = l
		}
		if turn == nil || measure.Abs(l.Turn) > measure.Abs(turn.Turn) {
			turn = l
		}
	}
	return radius, turn
}

// widerBend returns the route with every bend as wide as leaves room on its inside, and the tightest of them in words.
func (t tunnel) widerBend() (route []spec.Leg, words string) {
	u, inner := t.spec.Units, practice.OnGround(t.spec.Units).Inner
	bend, _ := t.tightest()
	spacing := t.spec.Tunnel.Spacing
	if bend == nil || spacing <= inner+measure.Millimetre {
		return nil, "or the arches less span"
	}
	wider := *bend
	wider.Radius = roomy(slices.Max(t.spans)/2, spacing, inner, u)
	return t.widened(wider.Radius), "such as " + written(wider, u) + ", or the arches less span"
}

// lesserTurn returns the route with the bend that turns most turning as much less, in steps of 15°, as keeps the tunnel clear of itself, and that bend in words; nothing
// where that alone does not help.
func (t tunnel) lesserTurn() (route []spec.Leg, words string) {
	_, most := t.tightest()
	if most == nil {
		return nil, ""
	}
	const step = 15 * measure.Degree
	index := slices.IndexFunc(t.spec.Site.Route, func(l spec.Leg) bool { return l == *most })
	sign := measure.Angle(math.Copysign(1, float64(most.Turn)))
	for steps := math.Ceil(min(math.Abs(float64(most.Turn)), 2*math.Pi)/float64(step)) - 1; steps >= 1; steps-- {
		route = toTheEnd(t.spec.Site.Route)
		route[index].Turn = sign * step * measure.Angle(steps)
		try := t.with(route)
		if _, far := try.overlaps(); len(far) == 0 && !crossesItself(try.route.path()) {
			return route, ", such as " + written(route[index], t.spec.Units)
		}
	}
	return nil, ""
}

// feet returns each arch's left and right ground point.
func (t tunnel) feet() [][2]spec.Point {
	list := make([][2]spec.Point, len(t.stations))
	for i, span := range t.spans {
		list[i] = [2]spec.Point{t.across(i, -span/2), t.across(i, span/2)}
	}
	return list
}

// pinched is the bays in which a bend brings the stakes on its inside closer together than people need to step out between them.
type pinched struct {
	bays   []string
	least  measure.Length // between two stakes
	radius measure.Length // that would do; zero where only wider spacing does
	cure   []spec.Leg     // the route with its bends so wide
}

func (n pinched) says(u measure.System) string {
	advice := "Space the arches further apart."
	if n.radius > 0 {
		advice = fmt.Sprintf("A bend of %s radius would do.", u.Room(n.radius))
	}
	return fmt.Sprintf("In %s %s the stakes on the inside of the bend are as close as %s; %s lets people and hands between them. %s",
		say.Agree(len(n.bays), "bay", "bays"), say.Some(n.bays, mostNames), u.Inches(n.least), u.Inches(practice.OnGround(u).Inner), advice)
}

// narrow returns the pinched bays. Bays that are as close on a straight are the spacing's affair.
func (t tunnel) narrow() (n pinched, any bool) {
	lim, spacing := practice.OnGround(t.spec.Units), t.spec.Tunnel.Spacing
	feet := t.feet()
	n.least = lim.Inner
	var widest measure.Length
	for i := 1; i < len(feet); i++ {
		left, right := Distance(feet[i-1][0], feet[i][0]), Distance(feet[i-1][1], feet[i][1])
		if inner := min(left, right); inner < min(lim.Inner, spacing)-slack && t.stations[i].Heading != t.stations[i-1].Heading {
			n.bays = append(n.bays, fmt.Sprint(i))
			n.least, widest = min(n.least, inner), max(widest, t.spans[i-1], t.spans[i])
		}
	}
	if len(n.bays) > 0 && spacing > lim.Inner+measure.Millimetre { // closer to it no bend would do for all practical purposes
		n.radius = roomy(widest/2, spacing, lim.Inner, t.spec.Units)
		n.cure = t.widened(n.radius)
	}
	return n, len(n.bays) > 0
}

// roomy returns the least radius, in whole feet or tenths of a metre, at which arches of half span b and the given spacing
// stand at least inner apart on the inside: their chord there is 2(R−b)·sin(spacing/2R).
func roomy(b, spacing, inner measure.Length, u measure.System) measure.Length {
	step := measure.By(u, measure.Foot, 100)
	start := b * spacing / (spacing - inner) // of the arc, which is hardly longer than its chord
	r := step * measure.Length(math.Ceil(float64(start/step)))
	for 2*(r-b)*measure.Length(math.Sin(float64(spacing/(2*r)))) < inner {
		r += step
	}
	return r
}

func crossesItself(path []spec.Point) bool {
	for i := 1; i < len(path); i++ {
		for j := i + 2; j < len(path); j++ {
			if Meet(path[i-1], path[i], path[j-1], path[j]) {
				return true
			}
		}
	}
	return false
}

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
