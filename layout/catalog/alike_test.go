package catalog

import "testing"

// What people call things, our own guesses, and the row that they mean; what the catalog has nothing of is like nothing in it.
func TestAlike(t *testing.T) {
	var strings, pipes []string
	for _, s := range Strings() {
		strings = append(strings, s.Name)
	}
	for _, p := range Pipes() {
		pipes = append(pipes, p.Name)
	}
	for _, c := range []struct {
		written string
		names   []string
		want    string
	}{
		{"mini leds 100 warm white", strings, "mini led 100 warm"}, {"100 warm white mini LEDs", strings, "mini led 100 warm"}, {"warm icicle lights 100", strings, "drop led 100 warm"},
		{"icicle", strings, "drop led 100 warm"}, {"incandescent minis", strings, "mini incandescent 100 warm"}, {"neon tube", strings, ""}, {"100", strings, ""},
		{"1/2 inch PVC", pipes, "pvc sch40 1/2 in"}, {"schedule 40 pvc 3/4", pipes, "pvc sch40 3/4 in"}, {"PEX 1/2", pipes, ""}, {"ABS sch40 1/2 in", pipes, ""}, {"copper 15 mm", pipes, ""}, {"", pipes, ""},
	} {
		if got := Alike(c.written, c.names); got != c.want {
			t.Errorf("%q is taken for %q, want %q", c.written, got, c.want)
		}
	}
	if got := Alike("red", strings); got != "mini led 50 red" && got != "mini led 100 red" && got != "mini led 70 red" {
		t.Errorf("red is taken for %q", got)
	}
}
