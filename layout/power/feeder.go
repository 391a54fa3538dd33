package power

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
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
	over    int     // cords in line beyond mostInLine, over all feeders
	stacked int     // taps that sit in other taps
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

// better reports whether fewer volts over 5 % are lost than in the other, or as many behind fewer cords in line, at the worst and
// then over all feeders, or with fewer taps in taps.
func (b built) better(o built) bool {
	if d := max(b.drop, dropFar) - max(o.drop, dropFar); d < -hair || d > hair {
		return d < 0
	}
	return cmp.Or(
		cmp.Compare(max(b.line, mostInLine), max(o.line, mostInLine)),
		cmp.Compare(b.over, o.over),
		cmp.Compare(b.stacked, o.stacked),
	) < 0
}

// build makes the feeders of a sharing, with no socket taken for a cord that passes other plug places for longer than run.
func (f *feeding) build(s sharing, run measure.Length) built {
	var b built
	for k := range f.sharer.sources {
		o := f.outlet(s, k, run)
		for _, l := range o.laid {
			f.feeder(&b, f.sharer.sources[k], l)
		}
		b.dry = append(b.dry, o.dry...)
	}
	return b
}

// laid is a feeder's joints with one kind of cord.
type laid struct {
	joints  []Joint
	cord    catalog.Cord
	drop    float64 // greatest share of volts lost, as worst counts it
	chain   int     // that loses it
	line    int     // most cords in line
	last    int     // a chain behind them
	stacked int     // taps that sit in other taps
}

// choose lays a feeder with the thinnest cord that carries its current and keeps the loss up to every last bulb within 3 %; where
// none does, within 5 %; else with the one that loses least.
func (f *feeding) choose(src source, list []branch) laid {
	var best laid
	for _, c := range cordsFor(src.volts) {
		l := f.lay(src, list, c)
		if !carries(c, l.joints) {
			continue
		}
		if best.joints == nil || rank(l.drop) < rank(best.drop) || rank(l.drop) == 2 && l.drop < best.drop {
			best = l
		}
		if rank(best.drop) == 0 {
			break
		}
	}
	if best.joints == nil { // no cord is known for such volts
		best = f.lay(src, list, catalog.Cord{})
	}
	return best
}

// rank sorts a loss by the limits: 0 within 3 %, 1 within 5 %, 2 over it.
func rank(drop float64) int {
	switch {
	case drop <= dropSeen:
		return 0
	case drop <= dropFar:
		return 1
	}
	return 2
}

// lay lays a feeder with one kind of cord, by wider steps where its line would be too long, twice as wide each time while that shortens it.
func (f *feeding) lay(src source, list []branch, cord catalog.Cord) laid {
	best := f.survey(src, f.grow(src, list, cord, 0), cord)
	for step := wideStep; best.line > mostInLine; step *= 2 {
		wide := f.survey(src, f.grow(src, list, cord, step), cord)
		if wide.line >= best.line {
			break
		}
		best = wide
	}
	return best
}

// survey measures joints.
func (f *feeding) survey(src source, joints []Joint, cord catalog.Cord) laid {
	l := laid{joints: joints, cord: cord}
	l.drop, l.chain = f.worst(joints, src.volts)
	line := make([]int, len(joints)) // cords from the outlet to each joint
	for i, j := range joints {
		if line[i] = len(j.Cords); j.From >= 0 {
			line[i] += line[j.From]
		}
		if line[i] > l.line && len(j.Plugs) > 0 {
			l.line, l.last = line[i], f.index[j.Plugs[0].Chains[0]]
		}
		l.stacked += max(0, j.Taps-1)
	}
	return l
}

// feeder adds one feeder.
func (f *feeding) feeder(b *built, src source, l laid) {
	one := Feeder{
		Name: fmt.Sprintf("F%d", len(b.feeders)+1), Outlet: src.outlet.Name, Circuit: f.in.Spec.Power.Circuits[src.circuit].Name,
		Joints: l.joints, Amps: l.joints[0].Amps, Volts: src.volts,
	}
	for _, j := range l.joints {
		one.Crosses = one.Crosses || j.Over
		if len(j.Cords) > 0 {
			one.Cord, one.Gauge = l.cord.Name, f.in.Spec.Units.Gauge(l.cord.Area)
		}
	}
	b.feeders = append(b.feeders, one)
	if l.drop > b.drop {
		b.drop, b.worst = l.drop, l.chain
	}
	if l.line > b.line {
		b.line, b.last = l.line, l.last
	}
	b.over += max(0, l.line-mostInLine)
	b.stacked += l.stacked
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
	cold := f.in.Spec.Weather.Cold
	cord, _ := catalog.FindCord(one.Cord)
	coldCord := measure.Voltage(copper(cold, warmth(cord)))
	coldString := measure.Voltage(copper(cold, stringWarm))
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
				own := f.own[f.index[name]]
				c.EndVolts, c.Of = arriving-own, of
				c.ColdVolts = c.Volts - own*coldString
				if !p.Supply {
					c.ColdVolts = one.Volts - (one.Volts-j.Volts)*coldCord - own*coldString
				}
				c.Drop = float64((of - c.EndVolts) / of)
			}
		}
	}
}
