package spec

// readThings reads what stands and lies on the ground, in it and above it. The circuits are known by now.
func (r *reader) readThings(site mapping) {
	s := &r.spec.Site
	var features names
	s.Features, features = namedList(site, "features", "features", mapping.feature)
	s.Buried, _ = namedList[Buried](site, "buried", "buried lines", nil)
	s.Overhead, _ = namedList[Overhead](site, "overhead", "overhead lines", nil)
	s.Outlets, _ = namedList(site, "outlets", "outlets", mapping.outlet)
	s.Places, _ = namedList(site, "places", "places", func(m mapping, p *SitePlace) { m.located(&p.At, &p.Fix, "") })
	cords, _ := site.section("cords")
	if f, ok := cords.value("keep off"); ok {
		for _, item := range f.texts() {
			if name, ok := item.text(longestName); ok && item.oneOf("feature", name, features.list) {
				s.Cords.KeepOff = append(s.Cords.KeepOff, name)
			}
		}
	}
	cords.read("crossing", &s.Cords.Crossing)
}

func (m mapping) feature(*Feature) {
	switch {
	case m.has("outline") == (m.has("at") || m.has("radius")):
		m.fail("a feature has an outline, or a centre at and a radius, one of the two")
	case !m.has("outline"):
		m.require("at", "radius")
	}
}

func (m mapping) outlet(o *Outlet) {
	m.located(&o.At, &o.Fix, "")
	if f, ok := m.value("circuit"); ok && text(longestName).read(f, &o.Circuit) {
		known := namesOf(m.spec.Power.Circuits, func(c Circuit) string { return c.Name })
		if !m.spec.Given("power.circuits") || len(known) > 0 { // else what is wrong there is told already
			f.oneOf("circuit", o.Circuit, known)
		}
	}
}
