package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// helper is a person at work: feet on a place, hands on what they hold, the name that the words call them by. Our own drawing.
type helper struct {
	called string
	feet   paper.Point
	tall   paper.Length
	hands  [2]paper.Point // the zero point: the arm hangs down
}

// Proportions of a helper in shares of the height, about those of a grown person.
const (
	hipAt      = 0.50
	shoulderAt = 0.80
	headAt     = 0.925
	headRadius = 0.068
	upperArm   = 0.19
	stance     = 0.075 // from the middle to each foot
	legHalf    = 0.040
	torsoHalf  = 0.075
	armHalf    = 0.028
)

// draw draws the person: an outline that hides what is behind it. What they hold is drawn after them, then their hands.
func (h helper) draw(b *place.Board) {
	at := func(x, y float64) paper.Point {
		return h.feet.Add(paper.Point{X: h.tall * paper.Length(x), Y: -h.tall * paper.Length(y)})
	}
	thick := func(share float64) paper.Length { return max(0.55, h.tall*paper.Length(share)) }
	limbs := []paper.Path{capsule(at(0, hipAt+0.03), at(0, shoulderAt-0.05), thick(torsoHalf)),
		capsule(at(-stance, 0.03), at(-0.045, hipAt), thick(legHalf)), capsule(at(stance, 0.03), at(0.045, hipAt), thick(legHalf))}
	for i := range h.hands {
		shoulder, hand := h.shoulder(i), h.hand(i)
		elbow := elbowOf(shoulder, hand, h.tall*upperArm)
		limbs = append(limbs, capsule(shoulder, elbow, thick(armHalf)), capsule(elbow, hand, thick(armHalf)))
	}
	limbs = append(limbs, paper.Circle(at(0, headAt), h.tall*headRadius))
	for _, limb := range limbs { // all outlines first: the fills then leave the outer one
		b.Stroke(limb, paper.Pen{Width: 0.9})
	}
	for _, limb := range limbs {
		b.Fill(limb, paper.White)
	}
}

// grip draws the hands over what they hold.
func (h helper) grip(b *place.Board) {
	for i, hand := range h.hands {
		if hand != (paper.Point{}) {
			b.Fill(paper.Circle(h.hand(i), max(0.8, h.tall*0.036)), paper.Black)
		}
	}
}

// shoulder returns where an arm begins.
func (h helper) shoulder(arm int) paper.Point {
	side := paper.Length(2*arm-1) * torsoHalf * 0.8
	return h.feet.Add(paper.Point{X: h.tall * side, Y: -h.tall * (shoulderAt - 0.03)})
}

// hand returns where a hand comes to: what it reaches for, as far as the arm is long.
func (h helper) hand(arm int) paper.Point {
	shoulder, want := h.shoulder(arm), h.hands[arm]
	if want == (paper.Point{}) {
		return shoulder.Add(paper.Point{X: h.tall * paper.Length(2*arm-1) * 0.05, Y: h.tall * 2 * upperArm * 0.97})
	}
	reach := h.tall * 2 * upperArm * 0.995
	if d := want.Sub(shoulder); d.Long() > reach {
		return shoulder.Add(d.Unit().Times(float64(reach)))
	}
	return want
}

// elbowOf returns the elbow of an arm whose two parts are equally long: it points down.
func elbowOf(shoulder, hand paper.Point, part paper.Length) paper.Point {
	d := hand.Sub(shoulder)
	out := d.Unit().Left()
	if out.Y < 0 {
		out = out.Times(-1)
	}
	half := float64(d.Long() / 2)
	bow := math.Sqrt(max(0, float64(part*part)-half*half))
	return shoulder.Add(d.Times(0.5)).Add(out.Times(bow))
}

// capsule returns the outline of a limb: everything within the radius of a segment.
func capsule(a, b paper.Point, radius paper.Length) paper.Path {
	angle := b.Sub(a).Angle()
	path := paper.Arc(b, radius, angle-math.Pi/2, angle+math.Pi/2)
	back := paper.Arc(a, radius, angle+math.Pi/2, angle+3*math.Pi/2)
	back[0].Verb = paper.Line
	return append(append(path, back...), paper.Step{Verb: paper.Close})
}
