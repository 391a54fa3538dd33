package measure

import "math"

// groundStep is as close as a tape over grass is read and a dot of paint is put: a quarter inch, or 5 mm.
func (s System) groundStep() Length {
	return By(s, Inch/4, 5*Millimetre)
}

// Taped returns a length as it is printed for a tape over the ground: to the nearest quarter inch, or 5 mm.
func (s System) Taped(l Length) Length {
	step := s.groundStep()
	return Length(math.Round(float64(l/step)))*step + 0 // + 0 turns −0 into 0
}

// TapedUp returns the least length of a tape over the ground that is not below l.
func (s System) TapedUp(l Length) Length { return RoundUp(l, s.groundStep()) }

// GroundFigure prints the same as Ground, in metric without its unit: for a table whose head names that once, and for a drawing.
func (s System) GroundFigure(l Length) string {
	return By(s, feetInches(l, 4), fixed(float64(s.Taped(l)), 0))
}

// Ground prints a length that is taped over the ground, 22′-6 1/4″ or 6 860 mm: as coarse as the ground is.
func (s System) Ground(l Length) string { return By(s, feetInches(l, 4), millimetres(s.Taped(l))) }

// slack is how far above a grid line a length may be and still count as on it: far under any saw, far over rounding of floats.
const slack Length = 1e-6

// RoundUp returns the least multiple of the grid that is not below the length, a millionth of a millimetre forgiven. The grid is positive.
func RoundUp(l, grid Length) Length {
	return Length(math.Ceil(float64((l-slack)/grid)))*grid + 0 // + 0 turns −0 into 0
}
