package dice

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// lamps throws what is strung: of the catalog, or one of the spec's own.
func (d *dice) lamps() string {
	if d.chance(0.15) {
		return d.one("mine", "low", "led 100 warm 31 V")
	}
	if d.metric {
		return "led " + d.one("100 warm", "50 cool", "100 multi") + " 230 V"
	}
	return d.one("mini led 100 warm", "mini led 100 warm", "mini led 70 red", "mini led 50 cool", "mini incandescent 100 warm", "c9 led 25 warm")
}

// where throws a place to wrap: the ridge where there is one, legs and arches whole or in part.
func (d *dice) where(ridge bool) string {
	if ridge && d.arches > 1 && d.chance(0.3) {
		return d.one("ridge", "ridge", "'ridge of "+d.bays()+"'")
	}
	part := d.one("", "", "", " above "+d.within(30, 60, 1, 100), " below "+d.within(40, 70, 1, 120), " from 10 in to "+d.within(40, 70, 11, 120),
		" tape 0 in to "+d.within(50, 100, 1, 300))
	return "'" + d.one("legs", "legs", "left legs", "right legs", "arches") + part + d.maybe(0.15, " of ", d.set(d.arches, "all", "odd")) + "'"
}

func (d *dice) lights(ridge bool) string {
	var wraps []string
	for range d.pick(0, 1, 1, 1, 2, 2, 3) {
		where := d.where(ridge)
		if d.chance(0.15) {
			where = "[" + where + ", " + d.where(ridge) + "]"
		}
		wraps = append(wraps, list("where: "+where, "string: "+d.lamps(), d.one("", "", "pitch: "+d.within(1, 6, 0.25, 36), "count: "+d.from(1, 3)),
			d.maybe(0.2, "plug: ", d.one("foot", "crown", "open"))))
	}
	gaps := ""
	if d.arches > 1 {
		gaps = d.maybe(0.4, "gaps: [{wall: ", d.one("left", "right"), ", bays: ", d.bays(), "}]")
	}
	rows := list("first: "+d.within(10, 20, 4, 40), "step: "+d.within(10, 18, 4, 40), "up to: "+d.within(55, 75, 41, 200),
		"strings: ["+d.lamps()+d.maybe(0.5, ", "+d.lamps())+"]",
		d.maybe(0.3, "walls: ", d.one("left", "right", "both")), d.maybe(0.3, "start: ", d.one("front", "back")), d.maybe(0.3, "sag: "+d.within(0, 3, 0,
			24)), gaps)
	falls := d.one("drop led 100 warm", "drop led 100 cool", "mine")
	if d.metric {
		falls = "mine"
	}
	drops := list("where: "+d.one("'arches above "+d.exact(80)+" of [1, last]'", d.where(ridge)), "string: "+falls, "hang: "+d.within(3, 10, 1, 100),
		d.maybe(0.3, "lap: "+d.within(0, 6, 0, 90)))
	return list("wraps: "+items(wraps...), d.maybe(0.25, "rows: "+rows), d.maybe(0.2, "drops: ["+drops+"]"),
		"strings: {mine: "+d.mine()+", low: "+d.low()+"}")
}

// mine is a string with a label of its own.
func (d *dice) mine() string {
	volts := d.one("120 V", "120 V", "230 V")
	if d.metric {
		volts = "230 V"
	}
	watts := d.one("3 W", "5 W", "40 W")
	if d.wild {
		watts = d.one("0.1 W", "5 W", "200 W", "2000 W")
	}
	return list("length: "+d.within(70, 400, 6, 800), "bulbs: "+d.from(20, 120), "watts: "+watts, "volts: "+volts, d.maybe(0.3, "lead: "+d.inches(0,
		6)), d.maybe(0.3, "tail: "+d.inches(0, 3)),
		d.maybe(0.2, "amps: 0.05 A"), d.maybe(0.2, "kind: ", d.one("led", "incandescent")), d.maybe(0.3, "wire: "+d.within(0.1, 0.2, 0.02, 1)),
		d.maybe(0.3, "weight: ", d.one("0.5 lb", "0.02 lb/ft", "0.25 kg")), d.maybe(0.2, "gauge: ", d.one("22 AWG", "0.5 mm2")), d.maybe(0.4, "colour: ",
			d.one("warm white", "blue", "tangerine")),
		d.maybe(0.3, "drop: "+d.within(4, 12, 0, 60)), d.maybe(0.3, "back socket: true"), d.maybe(0.3, "most in a chain: ", d.from(1, 9)), d.maybe(0.2,
			"most watts: 210 W"), d.maybe(0.2, "fuse: 3 A"))
}

