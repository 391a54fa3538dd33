package arch_test

import (
	"strings"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// TestFindings brings each finding about, once as the spec's own doing and once by values it did not give.
func TestFindings(t *testing.T) {
	bar := func(name string) catalog.Bar { b, _ := catalog.FindBar(name); return b }
	for _, c := range []struct {
		code          string
		change        func(*arch.Input)
		given, silent finding.Level
		key           string
		says          string
	}{
		{"no-arch", func(i *arch.Input) { i.Spec.Span = 264 * in }, finding.MustFix, finding.MustFix, "arch.span", "22′-0″"},
		{"no-arch", func(i *arch.Input) { i.Spec.Missing, i.Spec.Span, i.Spec.Height = spec.Span, 0, 130*in }, finding.MustFix, finding.MustFix, "arch.height", "10′-10″"},
		{"no-arch", func(i *arch.Input) {
			i.Spec.Missing, i.Spec.Left, i.Spec.Right, i.Spec.Height, i.Spec.Span = spec.Sticks, nil, nil, 600*in, 40*in
		}, finding.MustFix, finding.MustFix, "arch.height", "no sticks"},
		{"bar-too-thick", func(i *arch.Input) { i.Spec.Stake.Bar = bar("5/8 in") }, finding.MustFix, finding.LookAt, "arch.stake.bar", "0.688 in"},
		{"bends-too-tight", func(i *arch.Input) { i.Spec.Span = 210 * in }, finding.MustFix, finding.MustFix, "arch.span", "strength"},
		{"bends-too-tight", func(i *arch.Input) { i.Spec.Span = 50 * in }, finding.LookAt, finding.LookAt, "arch.span", "wider span"},
		{"sleeve-longer-than-stick", func(i *arch.Input) {
			i.Spec.Left = []measure.Length{20 * in, 100 * in}
		}, finding.MustFix, finding.LookAt, "arch.stake.length", "28 in"},
		{"stake-bends", func(i *arch.Input) { i.Spec.Span = 170 * in }, finding.MustFix, finding.LookAt, "arch.stake.bar", "207 lb·in"},
		{"stake-too-shallow", func(i *arch.Input) { i.Spec.Stake.Depth, i.Spec.Stake.Length = 5*in, 33*in }, finding.LookAt, finding.LookAt, "arch.stake.depth", "wet lawn"},
		{"stake-too-shallow", func(i *arch.Input) { i.Spec.Stake.Depth, i.Spec.Stake.Length, i.Soil = 8*in, 36*in, spec.SoilUnknown }, finding.LookAt, finding.LookAt, "arch.stake.depth", "sandy"},
		{"crown-pulls-apart", func(i *arch.Input) { i.Spec.Span = 180 * in }, finding.LookAt, finding.LookAt, "arch.joints", "Pin the crown"},
		{"opening-blocked", func(i *arch.Input) { i.OpeningWidth = 80 * in }, finding.MustFix, finding.LookAt, "tunnel.opening", "up to that height"},
		{"opening-blocked", func(i *arch.Input) { i.OpeningHeight = 94 * in }, finding.MustFix, finding.LookAt, "tunnel.opening", "as low as"},
		{"opening-blocked", func(i *arch.Input) { i.Drop = 20 * in }, finding.MustFix, finding.LookAt, "tunnel.opening", "as low as"},
		{"leans-along", func(i *arch.Input) { i.Loads = []arch.Load{{To: 241 * in, Weight: 4 * pound}} }, finding.LookAt, finding.LookAt, "guys", "both ways"},
		{"sways-sideways", func(i *arch.Input) {
			i.Loads, i.Guyed = []arch.Load{{To: 241 * in, Weight: 20 * pound}}, true
		}, finding.LookAt, finding.LookAt, "arch.span", "sideways"},
		{"falls-over", func(i *arch.Input) { i.Loads = []arch.Load{{To: 241 * in, Weight: 30 * pound}} }, finding.MustFix, finding.MustFix, "arch.span", "as raised"},
		{"falls-over", func(i *arch.Input) { i.Loads = []arch.Load{{To: 241 * in, Weight: 9 * pound}} }, finding.MustFix, finding.MustFix, "arch.span", "season's end"},
	} {
		for _, given := range []bool{true, false} {
			i := garden()
			c.change(&i)
			want := c.silent
			if i.Given = func(string) bool { return given }; given {
				want = c.given
			}
			i.Position = func(key string) finding.Position { return finding.Position{File: key, Line: 7} }
			_, list := arch.Solve(i)
			f := code(list, c.code)
			switch {
			case f == nil:
				t.Errorf("%s is not found; found %v", c.code, list)
			case f.Level != want || f.Key != c.key || f.Pos.File != c.key || !strings.Contains(f.Text, c.says) || !strings.HasPrefix(f.Text, "Arches 2 to 4: "):
				t.Errorf("%s, given %v: %v at %s: %s", c.code, given, f.Level, f.Key, f.Text)
			case strings.Contains(f.Text, "%!") || strings.Contains(f.Text, "NaN"):
				t.Error(f.Text)
			}
		}
	}
	for _, in := range []arch.Input{garden(), snug()} { // good arches have nothing to say
		if _, list := arch.Solve(in); len(list) > 0 {
			t.Errorf("found %v", list)
		}
	}
}

// TestKeys: an exception's own keys are pointed at before the base's.
func TestKeys(t *testing.T) {
	i := garden()
	i.Numbers = []int{1}
	i.Keys = []string{"arch.except[0]", "arch"}
	i.Given = func(key string) bool { return key == "arch.except[0].span" || key == "arch.stake.bar" }
	i.Spec.Span = 264 * in
	_, list := arch.Solve(i)
	if f := code(list, "no-arch"); f == nil || f.Key != "arch.except[0].span" || !strings.HasPrefix(f.Text, "Arch 1: ") {
		t.Errorf("%v", list)
	}
}

// TestTightOpening: a box that clears by half of what the arch may be lower is worth a look; one that clears by more is not.
func TestTightOpening(t *testing.T) {
	i := garden()
	k, _ := arch.Solve(i)
	give := k.GiveOrTake(measure.Imperial)
	for over, found := range map[measure.Length]bool{give / 2: true, give + in/4: false} {
		i.OpeningHeight = k.BoxHeight - over
		_, list := arch.Solve(i)
		if f := code(list, "opening-near"); (f != nil) != found {
			t.Errorf("cleared by %v: found %v", over, list)
		}
	}
}
