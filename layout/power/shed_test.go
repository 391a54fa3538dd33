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

// leastBill tries every way to give owned cords to needs, and returns the least that is left to buy.
func leastBill(h *shed, list []need, owned []measure.Length, money bool) float64 {
	if len(list) == 0 {
		return 0
	}
	best := h.worth(list[0], money) + leastBill(h, list[1:], owned, money)
	for k, l := range owned {
		if l >= list[0].length {
			best = min(best, leastBill(h, list[1:], slices.Delete(slices.Clone(owned), k, k+1), money))
		}
	}
	return best
}

// Owned cords are given so that least is left to buy, as by trying everything; each goes to one need no longer than itself. Prices are
// thrown, so a shorter cord may cost more.
func TestOwnedCordsAgainstBruteForce(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 5))
		c, _ := catalog.FindCord("16 AWG")
		h := &shed{owned: map[string][]measure.Length{}, prices: map[string]map[measure.Length]int64{c.Name: {}}}
		for _, l := range c.Lengths {
			h.prices[c.Name][l] = int64(1 + r.IntN(40))
		}
		var list []need
		for range r.IntN(6) {
			list = append(list, need{name: c.Name, length: c.Lengths[r.IntN(len(c.Lengths))]})
		}
		for range r.IntN(5) {
			h.owned[c.Name] = append(h.owned[c.Name], measure.Length(2+r.IntN(100))*measure.Foot)
		}
		for _, money := range []bool{true, false} {
			got, lengths := h.bill(list, money)
			if want := leastBill(h, list, h.owned[c.Name], money); math.Abs(got-want) > 1e-9 {
				t.Fatalf("seed %d: %v to buy, by trying everything %v", seed, got, want)
			}
			free := slices.Clone(h.owned[c.Name])
			for i, l := range lengths {
				k := slices.Index(free, l)
				if l > 0 && (k < 0 || l < list[i].length) {
					t.Fatalf("seed %d: need %v got %v of %v", seed, list[i].length, l, h.owned[c.Name])
				}
				if l > 0 {
					free = slices.Delete(free, k, k+1)
				}
			}
		}
	}
}

// Owned cords go into the plan, longer ones for shorter, and thicker ones where then nothing is to be bought; the counts stay.
func TestOwnedCordsAreLaid(t *testing.T) {
	walk := func() Input {
		in := garden()
		in.Spec.Power.Inline = nil
		return in
	}
	bare := Feed(walk())
	n := len(bare.Cords)
	in := walk()
	in.Spec.Stock.Own = []spec.Owned{{Item: "cord 14 AWG", Length: 25 * measure.Foot, Count: n}}
	p := Feed(in)
	checkPlan(t, in, p)
	if len(p.Lots) != 1 || p.Lots[0] != (Lot{Name: "14 AWG", Length: 25 * measure.Foot, Sockets: 1, Count: n}) {
		t.Errorf("cords %v, want %d owned ones", p.Lots, n)
	}
	in.Spec.Stock.Own[0].Count = 1 // not worth another kind: one cord less to buy in length is, so one feeder changes at most
	p = Feed(in)
	checkPlan(t, in, p)
	if len(p.Cords) != n {
		t.Errorf("%d cords, want %d", len(p.Cords), n)
	}
}

// IEC 60228's 20 °C copper at 60 °C loses what BS 7671 table 4F3B gives for flex: 46, 32 and 19 mV/A/m (from memory). The NEC's 75 °C against 20 °C:
// 1.216, and a pair of one-conductor values of chapter 9 table 8 stays as printed.
func TestWarmCopper(t *testing.T) {
	for name, want := range map[string]float64{"1.0 mm2": 46, "1.5 mm2": 32, "2.5 mm2": 19} {
		c, _ := catalog.FindCord(name)
		if got := 2 * warmOhms(c); math.Abs(got-want) > 0.05*want {
			t.Errorf("%s: %.1f mV/A/m, table %v", name, got, want)
		}
	}
	if c, _ := catalog.FindCord("14 AWG"); warmOhms(c) != c.Ohms {
		t.Error("the NEC's table is at 75 °C already")
	}
	if got := copper(75, 20); math.Abs(got-309.5/254.5) > 1e-12 {
		t.Errorf("75 °C over 20 °C: %v", got)
	}
}

// In the cold each part of the way loses less, by its own share: cords from 75 °C, strings from 20 °C.
func TestColdCopper(t *testing.T) {
	in := garden()
	in.Spec.Weather.Cold = -7
	p := Feed(in)
	for _, c := range p.Chains {
		own := dropOf(in, c) * 120
		cords := 120 - float64(c.EndVolts) - own
		want := 120 - cords*227.5/309.5 - own*227.5/254.5
		if math.Abs(float64(c.ColdVolts)-want) > 1e-9 || c.ColdVolts <= c.EndVolts {
			t.Errorf("chain %s: %v V cold, want %v; %v V warm", c.Name, c.ColdVolts, want, c.EndVolts)
		}
	}
}
