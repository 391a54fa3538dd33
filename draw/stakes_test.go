package draw

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// solvedYard reads and solves a spec: an example by its name, or else the text itself.
func solvedYard(t *testing.T, text string) *layout.Plan {
	t.Helper()
	source := []byte(text)
	if !strings.Contains(text, "\n") {
		var err error
		if source, err = os.ReadFile("../examples/" + text + ".yaml"); err != nil {
			t.Fatal(err)
		}
	}
	return solved(t, source)
}

// A walk that bends, with everything on its ground. Place and figures are invented.
const bentYard = `hoopwright: 1
title: Millrace bend
units: imperial
tunnel: {arches: 12, spacing: 4 ft 6 in}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft, except: [{arches: [1, last], span: 7 ft 6 in}]}
guys: {arches: [1, 6, last], from: 6 ft, out: 6 ft, stake: {bar: 3/8 in, length: 24 in, depth: 20 in}}
site:
  route: [{straight: 12 ft}, {left: 60 deg, radius: 25 ft}, {straight: rest}]
  start: {at: [26 ft, 8 ft], heading: 20 deg}
  north: -30 deg
  marks: [{name: shed corner, at: [0 ft, 0 ft]}, {name: pump post, at: [44 ft, 0 ft]}, {name: big ash, at: [60 ft, 44 ft]}]
  features: [{name: brick path, outline: [[0 ft, 22 ft], [20 ft, 22 ft], [20 ft, 27 ft], [0 ft, 27 ft]], hard: true}]
  buried: [{name: water line, line: [[0 ft, 14 ft], [44 ft, 12 ft], [60 ft, 30 ft]], keep: 24 in}]
  overhead: [{name: service drop, line: [[0 ft, 52 ft], [60 ft, 48 ft]], height: 13 ft}]
`

// A U of 120 arches in metric, and a row so close that names must shrink. Invented.
const uYard = `hoopwright: 1
title: Orchard loop
units: metric
tunnel: {arches: 120, spacing: 1.2 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m}
guys: {arches: [1, 60, last], from: 1.9 m, out: 1.6 m}
site:
  route: [{straight: 58 m}, {right: 180 deg, radius: 8 m}, {straight: rest}]
  start: {at: [10 m, 5 m]}
  marks: [{name: gate, at: [0 m, 0 m]}, {name: barn, at: [35 m, 2 m]}, {name: well, at: [-3 m, 40 m]}, {name: pole, at: [36 m, 60 m]}, {name: shed, at: [18 m, 80 m]}]
`

func plain(arches int, spacing string) string {
	s := fmt.Sprintf("hoopwright: 1\ntitle: Plain\nunits: imperial\ntunnel: {arches: %d", arches)
	if arches > 1 {
		s += ", spacing: " + spacing
	}
	return s + "}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}\nguys: none\n"
}

var letterRoom = paper.Rect{X: 20, Y: 36, W: 187.9, H: 198}

// plotted returns the centres of the round dots of a page: the stakes of legs.
func plotted(page *paper.Page) (list []paper.Point) {
	for _, op := range page.Ops {
		f, ok := op.(paper.Fill)
		if !ok || len(f.Path) != 14 || f.Colour != paper.Black {
			continue
		}
		var e box
		for _, s := range f.Path[:13] {
			e.add(s.To, 0, 0, 0, 0)
		}
		if r := e.rect(); math.Abs(float64(r.W-2*stakeRadius)) < 1e-6 {
			list = append(list, r.Centre())
		}
	}
	return list
}

func lettered(page *paper.Page) (list []paper.Text) {
	for _, op := range page.Ops {
		if t, ok := op.(paper.Text); ok {
			list = append(list, t)
		}
	}
	return list
}

// fitted is a plan as it is drawn in a room, and whether it fits that.
func fitted(plan StakePlan, room paper.Rect) (StakePlan, bool) {
	list := plan.Fits(room)
	if len(list) == 0 {
		return plan, false
	}
	return list[0], true
}

