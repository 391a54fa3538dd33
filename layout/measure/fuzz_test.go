package measure

import (
	"math"
	"testing"
)

// Nothing written makes the reader panic, and what it reads is finite and survives printing in both systems.
func FuzzParseLength(f *testing.F) {
	for _, s := range []string{"7 ft 6 in", "22′-6 1/2″", "6\u00a0860 mm", "-1/2 in", "1e9 m", "2,3 m", "7ft6in", "0x1p4 ft", "½ in", "999999999 m", "'", "1/", "- -"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := ParseLength(text)
		if math.IsNaN(float64(l)) || math.IsInf(float64(l), 0) {
			t.Fatalf("%q is %v", text, l)
		}
		if err != nil {
			return
		}
		for _, p := range []struct {
			text string
			step Length
		}{{Imperial.Tape(l), Inch / 8}, {Imperial.Cut(l), Inch / 16}, {Metric.Tape(l), Millimetre}} {
			back, err := ParseLength(p.text)
			if err != nil {
				if math.Abs(float64(l)) < mostNumber { // larger ones may print a number past the reader's bound
					t.Fatalf("%q prints as %q, which is refused: %v", text, p.text, err)
				}
				continue
			}
			if off := math.Abs(float64(back - l)); off > float64(p.step)/2+1e-12*math.Abs(float64(l)) {
				t.Fatalf("%q prints as %q, which is %v mm off", text, p.text, off)
			}
		}
	})
}

// The other kinds share the reader; none may panic, leave a value beside an error, or give what is not finite.
func FuzzParseKinds(f *testing.F) {
	f.Add("14 AWG")
	f.Add("-40 °F")
	f.Add("3 lb/ft")
	f.Add("80 %")
	f.Fuzz(func(t *testing.T, text string) {
		for _, k := range kinds {
			v, err := k.read(text)
			if math.IsNaN(v) || math.IsInf(v, 0) || err != nil && v != 0 {
				t.Fatalf("%q as %s is %v, %v", text, k.name, v, err)
			}
		}
	})
}
