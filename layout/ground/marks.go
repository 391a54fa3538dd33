package ground

import (
	"fmt"
	"math"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// survey solves the marks' places. A mark fixed by tapes waits for the marks its tapes start from.
type survey struct {
	spec     *spec.Spec
	limits   limits
	index    map[string]int
	state    []state
	solved   []Mark
	findings []finding.Finding
}

// spots keeps marks by the square inch they stand on.
type spots map[[2]int][]Mark

// by returns a mark that stands within an inch of another, and takes the other in.
func (s spots) by(m Mark) (Mark, bool) {
	x, y := int(math.Floor(m.At.X.Inches())), int(math.Floor(m.At.Y.Inches()))
	for dx := -1; dx <= 1; dx++ {
		for dy := -1; dy <= 1; dy++ {
			for _, other := range s[[2]int{x + dx, y + dy}] {
				if distance(other.At, m.At) <= measure.Inch {
					return other, true
				}
			}
		}
	}
	s[[2]int{x, y}] = append(s[[2]int{x, y}], m)
	return Mark{}, false
}

type state int

const (
	untouched state = iota
	asked           // being solved: met again, the tapes go in a circle
	known
	failed
)

// marks returns the marks whose places can be known, in the spec's order, and what is wrong with the others.
func marks(s *spec.Spec) ([]Mark, []finding.Finding) {
	n := len(s.Site.Marks)
	v := survey{spec: s, limits: limitsIn(s.Units), index: map[string]int{}, state: make([]state, n), solved: make([]Mark, n)}
	for i, m := range s.Site.Marks {
		v.index[m.Name] = i
	}
	var list []Mark
	taken := spots{}
	for i := range n {
		if !v.solve(i) {
			continue
		}
		m := v.solved[i]
		if other, ok := taken.by(m); ok {
			v.report(i, finding.LookAt, "marks-coincide", fmt.Sprintf(
				"Marks %s and %s stand on the same spot, so two tapes from them are one: give %s its own place, such as at: [%s, %s], or leave it out.",
				other.Name, m.Name, m.Name, legible(m.At.X+v.limits.reach/10, s.Units), legible(m.At.Y, s.Units)))
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
	v.solved[i].Name = m.Name
	ok := true
	if m.At != nil {
		v.solved[i].At = *m.At
	} else {
		ok = v.byTapes(i, m)
	}
	v.state[i] = failed
	if ok {
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

func (v *survey) byTapes(i int, m spec.Mark) bool {
	var circles []circle
	for _, t := range m.From {
		j, ok := v.index[t.Mark]
		if !ok || !v.solve(j) {
			v.report(i, finding.MustFix, "mark-not-fixed", fmt.Sprintf(
				"Mark %s is taped from %s, whose own place is not known: give %s coordinates, or tapes from other marks.", m.Name, t.Mark, t.Mark))
			return false
		}
		circles = append(circles, circle{centre: v.solved[j].At, radius: t.Distance, from: t.Mark})
	}
	if len(circles) < 2 {
		v.report(i, finding.MustFix, "mark-not-fixed", fmt.Sprintf("Mark %s needs coordinates, or tapes from two other marks.", m.Name))
		return false
	}
	u := v.spec.Units
	crossing := measure.Angle(0)
	for k, a := range circles {
		b := circles[(k+1)%len(circles)]
		p, gap := intersect(a, b, m.Side)
		if gap > v.limits.miss {
			v.report(i, finding.MustFix, "mark-tapes-miss", fmt.Sprintf(
				"Mark %s cannot be %s from %s and %s from %s: those two marks are %s apart, and the tapes miss each other by %s. Measure the three again.",
				m.Name, u.Tape(a.radius), a.from, u.Tape(b.radius), b.from, u.Tape(distance(a.centre, b.centre)), u.Tape(gap)))
			return false
		}
		crossing = max(crossing, crossingAt(p, a.centre, b.centre))
	}
	at, misclosure := fit(circles, m.Side)
	if other, less := fit(circles, 1-m.Side); misclosure-less > v.limits.misclose {
		at, misclosure = other, less
		if v.spec.Given(fmt.Sprintf("site.marks[%d].side", i)) {
			v.report(i, finding.LookAt, "mark-on-other-side", fmt.Sprintf(
				"The tapes put mark %s on the %s of the line from %s to %s, the spec says %s: the tapes are believed. Look which it is.",
				m.Name, 1-m.Side, circles[0].from, circles[1].from, m.Side),
				finding.Change{Key: fmt.Sprintf("site.marks[%d].side", i), Value: (1 - m.Side).String()})
		}
	}
	for k, t := range m.From {
		start := v.solved[v.index[t.Mark]]
		circles[k].err = v.limits.tape + start.drift.along(unit(sub(at, start.At)))
	}
	fixed := Mark{Name: m.Name, At: at, Misclosure: misclosure, drift: drifting(at, circles)}
	fixed.Error = fixed.drift.most()
	v.solved[i] = fixed
	tape, off := u.Tape(v.limits.tape), u.Tape(fixed.Error)
	switch {
	case misclosure > v.limits.misclose:
		v.report(i, finding.LookAt, "mark-misclosure", fmt.Sprintf(
			"The tapes to mark %s disagree by up to %s; careful ones stay within %s. Measure them again.", m.Name, u.Tape(misclosure), u.Tape(v.limits.misclose)))
	case fixed.Error <= v.limits.weak:
	case thrown(v.limits.tape, v.limits.tape, crossing, circles[0].radius) > v.limits.weak:
		v.report(i, finding.LookAt, "mark-weak", fmt.Sprintf(
			"The tapes to mark %s run almost in line: %s on each moves the mark %s. Tape it from a mark further to one side too.", m.Name, tape, off))
	default:
		v.report(i, finding.LookAt, "mark-weak", fmt.Sprintf(
			"Mark %s is taped from marks that are themselves taped: %s on every tape moves it %s. Tape it from one more mark.", m.Name, tape, off))
	}
	return true
}

func (v *survey) report(i int, level finding.Level, code, text string, cure ...finding.Change) {
	key := fmt.Sprintf("site.marks[%d]", i)
	v.findings = append(v.findings, finding.Finding{Level: level, Code: code, Text: text, Key: key, Cure: cure})
}

// intersect returns the crossing of two circles on the given side of the line from a's centre to b's, and zero; or where
// they miss each other, the point midway between them and the gap.
func intersect(a, b circle, side spec.Side) (spec.Point, measure.Length) {
	d := distance(a.centre, b.centre)
	if d == 0 {
		p := add(a.centre, spec.Point{X: (a.radius + b.radius) / 2})
		return p, measure.Length(math.Abs(float64(a.radius - b.radius)))
	}
	line := sub(b.centre, a.centre)
	line.X, line.Y = line.X/d, line.Y/d
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
		worst = max(worst, measure.Length(math.Abs(float64(distance(p, c.centre)-c.radius))))
	}
	return p, worst
}

// improve solves the normal equations of one step; false where the tapes all run in one line and leave a step undetermined.
func improve(circles []circle, p spec.Point) (spec.Point, bool) {
	var xx, xy, yy, x, y measure.Length
	for _, c := range circles {
		d := distance(c.centre, p)
		if d == 0 {
			continue
		}
		u := sub(p, c.centre)
		u.X, u.Y = u.X/d, u.Y/d
		off := d - c.radius
		xx, xy, yy = xx+measure.Length(u.X*u.X), xy+measure.Length(u.X*u.Y), yy+measure.Length(u.Y*u.Y)
		x, y = x+measure.Length(u.X*off), y+measure.Length(u.Y*off)
	}
	det := measure.Length(xx*yy) - measure.Length(xy*xy)
	if det < 1e-9 {
		return spec.Point{}, false
	}
	return spec.Point{
		X: (measure.Length(yy*x) - measure.Length(xy*y)) / det,
		Y: (measure.Length(xx*y) - measure.Length(xy*x)) / det,
	}, true
}
