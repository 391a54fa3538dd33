package power

import (
	"math"
	"math/rand/v2"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// bruteForce tries every source, and none, for every unit, and returns the least amps unfed and the fewest groups in use with that.
func bruteForce(h *sharer, split bool) (missing measure.Current, used int) {
	h.begin(split)
	missing = measure.Current(math.Inf(1))
	of := make([]int, len(h.units))
	setOf := make([]int, len(h.sources))
	for g, set := range h.sets {
		for _, k := range set {
			setOf[k] = g
		}
	}
	var try func(i int)
	try = func(i int) {
		if i < len(of) {
			for k := -1; k < len(h.sources); k++ {
				if k >= 0 && !h.units[i].takes(h.sources[k].volts) {
					continue
				}
				of[i] = k
				try(i + 1)
			}
			return
		}
		circuits := make([]measure.Current, len(h.circuit))
		through := make([]measure.Current, len(h.sources))
		walls := map[int][2]bool{}
		var unfed measure.Current
		for i, k := range of {
			u := h.units[i]
			if k < 0 {
				unfed += h.wanted(u)
				continue
			}
			d := u.draws(h.sources[k].volts)
			if d > h.sources[k].most+hair {
				return
			}
			circuits[h.sources[k].circuit] += d
			through[k] += d
			w := walls[setOf[k]]
			if u.wall != either {
				w[u.wall] = true
			}
			walls[setOf[k]] = w
		}
		for c, a := range circuits {
			if a > h.allowed[c]+hair {
				return
			}
		}
		for k, a := range through {
			o := h.sources[k].outlet
			if a > h.sources[k].most*measure.Current(o.Sockets)+hair || o.Timer > 0 && a > o.Timer+hair {
				return
			}
		}
		if split {
			for _, w := range walls {
				if w[0] && w[1] {
					return
				}
			}
		}
		if unfed < missing-hair || unfed < missing+hair && len(walls) < used {
			missing, used = min(missing, unfed), len(walls)
		}
	}
	try(0)
	return missing, used
}

// Every small random case, split or not: as few amps unfed, and with that as few circuits, as by trying everything.
func TestSharingAgainstBruteForce(t *testing.T) {
	improved := 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 23))
		in := tunnel(1 + r.IntN(3))
		in.legs(label("s", measure.Power(60*(1+r.IntN(8))), catalog.Incandescent))
		for i := range in.Strings {
			l := label("s"+letters(i), measure.Power(60*(1+r.IntN(8))), catalog.Incandescent)
			in.Strings[i].Label, in.Strings[i].Kind, in.Strings[i].Watts = l, l.Name, l.Watts
		}
		if r.IntN(2) == 0 {
			in.ridge(label("ridge", measure.Power(60*(1+r.IntN(6))), catalog.LED))
		}
		outlets := 1 + r.IntN(4)
		for i := range outlets {
			in.outlet(letters(i), measure.Length(r.IntN(9000)-4500), measure.Length(r.IntN(9000)-3000), 120, measure.Current(3+r.IntN(8)))
			if r.IntN(4) == 0 {
				in.Spec.Site.Outlets[i].Timer = measure.Current(1 + r.IntN(6))
			}
			if i > 0 && r.IntN(4) == 0 { // two outlets on a circuit
				in.Spec.Site.Outlets[i].Circuit = in.Spec.Site.Outlets[i-1].Circuit
			}
		}
		for _, split := range []bool{false, true} {
			in.Spec.Power.Split = split
			f := &feeding{in: in, site: newSite(in), index: map[string]int{}, outlets: map[string]atOutlet{}}
			groups := join(f.site, in.Strings, split, ownShares[0])
			f.chain(groups)
			f.units = units(in.Strings, groups, f.chains)
			if len(f.units) > 7 {
				f.units = f.units[:7]
			}
			f.sources()
			got := f.sharer.share(split)
			missing, used := bruteForce(f.sharer, split)
			if !got.proven || math.Abs(float64(got.missing-missing)) > 1e-6 || got.used != used {
				t.Fatalf("seed %d, split %v: %v A unfed on %d groups, proven %v; by trying everything %v A on %d", seed, split, got.missing, got.used, got.proven, missing, used)
			}
			checkSharing(t, f.sharer, got, split)
			if got.used > 1 || got.missing > 0 {
				improved++
			}
		}
	}
	if improved < 200 {
		t.Errorf("only %d cases were more than one circuit", improved)
	}
}

// checkSharing adds up what a sharing puts on each circuit, outlet and group.
func checkSharing(t *testing.T, h *sharer, s sharing, split bool) {
	t.Helper()
	circuits := make([]measure.Current, len(h.circuit))
	through := make([]measure.Current, len(h.sources))
	var unfed measure.Current
	side := map[int]spec.Side{}
	for i, k := range s.of {
		if k < 0 {
			unfed += h.wanted(h.units[i])
			continue
		}
		d := h.units[i].draws(h.sources[k].volts)
		circuits[h.sources[k].circuit] += d
		through[k] += d
		if was, ok := side[k]; split && ok && was != s.walls[i] {
			t.Errorf("source %d feeds both walls", k)
		}
		side[k] = s.walls[i]
		if w := h.units[i].wall; w != either && w.side() != s.walls[i] {
			t.Errorf("unit %d is fed along the other wall", i)
		}
	}
	for c, a := range circuits {
		if a > h.allowed[c]+1e-6 {
			t.Errorf("circuit %d: %v A of %v", c, a, h.allowed[c])
		}
	}
	for k, a := range through {
		if a > h.sources[k].limit()+1e-6 {
			t.Errorf("source %d: %v A of %v", k, a, h.sources[k].limit())
		}
	}
	if math.Abs(float64(unfed-s.missing)) > 1e-6 {
		t.Errorf("%v A unfed, %v told", unfed, s.missing)
	}
}
