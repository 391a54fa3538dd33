// The days of the season: when to call, when lights come down, and what is wrong with the days given.

package crew

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Date is one line of the calendar. On is zero where the spec does not give the day, and nothing gives it: the sheet leaves a blank.
type Date struct {
	On   time.Time
	Name string // a word or two, for a strip of dates
	Note string // what else to know of it, as a sentence; mostly empty
}

// Calendar lists the days of the season in their order, the latest day for the locate call and the last day of holiday lighting
// worked out from the others. Nobody is called where no stake is driven.
func Calendar(s *spec.Spec, driven bool) []Date {
	d := s.Dates
	call, holiday := Date{Name: "call to locate"}, "holiday between"
	if LikelyNEC(s) {
		call.Name, holiday = "call 811", "state-only holiday between"
	}
	call.Note = fmt.Sprintf("Locating takes %d full working days: call a day earlier for each %s. Its ticket is good until ________.", practice.NoticeDays, holiday)
	if !d.Build.IsZero() {
		call.On, call.Name = CallBy(s), call.Name+", at the latest"
	}
	mark, _ := MarkOn(s, driven)
	list := []Date{{On: mark, Name: "white dots for stakes"}, call}
	if !driven {
		list = []Date{{On: d.Mark, Name: "white dots for feet"}}
	}
	list = append(list, Date{On: d.Build, Name: "build"}, Date{On: d.Open, Name: "open ____\u00a0to\u00a0____"}, Date{On: d.Close, Name: "last evening"}, Date{On: d.Down, Name: "take down"})
	if !d.Build.IsZero() && LikelyNEC(s) {
		list = append(list, Date{On: d.Build.AddDate(0, 0, practice.HolidayDays), Name: "latest down (NEC\u00a0code)"})
	}
	return list
}

// CallBy is the last day to call so that the full business days lie between it and the day of building; in the United States no federal holiday is one.
func CallBy(s *spec.Spec) time.Time {
	day, federal := s.Dates.Build, LikelyNEC(s)
	for left := practice.NoticeDays; ; {
		day = day.AddDate(0, 0, -1)
		if day.Weekday() == time.Saturday || day.Weekday() == time.Sunday || federal && practice.Holiday(day) {
			continue
		}
		if left == 0 {
			return day
		}
		left--
	}
}

// MarkOn is the day on which dots are painted: the spec's, or, where stakes are driven and that is too late for the call that tells of the dots, the call's own.
func MarkOn(s *spec.Spec, driven bool) (day time.Time, late bool) {
	if d := s.Dates; driven && !d.Mark.IsZero() && !d.Build.IsZero() {
		if last := CallBy(s); d.Mark.After(last) {
			return last, true
		}
	}
	return s.Dates.Mark, false
}

// LikelyNEC reports whether the site is likely under the NEC: a circuit of its voltage, or feet and inches where none is given.
func LikelyNEC(s *spec.Spec) bool {
	for _, c := range s.Power.Circuits {
		return c.Volts > 90 && c.Volts < 130
	}
	return s.Units == measure.Imperial
}

// Past tells of the days of building and after that are over on the day of issue.
func Past(d spec.Dates, issued time.Time) []finding.Finding {
	last := finding.Finding{Level: finding.Note, Code: "days-past"}
	for _, x := range []struct {
		key, what string
		day       time.Time
	}{{"dates.build", "the build", d.Build}, {"dates.down", "the take-down", d.Down}} {
		if !x.day.IsZero() && x.day.Before(issued) {
			last.Key = x.key
			last.Text = fmt.Sprintf("Printed on %s, and %s was on %s. Build nothing by these days: write new ones, print again.", date(issued), x.what, date(x.day))
		}
	}
	if last.Key == "" {
		return nil
	}
	return []finding.Finding{last}
}

func calendarFindings(s *spec.Spec, driven bool) []finding.Finding {
	var list []finding.Finding
	d := s.Dates
	if first := cmp.Or(d.Build, d.Open, d.Mark); !first.IsZero() && s.Season != "" && !strings.Contains(s.Season, first.Format("2006")) && !strings.Contains(s.Season, first.Format("06")) {
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "season-elsewhere", Key: "season", Cure: []finding.Change{{Key: "season", Value: first.Format("2006")}},
			Text: fmt.Sprintf("The season is %s, and the days are those of %s. Mend the one that is wrong.", s.Season, first.Format("2006"))})
	}
	if last, late := MarkOn(s, driven); late {
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "mark-too-late", Key: "dates.mark", Cure: []finding.Change{{Key: "dates.mark", Value: last.Format(time.DateOnly)}},
			Text: fmt.Sprintf("The locating service is called by %s to answer before the build on %s, once the dots are painted: paint them by then, as the leaves say, not on %s.", date(last), date(d.Build), date(d.Mark))})
	}
	down, key := d.Down, "dates.down"
	if down.IsZero() {
		down, key = d.Close, "dates.close"
	}
	if !d.Build.IsZero() && !down.IsZero() && LikelyNEC(s) {
		if days := int(down.Sub(d.Build).Hours()/24 + 0.5); days > practice.HolidayDays {
			last := d.Build.AddDate(0, 0, practice.HolidayDays)
			cure := []finding.Change{{Key: key, Value: last.Format(time.DateOnly)}}
			if d.Close.After(last) && key != "dates.close" {
				cure = append(cure, finding.Change{Key: "dates.close", Value: last.Format(time.DateOnly)})
			}
			list = append(list, finding.Finding{Level: finding.LookAt, Code: "lights-too-long", Key: key, Cure: cure,
				Text: fmt.Sprintf("The lights are up for %d days, from %s to %s; where the NEC is law holiday lighting stays up for %d days at most, so take it down by %s or ask what your local rule is.",
					days, date(d.Build), date(down), practice.HolidayDays, date(last))})
		}
	}
	return list
}

// date prints a day as no reader can take for another: 21 Nov 2026.
func date(t time.Time) string { return t.Format("2 Jan 2006") }
