package ground

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

func TestStraightRowStandsWhereTheSpecSays(t *testing.T) {
	l := lay(row(4))
	want := []struct {
		name                 string
		x, y, along, running measure.Length
	}{
		{"L1", 240*in - 45*in, 72 * in, 0, 0},
		{"R1", 240*in + 45*in, 72 * in, 0, 0},
		{"L2", 195 * in, 135 * in, 63 * in, 63 * in},
		{"R2", 285 * in, 135 * in, 63 * in, 63 * in},
		{"L3", 195 * in, 198 * in, 126 * in, 126 * in},
		{"R3", 285 * in, 198 * in, 126 * in, 126 * in},
		{"L4", 195 * in, 261 * in, 189 * in, 189 * in},
		{"R4", 285 * in, 261 * in, 189 * in, 189 * in},
		{"G1L", 195 * in, 0, -72 * in, -72 * in},
		{"G1R", 285 * in, 0, -72 * in, -72 * in},
		{"G4L", 195 * in, 333 * in, 261 * in, 261 * in},
		{"G4R", 285 * in, 333 * in, 261 * in, 261 * in},
	}
	if len(l.Stakes) != len(want) {
		t.Fatalf("%d stakes, want %d", len(l.Stakes), len(want))
	}
	for i, w := range want {
		s := l.Stakes[i]
		if s.String() != w.name {
			t.Errorf("stake %d is %s, want %s", i, s.StakeID, w.name)
		}
		near(t, w.name+" x", s.X, w.x, 1e-9)
		near(t, w.name+" y", s.Y, w.y, 1e-9)
		near(t, w.name+" along", s.Along, w.along, 1e-9)
		near(t, w.name+" running", s.Running, w.running, 1e-9)
		offset := 45 * in
		if s.Side == spec.Left {
			offset = -offset
		}
		near(t, w.name+" offset", s.Offset, offset, 1e-9)
	}
	if !l.Straight {
		t.Error("a straight row is not said to be straight")
	}
	if g := stakeOf(t, l, "G4R"); !g.Guy || g.Arch != 4 || g.Length != 24*in || g.Depth != 20*in {
		t.Errorf("G4R is %+v", g)
	}
}

func TestHeadingTurnsClockwise(t *testing.T) {
	s := row(2)
	s.Site.Heading = math.Pi / 2 // along +x: the walker's left is +y
	l := lay(s)
	near(t, "L1 x", stakeOf(t, l, "L1").X, 240*in, 1e-9)
	near(t, "L1 y", stakeOf(t, l, "L1").Y, 72*in+45*in, 1e-9)
	near(t, "R2 x", stakeOf(t, l, "R2").X, 240*in+63*in, 1e-9)
	near(t, "R2 y", stakeOf(t, l, "R2").Y, 72*in-45*in, 1e-9)
}

// A wider end arch stands out from the baseline; running distances do not change.
func TestRunningIsAlongOnAStraightWhateverTheSpans(t *testing.T) {
	s := row(5)
	wide := s.Arch
	wide.Span = 100 * in
	s.Except = []spec.Except{{Arches: []int{1, 5}, Arch: wide}}
	l := lay(s)
	near(t, "baseline", l.Baseline, 45*in, 1e-9)
	for _, stake := range l.Stakes {
		near(t, stake.String()+" running", stake.Running, stake.Along, 1e-9)
	}
	near(t, "R5 offset", stakeOf(t, l, "R5").Offset, 50*in, 1e-9)
	near(t, "G5R offset", stakeOf(t, l, "G5R").Offset, 50*in, 1e-9)
}

