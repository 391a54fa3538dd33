package power

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// garden is a small walk of six arches with an outlet in front on either side, legs and ridge wrapped with one kind.
func garden() Input {
	in := tunnel(6)
	in.legs(label("led", 4.8, catalog.LED))
	in.ridge(label("led", 4.8, catalog.LED))
	in.outlet("porch", -4000, -1000, 120, 15)
	in.outlet("garage", 4000, -1000, 120, 20)
	in.Spec.Power.Split = true
	return in
}

func TestGardenIsFedApart(t *testing.T) {
	p := Feed(garden())
	if len(p.Chains) != 12 {
		t.Fatalf("%d chains, want one a leg with the ridge strings plugged onto them", len(p.Chains))
	}
	checkPlan(t, garden(), p)
	for _, c := range p.Chains {
		if len(c.Strings) > 2 {
			t.Errorf("chain %s has %d strings: ridge strings should be spread over the legs", c.Name, len(c.Strings))
		}
	}
	if len(p.Feeders) != 2 || p.Feeders[0].Crosses || p.Feeders[1].Crosses {
		t.Errorf("want two feeders, each on its outlet's own wall: %+v", p.Feeders)
	}
	if got := codes(p); len(got) != 0 {
		t.Errorf("findings %v on a plan with nothing wrong", got)
	}
	if p.Taps != 6 {
		t.Errorf("%d taps, want one at every second foot", p.Taps)
	}
	cords := 0
	for _, c := range p.Cords {
		cords += c.Count
	}
	if cords != 12 {
		t.Errorf("%d cords for 12 feet", cords)
	}
}

// Cords are numbered from 1 over all feeders, and each joint says where it is: on its leg's wall and arch, a hand or less from the foot; at the outlet on none.
func TestJointsAreNumberedAndPlaced(t *testing.T) {
	for _, in := range []Input{garden(), crossed()} {
		p := Feed(in)
		cords := 0
		for _, f := range p.Feeders {
			for _, j := range f.Joints {
				want := 0
				if len(j.Cords) > 0 {
					cords++
					want = cords
				}
				if j.Cord != want {
					t.Errorf("the cord to %s is number %d, want %d", j.At, j.Cord, want)
				}
				if j.At == "outlet "+f.Outlet {
					if j.Arch != 0 {
						t.Errorf("the outlet is at arch %d", j.Arch)
					}
					continue
				}
				if rest, foot := strings.CutPrefix(j.At, "foot of leg "); foot && (rest != fmt.Sprint(j.Wall.Letter(), j.Arch) || j.Climb > handReach) {
					t.Errorf("%s is on %v wall, arch %d, climb %v", j.At, j.Wall, j.Arch, j.Climb)
				}
			}
		}
	}
}

// crossed is a walk of four arches with one outlet on its left that has one socket: a tap in it, and a cord to each wall.
func crossed() Input {
	in := tunnel(4)
	in.legs(label("led", 4.8, catalog.LED))
	in.outlet("porch", -4000, -1000, 120, 15)
	in.Spec.Site.Outlets[0].Sockets = 1
	return in
}

func TestDeterministic(t *testing.T) {
	a := Feed(garden())
	for range 5 {
		if b := Feed(garden()); !reflect.DeepEqual(a, b) {
			t.Fatal("the same input gave two plans")
		}
	}
}

func TestNames(t *testing.T) {
	for n, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		if got := letters(n); got != want {
			t.Errorf("letters(%d) = %s, want %s", n, got, want)
		}
	}
}

