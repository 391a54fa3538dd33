package catalog

import (
	"slices"
	"testing"
)

// Labels as they read in shops. Common practice, no source.
func TestHues(t *testing.T) {
	for label, want := range map[string][]Hue{
		"warm white": {WarmWhite}, "cool white": {CoolWhite}, "Red": {Red}, "red and green": {Red, Green}, "many colours": manyHues, "multi-colour": manyHues,
		"warm white / blue": {WarmWhite, Blue}, "white": {White}, "": {White}, "starlight": {White}, "amber": {Amber},
	} {
		if got := Hues(label); !slices.Equal(got, want) {
			t.Errorf("%q is %v, want %v", label, got, want)
		}
	}
}
