package stock

import (
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The garden needs two cords of 50 ft and one of 25. One of 50 ft is there, and two of 100 ft: these serve for nothing, since a set of 16 AWG over 50 ft carries 10 A, not 13. A
// second of 50 ft serves, a third serves as the 25.
func TestLongerCordsStandIn(t *testing.T) {
	for _, c := range []struct{ own50, buy50, buy25 int }{{0, 2, 1}, {1, 1, 1}, {2, 0, 1}, {3, 0, 0}, {9, 0, 0}} {
		in := garden(3)
		in.Spec.Stock.Own = append(in.Spec.Stock.Own, spec.Owned{Item: "16 AWG", Length: 50 * foot, Count: c.own50}, spec.Owned{Item: "16 AWG", Length: 100 * foot, Count: 2})
		l := Make(in)
		fifty, short := line(t, l, "16 AWG 50 ft"), line(t, l, "16 AWG 25 ft")
		if fifty.Buy != c.buy50 || short.Buy != c.buy25 {
			t.Errorf("%d of 50 ft owned: buy %d of 50 ft and %d of 25 ft, want %d and %d", c.own50, fifty.Buy, short.Buy, c.buy50, c.buy25)
		}
		if says := strings.Contains(short.StandInWords(measure.Imperial), "1 of 50 ft"); says != (c.buy25 == 0) {
			t.Errorf("%d of 50 ft owned: the 25 ft line says %v", c.own50, short.StandIns)
		}
	}
}

// A cord owned at its length is counted once.
func TestOwnedCordIsCountedOnce(t *testing.T) {
	in := garden(3)
	in.Wiring.Cords = []Wire{{Of: "16 AWG", Length: 50 * foot}, {Of: "16 AWG", Length: 25 * foot}}
	in.Spec.Stock.Own = []spec.Owned{{Item: "16 AWG", Length: 50 * foot, Count: 1}}
	l := Make(in)
	if fifty, short := line(t, l, "16 AWG 50 ft"), line(t, l, "16 AWG 25 ft"); fifty.Buy != 0 || short.Buy != 1 {
		t.Errorf("buy %d of 50 ft and %d of 25 ft, want 0 and 1", fifty.Buy, short.Buy)
	}
}

// Stakes are bought ready. Two bars of 10 ft in the shed give by hand two of 48 in and nothing of 24 each (48 + 1/8 + 48 + 1/8 + 24 is 1/4 in too long), or one of
// 48 and two of 24, both 96 in; so 192 in less are bought. One stake of 48 in is there already and is not cut.
func TestStakesFromBarsOfTheShed(t *testing.T) {
	in := garden(3)
	in.Spec.Stock.Spares = 0
	in.Spec.Stock.Own = []spec.Owned{{Item: "steel bar 3/8 in", Length: 10 * foot, Count: 2}, {Item: "steel bar 3/8 in", Length: 48 * inch, Count: 1}}
	l := Make(in)
	holds(t, in, l)
	bought, listed := measure.Length(0), 0
	for _, i := range l.Shopping {
		switch i.Item {
		case "steel bar 3/8 in, 48 in":
			bought, listed = bought+measure.Length(i.Buy)*48*inch, listed+i.Need
		case "steel bar 3/8 in, 24 in":
			bought, listed = bought+measure.Length(i.Buy)*24*inch, listed+i.Need
		}
	}
	if want := (6*48 + 4*24 - 48 - 192) * inch; math.Abs(float64(bought-want)) > 1e-6 {
		t.Errorf("%v in of stakes are bought, want %v", bought/inch, want/inch)
	}
	if bar := line(t, l, "steel bar 3/8 in, 10 ft"); bar.Need != 2 || bar.Own != 2 || bar.Buy != 0 {
		t.Errorf("%+v", bar)
	}
	cut := 0
	for _, b := range l.Cuts.Bars {
		if b.Steel() {
			cut += len(b.Pieces)
			if !b.Owned {
				t.Errorf("a bar is bought: %+v", b)
			}
		}
	}
	if cut+listed != len(in.Stakes) {
		t.Errorf("%d stakes cut and %d on the list, of %d", cut, listed, len(in.Stakes))
	}
	if l.Cuts.ByLength || !l.Cuts.Proven {
		t.Errorf("the pipe's price is lost: by length %v, proven %v", l.Cuts.ByLength, l.Cuts.Proven)
	}
}

// Three arches: the two ridge pieces come from two of five offcuts of 56 in. Three of them stay in the shed; the 2 7/8 in they leave gives no piece. Without
// offcuts both come from one stick; with one, a stick leaves 120 − 53 − 1/8 in.
func TestKeep(t *testing.T) {
	for _, c := range []struct {
		own  int
		want []Lot
	}{{5, []Lot{{half.Name, 56 * inch, 3}}}, {0, nil}, {1, []Lot{{half.Name, 66*inch + 14*inch/16, 1}}}} {
		in := garden(3)
		in.Spec.Stock.Own = []spec.Owned{{Item: half.Name, Length: 56 * inch, Count: c.own}}
		got := Make(in).Keep
		if len(got) != len(c.want) {
			t.Errorf("%d owned: %v, want %v", c.own, got, c.want)
			continue
		}
		for i, l := range got {
			if w := c.want[i]; l.Item != w.Item || l.Count != w.Count || math.Abs(float64(l.Length-w.Length)) > 1e-6 {
				t.Errorf("%d owned: %v, want %v", c.own, l, w)
			}
		}
	}
}

// A trim is taken off both ends of a stick: 120 − 2 × 1/2 leaves 119 in, which is 59 7/16 + 1/8 + 59 7/16.
func TestTrimAtBothEnds(t *testing.T) {
	for _, c := range []struct {
		ridge  measure.Length
		sticks int
	}{{59*inch + 7*inch/16, 7}, {59*inch + 8*inch/16, 8}} {
		in := garden(3)
		in.Spec.Stock.Trim, in.Spec.Stock.Own = inch/2, nil
		for i := range in.Ridge {
			in.Ridge[i] = c.ridge
		}
		l := Make(in)
		holds(t, in, l)
		if got := used(t, l, "pvc sch40 1/2 in, 10 ft"); got != c.sticks {
			t.Errorf("two ridge pieces of %v in and six whole legs: %d sticks, want %d", c.ridge/inch, got, c.sticks)
		}
	}
}

func TestCordCovers(t *testing.T) {
	in := garden(2)
	in.Wiring.Covers = []measure.Length{11 * foot, 5 * foot}
	if got := line(t, Make(in), "cord cover"); got.Need != 2 || !slices.Equal(got.Lengths, in.Wiring.Covers) || got.Where != whereElectrical {
		t.Errorf("%+v", got)
	}
}

// What goes with the power plan is listed, each with a price: its own where the spec has one, else an assumed one that says so.
func TestWiringIsPriced(t *testing.T) {
	in := garden(3)
	own := 5.25
	in.Spec.Stock.Sell = append(in.Spec.Stock.Sell, spec.Sale{Item: "socket cover", Price: &own})
	in.Wiring = Wiring{Cords: []Wire{{Of: "16 AWG", Length: 50 * foot, Sockets: 9, Inline: "16 AWG 50 ft with 9 sockets", Assumed: 40}, {Of: "16 AWG", Length: 25 * foot, Price: &own}}, Taps: 2, Joints: 9, Open: 7, Timers: 1, Bare: 1, Boxes: 1}
	list := Make(in)
	for _, c := range []struct {
		item    string
		need    int
		price   float64
		assumed bool
	}{
		{"16 AWG 50 ft with 9 sockets", 1, 40, true}, {"16 AWG 25 ft", 1, own, false}, {"three-way tap", 2, 7, true}, {"plug cover", 9, 3, true},
		{"socket cover", 7, own, false}, {"timer for outdoors", 1, 20, true}, {"portable GFCI", 1, 35, true}, {"outdoor plug box", 1, 25, true}, {"battery lantern", 2, 12, true},
	} {
		if got := line(t, list, c.item); got.Need != c.need || !got.Priced || got.Price != c.price || got.Assumed != c.assumed {
			t.Errorf("%s: %+v", c.item, got)
		}
	}
}

// Where every stake is there at its length, no bar of the shed is cut for one.
func TestStakesThereAreNotCutAnew(t *testing.T) {
	in := garden(3)
	in.Spec.Stock.Own = []spec.Owned{{Item: "steel bar 3/8 in", Length: 10 * foot, Count: 2}, {Item: "steel bar 3/8 in", Length: 48 * inch, Count: 6}, {Item: "steel bar 3/8 in", Length: 24 * inch, Count: 4}}
	for _, b := range Make(in).Cuts.Bars {
		if b.Steel() {
			t.Errorf("cut: %+v", b)
		}
	}
}

// Three sticks of 10 ft are there, however the length is written: three fewer are bought. The store's 10 ft and the shed's 120 in are one
// length.
func TestOwnedSticksAreCountedOnce(t *testing.T) {
	in := garden(3)
	in.Spec.Stock.Sell, in.Spec.Stock.Own = nil, nil
	all := line(t, Make(in), in.Spec.Arch.Pipe.Name+", 10 ft")
	for _, hair := range []measure.Length{0, 1e-6, -1e-6} {
		in.Spec.Stock.Own = []spec.Owned{{Item: in.Spec.Arch.Pipe.Name, Length: 10*foot + hair, Count: 3}}
		l := Make(in)
		if got := line(t, l, in.Spec.Arch.Pipe.Name+", 10 ft"); got.Need != all.Need || got.Own != 3 || got.Buy != all.Buy-3 {
			t.Errorf("need %d, own %d, buy %d, want %d, 3 and %d", got.Need, got.Own, got.Buy, all.Need, all.Buy-3)
		}
	}
}

// What is dead is counted as there and serves for nothing: five owned of which two are dead are three.
func TestDeadThingsServeForNothing(t *testing.T) {
	buys := func(o spec.Owned) int {
		in := garden(3)
		in.Spec.Stock.Own = []spec.Owned{o}
		return line(t, Make(in), "16 AWG 50 ft").Buy
	}
	for _, c := range []struct{ count, dead int }{{2, 0}, {2, 1}, {2, 2}, {5, 4}} {
		got := buys(spec.Owned{Item: "16 AWG", Length: 50 * foot, Count: c.count, Dead: c.dead})
		if want := buys(spec.Owned{Item: "16 AWG", Length: 50 * foot, Count: c.count - c.dead}); got != want {
			t.Errorf("%d owned, %d dead: buy %d, want %d", c.count, c.dead, got, want)
		}
	}
}
