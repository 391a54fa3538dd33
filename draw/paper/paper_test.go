package paper

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func TestWords(t *testing.T) {
	tests := map[string][]string{
		"cut 59 1/16 in from":     {"cut", "59 1/16 in", "from"},
		"12′-7 7/8″ over all":     {"12′-7 7/8″", "over", "all"},
		"6\u00a0860 mm, then":     {"6\u00a0860 mm,", "then"},
		"two  spaces\tand a tab":  {"two", "spaces", "and", "a", "tab"},
		"hold 8 A at 120 V (max)": {"hold", "8 A", "at", "120 V", "(max)"},
		"in 4 bays":               {"in", "4", "bays"},
		"":                        nil,
	}
	for s, want := range tests {
		if got := Words(s); !slices.Equal(got, want) {
			t.Errorf("Words(%q) = %q, want %q", s, got, want)
		}
	}
}

// No line is wider than asked, none of the text is lost.
func TestWrap(t *testing.T) {
	const s = "Drive the bar plumb until 20 1/2 in stand in the ground, then measure Kreuzbandverschraubungsprüfstelle-Nordnordwest again.\nNext."
	for _, width := range []Length{15, 24, 40, 90, 300} {
		lines := Body.Wrap(s, width)
		for _, line := range lines {
			if w := Body.Width(line); w > width {
				t.Errorf("width %v: %q is %v", width, line, w)
			}
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if squeeze(strings.Join(lines, "")) != squeeze(s) {
			t.Errorf("width %v: text lost in %q", width, lines)
		}
	}
	if got := Body.Wrap("one", 0.1); len(got) != 3 {
		t.Errorf("a width under one letter gave %q", got)
	}
}

func TestFractionIsBuilt(t *testing.T) {
	for s, bars := range map[string]int{"12′-7 7/8″": 1, "±1/8 in": 1, "−3/4″": 1, "7/8": 1, "1:24": 0, "a1/2": 0, "4 1/2 by 6 3/8 in": 2} {
		if got := len(Dimension.Set(s).Bars); got != bars {
			t.Errorf("%q: %d bars, want %d", s, got, bars)
		}
		if got := len(Cell.Set(s).Bars); got != 0 {
			t.Errorf("%q in a table: %d bars, want figures at full size", s, got)
		}
	}
}

// An arc's cubics against the circle itself.
func TestArcIsRound(t *testing.T) {
	const r = 100
	for _, sweep := range []float64{0.3, 1.9, math.Pi, 5.5, 2 * math.Pi} {
		for _, pts := range Arc(Point{10, 20}, r, 0.4, 0.4+sweep).Flatten(1e-5) {
			for _, p := range pts {
				if off := math.Abs(float64(p.Sub(Point{10, 20}).Long()) - r); off > 1e-4 {
					t.Fatalf("sweep %v: %v mm off the circle", sweep, off)
				}
			}
		}
	}
}
