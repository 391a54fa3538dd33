package packet

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"slices"
	"sync/atomic"
	"testing"
	"time"

	"hoopwright/draw/pdf"
	"hoopwright/layout"
	"hoopwright/layout/dice"
	"hoopwright/layout/spec"
)

// thrown is the text of a spec that someone could mean, its choices thrown by a seed.
func thrown(seed uint64) string { return dice.Modest(seed) }

// untidy is how many of the specs that are thrown each time may have a side on which something lies on text or stands beyond the printer's reach.
// It may only shrink.
const untidy = 1

// TestThrownTheWholeWay: what the reader takes of specs thrown over the whole format goes all the way to paper: see wholeWay.
// HOOPWRIGHT_THROWN=2000 throws as many, of all lengths; 500-600 throws
// some of them.
func TestThrownTheWholeWay(t *testing.T) {
	first, last, most := uint64(0), uint64(30), 6
	long := os.Getenv("HOOPWRIGHT_THROWN")
	if long != "" {
		most = 240
		if n, _ := fmt.Sscanf(long, "%d-%d", &first, &last); n < 2 {
			first, last = 0, first
		}
	}
	var found atomic.Int64
	t.Run("seeds", func(t *testing.T) {
		for seed := first; seed < last; seed++ {
			t.Run(fmt.Sprint(seed), func(t *testing.T) {
				t.Parallel()
				if wholeWay(t, dice.Whole(seed, most)) > 0 {
					found.Add(1)
				}
			})
		}
	})
	if n := found.Load(); long == "" && n > untidy {
		t.Errorf("%d specs have sides with something on text or out of reach, over %d", n, untidy)
	}
}

// Faults that thrown specs have shown, cut down to what shows them. All invented.
var wholeWayFaults = map[string]string{
	"a stake too short for any depth": "tunnel: {arches: 4, spacing: 5 ft}\narch: {pipe: pvc sch40 3/4 in, span: 79 in, sticks: [10 ft, 10 ft], stake: {bar: 16 mm, length: 15 in}}\n",
	"guys before an arch that two tapes share": `tunnel: {arches: 12, spacing: 19 ft}
arch: {pipe: pvc sch40 1 in, sticks: [115 in, 115 in], span: 104 in, stake: {bar: 1/2 in, length: 48 in, depth: 22 in}}
guys: {arches: all, from: 99 in, out: 50 in}
`,
	"bays too short for any scale": `tunnel: {arches: 12, spacing: 19 in}
arch: {pipe: pvc sch40 1 in, sticks: [242 in], span: 184 in, foot: {weight: 75 kg, width: 22 in}}
ridge: false
guys: {arches: all, from: 66 in, out: 120 in}
`,
	"every bay a way out": `tunnel: {arches: 2, spacing: 53 in}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft, stake: {bar: 1/2 in, length: 48 in, depth: 20 in}}
site: {outlets: [{name: porch, at: [0 ft, 10 ft], circuit: a}]}
lights: {rows: {first: 15 in, step: 20 in, up to: 70 in, strings: [mini led 100 warm], walls: left, gaps: [{wall: left, bays: [1]}]}}
power: {circuits: {a: {volts: 120 V, breaker: 15 A, gfci: true}}}
`,
	"a string that runs on to a second plan": `tunnel: {arches: 70, spacing: 5 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft, stake: {bar: 1/2 in, length: 48 in, depth: 20 in}}
guys: none
site: {start: {at: [20 ft, 4 ft]}, route: [{straight: 60 ft}, {right: 70 deg, radius: 40 ft}, {straight: rest}],
  marks: [{name: gate, at: [0 ft, 0 ft]}, {name: barn, at: [60 ft, 10 ft]}]}
`,
	"guys unlike at one arch of a bend": `tunnel: {arches: 7, spacing: 5 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft, stake: {bar: 1/2 in, length: 48 in, depth: 20 in}}
guys: {arches: all, from: 6 ft 6 in, out: 4 ft}
braces: {bays: all, from: 5 ft}
site: {route: [{straight: 5 ft}, {left: 40 deg, radius: 24 ft}, {straight: rest}]}
`,
	"rows whose ends stand farther in": `tunnel: {arches: 50, spacing: 5 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft, stake: {bar: 1/2 in, length: 48 in, depth: 20 in}, except: [{arches: [1, last], span: 3 ft}]}
guys: none
site: {start: {at: [10 ft, 10 ft]}, marks: [{name: post, at: [0 ft, 0 ft]}, {name: gate, at: [30 ft, 0 ft]}, {name: lamp, at: [2 ft, 60 ft]}]}
`,
	"drops that cover next to nothing": `tunnel: {arches: 3, spacing: 6 ft}
arch: {pipe: pvc sch40 3/4 in, sticks: [10 ft, 10 ft], span: 7 ft, stake: {bar: 1/2 in, length: 48 in, depth: 20 in}}
site: {outlets: [{name: porch, at: [0 ft, -10 ft], circuit: a}]}
lights: {drops: [{where: 'left legs below 5 in', string: mini led 50 warm, hang: 1 in}]}
power: {circuits: {a: {volts: 120 V, breaker: 15 A, gfci: true}}}
`,
	"metric cords in an imperial packet": `tunnel: {arches: 4, spacing: 4 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft, stake: {bar: 1/2 in, length: 48 in, depth: 20 in}}
site: {outlets: [{name: porch, at: [0 ft, -30 ft], circuit: a}]}
lights: {wraps: [{where: legs, string: led 100 warm 230 V}]}
power: {circuits: {a: {volts: 230 V, breaker: 16 A, gfci: true}}}
`,
	"nothing to cut, more to buy than a side holds": `tunnel: {arches: 7, spacing: 59 in, opening: {width: 43 in, height: 80 in}}
arch: {pipe: {od: 1 in, wall: 0.11 in, modulus: 400000 psi, strength: 48 MPa, take off: 1 in, socket: 0.55 in, coupling stop: 0.08 in}, sticks: [240 in], span: 100.24 in, stake: {bar: 3/8 in, length: 48 in, depth: 19 in}}
ridge: false
guys: {arches: [1, last], from: 80 in, out: 59 in}
braces: none
site: {route: [{straight: 59 in}, {right: 56 deg, radius: 380.49 in}, {straight: rest}], start: {from: {post: 254.38 in, gate: 239.02 in}, side: left, heading: -45 deg}, marks: [{name: post, at: [0.00 in, 0.00 in]}, {name: gate, at: [400 in, 0 in]}, {name: lamp, at: [77.21 in, 340.90 in]}], soil: sandy, exposure: sheltered, buried: [{name: water pipe, line: [[235.71 in, 69.00 in], [421.22 in, 363.08 in]], marked by: owner}], overhead: [{name: service drop, line: [[7.28 in, 213.02 in], [114.97 in, 361.98 in]], height: 223.50 in}], features: [{name: rose bed, at: [90.18 in, 86.04 in], radius: 29 in}, {name: patio, outline: [[32.72 in, 27.09 in], [330.87 in, 370.22 in], [308.64 in, 147.53 in]], hard: true}], outlets: [{name: porch, at: [108.15 in, 402.14 in], circuit: b, sockets: 5}], address: 14 Quince Lane}
lights: {wraps: [{where: 'legs', string: mini led 50 cool}, {where: 'right legs tape 0 in to 54.45 in', string: mini led 100 warm}, {where: 'arches tape 0 in to 70.36 in', string: mini led 70 red}], drops: [{where: 'arches', string: mine, hang: 8 in, lap: 4.64 in}], strings: {mine: {length: 385.55 in, bulbs: 68, watts: 40 W, volts: 120 V, weight: 0.5 lb, fuse: 3 A}}}
power: {circuits: {a: {volts: 120 V, breaker: 15 A, gfci: true, other load: 1 A}, b: {volts: 120 V, breaker: 16 A, gfci: true, breaker no: 12}, c: {volts: 120 V, breaker: 20 A, gfci: false}, d: {volts: 120 V, breaker: 30 A, gfci: true, breaker no: 12}}, split: none, cords: [{gauge: 16 AWG, length: 600 in, sockets: 3, apart: 33 in, price: 30}], taps: [{sockets: 2, price: 6.50}]}
stock: {sell: [{item: mini led 100 warm, price: 9.80}], own: []}
crew: {helpers: 8, date: 2026-11-21, start: 08:00, tools: {ladders: 1, trestles: 3, tapes: 4, sledges: 3}}
`,
}

