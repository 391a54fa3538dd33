package paper

import (
	"math"
	"slices"
	"testing"

	"hoopwright/layout/spec"
)

// Every paper that a spec may name has a size, and no other.
func TestSpecNamesTheSheets(t *testing.T) {
	for _, name := range spec.Papers() {
		if _, ok := Sheet(name); !ok {
			t.Errorf("paper %s has no size", name)
		}
	}
	for name := range sizes {
		if !slices.Contains(spec.Papers(), name) {
			t.Errorf("no spec may name the paper %s", name)
		}
	}
}

// ISO 216: a sheet of series A is 1 to √2, An has 2^-n square metres, both in whole millimetres. North American sizes are whole halves of an inch.
func TestSheetSizes(t *testing.T) {
	for name, n := range map[string]int{"a4": 4, "a3": 3} {
		s, _ := Sheet(name)
		if area := float64(s.W*s.H) / 1e6 * math.Pow(2, float64(n)); math.Abs(area-1) > 0.003 || math.Abs(float64(s.H/s.W)-math.Sqrt2) > 0.003 {
			t.Errorf("%s is %v by %v", name, s.W, s.H)
		}
	}
	for name, inches := range map[string][2]Length{"letter": {8.5, 11}, "legal": {8.5, 14}, "tabloid": {11, 17}} {
		if s, _ := Sheet(name); math.Abs(float64(s.W-25.4*inches[0])) > 1e-9 || math.Abs(float64(s.H-25.4*inches[1])) > 1e-9 {
			t.Errorf("%s is %v by %v", name, s.W, s.H)
		}
	}
}
