package spec

import (
	"hoopwright/layout/say"
	"strings"

	"gopkg.in/yaml.v3"
)

// readMarks reads the fixed points that tapes start from. Marks that are taped from others need a way back to marks with coordinates.
func (r *reader) readMarks(site mapping) {
	marks := site.mappings("marks")
	seen := names{of: "marks"}
	for _, m := range marks {
		m.require("name")
		var name string
		if f, ok := m.value("name"); ok && m.name("name", &name) {
			seen.add(f, name)
		}
	}
	before := len(r.errors)
	for _, m := range marks {
		r.spec.Site.Marks = append(r.spec.Site.Marks, m.mark(seen))
	}
	if len(r.errors) == before {
		r.checkMarks(marks)
	}
}

// mark reads one mark: by coordinates, or by tapes from other marks.
func (m mapping) mark(others names) Mark {
	var k Mark
	if f, ok := m.fields["name"]; ok {
		k.Name = strings.TrimSpace(f.node.Value)
	}
	switch {
	case m.has("at") == m.has("from"):
		m.fail("a mark is fixed by at or by from, one of the two")
	case m.has("at"):
		var p Point
		if m.point("at", &p) {
			k.At = &p
		}
		if m.has("side") {
			m.fail("side tells two places apart that from leaves open; leave it out beside at")
		}
	default:
		if i, ok := m.word("side", "left", "right"); ok {
			k.Side = Side(i)
		}
		m.tapes(&k, others)
		if len(k.From) == 2 && !m.has("side") {
			m.missing("side", "; two tapes leave open on which side of the line from the first mark to the second this one lies")
		}
	}
	return k
}

// tapes reads the distances from other marks.
func (m mapping) tapes(k *Mark, others names) {
	f, ok := m.value("from")
	if !ok {
		return
	}
	pairs := f.named()
	if n := len(f.node.Content) / 2; n == 1 || n == 0 && f.node.Kind == yaml.MappingNode {
		f.fail("tapes from %s; two or more are wanted", say.Count(n, "mark"))
	}
	for _, p := range pairs {
		if p.name == k.Name {
			p.value.failAt(p.key, exampleOf(f.table, f.spec.Units), "a mark cannot be taped from itself")
		} else if !others.has(p.name) {
			text, better := f.noSuch("mark", p.name, others.list)
			if better != "" {
				better += ": " + p.value.node.Value
			}
			p.value.failAt(p.key, better, "%s", text)
		}
		if d, ok := tapes.of(p.value); ok {
			k.From = append(k.From, Tape{p.name, d})
		}
	}
}

// checkMarks follows the tapes back to marks with coordinates.
func (r *reader) checkMarks(marks []mapping) {
	fixed := map[string]bool{}
	for range r.spec.Site.Marks {
		for _, k := range r.spec.Site.Marks {
			reach := 0
			for _, t := range k.From {
				if fixed[t.Mark] {
					reach++
				}
			}
			fixed[k.Name] = fixed[k.Name] || k.At != nil || reach >= 2
		}
	}
	for i, k := range r.spec.Site.Marks {
		if !fixed[k.Name] {
			f, _ := marks[i].value("from")
			f.failWith("at: [31 ft, 2 ft]", "leads back to no two marks with coordinates; give this mark or those it is taped from an at")
		}
	}
}
