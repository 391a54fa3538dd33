package packet

import (
	"testing"

	"hoopwright/layout/finding"
)

func TestCureWords(t *testing.T) {
	for want, cure := range map[string][]finding.Change{
		"":                                  nil,
		"Set arch.span to 7 ft 6 in.":       {{Key: "arch.span", Value: "7 ft 6 in"}},
		"Take lights.rows out of the spec.": {{Key: "lights.rows"}},
		"Set arch.sticks to [10 ft, 10 ft] and take arch.height out of the spec.": {{Key: "arch.sticks", Value: "[10 ft, 10 ft]"}, {Key: "arch.height"}},
		"Set “lights.rows.up to” to 6 ft.":                                        {{Key: "lights.rows.up to", Value: "6 ft"}},
	} {
		if got := cureWords(cure); got != want {
			t.Errorf("%v: %q, want %q", cure, got, want)
		}
	}
}
