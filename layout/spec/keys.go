package spec

import (
	"slices"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// key is one key of the format. In its path [] stands for an item of a list and * for a name of the spec's own.
type key struct {
	path     string
	example  string // a right value
	inMetric string // the same in metric, where that reads better
	rule     rule
}

// The limits of spacing, voltage and breaker are the format's own; the others keep out slips of the pen and nonsense, and leave what is merely unwise to the findings. Those that are asked for by name stand here.
var (
	spacings    = bounds[measure.Length]{lengths, 12 * inch, 20 * foot}
	spans       = bounds[measure.Length]{lengths, 12 * inch, 40 * foot}
	heights     = bounds[measure.Length]{lengths, 12 * inch, 30 * foot}
	sticks      = bounds[measure.Length]{lengths, 6 * inch, 40 * foot}
	straights   = bounds[measure.Length]{lengths, 1 * inch, 10_000 * foot}
	coordinates = bounds[measure.Length]{lengths, -10_000 * foot, 10_000 * foot}
	tapes       = bounds[measure.Length]{lengths, 6 * inch, 10_000 * foot} // from mark to mark
	places      = bounds[measure.Length]{lengths, 0, 60 * foot}            // heights and tape

	// A string's weight is that of the whole string, or its weight per length.
	stringMasses = bounds[measure.Mass]{masses, 0, 100 * measure.Pound}
	wireMasses   = bounds[measure.LineMass]{lineMasses, 0, 1 * measure.PoundPerFoot}
)

// What may be counted, of one spec or of one thing.
const (
	mostStrings       = 50 // of one run
	mostRows          = 60 // of one wall
	mostBulbs         = 2000
	mostChained       = 500 // strings end to end
	mostSockets       = 24  // of one outlet
	mostInlineSockets = 40  // of one cord
	mostTapSockets    = 6   // of one three-way or timer
	mostCircuits      = 200
	mostNights        = 366
	mostHelpers       = 200
	mostMinutes       = 480 // of one piece of work
	mostPieceCount    = 100_000
	dearest           = 100_000
)

// keys is every key of version 1, in the order of the format, each with a right example and its rule. An exception takes the keys of arch
// too, a guy's stake those of arch.stake, and a ridge's own pipe those of arch.pipe. A list that its item's example alone shows has no row here: withLists adds it.
var keys = withLists([]key{
	{"hoopwright", "1", "", told(version + ", the version of the format")},
	{"title", "Lantern Walk", "", must(text(longestText))},
	{"season", "2026", "", text(longestText)},
	{"units", "imperial", "metric", oneOf(measure.Imperial, measure.Metric)},
	{"paper", "letter", "a4", choice(Papers(), Papers()...)},
	{"currency", "USD", "EUR", text(12)},
	{"dates", "{build: 2026-11-21, open: 2026-11-28}", "", inner},
	{"dates.mark", "2026-11-07", "", day},
	{"dates.build", "2026-11-21", "", day},
	{"dates.open", "2026-11-28", "", day},
	{"dates.close", "2027-01-02", "", day},
	{"dates.down", "2027-01-09", "", day},
	{"accept[]", "{finding: long-day, why: two crews come, by: A. Reed}", "", inner},
	{"accept[].finding", "long-day", "", must(text(longestName))},
	{"accept[].why", "house cords are laid by then", "", must(text(longestText))},
	{"accept[].by", "A. Reed", "", must(text(longestName))},

	{"tunnel", "{arches: 7, spacing: 4 ft 9 in}", "{arches: 7, spacing: 1.4 m}", must(inner)},
	{"tunnel.arches", "7", "", count(1, MostArches)},
	{"tunnel.spacing", "4 ft 9 in", "1.4 m", spacings.rule()},
	{"tunnel.length", "28 ft 6 in", "8.4 m", within(lengths, 12*inch, (MostArches-1)*20*foot)},
	{"tunnel.opening", "{width: 4 ft, height: 6 ft 8 in}", "{width: 1.5 m, height: 2.1 m}", inner},
	{"tunnel.opening.width", "4 ft", "1.5 m", within(lengths, 12*inch, 20*foot)},
	{"tunnel.opening.height", "6 ft 8 in", "2.1 m", within(lengths, 12*inch, 20*foot)},
	{"tunnel.ways[]", "{bay: 4, wall: left}", "", inner},
	{"tunnel.ways[].bay", "4", "", must(setOf(bayNumbers))},
	{"tunnel.ways[].wall", "left", "", must(oneOf(Left, Right))},

	{"arch", "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}", "{pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m}", must(inner)},
	{"arch.pipe", "pvc sch40 1/2 in", "pvc-u pn16 25 mm", must(told("a pipe of the catalog, or "))},
	{"arch.pipe.od", "0.84 in", "25 mm", must(within(lengths, 0.25*inch, 6*inch))},
	{"arch.pipe.wall", "0.109 in", "1.9 mm", must(within(lengths, 0.02*inch, 1*inch))},
	{"arch.pipe.modulus", "400000 psi", "2800 MPa", within(pressures, 50_000*measure.PSI, 2_000_000*measure.PSI)},
	{"arch.pipe.strength", "7000 psi", "48 MPa", within(pressures, 500*measure.PSI, 50_000*measure.PSI)},
	{"arch.pipe.weight", "0.161 lb/ft", "0.19 kg/m", within(lineMasses, 0.01*measure.PoundPerFoot, 5*measure.PoundPerFoot)},
	{"arch.pipe.take off", "1/2 in", "14 mm", within(lengths, 0, 6*inch)},
	{"arch.pipe.socket", "0.688 in", "18 mm", within(lengths, 0, 6*inch)},
	{"arch.pipe.coupling stop", "3/32 in", "2 mm", within(lengths, 0, 6*inch)},
	{"arch.sticks", "[10 ft, 10 ft]", "[3.2 m, 3.2 m]", told("left, right, each a length or a list from the ground up; or one stick for both")},
	{"arch.sticks[]", "[10 ft, 18 in]", "[3 m, 500 mm]", sticks.rule()},
	{"arch.sticks[][]", "10 ft", "3 m", sticks.rule()},
	{"arch.span", "7 ft", "2.3 m", spans.rule()},
	{"arch.height", "7 ft 10 in", "2.4 m", heights.rule()},
	{"arch.stake", "{bar: 3/8 in, length: 48 in, depth: 20 in}", "{bar: 12 mm, length: 1.2 m, depth: 500 mm}", inner},
	{"arch.stake.bar", "3/8 in", "12 mm", bar},
	{"arch.stake.length", "48 in", "1.2 m", within(lengths, 6*inch, 10*foot)},
	{"arch.stake.depth", "20 in", "500 mm", within(lengths, 2*inch, 8*foot)},
	{"arch.stake.lean", "2 deg", "", within(angles, -30*degree, 30*degree)},
	{"arch.foot", "{weight: 70 lb, width: 16 in, on: asphalt}", "{weight: 30 kg, width: 400 mm, on: asphalt}", inner},
	{"arch.foot.weight", "70 lb", "30 kg", within(masses, 1*measure.Pound, 2000*measure.Pound)},
	{"arch.foot.width", "16 in", "400 mm", must(within(lengths, 4*inch, 6*foot))},
	{"arch.foot.on", "asphalt", "", oneOf(Asphalt, Concrete, Grass, Deck)},
	{"arch.foot.bar", "1/2 in", "12 mm", bar},
	{"arch.late modulus", "60 %", "", within(shares, 0.10, 1)},
	{"arch.joints", "dry", "", oneOf(Dry, Pinned, Glued)},
	{"arch.except[]", "{arches: [1, last], span: 7 ft 6 in}", "{arches: [1, last], span: 2.4 m}", inner},
	{"arch.except[].arches", "[1, last]", "", must(setOf(archNumbers))},

	{"ridge", "{pipe: pvc sch40 1/2 in}", "{pipe: pvc-u pn16 25 mm}", told("false for none, or ")},
	{"ridge.pipe", "pvc sch40 1/2 in", "pvc-u pn16 25 mm", told("a pipe of the catalog, or ")},
	{"guys", "{arches: [1, last], from: 6 ft, out: 5 ft}", "{arches: [1, last], from: 1.8 m, out: 1.6 m}", told("none, or ")},
	{"guys.arches", "[1, last]", "", setOf(archNumbers)},
	{"guys.from", "6 ft", "1.8 m", must(within(lengths, 12*inch, 30*foot))},
	{"guys.out", "5 ft", "1.6 m", must(within(lengths, 12*inch, 40*foot))},
	{"guys.stake", "{length: 24 in, depth: 20 in}", "{length: 600 mm, depth: 500 mm}", inner},

	{"braces", "{bays: [1, last], from: 5 ft, kind: pipe}", "{bays: [1, last], from: 1.5 m, kind: pipe}", told("none, or ")},
	{"braces.bays", "[1, last]", "", setOf(bayNumbers)},
	{"braces.from", "5 ft", "1.5 m", must(within(lengths, 12*inch, 5*foot))},
	{"braces.kind", "pipe", "", either("pipe", "line")},

	{"site", "{soil: soft}", "", inner},
	{"site.route", "[{straight: 12 ft}, {left: 30 deg, radius: 25 ft}, {straight: rest}]", "[{straight: 4 m}, {left: 30 deg, radius: 8 m}, {straight: rest}]", inner},
	{"site.route[]", "{straight: 12 ft}", "{straight: 4 m}", inner},
	{"site.route[].straight", "12 ft", "4 m", straights.rule()},
	{"site.route[].left", "30 deg", "", within(angles, 0.5*degree, 360*degree)},
	{"site.route[].right", "30 deg", "", within(angles, 0.5*degree, 360*degree)},
	{"site.route[].radius", "25 ft", "8 m", within(lengths, 3*foot, 10_000*foot)},
	{"site.start", "{at: [20 ft, 6 ft], heading: 0 deg}", "{at: [6 m, 2 m], heading: 0 deg}", inner},
	{"site.start.at", "[20 ft, 6 ft]", "[6 m, 2 m]", place},
	{"site.start.from", "{gate post: 31 ft 4 in, porch post: 40 ft 2 in}", "{gate post: 9.55 m, porch post: 12.25 m}", marksTaped},
	{"site.start.from.*", "31 ft 4 in", "9.55 m", tapes.rule()},
	{"site.start.side", "left", "", oneOf(Left, Right)},
	{"site.start.heading", "90 deg", "", within(angles, -360*degree, 360*degree)},
	{"site.start.toward", "{from: {gate post: 62 ft 8 in, porch post: 58 ft 1 in}, side: left}", "{from: {gate post: 19.1 m, porch post: 17.7 m}, side: left}", inner},
	{"site.start.toward.at", "[20 ft, 36 ft]", "[6 m, 11 m]", place},
	{"site.start.toward.from", "{gate post: 62 ft 8 in, porch post: 58 ft 1 in}", "{gate post: 19.1 m, porch post: 17.7 m}", marksTaped},
	{"site.start.toward.from.*", "62 ft 8 in", "19.1 m", tapes.rule()},
	{"site.start.toward.side", "left", "", oneOf(Left, Right)},
	{"site.marks[]", "{name: gate post, at: [0 ft, 0 ft]}", "{name: gate post, at: [0 m, 0 m]}", inner},
	{"site.marks[].name", "gate post", "", must(text(longestName))},
	{"site.marks[].at", "[31 ft, 2 ft]", "[9.5 m, 600 mm]", place},
	{"site.marks[].from", "{gate post: 31 ft 4 in, porch post: 40 ft 2 in}", "{gate post: 9.55 m, porch post: 12.25 m}", marksTaped},
	{"site.marks[].from.*", "31 ft 4 in", "9.55 m", tapes.rule()},
	{"site.marks[].side", "left", "", oneOf(Left, Right)},
	{"site.levels[]", "{arch: 1, left: 0 in, right: 2 in}", "{arch: 1, left: 0 mm, right: 50 mm}", inner},
	{"site.levels[].arch", "last", "", must(archNumber)},
	{"site.levels[].left", "-3 in", "-80 mm", must(within(lengths, -100*foot, 100*foot))},
	{"site.levels[].right", "2 in", "50 mm", must(within(lengths, -100*foot, 100*foot))},
	{"site.soil", "soft", "", oneOf(Firm, Soft, Sandy, Frozen, SoilUnknown)},
	{"site.exposure", "suburban", "", oneOf(Open, Shore, Suburban, Sheltered, Hilltop, WindGap)},
	{"site.features[]", "{name: flower bed, at: [25 ft, 24 ft], radius: 4 ft}", "{name: flower bed, at: [8 m, 7 m], radius: 1.2 m}", inner},
	{"site.features[].name", "flower bed", "", must(text(longestName))},
	{"site.features[].outline", "[[10 ft, 2 ft], [30 ft, 2 ft], [30 ft, 5 ft]]", "[[3 m, 1 m], [9 m, 1 m], [9 m, 2 m]]", pointsOf(3)},
	{"site.features[].outline[]", "[10 ft, 2 ft]", "[3 m, 1 m]", place},
	{"site.features[].at", "[25 ft, 24 ft]", "[8 m, 7 m]", place},
	{"site.features[].radius", "4 ft", "1.2 m", within(lengths, 1*inch, 1000*foot)},
	{"site.features[].hard", "true", "", yes},
	{"site.features[].height", "30 in", "800 mm", within(lengths, 0, 100*foot)},
	{"site.buried[]", "{name: water line, line: [[0 ft, 14 ft], [40 ft, 19 ft]]}", "{name: water line, line: [[0 m, 4 m], [12 m, 6 m]]}", inner},
	{"site.buried[].name", "water line", "", must(text(longestName))},
	{"site.buried[].line", "[[0 ft, 14 ft], [40 ft, 19 ft]]", "[[0 m, 4 m], [12 m, 6 m]]", must(pointsOf(2))},
	{"site.buried[].line[]", "[0 ft, 14 ft]", "[0 m, 4 m]", place},
	{"site.buried[].keep", "24 in", "600 mm", within(lengths, 0, 100*foot)},
	{"site.buried[].marked by", "owner", "", text(longestText)},
	{"site.overhead[]", "{name: service drop, line: [[0 ft, -6 ft], [40 ft, -4 ft]], height: 13 ft}", "{name: service drop, line: [[0 m, -2 m], [12 m, -1 m]], height: 4 m}", inner},
	{"site.overhead[].name", "service drop", "", must(text(longestName))},
	{"site.overhead[].line", "[[0 ft, -6 ft], [40 ft, -4 ft]]", "[[0 m, -2 m], [12 m, -1 m]]", must(pointsOf(2))},
	{"site.overhead[].line[]", "[0 ft, -6 ft]", "[0 m, -2 m]", place},
	{"site.overhead[].height", "13 ft", "4 m", must(within(lengths, 3*foot, 200*foot))},
	{"site.overhead[].keep", "10 ft", "3 m", within(lengths, 0, 100*foot)},
	{"site.outlets[]", "{name: porch, at: [2 ft, 4 ft], circuit: porch}", "{name: porch, at: [1 m, 1.2 m], circuit: porch}", inner},
	{"site.outlets[].name", "porch", "", must(text(longestName))},
	{"site.outlets[].at", "[2 ft, 4 ft]", "[1 m, 1.2 m]", place},
	{"site.outlets[].from", "{gate post: 12 ft 4 in, porch post: 18 ft}", "{gate post: 3.8 m, porch post: 5.5 m}", marksTaped},
	{"site.outlets[].from.*", "12 ft 4 in", "3.8 m", tapes.rule()},
	{"site.outlets[].side", "right", "", oneOf(Left, Right)},
	{"site.outlets[].from start", "{left: 12 ft, behind: 6 ft}", "{left: 3.6 m, behind: 1.8 m}", inner},
	{"site.outlets[].from start.left", "12 ft", "3.6 m", within(lengths, 0, 10_000*foot)},
	{"site.outlets[].from start.right", "12 ft", "3.6 m", within(lengths, 0, 10_000*foot)},
	{"site.outlets[].from start.ahead", "6 ft", "1.8 m", within(lengths, 0, 10_000*foot)},
	{"site.outlets[].from start.behind", "6 ft", "1.8 m", within(lengths, 0, 10_000*foot)},
	{"site.outlets[].circuit", "porch", "", must(told("the name of a circuit of this spec"))},
	{"site.outlets[].sockets", "2", "", count(1, mostSockets)},
	{"site.outlets[].timer", "15 A", "", within(currents, 1, 100)},
	{"site.outlets[].reset at", "inside the side door", "", text(longestText)},
	{"site.outlets[].also feeds", "gate lamp", "", text(longestText)},
	{"site.cords", "{keep off: [flower bed], crossing: overhead}", "", inner},
	{"site.cords.keep off", "[flower bed]", "", told("names of features of this spec")},
	{"site.cords.crossing", "overhead", "", oneOf(CrossSeldom, CrossOverhead, CrossCovered)},
	{"site.north", "40 deg", "", within(angles, -360*degree, 360*degree)},
	{"site.place", "[44.05, -121.31]", "", latLong},
	{"site.clock", "UTC-8", "UTC+1", aheadOfUTC},
	{"site.places[]", "{name: side door, at: [2 ft, 3 ft], for: power off}", "{name: side door, at: [600 mm, 900 mm], for: power off}", inner},
	{"site.places[].name", "side door", "", must(text(longestName))},
	{"site.places[].at", "[2 ft, 3 ft]", "[600 mm, 900 mm]", place},
	{"site.places[].from", "{gate post: 12 ft 4 in, porch post: 18 ft}", "{gate post: 3.8 m, porch post: 5.5 m}", marksTaped},
	{"site.places[].from.*", "12 ft 4 in", "3.8 m", tapes.rule()},
	{"site.places[].side", "right", "", oneOf(Left, Right)},
	{"site.places[].for", "power off", "", text(longestName)},
	{"site.address", "14 Quince Lane", "", text(longestText)},
	{"site.emergency", "911", "112", text(longestText)},
	{"site.unknown", "[buried lines, gfci]", "", inner},
	{"site.unknown[]", "buried lines", "", oneOf(BuriedLines, OverheadLines, OutletsGFCI, BreakerAmps)},

	{"lights", "{wraps: [{where: legs, string: mini led 100 warm}]}", "", inner},
	{"lights.wraps[]", "{where: [legs, ridge], string: mini led 100 warm}", "", inner},
	{"lights.wraps[].where", "legs above 3 ft", "legs above 1 m", must(placed)},
	{"lights.wraps[].string", "mini led 100 warm", "", must(lightString)},
	{"lights.wraps[].pitch", "3 in", "80 mm", within(lengths, 0.25*inch, 3*foot)},
	{"lights.wraps[].count", "1", "", count(1, mostStrings)},
	{"lights.wraps[].plug", "foot", "", choice([]Plug{PlugFoot, PlugCrown, PlugOpen}, "foot", "crown", "open")},
	{"lights.rows", "{first: 12 in, step: 12 in, up to: 6 ft, strings: [mini led 100 warm]}", "{first: 300 mm, step: 300 mm, up to: 1.8 m, strings: [mini led 100 warm]}", inner},
	{"lights.rows.first", "12 in", "300 mm", must(within(lengths, 1*inch, 60*foot))},
	{"lights.rows.step", "12 in", "300 mm", must(within(lengths, 2*inch, 10*foot))},
	{"lights.rows.up to", "6 ft", "1.8 m", must(within(lengths, 1*inch, 60*foot))},
	{"lights.rows.strings", "[mini led 100 warm]", "", must(lightStrings)},
	{"lights.rows.walls", "both", "", walls},
	{"lights.rows.start", "front", "", either("front", "back")},
	{"lights.rows.sag", "1 in", "25 mm", within(lengths, 0, 2*foot)},
	{"lights.rows.gaps[]", "{wall: left, bays: [4]}", "", inner},
	{"lights.rows.gaps[].wall", "left", "", must(oneOf(Left, Right))},
	{"lights.rows.gaps[].bays", "[4]", "", must(setOf(bayNumbers))},
	{"lights.drops[]", "{where: ridge, string: mini led 100 warm, hang: 10 in}", "{where: ridge, string: mini led 100 warm, hang: 250 mm}", inner},
	{"lights.drops[].where", "ridge", "", must(placed)},
	{"lights.drops[].string", "mini led 100 warm", "", must(lightString)},
	{"lights.drops[].hang", "10 in", "250 mm", within(lengths, 0, 10*foot)},
	{"lights.drops[].lap", "6 in", "150 mm", within(lengths, 0, 40*foot)},
	{"lights.strings", "{porch set: {length: 20 ft, bulbs: 70, watts: 4.8 W}}", "{porch set: {length: 6 m, bulbs: 70, watts: 4.8 W}}", inner},
	{"lights.strings.*", "{length: 20 ft, bulbs: 70, watts: 4.8 W}", "{length: 6 m, bulbs: 70, watts: 4.8 W}", inner},
	{"lights.strings.*.length", "20 ft", "6 m", must(within(lengths, 6*inch, 300*foot))},
	{"lights.strings.*.lead", "1 ft", "300 mm", within(lengths, 0, 50*foot)},
	{"lights.strings.*.tail", "3 in", "80 mm", within(lengths, 0, 50*foot)},
	{"lights.strings.*.bulbs", "70", "", must(count(1, mostBulbs))},
	{"lights.strings.*.watts", "4.8 W", "", must(within(powers, 0.1, 2000))},
	{"lights.strings.*.amps", "0.04 A", "", within(currents, 0.001, 20)},
	{"lights.strings.*.kind", "led", "", choice([]catalog.Lamp{catalog.LED, catalog.Incandescent}, "led", "incandescent")},
	{"lights.strings.*.volts", "120 V", "230 V", within(voltages, 3, 250)},
	{"lights.strings.*.supply", "{watts: 24 W, sockets: 4}", "", inner},
	{"lights.strings.*.supply.watts", "24 W", "", must(within(powers, 1, 2000))},
	{"lights.strings.*.supply.sockets", "4", "", must(count(1, mostSockets))},
	{"lights.strings.*.weight", "0.5 lb", "0.25 kg", told(measure.Name(stringMasses.low) + ", or " + measure.Name(wireMasses.low))},
	{"lights.strings.*.wire", "0.15 in", "4 mm", within(lengths, 0.02*inch, 1*inch)},
	{"lights.strings.*.gauge", "22 AWG", "0.5 mm2", within(areas, 0.05, 10)},
	{"lights.strings.*.colour", "warm white", "", text(longestName)},
	{"lights.strings.*.drop", "10 in", "250 mm", within(lengths, 0, 10*foot)},
	{"lights.strings.*.back socket", "true", "", yes},
	{"lights.strings.*.most in a chain", "25", "", count(1, mostChained)},
	{"lights.strings.*.most watts", "210 W", "400 W", within(powers, 1, 5000)},
	{"lights.strings.*.fuse", "3 A", "", within(currents, 0.5, 13)},

	{"power", "{circuits: {porch: {volts: 120 V, breaker: 15 A, gfci: true}}}", "{circuits: {porch: {volts: 230 V, breaker: 16 A, gfci: true}}}", inner},
	{"power.circuits", "{porch: {volts: 120 V, breaker: 15 A, gfci: true}}", "{porch: {volts: 230 V, breaker: 16 A, gfci: true}}", inner},
	{"power.circuits.*", "{volts: 120 V, breaker: 15 A, gfci: true}", "{volts: 230 V, breaker: 16 A, gfci: true}", inner},
	{"power.circuits.*.volts", "120 V", "230 V", must(within(voltages, 12, 250))},
	{"power.circuits.*.breaker", "15 A", "16 A", must(within(currents, 1, 100))},
	{"power.circuits.*.gfci", "true", "", yes},
	{"power.circuits.*.other load", "2 A", "", within(currents, 0, 100)},
	{"power.circuits.*.breaker no", "12", "F3", text(longestName)},
	{"power.continuous", "80 %", "", within(shares, 0.10, 1)},
	{"power.split", "every other", "", oneOf(SplitNone, SplitWalls, SplitArches)},
	{"power.together", "4", "", count(1, mostChained)},
	{"power.cords", "[{gauge: 16 AWG, length: 50 ft, sockets: 9, apart: 5 ft, price: 30}]", "[{gauge: 1.5 mm2, length: 15 m, sockets: 6, apart: 2 m, price: 40}]", inner},
	{"power.cords[]", "{gauge: 16 AWG, length: 50 ft, sockets: 9, apart: 5 ft}", "{gauge: 1.5 mm2, length: 15 m, sockets: 6, apart: 2 m}", inner},
	{"power.cords[].gauge", "16 AWG", "1.5 mm2", must(cord)},
	{"power.cords[].length", "50 ft", "15 m", must(within(lengths, 1*inch, 300*foot))},
	{"power.cords[].sockets", "9", "6", must(count(2, mostInlineSockets))},
	{"power.cords[].apart", "5 ft", "2 m", must(within(lengths, 0, 30*foot))},
	{"power.cords[].price", "30", "", price},
	{"power.taps[]", "{sockets: 3, price: 6.50}", "", inner},
	{"power.taps[].sockets", "3", "", must(count(2, mostTapSockets))},
	{"power.taps[].price", "6.50", "", price},
	{"power.timers", "{amps: 15 A, sockets: 2, price: 22}", "{amps: 16 A, sockets: 1, price: 18}", inner},
	{"power.timers.amps", "15 A", "16 A", within(currents, 1, 100)},
	{"power.timers.sockets", "2", "", count(1, mostTapSockets)},
	{"power.timers.price", "22", "", price},
	{"power.evenings", "{hours: 5, nights: 35, price: 0.16}", "", inner},
	{"power.evenings.hours", "5", "", number(0.5, 24)},
	{"power.evenings.nights", "35", "", count(1, mostNights)},
	{"power.evenings.price", "0.16", "", number(0, 1000)},

	{"weather", "{ice: 1/4 in, cold: 20 F}", "{ice: 6 mm, cold: -7 C}", inner},
	{"weather.ice", "1/4 in", "6 mm", within(lengths, 0, 3*inch)},
	{"weather.cold", "20 F", "-7 C", within(temperatures, -60, 50)},
	{"weather.stand", "35 mph", "55 km/h", within(speeds, 1*measure.MPH, 100*measure.MPH)},
	{"weather.inside", "20 mph", "32 km/h", within(speeds, 1*measure.MPH, 100*measure.MPH)},

	{"stock", "{sell: [{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}]}", "{sell: [{item: pvc-u pn16 25 mm, length: 4 m, price: 5.20}]}", inner},
	{"stock.sell[]", "{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}", "{item: pvc-u pn16 25 mm, length: 4 m, price: 5.20}", inner},
	{"stock.sell[].item", "pvc sch40 1/2 in", "pvc-u pn16 25 mm", must(item)},
	{"stock.sell[].length", "10 ft", "4 m", within(lengths, 1*inch, 300*foot)},
	{"stock.sell[].price", "4.35", "", price},
	{"stock.sell[].limit", "12", "", count(1, mostPieceCount)},
	{"stock.own[]", "{item: pvc sch40 1/2 in, length: 56 in, count: 2}", "{item: pvc-u pn16 25 mm, length: 1.4 m, count: 2}", inner},
	{"stock.own[].item", "pvc sch40 1/2 in", "pvc-u pn16 25 mm", must(item)},
	{"stock.own[].length", "56 in", "1.4 m", within(lengths, 1*inch, 300*foot)},
	{"stock.own[].count", "2", "", must(count(0, mostPieceCount))},
	{"stock.own[].dead", "0", "", count(0, mostPieceCount)},
	{"stock.kerf", "1/8 in", "3 mm", within(lengths, 0, 1*inch)},
	{"stock.trim", "1/4 in", "5 mm", within(lengths, 0, 12*inch)},
	{"stock.spares", "5 %", "", within(shares, 0, 1)},

	{"store", "wrapped", "", oneOf(Stripped, Wrapped)},
	{"found", "{crown: {1: 95 in, 6: 94 1/2 in}}", "{crown: {1: 2.4 m, 6: 2.39 m}}", inner},
	{"found.after", "trial", "", either("season", "trial")},
	{"found.crown", "{1: 95 in, 6: 94 1/2 in}", "{1: 2.4 m, 6: 2.39 m}", inner},
	{"found.crown.*", "95 in", "2.4 m", heights.rule()},
	{"found.span", "{1: 85 in}", "{1: 2.31 m}", inner},
	{"found.span.*", "85 in", "2.31 m", spans.rule()},
	{"found.wrapped", "true", "", yes},

	{"crew", "{helpers: 5, start: 09:00}", "", inner},
	{"crew.helpers", "5", "", count(0, mostHelpers)},
	{"crew.young", "2", "", count(0, mostHelpers)},
	{"crew.date", "2026-11-21", "", day},
	{"crew.days[]", "{from: 18:30, until: 21:00, work: [cutting, wrapping]}", "", inner},
	{"crew.days[].date", "2026-11-19", "", day},
	{"crew.days[].from", "18:30", "", clock},
	{"crew.days[].until", "21:00", "", clock},
	{"crew.days[].work", "[cutting, wrapping]", "", inner},
	{"crew.days[].work[]", "wrapping", "", choice(dayWorks(), dayWorks()...)},
	{"crew.tools", "{ladders: 2, trestles: 8}", "", inner},
	{"crew.tools.ladders", "2", "", count(1, mostHelpers)},
	{"crew.tools.trestles", "8", "", count(1, mostHelpers)},
	{"crew.tools.tapes", "3", "", count(1, mostHelpers)},
	{"crew.tools.sledges", "2", "", count(1, mostHelpers)},
	{"crew.ask", "{name: A. Reed, phone: 555 0100}", "", inner},
	{"crew.ask.name", "A. Reed", "", text(longestName)},
	{"crew.ask.phone", "555 0100", "", text(longestName)},
	{"crew.start", "09:00", "", clock},
	{"crew.rates", "{wrap: 15, raise: 12}", "", inner},
	{"crew.rates.stake", "8", "", number(0.1, mostMinutes)},
	{"crew.rates.cut", "3", "", number(0.1, mostMinutes)},
	{"crew.rates.wrap", "15", "", number(0.1, mostMinutes)},
	{"crew.rates.raise", "15", "", number(0.1, mostMinutes)},
	{"crew.rates.ridge", "6", "", number(0.1, mostMinutes)},
	{"crew.rates.row", "8", "", number(0.1, mostMinutes)},
	{"crew.rates.drop", "3", "", number(0.1, mostMinutes)},
	{"crew.rates.guy", "12", "", number(0.1, mostMinutes)},
	{"crew.rates.cord", "10", "", number(0.1, mostMinutes)},
})

var marksTaped = told("two or more marks, or the stakes L1 and R1, each with its tape")

// withLists puts a row for its list before each item that has none.
func withLists(rows []key) (list []key) {
	for _, k := range rows {
		above, item := strings.CutSuffix(k.path, "[]")
		if item && list[len(list)-1].path != above {
			of := key{path: above, example: "[" + k.example + "]"}
			if k.inMetric != "" {
				of.inMetric = "[" + k.inMetric + "]"
			}
			list = append(list, of)
		}
		list = append(list, k)
	}
	return list
}

// rows finds a key's row by its path, children lists the names of the keys right under each path, in the order of the format.
var (
	rows     = map[string]key{}
	children = map[string][]string{}
)

// The rules look up the rows that they stand in, so Go wants them found after all else.
func init() {
	for _, k := range keys {
		rows[k.path] = k
		parent, name := "", k.path
		if dot := strings.LastIndexByte(k.path, '.'); dot >= 0 {
			parent, name = k.path[:dot], k.path[dot+1:]
		}
		if !strings.HasSuffix(name, "[]") {
			children[parent] = append(children[parent], name)
		}
	}
	ofArch := slices.DeleteFunc(slices.Clone(children["arch"]), func(name string) bool { return name == "except" })
	children[exception] = append(children[exception], ofArch...)
}

// sameAs are the sections that take the keys of another.
var sameAs = map[string]string{"guys.stake": "arch.stake", "ridge.pipe": "arch.pipe"}

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
