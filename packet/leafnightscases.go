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
func (b *binder) worstCases() []nightCase {
	u := b.spec.Units
	lit, off := len(b.plan.Strings) > 0, ""
	if lit {
		off = " Lights stay on till all are out; then power off."
	}
	gust, calm := b.closeAt()
	at := "any wind"
	if !calm {
		at = fmt.Sprintf("%s by meter at head height, %s", block.Figure(u.Speed(gust.Local)), signOf(gust))
	}
	list := []nightCase{{"Wind, thunder", fmt.Sprintf("%s, or thunder: everyone out.%s Bar both ends.", at, off)}}
	if _, ok := b.flatAt(); ok {
		list = append(list, nightCase{"Too late to lay flat", fmt.Sprintf("dark, or gusts past %s: touch nothing, everyone %s away.", u.Speed(b.wanted(crew.LowerArches, crew.GustBelow).Gust), block.Figure(u.Room(b.apart())))})
	}
	fire := "everyone out. Ring. Nobody goes back."
	if lit {
		fire = "everyone out. Power off before you touch anyone. Ring. Nobody goes back."
	}
	return append(list, nightCase{"Fire, shock", fire},
		nightCase{"Lost child", "one stays at each end, one walks it, calling. Five minutes: ring."},
		nightCase{"In doubt", fmt.Sprintf("close. Nobody has certified this. Never more than %s inside. Anyone calls stop.", block.Figure(fmt.Sprint(b.plan.MostInside())))})
}

// otherCases are what else may happen.
func (b *binder) otherCases() []nightCase {
	var list []nightCase
	lit := len(b.plan.Strings) > 0
	if lit {
		list = append(list, nightCase{"It goes dark", fmt.Sprintf("torches on, people out: the drill on leaf %d.", leafNumber("power"))},
			nightCase{"Rain", "open while plugs hang dry and nothing trips."})
	}
	list = append(list, nightCase{"Ice or snow on it", "CLOSED. Nobody under it, beat nothing off."},
		nightCase{"Crack, white line, leaning", "everyone out, CLOSED till mended."})
	if lit {
		list = append(list, nightCase{"String down, cord gone", "unplug its run, tie it up, cut no wire."})
	}
	return append(list, nightCase{"To open again after wind or thunder", fmt.Sprintf("%s quiet minutes, all checks; the noon caller says so.", block.Figure(fmt.Sprint(practice.ThunderMinutes)))})
}
