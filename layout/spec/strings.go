package spec

import (
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
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

func (m mapping) label(s *catalog.String) {
	m.all(s)
	if m.good["length"] && s.Lead+s.Tail >= s.Length {
		m.fail("lead and tail leave nothing of its %s lit", m.spec.Units.Written(s.Length))
	}
	if s.Supply != nil && !m.has("volts") {
		m.missing("volts", "; a supply has a voltage of its own")
	}
	m.weigh(s)
}

// weigh reads the weight of a string whose length is known by now.
func (m mapping) weigh(s *catalog.String) {
	f, ok := m.value("weight")
	if !ok {
		return
	}
	_, err := measure.Parse[measure.Mass](f.node.Value)
	if each := strings.Contains(f.node.Value, "/") && err != nil; each { // not 1/2 lb
		if mass, ok := wireMasses.of(f); ok {
			s.Mass = mass
		}
	} else if mass, ok := stringMasses.of(f); ok && s.Length > 0 {
		s.Mass = measure.LineMass(float64(mass) / s.Length.Metres())
	}
}
