package layout_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// onSite changes every point of the site.
func onSite(s *spec.Spec, change func(spec.Point) spec.Point) {
	all := func(list []spec.Point) {
		for i := range list {
			list[i] = change(list[i])
		}
	}
	site := &s.Site
	site.Start = change(site.Start)
	for i := range site.Marks {
		if at := site.Marks[i].At; at != nil {
			moved := change(*at)
			site.Marks[i].At = &moved
		}
	}
	for i := range site.Features {
		all(site.Features[i].Outline)
		site.Features[i].At = change(site.Features[i].At)
	}
	for i := range site.Buried {
		all(site.Buried[i].Line)
	}
	for i := range site.Overhead {
		all(site.Overhead[i].Line)
	}
	for i := range site.Outlets {
		site.Outlets[i].At = change(site.Outlets[i].At)
	}
}

// TestSiteMayLieAnyhow: a site that is moved and turned as a whole asks for the same tunnel: pieces, cuts, tapes, chains and findings are
// the same. What is moved is only where the plan's axes lie.
func TestSiteMayLieAnyhow(t *testing.T) {
	const turn = 37 * measure.Degree
	sin, cos := math.Sincos(float64(turn))
	eachSpec(t, func(t *testing.T, text string) {
		before := solved(t, text)
		moved := read(t, "spec.yaml", text)
		onSite(moved, func(p spec.Point) spec.Point {
			return spec.Point{
				X: p.X*measure.Length(cos) + p.Y*measure.Length(sin) - 4000, Y: p.Y*measure.Length(cos) - p.X*measure.Length(sin) + 7000,
			}
		})
		moved.Site.Heading += turn
		after := layout.Solve(moved)

		if !reflect.DeepEqual(before.Cuts, after.Cuts) || !reflect.DeepEqual(before.Shopping, after.Shopping) {
			t.Error("other cuts, or another shopping list")
		}
		for i, r := range before.Ridge {
			near(t, fmt.Sprintf("ridge %d", r.Bay), after.Ridge[i].Centres, r.Centres, 1e-6)
		}
		for i, d := range before.Diagonals {
			near(t, fmt.Sprintf("%v to %v", d.From, d.To), after.Diagonals[i].Distance, d.Distance, 1e-6)
		}
		for i, a := range before.Ties {
			b := after.Ties[i]
			if a.Stake != b.Stake || a.MarkA != b.MarkA || a.MarkB != b.MarkB || a.MarkC != b.MarkC {
				t.Errorf("%s is tied to %s, %s, %s, then to %s, %s, %s", a.Stake, a.MarkA, a.MarkB, a.MarkC, b.MarkA, b.MarkB, b.MarkC)
				continue
			}
			near(t, "tie "+a.Stake.String(), b.A, a.A, 1e-6)
			near(t, "tie "+a.Stake.String(), b.B, a.B, 1e-6)
		}
		for i, a := range before.Chains {
			if b := after.Chains[i]; !slices.Equal(a.Strings, b.Strings) || a.Outlet != b.Outlet || a.Cord != b.Cord {
				t.Errorf("chain %s, %v, is fed from %s by %v; before, %v from %s by %v", a.Name, b.Strings, b.Outlet, b.Cords, a.Strings, a.Outlet, a.Cords)
			}
		}
		if a, b := findings(before), findings(after); !slices.Equal(a, b) {
			t.Errorf("findings %v, then %v", a, b)
		}
	})
}

// findings lists levels and codes.
func findings(p *layout.Plan) []string {
	var list []string
	for _, f := range p.Findings {
		list = append(list, f.Level.String()+" "+f.Code)
	}
	return list
}

// mirror turns a spec into its mirror image, left for right.
func mirror(s *spec.Spec) {
	onSite(s, func(p spec.Point) spec.Point { return spec.Point{X: -p.X, Y: p.Y} })
	site := &s.Site
	site.Heading = -site.Heading
	for i := range site.Route {
		site.Route[i].Turn = -site.Route[i].Turn
	}
	for i := range site.Levels {
		l := &site.Levels[i]
		l.Left, l.Right = l.Right, l.Left
	}
	for i := range site.Marks {
		site.Marks[i].Side = 1 - site.Marks[i].Side
	}
	swap := func(a *spec.Arch) {
		if !a.OneStick {
			a.Left, a.Right = a.Right, a.Left
		}
	}
	swap(&s.Arch)
	for i := range s.Except {
		swap(&s.Except[i].Arch)
	}
	if r := s.Lights.Rows; r != nil {
		for i := range r.Walls {
			r.Walls[i] = 1 - r.Walls[i]
		}
		for i := range r.Gaps {
			r.Gaps[i].Wall = 1 - r.Gaps[i].Wall
		}
	}
}

// TestMirroredSpec: the mirror image of a spec is the mirror image of a tunnel: every L is an R, and every figure is the same.
func TestMirroredSpec(t *testing.T) {
	eachSpec(t, func(t *testing.T, text string) {
		before := solved(t, text)
		s := read(t, "spec.yaml", text)
		mirror(s)
		after := layout.Solve(s)

		for i, a := range before.Arches {
			b := after.Arches[i]
			near(t, "crown", b.Crown, a.Crown, 1e-3)
			near(t, "clear", b.Clear, a.Clear, 1e-3)
			near(t, "widest", b.Widest, a.Widest, 1e-2)
			near(t, "thrust", measure.Length(b.Thrust), measure.Length(a.Thrust), 1e-4)
			near(t, "crown tape", b.Length-b.CrownTape, a.CrownTape, 1e-6)
		}
		other := map[string]layoutStake{}
		for _, k := range after.Stakes {
			other[k.String()] = layoutStake{k.X, k.Y, k.Ground, k.Along, k.Offset}
		}
		for _, k := range before.Stakes {
			if got, want := other[swapSide(k.String())], (layoutStake{-k.X, k.Y, k.Ground, k.Along, -k.Offset}); !got.close(want) {
				t.Errorf("%s is at %v, its image at %v", k.StakeID, want, got)
			}
		}
		for i, r := range before.Ridge {
			near(t, fmt.Sprintf("ridge %d", r.Bay), after.Ridge[i].Centres, r.Centres, 1e-3)
			if after.Ridge[i].Cut != r.Cut {
				t.Errorf("ridge %d is cut to %v, its image to %v", r.Bay, r.Cut, after.Ridge[i].Cut)
			}
		}
		near(t, "cost", measure.Length(after.Cuts.Cost), measure.Length(before.Cuts.Cost), 1e-6)
		if len(before.Strings) != len(after.Strings) || len(before.Wraps) != len(after.Wraps) {
			t.Errorf("%d strings and %d wraps, in the image %d and %d", len(before.Strings), len(before.Wraps), len(after.Strings), len(after.Wraps))
		}
		pitch := map[string]measure.Length{}
		for _, w := range after.Wraps {
			pitch[w.On.String()] = w.Pitch
		}
		for _, w := range before.Wraps {
			near(t, "pitch on "+w.On.String(), pitch[swapSide(w.On.String())], w.Pitch, 1e-3)
		}
	})
}

// layoutStake is the figures of a stake that a mirror image keeps or turns round.
type layoutStake [5]measure.Length

func (a layoutStake) close(b layoutStake) bool {
	for i := range a {
		if !(math.Abs(float64(a[i]-b[i])) < 1e-3) {
			return false
		}
	}
	return true
}

// swapSide turns L into R in the name of a stake or leg.
func swapSide(name string) string {
	return strings.NewReplacer("L", "R", "R", "L").Replace(name)
}
