package lights

import (
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

func TestWrapsHangArchByArch(t *testing.T) {
	in := plain(3, spec.Lights{Wraps: []spec.Wrap{wrapAll(mini("warm", 24*foot), spec.Legs, spec.RidgePieces)}})
	l := Lay(in)
	var runs, named []string
	for _, s := range l.Strings {
		runs, named = append(runs, s.Run.String()), append(named, s.Name)
	}
	want := []string{"leg L1", "leg R1", "ridge 1", "leg L2", "leg R2", "ridge 2", "leg L3", "leg R3"}
	if !slices.Equal(runs, want) {
		t.Errorf("runs: got %v, want %v", runs, want)
	}
	if !slices.Equal(named, []string{"S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"}) {
		t.Errorf("names: got %v", named)
	}
	left, right := l.Strings[0], l.Strings[1]
	if left.From.At.String() != "foot of leg L1" || left.To.At.String() != "crown 1" || right.From.At.String() != "foot of leg R1" {
		t.Errorf("ends: %q to %q, and %q", left.From.At, left.To.At, right.From.At)
	}
	if l.Strings[2].From.At.String() != "crown 1" || l.Strings[2].To.At.String() != "crown 2" {
		t.Errorf("ridge ends: %q to %q", l.Strings[2].From.At, l.Strings[2].To.At)
	}
	// The last inch of a 10 ft stick stays bare, and the first six, so that no plug is in wet grass.
	near(t, "wrapped, in", l.Wraps[0].Turns*l.Wraps[0].Pitch.Inches(), 113, 1e-9)
	near(t, "end of the leg's pipe, in", l.Wraps[0].PipeEnd.Inches(), 120, 1e-9)
	near(t, "end of the ridge piece, in", l.Wraps[2].PipeEnd.Inches(), 53, 1e-9)
	// On a half circle, 119 in up the pipe is the angle 119/r round from the foot.
	r := 241 / math.Pi
	near(t, "top end, in up", left.To.Z.Inches(), r*math.Sin(119/r), .01)
	near(t, "top end, in left", left.To.X.Inches(), -r*math.Cos(119/r), .01)
	// Ridge piece 1 is wrapped from 1 in to 52 in of its 53, the crown half an inch (take-off) before its end.
	near(t, "ridge end, in ahead", l.Strings[2].From.Y.Inches(), 1.5, 1e-9)
	near(t, "ridge end, in ahead", l.Strings[2].To.Y.Inches(), 52.5, 1e-9)
}

func TestLegsAreMirrored(t *testing.T) {
	l := Lay(plain(2, spec.Lights{Wraps: []spec.Wrap{wrapAll(mini("warm", 10*foot), spec.Legs)}}))
	for i := 0; i < len(l.Wraps); i += 2 {
		a, b := l.Wraps[i], l.Wraps[i+1]
		if a.Mirror || !b.Mirror || a.Pitch != b.Pitch || a.Turns != b.Turns || len(a.Strings) != len(b.Strings) {
			t.Errorf("%s and %s: %+v, %+v", a.On, b.On, a, b)
		}
	}
	for i := range 2 {
		a, b := l.Strings[i], l.Strings[i+2]
		if len(l.Wraps[0].Strings) == 1 {
			a, b = l.Strings[0], l.Strings[1]
		}
		near(t, "x", float64(a.To.X), -float64(b.To.X), 1e-6)
		near(t, "z", float64(a.To.Z), float64(b.To.Z), 1e-6)
	}
}

// A bulb's tape is found here the long way: along the string from the prongs, scaled by pipe over string, 8 in of which hang at the foot and 4 in at the crown.
func TestFlagsMeetTheirBulbs(t *testing.T) {
	for _, plug := range []spec.Plug{spec.PlugFoot, spec.PlugCrown} {
		w := wrapAll(mini("warm", 8*foot), spec.Legs)
		w.String.Lead, w.String.Tail, w.Plug, w.Count = 5*inch, 2*inch, plug, 3
		l := Lay(plain(2, spec.Lights{Wraps: []spec.Wrap{w}}))
		wrap := l.Wraps[0]
		if len(wrap.Strings) != 3 || len(wrap.Flags) != 3 {
			t.Fatalf("plug %v: %d strings, flags %+v", plug, len(wrap.Strings), wrap.Flags)
		}
		gap := (96 - 7) / 99.
		for i, f := range wrap.Flags {
			along := 5 + float64(f.Bulb-1)*gap
			if plug == spec.PlugFoot {
				along += 96 * float64(slices.Index(wrap.Strings, f.String))
			} else {
				along = 3*96 - along - 96*float64(2-slices.Index(wrap.Strings, f.String))
			}
			tape := 6 + (along-8)*113/(3*96-8-4)
			near(t, "flag's tape, in", f.Tape.Inches(), 30*float64(i+1), 1e-9)
			near(t, "bulb's tape, in", tape, f.Tape.Inches(), gap*113/276/2+1e-9)
		}
	}
}

func TestPlugAtTheCrown(t *testing.T) {
	w := wrapAll(mini("warm", 8*foot), spec.LeftLegs)
	w.Plug, w.Count = spec.PlugCrown, 2
	l := Lay(plain(2, spec.Lights{Wraps: []spec.Wrap{w}}))
	first, last := l.Strings[0], l.Strings[1]
	if first.From.At.String() != "crown 1" || last.To.At.String() != "foot of leg L1" {
		t.Errorf("from %q to %q", first.From.At, last.To.At)
	}
	if !l.Wraps[0].Crown {
		t.Error("the wrap does not say that its prongs are at the crown")
	}
	if l.Wraps[0].Strings[0] != last.Name {
		t.Errorf("strings from the foot: %v", l.Wraps[0].Strings)
	}
}

func TestBoundsOfAWrap(t *testing.T) {
	infinite := measure.Length(math.Inf(1))
	r := 241 * inch / math.Pi
	atHeight := func(h measure.Length) measure.Length { return r * measure.Length(math.Asin(float64(h/r))) }
	for _, c := range []struct {
		name     string
		place    spec.Place
		on       string
		from, to measure.Length
	}{
		{"above", spec.Place{Part: spec.LeftLegs, Bound: spec.ByHeight, From: 40 * inch, To: infinite}, "leg L1", atHeight(40 * inch), 119 * inch},
		{"below", spec.Place{Part: spec.RightLegs, Bound: spec.ByHeight, To: 40 * inch}, "leg R1", 6 * inch, atHeight(40 * inch)},
		{"tape", spec.Place{Part: spec.RightLegs, Bound: spec.ByTape, From: 10 * inch, To: 50 * inch}, "leg R1", 10 * inch, 50 * inch},
		{"whole arch", spec.Place{Part: spec.WholeArches}, "arch 1", 6 * inch, 235 * inch},
		{"arch above", spec.Place{Part: spec.WholeArches, Bound: spec.ByHeight, From: 40 * inch, To: infinite}, "arch 1", atHeight(40 * inch), 241*inch - atHeight(40*inch)},
		{"arch below", spec.Place{Part: spec.WholeArches, Bound: spec.ByHeight, To: 40 * inch}, "leg L1", 6 * inch, atHeight(40 * inch)},
	} {
		l := Lay(plain(2, spec.Lights{Wraps: []spec.Wrap{{Where: []spec.Place{c.place}, String: mini("warm", 50*foot)}}}))
		if len(l.Wraps) == 0 || l.Wraps[0].On.String() != c.on {
			t.Errorf("%s: got %+v", c.name, l.Wraps)
			continue
		}
		near(t, c.name+", from", float64(l.Wraps[0].From), float64(c.from), 1.5)
		near(t, c.name+", to", float64(l.Wraps[0].To), float64(c.to), 1.5)
		if c.name == "arch below" && (len(l.Wraps) != 4 || l.Wraps[1].On.String() != "leg R1") {
			t.Errorf("%s: got %+v", c.name, l.Wraps)
		}
	}
}

func TestFindingsOfWraps(t *testing.T) {
	short := wrapAll(mini("warm", 100*inch), spec.Legs)
	short.Count = 1
	long := wrapAll(mini("warm", 300*foot), spec.Legs)
	tight := wrapAll(mini("warm", 24*foot), spec.Legs)
	tight.Pitch = inch / 10
	high := wrapAll(mini("warm", 24*foot), spec.Legs)
	high.Where[0].Bound, high.Where[0].From, high.Where[0].To = spec.ByHeight, 90*foot, measure.Length(math.Inf(1))
	for _, c := range []struct {
		wrap spec.Wrap
		want string
	}{
		{short, "wrap-too-short"}, {long, "wrap-turns-touch"}, {tight, "wrap-turns-touch"}, {high, "lights-nowhere"},
		{wrapAll(mini("warm", 24*foot), spec.RidgePieces), "wrap-left-over"},
	} {
		l := Lay(plain(4, spec.Lights{Wraps: []spec.Wrap{c.wrap}}))
		if got := codes(l); !slices.Equal(got, []string{c.want}) {
			t.Errorf("got %v, want %s alone", got, c.want)
		}
		for _, w := range l.Wraps {
			if math.IsInf(float64(w.Pitch), 0) || math.IsNaN(w.Turns) || w.Covers <= 0 || w.Covers > 1 {
				t.Errorf("%s: %+v", c.want, w)
			}
		}
	}
	l := Lay(plain(4, spec.Lights{Wraps: []spec.Wrap{short}}))
	if text := l.Findings[0].Text; !strings.HasPrefix(text, "On legs L1 to L4 and legs R1 to R4: ") {
		t.Errorf("not one finding for all legs: %s", text)
	}
	in := plain(4, spec.Lights{Wraps: []spec.Wrap{wrapAll(mini("warm", 24*foot), spec.Legs, spec.RidgePieces)}})
	in.Ridge, in.Spec.Ridge.Present = nil, false
	if got := codes(Lay(in)); !slices.Equal(got, []string{"no-ridge-for-lights"}) {
		t.Errorf("no ridge: got %v", got)
	}
}

// Every string is either on its path or left over, and strings of one path touch end to end.
func TestStringsAreConserved(t *testing.T) {
	for _, s := range Lay(everything(12)).Strings {
		near(t, s.Name, float64(s.Used+s.LeftOver+s.Free), float64(s.Label.Length), 1e-6)
		if s.Used <= 0 || s.LeftOver < 0 {
			t.Errorf("%s on %s: used %v, left over %v", s.Name, s.Run, s.Used, s.LeftOver)
		}
	}
}

func TestLayingTwiceGivesTheSame(t *testing.T) {
	a, b := Lay(everything(9)), Lay(everything(9))
	for i := range a.Strings {
		if a.Strings[i].Name != b.Strings[i].Name || a.Strings[i].To != b.Strings[i].To {
			t.Errorf("%+v, then %+v", a.Strings[i], b.Strings[i])
		}
	}
	if len(a.Strings) != len(b.Strings) {
		t.Errorf("%d strings, then %d", len(a.Strings), len(b.Strings))
	}
}

func TestTinyStringsDoNotTireTheMachine(t *testing.T) {
	l := Lay(plain(240, spec.Lights{Wraps: []spec.Wrap{wrapAll(mini("crumbs", inch/10), spec.Legs)}}))
	if len(l.Strings) != mostStrings || !slices.Contains(codes(l), "too-many-strings") {
		t.Errorf("%d strings, findings %v", len(l.Strings), codes(l))
	}
}

// Each of four legs takes a tie at both ends of its wrap and at its thirds, as the step says. What hangs is counted apart: a row takes one at each of its arches, what is over of a string two.
func TestTies(t *testing.T) {
	if l := Lay(plain(2, spec.Lights{Wraps: []spec.Wrap{wrapAll(mini("warm", 24*foot), spec.Legs)}})); l.Ties != 4*4 || l.HungTies != 0 {
		t.Errorf("%d ties, %d of what hangs", l.Ties, l.HungTies)
	}
	in := everything(4)
	in.Spec.Lights.Wraps, in.Spec.Lights.Drops = nil, nil
	l, want := Lay(in), 0
	for _, p := range l.Paths {
		want += len(p.Rows) * (p.Last - p.First + 1)
		for i := 1; i < len(p.Rows); i++ { // a climb is tied every foot between the rows
			up := l.Rows[slices.IndexFunc(l.Rows, func(r Row) bool { return r.Wall == p.Wall && r.Number == p.Rows[i] })].Tape - l.Rows[slices.IndexFunc(l.Rows, func(r Row) bool { return r.Wall == p.Wall && r.Number == p.Rows[i-1] })].Tape
			want += int(math.Ceil(float64(up/foot))) - 1
		}
	}
	for _, s := range l.Strings {
		if s.LeftOver > inch {
			want += 2
		}
	}
	if want == 0 || l.HungTies != want || l.Ties != 0 {
		t.Errorf("rows: %d ties, %d of what is wound; want %d, 0", l.HungTies, l.Ties, want)
	}
}

func TestStandoffAndHang(t *testing.T) {
	in := everything(4)
	in.Spec.Lights.Drops[0].Where[0].Of = []int{3}
	thick := wrapAll(mini("thick", 24*foot), spec.Legs)
	thick.String.Wire, thick.Where[0].Of = inch/2, []int{1}
	in.Spec.Lights.Wraps = append(in.Spec.Lights.Wraps, thick)
	high, low := spec.Place{Bound: spec.ByHeight, From: 50 * inch, To: 1e9, Of: []int{2}}, spec.Place{Bound: spec.ByHeight, To: 60 * inch}
	in.Spec.Lights.Drops = append(in.Spec.Lights.Drops, spec.Drop{Where: []spec.Place{high}, Hang: 4 * inch}, spec.Drop{Where: []spec.Place{low}, Hang: 9 * inch})
	for n, want := range [][3]measure.Length{{inch / 2, 0, 0}, {.15 * inch, 4 * inch, 0}, {.15 * inch, 0, 6 * inch}, {.15 * inch, 0, 6 * inch}} {
		if got := [3]measure.Length{Standoff(in.Spec, n+1), Hang(in.Spec, n+1), RidgeHang(in.Spec, n+1)}; got != want {
			t.Errorf("arch %d: %v, want %v", n+1, got, want)
		}
	}
}

// A single stick bent over has no joint at its middle: two wraps of half its length meet there.
func TestOneStick(t *testing.T) {
	in := plain(1, spec.Lights{Wraps: []spec.Wrap{wrapAll(mini("warm", 24*foot), spec.Legs)}})
	in.Spec.Arch.OneStick, in.Spec.Ridge.Present = true, false
	l := Lay(in)
	near(t, "left, in", l.Wraps[0].To.Inches(), 120.5, 1e-9)
	near(t, "right, in", l.Wraps[1].To.Inches(), 120.5, 1e-9)
}

func TestFlagsOfAMetricPacket(t *testing.T) {
	in := plain(1, spec.Lights{Wraps: []spec.Wrap{wrapAll(mini("warm", 10000), spec.Legs)}})
	in.Spec.Units = measure.Metric
	var marks []measure.Length
	for _, f := range Lay(in).Wraps[0].Flags {
		marks = append(marks, f.Tape)
	}
	if !slices.Equal(marks, []measure.Length{750, 1500, 2250}) {
		t.Errorf("flags at %v", marks)
	}
}

func TestNoArchNoLights(t *testing.T) {
	in := everything(2)
	in.Arches[1].Kind = &arch.Kind{}
	if l := Lay(in); len(l.Strings) > 0 || !slices.Equal(codes(l), []string{"lights-not-laid"}) {
		t.Errorf("%+v", l)
	}
}

// A wrap whose plug is open lies either way, with its strings at the same places but for the prongs; what is fixed does not turn.
func TestOpenWrapsTurn(t *testing.T) {
	w := wrapAll(mini("warm", 8*foot), spec.LeftLegs)
	w.Plug, w.Count = spec.PlugOpen, 2
	in := plain(2, spec.Lights{Wraps: []spec.Wrap{w}})
	foot := Lay(in)
	in.Turn.All = true
	crown := Lay(in)
	for n, one := range foot.Wraps {
		other := crown.Wraps[n]
		if !one.Open || one.Crown || !other.Crown || foot.Lines[n].Wrap != n || !foot.Lines[n].Open || foot.Lines[n].Count != 2 {
			t.Errorf("wrap %+v, turned %+v, line %+v", one, other, foot.Lines[n])
		}
		a, b := foot.Strings[foot.Lines[n].First], crown.Strings[foot.Lines[n].First+1]
		if a.From.At.Spot != AtFoot || b.To.At.Spot != AtFoot || math.Abs(float64(a.From.Z-b.To.Z)) > 1e-6 || math.Abs(float64(a.From.X-b.To.X)) > 1e-6 {
			t.Errorf("from %+v, turned to %+v", a.From, b.To)
		}
	}
	in.Turn = Turn{Wraps: []bool{false, true}}
	if some := Lay(in); some.Wraps[0].Crown || !some.Wraps[1].Crown {
		t.Error("one of two was to be turned")
	}
	in.Turn.All = true
	in.Spec.Lights.Wraps[0].Plug = spec.PlugFoot
	if fixed := Lay(in); fixed.Wraps[0].Crown || fixed.Wraps[0].Open {
		t.Error("a fixed wrap was turned")
	}
}

// A lead that reaches from arch to arch stays off the pipe where the power plan asks for it: the rest covers the leg at a wider pitch, and the account holds.
func TestLeadsStayOffThePipe(t *testing.T) {
	w := wrapAll(mini("warm", 40*foot), spec.Legs)
	w.Plug, w.String.Lead = spec.PlugOpen, 6*foot
	in := plain(2, spec.Lights{Wraps: []spec.Wrap{w}})
	in.Spec.Tunnel.Spacing = 4 * foot
	if !Bridges(in.Spec) {
		t.Fatal("a lead of 6 ft over a bay of 4 ft")
	}
	on := Lay(in)
	in.Turn.Leads = true
	off := Lay(in)
	for i, s := range off.Strings {
		near(t, "off the pipe, in", s.Off.Inches(), 52, 1e-9) // the bay, and 4 in
		near(t, "account", float64(s.Used+s.LeftOver+s.Off+s.Free), float64(s.Label.Length), 1e-6)
		near(t, "the same ends", float64(s.From.Z), float64(on.Strings[i].From.Z), 1e-6)
		if off.Wraps[i].Pitch <= on.Wraps[i].Pitch {
			t.Errorf("pitch %v with less string on the pipe, %v with all", off.Wraps[i].Pitch, on.Wraps[i].Pitch)
		}
	}
	in.Spec.Lights.Wraps[0].String.Lead = 4 * foot
	if Bridges(in.Spec) {
		t.Error("a lead of 4 ft reaches no hand's breadth over a bay of 4 ft")
	}
}

// A guyed arch's wraps leave 3 in bare about the knot, where the wire runs straight. The string from the prongs to each flag is summed here a hundredth of an inch of pipe at a
// time, after what hangs free at the prongs, 8 in at a foot and 4 in at a crown, each either straight or round a turn's share of the girth, and the bulb there must be the flag's; on a half circle the knot at 60 in is asin(60/r) round from the foot.
func TestGuyedWrapsLeaveABand(t *testing.T) {
	r := 241 / math.Pi
	ends := map[spec.Part]float64{spec.Legs: 4, spec.WholeArches: 8} // hanging at the upper tape, in
	knot := math.Round(4*r*math.Asin(60/r)) / 4                      // as a tape on the ground is read
	for _, plug := range []spec.Plug{spec.PlugFoot, spec.PlugCrown} {
		for _, part := range []spec.Part{spec.Legs, spec.WholeArches} {
			w := wrapAll(mini("warm", 24*foot), part)
			w.String.Lead, w.String.Tail, w.Plug = 5*inch, 2*inch, plug
			in := plain(2, spec.Lights{Wraps: []spec.Wrap{w}})
			in.Spec.Guys = spec.Guys{Arches: []int{1}, From: 60 * inch}
			l := Lay(in)
			first := l.Wraps[0]
			if first.On.Number != 1 || len(first.Bare) == 0 || len(l.Wraps[len(l.Wraps)-1].Bare) != 0 {
				t.Fatalf("%v: bands %v on arch 1, %v on arch 2", part, first.Bare, l.Wraps[len(l.Wraps)-1].Bare)
			}
			near(t, "band begins, in", first.Bare[0].From.Inches(), knot-1.5, 0.02)
			near(t, "band ends, in", first.Bare[0].To.Inches(), knot+1.5, 0.02)
			if part == spec.WholeArches {
				near(t, "band of the right leg, in", first.Bare[1].From.Inches(), 241-knot-1.5, 0.02)
			}
			turn := math.Hypot(1, math.Pi*(in.Spec.Arch.Pipe.OD+w.String.Wire).Inches()/first.Pitch.Inches()) // string to pipe where it goes round
			summed := func(from, to float64) (sum float64) {
				const step = 0.01
				for at := from + step/2; at < to; at += step {
					ratio := turn
					for _, b := range first.Bare {
						if at > b.From.Inches() && at < b.To.Inches() {
							ratio = 1
						}
					}
					sum += ratio * step
				}
				return sum
			}
			near(t, "string on the pipe, in", summed(first.From.Inches(), first.To.Inches()), 288*float64(len(first.Strings))-8-ends[part], 0.3)
			gap := (288 - 7) / 99.
			free := 8.
			if plug == spec.PlugCrown {
				free = ends[part]
			}
			for _, f := range first.Flags {
				along := summed(first.From.Inches(), f.Tape.Inches())
				k := slices.Index(first.Strings, f.String)
				if plug == spec.PlugCrown {
					along = summed(f.Tape.Inches(), first.To.Inches())
					k = len(first.Strings) - 1 - k
				}
				near(t, "bulb at a flag", float64(f.Bulb), 1+(along+free-288*float64(k)-5)/gap, 0.6)
			}
		}
	}
}

// What a wrapper is told fits: the turns at the length that ten take come out within what is wound, as printed, and no more than a turn short of it; the ten are the pitch's.
func TestCountedTurnsFit(t *testing.T) {
	for _, u := range []measure.System{measure.Imperial, measure.Metric} {
		printed := measure.By(u, inch/8, measure.Length(1))
		for pitch := 20.0; pitch < 60; pitch += 0.37 {
			for _, band := range []measure.Length{0, 76} {
				w := Wrap{Pitch: measure.Length(pitch), From: 150, To: 3023, Covers: 1}
				if band > 0 {
					w.Bare = []Band{{From: 1500, To: 1500 + band}}
				}
				room := w.To - w.From - band
				turns, ten := w.Counted(u)
				got := measure.Length(turns/10) * ten
				if got > room+printed || got < room-w.Pitch || math.Abs(float64(ten)-10*pitch) > float64(printed)/2+1e-9 || turns != math.Round(2*turns)/2 {
					t.Errorf("%v, a turn each %.2f mm, bare %v: %v turns, ten in %v: %v of %v", u, pitch, band, turns, ten, got, room)
				}
			}
		}
	}
}

// A brace's knot is bare as a guy's is, on the legs that it is tied to and no others.
func TestBracedWrapsLeaveABand(t *testing.T) {
	in := plain(3, spec.Lights{Wraps: []spec.Wrap{wrapAll(mini("warm", 24*foot), spec.Legs)}})
	in.Spec.Tunnel.Spacing = 4 * foot
	in.Spec.Braces = spec.Braces{Bays: []int{1}, From: 60 * inch}
	knot := math.Round(4*241/math.Pi*math.Asin(60*math.Pi/241)) / 4
	for _, w := range Lay(in).Wraps {
		switch braced := w.On.Number == 1; {
		case !braced && len(w.Bare) != 0, braced && len(w.Bare) != 1:
			t.Errorf("%v: %v bare", w.On, w.Bare)
		case braced:
			near(t, "middle of the band, in", (w.Bare[0].From+w.Bare[0].To).Inches()/2, knot, 1e-9)
		}
	}
}
