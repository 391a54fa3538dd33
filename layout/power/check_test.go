package power

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// checkPlan holds a plan to everything that must be true of any: each string in one chain within its label's limits and plugged
// prongs into socket within reach, current kept at every joint, no circuit over its allowance, no cord, timer or socket
// asked for more than it has, every cord long enough.
func checkPlan(t *testing.T, in Input, p Plan) {
	t.Helper()
	byName := map[string]lights.String{}
	for _, s := range in.Strings {
		byName[s.Name] = s
	}
	seen := map[string]int{}
	amps := map[string]measure.Current{}
	for _, c := range p.Chains {
		var watts measure.Power
		for i, name := range c.Strings {
			s := byName[name]
			seen[name]++
			watts += s.Watts
			amps[c.Name] += s.Label.Amps
			if i > 0 {
				before := byName[c.Strings[i-1]]
				if before.Kind != s.Kind || distance(before.To, s.From) > handReach+looseReach {
					t.Errorf("chain %s: %s cannot be plugged into %s", c.Name, name, before.Name)
				}
			}
			if in.Spec.Power.Split && wallOf(s.Run) != either && wallOf(byName[c.Strings[0]].Run) == 1-wallOf(s.Run) {
				t.Errorf("chain %s is on both walls", c.Name)
			}
		}
		l := byName[c.Strings[0]].Label
		if l.MostChain > 0 && len(c.Strings) > l.MostChain || len(c.Strings) > 1 && l.MostWatts > 0 && watts > l.MostWatts+hair {
			t.Errorf("chain %s passes its label: %d strings, %v W", c.Name, len(c.Strings), watts)
		}
		if math.Abs(float64(c.Amps-amps[c.Name])) > 1e-9 || math.Abs(float64(c.Watts-watts)) > 1e-9 || c.Running[0] != c.Amps {
			t.Errorf("chain %s: %v A, %v W, want %v A, %v W", c.Name, c.Amps, c.Watts, amps[c.Name], watts)
		}
		if math.IsNaN(float64(c.EndVolts)) || math.IsNaN(c.Drop) || c.Drop < 0 {
			t.Errorf("chain %s: drop %v", c.Name, c.Drop)
		}
		if (c.Outlet == "") != (c.Feeder == "") || c.Cord > 0 && c.Cord < c.Lies {
			t.Errorf("chain %s: outlet %q, feeder %q, cord %v over %v", c.Name, c.Outlet, c.Feeder, c.Cord, c.Lies)
		}
	}
	for _, s := range in.Strings {
		if seen[s.Name] != 1 {
			t.Errorf("string %s is in %d chains", s.Name, seen[s.Name])
		}
	}
	sockets := map[string]int{}
	through := map[string]measure.Current{}
	byCircuit := map[string]measure.Current{}
	fed := map[string]int{}
	kind := map[string]catalog.String{}
	watts := map[string]measure.Power{}
	for _, c := range p.Chains {
		kind[c.Name], watts[c.Name] = byName[c.Strings[0]].Label, c.Watts
	}
	for _, d := range p.Feeders {
		if d.Amps > mostThrough(cordsFor(d.Volts))+hair {
			t.Errorf("feeder %s: %v A through one plug", d.Name, d.Amps)
		}
		sockets[d.Outlet]++
		through[d.Outlet] += d.Amps
		byCircuit[d.Circuit] += d.Amps
		into := make([]measure.Current, len(d.Joints))
		onward := make([]int, len(d.Joints))
		for i, j := range d.Joints {
			for _, plug := range j.Plugs {
				into[i] += plug.Amps
				checkPlug(t, plug, d.Volts, kind, watts)
				for _, c := range plug.Chains {
					fed[c]++
				}
			}
			if j.From >= i {
				t.Fatalf("feeder %s: joint %d is fed from joint %d", d.Name, i, j.From)
			}
		}
		for i, j := range d.Joints {
			if j.From >= 0 {
				into[j.From] += j.Amps
				onward[j.From]++
				if p := d.Joints[j.From]; j.Volts > p.Volts {
					t.Errorf("feeder %s joint %d: %v V from %v V", d.Name, i, j.Volts, p.Volts)
				}
			} else if math.Abs(float64(j.Amps-d.Amps)) > 1e-9 {
				t.Errorf("feeder %s: %v A in, %v A at its plug", d.Name, j.Amps, d.Amps)
			}
			cord, ok := catalog.FindCord(d.Cord)
			if ok != (d.Cord != "") || d.Cord == "" && len(j.Cords) > 0 {
				t.Errorf("feeder %s: no cord %q in the catalog", d.Name, d.Cord)
			}
			var stock measure.Length
			for _, l := range j.Cords {
				stock += l
				if j.Amps > cord.AmpsAt(l)+hair {
					t.Errorf("feeder %s joint %d: %v A through a cord for %v", d.Name, i, j.Amps, cord.AmpsAt(l))
				}
			}
			if len(j.Cords) > 0 && stock < j.Lies+2*endSlack {
				t.Errorf("feeder %s joint %d: %v of cord over %v", d.Name, i, stock, j.Lies)
			}
		}
		for i, j := range d.Joints {
			if math.Abs(float64(into[i]-j.Amps)) > 1e-9 {
				t.Errorf("feeder %s joint %d: %v A in, %v A out", d.Name, i, j.Amps, into[i])
			}
			first := j.From < 0 || d.Joints[j.From].From < 0 && len(d.Joints[j.From].Plugs) == 0 // on a branch, which goes both ways
			up := false                                                                          // to a crown, which only a leg leads to
			for _, k := range d.Joints {
				up = up || k.From == i && k.Climb > 0
			}
			if !first && !up && onward[i] > 1 && len(j.Plugs)+onward[i] > 3 {
				t.Errorf("feeder %s joint %d: %d cords go on from a tap with %d plugs in it", d.Name, i, onward[i], len(j.Plugs))
			}
			if need := len(j.Plugs) + onward[i]; onward[i] != j.Onward || need > 1+2*j.Taps || j.Taps > 0 && need <= 1+2*(j.Taps-1) {
				t.Errorf("feeder %s joint %d: %d plugs, %d cords on %d taps", d.Name, i, len(j.Plugs), onward[i], j.Taps)
			}
		}
	}
	for _, c := range p.Chains {
		if want := map[bool]int{true: 0, false: 1}[c.Outlet == ""]; fed[c.Name] != want {
			t.Errorf("chain %s is plugged in %d times", c.Name, fed[c.Name])
		}
	}
	for _, o := range in.Spec.Site.Outlets {
		if sockets[o.Name] > o.Sockets {
			t.Errorf("outlet %s: %d feeders in %d sockets", o.Name, sockets[o.Name], o.Sockets)
		}
		if o.Timer > 0 && through[o.Name] > o.Timer+hair {
			t.Errorf("outlet %s: %v A through a timer for %v", o.Name, through[o.Name], o.Timer)
		}
	}
	for i, c := range p.Circuits {
		s := in.Spec.Power.Circuits[i]
		if math.Abs(float64(c.Lights-byCircuit[c.Name])) > 1e-9 || math.Abs(float64(c.Amps-c.Lights-s.OtherLoad)) > 1e-9 {
			t.Errorf("circuit %s: %v A, lights %v, feeders %v", c.Name, c.Amps, c.Lights, byCircuit[c.Name])
		}
		if c.Lights > 0 && float64(c.Amps) > float64(in.Spec.Power.Continuous)*float64(s.Breaker)+1e-6 {
			t.Errorf("circuit %s: %v A on a %v A breaker", c.Name, c.Amps, s.Breaker)
		}
	}
	checkSplit(t, in, p, byName)
	for _, f := range p.Findings {
		if f.Level < finding.MustFix || f.Level > finding.Note || f.Sheet != "circuit" || f.Code == "" || f.Text == "" {
			t.Errorf("finding %+v", f)
		}
	}
}