func TestWholeWayFaults(t *testing.T) {
	for name, text := range wholeWayFaults {
		t.Run(name, func(t *testing.T) { wholeWay(t, "hoopwright: 1\ntitle: Fault\nunits: imperial\n"+text) })
	}
}

// wholeWay holds a spec to what holds of every packet, and returns how often something lies on text or stands out of a printer's reach. What found
// no room is told on the board; a fact is told once,
// and figures are the plan's; every string is fed once or it is said that it is not, and no limit is passed; the cut sheet's pieces make the
// arches; the tapes find the stakes.
func wholeWay(t *testing.T, text string) (faults int) {
	s, err := spec.Read("thrown.yaml", []byte(text))
	if err != nil {
		return 0
	}
	defer func() {
		if p := recover(); p != nil {
			t.Errorf("panic: %v\n%s", p, debug.Stack())
		}
		if t.Failed() {
			t.Log(text)
		}
	}()
	began := time.Now()
	plan := layout.Solve(s)
	t.Logf("%d arches of %d kinds solved in %v", len(plan.Arches), len(plan.Kinds), time.Since(began))
	b := binderOf(t, plan)
	sides, notes := b.sides(slices.DeleteFunc(sheets(), func(s sheet) bool { return s.word == "strength" })) // whose ladder solves many tunnels more
	doc := pdf.Document{Title: s.Title, Lang: "en", Date: issued}
	for i, side := range sides {
		b.frameSide(side, i+1, len(sides))
		doc.Pages = append(doc.Pages, side.page)
		for _, f := range append(lint(side.page), outOfReach(side.page)...) {
			t.Logf("untidy: %s, %s: %s", side.kind.word, side.title, f)
			faults++
		}
	}
	if err := pdf.Write(io.Discard, doc); err != nil { // a figure that is no number is refused there
		t.Error(err)
	}
	toldOnBoard(t, plan, sides, notes)
	toldOnce(t, "thrown", sides)
	seen := seenFromOutside(t, plan)
	figuresAreThePlans(t, seen, plan, sides)
	seen.fedOnce(t, plan)
	seen.hungAsTold(t, s.Units, sides)
	if len(plan.Stakes) > 0 && len(plan.Kinds) > 0 {
		assembled(t, seen, plan, sides)
		_, body := b.newSide(false)
		backOnTheirSpots(t, newStakeLeaf(plan, body))
	}
	return faults
}
