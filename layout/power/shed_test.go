package power

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// TestWarmCopper: flex of 1.0, 1.5 and 2.5 mm² loses 46, 32 and 19 mV for each ampere and metre of its two wires (BS 7671 table 4F3B, from memory, at 60 °C); copper at 75 °C
// has 1.216 times its resistance at 20 (IEC 60228 annex, the NEC's note under chapter 9 table 8 to the same effect).
func TestWarmCopper(t *testing.T) {
	for name, want := range map[string]float64{"1.0 mm2": 46, "1.5 mm2": 32, "2.5 mm2": 19} {
		c, ok := catalog.FindCord(name)
		if !ok {
			t.Fatal(name)
		}
		if got := 2 * warmOhms(c); math.Abs(got-want) > .05*want {
			t.Errorf("%s loses %.1f mV/A/m, want %g", name, got, want)
		}
	}
	if got := copper(75, 20); math.Abs(got-1.216) > 1e-3 {
		t.Errorf("75 °C: %g", got)
	}
}

// TestMatch compares what is left to buy with the least of all ways to give the shed's cords out, on small random cases.
func TestMatch(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 8))
	h := &shed{prices: map[string]map[measure.Length]float64{"c": {}}}
	stock := []measure.Length{6, 9, 15, 25, 50}
	for round := range 2000 {
		for _, l := range stock {
			h.prices["c"][l] = float64(1 + r.IntN(20)) // dearer need not be longer
		}
		list := make([]need, r.IntN(6))
		for i := range list {
			list[i] = need{name: "c", length: stock[r.IntN(len(stock))]}
		}
		owned := make([]measure.Length, r.IntN(5))
		for i := range owned {
			owned[i] = stock[r.IntN(len(stock))] + measure.Length(r.IntN(3))
		}
		got := 0.0
		used := map[measure.Length]int{}
		for i, l := range h.match(list, owned, true) {
			switch {
			case l == 0:
				got += h.worth(list[i], true)
			case l < list[i].length:
				t.Fatalf("%d: %v stands in for %v", round, l, list[i].length)
			default:
				used[l]++
			}
		}
		for l, n := range used {
			have := 0
			for _, o := range owned {
				if o == l {
					have++
				}
			}
			if n > have {
				t.Fatalf("%d: %d cords of %v given, %d owned", round, n, l, have)
			}
		}
		if want := leastBill(h, list, owned, 0, 0); math.Abs(got-want) > 1e-9 {
			t.Fatalf("%d: buys for %g, could for %g", round, got, want)
		}
	}
}

// leastBill tries every way to give owned cords to needs from i on; taken are those given, by their bits.
func leastBill(h *shed, list []need, owned []measure.Length, i, taken int) float64 {
	if i == len(list) {
		return 0
	}
	least := h.worth(list[i], true) + leastBill(h, list, owned, i+1, taken)
	for k, l := range owned {
		if taken&(1<<k) == 0 && l >= list[i].length {
			least = min(least, leastBill(h, list, owned, i+1, taken|1<<k))
		}
	}
	return least
}

// TestShedServes: a tunnel whose organiser owns long cords lays them instead of buying, loses no more than the limits allow, and is otherwise fed the same.
func TestShedServes(t *testing.T) {
	build := func(own ...spec.Owned) Plan {
		in := tunnel(4)
		l := label("set", 5, catalog.LED)
		in.legs(l)
		in.outlet("porch", 0, 0, 120, 15)
		in.Spec.Stock.Own = own
		return Feed(in)
	}
	cords := func(p Plan) (n int, lengths map[measure.Length]int) {
		lengths = map[measure.Length]int{}
		for _, d := range p.Feeders {
			for _, j := range d.Joints {
				for _, l := range j.Cords {
					n++
					lengths[l]++
				}
			}
		}
		return n, lengths
	}
	bare := build()
	long := 33 * measure.Foot
	own := build(spec.Owned{Item: "16 AWG", Length: long, Count: 2})
	n, _ := cords(bare)
	m, lengths := cords(own)
	if n == 0 || n != m || lengths[long] != 2 {
		t.Errorf("%d cords bare, %d with the shed's, of which %d of its two are laid", n, m, lengths[long])
	}
	if len(own.Chains) != len(bare.Chains) || len(own.Findings) != len(bare.Findings) {
		t.Errorf("fed otherwise: %v, %v", own.Findings, bare.Findings)
	}
}

// TestLeakageAddsUp: many strings behind one GFCI are told of, few are not.
func TestLeakageAddsUp(t *testing.T) {
	for arches, want := range map[int]bool{8: false, 24: true} {
		in := tunnel(arches)
		in.legs(label("set", 5, catalog.LED))
		in.outlet("porch", -4000, -1000, 120, 20)
		in.Spec.Power.Circuits[0].GFCI = true
		if got := slices.Contains(codes(Feed(in)), "leakage-adds-up"); got != want {
			t.Errorf("%d arches: told %v", arches, got)
		}
	}
}
