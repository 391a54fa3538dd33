package layout

import (
	"fmt"
	"math"
	"testing"

	"hoopwright/examples"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A site that is taped makes the same plan as one with coordinates: from each example's own coordinates the tapes are computed by Pythagoras, written into the spec in the place of
// the coordinates, and everything comes back to where it was.
func TestTapedSiteMakesTheSamePlan(t *testing.T) {
	for _, name := range []string{"garden.yaml", "schoolyard.yaml", "millwalk.yaml", "parkwalk.yaml", "starter.yaml"} {
		t.Run(name, func(t *testing.T) {
			source, err := examples.Files.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			s, err := spec.Read(name, source)
			if err != nil {
				t.Fatal(err)
			}
			want := Solve(s)
			taped, err := spec.ReadAmended(name, source, tapedAgain(t, want)...)
			if err != nil {
				t.Fatal(err)
			}
			got := Solve(taped)
			if len(got.Stakes) != len(want.Stakes) || len(got.Stakes) == 0 {
				t.Fatalf("%d stakes, want %d", len(got.Stakes), len(want.Stakes))
			}
			for i, stake := range got.Stakes {
				if d := apart(stake.At(), want.Stakes[i].At()); d > 0.1 {
					t.Errorf("%v stands %.3f mm off", stake, d)
				}
			}
			for i, o := range got.Spec.Site.Outlets {
				if d := apart(o.At, s.Site.Outlets[i].At); d > 0.1 {
					t.Errorf("outlet %s lies %.3f mm off", o.Name, d)
				}
			}
			for i, p := range got.Spec.Site.Places {
				if d := apart(p.At, s.Site.Places[i].At); d > 0.1 {
					t.Errorf("place %s lies %.3f mm off", p.Name, d)
				}
			}
			for i, c := range got.Chains {
				if c.Outlet != want.Chains[i].Outlet {
					t.Errorf("chain %s is fed from %s, was from %s", c.Name, c.Outlet, want.Chains[i].Outlet)
				}
			}
		})
	}
}

// tapedAgain writes tapes in the place of a site's coordinates: the start and a point that the walk heads for from two marks, the last mark from the stakes of arch 1, outlets in turn
// from marks, from the stakes and from the start.
func tapedAgain(t *testing.T, p *Plan) (list []spec.Amendment) {
	t.Helper()
	site := p.Spec.Site
	if len(site.Marks) < 2 || site.Marks[0].At == nil || site.Marks[1].At == nil {
		t.Skip("fewer than two marks with coordinates")
	}
	a, b := site.Marks[0], site.Marks[1]
	ends := map[string]spec.Point{a.Name: *a.At, b.Name: *b.At, spec.StakeL1: p.Stakes[0].At(), spec.StakeR1: p.Stakes[1].At()}
	tapes := func(key string, at spec.Point, from, to string) {
		list = append(list, spec.Amendment{Key: key + ".at"}, spec.Amendment{Key: key + ".from", Value: map[string]any{}},
			spec.Amendment{Key: key + ".from." + from, Value: written(apart(at, ends[from]))}, spec.Amendment{Key: key + ".from." + to, Value: written(apart(at, ends[to]))},
			spec.Amendment{Key: key + ".side", Value: sideOf(ends[from], ends[to], at)})
	}
	sin, cos := math.Sincos(float64(site.Heading))
	tapes("site.start", site.Start, a.Name, b.Name)
	tapes("site.start.toward", spec.Point{X: site.Start.X + measure.Length(20000*sin), Y: site.Start.Y + measure.Length(20000*cos)}, a.Name, b.Name)
	list = append(list, spec.Amendment{Key: "site.start.heading"})
	if last := len(site.Marks) - 1; last > 1 && site.Marks[last].At != nil {
		tapes(fmt.Sprintf("site.marks[%d]", last), *site.Marks[last].At, spec.StakeL1, spec.StakeR1)
	}
	for i, o := range site.Outlets {
		switch key := fmt.Sprintf("site.outlets[%d]", i); i % 3 {
		case 0:
			tapes(key, o.At, spec.StakeL1, spec.StakeR1)
		case 1:
			dx, dy := float64(o.At.X-site.Start.X), float64(o.At.Y-site.Start.Y)
			list = append(list, spec.Amendment{Key: key + ".at"}, spec.Amendment{Key: key + ".from start", Value: map[string]any{}})
			for _, axis := range []struct {
				by          float64
				plus, minus string
			}{{dx*cos - dy*sin, "right", "left"}, {dx*sin + dy*cos, "ahead", "behind"}} {
				word := axis.plus
				if axis.by < 0 {
					word = axis.minus
				}
				list = append(list, spec.Amendment{Key: key + ".from start." + word, Value: written(measure.Length(math.Abs(axis.by)))})
			}
		default:
			tapes(key, o.At, a.Name, b.Name)
		}
	}
	for i, place := range site.Places {
		tapes(fmt.Sprintf("site.places[%d]", i), place.At, a.Name, b.Name)
	}
	return list
}

func written(l measure.Length) string { return fmt.Sprintf("%.6f mm", float64(l)) }

func apart(a, b spec.Point) measure.Length {
	return measure.Length(math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)))
}

// sideOf is the side of the line from a to b that a point lies on: left where the cross product is positive.
func sideOf(a, b, p spec.Point) string {
	if float64(b.X-a.X)*float64(p.Y-a.Y)-float64(b.Y-a.Y)*float64(p.X-a.X) > 0 {
		return "left"
	}
	return "right"
}

// Tapes that miss each other, or start from what is not known, are said of the outlet as they are of a mark.
func TestTapesThatMiss(t *testing.T) {
	const yard = `{hoopwright: 1, title: x, tunnel: {arches: 3, spacing: 4 ft}, arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}, guys: none,
site: {marks: [{name: a, at: [0, 0]}, {name: b, at: [20 ft, 0]}], start: {at: [10 ft, 9 ft]}, outlets: [{name: o, from: {a: 3 ft, b: 4 ft}, side: left, circuit: c}]},
power: {circuits: {c: {volts: 120 V, breaker: 15 A}}}}`
	s, err := spec.Read("x", []byte(yard))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range Solve(s).Findings {
		if f.Code == "mark-tapes-miss" && f.Key == "site.outlets[0]" {
			return
		}
	}
	t.Error("no finding says that the tapes to the outlet miss")
}
