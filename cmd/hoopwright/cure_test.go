package main

import (
	"reflect"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/finding"
)

// The lines to paste, read by a YAML reader, hold the values at their keys and nothing else.
func TestCureLines(t *testing.T) {
	lines := cureLines([]finding.Change{{Key: "arch.sticks", Value: "[[10 ft, 8 in], [10 ft, 8 in]]"}, {Key: "arch.height"}, {Key: "lights.rows.up to", Value: "6 ft"},
		{Key: "lights.rows.first", Value: "14 in"}, {Key: "lights.wraps[1].count", Value: "3"}})
	if want := "cure: set arch.sticks to [[10 ft, 8 in], [10 ft, 8 in]], take arch.height out, set `lights.rows.up to` to 6 ft, "; !strings.HasPrefix(lines[0], want) {
		t.Errorf("%q", lines[0])
	}
	if last := lines[len(lines)-1]; last != "count: 3   # in lights.wraps[1]" {
		t.Errorf("%q", last)
	}
	var got map[string]any
	if err := yaml.Unmarshal([]byte(strings.Join(lines[1:3], "\n")), &got); err != nil {
		t.Fatal(err)
	}
	sticks := []any{"10 ft", "8 in"}
	want := map[string]any{"arch": map[string]any{"sticks": []any{sticks, sticks}}, "lights": map[string]any{"rows": map[string]any{"up to": "6 ft", "first": "14 in"}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if cureLines(nil) != nil {
		t.Error("nothing is cured by nothing, yet it is said")
	}
}

// check prints a cure under its finding: half of the crown's 8 ft 1/2 in, up to the next quarter of a foot.
func TestCheckPrintsCures(t *testing.T) {
	spec := "hoopwright: 1\ntitle: Low guys\ntunnel: {arches: 3, spacing: 5 ft}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in}\nguys: {from: 2 ft, out: 5 ft}\n"
	_, out, _ := call(t, spec, "check", "-")
	_, after, found := strings.Cut(out, "[guy-tied-low] ")
	lines := strings.Split(after, "\n")
	if !found || len(lines) < 3 || lines[1] != "    cure: set guys.from to 4 ft 3 in" || lines[2] != "    guys: {from: 4 ft 3 in}" {
		t.Errorf("%s", out)
	}
}
