package packet

import "testing"

// Tunnels whose pictures had a line through a text, each cut down to what showed it. Invented.
var struckYards = map[string]string{
	"a drop under an arch on a slope": `units: imperial
tunnel: {arches: 4, spacing: 11 ft}
arch: {pipe: pvc sch40 3/4 in, sticks: [[116 in], [119 in]], span: 80 in, foot: {weight: 72 kg, width: 16 in, bar: 1/2 in}}
site: {levels: [{arch: 1, left: 0 in, right: 44 in}, {arch: last, left: 12 in, right: 12 in}]}
lights: {rows: {first: 40 in, step: 13 in, up to: 64 in, strings: [mini led 100 warm]}, drops: [{where: 'arches above 80 in of [1, last]', string: drop led 100 cool, hang: 60 in}]}
`,
	"guys far out from a low arch": `units: imperial
tunnel: {arches: 6, spacing: 64 in}
arch: {pipe: pvc sch40 1 in, sticks: [[76 in, 22 in], [49 in]], span: 229 in, stake: {bar: 16 mm, length: 37 in, depth: 20 in}}
guys: {arches: all, from: 104 in, out: 136 in}
`,
	"strings beside a pipe over a way out": `units: imperial
tunnel: {arches: 7, spacing: 55 in}
arch: {pipe: pvc sch40 3/4 in, span: 91 in, height: 88 in, stake: {bar: 12 mm, length: 38 in, depth: 23 in}}
site: {outlets: [{name: porch, at: [20 ft, 10 ft], circuit: a}]}
lights: {wraps: [{where: arches, string: c9 led 25 warm, pitch: 2 in}, {where: arches, string: mini led 70 red, count: 1}, {where: 'legs tape 0 in to 57 in', string: c9 led 25 warm, pitch: 6 in, plug: foot}], rows: {first: 13 in, step: 16 in, up to: 61 in, strings: [mini led 50 cool, c9 led 25 warm], walls: right, gaps: [{wall: right, bays: [3]}]}}
power: {circuits: {a: {volts: 120 V, breaker: 20 A, gfci: true}}}
`,
	"numbers on leaders": `tunnel: {arches: 8, spacing: 1525 mm}
arch: {pipe: pvc-u pn16 32 mm, sticks: [[3164 mm], [3120 mm]], span: 2023 mm}
braces: none
site: {features: [{name: patio, outline: [[2213 mm, -401 mm], [784 mm, 10946 mm], [8634 mm, 10891 mm]], hard: true}], outlets: [{name: porch, at: [786 mm, 8414 mm], circuit: a}]}
lights: {wraps: [{where: ridge, string: led 100 warm 230 V}, {where: legs, string: led 100 warm 230 V, count: 3}], rows: {first: 389 mm, step: 369 mm, up to: 1685 mm, strings: [led 100 multi 230 V], gaps: [{wall: right, bays: odd}]}}
power: {circuits: {a: {volts: 230 V, breaker: 15 A}}}
`,
	"a stake's name before the walk arrow": `tunnel: {arches: 8, spacing: 132 in}
arch: {pipe: pvc sch40 3/4 in, sticks: [[116 in], [119.2 in]], span: 79.83 in}
guys: {arches: all, from: 18 in, out: 55 in}
braces: {from: 50.13 in, kind: line}
site: {start: {from: {post: 198.58 in, gate: 230.91 in}, side: left}, marks: [{name: post, at: [0 in, 0 in]}, {name: gate, at: [400 in, 0 in]}]}
lights: {rows: {first: 40 in, step: 13.36 in, up to: 64 in, strings: [mini incandescent 100 warm]}}
`,
}

// No line goes through a text on them.
func TestLinesStopAtTexts(t *testing.T) {
	t.Parallel()
	for name, text := range struckYards {
		sides, _ := leavesOf(t, "hoopwright: 1\ntitle: Struck\n"+text)
		for _, s := range sides {
			for _, f := range lint(s.page) {
				t.Errorf("%s, %s %s: %s", name, s.kind.word, s.title, f)
			}
		}
	}
}
