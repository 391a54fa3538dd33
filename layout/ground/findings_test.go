package ground

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// block is an upright rectangle of the plan.
func block(name string, x0, y0, x1, y1 measure.Length) spec.Feature {
	return spec.Feature{Name: name, Outline: []spec.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}}
}

// want fails the test unless the layout has the finding at that level; it returns its text.
func want(t *testing.T, l Layout, code string, level finding.Level) string {
	t.Helper()
	f, ok := codes(l.Findings)[code]
	if !ok || f.Level != level {
		t.Fatalf("want %s %q, have %v", level, code, l.Findings)
	}
	t.Log(f.Text)
	return f.Text
}

func wantNone(t *testing.T, l Layout, code string) {
	t.Helper()
	if f, ok := codes(l.Findings)[code]; ok {
		t.Errorf("%s: %s", code, f.Text)
	}
}

// R2 of the row stands at (285, 135) in.
func TestStakeInHardGround(t *testing.T) {
	s := row(4)
	path := block("brick path", 280*in, 100*in, 400*in, 150*in)
	path.Hard = true
	s.Site.Features = []spec.Feature{path}
	l := lay(s)
	text := want(t, l, "stake-in-hard-ground", finding.MustFix)
	if !strings.HasPrefix(text, "R2 stands in brick path") || !strings.Contains(text, s.Units.Tape(9*in)+" to the left") {
		t.Error(text)
	}
	// 5 in to the edge and 4 in from it is 9 in, which is on the grid
	if l.ShiftClear == nil {
		t.Fatal("no shift")
	}
	near(t, "shift right", l.ShiftClear.Right, -9*in, 1e-9)
	near(t, "shift ahead", l.ShiftClear.Ahead, 0, 0)
	s.Site.Features[0] = block("brick path", 288*in, 100*in, 400*in, 150*in)
	s.Site.Features[0].Hard = true
	l = lay(s)
	wantNone(t, l, "stake-in-hard-ground")
	if text := want(t, l, "stake-near-hard-ground", finding.LookAt); !strings.Contains(text, "3 in") {
		t.Error(text)
	}
	s.Site.Features[0] = block("brick path", 289*in, 100*in, 400*in, 150*in)
	s.Site.Features[0].Hard = true
	if l := lay(s); len(codes(l.Findings)) != 1 {
		t.Errorf("4 in from the edge: %v", l.Findings)
	}
}

func TestStakeInRoundBed(t *testing.T) {
	s := row(4)
	s.Site.Features = []spec.Feature{{Name: "flower bed", At: spec.Point{X: 285 * in, Y: 0}, Radius: 12 * in}} // G1R is its centre
	if text := want(t, lay(s), "stake-in-feature", finding.LookAt); !strings.Contains(text, "G1R stands") {
		t.Error(text)
	}
}

// The move that is offered is laid out again: it clears, and no shorter move of the same grid does.
func TestShiftIsHonest(t *testing.T) {
	s := row(5)
	hard := block("slab", 190*in, 120*in, 215*in, 150*in)
	hard.Hard = true
	s.Site.Features = []spec.Feature{hard, block("bed", 270*in, 190*in, 284*in, 260*in)}
	s.Site.Buried = []spec.Buried{{Name: "drain", Line: []spec.Point{{X: 320 * in, Y: 0}, {X: 300 * in, Y: 500 * in}}, Keep: 12 * in}}
	l := lay(s)
	if l.ShiftClear == nil {
		t.Fatal("no shift found")
	}
	stakeCodes := func(by Shift) []string {
		moved := *s
		moved.Site.Start = spec.Point{X: s.Site.Start.X + by.Right, Y: s.Site.Start.Y + by.Ahead} // heading 0
		var list []string
		for _, f := range lay(&moved).Findings {
			if strings.HasPrefix(f.Code, "stake-") {
				list = append(list, f.Code)
			}
		}
		return list
	}
	if c := stakeCodes(Shift{}); len(c) == 0 {
		t.Fatal("nothing to clear")
	}
	if c := stakeCodes(*l.ShiftClear); len(c) != 0 {
		t.Errorf("moved by %+v there is still %v", *l.ShiftClear, c)
	}
	size := func(s Shift) float64 { return math.Hypot(float64(s.Right), float64(s.Ahead)) }
	for right := -72 * in; right <= 72*in; right += 3 * in {
		for ahead := -72 * in; ahead <= 72*in; ahead += 3 * in {
			by := Shift{right, ahead}
			if size(by) < size(*l.ShiftClear)-1e-6 && len(stakeCodes(by)) == 0 {
				t.Fatalf("%+v clears, %+v was offered", by, *l.ShiftClear)
			}
		}
	}
}

