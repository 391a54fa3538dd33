package lights

import (
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Turn says how the lights lie that the spec leaves open: which end of a wrap has the prongs, from which end the rows of a path start, and
// whether leads stay off the pipe. The power plan chooses.
type Turn struct {
	All   bool   // every open wrap has its prongs at the far end, every open path starts at its last arch
	Wraps []bool // by wrap, in the order of Layout.Wraps
	Paths []bool // by path, in the order of Layout.Paths
	Leads bool   // the leads of wraps from a foot stay off the pipe, as far as the next arch's foot
}

func (t Turn) wrap(n int) bool { return t.All || n < len(t.Wraps) && t.Wraps[n] }

func (t Turn) path(n int) bool { return t.All || n < len(t.Paths) && t.Paths[n] }

// offGround keeps a wrap's stretch off the ground, which may leave nothing of it.
func (s stretch) offGround(u measure.System, whole measure.Length) stretch {
	s.from = max(s.from, practice.BareFoot(u))
	if s.Kind == Arch {
		s.to = min(s.to, whole-practice.BareFoot(u))
	}
	return s
}

// Bridges reports whether some wrap's lead, kept off the pipe, reaches from one arch's foot to the next.
func Bridges(s *spec.Spec) bool {
	return slices.ContainsFunc(s.Lights.Wraps, func(w spec.Wrap) bool { return leadOff(s, w) > 0 })
}

// leadOff returns how much of a wrap's lead would stay off the pipe to reach the next arch: nothing where the lead is too short for that, or
// where pitch or plug are given, for then the string has its place.
func leadOff(s *spec.Spec, w spec.Wrap) measure.Length {
	off := s.Tunnel.Spacing + practice.ToNext
	onLegs := func(p spec.Place) bool { return p.Part != spec.RidgePieces }
	if !slices.ContainsFunc(w.Where, onLegs) || s.Tunnel.Arches < 2 || w.Pitch > 0 || w.Plug != spec.PlugOpen || off > w.String.Lead {
		return 0
	}
	return off
}
