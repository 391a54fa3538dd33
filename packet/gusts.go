package packet

import (
	"fmt"

	"hoopwright/layout/weather"
)

// What the leaves of the season ask of the weather: all of it goes through these few functions.

// closeAt is the gust from which on nobody is inside; calm where there is no gust to name, for it bears no wind to speak of.
func (k skies) closeAt() (gust weather.Gust, calm bool) {
	return k.insideGust(), k.solved() && k.plan.Weather.Calm()
}

// flatAt is the gust before which the tunnel is laid flat; not ok where none is worked out, or where it is closed in any wind.
func (k skies) flatAt() (gust weather.Gust, ok bool) {
	if !k.solved() || k.plan.Weather.Calm() {
		return gust, false
	}
	return k.plan.Weather.DownGust(), true
}

// signs is what is seen on land in each force of the Beaufort scale (National Weather Service; forces below 4 from memory), by night and without leaves where it can
// be: at force 3 a light flag stands out, at 4 small branches move.
var signs = [...]string{"smoke drifts", "smoke drifts", "ribbons stir", "ribbons stand straight out", "small branches keep moving", "small trees sway", "large branches move",
	"whole trees move", "twigs break off", "slates come off", "trees are uprooted", "damage is widespread", "damage is widespread"}

// signOf is what is seen on land when such gusts come.
func signOf(gust weather.Gust) string { return signs[gust.Sign()] }

// gustWords prints a gust as it is called: forecast for open country, and what a meter shows at head height.
func (k skies) gustWords(g weather.Gust) string {
	u := k.plan.Spec.Units
	if g.Forecast == 0 {
		return u.Speed(g.Local) + " at head height, by meter alone"
	}
	return fmt.Sprintf("%s forecast (%s at head height)", u.Speed(g.Forecast), u.Speed(g.Local))
}

// toldBy is what tells of a gust that is acted on: a forecast, or a meter where none holds for the place.
func toldBy(g weather.Gust) string {
	if g.Forecast == 0 {
		return " by meter"
	}
	return " forecast"
}

// closedAs names the gust from which on nobody is inside.
func (k skies) closedAs() string { return "Closed at gusts" + toldBy(k.insideGust()) }
