package weather

import (
	"slices"

	"hoopwright/layout/anchor"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

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
