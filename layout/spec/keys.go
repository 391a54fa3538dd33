package spec

import (
	"slices"
	"strings"

	"hoopwright/layout/measure"
)

// key is one key of the format. In its path [] stands for an item of a list and * for a name of the spec's own.
type key struct {
	path     string
	example  string // a right value
	inMetric string // the same in metric, where that reads better
}

// keys is every key of version 1, in the order of the format, each with a right example. An exception takes the keys of arch
// too, a guy's stake those of arch.stake, and a ridge's own pipe those of arch.pipe.
var keys = []key{
	{"hoopwright", "1", ""},
	{"title", "Lantern Walk", ""},
	{"season", "2026", ""},
	{"units", "imperial", "metric"},
	{"paper", "letter", "a4"},
	{"currency", "USD", "EUR"},
	{"dates", "{build: 2026-11-21, open: 2026-11-28}", ""},
	{"dates.mark", "2026-11-07", ""},
	{"dates.build", "2026-11-21", ""},
	{"dates.open", "2026-11-28", ""},
	{"dates.close", "2027-01-02", ""},
	{"dates.down", "2027-01-09", ""},
	{"accept", "[{finding: long-day, why: two crews come, by: A. Reed}]", ""},
	{"accept[]", "{finding: long-day, why: two crews come, by: A. Reed}", ""},
	{"accept[].finding", "long-day", ""},
	{"accept[].why", "house cords are laid by then", ""},
	{"accept[].by", "A. Reed", ""},

	{"tunnel", "{arches: 7, spacing: 4 ft 9 in}", "{arches: 7, spacing: 1.4 m}"},
	{"tunnel.arches", "7", ""},
	{"tunnel.spacing", "4 ft 9 in", "1.4 m"},
	{"tunnel.length", "28 ft 6 in", "8.4 m"},
	{"tunnel.opening", "{width: 4 ft, height: 6 ft 8 in}", "{width: 1.5 m, height: 2.1 m}"},
	{"tunnel.opening.width", "4 ft", "1.5 m"},
	{"tunnel.opening.height", "6 ft 8 in", "2.1 m"},
	{"tunnel.ways", "[{bay: 4, wall: left}]", ""},
	{"tunnel.ways[]", "{bay: 4, wall: left}", ""},
	{"tunnel.ways[].bay", "4", ""},
	{"tunnel.ways[].wall", "left", ""},

	{"arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}", "{pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m}"},
	{"arch.pipe", "pvc sch40 1/2 in", "pvc-u pn16 25 mm"},
	{"arch.pipe.od", "0.84 in", "25 mm"},
	{"arch.pipe.wall", "0.109 in", "1.9 mm"},
	{"arch.pipe.modulus", "400000 psi", "2800 MPa"},
	{"arch.pipe.strength", "7000 psi", "48 MPa"},
	{"arch.pipe.weight", "0.161 lb/ft", "0.19 kg/m"},
	{"arch.pipe.take off", "1/2 in", "14 mm"},
	{"arch.pipe.socket", "0.688 in", "18 mm"},
	{"arch.pipe.coupling stop", "3/32 in", "2 mm"},
	{"arch.sticks", "[10 ft, 10 ft]", "[3.2 m, 3.2 m]"},
	{"arch.sticks[]", "[10 ft, 18 in]", "[3 m, 500 mm]"},
	{"arch.sticks[][]", "10 ft", "3 m"},
	{"arch.span", "7 ft", "2.3 m"},
	{"arch.height", "7 ft 10 in", "2.4 m"},
	{"arch.stake", "{bar: 3/8 in, length: 48 in, depth: 20 in}", "{bar: 12 mm, length: 1.2 m, depth: 500 mm}"},
	{"arch.stake.bar", "3/8 in", "12 mm"},
	{"arch.stake.length", "48 in", "1.2 m"},
	{"arch.stake.depth", "20 in", "500 mm"},
	{"arch.stake.lean", "2 deg", ""},
	{"arch.foot", "{weight: 70 lb, width: 16 in, on: asphalt}", "{weight: 30 kg, width: 400 mm, on: asphalt}"},
	{"arch.foot.weight", "70 lb", "30 kg"},
	{"arch.foot.width", "16 in", "400 mm"},
	{"arch.foot.on", "asphalt", ""},
	{"arch.foot.bar", "1/2 in", "12 mm"},
	{"arch.late modulus", "60 %", ""},
	{"arch.joints", "dry", ""},
	{"arch.except", "[{arches: [1, last], span: 7 ft 6 in}]", "[{arches: [1, last], span: 2.4 m}]"},
	{"arch.except[]", "{arches: [1, last], span: 7 ft 6 in}", "{arches: [1, last], span: 2.4 m}"},
	{"arch.except[].arches", "[1, last]", ""},

	{"ridge", "{pipe: pvc sch40 1/2 in}", "{pipe: pvc-u pn16 25 mm}"},
	{"ridge.pipe", "pvc sch40 1/2 in", "pvc-u pn16 25 mm"},
	{"guys", "{arches: [1, last], from: 6 ft, out: 5 ft}", "{arches: [1, last], from: 1.8 m, out: 1.6 m}"},
	{"guys.arches", "[1, last]", ""},
	{"guys.from", "6 ft", "1.8 m"},
	{"guys.out", "5 ft", "1.6 m"},
	{"guys.stake", "{length: 24 in, depth: 20 in}", "{length: 600 mm, depth: 500 mm}"},

	{"braces", "{bays: [1, last], from: 5 ft, kind: pipe}", "{bays: [1, last], from: 1.5 m, kind: pipe}"},
	{"braces.bays", "[1, last]", ""},
	{"braces.from", "5 ft", "1.5 m"},
	{"braces.kind", "pipe", ""},

	{"site", "{soil: soft}", ""},
	{"site.route", "[{straight: 12 ft}, {left: 30 deg, radius: 25 ft}, {straight: rest}]", "[{straight: 4 m}, {left: 30 deg, radius: 8 m}, {straight: rest}]"},
	{"site.route[]", "{straight: 12 ft}", "{straight: 4 m}"},
	{"site.route[].straight", "12 ft", "4 m"},
	{"site.route[].left", "30 deg", ""},
	{"site.route[].right", "30 deg", ""},
	{"site.route[].radius", "25 ft", "8 m"},
	{"site.start", "{at: [20 ft, 6 ft], heading: 0 deg}", "{at: [6 m, 2 m], heading: 0 deg}"},
	{"site.start.at", "[20 ft, 6 ft]", "[6 m, 2 m]"},
	{"site.start.from", "{gate post: 31 ft 4 in, porch post: 40 ft 2 in}", "{gate post: 9.55 m, porch post: 12.25 m}"},
	{"site.start.from.*", "31 ft 4 in", "9.55 m"},
	{"site.start.side", "left", ""},
	{"site.start.heading", "90 deg", ""},
	{"site.start.toward", "{from: {gate post: 62 ft 8 in, porch post: 58 ft 1 in}, side: left}", "{from: {gate post: 19.1 m, porch post: 17.7 m}, side: left}"},
	{"site.start.toward.at", "[20 ft, 36 ft]", "[6 m, 11 m]"},
	{"site.start.toward.from", "{gate post: 62 ft 8 in, porch post: 58 ft 1 in}", "{gate post: 19.1 m, porch post: 17.7 m}"},
	{"site.start.toward.from.*", "62 ft 8 in", "19.1 m"},
	{"site.start.toward.side", "left", ""},
	{"site.marks", "[{name: gate post, at: [0 ft, 0 ft]}]", "[{name: gate post, at: [0 m, 0 m]}]"},
	{"site.marks[]", "{name: gate post, at: [0 ft, 0 ft]}", "{name: gate post, at: [0 m, 0 m]}"},
	{"site.marks[].name", "gate post", ""},
	{"site.marks[].at", "[31 ft, 2 ft]", "[9.5 m, 600 mm]"},
	{"site.marks[].from", "{gate post: 31 ft 4 in, porch post: 40 ft 2 in}", "{gate post: 9.55 m, porch post: 12.25 m}"},
	{"site.marks[].from.*", "31 ft 4 in", "9.55 m"},
	{"site.marks[].side", "left", ""},
	{"site.levels", "[{arch: 1, left: 0 in, right: 2 in}]", "[{arch: 1, left: 0 mm, right: 50 mm}]"},
	{"site.levels[]", "{arch: 1, left: 0 in, right: 2 in}", "{arch: 1, left: 0 mm, right: 50 mm}"},
	{"site.levels[].arch", "last", ""},
	{"site.levels[].left", "-3 in", "-80 mm"},
	{"site.levels[].right", "2 in", "50 mm"},
	{"site.soil", "soft", ""},
	{"site.exposure", "suburban", ""},
	{"site.features", "[{name: flower bed, at: [25 ft, 24 ft], radius: 4 ft}]", "[{name: flower bed, at: [8 m, 7 m], radius: 1.2 m}]"},
	{"site.features[]", "{name: flower bed, at: [25 ft, 24 ft], radius: 4 ft}", "{name: flower bed, at: [8 m, 7 m], radius: 1.2 m}"},
	{"site.features[].name", "flower bed", ""},
	{"site.features[].outline", "[[10 ft, 2 ft], [30 ft, 2 ft], [30 ft, 5 ft]]", "[[3 m, 1 m], [9 m, 1 m], [9 m, 2 m]]"},
	{"site.features[].outline[]", "[10 ft, 2 ft]", "[3 m, 1 m]"},
	{"site.features[].at", "[25 ft, 24 ft]", "[8 m, 7 m]"},
	{"site.features[].radius", "4 ft", "1.2 m"},
	{"site.features[].hard", "true", ""},
	{"site.features[].height", "30 in", "800 mm"},
	{"site.buried", "[{name: water line, line: [[0 ft, 14 ft], [40 ft, 19 ft]]}]", "[{name: water line, line: [[0 m, 4 m], [12 m, 6 m]]}]"},
	{"site.buried[]", "{name: water line, line: [[0 ft, 14 ft], [40 ft, 19 ft]]}", "{name: water line, line: [[0 m, 4 m], [12 m, 6 m]]}"},
	{"site.buried[].name", "water line", ""},
	{"site.buried[].line", "[[0 ft, 14 ft], [40 ft, 19 ft]]", "[[0 m, 4 m], [12 m, 6 m]]"},
	{"site.buried[].line[]", "[0 ft, 14 ft]", "[0 m, 4 m]"},
	{"site.buried[].keep", "24 in", "600 mm"},
	{"site.buried[].marked by", "owner", ""},
	{"site.overhead", "[{name: service drop, line: [[0 ft, -6 ft], [40 ft, -4 ft]], height: 13 ft}]", "[{name: service drop, line: [[0 m, -2 m], [12 m, -1 m]], height: 4 m}]"},
	{"site.overhead[]", "{name: service drop, line: [[0 ft, -6 ft], [40 ft, -4 ft]], height: 13 ft}", "{name: service drop, line: [[0 m, -2 m], [12 m, -1 m]], height: 4 m}"},
	{"site.overhead[].name", "service drop", ""},
	{"site.overhead[].line", "[[0 ft, -6 ft], [40 ft, -4 ft]]", "[[0 m, -2 m], [12 m, -1 m]]"},
	{"site.overhead[].line[]", "[0 ft, -6 ft]", "[0 m, -2 m]"},
	{"site.overhead[].height", "13 ft", "4 m"},
	{"site.overhead[].keep", "10 ft", "3 m"},
	{"site.outlets", "[{name: porch, at: [2 ft, 4 ft], circuit: porch}]", "[{name: porch, at: [1 m, 1.2 m], circuit: porch}]"},
	{"site.outlets[]", "{name: porch, at: [2 ft, 4 ft], circuit: porch}", "{name: porch, at: [1 m, 1.2 m], circuit: porch}"},
	{"site.outlets[].name", "porch", ""},
	{"site.outlets[].at", "[2 ft, 4 ft]", "[1 m, 1.2 m]"},
	{"site.outlets[].from", "{gate post: 12 ft 4 in, porch post: 18 ft}", "{gate post: 3.8 m, porch post: 5.5 m}"},
	{"site.outlets[].from.*", "12 ft 4 in", "3.8 m"},
	{"site.outlets[].side", "right", ""},
	{"site.outlets[].from start", "{left: 12 ft, behind: 6 ft}", "{left: 3.6 m, behind: 1.8 m}"},
	{"site.outlets[].from start.left", "12 ft", "3.6 m"},
	{"site.outlets[].from start.right", "12 ft", "3.6 m"},
	{"site.outlets[].from start.ahead", "6 ft", "1.8 m"},
	{"site.outlets[].from start.behind", "6 ft", "1.8 m"},
	{"site.outlets[].circuit", "porch", ""},
	{"site.outlets[].sockets", "2", ""},
	{"site.outlets[].timer", "15 A", ""},
	{"site.outlets[].reset at", "inside the side door", ""},
	{"site.outlets[].also feeds", "gate lamp", ""},
	{"site.cords", "{keep off: [flower bed], crossing: overhead}", ""},
	{"site.cords.keep off", "[flower bed]", ""},
	{"site.cords.crossing", "overhead", ""},
	{"site.north", "40 deg", ""},
	{"site.place", "[44.05, -121.31]", ""},
	{"site.places", "[{name: side door, at: [2 ft, 3 ft], for: power off}]", "[{name: side door, at: [600 mm, 900 mm], for: power off}]"},
	{"site.places[]", "{name: side door, at: [2 ft, 3 ft], for: power off}", "{name: side door, at: [600 mm, 900 mm], for: power off}"},
	{"site.places[].name", "side door", ""},
	{"site.places[].at", "[2 ft, 3 ft]", "[600 mm, 900 mm]"},
	{"site.places[].from", "{gate post: 12 ft 4 in, porch post: 18 ft}", "{gate post: 3.8 m, porch post: 5.5 m}"},
	{"site.places[].from.*", "12 ft 4 in", "3.8 m"},
	{"site.places[].side", "right", ""},
	{"site.places[].for", "power off", ""},
	{"site.address", "14 Quince Lane", ""},
	{"site.emergency", "911", "112"},
	{"site.unknown", "[buried lines, gfci]", ""},
	{"site.unknown[]", "buried lines", ""},

	{"lights", "{wraps: [{where: legs, string: mini led 100 warm}]}", ""},
	{"lights.wraps", "[{where: [legs, ridge], string: mini led 100 warm}]", ""},
	{"lights.wraps[]", "{where: [legs, ridge], string: mini led 100 warm}", ""},
	{"lights.wraps[].where", "legs above 3 ft", "legs above 1 m"},
	{"lights.wraps[].string", "mini led 100 warm", ""},
	{"lights.wraps[].pitch", "3 in", "80 mm"},
	{"lights.wraps[].count", "1", ""},
	{"lights.wraps[].plug", "foot", ""},
	{"lights.rows", "{first: 12 in, step: 12 in, up to: 6 ft, strings: [mini led 100 warm]}", "{first: 300 mm, step: 300 mm, up to: 1.8 m, strings: [mini led 100 warm]}"},
	{"lights.rows.first", "12 in", "300 mm"},
	{"lights.rows.step", "12 in", "300 mm"},
	{"lights.rows.up to", "6 ft", "1.8 m"},
	{"lights.rows.strings", "[mini led 100 warm]", ""},
	{"lights.rows.walls", "both", ""},
	{"lights.rows.start", "front", ""},
	{"lights.rows.sag", "1 in", "25 mm"},
	{"lights.rows.gaps", "[{wall: left, bays: [4]}]", ""},
	{"lights.rows.gaps[]", "{wall: left, bays: [4]}", ""},
	{"lights.rows.gaps[].wall", "left", ""},
	{"lights.rows.gaps[].bays", "[4]", ""},
	{"lights.drops", "[{where: ridge, string: mini led 100 warm, hang: 10 in}]", "[{where: ridge, string: mini led 100 warm, hang: 250 mm}]"},
	{"lights.drops[]", "{where: ridge, string: mini led 100 warm, hang: 10 in}", "{where: ridge, string: mini led 100 warm, hang: 250 mm}"},
	{"lights.drops[].where", "ridge", ""},
	{"lights.drops[].string", "mini led 100 warm", ""},
	{"lights.drops[].hang", "10 in", "250 mm"},
	{"lights.drops[].lap", "6 in", "150 mm"},
	{"lights.strings", "{porch set: {length: 20 ft, bulbs: 70, watts: 4.8 W}}", "{porch set: {length: 6 m, bulbs: 70, watts: 4.8 W}}"},
	{"lights.strings.*", "{length: 20 ft, bulbs: 70, watts: 4.8 W}", "{length: 6 m, bulbs: 70, watts: 4.8 W}"},
	{"lights.strings.*.length", "20 ft", "6 m"},
	{"lights.strings.*.lead", "1 ft", "300 mm"},
	{"lights.strings.*.tail", "3 in", "80 mm"},
	{"lights.strings.*.bulbs", "70", ""},
	{"lights.strings.*.watts", "4.8 W", ""},
	{"lights.strings.*.amps", "0.04 A", ""},
	{"lights.strings.*.kind", "led", ""},
	{"lights.strings.*.volts", "120 V", "230 V"},
	{"lights.strings.*.supply", "{watts: 24 W, sockets: 4}", ""},
	{"lights.strings.*.supply.watts", "24 W", ""},
	{"lights.strings.*.supply.sockets", "4", ""},
	{"lights.strings.*.weight", "0.5 lb", "0.25 kg"},
	{"lights.strings.*.wire", "0.15 in", "4 mm"},
	{"lights.strings.*.gauge", "22 AWG", "0.5 mm2"},
	{"lights.strings.*.colour", "warm white", ""},
	{"lights.strings.*.drop", "10 in", "250 mm"},
	{"lights.strings.*.back socket", "true", ""},
	{"lights.strings.*.most in a chain", "25", ""},
	{"lights.strings.*.most watts", "210 W", "400 W"},
	{"lights.strings.*.fuse", "3 A", ""},

	{"power", "{circuits: {porch: {volts: 120 V, breaker: 15 A, gfci: true}}}", "{circuits: {porch: {volts: 230 V, breaker: 16 A, gfci: true}}}"},
	{"power.circuits", "{porch: {volts: 120 V, breaker: 15 A, gfci: true}}", "{porch: {volts: 230 V, breaker: 16 A, gfci: true}}"},
	{"power.circuits.*", "{volts: 120 V, breaker: 15 A, gfci: true}", "{volts: 230 V, breaker: 16 A, gfci: true}"},
	{"power.circuits.*.volts", "120 V", "230 V"},
	{"power.circuits.*.breaker", "15 A", "16 A"},
	{"power.circuits.*.gfci", "true", ""},
	{"power.circuits.*.other load", "2 A", ""},
	{"power.circuits.*.breaker no", "12", "F3"},
	{"power.continuous", "80 %", ""},
	{"power.split", "every other", ""},
	{"power.together", "4", ""},
	{"power.cords", "[{gauge: 16 AWG, length: 50 ft, sockets: 9, apart: 5 ft, price: 30}]", "[{gauge: 1.5 mm2, length: 15 m, sockets: 6, apart: 2 m, price: 40}]"},
	{"power.cords[]", "{gauge: 16 AWG, length: 50 ft, sockets: 9, apart: 5 ft}", "{gauge: 1.5 mm2, length: 15 m, sockets: 6, apart: 2 m}"},
	{"power.cords[].gauge", "16 AWG", "1.5 mm2"},
	{"power.cords[].length", "50 ft", "15 m"},
	{"power.cords[].sockets", "9", "6"},
	{"power.cords[].apart", "5 ft", "2 m"},
	{"power.cords[].price", "30", ""},
	{"power.taps", "[{sockets: 3, price: 6.50}]", ""},
	{"power.taps[]", "{sockets: 3, price: 6.50}", ""},
	{"power.taps[].sockets", "3", ""},
	{"power.taps[].price", "6.50", ""},
	{"power.timers", "{amps: 15 A, sockets: 2, price: 22}", "{amps: 16 A, sockets: 1, price: 18}"},
	{"power.timers.amps", "15 A", "16 A"},
	{"power.timers.sockets", "2", ""},
	{"power.timers.price", "22", ""},
	{"power.evenings", "{hours: 5, nights: 35, price: 0.16}", ""},
	{"power.evenings.hours", "5", ""},
	{"power.evenings.nights", "35", ""},
	{"power.evenings.price", "0.16", ""},

	{"weather", "{ice: 1/4 in, cold: 20 F}", "{ice: 6 mm, cold: -7 C}"},
	{"weather.ice", "1/4 in", "6 mm"},
	{"weather.cold", "20 F", "-7 C"},
	{"weather.stand", "35 mph", "55 km/h"},
	{"weather.inside", "20 mph", "32 km/h"},

	{"stock", "{sell: [{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}]}", "{sell: [{item: pvc-u pn16 25 mm, length: 4 m, price: 5.20}]}"},
	{"stock.sell", "[{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}]", "[{item: pvc-u pn16 25 mm, length: 4 m, price: 5.20}]"},
	{"stock.sell[]", "{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}", "{item: pvc-u pn16 25 mm, length: 4 m, price: 5.20}"},
	{"stock.sell[].item", "pvc sch40 1/2 in", "pvc-u pn16 25 mm"},
	{"stock.sell[].length", "10 ft", "4 m"},
	{"stock.sell[].price", "4.35", ""},
	{"stock.sell[].limit", "12", ""},
	{"stock.own", "[{item: pvc sch40 1/2 in, length: 56 in, count: 2}]", "[{item: pvc-u pn16 25 mm, length: 1.4 m, count: 2}]"},
	{"stock.own[]", "{item: pvc sch40 1/2 in, length: 56 in, count: 2}", "{item: pvc-u pn16 25 mm, length: 1.4 m, count: 2}"},
	{"stock.own[].item", "pvc sch40 1/2 in", "pvc-u pn16 25 mm"},
	{"stock.own[].length", "56 in", "1.4 m"},
	{"stock.own[].count", "2", ""},
	{"stock.own[].dead", "0", ""},
	{"stock.kerf", "1/8 in", "3 mm"},
	{"stock.trim", "1/4 in", "5 mm"},
	{"stock.spares", "5 %", ""},

	{"store", "wrapped", ""},
	{"found", "{crown: {1: 95 in, 6: 94 1/2 in}}", "{crown: {1: 2.4 m, 6: 2.39 m}}"},
	{"found.after", "trial", ""},
	{"found.crown", "{1: 95 in, 6: 94 1/2 in}", "{1: 2.4 m, 6: 2.39 m}"},
	{"found.crown.*", "95 in", "2.4 m"},
	{"found.span", "{1: 85 in}", "{1: 2.31 m}"},
	{"found.span.*", "85 in", "2.31 m"},
	{"found.wrapped", "true", ""},

	{"crew", "{helpers: 5, start: 09:00}", ""},
	{"crew.helpers", "5", ""},
	{"crew.young", "2", ""},
	{"crew.date", "2026-11-21", ""},
	{"crew.days", "[{from: 18:30, until: 21:00, work: [cutting, wrapping]}]", ""},
	{"crew.days[]", "{from: 18:30, until: 21:00, work: [cutting, wrapping]}", ""},
	{"crew.days[].date", "2026-11-19", ""},
	{"crew.days[].from", "18:30", ""},
	{"crew.days[].until", "21:00", ""},
	{"crew.days[].work", "[cutting, wrapping]", ""},
	{"crew.days[].work[]", "wrapping", ""},
	{"crew.tools", "{ladders: 2, trestles: 8}", ""},
	{"crew.tools.ladders", "2", ""},
	{"crew.tools.trestles", "8", ""},
	{"crew.tools.tapes", "3", ""},
	{"crew.tools.sledges", "2", ""},
	{"crew.ask", "{name: A. Reed, phone: 555 0100}", ""},
	{"crew.ask.name", "A. Reed", ""},
	{"crew.ask.phone", "555 0100", ""},
	{"crew.start", "09:00", ""},
	{"crew.rates", "{wrap: 15, raise: 12}", ""},
	{"crew.rates.stake", "8", ""},
	{"crew.rates.cut", "3", ""},
	{"crew.rates.wrap", "15", ""},
	{"crew.rates.raise", "15", ""},
	{"crew.rates.ridge", "6", ""},
	{"crew.rates.row", "8", ""},
	{"crew.rates.drop", "3", ""},
	{"crew.rates.guy", "12", ""},
	{"crew.rates.cord", "10", ""},
}

