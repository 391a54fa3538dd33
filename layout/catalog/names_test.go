package catalog

import (
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/measure"
)

func TestFindHoweverSpelt(t *testing.T) {
	for name, want := range map[string]string{
		"PVC SCH40 1/2in": "pvc sch40 1/2 in", `pvc sch40 1/2"`: "pvc sch40 1/2 in", "pvc sch40 1/2″": "pvc sch40 1/2 in", " pvc  Schedule 40  1/2 inch ": "pvc sch40 1/2 in",
		"pvc sch 40 3/4 in": "pvc sch40 3/4 in", "pvc sch40 1-1/4 in": "pvc sch40 1 1/4 in", `pvc sch40 1-1/4"`: "pvc sch40 1 1/4 in", "pvc sch40 1in": "pvc sch40 1 in",
		"PVC-U PN16 25mm": "pvc-u pn16 25 mm",
	} {
		if p, ok := FindPipe(name); !ok || p.Name != want {
			t.Errorf("%q found %q, %v; want %q", name, p.Name, ok, want)
		}
	}
	for name, want := range map[string]string{
		"Mini LED 100 Warm": "mini led 100 warm", "led 100 warm 230V": "led 100 warm 230 V", "LED 50 cool 230 volts": "led 50 cool 230 V",
		"mini led 100 red": "mini led 100 red", "mini led 50 warm": "mini led 50 warm", "drop led 100 warm": "drop led 100 warm",
	} {
		if s, ok := FindString(name); !ok || s.Name != want {
			t.Errorf("%q found %q, %v; want %q", name, s.Name, ok, want)
		}
	}
	for _, name := range []string{"", "pvc", "pvc sch40 1/2", "pvc sch80 1/2 in", "pvc sch40 11/4 in"} {
		if p, ok := FindPipe(name); ok {
			t.Errorf("%q found %q", name, p.Name)
		}
	}
}

func TestNearest(t *testing.T) {
	keys := []string{"span", "sticks", "stake", "spacing", "height", "pipe"}
	var strings []string
	for _, s := range Strings() {
		strings = append(strings, s.Name)
	}
	for _, c := range []struct {
		name  string
		names []string
		want  string
	}{
		{"spna", keys, "span"}, {"spaceing", keys, "spacing"}, {"heigth", keys, "height"}, {"Pipe", keys, "pipe"}, {"stick", keys, "sticks"}, {"hei", keys, "height"},
		{"colour", keys, ""}, {"x", keys, ""}, {"", keys, ""}, {"he", keys, ""}, {"span", nil, ""},
		{"mini led 100 wram", strings, "mini led 100 warm"}, {"mini led 1000 warm", strings, "mini led 100 warm"}, {"mini led 100", strings, "mini led 100 warm"},
		{"mini lde 70 ambre", strings, "mini led 70 amber"}, {"neon tube", strings, ""},
	} {
		if got := Nearest(c.name, c.names); got != c.want {
			t.Errorf("nearest to %q is %q, want %q", c.name, got, c.want)
		}
	}
}

// Counts of edits by hand; "kitten" to "sitting" is the textbook pair.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		from, to string
		want     int
	}{{"kitten", "sitting", 3}, {"", "abc", 3}, {"abc", "", 3}, {"abcd", "abdc", 1}, {"ca", "abc", 3}, {"naïve", "naive", 1}, {"same", "same", 0}} {
		if got := distance(c.from, c.to); got != c.want {
			t.Errorf("%q to %q takes %d, want %d", c.from, c.to, got, c.want)
		}
	}
}

// Every row has a name of its own that finds it, a description without gaps and a source.
func TestRows(t *testing.T) {
	finders := map[string]func(string) (string, bool){
		"pipe":   func(n string) (string, bool) { p, ok := FindPipe(n); return p.Name, ok },
		"bar":    func(n string) (string, bool) { b, ok := FindBar(n); return b.Name, ok },
		"cord":   func(n string) (string, bool) { c, ok := FindCord(n); return c.Name, ok },
		"string": func(n string) (string, bool) { s, ok := FindString(n); return s.Name, ok },
	}
	imperial, metric := Rows(measure.Imperial), Rows(measure.Metric)
	var seen []string
	for i, r := range imperial {
		if found, ok := finders[r.Kind](r.Name); !ok || found != r.Name {
			t.Errorf("%s %q finds %q, %v", r.Kind, r.Name, found, ok)
		}
		if slices.Contains(seen, key(r.Name)) {
			t.Errorf("%q stands twice", r.Name)
		}
		seen = append(seen, key(r.Name))
		if r.Source == "" || r.Description == "" || strings.Contains(r.Description, "—") || strings.Contains(r.Description, "%!") {
			t.Errorf("%s: %q from %q", r.Name, r.Description, r.Source)
		}
		if metric[i].Name != r.Name {
			t.Errorf("row %d is %q in one system and %q in the other", i, r.Name, metric[i].Name)
		}
	}
	if got, want := imperial[0].Description, "0.84 in across, least wall 0.109 in, 0.161 lb/ft, modulus 400\u00a0000 psi; tee take-off 0.5 in, socket 0.688 in deep"; got != want {
		t.Errorf("half-inch pipe reads %q, want %q", got, want)
	}
}
