package sharing

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// everything tries every source, and none, for every plug, and returns the least amps unfed and the fewest groups in use with that.
func everything(p *Problem) (missing float64, used int) {
	missing = math.Inf(1)
	of := make([]int, len(p.Plugs))
	group := make([]int, len(p.Sources))
	for g, set := range p.Groups {
		for _, k := range set {
			group[k] = g
		}
	}
	var try func(i int)
	try = func(i int) {
		if i < len(of) {
			for k := -1; k < len(p.Sources); k++ {
				if k < 0 || p.Plugs[i].Draws[k] >= 0 {
					of[i] = k
					try(i + 1)
				}
			}
			return
		}
		circuits, through := make([]float64, len(p.Allowed)), make([]float64, len(p.Sources))
		parts := map[int][2]bool{}
		unfed := 0.0
		for i, k := range of {
			u := p.Plugs[i]
			if k < 0 {
				unfed += u.Wants
				continue
			}
			if u.Draws[k] > p.Sources[k].Socket+hair {
				return
			}
			circuits[p.Sources[k].Circuit] += u.Draws[k]
			through[k] += u.Draws[k]
			w := parts[group[k]]
			if u.Part != Any {
				w[u.Part] = true
			}
			parts[group[k]] = w
		}
		for c, a := range circuits {
			if a > p.Allowed[c]+hair {
				return
			}
		}
		for k, a := range through {
			if a > p.Sources[k].Limit+hair {
				return
			}
		}
		for _, w := range parts {
			if w[0] && w[1] {
				return
			}
		}
		if unfed < missing-hair || unfed < missing+hair && len(parts) < used {
			missing, used = min(missing, unfed), len(parts)
		}
	}
	try(0)
	return missing, used
}

// thrown is a small random problem.
func thrown(r *rand.Rand) *Problem {
	p := &Problem{Parts: 1 + r.IntN(2)}
	for i := range 1 + r.IntN(4) {
		limit := 20.0
		if r.IntN(4) == 0 {
			limit = float64(1 + r.IntN(6))
		}
		s := Source{Circuit: len(p.Allowed), Limit: limit, Socket: 15}
		if i > 0 && r.IntN(4) == 0 { // two outlets on a circuit, and in its group
			s.Circuit = p.Sources[i-1].Circuit
			p.Groups[len(p.Groups)-1] = append(p.Groups[len(p.Groups)-1], i)
		} else {
			p.Allowed = append(p.Allowed, float64(2+r.IntN(7)))
			p.Groups = append(p.Groups, []int{i})
		}
		p.Sources = append(p.Sources, s)
	}
	for range 1 + r.IntN(7) {
		draw := 0.5 * float64(1+r.IntN(8))
		u := Plug{Part: r.IntN(p.Parts+1) - 1, Wants: draw}
		if p.Parts == 1 {
			u.Part = Any
		}
		for range p.Sources {
			d := draw
			if r.IntN(10) == 0 {
				d = Cannot
			}
			u.Draws, u.Ways = append(u.Draws, d), append(u.Ways, float64(r.IntN(1000)))
		}
		p.Plugs = append(p.Plugs, u)
	}
	return p
}

// Every small thrown case: as few amps unfed, and with that on as few groups, as by trying everything; and what is said adds up.
func TestShareAgainstEverything(t *testing.T) {
	several := 0
	for seed := range uint64(600) {
		p := thrown(rand.New(rand.NewPCG(seed, 23)))
		got := Share(p)
		missing, used := everything(p)
		if !got.Proven || math.Abs(got.Missing-missing) > 1e-6 || got.Used != used {
			t.Fatalf("seed %d: %v A unfed on %d groups, proven %v; by trying everything %v A on %d", seed, got.Missing, got.Used, got.Proven, missing, used)
		}
		unfed := 0.0
		for i, k := range got.Of {
			if k < 0 {
				unfed += p.Plugs[i].Wants
			}
		}
		if !p.Holds(got.Of) || math.Abs(unfed-got.Missing) > 1e-6 {
			t.Fatalf("seed %d: %v does not hold, or leaves %v A and says %v", seed, got.Of, unfed, got.Missing)
		}
		if got.Used > 1 || got.Missing > 0 {
			several++
		}
	}
	if several < 200 {
		t.Errorf("only %d cases were more than one circuit", several)
	}
}

// One group more, or fewer, keeps what is fed and holds; a plan that is not held is told.
func TestMoreAndFewer(t *testing.T) {
	for seed := range uint64(100) {
		p := thrown(rand.New(rand.NewPCG(seed, 5)))
		now := Share(p)
		for _, s := range slices.Concat(p.More(now), p.Fewer(now)) {
			if s.Missing > now.Missing+1e-6 || !p.Holds(s.Of) {
				t.Fatalf("seed %d: %+v after %+v", seed, s, now)
			}
		}
	}
	p := &Problem{Parts: 2, Allowed: []float64{1}, Sources: []Source{{Limit: 5, Socket: 5}}, Groups: [][]int{{0}}, Plugs: []Plug{
		{Part: 0, Draws: []float64{0.5}, Ways: []float64{1}}, {Part: 1, Draws: []float64{0.4}, Ways: []float64{1}}, {Part: 0, Draws: []float64{0.6}, Ways: []float64{1}},
	}}
	for _, c := range []struct {
		of   []int
		want bool
	}{{[]int{0, -1, -1}, true}, {[]int{0, 0, -1}, false}, {[]int{0, -1, 0}, false}} {
		if got := p.Holds(c.of); got != c.want {
			t.Errorf("%v holds: %v", c.of, got)
		}
	}
}

// FuzzShare throws more cases than the test above, and changes of one circuit's amps and one plug's way.
func FuzzShare(f *testing.F) {
	f.Add(uint64(601), 1.5, 10.0)
	f.Fuzz(func(t *testing.T, seed uint64, amps, way float64) {
		if !(amps >= 0 && amps < 1e3 && way >= 0 && way < 1e9) {
			return
		}
		p := thrown(rand.New(rand.NewPCG(seed, 23)))
		p.Allowed[0], p.Plugs[0].Ways[0] = amps, way
		got := Share(p)
		missing, used := everything(p)
		if !p.Holds(got.Of) || !got.Proven || math.Abs(got.Missing-missing) > 1e-6 || got.Used != used {
			t.Fatalf("%v A unfed on %d groups, proven %v; by trying everything %v A on %d", got.Missing, got.Used, got.Proven, missing, used)
		}
	})
}