// The start that is written for a move is as round as still clears everything: the nearest whole inches, the next ones where those do not, quarters where a slab on the
// other side leaves no inch, the move itself where it leaves no quarter. By hand: R2 of the row stands 45 in right of the start and is to be 4 in from the path, which begins
// 5 in inside of it, or 3; all are moved by 9 in, three steps of the grid. L2 has so much room behind it then.
func TestStartIsWrittenRound(t *testing.T) {
	for _, c := range []struct{ start, inside, room, want measure.Length }{{240.6 * in, 3 * in, 9 * in, 232 * in}, {240.6 * in, 5 * in, 9 * in, 231 * in}, {240.6 * in, 5 * in, 0.2 * in, 231.5 * in}, {240.6 * in, 5 * in, 0.05 * in, 231.6 * in}} {
		s := row(4)
		s.Site.Start.X = c.start
		path, slab := block("brick path", c.start+45*in-c.inside, 100*in, 400*in, 150*in), block("slab", 0, 100*in, c.start-(45+9+4)*in-c.room, 150*in)
		path.Hard, slab.Hard = true, true
		s.Site.Features = []spec.Feature{path, slab}
		want(t, lay(s), "stake-in-hard-ground", finding.MustFix)
		cure := codes(lay(s).Findings)["stake-in-hard-ground"].Cure
		if at := fmt.Sprintf("[%s, 6 ft]", s.Units.Written(c.want)); len(cure) != 1 || cure[0].Value != at {
			t.Errorf("from %s: %v, want %s", s.Units.Written(c.start), cure, at)
		}
		s.Site.Start.X = c.want
		wantNone(t, lay(s), "stake-in-hard-ground")
		wantNone(t, lay(s), "stake-near-hard-ground")
	}
}

func TestShiftDoesNotGoUnderALine(t *testing.T) {
	s := row(4)
	path := block("brick path", 280*in, 100*in, 400*in, 150*in)
	path.Hard = true
	s.Site.Features = []spec.Feature{path}
	s.Site.Overhead = []spec.Overhead{{Name: "drop", Line: []spec.Point{{X: 195*in - 121*in, Y: -99 * ft}, {X: 195*in - 121*in, Y: 99 * ft}}, Height: 9 * ft, Keep: 10 * ft}}
	l := lay(s)
	wantNone(t, l, "near-overhead-line") // 10 ft 1 in away
	if l.ShiftClear == nil || l.ShiftClear.Right < 0 {
		t.Errorf("moved %+v, toward the line", l.ShiftClear)
	}
}

func TestNoShiftIsSaid(t *testing.T) {
	s := row(4)
	yard := block("car park", -99*ft, -99*ft, 99*ft, 99*ft)
	yard.Hard = true
	s.Site.Features = []spec.Feature{yard}
	l := lay(s)
	if text := want(t, l, "stake-in-hard-ground", finding.MustFix); l.ShiftClear != nil || !strings.Contains(text, "No move") || !strings.Contains(text, "and 2 more") {
		t.Error(text)
	}
}

