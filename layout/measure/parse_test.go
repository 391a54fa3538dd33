package measure

import (
	"math"
	"strings"
	"testing"
)

// One inch is 25.4 mm and one pound 0.45359237 kg exactly: international yard and pound agreement of 1959. Every
// wanted value below is that definition carried out by hand.
func TestParseLength(t *testing.T) {
	for text, mm := range map[string]float64{
		"7 ft": 2133.6, "7ft": 2133.6, "7'": 2133.6, "7′": 2133.6, "7’": 2133.6, "7 FT": 2133.6, "7 feet": 2133.6,
		"6 in": 152.4, `6"`: 152.4, "6″": 152.4, "6”": 152.4, "6''": 152.4,
		"860 mm": 860, "86 cm": 860, "0.86 m": 860, "2.3 m": 2300, "3.2 m": 3200,
		"1/2 in": 12.7, "1⁄2 in": 12.7, "6 1/2 in": 165.1, "6-1/2 in": 165.1, "7.5 in": 190.5, ".5 in": 12.7, "3/2 in": 38.1,
		"7 ft 6 in": 2286, `7' 6"`: 2286, `7'-6"`: 2286, `7' - 6"`: 2286, "7ft6in": 2286, "7′–6″": 2286, "  7  ft  6  in ": 2286,
		"22′-6 1/2″": 6870.7, "22 ft 6.5 in": 6870.7, `22'6-1/2"`: 6870.7, "0 ft 6 in": 152.4,
		"-7 ft 6 in": -2286, "−7′-6″": -2286, "- 2 in": -50.8,
		"6 860 mm": 6860, "6\u00a0860 mm": 6860, "6\u202f860 mm": 6860, "6\u2009860.5 mm": 6860.5, "1_000 mm": 1000,
		"1 000 000 mm": 1e6, "1 000 1/2 in": 25412.7, "2 100/200 in": 63.5,
		"0": 0, "0 ft": 0, "-0 in": 0,
	} {
		got, err := ParseLength(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
		} else if float64(got) != mm || math.Signbit(float64(got)) != (mm < 0) {
			t.Errorf("%q is %v mm, want %v", text, float64(got), mm)
		}
	}
}

// door strips a door of its type, so that one table serves all.
func door[Q ~float64](parse func(string) (Q, error)) func(string) (float64, error) {
	return func(text string) (float64, error) {
		v, err := parse(text)
		return float64(v), err
	}
}

func TestParseOthers(t *testing.T) {
	for _, c := range []struct {
		read func(string) (float64, error)
		text string
		want float64
	}{
		{door(Parse[Angle]), "180 deg", math.Pi}, {door(Parse[Angle]), "-90°", -math.Pi / 2},
		{door(Parse[Mass]), "1 lb", 0.45359237}, {door(Parse[Mass]), "16 oz", 0.45359237}, {door(Parse[Mass]), "3 kg", 3}, {door(Parse[Mass]), "250 g", 0.25},
		{door(Parse[LineMass]), "1 lb/ft", 1.48816394}, {door(Parse[LineMass]), "0.24 kg/m", 0.24}, // NIST SP 811, table B.8: 1.488164
		{door(Parse[Pressure]), "1000 psi", 6894757.29}, {door(Parse[Pressure]), "3 200 MPa", 3.2e9}, // NIST SP 811, table B.8: 6.894757 kPa
		{door(Parse[Current]), "15 A", 15}, {door(Parse[Current]), "1/2 A", 0.5}, {door(Parse[Voltage]), "120 V", 120},
		{door(Parse[Power]), "4.8 W", 4.8}, {door(Parse[Power]), "1.5 kW", 1500},
		{door(Parse[Speed]), "1 mph", 0.44704}, {door(Parse[Speed]), "36 km/h", 10}, {door(Parse[Speed]), "10 m/s", 10},
		{door(Parse[Temperature]), "32 F", 0}, {door(Parse[Temperature]), "212 °F", 100}, {door(Parse[Temperature]), "-40 F", -40}, {door(Parse[Temperature]), "-32 F", -320.0 / 9},
		{door(Parse[Temperature]), "−7 °C", -7}, {door(Parse[Temperature]), "0 C", 0},
		{door(Parse[Share]), "80 %", 0.8}, {door(Parse[Share]), "7%", 0.07}, {door(Parse[Share]), "0", 0},
		{door(Parse[Area]), "1.5 mm2", 1.5}, {door(Parse[Area]), "2.5 mm²", 2.5}, {door(Parse[Area]), "0.75MM2", 0.75},
	} {
		got, err := c.read(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
		} else if math.Abs(got-c.want) > 1e-8*math.Abs(c.want) {
			t.Errorf("%q is %v, want %v", c.text, got, c.want)
		}
	}
}

// Diameters in inches from the table of ASTM B258, to the digits it prints.
func TestAWG(t *testing.T) {
	for n, inches := range map[int]float64{10: 0.1019, 12: 0.0808, 14: 0.0641, 16: 0.0508, 18: 0.0403, 22: 0.0253, 36: 0.0050} {
		area, err := Parse[Area](fixed(float64(n), 0) + " AWG")
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Sqrt(float64(area)*4/math.Pi) / 25.4; math.Abs(d-inches) > 0.00005 {
			t.Errorf("%d AWG is %.5f in across, want %.4f", n, d, inches)
		}
	}
	if d := math.Sqrt(float64(AWG(14))*4/math.Pi) / 25.4; math.Abs(d-0.06408) > 0.000005 {
		t.Errorf("14 AWG is %.6f in across, want 0.06408", d)
	}
}

