package packet

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// WeatherFigures lists what wind and ice do to a plan, name and value, as a command prints them.
func WeatherFigures(p *layout.Plan) [][2]string { return asPrinted(weatherFigures(p)) }

// asPrinted takes of compared figures what a command prints: name and value.
func asPrinted(figures []compared) (list [][2]string) {
	for _, f := range figures {
		list = append(list, [2]string{f.name, f.text})
	}
	return list
}

// weatherFigures lists them as a comparison sets them side by side.
func weatherFigures(p *layout.Plan) []compared {
	w, u, b := p.Weather, p.Spec.Units, &binder{skies: skies{p}, spec: p.Spec}
	list := []compared{{name: "soil", text: p.Spec.Site.Soil.String()}}
	for _, f := range b.holdFigures() {
		list = append(list, compared{name: f[0], text: f[1]})
	}
	if !b.solved() {
		return list
	}
	gives := func(l weather.Limit) string {
		if l.Cause == weather.CauseNone {
			return u.Speed(l.Gust) + " and more"
		}
		return fmt.Sprintf("%s (%s, %s, arch %d)", u.Speed(l.Gust), l.Cause, l.Way, l.Arch)
	}
	add := func(name, value string) { list = append(list, compared{name: name, text: value}) }
	gust := func(name string, g weather.Gust) {
		list = append(list, compared{name, b.gustWords(g), "m/s", number{float64(g.Called()), true}})
	}
	list = append(list, compared{"load factor along", factor(w.Factor), "", number{w.Factor, true}})
	for _, s := range w.Bears {
		where := "gusts in " + s.Name + " soil"
		if p.Spec.Arch.Foot != nil {
			where = "gusts on " + s.Name
		}
		add(where, fmt.Sprintf("first damage %s, collapse %s", gives(s.Damage), gives(s.Collapse)))
	}
	if !w.Calm() {
		gust("nobody inside from", w.InsideGust())
		gust("laid flat before", w.DownGust())
	}
	if w.Uplift > 0 {
		add("a foot is pulled out with", fmt.Sprintf("%s in gusts of %s", u.Force(w.Uplift), b.gustWords(w.DownGust())))
	}
	add("ice all round", fmt.Sprintf("%s late in the season fells an arch, %s as raised", u.Size(w.Ice[1]), u.Size(w.Ice[0])))
	return list
}

// holdFigures lists the stakes and what holds the tunnel lengthwise, with what was chosen and its price.
func (b *binder) holdFigures() (list [][2]string) {
	s, u := b.spec, b.spec.Units
	stake := s.Arch.Stake
	if s.Arch.Foot == nil {
		open := ""
		if s.Settled() && !(s.Given("arch.stake.bar") && s.Given("arch.stake.length") && s.Given("arch.stake.depth")) {
			open = ", chosen"
		}
		list = append(list, [2]string{"stakes of the arches", fmt.Sprintf("%s, %s long, %s deep%s", stake.Bar.Name, u.Inches(stake.Length), u.Inches(stake.Depth), open)})
	}
	if b.plan.Weather == nil {
		return list
	}
	if f := b.plan.Weather.Feet; f.Weight > 0 {
		list = append(list, [2]string{"weights", fmt.Sprintf("%s on each foot, %s at each guy's or brace's end, %s in all; friction %.2g, wet or frosty, and 1.5", u.Mass(f.Weight.Mass()), u.Mass(f.Guy.Mass()), u.Mass(f.Total.Mass()), f.Grip)})
	}
	h := b.plan.Weather.Bracing
	var what []string
	if g := h.Guys; len(g.Arches) > 0 {
		what = append(what, fmt.Sprintf("guys at %s, %s up, %s %s out", say.Numbered("arch", g.Arches), u.Tape(g.From), s.TieEnds(), u.Tape(g.Out)))
	}
	if r := h.Braces; len(r.Bays) > 0 {
		kind := "pipe"
		if r.Line {
			kind = "crossed lines"
		}
		what = append(what, fmt.Sprintf("%s in %s, %s up", kind, say.Numbered("bay", r.Bays), u.Tape(r.From)))
	}
	if len(what) == 0 {
		what = []string{"nothing"}
	}
	held := strings.Join(what, "; ")
	if h.Chosen {
		held += fmt.Sprintf(", chosen, about %.0f%s", math.Ceil(h.Cost), currencyWords(b.spec))
	}
	return append(list, [2]string{"held lengthwise by", held})
}

// currencyWords names the currency after a sum: that of the assumed prices where the spec names none.
func currencyWords(s *spec.Spec) string { return " " + cmp.Or(s.Currency, "dollars") }
