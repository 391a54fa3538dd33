// What is said of runs: volts lost, labels passed or not known.

package power

import (
	"fmt"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// dropSays tells of volts lost on the way, once for each lamp and limit, by the worst chain.
func (f *feeding) dropSays() {
	for _, lamp := range []catalog.Lamp{catalog.LED, catalog.Incandescent} {
		worst, n := -1, 0
		for i, c := range f.chains {
			if label := f.runs[i].label; c.Drop <= usualDrop(label) || label.Lamp != lamp {
				continue
			}
			n++
			if worst < 0 || c.Drop > f.chains[worst].Drop {
				worst = i
			}
		}
		if worst < 0 {
			continue
		}
		c := f.chains[worst]
		level, effect := finding.Note, "LED strings seldom show it, but some flicker or stay dark"
		if lamp == catalog.Incandescent {
			level, effect = finding.LookAt, "the last lamps glow visibly dimmer"
		}
		code, limit := "drop-over-3-percent", dropSeen
		if c.Drop > dropFar {
			code, limit = "drop-over-5-percent", dropFar
		}
		f.say(level, code, "power", "More than 3 %% is lost by %s, most by %s: %s at its last bulb, %s of the supply lost, over the usual %s. There %s. %s.",
			say.Count(n, "run"), c.Name, measure.Volts(c.EndVolts), percent(c.Drop), percent(limit), effect, f.brighter(worst))
	}
}

func percent(share float64) string { return measure.Percent(measure.Share(share)) }

// brighter says what to change for a run that loses too much: a thicker cord where that alone keeps it within 3 %, else fewer strings
// in line where the run itself loses more than its cords, else a shorter way.
func (f *feeding) brighter(chain int) string {
	c := f.chains[chain]
	if c.Feeder == "" {
		return "Use fewer strings in line"
	}
	own := float64(f.runs[chain].lost / c.Volts)
	cords := c.Drop - own
	d := f.plan.Feeders[slices.IndexFunc(f.plan.Feeders, func(d Feeder) bool { return d.Name == c.Feeder })]
	for _, thick := range cordsFor(d.Volts) {
		after := own + cords*warmOhms(thick)/warmOhms(d.cord)
		if d.Cord != "" && f.runs[chain].label.Supply == nil && thick.Area > d.cord.Area && after <= dropSeen {
			return fmt.Sprintf("With %s cords in place of %s it would lose %s", thick.Name, d.Cord, percent(after))
		}
	}
	if own > cords && len(c.Strings) > 1 {
		return "Use fewer strings in line"
	}
	return fmt.Sprintf("Its cords alone lose %s, in the thickest as well: an outlet nearer to it, or another circuit there, shortens them", percent(cords))
}

// overloadSays tells of strings that draw more than their own supply, or the plug that their label speaks of, gives.
func (f *feeding) overloadSays() {
	var done []string
	for _, r := range f.runs {
		l := r.label
		bound := breaks(behind([]lights.String{{Label: l, Watts: l.Watts}}, 1))
		if bound.Kind == NoLimit || slices.Contains(done, l.Name) {
			continue
		}
		done = append(done, l.Name)
		key := "lights.strings." + l.Name
		have, most, what := measure.Watts(measure.Power(bound.Have)), measure.Watts(measure.Power(bound.Of)), "its plug carries"
		switch bound.Kind {
		case SupplyWatts:
			what = "its supply gives"
		case FuseAmps:
			have, most, what = measure.Amps(measure.Current(bound.Have)), measure.Amps(measure.Current(bound.Of)), "the fuse in its plug carries"
		}
		level := finding.LookAt
		if f.in.Spec.Given(key+".most watts") || f.in.Spec.Given(key+".supply") || f.in.Spec.Given(key+".fuse") {
			level = finding.MustFix
		}
		f.say(level, "string-over-limit", key, "One %s draws %s, more than the %s that %s. Read its label again, or take another string.",
			l.Name, have, most, what)
	}
}

// chainSays tells of chains longer than the label is known to allow.
func (f *feeding) chainSays() {
	longest := -1
	for i, c := range f.chains {
		if f.runs[i].label.MostChain == 0 && len(c.Strings) > 1 && (longest < 0 || len(c.Strings) > len(f.chains[longest].Strings)) {
			longest = i
		}
	}
	if longest >= 0 {
		c := f.chains[longest]
		f.say(finding.Note, "chain-limit-unknown", "lights.strings", "Up to %s of %s hang end to end (run %s), and how many its label allows is not known here. Read the label before plugging them together; the label wins.",
			say.Count(len(c.Strings), "string"), c.Kind, c.Name)
	}
}
