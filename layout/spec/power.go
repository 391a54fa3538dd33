package spec

import (
	"cmp"
	"slices"

	"hoopwright/layout/catalog"
)

// mostCircuits of one spec, mostNights of one season, mostInlineSockets of one cord, and mostTapSockets of one three-way or timer.
const (
	mostCircuits      = 200
	mostNights        = 366
	mostInlineSockets = 40
	mostTapSockets    = 6
)

// readPower reads the circuits and how they are used.
func (r *reader) readPower(top mapping) {
	m, ok := top.section("power")
	if !ok {
		return
	}
	p := &r.spec.Power
	if f, ok := m.value("circuits"); ok {
		circuits := f.named()
		if len(circuits) > mostCircuits {
			f.fail("names %d circuits, more than %d", len(circuits), mostCircuits)
			circuits = nil
		}
		for _, c := range circuits {
			if opened, ok := c.value.mapping(); ok {
				p.Circuits = append(p.Circuits, opened.circuit(c.name))
			}
		}
	}
	quantity(m, "continuous", &p.Continuous, continuous)
	if i, ok := m.word("split", "none", "left and right", "every other"); ok {
		p.Split = Split(i)
	}
	m.count("together", &p.Together, 1, mostChained)
	m.readInline(&p.Inline)
	for _, tap := range m.mappings("taps") {
		x := Tap{}
		tap.require("sockets")
		tap.count("sockets", &x.Sockets, 2, mostTapSockets)
		tap.price(&x.Price)
		p.Taps = append(p.Taps, x)
	}
	slices.SortStableFunc(p.Taps, func(a, b Tap) int { return cmp.Compare(b.Sockets, a.Sockets) })
	if timer, ok := m.section("timers"); ok {
		quantity(timer, "amps", &p.Timer.Amps, timers)
		timer.count("sockets", &p.Timer.Sockets, 1, mostTapSockets)
		timer.price(&p.Timer.Price)
	}
	p.Evenings = &Evenings{}
	if e, ok := m.section("evenings"); ok {
		e.number("hours", &p.Evenings.Hours, 0.5, 24)
		e.count("nights", &p.Evenings.Nights, 1, mostNights)
		e.number("price", &p.Evenings.Price, 0, 1000)
	}
}

// circuit reads one breaker's wiring.
func (m mapping) circuit(name string) Circuit {
	c := Circuit{Name: name}
	m.require("volts", "breaker")
	quantity(m, "volts", &c.Volts, circuitVolts)
	quantity(m, "breaker", &c.Breaker, breakers)
	m.yes("gfci", &c.GFCI)
	quantity(m, "other load", &c.OtherLoad, otherLoads)
	m.name("breaker no", &c.BreakerNo)
	return c
}

// readInline reads the cords with several sockets in line.
func (m mapping) readInline(into *[]catalog.Inline) {
	for _, item := range m.mappings("cords") {
		x := catalog.Inline{Source: "the spec"}
		item.require("gauge", "length", "sockets", "apart")
		length := quantity(item, "length", &x.Length, stockLengths)
		sockets := item.count("sockets", &x.Sockets, 2, mostInlineSockets)
		apart := quantity(item, "apart", &x.Apart, socketSteps)
		if length && sockets && apart && x.Lead() <= 0 {
			item.fail("has no lead: its sockets alone take %s of its %s", m.spec.Units.Written(x.Length-x.Lead()), m.spec.Units.Written(x.Length))
			continue
		}
		item.price(&x.Price)
		f, ok := item.value("gauge")
		if !ok {
			continue
		}
		name, ok := f.text(longestName)
		if !ok {
			continue
		}
		if x.Cord, ok = catalog.FindCord(name); !ok {
			f.unknownName("cord", name, namesOf(catalog.Cords(), func(c catalog.Cord) string { return c.Name }), "")
			continue
		}
		*into = append(*into, x)
	}
}

// price reads a price, nil where none is given.
func (m mapping) price(into **float64) {
	var price float64
	if m.number("price", &price, 0, dearest) {
		*into = &price
	}
}
