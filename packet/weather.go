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

// drill is how the tunnel is laid flat.
func (k skies) drill() weather.Drill {
	hung := 0
	for _, s := range k.plan.Strings {
		if s.Run.IsRow() || s.Run.Drop {
			hung++
		}
	}
	return k.plan.Weather.Drill(weather.Comes{Lit: len(k.plan.Strings) > 0, Cords: len(k.plan.Power.Cords), Hung: hung, Line: used(k.plan, crew.CrownLine) > 0})
}

// laid is by how many crews the tunnel is laid flat, and how long that takes.
type laid struct {
	drill   weather.Drill
	crews   int
	minutes float64
	ahead   bool // too few people for the afternoon of the call: it is made a day earlier
}

// laid asks for so many crews as are done between the noon call and sunset, as far as there are people of age for them.
func (k skies) laid() laid {
	d, s := k.drill(), k.plan.Spec
	there := max(1, (s.Crew.Helpers+1-s.Crew.Young)/crew.Raisers(s))
	n := d.Crews(crew.Afternoon(s))
	f := laid{drill: d, crews: len(d.Stretches(min(n, there))), ahead: n > there}
	f.minutes = d.By(f.crews)
	return f
}

// drillActs are the words of the lay-flat drill.
var drillActs = [...]string{weather.Unplug: "unplug it all", weather.Coil: "coil cords", weather.UntieLine: "untie the crown line crown by crown", weather.Unhang: "take rows and drops off", weather.FreeRidge: "free every ridge piece", weather.Untie: "untie as you come to it", weather.SpringOff: "spring off the last arch first",
	weather.TieDown: "tie each down along its row", weather.CapStakes: "cap the stakes"}

// drillWords says how the tunnel is laid flat, by how many and how long, and what holds when it is too late.
func (k skies) drillWords() string {
	flat := k.laid()
	var acts []string
	for _, s := range flat.drill.Steps {
		acts = append(acts, drillActs[s.Act])
	}
	return fmt.Sprintf("%d people, about %.0f minutes: %s. Too late: touch nothing, bar every way, stay %s away.", flat.crews*crew.Raisers(k.plan.Spec), flat.minutes, strings.Join(acts, ", "), k.plan.Spec.Units.Room(k.apart()))
}

// apart is how near anyone comes when it is too late to lay the tunnel flat.
func (k skies) apart() measure.Length {
	return measure.RoundUp(measure.Length(k.drill().Apart)*measure.Metre, practice.Paced(k.plan.Spec.Units))
}

// signWords says what is seen, and what an app without gusts shows, when such gusts come.
func (k skies) signWords(g weather.Gust) string {
	if g.Forecast == 0 {
		return ""
	}
	return fmt.Sprintf(" No meter: when %s. An app without gusts: wind of %s.", signOf(g), k.plan.Spec.Units.Speed(g.App()))
}
