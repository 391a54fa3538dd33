package power

import (
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Link is one of the things that current passes on its way to the lights, with what it carries and may carry.
type Link struct {
	Name    string
	Carries measure.Current
	May     measure.Current
}

// Links returns the chain of limits at an outlet, from the breaker to the plug of a chain: the breaker for hours, a timer, the plug and cord
// that come nearest to what they may carry, the first plug of a chain that does by its label. None where the outlet feeds nothing.
func (p Plan) Links(o spec.Outlet) []Link {
	var cord, first Link
	var through measure.Current
	worse := func(old *Link, name string, carries, may measure.Current) {
		if may > 0 && (old.May == 0 || carries*old.May > old.Carries*may) {
			*old = Link{name, carries, may}
		}
	}
	fed := false
	for _, d := range p.Feeders {
		if d.Outlet != o.Name {
			continue
		}
		fed = true
		through += d.Amps
		c, known := catalog.FindCord(d.Cord)
		for _, j := range d.Joints {
			for _, l := range j.Cords {
				if known {
					worse(&cord, "cord", j.Amps, c.AmpsAt(l))
				}
			}
		}
	}
	if !fed {
		return nil
	}
	for _, c := range p.Chains {
		if c.Outlet == o.Name && c.Volts > 0 {
			worse(&first, "plug of a chain", c.Amps, measure.Current(float64(c.MostWatts)/float64(c.Volts)))
		}
	}
	var out []Link
	for _, c := range p.Circuits {
		if c.Name == o.Circuit {
			out = append(out, Link{"breaker, for hours", c.Amps, c.Allowed})
		}
	}
	if o.Timer > 0 {
		out = append(out, Link{"timer", through, o.Timer})
	}
	for _, l := range []Link{cord, first} {
		if l.May > 0 {
			out = append(out, l)
		}
	}
	return out
}
