package packet

import (
	"hoopwright/layout/weather"
	"strings"
	"testing"

	"hoopwright/layout/spec"
)

// safetyText returns all words of a sheet as one line.
func safetyText(t *testing.T, name string) string {
	t.Helper()
	pages, live := framedSheet(t, examplePlan(t, name), "safety")
	keepsTo(t, name, pages, live)
	return strings.Join(wordsOf(pages...), " ")
}

// The sheet says what this tunnel has and leaves out what it has not.
func TestSafetyIsThisTunnels(t *testing.T) {
	garden, school := safetyText(t, "garden"), safetyText(t, "schoolyard")
	for _, c := range []struct {
		text, has string
		want      bool
	}{
		{garden, "call 811", true}, {garden, "drip line", true}, {garden, "Ladder", true}, {garden, "breaker 12", true}, {garden, "20 mph forecast, 18 mph measured", true}, {garden, "arches fold under", true}, {garden, "50 °F", true}, {garden, "Primer and cement", false},
		{school, "call 811", false}, {school, "local locating service", true}, {school, "ball court", true}, {school, "42 km/h forecast, 38 km/h measured", true}, {school, "30 mA", true}, {school, "Mains within reach", true},
	} {
		if strings.Contains(c.text, c.has) != c.want {
			t.Errorf("%q: want it %v in %.60s…", c.has, c.want, c.text)
		}
	}
	for _, text := range []string{garden, school} {
		for _, blank := range []string{"Emergency phone", "Locating ticket", "Ticket good until", "Switches the power off", "Decides to close", "This place is"} {
			if !strings.Contains(text, blank) {
				t.Errorf("no blank for %q", blank)
			}
		}
		for _, bad := range []string{"safe ", "rated", "compliant"} {
			if strings.Contains(strings.ToLower(text), bad) {
				t.Errorf("the sheet claims %q", bad)
			}
		}
	}
}

func TestGlueAndFrostOnlyWhereTheyAre(t *testing.T) {
	plan := examplePlan(t, "garden")
	plan.Spec.Arch.Joints = spec.Glued
	plan.Spec.Weather.Cold = 15 // °C
	plan.Spec.Site.Soil = spec.Frozen
	pages, _ := framedSheet(t, plan, "safety")
	text := strings.Join(wordsOf(pages...), " ")
	if !strings.Contains(text, "Primer and cement") || !strings.Contains(text, "Frozen ground") || strings.Contains(text, "PVC is brittle") {
		t.Errorf("glued, frozen ground, warm air: %s", text)
	}
}

// TestWindOrders: the figures to act at are the plan's, in the order they come; without any it is the house limit.
func TestWindOrders(t *testing.T) {
	plan := examplePlan(t, "garden")
	said := func() string {
		pages, _ := framedSheet(t, plan, "safety")
		return strings.Join(wordsOf(pages...), " ")
	}
	u, w := plan.Spec.Units, plan.Weather
	text := said()
	out, down := strings.Index(text, u.Speed(w.Forecast.Inside)+" forecast, "+u.Speed(w.Inside)+" measured"), strings.Index(text, u.Speed(w.Forecast.Down)+" forecast, "+u.Speed(w.Down)+" measured")
	if out < 0 || down < out || !strings.Contains(text, "An app without gusts") {
		t.Errorf("out at %d, down at %d in %s", out, down, text)
	}
	plan.Weather = &weather.Weather{}
	if text := said(); !strings.Contains(text, "30 mph forecast, 30 mph measured") || strings.Contains(text, "lay the tunnel flat") {
		t.Errorf("without figures: %s", text)
	}
}
