package catalog

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
)

// Tabled weights agree with the section and the density of steel, 490 lb/ft³ or 7850 kg/m³ (the value the bar standards state).
func TestBarMass(t *testing.T) {
	for _, b := range Bars() {
		r := b.Diameter.Metres() / 2
		want := math.Pi * r * r * 7850
		near(t, b.Name+" in kg/m", float64(b.Mass), want, want*0.002)
		if b.OverRibs <= b.Diameter || b.OverRibs > b.Diameter*1.2 {
			t.Errorf("%s is %v mm over its ribs", b.Name, b.OverRibs)
		}
	}
}

// A 3/8 in bar of steel has E·I = 28 150 lb·in² and, in the lower grade, yields at 40 000·π/32·d³ = 207 lb·in.
func TestBarStiffness(t *testing.T) {
	b, _ := FindBar("3/8 in")
	d := b.Diameter.Inches()
	near(t, "E·I", float64(b.Modulus/measure.PSI)*math.Pi/64*math.Pow(d, 4), 28150, 10)
	near(t, "yield moment", float64(b.Yield/measure.PSI)*math.Pi/32*d*d*d, 207, 0.5)
}

// No. 4 just enters half-inch pipe and no. 5 does not: common practice, no source.
func TestBarsEnterPipe(t *testing.T) {
	pipe, _ := FindPipe("pvc sch40 1/2 in")
	four, _ := FindBar("no. 4")
	five, _ := FindBar("no. 5")
	if play := pipe.ID() - four.OverRibs; play <= 0 || play > measure.Inch/8 {
		t.Errorf("no. 4 has %v mm of play", play)
	}
	if five.OverRibs <= pipe.ID() {
		t.Errorf("no. 5 enters")
	}
}

func TestFindBar(t *testing.T) {
	for name, want := range map[string]string{
		"1/2 in": "1/2 in", `1/2"`: "1/2 in", "1/2in": "1/2 in", "0.5 in": "1/2 in", "4/8 inch": "1/2 in", "No. 4": "1/2 in", "no.4": "1/2 in", "no 4": "1/2 in", "#4": "1/2 in",
		"steel bar 1/2 in": "1/2 in", "rebar #3": "3/8 in", "#5": "5/8 in", "12mm": "12 mm", "1.2 cm": "12 mm", "10 MM": "10 mm", "16 mm": "16 mm",
	} {
		if b, ok := FindBar(name); !ok || b.Name != want {
			t.Errorf("%q found %q, %v; want %q", name, b.Name, ok, want)
		}
	}
	for _, name := range []string{"", "4", "0", "#0", "#12", "7/16 in", "1/2", "12.7 mm x", "no. 44"} {
		if b, ok := FindBar(name); ok {
			t.Errorf("%q found %q", name, b.Name)
		}
	}
}
