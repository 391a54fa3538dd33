package crew

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

const (
	inch = measure.Inch
	foot = measure.Foot
)

// garden is an invented straight tunnel of n arches, 7 ft wide, 54 in apart, guyed at both ends.
func garden(n int) Input {
	s := &spec.Spec{Units: measure.Imperial}
	s.Tunnel = spec.Tunnel{Arches: n, Spacing: 54 * inch, OpeningWidth: 4 * foot, OpeningHeight: 80 * inch}
	s.Arch = spec.Arch{Pipe: catalog.Pipe{Name: "pvc sch40 1/2 in", Socket: 11 * inch / 16}, Stake: spec.Stake{Length: 48 * inch, Depth: 20 * inch}}
	s.Ridge.Present = n > 1
	s.Guys = spec.Guys{Arches: []int{1, n}, From: 6 * foot, Out: 5 * foot}
	s.Site.Buried = []spec.Buried{{Name: "drip line", Keep: 24 * inch, MarkedBy: "owner"}}
	s.Crew = spec.Crew{Helpers: 5, Start: 9 * time.Hour, Rates: spec.Rates{Stake: 4, Cut: 2, Wrap: 10, Raise: 12, Ridge: 4, Row: 6, Drop: 3, Guy: 5, Cord: 5}}
	s.Dates.Build = time.Date(2026, 11, 21, 0, 0, 0, 0, time.UTC)
	in := Input{Spec: s, Bars: 3}
	kind := &arch.Kind{Spec: s.Arch, Left: []measure.Length{10 * foot}, Right: []measure.Length{10 * foot}, Span: 84 * inch, Crown: 97 * inch,
		Clear: 96 * inch, Widest: 90 * inch, Band: 1 * inch, FootMoment: 9}
	in.Ground.Straight = true
	for i := 1; i <= n; i++ {
		in.Arches = append(in.Arches, arch.Arch{Number: i, Kind: kind})
		along := measure.Length(i-1) * 54 * inch
		for side, x := range []measure.Length{-42 * inch, 42 * inch} {
			id := ground.Leg(spec.Side(side), i)
			in.Ground.Stakes = append(in.Ground.Stakes, ground.Stake{StakeID: id, X: x, Y: along, Along: along, Running: along, Offset: x, Length: 48 * inch, Depth: 20 * inch})
			in.Ground.Ties = append(in.Ground.Ties, ground.Tie{Stake: id, MarkA: "porch post", A: 120 * inch, MarkB: "gate hinge", B: 200 * inch, MarkC: "pear tree", C: 300 * inch})
			in.Lights.Wraps = append(in.Lights.Wraps, lights.Wrap{On: lights.Leg(spec.Side(side), i), Pitch: 1.425 * inch, Turns: 83.2, Label: catalog.String{Name: "mini led 100 warm"},
				Strings: []string{"S"}, To: 119 * inch, Covers: 1, Mirror: side == 1, Flags: []lights.Flag{{Tape: 30 * inch, Bulb: 25}, {Tape: 60 * inch, Bulb: 50}}})
			in.Lights.Strings = append(in.Lights.Strings, lights.String{Name: "S"})
		}
		if i < n {
			in.Ridge = append(in.Ridge, RidgePiece{Bay: i, Centres: 54 * inch, Cut: 53 * inch})
			in.Lights.Wraps = append(in.Lights.Wraps, lights.Wrap{On: lights.Part{Kind: lights.Ridge, Number: i}, Pitch: 3 * inch, Turns: 17, Label: catalog.String{Name: "mini led 50 warm"}, Covers: 1, To: 53 * inch})
			d := diagonal(84*inch, 54*inch)
			in.Ground.Diagonals = append(in.Ground.Diagonals,
				ground.Diagonal{From: ground.Leg(spec.Left, i), To: ground.Leg(spec.Right, i+1), Distance: d}, ground.Diagonal{From: ground.Leg(spec.Right, i), To: ground.Leg(spec.Left, i+1), Distance: d})
		}
	}
	if n > 2 {
		d := diagonal(84*inch, measure.Length(n-1)*54*inch)
		in.Ground.Diagonals = append(in.Ground.Diagonals, ground.Diagonal{From: ground.Leg(spec.Left, 1), To: ground.Leg(spec.Right, n), Distance: d}, ground.Diagonal{From: ground.Leg(spec.Right, 1), To: ground.Leg(spec.Left, n), Distance: d})
	}
	for _, g := range slices.Compact([]int{1, n}) {
		for side := range 2 {
			in.Ground.Stakes = append(in.Ground.Stakes, ground.Stake{StakeID: ground.StakeID{Arch: g, Guy: true, Side: spec.Side(side)}, Length: 24 * inch, Depth: 20 * inch})
		}
	}
	in.Chains = []Chain{{"A", "porch", lights.Place{Spot: lights.AtFoot, Part: lights.Leg(spec.Left, 1)}, 0.48}, {"B", "garage wall", lights.Place{Spot: lights.AtFoot, Part: lights.Leg(spec.Right, 1)}, 0.2}}
	in.Cords, in.Taps = 2, 1
	return in
}