// plansOf parts a tunnel into plans that fit the room, each as long as it can be.
func plansOf(t *testing.T, p *layout.Plan, room paper.Rect) (plans []StakePlan) {
	t.Helper()
	n := len(p.Ground.Stations)
	for first := 1; ; {
		last := min(first+1, n)
		fit, ok := fitted(NewStakePlan(p.Ground, p.Spec, first, last), room)
		for ok && last < n {
			more, longer := fitted(NewStakePlan(p.Ground, p.Spec, first, last+1), room)
			if !longer {
				break
			}
			fit, last = more, last+1
		}
		if !ok {
			t.Fatalf("arches %d and %d do not fit", first, last)
		}
		plans = append(plans, fit)
		if first = last; last == n {
			return plans
		}
	}
}

// On every plan of every sort of tunnel: the dots are the stakes, as far apart as the ground says to 0.1 mm; every stake's name stands on some plan
// near its stake, at 12 pt or more; all lettering lies in the room; bays are as long as they must be; nothing was left out.
func TestStakePlanIsTrueToScale(t *testing.T) {
	for name, text := range map[string]string{"starter": "starter", "garden": "garden", "schoolyard": "schoolyard", "parkwalk": "parkwalk",
		"bent": bentYard, "u": uYard, "one": plain(1, ""), "two": plain(2, "4 ft"), "dense": plain(120, "12 in"), "far apart": plain(5, "20 ft")} {
		p := solvedYard(t, text)
		l := p.Ground
		seen := map[ground.StakeID]bool{}
		for i, plan := range plansOf(t, p, letterRoom) {
			page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
			if missing := plan.Draw(page, letterRoom); len(missing) > 0 {
				t.Errorf("%s, plan %d: no place for %q", name, i+1, missing)
			}
			var legs []ground.Stake
			for _, s := range plan.stakes {
				if !s.Guy {
					legs = append(legs, s)
				}
			}
			got := plotted(page)
			if len(got) != len(legs) || len(got) != 2*(plan.Last-plan.First+1) {
				t.Fatalf("%s, plan %d: %d dots for %d stakes of arches %d to %d", name, i+1, len(got), len(legs), plan.First, plan.Last)
			}
			for i := range legs {
				for k := range i {
					real := math.Sqrt(math.Pow(float64(legs[i].X-legs[k].X), 2) + math.Pow(float64(legs[i].Y-legs[k].Y), 2))
					paperDistance := got[i].Sub(got[k]).Long()
					if off := float64(paperDistance) - real/plan.Scale.Ratio; math.Abs(off) > 0.1 {
						t.Fatalf("%s: %s and %s are %.3f mm off on paper", name, legs[i], legs[k], off)
					}
					if legs[i].Side == legs[k].Side && paperDistance < leastBay-0.01 {
						t.Fatalf("%s: %s and %s are %.1f mm apart on paper", name, legs[i], legs[k], paperDistance)
					}
				}
			}
			for _, x := range lettered(page) {
				w := x.Lettering.Width(x.String)
				if x.Lettering.Size < 11 {
					t.Errorf("%s: %q is set at %v pt", name, x.String, x.Lettering.Size)
				}
				if x.Angle == 0 && (x.At.X < letterRoom.X-0.1 || x.At.X+w > letterRoom.Right()+0.1 || x.At.Y > letterRoom.Bottom() || x.At.Y < letterRoom.Y) {
					t.Errorf("%s, plan %d: %q leaves the room", name, i+1, x.String)
				}
				for _, s := range plan.stakes {
					if x.String == s.String() && x.Lettering.Size >= 12 {
						at := plan.placed(letterRoom).m.at(s.At())
						near := paper.Point{X: max(x.At.X, min(x.At.X+w, at.X)), Y: x.At.Y}
						seen[s.StakeID] = seen[s.StakeID] || near.Sub(at).Long() < 60
					}
				}
			}
		}
		for _, s := range l.Stakes {
			if !seen[s.StakeID] {
				t.Errorf("%s: no name stands by %s", name, s)
			}
		}
	}
}

