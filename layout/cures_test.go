package layout_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// cured writes the changes into a spec as a person with an editor would: each value in the place of the one at its key.
func cured(t *testing.T, text string, changes []finding.Change) string {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(text), &doc); err != nil {
		t.Fatal(err)
	}
	for _, c := range changes {
		var value yaml.Node
		if err := yaml.Unmarshal([]byte(c.Value), &value); err != nil {
			t.Fatalf("%s: %v", c.Value, err)
		}
		n := doc.Content[0]
		steps := strings.FieldsFunc(c.Key, func(r rune) bool { return r == '.' || r == '[' || r == ']' })
		for i, step := range steps {
			k, err := strconv.Atoi(step)
			if err == nil && n.Kind == yaml.SequenceNode {
				n = n.Content[k]
				continue
			}
			at := -1
			for k := 0; k < len(n.Content); k += 2 {
				if n.Content[k].Value == step {
					at = k + 1
				}
			}
			last := i == len(steps)-1
			switch {
			case last && c.Value == "":
				if at > 0 {
					n.Content = slices.Delete(n.Content, at-1, at+1)
				}
			case last && at > 0:
				n.Content[at] = value.Content[0]
			case last:
				n.Content = append(n.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: step}, value.Content[0])
			case at < 0:
				n.Content = append(n.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: step}, &yaml.Node{Kind: yaml.MappingNode})
				n = n.Content[len(n.Content)-1]
			default:
				n = n.Content[at]
			}
		}
	}
	out, err := yaml.Marshal(&doc)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// curesHold: every cure of a plan is a spec that the reader takes, and one without the finding.
func curesHold(t *testing.T, text string, p *layout.Plan) (cures []string) {
	t.Helper()
	for _, f := range p.Findings {
		if len(f.Cure) == 0 {
			continue
		}
		cures = append(cures, f.Code)
		for _, cure := range append([][]finding.Change{f.Cure}, f.Else...) {
			then := cured(t, text, cure)
			if _, err := spec.Read("cured.yaml", []byte(then)); err != nil {
				t.Errorf("%s: the spec with %v is refused: %v", f.Code, cure, err)
				continue
			}
			for _, now := range solved(t, then).Findings {
				if now.Code == f.Code && now.Key == f.Key {
					t.Errorf("%v leaves\n  %s\nbefore:\n  %s", cure, now.Text, f.Text)
				}
			}
		}
	}
	return cures
}

