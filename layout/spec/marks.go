package spec

import (
	"strings"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// readMarks reads the fixed points that tapes start from, and the start. Marks that are taped from others need a way back to marks with coordinates, or to the stakes of arch 1.
func (r *reader) readMarks(site mapping) {
	marks := site.mappings("marks")
	for _, m := range marks {
		var name string
		if f, ok := m.value("name"); ok && m.read("name", &name) {
			if name == StakeL1 || name == StakeR1 {
				f.failWith("name: post 1", "is %s, which names a stake of arch 1; a mark needs a name of its own", quote(name))
			}
			r.marks.add(f, name)
		}
	}
	before := len(r.errors)
	for _, m := range marks {
		r.spec.Site.Marks = append(r.spec.Site.Marks, m.mark())
	}
	r.readStart(site)
	if len(r.errors) == before {
		r.checkMarks(marks)
	}
}

func (r *reader) readStart(site mapping) {
	s := &r.spec.Site
	start, _ := site.section("start")
	if start.has("at") || start.has("from") || start.has("side") {
		start.located(&s.Start, &s.StartFix, "")
	}
	for _, t := range s.StartFix.From {
		if t.Mark == StakeL1 || t.Mark == StakeR1 {
			f, _ := start.value("from")
			f.fail("tapes the start from %s, which the start itself places; marks are wanted", t.Mark)
		}
	}
	start.read("heading", &s.Heading)
	if aim, ok := start.section("toward"); ok {
		s.Toward = &Aim{}
		aim.located(&s.Toward.At, &s.Toward.Fix, "")
		if start.has("heading") {
			start.fail("gives heading and toward; the one follows from the other, so leave one out")
		}
	}
}

// located reads where something is: coordinates, tapes from marks, or a distance from the start where the table has that key.
func (m mapping) located(at *Point, fix *Fix, self string) {
	m.read("side", &fix.Side)
	ways := []string{"at", "from"}
	if rows[under(m.table, "from start")].path != "" {
		ways = append(ways, "from start")
	}
	given, _ := m.among(ways...)
	if len(given) == 0 {
		m.missing("at", "; "+say.Or(ways)+" says where it is")
		return
	}
	if len(given) > 1 {
		m.fail("gives %s; one of them is wanted", say.And(given))
		return
	}
	switch given[0] {
	case "at":
		m.read("at", at)
	case "from start":
		fix.Start = m.offset()
	default:
		if fix.From = m.tapes(self); len(fix.From) == 2 && !m.has("side") {
			m.missing("side", "; two tapes leave open on which side of the line from the first mark to the second this one lies")
		}
		return
	}
	if m.has("side") {
		m.fail("side tells two places apart that from leaves open; leave it out beside %s", given[0])
	}
}

func (m mapping) offset() *Offset {
	o := &Offset{}
	f, ok := m.section("from start")
	if !ok {
		return o
	}
	for _, axis := range []struct {
		plus, minus string
		into        *measure.Length
	}{{"right", "left", &o.Right}, {"ahead", "behind", &o.Ahead}} {
		if f.has(axis.plus) && f.has(axis.minus) {
			f.fail("gives %s and %s; one of the two is wanted", axis.plus, axis.minus)
		}
		f.read(axis.plus, axis.into)
		if f.read(axis.minus, axis.into) {
			*axis.into = -*axis.into
		}
	}
	if len(f.given) == 0 {
		f.fail("is empty; how far left or right, and how far ahead or behind, is wanted")
	}
	return o
}

func (m mapping) mark() Mark {
	var k Mark
	if f, ok := m.fields["name"]; ok {
		k.Name = strings.TrimSpace(f.node.Value)
	}
	var at Point
	var fix Fix
	before := len(m.errors)
	m.located(&at, &fix, k.Name)
	if k.From, k.Side = fix.From, fix.Side; m.has("at") && len(m.errors) == before {
		k.At = &at
	}
	return k
}

// tapes reads the distances from marks, or from the stakes of arch 1, to something that may be a mark itself.
func (m mapping) tapes(self string) (list []Tape) {
	f, ok := m.value("from")
	if !ok {
		return nil
	}
	pairs := f.named()
	if n := len(f.node.Content) / 2; n == 1 || n == 0 && f.node.Kind == yaml.MappingNode {
		f.fail("tapes from %s; two or more are wanted", say.Count(n, "mark"))
	}
	for _, p := range pairs {
		switch {
		case p.name == self:
			p.value.failAt(p.key, exampleOf(f.table, f.spec.Units), "a mark cannot be taped from itself")
		case !m.marks.has(p.name) && p.name != StakeL1 && p.name != StakeR1:
			text, better := f.noSuch("mark", p.name, m.marks.list)
			if better != "" {
				better += ": " + p.value.node.Value
			}
			p.value.failAt(p.key, better, "%s", text)
		}
		if d, ok := tapes.of(p.value); ok {
			list = append(list, Tape{p.name, d})
		}
	}
	return list
}

// checkMarks follows the tapes back to marks with coordinates. The stakes of arch 1 are known where the start is.
func (r *reader) checkMarks(marks []mapping) {
	fixed := map[string]bool{}
	reached := func(from []Tape) bool {
		reach := 0
		for _, t := range from {
			if fixed[t.Mark] {
				reach++
			}
		}
		return reach >= 2
	}
	start := func(f Fix) bool { return f.From == nil || reached(f.From) }
	s := r.spec.Site
	for range len(s.Marks) + 1 {
		for _, k := range s.Marks {
			fixed[k.Name] = fixed[k.Name] || k.At != nil || reached(k.From)
		}
		placed := start(s.StartFix) && (s.Toward == nil || start(s.Toward.Fix))
		fixed[StakeL1], fixed[StakeR1] = placed, placed
	}
	for i, k := range s.Marks {
		if f, taped := marks[i].value("from"); taped && !fixed[k.Name] {
			f.failWith("at: [31 ft, 2 ft]", "leads back to no two marks with coordinates; give this mark or those it is taped from an at")
		}
	}
}
