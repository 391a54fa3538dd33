package bend_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"hoopwright/layout/bend"
)

// plumb returns a uniform weightless arch of span 1, B = 1, both feet plumb.
func plumb(length float64) bend.Rod {
	return bend.Rod{
		Stretches: []bend.Stretch{{Length: length, Stiffness: 1}},
		Start:     bend.End{Angle: math.Pi / 2},
		Finish:    bend.End{Angle: -math.Pi / 2},
		DX:        1,
	}
}

// half is one half of that arch, crown to foot, in any scale: the classic elastica (A. E. H. Love, A Treatise on the
// Mathematical Theory of Elasticity, 4th ed., ch. XIX), elliptic integrals from gonum.
type half struct{ length, span, height, curvature, thrust float64 }

// bowed is the half with sin(θ/2) = p·sin φ and λ = 1, up to the foot before (or past) the inflection.
func bowed(p float64, past bool) half {
	phi, m := math.Asin(min(math.Sqrt2/2/p, 1)), p*p
	f, e, c := mathext.EllipticF(phi, m), mathext.EllipticE(phi, m), math.Cos(phi)
	if past {
		f, e, c = 2*mathext.CompleteK(m)-f, 2*mathext.CompleteE(m)-e, -c
	}
	return half{f, 2*e - f, 2 * p * (1 - c), 2 * p, 1}
}

// flat is the half of a wide arch: θ' = √(1 − m·sin²(θ/2)), m < 0, where the feet are pulled together.
func flat(m float64) half {
	f, e := mathext.EllipticF(math.Pi/4, m), mathext.EllipticE(math.Pi/4, m)
	return half{2 * f, 2*f - 4*(f-e)/m, 4 / m * (1 - math.Sqrt(1-m/2)), 1, m / 4}
}

// closedForm returns height and crown radius over span, and thrust × span²/B, for a length over span.
func closedForm(lw float64) (height, radius, thrust float64) {
	var low, high float64
	var of func(x float64) half
	edge := bowed(math.Sqrt2/2, false)
	switch {
	case lw < math.Pi/2:
		low, high, of = 30, -30, func(x float64) half { return flat(-math.Exp(x)) }
	case lw < edge.length/edge.span:
		low, high, of = 1e6, math.Sqrt2/2, func(x float64) half { return bowed(x, false) }
	default:
		low, high, of = math.Sqrt2/2, 1-1e-9, func(x float64) half { return bowed(x, true) }
	}
	for range 200 { // length over span rises from low to high
		mid := (low + high) / 2
		if h := of(mid); h.span > 0 && h.length/h.span < lw {
			low = mid
		} else {
			high = mid
		}
	}
	h := of(low)
	return h.height / (2 * h.span), 1 / (h.curvature * 2 * h.span), h.thrust * 4 * h.span * h.span
}

// TestClosedForm also meets the values that two other methods agreed on: 2.5 → .986971109, .423969583, 2.72644027.
func TestClosedForm(t *testing.T) {
	for _, lw := range []float64{1.05, 1.1, 1.2, 1.4, 1.55, 1.6, 2, 2.1, 2.18, 2.2, 2.5, 3, 3.5} {
		parts := bend.Parts
		if lw < 1.3 {
			parts *= 5 // flat arches bend within a tenth of the span from their feet
		}
		sh, err := bend.NewSolver(parts).Solve(plumb(lw))
		if err != nil {
			t.Errorf("L/W %g: %v", lw, err)
			continue
		}
		height, radius, thrust := closedForm(lw)
		top := sh.At(lw / 2)
		near(t, lw, "height", top.Y, height, 1e-6)
		near(t, lw, "crown radius", -1/top.Curvature, radius, 1e-6)
		near(t, lw, "thrust", sh.Thrust, thrust, 1e-6)
		near(t, lw, "crown x", top.X, 0.5, 1e-9)
		if !sh.Stable {
			t.Errorf("L/W %g: not stable", lw)
		}
	}
	sh, _ := bend.Solve(plumb(math.Pi / 2)) // the half circle
	near(t, math.Pi/2, "height", sh.At(math.Pi/4).Y, 0.5, 1e-12)
	if math.Abs(sh.Thrust) > 1e-9 {
		t.Errorf("half circle pushes with %g", sh.Thrust)
	}
	near(t, math.Pi/2, "energy", sh.Energy, math.Pi, 1e-9) // ½·B·κ²·L with κ = 2, L = π/2
	height, radius, thrust := closedForm(2.5)
	near(t, 2.5, "height", height, .986971109, 1e-8)
	near(t, 2.5, "radius", radius, .423969583, 1e-8)
	near(t, 2.5, "thrust", thrust, 2.72644027, 1e-8)
}

