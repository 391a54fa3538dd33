package power

import (
	"hoopwright/layout/spec"
)

// Limits returns what binds on the way from an outlet to its lights: the breaker for hours, a timer, the cord that comes nearest to what it
// may carry, the plug of a run that does by its label or its fuse. None where the outlet feeds nothing.
func (p Plan) Limits(o spec.Outlet) []Limit {
	var cord, plug, timer Limit
	fed := false
	for _, d := range p.Feeders {
		if d.Outlet == o.Name {
			fed = true
			timer.Have += float64(d.Amps)
		}
	}
	if !fed {
		return nil
	}
	for _, c := range p.Cords {
		if c.Outlet == o.Name {
			cord = nearest(cord, c.Limit)
		}
	}
	for _, c := range p.Chains {
		if c.Outlet == o.Name {
			plug = nearest(plug, Limit{LabelWatts, float64(c.Watts), float64(c.MostWatts)}, Limit{FuseAmps, float64(c.Amps), float64(c.Fuse)})
		}
	}
	var out []Limit
	for _, c := range p.Circuits {
		if c.Name == o.Circuit {
			out = append(out, Limit{BreakerAmps, float64(c.Amps), float64(c.Allowed)})
		}
	}
	timer.Kind, timer.Of = TimerAmps, float64(o.Timer)
	for _, l := range []Limit{timer, cord, plug} {
		if l.Of > 0 {
			out = append(out, l)
		}
	}
	return out
}
