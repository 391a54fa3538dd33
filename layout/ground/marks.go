package ground

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// survey solves the marks' places. A mark fixed by tapes waits for the marks its tapes start from.
type survey struct {
	spec     *spec.Spec
	limits   practice.Ground
	stakes   map[string]spec.Point // of arch 1, once it stands
	index    map[string]int
	state    []state
	solved   []Mark
	findings []finding.Finding
}

func newSurvey(s *spec.Spec, stakes map[string]spec.Point) *survey {
	n := len(s.Site.Marks)
	v := &survey{spec: s, limits: practice.OnGround(s.Units), stakes: stakes, index: map[string]int{}, state: make([]state, n), solved: make([]Mark, n)}
	for i, m := range s.Site.Marks {
		v.index[m.Name] = i
	}
	return v
}

type state int

const (
	untouched state = iota
	asked           // being solved: met again, the tapes go in a circle
	known
	failed
)

// marks returns the marks whose places can be known, in the spec's order, and what is wrong with the others. The stakes are those of arch 1 by their names in the spec.
func marks(s *spec.Spec, stakes map[string]spec.Point) ([]Mark, []finding.Finding) {
	v := newSurvey(s, stakes)
	var list, apart []Mark
	for i := range v.solved {
		if !v.solve(i) {
			continue
		}
		m := v.solved[i]
		if k := slices.IndexFunc(apart, func(o Mark) bool { return Distance(o.At, m.At) <= measure.Inch }); k < 0 {
			apart = append(apart, m)
		} else {
			v.report(markKey(i), finding.LookAt, "marks-coincide", fmt.Sprintf(
				"Marks %s and %s stand on the same spot, so two tapes from them are one: give %s its own place, such as at: [%s, %s], or leave it out.",
				apart[k].Name, m.Name, m.Name, legible(m.At.X+v.limits.Reach/10, s.Units), legible(m.At.Y, s.Units)))
		}
		list = append(list, m)
	}
	return list, v.findings
}

func (v *survey) solve(i int) bool {
	if v.state[i] != untouched {
		return v.state[i] == known
	}
	m := v.spec.Site.Marks[i]
	v.state[i] = asked
	ok := true
	if m.At != nil {
		v.solved[i].At = *m.At
	} else {
		v.solved[i], ok = v.byTapes("mark "+m.Name, markKey(i), m.From, m.Side)
	}
	v.solved[i].Name = m.Name
	if v.state[i] = failed; ok {
		v.state[i] = known
	}
	return ok
}

// circle is where the end of a tape can be.
type circle struct {
	centre spec.Point
	radius measure.Length
	from   string
	err    measure.Length // of the tape, and of the mark it starts from in the tape's direction
}

// from returns where a tape starts: a mark with its drift, or a stake of arch 1.
func (v *survey) from(name string) (Mark, bool) {
	if at, ok := v.stakes[name]; ok {
		return Mark{Name: name, At: at}, true
	}
	i, ok := v.index[name]
	if !ok || !v.solve(i) {
		return Mark{}, false
	}
	return v.solved[i], true
}

// byTapes fixes something by its tapes. What names it in a sentence; the key is where it stands in the spec.
func (v *survey) byTapes(what, key string, from []spec.Tape, side spec.Side) (Mark, bool) {
	u := v.spec.Units
	var circles []circle
	var starts []Mark
	for _, t := range from {
		start, ok := v.from(t.Mark)
		if !ok {
			v.report(key, finding.MustFix, "mark-not-fixed", fmt.Sprintf(
				"%s is taped from %s, whose own place is not known: give %s coordinates, or tapes from other marks.", say.Capital(what), t.Mark, t.Mark))
			return Mark{}, false
		}
		circles, starts = append(circles, circle{centre: start.At, radius: t.Distance, from: t.Mark}), append(starts, start)
	}
	if len(circles) < 2 {
		v.report(key, finding.MustFix, "mark-not-fixed", fmt.Sprintf("%s needs coordinates, or tapes from two marks.", say.Capital(what)))
		return Mark{}, false
	}
	crossing := measure.Angle(0)
	for k, a := range circles {
		b := circles[(k+1)%len(circles)]
		p, gap := intersect(a, b, side)
		if gap > v.limits.Miss {
			v.report(key, finding.MustFix, "mark-tapes-miss", fmt.Sprintf(
				"%s cannot be %s from %s and %s from %s: those two are %s apart, and the tapes miss each other by %s. Measure the three again.",
				say.Capital(what), u.Tape(a.radius), a.from, u.Tape(b.radius), b.from, u.Tape(Distance(a.centre, b.centre)), u.Tape(gap)))
			return Mark{}, false
		}
		crossing = max(crossing, crossingAt(p, a.centre, b.centre))
	}
	at, misclosure := fit(circles, side)
	if other, less := fit(circles, 1-side); misclosure-less > v.limits.Misclose {
		at, misclosure = other, less
		if v.spec.Given(key + ".side") {
			v.report(key, finding.LookAt, "mark-on-other-side", fmt.Sprintf(
				"The tapes put %s on the %s of the line from %s to %s, the spec says %s: the tapes are believed. Look which it is.",
				what, 1-side, circles[0].from, circles[1].from, side),
				finding.Change{Key: key + ".side", Value: side.Other().String()})
		}
	}
	for k := range circles {
		circles[k].err = v.limits.Tape + starts[k].drift.along(unit(sub(at, starts[k].At)))
	}
	fixed := Mark{At: at, Misclosure: misclosure, drift: drifting(at, circles)}
	fixed.Error = fixed.drift.most()
	v.weigh(what, key, fixed, crossing, circles[0].radius)
	return fixed, true
}