func near(t *testing.T, lw float64, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%.4g: %s %.10g, want %.10g (off by %.1e)", lw, what, got, want, got/want-1)
	}
}

// TestOrder: errors shrink with the fourth power of the parts' length.
func TestOrder(t *testing.T) {
	height, _, thrust := closedForm(2.5)
	miss := func(parts int) (float64, float64) {
		sh, err := bend.NewSolver(parts).Solve(plumb(2.5))
		if err != nil {
			t.Fatal(err)
		}
		return math.Abs(sh.At(1.25).Y - height), math.Abs(sh.Thrust - thrust)
	}
	h1, t1 := miss(20)
	h2, t2 := miss(40)
	for _, order := range []float64{math.Log2(h1 / h2), math.Log2(t1 / t2)} {
		if order < 3.8 || order > 4.3 {
			t.Errorf("order %.2f, want 4", order)
		}
	}
}

// TestColumn: S. P. Timoshenko and J. M. Gere, Theory of Elastic Stability, 2nd ed., the table of the buckled column in ch. 2 (from
// memory; its last digit is cut off in places). A hinged arch is two such columns, crown to crown.
func TestColumn(t *testing.T) {
	for _, row := range []struct{ alpha, load, x, y float64 }{
		{20, 1.015, .970, .220}, {40, 1.063, .881, .422}, {60, 1.152, .741, .593}, {80, 1.293, .560, .719},
		{100, 1.518, .349, .792}, {120, 1.884, .123, .803}, {140, 2.541, -.107, .750}, {160, 4.029, -.340, .625},
	} {
		alpha := row.alpha * math.Pi / 180
		p := math.Sin(alpha / 2)
		k, e := mathext.CompleteK(p*p), mathext.CompleteE(p*p)
		sh, err := bend.Solve(bend.Rod{
			Stretches: []bend.Stretch{{Length: 2, Stiffness: 1}},
			Start:     bend.End{Angle: alpha, Hinged: true},
			Finish:    bend.End{Angle: -alpha, Hinged: true},
			DX:        2 * (2*e/k - 1),
		})
		if err != nil {
			t.Errorf("α %g: %v", row.alpha, err)
			continue
		}
		critical := math.Pi * math.Pi / 4
		near(t, row.alpha, "load", sh.Thrust/critical, 4*k*k/math.Pi/math.Pi, 1e-6)
		near(t, row.alpha, "deflection", sh.At(1).Y, 2*p/k, 1e-6)
		near(t, row.alpha, "end angle", sh.Start.Angle, alpha, 1e-6)
		for _, c := range [][2]float64{{sh.Thrust / critical, row.load}, {sh.At(1).X, row.x}, {sh.At(1).Y, row.y}} {
			if math.Abs(c[0]-c[1]) > .0015 {
				t.Errorf("α %g: %g, table %g", row.alpha, c[0], c[1])
			}
		}
	}
}

// TestCantilever: K. E. Bisshopp and D. C. Drucker, Large Deflection of Cantilever Beams, Q. Appl. Math. 3 (1945), from memory.
// Two cantilevers back to back, their root lifted in the middle and their tips on hinges, push their feet with nothing.
func TestCantilever(t *testing.T) {
	for _, row := range []struct{ load, drop, shortening, slope float64 }{
		{1, .301721, .0564332, .461352}, {2, .493457, .160642, .781750}, {10, .810609, .554996, 1.430290},
	} {
		sh, err := bend.Solve(bend.Rod{
			Stretches: []bend.Stretch{{Length: 2, Stiffness: 1}},
			Loads:     []bend.Load{{From: 1, To: 1, Weight: -2 * row.load}},
			Start:     bend.End{Angle: row.slope, Hinged: true},
			Finish:    bend.End{Angle: -row.slope, Hinged: true},
			DX:        2 * (1 - row.shortening),
		})
		if err != nil {
			t.Errorf("PL²/EI %g: %v", row.load, err)
			continue
		}
		near(t, row.load, "drop", sh.At(1).Y, row.drop, 5e-6)
		near(t, row.load, "slope", sh.Start.Angle, row.slope, 5e-6)
		near(t, row.load, "lift", sh.StartLift, -row.load, 1e-9)
		if math.Abs(sh.Thrust) > 1e-4*row.load {
			t.Errorf("PL²/EI %g: thrust %g, want none", row.load, sh.Thrust)
		}
	}
}
