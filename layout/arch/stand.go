package arch

import (
	"math"

	"hoopwright/layout/bend"
)

// model is a frame with its rod solved as raised.
type model struct {
	frame
	lie   [2]lean // of the pipe on its bars
	feet  [2]bend.End
	rod   bend.Rod
	shape *bend.Shape
}

// lean is what a pipe does at one foot within the room between it and the bar.
type lean int

const (
	outward lean = iota // against the bar, leaning away from the opening
	inward
	loose // between the two: nothing holds it until it leans
)

// feet returns the rod's ends for stakes that lean by the spec's angle and pipes that lean on them by play.
func (f *frame) feet(lie [2]lean, play float64) (feet [2]bend.End) {
	for i, l := range lie {
		angle := math.Pi/2 + float64(f.spec.Stake.Lean)
		switch l {
		case outward:
			angle += play
		case inward:
			angle -= play
		}
		if i == 1 {
			angle = -angle
		}
		feet[i] = bend.End{Angle: angle, Hinged: l == loose && play > 0}
	}
	return feet
}

// stand solves the arch as raised.
func (f *frame) stand(s *bend.Solver, lie *[2]lean) (*model, error) {
	return f.rest(s.Solve, lie, func(feet [2]bend.End) bend.Rod { return f.rod(1, feet) })
}

// rest solves a rod of the arch. The foot's moment pushes the pipe to one side of the bar; which one, or whether it hangs
// between the two, is found by trying: a pipe pushed off its side is let loose, a loose one is stopped at the side it passes, and one that does not stand loose goes
// over to the side it did not come from.
func (f *frame) rest(solve func(bend.Rod) (*bend.Shape, error), lie *[2]lean, build func(feet [2]bend.End) bend.Rod) (*model, error) {
	play := f.play()
	var came [2]lean // the side a loose foot was let loose from
	var m *model
	for try := 0; try < 8; try++ {
		feet := f.feet(*lie, play)
		rod := build(feet)
		shape, err := solve(rod)
		if err != nil && crosses(lie, came) {
			continue
		}
		if err != nil {
			return nil, err
		}
		m = &model{frame: *f, lie: *lie, feet: feet, rod: rod, shape: shape}
		if play == 0 {
			break
		}
		settled := true
		ends := [2]bend.Place{shape.Start, shape.Finish}
		for i, end := range ends {
			push, angle := end.Moment, end.Angle // positive: outward
			if i == 1 {
				angle = -angle
			}
			off := angle - math.Pi/2 - float64(f.spec.Stake.Lean)
			was := lie[i]
			switch {
			case was == outward && push < 0, was == inward && push > 0:
				lie[i], came[i] = loose, was
			case was == loose && off > play:
				lie[i] = outward
			case was == loose && off < -play:
				lie[i] = inward
			}
			settled = settled && lie[i] == was
		}
		if settled {
			break
		}
	}
	if m == nil {
		return nil, &bend.Unsolved{Reason: "neither side of the bars holds the pipe"}
	}
	return m, m.clamp(solve)
}

// crosses moves loose feet to the side they did not come from, and reports whether there was any.
func crosses(lie *[2]lean, came [2]lean) (any bool) {
	for i, l := range lie {
		if l != loose {
			continue
		}
		lie[i], any = outward, true
		if came[i] == outward {
			lie[i] = inward
		}
	}
	return any
}

// clamp holds feet that came to rest between the two sides of their bars at the angles they came to: they rock by the play and no farther, which is no fall.
func (m *model) clamp(solve func(bend.Rod) (*bend.Shape, error)) error {
	if !m.feet[0].Hinged && !m.feet[1].Hinged {
		return nil
	}
	m.feet = [2]bend.End{{Angle: m.shape.Start.Angle}, {Angle: m.shape.Finish.Angle}}
	m.rod.Start, m.rod.Finish = m.feet[0], m.feet[1]
	shape, err := solve(m.rod)
	if err == nil {
		m.shape = shape
	}
	return err
}

// strength is the part of the pipe's strength that its tightest bend takes up: modulus × strain over strength.
func (m *model) strength() float64 {
	at, ok := m.shape.Tightest(0, m.length.Metres())
	if !ok {
		return 0
	}
	pipe := m.spec.Pipe
	return float64(pipe.Modulus) * pipe.OD.Metres() / 2 * math.Abs(at.Curvature) / float64(pipe.Strength)
}

// crownHeight returns the height of the crown above the middle of the ground line, in metres.
func (m *model) crownHeight() float64 {
	return m.shape.At(m.frame.crown.Metres()).Y - m.rod.DY/2
}

// upright reports whether it stands in its plane, crown up.
func (m *model) upright() bool { return m.shape.Stable && m.crownHeight() > 0 }
