package spec

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"time"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/sun"
)

// custom is the reason for a default that rests on what builders do.
const custom = "common practice, no source"

// fill sets a value that the spec does not give and lists it.
func fill[T any](r *reader, key string, into *T, value T, printed, why string) {
	if r.spec.Given(key) {
		return
	}
	*into = value
	r.spec.Defaults = append(r.spec.Defaults, Default{key, printed, why, Written(value, printed, r.spec.Units)})
}

// fillArch fills in an arch, or an exception: it keeps what its arch has, save where its own pipe or stake asks for another default.
func (r *reader) fillArch(path string, a *Arch) {
	s, base := r.spec, path == "arch"
	if s.Given(path + ".pipe.od") {
		r.fillPipe(path+".pipe", &a.Pipe)
	}
	bar := usualBar(a.Pipe.OD, s.Units)
	if footBar := s.Given("arch.foot.bar") || s.Given(path+".foot.bar"); !footBar && (base || s.Given(path+".pipe") && !s.Given("arch.stake.bar") && a.Stake.Bar != bar) {
		fill(r, path+".stake.bar", &a.Stake.Bar, bar, bar.Name, "goes into the pipe with little play")
	}
	depthKnown := s.Given("arch.stake.depth") || s.Given(path+".stake.depth")
	if l := usualLength(a.Stake.Depth, depthKnown, s.Units); base || !s.Given("arch.stake.length") && a.Stake.Length != l {
		fill(r, path+".stake.length", &a.Stake.Length, l, s.Units.Inches(l), "as commonly sold, a third of it or more showing")
	}
	if d, why := usualDepth(a.Stake.Length, s.Site.Soil, s.Units); base || !s.Given("arch.stake.depth") && a.Stake.Depth != d {
		fill(r, path+".stake.depth", &a.Stake.Depth, d, s.Units.Inches(d), why)
	}
	r.fillFoot(path, a)
	if base || s.Given(path+".stake") {
		r.checkStake(path+".stake", a.Stake)
	}
	if base {
		fill(r, "arch.stake.lean", &a.Stake.Lean, 0, measure.Degrees(0), "driven plumb")
		fill(r, "arch.late modulus", &a.LateModulus, 0.60, "60 %", "stiffness left after eight weeks' creep, our assumption: long-term 1400 of 3200 MPa, by the logarithm of time")
		fill(r, "arch.joints", &a.Joints, Dry, Dry.String(), "sockets pushed home, so that the set comes apart again")
	}
}

// fillFoot makes the stake of a weighted base a bar that stands on it: nothing of it in the ground.
func (r *reader) fillFoot(path string, a *Arch) {
	if a.Foot == nil {
		return
	}
	u := r.spec.Units
	if !r.spec.Given(path + ".stake.length") {
		length := practice.OnBase(u)
		a.Stake.Length = length
		r.spec.Chosen(Default{path + ".stake.length", u.Inches(length), "what stands on the base", Written(length, "", u)})
	}
	a.Stake.Depth = 0
	r.spec.Chosen(Default{path + ".stake.depth", u.Inches(0), "it stands on its base", nil})
	fill(r, path+".foot.on", &a.Foot.On, Asphalt, Asphalt.String(), "the slipperier of pavings when wet is reckoned with")
	if !r.spec.Given(path + ".foot.weight") {
		r.spec.Chosen(Default{path + ".foot.weight", "the least that does", "by sliding and tipping", nil})
	}
}

func (r *reader) fillPipe(path string, p *catalog.Pipe) {
	u := r.spec.Units
	modulus := measure.By(u, 400_000*measure.PSI, 2760*measure.MPa)
	fill(r, path+".modulus", &p.Modulus, modulus, u.Pressure(modulus), "rigid PVC at "+u.Temperature(23))
	strength := measure.By(u, 7000*measure.PSI, 48*measure.MPa)
	fill(r, path+".strength", &p.Strength, strength, u.Pressure(strength), "least tensile strength of the usual class of rigid PVC")
	if mass := p.PVCMass(); p.ID() > 0 {
		fill(r, path+".weight", &p.Mass, mass, u.LineMass(mass), "from its size at a density of 1.40")
	}
	stop := measure.By(u, 3*inch/32, 2.5)
	fill(r, path+".coupling stop", &p.CouplingStop, stop, u.Size(stop), "of moulded couplings")
}