// low is a string behind a supply.
func (d *dice) low() string {
	return fmt.Sprintf("{length: %s, lead: %s, bulbs: 40, watts: 6 W, volts: %s, supply: {watts: %s W, sockets: %s}}", d.inches(80, 300), d.inches(1,
		12), d.one("24 V", "31 V"), d.one("36", "10", "100"), d.from(1, 4))
}

func (d *dice) stock(pipe string) string {
	saw := joined([]string{d.maybe(0.3, "kerf: "+d.within(0.0625, 0.2, 0, 1)), d.maybe(0.3, "trim: "+d.within(0.1, 0.5, 0, 3)), d.maybe(0.3,
		"spares: ", d.one("0 %", "10 %", "100 %"))})
	set, cord := "mini led 100 warm", d.one("cord 16 AWG", "cord 14 AWG")
	if d.metric {
		set, cord = "led 100 warm 230 V", "cord 1.5 mm2"
	}
	shed := []string{d.maybe(0.4, "{item: "+set+", count: "+d.from(1, 9)+d.maybe(0.3, ", dead: 1")+"}"), d.maybe(0.3,
		"{item: "+cord+", length: "+d.exact(600)+", count: 2}")}
	sell := []string{d.maybe(0.5, "{item: "+set+", price: 9.80}")}
	if !strings.HasPrefix(pipe, "{") {
		first := "114 in"
		if d.metric {
			first = d.one("3 m", "4 m", "5 m")
		}
		shed = append(shed, d.maybe(0.4, "{item: "+pipe+", length: "+d.within(50, 130, 5, 130)+", count: 4}"))
		sell = append(sell,
			d.maybe(0.4, "{item: "+pipe+", length: "+d.one("10 ft", "20 ft", "6 m", first)+d.maybe(0.7, ", price: 3.33")+d.maybe(0.1,
				", limit: 9")+"}"), d.maybe(0.2, "{item: "+pipe+", length: 7 ft, price: 1.99}"))
	}
	return list("sell: "+items(append(sell, d.maybe(0.3, "{item: steel bar 1/2 in, length: 20 ft, price: 7}"))...), "own: "+items(shed...), saw)
}

// Crew throws who builds, when and with what.
func Crew(r *rand.Rand) string { return (&dice{Rand: r}).crew() }

func (d *dice) crew() string {
	var days []string
	if d.chance(0.5) {
		days = append(days, d.maybe(0.5, "{date: 2026-11-10, from: 13:00, work: [trial, marking]}"))
		for k := range d.IntN(3) {
			days = append(days, fmt.Sprintf("{date: 2026-11-%d, from: %s, until: 21:00, work: [cutting, wrapping]}", 16+k, d.one("17:45", "18:30")))
		}
		for k := range d.IntN(4) {
			days = append(days, fmt.Sprintf("{date: 2026-11-%d%s}", 21+k, d.one("", ", from: 10:15", ", from: 08:00, until: 19:00",
				", work: [driving, raising, power, hanging]")))
		}
	}
	helpers := 1 + d.IntN(14)
	var rates []string
	for _, work := range []string{"stake", "cut", "wrap", "raise", "ridge", "row", "drop", "guy", "cord"} {
		rates = append(rates, d.maybe(0.5, work, ": ", d.from(2, 20)))
	}
	return list(fmt.Sprint("helpers: ", helpers), d.maybe(0.4, "young: ", fmt.Sprint(d.IntN(helpers))), d.one("", "", "date: 2026-11-21",
		"days: "+items(days...)), d.maybe(0.4, "start: ", d.one("08:00", "09:00", "13:00")),
		d.maybe(0.4, "tools: "+list("ladders: "+d.from(1, 3), "trestles: "+d.from(2, 13), "tapes: "+d.from(1, 4), "sledges: "+d.from(1, 4))),
		d.maybe(0.4, "ask: ", list("name: A. Reed", d.maybe(0.7, "phone: 555 0100"))), d.maybe(0.2, "rates: "+list(rates...)))
}
