package catalog

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
)

// Every string obeys Ohm, has its ends within its length and can be chained without passing its own plug's limit.
func TestStringsHold(t *testing.T) {
	for _, s := range Strings() {
		if s.Lead+s.Tail >= s.Length || s.Lead < 0 || s.Tail < 0 {
			t.Errorf("%s: ends of %v and %v mm in %v mm", s.Name, s.Lead, s.Tail, s.Length)
		}
		if off := math.Abs(float64(s.Amps)*float64(s.Volts)/float64(s.Watts) - 1); off > 0.025 {
			t.Errorf("%s: %v A at %v V is not %v W", s.Name, s.Amps, s.Volts, s.Watts)
		}
		if s.MostChain < 1 || measure.Power(s.MostChain)*s.Watts > s.MostWatts {
			t.Errorf("%s: %d end to end at %v W pass %v W", s.Name, s.MostChain, s.Watts, s.MostWatts)
		}
		if !(s.Mass > 0 && s.Wire > 0 && s.Gauge > 0) || s.Bulbs < 1 || s.Colour == "" {
			t.Errorf("%s lacks a figure: %+v", s.Name, s)
		}
		if low := s.Volts < 100; low != (s.Supply != nil) {
			t.Errorf("%s: %v V with supply %v", s.Name, s.Volts, s.Supply)
		}
	}
}

// Published: a hundred small glass lamps draw 40 W and 0.34 A at 120 V, at most three end to end; a hundred LEDs about 5 W. A 24 ft string just
// covers a 10 ft leg of half-inch pipe: common practice, no source.
func TestKnownStrings(t *testing.T) {
	glass, ok := FindString("mini incandescent 100 warm")
	if !ok || glass.Watts != 40 || glass.Amps != 0.34 || glass.MostChain != 3 || glass.MostWatts != 210 || glass.Lamp != Incandescent {
		t.Errorf("mini incandescent is %+v", glass)
	}
	led, ok := FindString("mini led 100 warm")
	if !ok || led.Lamp != LED || led.Length < 24*measure.Foot {
		t.Errorf("mini led is %+v", led)
	}
	near(t, "mini led watts", float64(led.Watts), 5, 0.5)
	if drop, ok := FindString("drop led 100 warm"); !ok || drop.Drop <= 0 {
		t.Errorf("drop led is %+v", drop)
	}
}

// A caller that writes into what it was given changes nothing for the next.
func TestRowsAreCopies(t *testing.T) {
	first, _ := FindString("led 100 warm 31 V")
	first.Supply.Watts = 1
	Pipes()[0].Name = "spoilt"
	if again, _ := FindString("led 100 warm 31 V"); again.Supply.Watts == 1 || Pipes()[0].Name == "spoilt" {
		t.Error("the catalog was written into")
	}
}