// weigh says whether tapes fix something well.
func (v *survey) weigh(what, key string, fixed Mark, crossing measure.Angle, reach measure.Length) {
	u := v.spec.Units
	tape, off := u.Tape(v.limits.Tape), u.Tape(fixed.Error)
	switch {
	case fixed.Misclosure > v.limits.Misclose:
		v.report(key, finding.LookAt, "mark-misclosure", fmt.Sprintf(
			"The tapes to %s disagree by up to %s; careful ones stay within %s. Measure them again.", what, u.Tape(fixed.Misclosure), u.Tape(v.limits.Misclose)))
	case fixed.Error <= v.limits.Weak:
	case thrown(v.limits.Tape, v.limits.Tape, crossing, reach) > v.limits.Weak:
		v.report(key, finding.LookAt, "mark-weak", fmt.Sprintf(
			"The tapes to %s run almost in line: %s on each moves it %s. Tape it from a mark further to one side too.", what, tape, off))
	default:
		v.report(key, finding.LookAt, "mark-weak", fmt.Sprintf(
			"%s is taped from marks that are themselves taped: %s on every tape moves it %s. Tape it from one more mark.", say.Capital(what), tape, off))
	}
}

func markKey(i int) string { return fmt.Sprintf("site.marks[%d]", i) }

func (v *survey) report(key string, level finding.Level, code, text string, cure ...finding.Change) {
	v.findings = append(v.findings, finding.Finding{Level: level, Code: code, Text: text, Key: key, Cure: cure})
}

// intersect returns the crossing of two circles on the given side of the line from a's centre to b's, and zero; or where
// they miss each other, the point midway between them and the gap.
func intersect(a, b circle, side spec.Side) (spec.Point, measure.Length) {
	d := Distance(a.centre, b.centre)
	if d == 0 {
		p := add(a.centre, spec.Point{X: (a.radius + b.radius) / 2})
		return p, measure.Abs(a.radius - b.radius)
	}
	line := unit(sub(b.centre, a.centre))
	square := a.radius * a.radius
	x := (measure.Length(d*d) + square - measure.Length(b.radius*b.radius)) / (2 * d)
	gap := measure.Length(0)
	switch {
	case d > a.radius+b.radius: // beside each other
		gap = d - a.radius - b.radius
		x = a.radius + gap/2
	case a.radius > d+b.radius: // b within a
		gap = a.radius - d - b.radius
		x = a.radius - gap/2
	case b.radius > d+a.radius: // a within b
		gap = b.radius - d - a.radius
		x = -a.radius - gap/2
	}
	foot := along(a.centre, line, x)
	if gap > 0 {
		return foot, gap
	}
	height := measure.Length(math.Sqrt(max(float64(square-measure.Length(x*x)), 0)))
	if side == spec.Right {
		height = -height
	}
	return along(foot, spec.Point{X: -line.Y, Y: line.X}, height), 0
}

// fit returns the place that suits all the tapes best by least squares, sought by Gauss and Newton's steps from where the
// first two cross on the given side, and the worst tape's disagreement with it.
func fit(circles []circle, side spec.Side) (spec.Point, measure.Length) {
	p, _ := intersect(circles[0], circles[1], side)
	if len(circles) > 2 {
		for range 50 {
			step, ok := improve(circles, p)
			if !ok {
				break
			}
			p = sub(p, step)
			if dot(step, step) < 1e-18 {
				break
			}
		}
	}
	worst := measure.Length(0)
	for _, c := range circles {
		worst = max(worst, measure.Abs(Distance(p, c.centre)-c.radius))
	}
	return p, worst
}

// improve solves the normal equations of one step; false where the tapes all run in one line and leave a step undetermined.
func improve(circles []circle, p spec.Point) (spec.Point, bool) {
	n := normalOf(p, circles)
	det := n.det()
	if det < 1e-9 {
		return spec.Point{}, false
	}
	var sum spec.Point // of the tapes' disagreements, each along its tape
	for _, c := range circles {
		sum = along(sum, unit(sub(p, c.centre)), Distance(c.centre, p)-c.radius)
	}
	return spec.Point{
		X: (measure.Length(n.yy*sum.X) - measure.Length(n.xy*sum.Y)) / det,
		Y: (measure.Length(n.xx*sum.Y) - measure.Length(n.xy*sum.X)) / det,
	}, true
}
