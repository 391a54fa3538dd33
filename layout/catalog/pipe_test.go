package catalog

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v within %v", what, got, want, within)
	}
}

// ASTM D1785 prints each size's pressure rating, rounded to 10 psi; it follows from P = 2·S·t/(D − t) with the hydrostatic design
// stress S = 2000 psi, so a wrong diameter or wall shows. E·I at 400 000 psi for an annulus at least wall was worked out by
// hand. The weight per foot of D1785 is for the mean wall: 4 to 8 % above that of the least wall at density 1.40.
func TestSchedule40(t *testing.T) {
	for _, c := range []struct {
		name      string
		psi       float64
		stiffness float64 // lb·in²
	}{
		{"pvc sch40 1/2 in", 600, 6836.74},
		{"pvc sch40 3/4 in", 480, 14814.5},
		{"pvc sch40 1 in", 450, 34937.2},
		{"pvc sch40 1 1/4 in", 370, 77883.9},
	} {
		p, ok := FindPipe(c.name)
		if !ok {
			t.Fatalf("no %s", c.name)
		}
		d, w, id := p.OD.Inches(), p.Wall.Inches(), p.ID().Inches()
		near(t, c.name+" rating in psi", 2*2000*w/(d-w), c.psi, 5)
		near(t, c.name+" E·I", float64(p.Modulus/measure.PSI)*math.Pi/64*(math.Pow(d, 4)-math.Pow(id, 4)), c.stiffness, c.stiffness*1e-5)
		if extra := float64(p.Mass / p.PVCMass()); extra < 1.03 || extra > 1.09 {
			t.Errorf("%s weighs %.3f of its least wall", c.name, extra)
		}
	}
}

// With crosses 60 in apart on half-inch pipe the ridge piece is 59 in: common practice, no source.
func TestTakeOff(t *testing.T) {
	p, _ := FindPipe("pvc sch40 1/2 in")
	near(t, "ridge piece in inches", (60*measure.Inch - 2*p.TakeOff).Inches(), 59, 1e-9)
}

// ISO 4065: the wall is dn/(2S + 1), up to the next tenth; PN 16 with a design stress of 10 MPa is series S 6.3.
func TestMetricWalls(t *testing.T) {
	for _, name := range []string{"pvc-u pn16 20 mm", "pvc-u pn16 25 mm", "pvc-u pn16 32 mm"} {
		p, ok := FindPipe(name)
		if !ok {
			t.Fatalf("no %s", name)
		}
		near(t, name+" wall in mm", float64(p.Wall), math.Ceil(float64(p.OD)/(2*6.3+1)*10)/10, 1e-9)
		near(t, name+" socket in mm", float64(p.Socket), float64(p.OD)/2+6, 1e-9)
	}
}

// A solid rod of PVC 1 m long and 20 mm across is 314.16 cm³ and so 0.4398 kg at density 1.40.
func TestPVCMass(t *testing.T) {
	near(t, "rod in kg/m", float64(Pipe{OD: 20, Wall: 10}.PVCMass()), 0.43982, 1e-5)
}
