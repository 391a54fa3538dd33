package ground

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Locate returns a spec whose start, outlets and places have their coordinates, where the given one has tapes for them or distances from the start; where it has none, the spec itself. The span is that of arch 1,
// whose stakes tapes may start from. What cannot be placed stays at the origin, and a finding says so. Plane trigonometry, as for the marks.
func Locate(s *spec.Spec, span measure.Length) (*spec.Spec, []finding.Finding) {
	if !s.Site.Taped() {
		return s, nil
	}
	n := *s
	n.Site.Outlets, n.Site.Places = slices.Clone(s.Site.Outlets), slices.Clone(s.Site.Places)
	site := &n.Site
	l := locator{survey: newSurvey(&n, nil)}
	l.place("the start", "site.start", site.StartFix, &site.Start)
	if aim := site.Toward; aim != nil {
		at := aim.At
		l.place("what the walk heads for", "site.start.toward", aim.Fix, &at)
		if off := sub(at, site.Start); Distance(off, spec.Point{}) > 0 {
			site.Heading = measure.Angle(math.Atan2(float64(off.X), float64(off.Y)))
		}
	}
	right, first := rightOf(site.Heading), s.ArchOf(1)
	span = firstPositive(span, first.Span, s.Tunnel.OpeningWidth, measure.Metre)
	l.survey = newSurvey(&n, map[string]spec.Point{spec.StakeL1: along(site.Start, right, -span/2), spec.StakeR1: along(site.Start, right, span/2)})
	for i := range site.Outlets {
		o := &site.Outlets[i]
		l.place("outlet "+o.Name, fmt.Sprintf("site.outlets[%d]", i), o.Fix, &o.At)
	}
	for i := range site.Places {
		p := &site.Places[i]
		l.place("place "+p.Name, fmt.Sprintf("site.places[%d]", i), p.Fix, &p.At)
	}
	return &n, l.findings
}

// locator places what is no mark. What is wrong with the marks themselves is told with the marks.
type locator struct {
	survey   *survey
	findings []finding.Finding
}

func (l *locator) place(what, key string, fix spec.Fix, at *spec.Point) {
	if fix.Start != nil {
		site := &l.survey.spec.Site
		*at = along(along(site.Start, rightOf(site.Heading), fix.Start.Right), ahead(site.Heading), fix.Start.Ahead)
	}
	if len(fix.From) == 0 {
		return
	}
	if fixed, ok := l.survey.byTapes(what, key, fix.From, fix.Side); ok {
		*at = fixed.At
	}
	for _, f := range l.survey.findings {
		if f.Key == key {
			l.findings = append(l.findings, f)
		}
	}
}
