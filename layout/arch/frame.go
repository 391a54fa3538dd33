package arch

import (
	"math"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Poisson's ratio of rigid PVC, for its stiffness in torsion: typical handbook value, from memory.
const poisson = 0.4

// frame is an arch laid straight: where its sleeves, joints and crown are along the tape. Sticks are known by now.
type frame struct {
	in      *Input
	spec    spec.Arch
	length  measure.Length // foot to foot
	crown   measure.Length // tape of the crown
	sleeve  measure.Length // pipe over bar at each foot
	fitting stiff          // at the crown; empty with one stick
	joints  []stiff        // couplings and the crown fitting, rising tape
}

// stiff is a stretch of tape that a fitting keeps straight.
type stiff struct{ from, to measure.Length }

// gap returns what the joint of the two sticks at the crown adds to them: twice the take-off of a tee or cross where a ridge piece
// ends there, else a coupling's stop, and nothing with a single stick.
func (in *Input) gap() measure.Length {
	switch pipe := in.Spec.Pipe; {
	case in.Spec.OneStick:
		return 0
	case in.Joined:
		return 2 * pipe.TakeOff
	default:
		return pipe.CouplingStop
	}
}

// leg lays one leg's sticks from the ground up and returns its length and couplings.
func leg(sticks []measure.Length, stop, socket measure.Length) (length measure.Length, couplings []stiff) {
	for i, s := range sticks {
		if i > 0 {
			couplings = append(couplings, stiff{length - socket, length + stop + socket})
			length += stop
		}
		length += s
	}
	return length, couplings
}

// lay lays the arch out with these figures.
func (in *Input) lay(a spec.Arch) frame {
	f := frame{in: in, spec: a}
	pipe := a.Pipe
	left, joints := leg(a.Left, pipe.CouplingStop, pipe.Socket)
	f.joints = joints
	if a.OneStick {
		f.length, f.crown = left, left/2
	} else {
		right, mirrored := leg(a.Right, pipe.CouplingStop, pipe.Socket)
		gap := in.gap()
		f.length, f.crown = left+gap+right, left+gap/2
		f.fitting = stiff{left - pipe.Socket, left + gap + pipe.Socket}
		f.joints = append(f.joints, f.fitting)
		for i := len(mirrored) - 1; i >= 0; i-- {
			f.joints = append(f.joints, stiff{f.length - mirrored[i].to, f.length - mirrored[i].from})
		}
	}
	f.sleeve = max(a.Stake.Showing(), 0)
	if n := len(a.Left); n > 0 {
		f.sleeve = min(f.sleeve, a.Left[0])
	}
	if n := len(a.Right); n > 0 {
		f.sleeve = min(f.sleeve, a.Right[0])
	}
	f.sleeve = min(f.sleeve, f.length*0.45)
	return f
}

// rod returns the arch as an elastic rod with the share late of the pipe's modulus left. A bar keeps its own. Pipe, wherever a fitting
// is, weighs as pipe; fittings come with the loads.
func (f *frame) rod(late float64, feet [2]bend.End) bend.Rod {
	pipe, bar := f.spec.Pipe, f.spec.Stake.Bar
	pipeStiff := float64(pipe.Modulus) * late * tube(pipe.OD, pipe.ID())
	barStiff := float64(bar.Modulus) * tube(bar.Diameter, 0)
	rod := bend.Rod{
		Start: feet[0], Finish: feet[1],
		DX: f.spec.Span.Metres(),
		DY: (f.in.RightGround - f.in.LeftGround).Metres(),
	}
	add := func(from, to measure.Length, stiffness, torsion float64) {
		if to-from > measure.Length(1e-6) {
			rod.Stretches = append(rod.Stretches, bend.Stretch{
				Length: (to - from).Metres(), Stiffness: stiffness, Torsion: torsion,
				Weight: float64(pipe.Mass) * measure.Gravity * (to - from).Metres(),
			})
		}
	}
	torsion := pipeStiff / (1 + poisson)
	bends := func(from, to measure.Length) { // a stretch between joints, cut where the bars end
		a, b := min(max(f.sleeve, from), to), min(max(f.length-f.sleeve, from), to)
		add(from, a, pipeStiff+barStiff, torsion)
		add(a, b, pipeStiff, torsion)
		add(b, to, pipeStiff+barStiff, torsion)
	}
	at := measure.Length(0)
	for _, j := range f.joints {
		from, to := max(j.from, at), min(j.to, f.length)
		bends(at, from)
		add(from, to, math.Inf(1), math.Inf(1))
		at = max(to, at)
	}
	bends(at, f.length)

	whole := rod.Length()
	for _, l := range f.in.Loads {
		from, to := min(max(l.From.Metres(), 0), whole), min(max(l.To.Metres(), 0), whole)
		rod.Loads = append(rod.Loads, bend.Load{From: min(from, to), To: max(from, to), Weight: float64(l.Weight)})
	}
	return rod
}

// tube returns π/64·(D⁴ − d⁴) in m⁴.
func tube(outside, inside measure.Length) float64 {
	d, i := outside.Metres(), inside.Metres()
	return math.Pi / 64 * (d*d*d*d - i*i*i*i)
}

// play returns how far the pipe can lean on the bar inside it: the room between them over the length of the sleeve.
func (f *frame) play() float64 {
	room := f.spec.Pipe.ID() - f.spec.Stake.Bar.OverRibs
	if room <= 0 || f.sleeve <= 0 {
		return 0
	}
	return min(float64(room/f.sleeve), mostPlay)
}

// mostPlay caps the lean of a pipe on a bar that hardly shows, rad.
const mostPlay = 0.1
