package stock

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Every socket of every fitting is screwed where joints are pinned: three of a tee, four of a cross, two of a coupling. Glued joints want one tin of
// cement, dry ones nothing.
func TestWhatJointsTake(t *testing.T) {
	legs := func(in *Input) {
		in.Spec.Ridge.Present, in.Ridge = false, nil
		for i := range in.Arches {
			k := *in.Arches[i].Kind
			k.Left = []measure.Length{8 * foot, 18 * inch}
			in.Arches[i].Kind = &k
		}
	}
	for _, c := range []struct {
		arches        int
		joints        spec.Joints
		change        func(*Input)
		screws, glues int
	}{
		{6, spec.Dry, func(*Input) {}, 0, 0}, {6, spec.Pinned, func(*Input) {}, 2*3 + 4*4, 0}, {1, spec.Pinned, func(*Input) {}, 2, 0},
		{5, spec.Pinned, legs, 5*2 + 5*2, 0}, {6, spec.Glued, func(*Input) {}, 0, 1}, {40, spec.Glued, legs, 0, 1},
	} {
		in := garden(c.arches)
		in.Spec.Arch.Joints = c.joints
		c.change(&in)
		got := map[Kind]int{}
		for _, i := range Make(in).Shopping {
			got[i.Kind] += i.Need
		}
		if got[Screw] != c.screws || got[Cement] != c.glues {
			t.Errorf("%d arches, %v: %d screws and %d cement, want %d and %d", c.arches, c.joints, got[Screw], got[Cement], c.screws, c.glues)
		}
	}
}

// An assumed price is what such a thing costs to the nearest hundredth.
func TestAssumedPriceIsTheNearest(t *testing.T) {
	in := garden(7)
	in.Spec.Stock.Sell = nil
	for _, i := range Make(in).Shopping {
		if i.Assumed && math.Abs(i.Price-assumed(in, i)) > .005+1e-9 {
			t.Errorf("%s costs %v, rounded to %v", i.Item, assumed(in, i), i.Price)
		}
	}
}

// A piece of the shed's that both trims use up makes no plan better or worse.
func TestScrapServesForNothing(t *testing.T) {
	in := garden(6)
	in.Spec.Stock.Trim = inch / 2
	without := Make(in)
	in.Spec.Stock.Own = append(in.Spec.Stock.Own, spec.Owned{Item: half.Name, Length: inch / 2, Count: 4}, spec.Owned{Item: half.Name, Length: inch, Count: 4})
	with := Make(in)
	if with.Total != without.Total || with.Cuts.Cost != without.Cuts.Cost || len(with.Findings) != len(without.Findings) {
		t.Errorf("with scrap it costs %v, without %v", with.Total, without.Total)
	}
	for _, bar := range with.Cuts.Bars {
		if bar.Stock <= inch {
			t.Errorf("a piece is cut from scrap: %+v", bar)
		}
	}
}