// rows finds a key's row by its path.
var rows = func() map[string]key {
	m := make(map[string]key, len(keys))
	for _, k := range keys {
		m[k.path] = k
	}
	return m
}()

// exampleOf shows a path of the table as it would stand in a file, with its key where it has one. What stands in a list of
// plain texts is shown by the list.
func exampleOf(path string, s measure.System) string {
	for rows[path].path == "" && strings.HasSuffix(path, "[]") {
		path = strings.TrimSuffix(path, "[]")
	}
	k := rows[path]
	value := k.example
	if s == measure.Metric && k.inMetric != "" {
		value = k.inMetric
	}
	name := path[strings.LastIndexByte(path, '.')+1:]
	if value == "" || name == "*" || strings.HasSuffix(name, "[]") {
		return value
	}
	return name + ": " + value
}

// children lists the names of the keys right under each path of the table, in the order of the format.
var children = func() map[string][]string {
	m := map[string][]string{}
	for _, k := range keys {
		parent, name := "", k.path
		if dot := strings.LastIndexByte(k.path, '.'); dot >= 0 {
			parent, name = k.path[:dot], k.path[dot+1:]
		}
		if !strings.HasSuffix(name, "[]") {
			m[parent] = append(m[parent], name)
		}
	}
	ofArch := slices.DeleteFunc(slices.Clone(m["arch"]), func(name string) bool { return name == "except" })
	m[exception] = append(m[exception], ofArch...)
	return m
}()

// exception is the path of an item of arch.except, which takes most keys of arch.
const exception = "arch.except[]"

// under returns the path of a key right under another.
func under(path, name string) string {
	switch {
	case path == "":
		return name
	case path == exception && name != "arches":
		return "arch." + name
	}
	return path + "." + name
}
