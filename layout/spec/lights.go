package spec

import (
	"math"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// mostStrings of one run, and mostRows of one wall.
const (
	mostStrings = 50
	mostRows    = 60
)

// readLights reads everything that glows. The strings of the spec's own come first: the others name them.
func (r *reader) readLights(top mapping) {
	m, ok := top.section("lights")
	if !ok {
		return
	}
	r.readStrings(m)
	r.readWraps(m)
	r.readRows(m)
	r.readDrops(m)
}

// readWraps reads the strings wound round pipe.
func (r *reader) readWraps(lights mapping) {
	for _, m := range lights.mappings("wraps") {
		m.require("where", "string")
		w := Wrap{Where: m.places("where")}
		m.lightString(&w.String)
		quantity(m, "pitch", &w.Pitch, pitches)
		m.count("count", &w.Count, 1, mostStrings)
		if m.has("pitch") && m.has("count") {
			m.fail("gives pitch and count; the one follows from the other, so leave one out")
		}
		if i, ok := m.word("plug", "foot", "crown", "open"); ok {
			w.Plug = Plug(i)
		}
		r.spec.Lights.Wraps = append(r.spec.Lights.Wraps, w)
	}
}

// readRows reads the rows along the walls.
func (r *reader) readRows(lights mapping) {
	m, ok := lights.section("rows")
	if !ok {
		return
	}
	w := &Rows{Walls: []Side{Left, Right}, Open: !m.has("start")}
	m.require("first", "step", "up to", "strings")
	first := quantity(m, "first", &w.First, rowTapes)
	step := quantity(m, "step", &w.Step, rowSteps)
	upTo := quantity(m, "up to", &w.UpTo, rowTapes)
	if f, ok := m.value("up to"); ok && first && step && upTo {
		switch n := math.Floor(float64((w.UpTo-w.First)/w.Step)+slack) + 1; {
		case w.UpTo < w.First:
			f.fail("lies below the first row at %s", r.spec.Units.Written(w.First))
		case n > mostRows:
			f.fail("makes %g rows a wall; at most %d can be planned", n, mostRows)
		}
	}
	if f, ok := m.value("strings"); ok {
		items := f.texts()
		if len(items) == 0 && len(f.node.Content) == 0 {
			f.fail("names no string")
		}
		for _, item := range items {
			if s, ok := item.lightString(); ok {
				w.Strings = append(w.Strings, s)
			}
		}
	}
	if i, ok := m.word("walls", "both", "left", "right"); ok && i > 0 {
		w.Walls = []Side{Side(i - 1)}
	}
	if i, ok := m.word("start", "front", "back"); ok {
		w.FromBack = i == 1
	}
	quantity(m, "sag", &w.Sag, sags)
	for _, gap := range m.mappings("gaps") {
		gap.require("wall", "bays")
		wall, okWall := gap.word("wall", "left", "right")
		bays, okBays := gap.set("bays", baySet(r.spec))
		if okWall && okBays {
			w.Gaps = append(w.Gaps, Gap{Side(wall), bays})
		}
	}
	r.spec.Lights.Rows = w
}

// readDrops reads the strings that hang below the pipe.
func (r *reader) readDrops(lights mapping) {
	for _, m := range lights.mappings("drops") {
		m.require("where", "string")
		d := Drop{Where: m.places("where")}
		known := m.lightString(&d.String)
		quantity(m, "hang", &d.Hang, hangs)
		if known && !m.has("hang") && d.String.Drop == 0 {
			m.missing("hang", "; "+quote(d.String.Name)+" has no drop of its own")
		}
		quantity(m, "lap", &d.Lap, laps)
		r.spec.Lights.Drops = append(r.spec.Lights.Drops, d)
	}
}

// lightString reads the string of a wrap or a drop.
func (m mapping) lightString(into *catalog.String) bool {
	f, ok := m.value("string")
	if !ok {
		return false
	}
	s, ok := f.lightString()
	if ok {
		*into = s
	}
	return ok
}

// lightString finds a string by its name, the spec's own before the catalog's.
func (f field) lightString() (catalog.String, bool) {
	name, ok := f.text(longestText)
	if !ok {
		return catalog.String{}, false
	}
	f.takes("a string of the catalog, or one under lights.strings")
	if own := f.ownString(name); own != nil {
		return *own, true
	}
	s, ok := catalog.FindString(name)
	if !ok {
		f.unknownName("string", name, f.stringNames(), "lights: {strings: {"+brief(name)+": {length: "+measure.By(f.spec.Units, "20 ft", "6 m")+", bulbs: 70, watts: 4.8 W}}}")
	}
	return s, ok
}

// ownString returns the spec's own string of that name, or nil.
func (r *reader) ownString(name string) *catalog.String {
	for i := range r.spec.Lights.Strings {
		if s := &r.spec.Lights.Strings[i]; s.Name == name {
			return s
		}
	}
	return nil
}

// stringNames lists the strings that can be named.
func (r *reader) stringNames() []string {
	name := func(s catalog.String) string { return s.Name }
	return append(namesOf(r.spec.Lights.Strings, name), namesOf(catalog.Strings(), name)...)
}