// Straight ahead runs up the page and the left row lies left, whichever way the site is turned.
func TestAheadIsUp(t *testing.T) {
	for deg := 0; deg < 360; deg += 30 {
		s := &spec.Spec{Tunnel: spec.Tunnel{Arches: 3, Spacing: 1200, Length: 2400}, Site: spec.Site{Heading: measure.Angle(deg) * measure.Degree, Start: spec.Point{X: 3000, Y: -700}}}
		spans := []measure.Length{2100, 2100, 2100}
		l := ground.Lay(s, ground.Arches{Spans: spans, Crowns: spans})
		m := newSiteMap(&s.Site, paper.Scale{Ratio: 50})
		l1, r1, l3 := m.at(l.Stakes[0].At()), m.at(l.Stakes[1].At()), m.at(l.Stakes[4].At())
		if d := r1.Sub(l1).Sub(paper.Point{X: 42}); d.Long() > 1e-6 {
			t.Errorf("%d°: R1 lies off by %v", deg, d)
		}
		if d := l3.Sub(l1).Sub(paper.Point{Y: -48}); d.Long() > 1e-6 {
			t.Errorf("%d°: L3 lies off by %v", deg, d)
		}
		if up := m.angle(s.Site.Heading); math.Abs(math.Sin(up)-1) > 1e-9 {
			t.Errorf("%d°: ahead is drawn at %v", deg, up)
		}
	}
}

// Distances stand on the lines they measure: those of a garden whose arches are 7 ft wide and 4 ft 6 in apart, by Pythagoras; the number of a span lies on its line.
func TestSpansStandOnTheirLines(t *testing.T) {
	p := solvedYard(t, "garden")
	plan := NewStakePlan(p.Ground, p.Spec, 1, 6)
	at := func(i int) ground.Spot { return ground.Spot{Kind: ground.AtStake, Index: i} }
	plan.Spans = []StakeSpan{{From: at(10), To: at(11), Text: "7′-0″", Across: true}, {From: at(0), To: at(11), Text: "23′-6 3/4″"}}
	plan, ok := fitted(plan, letterRoom)
	if !ok {
		t.Fatal("does not fit")
	}
	page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
	if missing := plan.Draw(page, letterRoom); len(missing) > 0 {
		t.Errorf("no place for %q", missing)
	}
	m := plan.placed(letterRoom).m
	for _, s := range plan.Spans {
		from, to := m.at(p.Ground.At(s.From, p.Spec.Units)), m.at(p.Ground.At(s.To, p.Spec.Units))
		found := false
		for _, x := range lettered(page) {
			if x.String != s.Text {
				continue
			}
			found = true
			middle := x.At.Add(paper.Polar(x.Lettering.Width(x.String)/2, x.Angle))
			u := to.Sub(from).Unit()
			if off := middle.Sub(from); math.Abs(float64(off.X*u.Y-off.Y*u.X)) > 3 {
				t.Errorf("%s stands %.1f mm off its line", s.Text, math.Abs(float64(off.X*u.Y-off.Y*u.X)))
			}
		}
		if !found {
			t.Errorf("%s is not on the plan", s.Text)
		}
	}
}

// Two squares with one corner cut, by hand.
func TestClipping(t *testing.T) {
	room := paper.Rect{W: 10, H: 10}
	if p, q, ok := cropSegment(paper.Point{X: -5, Y: 5}, paper.Point{X: 15, Y: 5}, room); !ok || p != (paper.Point{Y: 5}) || q != (paper.Point{X: 10, Y: 5}) {
		t.Errorf("clipped to %v %v %v", p, q, ok)
	}
	if _, _, ok := cropSegment(paper.Point{X: -5, Y: -1}, paper.Point{X: 15, Y: -1}, room); ok {
		t.Error("a line outside has a part inside")
	}
	cut := cropOutline([]paper.Point{{X: 5, Y: 5}, {X: 15, Y: 5}, {X: 15, Y: 15}, {X: 5, Y: 15}}, room)
	area := paper.Length(0)
	for i, p := range cut {
		q := cut[(i+1)%len(cut)]
		area += (p.X*q.Y - q.X*p.Y) / 2
	}
	if math.Abs(float64(area)) != 25 {
		t.Errorf("the part inside is %v large: %v", area, cut)
	}
	if cropOutline([]paper.Point{{X: 20}, {X: 30}, {X: 30, Y: 5}}, room) != nil {
		t.Error("an outline outside has a part inside")
	}
}

