package packet

import (
	"regexp"
	"strings"
	"testing"

	"hoopwright/layout/measure"
)

// A walk in metric with what the school yard has not: weighted feet, braces, rows, drops, a wire overhead, mud. Invented.
const metricYard = `hoopwright: 1
title: Kiln Court
units: metric
paper: a4
dates: {mark: 2027-11-12, build: 2027-11-19, open: 2027-11-27, close: 2028-01-06, down: 2028-01-08}
tunnel: {arches: 13, spacing: 1.4 m, opening: {width: 1.4 m, height: 2.05 m}, ways: [{bay: 6, wall: left}]}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.5 m, 3.5 m], span: 2.6 m, foot: {weight: 40 kg, width: 450 mm, on: grass, bar: 12 mm}}
braces: {bays: [1, last], from: 1.4 m}
site:
  start: {at: [7 m, 2.5 m], heading: 0 deg}
  marks: [{name: pump, at: [0 m, 0 m]}, {name: post, at: [14 m, 1 m]}, {name: well, at: [-2 m, 21 m]}]
  overhead: [{name: wire, line: [[-3 m, 30 m], [20 m, 31 m]], height: 6 m}]
  outlets: [{name: pump, at: [1 m, 0.5 m], circuit: pump}, {name: post, at: [14 m, 2 m], circuit: post}]
lights:
  rows: {first: 400 mm, step: 400 mm, up to: 1.6 m, strings: [led 100 warm 230 V]}
  wraps: [{where: ridge, string: led 50 cool 230 V, count: 1}]
power: {circuits: {pump: {volts: 230 V, breaker: 16 A, gfci: true}, post: {volts: 230 V, breaker: 16 A, gfci: true}}}
crew: {helpers: 9}
`

// foreign are figures of the other system than a packet's, by what stands behind them.
var foreign = map[measure.System]*regexp.Regexp{
	measure.Metric:   regexp.MustCompile(`\d ?(?:in|ft|lb|mph|°F|psi|sq ft|AWG)\b|\d ?[′″]|\binch(?:es)?\b`),
	measure.Imperial: regexp.MustCompile(`\d ?(?:mm|cm|m|kg|km/h|°C|N|kN|MPa)\b`),
}

// A packet keeps to the units of its spec: only the bar that a print is measured by has both, and the spec's own words are as they were written.
func TestOneSystemOfUnits(t *testing.T) {
	of := map[measure.System]int{}
	check := func(name, source string) {
		plan := planOf(t, []byte(source))
		of[plan.Spec.Units]++
		sides, _ := sidesOf(t, plan)
		for _, s := range sides {
			if s.kind.word == "spec" {
				continue
			}
			for _, text := range wordsOf(s.page) {
				if figure := foreign[plan.Spec.Units].FindString(text); figure != "" && text != "2 in" && text != "50 mm" {
					t.Errorf("%s, %s: %q in %q", name, s.kind.word, figure, text)
				}
			}
		}
	}
	for name, source := range specs(t) {
		if strings.HasSuffix(name, ".yaml") {
			check(name, string(source))
		}
	}
	if check("a court", metricYard); of[measure.Metric] < 2 || of[measure.Imperial] < 2 {
		t.Errorf("packets by system: %v", of)
	}
}