func TestInnerArchesAreGuyedBothWaysOutsideTheWall(t *testing.T) {
	s := row(9)
	s.Guys.Arches = []int{9, 1, 5}
	l := lay(s)
	for name, want := range map[string]spec.Point{ // along, offset
		"G5La": {X: 4*63*in - 72*in, Y: -57 * in}, "G5Ra": {X: 4*63*in - 72*in, Y: 57 * in},
		"G5Lb": {X: 4*63*in + 72*in, Y: -57 * in}, "G5Rb": {X: 4*63*in + 72*in, Y: 57 * in},
	} {
		g := stakeOf(t, l, name)
		near(t, name+" along", g.Along, want.X, 1e-9)
		near(t, name+" offset", g.Offset, want.Y, 1e-9)
	}
	if n := len(l.Stakes); n != 18+2+4+2 {
		t.Errorf("%d stakes, want 26", n)
	}
}

func TestLoneArchIsHeldBothWays(t *testing.T) {
	s := row(1)
	s.Guys.Arches = []int{1, 1}
	l := lay(s)
	near(t, "G1La", stakeOf(t, l, "G1La").Along, -72*in, 1e-9)
	near(t, "G1Lb", stakeOf(t, l, "G1Lb").Along, 72*in, 1e-9)
	if len(l.Stakes) != 6 || len(l.Diagonals) != 0 {
		t.Errorf("%d stakes, %d diagonals", len(l.Stakes), len(l.Diagonals))
	}
}

// Pythagoras; 7 ft 6 in by 34 ft gives 417 13/16 in to the nearest sixteenth, computed by hand: √(90² + 408²) = 417.808.
func TestDiagonals(t *testing.T) {
	s := row(9)
	s.Tunnel.Spacing = 51 * in // 8 bays are 34 ft
	l := lay(s)
	if n := len(l.Diagonals); n != 18 {
		t.Fatalf("%d diagonals, want 18", n)
	}
	bay := measure.Length(math.Sqrt(90*90+51*51)) * in
	for _, d := range l.Diagonals[:16] {
		near(t, d.From.String()+"–"+d.To.String(), d.Distance, bay, 1e-9)
	}
	if d := l.Diagonals[3]; d.From.String() != "R2" || d.To.String() != "L3" {
		t.Errorf("fourth diagonal is %s–%s, want R2–L3", d.From, d.To)
	}
	for i, want := range [][2]string{{"L1", "R9"}, {"R1", "L9"}} {
		d := l.Diagonals[16+i]
		if d.From.String() != want[0] || d.To.String() != want[1] {
			t.Errorf("whole diagonal %s–%s, want %v", d.From, d.To, want)
		}
		if got := math.Round(d.Distance.Inches()*16) / 16; got != 417.8125 {
			t.Errorf("whole diagonal %v in, want 417 13/16", got)
		}
	}
}

// Whatever the shape of the tunnel, the two ways of measuring agree: distances and offsets from the plan, and the plan from
// the distances.
func TestMovingTheWholeSiteChangesNoTape(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 7))
	for range 40 {
		s := bent(random)
		l := lay(s)
		turn := measure.Angle(random.Float64()*2*math.Pi - math.Pi)
		shift := spec.Point{X: measure.Length(random.Float64()*80-40) * ft, Y: measure.Length(random.Float64()*80-40) * ft}
		move := func(p spec.Point) spec.Point { // turns clockwise about the origin, then shifts
			sin, cos := math.Sincos(float64(turn))
			return spec.Point{
				X: p.X*measure.Length(cos) + p.Y*measure.Length(sin) + shift.X,
				Y: p.Y*measure.Length(cos) - p.X*measure.Length(sin) + shift.Y,
			}
		}
		moved := *s
		moved.Site.Start, moved.Site.Heading = move(s.Site.Start), s.Site.Heading+turn
		moved.Site.Marks = nil
		for _, m := range s.Site.Marks {
			if m.At != nil {
				at := move(*m.At)
				m.At = &at
			}
			moved.Site.Marks = append(moved.Site.Marks, m)
		}
		k := lay(&moved)
		const tol = 1e-6 // mm
		if len(k.Ties) != len(l.Ties) || len(l.Ties) != len(l.Stakes) || len(k.Diagonals) != len(l.Diagonals) {
			t.Fatalf("%d and %d ties for %d stakes", len(l.Ties), len(k.Ties), len(l.Stakes))
		}
		for i, a := range l.Ties {
			b := k.Ties[i]
			if a.Stake != b.Stake || a.MarkA != b.MarkA || a.MarkB != b.MarkB || a.MarkC != b.MarkC {
				t.Fatalf("ties %v became %v", a, b)
			}
			near(t, "tape A", b.A, a.A, tol)
			near(t, "tape B", b.B, a.B, tol)
			near(t, "tape C", b.C, a.C, tol)
		}
		for i, a := range l.Diagonals {
			near(t, "diagonal", k.Diagonals[i].Distance, a.Distance, tol)
		}
		for i, a := range l.Stakes {
			near(t, "running", k.Stakes[i].Running, a.Running, tol)
			p := move(a.At())
			near(t, a.String()+" x", k.Stakes[i].X, p.X, tol)
			near(t, a.String()+" y", k.Stakes[i].Y, p.Y, tol)
		}
	}
}