// checkPlug holds a plug to what hangs on it: one chain at the circuit's volts, or a supply with no more chains and watts than
// it has sockets and watts.
func checkPlug(t *testing.T, plug Plug, volts measure.Voltage, kind map[string]catalog.String, watts map[string]measure.Power) {
	t.Helper()
	label := kind[plug.Chains[0]]
	if !plug.Supply {
		if len(plug.Chains) != 1 || label.Supply != nil || math.Abs(float64(label.Volts-volts)) > 12 {
			t.Errorf("chains %v of %v V in a plug of %v V", plug.Chains, label.Volts, volts)
		}
		return
	}
	var sum measure.Power
	for _, c := range plug.Chains {
		sum += watts[c]
	}
	if s := label.Supply; s == nil || len(plug.Chains) > max(1, s.Sockets) || sum > s.Watts+hair {
		t.Errorf("chains %v, %v W, on a supply %+v", plug.Chains, sum, s)
	}
}

// checkSplit holds walls apart where the plan does not say that it could not.
func checkSplit(t *testing.T, in Input, p Plan, byName map[string]lights.String) {
	t.Helper()
	if !in.Spec.Power.Split || slices.Contains(codes(p), "split-not-possible") || slices.Contains(codes(p), "no-power-given") {
		return
	}
	walls := map[string]wall{}
	for _, c := range p.Chains {
		w := wallOf(byName[c.Strings[0]].Run)
		if c.Outlet == "" || w == either {
			continue
		}
		trip := c.Outlet // tests give each outlet its own GFCI
		if was, ok := walls[trip]; ok && was != w {
			t.Errorf("outlet %s feeds both walls", c.Outlet)
		}
		walls[trip] = w
	}
}

