package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
)

var exampleNames = []string{"garden", "schoolyard", "parkwalk", "starter", "millwalk"}

// Every cord, three-way and run of a plan has one row, in what the plan says it is plugged into, each string one box.
func TestCircuitsHoldThePlan(t *testing.T) {
	for _, name := range exampleNames {
		p := example(t, name)
		got := map[string]string{} // what a thing is plugged into, as the rows have it
		for _, r := range NewCircuits(p).rows {
			if r.kind.head() || r.kind == supplyRow {
				continue
			}
			if _, twice := got[r.name()]; twice {
				t.Errorf("%s: %s has two rows", name, r.name())
			}
			got[r.name()] = "outlet " + r.outlet.Name
			if n := len(r.path); n > 0 && r.path[n-1] != "outlet" {
				got[r.name()] = r.path[n-1]
			}
		}
		want := map[string]string{}
		for _, c := range p.Power.Cords {
			want[c.Name] = c.FedBy
		}
		for _, c := range p.Power.Taps {
			want[c.Name] = c.FedBy
		}
		for _, c := range p.Power.Chains {
			want[c.Name] = c.FedBy
		}
		for thing, in := range want {
			if got[thing] != in {
				t.Errorf("%s: %s is drawn in %q, the plan has it in %q", name, thing, got[thing], in)
			}
		}
		if len(got) != len(want) {
			t.Errorf("%s: %d rows, want %d", name, len(got), len(want))
		}
	}
}

// On paper, side after side, each string's number stands once with the part that it is on, and each row has a box to tick.
func TestCircuitsOnSides(t *testing.T) {
	for _, name := range exampleNames {
		p := example(t, name)
		body := NewCircuits(p)
		rows := 0
		for _, r := range body.rows {
			if !r.kind.head() {
				rows++
			}
		}
		count, ticks := map[string]int{}, 0
		rest := []block.Block{{Name: "circuits", Body: body}}
		for sides := 0; len(rest) > 0; sides++ {
			if sides > 12 {
				t.Fatalf("%s: does not end", name)
			}
			page := &paper.Page{Size: paper.Rect{W: 216, H: 279}}
			var notes []block.Note
			_, rest, notes = block.Fill(page, paper.Rect{X: 20, Y: 22, W: 182, H: 235}, rest)
			for _, n := range notes {
				t.Errorf("%s: no room for %v", name, n)
			}
			for _, op := range page.Ops {
				switch op := op.(type) {
				case paper.Text:
					count[op.String]++
					if l, r := op.Lettering.Width(op.String), op.At; r.X+l > 202.1 {
						t.Errorf("%s: %q ends at %.1f", name, op.String, r.X+l)
					}
				case paper.Stroke:
					if b, ok := boxOf(op); ok && math.Abs(float64(b.W-paper.TickBoxSide)) < 1e-6 {
						ticks++
					}
				}
			}
		}
		for _, s := range p.Strings {
			if count[s.Name] != 1 {
				t.Errorf("%s: %s stands %d times", name, s.Name, count[s.Name])
			}
		}
		if ticks != rows {
			t.Errorf("%s: %d boxes to tick for %d plugs", name, ticks, rows)
		}
	}
}

// boxOf returns the box that a stroke outlines.
func boxOf(s paper.Stroke) (paper.Rect, bool) {
	if len(s.Path) != 5 {
		return paper.Rect{}, false
	}
	p, q := s.Path[0].To, s.Path[2].To
	b := paper.Rect{X: p.X, Y: p.Y, W: q.X - p.X, H: q.Y - p.Y}
	return b, math.Abs(float64(b.W-b.H)) < 1e-6
}

// By hand: two cords in line from an outlet to a three-way, with a run in it; then a run that nothing feeds. Rows come from the outlet outward, each one deeper.
func TestCircuitsByHand(t *testing.T) {
	foot := lights.End{At: lights.Place{Spot: lights.AtFoot, Part: lights.Leg(spec.Left, 1)}}
	p := &layout.Plan{Spec: &spec.Spec{}}
	p.Spec.Site.Outlets = []spec.Outlet{{Name: "porch"}}
	p.Power.Feeders = []power.Feeder{{Name: "F1", Outlet: "porch", Joints: []power.Joint{{End: foot, Arch: 1, From: -1, Cord: 2, Cords: []measure.Length{100 * measure.Foot, 50 * measure.Foot}, Taps: 1, Tap: 1, Fans: 3,
		Plugs: []power.Plug{{Chains: []string{"A"}}}}}}}
	p.Power.Cords = []power.Cord{{Name: "C1"}, {Name: "C2"}}
	p.Power.Taps = []power.Tap{{Name: "T1"}}
	p.Power.Chains = []power.Chain{{Name: "A", Feeder: "F1"}, {Name: "B"}}
	var got []string
	for _, r := range NewCircuits(p).rows {
		got = append(got, fmt.Sprint(r.depth(), r.name()))
	}
	if rows := strings.Join(got, " "); rows != "0 0C1 1C2 2T1 3A 0 0B" {
		t.Errorf("rows %s", rows)
	}
}

