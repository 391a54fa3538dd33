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
// a finding points at differs, for one file gives what the other leaves out.
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
		p.Findings[i].Pos, p.Findings[i].Key = finding.Position{}, ""
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return text, p.Spec
}

// What the solver chose is in a filled spec too: read again it is given, and the tunnel holds as it did.
func TestFilledKeepsWhatWasChosen(t *testing.T) {
	const left = "{hoopwright: 1, title: x, tunnel: {arches: 5, spacing: 4 ft}, arch: {pipe: pvc sch40 3/4 in, span: 8 ft, height: 7 ft 6 in, except: [{arches: [2], span: 8 ft 6 in}]}, site: {soil: soft}}"
	_, s := planOf(t, []byte(left))
	filled, err := spec.Filled(s)
	if err != nil {
		t.Fatal(err)
	}
	again, err := spec.Read("x", filled)
	if err != nil {
		t.Fatalf("%v\n%s", err, filled)
	}
	if again.Chooses() || !again.Given("arch.stake.depth") {
		t.Errorf("something is left to choose:\n%s", filled)
	}
	before, after := Solve(s), Solve(again)
	if len(before.Stakes) != len(after.Stakes) || len(after.Spec.Guys.Arches) != len(s.Guys.Arches) || len(after.Spec.Braces.Bays) != len(s.Braces.Bays) || len(s.Guys.Arches)+len(s.Braces.Bays) == 0 {
		t.Errorf("%d stakes, %+v, %+v; were %d, %+v, %+v", len(after.Stakes), after.Spec.Guys, after.Spec.Braces, len(before.Stakes), s.Guys, s.Braces)
	}
	for i := range min(len(before.Stakes), len(after.Stakes)) {
		a, b := before.Stakes[i], after.Stakes[i]
		if a.StakeID != b.StakeID || apart(a.At(), b.At()) > 0.001 || a.Length-b.Length > 0.001 || b.Depth-a.Depth > 0.001 {
			t.Errorf("stake %v became %v", a, b)
		}
	}
}
