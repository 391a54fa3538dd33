package layout

import (
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/spec"
)

// 1.5 m by 12.6 m is 18.9 m²: nine walkers at 2 m² each. A lone arch, or none, still lets one through.
func TestMostInside(t *testing.T) {
	p := &Plan{Spec: &spec.Spec{Tunnel: spec.Tunnel{Length: 12600}}, Kinds: []*arch.Kind{{HeadWidth: 1700}, {HeadWidth: 1500}}}
	if n := p.MostInside(); n != 9 {
		t.Errorf("%d inside, want 9", n)
	}
	p.Spec.Tunnel.Length = 0
	if n := p.MostInside(); n != 1 {
		t.Errorf("%d inside a lone arch, want 1", n)
	}
	if n := (&Plan{Spec: &spec.Spec{}}).MostInside(); n != 1 {
		t.Errorf("%d inside nothing, want 1", n)
	}
}
