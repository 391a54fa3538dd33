package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// feeding is a plan in the making.
type feeding struct {
	in      Input
	site    *site
	chains  []Chain
	labels  []catalog.String  // of each chain's strings
	own     []measure.Voltage // lost within each chain
	index   map[string]int    // chain by name
	units   []unit
	sharer  *sharer
	sharing sharing
	outlets map[string]atOutlet // laid so far, by what is plugged in
	split   bool                // walls are fed apart
	unfed   []int               // units for which no circuit has the amps
	dry     []int               // units for which no outlet has a socket
	strange []int               // units that belong on no circuit here
	plan    Plan
}

// Feed plans how the strings are fed. Without circuits or outlets in the spec it makes the chains alone. While a chain of several strings
// loses more than 5 % with its cords, chains are cut shorter, if that helps.
func Feed(in Input) Plan {
	site := newSite(in)
	best := feed(in, site, ownShares[0])
	worst, cut := best.dimmest()
	for _, own := range ownShares[1:] {
		if !cut {
			break
		}
		p := feed(in, site, own)
		if drop, again := p.dimmest(); drop < worst-hair && p.Missing <= best.Missing+hair && p.unfed() <= best.unfed() {
			best, worst, cut = p, drop, again
		}
	}
	return best
}

// dimmest returns the greatest share of volts lost at any last bulb, and whether that is over 5 % behind several strings.
func (p Plan) dimmest() (drop float64, cut bool) {
	for _, c := range p.Chains {
		if c.Drop > drop {
			drop, cut = c.Drop, c.Drop > dropFar && len(c.Strings) > 1
		}
	}
	return drop, cut
}

// unfed counts the strings that nothing feeds.
func (p Plan) unfed() int {
	n := 0
	for _, c := range p.Chains {
		if c.Feeder == "" {
			n += len(c.Strings)
		}
	}
	return n
}

// feed plans with chains that by themselves lose no more than a share of their volts.
func feed(in Input, s *site, own float64) Plan {
	f := &feeding{in: in, site: s, index: map[string]int{}, outlets: map[string]atOutlet{}}
	groups := join(f.site, in.Strings, in.Spec.Power.Split, own)
	f.chain(groups)
	f.units = units(in.Strings, groups, f.chains)
	if f.sources(); len(f.sharer.sources) > 0 {
		f.assign()
	}
	f.plan.Chains = f.chains
	f.count()
	f.circuits()
	f.energy()
	f.findings()
	return f.plan
}

// chain turns groups into chains with their currents.
func (f *feeding) chain(groups []*group) {
	for n, g := range groups {
		label := f.in.Strings[g.members[0]].Label
		c := Chain{Name: letters(n), Watts: g.watts, Kind: label.Name, Volts: label.Volts, Limit: g.why, MostWatts: limitOf(label).watts}
		var labels []catalog.String
		var amps []measure.Current
		for _, m := range g.members {
			one := f.in.Strings[m]
			c.Strings = append(c.Strings, one.Name)
			labels = append(labels, one.Label)
			amps = append(amps, ampsOf(one.Label))
		}
		running, lost := dropAlong(labels, amps)
		c.Running, c.Amps = running, running[0]
		c.EndVolts = label.Volts - lost
		if label.Volts > 0 {
			c.Drop = float64(lost / label.Volts)
		}
		f.index[c.Name] = n
		f.chains = append(f.chains, c)
		f.labels = append(f.labels, label)
		f.own = append(f.own, lost)
	}
}

// letters names the nth of anything from 0: A, B … Z, AA, AB …
func letters(n int) string {
	name := ""
	for n++; n > 0; n = (n - 1) / 26 {
		name = string(rune('A'+(n-1)%26)) + name
	}
	return name
}

// sources finds the outlets that may feed lights.
func (f *feeding) sources() {
	p := f.in.Spec.Power
	f.sharer = &sharer{site: f.site, units: f.units, circuit: p.Circuits}
	for _, c := range p.Circuits {
		f.sharer.allowed = append(f.sharer.allowed, max(0, allowance(p, c)-c.OtherLoad))
	}
	for _, o := range f.in.Spec.Site.Outlets {
		k := slices.IndexFunc(p.Circuits, func(c spec.Circuit) bool { return c.Name == o.Circuit })
		if k < 0 {
			continue
		}
		v := p.Circuits[k].Volts
		f.sharer.sources = append(f.sharer.sources, source{
			outlet: o, circuit: k, volts: v, most: mostThrough(cordsFor(v)),
			ways: [2]approach{f.site.approach(o, spec.Left), f.site.approach(o, spec.Right)},
		})
	}
}

// allowance returns what a circuit may carry for hours: the continuous share of its breaker, NEC 210.19(A)(1) and 210.20(A).
func allowance(p spec.Power, c spec.Circuit) measure.Current {
	return measure.Current(float64(p.Continuous) * float64(c.Breaker))
}

// count numbers the cords and adds up what the feeders are made of.
func (f *feeding) count() {
	cords := 0
	for _, one := range f.plan.Feeders {
		for i := range one.Joints {
			j := &one.Joints[i]
			if len(j.Cords) > 0 {
				cords++
				j.Cord = cords
			}
			f.plan.Taps += j.Taps
			for _, p := range j.Plugs {
				if p.Supply {
					f.plan.Supplies++
				}
			}
			for _, l := range j.Cords {
				k := slices.IndexFunc(f.plan.Cords, func(c Cord) bool { return c.Name == one.Cord && c.Length == l })
				if k < 0 {
					k = len(f.plan.Cords)
					f.plan.Cords = append(f.plan.Cords, Cord{Name: one.Cord, Length: l})
				}
				f.plan.Cords[k].Count++
			}
		}
	}
	f.plan.CordsProven = cords > 0 && f.laidCords() <= f.leastCords()
	slices.SortFunc(f.plan.Cords, func(a, b Cord) int {
		return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Length, b.Length))
	})
}

// laidCords counts the cords, those plugged one into the other on one way singly.
func (f *feeding) laidCords() int {
	n := 0
	for _, c := range f.plan.Cords {
		n += c.Count
	}
	return n
}

// circuits adds up each circuit.
func (f *feeding) circuits() {
	p := f.in.Spec.Power
	for _, c := range p.Circuits {
		one := Circuit{Name: c.Name, Allowed: allowance(p, c), Spec: c}
		for _, d := range f.plan.Feeders {
			if d.Circuit != c.Name {
				continue
			}
			one.Lights += d.Amps
			if !slices.Contains(one.Outlets, d.Outlet) {
				one.Outlets = append(one.Outlets, d.Outlet)
			}
			for _, j := range d.Joints {
				for _, plug := range j.Plugs {
					one.Chains = append(one.Chains, plug.Chains...)
				}
			}
		}
		one.Amps = one.Lights + c.OtherLoad
		f.plan.Circuits = append(f.plan.Circuits, one)
	}
}

// energy figures what the season burns: every string at its label's watts.
func (f *feeding) energy() {
	for _, c := range f.chains {
		f.plan.Watts += c.Watts
	}
	if e := f.in.Spec.Power.Evenings; e != nil {
		f.plan.KWh, f.plan.Cost = energy(f.plan.Watts, *e)
	}
}

// energy returns kWh = W·h·nights/1000 and what they cost.
func energy(w measure.Power, e spec.Evenings) (kWh, cost float64) {
	kWh = float64(w) * e.Hours * float64(e.Nights) / 1000
	return kWh, kWh * e.Price
}