func diagonal(a, b measure.Length) measure.Length {
	return measure.Length(math.Sqrt(float64(a*a + b*b)))
}

// at returns the number of the first step whose words hold all the texts.
func at(t *testing.T, p Plan, texts ...string) int {
	t.Helper()
	for _, s := range p.Steps {
		words := []string{s.Warning, s.Do, s.Want, s.Off}
		for _, r := range s.Readings {
			words = append(words, r.What+": "+r.Want)
		}
		for _, tape := range s.Tapes {
			words = append(words, fmt.Sprintf("%s: %s %s %s", tape.Stake, measure.Imperial.Tape(tape.A), tape.MarkA, tape.Lies))
		}
		all := strings.Join(words, " ")
		found := true
		for _, text := range texts {
			found = found && strings.Contains(all, text)
		}
		if found {
			return s.Number
		}
	}
	t.Errorf("no step says %q", texts)
	return 0
}

// The order is the trade's: common practice, save where the step's own reason says why.
func TestOrderOfWork(t *testing.T) {
	p := Day(garden(6))
	order := []int{
		at(t, p, "two tapes meet", "L1: 10′-0″ porch post", "R6: 10′-0″ porch post"),
		at(t, p, "L1 to L6 22′-6″; R1 to R6 22′-6″", "L2: 4′-6″ L3: 9′-0″", "R5: 18′-0″"),
		at(t, p, "marked by owner: the drip line"),
		at(t, p, "Call the locating service"),
		at(t, p, "Measure the diagonals", "bays 1 to 5: 8′-3 7/8″", "L1 to R6: 23′-6 3/4″"),
		at(t, p, "Drive L1 alone"),
		at(t, p, "Drive L1 to L6, then R1 to R6, then G1L, G1R, G6L and G6R"),
		at(t, p, "across each arch", "arches 1 to 6: 7′-0″"),
		at(t, p, "ridge piece of bay 1, 53 in, and no other"),
		at(t, p, "Plug in each of the 12 strings"),
		at(t, p, "one turn every 1 3/8 in", "prongs at the foot"),
		at(t, p, "Slip the left leg over L1", "Eye protection"),
		at(t, p, "Tie guys", "arch 1 at 6′-0″"),
		at(t, p, "97 in, give or take 1 in", "Feet 84 in, within 1/2 in"),
		at(t, p, "Raise arch 2 the same way", "Measure bay 1 at the crowns", "4′-6″"),
		at(t, p, "Cut the other 4 ridge pieces", "bays 2 to 5: 53 in"),
		at(t, p, "Raise arches 3 to 6", "crown 4: 13′-6″", "crown 6: 22′-6″"),
		at(t, p, "arch 6 at 6′-0″"),
		at(t, p, "Walk through with a stick 6′-8″"),
		at(t, p, "Press TEST"),
		at(t, p, "Plug in porch, then one run at a time", "0.48 A"),
		at(t, p, "Plug in garage wall"),
	}
	if !slices.IsSorted(order) {
		t.Errorf("out of order: %v", order)
	}
	if n := len(p.Steps); n < 20 || n > 40 {
		t.Errorf("%d steps for a small tunnel", n)
	}
}

