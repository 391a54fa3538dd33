// What findings offer: LED strings, and what an RCD or a supply has to bear.

package power

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power/sharing"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// tightTimer names a timer that passes less than its circuit has for lights.
func (f *feeding) tightTimer() string {
	for _, s := range f.sources {
		allowed := measure.Current(f.problem.Allowed[s.circuit])
		if t := s.outlet.Timer; t > 0 && t < allowed {
			return fmt.Sprintf("The timer at outlet %s passes %s of the %s that its circuit has for lights. ", s.outlet.Name, measure.Amps(t), measure.Amps(allowed))
		}
	}
	if t := f.in.Spec.Power.Timer.Amps; f.in.Spec.Given("power.timers.amps") {
		return fmt.Sprintf("No plug carries more than the timer in front of it, %s. ", measure.Amps(t))
	}
	return ""
}

// likeLength is how far the length of an LED string may be from that of the string it replaces. Our own choice.
const likeLength = 0.1

// ledFor returns the catalog's LED string for the same volts that is nearest in length to a string and draws least, not ok where none is like it.
func ledFor(l catalog.String) (led catalog.String, ok bool) {
	apart := func(s catalog.String) float64 { return math.Abs(float64(s.Length/l.Length) - 1) }
	for _, s := range catalog.Strings() {
		if s.Lamp != catalog.LED || s.Supply != nil || s.Volts != l.Volts || (s.Drop > 0) != (l.Drop > 0) || apart(s) > likeLength || s.Watts >= l.Watts {
			continue
		}
		if !ok || apart(s) < apart(led) || apart(s) == apart(led) && s.Watts < led.Watts {
			led, ok = s, true
		}
	}
	return led, ok
}

// ledWould says that LED strings in place of incandescent ones would do it, found by sharing them out; empty where they would not.
func (f *feeding) ledWould() string {
	in := f.in
	var led catalog.String
	swap := func(list []lights.String) []lights.String {
		var out []lights.String
		for _, s := range list {
			if s.Label.Lamp == catalog.Incandescent {
				if l, ok := ledFor(s.Label); ok {
					led, s.Label, s.Kind, s.Watts = l, l, l.Name, l.Watts
				}
			}
			out = append(out, s)
		}
		return out
	}
	if in.Strings, in.Turned = swap(in.Strings), swap(in.Turned); led.Name == "" {
		return ""
	}
	g := &feeding{in: in, site: newSite(in)}
	g.runs = join(g.site, joining{})
	g.makeUnits()
	g.findSources()
	whole := g.pose(spec.SplitNone)
	if sharing.Share(&whole).Missing > hair {
		return ""
	}
	return fmt.Sprintf("; LED strings of that length (%s, %s each) in place of the incandescent ones would do it", led.Name, measure.Watts(led.Watts))
}

// Standing leakage. No more than 30 % of its rated residual current should leak for good through an RCD (IEC 60364-5-53 531.3.2 and BS 7671 531.3.2, from
// memory); a double-insulated luminaire may leak 0.7 mA at the peak, 0.5 mA r.m.s. (IEC 60598-1 table 10.3, from memory).
const (
	rcdStanding = measure.Current(0.3 * 0.030)
	plugLeak    = measure.Current(0.0005)
)

// leakSays tells of RCDs through which more may leak for good than they should carry.
func (f *feeding) leakSays() {
	for i, c := range f.plan.Circuits {
		s := f.in.Spec.Power.Circuits[i]
		if s.Volts < 200 || !s.GFCI {
			continue
		}
		byReset := map[string]int{}
		var order []string
		for _, d := range f.plan.Feeders {
			if d.Circuit != c.Name {
				continue
			}
			at := f.sources[d.source].outlet.ResetAt
			if _, ok := byReset[at]; !ok {
				order = append(order, at)
			}
			for _, j := range d.Joints {
				byReset[at] += len(j.Plugs)
			}
		}
		for _, at := range order {
			leak := plugLeak * measure.Current(byReset[at])
			if leak <= rcdStanding+hair {
				continue
			}
			f.say(finding.Note, "rcd-standing-leakage", "power.circuits."+c.Name, "%d plugs hang on one 30 mA RCD of circuit %s. At the most that a double-insulated string may leak, 0.5 mA, that is %.1f mA for good, over the 9 mA (30 %%) that such an RCD should stand, so it may trip on a wet night with nothing wrong. Spread the runs over more RCDs.",
				byReset[at], c.Name, 1000*float64(leak))
		}
	}
}

// supplySays tells how supplies are counted on the mains.
func (f *feeding) supplySays() {
	n, watts := 0, measure.Power(0)
	var amps measure.Current
	var most []string
	for _, d := range f.plan.Feeders {
		before := n
		for _, j := range d.Joints {
			for _, p := range j.Plugs {
				if p.Supply {
					n++
					amps += p.Amps
					watts += measure.Power(float64(p.Amps) * float64(d.Volts))
				}
			}
		}
		if at := fmt.Sprintf("%s at outlet %s", measure.Amps(measure.Current(d.least)), d.Outlet); n > before && !slices.Contains(most, at) {
			most = append(most, at)
		}
	}
	if n == 0 {
		return
	}
	f.say(finding.Note, "supply-input", "lights.strings", "%s %s counted at the full %s they give, %s of mains. Small supplies take more amps than that from the mains: add up the input amps on their labels, with all else there no more than %s. Keep each supply off the ground and dry.",
		say.Count(n, "supply"), say.Agree(n, "is", "are"), measure.Watts(watts), measure.Amps(amps), say.And(most))
}

// sharesReset returns what else an outlet's protection feeds: what hangs on it, or on another outlet of its circuit that is reset at the same place.
func sharesReset(s *spec.Spec, o spec.Outlet) string {
	if o.AlsoFeeds != "" {
		return o.AlsoFeeds
	}
	for _, other := range s.Site.Outlets {
		if other.Name != o.Name && other.AlsoFeeds != "" && o.ResetAt != "" && other.Circuit == o.Circuit && other.ResetAt == o.ResetAt {
			return other.AlsoFeeds
		}
	}
	return ""
}
