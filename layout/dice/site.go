package dice

import (
	"fmt"
	"math"
	"strings"
)

// point throws a place in the yard.
func (d *dice) point() string { return d.spot(d.Float64()*500-50, d.Float64()*500-50) }

// spot writes a place in inches.
func (d *dice) spot(x, y float64) string {
	return fmt.Sprintf("[%s, %s]", d.inches(x, x), d.inches(y, y))
}

// Where the two marks stand that others are taped from, in inches.
const (
	postX, gateX = 0.0, 400.0
)

// taped writes a place by its tapes from the two marks.
func (d *dice) taped(x, y float64) string {
	side := "left"
	if y < 0 {
		side = "right"
	}
	post, gate := math.Hypot(x-postX, y), math.Hypot(x-gateX, y)
	return fmt.Sprintf("from: {post: %s, gate: %s}, side: %s", d.inches(post, post), d.inches(gate, gate), side)
}

// place writes a place in one of the ways that there are.
func (d *dice) place(marks bool) string {
	x, y := d.Float64()*500-50, d.Float64()*400+20
	if marks && d.chance(0.4) {
		return d.taped(x, y)
	}
	return "at: " + d.spot(x, y)
}

func (d *dice) site() string {
	if d.chance(0.08) {
		return ""
	}
	marks := d.chance(0.65)
	return list(d.route(), d.start(marks), d.marks(marks), d.levels(),
		d.maybe(0.6, "soil: ", d.one("firm", "soft", "sandy", "frozen")),
		d.maybe(0.4, "exposure: ", d.one("open", "shore", "suburban", "sheltered", "hilltop", "gap")),
		d.inTheWay(),
		d.bed(), "outlets: "+d.outlets(marks),
		d.maybe(0.2, "north: ", d.from(-90, 200), " deg"), d.maybe(0.3, "place: [44.05, -121.31]"), d.maybe(0.2, "clock: UTC-7"),
		d.maybe(0.3, "places: [{name: side door, "+d.place(marks)+", for: "+d.one("power off", "first aid", "water off", "bench", "the sledge")+"}]"),
		d.maybe(0.4, "address: 14 Quince Lane"), d.maybe(0.4, "emergency: 112"),
		d.maybe(0.15, "unknown: [", d.one("buried lines", "overhead lines", "gfci", "breaker", "buried lines, gfci"), "]"))
}

func (d *dice) route() string {
	if d.arches < 3 || d.chance(0.65) {
		return ""
	}
	bend := func() string {
		return fmt.Sprintf("{%s: %s deg, radius: %s}", d.one("left", "right"), d.from(8, 60), d.within(240, 480, 36, 900))
	}
	return "route: [{straight: " + d.exact(d.bay) + "}, " + bend() + d.maybe(0.3, ", {straight: "+d.exact(d.bay)+"}, ", bend()) + ", {straight: rest}]"
}

func (d *dice) start(marks bool) string {
	heading := d.maybe(0.7, "heading: ", fmt.Sprint(d.pick(0, 0, 0, 20, 90, 180, 315, -45)), " deg")
	x, y := 120+d.Float64()*200, 60+d.Float64()*120
	switch {
	case marks && d.chance(0.2):
		ahead := d.Float64() * math.Pi
		toward := d.taped(x+300*math.Cos(ahead), y+300*math.Sin(ahead))
		return "start: " + list(d.taped(x, y), d.one(heading, "toward: {"+toward+"}"))
	case d.chance(0.8):
		return "start: " + list("at: "+d.spot(x, y), heading)
	}
	return ""
}

func (d *dice) marks(marks bool) string {
	if !marks {
		return ""
	}
	more := []string{"{name: post, at: " + d.spot(postX, 0) + "}", "{name: gate, at: " + d.spot(gateX, 0) + "}"}
	for _, name := range []string{"lamp", "pear tree", "kiosk"}[:d.pick(0, 0, 1, 1, 1, 2, 3)] {
		more = append(more, "{name: "+name+", "+d.place(true)+"}")
	}
	return "marks: " + items(more...)
}

func (d *dice) levels() string {
	if d.arches == 1 || d.chance(0.7) {
		return ""
	}
	high := func() string { return "left: " + d.within(-2, 14, -60, 60) + ", right: " + d.within(-2, 14, -60, 60) }
	return "levels: [{arch: 1, " + high() + "}, {arch: last, " + high() + "}]"
}

