package draw

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
)

// examplePlan solves one of the example specs.
func examplePlan(t *testing.T, name string) *layout.Plan {
	t.Helper()
	source, err := examples.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	s, err := spec.Read(name, source)
	if err != nil {
		t.Fatal(err)
	}
	return layout.Solve(s)
}

var exampleNames = []string{"garden.yaml", "schoolyard.yaml", "parkwalk.yaml", "starter.yaml"}

// diagrams draws every feeder's diagram of a plan, page by page, and calls yield with each.
func diagrams(t *testing.T, p *layout.Plan, yield func(o *OneLine, pages []*paper.Page)) {
	t.Helper()
	for _, f := range p.Power.Feeders {
		for _, wall := range []spec.Side{spec.Left, spec.Right} {
			o := NewOneLine(p, f, wall, room.W)
			var pages []*paper.Page
			for from := 0; from < len(o.Rows); {
				to := o.Fit(from, room.H)
				if h := o.Height(from, to); h > room.H && to > from+1 {
					t.Errorf("feeder %s: rows %d to %d take %v of %v", f.Name, from, to, h, room.H)
				}
				page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
				o.Draw(place.NewBoard(page, room), room, from, to)
				pages = append(pages, page)
				from = to
			}
			if len(pages) > 0 {
				yield(o, pages)
			}
		}
	}
}

// Every chain, string, cord and place of the plan is on the diagrams, each as often as it must be.
func TestDiagramsHoldThePlan(t *testing.T) {
	for _, name := range exampleNames {
		p := examplePlan(t, name)
		count := map[string]int{}
		diagrams(t, p, func(_ *OneLine, pages []*paper.Page) {
			for _, page := range pages {
				for _, text := range texts(page) {
					count[text]++
				}
			}
		})
		for _, c := range p.Power.Chains {
			if count[c.Name] != 1 {
				t.Errorf("%s: chain %s stands %d times", name, c.Name, count[c.Name])
			}
			for _, s := range c.Strings {
				if count[s] != 1 {
					t.Errorf("%s: string %s stands %d times", name, s, count[s])
				}
			}
		}
		for _, f := range p.Power.Feeders {
			for _, j := range f.Joints {
				if j.Cord > 0 && count[fmt.Sprint(j.Cord)] == 0 {
					t.Errorf("%s: no line has the number of cord %d", name, j.Cord)
				}
				words := fmt.Sprintf("%d: %s", j.Cord, StockWords(j.Cords, p.Spec.Units))
				switch {
				case j.Socket == 1:
					words += fmt.Sprintf(", %d sockets", j.Of)
				case j.Socket > 1:
					words = fmt.Sprintf("%d: socket %d", j.Cord, j.Socket)
				}
				if j.Cord > 0 && count[words] != 1 {
					t.Errorf("%s: %q stands %d times", name, words, count[words])
				}
			}
		}
	}
}

// Stations stand in walking order, so that the crew goes along the wall once.
func TestStationsInWalkingOrder(t *testing.T) {
	diagrams(t, examplePlan(t, "parkwalk.yaml"), func(o *OneLine, _ []*paper.Page) {
		last := 0
		for _, s := range o.stations {
			if s.outlet {
				continue
			}
			arch := o.feeder.Joints[s.joint].Arch
			if arch < last {
				t.Errorf("%s after arch %d", s.name, last)
			}
			last = arch
		}
	})
}

// straightLines returns the level and the upright thick lines of a page.
func straightLines(page *paper.Page) (level, upright [][2]paper.Point) {
	for _, op := range page.Ops {
		s, ok := op.(paper.Stroke)
		if !ok || len(s.Path) != 2 || s.Pen.Width != paper.Thick.Width {
			continue
		}
		switch p, q := s.Path[0].To, s.Path[1].To; {
		case p.Y == q.Y:
			level = append(level, [2]paper.Point{p, q})
		case p.X == q.X:
			upright = append(upright, [2]paper.Point{p, q})
		}
	}
	return level, upright
}

