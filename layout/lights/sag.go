package lights

import (
	"math"

	"hoopwright/layout/measure"
)

// hung is a wire between two places a level distance and a rise apart that dips below the straight line between them by sag in the middle: a parabola, the
// dip measured plumb.
type hung struct{ level, rise, sag measure.Length }

// taut is the share of the level distance under which a dip adds nothing.
const taut = 1e-6

// upTo returns the wire's length from its start to a share of the level way. The line's slope is v/L with v = h − 4d + 8d·t, so that the
// length is ∫√(L² + v²) dt = [½·(v·√(L² + v²) + L²·asinh(v/L))]/8d. Handbooks print the first terms of its series for the whole of a level
// wire, L(1 + 8/3·(d/L)² − 32/5·(d/L)⁴ …), which fail where the sag is not small.
func (w hung) upTo(share float64) measure.Length {
	l, h, d := float64(w.level), float64(w.rise), float64(w.sag)
	chord := math.Hypot(l, h)
	if d <= taut*chord {
		return measure.Length(chord * share)
	}
	integral := func(v float64) float64 {
		if l == 0 {
			return v * math.Abs(v) / 2
		}
		return (v*math.Hypot(l, v) + l*l*math.Asinh(v/l)) / 2
	}
	from := h - 4*d
	return measure.Length((integral(from+8*d*share) - integral(from)) / (8 * d))
}

// length returns the wire's whole length.
func (w hung) length() measure.Length { return w.upTo(1) }

// share returns how far along the level way a length of the wire comes: the inverse of upTo, by halving.
func (w hung) share(along measure.Length) float64 {
	low, high := 0.0, 1.0
	for range 40 {
		if mid := (low + high) / 2; w.upTo(mid) < along {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// sagged returns the length of a wire between two places on a level.
func sagged(chord, sag measure.Length) measure.Length { return hung{level: chord, sag: sag}.length() }

// dip returns how far the parabola hangs below its chord at a share of the way along.
func dip(sag measure.Length, share float64) measure.Length {
	return 4 * sag * measure.Length(share*(1-share))
}
