package weather

import (
	"math"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// Stiffness of what is tied, N: force over strain.
const (
	guyStiffness     = 5e3
	webbingStiffness = 1e7
)

// area returns the section of a pipe's wall, m².
func area(p catalog.Pipe) float64 {
	d, i := p.OD.Metres(), p.ID().Metres()
	return math.Pi / 4 * (d*d - i*i)
}

// strutBears is the push under which a brace of pipe buckles: Euler's load of a stick hinged at both ends.
func (t *Tunnel) strutBears(k *Kind) float64 {
	p := k.spec.Pipe
	d, i := p.OD.Metres(), p.ID().Metres()
	stiff := float64(p.Modulus) * math.Pi / 64 * (d*d*d*d - i*i*i*i)
	from, reach := t.Spec.Braces.From, t.Spec.Tunnel.Spacing-PegShort(t.Spec.Units)
	length := measure.Length(math.Hypot(float64(from), float64(reach))).Metres()
	if length <= 0 {
		return math.Inf(1)
	}
	return math.Pi * math.Pi * stiff / (length * length)
}
