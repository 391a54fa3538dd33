package stock

import (
	"math"
	"slices"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Every socket of every fitting is screwed where joints are pinned: three of a tee, four of a cross, two of a coupling. Couplings within legs want one tin of
// cement where joints are glued; crowns and ridge stay dry.
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
		{5, spec.Pinned, legs, 5*2 + 5*2, 0}, {6, spec.Glued, func(*Input) {}, 0, 0}, {40, spec.Glued, legs, 0, 1},
	} {
		in := garden(c.arches)
		in.Spec.Arch.Joints = c.joints
		c.change(&in)
		got := map[Kind]int{}
		for _, i := range Make(in).Shopping {
			got[i.Kind] += i.Need
		}
		if c.joints == spec.Glued {
			said := slices.ContainsFunc(Make(in).Findings, func(f finding.Finding) bool { return f.Code == "nothing-to-cement" })
			if said != (c.glues == 0) {
				t.Errorf("%d arches, %d tins of cement; told that there is nothing to cement: %v", c.arches, c.glues, said)
			}
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

// Legs that come wrapped are bought no part of. By hand for five arches with legs of 8 ft and 18 in, a coupling each, two strings an arch: ten legs are ten sticks of either length, ten strings
// and ten couplings, two screws in each, and 40 of some 210 zip ties, which saves a pack of three; spares are bought as ever. Of nine strings one leg is made anew: its two sticks lie in the shed, its string and its coupling are bought.
func TestWrappedLegsAreNotBought(t *testing.T) {
	bought := func(wrapped bool, strings int) (map[Kind]int, List) {
		in := garden(5)
		in.Spec.Arch.Joints, in.Spec.Found.Wrapped, in.Ties = spec.Pinned, wrapped, 190
		in.Spec.Stock.Own = []spec.Owned{{Item: half.Name, Length: 8 * foot, Count: 10}, {Item: half.Name, Length: 18 * inch, Count: 10}, {Item: warm.Name, Count: strings}}
		in.LegTies = map[lights.Part]int{}
		for i := range in.Arches {
			k := *in.Arches[i].Kind
			k.Left = []measure.Length{8 * foot, 18 * inch}
			k.Right = k.Left
			in.Arches[i].Kind, in.Arches[i].Left, in.Arches[i].Right = &k, k.Left, k.Right
			for side := range 2 {
				leg := lights.Leg(spec.Side(side), i+1)
				in.Strings[2*i+side].Run = lights.Run{Part: leg}
				in.LegTies[leg] = 4
			}
		}
		list, got := Make(in), map[Kind]int{}
		for _, i := range list.Shopping {
			got[i.Kind] += i.Buy
		}
		return got, list
	}
	loose, _ := bought(false, 10)
	for _, c := range []struct{ strings, came, spare, ties int }{{10, 10, 1, 2}, {9, 9, 2, 2}, {0, 0, 11, 3}} {
		got, list := bought(true, c.strings)
		if len(list.Wrapped.Legs) != c.came || list.Wrapped.Lack != 10-c.came || list.Wrapped.Strings != 10-c.strings || list.Wrapped.Sticks != 0 {
			t.Errorf("%d strings: %+v", c.strings, list.Wrapped)
		}
		if got[LightString] != c.spare || got[Coupling] != 11-c.came || got[Screw] != loose[Screw]-2*c.came || got[PipeStick] != loose[PipeStick] || got[ZipTies] != c.ties || loose[ZipTies] != 3 {
			t.Errorf("%d strings: %v are bought, of loose legs %v", c.strings, got, loose)
		}
		whole := 0
		for _, bar := range list.Cuts.Bars {
			if bar.Wrapped {
				whole++
			}
		}
		if whole != 2*c.came || len(list.Cuts.Loose()) != len(list.Cuts.Bars)-whole {
			t.Errorf("%d strings: %d sticks are in wrapped legs", c.strings, whole)
		}
	}
}
