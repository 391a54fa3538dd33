package catalog

import (
	"testing"

	"hoopwright/layout/measure"
)

// The least timer that carries the amps: of 8, 10, 13 and 15 A where mains are low, of 10, 13 and 16 A from 200 V on; the largest where none does.
func TestTimerSize(t *testing.T) {
	for _, c := range []struct {
		amps, low, high measure.Current
	}{{.1, 8, 10}, {8, 8, 10}, {8.1, 10, 10}, {10, 10, 10}, {12, 13, 13}, {13.5, 15, 16}, {15.5, 15, 16}, {20, 15, 16}} {
		for volts, want := range map[measure.Voltage]measure.Current{120: c.low, 199: c.low, 200: c.high, 230: c.high} {
			if got := TimerSize(c.amps, volts); got != want {
				t.Errorf("%v A at %v V: %v A, want %v", c.amps, volts, got, want)
			}
		}
	}
}

// Of names alike the one with most words of what was written, then the shorter, then the earlier; sizes and units alone make none.
func TestAlikeByWords(t *testing.T) {
	names := []string{"mini led 100 warm", "mini led 100 warm 230 V", "c9 led 25 warm", "pvc sch40 1/2 in", "led 100 warm 230 V"}
	for text, want := range map[string]string{
		"warm mini led": "mini led 100 warm", "led warm 230 V": "led 100 warm 230 V", "mini 230 V": "mini led 100 warm 230 V", "c9": "", "c9 led": "c9 led 25 warm", "1/2 in": "", "sch40": "", "pvc 3/4 in": "pvc sch40 1/2 in",
		"": "", "100": "",
	} {
		if got := Alike(text, names); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}
