package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// drawnStrips draws every strip of a wall on a page of its own.
func drawnStrips(strips []WallStrip) []*paper.Page {
	var pages []*paper.Page
	for _, s := range strips {
		page := &paper.Page{}
		s.Draw(page, paper.Rect{X: 20, Y: 30, W: 187, H: s.Height()})
		pages = append(pages, page)
	}
	return pages
}

// legLines returns the legs of a strip from left to right: foot and top of each upright line of the emphasis pen.
func legLines(page *paper.Page) [][2]paper.Point {
	var legs [][2]paper.Point
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && s.Pen.Width == paper.Emphasis.Width && len(s.Path) == 2 && s.Path[0].To.X == s.Path[1].To.X {
			legs = append(legs, [2]paper.Point{s.Path[0].To, s.Path[1].To})
		}
	}
	slices.SortFunc(legs, func(a, b [2]paper.Point) int { return int(math.Copysign(1, float64(a[0].X-b[0].X))) })
	return legs
}

// Legs stand as far apart on paper as their stakes along the wall, on the bend too, rise and fall with the ground, and reach over the highest mark by what is
// drawn beyond it; the left wall runs to the right and the right wall to the left. Checked against the stakes and the curve, which the strip does not read heights from.
func TestWallsAreTrueToScale(t *testing.T) {
	plan := example(t, "millwalk")
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		strips := WallStrips(plan, side, paper.ImperialScales, 187, 100)
		if len(strips) == 0 || strips[0].First != 1 || strips[len(strips)-1].Last != len(plan.Arches) {
			t.Fatalf("%v wall: %d strips", side, len(strips))
		}
		for i, page := range drawnStrips(strips) {
			s := strips[i]
			if i > 0 && s.First != strips[i-1].Last {
				t.Errorf("a strip begins at arch %d, the one before ended at %d", s.First, strips[i-1].Last)
			}
			legs := legLines(page)
			if len(legs) != s.Last-s.First+1 {
				t.Fatalf("%v wall, arches %d to %d: %d legs", side, s.First, s.Last, len(legs))
			}
			if side == spec.Right {
				slices.Reverse(legs)
			}
			stake := func(n int) (x, y, ground, along float64) {
				k := plan.Ground.Stakes[2*(n-1)+int(side)]
				return float64(k.X), float64(k.Y), float64(k.Ground), float64(k.Running)
			}
			first, _ := legs[0], legs[0]
			_, _, ground0, along0 := stake(s.First)
			for k, leg := range legs {
				n := s.First + k
				_, _, ground, along := stake(n)
				sign := float64(1 - 2*int(side))
				if got, want := float64(leg[0].X-first[0].X), sign*(along-along0)/s.Scale.Ratio; math.Abs(got-want) > 0.1 {
					t.Errorf("%v wall: leg %d is %.2f mm from leg %d, want %.2f", side, n, got, s.First, want)
				}
				if got, want := float64(first[0].Y-leg[0].Y), (ground-ground0)/s.Scale.Ratio; math.Abs(got-want) > 0.1 {
					t.Errorf("%v wall: the ground at leg %d is %.2f mm over that at leg %d, want %.2f", side, n, got, s.First, want)
				}
				a := plan.Arches[n-1]
				l, r := plan.Ground.Stakes[2*(n-1)], plan.Ground.Stakes[2*(n-1)+1]
				tape := 70 * measure.Inch // the highest row of this example
				along70 := tape
				if side == spec.Right {
					along70 = a.Length - tape
				}
				high := float64((l.Ground+r.Ground)/2+a.PointAt(along70).Y) - ground
				if got, want := float64(leg[0].Y-leg[1].Y), high/s.Scale.Ratio+float64(legPast); math.Abs(got-want) > 0.1 {
					t.Errorf("%v wall: leg %d is %.2f mm high, want %.2f", side, n, got, want)
				}
			}
		}
	}
}

// Every end and every splice of a wall's strings is named, once, on one of its strips.
func TestWallsNameEverySplice(t *testing.T) {
	plan := example(t, "millwalk")
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		count := map[string]int{}
		for _, page := range drawnStrips(WallStrips(plan, side, paper.ImperialScales, 187, 100)) {
			for _, op := range page.Ops {
				if x, ok := op.(paper.Text); ok {
					count[x.String]++
				}
			}
		}
		for _, p := range plan.Lights.Paths {
			if p.Wall != side {
				continue
			}
			want := []string{"start " + p.Strings[0], "end " + p.Strings[len(p.Strings)-1]}
			for i := 1; i < len(p.Strings); i++ {
				if runOf(plan, p.Strings[i-1]) != runOf(plan, p.Strings[i]) { // the row goes on, and is fed anew
					want = append(want, "end "+p.Strings[i-1]+", start "+p.Strings[i])
					continue
				}
				want = append(want, p.Strings[i-1]+"–"+strings.TrimPrefix(p.Strings[i], "S"))
			}
			for _, w := range want {
				if count[w] != 1 {
					t.Errorf("%v wall: %q stands there %d times", side, w, count[w])
				}
			}
		}
		if side == spec.Right && count["way out"] == 0 {
			t.Error("the way out is not named")
		}
	}
}

