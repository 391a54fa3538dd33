package power

import (
	"math"
	"reflect"
	"slices"
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
	return in
}

// As a builder lays it: left leg fed at its foot, right leg plugged in at the crown, one cord with several sockets from the outlet along the feet, the ridge by
// one cord up a leg. Sockets 5 ft apart hang without a loop where feet are 1.4 m apart, of which cords with more sockets are: a second cord leads to the first foot.
func TestGardenAsABuilderWould(t *testing.T) {
	in := garden()
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Cords) != 3 || len(p.Taps) != 0 || !p.PiecesProven {
		t.Errorf("%d cords and %d three-ways, proven %v", len(p.Cords), len(p.Taps), p.PiecesProven)
	}
	for _, c := range p.Chains {
		if c.On[0].Kind != lights.Ridge && (len(c.On) != 2 || c.From.At.Spot != lights.AtFoot) {
			t.Errorf("run %s on %v begins at %s, want the two legs of an arch from a foot", c.Name, c.On, c.From.At)
		}
	}
	if got := codes(p); len(got) > 0 {
		t.Errorf("findings %v on a plan with nothing wrong", got)
	}
}

// With every second arch apart, each outlet feeds its own arches; with the walls apart, each its own wall; what each feeds hangs on no cord over the
// opening.
func TestGardenApart(t *testing.T) {
	for split, pieces := range map[spec.Split]int{spec.SplitArches: 6, spec.SplitWalls: 6} {
		in := garden()
		in.Spec.Power.Split = split
		p := Feed(in)
		checkPlan(t, in, p)
		if p.Pieces() > pieces || len(p.Feeders) != 2 || slices.ContainsFunc(p.Cords, func(c Cord) bool { return c.Over }) {
			t.Errorf("%v: %d pieces, %d feeders", split, p.Pieces(), len(p.Feeders))
		}
	}
}

// Where every wrap is fixed with its plug at the foot, each leg wants a socket at its foot; no fewer pieces than with open ends, and more plugs.
func TestFixedPlugsStay(t *testing.T) {
	open := Feed(garden())
	in := garden()
	in.fix()
	p := Feed(in)
	checkPlan(t, in, p)
	if slices.Contains(p.Turned, true) || p.Pieces() < open.Pieces() || len(p.Chains) <= len(open.Chains) {
		t.Errorf("%d pieces for %d runs; open, %d for %d", p.Pieces(), len(p.Chains), open.Pieces(), len(open.Chains))
	}
}

// A lead that stays off the pipe and reaches from foot to foot joins whole arches: four of one string each behind one plug.
func TestLeadsBridgeTheBays(t *testing.T) {
	hang := func(lead measure.Length) Input {
		in := tunnel(8)
		for n := 1; n <= 8; n++ {
			in.hang(lights.Part{Kind: lights.Arch, Number: n}, label("led", 4.8, catalog.LED), foot(spec.Left, n), foot(spec.Right, n))
		}
		for i := range in.Strings {
			in.Strings[i].Off, in.Turned[i].Off = lead, lead
		}
		in.outlet("porch", -4000, -1000, 120, 15)
		return in
	}
	for lead, runs := range map[measure.Length]int{0: 8, bay + 100: 2} {
		in := hang(lead)
		p := Feed(in)
		checkPlan(t, in, p)
		if len(p.Chains) != runs {
			t.Errorf("leads of %v: %d runs, want %d", lead, len(p.Chains), runs)
		}
	}
	in := hang(bay + 100) // no lead closes a way
	in.Spec.Tunnel.Ways = []spec.Way{{Bay: 2, Wall: spec.Left}, {Bay: 2, Wall: spec.Right}}
	p := Feed(in)
	checkPlan(t, in, p)
	for _, c := range p.Chains {
		for i := 1; i < len(c.On); i++ {
			if a, b := c.On[i-1].Number, c.On[i].Number; min(a, b) == 2 && max(a, b) == 3 {
				t.Errorf("run %s hangs over the way in bay 2", c.Name)
			}
		}
	}
}

