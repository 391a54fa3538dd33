package ground

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// setOff sets every left stake that no marks reach again, chord by chord with tape and square, from those that marks reach and those set before; it fails the test where
// a chord needs a stake that is not there yet.
func setOff(t *testing.T, l Layout, lim practice.Ground) {
	t.Helper()
	known := map[StakeID]spec.Point{}
	for arch, yes := range l.reached(lim) {
		if yes {
			s := l.Stakes[2*arch-2]
			known[s.StakeID] = s.At()
		}
	}
	for _, c := range l.Chords {
		from, ok1 := known[c.From]
		to, ok2 := known[c.To]
		zero, ok3 := known[c.Zero]
		if !ok1 || !ok2 || !ok3 {
			t.Fatalf("the chord %s–%s needs a stake that is not set yet", c.From, c.To)
		}
		direction := math.Atan2(float64(to.Y-from.Y), float64(to.X-from.X))
		for i, o := range c.Offsets {
			at := spec.Point{
				X: zero.X + o.Along*measure.Length(math.Cos(direction)) + o.Off*measure.Length(math.Sin(direction)),
				Y: zero.Y + o.Along*measure.Length(math.Sin(direction)) - o.Off*measure.Length(math.Cos(direction)),
			}
			want := stakeOf(t, l, o.Stake.String())
			if want.Arch != c.Arches[i] || Distance(at, want.At()) > 1e-5 {
				t.Errorf("%s is set %v from its place", o.Stake, Distance(at, want.At()))
			}
			if o.Along > lim.Reach || o.Along <= 0 || len(c.Offsets) > 1 && measure.Abs(o.Off) > lim.Offset {
				t.Errorf("%s is set %v along and %v off", o.Stake, o.Along, o.Off)
			}
			known[o.Stake] = want.At()
		}
	}
	for i := range l.Stations {
		if s := l.Stakes[2*i]; known[s.StakeID] == (spec.Point{}) {
			t.Errorf("nothing sets %s", s.StakeID)
		}
	}
}

// A bend with its marks at one end, at the other, or at both, too long for a tape: what is beyond their reach is set by chords, to the same places.
func TestChordsSetTheSameStakes(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	for k := range 30 {
		s := row(50) // 257 ft
		s.Guys.Arches = nil
		s.Site.Route = []spec.Leg{
			{Straight: measure.Length(random.Float64()*80+20) * ft},
			{Turn: measure.Angle(random.Float64()*3 - 1.5), Radius: measure.Length(random.Float64()*30+15) * ft},
			{Straight: measure.Length(random.Float64()*40) * ft}, {Turn: measure.Angle(random.Float64() - .5), Radius: 60 * ft}, {Rest: true},
		}
		l := lay(s)
		end := l.Stations[49].At
		near := []spec.Mark{mark("gate", -10*ft, 0), mark("post", 60*ft, 10*ft)}
		far := []spec.Mark{mark("barn", end.X-35*ft, end.Y+5*ft), mark("well", end.X+10*ft, end.Y-30*ft)}
		s.Site.Marks = [][]spec.Mark{near, far, append(near, far...)}[k%3]
		l = lay(s)
		if len(l.Chords) == 0 {
			t.Fatal("no chords")
		}
		setOff(t, l, practice.OnGround(s.Units))
		if text := want(t, l, "tie-out-of-reach", finding.LookAt); !strings.Contains(text, "chord") {
			t.Error(text)
		}
		if longest := l.LongestTape(s.Units); longest > 100*ft {
			t.Errorf("somebody tapes %v", longest)
		}
	}
}

// Round a circle of radius R the offset of a stake from the tangent at the arc's start is R − √(R² − d²) for d along it: the textbook's tangent offsets. A straight of
// two bays leads into the bend and marks reach it alone.
func TestCarriedChordIsTheTangent(t *testing.T) {
	const radius = 120 * ft
	s := row(40)
	s.Guys.Arches = nil
	s.Site.Route = []spec.Leg{{Straight: 126 * in}, {Turn: 3, Radius: radius}}
	s.Site.Marks = []spec.Mark{mark("gate", -60*ft, -15*ft), mark("post", 100*ft, -15*ft)}
	l := lay(s)
	if known := l.reached(practice.OnGround(s.Units)); !known[3] {
		t.Fatal("the marks reach nothing")
	}
	for _, c := range l.Chords {
		setOff(t, l, practice.OnGround(s.Units))
		if c.Zero.String() != "L3" {
			continue
		}
		inner := radius + 45*in // a right turn has L outside
		for _, o := range c.Offsets {
			near(t, o.Stake.String(), o.Off, inner-measure.Length(math.Sqrt(float64(inner*inner-o.Along*o.Along))), 1e-6)
		}
	}
}

// Marks at the entrance of a straight row reach so many arches; their strings are carried on. By hand: both marks lie 30 ft beside the walk's middle, level with arch 1, so
// a tape of 100 ft reaches the far side's stake at √(100² − 33.75²) = 94.1 ft: 17 bays of 5 ft 3 in are 89.25 ft, 18 are 94.5.
func TestAnchors(t *testing.T) {
	s := row(40)
	s.Site.Marks = []spec.Mark{mark("gate", 20*ft-30*ft, 6*ft), mark("post", 20*ft+30*ft, 6*ft)}
	l := lay(s)
	first, last, ok := l.Anchors(s.Units)
	if !ok || first != 1 || last != 18 {
		t.Errorf("anchored at arches %d and %d, %v", first, last, ok)
	}
	if longest := l.LongestTape(s.Units); longest > 100*ft {
		t.Errorf("somebody tapes %v", longest)
	}
	s.Site.Marks = nil
	if _, _, ok := lay(s).Anchors(s.Units); ok {
		t.Error("no marks, and yet anchored")
	}
}

// Stretches follow each other, each within a tape's reach both ways across, and none could take one arch more.
func TestCheckStretches(t *testing.T) {
	s := row(60)
	s.Site.Route = []spec.Leg{{Straight: 100 * ft}, {Turn: 1, Radius: 40 * ft}, {Rest: true}}
	l := lay(s)
	across := func(a, b int) measure.Length {
		p, q := l.Stakes[2*a-2:2*a], l.Stakes[2*b-2:2*b]
		return max(Between(p[0], q[0]), Between(p[0], q[1]), Between(p[1], q[0]), Between(p[1], q[1]))
	}
	at := 1
	for _, p := range l.checkStretches(s.Units) {
		if p.First != at || across(p.First, p.Last) > 100*ft || p.Last < 60 && across(p.First, p.Last+1) <= 100*ft {
			t.Errorf("stretch %+v after arch %d", p, at)
		}
		at = p.Last
	}
	if at != 60 {
		t.Errorf("they end at arch %d", at)
	}
}
