package stock

import (
	"math"
	"testing"

	"hoopwright/layout/catalog"
)

// By hand, from the assumed rates: schedule 40 half-inch pipe weighs 0.17 lb/ft (catalog, from ASTM D1785's dimensions), so 10 ft at 6 a kilogram is
// 10 · 0.17 · 0.4536 · 6 = 4.63, give or take the rounding of the weight; a tee for half-inch pipe is at its own price, one for three-quarter-inch dearer by
// (1.05/0.84)^1.5 = 1.40.
func TestAssumedPrices(t *testing.T) {
	in := garden(6)
	in.Spec.Stock.Sell = nil
	if p := line(t, Make(in), "pvc sch40 1/2 in, 10 ft"); !p.Assumed || !p.Priced || math.Abs(p.Price-4.63) > 0.25 {
		t.Errorf("a stick: %+v", p)
	}
	if p := line(t, Make(in), "tee pvc sch40 1/2 in"); p.Price != assumedPrices[Tee] {
		t.Errorf("a tee: %+v", p)
	}
	wide, _ := catalog.FindPipe("pvc sch40 3/4 in")
	if got := assumed(in, Item{Kind: Tee, Of: wide.Name}) / assumedPrices[Tee]; math.Abs(got-1.40) > 0.01 {
		t.Errorf("a wider tee costs %v times as much, want 1.40", got)
	}
	list := Make(in)
	sum := 0.0
	for _, i := range list.Shopping {
		sum += float64(i.Buy) * i.Price
		if !i.Priced && i.Where != whereElectrical {
			t.Errorf("%s has no price", i.Item)
		}
	}
	if math.Abs(list.Total-sum) > 1e-9 || list.Assumed != list.Total {
		t.Errorf("total %v, assumed %v, want %v of both", list.Total, list.Assumed, sum)
	}
	in.Spec.Currency = "JPY"
	if l := Make(in); l.Total != 0 {
		t.Errorf("a price in yen: %v", l.Total)
	}
}

// One stick for ten arches, begun tens counted: common practice, no source. A spec that wants no spares gets none.
func TestSpares(t *testing.T) {
	for _, c := range []struct{ arches, sticks int }{{1, 1}, {10, 1}, {11, 2}, {20, 2}, {21, 3}} {
		if got := line(t, Make(garden(c.arches)), "pvc sch40 1/2 in, 10 ft").Spare; got != c.sticks {
			t.Errorf("%d arches: %d spare sticks, want %d", c.arches, got, c.sticks)
		}
	}
	in := garden(12)
	in.Spec.Stock.Spares = 0
	for _, i := range Make(in).Shopping {
		if i.Spare != 0 {
			t.Errorf("%d spare %s of a spec that wants none", i.Spare, i.Item)
		}
	}
	in = garden(6)
	in.Spec.Stock.Own = append(in.Spec.Stock.Own, in.Spec.Stock.Own[0])
	in.Spec.Stock.Own[0].Length, in.Spec.Stock.Own[0].Count = 10*foot, 40
	if got := line(t, Make(in), "pvc sch40 1/2 in, 10 ft"); got.Buy != 0 || got.Own != got.Need {
		t.Errorf("forty sticks are there: %+v", got)
	}
}
