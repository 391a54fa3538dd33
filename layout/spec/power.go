package spec

import (
	"cmp"
	"slices"

	"hoopwright/layout/catalog"
)

// readPower reads the circuits and how they are used.
func (r *reader) readPower(top mapping) {
	m, ok := top.section("power")
	if !ok {
		return
	}
	p := &r.spec.Power
	m.all(p)
	if f, ok := m.value("circuits"); ok {
		circuits := f.named()
		if len(circuits) > mostCircuits {
			f.fail("names %d circuits, more than %d", len(circuits), mostCircuits)
			circuits = nil
		}
		for _, c := range circuits {
			if opened, ok := c.value.mapping(); ok {
				own := Circuit{Name: c.name}
				opened.all(&own)
				p.Circuits = append(p.Circuits, own)
			}
		}
	}
	for _, item := range m.mappings("cords") {
		x := catalog.Inline{Source: "the spec"}
		item.all(&x)
		switch {
		case item.good["length"] && item.good["sockets"] && item.good["apart"] && x.Lead() <= 0:
			item.fail("has no lead: its sockets alone take %s of its %s", m.spec.Units.Written(x.Length-x.Lead()), m.spec.Units.Written(x.Length))
		case item.good["gauge"]:
			p.Inline = append(p.Inline, x)
		}
	}
	for _, item := range m.mappings("taps") {
		var x Tap
		item.all(&x)
		p.Taps = append(p.Taps, x)
	}
	slices.SortStableFunc(p.Taps, func(a, b Tap) int { return cmp.Compare(b.Sockets, a.Sockets) })
}
