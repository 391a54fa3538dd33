package spec

// readFeatures reads what stands or lies on the ground and returns the names.
func (r *reader) readFeatures(site mapping) names {
	seen := names{of: "features"}
	for _, m := range site.mappings("features") {
		var x Feature
		m.nameOf(&x.Name, &seen)
		switch {
		case m.has("outline") == (m.has("at") || m.has("radius")):
			m.fail("a feature has an outline, or a centre at and a radius, one of the two")
		case m.has("outline"):
			x.Outline = m.points("outline", 3)
		default:
			m.require("at", "radius")
			m.point("at", &x.At)
			quantity(m, "radius", &x.Radius, circles)
		}
		m.yes("hard", &x.Hard)
		quantity(m, "height", &x.Height, obstacles)
		r.spec.Site.Features = append(r.spec.Site.Features, x)
	}
	return seen
}

// nameOf reads the required name of an item and notes it.
func (m mapping) nameOf(into *string, seen *names) {
	m.require("name")
	if f, ok := m.value("name"); ok && m.name("name", into) {
		seen.add(f, *into)
	}
}

// readSitePlaces reads the places that people may have to find.
func (r *reader) readSitePlaces(site mapping) {
	seen := names{of: "places"}
	for _, m := range site.mappings("places") {
		var p SitePlace
		m.nameOf(&p.Name, &seen)
		m.located(&p.At, &p.Fix, "")
		m.name("for", &p.For)
		r.spec.Site.Places = append(r.spec.Site.Places, p)
	}
}

// readBuried reads the lines in the ground.
func (r *reader) readBuried(site mapping) {
	seen := names{of: "buried lines"}
	for _, m := range site.mappings("buried") {
		var b Buried
		m.require("line")
		m.nameOf(&b.Name, &seen)
		b.Line = m.points("line", 2)
		quantity(m, "keep", &b.Keep, keeps)
		m.text("marked by", &b.MarkedBy)
		r.spec.Site.Buried = append(r.spec.Site.Buried, b)
	}
}

// readOverhead reads the wires and branches above.
func (r *reader) readOverhead(site mapping) {
	seen := names{of: "overhead lines"}
	for _, m := range site.mappings("overhead") {
		var o Overhead
		m.require("line", "height")
		m.nameOf(&o.Name, &seen)
		o.Line = m.points("line", 2)
		quantity(m, "height", &o.Height, wireHeights)
		quantity(m, "keep", &o.Keep, keeps)
		r.spec.Site.Overhead = append(r.spec.Site.Overhead, o)
	}
}

// mostSockets that one outlet has.
const mostSockets = 24

// readOutlets reads where power can be had. The circuits are known by now.
func (r *reader) readOutlets(site mapping) {
	seen := names{of: "outlets"}
	for _, m := range site.mappings("outlets") {
		var o Outlet
		m.nameOf(&o.Name, &seen)
		m.require("circuit")
		m.located(&o.At, &o.Fix, "")
		if f, ok := m.value("circuit"); ok && m.name("circuit", &o.Circuit) {
			known := namesOf(r.spec.Power.Circuits, func(c Circuit) string { return c.Name })
			if !r.spec.Given("power.circuits") || len(known) > 0 { // else what is wrong there is told already
				f.oneOf("circuit", o.Circuit, known)
			}
		}
		m.count("sockets", &o.Sockets, 1, mostSockets)
		quantity(m, "timer", &o.Timer, timers)
		m.text("reset at", &o.ResetAt)
		m.text("also feeds", &o.AlsoFeeds)
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
	if i, ok := m.word("crossing", "overhead", "cover"); ok {
		c.Cover = i == 1
	}
}
