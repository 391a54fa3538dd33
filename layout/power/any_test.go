package power

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Small random tunnels with random strings, outlets, timers, breakers and ways, from nothing to too much.
func TestAnyPlanHolds(t *testing.T) {
	for seed := range uint64(250) {
		if anyPlan(t, seed); t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// FuzzFeed throws more of them.
func FuzzFeed(f *testing.F) {
	f.Add(uint64(400))
	f.Fuzz(anyPlan)
}

// anyPlan feeds a random tunnel and holds its plan.
func anyPlan(t *testing.T, seed uint64) {
	in := anyTunnel(rand.New(rand.NewPCG(seed, 7)))
	p := Feed(in)
	checkPlan(t, in, p)
	if t.Failed() {
		t.Fatalf("split %v, circuits %+v, outlets %+v", in.Spec.Power.Split, in.Spec.Power.Circuits, in.Spec.Site.Outlets)
	}
	mixedTold(t, in, p)
	unfed := slices.ContainsFunc(p.Chains, func(c Chain) bool { return c.Outlet == "" })
	told := slices.ContainsFunc(codes(p), func(c string) bool {
		return c == "not-enough-amps" || c == "not-enough-sockets" || c == "no-power-given" || c == "wrong-volts"
	})
	if unfed != told {
		t.Fatalf("unfed %v, findings %v", unfed, codes(p))
	}
}

// mixedTold walks every run: those of unlike strings, and no others, are named on the note of them, with all kinds in them. That of runs that follow each other names the first and
// the last.
func mixedTold(t *testing.T, in Input, p Plan) {
	kind := map[string]string{}
	for _, s := range in.Strings {
		kind[s.Name] = s.Kind
	}
	var mixed []string
	kinds := map[string]bool{}
	for _, c := range p.Chains {
		own := map[string]bool{}
		for _, name := range c.Strings {
			own[kind[name]] = true
		}
		if len(own) > 1 {
			mixed = append(mixed, c.Name)
			for k := range own {
				kinds[k] = true
			}
		}
	}
	var told []string
	for _, f := range p.Findings {
		if f.Code != "mixed-run" {
			continue
		}
		words := regexp.MustCompile(`^Runs? ([A-Z, toand]+) joins? (.+) end to end`).FindStringSubmatch(f.Text)
		for _, part := range strings.Split(strings.ReplaceAll(words[1], " and ", ", "), ", ") {
			from, to, _ := strings.Cut(part, " to ")
			on := false
			for _, c := range p.Chains {
				if on = on || c.Name == from; on {
					told = append(told, c.Name)
				}
				on = on && to != "" && c.Name != to
			}
		}
		for k := range kinds {
			if !strings.Contains(words[2], k) {
				t.Errorf("%s is in mixed runs, and %q names it not", k, f.Text)
			}
		}
	}
	if !slices.Equal(told, mixed) {
		t.Errorf("runs %v are mixed, told %v", mixed, told)
	}
}

func anyTunnel(r *rand.Rand) Input {
	in := tunnel(1 + r.IntN(9))
	kinds := []catalog.String{
		label("led", 4.8, catalog.LED), label("mini", 40, catalog.Incandescent), label("c9", 175, catalog.Incandescent),
	}
	kinds[0].BackSocket = r.IntN(3) == 0
	kinds[1].MostChain = 3
	kinds[1].Fuse, kinds[1].MostWatts = measure.Current(0.5+r.Float64()), 500
	in.Spec.Power.Timer.Amps = measure.Current(4 + r.IntN(12))
	low := label("low", 6, catalog.LED)
	low.Volts, low.Amps, low.MostWatts, low.Fuse, low.Supply = 24, 0.25, 0, 0, &catalog.Supply{Watts: 18, Sockets: 1 + r.IntN(3)}
	blue, other := low, low // with a supply that is alike, and with one that is not
	blue.Name, other.Name, other.Supply = "low blue", "low other", &catalog.Supply{Watts: 18 + measure.Power(6*r.IntN(2)), Sockets: 1 + r.IntN(3)}
	kinds = append(kinds, low, blue, other)
	for range 1 + r.IntN(3) {
		in.legs(kinds[r.IntN(len(kinds))])
	}
	if r.IntN(2) == 0 {
		in.ridge(kinds[r.IntN(len(kinds))])
	}
	for i := range in.Strings { // some are fixed, with their prongs at the crown or the foot
		if r.IntN(4) == 0 {
			in.Strings[i], in.Turned[i] = in.Turned[i], in.Strings[i]
		}
		in.Lines[i].Open = r.IntN(3) > 0
		if r.IntN(5) == 0 {
			lead := measure.Length(r.IntN(2000))
			in.Strings[i].Off, in.Turned[i].Off = lead, lead
		}
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
	in.Spec.Power.Split = spec.Split(r.IntN(3))
	in.Spec.Power.Together = 1 + r.IntN(6)
	in.Spec.Site.Cords.Crossing = spec.Crossing(r.IntN(3))
	if n := in.Spec.Tunnel.Arches; n > 1 && r.IntN(3) == 0 {
		in.Spec.Tunnel.Ways = []spec.Way{{Bay: 1 + r.IntN(n-1), Wall: spec.Side(r.IntN(2))}}
	}
	switch r.IntN(4) {
	case 0:
		in.Spec.Power.Inline = nil
	case 1:
		in.Spec.Power.Taps = nil
	}
	return in
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
	// Down from the outlet, and around a circle of 1 m in the middle of 6 m: two tangents of √8 m and an arc of 2·asin(1/3).
	const least = measure.Length(500 + 1000*(2*2.8284271247+2*0.3398369095))
	if straight != 6500 || c.Lies < least || c.Lies > least*1.1 {
		t.Errorf("straight %v, around %v, least %v", straight, c.Lies, least)
	}
	for i := 1; i < len(c.Path); i++ {
		if !clear(c.Path[i-1], c.Path[i], []obstacle{{outline: ring(spec.Point{X: -half, Y: -3000}, 1000)}}) {
			t.Errorf("the cord crosses the bed from %v to %v", c.Path[i-1], c.Path[i])
		}
	}
}
