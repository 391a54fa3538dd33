package weather

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/anchor"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Gusts that the figures for closing come from. Nobody is inside at 60 % of the gust that the tunnel just bears, or at 30 mph, whichever is lower;
// rows and drops are off, and then the tunnel is down, at 80 % of the gust it bears with them and without. A gust presses by the square of
// its speed, so these are 36 % and 64 % of what it bears; shares of our own. 30 mph: advice for tents, emptied at 30 to 38 mph, its lower end.
const (
	InsideShare = 0.6
	downShare   = 0.8
	HouseGust   = 30 * measure.MPH
)

// Limit is the gust at which something first gives way.
type Limit struct {
	Gust  measure.Speed `json:"gust_m_s"` // 60 mph means that or more
	Way   string        `json:"way"`      // sideways or along; empty where nothing gives way
	Cause Cause         `json:"cause"`
	Arch  int           `json:"arch"` // one of those it happens to first; 0 for none
}

// String says what gives way at the limit.
func (l Limit) String() string {
	if l.Cause == CauseNone {
		return "and more"
	}
	return fmt.Sprintf("until %s, %s (arch %d)", l.Cause, l.Way, l.Arch)
}

// Cause is what gives way.
type Cause string

// What may give way. CauseNone: nothing does up to the greatest gust looked at.
const (
	CauseNone     Cause = ""
	CauseFolds    Cause = "an arch folds"
	CausePipe     Cause = "the pipe is bent to its strength"
	CauseBar      Cause = "a stake bends"
	CauseStake    Cause = "a stake works loose"
	CauseGuyBar   Cause = "a guy stake bends"
	CauseGuyStake Cause = "a guy stake works loose"
	CauseLeans    Cause = "it leans over along the tunnel"
)

// Bears is what the tunnel bears in one soil.
type Bears struct {
	Soil     anchor.Soil `json:"-"`
	Name     string      `json:"soil"`
	Built    Limit       `json:"built"`
	Stripped Limit       `json:"stripped"` // without rows and drops
}

// Weather is what wind and ice do to the tunnel: estimates for closing early, never a rating.
type Weather struct {
	Bears []Bears `json:"bears"` // one for each soil it may be, the weakest first; none where it does not stand in still air

	Inside measure.Speed `json:"inside_m_s"` // nobody is inside from this gust on
	Strip  measure.Speed `json:"strip_m_s"`  // rows and drops are off before it; 0 where there are none, or where it gains next to nothing
	Gains  measure.Speed `json:"gains_m_s"`  // by how much stripping raises the gust it bears
	Down   measure.Speed `json:"down_m_s"`   // the tunnel is down before it

	Sway     [2]measure.Length `json:"sway_mm"`       // of the crown, the most of any arch, in gusts of SwayGusts
	GuyPull  measure.Force     `json:"guy_pull_n"`    // in each guy, along it, at the gust nobody is inside from; of guys at both ends in gusts of 30 mph where the spec has none
	RidgeEnd measure.Force     `json:"ridge_pull_n"`  // greatest pull or push in the ridge then
	Guyed    bool              `json:"guyed"`         // the spec has guys that hold
	WithGuys float64           `json:"with_guys"`     // least load factor either way with guys at both ends; 0 where it has guys or no ridge
	Cover    float64           `json:"cover"`         // how many times the wind's push a closed cover brings
	Ice      [2]measure.Length `json:"ice_mm"`        // least radial ice at which an arch folds or leans over: as new and late
	Test     measure.Speed     `json:"test_m_s"`      // the gust whose demand the stakes are tried with by hand
	Asks     float64           `json:"stake_asks_nm"` // N·m, the greatest moment at a stake's ground point in it

	kinds []*Kind
}

// Depth returns the least depth of the stakes that holds a gust in a soil.
func (w Weather) Depth(soil anchor.Soil, v measure.Speed) measure.Length {
	deep := measure.Length(0)
	for _, k := range w.kinds {
		deep = max(deep, k.Depth(soil, v))
	}
	return deep
}

// Calm reports that the tunnel bears no wind to speak of: there is no gust to name that it could stay open to.
func (w Weather) Calm() bool { return w.Inside < airOfNote }

// airOfNote is a wind that leaves stir in, below which no gust is named: Beaufort 2 begins at 4 mph (from memory).
const airOfNote = 4 * measure.MPH

