// Package dice throws specs for tests. Every place and figure in them is invented. Modest is a spec that someone could mean; Whole throws every
// key of the format.
package dice

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// dice throw the parts of a spec. Lengths are thrown in inches and written in the system's units.
type dice struct {
	*rand.Rand
	metric bool
	wild   bool // figures are any that the reader takes, not those that someone would build by
	arches int
	bay    int // its length, whole inches
}

func (d *dice) chance(p float64) bool     { return d.Float64() < p }
func (d *dice) pick(list ...int) int      { return list[d.IntN(len(list))] }
func (d *dice) one(list ...string) string { return list[d.IntN(len(list))] }
func (d *dice) from(low, high int) string { return fmt.Sprint(low + d.IntN(high-low+1)) }
func (d *dice) maybe(p float64, parts ...string) string {
	if !d.chance(p) {
		return ""
	}
	return strings.Join(parts, "")
}

// exact writes whole inches, of 25 mm where the spec is metric.
func (d *dice) exact(inches int) string {
	if d.metric {
		return fmt.Sprintf("%d mm", 25*inches)
	}
	return fmt.Sprintf("%d in", inches)
}

// inches throws a length.
func (d *dice) inches(low, high float64) string {
	v := low + (high-low)*d.Float64()
	switch whole := math.Ceil(v); {
	case d.metric && math.Abs(v) < 4:
		return fmt.Sprintf("%.1f mm", 25.4*v)
	case d.metric:
		return fmt.Sprintf("%.0f mm", math.Ceil(25.4*v))
	case whole <= high && d.chance(0.5):
		return fmt.Sprintf("%.0f in", whole)
	}
	return fmt.Sprintf("%.2f in", v)
}

// within throws a length that someone would build by, of a wild spec one that the reader takes.
func (d *dice) within(low, high, least, most float64) string {
	if d.wild && d.chance(0.5) {
		return d.inches(least, most)
	}
	return d.inches(low, high)
}

// list joins what is not empty as a section, items as a list.
func list(parts ...string) string  { return "{" + joined(parts) + "}" }
func items(parts ...string) string { return "[" + joined(parts) + "]" }

func joined(parts []string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, ", ")
}

// Whole throws the text of a spec of so many arches at most, with any keys of the format. One in four is wild. Few are refused by the reader, for
// what contradicts itself.
func Whole(seed uint64, most int) string {
	d := &dice{Rand: rand.New(rand.NewPCG(seed, 18))}
	d.metric, d.wild = d.chance(0.35), d.chance(0.25)
	d.arches = min(most, d.pick(1, 2, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 18, 25, 40, 60, 120, 240))
	d.bay = 42 + d.IntN(30)
	if d.wild {
		d.bay = 12 + d.IntN(228)
	}
	pipe := d.pipe()
	ridge := d.chance(0.85)
	units := "imperial"
	if d.metric {
		units = "metric"
	}
	var b strings.Builder
	line := func(key, value string) {
		if value != "" {
			fmt.Fprintf(&b, "%s: %s\n", key, value)
		}
	}
	line("hoopwright", "1")
	line("title", d.one("Willow Row", "Frost Walk", "Lantern Path at the Old Tannery",
		"A Walk of Lights Along the Canal Between Two Locks and Back by the Mill", "Žižkov łódka"))
	line("season", d.maybe(0.3, d.one("2026", "Winter at the mill")))
	line("units", units)
	line("paper", d.one("", "letter", "legal", "tabloid", "a4", "a3"))
	line("currency", d.maybe(0.3, d.one("USD", "EUR")))
	line("dates",
		d.maybe(0.7, list(d.maybe(0.8, "mark: 2026-11-07"), d.maybe(0.9, "build: 2026-11-21"), d.maybe(0.8, "open: 2026-11-28"), d.maybe(0.8,
			"close: 2027-01-03"), d.maybe(0.8, "down: 2027-01-10"))))
	line("accept", d.maybe(0.15, "[{finding: ", d.one("long-day", "guy-tied-low", "opening-blocked"), ", why: two crews come, by: A. Reed}]"))
	line("tunnel", d.tunnel())
	line("arch", d.arch(pipe, ridge))
	if !ridge {
		line("ridge", "false")
	} else {
		line("ridge", d.maybe(0.1, list("pipe: "+d.pipe())))
	}
	line("guys", d.guys())
	if d.arches > 1 {
		line("braces", d.one("", "", "none", list("bays: "+d.bays(), "from: "+d.within(36, 60, 12, 60), d.maybe(0.6, "kind: ", d.one("pipe", "line")))))
	}
	line("site", d.site())
	if d.chance(0.88) {
		line("lights", d.lights(ridge))
	}
	line("power", d.power())
	line("weather",
		d.maybe(0.3, list(d.maybe(0.5, "ice: "+d.within(0, 0.5, 0, 3)), d.maybe(0.5, "cold: ", d.one("20 F", "-7 C", "-20 F")), d.maybe(0.5, "stand: ",
			d.one("35 mph", "70 km/h")), d.maybe(0.5, "inside: ", d.one("20 mph", "40 km/h")))))
	line("stock", d.stock(pipe))
	line("store", d.maybe(0.4, d.one("wrapped", "stripped")))
	line("found",
		d.maybe(0.15, list(d.maybe(0.5, "after: ", d.one("season", "trial")), "crown: {1: "+d.inches(90, 98)+"}", d.maybe(0.5, "span: {1: "+d.inches(82,
			90)+"}"), d.maybe(0.3, "wrapped: true"))))
	line("crew", d.crew())
	return b.String()
}

