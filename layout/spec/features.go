package spec

// readFeatures reads what stands or lies on the ground and returns the names.
func (r *reader) readFeatures(site mapping) names {
	seen := names{of: "features"}
	for _, m := range site.mappings("features") {
		var x Feature
		m.all(&x)
		m.named(x.Name, &seen)
		switch {
		case m.has("outline") == (m.has("at") || m.has("radius")):
			m.fail("a feature has an outline, or a centre at and a radius, one of the two")
		case !m.has("outline"):
			for _, key := range []string{"at", "radius"} {
				if !m.has(key) {
					m.missing(key, "")
				}
			}
		}
		r.spec.Site.Features = append(r.spec.Site.Features, x)
	}
	return seen
}

// named notes the name of an item, where it is given and right.
func (m mapping) named(name string, seen *names) {
	if f, ok := m.value("name"); ok && m.good["name"] {
		seen.add(f, name)
	}
}

// readSitePlaces reads the places that people may have to find.
func (r *reader) readSitePlaces(site mapping) {
	seen := names{of: "places"}
	for _, m := range site.mappings("places") {
		var p SitePlace
		m.all(&p)
		m.named(p.Name, &seen)
		m.located(&p.At, &p.Fix, "")
		r.spec.Site.Places = append(r.spec.Site.Places, p)
	}
}

// readBuried reads the lines in the ground.
func (r *reader) readBuried(site mapping) {
	seen := names{of: "buried lines"}
	for _, m := range site.mappings("buried") {
		var b Buried
		m.all(&b)
		m.named(b.Name, &seen)
		r.spec.Site.Buried = append(r.spec.Site.Buried, b)
	}
}

// readOverhead reads the wires and branches above.
func (r *reader) readOverhead(site mapping) {
	seen := names{of: "overhead lines"}
	for _, m := range site.mappings("overhead") {
		var o Overhead
		m.all(&o)
		m.named(o.Name, &seen)
		r.spec.Site.Overhead = append(r.spec.Site.Overhead, o)
	}
}

// readOutlets reads where power can be had. The circuits are known by now.
func (r *reader) readOutlets(site mapping) {
	seen := names{of: "outlets"}
	for _, m := range site.mappings("outlets") {
		var o Outlet
		m.all(&o)
		m.named(o.Name, &seen)
		m.located(&o.At, &o.Fix, "")
		if f, ok := m.value("circuit"); ok && text(longestName).read(f, &o.Circuit) {
			known := namesOf(r.spec.Power.Circuits, func(c Circuit) string { return c.Name })
			if !r.spec.Given("power.circuits") || len(known) > 0 { // else what is wrong there is told already
				f.oneOf("circuit", o.Circuit, known)
			}
		}
		r.spec.Site.Outlets = append(r.spec.Site.Outlets, o)
	}
}

// readCords reads where cords may lie.
func (r *reader) readCords(site mapping, features names) {
	m, ok := site.section("cords")
	if !ok {
		return
	}
	c := &r.spec.Site.Cords
	if f, ok := m.value("keep off"); ok {
		for _, item := range f.texts() {
			if name, ok := item.text(longestName); ok && item.oneOf("feature", name, features.list) {
				c.KeepOff = append(c.KeepOff, name)
			}
		}
	}
	m.read("crossing", &c.Cover)
}
