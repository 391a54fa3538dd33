package layout_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/finding"
)

// TestUnwise: what the format allows but no builder should do is a finding, where the parts meet.
func TestUnwise(t *testing.T) {
	strings := func(figures string) string {
		return "{wraps: [{where: legs, string: x}], strings: {x: {length: 20 ft, bulbs: 60, " + figures + "}}}"
	}
	tests := []struct {
		name  string
		spec  sections
		code  string
		level finding.Level // zero: none
	}{
		{"guys above the crown", base.with("guys", "{from: 20 ft, out: 5 ft}"), "guy-above-arch", finding.MustFix},
		{"guys at knee height", base.with("guys", "{from: 2 ft, out: 5 ft}"), "guy-tied-low", finding.LookAt},
		{"guys at head height", base, "guy-tied-low", 0},
		{"a supply too small for one string", base.with("lights", strings("watts: 20 W, volts: 24 V, supply: {watts: 10 W, sockets: 1}")), "string-over-limit", finding.MustFix},
		{"a string over its plug's assumed limit", base.with("lights", strings("watts: 250 W")), "string-over-limit", finding.LookAt},
		{"a string within it", base.with("lights", strings("watts: 200 W")), "string-over-limit", 0},
		{"a circuit full before any light", base.with("power", "{circuits: {a: {volts: 120 V, breaker: 15 A, other load: 13 A}, b: {volts: 120 V, breaker: 15 A}}}"), "other-load-too-high", finding.LookAt},
		{"a circuit with room", base, "other-load-too-high", 0},
		{"a name that no finding has", base.with("accept", "[{finding: long-dai, why: two days, by: Ana}]"), "nothing-to-accept", finding.Note},
		{"a drop from the foot of a leg does not hang over the walk", base.with("lights", "{drops: [{where: legs tape 0 ft to 4 ft, string: drop led 100 warm, hang: 3 ft}]}"), "opening-blocked", 0},
		{"a drop from the ridge does", base.with("lights", "{drops: [{where: ridge, string: drop led 100 warm, hang: 3 ft}]}"), "opening-blocked", finding.MustFix},
		{"nobody looked for buried lines", base.with("site", "{unknown: [buried lines]}"), "buried-not-known", finding.LookAt},
		{"a wire that an arch's joined pipe reaches", base.with("site", "{overhead: [{name: wire, line: [[-50 ft, 15 ft], [50 ft, 15 ft]], height: 29 ft}], "+siteOf+"}"), "near-overhead-line", finding.LookAt},
		{"a wire above its reach", base.with("site", "{overhead: [{name: wire, line: [[-50 ft, 15 ft], [50 ft, 15 ft]], height: 31 ft}], "+siteOf+"}"), "near-overhead-line", 0},
		{"nobody looked up", base.with("site", "{unknown: [overhead lines]}"), "overhead-not-known", finding.LookAt},
		{"nobody read the breaker", base.with("site", "{unknown: [breaker]}"), "breaker-not-known", finding.LookAt},
		{"nobody pressed TEST", base.with("site", "{unknown: [gfci]}"), "gfci-not-known", finding.LookAt},
		{"an opening written the wrong way round", base.with("tunnel", "{arches: 5, spacing: 4 ft, opening: {width: 6 ft 8 in, height: 4 ft}}"), "opening-wider-than-high", finding.LookAt},
		{"an opening as wide as high", base.with("tunnel", "{arches: 5, spacing: 4 ft, opening: {width: 6 ft, height: 6 ft}}"), "opening-wider-than-high", 0},
		{"span and height written the wrong way round", base.with("arch", "{pipe: pvc sch40 3/4 in, span: 9 ft, height: 5 ft}"), "span-height-swapped", finding.LookAt},
		{"a low arch for children", base.with("arch", "{pipe: pvc sch40 1/2 in, span: 6 ft, height: 5 ft}").with("tunnel", "{arches: 5, spacing: 4 ft, opening: {width: 36 in, height: 4 ft}}"), "span-height-swapped", 0},
		{"sticks solved longer than any sold", base.with("arch", "{pipe: pvc sch40 1/2 in, span: 7 ft 2 in, height: 8 ft 6 in}"), "piece-too-long", finding.MustFix},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := solved(t, tt.spec.text())
			i := slices.IndexFunc(p.Findings, func(f finding.Finding) bool { return f.Code == tt.code })
			switch {
			case i < 0 && tt.level != 0:
				t.Errorf("no finding %s; there are %v", tt.code, findings(p))
			case i >= 0 && p.Findings[i].Level != tt.level:
				t.Errorf("%v: %s", p.Findings[i].Level, p.Findings[i].Text)
			}
			findingsAreWell(t, p)
			mustFixIsGiven(t, p)
		})
	}
}

// TestAccepted: what the organiser takes on is a note with a name.
func TestAccepted(t *testing.T) {
	s := ours["in the way"].with("accept", "[{finding: stake-in-hard-ground, why: the patio has open joints there, by: Ana}]")
	for _, f := range solved(t, s.text()).Findings {
		if f.Code == "stake-in-hard-ground" && (f.Level != finding.Note || f.AcceptedBy != "Ana" || !strings.Contains(f.AcceptedAs, "joints")) {
			t.Errorf("%+v", f)
		}
	}
}

// TestDropsHangApart: two ends of a tunnel that differ only in how far their drops hang are not one kind of arch.
func TestDropsHangApart(t *testing.T) {
	p := solved(t, ours["hung unevenly"].text())
	first, last := p.Arches[0], p.Arches[len(p.Arches)-1]
	near(t, "drops of 4 in and 9 in", (first.Crown-first.Clear)-(last.Crown-last.Clear), -5*25.4, 1e-3)
}

// TestHopeless: of sixty kinds that no arch has a dozen are looked for, the rest are one finding, and the plan has them all to draw.
func TestHopeless(t *testing.T) {
	var except []string
	for n := 1; n <= 60; n++ {
		except = append(except, fmt.Sprintf("{arches: [%d], height: %d in}", n, 300+n%50))
	}
	s := base.with("tunnel", "{arches: 60, spacing: 4 ft}", "arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], height: 25 ft, except: ["+strings.Join(except, ", ")+"]}")
	p := solved(t, s.text())
	none := 0
	for _, code := range findings(p) {
		if code == "must fix no-arch" {
			none++
		}
	}
	if none != 12 || !has(p, "arches-not-tried") {
		t.Errorf("%d kinds refused of %d, findings %v", none, len(p.Kinds), findings(p))
	}
	for _, r := range rules {
		r.hold(t, p)
	}
}

// TestOtherSystem: a cord of the other system's lengths is called by what the store says, so that one in the shed is found.
func TestOtherSystem(t *testing.T) {
	p := solved(t, ours["metric mixed"].with("power", "{circuits: {a: {volts: 120 V, breaker: 15 A}, b: {volts: 120 V, breaker: 15 A}}, cords: []}").text())
	own := 0
	for _, i := range p.Shopping {
		if strings.HasPrefix(i.Item, "16 AWG") {
			if !strings.Contains(i.Item, " ft") {
				t.Errorf("a cord is called %s", i.Item)
			}
			own += i.Own
		}
	}
	if own != 1 {
		t.Errorf("%d cords are owned, the shed holds one that serves", own)
	}
}
