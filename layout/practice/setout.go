package practice

import (
	"math"

	"hoopwright/layout/measure"
)

// Reading is the most that a careful crew's reading of a tape over grass is off. Common practice, no source; careful taping is good for about 1 in 1000 (published
// manuals, seen), a quarter inch in 20 ft.
func Reading(u measure.System) measure.Length {
	return measure.By(u, measure.Inch/4, 5*measure.Millimetre)
}

// ShortTape is how far a pocket tape reaches. Common practice, no source.
func ShortTape(u measure.System) measure.Length {
	return measure.By(u, 16*measure.Foot, 5*measure.Metre)
}

// Tapes are the lengths that long tapes are sold in, shortest first. Common practice, no source.
func Tapes(u measure.System) []measure.Length {
	list, unit := []measure.Length{25, 50, 100, 200, 300}, measure.Foot
	if u == measure.Metric {
		list, unit = []measure.Length{10, 20, 30, 50, 100}, measure.Metre
	}
	for i := range list {
		list[i] *= unit
	}
	return list
}

// RowString returns how long a line is fetched to be pulled along a row, with its turns round a brick at both ends; 0 for a row that a usual reel of 100 ft or 30 m is long
// enough for. Common practice, no source.
func RowString(u measure.System, row measure.Length) measure.Length {
	step, reel := measure.By(u, 10*measure.Foot, 5*measure.Metre), measure.By(u, 100*measure.Foot, 30*measure.Metre)
	if long := measure.RoundUp(row+measure.By(u, 2*measure.Foot, 600*measure.Millimetre), step); long > reel {
		return long
	}
	return 0
}

// Tape returns the shortest tape sold that reaches a length; the longest where none does.
func Tape(u measure.System, reach measure.Length) measure.Length {
	list := Tapes(u)
	for _, l := range list {
		if reach <= l {
			return l
		}
	}
	return list[len(list)-1]
}

// Lath is how long a lath of the shop is. Common practice, no source.
func Lath(u measure.System) measure.Length {
	return measure.By(u, 8*measure.Foot, 2400*measure.Millimetre)
}

// Laths is how many laths make a gauge stick as long as a width, each tied a forearm over the next. Our own choice.
func Laths(u measure.System, width measure.Length) int {
	over := measure.By(u, 18*measure.Inch, 450*measure.Millimetre)
	return max(1, int(math.Ceil(float64((width-over)/(Lath(u)-over))-1e-9)))
}

// Board is how long the boards are that a shop sells or cuts from its sheets, at most. Common practice, no source.
func Board(u measure.System) measure.Length {
	return measure.By(u, 8*measure.Foot, 2400*measure.Millimetre)
}

// PlateScrew is the length of the screws through a joint's plate into boards of BoardThick that do not come out below. Common practice, no source.
func PlateScrew(u measure.System) measure.Length {
	return measure.By(u, 5*measure.Inch/4, 30*measure.Millimetre)
}

// BoardThick is the least thickness of sole boards and their plates. Common practice, no source.
func BoardThick(u measure.System) measure.Length {
	return measure.By(u, 3*measure.Inch/4, 18*measure.Millimetre)
}

// PlateScrews are the screws of a joint's plate, half of them in each board. Common practice, no source.
const PlateScrews = 8

// SocketScrews are the screws of a bar's socket: a floor flange has four holes. Common practice, no source.
const SocketScrews = 4

// LathTies are the zip ties about two laths where they lie over each other. Our own choice.
const LathTies = 2

// A stake in the ground.

// FootGive is how far the two feet of an arch may stand nearer or wider than planned: half the inch that the crown's give or take counts with.
func FootGive(u measure.System) measure.Length {
	return measure.By(u, measure.Inch/2, 10*measure.Millimetre)
}

// FeetSlip is how much farther apart than planned feet may have come to stand unseen: more is seen without a tape. Our own choice.
func FeetSlip(u measure.System) measure.Length {
	return measure.By(u, 6*measure.Inch, 150*measure.Millimetre)
}

// OffDot is how far a stake may stand off its dot, any way, and nothing is changed: half an inch at each foot is inside the crown's give or take. Our own choice.
func OffDot(u measure.System) measure.Length {
	return measure.By(u, measure.Inch/2, 10*measure.Millimetre)
}

// RidgeOff is how far ridge pieces may be changed by what the first has taught: two stakes off their dots. More is a stake out of its place or a socket not home. Our
// own choice.
func RidgeOff(u measure.System) measure.Length { return 2 * OffDot(u) }

// FeatureNear is how near to a stake a feature of the ground concerns whoever drives it; what lies farther off is for the site map. Our own choice.
func FeatureNear(u measure.System) measure.Length {
	return measure.By(u, 3*measure.Foot, 900*measure.Millimetre)
}

// MovedAlong is how far a pair of stakes may be moved along the row; the ridge pieces beside it are then cut to suit. Our own choice.
func MovedAlong(u measure.System) measure.Length {
	return measure.By(u, 3*measure.Inch, 75*measure.Millimetre)
}

// GuyMoved is how far a guy stake may stand off its dot. Our own choice.
func GuyMoved(u measure.System) measure.Length {
	return measure.By(u, measure.Foot, 300*measure.Millimetre)
}

// PullUp is how far above the ground a stake is pulled to try it, at most.
func PullUp(u measure.System) measure.Length {
	return measure.By(u, 24*measure.Inch, 600*measure.Millimetre)
}

// OverHook is how much of a stake is left over the hook that pulls it, or that slips off. Our own choice.
func OverHook(u measure.System) measure.Length {
	return measure.By(u, 2*measure.Inch, 50*measure.Millimetre)
}

// PullGives is how far a stake that holds moves where it enters the ground, while it is pulled; one that moves as far is driven deeper. Farther up the steel's own bend would hide
// what the ground does. Our own choice, over what a bar bent to its yield gives in ground that bears twice as much.
func PullGives(u measure.System) measure.Length {
	return measure.By(u, 3*measure.Inch/4, 18*measure.Millimetre)
}

// HandMoves is how far a stake that holds is moved by hand of an evening. Our own choice.
func HandMoves(u measure.System) measure.Length {
	return measure.By(u, measure.Inch, 25*measure.Millimetre)
}

// PullMargin is what the pull test asks over what still air does, where no gust was worked out. Our own choice.
const PullMargin = 1.5

// Deeper is how much deeper a stake goes that moves: a hand. Common practice, no source.
func Deeper(u measure.System) measure.Length {
	return measure.By(u, 4*measure.Inch, 100*measure.Millimetre)
}

// Square are the units of the 3-4-5 triangle that squares a row's first arch, largest first: 9-12-15 ft or 3-4-5 m where the row is that long. Our own choice.
func Square(u measure.System) []measure.Length {
	if u == measure.Metric {
		return []measure.Length{measure.Metre, measure.Metre / 2, measure.Metre / 5}
	}
	return []measure.Length{3 * measure.Foot, 2 * measure.Foot, measure.Foot}
}
