package packet

import (
	"fmt"
	"hoopwright/layout/weather"
	"strings"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
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

// gustWords prints a gust both ways.
func (b *binder) gustWords(g weather.Gust) string {
	u := b.spec.Units
	if g.Forecast == 0 {
		return u.Speed(g.Local) + " measured at head height"
	}
	return fmt.Sprintf("%s forecast, %s measured at head height", u.Speed(g.Forecast), u.Speed(g.Local))
}

// gustReason says what the tunnel bears, and what gives way then.
func (b *binder) gustReason() string {
	if !b.solved() {
		return "It is built of thin pipe on short stakes."
	}
	w := b.plan.Weather
	limit := w.Bears[0].Damage
	if w.Calm() {
		return "In any wind " + limit.Cause.String() + "."
	}
	if limit.Cause == weather.CauseNone {
		return "Thin pipe on short stakes."
	}
	soil := ""
	if len(w.Bears) > 1 {
		soil = " in " + w.Bears[0].Soil.Name + " soil"
	}
	return fmt.Sprintf("Near gusts of %s at the arches%s %s.", b.spec.Units.Speed(limit.Gust), soil, limit.Cause)
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

// coldRule is the one rule for bending cold pipe.
func (b *binder) coldRule() string {
	u := b.spec.Units
	return fmt.Sprintf("Pipe colder than %s is not bent; up to %s bend it slowly, in the sun, eye protection on.", u.Temperature(practice.NoBending), u.Temperature(practice.BendSlowly))
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
	return fmt.Sprintf("%d people, about %.0f minutes: %s. Too late: touch nothing, bar both ends, stay %s away.", d.People, d.Minutes, strings.Join(acts, ", "), b.spec.Units.Room(measure.Length(d.Apart)*measure.Metre))
}

// beauforts says what is seen in each force of the Beaufort scale, on land (National Weather Service; forces below 4 from memory).
var beauforts = []string{"smoke rises straight up", "smoke drifts", "leaves rustle", "leaves and twigs keep moving", "loose paper flies, small branches move", "small trees sway", "large branches move",
	"whole trees move", "twigs break off", "slates come off", "trees are uprooted", "damage is widespread", "damage is widespread"}

// signWords says what is seen, and what an app without gusts shows, when such gusts come.
func (b *binder) signWords(g weather.Gust) string {
	if g.Forecast == 0 {
		return ""
	}
	return fmt.Sprintf(" No meter: when %s. An app without gusts: wind of %s.", beauforts[g.Sign()], b.spec.Units.Speed(g.App()))
}

// closingFigures lists the figures that the tunnel is closed by.
func (b *binder) closingFigures() []closing {
	list := append(b.gusts(),
		closing{"Thunder", fmt.Sprintf("Everyone out and indoors until %d minutes after the last.", practice.ThunderMinutes)},
		closing{"Ice or snow on it", "Closed. Lights off, nobody under it, do not beat it off. It sags: take it down when it thaws."})
	if b.solved() {
		late := b.plan.Weather.Ice[1]
		last := &list[len(list)-1]
		last.do += fmt.Sprintf(" Near %s of ice all round, late in the season, an arch folds or leans over.", b.iceWords(late))
	}
	return list
}

// weatherDangers are those of the tunnel as it stands.
func (b *binder) weatherDangers() []danger {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	w := b.plan.Weather
	wind := ""
	for _, g := range b.gusts() {
		wind += g.sentence() + " "
	}
	wind += "The organiser may lower a figure; nobody raises one. Look at stakes, guys and sockets before it opens again."
	cover, ice := "A tarp or banner takes many times the wind.", "Ice bends arches until they fold."
	if b.solved() && w.Cover > 2 {
		cover = fmt.Sprintf("A tarp or banner takes about %.0f times the wind.", w.Cover)
	}
	if b.solved() {
		late := w.Ice[1]
		ice = fmt.Sprintf("Late in the season arches fold under %s of ice.", b.iceWords(late))
	}
	return []danger{
		{"Wind", b.gustReason(), wind},
		{"Covers", cover, "Never hang a sheet, sign or net on it, not even for an hour."},
		{"Ice and snow", ice, "Close, lights off, stay from under it. Do not beat ice off. Take it down if it sags."},
		{"Lightning", "People, wet ground and long wires.", fmt.Sprintf("At the first thunder everyone out and indoors, until %d minutes after the last.", practice.ThunderMinutes)}}
}
