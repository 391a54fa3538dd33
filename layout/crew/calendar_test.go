package crew

import (
	"strings"
	"testing"
	"time"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

func day(year int, month time.Month, d int) time.Time {
	return time.Date(year, month, d, 0, 0, 0, 0, time.UTC)
}

// Three full business days between call and build (US 811: two to three, by state), counted by hand on a calendar: 21 November
// 2026 is a Saturday. Under the NEC federal holidays (5 U.S.C. 6103) are no business days.
func TestCallBy(t *testing.T) {
	for _, c := range []struct{ build, call, federal time.Time }{
		{day(2026, 11, 21), day(2026, 11, 17), day(2026, 11, 17)}, // Sat: Fri, Thu, Wed between
		{day(2026, 11, 20), day(2026, 11, 16), day(2026, 11, 16)}, // Fri: Thu, Wed, Tue
		{day(2026, 11, 25), day(2026, 11, 19), day(2026, 11, 19)}, // Wed: Tue, Mon, Fri
		{day(2026, 11, 23), day(2026, 11, 17), day(2026, 11, 17)}, // Mon: Fri, Thu, Wed
		{day(2027, 1, 4), day(2026, 12, 29), day(2026, 12, 28)},   // over the new year: Thu, Wed, Tue
		{day(2027, 11, 13), day(2027, 11, 9), day(2027, 11, 8)},   // Veterans Day on Thu: Fri, Wed, Tue
		{day(2026, 11, 28), day(2026, 11, 24), day(2026, 11, 23)}, // Thanksgiving on the 26th
		{day(2027, 6, 19), day(2027, 6, 15), day(2027, 6, 14)},    // Juneteenth on Sat, kept on Fri
		{day(2027, 7, 8), day(2027, 7, 2), day(2027, 7, 1)},       // 4 July on Sun, kept on Mon
		{day(2027, 1, 21), day(2027, 1, 15), day(2027, 1, 14)},    // Martin Luther King on Mon 18
		{day(2027, 6, 3), day(2027, 5, 28), day(2027, 5, 27)},     // Memorial Day on Mon 31
	} {
		for units, want := range map[measure.System]time.Time{measure.Metric: c.call, measure.Imperial: c.federal} {
			if got := CallBy(&spec.Spec{Units: units, Dates: spec.Dates{Build: c.build}}); !got.Equal(want) {
				t.Errorf("%v, build on %s: call by %s, want %s", units, date(c.build), date(got), date(want))
			}
		}
	}
}

func TestCalendar(t *testing.T) {
	s := &spec.Spec{Dates: spec.Dates{Mark: day(2026, 11, 14), Build: day(2026, 11, 21), Open: day(2026, 11, 28), Close: day(2027, 1, 2), Down: day(2027, 1, 9)}}
	list := Calendar(s, true)
	for i := 1; i < len(list); i++ {
		if list[i].On.Before(list[i-1].On) {
			t.Errorf("%s (%s) after %s (%s)", list[i].Name, date(list[i].On), list[i-1].Name, date(list[i-1].On))
		}
	}
	// NFPA 70, 590.3(B): 90 days. 21 November and 90 days: 9 left of November, 31, 31, and 19 of February.
	if last := list[len(list)-1]; !last.On.Equal(day(2027, 2, 19)) || !strings.Contains(last.Name, "NEC") {
		t.Errorf("last line %+v", last)
	}
	if f := calendarFindings(s, true); len(f) > 0 {
		t.Errorf("findings on a good calendar: %+v", f)
	}
	for issued, want := range map[time.Time]string{day(2026, 11, 21): "", day(2026, 11, 22): "dates.build", day(2027, 1, 9): "dates.build", day(2027, 1, 10): "dates.down"} {
		got := ""
		for _, f := range Past(s.Dates, issued) {
			got += f.Key
		}
		if got != want {
			t.Errorf("issued on %s: %q is past, want %q", date(issued), got, want)
		}
	}
	for season, want := range map[string]bool{"2026": false, "2026/27": false, "2026-2027": false, "2025": true, "2027": true, "": false} {
		s.Season = season
		if f := calendarFindings(s, true); (len(f) == 1 && f[0].Code == "season-elsewhere") != want || len(f) > 1 {
			t.Errorf("season %s, built in November 2026: %+v", season, f)
		}
	}
	s.Season = ""
	s.Dates.Mark, s.Dates.Down = day(2026, 11, 18), day(2027, 2, 20)
	f := calendarFindings(s, true)
	if len(f) != 2 || f[0].Code != "mark-too-late" || f[1].Code != "lights-too-long" || !strings.Contains(f[0].Text, "17 Nov 2026") || !strings.Contains(f[1].Text, "91 days") {
		t.Errorf("marked a day late, up a day long: %+v", f)
	}
	if f := calendarFindings(s, false); len(f) != 1 || f[0].Code != "lights-too-long" {
		t.Errorf("nothing driven, marked a day late: %+v", f)
	}
	for _, d := range Calendar(s, false) {
		if said := d.Name + d.Note; strings.Contains(said, "811") || strings.Contains(said, "stake") || strings.Contains(said, "ticket") {
			t.Errorf("nothing driven: %+v", d)
		}
	}
	s.Units = measure.Metric
	s.Power.Circuits = []spec.Circuit{{Volts: 230}}
	for _, d := range Calendar(s, true) {
		if strings.Contains(d.Name, "NEC") {
			t.Errorf("at 230 V: %+v", d)
		}
	}
	if empty := Calendar(&spec.Spec{}, true); len(empty) < 6 || !empty[0].On.IsZero() {
		t.Errorf("no dates given: %+v", empty)
	}
}

// TestAfternoon: of a December and January in London the earliest sunset is 15:51, published for the 12th (from memory), which leaves 231 minutes from noon; without a place, 4 hours.
func TestAfternoon(t *testing.T) {
	s := &spec.Spec{Dates: spec.Dates{Build: time.Date(2027, 12, 1, 0, 0, 0, 0, time.UTC), Down: time.Date(2028, 1, 20, 0, 0, 0, 0, time.UTC)}}
	if got := Afternoon(s); got != 240 {
		t.Errorf("nowhere: %g minutes", got)
	}
	s.Site.Place, s.Site.Clock = &spec.LatLong{Lat: 51.51, Long: -0.13}, time.UTC
	if got := Afternoon(s); got < 230 || got > 232 {
		t.Errorf("London: %g minutes, want 231", got)
	}
	if s.Dates.Build = time.Date(2028, 1, 10, 0, 0, 0, 0, time.UTC); Afternoon(s) < 245 {
		t.Errorf("London after 10 January: %g minutes", Afternoon(s))
	}
}
