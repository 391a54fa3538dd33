package dice

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// Modest is the text of a spec that someone could mean, its choices thrown by a seed: arches from 1 to 60, both systems, every paper, straight, bent and
// sloping ground, guys from none to every arch, with and without marks, lights, outlets, things in the way. All invented.
func Modest(seed uint64) string {
	d := &dice{Rand: rand.New(rand.NewPCG(seed, 41))}
	metric := d.chance(0.35)
	n := d.pick(1, 2, 3, 5, 6, 7, 9, 12, 18, 40, 60)
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("hoopwright: 1\ntitle: %s\npaper: %s", d.one("Willow Row", "Lantern Path at the Old Tannery", "Frost Walk",
		"A Walk of Lights Along the Canal Between Two Locks"), d.one("letter", "letter", "a4", "legal", "tabloid", "a3"))
	line("dates: {mark: 2026-11-07, build: 2026-11-21, open: 2026-11-28, close: 2027-01-03, down: 2027-01-10}")
	span, spacing := 78+6*d.IntN(6), 42+3*d.IntN(10)
	if metric {
		line("units: metric\ntunnel: {arches: %d, spacing: %d mm, opening: {width: 1.1 m, height: 2 m}}", n, spacing*25)
		line("arch: {pipe: pvc-u pn16 %s, sticks: [%s], span: %d mm}", d.one("20 mm", "25 mm"), d.one("3.1 m, 3.1 m", "3 m, 3.2 m",
			"[3 m, 400 mm], [3 m, 400 mm]"), span*25)
	} else {
		line("units: imperial\ntunnel: {arches: %d, spacing: %d in, opening: {width: 42 in, height: 80 in}}", n, spacing)
		line("arch: {pipe: pvc sch40 %s, sticks: [%s], span: %d in}", d.one("1/2 in", "3/4 in"), d.one("10 ft, 10 ft", "10 ft, 10 ft",
			"[10 ft, 14 in], [10 ft, 14 in]", "124 in, 116 in"), span)
	}
	if n > 1 {
		switch d.IntN(4) {
		case 0:
			line("guys: none")
		case 1:
			line("guys: {arches: all, from: 6 ft 6 in, out: 5 ft}")
		default:
			line("guys: {arches: [1, last], from: 7 ft, out: %d in}", 54+6*d.IntN(5))
		}
	}
	d.ground(line, n, spacing)
	d.strings(line, n, metric)
	line("crew: {helpers: %d, start: 09:00}", 2+d.IntN(10))
	return b.String()
}

// ground throws the route, levels, marks, what is in the way, outlets.
func (d *dice) ground(line func(string, ...any), n, spacing int) {
	line("site:\n  start: {at: [14 ft, 12 ft], heading: %d deg}", d.pick(0, 0, 0, 20, 315, 90))
	if n > 4 && d.chance(0.3) {
		line("  route: [{straight: %d in}, {%s: %d deg, radius: %d ft}, {straight: rest}]", 2*spacing, d.one("left", "right"), 20+10*d.IntN(5),
			22+4*d.IntN(5))
	}
	if n > 1 && d.chance(0.3) {
		line("  levels: [{arch: 1, left: 0 in, right: %d in}, {arch: last, left: %d in, right: %d in}]", d.IntN(4), 3*d.IntN(5), 3*d.IntN(5))
	}
	if soil := d.one("firm", "soft", "sandy", ""); soil != "" {
		line("  soil: %s", soil)
	}
	switch d.IntN(3) {
	case 0:
		line("  marks: [{name: gate post, at: [0 ft, 0 ft]}, {name: shed corner, at: [33 ft, 3 ft]}]")
	case 1:
		line("  marks: [{name: gate post, at: [0 ft, 0 ft]}, {name: shed corner, at: [33 ft, 3 ft]}, {name: lamp, at: [2 ft, 38 ft]}]")
	}
	if d.chance(0.3) {
		line("  buried: [{name: water pipe, line: [[0 ft, 4 ft], [40 ft, 6 ft]], keep: 24 in}]")
	}
	if d.chance(0.3) {
		line("  features: [{name: rose bed, at: [26 ft, 25 ft], radius: 4 ft}]")
	}
	if d.chance(0.2) {
		line("  overhead: [{name: service drop, line: [[-10 ft, -14 ft], [50 ft, -12 ft]], height: 14 ft}]")
	}
	line("  outlets: [{name: porch, at: [2 ft, 5 ft], circuit: porch}, {name: garage wall, at: [30 ft, 6 ft], circuit: garage}]")
}

// strings throws the strings and the circuits.
func (d *dice) strings(line func(string, ...any), n int, metric bool) {
	led, row, volts := "mini led 100 warm", "mini led 100 red", "120 V"
	if metric {
		led, row, volts = "led 100 warm 230 V", "led 100 warm 230 V", "230 V"
	}
	line("power: {circuits: {porch: {volts: %s, breaker: 15 A, gfci: true}, garage: {volts: %s, breaker: 15 A, gfci: true}}}", volts, volts)
	switch {
	case d.chance(0.12):
		return
	case n > 1 && d.chance(0.5):
		line("lights:\n  wraps: [{where: [legs, ridge], string: %s}]", led)
	default:
		line("lights:\n  wraps: [{where: legs, string: %s}]", led)
	}
	if n > 2 && d.chance(0.25) {
		line("  rows: {first: 12 in, step: 14 in, up to: 5 ft, strings: [%s, %s]}", led, row)
	}
}