// The cords of the examples' feeders are nested; then no line of one may cross that of another.
func TestNestedCordsDoNotCross(t *testing.T) {
	const hair = 0.01
	for _, name := range exampleNames {
		diagrams(t, examplePlan(t, name), func(o *OneLine, pages []*paper.Page) {
			for n, page := range pages {
				level, upright := straightLines(page)
				for _, h := range level {
					for _, v := range upright {
						if v[0].X > min(h[0].X, h[1].X)+hair && v[0].X < max(h[0].X, h[1].X)-hair &&
							h[0].Y > min(v[0].Y, v[1].Y)+hair && h[0].Y < max(v[0].Y, v[1].Y)-hair {
							t.Errorf("%s, feeder %s, page %d: lines cross at %v, %v", name, o.feeder.Name, n+1, v[0].X, h[0].Y)
						}
					}
				}
			}
		})
	}
}

// A plan drawn by hand: an outlet by the second foot, cords 1 to 3 from there to the feet 2, 1 and 3.
func TestOneLineByHand(t *testing.T) {
	foot := func(n, from, cord int, chain string) power.Joint {
		return power.Joint{End: lights.End{At: lights.Place{Spot: lights.AtFoot, Part: lights.Leg(spec.Left, n)}}, Wall: spec.Left, Arch: n, From: from, Cord: cord, Cords: []measure.Length{25 * 304.8},
			Plugs: []power.Plug{{Chains: []string{chain}}}}
	}
	f := power.Feeder{Name: "F1", Joints: []power.Joint{foot(2, -1, 1, "A"), foot(1, 0, 2, "B"), foot(3, 0, 3, "C")}}
	f.Joints[0].Taps, f.Joints[0].Onward = 1, 2
	p := &layout.Plan{Spec: &spec.Spec{}}
	for _, name := range []string{"A", "B", "C"} {
		p.Power.Chains = append(p.Power.Chains, power.Chain{Name: name, Strings: []string{"S" + name}, Running: make([]measure.Current, 1)})
	}
	o := NewOneLine(p, f, spec.Left, 188)
	var names []string
	for _, s := range o.stations {
		names = append(names, s.name)
	}
	if got := strings.Join(names, " "); got != "L1 outlet L2 L3" {
		t.Errorf("stations %s: the outlet stands before the foot that its cord comes to, the feet in walking order", got)
	}
	// Cord 2 passes the outlet, so it lies outside cord 1; cord 3 lies beside neither.
	if lanes := []int{o.cords[0].lane, o.cords[1].lane, o.cords[2].lane}; !slices.Equal(lanes, []int{1, 0, 0}) {
		t.Errorf("lanes of the cords to L1, L2, L3: %v", lanes)
	}
	if len(o.Rows) != 4 || o.lanes != 2 {
		t.Errorf("%d rows, %d lanes; a row each for three feet and the outlet, two lanes", len(o.Rows), o.lanes)
	}
	if got := StockWords([]measure.Length{100 * 304.8, 50 * 304.8}, p.Spec.Units); got != "100 + 50 ft" {
		t.Errorf("two cords in line: %q", got)
	}
}

// What is higher up goes by its stake, with the rest of the words beside it.
func TestStationNames(t *testing.T) {
	leg, row := lights.Leg(spec.Right, 7), func(n int) lights.Part { return lights.RowOf(spec.Right, n) }
	for at, want := range map[lights.Place][2]string{
		{Spot: lights.AtFoot, Part: leg}:                                            {"R7", ""},
		{Spot: lights.AtCrown, Arch: 7}:                                             {"crown 7", ""},
		{Spot: lights.Along, Part: leg, Tape: 3 * measure.Foot}:                     {"R7", "3′-0″ up"},
		{Spot: lights.AtArch, Part: row(2), Arch: 7}:                                {"R7", "row right 2"},
		{Spot: lights.InBay, Part: row(4), Bay: 6, Arch: 7, Tape: 9 * measure.Inch}: {"R7", "row right 4, bay 6, 9″ from arch 7"},
	} {
		name, detail := StationName(power.Joint{End: lights.End{At: at}, Wall: spec.Right, Arch: 7})
		if name != want[0] || detail != want[1] {
			t.Errorf("%q: %q, %q, want %q", at, name, detail, want)
		}
	}
}
