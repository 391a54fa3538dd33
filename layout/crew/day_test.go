package crew

import (
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
	s.Crew = spec.Crew{Helpers: 5, Start: 9 * time.Hour, Tools: spec.Tools{Ladders: 2, Trestles: 8, Tapes: 3, Sledges: 2}, Rates: spec.Rates{Stake: 4, Cut: 2, Wrap: 10, Raise: 12, Ridge: 4, Row: 6, Drop: 3, Guy: 5, Cord: 5}}
	s.Dates.Build = time.Date(2026, 11, 21, 0, 0, 0, 0, time.UTC)
	in := Input{Spec: s}
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
			in.Ridge, in.Line = append(in.Ridge, RidgePiece{Bay: i, Centres: 54 * inch, Cut: 53 * inch}), append(in.Line, 54*inch)
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
	in.Chains = []Chain{{Outlet: "porch", Amps: 0.48}, {Outlet: "garage wall", Amps: 0.2}}
	in.Cords, in.Taps = 2, 1
	return in
}

func diagonal(a, b measure.Length) measure.Length {
	return measure.Length(math.Sqrt(float64(a*a + b*b)))
}

// actions lists what tasks do, in their order.
func actions(p Plan) (list []Action) {
	for _, t := range p.Tasks {
		list = append(list, t.Action)
	}
	return list
}

// The order is the trade's: common practice.
func TestOrderOfWork(t *testing.T) {
	list := actions(Day(garden(6)))
	last := -1
	for _, a := range []Action{ReadTicket, PullTest, DriveStakes, MeasureWidths, CutTrial, NameSticks, TestStrings, WindPipe, CheckDay, TieGuysFlat, SetFirst,
		WalkLast, StretchGuys, MeasureArch, RaiseSame, MeasureBay, CutRidge, RaiseRest, SightAlong, TryOpening, TestOutlets, LayCords, PlugRuns, DarkWalk, NoonCall, Unplug, LowerArches, PullStakes, NextYear} {
		at := slices.Index(list, a)
		if at <= last {
			t.Errorf("action %d is number %d, after one that is number %d", a, at, last)
		}
		last = max(last, at)
	}
}

// These stops the design asks for: each must be a hold and say what to do when it fails.
func TestHolds(t *testing.T) {
	for _, task := range Day(garden(6)).Tasks {
		switch task.Action {
		case CallLocator, CheckDots, ReadTicket, PullTest, MeasureWidths, TestStrings, CheckDay, MeasureArch, MeasureBay, SightAlong, TryOpening, TestOutlets, CheckCords, TestLoaded, DarkWalk:
			if !task.Hold || len(task.IfOff) == 0 || len(task.Want) == 0 {
				t.Errorf("action %d: hold %v, %d wants, %d remedies", task.Action, task.Hold, len(task.Want), len(task.IfOff))
			}
		}
	}
}

// M = F·h with half as much again: 1.5 · 9 N·m at 22 in (0.5588 m), 2 in under the top of what shows when it is 4 in deeper, is 24.2 N, 5.4 lb.
func TestPullTest(t *testing.T) {
	pull := func(in Input) *Task {
		for _, task := range Day(in).Tasks {
			if task.Action == PullTest {
				return &task
			}
		}
		return nil
	}
	task := pull(garden(3))
	if task == nil {
		t.Fatal("no pull test")
	}
	for _, f := range task.Want {
		if f.What == PullForce && math.Abs(float64(f.Force)-24.2) > 0.1 || f.What == PullUp && math.Abs(float64(f.Length-22*inch)) > 1e-9 {
			t.Errorf("figure %+v", f)
		}
	}
	in := garden(3)
	for i := range in.Arches {
		k := *in.Arches[i].Kind
		k.FootMoment = 0
		in.Arches[i].Kind = &k
	}
	if pull(in) != nil {
		t.Error("a pull test without a moment to test for")
	}
}

// Few hands are told of, and a building that a day does not hold.
func TestDayFindings(t *testing.T) {
	p := Day(garden(6))
	if c := codes(p); strings.Contains(c, "few-hands") || strings.Contains(c, "long-day") {
		t.Errorf("six arches, six people: %s", c)
	}
	in := garden(6)
	in.Spec.Crew.Helpers = 1
	alone := Day(in)
	if alone.Schedule.Takes <= p.Schedule.Takes {
		t.Errorf("two people take %v minutes, six take %v", alone.Schedule.Takes, p.Schedule.Takes)
	}
	if !strings.Contains(codes(alone), "few-hands") {
		t.Errorf("findings: %s", codes(alone))
	}
	if c := codes(Day(garden(60))); !strings.Contains(c, "long-day") {
		t.Errorf("sixty arches in a day: %s", c)
	}
}

func codes(p Plan) string {
	var words []string
	for _, f := range p.Findings {
		words = append(words, f.Level.String()+" "+f.Code)
	}
	return strings.Join(words, ", ")
}

// Every size of tunnel, straight and bent, with and without each part: no missing figures, the same each time.
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
			func(in *Input) { in.Spec.Guys = spec.Guys{} },
			func(in *Input) { in.Spec.Crew = spec.Crew{Tools: spec.Tools{Ladders: 1, Trestles: 2, Tapes: 1}} }, // the organiser alone
			func(in *Input) {
				in.Lights.Rows = []lights.Row{{Wall: spec.Left, Number: 1, Tape: 12 * inch, Kind: "k", Strings: []string{"a"}}, {Wall: spec.Left, Number: 2, Tape: 24 * inch, Kind: "k"}, {Wall: spec.Right, Number: 1, Tape: 12 * inch, Kind: "k"}}
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
			for i, task := range p.Tasks {
				if task.Phase == "" || task.Who.people() < 1 || task.Minutes < 0 || math.IsNaN(task.Minutes) || math.IsInf(task.Minutes, 0) {
					t.Fatalf("%d arches, task %d: %+v", n, i, task)
				}
			}
		}
	}
}
