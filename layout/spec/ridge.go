package spec

import (
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"
)

// readRidge reads the line of pieces from crown to crown. It is there unless the spec says false, and needs two arches.
func (r *reader) readRidge(top mapping) {
	ridge := &r.spec.Ridge
	ridge.Present = true
	if f, ok := top.value("ridge"); ok {
		if f.node.Kind == yaml.MappingNode {
			m, _ := f.mapping()
			if p, ok := m.fields["pipe"]; ok {
				ridge.Pipe, _ = p.pipe("custom ridge pipe")
			}
		} else if present, ok := f.yes(); ok {
			ridge.Present = present
		}
	}
	if r.spec.Tunnel.Arches == 1 {
		ridge.Present = false
	}
	if r.spec.Given("ridge.pipe.od") && ridge.Present {
		r.checkFittings("ridge.pipe")
	}
}

// checkJoints checks that the ridge finds a joint at the crown, and that the fittings of a pipe of the spec's own are known where
// something joins.
func (r *reader) checkJoints(key string, a Arch) {
	if a.OneStick && r.spec.Ridge.Present && r.spec.Given(key+".sticks") {
		r.failKey(key+".sticks", "ridge: false", "is one stick, which has no crown joint for a ridge to enter; two legs or no ridge are wanted")
	}
	if r.spec.Given(key+".pipe.od") && (a.Joins() || r.spec.Ridge.Present) {
		r.checkFittings(key + ".pipe")
	}
}

// checkFittings checks that a pipe of the spec's own says how deep its fittings are.
func (r *reader) checkFittings(key string) {
	for _, k := range []string{"take off", "socket"} {
		if !r.spec.Given(key + "." + k) {
			r.failKey(key+"."+k, exampleOf("arch.pipe."+k, r.spec.Units), "is missing; it is needed because pipes are joined with fittings")
		}
	}
}

// failKey reports what is wrong with a key, at its own place or the nearest above.
func (r *reader) failKey(key, example, format string, args ...any) {
	r.errors = append(r.errors, Error{r.spec.Position(key), key, fmt.Sprintf(format, args...), example})
}

// readHolds reads what holds the tunnel lengthwise.
func (r *reader) readHolds(top mapping) {
	if m, ok := top.holding("guys"); ok {
		m.all(&r.spec.Guys)
	}
	if m, ok := top.holding("braces"); ok {
		if m.all(&r.spec.Braces); r.spec.Tunnel.Arches == 1 {
			m.failWith("braces: none", "are given, but one arch has no bay to brace")
		}
	}
}

// holding opens what holds the tunnel lengthwise, where it is given and not none.
func (m mapping) holding(key string) (mapping, bool) {
	f, ok := m.value(key)
	if !ok || f.node.Kind != yaml.ScalarNode {
		return m.section(key)
	}
	if s, ok := f.scalar(); ok && s != "none" {
		example := exampleOf(key, f.spec.Units)
		if slices.Contains([]string{"no", "false", "off", "None", "NONE"}, s) {
			example = key + ": none"
		}
		f.failWith(example, "is %s; none, or the figures of the %s are wanted", quote(s), key)
	}
	return mapping{}, false
}

// CrownLine reports whether a line is knotted at crown after crown: where dry sockets alone would hold the ridge, and where no ridge joins arches that are held lengthwise. There it hands
// each arch what holds its neighbours: an end arch has guys outward alone, and while the row grows those toward its open end find no stake or no room yet.
func (s *Spec) CrownLine() bool {
	ties := len(s.Guys.Arches)+len(s.Braces.Bays) > 0
	if s.Ridge.Present {
		ties = s.Arch.Joints.DryCrown()
	}
	return ties && s.Tunnel.Arches > 1
}

// Fitting is what joins the pipe at an arch's crown.
type Fitting int

// The fittings. A single stick bent over whole has none; a tee or cross has a socket for the ridge on one side or on both.
const (
	NoFitting Fitting = iota
	Coupling
	Tee
	Cross
)

// String returns the fitting's name, empty for none.
func (f Fitting) String() string { return [...]string{"", "coupling", "tee", "cross"}[f] }

// CrownFitting returns the fitting at the crown of an arch, 1 to Tunnel.Arches.
func (s *Spec) CrownFitting(arch int) Fitting {
	last := s.Tunnel.Arches
	switch {
	case s.ArchOf(arch).OneStick:
		return NoFitting
	case !s.Ridge.Present || last == 1:
		return Coupling
	case arch == 1 || arch == last:
		return Tee
	}
	return Cross
}
