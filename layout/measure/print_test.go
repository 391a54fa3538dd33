package measure

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestPrint(t *testing.T) {
	in := func(v float64) Length { return Length(v) * Inch }
	for _, c := range []struct{ got, want string }{
		{Imperial.Tape(in(270)), "22′-6″"}, {Imperial.Tape(in(270.5)), "22′-6 1/2″"}, {Imperial.Tape(in(151.875)), "12′-7 7/8″"},
		{Imperial.Tape(in(6.5)), "6 1/2″"}, {Imperial.Tape(in(11.93)), "11 7/8″"}, {Imperial.Tape(in(11.94)), "1′-0″"}, {Imperial.Tape(in(12)), "1′-0″"},
		{Imperial.Tape(in(96.875)), "8′-0 7/8″"}, {Imperial.Tape(0), "0″"}, {Imperial.Tape(in(-0.01)), "0″"}, {Imperial.Tape(in(-90)), "−7′-6″"}, {Imperial.Tape(in(-0.25)), "−1/4″"},
		{Metric.Tape(6860), "6\u00a0860 mm"}, {Metric.Tape(999.6), "1\u00a0000 mm"}, {Metric.Tape(-0.4), "0 mm"}, {Metric.Tape(-12.6), "−13 mm"}, {Metric.Tape(1234567), "1\u00a0234\u00a0567 mm"},
		{Imperial.Inches(in(59)), "59 in"}, {Imperial.Inches(in(1.5)), "1 1/2 in"}, {Imperial.Inches(in(.75)), "3/4 in"}, {Imperial.Inches(in(1.97)), "2 in"}, {Imperial.Inches(0), "0 in"},
		{Metric.Inches(3858.2), "3\u00a0858 mm"},
		{Imperial.Cut(in(59.0625)), "59 1/16 in"}, {Imperial.Cut(in(59.97)), "60 in"}, {Imperial.Cut(in(59.96)), "59 15/16 in"}, {Metric.Cut(1499), "1\u00a0499 mm"},
		{Imperial.Room(in(82)), "6′-10″"}, {Imperial.Room(in(83.6)), "7′-0″"}, {Metric.Room(2300), "2.30 m"}, {Metric.Room(2084), "2.08 m"},
		{Imperial.Size(in(.109)), "0.109 in"}, {Imperial.Size(in(.84)), "0.84 in"}, {Metric.Size(in(.109)), "2.8 mm"},
		{Imperial.Force(53.4), "12 lb"}, {Metric.Force(53.4), "53 N"}, {Imperial.Force(11.8), "2.7 lb"}, {Metric.Force(-0.001), "0 N"}, {Metric.Force(9.96), "10 N"},
		{Imperial.Mass(1.45), "3.2 lb"}, {Metric.Mass(1.45), "1.4 kg"}, {Metric.Mass(1.5), "1.5 kg"}, {Metric.Mass(.04), "0.04 kg"}, {Metric.Mass(.996), "1 kg"},
		{Imperial.Speed(13.4112), "30 mph"}, {Metric.Speed(13.4112), "48 km/h"},
		{Imperial.Temperature(-20.0 / 3), "20 °F"}, {Metric.Temperature(-20.0 / 3), "−7 °C"}, {Metric.Temperature(-.3), "0 °C"},
		{Imperial.LineMass(0.161 * PoundPerFoot), "0.161 lb/ft"}, {Metric.LineMass(.24), "0.24 kg/m"},
		{Imperial.Pressure(400000 * PSI), "400\u00a0000 psi"}, {Imperial.Pressure(3000 * MPa), "435\u00a0000 psi"}, {Imperial.Pressure(7000 * PSI), "7\u00a0000 psi"}, {Metric.Pressure(400000 * PSI), "2\u00a0758 MPa"},
		{Imperial.Gauge(AWG(22)), "22 AWG"}, {Metric.Gauge(0.75), "0.75 mm²"}, {Imperial.Gauge(0.33), "22 AWG"}, {Imperial.Gauge(500), "0 AWG"},
		{Amps(.042), "0.04 A"}, {Amps(11.94), "11.9 A"}, {Amps(12), "12 A"}, {Amps(.999), "1 A"},
		{Volts(117.46), "117.5 V"}, {Volts(120), "120 V"}, {Watts(4.8), "4.8 W"}, {Watts(210), "210 W"}, {Watts(1440), "1\u00a0440 W"},
		{Percent(.8), "80 %"}, {Percent(.025), "2.5 %"}, {Percent(1), "100 %"}, {Degrees(math.Pi / 6), "30°"}, {Degrees(-math.Pi / 360), "−0.5°"},
		{metres(1000, 0), "1 m"}, {feetInches(in(6.28), 4), "6 1/4″"}, {inchFraction(in(6.28), 2), "6 1/2 in"},
		{Metric.Tape(Length(math.NaN())), "— mm"}, {Imperial.Tape(Length(math.Inf(1))), "—"}, {Imperial.Cut(Length(math.Inf(-1))), "—"},
		{Imperial.String(), "imperial"}, {Metric.String(), "metric"},
	} {
		if c.got != c.want {
			t.Errorf("printed %q, want %q", c.got, c.want)
		}
	}
}

