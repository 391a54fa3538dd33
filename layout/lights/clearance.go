package lights

import (
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Standoff returns how far wraps stand off the pipe of an arch: the thickest wire wound on it, or on the ridge beside it.
func Standoff(s *spec.Spec, number int) measure.Length {
	var most measure.Length
	for _, w := range s.Lights.Wraps {
		for _, p := range w.Where {
			if beside(s, p, number) {
				most = max(most, w.String.Wire)
			}
		}
	}
	return most
}

// Hang returns how far the lowest drop on an arch over the opening hangs below its pipe. Drops from legs that stay below the opening's height, or no
// further up the pipe than that, hang beside it.
func Hang(s *spec.Spec, number int) measure.Length {
	return lowestDrop(s, number, func(p spec.Place) bool {
		low := p.Bound != spec.Whole && p.To <= s.Tunnel.OpeningHeight
		return p.Part != spec.RidgePieces && !low
	})
}

// RidgeHang returns how far the lowest drop on the ridge beside an arch hangs below it.
func RidgeHang(s *spec.Spec, number int) measure.Length {
	return lowestDrop(s, number, func(p spec.Place) bool { return p.Part == spec.RidgePieces })
}

// lowestDrop returns how far the lowest drop at an arch hangs on the places that count.
func lowestDrop(s *spec.Spec, number int, counts func(spec.Place) bool) measure.Length {
	var most measure.Length
	for _, d := range s.Lights.Drops {
		for _, p := range d.Where {
			if beside(s, p, number) && counts(p) {
				most = max(most, hangOf(d))
			}
		}
	}
	return most
}

// beside reports whether a place is on the arch, or on a ridge piece that ends there.
func beside(s *spec.Spec, p spec.Place, number int) bool {
	if p.Part != spec.RidgePieces {
		return takes(p, number)
	}
	for _, bay := range []int{number - 1, number} {
		if s.Ridge.Present && bay >= 1 && bay < s.Tunnel.Arches && takes(p, bay) {
			return true
		}
	}
	return false
}