// The left stakes stand at x = 195 in.
func TestBuriedLine(t *testing.T) {
	s := row(4)
	line := func(x measure.Length) []spec.Buried {
		return []spec.Buried{{Name: "water line", Line: []spec.Point{{X: x, Y: 50 * in}, {X: x, Y: 150 * in}}, Keep: 24 * in}}
	}
	s.Site.Buried = line(175 * in)
	if text := want(t, lay(s), "stake-near-buried-line", finding.LookAt); !strings.HasPrefix(text, "L1 and L2 stand as near as "+s.Units.Tape(20*in)) {
		t.Error(text) // the keep distance was not given
	}
	s.Site.Buried = line(195*in + in/4)
	want(t, lay(s), "stake-near-buried-line", finding.MustFix) // on the line itself
	s.Site.Buried = line(171 * in)
	wantNone(t, lay(s), "stake-near-buried-line")
	if text := want(t, lay(s), "stake-beside-keep", finding.LookAt); !strings.HasPrefix(text, "L1 and L2 stand as near as "+s.Units.Tape(24*in)) {
		t.Error(text) // a dot an inch off, and half the bar
	}
	s.Site.Buried = line(171*in - in - s.Arch.Stake.Bar.Diameter/2)
	wantNone(t, lay(s), "stake-beside-keep")
}

// Crowns are 95 in up and people reach 3 ft above: 131 in. A line 20 ft up, 4 ft beside the wall, is √(48² + 109²) = 119.1 in
// away in space, less than 10 ft; 5 ft beside it, 124.4 in.
func TestOverheadLineIsMeasuredInSpace(t *testing.T) {
	s := row(4)
	s.Site.Overhead = []spec.Overhead{{Name: "drop", Line: []spec.Point{{X: 147 * in, Y: 0}, {X: 147 * in, Y: 300 * in}}, Height: 20 * ft, Keep: 10 * ft}}
	want(t, lay(s), "near-overhead-line", finding.LookAt) // the keep distance was not given
	s.Site.Overhead[0].Line = []spec.Point{{X: 135 * in, Y: 0}, {X: 135 * in, Y: 300 * in}}
	wantNone(t, lay(s), "near-overhead-line")
	s.Site.Overhead[0] = spec.Overhead{Name: "branch", Line: []spec.Point{{X: 0, Y: 150 * in}, {X: 400 * in, Y: 150 * in}}, Height: 7 * ft, Keep: 10 * ft}
	want(t, lay(s), "near-overhead-line", finding.MustFix) // it touches the pipe
	s.Site.Overhead[0].Height = 131*in + 10*ft
	wantNone(t, lay(s), "near-overhead-line")
}

func TestTallFeature(t *testing.T) {
	s := row(4)
	oak := spec.Feature{Name: "oak", At: spec.Point{X: 185 * in, Y: 135 * in}, Radius: 8 * in, Height: 30 * ft} // 2 in from L2
	s.Site.Features = []spec.Feature{oak}
	if text := want(t, lay(s), "feature-in-tunnel", finding.MustFix); !strings.Contains(text, "leg L2 rises") {
		t.Error(text)
	}
	oak.At = spec.Point{X: 240 * in, Y: 135 * in}
	s.Site.Features = []spec.Feature{oak}
	if text := want(t, lay(s), "feature-in-tunnel", finding.MustFix); !strings.Contains(text, "across arch 2") {
		t.Error(text)
	}
	oak.At = spec.Point{X: 240 * in, Y: 165 * in}
	s.Site.Features = []spec.Feature{oak}
	want(t, lay(s), "feature-in-tunnel", finding.LookAt)
	bench := block("bench", 220*in, 160*in, 260*in, 170*in)
	bench.Height = 18 * in
	s.Site.Features = []spec.Feature{bench}
	want(t, lay(s), "feature-in-tunnel", finding.LookAt)
	bench = block("hedge", 100*in, 90*in, 180*in, 500*in)
	bench.Height = 5 * ft
	s.Site.Features = []spec.Feature{bench}
	wantNone(t, lay(s), "feature-in-tunnel")
	bench.Height = 0
	s.Site.Features = []spec.Feature{block("lawn", 0, 0, 99*ft, 99*ft)}
	wantNone(t, lay(s), "feature-in-tunnel")
}

