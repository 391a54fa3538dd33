package power

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// Two-wire drops figured from NEC (NFPA 70) chapter 9 table 8, stranded copper at 75 °C: 14 AWG 3.14 and 16 AWG 4.99 ohm/kft. The
// published 20 A, 100 ft, 12 AWG example by K = 12.9 and 6530 cmil gives 7.9 V, 6.6 % of 120 V.
func TestPublishedDrops(t *testing.T) {
	const kft = 1 / 0.3048 // ohm/kft to ohm/km
	for _, c := range []struct {
		perKm, feet, amps, want, within float64
	}{
		{3.14 * kft, 50, 8, 2.512, 1e-9},
		{4.99 * kft, 50, 12, 5.988, 1e-9},
		{12.9 / 6530 * 1000 * kft, 100, 20, 7.9, 0.05},
	} {
		got := 2 * ohms(c.perKm, measure.Length(c.feet)*measure.Foot) * c.amps
		if math.Abs(got-c.want) > c.within {
			t.Errorf("%v ft, %v A: %v V, want %v", c.feet, c.amps, got, c.want)
		}
	}
}

// IEC 60228 class 5 at 20 °C: 0.5 mm² 39.0, 0.75 26.0, 1.0 19.5 ohm/km.
func TestStringWire(t *testing.T) {
	for area, want := range map[measure.Area]float64{0.5: 39, 0.75: 26, 1: 19.5} {
		if got := wireOhms(catalog.String{Gauge: area}); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v mm²: %v ohm/km, want %v", area, got, want)
		}
	}
}

// The closed form R′·s·I·N·(N+1) for a chain of equal strings, and a ladder of both wires solved node by node.
func TestChainAgainstLadder(t *testing.T) {
	l := label("ladder", 40, catalog.Incandescent)
	const n = 7
	labels := make([]catalog.String, n)
	amps := make([]measure.Current, n)
	for i := range labels {
		labels[i], amps[i] = l, l.Amps
	}
	running, got := along(inLine(labels))
	r := ohms(wireOhms(l), l.Length)
	closed := r * float64(l.Amps) * n * (n + 1)
	if math.Abs(float64(got)-closed) > 1e-9 {
		t.Errorf("drop %v, closed form %v", got, closed)
	}
	if ladder := 120 - ladderVolts(t, labels, amps, 120); math.Abs(float64(got)-ladder) > 1e-9 {
		t.Errorf("drop %v, ladder %v", got, ladder)
	}
	if running[0] != n*l.Amps && math.Abs(float64(running[0]-n*l.Amps)) > 1e-12 || running[n-1] != l.Amps {
		t.Errorf("running amps %v", running)
	}
}

// Chains of unlike strings, thrown: the same ladder, and at every node what comes in goes on or is taken there.
func TestUnlikeChainsAgainstLadder(t *testing.T) {
	for seed := range uint64(50) {
		r := rand.New(rand.NewPCG(seed, 2))
		var labels []catalog.String
		var amps []measure.Current
		for range 1 + r.IntN(12) {
			l := label("s", measure.Power(2+r.IntN(60)), catalog.LED)
			l.Length = measure.Length(2000 + r.IntN(20000))
			l.Gauge = measure.Area(0.3 + r.Float64())
			labels, amps = append(labels, l), append(amps, l.Amps)
		}
		running, got := along(inLine(labels))
		if ladder := 120 - ladderVolts(t, labels, amps, 120); math.Abs(float64(got)-ladder) > 1e-9 {
			t.Errorf("seed %d: drop %v, ladder %v", seed, got, ladder)
		}
		for i, a := range running {
			on := measure.Current(0)
			if i+1 < len(running) {
				on = running[i+1]
			}
			if math.Abs(float64(a-amps[i]-on)) > 1e-12 {
				t.Errorf("seed %d: %v A into string %d, %v on, %v taken", seed, a, i, on, amps[i])
			}
		}
	}
}

// inLine is strings end to end.
func inLine(labels []catalog.String) (run []lights.String) {
	for _, l := range labels {
		run = append(run, lights.String{Label: l})
	}
	return run
}

