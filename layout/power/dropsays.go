package power

import (
	"fmt"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// dropSays tells of volts lost on the way, once for each lamp and limit, by the worst chain.
func (f *feeding) dropSays() {
	for _, lamp := range []catalog.Lamp{catalog.LED, catalog.Incandescent} {
		worst, n := -1, 0
		for i, c := range f.chains {
			if c.Drop <= dropSeen || f.labels[i].Lamp != lamp {
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

// percent prints a share.
func percent(share float64) string { return measure.Percent(measure.Share(share)) }

// brighter says what to change for a run that loses too much: a thicker cord where that alone keeps it within 3 %, else fewer strings
// in line where the run itself loses more than its cords, else a shorter way.
func (f *feeding) brighter(chain int) string {
	c := f.chains[chain]
	if c.Feeder == "" {
		return "Use fewer strings in line"
	}
	own := 0.0
	if c.Volts > 0 {
		own = float64(f.own[chain] / c.Volts)
	}
	cords := c.Drop - own
	for _, d := range f.plan.Feeders {
		now, known := catalog.FindCord(d.Cord)
		if d.Name != c.Feeder || !known || f.labels[chain].Supply != nil {
			continue
		}
		for _, thick := range cordsFor(d.Volts) {
			if after := own + cords*warmOhms(thick)/warmOhms(now); thick.Area > now.Area && after <= dropSeen {
				return fmt.Sprintf("With %s cords in place of %s it would lose %s", thick.Name, now.Name, percent(after))
			}
		}
	}
	if own > cords && len(c.Strings) > 1 {
		return "Use fewer strings in line"
	}
	return fmt.Sprintf("Its cords alone lose %s, in the thickest as well: an outlet nearer to it, or another circuit there, shortens them", percent(cords))
}
