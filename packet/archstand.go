package packet

import (
	"fmt"
	"hoopwright/layout/practice"
	"hoopwright/layout/weather"
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// howItStands is the table of what the arches bear: themselves, wind and ice. It is for the organiser.
func (b *binder) howItStands(f *flow) {
	w, u := b.plan.Weather, b.spec.Units
	if len(w.Bears) == 0 {
		return
	}
	var rows []place.Row
	row := func(what, figure, words string) {
		rows = append(rows, place.Row{Cells: []string{what, figure, words}})
	}
	least, tight := b.plan.Kinds[0], b.plan.Kinds[0]
	for _, k := range b.plan.Kinds {
		if k.LoadFactor < least.LoadFactor {
			least = k
		}
		if k.Strength > tight.Strength {
			tight = k
		}
	}
	row("Own weight and lights", factor(least.LoadFactor), fmt.Sprintf("times that, late in the season: %s sideways, %s along", factor(least.Sideways), factor(least.Along)))
	if k := b.plan.Kinds[0]; k.BoxHeight > 0 && k.BoxWidth > 0 {
		t := b.spec.Tunnel
		row("Room for people", u.Inches(b.down(k.BoxWidth)), fmt.Sprintf("wide, %s high; %s wide it is %s high", u.Inches(t.OpeningHeight), u.Inches(t.OpeningWidth), u.Inches(b.down(k.BoxHeight))))
	}
	row("Bend of the pipe", measure.Percent(measure.Share(math.Round(100*tight.Strength)/100)), fmt.Sprintf("of its strength, where the radius is %s: %s", u.Inches(tight.BendRadius), tight.Bend()))
	row("Spring in a bent arch", b.energy(tight), "when let go: three people, eye protection")
	for _, s := range w.Bears {
		gives := "nothing gives way by then"
		if c := s.Damage.Cause; c != weather.CauseNone {
			gives = fmt.Sprintf("%s, %s; it falls at %s", c, wayWords[s.Damage.Way], u.Speed(s.Collapse.Gust))
		}
		row("Gusts it bears, "+s.Soil.Name+" soil", u.Speed(s.Damage.Gust), gives)
	}
	sway := practice.SwayGusts()
	moves := func(i int) string {
		if most := b.plan.Kinds[0].Crown / 4; w.Sway[i] > most { // what leans so far is on its way down, and its figure is no figure
			return "over " + u.Inches(b.wholeStep(most))
		}
		return u.Inches(b.wholeStep(w.Sway[i]))
	}
	row("Crown moves", moves(0), fmt.Sprintf("in gusts of %s; %s at %s", u.Speed(sway[0]), moves(1), u.Speed(sway[1])))
	if w.Held {
		words := "in gusts of " + u.Speed(w.Inside)
		if w.RidgeEnd > 0 {
			words += "; the ridge is pulled with " + u.Force(w.RidgeEnd)
		}
		row("Each guy or brace pulls", u.Force(w.GuyPull), words)
	}
	row("Ice all round", b.iceWords(w.Ice[1]), fmt.Sprintf("fells an arch late in the season; %s as raised", b.iceWords(w.Ice[0])))
	t := place.Table{Columns: []place.Column{{Head: "How it stands", Width: 50}, {Head: "Figure", Width: 28, Lettering: paper.Cell, Align: paper.AtRight}, {Head: "What it means", Lettering: paper.Body}}}
	f.heading("For the organiser: what it bears", t.Height(f.room.W, rows))
	f.table(t, rows)
	f.gap(1)
	if t := b.spec.Tunnel; t.Arches == 1 || !b.spec.Ridge.Present {
		f.text("Along counts on the pipe not turning about its bars, which only friction prevents, and no ridge piece helps here: guy it both ways.", paper.Body)
	}
	f.text("Estimates, to close early by; no judgement that anything will hold.", paper.Strong)
	f.gap(2)
}

var wayWords = map[weather.Way]string{weather.Sideways: "side wind", weather.Along: "wind along"}

// factor prints a load factor.
func factor(f float64) string {
	if f >= arch.Most {
		return fmt.Sprintf("%.0f or more", f)
	}
	return fmt.Sprintf("%.1f", f)
}

// down rounds a room for people down to the inch or centimetre.
func (b *binder) down(l measure.Length) measure.Length {
	step := measure.By(b.spec.Units, measure.Inch, 10*measure.Millimetre)
	return measure.Length(math.Floor(float64(l/step)+1e-6)) * step
}

// wholeStep rounds a length that nobody measures to the inch or centimetre.
func (b *binder) wholeStep(l measure.Length) measure.Length {
	step := measure.By(b.spec.Units, measure.Inch, 10*measure.Millimetre)
	return measure.Length(math.Round(float64(l/step))) * step
}

// iceWords prints a thickness of ice, which is never known closely.
func (b *binder) iceWords(l measure.Length) string {
	step := measure.By(b.spec.Units, measure.Inch/20, measure.Millimetre)
	return b.spec.Units.Size(measure.Length(math.Round(float64(l/step))) * step)
}

// energy says what a bent arch stores.
func (b *binder) energy(k *arch.Kind) string {
	return measure.By(b.spec.Units, fmt.Sprintf("%.0f ft·lb", k.Energy/(float64(measure.PoundForce)*measure.Foot.Metres())), fmt.Sprintf("%.0f J", k.Energy))
}
