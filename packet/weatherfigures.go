package packet

import (
	"fmt"

	"hoopwright/layout"
	"hoopwright/layout/weather"
)

// WeatherFigures lists what wind and ice do to a plan, name and value, as a command prints them and a comparison sets them side by side.
func WeatherFigures(p *layout.Plan) [][2]string {
	w, u, b := p.Weather, p.Spec.Units, &binder{plan: p, spec: p.Spec}
	list := [][2]string{{"soil", p.Spec.Site.Soil.String()}}
	if !b.solved() {
		return list
	}
	gives := func(l weather.Limit) string {
		if l.Cause == weather.CauseNone {
			return u.Speed(l.Gust) + " and more"
		}
		return fmt.Sprintf("%s (%s, %s, arch %d)", u.Speed(l.Gust), l.Cause, l.Way, l.Arch)
	}
	add := func(name, value string) { list = append(list, [2]string{name, value}) }
	add("load factor along", factor(w.Factor))
	for _, s := range w.Bears {
		add("gusts in "+s.Name+" soil", fmt.Sprintf("first damage %s, collapse %s", gives(s.Damage), gives(s.Collapse)))
	}
	if !w.Calm() {
		add("nobody inside from", b.gustWords(w.InsideGust()))
		add("laid flat before", b.gustWords(w.DownGust()))
	}
	add("ice all round", fmt.Sprintf("%s late in the season fells an arch, %s as raised", u.Size(w.Ice[1]), u.Size(w.Ice[0])))
	return list
}
