package crew

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"hoopwright/layout/anchor"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// pulled is a bar in soil that is pulled level: a beam on springs that give as p-y curves do, up to the pressures of Broms that anchor reckons with. Clay gives by the cube root
// of p, half of it at 2.5·0.02·b (Matlock, OTC 1204, 1970); sand by a hyperbolic tangent that begins with 5.4 MN/m³ a metre (API RP 2A, loose); both from memory.
type pulled struct {
	bar   catalog.Bar
	soil  anchor.Soil
	depth measure.Length
}

// stiffness is E·I of a round bar, N·m².
func stiffness(b catalog.Bar) float64 {
	return float64(b.Modulus) * math.Pi * math.Pow(b.Diameter.Metres(), 4) / 64
}

// spring returns the soil's push on a metre of the bar at a depth z, over how far it has moved, y: N/m².
func (p pulled) spring(z, y float64) float64 {
	b, y := p.bar.Diameter.Metres(), max(math.Abs(y), 1e-8)
	if cu := float64(p.soil.Cohesion); cu > 0 {
		if z < 1.5*b {
			return 0
		}
		return 9 * cu * b * min(1, 0.5*math.Cbrt(y/(2.5*0.02*b))) / y
	}
	const kp = 3 // of 30°
	most := 3 * p.soil.UnitWeight * kp * b * z
	return most * math.Tanh(5.4e6*z*y/max(most, 1e-9)) / y
}

// gives returns how far the bar moves at the ground, m, pulled with a moment from a height of up, and +Inf where it finds no rest.
func (p pulled) gives(moment, up float64) float64 {
	const parts = 40
	h, n := p.depth.Metres()/parts, 2*parts+2
	k := stiffness(p.bar) / (h * h * h)
	at := mat.NewVecDense(n, nil)
	for range 400 {
		frame := mat.NewSymBandDense(n, 3, nil)
		add := func(i, j int, v float64) { frame.SetSymBand(i, j, frame.At(i, j)+v) }
		for i := range parts {
			for r, row := range [4][4]float64{{12, 6 * h, -12, 6 * h}, {6 * h, 4 * h * h, -6 * h, 2 * h * h}, {-12, -6 * h, 12, -6 * h}, {6 * h, 2 * h * h, -6 * h, 4 * h * h}} {
				for c := r; c < 4; c++ {
					add(2*i+r, 2*i+c, k*row[c])
				}
			}
		}
		for i := range parts {
			half := p.spring((float64(i)+0.5)*h, (at.AtVec(2*i)+at.AtVec(2*i+2))/2) * h / 2
			add(2*i, 2*i, half)
			add(2*i+2, 2*i+2, half)
		}
		load, next := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
		load.SetVec(0, moment/up)
		load.SetVec(1, -moment)
		var solved mat.BandCholesky
		if !solved.Factorize(frame) || solved.SolveVecTo(next, load) != nil || next.AtVec(0) > 1 {
			break
		}
		moved := math.Abs(next.AtVec(0) - at.AtVec(0))
		at.AddVec(at, next)
		at.ScaleVec(0.5, at)
		if moved < 1e-7 {
			return at.AtVec(0)
		}
	}
	return math.Inf(1)
}

// The pull test tells ground that holds from ground that gives, whatever the bar: where the soil bears twice what is asked of it or more the stake moves clearly less at the ground
// than it may, where it bears less than is asked the stake finds no rest. At the hook it would not tell: there a bar clamped in rock moves F·L³/(3·E·I), an inch or so.
func TestPullTestTellsTheGround(t *testing.T) {
	for _, u := range []measure.System{measure.Imperial, measure.Metric} {
		up, limit := practice.PullUp(u).Metres(), practice.PullGives(u).Metres()
		for _, bar := range catalog.Bars() {
			yields := anchor.Yields(bar.Diameter, bar.Yield)
			if hook := yields / up * up * up * up / (3 * stiffness(bar)); hook < limit {
				t.Errorf("%s: at the hook steel alone gives %.0f mm: read there", bar.Name, hook*1000)
			}
			for _, soil := range []anchor.Soil{anchor.Soft(), anchor.Firm(), anchor.Sandy()} {
				for _, depth := range []measure.Length{200, 400, 600} {
					p, holds := pulled{bar, soil, depth}, float64(soil.Holds(bar.Diameter, depth, practice.PullUp(u)))*up
					if good := p.gives(min(yields, holds/2), up); good > limit*0.85 {
						t.Errorf("%s, %s, %.0f mm deep: %.1f mm in ground that holds, of %.1f", bar.Name, soil.Name, float64(depth), good*1000, limit*1000)
					}
					if bad := p.gives(holds*1.05, up); bad < limit {
						t.Errorf("%s, %s, %.0f mm deep: %.1f mm in ground that gives, of %.1f", bar.Name, soil.Name, float64(depth), bad*1000, limit*1000)
					}
				}
			}
		}
	}
}
