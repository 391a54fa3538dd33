package weather

import (
	"math"
	"slices"

	"hoopwright/layout/anchor"
	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Cause is what gives way.
type Cause int

// What may give way. CauseNone: nothing does up to the greatest gust looked at.
const (
	CauseNone Cause = iota
	CauseFolds
	CausePipe
	CauseBar
	CauseStake
	CauseGuyBar
	CauseGuyStake
	CauseLeans
	CauseSlides
	CauseTips
)

// causes are the words of the plan's JSON.
var causes = [...]string{"", "an arch folds", "the pipe may break", "a stake bends", "a stake works loose", "a guy or brace stake bends", "a guy or brace stake works loose",
	"it leans over along the tunnel", "a foot slides", "a foot tips"}

// String returns what gives way in words.
func (c Cause) String() string { return causes[c] }

// MarshalText is String.
func (c Cause) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// plastic is the plastic moment of a round bar over the one at which it begins to yield: 16/(3π).
const plastic = 16 / (3 * math.Pi)

// check is one thing that may give way: its cause, whether the tunnel falls with it rather than being damaged first, and how near a gust comes to it, 1 where it gives.
type check struct {
	cause    Cause
	collapse bool
	of       func(*Kind, *demand) float64
}

// checks are the things that give way in a soil, the gentlest first.
func (t *Tunnel) checks(soil anchor.Soil, feet Feet) []check {
	bent := func(k *Kind, d *demand) float64 {
		bar := k.spec.Stake.Bar
		most := 0.0
		for f := range d.moment {
			if k.spec.Foot != nil {
				most = max(most, d.moment[f])
				continue
			}
			most = max(most, soil.Moment(bar.Diameter, measure.Force(d.push[f]), d.moment[f]))
		}
		return most / anchor.Yields(bar.Diameter, bar.Yield)
	}
	list := []check{
		{CausePipe, true, func(_ *Kind, d *demand) float64 { return d.strength }},
		{CauseLeans, true, func(k *Kind, d *demand) float64 { return d.lean / (mostLean * k.Crown.Metres()) }},
		{CauseStake, true, func(k *Kind, d *demand) float64 {
			if k.spec.Foot != nil {
				return 0
			}
			return stakeLoose(k.spec.Stake, soil, d)
		}},
		{CauseBar, false, bent},
		{CauseBar, true, func(k *Kind, d *demand) float64 { return bent(k, d) / plastic }},
	}
	list = append(list, t.endChecks(soil)...)
	for _, c := range []struct {
		collapse bool
		factor   float64
	}{{false, ballastFactor}, {true, 1}} {
		list = append(list, check{CauseSlides, c.collapse, func(k *Kind, d *demand) float64 {
			return c.factor * onBase(k, func(f *spec.Foot, i int) float64 {
				return slides(d.push[i], d.lift[i], float64(feet.Weight), friction(f.On, t.Spec.Weather.Cold))
			})
		}}, check{CauseTips, c.collapse, func(k *Kind, d *demand) float64 {
			return c.factor * onBase(k, func(f *spec.Foot, i int) float64 {
				return tips(d.tip[i], d.lift[i], float64(feet.Weight), f.Width.Metres())
			})
		}})
	}
	return list
}

// endChecks are those of what guys and braces end on. Where arches stand on weights those hold their ends, chosen for it, and nothing is driven: a brace of pipe is clamped to a bar in a
// socket, which may bend.
func (t *Tunnel) endChecks(soil anchor.Soil) []check {
	guy, peg, weights := t.Spec.Guys.Stake, t.Spec.Braces.Peg, t.Spec.Arch.Foot != nil
	loose := func(stake spec.Stake, pull float64) float64 { return t.endLoose(soil, stake, pull) }
	pulled := func(stake spec.Stake, pull float64) float64 {
		if pull <= 0 || stake.Bar.Diameter == 0 {
			return 0
		}
		moment := pull * practice.GuyArm(stake.Showing(), t.Spec.Units).Metres()
		if !weights {
			moment = soil.Moment(stake.Bar.Diameter, measure.Force(pull), moment)
		}
		return moment / anchor.Yields(stake.Bar.Diameter, stake.Bar.Yield)
	}
	if weights {
		guy.Bar = catalog.Bar{} // a line goes through the handles of bags
	}
	if weights && t.Spec.Braces.Line {
		peg.Bar = catalog.Bar{}
	}
	return []check{
		{CauseGuyStake, true, func(_ *Kind, d *demand) float64 { return max(loose(guy, d.pull), loose(peg, d.brace)) }},
		{CauseGuyBar, false, func(_ *Kind, d *demand) float64 { return max(pulled(guy, d.pull), pulled(peg, d.brace)) }},
		{CauseGuyBar, true, func(_ *Kind, d *demand) float64 { return max(pulled(guy, d.pull), pulled(peg, d.brace)) / plastic }},
	}
}

// endLoose returns how near the soil comes to letting go what a guy or a brace ends on, that is pulled so, N; 0 where nothing is driven.
func (t *Tunnel) endLoose(soil anchor.Soil, stake spec.Stake, pull float64) float64 {
	if pull <= 0 || stake.Bar.Diameter == 0 || t.Spec.Arch.Foot != nil {
		return 0
	}
	return pull / float64(soil.Holds(stake.Bar.Diameter, stake.Depth, practice.GuyArm(stake.Showing(), t.Spec.Units)))
}

// onBase returns the worse of an arch's two feet, of arches on weighted bases alone.
func onBase(k *Kind, of func(f *spec.Foot, foot int) float64) float64 {
	if k.spec.Foot == nil {
		return 0
	}
	return max(of(k.spec.Foot, 0), of(k.spec.Foot, 1))
}

// stakeLoose returns how near the soil comes to letting a stake go, by the depth that the foot asks.
func stakeLoose(stake spec.Stake, soil anchor.Soil, d *demand) float64 {
	most := 0.0
	for f := range d.push {
		most = max(most, float64(soil.Depth(stake.Bar.Diameter, measure.Force(d.push[f]), d.moment[f])/stake.Depth))
	}
	return most
}

// Limit is the gust, at the arches, at which something first gives way.
type Limit struct {
	Gust  measure.Speed `json:"gust_m_s"` // the greatest gust looked at where nothing does
	Way   Way           `json:"way"`
	Cause Cause         `json:"cause"`
	Arch  int           `json:"arch"` // one of those it happens to first; 0 for none
}

// limit returns the gust at which the first of the checks, of collapse alone or all, gives way on any of the curves.
func (t *Tunnel) limit(curves []*curve, list []check, collapse bool) Limit {
	least := Limit{Gust: mostGust}
	low := pressure(mostGust)
	take := func(q float64, c *curve, cause Cause) {
		if q < low {
			low = q
			least = Limit{t.speedAt(q), c.way, cause, c.arch}
		}
	}
	for _, c := range curves {
		for _, ck := range list {
			if collapse && !ck.collapse {
				continue
			}
			if q, gives := c.first(func(d *demand) float64 { return ck.of(c.kind, d) }); gives {
				take(q, c, ck.cause)
			}
		}
		if c.falls > 0 {
			cause := CauseFolds
			if c.way == Along {
				cause = CauseLeans
			}
			take(c.falls, c, cause)
		}
	}
	return least
}

// tried sets the moment that the first leg's stake is pulled with by hand. Ground that bears it is shown to be so good a share of the soil reckoned with as the stake's use of that
// soil, as what a soil holds goes by its strength; so where a guy or a brace uses more of the soil than any leg does, the stake is pulled as hard as that, if its steel bears it.
func (w *Weather) tried() {
	t := w.of
	_, w.Asks = w.stakeAsks(w.Test)
	first := slices.IndexFunc(t.Arches, func(a arch.Arch) bool { return t.Spec.ArchOf(a.Number).Foot == nil })
	if first < 0 || len(w.curves) == 0 {
		return
	}
	stake, up := t.Spec.ArchOf(t.Arches[first].Number).Stake, practice.PullUp(t.Spec.Units)
	for _, soil := range t.soils() {
		bends := anchor.Yields(stake.Bar.Diameter, stake.Bar.Yield)
		bends *= bends / soil.Moment(stake.Bar.Diameter, measure.Force(bends/up.Metres()), bends)
		uses := w.endsUse(soil)
		holds := float64(soil.Holds(stake.Bar.Diameter, stake.Depth, up)) * up.Metres()
		w.Asks = max(w.Asks, min(bends, max(uses[0], uses[1])*holds))
	}
}

// endsUse returns what share of what a soil holds the gust of the stakes' test asks at the stakes of guys, and of braces.
func (w *Weather) endsUse(soil anchor.Soil) (uses [2]float64) {
	t, q := w.of, w.of.pressure(w.Test)
	for _, c := range w.curves {
		d := c.at(q)
		for i, end := range [2]struct {
			stake spec.Stake
			pull  float64
		}{{t.Spec.Guys.Stake, d.pull}, {t.Spec.Braces.Peg, d.brace}} {
			uses[i] = max(uses[i], t.endLoose(soil, end.stake, end.pull))
		}
	}
	return uses
}
