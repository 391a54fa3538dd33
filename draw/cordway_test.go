package draw

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/dice"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/spec"
)

// overheadYard is a yard whose outlets, side way, rows and ridge lead cords over the way, past the side way, to crowns and into bays.
func overheadYard(seed int) string {
	n, wall := 6+seed%5, [2]string{"left", "right"}[seed%2]
	x := [4]string{"4 ft", "38 ft", "6 ft", "30 ft"}[seed%4]
	return fmt.Sprintf(`hoopwright: 1
title: Lantern Walk
units: imperial
tunnel: {arches: %d, spacing: %d in, ways: [{bay: %d, wall: %s}], opening: {width: 4 ft, height: 6 ft 8 in}}
arch: {pipe: pvc sch40 1 in, sticks: [[10 ft], [10 ft]], span: 8 ft}
site:
  route: [{straight: 10 ft}, {left: %d deg, radius: 60 ft}, {straight: rest}]
  start: {at: [20 ft, 8 ft], heading: %d deg}
  outlets: [{name: wall, at: [%s, 2 ft], circuit: east, sockets: 2}, {name: far, at: [38 ft, %d ft], circuit: west}]
lights:
  rows: {first: 30 in, step: 18 in, up to: 6 ft, strings: [mini led 100 warm], gaps: [{wall: %[4]s, bays: [%[3]d]}]}
  wraps: [{where: %[9]s, string: mini led 70 warm}]
power: {circuits: {east: {volts: 120 V, breaker: 20 A, gfci: true}, west: {volts: 120 V, breaker: 15 A, gfci: true}}}
`, n, 42+3*(seed%7), 2+seed%(n-3), wall, 5+5*(seed%4), 15*(seed%3), x, 20+6*(seed%6), [3]string{"ridge", "[legs, ridge]", "arches"}[seed%3])
}

// Where a cord is drawn overhead it lies on lines that the power plan leads it along: the arches whose legs its path goes up, the ridge between two of them, the wall from a leg into a bay. And every
// cord is drawn to the place that the plan names: a foot, a crown, the bay that is printed.
func TestCordsAreDrawnWhereThePlanLeadsThem(t *testing.T) {
	seen := map[string]int{}
	check := func(what, text string) {
		s, err := spec.Read("test.yaml", []byte(text))
		if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		checkDrawnCords(t, what, layout.Solve(s), seen)
	}
	for seed := range 14 {
		check(fmt.Sprint("yard ", seed), overheadYard(seed))
	}
	for seed := range uint64(2) {
		if s, err := spec.Read("test.yaml", []byte(dice.Whole(seed, 8))); err == nil {
			checkDrawnCords(t, fmt.Sprint("whole ", seed), layout.Solve(s), seen)
		}
	}
	for _, name := range exampleNames {
		checkDrawnCords(t, name, example(t, name), seen)
	}
	for _, kind := range []string{"over arch", "past side way", "crown", "bay"} {
		if seen[kind] < 3 {
			t.Errorf("%d cords of kind %s: too few to say anything", seen[kind], kind)
		}
	}
}

