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