// An arrow at the edge points from where it stands to its mark, and out of the picture, on the side that the mark lies on, though bands run right beside the picture.
func TestEdgeArrowsPointToTheirMarks(t *testing.T) {
	p := solvedYard(t, "garden")
	room := paper.Rect{X: 20, Y: 22, W: 81, H: 188}
	plan, ok := fitted(NewStakePlan(p.Ground, p.Spec, 1, 6), room)
	if !ok {
		t.Fatal("does not fit")
	}
	plan.Marks = []int{0, 1, 2}
	page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
	for _, y := range []paper.Length{room.Y - 6, room.Bottom()} {
		page.Fill(paper.Box(paper.Rect{X: room.X, Y: y, W: room.W, H: 6}), paper.Black)
	}
	for _, x := range []paper.Length{room.X - 6, room.Right()} {
		page.Fill(paper.Box(paper.Rect{X: x, Y: room.Y, W: 6, H: room.H}), paper.Black)
	}
	d := &stakeSheet{StakePlan: plan.placed(room), room: room, b: place.NewBoard(page, room)}
	d.dots(d.b)
	for i, m := range p.Ground.Marks {
		at := d.m.at(m.At)
		if d.pictured(m) {
			continue
		}
		tip, ok := d.edgeArrow(nearestIn(room.Inset(rimInset), at), at, MarkLetter(i), nearTape)
		if !ok {
			t.Errorf("%s has no arrow", m.Name)
		}
		if way := at.Sub(tip).Unit(); room.Contains(tip.Add(way.Times(2))) {
			t.Errorf("the arrow to %s points into the picture", m.Name)
		}
		if near := nearestIn(room, at).Sub(tip).Long(); near > nearTape {
			t.Errorf("the arrow to %s stands %.0f mm from its side", m.Name, near)
		}
	}
}

// A mark that lies across the picture's rim comes in where there is room for that, else an arrow points at it.
func TestMarkAcrossTheRimIsShown(t *testing.T) {
	p := solvedYard(t, "garden")
	plan, ok := fitted(NewStakePlan(p.Ground, p.Spec, 1, 6), paper.Rect{X: 20, Y: 22, W: 81, H: 188})
	if !ok {
		t.Fatal("does not fit")
	}
	plan.Marks = []int{0}
	for _, spare := range []paper.Length{0, 3} {
		need := plan.extent()
		room := paper.Rect{X: 20, Y: 22, W: need.W + 2*spare, H: need.H}
		for _, off := range []paper.Length{0.2, 1, 2.2} { // from the rim
			p.Ground.Marks[0].At = spec.Point{}
			still := plan
			still.Marks = nil
			m := still.placed(room).m
			for x := 0.0; ; x += 5 { // right across the walk until it comes so near the rim
				p.Ground.Marks[0].At = spec.Point{X: measure.Length(x), Y: p.Ground.Stations[2].At.Y}
				if m.at(p.Ground.Marks[0].At).X > room.Right()-off {
					break
				}
			}
			page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
			d := &stakeSheet{StakePlan: plan.placed(room), room: room, b: place.NewBoard(page, room)}
			d.dots(d.b)
			d.markNames()
			if in := d.pictured(p.Ground.Marks[0]); in != (spare > 0) || len(d.missing) > 0 {
				t.Errorf("%v mm from the rim with %v to spare: in the picture %v, lacks %v", off, spare, in, d.missing)
			}
		}
	}
}
