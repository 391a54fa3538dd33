package ground

import (
	"strings"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

func tapes(name string, side spec.Side, from ...spec.Tape) spec.Mark {
	return spec.Mark{Name: name, From: from, Side: side}
}

// marksOf surveys a site where nothing is taped from a stake.
func marksOf(s *spec.Spec) ([]Mark, []finding.Finding) { return marks(s, nil) }

func site(list ...spec.Mark) *spec.Spec {
	s := row(2)
	s.Site.Marks = list
	return s
}

// Triangles with whole-number sides: 13-14-15 has the height 12 over 14, 5 from the side of 13 (Heron's own example,
// Metrica I.8, from memory).
func TestMarkByTwoTapes(t *testing.T) {
	for side, y := range map[spec.Side]measure.Length{spec.Left: 12 * ft, spec.Right: -12 * ft} {
		list, findings := marksOf(site(
			tapes("ash", side, spec.Tape{Mark: "shed", Distance: 13 * ft}, spec.Tape{Mark: "post", Distance: 15 * ft}), // before its marks: order is free
			mark("shed", 0, 0), mark("post", 14*ft, 0)))
		if len(findings) != 0 || len(list) != 3 || list[0].Name != "ash" {
			t.Fatalf("%v %v", list, findings)
		}
		near(t, "x", list[0].At.X, 5*ft, 1e-9)
		near(t, "y", list[0].At.Y, y, 1e-9)
		near(t, "misclosure", list[0].Misclosure, 0, 1e-9)
	}
}

func TestMarkByManyExactTapesClosesWithoutError(t *testing.T) {
	base := []spec.Mark{mark("a", 0, 0), mark("b", 40*ft, 3*ft), mark("c", 22*ft, 35*ft), mark("d", -9*ft, 20*ft)}
	at := spec.Point{X: 13 * ft, Y: -17 * ft}
	var from []spec.Tape
	for _, m := range base {
		from = append(from, spec.Tape{Mark: m.Name, Distance: Distance(*m.At, at)})
	}
	for _, side := range []spec.Side{spec.Right, spec.Left} { // with more than two tapes the tapes themselves tell the side
		list, findings := marksOf(site(append([]spec.Mark{tapes("x", side, from...)}, base...)...))
		if len(findings) != 0 {
			t.Fatal(findings)
		}
		near(t, "x", list[0].At.X, at.X, 1e-6)
		near(t, "y", list[0].At.Y, at.Y, 1e-6)
		near(t, "misclosure", list[0].Misclosure, 0, 1e-6)
	}
}

// At the least-squares place the residuals balance: Σ rᵢ·uᵢ = 0 (the normal equations), and any step away is worse.
func TestLeastSquares(t *testing.T) {
	circles := []circle{{radius: 25*ft + 3*in}, {centre: spec.Point{X: 40 * ft}, radius: 25*ft - 2*in}, {centre: spec.Point{X: 20 * ft, Y: 40 * ft}, radius: 25*ft + in}}
	p, worst := fit(circles, spec.Left)
	sum := func(p spec.Point) (sum measure.Length) {
		for _, c := range circles {
			r := Distance(p, c.centre) - c.radius
			sum += r * r
		}
		return sum
	}
	for _, step := range []spec.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		if sum(add(p, step)) <= sum(p) {
			t.Errorf("a step of %v is no worse", step)
		}
	}
	farthest := measure.Length(0)
	for _, c := range circles {
		farthest = max(farthest, Distance(p, c.centre)-c.radius, c.radius-Distance(p, c.centre))
	}
	near(t, "misclosure", worst, farthest, 1e-9)
	if worst > 3*in {
		t.Errorf("misclosure %v is more than the errors put in", worst)
	}
}

func TestTapesThatCannotBeAreRefused(t *testing.T) {
	cases := map[string]*spec.Spec{
		"too short": site(mark("shed", 0, 0), mark("post", 34*ft, 0), tapes("ash", spec.Left, spec.Tape{Mark: "shed", Distance: 10 * ft}, spec.Tape{Mark: "post", Distance: 20 * ft})),
		"too long":  site(mark("shed", 0, 0), mark("post", 10*ft, 0), tapes("ash", spec.Left, spec.Tape{Mark: "shed", Distance: 50 * ft}, spec.Tape{Mark: "post", Distance: 20 * ft})),
		"same spot": site(mark("shed", 0, 0), mark("post", 0, 0), tapes("ash", spec.Left, spec.Tape{Mark: "shed", Distance: 50 * ft}, spec.Tape{Mark: "post", Distance: 20 * ft})),
	}
	for name, s := range cases {
		list, findings := marksOf(s)
		f, ok := codes(findings)["mark-tapes-miss"]
		if !ok || f.Level != finding.MustFix || len(list) != 2 {
			t.Errorf("%s: %v %v", name, list, findings)
		}
	}
	_, findings := marksOf(cases["too short"])
	if text := findings[0].Text; !strings.Contains(text, measure.Imperial.Tape(4*ft)) {
		t.Errorf("the gap of 4 ft is not in %q", text)
	}
}

func TestTapesInACircleAreRefused(t *testing.T) {
	list, findings := marksOf(site(mark("shed", 0, 0),
		tapes("ash", spec.Left, spec.Tape{Mark: "shed", Distance: 10 * ft}, spec.Tape{Mark: "oak", Distance: 10 * ft}),
		tapes("oak", spec.Left, spec.Tape{Mark: "shed", Distance: 10 * ft}, spec.Tape{Mark: "ash", Distance: 10 * ft})))
	if len(list) != 1 || len(findings) != 2 || findings[0].Code != "mark-not-fixed" {
		t.Errorf("%v %v", list, findings)
	}
}

// A mark in line with its two: careful tapes may miss by a little; the place between is taken and called weak.
func TestMarkInLine(t *testing.T) {
	list, findings := marksOf(site(mark("shed", 0, 0), mark("post", 30*ft, 0),
		tapes("ash", spec.Left, spec.Tape{Mark: "shed", Distance: 10*ft - in/4}, spec.Tape{Mark: "post", Distance: 20*ft - in/4})))
	if _, ok := codes(findings)["mark-weak"]; !ok || len(list) != 3 {
		t.Fatalf("%v %v", list, findings)
	}
	near(t, "x", list[2].At.X, 10*ft, 1e-9)
	near(t, "misclosure", list[2].Misclosure, in/4, 1e-9)
}

func TestMisclosureIsSaid(t *testing.T) {
	_, findings := marksOf(site(mark("a", 0, 0), mark("b", 40*ft, 0), mark("c", 20*ft, 40*ft),
		tapes("x", spec.Left, spec.Tape{Mark: "a", Distance: 25 * ft}, spec.Tape{Mark: "b", Distance: 25 * ft}, spec.Tape{Mark: "c", Distance: 26 * ft})))
	if f, ok := codes(findings)["mark-misclosure"]; !ok || f.Level != finding.LookAt {
		t.Errorf("%v", findings)
	}
}