// TestCures: what the plan says would cure a finding does, tried by writing it into the spec and solving that. Each of these specs is ours and has the finding that it is listed under.
func TestCures(t *testing.T) {
	eachSpec(t, func(t *testing.T, text string) { curesHold(t, text, solved(t, text)) })
	rows := func(figures string) sections {
		return base.with("tunnel", "{arches: 6, spacing: 5 ft, opening: {width: 4 ft, height: 6 ft 8 in}}", "lights", "{rows: {"+figures+", strings: [mini led 100 warm]}}")
	}
	site := func(more string) sections { return base.with("site", "{"+more+", "+siteOf+"}") }
	for code, s := range map[string]sections{
		"stake-in-hard-ground":   site("features: [{name: patio, outline: [[7 ft, 8 ft], [10 ft, 8 ft], [10 ft, 14 ft], [7 ft, 14 ft]], hard: true}]"),
		"stake-near-buried-line": site("buried: [{name: water, line: [[0 ft, 8 ft 6 in], [30 ft, 8 ft]], keep: 18 in}]"),
		"stake-beside-keep":      site("buried: [{name: water, line: [[77.5 in, 0 ft], [77.5 in, 60 ft]], keep: 23 in}]"),
		"way-is-closed":          base.with("tunnel", "{arches: 6, spacing: 5 ft, opening: {width: 4 ft, height: 6 ft 8 in}, ways: [{bay: 3, wall: right}]}", "guys", "{arches: [1, 3, last], from: 6 ft, out: 5 ft}"),
		"arches-overlap":         site("route: [{straight: 2 ft}, {left: 120 deg, radius: 3 ft}, {straight: rest}]").with("tunnel", "{arches: 8, spacing: 3 ft}"),
		"route-crosses-itself":   site("route: [{straight: 20 ft}, {left: 270 deg, radius: 10 ft}, {straight: rest}]").with("tunnel", "{arches: 30, spacing: 4 ft 3 in}"),
		"bay-too-narrow-inside":  site("route: [{right: 60 deg, radius: 6 ft}, {straight: rest}]"),
		"mark-on-other-side": base.with("site", "{start: {at: [12 ft, 9 ft]}, marks: [{name: post, at: [0 ft, 0 ft]}, {name: gate, at: [30 ft, 1 ft]}, {name: pole, at: [15 ft, 4 ft]}, "+
			"{name: tree, from: {post: 37 ft 6 in, gate: 46 ft 2 in, pole: 36 ft}, side: right}]}"),
		"guy-above-arch":       base.with("guys", "{from: 20 ft, out: 5 ft}"),
		"guy-tied-low":         base.with("guys", "{from: 2 ft, out: 5 ft}"),
		"few-hands":            base.with("crew", "{helpers: 1}"),
		"long-day":             base.with("tunnel", "{arches: 15, spacing: 4 ft 3 in}", "crew", "{helpers: 5}"),
		"days-too-short":       base.with("tunnel", "{arches: 15, spacing: 4 ft 3 in}", "crew", "{helpers: 6, days: [{date: 2026-11-21, from: 10:00, until: 16:00}]}"),
		"mark-too-late":        base.with("dates", "{mark: 2026-11-20, build: 2026-11-21}"),
		"lights-too-long":      base.with("dates", "{build: 2026-11-01, close: 2027-02-20, down: 2027-03-01}"),
		"piece-too-long":       base.with("arch", "{pipe: pvc sch40 1/2 in, span: 7 ft 2 in, height: 8 ft 6 in}"),
		"wrap-too-short":       base.with("lights", "{wraps: [{where: arches, string: mini led 50 warm, count: 1}]}"),
		"wrap-turns-touch":     base.with("lights", "{wraps: [{where: ridge, string: mini led 100 warm, count: 9}]}"),
		"row-above-crown":      rows("first: 18 in, step: 18 in, up to: 12 ft"),
		"row-on-ground":        rows("first: 3 in, step: 12 in, up to: 5 ft"),
		"row-in-opening":       rows("first: 18 in, step: 12 in, up to: 7 ft").with("tunnel", "{arches: 6, spacing: 5 ft, opening: {width: 6 ft, height: 6 ft 8 in}}"),
		"rows-bow-arch":        rows("first: 12 in, step: 4 in, up to: 6 ft, sag: 0 in"),
		"rows-need-two-arches": base.with("tunnel", "{arches: 1}", "lights", "{rows: {first: 12 in, step: 12 in, up to: 6 ft, strings: [mini led 100 warm]}}"),
		"drop-in-opening":      base.with("lights", "{drops: [{where: ridge, string: drop led 100 warm, hang: 20 in}]}"),
		"crossing-would-save":  base.with("tunnel", "{arches: 8, spacing: 4 ft}", "site", "{start: {at: [10 ft, 6 ft]}, outlets: [{name: shed, at: [20 ft, 40 ft], circuit: a}]}", "lights", "{wraps: [{where: left legs, string: mini led 100 warm, count: 1}]}"),
		"guy-rubs-leg":         base.with("tunnel", "{arches: 6, spacing: 2 ft, opening: {width: 4 ft, height: 6 ft 8 in}}", "guys", "{arches: [1, 3, last], from: 7 ft 3 in, out: 7 ft 6 in}"),
		"guy-in-lane":          base.with("tunnel", "{arches: 6, spacing: 4 ft 3 in, opening: {width: 4 ft, height: 6 ft 8 in}}", "guys", "{arches: [1, 3, last], from: 6 ft, out: 5 ft}"),
		"way-is-blocked":       site("features: [{name: bench, outline: [[19 ft, 14 ft], [21 ft, 14 ft], [21 ft, 16 ft], [19 ft, 16 ft]], height: 30 in}]").with("tunnel", "{arches: 6, spacing: 5 ft, opening: {width: 4 ft, height: 6 ft 8 in}, ways: [{bay: 2, wall: right}]}"),
		"drop-lap-too-long":    base.with("lights", "{drops: [{where: ridge, string: drop led 100 warm, hang: 5 in, lap: 5 ft}]}"),
	} {
		t.Run(code, func(t *testing.T) {
			t.Parallel()
			p := solved(t, s.text())
			if cures := curesHold(t, s.text(), p); !slices.Contains(cures, code) {
				t.Errorf("no cure of %s; findings %v", code, findings(p))
			}
		})
	}
}

// What rows are told to sag is the least half inch that takes the worst bow well under the limit: half an inch less does not.
func TestRowsSagNoMoreThanTheyMust(t *testing.T) {
	for _, step := range []string{"4 in", "6 in"} {
		text := base.with("tunnel", "{arches: 6, spacing: 5 ft, opening: {width: 4 ft, height: 6 ft 8 in}}",
			"lights", "{rows: {first: 12 in, step: "+step+", up to: 6 ft, sag: 0 in, strings: [mini led 100 warm]}}").text()
		bow := func(sag string) (worst measure.Length) {
			for _, e := range solved(t, strings.Replace(text, "sag: 0 in", "sag: "+sag, 1)).Lights.Pulls {
				worst = max(worst, e.Bow)
			}
			return worst
		}
		list := solved(t, text).Findings
		k := slices.IndexFunc(list, func(f finding.Finding) bool { return f.Code == "rows-bow-arch" })
		if k < 0 {
			t.Fatalf("rows every %s bow no arch", step)
		}
		for _, e := range solved(t, text).Lights.Pulls {
			if named := regexp.MustCompile(fmt.Sprintf(`\barch(es \d+ and)? %d\b|\barches %[1]d\b`, e.Arch)).MatchString(list[k].Text); named != (e.Bow > practice.MostBow) {
				t.Errorf("arch %d is bowed by %v in: %s", e.Arch, e.Bow.Inches(), list[k].Text)
			}
		}
		sag, err := measure.ParseLength(list[k].Cure[0].Value)
		if err != nil {
			t.Fatal(err)
		}
		told, less := bow(list[k].Cure[0].Value), bow(fmt.Sprintf("%.1f in", sag.Inches()-.5))
		if enough := .9 * practice.MostBow; told > enough || less <= enough {
			t.Errorf("a sag of %v bows an arch by %v, half an inch less by %v; %v is aimed at", sag, told, less, enough)
		}
	}
}