// These stops the design asks for: each must be a hold and say what to do when it fails.
func TestHolds(t *testing.T) {
	p := Day(garden(6))
	for _, text := range []string{"Call the locating service", "Measure the diagonals", "Measure arch 1 before", "Measure bay 1", "Plug in each of the", "Press TEST"} {
		if n := at(t, p, text); n > 0 {
			if s := p.Steps[n-1]; !s.Hold || s.Off == "" || s.Want == "" {
				t.Errorf("%q: hold %v, want %q, off %q", text, s.Hold, s.Want, s.Off)
			}
		}
	}
}

// Sliding the right row of the drawn rectangle by what the step says must close the gap that a too far row opens.
func TestSlideClosesTheDiagonals(t *testing.T) {
	b := &builder{Input: garden(6), units: measure.Imperial}
	d, slide, ok := b.slide()
	if !ok || d.From != ground.Leg(spec.Left, 1) || d.To != ground.Leg(spec.Right, 6) {
		t.Fatalf("slide by %v of %+v", slide, d)
	}
	length, width := 5*54*inch, 84*inch
	off := 0.4 * inch // the right row is this far ahead
	difference := diagonal(width, length+off) - diagonal(width, length-off)
	if difference <= 0 {
		t.Fatal("a row too far ahead must make L1 to R6 the longer")
	}
	if got := difference / inch * slide; math.Abs(float64(got-off)) > 0.01*float64(inch) {
		t.Errorf("difference %v asks a slide of %v, the row is off by %v", difference, got, off)
	}
}

// M = F·h with half as much again: 1.5 · 9 N·m at 24 in (0.6096 m) is 22.1 N, 5.0 lb.
func TestPullTest(t *testing.T) {
	at(t, Day(garden(3)), "Drive L1 alone", "24 in above the ground", "to 5 lb")
	in := garden(3)
	for i := range in.Arches {
		k := *in.Arches[i].Kind
		k.FootMoment = 0
		in.Arches[i].Kind = &k
	}
	for _, s := range Day(in).Steps {
		if strings.Contains(s.Do, "luggage scale") {
			t.Error("a pull test without a moment to test for")
		}
	}
}

func TestMinutes(t *testing.T) {
	p := Day(garden(6))
	marking, driving, bench, rest, raised := 0.0, 0.0, 0.0, 0.0, false
	for _, s := range p.Steps {
		if s.People < 1 || s.People > 6 || s.Minutes < 0 || math.IsNaN(s.Minutes) {
			t.Errorf("step %d: %d people, %v minutes", s.Number, s.People, s.Minutes)
		}
		raised = raised || s.Phase == Raising
		switch {
		case s.Phase == Marking:
			marking += s.Minutes
		case s.Phase == Driving:
			driving += s.Minutes
		case raised:
			rest += s.Minutes
		default:
			bench += s.Minutes
		}
	}
	if p.MarkMinutes != marking || math.Abs(p.Minutes-rest-max(driving, bench)) > 1e-9 {
		t.Errorf("marking %v, day %v; the steps give %v and %v", p.MarkMinutes, p.Minutes, marking, rest+max(driving, bench))
	}
	in := garden(6)
	in.Spec.Crew.Helpers = 1
	alone := Day(in)
	if alone.Minutes <= p.Minutes {
		t.Errorf("two people take %v minutes, six take %v", alone.Minutes, p.Minutes)
	}
	if !strings.Contains(codes(alone), "few-hands") {
		t.Errorf("findings: %s", codes(alone))
	}
	in = garden(60)
	if !strings.Contains(codes(Day(in)), "long-day") {
		t.Errorf("sixty arches in a day: %s", codes(Day(in)))
	}
}

func codes(p Plan) string {
	var words []string
	for _, f := range p.Findings {
		words = append(words, f.Level.String()+" "+f.Code)
	}
	return strings.Join(words, ", ")
}

