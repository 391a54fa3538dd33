package lights

import (
	"math"

	"hoopwright/layout/measure"
)

// sagged returns the length of a wire that hangs between two points a chord apart and dips by sag in the middle: the arc
// length of a parabola, S = ½√(L² + 16d²) + L²/8d · asinh(4d/L). Handbooks print the first terms of its series,
// L(1 + 8/3·(d/L)² − 32/5·(d/L)⁴ …), which fail where the sag is not small.
func sagged(chord, sag measure.Length) measure.Length {
	l, d := float64(chord), float64(sag)
	switch {
	case l == 0:
		return 2 * sag
	case d <= 1e-6*l: // the closed form divides by the sag, and a dip this small adds nothing
		return chord
	}
	return measure.Length(math.Hypot(l, 4*d)/2 + l*l/(8*d)*math.Asinh(4*d/l))
}

// dip returns how far the parabola hangs below its chord at a share of the way along.
func dip(sag measure.Length, share float64) measure.Length {
	return 4 * sag * measure.Length(share*(1-share))
}
