package spec

import (
	"math"
	"regexp"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

var upToWords = regexp.MustCompile(`^up to\s+`)

// readTunnel reads how many arches stand how far apart. Two of arches, spacing and length give the third.
func (r *reader) readTunnel(top mapping) {
	m, ok := top.section("tunnel")
	if !ok {
		return
	}
	m.readArches(&r.spec.Tunnel)
	r.readWays(m)
}

func (m mapping) readArches(t *Tunnel) {
	opening, _ := m.section("opening")
	opening.read("width", &t.OpeningWidth)
	opening.read("height", &t.OpeningHeight)
	arches, length := m.read("arches", &t.Arches), m.read("length", &t.Length)
	atMost := m.readSpacing(&t.Spacing)
	if arches && t.Arches == 1 {
		if length {
			f, _ := m.value("length")
			f.failWith("tunnel: {arches: 1}", "one arch has no length; leave length out")
		}
		t.Spacing, t.Length = 0, 0
		return
	}
	if !m.twoOf("arches", "spacing", "length") || len(m.given) > len(m.fields) {
		return
	}
	switch {
	case !m.has("length") && arches && t.Spacing > 0 && !atMost:
		t.Length = measure.Length(t.Arches-1) * t.Spacing
	case !m.has("length") && atMost:
		f, _ := m.value("spacing")
		f.fail("`up to` divides a length into equal bays; give length in place of arches, or a plain spacing")
	case !m.has("spacing") && arches && length:
		m.spaceOut(t)
	case !m.has("arches") && length && t.Spacing > 0:
		m.countOut(t, atMost)
	}
}

// readSpacing reads the spacing and reports whether it is the most that is allowed.
func (m mapping) readSpacing(into *measure.Length) (atMost bool) {
	f, ok := m.value("spacing")
	if !ok {
		return false
	}
	words := upToWords.FindString(f.node.Value)
	if words != "" {
		bare := *f.node
		bare.Value = bare.Value[len(words):]
		f.node = &bare
	}
	if v, ok := spacings.of(f); ok {
		*into = v
	}
	return words != ""
}

func (m mapping) spaceOut(t *Tunnel) {
	f, _ := m.value("length")
	each := t.Length / measure.Length(t.Arches-1)
	if !spacings.hold(each) {
		f.failWith(exampleOf("tunnel", f.spec.Units), "%d arches over %s stand %s apart; a spacing of %s is wanted",
			t.Arches, f.spec.Units.Written(t.Length), f.spec.Units.Tape(each), spacings.in(f.spec.Units))
		t.Arches = 0
		return
	}
	t.Spacing = each
}

// bayTolerance is how far a length may miss a whole number of bays.
const bayTolerance = 0.5 * measure.Millimetre

// countOut finds how many arches stand in the length: in whole bays, or in the fewest equal bays of at most the spacing.
func (m mapping) countOut(t *Tunnel, atMost bool) {
	f, _ := m.value("length")
	units := f.spec.Units
	bays := math.Round(float64(t.Length / t.Spacing))
	off := t.Length - measure.Length(bays)*t.Spacing
	if atMost {
		bays = math.Ceil(float64(t.Length/t.Spacing) - slack)
	} else if measure.Abs(off) > bayTolerance {
		bays = max(bays, 1)
		f.failWith("spacing: up to "+units.Written(t.Spacing), "%s is no whole number of bays of %s; %s would be %s",
			units.Written(t.Length), units.Written(t.Spacing), say.Count(int(bays), "bay"), units.Written(measure.Length(bays)*t.Spacing))
		return
	}
	each := t.Length / measure.Length(bays)
	switch {
	case bays+1 > MostArches:
		f.failWith(exampleOf("tunnel", units), "makes %g arches %s apart; at most %d can be planned", bays+1, units.Tape(each), MostArches)
	case !spacings.hold(each):
		f.failWith(exampleOf("tunnel", units), "makes bays of %s; a spacing of %s is wanted", units.Tape(each), spacings.in(units))
	default:
		t.Arches, t.Spacing = int(bays)+1, each
	}
}

// twoOf checks that two of three keys are given: the third follows from them.
func (m mapping) twoOf(a, b, c string) bool {
	given, absent := m.among(a, b, c)
	switch {
	case len(given) == 3:
		m.fail("gives %s, %s and %s; the third follows from the other two, so leave one out", a, b, c)
	case len(given) == 2 || m.strays || m.meant[under(m.table, a)] || m.meant[under(m.table, b)] || m.meant[under(m.table, c)]:
	case len(given) == 1:
		m.fail("gives %s alone of %s, %s and %s; one of %s is wanted too", given[0], a, b, c, say.Or(absent))
	default:
		m.fail("gives none of %s, %s and %s; two of them are wanted", a, b, c)
	}
	return len(given) == 2
}

func (r *reader) readWays(tunnel mapping) {
	for _, m := range tunnel.mappings("ways") {
		var bays []int
		var wall Side
		if okBay, okWall := m.read("bay", &bays), m.read("wall", &wall); okBay && okWall {
			for _, bay := range bays {
				r.spec.Tunnel.Ways = append(r.spec.Tunnel.Ways, Way{bay, wall})
			}
		}
	}
}

// IsWay reports whether a bay of a wall is a side way in or out: one of the tunnel's own, or a gap in the rows.
func (s *Spec) IsWay(wall Side, bay int) bool {
	if slices.Contains(s.Tunnel.Ways, Way{bay, wall}) {
		return true
	}
	return s.Lights.Rows != nil && slices.ContainsFunc(s.Lights.Rows.Gaps, func(g Gap) bool { return g.Wall == wall && slices.Contains(g.Bays, bay) })
}

// Passed reports whether people may pass a bay sideways, by either wall.
func (s *Spec) Passed(bay int) bool { return s.IsWay(Left, bay) || s.IsWay(Right, bay) }

// SideWays lists the ways in and out through the walls, from the first bay on.
func (s *Spec) SideWays() (list []Way) {
	for bay := 1; bay < s.Tunnel.Arches; bay++ {
		for _, wall := range []Side{Left, Right} {
			if s.IsWay(wall, bay) {
				list = append(list, Way{bay, wall})
			}
		}
	}
	return list
}
