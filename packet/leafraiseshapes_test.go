package packet

import (
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Arches whose crowns and widths are within what is held share a profile, whatever their feet; feet farther off than is held are told apart.
func TestArchesAlikeShareAProfile(t *testing.T) {
	plan := examplePlan(t, "garden")
	u, first := plan.Spec.Units, *plan.Arches[0].Kind
	changed := func(number int, change func(*arch.Kind)) arch.Arch {
		k := first
		k.Numbers = []int{number}
		change(&k)
		return arch.Arch{Number: number, Kind: &k}
	}
	give, foot := first.GiveOrTake(u), practice.FootGive(u)
	shapes := crew.Shapes([]arch.Arch{
		changed(1, func(*arch.Kind) {}),
		changed(2, func(k *arch.Kind) { k.Span += foot / 4 }),
		changed(3, func(k *arch.Kind) { k.Span += foot * 3 / 4 }),
		changed(4, func(k *arch.Kind) { k.Crown += give - 1; k.Span += foot*3/4 + 1 }),
		changed(5, func(k *arch.Kind) { k.Crown += give + 1 }),
		changed(6, func(k *arch.Kind) { k.ShoulderWidth -= give + 1 }),
		changed(7, func(k *arch.Kind) { k.Left = append(slices.Clone(k.Left), 12*measure.Inch) }),
	}, u)
	var got [][]int
	for _, s := range shapes {
		got = append(got, s.Numbers())
	}
	if want := [][]int{{1, 2, 3, 4}, {5}, {6}, {7}}; !slices.EqualFunc(got, want, slices.Equal[[]int]) {
		t.Fatalf("shapes are %v, want %v", got, want)
	}
	if feet := feetApart(shapes[0], u); len(feet) != 1 || !slices.Equal(feet[0].Numbers(), []int{3, 4}) {
		t.Errorf("feet told apart: %v", feet)
	}
}

// A second crew is told of where the schedule has one, and nowhere else.
func TestSecondCrewIsTold(t *testing.T) {
	for name, want := range map[string]bool{"garden": false, "schoolyard": false, "parkwalk": true} {
		var words []string
		for _, s := range leafSides(t, examplePlan(t, name), "raise") {
			words = append(words, wordsOf(s.page)...)
		}
		if told := strings.Contains(strings.Join(words, " "), "Second crew, 5 more: arch"); told != want {
			t.Errorf("%s: a second crew is told of: %v, want %v", name, told, want)
		}
	}
}
