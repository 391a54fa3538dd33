package spec

// mostCircuits of one spec, and mostNights of one season.
const (
	mostCircuits = 200
	mostNights   = 366
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
	if i, ok := m.word("split", "none", "left and right"); ok {
		p.Split = i == 1
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