// Leads bridge the bays between the feet of either wall: what an outlet feeds has its plugs on the outlet's own side, with nothing overhead.
func TestLeadsBridgeOnTheFarSide(t *testing.T) {
	for side, x := range map[spec.Side]measure.Length{spec.Left: -4000, spec.Right: 4000} {
		in := tunnel(8)
		in.legs(label("led", 4.8, catalog.LED))
		for i := range in.Strings {
			in.Strings[i].Off, in.Turned[i].Off = bay+100, bay+100
		}
		in.outlet("porch", x, -1000, 120, 15)
		p := Feed(in)
		checkPlan(t, in, p)
		if len(p.Chains) != 4 || p.mark.over > 0 {
			t.Errorf("outlet on the %v: %d runs, %d cords overhead", side, len(p.Chains), p.mark.over)
		}
		for _, c := range p.Chains {
			if c.From.Side != side {
				t.Errorf("outlet on the %v: run %s begins at %v", side, c.Name, c.From.At)
			}
		}
	}
}

// Strings of other volts, lamps or make of supply never hang on each other; of other kinds they may, within the least of their labels.
func TestKindsJoin(t *testing.T) {
	for _, c := range []struct {
		change func(*catalog.String)
		runs   int
	}{
		{func(l *catalog.String) { l.Name = "other" }, 1},
		{func(l *catalog.String) { l.Name, l.MostChain = "other", 1 }, 2},
		{func(l *catalog.String) { l.Name, l.Lamp = "other", catalog.Incandescent }, 2},
		{func(l *catalog.String) { l.Name, l.Volts = "other", 24 }, 2},
	} {
		in := tunnel(1)
		a, b := label("led", 4.8, catalog.LED), label("led", 4.8, catalog.LED)
		c.change(&b)
		in.hang(lights.Leg(spec.Left, 1), a, foot(spec.Left, 1), top(spec.Left, 1))
		in.hang(lights.Leg(spec.Right, 1), b, foot(spec.Right, 1), top(spec.Right, 1))
		in.outlet("porch", -4000, -1000, 120, 15)
		if p := Feed(in); len(p.Chains) != c.runs {
			t.Errorf("%+v: %d runs, want %d", b, len(p.Chains), c.runs)
		} else if mixed := slices.Contains(codes(p), "mixed-run"); mixed != (c.runs == 1) {
			t.Errorf("findings %v", codes(p))
		}
	}
}

// Two plugs at one crown: the one sits in the back of the other only where the label has a socket there, and then no three-way is wanted; else the gain is told.
func TestBackSockets(t *testing.T) {
	in := tunnel(3)
	l := label("led", 4.8, catalog.LED)
	in.ridge(l)
	in.Spec.Power.Together = 2
	in.Spec.Site.Outlets = nil
	in.outlet("porch", -4000, -1000, 120, 15)
	for _, back := range []bool{false, true} {
		for i := range in.Strings {
			in.Strings[i].Label.BackSocket, in.Turned[i].Label.BackSocket = back, back
		}
		p := Feed(in)
		checkPlan(t, in, p)
		if told := p.Gain != nil; told && back {
			t.Errorf("back socket %v, gain told %v", back, told)
		}
	}
	in = tunnel(2)
	for range 2 {
		in.hang(lights.Leg(spec.Left, 1), l, foot(spec.Left, 1), top(spec.Left, 1))
	}
	in.fix()
	in.outlet("porch", -4000, -1000, 120, 15)
	in.Spec.Power.Inline = nil
	plain := Feed(in)
	checkPlan(t, in, plain)
	if plain.Gain == nil || plain.Gain.Pieces != plain.Pieces()-1 {
		t.Fatalf("two plugs at one foot: %d pieces, gain %+v", plain.Pieces(), plain.Gain)
	}
	for i := range in.Strings {
		in.Strings[i].Label.BackSocket, in.Turned[i].Label.BackSocket = true, true
	}
	p := Feed(in)
	checkPlan(t, in, p)
	if p.Pieces() != 1 || p.Gain != nil {
		t.Errorf("%d pieces with a socket in the back", p.Pieces())
	}
	for i := range in.Strings { // 3 of 4 on each plug: six are too many behind the first
		in.Strings[i].Label.MostChain, in.Turned[i].Label.MostChain = 1, 1
	}
	if p = Feed(in); p.Pieces() != plain.Pieces() {
		t.Errorf("%d pieces where the label allows one string behind a plug", p.Pieces())
	}
}