// What is printed reads back to within half the step it was printed to.
func TestPrintReadsBack(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	rounded := []struct {
		name  string
		kind  *kind
		print func(float64) string
		step  float64
	}{
		{"imperial tape", &lengths, func(v float64) string { return Imperial.Tape(Length(v)) }, 25.4 / 8},
		{"imperial inches", &lengths, func(v float64) string { return Imperial.Inches(Length(v)) }, 25.4 / 8},
		{"imperial cut", &lengths, func(v float64) string { return Imperial.Cut(Length(v)) }, 25.4 / 16},
		{"imperial room", &lengths, func(v float64) string { return Imperial.Room(Length(v)) }, 25.4},
		{"metric tape", &lengths, func(v float64) string { return Metric.Tape(Length(v)) }, 1},
		{"metric cut", &lengths, func(v float64) string { return Metric.Cut(Length(v)) }, 1},
		{"metric room", &lengths, func(v float64) string { return Metric.Room(Length(v)) }, 10},
		{"thirty-seconds", &lengths, func(v float64) string { return inchFraction(Length(v), 32) }, 25.4 / 32},
		{"imperial speed", &speeds, func(v float64) string { return Imperial.Speed(Speed(v)) }, 0.44704},
		{"metric speed", &speeds, func(v float64) string { return Metric.Speed(Speed(v)) }, 1 / 3.6},
		{"imperial temperature", &temperatures, func(v float64) string { return Imperial.Temperature(Temperature(v)) }, 5.0 / 9},
		{"metric temperature", &temperatures, func(v float64) string { return Metric.Temperature(Temperature(v)) }, 1},
		{"volts", &voltages, func(v float64) string { return Volts(Voltage(v)) }, 0.1},
		{"degrees", &angles, func(v float64) string { return Degrees(Angle(v)) }, 0.1 * math.Pi / 180},
		// These print fewer decimals the larger they are; the step is the coarsest.
		{"imperial mass", &masses, func(v float64) string { return Imperial.Mass(Mass(v)) }, 0.45359237},
		{"metric mass", &masses, func(v float64) string { return Metric.Mass(Mass(v)) }, 1},
		{"watts", &powers, func(v float64) string { return Watts(Power(v)) }, 1},
		{"amps", &currents, func(v float64) string { return Amps(Current(v)) }, 0.1},
		{"percent", &shares, func(v float64) string { return Percent(Share(v)) }, 0.01},
	}
	for _, c := range rounded {
		for range 2000 {
			v := (random.Float64()*2 - 1) * math.Pow(10, random.Float64()*8-2) // both signs, 0.01 to a million
			text := c.print(v)
			back, err := c.kind.read(text)
			if err != nil {
				t.Fatalf("%s: %v printed as %q: %v", c.name, v, text, err)
			}
			if math.Abs(back-v) > c.step/2*(1+1e-9)+1e-9 {
				t.Fatalf("%s: %v printed as %q reads back as %v, more than half of %v away", c.name, v, text, back, c.step)
			}
			if again := c.print(back); again != text {
				t.Fatalf("%s: %q reads back and prints as %q", c.name, text, again)
			}
		}
	}
}

func TestRoundUp(t *testing.T) {
	for _, c := range []struct{ l, grid, want Length }{
		{59 * Inch, Inch / 16, 59 * Inch},
		{59*Inch + 1e-7, Inch / 16, 59 * Inch},
		{59*Inch + 0.01, Inch / 16, 59*Inch + Inch/16},
		{0.1 + 0.2, 0.1, 0.3}, // 0.1 + 0.2 lies above 0.3 in floats
		{1498.2, Millimetre, 1499}, {-0.5, Millimetre, 0}, {0, Millimetre, 0},
	} {
		if got := RoundUp(c.l, c.grid); math.Abs(float64(got-c.want)) > 1e-9 || math.Signbit(float64(got)) {
			t.Errorf("%v up to the grid of %v is %v, want %v", c.l, c.grid, got, c.want)
		}
	}
}

// What lies on the cutting grid prints without rounding.
func TestGrid(t *testing.T) {
	for _, s := range []System{Imperial, Metric} {
		for n := range 5000 {
			l := Length(n) * s.Grid()
			back, err := ParseLength(s.Cut(l))
			if err != nil || math.Abs(float64(back-l)) > 1e-9 {
				t.Fatalf("%v: %v mm prints as %q and reads back as %v, %v", s, l, s.Cut(l), back, err)
			}
		}
	}
}

func TestWeight(t *testing.T) {
	if got := Imperial.Force(Pound.Weight()); got != "1 lb" {
		t.Errorf("a pound weighs %s", got)
	}
}
