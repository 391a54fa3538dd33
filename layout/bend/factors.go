package bend

import "math"

// Factors are the least multiples of all weight, the rod's own and the loads alike, at which it is no longer stable.
type Factors struct {
	Sideways float64 // in its plane
	Along    float64 // out of its plane, leaning along the tunnel
}

const (
	// Most is the greatest factor looked for: it means Most or more.
	Most = 20
	// precise is the share to which a factor is found unless told otherwise.
	precise = 1e-3
)

// Factors follows the rod's shape while its weights grow from nothing, and finds where it stops being stable each way. held
// are the places, in m along the rod and at most one, that guys keep in the plane. A factor of 0 means that not even the
// weightless rod stands. The error is an *Unsolved where there is no weightless shape at all.
func (s *Solver) Factors(rod Rod, held ...float64) (Factors, error) {
	if err := rod.check(); err != nil {
		return Factors{}, err
	}
	s.rod = rod
	s.mesh(rod)
	light := aim{rod.DX, rod.DY, rod.Start.Angle, rod.Finish.Angle, 0}
	var tried []string
	if err := s.weightless(light, &tried); err != nil {
		s.fits = false
		return Factors{}, err
	}
	s.fits = true
	var base state
	base.copyFrom(&s.now)
	f := Factors{Sideways: s.limit(&base, light, s.surplus), Along: Most}
	if s.InPlane {
		return f, nil
	}
	f.Along = s.limit(&base, light, func() int {
		s.surplus() // brings the foot's moment up to date
		s.read(&s.scratch)
		return s.surplusAside(&s.scratch, held)
	})
	return f, nil
}

// StandsAside reports whether the rod under its own weight and loads, no multiple of them, stands without leaning out of its plane; held as
// for Factors. A rod without a shape does not.
func (s *Solver) StandsAside(rod Rod, held ...float64) bool {
	if s.find(rod) != nil {
		return false
	}
	s.surplus()
	s.read(&s.scratch)
	return s.surplusAside(&s.scratch, held) == 0
}

// mostJump is how far, in rad, an angle may turn between two loads of which the one shape is taken for the other's continuation: past a fold a pipe that hangs
// between its feet is stable again.
const mostJump = 0.5

// near reports whether two states may be of one path.
func (s *state) near(o *state) bool {
	for i := range s.theta {
		if math.Abs(s.theta[i]-o.theta[i]) > mostJump {
			return false
		}
	}
	return true
}

// limit finds the least load at which the shape that starts as base has a surplus, or ceases to exist.
func (s *Solver) limit(base *state, light aim, surplus func() int) float64 {
	at := func(load float64) aim { a := light; a.load = load; return a }
	s.now.copyFrom(base)
	s.aim = light
	if surplus() > 0 {
		return 0
	}
	s.low.copyFrom(base)
	near := precise
	if s.Precision > 0 {
		near = s.Precision
	}
	low, high, seen := 0.0, float64(Most), false
	reach := func(load float64) bool {
		s.aim = at(load)
		settled := s.newton() && s.now.near(&s.low)
		if settled && surplus() == 0 {
			low = load
			s.low.copyFrom(&s.now)
			return true
		}
		high, seen = load, settled
		s.now.copyFrom(&s.low)
		return false
	}
	for climb := 0.5; ; climb = low * (1 + 2*near) {
		for reach(min(climb, Most)) {
			if low >= Most {
				return Most
			}
			climb = 2 * low
		}
		for high-low > near*high {
			if high < precise {
				return 0
			}
			reach((low + high) / 2)
		}
		// Either a shape with a surplus was seen, or Newton's method did not settle: because there is none, or because it was asked for from too far. From
		// here it is not far.
		if seen || !reach(low*(1+2*near)) {
			return (low + high) / 2
		}
	}
}