// A wall with a side way in it is fed from the other wall, or from an outlet beyond, before a cord passes the way; where there is nothing else, overhead, and told.
func TestNothingOverAWay(t *testing.T) {
	in := tunnel(6)
	in.legs(label("led", 4.8, catalog.LED))
	in.outlet("porch", -4000, -1000, 120, 15)
	in.outlet("shed", -4000, 5*bay, 120, 15)
	in.Spec.Tunnel.Ways = []spec.Way{{Bay: 3, Wall: spec.Left}}
	p := Feed(in)
	checkPlan(t, in, p)
	if p.mark.over != 0 || p.inUse() != 2 {
		t.Errorf("%d cords over ways, %d circuits", p.mark.over, p.inUse())
	}
	in.Spec.Power.Circuits, in.Spec.Site.Outlets = in.Spec.Power.Circuits[:1], in.Spec.Site.Outlets[:1]
	p = Feed(in)
	checkPlan(t, in, p)
	if p.mark.over != 1 {
		t.Errorf("%d cords over ways with one outlet, want 1", p.mark.over)
	}
	for _, c := range p.Cords {
		if c.Over && c.Lies < 2*crown {
			t.Errorf("cord %s passes the way overhead, but lies only %v", c.Name, c.Lies)
		}
	}
	in.Spec.Site.Cords.Crossing = spec.CrossCovered
	p = Feed(in)
	checkPlan(t, in, p)
	if len(p.Covers) != 1 {
		t.Errorf("covers of %v", p.Covers)
	}
}

// A cord to the far wall that passes a side way of that wall lies under two covers. By hand: 2.20 m from foot to foot at the way in and a bay of 1.40 m, with a hand past either foot
// 2.40 and 1.60 m: in half metres 2.5 and 2, in feet 8 and 6.
func TestCoversByLength(t *testing.T) {
	for units, want := range map[measure.System][]measure.Length{measure.Metric: {2500, 2000}, measure.Imperial: {8 * measure.Foot, 6 * measure.Foot}} {
		coversAre(t, units, want)
	}
}

func coversAre(t *testing.T, units measure.System, want []measure.Length) {
	t.Helper()
	in := tunnel(4)
	in.oneWall(spec.Right)
	in.outlet("porch", -4000, -1000, 230, 16)
	in.Spec.Units, in.Spec.Site.Cords.Crossing = units, spec.CrossCovered
	in.Spec.Tunnel.Ways = []spec.Way{{Bay: 2, Wall: spec.Right}}
	for i := range in.Strings {
		in.Strings[i].Label.Volts, in.Turned[i].Label.Volts = 230, 230
	}
	p := Feed(in)
	checkPlan(t, in, p)
	if !slices.Equal(p.Covers, want) {
		t.Errorf("%v: covers of %v, want %v", units, p.Covers, want)
	}
}

// oneWall hangs a short string low on each foot of a wall, its plug fixed there: it is fed along that wall or not at all.
func (in *Input) oneWall(side spec.Side) {
	for n := 1; n <= in.Spec.Tunnel.Arches; n++ {
		to := foot(side, n)
		to.Y += 500
		in.hang(lights.Leg(side, n), label("led", 4.8, catalog.LED), foot(side, n), to)
	}
	in.fix()
}

// Lights on the far wall alone: the outlet beside it is used, though it is farther off and on another circuit, before a cord goes over the opening from the near
// one. Without it that cord is all there is.
func TestFarOutletBeforeACordOverTheEntrance(t *testing.T) {
	in := tunnel(4)
	in.oneWall(spec.Right)
	in.outlet("porch", -2000, -1000, 120, 15)
	near := Feed(in)
	checkPlan(t, in, near)
	if near.mark.over == 0 {
		t.Fatal("the porch feeds the far wall over no opening")
	}
	in.outlet("garage", 5200, 0, 120, 20)
	p := Feed(in)
	checkPlan(t, in, p)
	if p.mark.over != 0 || p.inUse() != 1 || p.Feeders[0].Outlet != "garage" {
		t.Errorf("%d cords over the opening, %d circuits, first %s", p.mark.over, p.inUse(), p.Feeders[0].Outlet)
	}
}

