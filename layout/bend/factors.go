package bend

import "math"

const (
	// Most is the greatest factor looked for: it means Most or more.
	Most = 20
	// precise is the share to which a factor is found.
	precise = 1e-3
)

// Factor follows the rod's shape while its weights, the rod's own and the loads alike, grow from nothing, and returns the least multiple, up to most, at which it is no longer stable in its plane: 0
// where not even the weightless rod stands. The error is an *Unsolved where there is no weightless shape at all.
func (s *Solver) Factor(rod Rod, most float64) (float64, error) {
	light, err := s.lighten(rod)
	if err != nil {
		return 0, err
	}
	var base state
	base.copyFrom(&s.now)
	return s.limit(&base, light, most, s.surplus), nil
}

// lighten brings the state to the rod without its weights, and returns the aim it then has.
func (s *Solver) lighten(rod Rod) (light aim, err error) {
	if _, err := s.take(rod); err != nil {
		return light, err
	}
	light = s.aim
	light.load = 0
	var tried []string
	err = s.weightless(light, &tried)
	s.fits = err == nil
	return light, err
}

// close is the share to which FirstFall finds a load.
const close = 0.01

// FirstFall returns the least load, up to most, that is not borne, within close of it and on the careful side; most where all are. bears says whether one is, and what is left
// of some margin that comes to nothing where it no longer is, if there is one. guess is about where.
func FirstFall(guess, most float64, bears func(load float64) (margin float64, ok bool)) float64 {
	low, high := 0.0, 0.0
	before, after := 0.0, 0.0
	for load := min(guess, most); ; {
		if margin, ok := bears(load); ok {
			low, before = load, margin
			if low >= most {
				return most
			}
		} else {
			high, after = load, margin
		}
		switch {
		case high == 0:
			load = min(2*low, most)
		case high-low <= close*high:
			return low
		case low == 0 && high < close:
			return 0
		case low > 0 && after < 0: // the straight line through both, kept off the ends
			load = low + (high-low)*min(max(before/(before-after), .02), .98)
			if load-low < close*high/2 {
				load = low + close*high/2
			}
		default:
			load = (low + high) / 2
		}
	}
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

// limit finds the least load, up to most, at which the shape that starts as base has a surplus, or ceases to exist.
func (s *Solver) limit(base *state, light aim, most float64, surplus func() int) float64 {
	at := func(load float64) aim { a := light; a.load = load; return a }
	s.now.copyFrom(base)
	s.aim = light
	if surplus() > 0 {
		return 0
	}
	s.low.copyFrom(base)
	low, high, seen := 0.0, most, false
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
	for climb := 0.5; ; climb = low * (1 + 2*precise) {
		for reach(min(climb, most)) {
			if low >= most {
				return most
			}
			climb = 2 * low
		}
		for high-low > precise*high {
			if high < precise {
				return 0
			}
			reach((low + high) / 2)
		}
		// Either a shape with a surplus was seen, or Newton's method did not settle: because there is none, or because it was asked for from too far. From
		// here it is not far.
		if seen || !reach(low*(1+2*precise)) {
			return (low + high) / 2
		}
	}
}
