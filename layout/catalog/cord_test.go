package catalog

import (
	"testing"

	"hoopwright/layout/measure"
)

// Resistance follows from the section and copper of 0.017241 Ω·mm²/m at 20 °C (IEC 60028), warmed by (234.5 + T)/254.5; the lay of the
// strands and, for IEC 60228, a maximum instead of a mean put the tables a little above.
func TestCordResistance(t *testing.T) {
	for _, c := range Cords() {
		copper, above := 17.241/float64(c.Area), 1.17
		if c.Volts == 120 {
			copper, above = copper*(234.5+75)/254.5, 1.03
		}
		if ratio := c.Ohms / copper; ratio < 1 || ratio > above {
			t.Errorf("%s: %.3f Ω/km is %.3f of plain copper", c.Name, c.Ohms, ratio)
		}
	}
}

// Drop over both wires is 2·L·I·R: with NEC chapter 9 table 8, 14 AWG 50 ft 8 A loses 2.512 V and 16 AWG 50 ft 12 A 5.988 V.
func TestCordDrop(t *testing.T) {
	for _, c := range []struct {
		name        string
		amps, volts float64
	}{{"14 AWG", 8, 2.512}, {"16 AWG", 12, 5.988}} {
		cord, ok := FindCord(c.name)
		if !ok {
			t.Fatalf("no %s", c.name)
		}
		near(t, c.name+" drop", 2*(50*measure.Foot).Metres()/1000*c.amps*cord.Ohms, c.volts, 0.0005)
	}
}

func TestCordAmps(t *testing.T) {
	thin, _ := FindCord("16 AWG")
	for feet, want := range map[measure.Length]measure.Current{25: 13, 50: 13, 100: 10} {
		if got := thin.AmpsAt(feet * measure.Foot); got != want {
			t.Errorf("16 AWG over %v ft may carry %v, want %v", feet, got, want)
		}
	}
	thick, _ := FindCord("12 AWG")
	if got := thick.AmpsAt(100 * measure.Foot); got != 15 {
		t.Errorf("12 AWG over 100 ft may carry %v, want the plug's 15", got)
	}
}

func TestFindCord(t *testing.T) {
	for name, want := range map[string]string{
		"14 AWG": "14 AWG", "14awg": "14 AWG", "cord 16 AWG": "16 AWG", "1 mm2": "1.0 mm2", "1.0 mm²": "1.0 mm2", "2.5MM2": "2.5 mm2",
	} {
		if c, ok := FindCord(name); !ok || c.Name != want {
			t.Errorf("%q found %q, %v; want %q", name, c.Name, ok, want)
		}
	}
	for _, name := range []string{"", "0", "14", "13 AWG", "2 mm2", "14 ft"} {
		if c, ok := FindCord(name); ok {
			t.Errorf("%q found %q", name, c.Name)
		}
	}
}
