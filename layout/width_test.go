package layout_test

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
)

// Where height and sticks are given each arch has the span that its own load makes of them. Crosses and tees, or a drop here and there, move that by a quarter inch or two: then all
// share one width, on the tape's quarter inch, and no crown is off by more than a hand can read up there. A load that weighs keeps its arch a span of its own and the height that was
// asked for, which is what separate solving gives.
func TestOneWidthForArchesAlike(t *testing.T) {
	arch := "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], height: 8 ft}"
	const asked, near, grid = 8 * measure.Foot, measure.Inch / 2, measure.Inch / 4
	for name, c := range map[string]struct {
		changes []string
		own     int // the arch with a span of its own
	}{
		"tees and crosses": {[]string{"arch", arch}, 0},
		"a light drop":     {[]string{"arch", arch, "lights", "{drops: [{where: 'ridge of [1]', string: drop led 100 warm, hang: 5 in}]}"}, 0},
		"a heavy one": {[]string{"arch", arch, "lights", "{strings: {bell: {length: 30 in, bulbs: 10, watts: 1 W, weight: 1 lb, drop: 6 in}}, drops: [{where: arches of 2, string: bell, hang: 6 in}]}"},
			2},
	} {
		p := solved(t, base.with(c.changes...).text())
		shared := p.Arches[0].Span
		for _, a := range p.Arches {
			off := measure.Abs(a.Crown - asked)
			if a.Number == c.own {
				if off > 1e-6*measure.Metre || a.Span == shared {
					t.Errorf("%s: arch %d over %v, its crown at %v, the others' span %v", name, a.Number, a.Span, a.Crown, shared)
				}
				continue
			}
			if steps := float64(a.Span / grid); a.Span != shared || off > near || math.Abs(steps-math.Round(steps)) > 1e-9 {
				t.Errorf("%s: arch %d over %v, its crown at %v; arch 1 over %v", name, a.Number, a.Span, a.Crown, shared)
			}
		}
	}
}