// bent is a random tunnel on a random route among four marks, one of them by tapes.
func bent(random *rand.Rand) *spec.Spec {
	s := row(3 + random.IntN(12))
	turn := measure.Angle(random.Float64() - .5)
	s.Site.Route = []spec.Leg{
		{Straight: measure.Length(random.Float64()*10+1) * ft},
		{Turn: turn, Radius: measure.Length(random.Float64()*20+15) * ft},
		{Rest: true},
	}
	s.Site.Heading = measure.Angle(random.Float64() * 6)
	s.Guys.Arches = []int{1, 2, s.Tunnel.Arches}
	spread := func() measure.Length { return measure.Length(random.Float64()*90-45) * ft }
	s.Site.Marks = []spec.Mark{
		mark("shed", 0, 0), mark("post", 34*ft+spread()/4, spread()), mark("hydrant", -20*ft, spread()),
		{Name: "ash", From: []spec.Tape{{Mark: "shed", Distance: 31 * ft}, {Mark: "hydrant", Distance: 45 * ft}}, Side: spec.Right},
	}
	return s
}

func TestManyArchesAreQuick(t *testing.T) {
	s := bent(rand.New(rand.NewPCG(1, 2)))
	s.Tunnel.Arches = spec.MostArches
	s.Guys.Arches = []int{1, 60, 120, 180, 240}
	start := time.Now()
	l := lay(s)
	if took := time.Since(start); took > time.Second {
		t.Errorf("240 arches took %v", took)
	}
	if len(l.Ties) != 480+4+12 {
		t.Errorf("%d ties", len(l.Ties))
	}
}

func TestSitePutsThePlaneOnThePlan(t *testing.T) {
	s := bent(rand.New(rand.NewPCG(5, 6)))
	s.Site.Levels = []spec.Level{{Arch: 1, Left: 2 * in, Right: 6 * in}}
	l := lay(s)
	for arch := range l.Stations {
		left, right := l.Stakes[2*arch], l.Stakes[2*arch+1]
		x, y, z := l.Site(arch+1, right.Offset, right.Ground-4*in)
		near(t, "x", x, right.X, 1e-9)
		near(t, "y", y, right.Y, 1e-9)
		near(t, "z", z, right.Ground, 1e-9)
		x, y, z = l.Site(arch+1, left.Offset, -2*in)
		near(t, "x", x, left.X, 1e-9)
		near(t, "y", y, left.Y, 1e-9)
		near(t, "z", z, left.Ground, 1e-9)
	}
}

func TestNoArchNoNaN(t *testing.T) {
	s := row(3)
	l := Lay(s, Arches{Spans: []measure.Length{measure.Length(math.NaN()), 0, measure.Length(math.Inf(1))}, Crowns: nil})
	for _, stake := range l.Stakes[:6] {
		near(t, stake.String(), measure.Length(math.Abs(float64(stake.Offset))), 45*in, 1e-9)
	}
}