func TestTightBends(t *testing.T) {
	s := row(6)
	s.Guys.Arches = nil
	bend := func(radius measure.Length) Layout {
		s.Site.Route = []spec.Leg{{Turn: 30, Radius: radius}}
		return lay(s)
	}
	want(t, bend(3*ft), "arches-overlap", finding.MustFix)
	// half span 45 in, 63 in a bay: 24 in are left inside at about R = 45·63/(63 − 24) = 72.7 in
	text := want(t, bend(70*in), "bay-too-narrow-inside", finding.LookAt)
	if !strings.Contains(text, s.Units.Room(7*ft)) {
		t.Errorf("a radius of 7 ft is not in %q", text)
	}
	wantNone(t, bend(7*ft), "bay-too-narrow-inside")
	wantNone(t, bend(7*ft), "arches-overlap")
	s.Tunnel.Arches = 12 // 57 ft 9 in of a circle of 44 ft
	want(t, bend(7*ft), "route-crosses-itself", finding.MustFix)
	s.Tunnel.Arches = 8 // 36 ft 9 in
	wantNone(t, bend(7*ft), "route-crosses-itself")
}

func TestGuyStakesThatMeet(t *testing.T) {
	s := row(12)
	s.Guys.Arches = []int{1, 5, 7, 12}
	s.Guys.Out = 63 * in // both come to arch 6
	if text := want(t, lay(s), "guy-stakes-meet", finding.LookAt); !strings.Contains(text, "G5Lb with G7La") {
		t.Error(text)
	}
	s.Guys.Out = 50 * in
	wantNone(t, lay(s), "guy-stakes-meet")
}

// 10 in 100 over 40 ft: √(480² + 48²) − 480 = 2.4 in.
func TestSlope(t *testing.T) {
	s := row(9)
	s.Tunnel.Spacing = 60 * in
	s.Site.Levels = []spec.Level{{Arch: 1}, {Arch: 9, Left: 48 * in, Right: 48 * in}}
	if text := want(t, lay(s), "hold-tape-level", finding.Note); !strings.Contains(text, "10 in 100") || !strings.Contains(text, "2 3/8 in") {
		t.Error(text)
	}
	s.Site.Levels[1] = spec.Level{Arch: 9, Left: 9 * in, Right: 9 * in}
	wantNone(t, lay(s), "hold-tape-level")
}

// A site as crowded as a spec can make it must not hold the command up.
func TestCrowdedSiteIsQuick(t *testing.T) {
	s := row(240)
	ring := func(x, y, radius measure.Length, n int) []spec.Point {
		var points []spec.Point
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			points = append(points, spec.Point{X: x + radius*measure.Length(cos), Y: y + radius*measure.Length(sin)})
		}
		return points
	}
	for i := range 20 {
		s.Site.Features = append(s.Site.Features, spec.Feature{Name: "bed", Outline: ring(20*ft, measure.Length(i)*60*ft, 30*ft, 1000), Height: 20 * ft})
		s.Site.Overhead = append(s.Site.Overhead, spec.Overhead{Name: "wire", Line: ring(20*ft, measure.Length(i)*60*ft, 40*ft, 1000), Height: 20 * ft, Keep: 10 * ft})
	}
	start := time.Now()
	l := lay(s)
	if took := time.Since(start); took > 2*time.Second {
		t.Errorf("took %v", took)
	}
	if !slices.ContainsFunc(l.Findings, func(f finding.Finding) bool { return f.Code == "stake-in-feature" }) {
		t.Error("nothing found")
	}
}
