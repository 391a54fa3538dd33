package measure

import "testing"

// By picks by the system: a foot or a metre's third, whatever the type.
func TestBy(t *testing.T) {
	for s, want := range map[System]Length{Imperial: Foot, Metric: 300} {
		if got := By(s, Foot, 300); got != want {
			t.Errorf("%v: %v, want %v", s, got, want)
		}
	}
	if got := By(Metric, "letter", "a4"); got != "a4" {
		t.Errorf("metric paper is %s", got)
	}
}
