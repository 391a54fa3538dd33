// What the finished plan is made of, and which of two plans comes first.

package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// count adds up what the feeders are made of.
func (f *feeding) count() {
	p := &f.plan
	for _, one := range p.Feeders {
		for _, j := range one.Joints {
			f.countJoint(j)
		}
	}
	for _, c := range f.chains {
		if c.Feeder == "" {
			continue
		}
		p.Open++ // its last socket
		p.Links += len(c.Strings) - 1
		if c.To.Z-f.ground(c.To.Arch, c.To.Side) <= practice.LowJoint {
			p.mark.low++
		}
	}
	for i := range p.Cords {
		f.countCord(&p.Cords[i])
	}
	slices.SortFunc(p.Lots, func(a, b Lot) int {
		return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Sockets, b.Sockets), cmp.Compare(a.Length, b.Length))
	})
	slices.SortFunc(p.Covers, func(a, b measure.Length) int { return cmp.Compare(b, a) })
	p.mark.pieces = int32(p.Pieces())
	p.mark.cents += int64(len(p.Taps)) * f.prices.tap
	p.kept = f.in.Spec.Power.Split == f.split
	f.outletsInUse()
	f.bind()
}

// countJoint counts what is plugged together at a joint, and its open sockets.
func (f *feeding) countJoint(j Joint) {
	p := &f.plan
	n := j.Taps + j.Onward + max(0, len(j.Cords)-1)
	supplies, behind, free := 0, 0, 0
	for _, plug := range j.Plugs {
		n++
		if plug.Supply {
			supplies++
			behind, free = behind+len(plug.Chains), free+plug.Open // into its own sockets
		} else {
			n += len(plug.Chains) - 1
		}
	}
	boxed := supplies
	if len(j.Cords) == 0 && j.Socket == 0 {
		n-- // straight in the outlet, under its own cover
		boxed = min(boxed, n)
	}
	open := j.Skips + j.Spare
	if j.Taps > 0 {
		open += j.free()
	}
	p.Joints += n + behind
	p.Open += open + free
	p.Supplies += supplies
	if j.Arch > 0 && j.Climb <= practice.LowJoint {
		p.mark.low += int32(n + open)
		if n >= 3 {
			p.Boxes, supplies, boxed = append(p.Boxes, j.End.At), 0, n // all that is there goes in one
		}
	}
	p.Boxed += boxed + behind
	p.apart += supplies
}

// countCord counts a cord among those to buy, and says what it may carry.
func (f *feeding) countCord(c *Cord) {
	p := &f.plan
	k := slices.IndexFunc(p.Lots, func(l Lot) bool { return l.Name == c.Kind && l.Length == c.Length && l.Sockets == c.Sockets })
	if k < 0 {
		k = len(p.Lots)
		p.Lots = append(p.Lots, Lot{Name: c.Kind, Length: c.Length, Sockets: c.Sockets})
	}
	p.Lots[k].Count++
	if c.Over {
		p.mark.over += f.site.past
		f.cover(c)
	}
	kind, _ := catalog.FindCord(c.Kind)
	c.May = kind.AmpsAt(c.Length)
	c.Limit = Limit{CordAmps, float64(c.Amps), float64(c.May)}
	if c.inline != nil {
		p.mark.cents += f.prices.inline(*c.inline)
	} else {
		p.mark.cents += f.prices.cord(kind)(c.Length)
	}
}

// cover adds the cord covers of a cord that passes ways on the ground: each from foot to foot and a hand past either, rounded up. Of cords in line the last counts for all.
func (f *feeding) cover(c *Cord) {
	if !f.in.Spec.Site.Cords.Cover() || len(c.Places) == 0 {
		return
	}
	foot := func(leg lights.Part) spec.Point {
		side, _ := leg.Wall()
		return f.site.feet[side][leg.Number-1].At()
	}
	for _, legs := range c.Passes {
		long := ground.Distance(foot(legs[0]), foot(legs[1])) + 2*practice.CoverPast
		f.plan.Covers = append(f.plan.Covers, measure.RoundUp(long, practice.CoverStep(f.in.Spec.Units)))
	}
}

// ground returns the ground's height at a foot.
func (f *feeding) ground(arch int, side spec.Side) measure.Length {
	feet := f.site.feet[side]
	return feet[max(0, min(arch-1, len(feet)-1))].Ground
}

// outletsInUse counts the timers to buy and the outlets that want a GFCI or RCD of their own.
func (f *feeding) outletsInUse() {
	p := &f.plan
	for k, s := range f.sources {
		if f.through(k) == 0 {
			continue
		}
		if s.outlet.Timer == 0 {
			p.Timers = append(p.Timers, f.timers(k)...)
		}
		if c := f.in.Spec.Power.Circuits[s.circuit]; !c.GFCI && c.Volts > lowVolts {
			p.Bare = append(p.Bare, s.outlet.Name)
		}
	}
}

// through adds up the amps through a source.
func (f *feeding) through(k int) (amps measure.Current) {
	for _, d := range f.plan.Feeders {
		if d.source == k {
			amps += d.Amps
		}
	}
	return amps
}