// usualBar is the bar that goes into a pipe: the thin one up to 3/4 in pipe.
func usualBar(od measure.Length, s measure.System) catalog.Bar {
	name := measure.By(s, "3/8 in", "10 mm")
	if od > 1.1*inch { // 3/4 in pipe measures 1.05 in
		name = measure.By(s, "1/2 in", "12 mm")
	}
	bar, _ := catalog.FindBar(name)
	return bar
}

// usualLength of a bar: enough to show for a depth that the spec gives.
func usualLength(depth measure.Length, given bool, u measure.System) measure.Length {
	l := practice.Bar(u)
	if given {
		l = max(l, depth*3/2)
	}
	return measure.By(u, l, measure.RoundUp(l, 50))
}

// usualDepth of a bar, never more than two thirds of it.
func usualDepth(length measure.Length, soil Soil, u measure.System) (measure.Length, string) {
	d, why := practice.Driven(u, false), custom
	if soil == Sandy || soil == SoilUnknown {
		d, why = practice.Driven(u, true), "soil "+soil.String()+"; "+custom
	}
	// In metres down to a whole centimetre.
	if most := measure.By(u, length*2/3, -measure.RoundUp(-length*2/3, 10)); length > 0 && most < d {
		return most, "two thirds of the bar"
	}
	return d, why
}

func (r *reader) checkStake(path string, s Stake) {
	if s.Depth > 0 && s.Length > 0 && s.Showing() <= 0 {
		u := r.spec.Units
		r.failKey(path+".depth", exampleOf("arch.stake", u), "%s deep leaves nothing of a bar of %s above the ground", u.Written(s.Depth), u.Written(s.Length))
	}
}

// fillRest fills in everything but the arches, in the order of the format, and sorts the list.
func (r *reader) fillRest() {
	s := r.spec
	fill(r, "units", &s.Units, s.Units, s.Units.String(), "as the first length in the spec")
	paper := measure.By(s.Units, "letter", "a4")
	fill(r, "paper", &s.Paper, paper, paper, "goes with "+s.Units.String()+" units")
	width, height := practice.Opening(s.Units)
	fill(r, "tunnel.opening.width", &s.Tunnel.OpeningWidth, width, s.Units.Inches(width), "2010 ADA Standards 403.5, clear width")
	fill(r, "tunnel.opening.height", &s.Tunnel.OpeningHeight, height, s.Units.Inches(height), "2010 ADA Standards 307.4, headroom")
	r.fillRidge()
	r.fillGuys()
	r.fillBraces()
	r.fillSite()
	r.fillLights()
	r.fillPower()
	fill(r, "weather.ice", &s.Weather.Ice, 0, s.Units.Inches(0), "the load figures are for bare pipe")
	stand, inside := practice.Aims(s.Units)
	fill(r, "weather.stand", &s.Weather.Stand, stand, s.Units.Speed(stand), "our own choice")
	fill(r, "weather.inside", &s.Weather.Inside, inside, s.Units.Speed(inside), "our own choice")
	cold := practice.Cold(s.Units)
	fill(r, "weather.cold", &s.Weather.Cold, cold, s.Units.Temperature(cold), custom)
	kerf := practice.Kerf(s.Units)
	fill(r, "stock.kerf", &s.Stock.Kerf, kerf, s.Units.Inches(kerf), "a hand saw or a ratchet cutter at most")
	fill(r, "stock.trim", &s.Stock.Trim, 0, s.Units.Inches(0), "stock ends are square enough to use")
	fill(r, "stock.spares", &s.Stock.Spares, 0.05, "5 %", custom)
	fill(r, "store", &s.Store, Stripped, Stripped.String(), "strings kept off the pipe last longer; our own choice")
	r.fillCrew()
	slices.SortStableFunc(s.Defaults, func(a, b Default) int { return cmp.Compare(section(a.Key), section(b.Key)) })
}

// section tells where in the format a default's section stands.
func section(key string) int {
	head := key
	if end := strings.IndexAny(key, ".["); end >= 0 {
		head = key[:end]
	}
	return slices.Index(children[""], head)
}

func (r *reader) fillRidge() {
	s := r.spec
	if s.Tunnel.Arches < 2 || !s.Ridge.Present {
		return
	}
	fill(r, "ridge.pipe", &s.Ridge.Pipe, s.Arch.Pipe, s.Arch.Pipe.Name, "as the arches")
	if s.Given("ridge.pipe.od") {
		r.fillPipe("ridge.pipe", &s.Ridge.Pipe)
	}
}

