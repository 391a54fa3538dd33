package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/weather"
)

// insideGust is the gust from which on nobody is inside.
func (b *binder) insideGust() weather.Gust {
	if w := b.plan.Weather; w != nil && len(w.Bears) > 0 {
		return w.InsideGust()
	}
	return weather.Gust{Local: weather.InsideMost, Forecast: weather.InsideMost}
}

// solved reports that the tunnel's weather is worked out.
func (b *binder) solved() bool { return b.plan.Weather != nil && len(b.plan.Weather.Bears) > 0 }

// insideWords prints the forecast gust, or the measured one where no forecast tells.
func (b *binder) insideWords() string {
	if b.solved() && b.plan.Weather.Calm() {
		return "any wind"
	}
	g := b.insideGust()
	if g.Forecast == 0 {
		return b.spec.Units.Speed(g.Local)
	}
	return b.spec.Units.Speed(g.Forecast)
}

// closing is a figure of the weather with what is done at it.
type closing struct{ at, do string }

// sentence says both in one sentence.
func (c closing) sentence() string { return c.at + ", " + strings.ToLower(c.do[:1]) + c.do[1:] }

// gusts lists the gusts that are acted on, mildest first.
func (b *binder) gusts() []closing {
	if b.solved() && b.plan.Weather.Calm() {
		return []closing{{"Any wind", "Nobody goes in: as planned it bears no wind to speak of. Mend what the overview says first."}}
	}
	inside := b.insideGust()
	list := []closing{{"Gusts of " + b.gustWords(inside), "Whichever comes first: everyone out, nobody in." + b.signWords(inside)}}
	if !b.solved() {
		return list
	}
	return append(list, closing{"Gusts of " + b.gustWords(b.plan.Weather.DownGust()), "Forecast: lay the tunnel flat by daylight before. " + b.drillWords()})
}

// drillActs are the words of the lay-flat drill.
var drillActs = [...]string{weather.Unplug: "unplug it all", weather.FreeRidge: "free every ridge piece", weather.Untie: "untie as you come to it", weather.SpringOff: "spring off the last arch first",
	weather.TieDown: "tie each down along its row", weather.CapStakes: "cap the stakes"}

// drillWords says how the tunnel is laid flat, by how many and how long, and what holds when it is too late.
func (b *binder) drillWords() string {
	d := b.plan.Weather.Drill(len(b.plan.Strings) > 0)
	var acts []string
	for _, s := range d.Steps {
		acts = append(acts, drillActs[s.Act])
	}
	return fmt.Sprintf("%d people, about %.0f minutes: %s. Too late: touch nothing, bar both ends, stay %s away.", d.People, d.Minutes, strings.Join(acts, ", "), b.spec.Units.Room(b.apart()))
}

// apart is how near anyone comes when it is too late to lay the tunnel flat.
func (b *binder) apart() measure.Length {
	return measure.RoundUp(measure.Length(b.plan.Weather.Drill(false).Apart)*measure.Metre, practice.Paced(b.spec.Units))
}

// signWords says what is seen, and what an app without gusts shows, when such gusts come.
func (b *binder) signWords(g weather.Gust) string {
	if g.Forecast == 0 {
		return ""
	}
	return fmt.Sprintf(" No meter: when %s. An app without gusts: wind of %s.", signOf(g), b.spec.Units.Speed(g.App()))
}
