package layout_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// FuzzRules throws the dice for a spec, wise or not, and holds its plan to every rule.
func FuzzRules(f *testing.F) {
	for seed := range uint64(12) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, seed uint64) {
		text := dice{rand.New(rand.NewPCG(seed, 7))}.spec().text()
		s, err := spec.Read("dice.yaml", []byte(text))
		if err != nil {
			return
		}
		began := time.Now()
		p := layout.Solve(s)
		if took := time.Since(began); took > 10*time.Second {
			t.Errorf("took %v", took)
		}
		for _, r := range rules {
			t.Run(strings.ReplaceAll(r.name, " ", "-"), func(t *testing.T) { r.hold(t, p) })
		}
		if t.Failed() {
			t.Log(text)
		}
	})
}

// dice throw the text of a spec that is nearly always well formed, with figures from all that the reader takes.
type dice struct{ *rand.Rand }

func (d dice) one(list ...string) string { return list[d.IntN(len(list))] }

// maybe returns the text with a chance, else nothing.
func (d dice) maybe(chance float64, text string) string {
	if d.Float64() < chance {
		return text
	}
	return ""
}

// inches throws a length.
func (d dice) inches(low, high float64) string {
	return fmt.Sprintf("%.2f in", low+(high-low)*d.Float64())
}

func (d dice) point() string { return "[" + d.inches(-400, 400) + ", " + d.inches(-400, 400) + "]" }

// list joins what is not empty.
func list(parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return "{" + strings.Join(out, ", ") + "}"
}

func (d dice) spec() sections {
	arches := 1 + d.IntN(9)
	if d.IntN(10) == 0 {
		arches += d.IntN(40)
	}
	many := arches > 1
	tunnel := "arches: 1"
	if many {
		tunnel = fmt.Sprintf("arches: %d, spacing: %s", arches, d.one("4 ft 3 in", "1.4 m", "12 in", "20 ft", d.inches(12, 200)))
	}
	ridge := many && d.IntN(4) > 0
	pipe := d.one("pvc sch40 1/2 in", "pvc sch40 3/4 in", "pvc-u pn16 25 mm", "pvc sch40 1 1/4 in",
		"{od: "+d.inches(.5, 3)+", wall: 0.08 in, take off: "+d.inches(0, 3)+", socket: "+d.inches(0, 3)+"}",
		"{od: 6 in, wall: 0.02 in, modulus: 50000 psi, weight: 5 lb/ft, take off: 6 in, socket: 6 in}")
	s := base.with(
		"units", d.one("imperial", "imperial", "metric"),
		"tunnel", list(tunnel, d.maybe(.5, "opening: {width: "+d.inches(12, 240)+", height: "+d.inches(12, 200)+"}")),
		"arch", d.arch(pipe, arches),
		"guys", d.maybe(.7, list(d.maybe(.5, "arches: "+d.one("all", "odd", "[1]", "[last]")), "from: "+d.inches(12, 120), "out: "+d.inches(12, 200), d.maybe(.3, "stake: {length: 24 in}"))),
		"site", d.site(many),
		"lights", d.lights(ridge, arches),
		"power", d.power(),
		"stock", d.stock(pipe),
	)
	if !ridge {
		return s.with("ridge", "false")
	}
	return s.with("ridge", d.maybe(.2, "{pipe: pvc sch40 3/4 in}"))
}

func (d dice) sticks() string {
	leg := func() string {
		text := d.one("10 ft", "9 ft", "3.2 m", d.inches(6, 200))
		for range d.IntN(3) {
			text += ", " + d.one("10 ft", "18 in", "6 in", "40 ft")
		}
		return "[" + text + "]"
	}
	left := leg()
	if d.IntN(3) == 0 {
		return "[" + left + ", " + leg() + "]"
	}
	return "[" + left + ", " + left + "]"
}

func (d dice) arch(pipe string, arches int) string {
	figures := d.one("sticks: "+d.sticks()+", span: "+d.one("7 ft", "8 ft", d.inches(12, 480)), "sticks: "+d.sticks()+", height: "+d.inches(12, 150), "span: "+d.inches(12, 200)+", height: "+d.inches(12, 200))
	stake := list(d.maybe(.5, "bar: "+d.one("3/8 in", "1/2 in", "16 mm")), d.maybe(.5, "length: 48 in"), d.maybe(.5, "depth: "+d.inches(2, 30)), d.maybe(.3, fmt.Sprintf("lean: %d deg", d.IntN(61)-30)))
	except := ""
	if arches > 2 {
		ends := d.one("span: "+d.inches(12, 200), "stake: {depth: "+d.inches(2, 30)+"}", "joints: glued", "pipe: pvc sch40 1 in", "sticks: "+d.sticks())
		except = d.maybe(.5, "except: [{arches: [1, last], "+ends+"}"+d.maybe(.5, ", {arches: [2], late modulus: 10 %}")+"]")
	}
	return list("pipe: "+pipe, figures, d.maybe(.6, "stake: "+stake), d.maybe(.2, "joints: "+d.one("dry", "pinned", "glued")), except)
}

