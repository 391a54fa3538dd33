package power

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The share of the supply's volts that may be lost before something is said: 3 % on a branch and 5 % in all, informational
// notes of NEC 210.19 and 215.2, and IEC 60364-5-52 annex G.
const (
	dropSeen = 0.03
	dropFar  = 0.05
)

// ownMost is the most of a chain's own loss that counts when cords and circuits are chosen for it: no cord gives the rest back.
const ownMost = 0.02

// built is the feeders of a sharing.
type built struct {
	feeders []Feeder
	dry     []int   // units for which no outlet has a socket
	drop    float64 // greatest of the losses that worst returns
	worst   int     // the chain with it
	line    int     // most cords plugged one into the other
	last    int     // a chain behind them
}

// trouble returns a chain that another circuit might help, the one that loses too many volts before the one behind too many cords; not
// ok where all is well.
func (b built) trouble() (chain int, ok bool) {
	switch {
	case b.drop > dropFar:
		return b.worst, true
	case b.line > mostInLine:
		return b.last, true
	}
	return 0, false
}

// better reports whether fewer volts over 5 % are lost than in the other, or as many behind fewer cords in line.
func (b built) better(o built) bool {
	if d := max(b.drop, dropFar) - max(o.drop, dropFar); d < -hair || d > hair {
		return d < 0
	}
	return max(b.line, mostInLine) < max(o.line, mostInLine)
}

// build makes the feeders of a sharing.
func (f *feeding) build(s sharing) built {
	var b built
	for k := range f.sharer.sources {
		f.feeders(&b, s, k)
	}
	return b
}

// feeders builds everything that is plugged into one source.
func (f *feeding) feeders(b *built, s sharing, k int) {
	src := f.sharer.sources[k]
	var all []branch
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		var list []int
		for i, of := range s.of {
			if of == k && s.walls[i] == side {
				list = append(list, i)
			}
		}
		all = append(all, branches(side, f.nodes(k, side, list), src.most)...)
	}
	sockets, rest := pack(all, src.outlet.Sockets, src.most)
	for _, list := range sockets {
		f.feeder(b, src, list)
	}
	for _, r := range rest {
		for _, n := range r.nodes {
			b.dry = append(b.dry, n.units...)
		}
	}
}

// pack puts branches into an outlet's sockets: one in each while there are enough, then up to three behind a tap in the outlet, as
// far as its plug carries. What finds no place is returned as rest.
func pack(all []branch, sockets int, most measure.Current) (in [][]branch, rest []branch) {
	if len(all) <= sockets {
		for _, b := range all {
			in = append(in, []branch{b})
		}
		return in, nil
	}
	order := slices.Clone(all)
	slices.SortStableFunc(order, func(a, b branch) int { return cmp.Compare(b.amps, a.amps) })
	sums := make([]measure.Current, sockets)
	in = make([][]branch, sockets)
	for _, b := range order {
		best := -1
		for s := range in {
			if len(in[s]) < 3 && sums[s]+b.amps <= most+hair && (best < 0 || len(in[s]) < len(in[best])) {
				best = s
			}
		}
		if best < 0 {
			rest = append(rest, b)
			continue
		}
		in[best] = append(in[best], b)
		sums[best] += b.amps
	}
	return slices.DeleteFunc(in, func(list []branch) bool { return len(list) == 0 }), rest
}

// feeder builds one feeder with the thinnest cord that carries its current and keeps the loss up to every last bulb within 3 %; where
// none does, within 5 %; else with the one that loses least.
func (f *feeding) feeder(b *built, src source, list []branch) {
	var best []Joint
	var cord catalog.Cord
	worst, chain := 0.0, 0
	rank := func(drop float64) int {
		switch {
		case drop <= dropSeen:
			return 0
		case drop <= dropFar:
			return 1
		}
		return 2
	}
	for _, c := range cordsFor(src.volts) {
		joints := f.grow(src, list, c)
		if !carries(c, joints) {
			continue
		}
		drop, at := f.worst(joints, src.volts)
		if best == nil || rank(drop) < rank(worst) || rank(drop) == 2 && drop < worst {
			best, cord, worst, chain = joints, c, drop, at
		}
	}
	if best == nil { // no cord is known for such volts
		best = f.grow(src, list, catalog.Cord{})
		worst, chain = f.worst(best, src.volts)
	}
	one := Feeder{
		Name: fmt.Sprintf("F%d", len(b.feeders)+1), Outlet: src.outlet.Name, Circuit: f.in.Spec.Power.Circuits[src.circuit].Name,
		Joints: best, Amps: best[0].Amps, Volts: src.volts,
	}
	for _, j := range best {
		one.Crosses = one.Crosses || j.Over
		if len(j.Cords) > 0 {
			one.Cord, one.Gauge = cord.Name, f.in.Spec.Units.Gauge(cord.Area)
		}
	}
	b.feeders = append(b.feeders, one)
	if worst > b.drop {
		b.drop, b.worst = worst, chain
	}
	line := make([]int, len(best)) // cords from the outlet to each joint
	for i, j := range best {
		if line[i] = len(j.Cords); j.From >= 0 {
			line[i] += line[j.From]
		}
		if line[i] > b.line && len(j.Plugs) > 0 {
			b.line, b.last = line[i], f.index[j.Plugs[0].Chains[0]]
		}
	}
}

// carries reports whether every cord of some joints is within what its length may carry.
func carries(c catalog.Cord, joints []Joint) bool {
	for _, j := range joints {
		for _, l := range j.Cords {
			if j.Amps > c.AmpsAt(l)+hair {
				return false
			}
		}
	}
	return true
}

// worst returns the greatest share of volts lost up to the end of any chain on a feeder's joints, and which chain that is; of a
// chain's own loss no more is counted than ownMost.
func (f *feeding) worst(joints []Joint, volts measure.Voltage) (drop float64, chain int) {
	for _, j := range joints {
		for _, p := range j.Plugs {
			c := f.index[p.Chains[0]]
			d := float64((volts - j.Volts) / volts)
			if !p.Supply {
				d += min(float64(f.own[c]/volts), ownMost)
			}
			if d > drop {
				drop, chain = d, c
			}
		}
	}
	return drop, chain
}

// hang fills in for each chain of a feeder how it is fed.
func (f *feeding) hang(one Feeder) {
	for i, j := range one.Joints {
		var line []int // joints from the outlet to this one
		for k := i; k >= 0; k = one.Joints[k].From {
			line = append(line, k)
		}
		slices.Reverse(line)
		for _, p := range j.Plugs {
			for _, name := range p.Chains {
				c := &f.chains[f.index[name]]
				c.Outlet, c.Circuit, c.Feeder, c.Joint = one.Outlet, one.Circuit, one.Name, i
				for _, k := range line {
					at := one.Joints[k]
					c.Lies += at.Lies
					for _, l := range at.Cords {
						c.Cord += l
						c.Cords = append(c.Cords, one.Cord)
					}
					c.Path = append(c.Path, at.Path...)
				}
				c.Path = slices.Compact(c.Path)
				if c.Cord > 0 {
					c.Gauge = one.Gauge
				}
				arriving, of := j.Volts, one.Volts
				if p.Supply {
					arriving, of = c.Volts, c.Volts
				}
				c.EndVolts = arriving - f.own[f.index[name]]
				c.Drop = float64((of - c.EndVolts) / of)
			}
		}
	}
}
