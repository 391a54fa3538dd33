package arch

import (
	"math"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Body is an arch as the rod it was solved as, for those who load it otherwise than with its own weight and lights.
type Body struct {
	In    *Input
	Rod   bend.Rod    // as raised
	Shape *bend.Shape // as raised

	model *model
}

// Body returns the arch's rod, nil where it is only drawn.
func (k *Kind) Body() *Body {
	m := k.built
	if m == nil {
		return nil
	}
	return &Body{In: m.in, Rod: m.rod, Shape: m.shape, model: m}
}

// Aged returns the rod with the share left of the pipe's modulus, its feet as they lie as raised.
func (b *Body) Aged(left float64) bend.Rod { return b.model.frame.rod(left, b.model.feet) }

// Within brings a tape into the rod, in metres.
func (b *Body) Within(tape measure.Length) float64 { return b.model.within(tape) }

// Lie is how the pipe lies on its two bars.
type Lie [2]lean

// Lie returns how it lies as raised.
func (b *Body) Lie() Lie { return b.model.lie }

// Rest finds how a rod made for each pair of feet comes to rest on the arch's bars: lie is where its pipe lay on them, and becomes where it comes to lie. The error is the
// solver's.
func (b *Body) Rest(solve func(bend.Rod) (*bend.Shape, error), lie *Lie, rod func(feet [2]bend.End) bend.Rod) (*bend.Shape, error) {
	m, err := b.model.frame.rest(solve, (*[2]lean)(lie), rod)
	if err != nil {
		return nil, err
	}
	return m.shape, nil
}

// within brings a tape into the rod, in metres.
func (m *model) within(tape measure.Length) float64 {
	return min(max(tape.Metres(), 0), m.rod.Length())
}

// HighestTie returns how high a guy may be tied on both legs of an arch before the two ties stand inside the opening's width, in whole
// steps of three inches or five centimetres, and a hand below the crown at most.
func (k *Kind) HighestTie() measure.Length {
	in := k.built.in
	low, high := measure.Length(0), k.Crown-practice.BelowCrown
	for range 40 {
		mid := (low + high) / 2
		if left, right, ok := k.Across(mid); ok && right.X-left.X >= in.OpeningWidth+2*measure.Inch {
			low = mid
		} else {
			high = mid
		}
	}
	step := practice.BelowCrown
	if in.Units == measure.Metric {
		step = 50 * measure.Millimetre
	}
	return measure.Length(math.Floor(float64(low/step))) * step
}

// TiedAt returns the tapes from the left foot, in metres, of guys tied that high to both legs, or to both sides of the crown fitting.
func (k *Kind) TiedAt(height measure.Length) []float64 {
	m := k.built
	left, right, ok := k.Across(height)
	left.Tape, right.Tape = k.offCouplings(m.in.Units, left.Tape), k.offCouplings(m.in.Units, right.Tape)
	if !ok || height > k.Crown-practice.BelowCrown {
		left.Tape, right.Tape = m.fitting.from, m.fitting.to
		if left.Tape == right.Tape {
			left.Tape, right.Tape = m.frame.crown-measure.Inch, m.frame.crown+measure.Inch
		}
	}
	return []float64{left.Tape.Metres(), right.Tape.Metres()}
}

// joinThem says what holds arches that no ridge joins. Guys of an end arch alone hold it one way, and none holds the arches between.
const joinThem = "join the crowns by a ridge and guy both end arches"
