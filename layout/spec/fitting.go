package spec

// Fitting is what joins the pipe at an arch's crown.
type Fitting int

// The fittings. A single stick bent over whole has none; a tee or cross has a socket for the ridge on one side or on both.
const (
	NoFitting Fitting = iota
	Coupling
	Tee
	Cross
)

// String returns the fitting's name, empty for none.
func (f Fitting) String() string { return [...]string{"", "coupling", "tee", "cross"}[f] }

// CrownFitting returns the fitting at the crown of an arch, 1 to Tunnel.Arches.
func (s *Spec) CrownFitting(arch int) Fitting {
	last := s.Tunnel.Arches
	switch {
	case s.ArchOf(arch).OneStick:
		return NoFitting
	case !s.Ridge.Present || last == 1:
		return Coupling
	case arch == 1 || arch == last:
		return Tee
	}
	return Cross
}
