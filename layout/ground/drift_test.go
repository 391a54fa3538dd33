package ground

import (
	"math"
	"math/rand/v2"
	"testing"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The farthest a mark can drift is the longest of the sums over every choice of signs, tried one by one; and no direction lets it drift farther.
func TestFarthestDrift(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 1))
	for range 200 {
		var d drift
		for range 2 + random.IntN(5) {
			d = append(d, spec.Point{X: measure.Length(random.NormFloat64()), Y: measure.Length(random.NormFloat64())})
		}
		worst := measure.Length(0)
		for signs := range 1 << len(d) {
			var sum spec.Point
			for i, by := range d {
				sum = along(sum, by, measure.Length(1-2*(signs>>i&1)))
			}
			worst = max(worst, Distance(spec.Point{}, sum))
		}
		near(t, "farthest", d.most(), worst, 1e-12)
		reach := measure.Length(0)
		for a := 0.0; a < math.Pi; a += math.Pi / 3000 {
			reach = max(reach, d.along(ahead(measure.Angle(a))))
		}
		near(t, "over all directions", reach, worst, 1e-4*worst)
	}
}
