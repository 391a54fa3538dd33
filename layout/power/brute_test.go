package power

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sort"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// brute tries everything on a small tunnel: which way each open string lies, which prongs go into which socket, and for every set of plugs that this leaves,
// every network of cords, cords with several sockets and three-ways from one outlet, with no way passed. It goes by its own rules, written down here from the
// plan's: it shares with the program the lengths of cord that reach a way and nothing else.
type brute struct {
	in   Input
	seen map[string]bool
	sets [][]spotOf // of plugs
}

// spotOf is where a plug hangs: at a foot of a wall, or at a crown.
type spotOf struct {
	arch int // from 1
	side spec.Side
	high bool
}

// lies enumerates how the strings lie.
func (b *brute) lies(i int, list []lights.String) {
	if i == len(b.in.Strings) {
		b.join(list, make([]int, len(list)), 0)
		return
	}
	b.lies(i+1, append(list, b.in.Strings[i]))
	if b.in.Lines[i].Open {
		b.lies(i+1, append(list, b.in.Turned[i]))
	}
}

// join enumerates what each string's prongs go into: −1 a socket of the network, else another string.
func (b *brute) join(list []lights.String, into []int, i int) {
	if i == len(list) {
		b.note(list, into)
		return
	}
	into[i] = -1
	b.join(list, into, i+1)
	for k, s := range list {
		d := list[i]
		if k == i || lights.Apart(s.To, d.From) > practice.HandReach || s.Run.Kind == lights.Ridge && d.Run.Kind != lights.Ridge || slices.Contains(into[:i], k) {
			continue
		}
		into[i] = k
		b.join(list, into, i+1)
	}
	into[i] = -1
}

// note keeps a set of plugs where no run is longer than it may be or goes round in a circle.
func (b *brute) note(list []lights.String, into []int) {
	var set []spotOf
	length := map[int]int{}
	for i := range list {
		n, at := 0, i
		for ; into[at] >= 0; at = into[at] {
			if n++; n > len(list) {
				return
			}
		}
		length[at]++
		if length[at] > b.in.Spec.Power.Together && list[at].Run.Kind != lights.Ridge || list[i].Label.MostChain > 0 && length[at] > list[i].Label.MostChain {
			return
		}
		if into[i] < 0 {
			e := list[i].From
			set = append(set, spotOf{e.Arch, e.Side, e.Z > tapReach})
		}
	}
	for i := range set {
		if set[i].high {
			set[i].side = spec.Left // either wall leads to a crown
		}
	}
	sort.Slice(set, func(i, k int) bool { return fmt.Sprint(set[i]) < fmt.Sprint(set[k]) })
	if key := fmt.Sprint(set); !b.seen[key] {
		b.seen[key] = true
		b.sets = append(b.sets, set)
	}
}

// plugIn is a free socket of the network: at a spot, or at the outlet with arch 0.
type plugIn struct {
	at  spotOf
	tap bool
}

// within reports whether so many pieces from some free sockets serve a set of plugs.
func (b *brute) within(set []spotOf, free []plugIn, more int) bool {
	have := map[spotOf]int{}
	for _, f := range free {
		have[f.at]++
	}
	short := 0
	need := map[spotOf]int{}
	for _, p := range set {
		need[p]++
	}
	for p, n := range need {
		short += max(0, n-have[p])
	}
	if short == 0 {
		return true
	}
	if more == 0 {
		return false
	}
	for i, f := range free {
		if slices.Contains(free[:i], f) {
			continue
		}
		rest := slices.Delete(slices.Clone(free), i, i+1)
		with := func(more int, list ...plugIn) bool { return b.within(set, append(slices.Clone(rest), list...), more) }
		if !f.tap && with(more-1, plugIn{f.at, true}, plugIn{f.at, true}, plugIn{f.at, true}) {
			return true
		}
		if f.at.high {
			continue // nothing leads down again
		}
		for a := 1; a <= b.in.Spec.Tunnel.Arches; a++ {
			for _, side := range sides {
				if f.at.arch > 0 && f.at.side != side || f.at.arch == a {
					continue
				}
				if way, ok := b.way(f.at, a, side); ok && len(lay(b.cord(), way)) == 1 && with(more-1, plugIn{spotOf{a, side, false}, false}) {
					return true
				}
			}
		}
		for a := 1; a <= b.in.Spec.Tunnel.Arches; a++ { // up a leg, from its foot or from farther off
			for _, side := range sides {
				way, ok := b.way(f.at, a, side)
				if ok && (f.at.arch == 0 || f.at.side == side) && len(lay(b.cord(), way+half+crown)) == 1 && with(more-1, plugIn{spotOf{a, spec.Left, true}, false}) {
					return true
				}
			}
		}
		for _, in := range b.in.Spec.Power.Inline {
			for _, side := range sides {
				if f.at.arch == 0 || f.at.side == side {
					if b.along(f.at, side, in, in.Sockets, nil, with, more-1) {
						return true
					}
				}
			}
		}
	}
	return false
}

