package spec

import (
	"cmp"
	"slices"

	"hoopwright/layout/catalog"
)

func (r *reader) readPower(top mapping) {
	m, _ := top.section("power")
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
	p.Inline = listOf(m, "cords", func(item mapping, x *catalog.Inline) bool {
		x.Source = "the spec"
		if item.good["length"] && item.good["sockets"] && item.good["apart"] && x.Lead() <= 0 {
			item.fail("has no lead: its sockets alone take %s of its %s", m.spec.Units.Written(x.Length-x.Lead()), m.spec.Units.Written(x.Length))
		}
		return item.good["gauge"]
	})
	p.Taps = listOf[Tap](m, "taps", nil)
	slices.SortStableFunc(p.Taps, func(a, b Tap) int { return cmp.Compare(b.Sockets, a.Sockets) })
}
