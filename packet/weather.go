package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/weather"
)

// skies says what a plan's tunnel bears of the weather.
type skies struct{ plan *layout.Plan }

// insideGust is the gust from which on nobody is inside.
func (k skies) insideGust() weather.Gust {
	if w := k.plan.Weather; w != nil && len(w.Bears) > 0 {
		return w.InsideGust()
	}
	return weather.Gust{Local: practice.InsideMost, Forecast: practice.InsideMost}
}

// solved reports that the tunnel's weather is worked out.
func (k skies) solved() bool { return k.plan.Weather != nil && len(k.plan.Weather.Bears) > 0 }

// insideWords prints the forecast gust, or the measured one where no forecast tells.
func (k skies) insideWords() string {
	if k.solved() && k.plan.Weather.Calm() {
		return "any wind"
	}
	g := k.insideGust()
	if g.Forecast == 0 {
		return k.plan.Spec.Units.Speed(g.Local)
	}
	return k.plan.Spec.Units.Speed(g.Forecast)
}

// closing is a figure of the weather with what is done at it.
type closing struct{ at, do string }

// sentence says both in one sentence.
func (c closing) sentence() string { return c.at + ", " + strings.ToLower(c.do[:1]) + c.do[1:] }

// gusts lists the gusts that are acted on, mildest first.
func (k skies) gusts() []closing {
	if k.solved() && k.plan.Weather.Calm() {
		return []closing{{"Any wind", "Nobody goes in: as planned it bears no wind to speak of. Mend what the overview says first."}}
	}
	inside := k.insideGust()
	list := []closing{{"Gusts of " + k.gustWords(inside), "Whichever comes first: everyone out, nobody in." + k.signWords(inside)}}
	if !k.solved() {
		return list
	}
	return append(list, closing{"Gusts of " + k.gustWords(k.plan.Weather.DownGust()), "Forecast: lay the tunnel flat by daylight before. " + k.drillWords()})
}

// drillActs are the words of the lay-flat drill.
var drillActs = [...]string{weather.Unplug: "unplug it all", weather.Coil: "coil cords", weather.UntieLine: "untie the crown line crown by crown", weather.Unhang: "take rows and drops off", weather.FreeRidge: "free every ridge piece", weather.Untie: "untie as you come to it", weather.SpringOff: "spring off the last arch first",
	weather.TieDown: "tie each down along its row", weather.CapStakes: "cap the stakes"}

// drillWords says how the tunnel is laid flat, by how many and how long, and what holds when it is too late.
func (k skies) drillWords() string {
	flat := k.plan.LaidFlat()
	var acts []string
	for _, s := range flat.Drill.Steps {
		acts = append(acts, drillActs[s.Act])
	}
	return fmt.Sprintf("%d people, about %.0f minutes: %s. Too late: touch nothing, bar every way, stay %s away.", flat.Crews*crew.Raisers(k.plan.Spec), flat.Minutes, strings.Join(acts, ", "), k.plan.Spec.Units.Room(k.apart()))
}

// apart is how near anyone comes when it is too late to lay the tunnel flat.
func (k skies) apart() measure.Length {
	return measure.RoundUp(measure.Length(k.plan.LaidFlat().Drill.Apart)*measure.Metre, practice.Paced(k.plan.Spec.Units))
}

// signWords says what is seen, and what an app without gusts shows, when such gusts come.
func (k skies) signWords(g weather.Gust) string {
	if g.Forecast == 0 {
		return ""
	}
	return fmt.Sprintf(" No meter: when %s. An app without gusts: wind of %s.", signOf(g), k.plan.Spec.Units.Speed(g.App()))
}
