package ground

import "hoopwright/layout/measure"

// Square is a right angle to set out with tapes: A along the line of the first arch's stakes, B along the tunnel, C across.
type Square struct{ A, B, C measure.Length }

// SquaringFigures returns the largest 3-4-5 triangle in whole feet, or tenths of a metre, with its two legs within the span and
// the tunnel's length, whichever way round is larger. The larger it is, the less an error in C turns the tunnel. The zero Square
// means that not even 3-4-5 ft (0.3-0.4-0.5 m) fits: the diagonals must do.
func SquaringFigures(units measure.System, span, length measure.Length) Square {
	step := measure.By(units, measure.Foot, 100)
	times := func(across, ahead measure.Length) measure.Length {
		return measure.Length(max(int(min(span/across, length/ahead)/step+1e-9), 0)) * step
	}
	k, turned := times(3, 4), times(4, 3)
	if turned > k {
		return Square{4 * turned, 3 * turned, 5 * turned}
	}
	return Square{3 * k, 4 * k, 5 * k}
}