func (r *reader) fillGuys() {
	s, g := r.spec, &r.spec.Guys
	if g.From == 0 {
		return
	}
	ends := slices.Compact([]int{1, s.Tunnel.Arches})
	fill(r, "guys.arches", &g.Arches, ends, "1 and last", "the ends hold what stands between them")
	bar, u := s.Arch.Stake.Bar, s.Units
	length, depth := practice.Peg(u)
	shows := length - depth
	if s.Given("guys.stake.depth") {
		length = max(length, g.Stake.Depth+shows)
	}
	fill(r, "guys.stake.bar", &g.Stake.Bar, bar, bar.Name, "as the arches' stakes")
	fill(r, "guys.stake.length", &g.Stake.Length, length, u.Inches(length), "what is driven, and what the knot and the cap take")
	if s.Given("guys.stake.length") {
		depth = min(max(g.Stake.Length-shows, g.Stake.Length/2), practice.Deepest(u))
	}
	fill(r, "guys.stake.depth", &g.Stake.Depth, depth, u.Inches(depth), "only the knot and the cap show")
	fill(r, "guys.stake.lean", &g.Stake.Lean, 0, measure.Degrees(0), "driven plumb")
	r.checkStake("guys.stake", g.Stake)
}

func (r *reader) fillBraces() {
	s, b := r.spec, &r.spec.Braces
	if b.From == 0 || s.Tunnel.Arches < 2 {
		return
	}
	fill(r, "braces.bays", &b.Bays, slices.Compact([]int{1, s.Tunnel.Arches - 1}), "1 and last", "the ends hold what stands between them")
	b.Peg = Peg(s.Arch.Stake.Bar, s.Units)
	fill(r, "braces.kind", &b.Line, false, "pipe", "it pushes as well as pulls")
}

// Peg is a stake for a brace or a chosen guy: of that bar, most of it in the ground.
func Peg(bar catalog.Bar, u measure.System) Stake {
	length, depth := practice.Peg(u)
	return Stake{Bar: bar, Length: length, Depth: depth}
}

// Chooses reports whether the spec leaves what holds the tunnel lengthwise to the solver.
func (s *Spec) Chooses() bool { return !s.settled && !s.Given("guys") && !s.Given("braces") }

// Settle notes that all that was left to the solver is chosen; Settled reports it.
func (s *Spec) Settle() { s.settled = true }

// Settled reports that nothing is left to the solver.
func (s *Spec) Settled() bool { return s.settled }

// Chosen lists a value that the solver chose, in the place of a default for the same key.
func (s *Spec) Chosen(row Default) {
	if i := slices.IndexFunc(s.Defaults, func(d Default) bool { return d.Key == row.Key }); i >= 0 {
		s.Defaults[i] = row
		return
	}
	s.Defaults = append(s.Defaults, row)
	slices.SortStableFunc(s.Defaults, func(a, b Default) int { return cmp.Compare(section(a.Key), section(b.Key)) })
}

func (r *reader) fillSite() {
	s, u := &r.spec.Site, r.spec.Units
	fill(r, "site.route", &s.Route, []Leg{{Rest: true}}, "one straight", "the spec gives no route")
	if !r.spec.Given("site.start.from") {
		fill(r, "site.start.at", &s.Start, Point{}, "0, 0", "arch 1 is where the plan begins")
	}
	if s.Toward == nil {
		fill(r, "site.start.heading", &s.Heading, 0, measure.Degrees(0), "the walk goes straight up the plan")
	}
	if s.Place != nil {
		zone := sun.Zone(s.Place.Long)
		fill(r, "site.clock", &s.Clock, zone, zone.String(), "the whole hour nearest to the sun there; borders and summer time may differ")
	}
	fill(r, "site.exposure", &s.Exposure, Open, Open.String(), "nothing is taken to keep the wind off")
	fill(r, "site.soil", &s.Soil, SoilUnknown, SoilUnknown.String(), "soft and sandy are both shown")
	for i := range s.Features {
		key := fmt.Sprintf("site.features[%d]", i)
		fill(r, key+".hard", &s.Features[i].Hard, false, "false", "stakes can be driven")
		fill(r, key+".height", &s.Features[i].Height, 0, u.Inches(0), "flat on the ground")
	}
	aside, below := practice.KeepBuried(u), practice.KeepOverhead(u)
	for i := range s.Buried {
		fill(r, fmt.Sprintf("site.buried[%d].keep", i), &s.Buried[i].Keep, aside, u.Inches(aside), "the wider of the distances that state one-call laws ask for on each side of a mark")
	}
	for i := range s.Overhead {
		fill(r, fmt.Sprintf("site.overhead[%d].keep", i), &s.Overhead[i].Keep, below, u.Room(below), "the usual least distance of people and what they carry from a power line")
	}
	for i := range s.Outlets {
		fill(r, fmt.Sprintf("site.outlets[%d].sockets", i), &s.Outlets[i].Sockets, 2, "2", "a duplex outlet")
	}
	if len(s.Outlets) > 0 {
		fill(r, "site.cords.crossing", &s.Cords.Crossing, CrossSeldom, CrossSeldom.String(), "overhead along the first arch, and only where nothing else feeds all")
	}
}