// runOf names the run that a string is in.
func runOf(p *layout.Plan, name string) string {
	for _, c := range p.Chains {
		if slices.Contains(c.Strings, name) {
			return c.Name
		}
	}
	return ""
}

// Rows run from the entrance where the plan has them run so, and back where it has them run back: with the picture's own hand. The heads on them are the filled triangles.
func TestArrowsRunAsTheRowsDo(t *testing.T) {
	plan := example(t, "millwalk")
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		s := WallStrips(plan, side, paper.ImperialScales, 187, 100)[0]
		page := drawnStrips([]WallStrip{s})[0]
		var toRight, toLeft int
		for _, op := range page.Ops {
			if f, ok := op.(paper.Fill); ok && len(f.Path) == 4 && f.Path[1].To.X == f.Path[2].To.X { // tip, foot, foot
				if f.Path[0].To.X > f.Path[1].To.X {
					toRight++
				} else {
					toLeft++
				}
			}
		}
		var back, on int
		for _, r := range plan.Lights.Rows {
			if r.Wall == side && r.Back {
				back++
			} else if r.Wall == side {
				on++
			}
		}
		if side == spec.Right {
			back, on = on, back
		}
		if toRight != on || toLeft != back || on == back {
			t.Errorf("%v wall: %d heads to the right and %d to the left, want %d and %d", side, toRight, toLeft, on, back)
		}
	}
}

// Strips hold to the width they are given and rows stay apart, from two arches to a hundred, wide rows and close ones.
func TestStripsFit(t *testing.T) {
	for _, c := range []struct {
		arches int
		rows   string
	}{{2, "first: 300 mm, step: 300 mm, up to: 1.8 m"}, {12, "first: 150 mm, step: 100 mm, up to: 2 m"}, {100, "first: 300 mm, step: 250 mm, up to: 1.5 m"}, {5, "first: 1 m, step: 1 m, up to: 1 m"}} {
		plan := tunnel(t, c.arches, fmt.Sprintf("lights: {rows: {%s, strings: [led 100 warm 230 V, led 100 cool 230 V]}}\n", c.rows))
		strips := WallStrips(plan, spec.Left, paper.MetricScales, 182, 100)
		for i, page := range drawnStrips(strips) {
			for _, leg := range legLines(page) {
				if leg[0].X < 20 || leg[0].X > 20+182 {
					t.Errorf("%d arches: a leg at %v", c.arches, leg[0].X)
				}
			}
			step := float64(plan.Lights.Rows[min(1, len(plan.Lights.Rows)-1)].Tape - plan.Lights.Rows[0].Tape)
			if gap := step / strips[i].Scale.Ratio; step > 0 && gap < float64(rowGapLess)-0.01 {
				t.Errorf("%d arches: rows %.2f mm apart", c.arches, gap)
			}
		}
		if last := strips[len(strips)-1].Last; last != c.arches {
			t.Errorf("%d arches: the strips end at %d", c.arches, last)
		}
	}
	if strips := WallStrips(tunnel(t, 3, ""), spec.Left, paper.MetricScales, 182, 100); strips != nil {
		t.Errorf("no rows, %d strips", len(strips))
	}
}

// A pitch strip is full size whatever the units: strokes one pitch apart, and a check line of its own length.
func TestPitchStripIsFullSize(t *testing.T) {
	page := &paper.Page{}
	p := PitchStrip{Pitch: 31.4, Check: 100, Words: "Leg", Units: measure.Metric}
	p.Draw(page, paper.Rect{X: 20, Y: 40, W: 182, H: PitchStripHeight})
	var strokes []float64
	check := 0.0
	for _, op := range page.Ops {
		s, ok := op.(paper.Stroke)
		if !ok || len(s.Path) != 2 {
			continue
		}
		a, b := s.Path[0].To, s.Path[1].To
		switch {
		case a.Y == b.Y:
			check = math.Abs(float64(b.X - a.X))
		case a.Y == 40+PitchStripHeight:
			strokes = append(strokes, float64(a.X))
		}
	}
	if len(strokes) != p.Turns(182)+1 || len(strokes) != 6 {
		t.Fatalf("%d strokes", len(strokes))
	}
	for i := 1; i < len(strokes); i++ {
		if math.Abs(strokes[i]-strokes[i-1]-31.4) > 0.01 {
			t.Errorf("strokes %.2f mm apart", strokes[i]-strokes[i-1])
		}
	}
	if math.Abs(check-100) > 0.01 {
		t.Errorf("the check line is %.2f mm", check)
	}
}
