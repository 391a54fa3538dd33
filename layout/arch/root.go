package arch

import "math"

// root finds where f is zero between a and b, at which it has the values fa and fb of opposite signs: regula falsi by the Illinois
// rule. It stops when |f| is below small, or where f has no value, and returns the last place.
func root(f func(x float64) (float64, bool), a, fa, b, fb, small float64) float64 {
	for range 60 {
		if math.Abs(fb) <= small || fa == fb {
			break
		}
		x := b - fb*(b-a)/(fb-fa)
		fx, ok := f(x)
		if !ok {
			break
		}
		if fx*fb < 0 {
			a, fa = b, fb
		} else {
			fa /= 2
		}
		b, fb = x, fx
	}
	return b
}
