package spec

import (
	"slices"
	"time"

	"gopkg.in/yaml.v3"
)

// mostHelpers and mostMinutes bound the crew and one piece of work.
const (
	mostHelpers = 200
	mostMinutes = 480
)

// readWeather reads what the tunnel should be figured for.
func (r *reader) readWeather(top mapping) {
	if m, ok := top.section("weather"); ok {
		quantity(m, "ice", &r.spec.Weather.Ice, ices)
		quantity(m, "cold", &r.spec.Weather.Cold, colds)
		quantity(m, "stand", &r.spec.Weather.Stand, gusts)
		quantity(m, "inside", &r.spec.Weather.Inside, gusts)
	}
}

// readCrew reads who builds, and how long a piece of work takes.
func (r *reader) readCrew(top mapping) {
	m, ok := top.section("crew")
	if !ok {
		return
	}
	c := &r.spec.Crew
	m.count("helpers", &c.Helpers, 0, mostHelpers)
	m.count("young", &c.Young, 0, mostHelpers)
	m.day("date", &c.Date)
	m.clock("start", &c.Start)
	for _, day := range m.mappings("days") {
		c.Days = append(c.Days, day.crewDay(c.Days))
	}
	if tools, ok := m.section("tools"); ok {
		for _, t := range c.Tools.each() {
			tools.count(t.key, t.count, 1, mostHelpers)
		}
	}
	if ask, ok := m.section("ask"); ok {
		ask.name("name", &c.Ask.Name)
		ask.name("phone", &c.Ask.Phone)
	}
	rates, ok := m.section("rates")
	if !ok {
		return
	}
	for _, rate := range c.Rates.each() {
		rates.number(rate.key, rate.minutes, 0.1, mostMinutes)
	}
}

// crewDay reads a day of work, which comes after those before it.
func (m mapping) crewDay(before []CrewDay) (d CrewDay) {
	m.day("date", &d.Date)
	m.clock("from", &d.From)
	m.clock("until", &d.Until)
	if f, ok := m.value("until"); ok && d.Until > 0 && d.Until <= d.From {
		f.fail("is not after from")
	}
	if n := len(before); n > 0 && !d.Date.IsZero() && d.Date.Before(before[n-1].Date) {
		f, _ := m.value("date")
		f.fail("is %s, before the day above it; days come in their order", d.Date.Format(time.DateOnly))
	}
	f, ok := m.value("work")
	if !ok {
		return d
	}
	items := []field{f}
	if f.node.Kind == yaml.SequenceNode {
		items, _ = f.list()
	}
	for _, item := range items {
		if i, ok := item.word(DayWorks()...); ok && !slices.Contains(d.Work, DayWorks()[i]) {
			d.Work = append(d.Work, DayWorks()[i])
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
