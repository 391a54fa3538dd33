package weather

import (
	"math"

	"hoopwright/layout/anchor"
	"hoopwright/layout/measure"
)

// guyArm is how far above the ground a guy pulls on its stake. The stake is taken to be driven leaning, square to its guy, so that all of the
// guy's pull is across it: common practice, no source.
const guyArm = 50 * measure.Millimetre

// limit returns the gust at which something of the tunnel first gives way in a soil.
func (t Tunnel) limit(soil anchor.Soil, stripped bool) Limit {
	least := Limit{Gust: mostGust}
	seen := map[*Kind]bool{}
	for _, a := range t.Arches {
		k := a.Kind
		if seen[k] {
			continue
		}
		seen[k] = true
		for _, s := range k.braced.sides[which(stripped)] {
			v, cause := first(least.Gust, func(v measure.Speed) Cause { return k.built.sideways(s, soil, v) })
			if cause != CauseNone {
				least = Limit{v, "sideways", cause, a.Number}
			}
		}
		v, cause := first(least.Gust, func(v measure.Speed) Cause { return t.along(k, soil, stripped, v) })
		if cause != CauseNone {
			least = Limit{v, "along", cause, a.Number}
		}
	}
	return least
}

// first returns the least wind below most at which something gives way, to a tenth of a mile an hour, and what it is.
func first(most measure.Speed, gives func(v measure.Speed) Cause) (measure.Speed, Cause) {
	low, high, cause := measure.Speed(0), measure.Speed(0), gives(0)
	for cause == CauseNone {
		if high >= most {
			return most, CauseNone
		}
		low, high = high, min(high+gustStep, most)
		cause = gives(high)
	}
	for high-low > measure.MPH/10 {
		mid := (low + high) / 2
		if c := gives(mid); c != CauseNone {
			high, cause = mid, c
		} else {
			low = mid
		}
	}
	return low, cause
}

// sideways says what gives way in a side wind.
func (m *model) sideways(s side, soil anchor.Soil, v measure.Speed) Cause {
	if s.folds > 0 && v > s.folds {
		return CauseFolds
	}
	return m.gives(s.at(pressure(v)), soil)
}

// gives says which of pipe, bar and stake gives way.
func (m *model) gives(g gust, soil anchor.Soil) Cause {
	switch {
	case g.strength > 1:
		return CausePipe
	case m.barBends(g):
		return CauseBar
	case !m.stakeHolds(soil, g):
		return CauseStake
	}
	return CauseNone
}

// along says what gives way in a wind along the tunnel.
func (t Tunnel) along(k *Kind, soil anchor.Soil, stripped bool, v measure.Speed) Cause {
	p := k.braced.ends[which(stripped)]
	if p.lean == nil {
		return CauseLeans
	}
	g := k.built.endGust(p, v)
	if cause := k.built.gives(g, soil); cause != CauseNone {
		return cause
	}
	if g.sway > mostLean*k.built.CrownHeight() {
		return CauseLeans
	}
	stake := t.Guys.Stake
	pull := measure.Force(p.guy * pressure(v) * t.slope(k))
	switch {
	case pull == 0:
		return CauseNone
	case soil.Holds(stake.Bar.Diameter, stake.Depth, guyArm) < pull:
		return CauseGuyStake
	case soil.Moment(stake.Bar.Diameter, pull, float64(pull)*guyArm.Metres()) > anchor.Yields(stake.Bar.Diameter, stake.Bar.Yield):
		return CauseGuyBar
	}
	return CauseNone
}

// hand is how far below the highest tie a guy may be tied before it is told.
const hand = 3 * measure.Inch

// mostLean is the lean along the tunnel, as a share of the crown's height, up to which leans are taken to be in proportion to the wind: beyond it the arch is on its
// way down.
const mostLean = 0.25

// endGust returns what a wind along the tunnel asks of an arch, together with what it bears in still air.
func (m *model) endGust(p pull, v measure.Speed) gust {
	q := pressure(v)
	pipe := m.spec.Pipe
	g := gust{q: q, strength: float64(pipe.Modulus) * pipe.OD.Metres() / 2 * p.lean.Tightest(q) / float64(pipe.Strength), sway: q * math.Abs(p.lean.Out(m.crown.Metres()))}
	still := [2]float64{m.shape.Start.Moment, m.shape.Finish.Moment}
	for i := range g.push {
		g.push[i] = math.Hypot(m.shape.Thrust, q*p.push[i])
		g.moment[i] = math.Hypot(still[i], q*p.moment[i])
	}
	return g
}

// slope returns how many times its level part a guy's own pull is.
func (t Tunnel) slope(k *Kind) float64 {
	from, out := t.Guys.From, t.Guys.Out
	if from <= 0 || out <= 0 { // no guys given: as high as out
		return math.Sqrt2
	}
	return math.Hypot(1, float64(min(from, k.Crown)/out))
}