// Lights on both walls: a second circuit is taken up before a cord goes over the opening, though one would carry all.
func TestSecondCircuitBeforeACordOverTheEntrance(t *testing.T) {
	in := tunnel(4)
	in.oneWall(spec.Left)
	in.oneWall(spec.Right)
	in.outlet("porch", -2000, -1000, 120, 15)
	one := Feed(in)
	checkPlan(t, in, one)
	if one.mark.over == 0 || one.unfed() > 0 {
		t.Fatalf("%d cords over the opening, %d strings unfed from one outlet", one.mark.over, one.unfed())
	}
	in.outlet("garage", 5200, 0, 120, 20)
	p := Feed(in)
	checkPlan(t, in, p)
	if p.mark.over != 0 || p.inUse() != 2 {
		t.Errorf("%d cords over the opening, %d circuits with an outlet at hand on each side", p.mark.over, p.inUse())
	}
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

// A ridge plugs end to end along the crown as far as its labels allow, and is fed by one cord up a leg: in one run without a three-way, in two by one where they meet.
func TestRidgeIsItsOwnRun(t *testing.T) {
	for most, taps := range map[int]int{8: 0, 4: 1} {
		in := tunnel(9)
		in.legs(label("led", 4.8, catalog.LED))
		l := label("led", 4.8, catalog.LED)
		l.MostChain = most
		in.ridge(l)
		in.outlet("porch", -4000, -1000, 120, 15)
		p := Feed(in)
		checkPlan(t, in, p)
		for _, c := range p.Chains {
			if c.On[0].Kind == lights.Ridge && (len(c.Strings) != most || c.Lies < crown) {
				t.Errorf("ridge run %s of %d strings, its cords lie %v", c.Name, len(c.Strings), c.Lies)
			}
		}
		up := 0
		for _, c := range p.Cords {
			if c.To.At.Spot == lights.AtCrown {
				up++
			}
		}
		if up != 1 || len(p.Taps) != taps || taps > 0 && p.Taps[0].At.At.Spot != lights.AtCrown {
			t.Errorf("%d on a label: %d cords up, three-ways %+v", most, up, p.Taps)
		}
	}
}

// Legs that hang on nothing end at idle sockets at their crowns: there the ridge hangs, each string on its own leg, sooner on that nearer to an outlet, and wants no
// cord: no piece more than the legs alone.
func TestRidgeHangsOnLegs(t *testing.T) {
	in := tunnel(7)
	l := label("big", 40, catalog.Incandescent)
	l.MostChain = 2
	in.legs(l)
	bare := in
	bare.Strings, bare.Turned, bare.Lines = slices.Clone(in.Strings), slices.Clone(in.Turned), slices.Clone(in.Lines)
	in.ridge(l)
	var pieces []int
	for _, one := range []*Input{&bare, &in} {
		one.Spec.Power.Circuits, one.Spec.Site.Outlets = nil, nil
		one.outlet("porch", -3000, -1000, 120, 15)
		one.outlet("garage", 3500, -1000, 120, 15)
		one.Spec.Power.Split = spec.SplitWalls
		p := Feed(*one)
		checkPlan(t, *one, p)
		pieces = append(pieces, p.Pieces())
		for _, c := range p.Chains {
			if len(c.On) > 1 && (c.On[0].Kind != lights.LegLeft || c.On[1].Number != c.On[0].Number) {
				t.Errorf("run %s on %v", c.Name, c.On)
			}
		}
	}
	if pieces[0] != pieces[1] {
		t.Errorf("%d pieces for the legs, %d with the ridge on them", pieces[0], pieces[1])
	}
}

// A cord leads from the outlet right up to the ridge where nothing else is wanted at that foot: 4.12 m to foot L1 and 3.5 m up are 7.62 m, with a foot of slack at
// each end 8.23 m: one cord of 50 ft, for 25 ft are too short.
func TestCordLeadsRightUp(t *testing.T) {
	in := tunnel(3)
	in.ridge(label("led", 4.8, catalog.LED))
	in.outlet("porch", -5100, -1000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Cords) != 1 || len(p.Taps) != 0 || !p.PiecesProven || p.Cords[0].To.At.Spot != lights.AtCrown || p.Cords[0].Length != 50*measure.Foot || !p.Cords[0].Lifts {
		t.Errorf("cords %+v, %d three-ways", p.Cords, len(p.Taps))
	}
}

// Sockets on a cord are apart by the way from plug to plug. Strings begin 3 ft up four legs 5 ft apart; by hand, where the lowest begin 6 in up: 30 in down, 60 along, 30 up, and
// 9 in of slack are 129 in: sockets 10 ft apart do not reach from leg to leg; 11 ft apart they do.
func TestSocketsReachUpTheLegs(t *testing.T) {
	for _, c := range []struct {
		apart measure.Length
		reach bool
	}{{10 * measure.Foot, false}, {129*measure.Inch - 1, false}, {129 * measure.Inch, true}} {
		in := tunnel(4)
		in.Spec.Units = measure.Imperial
		for i := range in.Ground.Stakes {
			in.Ground.Stakes[i].Y = measure.Length(i/2) * 60 * measure.Inch
		}
		for n := 1; n <= 4; n++ {
			from, to := foot(spec.Left, n), top(spec.Left, n)
			from.Y, to.Y = measure.Length(n-1)*60*measure.Inch, measure.Length(n-1)*60*measure.Inch
			from.Z = 36 * measure.Inch
			in.hang(lights.Leg(spec.Left, n), label("led", 4.8, catalog.LED), from, to)
		}
		in.fix()
		in.outlet("porch", -2500, 0, 120, 15)
		cord, _ := catalog.FindCord("16 AWG")
		in.Spec.Power.Inline = []catalog.Inline{{Cord: cord, Length: 50 * measure.Foot, Sockets: 4, Apart: c.apart}}
		p := Feed(in)
		if all := len(p.Cords[0].Places) == 4; all != c.reach {
			t.Errorf("%v apart: %d sockets in use", c.apart, len(p.Cords[0].Places))
		}
	}
}

func TestWattsLimitTheRun(t *testing.T) {
	in := tunnel(8)
	in.Spec.Power.Together = 25
	in.ridge(label("mini", 40, catalog.Incandescent)) // 40 W: five are 200 W, six are over 210 W
	for i := range in.Strings {
		in.Strings[i].Label.Gauge, in.Turned[i].Label.Gauge = 3, 3 // the volts do not bind
	}
	in.outlet("porch", -4000, -1000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Chains) != 2 || max(len(p.Chains[0].Strings), len(p.Chains[1].Strings)) > 5 {
		t.Errorf("runs %+v, want two of five at most", p.Chains)
	}
}

// The fuse in a plug bears all that hangs from it, whatever the watts of the label: of 0.3 A each, three behind 1 A.
func TestFuseLimitsTheRun(t *testing.T) {
	l := label("led", 36, catalog.LED)
	l.Fuse, l.MostWatts, l.Gauge = 1, 500, 3
	in := tunnel(8)
	in.Spec.Power.Together = 25
	in.ridge(l)
	in.outlet("porch", -4000, -1000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	if n := len(p.Chains); n < 3 || p.Chains[n-1].Limit.Kind != FuseAmps || !near(p.Chains[n-1].Limit.Share(), 0.9) {
		t.Errorf("%d runs, the last nearest to %v", n, p.Chains[n-1].Limit)
	}
	// What sits in a plug's back passes its fuse as well.
	in = tunnel(1)
	l.Watts, l.Amps, l.BackSocket = 72, 0.6, true
	for range 2 {
		in.hang(lights.Leg(spec.Left, 1), l, foot(spec.Left, 1), top(spec.Left, 1))
	}
	in.fix()
	in.outlet("porch", -4000, -1000, 120, 15)
	in.Spec.Power.Inline = nil
	if p := Feed(in); len(p.Taps) != 1 {
		t.Errorf("1.2 A in one plug with a fuse of 1 A: %+v", p.Chains)
	}
	// One string that draws more than its own fuse is told.
	in = tunnel(1)
	l.Watts, l.Amps = 144, 1.2
	in.legs(l)
	in.outlet("porch", -4000, -1000, 120, 15)
	if p := Feed(in); !slices.Contains(codes(p), "string-over-limit") {
		t.Errorf("1.2 A through a fuse of 1 A: findings %v", codes(p))
	}
}

// One timer carries what an outlet's plugs draw while it may; where they draw more, each has its own. Of 15 A timers two 6 A plugs go in one, two of 8 A do not.
func TestTimersByTheirLoad(t *testing.T) {
	for watts, want := range map[measure.Power][]Timer{
		6:    {{"porch", 0.1, 8, 2}},
		720:  {{"porch", 12, 13, 2}},
		960:  {{"porch", 8, 8, 1}, {"porch", 8, 8, 1}},
		1020: {{"porch", 8.5, 10, 1}, {"porch", 8.5, 10, 1}},
	} {
		in := tunnel(1)
		l := label("big", watts, catalog.LED)
		l.MostWatts, l.Fuse, l.Gauge = 2000, 0, 10
		in.legs(l)
		in.fix()
		in.outlet("porch", 0, -3000, 120, 25)
		p := Feed(in)
		checkPlan(t, in, p)
		if !slices.EqualFunc(p.Timers, want, func(a, b Timer) bool {
			return a.Outlet == b.Outlet && a.Size == b.Size && near(float64(a.Amps), float64(b.Amps))
		}) {
			t.Errorf("%v W a side: timers %+v, want %+v", watts, p.Timers, want)
		}
	}
}

// One outlet for two walls that are fixed: down half a metre from it, and over the nearest arch to the far wall, up, across and down.
func TestFarWallIsReachedOverhead(t *testing.T) {
	in := tunnel(2)
	in.legs(label("led", 4.8, catalog.LED))
	in.fix()
	in.outlet("porch", -half, -3000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	for _, c := range p.Chains {
		want := map[string]measure.Length{
			"S1": 3500, "S3": 3500 + bay,
			"S2": 3500 + 2*crown + 2*half, "S4": 3500 + 2*crown + 2*half + bay,
		}[c.Strings[0]]
		if !near(float64(c.Lies), float64(want)) {
			t.Errorf("%s lies %v, want %v", c.Strings[0], c.Lies, want)
		}
	}
	in.Spec.Site.Cords.Crossing = spec.CrossCovered
	if c := Feed(in).Chains[1]; !near(float64(c.Lies), float64(3500+2*half)) {
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
	if len(p.Chains) != 3 || p.Chains[0].Outlet != "" || p.Chains[0].EndVolts >= 120 || p.Chains[0].EndVolts < 119 {
		t.Errorf("chains %+v", p.Chains)
	}
}

func TestNotEnoughAmps(t *testing.T) {
	in := tunnel(6)
	in.legs(label("c9", 120, catalog.Incandescent)) // 1 A a leg, 12 A in all; two are more than a plug carries
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
	in.Spec.Power.Split = spec.SplitWalls
	p := Feed(in)
	checkPlan(t, in, p)
	if p.Missing != 0 || !slices.Contains(codes(p), "split-not-possible") {
		t.Errorf("missing %v, findings %v", p.Missing, codes(p))
	}
}

func TestSplitNeedsTwoTrips(t *testing.T) {
	in := garden()
	in.Spec.Power.Split = spec.SplitArches
	in.Spec.Power.Circuits = in.Spec.Power.Circuits[:1]
	in.Spec.Site.Outlets = in.Spec.Site.Outlets[:1]
	if p := Feed(in); !slices.Contains(codes(p), "split-not-possible") {
		t.Errorf("one outlet: findings %v", codes(p))
	}
	in = garden()
	in.Spec.Power.Split = spec.SplitArches
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
	in.fix()
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

// Strings of two kinds share a supply at each foot where theirs are alike; of other watts, sockets or volts none do. By hand: two runs a foot, of two legs each arch.
func TestUnlikeStringsShareLikeSupplies(t *testing.T) {
	for _, c := range []struct {
		supply catalog.Supply
		volts  measure.Voltage
		want   int
	}{
		{catalog.Supply{Watts: 24, Sockets: 2}, 24, 4},
		{catalog.Supply{Watts: 30, Sockets: 2}, 24, 8},
		{catalog.Supply{Watts: 24, Sockets: 3}, 24, 8},
		{catalog.Supply{Watts: 24, Sockets: 2}, 31, 8},
	} {
		in := tunnel(2)
		l := label("white", 6, catalog.LED)
		l.Volts, l.Amps, l.MostWatts, l.Supply = 24, 6.0/24, 0, &catalog.Supply{Watts: 24, Sockets: 2}
		in.legs(l)
		l.Name, l.Volts, l.Amps, l.Supply = "blue", c.volts, measure.Current(6/c.volts), &c.supply
		in.legs(l)
		in.fix()
		in.outlet("porch", -4000, -1000, 230, 16)
		p := Feed(in)
		checkPlan(t, in, p)
		if p.Supplies != c.want {
			t.Errorf("blue on %v V of %+v: %d supplies, want %d", c.volts, c.supply, p.Supplies, c.want)
		}
	}
}

// Prongs on one leg share a supply as they would a three-way: 24 in apart they do, an inch more they do not. The cord is led up to the higher one.
func TestASupplyReachesAsFarAsASocket(t *testing.T) {
	for _, c := range []struct{ apart, want measure.Length }{{24, 1}, {25, 2}} {
		in := tunnel(1)
		l := label("row", 6, catalog.LED)
		l.Volts, l.Amps, l.MostWatts, l.Supply = 24, 6.0/24, 0, &catalog.Supply{Watts: 24, Sockets: 2}
		for n, z := range []measure.Length{150, 150 + c.apart*measure.Inch} {
			from, to := foot(spec.Left, 1), foot(spec.Left, 1)
			from.Z, to.Z, to.Y = z, z, to.Y+2000
			in.hang(lights.RowOf(spec.Left, n+1), l, from, to)
		}
		in.fix()
		in.outlet("porch", -4000, -1000, 230, 16)
		p := Feed(in)
		checkPlan(t, in, p)
		if p.Supplies != int(c.want) {
			t.Errorf("prongs %v in apart: %d supplies, want %v", c.apart, p.Supplies, c.want)
		}
		if plugs := p.Feeders[0].Joints[len(p.Feeders[0].Joints)-1].Plugs; c.want == 1 && (len(plugs) != 1 || len(plugs[0].Chains) != 2) {
			t.Errorf("plugs %+v", plugs)
		}
	}
}

// Supplies stand at the feet that the outlet is nearer to, so that no cord goes overhead. Each is in a box with its own plug and its run's: what is left to cover is
// string on string, and cord in cord.
func TestSuppliesByTheOutlet(t *testing.T) {
	for side, x := range map[spec.Side]measure.Length{spec.Left: -4000, spec.Right: 4000} {
		in := tunnel(5)
		l := label("low", 4, catalog.LED)
		l.Volts, l.Amps, l.MostWatts, l.Supply = 31, 4.0/31, 0, &catalog.Supply{Watts: 24, Sockets: 1}
		in.legs(l)
		in.ridge(l)
		in.outlet("porch", x, -1000, 230, 16)
		p := Feed(in)
		checkPlan(t, in, p)
		for _, c := range p.Chains {
			if c.On[0].IsLeg() && c.From.Side != side {
				t.Errorf("outlet on the %v: run %s begins at %v", side, c.Name, c.From.At)
			}
		}
		if p.mark.over > 0 || p.Supplies != 6 || p.Boxed != 12 || p.Covered() != 5+3+len(p.Cords)-len(p.Feeders) {
			t.Errorf("outlet on the %v: %d cords overhead, %d supplies, %d joints boxed and %d covered", side, p.mark.over, p.Supplies, p.Boxed, p.Covered())
		}
	}
}

// Two 24 V strings of an arch lose more than 3 and less than 5 % of it, by hand: 0.5 A there and back through the first and 0.25 A through the second, 10 m each, lamps at
// their far ends. Behind a supply they hang on each other.
func TestStringsBehindASupplyHangOnEachOther(t *testing.T) {
	in := tunnel(2)
	l := label("low", 6, catalog.LED)
	l.Volts, l.Amps, l.MostWatts, l.Gauge, l.Length, l.Lead = 24, 0.25, 0, 0.25, 10_000, 0
	l.Supply = &catalog.Supply{Watts: 24, Sockets: 2}
	in.legs(l)
	in.outlet("porch", -4000, -1000, 230, 16)
	p := Feed(in)
	checkPlan(t, in, p)
	const ohms = 0.0195 / 0.25 // a metre of 0.25 mm2, by 19.5 ohm/km of 1 mm2: IEC 60228, flexible
	want := (0.5 + 0.25) * 20 * ohms / 24
	if c := p.Chains[0]; p.Supplies != 2 || len(c.Strings) != 2 || math.Abs(c.Drop-want) > 0.001 {
		t.Errorf("%d supplies, %v loses %.4f, by hand %.4f", p.Supplies, c.Strings, c.Drop, want)
	}
	if slices.Contains(codes(p), "drop-over-3-percent") {
		t.Errorf("found %v", codes(p))
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

// Two walls on an outlet with one socket go on a three-way there.
func TestTapInTheOutlet(t *testing.T) {
	in := tunnel(4)
	in.legs(label("big", 120, catalog.Incandescent)) // 1 A a leg
	in.fix()
	in.outlet("porch", -4000, -1000, 120, 20)
	in.Spec.Site.Outlets[0].Sockets = 1
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Feeders) != 1 || p.Feeders[0].Joints[0].Taps != 1 || p.Feeders[0].Joints[0].Onward != 2 {
		t.Errorf("8 A behind one three-way in the outlet: %+v", p.Feeders)
	}
}

// What one plug carries bounds what is put behind a three-way in the outlet.
func TestPack(t *testing.T) {
	all := []line{{amps: 8}, {amps: 10}, {amps: 5}, {amps: 9}}
	in, rest := pack(all, 2, 3, 15)
	if len(in[0]) != 2 || in[0][0].amps != 10 || in[0][1].amps != 5 || len(in[1]) != 1 || in[1][0].amps != 9 || len(rest) != 1 || rest[0].amps != 8 {
		t.Errorf("packed %+v, rest %+v", in, rest)
	}
	if in, rest := pack(all, 4, 3, 15); len(in) != 4 || len(rest) != 0 {
		t.Errorf("a socket each: %+v, %+v", in, rest)
	}
}

// One plug carries 15 A, whatever the breaker: what draws more goes on no cord, and what meets at one foot is fed by two.
func TestPlugsCarryNoMore(t *testing.T) {
	in := tunnel(2)
	hog := label("hog", 1920, catalog.LED) // 16 A
	hog.MostWatts, hog.Fuse = 2000, 0
	in.hang(lights.Leg(spec.Left, 1), hog, foot(spec.Left, 1), top(spec.Left, 1))
	in.outlet("porch", -4000, -1000, 120, 100)
	p := Feed(in)
	if len(p.Feeders) != 0 || !slices.Contains(codes(p), "not-enough-amps") {
		t.Errorf("16 A: feeders %+v, findings %v", p.Feeders, codes(p))
	}
	in = tunnel(2)
	half := label("half", 960, catalog.LED) // 8 A each
	half.MostWatts, half.Fuse = 1000, 0
	in.fix()
	for range 3 {
		in.hang(lights.Leg(spec.Left, 1), half, foot(spec.Left, 1), top(spec.Left, 1))
	}
	in.fix()
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
	in.Spec.Power.Split = spec.SplitArches
	in.Spec.Power.Circuits[0].GFCI = false
	in.Spec.Site.Outlets[1].AlsoFeeds = "freezer"
	p := Feed(in)
	if got := codes(p); !slices.Contains(got, "no-gfci") || !slices.Contains(got, "gfci-also-feeds") || !slices.Equal(p.Bare, []string{"porch"}) {
		t.Errorf("findings %v, outlets without %v", got, p.Bare)
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

// Runs along a row plug on where the string before ends, never into the row above, no more than together in each.
func TestRowsStayOnTheirPath(t *testing.T) {
	in := tunnel(11)
	for row := 1; row <= 3; row++ {
		first := len(in.Strings)
		for k := range 2 {
			from, to := foot(spec.Left, 5*k+1), foot(spec.Left, 5*k+6)
			from.Z, to.Z = measure.Length(row)*300, measure.Length(row)*300
			in.hang(lights.Part{Kind: lights.RowLeft, Number: row}, label("row", 4.8, catalog.LED), from, to)
		}
		in.Lines = append(in.Lines[:len(in.Lines)-2], lights.Line{First: first, Count: 2, Wrap: -1, Path: row - 1})
	}
	in.outlet("porch", -4000, -1000, 120, 15)
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Chains) != 3 || len(p.Taps) > 1 {
		t.Fatalf("%d runs, %d three-ways, want a run a row and one three-way at most", len(p.Chains), len(p.Taps))
	}
}

// Energy examples as published for household lights: 500 W, 12 h, 40 days: 240 kWh; 35 W, 5 h, 30 days: 5.25 kWh.
func TestEnergy(t *testing.T) {
	for _, c := range []struct {
		watts measure.Power
		e     spec.Evenings
		kWh   float64
	}{
		{500, spec.Evenings{Hours: 12, Nights: 40}, 240},
		{35, spec.Evenings{Hours: 5, Nights: 30}, 5.25},
	} {
		if kWh := energy(c.watts, c.e); math.Abs(kWh-c.kWh) > 1e-9 {
			t.Errorf("%v W: %v kWh, want %v", c.watts, kWh, c.kWh)
		}
	}
}
