package spec

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// A file that ends with the slip, with or without the end of its line, is told the same.
func TestSlipInTheLastLine(t *testing.T) {
	files, err := filepath.Glob("testdata/bad/first/*.yaml")
	if err != nil {
		t.Fatal(err)
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
		{day(2026, 11, 28), day(2027, 1, 2), 3 + 31 + 2}, {day(2026, 11, 28), day(2026, 11, 29), 2}, {day(2026, 12, 24), day(2026, 12, 24), 35}, {day(2026, 11, 28), time.Time{}, 35},
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