// A ridge of another kind than the legs plugs end to end along the crown, as far as the label goes, and its cord climbs a leg.
func TestRidgeOfItsOwnKind(t *testing.T) {
	in := tunnel(9)
	in.legs(label("legs", 4.8, catalog.LED))
	l := label("ridge", 2.4, catalog.LED)
	l.MostChain = 5
	in.ridge(l)
	in.outlet("porch", -4000, -1000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	var lengths []int
	for _, c := range p.Chains {
		if c.Kind == "ridge" {
			lengths = append(lengths, len(c.Strings))
			if c.Lies < crown {
				t.Errorf("chain %s starts at the crown, but its cord lies only %v", c.Name, c.Lies)
			}
		}
	}
	if !slices.Equal(lengths, []int{5, 3}) {
		t.Errorf("ridge chains of %v strings, want 5 and 3", lengths)
	}
	if c := p.Chains[slices.IndexFunc(p.Chains, func(c Chain) bool { return c.Kind == "ridge" })]; c.Limit != "the label allows 5 strings end to end" {
		t.Errorf("limit %q", c.Limit)
	}
}

func TestWattsLimitTheChain(t *testing.T) {
	in := tunnel(8)
	l := label("mini", 40, catalog.Incandescent) // 40 W: five are 200 W, six are over 210 W
	in.ridge(l)
	in.outlet("porch", -4000, -1000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Chains) != 2 || len(p.Chains[0].Strings) != 5 {
		t.Errorf("chains %+v, want 5 strings and 2", p.Chains)
	}
}

// One outlet for both walls: the far wall is reached over arch 1, up, across and down.
func TestFarWallIsReachedOverhead(t *testing.T) {
	in := tunnel(2)
	in.legs(label("led", 4.8, catalog.LED))
	in.outlet("porch", -half, -3000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	for _, c := range p.Chains {
		want := map[string]measure.Length{
			"S1": 3000, "S3": 3000 + bay,
			"S2": 3000 + 2*crown + 2*half, "S4": 3000 + 2*crown + 2*half + bay,
		}[c.Strings[0]]
		if math.Abs(float64(c.Lies-want)) > 1e-6 {
			t.Errorf("%s lies %v, want %v", c.Strings[0], c.Lies, want)
		}
		if c.Cord < c.Lies {
			t.Errorf("%s: %v of cord for %v of way", c.Name, c.Cord, c.Lies)
		}
	}
	if !slices.Contains(codes(p), "cord-crosses") {
		t.Error("nothing said of the cord over the arch")
	}
	in.Spec.Site.Cords.Cover = true
	if c := Feed(in).Chains[1]; math.Abs(float64(c.Lies-3000-2*half)) > 1e-6 {
		t.Errorf("under a cover: lies %v", c.Lies)
	}
}

func TestNoPowerGiven(t *testing.T) {
	in := tunnel(3)
	in.legs(label("led", 4.8, catalog.LED))
	p := Feed(in)
	if got := codes(p); !slices.Equal(got, []string{"no-power-given"}) || p.Findings[0].Level != finding.Note {
		t.Errorf("findings %v", p.Findings)
	}
	if len(p.Chains) != 6 || p.Chains[0].Outlet != "" || p.Chains[0].EndVolts >= 120 || p.Chains[0].EndVolts < 119 {
		t.Errorf("chains %+v", p.Chains)
	}
}

func TestNotEnoughAmps(t *testing.T) {
	in := tunnel(6)
	in.legs(label("c9", 120, catalog.Incandescent)) // 1 A a leg, 12 A in all
	in.outlet("porch", -4000, -1000, 120, 15)
	in.Spec.Power.Circuits[0].OtherLoad = 3.5 // leaves 8.5 A of 12
	p := Feed(in)
	checkPlan(t, in, p)
	if p.Missing != 4 {
		t.Errorf("%v A missing, want 4", p.Missing)
	}
	k := slices.IndexFunc(p.Findings, func(f finding.Finding) bool { return f.Code == "not-enough-amps" })
	if k < 0 || p.Findings[k].Level != finding.MustFix {
		t.Errorf("findings %+v", p.Findings)
	}
	if c := p.Circuits[0]; c.Amps != 11.5 || c.Lights != 8 || c.Allowed != 12 {
		t.Errorf("circuit %+v", c)
	}
}

// All fed comes before the walls apart.
func TestSplitGivesWayToFeeding(t *testing.T) {
	in := tunnel(6)
	in.legs(label("c9", 120, catalog.Incandescent)) // 6 A a wall
	in.outlet("porch", -4000, -1000, 120, 20)
	in.outlet("shed", 4000, -1000, 120, 6) // 4.8 A
	in.Spec.Power.Split = true
	p := Feed(in)
	checkPlan(t, in, p)
	if p.Missing != 0 || !slices.Contains(codes(p), "split-not-possible") {
		t.Errorf("missing %v, findings %v", p.Missing, codes(p))
	}
}

func TestSplitNeedsTwoTrips(t *testing.T) {
	in := garden()
	in.Spec.Power.Circuits = in.Spec.Power.Circuits[:1]
	in.Spec.Site.Outlets = in.Spec.Site.Outlets[:1]
	if p := Feed(in); !slices.Contains(codes(p), "split-not-possible") {
		t.Errorf("one outlet: findings %v", codes(p))
	}
	in = garden()
	in.Spec.Power.Circuits = in.Spec.Power.Circuits[:1]
	in.Spec.Site.Outlets[1].Circuit = "circuit porch"
	p := Feed(in)
	checkPlan(t, in, p)
	if slices.Contains(codes(p), "split-not-possible") || p.Feeders[0].Outlet == p.Feeders[1].Outlet {
		t.Errorf("two GFCIs on a circuit are two trips: %v", codes(p))
	}
}

func TestFewestCircuits(t *testing.T) {
	in := tunnel(6)
	in.legs(label("led", 4.8, catalog.LED))
	for i := range 5 {
		in.outlet(letters(i), -4000, measure.Length(i)*2000, 120, 15)
	}
	p := Feed(in)
	checkPlan(t, in, p)
	used := 0
	for _, c := range p.Circuits {
		if c.Lights > 0 {
			used++
		}
	}
	if used != 1 {
		t.Errorf("%d circuits for half an amp", used)
	}
}

func TestLowVoltageBehindSupplies(t *testing.T) {
	in := tunnel(2)
	l := label("low", 6, catalog.LED)
	l.Volts, l.Amps, l.MostWatts = 31, 6.0/31, 0
	l.Supply = &catalog.Supply{Watts: 24, Sockets: 2}
	in.legs(l)
	in.legs(l) // two a leg, side by side: one supply for both
	in.outlet("porch", -4000, -1000, 230, 16)
	p := Feed(in)
	checkPlan(t, in, p)
	if p.Supplies != 4 {
		t.Errorf("%d supplies, want one a foot", p.Supplies)
	}
	if got, want := float64(p.Circuits[0].Lights), 4*24/230.0; math.Abs(got-want) > 1e-9 {
		t.Errorf("primary %v A, want %v", got, want)
	}
	if c := p.Chains[0]; c.EndVolts > 31 || c.EndVolts < 30 || slices.Contains(codes(p), "mains-within-reach") {
		t.Errorf("end volts %v, findings %v", c.EndVolts, codes(p))
	}
}

// 13.6 A at one foot near the outlet: the drop would allow a 16 AWG cord, its 13 A do not.
func TestCordCarriesItsCurrent(t *testing.T) {
	in := tunnel(1)
	l := label("big", 204, catalog.Incandescent)
	l.Gauge = 3.3
	for range 8 {
		in.hang(lights.Leg(spec.Left, 1), l, foot(spec.Left, 1), top(spec.Left, 1))
	}
	in.outlet("porch", -half, -2000, 120, 20)
	p := Feed(in)
	checkPlan(t, in, p)
	if p.Feeders[0].Cord != "14 AWG" {
		t.Errorf("%v A on a %s cord", p.Feeders[0].Amps, p.Feeders[0].Cord)
	}
}

// Two walls of 6.4 A on an outlet with one socket go on a three-way tap there.
func TestTapInTheOutlet(t *testing.T) {
	in := tunnel(4)
	in.legs(label("big", 192, catalog.Incandescent)) // 1.6 A a leg, 6.4 A a wall
	in.outlet("porch", -4000, -1000, 120, 20)
	in.Spec.Site.Outlets[0].Sockets = 1
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Feeders) != 1 || p.Feeders[0].Joints[0].Taps != 1 || p.Feeders[0].Joints[0].Onward != 2 {
		t.Errorf("12.8 A behind one tap in the outlet: %+v", p.Feeders)
	}
}

// What one plug carries bounds what is put behind a tap in the outlet.
func TestPack(t *testing.T) {
	all := []branch{{amps: 8}, {amps: 10}, {amps: 5}, {amps: 9}}
	in, rest := pack(all, 2, 15)
	if len(in[0]) != 2 || in[0][0].amps != 10 || in[0][1].amps != 5 || len(in[1]) != 1 || in[1][0].amps != 9 || len(rest) != 1 || rest[0].amps != 8 {
		t.Errorf("packed %+v, rest %+v", in, rest)
	}
	if in, rest := pack(all, 4, 15); len(in) != 4 || len(rest) != 0 {
		t.Errorf("a socket each: %+v, %+v", in, rest)
	}
	if in, rest := pack([]branch{{amps: 16}, {amps: 17}, {amps: 4}}, 2, 15); len(in) != 1 || len(rest) != 2 {
		t.Errorf("a socket that nothing fits is no feeder: %+v, %+v", in, rest)
	}
}

// One plug carries 15 A, whatever the breaker: what draws more goes on no cord, and what meets at one foot is fed by two.
func TestPlugsCarryNoMore(t *testing.T) {
	in := tunnel(2)
	hog := label("hog", 1920, catalog.LED) // 16 A
	hog.MostWatts = 2000
	in.hang(lights.Leg(spec.Left, 1), hog, foot(spec.Left, 1), top(spec.Left, 1))
	in.outlet("porch", -4000, -1000, 120, 100)
	p := Feed(in)
	if len(p.Feeders) != 0 || !slices.Contains(codes(p), "not-enough-amps") {
		t.Errorf("16 A: feeders %+v, findings %v", p.Feeders, codes(p))
	}
	in = tunnel(2)
	half := label("half", 960, catalog.LED) // 8 A each
	half.MostWatts = 1000
	for range 3 {
		in.hang(lights.Leg(spec.Left, 1), half, foot(spec.Left, 1), top(spec.Left, 1))
	}
	in.outlet("porch", -4000, -1000, 120, 100)
	p = Feed(in)
	fed := measure.Current(0)
	for _, f := range p.Feeders {
		fed += f.Amps
		if f.Amps > 15 || f.Cord == "" {
			t.Errorf("feeder %+v", f)
		}
	}
	if fed != 16 || !slices.Contains(codes(p), "not-enough-sockets") {
		t.Errorf("three of 8 A at one foot on two sockets: %v A fed, findings %v", fed, codes(p))
	}
}

func TestWrongVolts(t *testing.T) {
	in := tunnel(2)
	in.legs(label("led", 4.8, catalog.LED))
	in.outlet("porch", -4000, -1000, 230, 16)
	p := Feed(in)
	if !slices.Contains(codes(p), "wrong-volts") || p.Chains[0].Outlet != "" || p.Circuits[0].Lights != 0 {
		t.Errorf("a 120 V string on 230 V: %v", codes(p))
	}
}

func TestProtectionIsAskedFor(t *testing.T) {
	in := garden()
	in.Spec.Power.Circuits[0].GFCI = false
	in.Spec.Site.Outlets[1].AlsoFeeds = "freezer"
	if got := codes(Feed(in)); !slices.Equal(got, []string{"no-gfci", "gfci-also-feeds"}) {
		t.Errorf("findings %v", got)
	}
}

func TestMainsWithinReach(t *testing.T) {
	in := tunnel(2)
	l := label("yard", 6, catalog.LED)
	l.Volts, l.Amps = 230, 6.0/230
	in.legs(l)
	in.outlet("hall", -4000, -1000, 230, 16)
	p := Feed(in)
	checkPlan(t, in, p)
	if !slices.Contains(codes(p), "mains-within-reach") {
		t.Errorf("findings %v", codes(p))
	}
}

// Chains along a row plug on where the string before ends, never into the row above.
func TestRowsStayOnTheirPath(t *testing.T) {
	in := tunnel(11)
	for row := 1; row <= 3; row++ {
		for k := range 2 {
			from, to := foot(spec.Left, 5*k+1), foot(spec.Left, 5*k+6)
			from.Z, to.Z = measure.Length(row)*300, measure.Length(row)*300
			in.hang(lights.RowOf(spec.Left, row+1), label("row", 4.8, catalog.LED), from, to)
		}
	}
	in.outlet("porch", -4000, -1000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Chains) != 3 || p.Taps != 1 {
		t.Fatalf("%d chains, %d taps, want a chain a row and one tap", len(p.Chains), p.Taps)
	}
}

// Energy examples as published for household lights: 500 W, 12 h, 40 days at 0.10: 240 kWh, 24; 35 W, 5 h, 30 days at 0.11: 5.25
// kWh, 0.58.
func TestEnergy(t *testing.T) {
	for _, c := range []struct {
		watts     measure.Power
		e         spec.Evenings
		kWh, cost float64
	}{
		{500, spec.Evenings{Hours: 12, Nights: 40, Price: 0.10}, 240, 24},
		{35, spec.Evenings{Hours: 5, Nights: 30, Price: 0.11}, 5.25, 0.58},
	} {
		kWh, cost := energy(c.watts, c.e)
		if math.Abs(kWh-c.kWh) > 1e-9 || math.Abs(cost-c.cost) > 0.005 {
			t.Errorf("%v W: %v kWh, %v, want %v, %v", c.watts, kWh, cost, c.kWh, c.cost)
		}
	}
}
