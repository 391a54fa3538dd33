package draw

import (
	"math"
	"slices"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/dice"
	"hoopwright/layout/lights"
	"hoopwright/layout/spec"
)

// litBeads are the near bulbs of a lit picture: small discs in a colour.
func litBeads(page *paper.Page) (list []paper.Point) {
	for _, op := range page.Ops {
		if f, ok := op.(paper.Fill); ok && f.Colour != paper.Black && f.Colour != paper.White && len(f.Path) == 6 && f.Path[1].Verb == paper.Cubic {
			var e box
			for _, s := range f.Path[:5] {
				e.add(s.To, 0, 0, 0, 0)
			}
			list = append(list, e.rect().Centre())
		}
	}
	return list
}

// A lit tunnel is lit on its picture, to the left and to the right.
func TestTheLitPictureIsLit(t *testing.T) {
	page := &paper.Page{}
	Perspective(page, pictureRoom, example(t, "garden"), true)
	middle, sides := pictureRoom.Centre().X, [2]int{}
	for _, at := range litBeads(page) {
		sides[b2i(at.X < middle)]++
	}
	if min(sides[0], sides[1]) < 50 {
		t.Errorf("bulbs to the left and to the right: %v", sides)
	}
}

func b2i(v bool) int {
	if v {
		return 1
	}
	return 0
}

// Laid open, the left foot is at -1, the crown at 0 and the right foot at 1, whatever is wound; crowns of the ridge are at the numbers of their arches, and what is half way up a leg or along a piece half way between.
func TestPlacesLaidOpen(t *testing.T) {
	plan := example(t, "garden")
	k := plan.Arches[1]
	right := k.Length - k.CrownTape
	piece := lights.Part{Kind: lights.Ridge, Number: 2}
	on := func(p lights.Part) lights.String {
		s := plan.Strings[0]
		s.Run.Part = p
		return s
	}
	for _, c := range []struct {
		at   lights.Place
		part lights.Part
		want float64
	}{
		{lights.Place{Spot: lights.AtFoot}, lights.Leg(spec.Left, 2), -1}, {lights.Place{Spot: lights.AtCrown, Arch: 2}, lights.Leg(spec.Left, 2), 0},
		{lights.Place{Spot: lights.AtFoot}, lights.Leg(spec.Right, 2), 1}, {lights.Place{Spot: lights.AtCrown, Arch: 2}, lights.Leg(spec.Right, 2), 0},
		{lights.Place{Tape: k.CrownTape / 2}, lights.Leg(spec.Left, 2), -.5}, {lights.Place{Tape: right / 2}, lights.Leg(spec.Right, 2), .5},
		{lights.Place{Tape: k.CrownTape / 2}, lights.Part{Kind: lights.Arch, Number: 2}, -.5}, {lights.Place{Tape: k.CrownTape + right/2}, lights.Part{Kind: lights.Arch, Number: 2}, .5},
		{lights.Place{Spot: lights.AtCrown, Arch: 3}, piece, 3}, {lights.Place{Tape: plan.Ridge[1].Cut / 2}, piece, 2.5},
	} {
		if got := position(plan, lights.End{At: c.at}, on(c.part)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v of %v: %v, want %v", c.at, c.part, got, c.want)
		}
	}
}

// Strings over the same length of pipe lie beside each other, no two in one line.
func TestNoTwoStringsInOneLine(t *testing.T) {
	plan, several := tunnel(t, 3, "lights: {wraps: [{where: legs, string: mini led 100 warm}, {where: legs, string: mini led 50 blue}]}\n"), 0
	lanes := sideBySide(plan)
	for i, s := range plan.Strings {
		for _, o := range plan.Strings[:i] {
			if s.Run.Part != o.Run.Part {
				continue
			}
			a, b, c, d := position(plan, s.From, s), position(plan, s.To, s), position(plan, o.From, o), position(plan, o.To, o)
			if min(max(a, b), max(c, d))-max(min(a, b), min(c, d)) < .01 {
				continue
			}
			several++
			if lanes[s.Name] == lanes[o.Name] {
				t.Errorf("%s and %s lie in one line", s.Name, o.Name)
			}
		}
	}
	if several == 0 {
		t.Error("no two strings are over the same length of pipe")
	}
}

// Figures over saw marks are set level where there is a gap between any two, and turned where there is none.
func TestCrowdedFigures(t *testing.T) {
	for apart, want := range map[paper.Length]bool{12 + numberGap - .1: true, 12 + numberGap + .1: false} {
		if _, got := figureRoom([]sawMark{{x: 5, figures: 14}, {x: 5 + apart, figures: 10}}); got != want {
			t.Errorf("figures 14 and 10 wide, %v apart: crowded %v", apart, got)
		}
	}
	words := texts(drawn(Stick{Bar: bar(), Units: 0, Under: []Span{{1, "leg upper"}, {2, "ridge 4, 5"}}}, paper.Scale{Ratio: 24}))
	for _, figure := range []string{"18", "68", "118 in"} {
		if n := len(slices.DeleteFunc(slices.Clone(words), func(s string) bool { return s != figure })); n != 1 {
			t.Errorf("%s stands %d times: %q", figure, n, words)
		}
	}
}

