package layout_test

import (
	"math"
	"strings"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// By another way: the guy is walked along from its knot in small steps, in space, and measured from the neighbours' curves where it passes their planes. Whether it is told goes by that, and no
// stake stands further aside than it must: an inch less and its guy would pass within a hand.
func TestGuyRubs(t *testing.T) {
	for _, c := range []struct {
		spacing, out string
		rubs         bool
	}{{"4 ft 3 in", "4 ft", false}, {"4 ft 3 in", "4 ft 6 in", false}, {"4 ft 3 in", "5 ft", false}, {"4 ft 3 in", "7 ft 6 in", false}, {"4 ft 3 in", "10 ft", false}, {"2 ft", "7 ft 6 in", true}} {
		out, rubs := c.out, c.rubs
		text := base.with("tunnel", "{arches: 6, spacing: "+c.spacing+", opening: {width: 4 ft, height: 6 ft 8 in}}", "guys", "{arches: [1, 3, last], from: 7 ft 3 in, out: "+out+"}").text()
		p := solved(t, text)
		stake, _ := p.Ground.Stake(ground.StakeID{Arch: 3, Side: spec.Right, Guy: true, Way: ground.Away})
		aside := stake.Offset - p.Arches[2].Span/2
		least, nearer := walked(p.Arches[2].Kind.Curve, stake, p.Ground, 0), walked(p.Arches[2].Kind.Curve, stake, p.Ground, -measure.Inch)
		t.Logf("%s out: %.0f mm aside, passes %.0f mm outside", out, aside, least)
		told := strings.Contains(strings.Join(codesOf(p.Findings), " "), "guy-rubs-leg")
		if told != rubs || (least < 76) != rubs {
			t.Errorf("%s out: told %v, %.0f mm outside by steps", out, told, least)
		}
		if aside < 12*measure.Inch || aside > 48*measure.Inch || aside > 12*measure.Inch && nearer >= 76 {
			t.Errorf("%s out: %.0f mm aside", out, aside)
		}
	}
}

// walked returns how far outside the pipes of its neighbours a guy passes, its stake moved out by so much more.
func walked(of []arch.Point, stake ground.Stake, l ground.Layout, more measure.Length) float64 {
	least := math.Inf(1)
	at := func(high float64) (x float64) { // of the right leg, between the curve's points
		for i := len(of) - 1; i > 0; i-- {
			if a, b := of[i], of[i-1]; float64(a.Y) <= high && high <= float64(b.Y) {
				return float64(a.X) + float64(b.X-a.X)*(high-float64(a.Y))/float64(b.Y-a.Y)
			}
		}
		return math.NaN()
	}
	high := float64(stake.Tied)
	knot := at(high)
	for k := range 1000 {
		share := float64(k) / 1000
		along := share * float64(stake.Along-l.Stations[2].Along)
		for _, station := range l.Stations[3:] {
			if math.Abs(along-float64(station.Along-l.Stations[2].Along)) < 3 {
				least = min(least, knot+share*(float64(stake.Offset+more)-knot)-at(high*(1-share)))
			}
		}
	}
	return least
}

func codesOf(list []finding.Finding) (codes []string) {
	for _, f := range list {
		codes = append(codes, f.Code)
	}
	return codes
}

// With rows of lights on the walls the stakes step out until guys cross the wall between two rows: measured where the guy is as high as each row, the row's place found by laying its tape along the curve.
func TestGuysKeepOffRows(t *testing.T) {
	const rows = "{rows: {first: 16 in, step: 32 in, up to: 4 ft, strings: [mini led 100 warm]}}"
	tunnel := "{arches: 6, spacing: 4 ft 9 in, opening: {width: 4 ft, height: 6 ft 8 in}}"
	var aside [2]measure.Length
	for i, lights := range []string{"{}", rows} {
		p := solved(t, base.with("tunnel", tunnel, "guys", "{arches: [1, 3, last], from: 7 ft 3 in, out: 7 ft 6 in}", "lights", lights).text())
		stake, _ := p.Ground.Stake(ground.StakeID{Arch: 3, Side: spec.Right, Guy: true, Way: ground.Away})
		aside[i] = stake.Offset - p.Arches[2].Span/2
		if strings.Contains(strings.Join(codesOf(p.Findings), " "), "guy-rubs-leg") {
			t.Errorf("lights %s: rubs at %.0f mm aside", lights, aside[i])
		}
		if i == 0 {
			continue
		}
		for tape := 16 * measure.Inch; tape <= 48*measure.Inch; tape += 32 * measure.Inch {
			x, y := laid(p.Arches[2].Kind.Curve, float64(tape))
			knot, _ := p.Arches[2].Kind.TapeAt(spec.Right, stake.Tied)
			kx, _ := laid(p.Arches[2].Kind.Curve, float64(knot))
			guy := kx + (float64(stake.Offset)-kx)*(1-y/float64(stake.Tied))
			if math.Abs(guy-x) < 75 {
				t.Errorf("row at %.0f mm: guy %.0f mm from it", tape, guy-x)
			}
		}
	}
	if aside[1] <= aside[0] {
		t.Errorf("rows change nothing: %.0f mm aside, %.0f without", aside[1], aside[0])
	}
}

// laid lays a tape along a curve from its right end.
func laid(of []arch.Point, tape float64) (x, y float64) {
	for i := len(of) - 1; i > 0; i-- {
		a, b := of[i], of[i-1]
		step := math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
		if tape <= step {
			return float64(a.X) + float64(b.X-a.X)*tape/step, float64(a.Y) + float64(b.Y-a.Y)*tape/step
		}
		tape -= step
	}
	return math.NaN(), math.NaN()
}

// On a bend each guy is drawn on the site plan from its knot to its stake, cut with the plane of every arch it passes, and measured from the pipe there.
func TestGuysPassLegsOnABend(t *testing.T) {
	p := solved(t, base.with("tunnel", "{arches: 8, spacing: 4 ft 3 in, opening: {width: 4 ft, height: 6 ft 8 in}}", "guys", "{arches: [1, 3, 5, last], from: 7 ft, out: 7 ft}",
		"site", "{route: [{straight: 4 ft}, {right: 50 deg, radius: 22 ft}, {straight: rest}]}").text())
	if strings.Contains(strings.Join(codesOf(p.Findings), " "), "guy-rubs-leg") {
		t.Fatal("a guy rubs")
	}
	passes, inner := 0, 0
	for _, s := range p.Stakes {
		if !s.Guy || s.Arch == 1 || s.Arch == len(p.Arches) {
			continue
		}
		left, right, _ := p.Arches[s.Arch-1].Kind.Across(s.Tied)
		knot := right.X
		if s.Side == spec.Left {
			knot = left.X
		}
		kx, ky, _ := p.Ground.Site(s.Arch, knot, 0)
		for _, a := range p.Arches {
			ox, oy, _ := p.Ground.Site(a.Number, 0, 0)
			ux, uy, _ := p.Ground.Site(a.Number, 1, 0)
			ux, uy = ux-ox, uy-oy // across, right positive; ahead is (−uy, ux)
			ahead := func(x, y measure.Length) measure.Length { return (x-ox)*-uy + (y-oy)*ux }
			from, to := ahead(kx, ky), ahead(s.X, s.Y)
			if a.Number == s.Arch || from*to >= 0 {
				continue
			}
			share := from / (from - to)
			l, r, ok := a.Kind.Across(s.Tied * (1 - share))
			if !ok {
				continue
			}
			x, y := kx+(s.X-kx)*share, ky+(s.Y-ky)*share
			out := (x-ox)*ux + (y-oy)*uy - r.X
			if s.Side == spec.Left {
				out = l.X - ((x-ox)*ux + (y-oy)*uy)
			}
			if passes++; out < 70 {
				t.Errorf("guy to %s passes arch %d %.0f mm outside", s, a.Number, out)
			}
			if out > 150 {
				inner++
			}
		}
	}
	if passes < 8 || inner == 0 {
		t.Errorf("%d passes, %d on the inner wall", passes, inner)
	}
}
