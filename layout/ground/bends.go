package ground

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// routeFindings says where the route is too tight for the arches, or runs into itself.
func routeFindings(t tunnel) []finding.Finding {
	if t.route.straight() {
		return nil
	}
	var found []finding.Finding
	report := func(level finding.Level, code, text string) {
		found = append(found, finding.Finding{Level: level, Code: code, Text: text, Sheet: "stake", Key: "site.route", Pos: t.spec.Position("site.route")})
	}
	tight, far := t.overlaps()
	if len(tight) > 0 {
		report(finding.MustFix, "arches-overlap", fmt.Sprintf(
			"Arches %s cross on the plan: the route bends tighter than the arches are wide. Give the bend a wider radius, %s.", say.Some(tight, mostNames), t.widerBend()))
	}
	switch crosses := crossesItself(t.route.path()); {
	case crosses:
		report(finding.MustFix, "route-crosses-itself", "The route's centreline crosses itself: one tunnel cannot pass through another. Turn less"+t.lesserTurn()+".")
	case len(far) > 0:
		report(finding.MustFix, "arches-overlap", fmt.Sprintf(
			"Arches %s cross on the plan: the route comes back too close to itself. Turn less%s.", say.Some(far, mostNames), t.lesserTurn()))
	}
	if text := t.narrow(); text != "" {
		report(finding.LookAt, "bay-too-narrow-inside", text)
	}
	return found
}

// overlaps returns the pairs of arches whose ground lines meet, "3 with 4": those that a tight bend turns into each other, and those of parts of the route that come
// back to each other.
func (t tunnel) overlaps() (tight, far []string) {
	feet := t.feet()
	for i := range feet {
		for j := i + 1; j < len(feet); j++ {
			if !meet(feet[i][0], feet[i][1], feet[j][0], feet[j][1]) {
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
		if turn == nil || math.Abs(float64(l.Turn)) > math.Abs(float64(turn.Turn)) {
			turn = l
		}
	}
	return radius, turn
}

// written is a bend as the spec has it.
func written(l spec.Leg, u measure.System) string {
	side := "right"
	if l.Turn < 0 {
		side = "left"
	}
	return fmt.Sprintf("{%s: %.0f deg, radius: %s}", side, math.Abs(float64(l.Turn))*180/math.Pi, legible(l.Radius, u))
}

// legible is a length in whole feet or tenths of a metre, as a spec would give it.
func legible(l measure.Length, u measure.System) string {
	return measure.By(u, fmt.Sprintf("%.0f ft", float64(l/measure.Foot)), fmt.Sprintf("%.1f m", l.Metres()))
}

// widerBend gives the tightest bend with a radius that leaves room on its inside.
func (t tunnel) widerBend() string {
	u, inner := t.spec.Units, limitsIn(t.spec.Units).inner
	bend, _ := t.tightest()
	spacing := t.spec.Tunnel.Spacing
	if bend == nil || spacing <= inner+measure.Millimetre {
		return "or the arches less span"
	}
	wider := *bend
	wider.Radius = roomy(slices.Max(t.spans)/2, spacing, inner, u)
	return "such as " + written(wider, u) + ", or the arches less span"
}

// lesserTurn gives the bend that turns most with the greatest turn, in steps of 15°, at which the tunnel stays clear of itself; nothing where that alone does not help.
func (t tunnel) lesserTurn() string {
	_, most := t.tightest()
	if most == nil {
		return ""
	}
	const step = 15 * measure.Degree
	try := t
	site := t.spec.Site
	site.Route = slices.Clone(site.Route)
	index := slices.IndexFunc(site.Route, func(l spec.Leg) bool { return l == *most })
	sign := measure.Angle(math.Copysign(1, float64(most.Turn)))
	for steps := math.Ceil(math.Min(math.Abs(float64(most.Turn)), 2*math.Pi)/float64(step)) - 1; steps >= 1; steps-- {
		site.Route[index].Turn = sign * step * measure.Angle(steps)
		site.Route = append(site.Route[:len(t.spec.Site.Route):len(t.spec.Site.Route)], spec.Leg{Rest: true})
		try.route = newRoute(&site, t.route.length)
		try.stations = nil
		for _, s := range t.stations {
			try.stations = append(try.stations, try.route.at(s.Along))
		}
		if _, far := try.overlaps(); len(far) == 0 && !crossesItself(try.route.path()) {
			return ", such as " + written(site.Route[index], t.spec.Units)
		}
	}
	return ""
}

// feet returns each arch's left and right ground point.
func (t tunnel) feet() [][2]spec.Point {
	list := make([][2]spec.Point, len(t.stations))
	for i, s := range t.stations {
		right := rightOf(s.Heading)
		list[i] = [2]spec.Point{along(s.At, right, -t.spans[i]/2), along(s.At, right, t.spans[i]/2)}
	}
	return list
}

// narrow says in which bays a bend brings the stakes on its inside closer together than people need to step out between
// them, and the radius that would do. Bays that are as close on a straight are the spacing's affair.
func (t tunnel) narrow() string {
	lim, u, spacing := limitsIn(t.spec.Units), t.spec.Units, t.spec.Tunnel.Spacing
	feet := t.feet()
	least := lim.inner
	var widest measure.Length
	var bays []string
	for i := 1; i < len(feet); i++ {
		left, right := distance(feet[i-1][0], feet[i][0]), distance(feet[i-1][1], feet[i][1])
		if inner := min(left, right); inner < min(lim.inner, spacing)-slack && t.stations[i].Heading != t.stations[i-1].Heading {
			bays = append(bays, fmt.Sprint(i))
			least, widest = min(least, inner), max(widest, t.spans[i-1], t.spans[i])
		}
	}
	if len(bays) == 0 {
		return ""
	}
	advice := "Space the arches further apart."
	if spacing > lim.inner+measure.Millimetre { // closer to it no bend would do for all practical purposes
		advice = fmt.Sprintf("A bend of %s radius would do.", u.Room(roomy(widest/2, spacing, lim.inner, u)))
	}
	return fmt.Sprintf("In %s %s the stakes on the inside of the bend are as close as %s; %s lets people and hands between them. %s",
		say.Agree(len(bays), "bay", "bays"), say.Some(bays, mostNames), u.Inches(least), u.Inches(lim.inner), advice)
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
			if meet(path[i-1], path[i], path[j-1], path[j]) {
				return true
			}
		}
	}
	return false
}
