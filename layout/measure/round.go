package measure

import "math"

// slack is how far above a grid line a length may be and still count as on it: far under any saw, far over rounding of floats.
const slack Length = 1e-6

// RoundUp returns the least multiple of the grid that is not below the length, a millionth of a millimetre forgiven. The grid is positive.
func RoundUp(l, grid Length) Length {
	return Length(math.Ceil(float64((l-slack)/grid)))*grid + 0 // + 0 turns −0 into 0
}
