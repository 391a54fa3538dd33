package packet

import (
	"fmt"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
)

// nightCase is what may happen on a night, and what is done then.
type nightCase struct{ when, do string }

// casesBlocks are cases, one under the other.
func casesBlocks(cases []nightCase) (list []block.Block) {
	for _, c := range cases {
		list = append(list, block.Block{Name: c.when, Gap: 0.8, Body: block.Words{Text: block.Figure(c.when+":") + " " + c.do, Figures: paper.Strong}})
	}
	return list
}

// worstCases are those in which people are walked out at once: they are read to the watch before it opens.
func (w watch) worstCases() []nightCase {
	off, fire, touch, ring := "", "", "touch nothing", "ring "+emergency(w.plan.Spec, "the number in front")+"."
	if w.lit {
		off, fire, touch = " Lights stay on till all are out; then timers off.", " power off,", "power off, touch nothing"
	}
	at := "any wind"
	if gust, calm := w.closeAt(); !calm {
		at = fmt.Sprintf("%s, or %s by meter at head height", signOf(gust), w.units.Speed(gust.Local))
	}
	list := []nightCase{{"Thunder, or " + at, "everyone out; thunder: indoors." + off + " Bar every way."}}
	if _, ok := w.flatAt(); ok {
		list = append(list, nightCase{"LAY FLAT stopped, late, or up at dusk", fmt.Sprintf("%s, all %s away till past.", touch, block.Figure(w.units.Room(w.apart())))})
	}
	list = append(list, nightCase{"Fire", "everyone out," + fire + " " + ring + " Nobody goes back in."})
	if w.lit {
		list = append(list, nightCase{"Shock", "power off first, then help, " + ring})
	}
	return append(list, nightCase{"Lost child", "nobody in; watchers at the ways, one walks it. Five minutes: " + ring})
}

// otherCases are what else may happen.
func (w watch) otherCases() []nightCase {
	ice := "CLOSED, beat nothing off."
	wind := fmt.Sprintf("till the next noon call. By thunder: %s quiet minutes, who decides agrees.", block.Figure(fmt.Sprint(practice.ThunderMinutes)))
	if !w.lit {
		return []nightCase{{"Ice or snow on it", ice}, {"Crack, white line, leaning", "everyone out, CLOSED till mended."}, {"Closed by wind", wind}}
	}
	return []nightCase{{"A run dark", fmt.Sprintf("flashlights on, all out. %s check %d. %s bar every way, the drill on leaf %d.", block.Figure("One:"), w.checkOf(crew.NightLights), block.Figure("Two, or all:"), leafNumber("power"))},
		{"Rain", "open while plugs hang dry. " + block.Figure("Ice, snow on it:") + " " + ice},
		{"Crack, white line, leaning, a string or cord down or stolen", "everyone out, power off, CLOSED."}, {"Closed by wind", wind}}
}