func (r *reader) fillLights() {
	l, u := &r.spec.Lights, r.spec.Units
	for i := range l.Wraps {
		w, key := &l.Wraps[i], fmt.Sprintf("lights.wraps[%d]", i)
		ridge := slices.ContainsFunc(w.Where, func(p Place) bool { return p.Part == RidgePieces })
		if !r.spec.Given(key + ".pitch") {
			printed := "as few strings as reach"
			if ridge {
				printed += ", turns " + u.Inches(practice.RidgePitch(u)) + " apart on the ridge"
			}
			fill(r, key+".count", &w.Count, 0, printed, "the pitch follows from the string's length")
		}
		fill(r, key+".plug", &w.Plug, PlugOpen, "open", "chosen with the power plan, stretch by stretch")
	}
	if w := l.Rows; w != nil {
		fill(r, "lights.rows.walls", &w.Walls, []Side{Left, Right}, "both", custom)
		if !r.spec.Given("lights.rows.start") { // the solver may choose otherwise, so a filled spec leaves it open
			r.spec.Chosen(Default{"lights.rows.start", "front", "or from the back, path by path, where the power plan is better for it", nil})
		}
		sag := practice.RowSag(u)
		fill(r, "lights.rows.sag", &w.Sag, sag, u.Inches(sag), custom)
	}
	for i := range l.Drops {
		d, key := &l.Drops[i], fmt.Sprintf("lights.drops[%d]", i)
		if d.String.Drop > 0 {
			fill(r, key+".hang", &d.Hang, d.String.Drop, u.Inches(d.String.Drop), "the string's own drop")
		}
		fill(r, key+".lap", &d.Lap, 0, u.Inches(0), "strings end to end")
	}
}

func (r *reader) fillString(key string, s *catalog.String) {
	u := r.spec.Units
	const assumed = "assumed, check the label"
	fill(r, key+".lead", &s.Lead, 0, u.Inches(0), assumed)
	fill(r, key+".tail", &s.Tail, 0, u.Inches(0), assumed)
	fill(r, key+".kind", &s.Lamp, catalog.LED, "led", assumed)
	volts, why := measure.By[measure.Voltage](u, 120, 230), "goes with "+u.String()+" units"
	if c := r.spec.Power.Circuits; len(c) > 0 && c[0].Volts > 0 {
		volts, why = c[0].Volts, "as the first circuit"
	}
	fill(r, key+".volts", &s.Volts, volts, measure.Volts(volts), why)
	amps := measure.Current(s.Watts) / measure.Current(s.Volts)
	fill(r, key+".amps", &s.Amps, amps, measure.Amps(amps), "from its watts and volts")
	mass, wire, gauge := measure.By(u, 0.015*measure.PoundPerFoot, 0.022), measure.By(u, 0.15*inch, 4), measure.By(u, measure.AWG(22), 0.34)
	fill(r, key+".weight", &s.Mass, mass, u.LineMass(mass), assumed)
	fill(r, key+".wire", &s.Wire, wire, u.Size(wire), assumed)
	fill(r, key+".gauge", &s.Gauge, gauge, u.Gauge(gauge), assumed)
	if s.Lamp == catalog.Incandescent {
		fill(r, key+".most in a chain", &s.MostChain, 3, "3", "the usual limit of incandescent strings; the label wins")
	}
	switch {
	case s.Supply != nil:
		fill(r, key+".most watts", &s.MostWatts, s.Supply.Watts, measure.Watts(s.Supply.Watts), "what its supply gives")
	case s.Volts > 200:
		fill(r, key+".most watts", &s.MostWatts, 400, measure.Watts(400), "assumed at 230 V, check the label")
	default:
		fill(r, key+".most watts", &s.MostWatts, 210, measure.Watts(210), "as published for a 3 A plug fuse, check the label")
	}
	if s.Supply == nil && s.Volts > 50 && s.Volts < 200 && s.MostWatts <= measure.Power(catalog.PlugFuse)*measure.Power(s.Volts) {
		fill(r, key+".fuse", &s.Fuse, catalog.PlugFuse, measure.Amps(catalog.PlugFuse), "as UL 588 plugs have, read the plug")
	}
}

