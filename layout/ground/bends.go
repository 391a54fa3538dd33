package ground

import (
	"fmt"
	"math"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
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
	if pairs := t.overlaps(); len(pairs) > 0 {
		report(finding.MustFix, "arches-overlap", fmt.Sprintf(
			"Arches %s cross on the plan: the route bends tighter than the arches are wide. Give the bend a wider radius, or the arches less span.", names(pairs)))
	}
	if crossesItself(t.route.path()) {
		report(finding.MustFix, "route-crosses-itself", "The route's centreline crosses itself: one tunnel cannot pass through another. Turn less, or give the bend a wider radius.")
	}
	if text := t.narrow(); text != "" {
		report(finding.LookAt, "bay-too-narrow-inside", text)
	}
	return found
}

// overlaps returns the pairs of arches whose ground lines meet: "3 with 4".
func (t tunnel) overlaps() []string {
	feet := t.feet()
	var pairs []string
	for i := range feet {
		for j := i + 1; j < len(feet); j++ {
			if meet(feet[i][0], feet[i][1], feet[j][0], feet[j][1]) {
				pairs = append(pairs, fmt.Sprintf("%d with %d", i+1, j+1))
			}
		}
	}
	return pairs
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
		verb(bays, "bay", "bays"), names(bays), u.Inches(least), u.Inches(lim.inner), advice)
}

// roomy returns the least radius, in whole feet or tenths of a metre, at which arches of half span b and the given spacing
// stand at least inner apart on the inside: their chord there is 2(R−b)·sin(spacing/2R).
func roomy(b, spacing, inner measure.Length, u measure.System) measure.Length {
	step := measure.Foot
	if u == measure.Metric {
		step = 100
	}
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