// SwayGusts are the two gusts that Sway is told of: 20 and 30 mph.
func SwayGusts() [2]measure.Speed { return swayGusts }

// Tunnel is the arches as they stand together.
type Tunnel struct {
	Arches []Arch // in order, each kind braced
	Joined bool   // by a ridge
	Guys   spec.Guys
	Soil   spec.Soil
	Units  measure.System
}

// Weather puts braced arches together: how the tunnel stands lengthwise, which it notes in the kinds' load factors, and what winds and ice it bears.
func (t Tunnel) Weather() Weather {
	var w Weather
	for _, a := range t.Arches {
		if a.Refused() || a.braced == nil || len(a.braced.free.stiff) <= theDeadLoad {
			return w // an arch that nobody asked for, or one that does not stand in still air
		}
	}
	if len(t.Arches) == 0 {
		return w
	}
	for _, a := range t.Arches {
		if !slices.Contains(w.kinds, a.Kind) {
			w.kinds = append(w.kinds, a.Kind)
		}
	}
	rows := t.rows(t.Guys.Arches)
	w.Guyed = slices.ContainsFunc(rows, func(r row) bool { return slices.Contains(r.tied, true) })
	t.holdTogether(rows)
	if !w.Guyed && t.Joined {
		w.WithGuys = Most
		for _, r := range t.rows([]int{1, len(t.Arches)}) {
			w.WithGuys = min(w.WithGuys, r.factor())
		}
		for _, a := range t.Arches {
			w.WithGuys = min(w.WithGuys, a.Sideways)
		}
	}
	t.ends(rows)
	for _, soil := range anchor.Named(t.Soil.String()) {
		w.Bears = append(w.Bears, Bears{soil, soil.Name, t.limit(soil, false), t.limit(soil, true)})
	}
	slices.SortStableFunc(w.Bears, func(a, b Bears) int { return cmp.Compare(a.Built.Gust, b.Built.Gust) })
	t.figures(&w)
	t.pulls(&w, rows)
	t.describe(&w)
	return w
}

// rows returns the tunnel with the guys that hold against each way of leaning: toward the far end those of all guyed arches but the last, for its guys
// pull that way themselves; and the other way round. Without a ridge each arch is a row of its own, held both ways or not at all.
func (t Tunnel) rows(guyed []int) []row {
	n := len(t.Arches)
	if !t.Joined || n == 1 {
		var list []row
		for _, a := range t.Arches {
			holds := slices.Contains(guyed, a.Number) && (n == 1 || a.Number > 1 && a.Number < n)
			list = append(list, row{[]*Kind{a.Kind}, []bool{holds}})
		}
		return list
	}
	var list []row
	for _, not := range []int{n, 1} {
		r := row{}
		for _, a := range t.Arches {
			r.kinds = append(r.kinds, a.Kind)
			r.tied = append(r.tied, a.Number != not && slices.Contains(guyed, a.Number))
		}
		list = append(list, r)
	}
	return list
}

// holdTogether lowers the load factors along the tunnel, and the ice, of arches that guys hold from those with a crown kept in place to what the guys and the
// other arches come to, the way they come to less.
func (t Tunnel) holdTogether(rows []row) {
	for _, r := range rows {
		if !slices.ContainsFunc(r.kinds, func(k *Kind) bool { return k.built.in.Guyed }) {
			continue
		}
		factor := r.factor()
		for _, k := range r.kinds {
			k.LeansAt(factor)
			k.lessIce()
		}
	}
}

// ends notes in each kind what a wind along the tunnel asks of it.
func (t Tunnel) ends(rows []row) {
	for stripped := range 2 {
		for _, r := range rows {
			list, _, ok := r.pulls(stripped == 1)
			for i, k := range r.kinds {
				most := &k.braced.ends[stripped]
				if !ok {
					most.push = [2]float64{math.Inf(1), math.Inf(1)}
					continue
				}
				most.take(list[i])
			}
		}
	}
}

// take makes p the most of itself and another.
func (p *pull) take(o pull) {
	if q := pressure(HouseGust); p.lean == nil || o.lean.Tightest(q) > p.lean.Tightest(q) {
		p.lean = o.lean
	}
	p.guy = max(p.guy, o.guy)
	for foot := range 2 {
		p.push[foot], p.moment[foot] = max(p.push[foot], o.push[foot]), max(p.moment[foot], o.moment[foot])
	}
}