// A cord from an outlet that goes on past the first foot that it comes to, and has something plugged in there by the power plan, is drawn in to that foot; one with nothing there is not.
func TestCordsComeInAtTheirFirstSocket(t *testing.T) {
	in, past := 0, 0
	check := func(p *layout.Plan) {
		c := cordsOf(p)
		v := newSiteMap(&p.Spec.Site, paper.Scale{Ratio: 100})
		for _, k := range c.cords {
			first, ok := c.firstFoot(k)
			at := slices.IndexFunc(k.path, func(p spec.Point) bool { return whole(p) == whole(first.At()) })
			for at >= 0 && at+1 < len(k.path) && whole(k.path[at+1]) == whole(first.At()) {
				at++
			}
			if !ok || !k.outlet || at+1 == len(k.path) || !c.along(k.path[at], k.path[at+1]) || c.feeds(k, first.At()) {
				continue
			}
			used := false
			for _, f := range p.Power.Feeders {
				for _, j := range f.Joints {
					used = used || j.Cord == k.number && j.End.At.Spot == lights.AtFoot && j.End.At.Part == lights.Leg(first.Side, first.Arch)
				}
			}
			drawn := slices.ContainsFunc(c.way(v, k, Section{1, len(p.Ground.Stations)}), func(g leg) bool { return g.q.Sub(v.at(first.At())).Long() < 0.01 })
			if used && !drawn || !used && drawn {
				t.Errorf("%s: %s has a socket used at its first foot, %v %d: %v; drawn in there: %v", p.Spec.Title, k.name(), first.Side, first.Arch, used, drawn)
			}
			in, past = in+b2i(used), past+b2i(!used)
		}
	}
	for seed := range 14 {
		s, err := spec.Read("test.yaml", []byte(overheadYard(seed)))
		if err != nil {
			t.Fatal(err)
		}
		check(layout.Solve(s))
	}
	for _, name := range exampleNames {
		check(example(t, name))
	}
	if in == 0 || past == 0 {
		t.Errorf("%d cords with a socket used at their first foot, %d without", in, past)
	}
}

// A cord that goes overhead has its number beside that part of it on the map.
func TestOverheadCordsAreNumberedThere(t *testing.T) {
	for _, name := range []string{"garden", "starter", "schoolyard", "millwalk"} {
		p := example(t, name)
		s := NewSitePlan(p, series(p.Spec.Units), room)
		if !s.Cords {
			continue // they have plans of their own
		}
		page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
		s.Draw(page, room, 0, SiteWords{Outlet: func(o spec.Outlet) string { return o.Name }, Place: placeName, Buried: func(l spec.Buried) string { return l.Name }, Overhead: func(l spec.Overhead) string { return l.Name }})
		d := siteSheet{SitePlan: s, m: s.placed(s.Sections[0], paper.Rect{X: room.X, Y: room.Y, W: room.W, H: room.H - siteFoot - 1}), sec: s.Sections[0]}
		over := 0
		for i, way := range s.cords.ways(d.m, d.sec) {
			text, near, any := s.cords.cords[i].name(), math.Inf(1), false
			for _, g := range way {
				for _, op := range page.Ops {
					if x, ok := op.(paper.Text); ok && g.over && x.String == text {
						near = min(near, fromSegment(x.At, g.p, g.q))
					}
				}
				any = any || g.over
			}
			if any {
				over++
			}
			if any && near > 10 {
				t.Errorf("%s: %s has no number within 10 mm of where it goes overhead: %.1f", name, text, near)
			}
		}
		if over == 0 {
			t.Errorf("%s: no cord overhead", name)
		}
	}
}

// besideMost is how far from where it lies a cord may be drawn, mm on paper.
const besideMost = 2

func checkDrawnCords(t *testing.T, what string, p *layout.Plan, seen map[string]int) {
	t.Helper()
	if len(p.Stakes) == 0 {
		return
	}
	c := cordsOf(p)
	all := Section{1, len(p.Ground.Stations)}
	v := newSiteMap(&p.Spec.Site, paper.Scale{Ratio: 100})
	for _, k := range c.cords {
		cord := p.Power.Cords[k.number-1]
		way := c.way(v, k, all)
		if len(way) == 0 {
			continue
		}
		end := cord.Places[len(cord.Places)-1]
		checkCordEnd(t, fmt.Sprintf("%s, %s", what, cord.Name), c, v, way[len(way)-1].q, end, seen)
		lines, passes := cordLines(c, v, k, end, seen)
		if fmt.Sprint(passes) != fmt.Sprint(cord.Passes) {
			t.Errorf("%s, %s: the plan names legs %v, its path goes up and down %v", what, cord.Name, cord.Passes, passes)
		}
		for _, g := range way {
			for i := 0; g.over && i <= 10; i++ {
				at := g.p.Add(g.q.Sub(g.p).Times(float64(i) / 10))
				off := math.Inf(1)
				for _, l := range lines {
					off = min(off, fromSegment(at, l[0], l[1]))
				}
				if off > besideMost {
					t.Errorf("%s, %s: overhead at %.1f, %.1f, %.1f mm off what it lies on", what, cord.Name, at.X, at.Y, off)
					break
				}
			}
		}
	}
}

