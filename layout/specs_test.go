package layout_test

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// sections is a spec by its top keys, in the order of the format. Every place and figure in these is invented.
type sections [][2]string

// base is a small garden walk.
var base = sections{
	{"hoopwright", "1"},
	{"title", "Rules"},
	{"units", "imperial"},
	{"dates", ""},
	{"accept", ""},
	{"tunnel", "{arches: 4, spacing: 4 ft 3 in, opening: {width: 4 ft, height: 6 ft 8 in}}"},
	{"arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in, stake: {bar: 3/8 in, length: 48 in, depth: 20 in}}"},
	{"ridge", ""},
	{"guys", "{arches: [1, last], from: 6 ft, out: 5 ft}"},
	{"site", "{" + siteOf + "}"},
	{"lights", "{wraps: [{where: legs, string: mini led 100 warm}, {where: ridge, string: mini led 50 warm, count: 1}]}"},
	{"power", "{circuits: {a: {volts: 120 V, breaker: 15 A, gfci: true}, b: {volts: 120 V, breaker: 20 A, gfci: true, other load: 2 A}}, split: left and right}"},
	{"weather", ""},
	{"stock", "{sell: [{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}, {item: mini led 100 warm, price: 9.80}], own: [{item: mini led 100 warm, count: 3}]}"},
	{"store", ""},
	{"found", ""},
	{"crew", "{helpers: 5}"},
}

const siteOf = "start: {at: [12 ft, 9 ft], heading: 0 deg}, soil: soft, " +
	"marks: [{name: post, at: [0 ft, 0 ft]}, {name: gate, at: [30 ft, 1 ft]}, {name: tree, from: {post: 37 ft 6 in, gate: 46 ft 2 in}, side: left}], " +
	"outlets: [{name: porch, at: [4 ft, 4 ft], circuit: a}, {name: shed, at: [26 ft, 4 ft], circuit: b}]"

// with returns the spec with some sections changed: key, value, key, value … An empty value leaves a section out.
func (s sections) with(pairs ...string) sections {
	out := append(sections{}, s...)
	for i := 0; i < len(pairs); i += 2 {
		for k := range out {
			if out[k][0] == pairs[i] {
				out[k][1] = pairs[i+1]
			}
		}
	}
	return out
}

// text writes the spec.
func (s sections) text() string {
	var b strings.Builder
	for _, section := range s {
		if section[1] != "" {
			fmt.Fprintf(&b, "%s: %s\n", section[0], section[1])
		}
	}
	return b.String()
}

const wrapLegs = "{wraps: [{where: legs, string: mini led 100 warm}]}"

