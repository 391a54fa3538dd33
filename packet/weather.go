package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// insideGust is the gust from which on nobody is inside.
func (b *binder) insideGust() measure.Speed {
	if len(b.plan.Weather.Bears) == 0 {
		return arch.HouseGust
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
	if limit.Cause == arch.CauseNone {
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