// Every size of tunnel, straight and bent, with and without each part: no broken words, no missing figures, the same each time.
func TestEveryTunnel(t *testing.T) {
	for _, n := range []int{1, 2, 3, 7, 60, 240} {
		for _, change := range []func(*Input){
			func(in *Input) {},
			func(in *Input) { in.Ground.Straight = false },
			func(in *Input) { in.Spec.Units = measure.Metric },
			func(in *Input) { in.Ground.Ties, in.Ground.Diagonals = nil, nil },
			func(in *Input) {
				in.Ridge, in.Spec.Ridge.Present, in.Lights, in.Chains = nil, false, lights.Layout{}, nil
			},
			func(in *Input) { in.Arches, in.Spec.Guys = nil, spec.Guys{} },
			func(in *Input) { in.Ground = ground.Layout{} },
			func(in *Input) { in.Spec.Crew = spec.Crew{} },
			func(in *Input) {
				in.Lights.Rows = []lights.Row{{Wall: spec.Left, Number: 1, Tape: 12 * inch, Kind: "k", Strings: []string{"a"}}, {Wall: spec.Left, Number: 2, Tape: 24 * inch, Kind: "k", Back: true}, {Wall: spec.Right, Number: 1, Tape: 12 * inch, Kind: "k"}}
				in.Lights.Drops = []lights.Drop{{On: lights.Leg(spec.Right, 1), Lowest: 85 * inch}}
			},
			func(in *Input) {
				in.Spec.Arch.Joints = spec.Pinned
				in.Spec.Site.Overhead = []spec.Overhead{{Name: "service drop", Keep: 10 * foot}}
			},
		} {
			in := garden(n)
			change(&in)
			p := Day(in)
			if again := Day(in); !reflect.DeepEqual(p, again) {
				t.Fatalf("%d arches: two runs differ", n)
			}
			for i, s := range p.Steps {
				if s.Number != i+1 || s.Do == "" || s.Want == "" || s.Phase == "" {
					t.Fatalf("%d arches: a step without words: %+v", n, s)
				}
				for _, bad := range []string{"%!", "NaN", "Inf", "  ", "..", " .", ", ,", ": ."} {
					if all := s.Warning + s.Do + s.Want + s.Off + fmt.Sprint(s.Readings); strings.Contains(all, bad) {
						t.Errorf("%d arches, step %d holds %q: %+v", n, s.Number, bad, s)
					}
				}
			}
		}
	}
}

// Arches of another span stand off the line of their neighbours, and each dot says by how much.
func TestWiderArchesStandOffTheLine(t *testing.T) {
	in := garden(6)
	for i := range in.Ground.Stakes {
		if s := &in.Ground.Stakes[i]; !s.Guy && (s.Arch == 1 || s.Arch == 6) {
			s.Offset *= 1 + 3.0/42 // 3 in further out than the others
		}
	}
	at(t, Day(in), "L2: 4′-6″ and 3 in square in from the line")
	in = garden(6)
	in.Ground.Stakes[0].Offset -= 3 * inch
	at(t, Day(in), "two tapes meet", "L1:", "L2:", "L3:", "L4:") // no line runs along such a row
}

// With two arches the ground lists the one bay twice; the step says it once.
func TestTwoArchesOneBay(t *testing.T) {
	in := garden(2)
	in.Ground.Diagonals = append(in.Ground.Diagonals, in.Ground.Diagonals...)
	p := Day(in)
	if s := p.Steps[at(t, p, "Measure the diagonals")-1]; len(s.Readings) != 2 || s.Readings[0].What != "L1 to R2" {
		t.Errorf("readings %q", s.Readings)
	}
}

// The blocks hold every step once and in order, and the day's times follow on: driving and bench beside each other, then one block after the other.
func TestBlocks(t *testing.T) {
	p := Day(garden(6))
	n, end, raised := 0, 0.0, false
	for i, block := range p.Blocks {
		for _, s := range block.Steps {
			if n++; s.Number != n || s.Phase != block.Phase || s.People > block.People {
				t.Errorf("block %d (%s, %d people) holds step %d (%s, %d people)", i, block.Phase, block.People, s.Number, s.Phase, s.People)
			}
		}
		if raised = raised || block.Phase == Raising; raised && math.Abs(block.Begin-end) > 1e-9 {
			t.Errorf("%s begins at %v, not at %v", block.Phase, block.Begin, end)
		}
		if block.Phase != Marking {
			end = max(end, block.End)
		}
	}
	if n != len(p.Steps) || math.Abs(end-p.Minutes) > 1e-9 {
		t.Errorf("%d of %d steps; the day ends at %v, the blocks at %v", n, len(p.Steps), p.Minutes, end)
	}
	if at := p.At(95); at != "10:35" { // an hour and 35 minutes after nine
		t.Errorf("95 minutes in it is %q", at)
	}
}
