package power

import (
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// walk is what one walk of the tree from the outlets counts again, from the lists of cords, three-ways and runs alone.
type walk struct {
	*testing.T
	in     Input
	plan   Plan
	hung   map[string]lights.String
	plugs  map[string][]string // what is plugged into each outlet, cord, three-way, and into the back of each run's plug
	amps   map[string]measure.Current
	strung map[string]int // strings behind each run's plug
	joints int
	open   int
	pieces int
}

// checkPlan holds a plan to everything that must be true of any, counted again from the outlets: each string in one run, plugged prongs into socket within
// reach; no label, plug, fuse, cord, three-way, timer, breaker asked for more than it has with all that hangs from it; the volts at each last bulb, and told
// where more than 3 or 5 % are lost; no cord or three-way in a
// string's socket, no three-way in a three-way, no more than two plugs stacked; every cord long enough; no more dark together than the spec allows;
// no way passed on the ground.
func checkPlan(t *testing.T, in Input, p Plan) {
	t.Helper()
	w := walk{T: t, in: in, plan: p, hung: lying(in, p), plugs: map[string][]string{}, amps: map[string]measure.Current{}, strung: map[string]int{}}
	for _, c := range p.Cords {
		w.plugs[c.FedBy] = append(w.plugs[c.FedBy], c.Name)
	}
	for _, c := range p.Taps {
		w.plugs[c.FedBy] = append(w.plugs[c.FedBy], c.Name)
	}
	for _, c := range p.Chains {
		if c.FedBy != "" {
			w.plugs[c.FedBy] = append(w.plugs[c.FedBy], c.Name)
		}
	}
	w.runs()
	w.outlets()
	w.cords()
	w.supplies()
	w.volts()
	w.split()
	if w.joints != p.Joints || w.open != p.Open {
		t.Errorf("%d joints and %d open sockets, counted again %d and %d", p.Joints, p.Open, w.joints, w.open)
	}
}

// runs checks each run by its strings' labels: at every plug all that hangs from it.
func (w *walk) runs() {
	w.Helper()
	seen := map[string]int{}
	for _, c := range w.plan.Chains {
		var behind []string
		for i := len(c.Strings) - 1; i >= 0; i-- {
			name := c.Strings[i]
			s := w.hung[name]
			seen[name]++
			behind = append(behind, name)
			watts, amps := measure.Power(0), measure.Current(0)
			for _, b := range behind {
				watts += w.hung[b].Watts
				amps += w.hung[b].Label.Amps
			}
			l := s.Label
			if l.Fuse > 0 && len(behind) > 1 && amps > l.Fuse+hair {
				w.Errorf("run %s at %s: %v A through a fuse of %v", c.Name, name, amps, l.Fuse)
			}
			if l.MostChain > 0 && len(behind) > l.MostChain && len(behind) > 1 || len(behind) > 1 && l.MostWatts > 0 && watts > l.MostWatts+hair {
				w.Errorf("run %s at %s: %d strings, %v W", c.Name, name, len(behind), watts)
			}
			if i == 0 {
				break
			}
			before := w.hung[c.Strings[i-1]]
			reach := practice.HandReach + max(s.Off, min(max(before.LeftOver, 0), practice.LooseReach))
			if before.Run.IsRow() && s.Run.IsRow() { // whose plugs have no loose inches
				reach = min(reach, max(before.LeftOver, practice.EndToEnd))
			}
			if before.Label.Volts != s.Label.Volts || before.Label.Lamp != s.Label.Lamp || lights.Apart(before.To, s.From) > reach {
				w.Errorf("run %s: %s cannot be plugged into %s", c.Name, name, before.Name)
			}
			if ridge := s.Run.Kind == lights.Ridge; before.Run.Kind == lights.Ridge && !ridge || ridge && before.Run.IsRow() {
				w.Errorf("run %s: %s hangs on %s", c.Name, s.Run, before.Run)
			}
		}
		if n := len(c.Strings); n > w.in.Spec.Power.Together && c.On[0].Kind != lights.Ridge {
			w.Errorf("run %s: %d strings dark with one plug", c.Name, n)
		}
		w.strung[c.Name] = len(c.Strings)
		if c.FedBy == "" != (c.Outlet == "") {
			w.Errorf("run %s: outlet %q, fed by %q", c.Name, c.Outlet, c.FedBy)
		}
		if c.FedBy != "" {
			w.joints++
			w.open++
		}
	}
	for _, s := range w.in.Strings {
		if seen[s.Name] != 1 {
			w.Errorf("string %s is in %d runs", s.Name, seen[s.Name])
		}
	}
}

// chain returns a run by its name.
func (w *walk) chain(name string) *Chain {
	k := slices.IndexFunc(w.plan.Chains, func(c Chain) bool { return c.Name == name })
	if k < 0 {
		return nil
	}
	return &w.plan.Chains[k]
}

// flow returns the amps through a plug, all that hangs from it counted, at the circuit's volts. Runs on one supply count as the supply.
func (w *walk) flow(name string, volts measure.Voltage) measure.Current {
	if c := w.chain(name); c != nil {
		sum := c.Amps
		for _, b := range w.plugs[name] {
			sum += w.flow(b, volts)
		}
		w.amps[name] = sum
		return sum
	}
	sum := measure.Current(0)
	for _, p := range w.sockets(name) {
		if s := w.hung[firstString(w, p[0])].Label.Supply; s != nil {
			watts := measure.Power(0)
			for _, c := range p {
				watts += w.chain(c).Watts
			}
			sum += measure.Current(float64(max(s.Watts, watts)) / float64(volts))
			continue
		}
		sum += w.flow(p[0], volts)
	}
	w.amps[name] = sum
	return sum
}

// firstString returns a run's first string; none of what is no run.
func firstString(w *walk, name string) string {
	if c := w.chain(name); c != nil {
		return c.Strings[0]
	}
	return ""
}

// sockets returns what is plugged into something, by socket: runs behind one supply share one.
func (w *walk) sockets(name string) [][]string {
	var out [][]string
	shared := map[string]bool{}
	for _, f := range w.plan.Feeders {
		for _, j := range f.Joints {
			for _, p := range j.Plugs {
				if p.Supply && slices.Contains(w.plugs[name], p.Chains[0]) {
					out = append(out, p.Chains)
					for _, c := range p.Chains {
						shared[c] = true
					}
				}
			}
		}
	}
	for _, p := range w.plugs[name] {
		if !shared[p] {
			out = append(out, []string{p})
		}
	}
	return out
}

// outlets checks what each outlet, timer and breaker carries.
func (w *walk) outlets() {
	w.Helper()
	circuits := map[string]measure.Current{}
	reached := map[string]bool{}
	for _, o := range w.in.Spec.Site.Outlets {
		var circuit spec.Circuit
		for _, c := range w.in.Spec.Power.Circuits {
			if c.Name == o.Circuit {
				circuit = c
			}
		}
		through := w.flow(outletName(o.Name), circuit.Volts)
		circuits[o.Circuit] += through
		w.joints -= len(w.sockets(outletName(o.Name))) // under the outlet's own cover
		if n := len(w.sockets(outletName(o.Name))); n > o.Sockets {
			w.Errorf("outlet %s: %d plugs in %d sockets", o.Name, n, o.Sockets)
		}
		if o.Timer > 0 && through > o.Timer+hair {
			w.Errorf("outlet %s: %v A through a timer for %v", o.Name, through, o.Timer)
		}
		w.timers(o, through)
		w.reach(outletName(o.Name), reached)
		for _, p := range w.sockets(outletName(o.Name)) {
			most := measure.Current(0)
			for _, c := range cordsFor(circuit.Volts) {
				most = max(most, c.Amps)
			}
			if w.amps[p[0]] > most+hair {
				w.Errorf("outlet %s: %v A through one plug", o.Name, w.amps[p[0]])
			}
		}
	}
	for _, c := range w.plan.Chains {
		if c.FedBy != "" && !reached[c.Name] {
			w.Errorf("run %s is not reached from any outlet", c.Name)
		}
	}
	if n := w.pieces; n != len(w.plan.Cords)+len(w.plan.Taps) {
		w.Errorf("%d cords and three-ways hang from the outlets, %d are listed", n, len(w.plan.Cords)+len(w.plan.Taps))
	}
	for i, c := range w.plan.Circuits {
		s := w.in.Spec.Power.Circuits[i]
		if !near(float64(c.Lights), float64(circuits[c.Name])) || !near(float64(c.Amps), float64(circuits[c.Name]+s.OtherLoad)) {
			w.Errorf("circuit %s: %v A, counted again %v", c.Name, c.Lights, circuits[c.Name])
		}
		if c.Lights > 0 && float64(c.Amps) > 0.8*float64(s.Breaker)+1e-6 {
			w.Errorf("circuit %s: %v A on a %v A breaker", c.Name, c.Amps, s.Breaker)
		}
	}
}

// timers checks that what goes through an outlet without a timer goes through timers that are bought, no more than the outlet has sockets.
func (w *walk) timers(o spec.Outlet, through measure.Current) {
	w.Helper()
	n, sum := 0, measure.Current(0)
	for _, t := range w.plan.Timers {
		if t.Outlet != o.Name {
			continue
		}
		n++
		sum += t.Amps
		if t.Amps > w.in.Spec.Power.Timer.Amps+hair || t.Amps > t.Size+hair {
			w.Errorf("outlet %s: %v A through a timer of %v", o.Name, t.Amps, t.Size)
		}
	}
	if o.Timer > 0 && n > 0 || n > o.Sockets || o.Timer == 0 && !near(float64(sum), float64(through)) {
		w.Errorf("outlet %s with a timer of %v, %d sockets: %d timers for %v of %v A", o.Name, o.Timer, o.Sockets, n, sum, through)
	}
}

// volts counts what arrives at each last bulb: two wires of NEC chapter 9 table 8 at 75 °C, or of IEC 60228 class 5 at 60 °C, from joint to joint, then
// of IEC 60228 class 5, 19.5 ohm a km of 1 mm², from string to string.
func (w *walk) volts() {
	w.Helper()
	worst := 0.0
	for _, f := range w.plan.Feeders {
		cord, _ := catalog.FindCord(f.Cord)
		perKm := cord.Ohms
		if cord.Volts == 230 {
			perKm *= (234.5 + 60) / (234.5 + 20)
		}
		amps, at := make([]float64, len(f.Joints)), make([]float64, len(f.Joints))
		for i := len(f.Joints) - 1; i >= 0; i-- {
			for _, p := range f.Joints[i].Plugs {
				amps[i] += float64(p.Amps)
			}
			if from := f.Joints[i].From; from >= 0 {
				amps[from] += amps[i]
			}
		}
		for i, j := range f.Joints {
			at[i] = float64(f.Volts)
			if j.From >= 0 {
				at[i] = at[j.From]
			}
			at[i] -= 2 * perKm * j.Copper.Metres() / 1000 * amps[i]
			for _, p := range j.Plugs {
				for _, name := range p.Chains {
					c := w.chain(name)
					end, of := at[i], float64(f.Volts)
					if p.Supply {
						end, of = float64(c.Volts), float64(c.Volts)
					}
					for k := range c.Strings {
						behind := 0.0
						for _, s := range c.Strings[k:] {
							behind += float64(w.hung[s].Label.Amps)
						}
						l := w.hung[c.Strings[k]].Label
						end -= 2 * 19.5 / float64(l.Gauge) * l.Length.Metres() / 1000 * behind
					}
					if !near(end, float64(c.EndVolts)) || !near(1-end/of, c.Drop) {
						w.Errorf("run %s: %v V at its end, %v lost; counted again %v V of %v", name, c.EndVolts, c.Drop, end, of)
					}
					if lost := 1 - end/of; !p.Supply || lost > 0.05 { // behind a supply told from there on
						worst = max(worst, lost)
					}
				}
			}
		}
	}
	told := 0.0
	for _, code := range codes(w.plan) {
		told = max(told, map[string]float64{"drop-over-3-percent": 0.03, "drop-over-5-percent": 0.05}[code])
	}
	if worst > 0.03+hair && told == 0 || worst > 0.05+hair && told < 0.05 {
		w.Errorf("%.2f %% lost, told over %v", 100*worst, told)
	}
}

// isPiece reports whether a name is a cord's or a three-way's: runs go by letters alone.
func isPiece(name string) bool { return strings.ContainsAny(name, "0123456789") }

// reach notes all that hangs from something.
func (w *walk) reach(name string, into map[string]bool) {
	for _, p := range w.plugs[name] {
		if into[p] {
			w.Errorf("%s is fed twice", p)
			return
		}
		into[p] = true
		if isPiece(p) {
			w.pieces++
		}
		w.reach(p, into)
	}
}

// cords checks every cord and three-way by what is plugged into it.
func (w *walk) cords() {
	w.Helper()
	for _, c := range w.plan.Cords {
		kind, ok := catalog.FindCord(c.Kind)
		if !ok || c.Gauge == "" {
			w.Errorf("cord %s: no kind %q in the catalog", c.Name, c.Kind)
		}
		if !near(float64(c.Amps), float64(w.amps[c.Name])) || c.Amps > kind.AmpsAt(c.Length)+hair {
			w.Errorf("cord %s: %v A, counted again %v, may carry %v", c.Name, c.Amps, w.amps[c.Name], kind.AmpsAt(c.Length))
		}
		n := len(w.sockets(c.Name))
		if n > c.Sockets || n != c.Sockets-c.Open {
			w.Errorf("cord %s: %d plugs in %d sockets, %d open", c.Name, n, c.Sockets, c.Open)
		}
		w.open += c.Sockets - n
		w.joints++
		for i, at := range c.Places {
			if at.Z > tapReach && c.Sockets > 1 {
				w.Errorf("cord %s: socket %d hangs at %v", c.Name, i, at.Z)
			}
		}
		if c.Sockets == 1 && !slices.Contains(kind.Lengths, c.Length) && len(w.in.Spec.Stock.Own) == 0 {
			w.Errorf("cord %s: nobody sells %v", c.Name, c.Length)
		}
	}
	for _, tap := range w.plan.Taps {
		n := len(w.sockets(tap.Name))
		if n < 2 || n > tap.Sockets {
			w.Errorf("three-way %s: %d plugs in %d sockets", tap.Name, n, tap.Sockets)
		}
		for _, p := range w.plugs[tap.Name] {
			if isPiece(p) && p[0] == 'T' {
				w.Errorf("three-way %s sits in three-way %s", p, tap.Name)
			}
		}
		w.open += tap.Sockets - n
		w.joints++
	}
	for _, c := range w.plan.Chains {
		stacked := w.plugs[c.Name]
		for _, p := range stacked {
			other := w.chain(p)
			if other == nil || !w.hung[c.Strings[0]].Label.BackSocket {
				w.Errorf("%s is plugged into run %s", p, c.Name)
				continue
			}
			if l := w.hung[c.Strings[0]].Label; l.Fuse > 0 && w.amps[c.Name] > l.Fuse+hair {
				w.Errorf("run %s with %s in its back: %v A through a fuse of %v", c.Name, p, w.amps[c.Name], l.Fuse)
			}
			if len(stacked) > 1 || len(w.plugs[p]) > 0 || w.strung[c.Name]+w.strung[p] > w.in.Spec.Power.Together {
				w.Errorf("run %s: %d stacked in its back, %d strings behind it", c.Name, len(stacked), w.strung[c.Name]+w.strung[p])
			}
		}
	}
	w.ways()
}

// ways checks that a cord is as long as its way, and passes a way only overhead or covered, and told.
func (w *walk) ways() {
	w.Helper()
	for _, f := range w.plan.Feeders {
		for i, j := range f.Joints {
			lift := w.lift(j)
			if lift > 42*measure.Inch-150+dust {
				w.Errorf("feeder %s joint %d: a plug hangs %v above what a socket at its foot reaches", f.Name, i, lift)
			}
			way := j.Lies + lift
			if j.From >= 0 && j.Lies > 0 {
				way += w.lift(f.Joints[j.From])
			}
			if j.Socket <= 1 && len(j.Cords) > 0 && j.Copper < way+2*practice.EndSlack-dust {
				w.Errorf("feeder %s joint %d: %v of cord over %v", f.Name, i, j.Copper, way)
			}
			if j.Socket > 1 && j.Lies > 0 && j.Copper < way+4*measure.Inch-dust {
				w.Errorf("feeder %s joint %d: %v of cord between sockets over %v", f.Name, i, j.Copper, way)
			}
			from := lights.End{}
			if j.From >= 0 {
				from = f.Joints[j.From].End
			}
			if j.From < 0 || from.Arch == 0 || j.Climb > 0 {
				continue
			}
			for b := min(from.Arch, j.Arch); b < max(from.Arch, j.Arch); b++ {
				if w.in.Spec.IsWay(j.Wall, b) && !j.Over {
					w.Errorf("feeder %s joint %d passes the way in bay %d and does not say so", f.Name, i, b)
				}
			}
			if f.Joints[j.From].Wall != j.Wall {
				w.Errorf("feeder %s joint %d: a cord from one wall to the other", f.Name, i)
			}
		}
	}
	w.inLine()
	over := slices.ContainsFunc(w.plan.Cords, func(c Cord) bool { return c.Over })
	if over != slices.Contains(codes(w.plan), "cord-crosses") {
		w.Errorf("a cord passes a way: %v, told: %v", over, !over)
	}
}

// inLine checks that the sockets of a cord with several lie on it where its maker put them, and that none that is free comes before the first in use over a way.
func (w *walk) inLine() {
	w.Helper()
	for _, c := range w.plan.Cords {
		if c.Sockets < 2 {
			continue
		}
		f := w.plan.Feeders[slices.IndexFunc(w.plan.Feeders, func(f Feeder) bool { return f.Name == c.Feeder })]
		k := slices.IndexFunc(w.in.Spec.Power.Inline, func(in catalog.Inline) bool {
			return in.Cord.Name == c.Kind && in.Length == c.Length && in.Sockets == c.Sockets
		})
		in := w.in.Spec.Power.Inline[k]
		n, copper := 0, measure.Length(0)
		for at, i := range c.Joints {
			j := f.Joints[i]
			n += 1 + j.Skips
			copper += j.Copper
			if measure.Abs(copper-in.Lead()-measure.Length(n-1)*in.Apart) > dust {
				w.Errorf("cord %s: its socket %d lies after %v of %v", c.Name, n, copper, in)
			}
			if at == 0 && j.Over && j.Skips > 0 {
				w.Errorf("cord %s: %d free sockets before one over a way", c.Name, j.Skips)
			}
			n += j.Spare
		}
		if n != c.Sockets {
			w.Errorf("cord %s: %d sockets used or free of %d", c.Name, n, c.Sockets)
		}
	}
}

// lift returns how far up its leg a cord leads at a foot, above the 150 mm at which these strings begin: to the highest plug there.
func (w *walk) lift(j Joint) (lift measure.Length) {
	for _, p := range j.Plugs {
		for _, name := range p.Chains {
			at := w.chain(name).From
			if j.Arch > 0 && (len(j.Cords) > 0 || j.Socket > 0) && j.Climb == 0 {
				lift = max(lift, ground.Distance(spec.Point{X: at.X, Y: at.Y}, spec.Point{X: j.End.X, Y: j.End.Y})+max(0, at.Z-j.End.Z)-150)
			}
		}
	}
	return lift
}

// supplies checks that each supply has sockets and watts for its runs, and mains strings their circuit's volts.
func (w *walk) supplies() {
	w.Helper()
	for _, f := range w.plan.Feeders {
		for _, j := range f.Joints {
			for _, p := range j.Plugs {
				l := w.hung[firstString(w, p.Chains[0])].Label
				if !p.Supply {
					if l.Supply != nil || l.Volts < 0.9*f.Volts || l.Volts > 1.1*f.Volts {
						w.Errorf("runs %v of %v V in a plug of %v V", p.Chains, l.Volts, f.Volts)
					}
					continue
				}
				watts := measure.Power(0)
				for _, c := range p.Chains {
					watts += w.chain(c).Watts
					for _, d := range p.Chains {
						if apart := lights.Apart(w.chain(c).From, w.chain(d).From); apart > 2*practice.HandReach {
							w.Errorf("runs %s and %s share a supply, their prongs %v apart", c, d, apart)
						}
					}
					if other := w.hung[firstString(w, c)].Label; other.Volts != l.Volts || other.Lamp != l.Lamp || *other.Supply != *l.Supply {
						w.Errorf("runs %v share a supply, and theirs are not alike", p.Chains)
					}
				}
				if s := l.Supply; s == nil || len(p.Chains) > max(1, s.Sockets) || len(p.Chains) > 1 && watts > s.Watts+hair {
					w.Errorf("runs %v, %v W, on a supply %+v", p.Chains, watts, l.Supply)
				}
				w.joints++ // the supply's own plug
				w.open += max(0, l.Supply.Sockets-len(p.Chains))
			}
		}
	}
}

// split checks that no outlet feeds both parts where the plan does not say that it could not keep them apart. Tests give each outlet its own GFCI.
func (w *walk) split() {
	w.Helper()
	if w.in.Spec.Power.Split == spec.SplitNone || slices.Contains(codes(w.plan), "split-not-possible") || slices.Contains(codes(w.plan), "no-power-given") {
		return
	}
	parts := map[string]int{}
	for _, c := range w.plan.Chains {
		for _, s := range c.Strings {
			p := w.hung[s].Run
			part := -1
			if n, ok := p.OnArch(); ok && w.in.Spec.Power.Split == spec.SplitArches {
				part = n % 2
			} else if side, ok := p.Wall(); ok {
				part = int(side)
			}
			if part < 0 || c.Outlet == "" {
				continue
			}
			if was, ok := parts[c.Outlet]; ok && was != part {
				w.Errorf("outlet %s feeds both parts", c.Outlet)
			}
			parts[c.Outlet] = part
		}
	}
}
