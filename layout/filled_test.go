package layout

import (
	"bytes"
	"encoding/json"
	"testing"

	"hoopwright/examples"
	"hoopwright/layout/finding"
	"hoopwright/layout/spec"
)

// A filled spec makes the same plan as the spec that it was filled from, to the last figure, on every example: next year's defaults change nothing that stands. Where
// a finding points at in the file differs, for the files do.
func TestFilledMakesTheSamePlan(t *testing.T) {
	entries, err := examples.Files.ReadDir(".")
	if err != nil || len(entries) < 4 {
		t.Fatalf("%d examples, %v", len(entries), err)
	}
	for _, entry := range entries {
		t.Run(entry.Name(), func(t *testing.T) {
			source, err := examples.Files.ReadFile(entry.Name())
			if err != nil {
				t.Fatal(err)
			}
			asWritten, s := planOf(t, source)
			filled, err := spec.Filled(s)
			if err != nil {
				t.Fatal(err)
			}
			if got, _ := planOf(t, filled); !bytes.Equal(got, asWritten) {
				t.Errorf("the filled spec makes another plan:\n%s\nwas\n%s", got, asWritten)
			}
		})
	}
}

func planOf(t *testing.T, source []byte) ([]byte, *spec.Spec) {
	t.Helper()
	s, err := spec.Read("x", source)
	if err != nil {
		t.Fatal(err)
	}
	p := Solve(s)
	for i := range p.Findings {
		p.Findings[i].Pos = finding.Position{}
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return text, p.Spec
}
