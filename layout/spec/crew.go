package spec

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
	m.day("date", &c.Date)
	m.clock("start", &c.Start)
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