func (r *reader) fillPower() {
	p := &r.spec.Power
	for i := range p.Circuits {
		c, key := &p.Circuits[i], "power.circuits."+p.Circuits[i].Name
		fill(r, key+".gfci", &c.GFCI, false, "false", "the spec does not say that there is one")
		fill(r, key+".other load", &c.OtherLoad, 0, measure.Amps(0), "nothing else is on it")
	}
	fill(r, "power.continuous", &p.Continuous, 0.80, "80 %", "continuous load, NEC 210.19(A)(1) and 210.20(A); elsewhere our advice")
	fill(r, "power.split", &p.Split, SplitNone, SplitNone.String(), "circuits are filled whatever they feed")
	fill(r, "power.together", &p.Together, 4, "4", "most strings behind one plug of a cord: few go dark with it; our own choice")
	inline := catalog.Inlines()
	fill(r, "power.cords", &p.Inline, inline, fmt.Sprintf("%d lengths with several sockets", len(inline)), "as commonly sold, from memory: write what your shop has")
	fill(r, "power.taps", &p.Taps, []Tap{{Sockets: 3}}, "3 sockets", "as commonly sold")
	volts := measure.Voltage(120)
	if len(p.Circuits) > 0 {
		volts = p.Circuits[0].Volts
	}
	timer := Timer{Amps: 15, Sockets: 2}
	if volts >= 200 {
		timer = Timer{Amps: 16, Sockets: 1}
	}
	fill(r, "power.timers.amps", &p.Timer.Amps, timer.Amps, measure.Amps(timer.Amps), "as commonly sold for outdoors, from memory: read its label")
	fill(r, "power.timers.sockets", &p.Timer.Sockets, timer.Sockets, fmt.Sprint(timer.Sockets), "as commonly sold for outdoors, from memory")
	if p.Evenings == nil {
		p.Evenings = &Evenings{}
	}
	fill(r, "power.evenings.hours", &p.Evenings.Hours, 5, "5", custom)
	nights, why := 35, custom
	if d := r.spec.Dates; !d.Open.IsZero() && d.Close.After(d.Open) {
		nights, why = min(int(d.Close.Sub(d.Open)/(24*time.Hour))+1, mostNights), "from open to close"
	}
	fill(r, "power.evenings.nights", &p.Evenings.Nights, nights, fmt.Sprint(nights), why)
}

func (r *reader) fillCrew() {
	c := &r.spec.Crew
	fill(r, "crew.helpers", &c.Helpers, 4, "4", custom)
	if day := r.spec.Dates.Build; !day.IsZero() {
		fill(r, "crew.date", &c.Date, day, day.Format(time.DateOnly), "the day to build")
	}
	fill(r, "crew.young", &c.Young, 0, "0", custom)
	fillEach(r, "crew.tools.", &c.Tools, Tools{Ladders: 2, Trestles: 8, Tapes: 3, Sledges: 2}, "%v")
	fill(r, "crew.start", &c.Start, 9*time.Hour, "09:00", custom)
	fillEach(r, "crew.rates.", &c.Rates, Rates{Stake: 8, Cut: 3, Wrap: 15, Raise: 15, Ridge: 6, Row: 8, Drop: 3, Guy: 12, Cord: 10}, "%v minutes")
}

// fillEach fills every field of a struct of counts or of numbers from the usual ones, printed in a form.
func fillEach[T any](r *reader, section string, into *T, usual T, form string) {
	s, u := reflect.ValueOf(into).Elem(), reflect.ValueOf(usual)
	for i := range s.NumField() {
		value := u.Field(i).Interface()
		if key := section + keyOf(s.Type().Field(i)); !r.spec.Given(key) {
			s.Field(i).Set(u.Field(i))
			printed := fmt.Sprintf(form, value)
			r.spec.Defaults = append(r.spec.Defaults, Default{key, printed, custom, Written(value, printed, r.spec.Units)})
		}
	}
}