// checkCordEnd checks the place that a cord is drawn to by what the plan calls it.
func checkCordEnd(t *testing.T, what string, c *CordPlan, v siteMap, at paper.Point, end lights.End, seen map[string]int) {
	t.Helper()
	if off := at.Sub(v.at(spec.Point{X: end.X, Y: end.Y})).Long(); off > besideMost {
		t.Errorf("%s: drawn %.1f mm from %v", what, off, end.At)
	}
	ahead := func(arch int) float64 { // of an arch's line, along the walk
		l, r := c.pair(v, arch)
		u, w := r.Sub(l).Unit().Left(), at.Sub(l)
		return float64(u.X*w.X + u.Y*w.Y)
	}
	switch end.At.Spot {
	case lights.AtCrown:
		seen["crown"]++
	case lights.InBay:
		seen["bay"]++
		if ahead(end.At.Bay) < -0.1 || ahead(end.At.Bay+1) > 0.1 {
			t.Errorf("%s: drawn outside bay %d: %.1f and %.1f mm ahead of its arches", what, end.At.Bay, ahead(end.At.Bay), ahead(end.At.Bay+1))
		}
	}
}

// cordLines are the lines that a cord may be drawn along overhead by its path in the plan, and the legs that it goes up and down over ways.
func cordLines(c *CordPlan, v siteMap, k cordLine, end lights.End, seen map[string]int) (lines [][2]paper.Point, passes [][2]lights.Part) {
	add := func(p, q paper.Point) { lines = append(lines, [2]paper.Point{p, q}) }
	pass := func(a, b ground.Stake) {
		passes = append(passes, [2]lights.Part{lights.Leg(a.Side, a.Arch), lights.Leg(b.Side, b.Arch)})
	}
	middle := func(arch int) paper.Point { l, r := c.pair(v, arch); return l.Add(r).Times(0.5) }
	for i := 1; i < len(k.path); i++ {
		a, from := c.footAt(k.path[i-1])
		b, to := c.footAt(k.path[i])
		switch {
		case from && to && a.Arch == b.Arch && a.Side != b.Side:
			seen["over arch"]++
			pass(a, b)
			add(c.pair(v, a.Arch))
		case from && to && a.Arch != b.Arch && c.plan.Spec.IsWay(a.Side, min(a.Arch, b.Arch)):
			seen["past side way"]++
			pass(a, b)
			if c.plan.Spec.Site.Cords.Cover() {
				add(v.at(a.At()), v.at(b.At()))
				continue
			}
			add(c.pair(v, a.Arch))
			add(c.pair(v, b.Arch))
			add(middle(a.Arch), middle(b.Arch))
		case from && !to:
			add(c.pair(v, a.Arch))
			at := v.at(spec.Point{X: end.X, Y: end.Y})
			l, r := c.pair(v, a.Arch)
			add(at, nearestOn(at, l, r))
		}
	}
	return lines, passes
}

func nearestOn(at, p, q paper.Point) paper.Point {
	along, w := q.Sub(p), at.Sub(p)
	t := max(0, min(1, float64(along.X*w.X+along.Y*w.Y)/max(1e-9, float64(along.X*along.X+along.Y*along.Y))))
	return p.Add(along.Times(t))
}

func fromSegment(at, p, q paper.Point) float64 { return float64(at.Sub(nearestOn(at, p, q)).Long()) }

// On the diagram a cord over a way says which legs it goes up and down, and what it lies along between them.
func TestOverheadCordsNameTheirLegs(t *testing.T) {
	leg := lights.Leg
	for want, passes := range map[string][][2]lights.Part{
		", up R1, along arch 1, down L1":                                {{leg(spec.Right, 1), leg(spec.Left, 1)}},
		", up L6, along ridge 5, down L5, up L5, along arch 5, down R5": {{leg(spec.Left, 6), leg(spec.Left, 5)}, {leg(spec.Left, 5), leg(spec.Right, 5)}},
	} {
		if got := overWords(passes); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