// Asks returns the push, N, and the moment, N·m, that a gust asks of the stake that bears most, at the ground: side winds and winds along the
// tunnel, rows and drops on. It is 0 before Tunnel.Weather.
func (k *Kind) Asks(v measure.Speed) (push measure.Force, moment float64) {
	if k.braced == nil {
		return 0, 0
	}
	take := func(g gust) {
		for i := range g.push {
			push, moment = max(push, measure.Force(g.push[i])), max(moment, g.moment[i])
		}
	}
	for _, s := range k.braced.sides[0] {
		take(s.at(pressure(v)))
	}
	if p := k.braced.ends[0]; p.lean != nil {
		take(k.built.endGust(p, v))
	}
	return push, moment
}

// Depth returns the least depth of the stakes that holds a gust in a soil.
func (k *Kind) Depth(soil anchor.Soil, v measure.Speed) measure.Length {
	push, moment := k.Asks(v)
	return soil.Depth(k.Spec.Stake.Bar.Diameter, push, moment)
}

// figures fills in the gusts to act at, by the weakest soil; all are whole numbers as they are printed, rounded down.
func (t Tunnel) figures(w *Weather) {
	for i := range w.Bears {
		b := &w.Bears[i]
		b.Built.Gust, b.Stripped.Gust = t.whole(b.Built.Gust), t.whole(b.Stripped.Gust)
	}
	built, stripped := w.Bears[0].Built.Gust, w.Bears[0].Stripped.Gust
	w.Inside = t.whole(min(HouseGust, InsideShare*built))
	if w.Gains = stripped - built; t.loose() && w.Gains >= worthStripping {
		w.Strip = t.whole(downShare * built)
	}
	w.Down = t.whole(downShare * stripped)
	best := w.Bears[len(w.Bears)-1].Stripped.Gust
	w.Test = max(t.whole(downShare*best), leastTest)
	for _, a := range t.Arches {
		_, moment := a.Asks(w.Test)
		w.Asks = max(w.Asks, moment)
	}
}

// worthStripping is what stripping rows and drops must gain for anyone to be sent out for it; our own choice.
const worthStripping = 2 * measure.MPH

// leastTest is the least gust that stakes are tried for: a fresh breeze, which no yard is spared.
const leastTest = 20 * measure.MPH

// whole returns a speed down to a whole number as it is printed.
func (t Tunnel) whole(v measure.Speed) measure.Speed {
	unit := measure.MPH
	if t.Units == measure.Metric {
		unit = measure.Speed(1 / 3.6)
	}
	return measure.Speed(math.Floor(float64(v/unit)+1e-9)) * unit
}

func (t Tunnel) loose() bool {
	for _, a := range t.Arches {
		if a.built.loose() {
			return true
		}
	}
	return false
}

// pulls fills in what guys and ridge bear in a wind along the tunnel at the gust nobody is inside from.
func (t Tunnel) pulls(w *Weather, rows []row) {
	if !w.Guyed && t.Joined {
		rows = t.rows([]int{1, len(t.Arches)})
	}
	q := pressure(w.Inside)
	if !w.Guyed {
		q = pressure(HouseGust)
	}
	for _, r := range rows {
		list, ridge, ok := r.pulls(false)
		if !ok {
			continue
		}
		for i, p := range list {
			w.GuyPull = max(w.GuyPull, measure.Force(q*p.guy*t.slope(r.kinds[i])))
		}
		w.RidgeEnd = max(w.RidgeEnd, measure.Force(q*ridge))
	}
}

// describe fills in sway, ice and covers.
func (t Tunnel) describe(w *Weather) {
	w.Ice = [2]measure.Length{mostIce, mostIce}
	for _, a := range t.Arches {
		m, b := a.built, a.braced
		for i, v := range swayGusts {
			sway := 0.0
			for _, s := range b.sides[0] {
				sway = max(sway, s.at(pressure(v)).sway)
			}
			if b.ends[0].lean != nil {
				sway = max(sway, m.endGust(b.ends[0], v).sway)
			}
			w.Sway[i] = max(w.Sway[i], measure.Length(sway)*measure.Metre)
		}
		w.Ice[0], w.Ice[1] = min(w.Ice[0], a.IceNew), min(w.Ice[1], a.IceLate)
		pushes := 0.0
		for _, l := range m.sideWind(false) {
			pushes += l.Push
		}
		if m.in.Spacing > 0 {
			w.Cover = max(w.Cover, dragOfWall*m.in.Spacing.Metres()*m.CrownHeight()/pushes)
		}
	}
}
