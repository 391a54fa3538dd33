package power

import (
	"strings"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// saying returns the text of a plan's finding, empty where there is none.
func saying(p Plan, code string) string {
	for _, f := range p.Findings {
		if f.Code == code {
			return f.Text
		}
	}
	return ""
}

// Incandescent strings that overload a circuit, for which the catalog has LED strings of that length: the finding says so, and names the timer where one is the limit.
func TestNotEnoughAmpsSaysWhatWould(t *testing.T) {
	in := tunnel(12)
	l, ok := catalog.FindString("mini led 100 warm")
	if !ok {
		t.Fatal("no such string")
	}
	l.Name, l.Lamp, l.Watts, l.Amps, l.MostChain, l.MostWatts = "old minis", catalog.Incandescent, 40, 40.0/120, 3, 210
	in.legs(l) // 24 × 40 W = 8 A
	in.fix()
	in.outlet("porch", -4000, -1000, 120, 15)
	in.Spec.Site.Outlets[0].Timer = 5
	text := saying(Feed(in), "not-enough-amps")
	for _, want := range []string{"3 A are missing", "timer at outlet porch passes 5 A of the 12 A", "LED strings of that length (mini led 100"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
	in.Spec.Site.Outlets[0].Timer = 0.5 // 24 × 4.8 W = 0.96 A is too much for it as well
	if text := saying(Feed(in), "not-enough-amps"); text == "" || strings.Contains(text, "LED strings") {
		t.Errorf("LED strings would not do it: %q", text)
	}
}

// More than 18 plugs at 0.5 mA are over 30 % of 30 mA; on two RCDs of that circuit they are not. No RCD, no finding.
func TestStandingLeakage(t *testing.T) {
	for plugs, want := range map[int]bool{18: false, 20: true} {
		in := tunnel(plugs / 2)
		l := label("s", 6, catalog.LED)
		l.Volts, l.Amps, l.MostChain = 230, 6.0/230, 1
		in.legs(l)
		in.fix()
		in.outlet("porch", -4000, -1000, 230, 16)
		if got := saying(Feed(in), "rcd-standing-leakage") != ""; got != want {
			t.Errorf("%d plugs: told %v", plugs, got)
		}
		in.Spec.Power.Circuits[0].GFCI = false
		if saying(Feed(in), "rcd-standing-leakage") != "" {
			t.Error("leakage is told without an RCD")
		}
	}
}

// A freezer on another outlet that is reset at the same place is on the same GFCI.
func TestSharedReset(t *testing.T) {
	in := garden()
	if saying(Feed(in), "gfci-also-feeds") != "" {
		t.Fatal("nothing else hangs on it")
	}
	in.Spec.Site.Outlets = append(in.Spec.Site.Outlets, spec.Outlet{Name: "cellar", At: spec.Point{X: -90000}, Circuit: "circuit porch", Sockets: 1, ResetAt: "porch", AlsoFeeds: "the freezer"})
	if text := saying(Feed(in), "gfci-also-feeds"); !strings.Contains(text, "Outlet porch shares its protection with the freezer") {
		t.Errorf("%q", text)
	}
}

// Every drop finding ends in a remedy with a figure, and a thicker cord is named only where it keeps the loss within 3 %.
func TestDropSaysWhatToChange(t *testing.T) {
	in := tunnel(78)
	in.legs(label("s", 12, catalog.Incandescent))
	in.outlet("porch", -4000, -1000, 120, 20)
	p := Feed(in)
	text := saying(p, "drop-over-5-percent")
	if !strings.Contains(text, "cords alone lose") && !strings.Contains(text, "it would lose") {
		t.Errorf("no remedy in %q", text)
	}
}

// More other load than the breaker holds is a slip of the pen; more than it may carry for hours is a load to take off.
func TestOtherLoadTooHigh(t *testing.T) {
	for load, want := range map[measure.Current]string{13: "Take load off it", 16: "more than its breaker of 15 A holds"} {
		in := garden()
		in.Spec.Power.Circuits[0].OtherLoad = load
		if text := saying(Feed(in), "other-load-too-high"); !strings.Contains(text, want) {
			t.Errorf("%v: %q", load, text)
		}
	}
}

// With one circuit the reason is that there is only one, whatever it could carry.
func TestSplitSaysWhy(t *testing.T) {
	in := garden()
	in.Spec.Power.Split = spec.SplitArches
	in.Spec.Power.Circuits, in.Spec.Site.Outlets = in.Spec.Power.Circuits[:1], in.Spec.Site.Outlets[:1]
	if text := saying(Feed(in), "split-not-possible"); !strings.Contains(text, "only one circuit or GFCI") {
		t.Errorf("%q", text)
	}
}
