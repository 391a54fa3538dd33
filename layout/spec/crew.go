package spec

import (
	"slices"
	"time"
)

// readWeather reads what the tunnel should be figured for.
func (r *reader) readWeather(top mapping) {
	if m, ok := top.section("weather"); ok {
		m.all(&r.spec.Weather)
	}
}

// readCrew reads who builds, and how long a piece of work takes.
func (r *reader) readCrew(top mapping) {
	m, ok := top.section("crew")
	if !ok {
		return
	}
	c := &r.spec.Crew
	m.all(c)
	for _, day := range m.mappings("days") {
		c.Days = append(c.Days, day.crewDay(c.Days))
	}
}

// crewDay reads a day of work, which comes after those before it.
func (m mapping) crewDay(before []CrewDay) (d CrewDay) {
	m.all(&d)
	if f, ok := m.value("until"); ok && d.Until > 0 && d.Until <= d.From {
		f.fail("is not after from")
	}
	if n := len(before); n > 0 && !d.Date.IsZero() && d.Date.Before(before[n-1].Date) {
		f, _ := m.value("date")
		f.fail("is %s, before the day above it; days come in their order", d.Date.Format(time.DateOnly))
	}
	if f, ok := m.value("work"); ok {
		for _, item := range f.texts() {
			if i, ok := item.word(DayWorks()...); ok && !slices.Contains(d.Work, DayWorks()[i]) {
				d.Work = append(d.Work, DayWorks()[i])
			}
		}
	}
	return d
}

// tool is how many there are of one, by its key.
type tool struct {
	key   string
	count *int
}

// each lists the tools in the order of the format.
func (x *Tools) each() []tool {
	return []tool{{"ladders", &x.Ladders}, {"trestles", &x.Trestles}, {"tapes", &x.Tapes}, {"sledges", &x.Sledges}}
}

// rate is the minutes of one piece of work, by its key.
type rate struct {
	key     string
	minutes *float64
}

// each lists the rates in the order of the format.
func (x *Rates) each() []rate {
	return []rate{
		{"stake", &x.Stake}, {"cut", &x.Cut}, {"wrap", &x.Wrap}, {"raise", &x.Raise}, {"ridge", &x.Ridge},
		{"row", &x.Row}, {"drop", &x.Drop}, {"guy", &x.Guy}, {"cord", &x.Cord},
	}
}