// Small random tunnels with random strings, outlets, timers and breakers, from nothing to too much.
func TestAnyPlanHolds(t *testing.T) {
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 7))
		in := tunnel(1 + r.IntN(9))
		kinds := []catalog.String{
			label("led", 4.8, catalog.LED), label("mini", 40, catalog.Incandescent), label("c9", 175, catalog.Incandescent),
		}
		kinds[1].MostChain = 3
		low := label("low", 6, catalog.LED)
		low.Volts, low.Amps, low.MostWatts, low.Supply = 24, 0.25, 0, &catalog.Supply{Watts: 18, Sockets: 1 + r.IntN(3)}
		kinds = append(kinds, low)
		for range 1 + r.IntN(3) {
			in.legs(kinds[r.IntN(len(kinds))])
		}
		for i := range in.Strings { // some have their prongs at the crown
			if s := &in.Strings[i]; r.IntN(4) == 0 {
				s.From, s.To = s.To, s.From
			}
		}
		if r.IntN(2) == 0 {
			in.ridge(kinds[r.IntN(len(kinds))])
		}
		for i := range r.IntN(5) {
			in.outlet(letters(i), measure.Length(r.IntN(12000)-6000), measure.Length(r.IntN(20000)-5000), 120, measure.Current(5+5*r.IntN(4)))
			o := &in.Spec.Site.Outlets[i]
			o.Sockets = 1 + r.IntN(4)
			if r.IntN(3) == 0 {
				o.Timer = measure.Current(2 + r.IntN(14))
			}
			in.Spec.Power.Circuits[i].OtherLoad = measure.Current(r.IntN(6))
		}
		in.Spec.Power.Split = r.IntN(2) == 0
		in.Spec.Site.Cords.Cover = r.IntN(2) == 0
		p := Feed(in)
		checkPlan(t, in, p)
		if t.Failed() {
			t.Fatalf("seed %d: split %v, circuits %+v, outlets %+v", seed, in.Spec.Power.Split, in.Spec.Power.Circuits, in.Spec.Site.Outlets)
		}
		unfed := slices.ContainsFunc(p.Chains, func(c Chain) bool { return c.Outlet == "" })
		told := slices.ContainsFunc(codes(p), func(c string) bool {
			return c == "not-enough-amps" || c == "not-enough-sockets" || c == "no-power-given"
		})
		if unfed != told {
			t.Fatalf("seed %d: unfed %v, findings %v", seed, unfed, codes(p))
		}
	}
}

func TestKeepOff(t *testing.T) {
	in := tunnel(2)
	in.legs(label("led", 4.8, catalog.LED))
	in.outlet("porch", -half, -6000, 120, 15)
	in.Spec.Site.Features = []spec.Feature{{Name: "bed", At: spec.Point{X: -half, Y: -3000}, Radius: 1000}}
	straight := Feed(in).Chains[0].Lies
	in.Spec.Site.Cords.KeepOff = []string{"bed"}
	p := Feed(in)
	checkPlan(t, in, p)
	c := p.Chains[0]
	// Around a circle of 1 m in the middle of 6 m: two tangents of √8 m and an arc of 2·asin(1/3).
	least := measure.Length(1000 * (2*math.Sqrt(8) + 2*math.Asin(1.0/3)))
	if straight != 6000 || c.Lies < least || c.Lies > least*1.1 {
		t.Errorf("straight %v, around %v, least %v", straight, c.Lies, least)
	}
	for i := 1; i < len(c.Path); i++ {
		if !clear(c.Path[i-1], c.Path[i], []obstacle{{outline: ring(spec.Point{X: -half, Y: -3000}, 1000)}}) {
			t.Errorf("the cord crosses the bed from %v to %v", c.Path[i-1], c.Path[i])
		}
	}
}
