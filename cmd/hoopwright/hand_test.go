package main

import (
	"strings"
	"testing"
)

// A star stands by the span of the spec, once, where its meaning is told under the table, and nowhere else.
func TestAStarIsExplained(t *testing.T) {
	for args, stars := range map[string]int{"": 0, "../../examples/garden.yaml": 1, "../../examples/garden.yaml --height 7.5-7.7": 0} {
		_, out, _ := call(t, "", append([]string{"sizes"}, strings.Fields(args)...)...)
		table, told, found := strings.Cut(out, "*: the span of the spec.")
		if strings.Count(table, " *") != stars || found != (stars > 0) || strings.Contains(told, " *") {
			t.Errorf("sizes %s: want %d stars\n%s", args, stars, out)
		}
	}
}

// Every key says what it takes and what it is by default; nothing stands in empty brackets.
func TestKeysSayWhy(t *testing.T) {
	_, out, _ := call(t, "", "keys")
	if strings.Contains(out, "()") || !strings.Contains(out, "default 36 in (2010 ADA Standards 403.5, clear width)") {
		t.Error(out)
	}
}
