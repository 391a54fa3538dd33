package spec

import (
	"math"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// readLights reads everything that glows. The strings of the spec's own come first: the others name them.
func (r *reader) readLights(top mapping) {
	m, _ := top.section("lights")
	r.readStrings(m)
	l := &r.spec.Lights
	l.Wraps = listOf(m, "wraps", func(item mapping, _ *Wrap) bool {
		if item.has("pitch") && item.has("count") {
			item.fail("gives pitch and count; the one follows from the other, so leave one out")
		}
		return true
	})
	r.readRows(m)
	l.Drops = listOf(m, "drops", func(item mapping, d *Drop) bool {
		if item.good["string"] && !item.has("hang") && d.String.Drop == 0 {
			item.missing("hang", "; "+quote(d.String.Name)+" has no drop of its own")
		}
		return true
	})
}

func (r *reader) readRows(lights mapping) {
	m, ok := lights.section("rows")
	if !ok {
		return
	}
	w := &Rows{Walls: []Side{Left, Right}, Open: !m.has("start")}
	m.all(w)
	if f, ok := m.value("up to"); ok && m.good["first"] && m.good["step"] && m.good["up to"] {
		switch n := math.Floor(float64((w.UpTo-w.First)/w.Step)+slack) + 1; {
		case w.UpTo < w.First:
			f.fail("lies below the first row at %s", r.spec.Units.Written(w.First))
		case n > mostRows:
			f.fail("makes %g rows a wall; at most %d can be planned", n, mostRows)
		}
	}
	w.Gaps = listOf(m, "gaps", func(item mapping, _ *Gap) bool { return item.good["wall"] && item.good["bays"] })
	r.spec.Lights.Rows = w
}

// walls is the rule of which walls rows hang on: a list of each spec's own.
var walls = ruled(says("both, left or right"), func(f field) ([]Side, bool) {
	i, ok := f.word("both", "left", "right")
	return [][]Side{{Left, Right}, {Left}, {Right}}[max(i, 0)], ok
})

// lightString is the rule of a string's name, lightStrings that of one or several.
var (
	lightString  = ruled(says("a string of the catalog, or one under lights.strings"), field.lightString)
	lightStrings = several("a list of strings of the catalog, or of those under lights.strings", "string", field.lightString)
)

// lightString finds a string by its name, the spec's own before the catalog's.
func (f field) lightString() (catalog.String, bool) {
	name, ok := f.text(longestText)
	if !ok {
		return catalog.String{}, false
	}
	if own := f.ownString(name); own != nil {
		return *own, true
	}
	s, ok := catalog.FindString(name)
	if !ok {
		f.unknownName("string", name, f.stringNames(), "lights: {strings: {"+brief(name)+": {length: "+measure.By(f.spec.Units, "20 ft", "6 m")+", bulbs: 70, watts: 4.8 W}}}")
	}
	return s, ok
}

func (r *reader) ownString(name string) *catalog.String {
	for i := range r.spec.Lights.Strings {
		if s := &r.spec.Lights.Strings[i]; s.Name == name {
			return s
		}
	}
	return nil
}

func (r *reader) stringNames() []string {
	name := func(s catalog.String) string { return s.Name }
	return append(namesOf(r.spec.Lights.Strings, name), namesOf(catalog.Strings(), name)...)
}

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
		m.all(&s)
		if m.good["length"] && s.Lead+s.Tail >= s.Length {
			m.fail("lead and tail leave nothing of its %s lit", r.spec.Units.Written(s.Length))
		}
		if s.Supply != nil && !m.has("volts") {
			m.missing("volts", "; a supply has a voltage of its own")
		}
		m.weigh(&s)
		if len(r.errors) == before {
			r.fillString(m.path, &s)
		}
		r.spec.Lights.Strings = append(r.spec.Lights.Strings, s)
	}
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