// along lays a cord's sockets foot by foot, in either direction.
func (b *brute) along(from spotOf, side spec.Side, in catalog.Inline, left int, laid []plugIn, with func(int, ...plugIn) bool, more int) bool {
	if len(laid) > 0 && with(more, laid...) {
		return true
	}
	for a := 1; a <= b.in.Spec.Tunnel.Arches && left > 0; a++ {
		way, ok := b.way(from, a, side)
		if !ok {
			continue
		}
		used := 1
		if len(laid) == 0 {
			for used <= left && in.Lead()+measure.Length(used-1)*in.Apart < way+2*practice.EndSlack-dust {
				used++ // it lies free on the way
			}
		} else {
			for way > 0 && measure.Length(used)*in.Apart < way+practice.SocketSlack-dust {
				used++
			}
		}
		to := spotOf{a, side, false}
		if used <= left && b.along(to, side, in, left-used, append(slices.Clone(laid), plugIn{to, false}), with, more) {
			return true
		}
	}
	return false
}

// cord is the kind that cords are of.
func (b *brute) cord() catalog.Cord { return b.in.Spec.Power.Inline[0].Cord }

// way returns how far a foot is by its wall, from another or from the outlet, which leads to its own wall alone.
func (b *brute) way(from spotOf, arch int, side spec.Side) (measure.Length, bool) {
	k := b.in.Ground.Stakes[2*(arch-1)+int(side)]
	if from.arch > 0 {
		a := b.in.Ground.Stakes[2*(from.arch-1)+int(side)]
		return ground.Distance(a.At(), k.At()), true
	}
	o := b.in.Spec.Site.Outlets[0].At
	if (o.X > 0) != (side == spec.Right) {
		return 0, false
	}
	near, sum := measure.Length(-1), measure.Length(0)
	for n := range b.in.Spec.Tunnel.Arches {
		foot := b.in.Ground.Stakes[2*n+int(side)].At()
		if d := ground.Distance(o, foot); near < 0 || d < near {
			near, sum = d, d+ground.Distance(foot, k.At())
		}
	}
	if sum > practice.HandReach {
		sum += practice.OutletRise(b.in.Spec.Units)
	}
	return sum, true
}

// Small tunnels thrown, one outlet: no plan is beaten that says that no fewer pieces do, and hardly any other.
func TestPiecesAgainstBruteForce(t *testing.T) {
	proven, beaten, plans := 0, 0, 0
	for seed := range uint64(80) {
		r := rand.New(rand.NewPCG(seed, 31))
		in := tunnel(1 + r.IntN(3))
		l := label("led", 4.8, catalog.LED)
		for n := 1; n <= in.Spec.Tunnel.Arches; n++ {
			for _, side := range sides {
				if r.IntN(6) > 0 {
					in.hang(lights.Leg(side, n), l, foot(side, n), top(side, n))
				}
			}
		}
		if r.IntN(2) == 0 {
			in.ridge(l)
		}
		if len(in.Strings) == 0 {
			continue
		}
		for i := range in.Lines {
			in.Lines[i].Open = r.IntN(4) > 0
		}
		in.Spec.Power.Together = 1 + r.IntN(3)
		in.outlet("porch", -2500-measure.Length(r.IntN(6000)), -measure.Length(r.IntN(3000)), 120, 20)
		cord, _ := catalog.FindCord("16 AWG")
		in.Spec.Power.Inline = []catalog.Inline{{Cord: cord, Length: 25 * measure.Foot, Sockets: 2 + r.IntN(2), Apart: measure.Length(900 + r.IntN(900))}}
		p := Feed(in)
		checkPlan(t, in, p)
		if p.mark.over > 0 || p.Pieces() > 4 {
			continue
		}
		plans++
		b := &brute{in: in, seen: map[string]bool{}}
		b.lies(0, nil)
		sockets := []plugIn{{}, {}}
		less := slices.ContainsFunc(b.sets, func(set []spotOf) bool { return b.within(set, sockets, p.Pieces()-1) })
		if p.PiecesProven {
			proven++
		}
		if less {
			beaten++
			if p.PiecesProven {
				t.Errorf("seed %d: fewer than %d pieces do, and none are said to", seed, p.Pieces())
			}
		}
	}
	t.Logf("%d plans, %d proven, %d beaten", plans, proven, beaten)
	if plans < 40 || proven < plans/3 || beaten > plans/20 {
		t.Errorf("%d plans, %d proven, %d beaten", plans, proven, beaten)
	}
}

// Beside arch 3 an outlet feeds legs 3 and 2 by one cord, the nearer first, and what hangs at crown 1 by another: no fewer do by trying everything.
func TestPartsAreLaidFromEitherEnd(t *testing.T) {
	in := tunnel(3)
	l := label("led", 4.8, catalog.LED)
	in.hang(lights.Leg(spec.Right, 1), l, top(spec.Right, 1), foot(spec.Right, 1))
	for _, n := range []int{2, 3} {
		in.hang(lights.Leg(spec.Left, n), l, foot(spec.Left, n), top(spec.Left, n))
	}
	in.fix()
	in.outlet("porch", -4773, 2833, 120, 20)
	in.Spec.Power.Inline = in.Spec.Power.Inline[:1]
	p := Feed(in)
	checkPlan(t, in, p)
	b := &brute{in: in, seen: map[string]bool{}}
	b.lies(0, nil)
	for pieces, want := range []bool{false, false, true} {
		if enough := slices.ContainsFunc(b.sets, func(set []spotOf) bool { return b.within(set, []plugIn{{}, {}}, pieces) }); enough != want {
			t.Errorf("by trying everything %d pieces are enough: %v", pieces, enough)
		}
	}
	if p.Pieces() != 2 {
		t.Errorf("%d pieces: %+v", p.Pieces(), p.Cords)
	}
}
