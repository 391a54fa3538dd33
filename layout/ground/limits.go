package ground

import "hoopwright/layout/measure"

// limits are the package's thresholds in round figures of the packet's units. Unless a source stands beside a figure it is
// our own choice from common practice.
type limits struct {
	reach     measure.Length // longest tape helpers have
	offset    measure.Length // furthest that a stake is set off a string: farther, a square by eye is no longer true enough
	tape      measure.Length // how far off a careful tape may be
	weak      measure.Length // ties that leave a stake further off than this are worth another mark
	good      measure.Length // a pair of tapes that leaves it no further off is kept: they cross at 60° or more
	misclose  measure.Length // tapes that disagree by more than two careful ones can
	miss      measure.Length // circles further apart than this are a wrong tape, not a careless one
	edge      measure.Length // a bar driven closer to paving than this cracks it or glances off
	inner     measure.Length // least room between two stakes on the inside of a bend
	share     measure.Length // two guy stakes closer than this are one hole
	stepOut   measure.Length // how far outside the wall an inner arch's guy stakes stand: clear of its stakes and of feet
	work      measure.Length // how far above the crown people on ladders and pipes being raised reach
	shift     measure.Length // furthest move of the whole tunnel that is tried
	shiftStep measure.Length
}

func limitsIn(units measure.System) limits {
	if units == measure.Metric {
		return limits{
			reach: 30 * measure.Metre, offset: 3 * measure.Metre, tape: 12, weak: 50, good: 25, misclose: 25, miss: 50, edge: 100,
			inner: 600, share: 150, stepOut: 300, work: 900, shift: 2 * measure.Metre, shiftStep: 50,
		}
	}
	const in, ft = measure.Inch, measure.Foot
	return limits{
		reach: 100 * ft, offset: 10 * ft, tape: in / 2, weak: 2 * in, good: in, misclose: in, miss: 2 * in, edge: 4 * in,
		inner: 24 * in, share: 6 * in, stepOut: 12 * in, work: 3 * ft, shift: 6 * ft, shiftStep: 3 * in,
	}
}
