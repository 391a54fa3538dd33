package packet

import (
	"testing"

	"hoopwright/layout/finding"
)

func TestCureWords(t *testing.T) {
	for want, cure := range map[string][]finding.Change{
		"": nil,
		"A new print could set the feet 7 ft 6 in apart.":                          {{Key: "arch.span", Value: "7 ft 6 in"}},
		"A new print could hang drops 10 in.":                                      {{Key: "lights.drops[1].hang", Value: "10 in"}, {Key: "arch.sticks", Value: "[10 ft, 10 ft]"}},
		"A new print could guy arches 1, 6 alone.":                                 {{Key: "guys.arches", Value: "[1, 6]"}},
		"A new print could take down by 2 Jan 2027 and plan for 2 helpers in all.": {{Key: "dates.down", Value: "2027-01-02"}, {Key: "crew.helpers", Value: "2"}},
	} {
		if got := cureWords(cure); got != want {
			t.Errorf("%v: %q, want %q", cure, got, want)
		}
	}
}
