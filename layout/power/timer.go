package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// Timer is one to buy, in an outlet's socket.
type Timer struct {
	Outlet string
	Amps   measure.Current // through it
	Size   measure.Current // the least that it may be sold for
	Plugs  int             // that go into it
}

// timers buys timers for an outlet that has none: as few as its plugs go into, each carrying no more than such timers may.
func (f *feeding) timers(outlet string) []Timer {
	kind := f.in.Spec.Power.Timer
	var plugs []measure.Current
	var volts measure.Voltage
	for _, d := range f.plan.Feeders {
		if d.Outlet == outlet {
			plugs, volts = append(plugs, d.Amps), d.Volts
		}
	}
	slices.SortFunc(plugs, func(a, b measure.Current) int { return cmp.Compare(b, a) })
	var out []Timer
	for _, amps := range plugs {
		k := 0
		for k < len(out) && (out[k].Plugs >= kind.Sockets || kind.Amps > 0 && out[k].Amps+amps > kind.Amps+hair) {
			k++
		}
		if k == len(out) {
			out = append(out, Timer{Outlet: outlet})
		}
		out[k].Amps += amps
		out[k].Plugs++
	}
	for k := range out {
		out[k].Size = kind.Amps
		if !f.in.Spec.Given("power.timers.amps") {
			out[k].Size = catalog.TimerSize(out[k].Amps, volts)
		}
	}
	return out
}
