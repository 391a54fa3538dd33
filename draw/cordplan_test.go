package draw

import (
	"math"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/examples"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// dots returns the centres of the filled circles of a radius on a page.
func dots(page *paper.Page, radius paper.Length) []paper.Point {
	var out []paper.Point
	for _, op := range page.Ops {
		f, ok := op.(paper.Fill)
		if !ok || f.Colour != paper.Black || f.Path[0].Verb != paper.Move || len(f.Path) < 3 || f.Path[1].Verb != paper.Cubic {
			continue
		}
		pts := f.Path.Flatten(0.01)[0]
		lo, hi := pts[0], pts[0]
		for _, p := range pts {
			lo, hi = paper.Point{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}, paper.Point{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
		if math.Abs(float64(hi.X-lo.X-2*radius)) < 0.05 {
			out = append(out, lo.Add(hi).Times(0.5))
		}
	}
	return out
}

func series(u measure.System) []paper.Scale {
	if u == measure.Metric {
		return paper.MetricScales
	}
	return paper.ImperialScales
}

// The feet lie on paper as far apart as a ruler at the plan's scale says, on every section, and every arch is on one.
func TestCordPlanIsTrueToScale(t *testing.T) {
	for _, name := range exampleNames {
		p := example(t, name)
		c := NewCordPlan(p, series(p.Spec.Units), room)
		seen := map[int]bool{}
		for _, s := range c.Sections {
			page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
			c.Draw(place.NewBoard(page, room), room, s)
			feet := dots(page, 1.1)
			if len(feet) != 2*(s.Last-s.First+1) {
				t.Fatalf("%s: %d feet for arches %d to %d", name, len(feet), s.First, s.Last)
			}
			for n := s.First; n <= s.Last; n++ {
				seen[n] = true
				for side := range 2 {
					on, real := feet[2*(n-s.First)+side].Sub(feet[0]), p.Stakes[2*n-2+side]
					first := p.Stakes[2*s.First-2]
					dx := float64(real.X-first.X) / c.Scale.Ratio
					dy := -float64(real.Y-first.Y) / c.Scale.Ratio
					if math.Hypot(float64(on.X)-dx, float64(on.Y)-dy) > 0.1 {
						t.Errorf("%s: %s lies %v from the first foot, want %.2f, %.2f", name, real.StakeID, on, dx, dy)
					}
				}
			}
		}
		for n := 1; n <= len(p.Arches); n++ {
			if !seen[n] {
				t.Errorf("%s: arch %d is on no section", name, n)
			}
		}
	}
}

// Every cord has its number on some section.
func TestCordPlanNumbersEveryCord(t *testing.T) {
	for _, name := range []string{"garden", "schoolyard", "parkwalk"} {
		p := example(t, name)
		c := NewCordPlan(p, series(p.Spec.Units), room)
		count := map[string]int{}
		for _, s := range c.Sections {
			page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
			c.Draw(place.NewBoard(page, room), room, s)
			for _, op := range page.Ops {
				if x, ok := op.(paper.Text); ok && x.Lettering == paper.CellSmall {
					count[x.String]++
				}
			}
		}
		for _, k := range c.cords {
			if k.number > 0 && count[k.name()] == 0 {
				t.Errorf("%s: cord %d has no number on the plan", name, k.number)
			}
		}
	}
}

// Sections share pages in strips that lie side by side within the room, each wide enough for its feet with their lanes, every section once and in order.
func TestCordPlanColumns(t *testing.T) {
	p := example(t, "parkwalk")
	c := NewCordPlan(p, series(p.Spec.Units), room)
	rows := c.Rows(room)
	if len(rows) >= len(c.Sections) {
		t.Errorf("%d pages for %d sections", len(rows), len(c.Sections))
	}
	n := 0
	for _, row := range rows {
		x := room.X
		for k, strip := range c.Columns(room, row) {
			if row[k] != c.Sections[n] {
				t.Errorf("section %v, want %v", row[k], c.Sections[n])
			}
			n++
			if strip.X < x-1e-9 || strip.Right() > room.Right()+1e-9 {
				t.Errorf("strip %v of %v", strip, room)
			}
			x = strip.Right()
			page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
			c.Draw(place.NewBoard(page, strip), strip, row[k])
			for _, d := range dots(page, 1.1) {
				if d.X < strip.X+planFirst || d.X > strip.Right()-planFirst {
					t.Errorf("arches %d to %d: a foot at %v leaves %v", row[k].First, row[k].Last, d, strip)
				}
			}
		}
	}
	if n != len(c.Sections) {
		t.Errorf("%d sections drawn of %d", n, len(c.Sections))
	}
}

// A wire past the last arch, within what one keeps from it, is on the map all across the way out where the page has room.
func TestMapReachesWire(t *testing.T) {
	source, err := examples.Files.ReadFile("garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	wire := "  overhead: [{name: drop, line: [[-30 ft, 52 ft], [60 ft, 52 ft]], height: 20 ft}]\n  outlets:"
	p := solved(t, []byte(strings.NewReplacer("arches: 6", "arches: 8", "  outlets:", wire).Replace(string(source))))
	s := NewSitePlan(p, series(p.Spec.Units), room)
	m := s.placed(s.Sections[0], paper.Rect{X: room.X, Y: room.Y, W: room.W, H: room.H - siteFoot})
	last := p.Stakes[2*len(p.Ground.Stations)-2]
	if at := m.at(spec.Point{X: last.X, Y: 52 * measure.Foot}); at.Y < room.Y+siteEnds*0.3 {
		t.Errorf("the wire is %.1f mm below the map's upper edge", at.Y-room.Y)
	}
}
