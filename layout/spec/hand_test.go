package spec

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/measure"
)

// A file that ends with the slip, with or without the end of its line, is told the same.
func TestSlipInTheLastLine(t *testing.T) {
	files, err := filepath.Glob("testdata/bad/first/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, unclosed := range []string{"hoopwright: 1\ntitle: \"Alder Lane", "hoopwright: 1\ntitle: 'Alder Lane"} {
		_, whole := Read("slip.yaml", []byte(unclosed+"\n"))
		if _, open := Read("slip.yaml", []byte(unclosed)); whole == nil || !strings.Contains(whole.Error(), "never closed") || open == nil || open.Error() != whole.Error() {
			t.Errorf("%s:\n%v\nand without the end of the line\n%v", unclosed, whole, open)
		}
	}
	goesOn := "hoopwright: 1\ntitle: \"Alder\n  Lane\"\ntunnel: {arches: 4, spacing: 4 ft}\narch: {span: 7 ft\nunits: imperial\n"
	if _, err := Read("walk.yaml", []byte(goesOn)); err == nil || strings.Contains(err.Error(), "quotation mark") {
		t.Errorf("a text in quotes that goes on in the next line, and a bracket that is open: %v", err)
	}
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for end, at := range bytes.SplitAfter(source, []byte("\n")) {
			if !besides.Match(at) {
				continue
			}
			upTo := besides.ReplaceAll(bytes.Join(bytes.SplitAfter(source, []byte("\n"))[:end+1], nil), nil)
			_, whole := Read("slip.yaml", append(bytes.TrimRight(upTo, "\n"), '\n'))
			_, open := Read("slip.yaml", bytes.TrimRight(upTo, "\n"))
			if whole == nil || open == nil || whole.Error() != open.Error() {
				t.Errorf("%s, line %d:\n%v\nand without the end of the line\n%v", filepath.Base(file), end+1, whole, open)
			}
		}
	}
}

// Evenings from the first to the last, both counted: of a walk that opens on 28 November three are in November, 31 in December.
func TestEveningsFromOpenToClose(t *testing.T) {
	day := func(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 0, 0, 0, 0, time.UTC) }
	for _, c := range []struct {
		open, close time.Time
		want        int
	}{
		{day(2026, 11, 28), day(2027, 1, 2), 3 + 31 + 2}, {day(2026, 11, 28), day(2026, 11, 29), 2},
		{day(2026, 12, 24), day(2026, 12, 24), 35}, {day(2026, 11, 28), time.Time{}, 35},
	} {
		s, err := Read("walk.yaml", []byte(walk("")))
		if err != nil {
			t.Fatal(err)
		}
		r := &reader{spec: s}
		s.Dates.Open, s.Dates.Close, s.Power.Evenings = c.open, c.close, nil
		r.fillPower()
		if got := s.Power.Evenings.Nights; got != c.want {
			t.Errorf("open %v to %v: %d evenings, want %d", c.open, c.close, got, c.want)
		}
	}
}

// A spacing that divides a length is one error where there is no length, not two.
func TestSpacingAlone(t *testing.T) {
	for tunnel, want := range map[string]string{"{spacing: up to 4 ft}": "gives spacing alone", "{arches: 4, spacing: up to 4 ft}": "divides a length", "{spacing: 4 ft}": "gives spacing alone"} {
		_, err := Read("walk.yaml", []byte("hoopwright: 1\ntitle: A\ntunnel: "+tunnel+"\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}\n"))
		if list, ok := err.(Errors); !ok || len(list) != 1 || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", tunnel, err)
		}
	}
}

// What was measured of an arch comes together, whichever of its figures stands first.
func TestFoundComesTogether(t *testing.T) {
	s, err := Read("walk.yaml", []byte(walk("found: {crown: {1: 96 in, 3: 95 in, 2: 94 in}, span: {3: 84 in, 1: 86 in}}")))
	if err != nil {
		t.Fatal(err)
	}
	want := []Measured{{Arch: 1, Crown: 96 * inch, Span: 86 * inch}, {Arch: 2, Crown: 94 * inch}, {Arch: 3, Crown: 95 * inch, Span: 84 * inch}}
	if same := func(a, b measure.Length) bool { return max(a-b, b-a) < 1e-6 }; !slices.EqualFunc(s.Found.Arches, want, func(a, b Measured) bool {
		return a.Arch == b.Arch && same(a.Crown, b.Crown) && same(a.Span, b.Span)
	}) {
		t.Errorf("%+v, want %+v", s.Found.Arches, want)
	}
}

// A name of the spec's own may be as long as is said, and no longer; letters count, not bytes.
func TestLongestName(t *testing.T) {
	for n, fits := range map[int]bool{longestName - 1: true, longestName: true, longestName + 1: false} {
		_, err := Read("walk.yaml", []byte(walk("power: {circuits: {"+strings.Repeat("é", n)+": {volts: 120 V, breaker: 15 A}}}")))
		if (err == nil) != fits {
			t.Errorf("a name of %d letters: %v", n, err)
		}
	}
}

// A foot is the least of whatever people stand in or walk past: anything shorter is a slip of the pen, inches for feet.
func TestNothingPeoplePassIsUnderAFoot(t *testing.T) {
	for _, path := range []string{"tunnel.spacing", "tunnel.length", "tunnel.opening.width", "tunnel.opening.height", "arch.span", "arch.height", "guys.from", "guys.out", "braces.from"} {
		k := keys[slices.IndexFunc(keys, func(k key) bool { return k.path == path })]
		for text, fits := range map[string]bool{"11.9 in": false, "12 in": true, "0.3 m": false} {
			var into measure.Length
			r := &reader{spec: &Spec{}}
			if got := k.rule.read(field{reader: r, path: path, table: path, node: &yaml.Node{Kind: yaml.ScalarNode, Value: text}}, &into); got != fits {
				t.Errorf("%s: %s is taken: %v", path, text, got)
			}
		}
	}
}
