package packet

import (
	"fmt"
	"hoopwright/layout/weather"
	"strings"

	"hoopwright/layout/measure"
)

// What has a walk-through of lights emptied, whatever is computed for it: half an hour after the last thunder is the usual lightning advice. The
// gusts are the plan's own.
const (
	thunderMinutes = 30
	brittleBelow   = measure.Temperature(10) // °C; below it PVC is treated as brittle
)

// insideGust is the gust from which on nobody is inside.
func (b *binder) insideGust() measure.Speed {
	if len(b.plan.Weather.Bears) == 0 {
		return weather.HouseGust
	}
	return b.plan.Weather.Inside
}

// insideWords prints it.
func (b *binder) insideWords() string {
	if w := b.plan.Weather; len(w.Bears) > 0 && w.Calm() {
		return "any wind"
	}
	return b.spec.Units.Speed(b.insideGust())
}

// gustReason says what the tunnel bears, and what gives way then.
func (b *binder) gustReason() string {
	w := b.plan.Weather
	if len(w.Bears) == 0 {
		return "It is built of thin pipe on short stakes."
	}
	limit := w.Bears[0].Built
	if w.Calm() {
		return "In any wind " + string(limit.Cause) + "."
	}
	if limit.Cause == weather.CauseNone {
		return "Thin pipe on short stakes."
	}
	soil := ""
	if len(w.Bears) > 1 {
		soil = " in " + w.Bears[0].Soil.Name + " soil"
	}
	return fmt.Sprintf("Near gusts of %s%s %s.", b.spec.Units.Speed(limit.Gust), soil, limit.Cause)
}

// closing is a figure of the weather with what is done at it.
type closing struct{ at, do string }

// sentence says both in one sentence.
func (c closing) sentence() string { return c.at + ", " + strings.ToLower(c.do[:1]) + c.do[1:] }

// gusts lists the gusts that are acted on, mildest first.
func (b *binder) gusts() []closing {
	w, u := b.plan.Weather, b.spec.Units
	if len(w.Bears) > 0 && w.Calm() {
		return []closing{{"Any wind", "Nobody goes in: as planned it bears no wind to speak of. Mend what the overview says first."}}
	}
	list := []closing{{"Gusts of " + u.Speed(b.insideGust()), "Forecast or felt: everyone out, nobody in."}}
	if len(w.Bears) == 0 {
		return list
	}
	if w.Strip > 0 {
		list = append(list, closing{"Gusts of " + u.Speed(w.Strip), fmt.Sprintf("Forecast: take rows and drops off before; it then bears %s more.", u.Speed(w.Gains))})
	}
	return append(list, closing{"Gusts of " + u.Speed(w.Down), "Forecast: take the tunnel down before."})
}

// closingFigures lists the figures that the tunnel is closed by.
func (b *binder) closingFigures() []closing {
	list := append(b.gusts(),
		closing{"Thunder", fmt.Sprintf("Everyone out and indoors until %d minutes after the last.", thunderMinutes)},
		closing{"Ice or snow on it", "Closed. Lights off, nobody under it, do not beat it off. It sags: take it down when it thaws."})
	if late := b.plan.Weather.Ice[1]; len(b.plan.Weather.Bears) > 0 && late > 0 {
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
	if w.Cover > 2 {
		cover = fmt.Sprintf("A tarp or banner takes about %.0f times the wind.", w.Cover)
	}
	if late := w.Ice[1]; len(w.Bears) > 0 && late > 0 {
		ice = fmt.Sprintf("Late in the season arches fold under %s of ice.", b.iceWords(late))
	}
	return []danger{
		{"Wind", b.gustReason(), wind},
		{"Covers", cover, "Never hang a sheet, sign or net on it, not even for an hour."},
		{"Ice and snow", ice, "Close, lights off, stay from under it. Do not beat ice off. Take it down if it sags."},
		{"Lightning", "People, wet ground and long wires.", fmt.Sprintf("At the first thunder everyone out and indoors, until %d minutes after the last.", thunderMinutes)}}
}