// The ground runs straight through both feet and beyond them, on a slope too.
func TestGroundRunsThroughTheFeet(t *testing.T) {
	for _, c := range profiles {
		p := changed(t, c.example, c.swap...)
		for _, k := range p.Kinds {
			page, _, _, _ := drawnProfile(t, p, k)
			pipe := pipes(page, k)[0]
			for _, foot := range []paper.Point{pipe[0], pipe[len(pipe)-1]} {
				if !slices.ContainsFunc(page.Ops, func(op paper.Op) bool {
					s, ok := op.(paper.Stroke)
					return ok && s.Pen.Width == paper.Thick.Width && len(s.Path) == 2 && s.Path[0].To.X < foot.X-.3 && s.Path[1].To.X > foot.X+.3 && off(foot, []paper.Point{s.Path[0].To, s.Path[1].To}) < .1
				}) {
					t.Errorf("%s, arches %v: no ground at the foot at %v", c.name, k.Numbers, foot)
				}
			}
		}
	}
}

// Ahead runs up the map's page, and to the right where that saves parting the tunnel or draws it much larger, with its arrows inside; a part fits the room, and of fewer parts one would not.
func TestPartsOfASiteMap(t *testing.T) {
	sec := func(k, count, n int) Section { return Section{1 + k*(n-1)/count, 1 + (k+1)*(n-1)/count} }
	turned, parted := 0, 0
	for _, c := range []struct {
		arches int
		room   paper.Rect
	}{{6, letterRoom}, {12, paper.Rect{W: 188, H: 110}}, {40, paper.Rect{W: 188, H: 80}}, {120, letterRoom}} {
		p := tunnel(t, c.arches, "")
		s := NewSitePlan(p, paper.MetricScales, c.room)
		fits := func(sec Section, turned bool) bool {
			o := &SitePlan{plan: p, cords: s.cords, turned: turned}
			beside, over := o.margins()
			e := o.extent(sec, s.Scale, false)
			return e.W <= c.room.W-2*beside && e.H <= c.room.H-siteFoot-2*over
		}
		whole := Section{1, c.arches}
		if n := len(s.Sections); n > 1 {
			parted++
			for k := range n {
				if s.Sections[k] != sec(k, n, c.arches) || !fits(s.Sections[k], false) {
					t.Errorf("%d arches: part %v of %d leaves the room", c.arches, s.Sections[k], n)
				}
			}
			if few := n - 1; few > 1 && !slices.ContainsFunc(s.Sections[:few], func(o Section) bool { return !fits(sec(slices.Index(s.Sections, o), few, c.arches), false) }) {
				t.Errorf("%d arches: %d parts where %d do", c.arches, n, few)
			}
		}
		if s.turned {
			turned++
			if up := newSitePlan(p, paper.MetricScales, c.room, false); len(up.Sections) == 1 && up.Scale.Ratio < siteTurn*s.Scale.Ratio || !fits(whole, true) {
				t.Errorf("%d arches are turned, and need not be", c.arches)
			}
			m := s.placed(whole, c.room)
			in, _ := s.wayArrow(m, 1, wayIn)
			_, out := s.wayArrow(m, c.arches, wayOut)
			if in.X < c.room.X || out.X > c.room.Right() || in.X >= out.X {
				t.Errorf("%d arches: the ways' arrows from %v to %v leave the room", c.arches, in, out)
			}
		}
	}
	if turned != 2 || parted == 0 {
		t.Errorf("%d maps are turned, %d parted", turned, parted)
	}
}

// No cord lies on the ground across a side way.
func TestNoCordLiesAcrossAWay(t *testing.T) {
	p := changed(t, "garden.yaml", "tunnel:\n", "tunnel:\n  ways: [{bay: 3, wall: right}]\n")
	c := cordsOf(p)
	for n := 1; n < len(p.Arches); n++ {
		for side, wall := range []spec.Side{spec.Left, spec.Right} {
			from, to := whole(p.Stakes[2*n-2+side].At()), whole(p.Stakes[2*n+side].At())
			if want := n != 3 || wall != spec.Right; c.along(from, to) != want {
				t.Errorf("bay %d, %v: a cord may lie there: %v", n, wall, !want)
			}
		}
		if c.along(whole(p.Stakes[2*n-2].At()), whole(p.Stakes[2*n-1].At())) {
			t.Errorf("arch %d: a cord may lie from wall to wall", n)
		}
	}
}

// Nothing that is lettered says nothing.
func TestNoSignSaysNothing(t *testing.T) {
	for _, name := range exampleNames {
		for _, page := range []*paper.Page{unfoldedPage(t, example(t, name)), cordPage(example(t, name))} {
			if slices.Contains(texts(page), "") {
				t.Errorf("%s: a sign says nothing", name)
			}
		}
	}
}

func cordPage(p *layout.Plan) *paper.Page {
	page := &paper.Page{}
	c := NewCordPlan(p, series(p.Spec.Units), room)
	c.Draw(place.NewBoard(page, room), room, c.Sections[0])
	return page
}

// A mark that is on a plan of stakes is named there once, and has no arrow at the edge as well, though dots are taped from it.
func TestAMarkOnThePlanIsNamedThere(t *testing.T) {
	p := solved(t, []byte(dice.Whole(7, 12)))
	room := paper.Rect{X: 20, Y: 40, W: 130, H: 200}
	list := NewStakePlan(p.Ground, p.Spec, 1, len(p.Arches)).Fits(room)
	plan := list[len(list)-1]
	page := &paper.Page{}
	for i := range p.Ground.Marks {
		plan.Marks = append(plan.Marks, i)
	}
	if missing := plan.Draw(page, room); len(missing) > 0 {
		t.Error(missing)
	}
	for i, m := range p.Ground.Marks {
		n := 0
		for _, x := range texts(page) {
			n += b2i(x == MarkLetter(i) || x == MarkLetter(i)+" "+m.Name)
		}
		if n != 1 {
			t.Errorf("%s is named %d times: %q", m.Name, n, texts(page))
		}
	}
}
