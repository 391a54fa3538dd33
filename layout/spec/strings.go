package spec

import (
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// mostBulbs of one string, and mostChained strings end to end.
const (
	mostBulbs   = 2000
	mostChained = 500
)

// readStrings reads the strings of the spec's own, as their labels describe them, and fills in what they do not say.
func (r *reader) readStrings(lights mapping) {
	f, ok := lights.value("strings")
	if !ok {
		return
	}
	for _, p := range f.named() {
		m, ok := p.value.mapping()
		if !ok {
			continue
		}
		s := catalog.String{Name: p.name, Source: "the spec, from its label"}
		before := len(r.errors)
		m.label(&s)
		if len(r.errors) == before {
			r.fillString(m.path, &s)
		}
		r.spec.Lights.Strings = append(r.spec.Lights.Strings, s)
	}
}

// label reads what the label says.
func (m mapping) label(s *catalog.String) {
	m.require("length", "bulbs", "watts")
	length := quantity(m, "length", &s.Length, stringSize)
	quantity(m, "lead", &s.Lead, leads)
	quantity(m, "tail", &s.Tail, leads)
	if length && s.Lead+s.Tail >= s.Length {
		m.fail("lead and tail leave nothing of its %s lit", m.spec.Units.Written(s.Length))
	}
	m.count("bulbs", &s.Bulbs, 1, mostBulbs)
	quantity(m, "watts", &s.Watts, watts)
	quantity(m, "amps", &s.Amps, amps)
	if i, ok := m.word("kind", "led", "incandescent"); ok {
		s.Lamp = catalog.Lamp(i)
	}
	quantity(m, "volts", &s.Volts, lampVolts)
	if supply, ok := m.section("supply"); ok {
		supply.require("watts", "sockets")
		s.Supply = &catalog.Supply{}
		quantity(supply, "watts", &s.Supply.Watts, supplies)
		supply.count("sockets", &s.Supply.Sockets, 1, mostSockets)
		if !m.has("volts") {
			m.missing("volts", "; a supply has a voltage of its own")
		}
	}
	m.weight(s)
	quantity(m, "wire", &s.Wire, wires)
	quantity(m, "gauge", &s.Gauge, gauges)
	m.name("colour", &s.Colour)
	quantity(m, "drop", &s.Drop, stringDrops)
	m.yes("back socket", &s.BackSocket)
	m.count("most in a chain", &s.MostChain, 1, mostChained)
	quantity(m, "most watts", &s.MostWatts, mostWatts)
	quantity(m, "fuse", &s.Fuse, fuses)
}

// weight reads the weight of the whole string, or its weight per length.
func (m mapping) weight(s *catalog.String) {
	f, ok := m.value("weight")
	if !ok {
		return
	}
	if strings.Contains(f.node.Value, "/") {
		if _, err := measure.ParseMass(f.node.Value); err != nil { // not 1/2 lb
			quantity(m, "weight", &s.Mass, wireMasses)
			return
		}
	}
	defer f.takes("%s, or %s", measure.Name(stringMasses.low), measure.Name(wireMasses.low))
	if mass, ok := stringMasses.of(f); ok && s.Length > 0 {
		s.Mass = measure.LineMass(float64(mass) / s.Length.Metres())
	}
}
