package practice

import "hoopwright/layout/measure"

// Ground is what setting out and driving go by, in round figures of the packet's units. Our own choice from common practice.
type Ground struct {
	Reach     measure.Length // longest tape helpers have
	Offset    measure.Length // furthest that a stake is set off a string: farther, a square by eye is no longer true enough
	Tape      measure.Length // how far off a careful tape may be: careful taping of a row is good for about 1 in 1000, half an inch in 40 ft
	Weak      measure.Length // ties that leave a stake further off than this are worth another mark
	Good      measure.Length // a pair of tapes that leaves it no further off is kept: they cross at 60° or more
	Misclose  measure.Length // tapes that disagree by more than two careful ones can
	Miss      measure.Length // circles further apart than this are a wrong tape, not a careless one
	Edge      measure.Length // a bar driven closer to paving than this cracks it or glances off
	Inner     measure.Length // least room between two stakes on the inside of a bend
	Share     measure.Length // two guy stakes closer than this are one hole
	StepOut   measure.Length // how far outside the wall an inner arch's guy stakes stand at the least: clear of its stakes and of feet
	StepMost  measure.Length // and at most, to keep guys that pass other arches' legs off them: further out they are in people's way
	Work      measure.Length // how far above the crown people on ladders and pipes being raised reach
	Aside     measure.Length // room either side of a foot that is walked out, and beyond its end: a person's
	Lane      measure.Length // how near an arch's line its legs are carried along: a guy stake there trips who carries them
	Ahead     measure.Length // how far before a way in or out people step off, turn and wait: nothing stands there
	Shift     measure.Length // furthest move of the whole tunnel that is tried
	ShiftStep measure.Length
}

// OnGround returns them in a system of units.
func OnGround(u measure.System) Ground {
	if u == measure.Metric {
		return Ground{
			Reach: 30 * measure.Metre, Offset: 3 * measure.Metre, Tape: 12, Weak: 50, Good: 25, Misclose: 25, Miss: 50, Edge: 100,
			Inner: 600, Share: 150, StepOut: 300, StepMost: 1200, Work: 900, Aside: 600, Lane: 450, Ahead: 1800, Shift: 2 * measure.Metre, ShiftStep: 50,
		}
	}
	const in, ft = measure.Inch, measure.Foot
	return Ground{
		Reach: 100 * ft, Offset: 10 * ft, Tape: in / 2, Weak: 2 * in, Good: in, Misclose: in, Miss: 2 * in, Edge: 4 * in,
		Inner: 24 * in, Share: 6 * in, StepOut: 12 * in, StepMost: 48 * in, Work: 3 * ft, Aside: 24 * in, Lane: 18 * in, Ahead: 6 * ft, Shift: 6 * ft, ShiftStep: 3 * in,
	}
}

// Round is what the place of a tunnel is written to where nothing hinges on less. Common practice, no source.
func Round(u measure.System) measure.Length { return measure.By(u, measure.Inch, 10) }

// GuyStep is by how much guys' stakes are moved to find a place where they do. Our own choice.
func GuyStep(u measure.System) measure.Length {
	return measure.By(u, 3*measure.Inch, 50*measure.Millimetre)
}

// GuyClear is how near a guy may pass the middle of a pipe that is wound: a hand from its wire. Our own choice.
func GuyClear(u measure.System) measure.Length {
	return measure.By(u, 3*measure.Inch, 75*measure.Millimetre)
}
