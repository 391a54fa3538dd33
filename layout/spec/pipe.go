package spec

import (
	"gopkg.in/yaml.v3"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// pipe reads a pipe: a name of the catalog, or the figures of one of the spec's own, which gets the name given here.
func (f field) pipe(name string) (catalog.Pipe, bool) {
	if f.node.Kind == yaml.MappingNode {
		m, ok := f.mapping()
		if !ok {
			return catalog.Pipe{}, false
		}
		return m.customPipe(name)
	}
	text, ok := f.text(longestText)
	if !ok {
		return catalog.Pipe{}, false
	}
	p, ok := catalog.FindPipe(text)
	if !ok {
		f.unknownName("pipe", text, pipeNames(), "pipe: "+measure.By(f.spec.Units, "{od: 0.84 in, wall: 0.109 in, take off: 1/2 in, socket: 0.688 in}", "{od: 25 mm, wall: 1.9 mm, take off: 14 mm, socket: 18 mm}"))
	}
	return p, ok
}

// customPipe reads the figures of a pipe that the catalog does not know. What it leaves out of modulus, strength, weight and coupling stop is
// filled in with the defaults; take off and socket stay zero.
func (m mapping) customPipe(name string) (catalog.Pipe, bool) {
	p := catalog.Pipe{Name: name, Source: ownSource}
	m.all(&p)
	ok := m.good["od"] && m.good["wall"]
	if ok && p.ID() <= 0 {
		f, _ := m.value("wall")
		f.fail("twice %s leaves no bore in a pipe of %s", m.spec.Units.Written(p.Wall), m.spec.Units.Written(p.OD))
		ok = false
	}
	return p, ok
}

// ownSource marks a pipe that the spec describes itself.
const ownSource = "the spec"

func pipeNames() []string {
	return namesOf(catalog.Pipes(), func(p catalog.Pipe) string { return p.Name })
}

func barNames() []string {
	return namesOf(catalog.Bars(), func(b catalog.Bar) string { return b.Name })
}

func cordNames() []string {
	return namesOf(catalog.Cords(), func(c catalog.Cord) string { return c.Name })
}

func namesOf[T any](list []T, name func(T) string) []string {
	var all []string
	for _, item := range list {
		all = append(all, name(item))
	}
	return all
}
