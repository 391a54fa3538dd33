package layout

import (
	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// LaidFlat is by how many crews the tunnel is laid flat, and how long that takes.
type LaidFlat struct {
	Drill   weather.Drill
	Crews   int
	Minutes float64
	Ahead   bool // too few people for the afternoon of the call: it is made a day earlier
}

// LaidFlat asks for so many crews as are done between the noon call, once they are there, and sunset, as far as there are people of age for them.
func (p *Plan) LaidFlat() LaidFlat {
	comes := weather.Comes{Lit: len(p.Strings) > 0, Cords: len(p.Power.Cords), Line: p.Spec.CrownLine(), Pins: p.Spec.Arch.Joints == spec.Pinned}
	for _, s := range p.Strings {
		if s.Run.IsRow() || s.Run.Drop {
			comes.Hung++
		}
	}
	d, there := p.Weather.Drill(comes), crew.Crews(p.Spec)
	n := d.Crews(max(0, crew.Afternoon(p.Spec)-practice.Gather))
	f := LaidFlat{Drill: d, Crews: len(d.Stretches(min(n, there))), Ahead: n > there}
	f.Minutes = d.By(f.Crews)
	return f
}