// ladderVolts solves the nodes of both wires with a current sink at each string's far end, and returns the volts at the last.
func ladderVolts(t *testing.T, labels []catalog.String, amps []measure.Current, volts float64) float64 {
	n := len(labels)
	g := mat.NewDense(2*n, 2*n, nil) // hot nodes, then neutral nodes
	b := mat.NewVecDense(2*n, nil)
	for wire := range 2 {
		at := wire * n
		for i := range n {
			s := 1 / ohms(wireOhms(labels[i]), labels[i].Length)
			k := at + i
			g.Set(k, k, g.At(k, k)+s)
			if i > 0 {
				g.Set(k-1, k-1, g.At(k-1, k-1)+s)
				g.Set(k, k-1, -s)
				g.Set(k-1, k, -s)
			} else if wire == 0 {
				b.SetVec(k, s*volts)
			}
			sink := float64(amps[i])
			if wire == 0 {
				sink = -sink
			}
			b.SetVec(k, b.AtVec(k)+sink)
		}
	}
	var v mat.VecDense
	if err := v.SolveVec(g, b); err != nil {
		t.Fatal(err)
	}
	return v.AtVec(n-1) - v.AtVec(2*n-1)
}

// A whole feeder, cords and chains, against the same network solved as one: conductances between nodes on both wires.
func TestFeederAgainstNetwork(t *testing.T) {
	in := garden()
	p := Feed(in)
	for _, d := range p.Feeders {
		volts := networkVolts(t, in, p, d)
		for name, want := range volts {
			for _, c := range p.Chains {
				if c.Name == name && math.Abs(float64(c.EndVolts)-want) > 1e-9 {
					t.Errorf("chain %s: %v V at its end, network %v", name, c.EndVolts, want)
				}
			}
		}
	}
}

// networkVolts solves a feeder's network and returns the volts at the end of each chain.
func networkVolts(t *testing.T, in Input, p Plan, d Feeder) map[string]float64 {
	type branch struct {
		from int
		ohms float64
		sink float64
	}
	var nodes []branch // node by node, fed from an earlier one; −1 the outlet
	end := map[string]int{}
	joint := make([]int, len(d.Joints))
	cord := catalog.Cord{}
	for _, c := range cordsFor(d.Volts) {
		if c.Name == d.Cord {
			cord = c
		}
	}
	for i, j := range d.Joints {
		from, r := -1, 0.0
		if j.From >= 0 {
			from = joint[j.From]
		}
		r += ohms(warmOhms(cord), j.Copper)
		joint[i] = len(nodes)
		nodes = append(nodes, branch{from: from, ohms: r})
		for _, plug := range j.Plugs {
			at := joint[i]
			for _, name := range plug.Chains {
				for _, c := range p.Chains {
					if c.Name != name {
						continue
					}
					for _, s := range c.Strings {
						for _, hung := range in.Strings {
							if hung.Name == s {
								nodes = append(nodes, branch{at, ohms(wireOhms(hung.Label), hung.Label.Length), float64(hung.Label.Amps)})
								at = len(nodes) - 1
							}
						}
					}
					end[name] = at
				}
			}
		}
	}
	n := len(nodes)
	g := mat.NewDense(n, n, nil)
	b := mat.NewVecDense(n, nil)
	for k, one := range nodes {
		s := 1 / (2 * one.ohms)
		g.Set(k, k, g.At(k, k)+s)
		if one.from < 0 {
			b.SetVec(k, s*float64(d.Volts)-one.sink)
			continue
		}
		g.Set(one.from, one.from, g.At(one.from, one.from)+s)
		g.Set(k, one.from, g.At(k, one.from)-s)
		g.Set(one.from, k, g.At(one.from, k)-s)
		b.SetVec(k, b.AtVec(k)-one.sink)
	}
	var v mat.VecDense
	if err := v.SolveVec(g, b); err != nil {
		t.Fatal(err)
	}
	out := map[string]float64{}
	for name, k := range end {
		out[name] = v.AtVec(k)
	}
	return out
}

// Behind a supply three strings that lose 11 % by the closed form R′·s·I·N·(N+1) stay one run where the label allows three; where it gives no count they do not, and
// four never do.
func TestLabelWinsOverVolts(t *testing.T) {
	l := catalog.String{Name: "garland", Length: 12 * measure.Metre, Volts: 24, Watts: 8, Amps: 8.0 / 24, Gauge: 0.34, Supply: &catalog.Supply{Watts: 60, Sockets: 1}, MostWatts: 60, MostChain: 3}
	run := func(n, most int) LimitKind {
		labels := make([]catalog.String, n)
		for i := range labels {
			labels[i] = l
			labels[i].MostChain = most
		}
		return breaks(limits(inLine(labels), 0)).Kind
	}
	lost := 19.5 / 0.34 * 12 / 1000 * 8 / 24 * 3 * 4 / 24
	if three, four, unknown := run(3, 3), run(4, 3), run(3, 0); lost < 0.1 || three != NoLimit || four != LabelCount || unknown != VoltsLost {
		t.Errorf("three by label: limit %v, four: %v, by a label without a count: %v; %.0f %% lost", three, four, unknown, 100*lost)
	}
}
