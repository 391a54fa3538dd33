package packet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// lightYards are tunnels that try the lights' leaf: one arch with two wraps on its legs, a long one, a guy on every arch, rows with ways out, no marks, no ridge.
var lightYards = map[string]string{
	"one arch": `hoopwright: 1
title: One Arch
units: imperial
tunnel: {arches: 1, opening: {width: 4 ft, height: 6 ft 8 in}}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: all, from: 6 ft, out: 5 ft}
site: {outlets: [{name: x, at: [5 ft, 5 ft], circuit: a}]}
lights: {wraps: [{where: arches, string: mini led 100 multi}, {where: legs, string: mini led 50 red, plug: crown}]}
power: {circuits: {a: {volts: 120 V, breaker: 15 A}}}
`,
	"metric": `hoopwright: 1
title: Metric bend
units: metric
paper: a4
tunnel: {arches: 18, spacing: 1.3 m, opening: {width: 1.2 m, height: 2 m}}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.2 m}
guys: {arches: all, from: 2 m, out: 1.5 m}
site: {route: [{straight: 6 m}, {right: 40 deg, radius: 9 m}, {straight: rest}], levels: [{arch: 1, left: 0 m, right: 0 m}, {arch: last, left: 300 mm, right: 250 mm}], outlets: [{name: x, at: [1 m, 1 m], circuit: a}]}
lights:
  wraps: [{where: legs, string: led 100 warm 230 V, plug: crown, count: 2}, {where: ridge, string: led 50 cool 230 V, count: 1}]
  drops: [{where: ridge, string: my drop, hang: 200 mm}]
  strings: {my drop: {length: 2 m, bulbs: 60, watts: 3 W, volts: 230 V, colour: cool white}}
power: {circuits: {a: {volts: 230 V, breaker: 16 A}}}
`,
	"rows": `hoopwright: 1
title: Rows
units: imperial
tunnel: {arches: 12, spacing: 4 ft, opening: {width: 4 ft, height: 6 ft 8 in}}
arch: {pipe: pvc sch40 3/4 in, sticks: [10 ft, 10 ft], span: 7 ft 4 in}
site: {outlets: [{name: x, at: [5 ft, 5 ft], circuit: a}]}
lights:
  rows: {first: 12 in, step: 12 in, up to: 6 ft, strings: [mini led 100 red, mini led 100 blue], gaps: [{wall: left, bays: [3, 7]}, {wall: right, bays: [1, 11]}]}
  wraps: [{where: legs, string: mini led 100 warm}]
power: {circuits: {a: {volts: 120 V, breaker: 15 A}}}
`,
	"rows joined": `hoopwright: 1
title: Rows joined up a leg
units: imperial
tunnel: {arches: 3, spacing: 5 ft, opening: {width: 4 ft, height: 6 ft 8 in}}
arch: {pipe: pvc sch40 3/4 in, sticks: [10 ft, 10 ft], span: 7 ft 4 in}
site: {outlets: [{name: x, at: [5 ft, 24 ft], circuit: a}]}
lights: {rows: {first: 15 in, step: 15 in, up to: 5 ft, strings: [mini led 100 red, mini led 100 blue]}}
power: {circuits: {a: {volts: 120 V, breaker: 15 A}}}
`,
	"long": `hoopwright: 1
title: Two hundred and forty
units: imperial
tunnel: {arches: 240, spacing: 4 ft, opening: {width: 4 ft, height: 6 ft 8 in}}
arch: {pipe: pvc sch40 3/4 in, sticks: [10 ft, 10 ft], span: 7 ft 4 in}
guys: {arches: all, from: 7 ft, out: 1 ft}
lights: {wraps: [{where: legs, string: mini led 100 blue, count: 1}, {where: ridge, string: mini led 50 red, count: 1}]}
`,
}

// lightPlans are those and the examples, solved.
func lightPlans(t *testing.T) map[string]*layout.Plan {
	plans := map[string]*layout.Plan{}
	for name, source := range specs(t) {
		plans[name] = planOf(t, source)
	}
	for name, source := range lightYards {
		plans[name] = planOf(t, []byte(source))
	}
	return plans
}

// stringName is a string's number on paper.
var stringName = regexp.MustCompile(`^(S\d+)$`)

// The leaf keeps to its sides: two, two more where rows hang, one a stretch beyond 45 strings, made even. Nothing lies on text, words keep to 340 a side; every string
// has its number and one box to tick beside those of the steps.
func TestLightsLeaf(t *testing.T) {
	t.Parallel()
	for name, plan := range lightPlans(t) {
		sides := leafSides(t, plan, "lights")
		most := 2 + max(0, (len(plan.Strings)-1)/45)
		if len(plan.Lights.Rows) > 0 {
			most += 2
		}
		most += most % 2
		words, steps, boxes := 0, 0, 0
		named := map[string]bool{}
		for _, s := range sides {
			words += wordsOn(s.page)
			for _, fault := range lint(s.page) {
				t.Errorf("%s, %s: %s", name, s.title, fault)
			}
			for _, b := range s.blocks {
				if strings.HasPrefix(b.Name, "step ") || strings.HasPrefix(b.Name, "row step ") {
					steps++
				}
			}
			for _, op := range s.page.Ops {
				switch op := op.(type) {
				case paper.Text:
					if m := stringName.FindStringSubmatch(op.String); m != nil {
						named[m[1]] = true
					}
				case paper.Stroke:
					if len(op.Path) == 5 && op.Pen.Width == paper.Thick.Width && math.Abs(math.Abs(float64(op.Path[1].To.X-op.Path[0].To.X))-float64(paper.TickBoxSide)) < 1e-6 {
						boxes++
					}
				}
			}
		}
		if len(sides) > most {
			t.Errorf("%s: %d sides for %d strings, over %d", name, len(sides), len(plan.Strings), most)
		}
		if words > 340*len(sides) {
			t.Errorf("%s: %d words on %d sides", name, words, len(sides))
		}
		for _, s := range plan.Strings {
			if !named[s.Name] {
				t.Errorf("%s: %s is not on the picture", name, s.Name)
			}
		}
		if boxes != len(plan.Strings)+steps {
			t.Errorf("%s: %d boxes for %d strings and %d steps", name, boxes, len(plan.Strings), steps)
		}
	}
}