// A place goes by its leg, crown, arch or bay, with what that does not say under it.
func TestPlaceWords(t *testing.T) {
	leg, row := lights.Leg(spec.Right, 7), lights.RowOf(spec.Right, 2)
	for at, want := range map[lights.Place][2]string{
		{Spot: lights.AtFoot, Part: leg}:                                                              {"R7", ""},
		{Spot: lights.AtCrown, Arch: 7}:                                                               {"crown 7", ""},
		{Spot: lights.Along, Part: leg, Tape: 3 * measure.Foot}:                                       {"R7", "3′-0″ up"},
		{Spot: lights.Along, Part: lights.Part{Kind: lights.Arch, Number: 4}, Tape: 3 * measure.Foot}: {"arch 4", "3′-0″ of pipe from L4"},
		{Spot: lights.AtArch, Part: row, Arch: 7}:                                                     {"R7", "row 2"},
		{Spot: lights.InBay, Part: row, Bay: 6, Arch: 7, Tape: 9 * measure.Inch}:                      {"bay 6", "row 2, 9″ from R7"},
		{Spot: lights.InBay, Part: row, Bay: 6, Arch: 7, Tape: 4 * measure.Inch}:                      {"R7", "row 2"},
		{Spot: lights.AtOutlet, Outlet: "porch"}:                                                      {"outlet", ""},
	} {
		if name, detail := placeWords(at); name != want[0] || strings.ReplaceAll(detail, "\u00a0", " ") != want[1] {
			t.Errorf("%v: %q, %q, want %q", at, name, detail, want)
		}
	}
}

// A limit is printed with what there is and what may be, in its own unit.
func TestLimitWords(t *testing.T) {
	for limit, want := range map[power.Limit]string{
		{Kind: power.LabelCount, Have: 3, Of: 25}:      "3 of 25 strings",
		{Kind: power.LabelWatts, Have: 9.6, Of: 210}:   "9.6 W of 210 W",
		{Kind: power.CordAmps, Have: 0.39, Of: 13}:     "0.39 A of 13 A",
		{Kind: power.VoltsLost, Have: 0.012, Of: 0.03}: "1.2 % of 3 % lost",
		{}: "",
	} {
		if got := strings.ReplaceAll(LimitWords(limit), "\u00a0", " "); got != want {
			t.Errorf("%v: %q, want %q", limit, got, want)
		}
	}
}

// No outlet's plug is said to be allowed more amps than its breaker or a timer that is bought for it, and it takes at least what its cords do.
func TestPlugsAreAllowedNoMoreThanBreakerAndTimer(t *testing.T) {
	seen := 0
	for _, name := range exampleNames {
		p := example(t, name).Power
		for _, f := range p.Feeders {
			if f.Limit.Kind == power.VoltsLost {
				continue
			}
			seen++
			for _, timer := range p.Timers {
				if timer.Outlet == f.Outlet && f.Limit.Share() < float64(timer.Amps/timer.Size)-1e-9 {
					t.Errorf("%s, %s: %v, its timer %v of %v", name, f.Name, f.Limit, timer.Amps, timer.Size)
				}
			}
			for _, c := range p.Circuits {
				if c.Name == f.Circuit && f.Limit.Share() < float64(c.Amps/c.Allowed)-1e-9 {
					t.Errorf("%s, %s: %v, its breaker %v of %v", name, f.Name, f.Limit, c.Amps, c.Allowed)
				}
			}
		}
	}
	if seen == 0 {
		t.Error("no plug is limited by amps")
	}
}

// By hand: twelve cords in line go on under a head of the one that the room ends at, nothing lost and nothing deeper than the paper is wide.
func TestDeepCircuitsGoOn(t *testing.T) {
	foot := lights.End{At: lights.Place{Spot: lights.AtFoot, Part: lights.Leg(spec.Left, 1)}}
	p := &layout.Plan{Spec: &spec.Spec{}}
	p.Spec.Site.Outlets = []spec.Outlet{{Name: "porch"}}
	joint := power.Joint{End: foot, Arch: 1, From: -1, Cord: 12, Plugs: []power.Plug{{Chains: []string{"A"}}}}
	for n := range 12 {
		joint.Cords = append(joint.Cords, 9*measure.Foot)
		p.Power.Cords = append(p.Power.Cords, power.Cord{Name: fmt.Sprint("C", n+1)})
	}
	p.Power.Feeders = []power.Feeder{{Name: "F1", Outlet: "porch", Joints: []power.Joint{joint}}}
	p.Power.Chains = []power.Chain{{Name: "A", Feeder: "F1"}}
	var got []string
	for _, r := range NewCircuits(p).rows {
		got = append(got, fmt.Sprint(r.depth(), r.name()))
	}
	if rows := strings.Join(got, " "); rows != "0 0C1 1C2 2C3 3C4 4C5 5C6 6C7 7C8 8C9 9C10 0 0C11 1C12 2A" {
		t.Errorf("rows %s", rows)
	}
	if head := NewCircuits(p).rows[11]; head.kind != farRow || head.path[0] != "C10" {
		t.Errorf("%v heads what goes on", head)
	}
}

// A walk longer than any scale of the series still fits its room.
func TestFootprintOfALongWalkFits(t *testing.T) {
	f, room := Footprint{Width: 3 * measure.Metre, Length: 900 * measure.Metre}, paper.Rect{W: 188, H: 110}
	if s := f.Scale(Scales(measure.Metric), room); s.Length(float64(f.Length)) > room.H-2*footprintTop || s.Ratio != 16000 {
		t.Errorf("%v", s)
	}
}
