package lights

import (
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// bare is the end of a pipe left unwrapped for its socket. A deeper socket leaves more.
const bare = 1 * measure.Inch

// stretch is a length of one part of the frame, from tape to tape: along a leg from its ground point, along an arch from
// the left one, along a ridge piece from its end nearer arch 1.
type stretch struct {
	Part
	from, to measure.Length
}

func (s stretch) length() measure.Length { return s.to - s.from }

// side returns the wall that the stretch begins on.
func (s stretch) side() spec.Side {
	side, _ := s.Wall()
	return side
}

// crownTape returns the tape from a leg's ground point to the centre of the crown fitting.
func crownTape(k *arch.Kind, side spec.Side) measure.Length {
	if side == spec.Right {
		return k.Length - k.CrownTape
	}
	return k.CrownTape
}

// wrapEnd returns the tape at which a wrap up a leg ends: short of the pipe's end, which goes into the crown joint. A
// single stick has no joint there, and its two wraps meet.
func wrapEnd(s *spec.Spec, number int, k *arch.Kind, side spec.Side) measure.Length {
	end, a := pipeEnd(s, number, k, side), s.ArchOf(number)
	if a.OneStick {
		return end
	}
	return end - max(bare, a.Pipe.Socket)
}

// pipeEnd returns the tape at which a leg's pipe ends: at the stop of the crown joint, or where a single stick passes the crown.
func pipeEnd(s *spec.Spec, number int, k *arch.Kind, side spec.Side) measure.Length {
	a := s.ArchOf(number)
	if a.OneStick {
		return crownTape(k, side)
	}
	joint := a.Pipe.CouplingStop / 2
	if s.Ridge.Present && s.Tunnel.Arches > 1 {
		joint = a.Pipe.TakeOff
	}
	return crownTape(k, side) - joint
}

// onLeg returns what a place covers of one leg, up to its end; not ok where that is nothing.
func onLeg(p spec.Place, number int, k *arch.Kind, side spec.Side, end measure.Length) (stretch, bool) {
	out := stretch{Part: Leg(side, number), to: end}
	switch p.Bound {
	case spec.ByTape:
		out.from, out.to = p.From, min(end, p.To)
	case spec.ByHeight:
		if p.From > 0 {
			tape, reached := k.TapeAt(side, p.From)
			if !reached {
				return out, false
			}
			out.from = tape
		}
		if tape, reached := k.TapeAt(side, p.To); reached {
			out.to = min(end, tape)
		}
	}
	return out, out.to > out.from
}

// onArch returns what a place covers of an arch from foot to foot: one stretch where it runs over the crown, else one up
// each leg.
func onArch(p spec.Place, number int, k *arch.Kind) []stretch {
	out := stretch{Part: Part{Arch, number}}
	if p.Bound == spec.ByTape {
		out.from, out.to = p.From, min(k.Length, p.To)
		return oneIf(out)
	}
	leftEnd, rightEnd := crownTape(k, spec.Left), crownTape(k, spec.Right)
	left, onLeft := onLeg(p, number, k, spec.Left, leftEnd)
	right, onRight := onLeg(p, number, k, spec.Right, rightEnd)
	if onLeft && onRight && left.to == leftEnd && right.to == rightEnd {
		out.from, out.to = left.from, k.Length-right.from
		return oneIf(out)
	}
	return append(oneIf(left), oneIf(right)...)
}

// crowns are the heights of the two crowns of a bay, each above its arch's ground line.
type crowns [2]measure.Length

// onRidge returns what places cover of a ridge piece, as far as its ends: wraps stop short of its sockets, drops hang from crown to crown.
func onRidge(s *spec.Spec, where []spec.Place, bay int, piece, end measure.Length, high crowns) (out []stretch) {
	for _, p := range where {
		if p.Part == spec.RidgePieces && takes(p, bay) {
			out = append(out, onPiece(p, bay, piece, end, s.Ridge.Pipe.TakeOff, high)...)
		}
	}
	return out
}

// onPiece returns what one place covers of it. A height on the ridge counts from the ground line too, which between two arches
// goes evenly from the one's to the other's, so a range of heights cuts a sloping piece once at each end.
func onPiece(p spec.Place, bay int, piece, end, takeOff measure.Length, high crowns) []stretch {
	out := stretch{Part: Part{Ridge, bay}, from: end, to: piece - end}
	switch p.Bound {
	case spec.ByTape:
		out.from, out.to = max(end, p.From), min(piece-end, p.To)
	case spec.ByHeight:
		low, top := high[0], high[1]
		if low == top {
			if low < p.From || low > p.To {
				return nil
			}
			break
		}
		tape := func(height measure.Length) measure.Length {
			return (height-low)/(top-low)*(piece+2*takeOff) - takeOff
		}
		from, to := tape(p.From), tape(p.To)
		out.from, out.to = max(out.from, min(from, to)), min(out.to, max(from, to))
	}
	return oneIf(out)
}

// oneIf returns the stretch alone, or nothing where it has no length.
func oneIf(s stretch) []stretch {
	if s.to <= s.from {
		return nil
	}
	return []stretch{s}
}

// takes reports whether a place names the arch or bay.
func takes(p spec.Place, number int) bool { return p.Of == nil || slices.Contains(p.Of, number) }

// onFrame returns what places cover of an arch's legs, none for the ridge. Wraps stop short of the crown joint and keep off the ground, drops
// hang up to its middle.
func onFrame(s *spec.Spec, where []spec.Place, number int, k *arch.Kind, wraps bool) (out []stretch) {
	for _, p := range where {
		if p.Part == spec.RidgePieces || !takes(p, number) {
			continue
		}
		var covered []stretch
		if p.Part == spec.WholeArches {
			covered = onArch(p, number, k)
		} else {
			covered = onLegs(s, p, number, k, wraps)
		}
		for _, st := range covered {
			if wraps {
				st = st.offGround(s.Units, k.Length)
			}
			out = append(out, oneIf(st)...)
		}
	}
	return out
}

// onLegs returns what a place covers of an arch's legs, each for itself.
func onLegs(s *spec.Spec, p spec.Place, number int, k *arch.Kind, wraps bool) (out []stretch) {
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		if p.Part == spec.LeftLegs && side == spec.Right || p.Part == spec.RightLegs && side == spec.Left {
			continue
		}
		end := crownTape(k, side)
		if wraps {
			end = wrapEnd(s, number, k, side)
		}
		if st, ok := onLeg(p, number, k, side, end); ok {
			out = append(out, st)
		}
	}
	return out
}