// set throws numbers of arches or bays, of so many.
func (d *dice) set(of int, words ...string) string {
	return d.one(append(words, "[1, last]", "[1]", fmt.Sprintf("[%d]", 1+d.IntN(of)), fmt.Sprintf("[1 to %d]", 1+d.IntN(of)))...)
}

func (d *dice) bays() string { return d.set(max(1, d.arches-1), "all", "odd") }

func (d *dice) pipe() string {
	switch {
	case d.chance(0.1):
		return list("od: "+d.within(0.8, 1.1, 0.5, 3), "wall: "+d.inches(0.08, 0.11), d.maybe(0.5, "modulus: 400000 psi"), d.maybe(0.5,
			"strength: 48 MPa"), d.maybe(0.5, "weight: 0.2 lb/ft"),
			"take off: "+d.inches(0.3, 1), "socket: "+d.inches(0.5, 1), d.maybe(0.5, "coupling stop: "+d.inches(0, 0.2)))
	case d.metric:
		return "pvc-u pn16 " + d.one("20 mm", "25 mm", "32 mm")
	}
	return "pvc sch40 " + d.one("1/2 in", "3/4 in", "3/4 in", "1 in")
}

func (d *dice) tunnel() string {
	opening := d.maybe(0.7, "opening: "+list(d.maybe(0.8, "width: "+d.within(36, 60, 12, 240)), d.maybe(0.8, "height: "+d.within(78, 84, 12, 200))))
	if d.arches == 1 {
		return list("arches: 1", opening)
	}
	n, bay, long := fmt.Sprint("arches: ", d.arches), "spacing: "+d.exact(d.bay), "length: "+d.exact(d.bay*(d.arches-1))
	size := d.one(n+", "+bay, n+", "+bay, n+", "+long, bay+", "+long, long+", spacing: up to "+d.exact(d.bay))
	return list(size, opening, d.maybe(0.2, "ways: [{bay: ", d.from(1, d.arches-1), ", wall: ", d.one("left", "right"), "}]"))
}

// leg throws a leg's sticks, the longest first.
func (d *dice) leg() string {
	long := d.within(114, 124, 40, 200)
	if d.metric {
		long = d.within(118, 130, 40, 200)
	}
	return items(long, d.maybe(0.25, d.inches(8, 24)), d.maybe(0.08, d.inches(8, 30)))
}

// stake throws a stake, whole or with keys left for the program to choose.
func (d *dice) stake() string {
	given := float64(d.pick(0, 1, 1, 1))
	return list(d.maybe(max(given, 0.5), "bar: ", d.one("3/8 in", "1/2 in", "5/8 in", "12 mm", "16 mm")), d.maybe(max(given, 0.5),
		"length: "+d.within(36, 60, 6, 100)),
		d.maybe(max(given, 0.5), "depth: "+d.within(16, 24, 2, 40)), d.maybe(0.2, "lean: ", d.from(-5, 5), " deg"))
}

// figures throws the two of three that make an arch.
func (d *dice) figures(ridge bool) string {
	span, height := "span: "+d.within(78, 104, 12, 300), "height: "+d.within(84, 100, 12, 200)
	if !ridge && d.chance(0.3) {
		return "sticks: [" + d.inches(230, 250) + "], " + span
	}
	left := d.leg()
	sticks := "sticks: [" + left + ", " + left + "]"
	if d.chance(0.2) {
		sticks = "sticks: [" + left + ", " + d.leg() + "]"
	}
	return d.one(sticks+", "+span, sticks+", "+span, sticks+", "+span, sticks+", "+height, span+", "+height)
}

func (d *dice) arch(pipe string, ridge bool) string {
	foot := d.maybe(0.8, "stake: "+d.stake())
	if d.chance(0.1) {
		foot = "foot: " + list("weight: "+d.from(20, 80)+" kg", "width: "+d.inches(12, 24), d.maybe(0.7, "on: ", d.one("asphalt", "concrete", "grass",
			"deck")), d.maybe(0.5, "bar: ", d.one("1/2 in", "12 mm")))
	}
	except := ""
	if d.arches > 2 && d.chance(0.25) {
		change := d.one("span: "+d.within(78, 104, 12, 200), "stake: {depth: "+d.within(16, 24, 2, 30)+"}", "joints: glued", "pipe: "+pipe,
			"sticks: ["+d.leg()+", "+d.leg()+"]")
		except = "except: [{arches: [1, last], " + change + "}" + d.maybe(0.4, ", {arches: [2], late modulus: 50 %}") + "]"
	}
	return list("pipe: "+pipe, d.figures(ridge), foot, d.maybe(0.15, "late modulus: ", d.from(30, 80), " %"), d.maybe(0.3, "joints: ", d.one("dry",
		"pinned", "glued")), except)
}

func (d *dice) guys() string {
	if d.arches == 1 && d.chance(0.7) {
		return ""
	}
	return d.one("", "none", list("arches: all, from: "+d.within(72, 84, 12, 120), "out: "+d.within(42, 66, 12, 200)),
		list(d.maybe(0.8, "arches: "+d.set(d.arches, "[1, last]", "odd", "all")), "from: "+d.within(72, 84, 12, 120), "out: "+d.within(48, 72, 12, 200),
			d.maybe(0.3, "stake: "+d.stake())))
}