// Every refusal names what is wrong and shows a right example.
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		k    *kind
		text string
		want string // part of the message
	}{
		{&lengths, "", "nothing is written"},
		{&lengths, "7", "7 needs a unit: 7 ft or 7 in"},
		{&lengths, "6 1/2", "6 1/2 needs a unit: 6 1/2 ft or 6 1/2 in"},
		{&shares, "0.8", "0.8 needs a unit: 0.8 % or 80 %"},
		{&shares, "80", "80 needs a unit: 80 %;"},
		{&currents, "15", "15 needs a unit: 15 A;"},
		{&temperatures, "0", "0 needs a unit: 0 F or 0 C"},
		{&lengths, "2,3 m", "write 2.3 m;"},
		{&lengths, "1,000 mm", "write 1.000 mm or 1000 mm;"},
		{&lengths, "4 ft, 6 in", "write 4 ft 6 in;"},
		{&lengths, "4,, ft", "has a comma;"},
		{&lengths, "7 lb", "7 lb is a mass; a length is wanted"},
		{&lineMasses, "7 lb", "7 lb is a mass; a mass per length is wanted"},
		{&masses, "7 lb/ft", "7 lb/ft is a mass per length; a mass is wanted"},
		{&currents, "60 W", "60 W is a power; a current is wanted"},
		{&lengths, "2 mm2", "2 mm2 is a conductor's size; a length is wanted"},
		{&angles, "3 m/s", "3 m/s is a speed; an angle is wanted"},
		{&lengths, "7 furlong", `unknown unit, "furlong"`},
		{&lengths, "NaN", "does not begin with a number"},
		{&lengths, "inf ft", "does not begin with a number"},
		{&lengths, "+7 ft", "does not begin with a number"},
		{&lengths, "no. 4", "does not begin with a number"},
		{&lengths, ". ft", "does not begin with a number"},
		{&lengths, "--7 ft", "does not begin with a number"},
		{&lengths, "0x10 ft", `unknown unit, "x"`},
		{&lengths, "1e3 mm", "exponent"},
		{&lengths, "1e-3 mm", "exponent"},
		{&lengths, strings.Repeat("9", 400) + " mm", "too large"},
		{&lengths, "1" + strings.Repeat("0", 10) + " mm", "too large"},
		{&lengths, "1/0 in", "divides by nought"},
		{&lengths, "12345678901/2 in", "too large"},
		{&lengths, "1/12345678901 in", "too large"},
		{&lengths, "1/ in", "cannot be read"},
		{&lengths, "6 3/2 in", "more than a whole"},
		{&lengths, "7. ft", "no digit after"},
		{&lengths, "6 ½ in", "one character"},
		{&lengths, "7 ft -6 in", "minus that is not in front"},
		{&lengths, "6 -1/2 in", "cannot be read"},
		{&lengths, "7 6 ft", "cannot be read"},
		{&lengths, "1_00 mm", "cannot be read"},
		{&lengths, "7 ft 6", "unit after its last number"},
		{&lengths, "7 ft 6 cm", "only go on with inches"},
		{&lengths, "7 ft 6 in 3 in", "only go on with inches"},
		{&lengths, "7 ft x", "no number of inches"},
		{&lengths, "7.5 ft 6 in", "part of a foot"},
		{&lengths, "7 ft 14 in", "twelve inches or more"},
		{&lengths, "6 in 7 ft", `goes on after its unit with "7 ft"`},
		{&lengths, "6 m 7 in", "goes on after its unit"},
		{&areas, "14.5 AWG", "not a gauge"},
		{&areas, "-14 AWG", "not a gauge"},
		{&areas, "41 AWG", "not a gauge"},
	} {
		v, err := c.k.read(c.text)
		switch {
		case err == nil:
			t.Errorf("%q was read as %v", c.text, v)
		case v != 0:
			t.Errorf("%q was refused but gave %v", c.text, v)
		case !strings.Contains(err.Error(), c.want):
			t.Errorf("%q was refused with %q, want %q in it", c.text, err, c.want)
		case !strings.HasSuffix(err.Error(), "as in "+c.k.example):
			t.Errorf("%q was refused without a right example: %q", c.text, err)
		}
	}
}

// What the messages show as right must be read, and every unit belongs to one kind only.
func TestKindsAgree(t *testing.T) {
	seen := map[string]string{}
	for _, k := range kinds {
		if _, err := k.read(k.example); err != nil {
			t.Errorf("the example of %s: %v", k.name, err)
		}
		for _, u := range k.units {
			for _, word := range append([]string{strings.ToLower(u.name)}, u.also...) {
				if other, ok := seen[word]; ok {
					t.Errorf("%q is a unit of %s and of %s", word, other, k.name)
				}
				seen[word] = k.name
				if _, err := k.read("14 " + word); err != nil {
					t.Errorf("%s: %v", k.name, err)
				}
			}
		}
	}
}

func TestSystemOf(t *testing.T) {
	for text, want := range map[string]System{"7 ft 6 in": Imperial, `6"`: Imperial, "1.4 m": Metric, "860 MM": Metric, "86 cm": Metric} {
		if got, ok := SystemOf(text); !ok || got != want {
			t.Errorf("%q belongs to %v, %v; want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"0", "-0.0", "7", "7 lb", "120 V"} {
		if got, ok := SystemOf(text); ok {
			t.Errorf("%q belongs to %v, want none", text, got)
		}
	}
}
