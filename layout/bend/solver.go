package bend

import (
	"fmt"
	"math"
)

// Parts is the number of parts that Solve cuts a rod into unless told otherwise.
const Parts = 64

// Solver solves rods and keeps the memory it works in. Each call starts from the shape the call before ended with where the
// two rods are cut alike, so a run of like rods costs little. It is not for use by two goroutines at once.
type Solver struct {
	parts    int
	rod      Rod
	cuts     []float64
	pieces   []piece
	nodes    int
	turns    []float64 // of the rigid stretches at each node
	length   float64
	weight   float64
	mirrored bool // the rod is even about its middle
	pushed   bool // some load pushes

	aim         aim
	now         state // where the present run of Newton's method is
	kept, low   state // the last that settled; the last that stood
	system      bordered
	r           []float64
	g           [2]float64
	inner       []condensed
	startMoment float64
	fits        bool // now holds a shape
}

// NewSolver returns a solver that cuts rods into about so many parts; 0 means Parts.
func NewSolver(parts int) *Solver {
	if parts <= 0 {
		parts = Parts
	}
	return &Solver{parts: parts}
}

// Solve finds how the rod stands. The shape is the upright one: it is followed from the weightless arch while the weights
// grow, so a Shape that is not Stable has no stable neighbour. The error is an *Unsolved.
func Solve(rod Rod) (*Shape, error) { return NewSolver(0).Solve(rod) }

// Solve is as the function, with this solver's parts and memory.
func (s *Solver) Solve(rod Rod) (*Shape, error) {
	stable, err := s.find(rod)
	if err != nil {
		return nil, err
	}
	return s.shape(stable), nil
}

// Next is as Solve for a rod much like the one before it: it starts from that one's shape alone, and finds nothing, soon, where that leads nowhere.
// The next call then starts from the last shape that was found.
func (s *Solver) Next(rod Rod) (*Shape, error) {
	s.kept.copyFrom(&s.now)
	alike, err := s.take(rod)
	if err != nil {
		return nil, err
	}
	if !alike {
		return s.Solve(rod)
	}
	if s.newton() && s.stable() {
		return s.shape(true), nil
	}
	s.now.copyFrom(&s.kept)
	return nil, &Unsolved{Reason: "no stable shape found near the one before", Tried: []string{"the shape before it"}}
}

// take cuts a rod and aims at its feet and weights, and reports whether the state is a shape of one that is cut alike.
func (s *Solver) take(rod Rod) (alike bool, err error) {
	if err := rod.check(); err != nil {
		return false, err
	}
	pieces, nodes := len(s.pieces), s.nodes
	s.rod, s.aim = rod, aim{rod.DX, rod.DY, rod.Start.Angle, rod.Finish.Angle, 1}
	s.mesh(rod)
	return s.fits && pieces == len(s.pieces) && nodes == s.nodes, nil
}

// find brings the state to the rod's shape, and reports whether that is stable.
func (s *Solver) find(rod Rod) (stable bool, err error) {
	alike, err := s.take(rod)
	if err != nil {
		s.fits = false
		return false, err
	}
	goal := s.aim
	var tried []string
	if alike {
		if s.newton() && s.stable() {
			return true, nil
		}
		tried = append(tried, "the shape before it")
	}
	s.fits = false
	s.guess(goal)
	if s.newton() && s.stable() {
		s.fits = true
		return true, nil
	}
	tried = append(tried, "a guess")

	// From the weightless arch, with the weight coming on.
	light := goal
	light.load = 0
	if err := s.weightless(light, &tried); err != nil {
		return false, err
	}
	if reached := s.follow(light, goal); reached < 1 {
		tried = append(tried, fmt.Sprintf("bringing the weight on (%.0f %% of it)", 100*reached))
		return false, &Unsolved{Reason: "no shape found under this weight", Tried: tried}
	}
	s.fits = true
	return s.stable(), nil
}

// weightless brings the state to the shape of the rod without weight, if need be by moving the feet from where an even half
// circle has them.
func (s *Solver) weightless(light aim, tried *[]string) error {
	s.guess(light)
	s.aim = light
	if s.newton() && s.stable() {
		return nil
	}
	half := aim{dx: s.length * 2 / math.Pi, start: math.Pi / 2, finish: -math.Pi / 2}
	s.guess(half)
	s.aim = half
	reached := 0.0
	if s.newton() {
		reached = s.follow(half, light)
	}
	*tried = append(*tried, fmt.Sprintf("moving the feet of a half circle (%.0f %% of the way)", 100*reached))
	if reached < 1 {
		return &Unsolved{Reason: "no shape found between these feet", Tried: *tried}
	}
	return nil
}

// follow moves the aim from one problem, which the state solves, to another in steps as long as Newton can take, and returns
// the share of the way it came. The state is then the last one that settled.
func (s *Solver) follow(from, to aim) (reached float64) {
	const shortest, mostRuns = 1.0 / 256, 24
	s.kept.copyFrom(&s.now)
	step := 1.0
	for run := 0; reached < 1 && run < mostRuns; run++ {
		t := min(reached+step, 1)
		s.aim = between(from, to, t)
		if s.newton() {
			s.kept.copyFrom(&s.now)
			reached, step = t, 2*step
			continue
		}
		s.now.copyFrom(&s.kept)
		s.aim = between(from, to, reached)
		if step /= 4; step < shortest {
			break
		}
	}
	return reached
}

func between(a, b aim, t float64) aim {
	mix := func(x, y float64) float64 { return x + (y-x)*t }
	return aim{mix(a.dx, b.dx), mix(a.dy, b.dy), mix(a.start, b.start), mix(a.finish, b.finish), mix(a.load, b.load)}
}

// guess sets the state to a likely curve between the aim's end angles: one of two families about the even bend, flat-topped
// for wide spans and bulging for narrow ones, chosen to span about as far as the aim asks.
func (s *Solver) guess(a aim) {
	s.now.theta, s.now.bubble = resize(s.now.theta, s.nodes), resize(s.now.bubble, len(s.pieces))
	clear(s.now.bubble)
	s.now.thrust, s.now.lift = 0, -s.weight*a.load/2
	mid, half := (a.start+a.finish)/2, (a.start-a.finish)/2
	flat := func(power, t float64) float64 {
		u := 1 - 2*t
		return mid + half*math.Copysign(math.Pow(math.Abs(u), power), u)
	}
	bulge := func(c, t float64) float64 { return mid + half*(1-2*t) + c*math.Sin(2*math.Pi*t) }
	span := func(curve func(c, t float64) float64, c float64) float64 {
		const n = 20
		sum := 0.0
		for i := range n {
			sum += math.Cos(curve(c, (float64(i)+0.5)/n))
		}
		return sum / n
	}
	want := a.dx / s.length
	curve, low, high := flat, 1.0, 40.0
	if want < span(flat, 1) {
		curve, low, high = bulge, 1.6, 0.0
	}
	for range 8 { // span(curve, c) rises from low to high
		if c := (low + high) / 2; span(curve, c) < want {
			low = c
		} else {
			high = c
		}
	}
	for i := range s.now.theta {
		s.now.theta[i] = curve(low, 0)
	}
	for _, p := range s.pieces {
		if p.stiff > 0 {
			s.now.theta[p.node+1] = curve(low, (p.s+p.length)/s.length)
		}
	}
}
