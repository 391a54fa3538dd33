package ground

import (
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Clear reports whether every guy stake and peg of the spec stands where it may, with room about it to be moved a little, and none shares another's hole: what a place that is
// chosen must pass.
func Clear(s *spec.Spec, arches Arches) bool {
	t := newTunnel(s, arches)
	lim, list := practice.OnGround(s.Units), hazards(s)
	stakes := t.stakes()
	for i, peg := range stakes {
		if !peg.Guy {
			continue
		}
		for k := range 9 {
			p := peg.At()
			if k > 0 {
				sin, cos := math.Sincos(float64(k) * math.Pi / 4)
				p.X, p.Y = p.X+lim.StepOut*measure.Length(cos), p.Y+lim.StepOut*measure.Length(sin)
			}
			for _, h := range list {
				if _, yes := h.bothers(p); yes {
					return false
				}
			}
		}
		for _, other := range stakes[:i] {
			if Distance(peg.At(), other.At()) < lim.Share/2 || other.Guy && Distance(peg.At(), other.At()) < lim.Share {
				return false
			}
		}
	}
	return true
}
