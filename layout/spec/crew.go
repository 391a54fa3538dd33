package spec

import (
	"slices"
	"time"
)

func (r *reader) readCrew(top mapping) {
	m, _ := top.section("crew")
	c := &r.spec.Crew
	m.all(c)
	var before time.Time
	c.Days = listOf(m, "days", func(item mapping, d *CrewDay) bool {
		item.crewDay(d, before)
		before = d.Date
		return true
	})
}

// crewDay checks a day of work, which comes no sooner than the one before it, and reads what it is for.
func (m mapping) crewDay(d *CrewDay, before time.Time) {
	if f, ok := m.value("until"); ok && d.Until > 0 && d.Until <= d.From {
		f.fail("is not after from")
	}
	if !d.Date.IsZero() && d.Date.Before(before) {
		f, _ := m.value("date")
		f.fail("is %s, before the day above it; days come in their order", d.Date.Format(time.DateOnly))
	}
	if f, ok := m.value("work"); ok {
		for _, item := range f.texts() {
			if i, ok := item.word(dayWorks()...); ok && !slices.Contains(d.Work, dayWorks()[i]) {
				d.Work = append(d.Work, dayWorks()[i])
			}
		}
	}
}
