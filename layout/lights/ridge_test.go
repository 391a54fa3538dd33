package lights

import (
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// rising is a tunnel whose crowns rise from arch to arch, each a half ring a little longer than the one before.
func rising(lights spec.Lights) Input {
	in := plain(3, lights)
	for i := range in.Arches {
		in.Arches[i] = arch.Arch{Number: i + 1, Kind: halfRound((241 + 12*measure.Length(i)) * inch)}
	}
	return in
}

// A height cuts a ridge piece where the straight line from crown to crown comes to it, and pieces wholly above or below take all or nothing.
func TestHeightsOnTheRidge(t *testing.T) {
	in := rising(spec.Lights{})
	first, second := float64(CrownHeight(in.Arches[0].Kind)), float64(CrownHeight(in.Arches[1].Kind))
	height := measure.Length(first + (second-first)/4) // a quarter of the way: 13.5 in from crown to crown of 54 in
	for _, c := range []struct {
		bound    spec.Place
		bay      int
		from, to float64 // tape in inches, −1 for nothing; a take-off of 1/2 in lies before the piece
	}{
		{spec.Place{Bound: spec.ByHeight, From: height, To: 1e9}, 1, 13, 52},
		{spec.Place{Bound: spec.ByHeight, To: height}, 1, 1, 13},
		{spec.Place{Bound: spec.ByHeight, From: height, To: 1e9}, 2, 1, 52},
		{spec.Place{Bound: spec.ByHeight, To: height}, 2, -1, -1},
	} {
		c.bound.Part = spec.RidgePieces
		l := Lay(rising(spec.Lights{Wraps: []spec.Wrap{{Where: []spec.Place{c.bound}, String: mini("warm", 12*foot)}}}))
		k := slices.IndexFunc(l.Wraps, func(w Wrap) bool { return w.On == Part{Ridge, c.bay} })
		if (k < 0) != (c.from < 0) {
			t.Errorf("%+v on ridge %d: wrapped %v", c.bound, c.bay, k >= 0)
		}
		if k >= 0 {
			near(t, "from, in", l.Wraps[k].From.Inches(), c.from, 1e-6)
			near(t, "to, in", l.Wraps[k].To.Inches(), c.to, 1e-6)
		}
	}
	// Level crowns: all of it or nothing.
	for from, want := range map[measure.Length]int{70 * inch: 2, 80 * inch: 0} {
		place := spec.Place{Part: spec.RidgePieces, Bound: spec.ByHeight, From: from, To: 1e9}
		if l := Lay(plain(3, spec.Lights{Drops: []spec.Drop{{Where: []spec.Place{place}, String: mini("drop", 50*inch), Hang: 2}}})); len(l.Drops) != want && want == 0 || want > 0 && len(l.Drops) == 0 {
			t.Errorf("above %v: %d drops", from.Inches(), len(l.Drops))
		}
	}
}

// The ridge's load is that of what lies on it: a quarter less pipe, a quarter less string.
func TestLoadOfAPartOfTheRidge(t *testing.T) {
	s := plain(3, spec.Lights{Drops: []spec.Drop{{Where: []spec.Place{{Part: spec.RidgePieces, Bound: spec.ByHeight, From: 100, To: 1e9}}, String: mini("drop", 9*foot), Hang: 2}}}).Spec
	_, all := RidgeLoad(s, 1, 53*inch, 200, 300)
	_, part := RidgeLoad(s, 1, 53*inch, 50, 250)
	near(t, "load", float64(part.Weight), .75*float64(all.Weight), 1e-9)
	near(t, "length", float64(part.Run), .75*float64(all.Run), 1e-9)
}

// Flags go on every 30 in for as long as the wrap does, and none stands within a hand of its end.
func TestFlagsOfALongWrap(t *testing.T) {
	two := wrapAll(mini("warm", 24*foot), spec.WholeArches)
	two.Count = 2
	l := Lay(plain(1, spec.Lights{Wraps: []spec.Wrap{two}}))
	var marks []float64
	for _, f := range l.Wraps[0].Flags {
		marks = append(marks, f.Tape.Inches())
	}
	if want := []float64{30, 60, 90, 120, 150, 180, 210}; !slices.Equal(marks, want) {
		t.Errorf("flags at %v, want %v; the arch is 241 in", marks, want)
	}
	if first, last := l.Wraps[0].Flags[0], l.Wraps[0].Flags[6]; first.String == last.String {
		t.Errorf("of two strings end to end one has all flags: %+v", l.Wraps[0].Flags)
	}
}

// What will not go on is answered with what does: fewer of it, or the longest string of its sort that fits. 10 ft of half-inch pipe with a 0.15 in wire takes
// 120·√(1 + (π·0.99/0.15)²) in or so, 207 ft of string.
func TestWhatGoesOnInstead(t *testing.T) {
	long := wrapAll(mini("thick", 130*foot), spec.Legs)
	long.Count = 2
	huge := wrapAll(catalog.String{Name: "huge", Length: 400 * foot, Bulbs: 10, Wire: .15 * inch, Volts: 120, Colour: "warm white"}, spec.Legs)
	for _, c := range []struct {
		wrap spec.Wrap
		want string
	}{{long, "take 1."}, {huge, "take one mini led 100 warm ("}} {
		found := Lay(plain(1, spec.Lights{Wraps: []spec.Wrap{c.wrap}})).Findings
		if len(found) != 1 || !strings.Contains(found[0].Text, c.want) {
			t.Errorf("%+v does not say %q", found, c.want)
		}
	}
}

// A string that has little more than a hand's breadth of its row left to cover is told of; where it has less, the row ends that much sooner without it.
func TestStringHardlyUsed(t *testing.T) {
	rows := oneRow(40, 0)
	for _, c := range []struct {
		long    float64 // strings, in, for 54 in of row on both walls
		strings int
		told    bool
	}{{53, 2, false}, {49.5, 4, true}, {40, 4, false}} {
		rows.Strings = []catalog.String{mini("warm", measure.Length(c.long)*inch)}
		l := Lay(plain(2, spec.Lights{Rows: rows}))
		if got := slices.Contains(codes(l), "string-hardly-used"); got != c.told || len(l.Strings) != c.strings {
			t.Errorf("54 in of row, strings of %v: %d hang, %v", c.long, len(l.Strings), codes(l))
		}
	}
}
