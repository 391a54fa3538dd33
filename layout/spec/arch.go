package spec

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// thirds are the three figures of an arch of which two give the third.
var thirds = []string{"sticks", "span", "height"}

func (r *reader) readArch(top mapping) {
	m, ok := top.section("arch")
	if !ok {
		return
	}
	a := &r.spec.Arch
	m.arch(a, "custom pipe")
	if _, absent := m.among(thirds...); m.twoOf(thirds[0], thirds[1], thirds[2]) {
		a.leave(absent[0])
	}
	r.checkJoints("arch", *a)
	r.fillArch("arch", a)
	taken := map[int]int{} // line of the exception by arch
	for i, e := range m.mappings("except") {
		r.readExcept(e, m, fmt.Sprintf("custom pipe %d", i+2), taken)
	}
}

// readExcept reads one exception over a copy of the arch. Taken says in which line's exception an arch is already.
func (r *reader) readExcept(m, base mapping, pipe string, taken map[int]int) {
	a := r.spec.Arch
	m.arch(&a, pipe)
	m.mergeThird(base, &a)
	r.checkJoints(m.path, a)
	r.fillArch(m.path, &a)
	var set []int
	if !m.read("arches", &set) {
		return
	}
	f, _ := m.value("arches")
	for _, n := range set {
		if line, twice := taken[n]; twice {
			f.failWith("arches: [2, 3]", "arch %d is in the exception of line %d already; an arch has one exception at most", n, line)
			return
		}
		taken[n] = f.node.Line
	}
	r.spec.Except = append(r.spec.Except, Except{Arches: set, Arch: a})
}

// arch reads what the mapping gives of an arch's figures and leaves the others as they are.
func (m mapping) arch(a *Arch, pipe string) {
	if f, ok := m.value("pipe"); ok {
		if p, ok := f.pipe(pipe); ok {
			a.Pipe = p
		}
	}
	m.sticks(a)
	m.all(a)
	if foot, ok := m.section("foot"); ok {
		a.Foot = &Foot{}
		foot.all(a.Foot)
		foot.read("bar", &a.Stake.Bar)
	}
}

func (a *Arch) leave(third string) {
	switch third {
	case "sticks":
		a.Missing, a.Left, a.Right, a.OneStick = Sticks, nil, nil, false
	case "span":
		a.Missing, a.Span = Span, 0
	default:
		a.Missing, a.Height = Height, 0
	}
}

// mergeThird settles an exception's figures with those that hold from the arch: one replaces its namesake, two stand for
// themselves.
func (m mapping) mergeThird(base mapping, a *Arch) {
	given, absent := m.among(thirds...)
	hold, _ := base.among(thirds...)
	switch {
	case len(given) == 3:
		m.twoOf(thirds[0], thirds[1], thirds[2])
	case len(given) == 2:
		a.leave(absent[0])
	case len(given) == 1 && len(hold) == 2 && !base.has(given[0]):
		f := m.child(given[0])
		if own, ok := m.value(given[0]); ok {
			f = own
		}
		f.failWith(exampleOf(exception, m.spec.Units), "makes three: %s and %s hold from arch; change one of these two here, or give %s together with one of them",
			hold[0], hold[1], given[0])
	}
}

// MostPieces is the most pieces that one leg is put together from.
const MostPieces = 10

// sticks reads the pipe of both legs, or the single stick of an arch without a crown joint.
func (m mapping) sticks(a *Arch) {
	f, ok := m.value("sticks")
	if !ok {
		return
	}
	items := m.items("sticks")
	if len(items) != len(f.node.Content) || f.node.Kind != yaml.SequenceNode {
		return
	}
	if len(items) < 1 || len(items) > 2 {
		f.fail("lists %s; the left and the right leg are wanted, or one stick for both, and the pieces of a leg in a list of their own", say.Count(len(items), "leg"))
		return
	}
	legs := make([][]measure.Length, 2)
	for i, item := range items {
		if legs[i], ok = item.leg(); !ok {
			return
		}
	}
	a.Left, a.Right, a.OneStick = legs[0], legs[1], len(items) == 1
}

// leg reads the pieces of one leg from the ground up.
func (f field) leg() ([]measure.Length, bool) {
	if f.node.Kind == yaml.ScalarNode {
		l, ok := sticks.of(f)
		return []measure.Length{l}, ok
	}
	items, ok := f.list()
	if !ok {
		return nil, false
	}
	if len(items) < 1 || len(items) > MostPieces {
		f.fail("lists %s; 1 to %d are wanted", say.Count(len(items), "piece"), MostPieces)
		return nil, false
	}
	var pieces []measure.Length
	for _, item := range items {
		l, ok := sticks.of(item)
		if !ok {
			return nil, false
		}
		pieces = append(pieces, l)
	}
	return pieces, true
}

// Joins reports whether anything is put together with fittings in the arch itself.
func (a Arch) Joins() bool { return !a.OneStick || len(a.Left) > 1 }

// pipe reads a pipe: a name of the catalog, or the figures of one of the spec's own, which gets the name given here. What that leaves out of modulus, strength, weight and coupling stop is
// filled in with the defaults; take off and socket stay zero.
func (f field) pipe(name string) (p catalog.Pipe, ok bool) {
	if f.node.Kind == yaml.MappingNode {
		m, ok := f.mapping()
		if !ok {
			return p, false
		}
		p = catalog.Pipe{Name: name, Source: ownSource}
		m.all(&p)
		if ok = m.good["od"] && m.good["wall"]; ok && p.ID() <= 0 {
			wall, _ := m.value("wall")
			wall.fail("twice %s leaves no bore in a pipe of %s", m.spec.Units.Written(p.Wall), m.spec.Units.Written(p.OD))
			ok = false
		}
		return p, ok
	}
	return found(f, "pipe", catalog.FindPipe, PipeNames, "pipe: "+measure.By(f.spec.Units, "{od: 0.84 in, wall: 0.109 in, take off: 1/2 in, socket: 0.688 in}", "{od: 25 mm, wall: 1.9 mm, take off: 14 mm, socket: 18 mm}"))
}

// ownSource marks a pipe that the spec describes itself.
const ownSource = "the spec"

// PipeNames lists the pipes of the catalog.
func PipeNames() []string {
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
