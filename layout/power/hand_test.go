package power

import (
	"math/rand/v2"
	"slices"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A three-way takes a socket and gives so many: each is a gain of one less.
func TestTapsIn(t *testing.T) {
	for _, c := range []struct{ fans, sockets, lines, want int }{
		{3, 2, 2, 0}, {3, 2, 3, 1}, {3, 2, 4, 1}, {3, 2, 5, 2}, {3, 2, 6, 2}, {3, 1, 6, 3},
		{2, 2, 4, 2}, {4, 1, 4, 1}, {4, 1, 5, 2}, {0, 2, 2, 0}, {0, 2, 3, 3}, {1, 2, 3, 3},
	} {
		if got := (&feeding{fans: c.fans}).tapsIn(c.sockets, c.lines); got != c.want {
			t.Errorf("%d lines in %d sockets by three-ways of %d: %d, want %d", c.lines, c.sockets, c.fans, got, c.want)
		}
	}
}

// Along the feet a cord lies from foot to foot; past a side way it goes up a leg, along the crowns, over to the other foot and down, unless a cover
// takes it across.
func TestRunsPastAWay(t *testing.T) {
	in := tunnel(4)
	in.Spec.Tunnel.Ways = []spec.Way{{Bay: 2, Wall: spec.Left}}
	over := 2*crown + 2*half
	for _, c := range []struct {
		side        spec.Side
		a, b        int
		open, cover measure.Length
	}{
		{spec.Left, 0, 1, bay, bay}, {spec.Left, 1, 2, bay + over, bay}, {spec.Left, 0, 3, 3*bay + over, 3 * bay}, {spec.Left, 2, 3, bay, bay},
		{spec.Right, 0, 3, 3 * bay, 3 * bay}, {spec.Left, 1, 1, 0, 0},
	} {
		for _, covered := range []bool{false, true} {
			in.Spec.Site.Cords.Crossing = map[bool]spec.Crossing{true: spec.CrossCovered}[covered]
			want := c.open
			if covered {
				want = c.cover
			}
			s := newSite(in)
			if there, back := s.runs(c.side, c.a, c.b), s.runs(c.side, c.b, c.a); !near(float64(there), float64(want)) || there != back {
				t.Errorf("%v wall, arch %d to %d, covered %v: %v there and %v back, want %v", c.side, c.a+1, c.b+1, covered, there, back, want)
			}
		}
	}
}

// A split that one outlet cannot give is told, even where only one wall has lights.
func TestSplitOfOneOutletIsTold(t *testing.T) {
	in := tunnel(4)
	in.oneWall(spec.Left)
	in.outlet("porch", -4000, -1000, 120, 15)
	in.Spec.Power.Split = spec.SplitWalls
	if p := Feed(in); !slices.Contains(codes(p), "split-not-possible") {
		t.Errorf("findings %v", codes(p))
	}
}

// A kind of cord comes with the cords of its own conductors that have several sockets, all of them, the shortest first.
func TestKindsOfCord(t *testing.T) {
	in := tunnel(2)
	f := &feeding{in: in}
	kinds, several := cordsFor(120), 0
	for _, c := range kinds {
		want := 0
		for _, i := range in.Spec.Power.Inline {
			if i.Cord.Area == c.Area {
				want++
			}
		}
		got := f.kindOf(c)
		if len(got.inline) != want || len(got.prices) != want || got.cord.Name != c.Name {
			t.Errorf("%s: %d with several sockets, want %d", c.Name, len(got.inline), want)
		}
		several += want
		for k, i := range got.inline {
			if i.Cord.Area != c.Area || k > 0 && i.Length < got.inline[k-1].Length {
				t.Errorf("%s: %v of %s after %v", c.Name, i.Length, i.Cord.Name, got.inline[max(0, k-1)].Length)
			}
		}
	}
	if several == 0 || several == len(kinds)*len(in.Spec.Power.Inline) {
		t.Errorf("%d cords with several sockets of %d kinds", several, len(kinds))
	}
}

// The sockets that nothing is plugged into are those of cords, of three-ways and of supplies and the last of each run fed, together as many as are covered; no
// cord has more of them than sockets.
func TestOpenSocketsAddUp(t *testing.T) {
	several := 0
	for seed := range uint64(60) {
		in := anyTunnel(rand.New(rand.NewPCG(seed, 77)))
		p := Feed(in)
		sum, labels := 0, map[string]catalog.String{}
		for _, s := range in.Strings {
			labels[s.Name] = s.Label
		}
		for _, c := range p.Cords {
			if c.Open < 0 || c.Open >= c.Sockets {
				t.Errorf("seed %d: cord %s has %d of %d sockets open", seed, c.Name, c.Open, c.Sockets)
			}
			sum += c.Open
		}
		for _, d := range p.Feeders {
			for _, j := range d.Joints {
				if j.Taps > 0 {
					sum += j.free()
				}
			}
		}
		several += sum
		used := map[string]int{} // runs by their supply, which is its first
		for _, d := range p.Feeders {
			for _, j := range d.Joints {
				for _, plug := range j.Plugs {
					if plug.Supply {
						used[plug.Chains[0]] += len(plug.Chains)
					}
				}
			}
		}
		for _, c := range p.Chains {
			if c.Feeder != "" {
				sum++
			}
			if n := used[c.Name]; n > 0 {
				sum += labels[c.Strings[0]].Supply.Sockets - n
			}
		}
		if sum != p.Open {
			t.Errorf("seed %d: %d sockets open, %d covered", seed, sum, p.Open)
		}
	}
	if several == 0 {
		t.Error("no socket was open")
	}
}