// Every wrap is on one line of one chart, and what its line says is within what a wrapper can tell of what the plan says of it.
func TestWrapCharts(t *testing.T) {
	for name, plan := range lightPlans(t) {
		l := binderOf(t, plan).lighting()
		wraps := 0
		for _, c := range l.wrapCharts() {
			for _, line := range c.lines {
				wraps += len(line.on)
				for _, w := range plan.Wraps {
					if w.On != line.on[len(line.on)-1] || w.Label.Name != line.wrap.Label.Name {
						continue
					}
					// Wound with the line's ten turns all along, a string of this wrap ends so far from its end: a hand is 4 in.
					if off := math.Abs(float64(w.Pitch-line.wrap.Pitch)) * w.Turns; off > 4*25.4 {
						t.Errorf("%s, %v: wound as %v its string ends %.0f mm off", name, w.On, line.on[0], off)
					}
				}
			}
		}
		if wraps != len(plan.Wraps) {
			t.Errorf("%s: %d wraps on lines, %d in the plan", name, wraps, len(plan.Wraps))
		}
	}
}

// The leaf prints the plan's figures: ten turns and turns of every line, bulbs at flags, marks of rows, what is left over of what is wound; raise what of the rest.
func TestLightsLeafPrintsThePlan(t *testing.T) {
	for name, plan := range lightPlans(t) {
		printed := func(leaf string) string {
			var words []string
			for _, s := range leafSides(t, plan, leaf) {
				words = append(words, wordsOf(s.page)...)
			}
			return strings.Join(strings.Fields(strings.Join(words, " ")), " ")
		}
		text, hung := printed("lights"), printed("raise")
		var want []string
		u := plan.Spec.Units
		if len(plan.Wraps) > 0 {
			w := plan.Wraps[0]
			turns, ten := w.Counted(u)
			want = append(want, "10 turns = "+u.Inches(ten), halves(turns)+" turns")
			for _, f := range w.Flags {
				want = append(want, fmt.Sprint(f.Bulb))
			}
			for _, band := range w.Bare {
				want = append(want, draw.BandWords(band, u))
			}
		}
		for _, r := range plan.Lights.Rows {
			want = append(want, u.BareInches(r.Tape))
		}
		for _, s := range plan.Strings {
			left := s.LeftOver
			for _, c := range plan.Chains { // what climbs to the next prongs of its run is not left over
				if i := slices.Index(c.Strings, s.Name); i >= 0 && i+1 < len(c.Strings) {
					next := plan.Strings[slices.IndexFunc(plan.Strings, func(o lights.String) bool { return o.Name == c.Strings[i+1] })].From
					way := math.Sqrt(math.Pow(float64(next.X-s.To.X), 2) + math.Pow(float64(next.Y-s.To.Y), 2) + math.Pow(float64(next.Z-s.To.Z), 2))
					if rows := plan.Spec.Lights.Rows; rows != nil && s.Run.IsRow() && next.Row.Row > 0 && s.To.At.Spot == lights.AtArch && next.At.Spot == lights.AtArch && s.To.Arch == next.Arch { // by the marks on their leg
						way = math.Abs(float64(next.Row.Row-s.To.Row.Row)) * float64(rows.Step)
					}
					if left -= measure.Length(way); s.Run.IsRow() && next.Row.Row > 0 && left < -25.4 {
						t.Errorf("%s: %s is %.0f mm short of the next", name, s.Name, -left)
					}
				}
			}
			if long := u.Room(left); left > 25.4 && s.Run.Wound() {
				want = append(want, long)
			} else if left > 25.4 && !strings.Contains(hung, long) {
				t.Errorf("%s: %q is not on raise", name, long)
			}
		}
		if rows := plan.Spec.Lights.Rows; rows != nil && len(rows.Gaps) > 0 {
			want = append(want, "leave open")
		}
		for _, figure := range want {
			if !strings.Contains(text, strings.Join(strings.Fields(figure), " ")) {
				t.Errorf("%s: %q is not on the leaf", name, figure)
			}
		}
	}
}

// Parts are listed by their nouns, numbers that follow each other as a range.
func TestOnParts(t *testing.T) {
	arch := func(n int) lights.Part { return lights.Part{Kind: lights.Arch, Number: n} }
	ridge := func(n int) lights.Part { return lights.Part{Kind: lights.Ridge, Number: n} }
	left, right := func(n int) lights.Part { return lights.Leg(spec.Left, n) }, func(n int) lights.Part { return lights.Leg(spec.Right, n) }
	for want, parts := range map[string][]lights.Part{
		"arch 1, 8":              {arch(1), arch(8)},
		"leg L3; ridge 1 to 4":   {left(3), ridge(1), ridge(2), ridge(3), ridge(4)},
		"leg L1 to L3, R1 to R3": {left(1), right(1), left(2), right(2), left(3), right(3)},
		"leg L1, R1":             {left(1), right(1)},
	} {
		if got := onParts(parts); got != want {
			t.Errorf("%v: %q, want %q", parts, got, want)
		}
	}
}
