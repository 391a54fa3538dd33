package layout

import (
	"math"
	"slices"
	"testing"

	"hoopwright/examples"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// solvedExample solves one of the examples, changed.
func solvedExample(t *testing.T, name string, changes ...func(*spec.Spec)) *Plan {
	t.Helper()
	text, err := examples.Files.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := spec.Read(name+".yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	for _, change := range changes {
		change(s)
	}
	return Solve(s)
}

// A crown fitting has an arm for each leg and one for each ridge piece that ends there, and weighs by its arms: a tee three parts, a cross four, a
// coupling two.
func TestArmsOfACrownFitting(t *testing.T) {
	p := solvedExample(t, "garden")
	n := p.Spec.Tunnel.Arches
	crown := func(s *spec.Spec, number int) float64 {
		k := p.Arches[number-1].Kind
		for i, j := range k.Joints() {
			if j.Crown {
				return float64(fittings(s, number, k)[i].Weight)
			}
		}
		t.Fatalf("arch %d has no joint at its crown", number)
		return 0
	}
	bare := *p.Spec
	bare.Ridge.Present = false
	arm := crown(&bare, 2) / 2
	for number, arms := range map[int]float64{1: 3, 2: 4, n - 1: 4, n: 3} {
		if got := crown(p.Spec, number) / arm; got < arms-1e-9 || got > arms+1e-9 {
			t.Errorf("arch %d of %d: %v arms, want %v", number, n, got, arms)
		}
	}
}

// Of two ways that both reach the aims the cheaper is better; of others the one that comes nearer.
func TestBetterRung(t *testing.T) {
	poor := solvedExample(t, "garden").Weather
	good := solvedExample(t, "garden", func(s *spec.Spec) { s.Weather.Inside, s.Weather.Stand = 1, 2 }).Weather
	if good.Reaches() < 1 || poor.Reaches() >= 1 {
		t.Fatalf("a breeze is reached by %v, the wind aimed at by %v", good.Reaches(), poor.Reaches())
	}
	for _, c := range []struct{ better, worse rung }{
		{rung{weather: good, price: 5}, rung{weather: good, price: 7}}, {rung{weather: good, price: 7}, rung{weather: poor, price: 5}},
	} {
		if !c.better.better(c.worse) || c.worse.better(c.better) {
			t.Errorf("for %v and %v the worse one is taken", c.better.price, c.worse.price)
		}
	}
}

// What is bought for the power plan is what it laid: each cord of its kind and length, with sockets in its length where it has several, timers that take
// what goes into any of them, and three-ways at the spec's price.
func TestWiringIsThePlans(t *testing.T) {
	several := 0
	for _, name := range []string{"garden", "parkwalk", "schoolyard", "millwalk", "starter"} {
		p := solvedExample(t, name)
		w := p.wiring()
		if len(w.Cords) != len(p.Cords) || w.TapPrice != p.Spec.Power.Taps[0].Price {
			t.Errorf("%s: %d cords of %d, three-ways at %v", name, len(w.Cords), len(p.Cords), w.TapPrice)
		}
		for _, timer := range p.Power.Timers {
			if w.TimerPlugs < timer.Plugs || w.TimerAmps < timer.Size {
				t.Errorf("%s: a timer takes %d plugs and %v, those bought %d and %v", name, timer.Plugs, timer.Size, w.TimerPlugs, w.TimerAmps)
			}
		}
		for i, c := range p.Cords {
			got, sockets := w.Cords[i], 0
			if c.Sockets > 1 {
				sockets = c.Sockets
				several++
			}
			if got.Of != c.Kind || got.Length != c.Length || got.Sockets != sockets || (got.Inline != "") != (sockets > 0) {
				t.Errorf("%s: cord %s, %v long with %d sockets, is bought as %+v", name, c.Kind, c.Length, c.Sockets, got)
			}
		}
	}
	if several == 0 {
		t.Error("no cord with several sockets was laid")
	}
}

// Sticks of pipe are counted as they are cut, steel left out; none where some piece finds none.
func TestSticksAsCut(t *testing.T) {
	for _, name := range []string{"garden", "parkwalk", "schoolyard", "millwalk", "starter"} {
		p, want := solvedExample(t, name), 0
		for _, bar := range p.Stock.Cuts.Bars {
			if !bar.Steel() {
				want++
			}
		}
		if got := p.sticks(); got != want || want == 0 {
			t.Errorf("%s: %d sticks, %d are cut", name, got, want)
		}
	}
	short := solvedExample(t, "garden", func(s *spec.Spec) { s.Arch.Left[0] = 11 * measure.Foot })
	if got := short.sticks(); got != 0 {
		t.Errorf("legs longer than what is sold: %d sticks", got)
	}
}

// Ribbon over cords on the ground hangs from posts that nobody drives: one at every outlet that they lead from, none without one.
func TestRibbonHasItsPosts(t *testing.T) {
	for _, name := range []string{"garden", "parkwalk", "schoolyard", "millwalk", "starter"} {
		p := solvedExample(t, name)
		from := map[string]bool{}
		for _, c := range p.Cords {
			if c.From.At.Spot == lights.AtOutlet && c.Laid() {
				from[c.Outlet] = true
			}
		}
		posts := 0
		for _, task := range p.Crew.Tasks {
			for _, n := range task.Uses {
				if n.Thing == crew.RibbonPosts {
					posts += n.Count
				}
			}
		}
		if posts < len(from) || posts > 6*len(from) {
			t.Errorf("%s: %d posts for %d outlets", name, posts, len(from))
		}
	}
}

// Over crowns of which the first is higher the tape is straight from it to the last, above those between: by Pythagoras, of four bays of 4 ft. Where the second is the highest it bends there;
// where the first and the last are, it is level, four bays long.
func TestTapeOverCrowns(t *testing.T) {
	for except, peak := range map[string]int{"[1]": 1, "[2]": 2, "[1, last]": 1} {
		s, err := spec.Read("crowns.yaml", []byte("hoopwright: 1\ntitle: Crowns\ntunnel: {arches: 5, spacing: 4 ft}\n"+
			"arch: {pipe: pvc sch40 3/4 in, sticks: [[10 ft], [10 ft]], span: 104 in, except: [{arches: "+except+", sticks: [[128 in], [128 in]]}]}\nlights: {wraps: []}\n"))
		if err != nil {
			t.Fatal(err)
		}
		p := Solve(s)
		high := func(n int) float64 { return float64(p.Arches[n-1].Crown) }
		bay := float64(4 * measure.Foot)
		want := float64(peak-1) * bay
		if peak > 1 {
			want = math.Hypot(want, high(peak)-high(1))
		}
		want += math.Hypot(float64(5-peak)*bay, high(peak)-high(5))
		told := 0
		for _, task := range p.Crew.Tasks {
			for _, f := range task.Want {
				if f.What == crew.RunLength && slices.Contains(f.Arches, 5) {
					told++
					if off := math.Abs(float64(f.Length) - want); off > 0.1 || high(peak)-high(4) < 100 {
						t.Errorf("arch %d the highest: %.1f mm to crown 5, want %.1f", peak, f.Length, want)
					}
				}
			}
		}
		if told != 1 {
			t.Errorf("told %d times", told)
		}
	}
}