// bind finds what comes nearest to binding from each feeder's plug on.
func (f *feeding) bind() {
	p := &f.plan
	for d := range p.Feeders {
		one := &p.Feeders[d]
		s := f.sources[one.source]
		c := p.Circuits[s.circuit]
		list := []Limit{{TimerAmps, float64(f.through(one.source)), float64(s.outlet.Timer)}, {BreakerAmps, float64(c.Amps), float64(c.Allowed)}}
		for _, c := range p.Cords {
			if c.Feeder == one.Name {
				list = append(list, c.Limit)
			}
		}
		for _, t := range p.Timers {
			if t.Outlet == one.Outlet {
				list = append(list, Limit{TimerAmps, float64(t.Amps), float64(t.Size)})
			}
		}
		one.Limit, one.least = nearest(list...), list[1].Of
		for _, l := range list {
			if l.Of > 0 {
				one.least = min(one.least, l.Of)
			}
		}
	}
}

// timers buys timers for an outlet that has none: as few as its plugs go into, each carrying no more than such timers may.
func (f *feeding) timers(k int) []Timer {
	kind := f.in.Spec.Power.Timer
	var plugs []measure.Current
	for _, d := range f.plan.Feeders {
		if d.source == k {
			plugs = append(plugs, d.Amps)
		}
	}
	slices.SortFunc(plugs, func(a, b measure.Current) int { return cmp.Compare(b, a) })
	var out []Timer
	for _, amps := range plugs {
		n := 0
		for n < len(out) && (out[n].Plugs >= kind.Sockets || kind.Amps > 0 && out[n].Amps+amps > kind.Amps+hair) {
			n++
		}
		if n == len(out) {
			out = append(out, Timer{Outlet: f.sources[k].outlet.Name, Size: kind.Amps})
		}
		out[n].Amps += amps
		out[n].Plugs++
	}
	if !f.in.Spec.Given("power.timers.amps") {
		for n := range out {
			out[n].Size = catalog.TimerSize(out[n].Amps, f.sources[k].volts)
		}
	}
	return out
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
		f.plan.KWh = energy(f.plan.Watts, *e)
	}
}

// energy returns kWh = W·h·nights/1000.
func energy(w measure.Power, e spec.Evenings) float64 {
	return float64(w) * e.Hours * float64(e.Nights) / 1000
}

// Better reports whether a plan comes before another by the aims.
func Better(a, b Plan) bool {
	rank := func(p Plan) int {
		worst := 0
		for _, c := range p.Chains {
			worst = max(worst, rank(c.Drop))
		}
		return worst
	}
	if d := a.Missing - b.Missing; d > hair || d < -hair {
		return d < 0
	}
	if c := cmp.Or(
		cmp.Compare(a.unfed(), b.unfed()), cmp.Compare(b2i(!a.kept), b2i(!b.kept)), cmp.Compare(rank(a), rank(b)),
		cmp.Compare(a.mark.over, b.mark.over), cmp.Compare(a.work(), b.work()),
	); c != 0 {
		return c < 0
	}
	return a.mark.better(b.mark)
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

// work is what is laid, a circuit more counted as one piece: so outlets are taken up as well.
func (p Plan) work() int { return p.Pieces() + p.inUse() }

// inUse counts the circuits that feed lights.
func (p Plan) inUse() int {
	n := 0
	for _, c := range p.Circuits {
		if c.Lights > 0 {
			n++
		}
	}
	return n
}

// leastSaved is how many cords and three-ways a cord over the way must save to be told of, our own choice: it hangs over people's heads.
const leastSaved = 3

// crossing finds how many cords and three-ways would be saved where a cord might pass the way; 0 where the spec says how, where one does, or where it is little.
func (f *feeding) crossing() int {
	climb := 0 // runs of legs that begin at a crown
	for _, c := range f.chains {
		climb += b2i(c.From.At.Spot == lights.AtCrown && c.On[0].IsLeg())
	}
	if f.site.past == 0 || f.plan.mark.over > 0 || climb < leastSaved || len(f.in.Strings) > mostGain {
		return 0
	}
	free := *f.site
	free.past, free.liners = 0, map[string]*liner{}
	with := feed(&free, f.joining, f.back)
	if n := f.plan.Pieces() - with.plan.Pieces(); n >= leastSaved && with.plan.unfed() <= f.plan.unfed() {
		return n
	}
	return 0
}

// gain finds what a socket in the back of plugs would save where it is not known of some string.
func (f *feeding) gain() {
	var kinds []string
	for _, s := range f.in.Strings {
		if l := s.Label; !l.BackSocket && l.Supply == nil && !f.in.Spec.Given("lights.strings."+l.Name+".back socket") && !slices.Contains(kinds, l.Name) {
			kinds = append(kinds, l.Name)
		}
	}
	if len(kinds) == 0 || len(f.in.Strings) > mostGain || !f.couldStack() {
		return
	}
	with := feed(f.site, f.joining, func(l catalog.String) bool { return l.BackSocket || slices.Contains(kinds, l.Name) })
	if n := f.plan.Pieces() - with.plan.Pieces(); n > 0 && with.plan.unfed() <= f.plan.unfed() {
		f.plan.Gain = &BackSocket{Strings: kinds, Pieces: n}
	}
}

// couldStack reports whether two plugs share a place that might sit one in the other.
func (f *feeding) couldStack() bool {
	for _, d := range f.plan.Feeders {
		for _, j := range d.Joints {
			for i, a := range j.Plugs {
				for _, b := range j.Plugs[:i] {
					if !a.Supply && !b.Supply && f.fitBehind(a.runs[0], b.runs[0]) {
						return true
					}
				}
			}
		}
	}
	return false
}

// mostGain is up to how many strings a plan is made twice, to tell what their plugs would save.
const mostGain = 300
