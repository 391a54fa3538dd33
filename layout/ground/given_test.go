package ground

import (
	"os"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

func read(t *testing.T, source string) *spec.Spec {
	t.Helper()
	s, err := spec.Read("test.yaml", []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

const short = `
hoopwright: 1
title: A short row
tunnel: {arches: 3, spacing: 4 ft 4 in}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {from: 6 ft, out: 6 ft}
site:
`

// What the spec itself says can forbid building; what was filled in for it cannot. Left stakes stand at x = −42 in.
func TestOnlyWhatIsGivenForbidsBuilding(t *testing.T) {
	for _, c := range []struct {
		name, site, code string
		level            finding.Level
	}{
		{"keep given", "buried: [{name: pipe, line: [[-60 in, -9 ft], [-60 in, 20 ft]], keep: 24 in}]", "stake-near-buried-line", finding.MustFix},
		{"keep not given", "buried: [{name: pipe, line: [[-60 in, -9 ft], [-60 in, 20 ft]]}]", "stake-near-buried-line", finding.LookAt},
		{"on the line, keep not given", "buried: [{name: pipe, line: [[-42 in, -9 ft], [-42 in, 20 ft]]}]", "stake-near-buried-line", finding.MustFix},
		{"guys at arches not given", "features: [{name: path, outline: [[-9 ft, -7 ft], [9 ft, -7 ft], [9 ft, -5 ft], [-9 ft, -5 ft]], hard: true}]", "stake-in-hard-ground", finding.LookAt},
		{"overhead keep given", "overhead: [{name: drop, line: [[-9 ft, -9 ft], [-9 ft, 20 ft]], height: 14 ft, keep: 10 ft}]", "near-overhead-line", finding.MustFix},
		{"overhead keep not given", "overhead: [{name: drop, line: [[-9 ft, -9 ft], [-9 ft, 20 ft]], height: 14 ft}]", "near-overhead-line", finding.LookAt},
	} {
		t.Run(c.name, func(t *testing.T) {
			want(t, lay(read(t, short+"  "+c.site+"\n")), c.code, c.level)
		})
	}
}

// The specs that come with the program: every stake can be tied, and every figure is a number.
func TestExamplesCanBeSetOut(t *testing.T) {
	for _, name := range []string{"garden", "parkwalk", "schoolyard", "starter"} {
		source, err := os.ReadFile("../../examples/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		s := read(t, string(source))
		l := lay(s)
		if len(l.Stakes) < 2*s.Tunnel.Arches || len(l.Ties) != len(l.Stakes) || len(l.Marks) != len(s.Site.Marks) {
			t.Errorf("%s: %d stakes, %d ties, %d of %d marks", name, len(l.Stakes), len(l.Ties), len(l.Marks), len(s.Site.Marks))
		}
		for _, tie := range l.Ties {
			for _, x := range []measure.Length{tie.A, tie.B, tie.C, tie.Error, measure.Length(tie.Crossing)} {
				if !(x >= 0 && x < 1e6) {
					t.Errorf("%s: %+v", name, tie)
				}
			}
		}
		for _, f := range l.Findings {
			t.Logf("%s: %s %s: %s", name, f.Level, f.Code, f.Text)
		}
	}
}

// A guy or brace in the bay of a side way closes it: bays counted by hand at arches 5 ft apart, guys 6 ft out reach over one bay and into the next.
func TestNothingStandsAcrossAWay(t *testing.T) {
	for more, cure := range map[string]string{
		"guys: {arches: [1, 4, last], from: 7 ft, out: 6 ft}": "[1, 8]", // arch 4 is guyed over bays 2, 3, 4 and 5
		"guys: {arches: [4], from: 7 ft, out: 6 ft}":          "[1, 8]",
		"guys: {arches: [1, 6, last], from: 7 ft, out: 6 ft}": "", // bays 4 to 7
		"guys: {arches: [1, last], from: 7 ft, out: 6 ft}":    "",
		"braces: {bays: [1, 2, 7], from: 4 ft}":               "[1, 7]",
		"braces: {bays: 2, from: 4 ft, kind: line}":           "[1]",
		"braces: {bays: [1, 7], from: 4 ft}":                  "",
		"braces: {from: 4 ft}":                                "",
	} {
		l := lay(read(t, "hoopwright: 1\ntitle: A way out\ntunnel: {arches: 8, spacing: 5 ft, ways: [{bay: 2, wall: right}]}\narch: {pipe: pvc sch40 3/4 in, sticks: [10 ft, 10 ft], span: 7 ft}\n"+more+"\n"))
		got := ""
		for _, f := range l.Findings {
			if f.Code == "way-is-closed" {
				if got = f.Cure[0].Value; f.Level != finding.MustFix {
					t.Errorf("%s: %v", more, f.Level)
				}
			}
		}
		if got != cure {
			t.Errorf("%s: write %q, want %q", more, got, cure)
		}
	}
}
