package weather

import (
	"math"

	"hoopwright/layout/catalog"
)

// Stiffness of what is tied, N: force over strain, from memory. A braided 1/8 in polyester cord gives about 10 kN (some 1.3 kN at a strain of .13, where it breaks); half of it is taken off for knots, tightener and the give of a stake in
// its soil. Half or twice that moves no gust by more than 6 in 100 (TestGuyStiffness). Polyester webbing of 1 in gives about 60 kN, of which as much is taken off.
const (
	guyStiffness     = 5e3
	webbingStiffness = 30e3
)

// strutBears is the push under which a brace of pipe bows: Euler's load of a stick hinged at both ends.
func (t *Tunnel) strutBears(p catalog.Pipe) float64 {
	d, i := p.OD.Metres(), p.ID().Metres()
	stiff := float64(p.Modulus) * math.Pi / 64 * (d*d*d*d - i*i*i*i)
	length := t.Spec.BraceLength().Metres()
	return math.Pi * math.Pi * stiff / (length * length)
}
