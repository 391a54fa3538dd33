package packet

import (
	"fmt"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/practice"
)

// nightCase is what may happen on a night, and what is done then.
type nightCase struct{ when, do string }

// casesBlocks are cases under a heading.
func casesBlocks(heading string, cases []nightCase) []block.Block {
	if len(cases) == 0 {
		return nil
	}
	list := []block.Block{block.Heading(heading)}
	for _, c := range cases {
		list = append(list, block.Block{Name: c.when, Gap: 0.8, Body: block.Words{Text: block.Figure(c.when+":") + " " + c.do, Figures: paper.Strong}})
	}
	return list
}

// worstCases are those in which people are walked out at once.
func (b *binder) worstCases() []nightCase {
	list := []nightCase{
		{"Fire, shock", "everyone out. Power off before you touch anyone. Ring. Nobody goes back."},
		{"Lost child", "one stays at each end. Walk it through once, call the name. Five minutes: ring."}}
	gust, calm := b.closeAt()
	sign := "any wind"
	if !calm {
		sign = signOf(gust)
	}
	return append(list, nightCase{"Wind, thunder", fmt.Sprintf("%s, or thunder: CLOSED. Everyone out.", sign)})
}

// otherCases are what else may happen.
func (b *binder) otherCases() []nightCase {
	var list []nightCase
	lit := len(b.plan.Strings) > 0
	if lit {
		list = append(list, nightCase{"It goes dark", fmt.Sprintf("torches on, way in shut, walk people out. The trip drill is on leaf %d.", leafNumber("power"))},
			nightCase{"Rain", "open while plugs hang dry and nothing trips."})
	}
	list = append(list, nightCase{"Ice or snow on it", "CLOSED. Lights off, nobody under it, beat nothing off."},
		nightCase{"Crack, white line, leaning", "everyone out, power off. CLOSED till mended by daylight."})
	if lit {
		list = append(list, nightCase{"Row pulled down, cord gone", "unplug that run, mend by daylight, cut no wire."})
	}
	return append(list, nightCase{"To open again", fmt.Sprintf("%s quiet minutes. Walk round, all checks again. The noon caller says so.", block.Figure(fmt.Sprint(practice.ThunderMinutes)))})
}
