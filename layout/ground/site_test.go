package ground

import (
	"math"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

const (
	in = measure.Inch
	ft = measure.Foot
)

// row is an invented straight tunnel: arches 5 ft 3 in apart, 7 ft 6 in wide, its first centre at (20 ft, 6 ft), straight ahead.
func row(arches int) *spec.Spec {
	s := &spec.Spec{Units: measure.Imperial}
	s.Tunnel = spec.Tunnel{Arches: arches, Spacing: 63 * in, Length: 63 * in * measure.Length(arches-1), OpeningWidth: 4 * ft, OpeningHeight: 80 * in}
	s.Arch = spec.Arch{Span: 90 * in, Height: 95 * in, Pipe: catalog.Pipe{OD: .84 * in}, Stake: spec.Stake{Length: 48 * in, Depth: 20 * in}}
	s.Site.Start = spec.Point{X: 20 * ft, Y: 6 * ft}
	s.Guys = spec.Guys{Arches: []int{1, arches}, From: 6 * ft, Out: 6 * ft, Stake: spec.Stake{Length: 24 * in, Depth: 20 * in}}
	return s
}

func lay(s *spec.Spec) Layout {
	spans := make([]measure.Length, s.Tunnel.Arches)
	crowns := make([]measure.Length, s.Tunnel.Arches)
	for i := range spans {
		spans[i], crowns[i] = s.ArchOf(i+1).Span, s.ArchOf(i+1).Height
	}
	return Lay(s, Arches{Spans: spans, Crowns: crowns, Aside: 12 * in})
}

func mark(name string, x, y measure.Length) spec.Mark {
	return spec.Mark{Name: name, At: &spec.Point{X: x, Y: y}}
}

// near fails the test unless the two agree to within tol.
func near[T ~float64](t *testing.T, what string, got, want, tol T) {
	t.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tol)) {
		t.Errorf("%s = %v, want %v ± %v", what, got, want, tol)
	}
}

// codes returns the findings by code, the worst of each.
func codes(list []finding.Finding) map[string]finding.Finding {
	found := map[string]finding.Finding{}
	for _, f := range list {
		if old, ok := found[f.Code]; !ok || f.Level < old.Level {
			found[f.Code] = f
		}
	}
	return found
}

func stakeOf(t *testing.T, l Layout, name string) Stake {
	t.Helper()
	for _, s := range l.Stakes {
		if s.String() == name {
			return s
		}
	}
	t.Fatalf("no stake %s", name)
	return Stake{}
}