// bed throws features, and whether cords keep off one.
func (d *dice) bed() string {
	crossing := d.maybe(0.7, "crossing: "+d.one("seldom", "overhead", "cover"))
	if d.chance(0.6) {
		return d.maybe(0.2, "cords: {"+crossing+"}")
	}
	rose := "{name: rose bed, at: " + d.point() + ", radius: " + d.within(12, 60, 1, 100) + d.maybe(0.4, ", height: "+d.within(10, 60, 0, 300)) + "}"
	patio := "{name: patio, outline: [" + d.point() + ", " + d.point() + ", " + d.point() + "]" + d.maybe(0.7, ", hard: true") + "}"
	return "features: " + items(rose, d.maybe(0.4, patio)) + d.maybe(0.3, ", cords: "+list("keep off: [rose bed]", crossing))
}

// inTheWay throws lines in the ground and overhead.
func (d *dice) inTheWay() string {
	return joined([]string{
		d.maybe(0.3,
			"buried: "+items("{name: water pipe, line: ["+d.point()+", "+d.point()+"]"+d.maybe(0.5, ", keep: "+d.within(12, 36, 0, 50))+d.maybe(0.4,
				", marked by: owner")+"}", d.maybe(0.3, "{name: gas, line: ["+d.point()+", "+d.point()+", "+d.point()+"]}"))),
		d.maybe(0.25, "overhead: [{name: service drop, line: ["+d.point()+", "+d.point()+"], height: "+d.within(144, 260, 36, 400)+d.maybe(0.5,
			", keep: "+d.within(60, 120, 0, 150))+"}]"),
	})
}

func (d *dice) outlets(marks bool) string {
	var list []string
	for i, name := range []string{"porch", "shed", "pump house", "kiosk wall"}[:d.pick(1, 2, 2, 2, 3, 4)] {
		at := d.place(marks)
		if d.chance(0.2) {
			at = "from start: {" + d.one("left", "right") + ": " + d.inches(60, 200) + ", " + d.one("ahead", "behind") + ": " + d.inches(0, 100) + "}"
		}
		list = append(list, "{name: "+name+", "+at+", circuit: "+d.one("a", "b", "abcd"[i:i+1])+d.maybe(0.3, ", sockets: ", d.from(1, 6))+d.maybe(0.2,
			", timer: ", d.one("2 A", "15 A"))+
			d.maybe(0.2, ", reset at: inside the side door")+d.maybe(0.2, ", also feeds: gate lamp")+"}")
	}
	return "[" + strings.Join(list, ", ") + "]"
}

func (d *dice) power() string {
	volts := d.one("120 V", "120 V", "120 V", "230 V")
	if d.metric {
		volts = d.one("230 V", "230 V", "230 V", "120 V")
	}
	if d.chance(0.05) {
		volts = d.one("24 V", "250 V", "12 V")
	}
	circuit := func(name string) string {
		return name + ": " + list("volts: "+volts, "breaker: "+d.one("15 A", "15 A", "16 A", "20 A", d.from(1, 40)+" A"), d.maybe(0.7, "gfci: ",
			d.one("true", "true", "false")), d.maybe(0.2, "other load: ", d.one("1 A", "3 A", d.from(0, 40)+" A")), d.maybe(0.4, "breaker no: ", d.one("12",
			"F3")))
	}
	circuits := "circuits: {" + circuit("a") + ", " + circuit("b") + ", " + circuit("c") + ", " + circuit("d") + "}"
	gauge, long := "16 AWG", d.exact(600)
	if d.metric {
		gauge = "1.5 mm2"
	}
	return list(circuits, d.maybe(0.1, "continuous: ", d.one("80 %", "100 %", "50 %")), d.maybe(0.4, "split: ", d.one("none", "left and right",
		"every other")), d.maybe(0.2, "together: ", d.from(1, 9)),
		d.maybe(0.15, "cords: [{gauge: ", gauge, ", length: ", long, ", sockets: ", d.from(2, 9), ", apart: ", d.inches(24, 60), d.maybe(0.5,
			", price: 30"), "}]"),
		d.maybe(0.15, "taps: [{sockets: ", d.from(2, 6), d.maybe(0.5, ", price: 6.50"), "}]"),
		d.maybe(0.15, "timers: ", list(d.maybe(0.5, "amps: 15 A"), d.maybe(0.5, "sockets: 2"), d.maybe(0.5, "price: 22"))),
		d.maybe(0.4, "evenings: ", list(d.maybe(0.7, "hours: ", d.from(2, 8)), d.maybe(0.7, "nights: ", d.from(1, 60)), d.maybe(0.7, "price: 0.16"))))
}