// ours are specs that between them use every part of the format that decides anything, well formed but not all wise.
var ours = map[string]sections{
	"two arches": base.with("tunnel", "{arches: 2, spacing: 5 ft}"),
	"one arch":   base.with("tunnel", "{arches: 1}", "lights", wrapLegs),
	"one stick": base.with("arch", "{pipe: pvc sch40 1/2 in, sticks: [20 ft], span: 12 ft}", "ridge", "false", "lights", wrapLegs,
		"stock", "{sell: [{item: pvc sch40 1/2 in, length: 20 ft}]}"),
	"span solved": base.with("arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], height: 8 ft}"),
	"sticks solved": base.with("arch", "{pipe: pvc sch40 1/2 in, span: 7 ft 2 in, height: 7 ft 10 in}",
		"stock", "{sell: [{item: pvc sch40 1/2 in, length: 20 ft, price: 7}]}"),
	"exceptions": base.with("arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in, stake: {bar: 3/8 in, length: 48 in, depth: 20 in}, "+
		"except: [{arches: [1, last], span: 7 ft 8 in}, {arches: [2], sticks: [[9 ft, 14 in], [9 ft, 14 in]], stake: {depth: 24 in}}]}"),
	"two pipes": base.with("arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in, except: [{arches: [2, 3], pipe: pvc sch40 3/4 in, stake: {bar: 1/2 in}}]}",
		"ridge", "{pipe: pvc sch40 3/4 in}"),
	"bends and slopes": base.with("tunnel", "{arches: 9, spacing: 4 ft}",
		"arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 9 ft 6 in], span: 7 ft 2 in, stake: {length: 48 in, depth: 20 in, lean: 1 deg}}",
		"guys", "{arches: [1, 5, last], from: 6 ft, out: 5 ft}",
		"site", "{route: [{straight: 6 ft}, {left: 30 deg, radius: 25 ft}, {right: 10 deg, radius: 40 ft}, {straight: rest}], "+
			"levels: [{arch: 2, left: 0 in, right: 2 in}, {arch: 4, left: 6 in, right: 3 in}, {arch: 7, left: 12 in, right: 15 in}], "+siteOf+"}"),
	"rows": base.with("tunnel", "{arches: 6, spacing: 5 ft}",
		"lights", "{rows: {first: 12 in, step: 12 in, up to: 6 ft, strings: [mini led 100 warm, mini led 100 red], gaps: [{wall: left, bays: [3]}]}}"),
	"rows that end apart": base.with("tunnel", "{arches: 3, spacing: 5 ft}", // turned end for end each wall's run would lack 3 in to its lowest row
		"site", "{"+strings.ReplaceAll(siteOf, " ft, 4 ft]", " ft, 24 ft]")+"}",
		"lights", "{rows: {first: 15 in, step: 15 in, up to: 5 ft, strings: [mini led 100 warm, mini led 100 red]}}"),
	"rows too high": base.with("lights", "{rows: {first: 18 in, step: 18 in, up to: 12 ft, start: back, walls: right, sag: 2 in, strings: [mini led 70 warm]}}"),
	"drops": base.with("lights", "{wraps: [{where: arches above 5 ft, string: mini led 70 warm, pitch: 2 in, plug: crown}], "+
		"drops: [{where: 'ridge of [1]', string: drop led 100 warm, hang: 5 in}, {where: legs above 6 ft, string: drop led 100 cool, hang: 3 in}]}"),
	"hung unevenly": base.with("lights", "{drops: [{where: 'ridge of [1]', string: drop led 100 warm, hang: 4 in}, {where: 'ridge of [last]', string: drop led 100 warm, hang: 9 in}]}"),
	"low voltage": base.with("lights", "{wraps: [{where: [left legs, right legs], string: soft glow}], "+
		"strings: {soft glow: {length: 20 ft, lead: 1 ft, bulbs: 60, watts: 6 W, volts: 24 V, supply: {watts: 36 W, sockets: 2}}}}"),
	"kept wrapped":      base.with("store", "wrapped"),
	"came wrapped":      base.with("tunnel", "{arches: 6, spacing: 4 ft 3 in}", "store", "wrapped", "found", "{wrapped: true, crown: {1: 95 in, 5: 96 in}, span: {1: 86 in}}", "stock", shedOf(12, 12)),
	"some came wrapped": base.with("tunnel", "{arches: 6, spacing: 4 ft 3 in}", "found", "{wrapped: true}", "stock", shedOf(9, 13), "crew", "{helpers: 6, young: 3}"),
	"after the trial":   base.with("found", "{after: trial, crown: {1: 95 1/2 in}, span: {1: 86 1/2 in}}", "crew", "{helpers: 6, days: [{work: [trial]}, {from: 9:00}]}"),
	"no power":          base.with("power", "", "site", "{soil: firm}"),
	"no lights":         base.with("lights", ""),
	"offcuts": base.with("tunnel", "{arches: 7, spacing: 5 ft}",
		"stock", "{sell: [{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}, {item: pvc sch40 1/2 in, length: 20 ft, price: 8.10}, {item: steel bar 3/8 in, length: 20 ft, price: 9}], "+
			"own: [{item: pvc sch40 1/2 in, length: 59 in, count: 2}, {item: pvc sch40 1/2 in, length: 121 1/2 in, count: 3}], kerf: 1/16 in, trim: 1/4 in, spares: 10 %}"),
	"trimmed": base.with("stock", "{sell: [{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}], trim: 1/2 in}"),
	"metric mixed": base.with("units", "metric", "tunnel", "{length: 31 ft, spacing: up to 1.4 m}",
		"arch", "{pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 10 ft 6 in], span: 2.3 m, stake: {bar: 12 mm, length: 1.2 m, depth: 500 mm}}",
		"stock", "{sell: [{item: pvc-u pn16 25 mm, length: 4 m}], own: [{item: cord 16 AWG, length: 15 ft, count: 1}]}"),
	"own pipe": base.with("arch", "{pipe: {od: 22 mm, wall: 2 mm, modulus: 2800 MPa, take off: 12 mm, socket: 17 mm}, sticks: [10 ft, 10 ft], span: 7 ft 2 in, joints: pinned}", "stock", ""),
	"weak breakers": base.with("tunnel", "{arches: 8, spacing: 4 ft}", "lights", "{wraps: [{where: legs, string: mini incandescent 100 warm}]}",
		"power", "{circuits: {a: {volts: 120 V, breaker: 3 A}, b: {volts: 120 V, breaker: 2 A, other load: 1 A}}}"),
	"no arch": base.with("arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 22 ft}"),
	"falls":   base.with("arch", "{pipe: pvc sch40 1/2 in, sticks: [[10 ft, 10 ft], [10 ft, 10 ft]], span: 7 ft}"),
	"in the way": base.with("site", "{features: [{name: patio, outline: [[8 ft, 8 ft], [20 ft, 8 ft], [20 ft, 14 ft], [8 ft, 14 ft]], hard: true}, {name: bush, at: [14 ft, 20 ft], radius: 3 ft, height: 9 ft}], "+
		"buried: [{name: water, line: [[0 ft, 14 ft], [30 ft, 14 ft]], keep: 24 in}, {name: wire, line: [[0 ft, 18 ft], [30 ft, 18 ft]]}], "+
		"overhead: [{name: service, line: [[0 ft, 12 ft], [30 ft, 12 ft]], height: 14 ft}], "+siteOf+"}"),
	"bare": sections{{"hoopwright", "1"}, {"title", "Bare"}, {"tunnel", "{arches: 3, spacing: 5 ft}"}, {"arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in}"}},
}

// read reads one of our specs or fails the test.
func read(t *testing.T, name, text string) *spec.Spec {
	t.Helper()
	s, err := spec.Read(name, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// plans are those of eachSpec, by the text.
var plans sync.Map

// solved solves a spec, once for all tests: they only read it.
func solved(t *testing.T, text string) *layout.Plan {
	t.Helper()
	s := read(t, "spec.yaml", text)
	once, _ := plans.LoadOrStore(text, sync.OnceValue(func() *layout.Plan { return layout.Solve(s) }))
	return once.(func() *layout.Plan)()
}

// eachSpec runs a test on every example and every spec of ours, by its text, several at a time.
func eachSpec(t *testing.T, run func(t *testing.T, text string)) {
	at := func(text string) func(*testing.T) {
		return func(t *testing.T) {
			t.Parallel()
			run(t, text)
		}
	}
	files, err := examples.Files.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := examples.Files.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		t.Run(f.Name(), at(string(text)))
	}
	for name, s := range ours {
		t.Run(name, at(s.text()))
	}
}