func (d dice) site(many bool) string {
	route, levels := "", "{arch: 1, left: "+d.inches(-60, 60)+", right: "+d.inches(-60, 60)+"}"
	if many {
		route = d.maybe(.5, "route: [{straight: "+d.inches(1, 60)+"}, {"+d.one("left", "right")+fmt.Sprintf(": %d deg", 1+d.IntN(359))+", radius: "+d.inches(36, 900)+"}, {straight: rest}]")
		levels += ", {arch: last, left: " + d.inches(-60, 60) + ", right: " + d.inches(-60, 60) + "}"
	}
	taped := ", {name: c, from: {a: " + d.inches(6, 700) + ", b: " + d.inches(6, 700) + "}, side: " + d.one("left", "right") + "}"
	return list(route,
		d.maybe(.6, "start: {at: "+d.point()+fmt.Sprintf(", heading: %d deg}", d.IntN(721)-360)),
		d.maybe(.6, "soil: "+d.one("firm", "soft", "sandy", "frozen")),
		d.maybe(.6, "marks: [{name: a, at: "+d.point()+"}, {name: b, at: [401 in, 0 in]}"+d.maybe(.5, taped)+"]"),
		d.maybe(.4, "levels: ["+levels+"]"),
		d.maybe(.4, "features: [{name: f, outline: ["+d.point()+", "+d.point()+", "+d.point()+"], hard: true"+d.maybe(.5, ", height: "+d.inches(0, 300))+"}, {name: g, at: "+d.point()+", radius: "+d.inches(1, 100)+"}]"),
		d.maybe(.4, "buried: [{name: w, line: ["+d.point()+", "+d.point()+", "+d.point()+"]"+d.maybe(.5, ", keep: "+d.inches(0, 50))+"}]"),
		d.maybe(.4, "overhead: [{name: o, line: ["+d.point()+", "+d.point()+"], height: "+d.inches(36, 400)+d.maybe(.5, ", keep: "+d.inches(0, 150))+"}]"),
		"outlets: [{name: x, at: "+d.point()+", circuit: a"+d.maybe(.4, fmt.Sprintf(", sockets: %d", 1+d.IntN(6)))+d.maybe(.2, ", timer: 2 A")+"}, {name: y, at: "+d.point()+", circuit: b}]",
		d.maybe(.3, "cords: {crossing: cover}"))
}

func (d dice) lights(ridge bool, arches int) string {
	name := func() string {
		return d.one("mini led 100 warm", "mini led 70 red", "mini incandescent 100 warm", "led 100 warm 230 V", "led 100 warm 31 V", "c9 led 25 warm", "mine", "low")
	}
	where := func() string {
		if ridge && d.IntN(4) == 0 {
			return "ridge"
		}
		return "'" + d.one("legs", "left legs", "right legs", "arches") +
			d.one("", "", " above "+d.inches(1, 100), " below "+d.inches(1, 120), " from 10 in to "+d.inches(11, 120), " tape 0 in to "+d.inches(1, 300)) + d.maybe(.3, " of [1, last]") + "'"
	}
	var wraps []string
	for range d.IntN(4) {
		wraps = append(wraps, list("where: "+where(), "string: "+name(), d.one("", "pitch: "+d.inches(.25, 36), fmt.Sprintf("count: %d", 1+d.IntN(4))), d.maybe(.3, "plug: crown")))
	}
	gaps := ""
	if arches > 1 {
		gaps = d.maybe(.4, "gaps: [{wall: left, bays: [1]}]")
	}
	rows := list("first: "+d.inches(4, 40), "step: "+d.inches(4, 40), "up to: "+d.inches(41, 200), "strings: ["+name()+", "+name()+"]", d.maybe(.3, "walls: left"), d.maybe(.3, "start: back"), d.maybe(.3, "sag: "+d.inches(0, 24)), gaps)
	mine := list("length: "+d.inches(6, 800), "bulbs: 30", "watts: "+d.one("0.1 W", "5 W", "200 W", "2000 W"), d.maybe(.3, "kind: incandescent"), d.maybe(.4, "volts: "+d.one("120 V", "230 V", "12 V")),
		d.maybe(.3, "wire: "+d.inches(.02, 1)), d.maybe(.3, "weight: "+d.one("0 lb", "100 lb", "1 lb/ft")), d.maybe(.3, "most in a chain: 2"))
	return list("wraps: ["+strings.Join(wraps, ", ")+"]", d.maybe(.35, "rows: "+rows),
		d.maybe(.35, "drops: ["+list("where: "+where(), "string: drop led 100 warm", d.maybe(.5, "hang: "+d.inches(1, 100)), d.maybe(.3, "lap: "+d.inches(0, 90)))+"]"),
		"strings: {mine: "+mine+", low: {length: 6 ft, lead: 1 in, bulbs: 1, watts: 1 W, volts: 24 V, supply: {watts: 10 W, sockets: 3}}}")
}

func (d dice) power() string {
	volts := d.one("120 V", "120 V", "230 V", "24 V", "250 V")
	return "{circuits: {a: " + list("volts: "+volts, "breaker: "+d.one("1 A", "15 A", "20 A", "100 A"), d.maybe(.3, "other load: "+d.one("1 A", "30 A"))) +
		", b: " + list("volts: "+d.one(volts, "120 V"), "breaker: 15 A", d.maybe(.5, "gfci: true")) + "}" + d.maybe(.5, ", split: left and right") + d.maybe(.2, ", continuous: 100 %") + "}"
}

func (d dice) stock(pipe string) string {
	saw := d.maybe(.3, "kerf: "+d.inches(0, 1)+", trim: "+d.inches(0, 3)+", spares: "+d.one("0 %", "100 %"))
	if strings.HasPrefix(pipe, "{") || d.IntN(3) == 0 {
		return list("sell: [{item: mini led 100 warm, price: 3}]", saw)
	}
	return list("sell: [{item: "+pipe+", length: "+d.one("10 ft", "20 ft", "6 m", d.inches(20, 300))+d.maybe(.7, ", price: 3.33")+d.maybe(.2, ", limit: 3")+"}"+
		d.maybe(.3, ", {item: "+pipe+", length: 7 ft, price: 1.99}")+d.maybe(.3, ", {item: steel bar 3/8 in, length: 20 ft, price: 7}")+"]",
		"own: [{item: "+pipe+", length: "+d.inches(5, 130)+", count: 4}]", saw)
}
