package spec

import (
	"strconv"
	"time"

	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/sun"
)

func (r *reader) readSite(top mapping) {
	m, _ := top.section("site")
	m.all(&r.spec.Site)
	r.readRoute(m)
	r.readMarks(m)
	r.readLevels(m)
	r.readThings(m)
}

func (r *reader) readRoute(site mapping) {
	f, ok := site.value("route")
	if !ok {
		return
	}
	before := len(r.errors)
	units, length := r.spec.Units, r.spec.Tunnel.Length
	rest := false
	var long measure.Length
	for _, m := range site.mappings("route") {
		leg, ok := m.leg()
		if !ok {
			continue
		}
		if leg.Rest && rest {
			m.failWith(exampleOf("site.route[]", units), "takes the rest, which an earlier leg takes already")
		}
		rest = rest || leg.Rest
		long += leg.Length()
		r.spec.Site.Route = append(r.spec.Site.Route, leg)
	}
	switch {
	case len(r.errors) > before:
	case len(r.spec.Site.Route) == 0:
		f.fail("lists no leg; leave the key out for one straight")
	case !rest && long < length-bayTolerance:
		f.failWith("{straight: rest}", "the route is %s long and the tunnel %s; %s are missing",
			units.Tape(long), units.Tape(length), units.Tape(length-long))
	}
}

// Length returns how far the leg goes along the centreline; zero for one that takes the rest.
func (l Leg) Length() measure.Length {
	return l.Straight + l.Radius*measure.Length(measure.Abs(l.Turn))
}

// leg reads a straight, or a bend to the left or the right.
func (m mapping) leg() (Leg, bool) {
	kinds, _ := m.among("straight", "left", "right")
	if len(kinds) != 1 {
		m.fail("a leg is one of straight, left and right")
		return Leg{}, false
	}
	if kinds[0] != "straight" {
		m.require("radius")
		var l Leg
		turn := m.read(kinds[0], &l.Turn)
		if kinds[0] == "left" {
			l.Turn = -l.Turn
		}
		return l, m.read("radius", &l.Radius) && turn
	}
	if m.has("radius") {
		m.failWith("{left: 30 deg, radius: 25 ft}", "a straight has no radius")
		return Leg{}, false
	}
	f, ok := m.value("straight")
	if !ok {
		return Leg{}, false
	}
	if f.node.Value == "rest" {
		return Leg{Rest: true}, true
	}
	l, ok := straights.of(f)
	return Leg{Straight: l}, ok
}

func (r *reader) readLevels(site mapping) {
	taken := map[int]bool{}
	r.spec.Site.Levels = listOf(site, "levels", func(m mapping, l *Level) bool {
		if f, ok := m.value("arch"); ok && taken[l.Arch] {
			f.fail("arch %d has its levels already; give each arch once", l.Arch)
		}
		taken[l.Arch] = m.good["arch"]
		return m.good["arch"] && m.good["left"] && m.good["right"]
	})
}

var archNumber = ruled(says("the number of an arch, or last"), func(f field) (int, bool) {
	word, ok := f.scalar()
	n, err := archNumbers(f.spec).number(word, word)
	if ok && err != "" {
		f.fail("%s", err)
	}
	return n, ok && err == ""
})

var latLong = ruled(says("latitude -90 to 90 and longitude -180 to 180, in degrees"), func(f field) (p LatLong, ok bool) {
	items, ok := f.list()
	if !ok {
		return p, false
	}
	if len(items) != 2 {
		f.fail("lists %s; latitude and longitude are wanted", say.Count(len(items), "number"))
		return p, false
	}
	lat := number(-90, 90).read(items[0], &p.Lat)
	return p, number(-180, 180).read(items[1], &p.Long) && lat
})

// aheadOfUTC is the rule of a clock: UTC, UTC+1, UTC-3:30. The zones in use lie between 12 hours behind and 14 ahead, in quarters of an hour.
var aheadOfUTC = ruled(says("UTC and the hours that watches are ahead of it on these days, summer time counted"), func(f field) (zone time.Location, ok bool) {
	word, ok := f.scalar()
	if !ok {
		return zone, false
	}
	m := fromUTC.FindStringSubmatch(word)
	if m == nil {
		f.fail("is `%s`; UTC and the hours ahead of it are wanted", word)
		return zone, false
	}
	hours, _ := strconv.Atoi(m[1])
	minutes, _ := strconv.Atoi(m[2])
	if hours < 0 {
		minutes = -minutes
	}
	return *sun.Ahead(time.Duration(hours)*time.Hour + time.Duration(minutes)*time.Minute), true
})

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
