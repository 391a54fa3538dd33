package main

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/stock"
)

// notes explains the words that stand in the table and says what to choose from.
func (c choice) notes() []string {
	var bends [arch.TooTight + 1]bool
	var stands [arch.NoArch + 1]bool
	pulls, barBends := false, false
	for _, r := range c.rows {
		stands[r.Standing] = true
		if r.Standing != arch.NoArch {
			bends[r.Bend] = true
			pulls = pulls || r.Pulls
			barBends = barBends || r.StakeBends
		}
	}
	heights := len(c.heights) > 0
	list := []string{c.verdict()}
	for _, n := range []struct {
		is   bool
		text string
	}{
		{c.own && !heights, "*: the span of the spec."},
		{true, "bears: how many times its own weight and lights it bears at season's end before it falls, and which way. Still air; wind and ice come on top."},
		{bends[arch.TooTight], "too tight: the bend asks more than the pipe's strength, by its short-term stiffness. Wider span, longer sticks or thinner pipe."},
		{bends[arch.Tight], "tight: 80 % or more of the pipe's strength. Warm the pipe, never bend it in frost."},
		{stands[arch.NeedsGuys], "needs guys: less than twofold along the tunnel; ridge pieces do not help, guys at the end arches do."},
		{stands[arch.Sways], "sways: less than twofold sideways, which guys do not mend. Thicker pipe, shorter sticks or lighter lights."},
		{stands[arch.Falls], "falls: it does not bear its own weight and lights at season's end, guyed or not. Thicker pipe or shorter sticks."},
		{stands[arch.NoArch] && !heights, "no arch: these sticks make none over that span."},
		{stands[arch.NoArch] && heights, "no arch: none has that height."},
		{pulls, "thrust below 0: the feet pull toward each other, and a dry crown joint is pulled apart; pin or glue it."},
		{barBends, "bar bends: the foot bends the stake for good in still air. Thicker bar, or a span where the legs stand plumb."},
		{!heights, "stake: least depth that holds still air, by an estimate; pull on one before trusting any."},
		{heights, "stakes, held by: what a packet would choose, by an estimate; gusts as a forecast gives them. Nobody has certified any of it."},
	} {
		if n.is {
			list = append(list, n.text)
		}
	}
	if len(c.goods) == 0 {
		return list
	}
	list = append(list, "")
	for _, g := range c.goods {
		list = append(list, g.words(c.spec.Currency))
	}
	if _, _, money, priced := sums(c.goods); money > 0 {
		text := fmt.Sprintf("in all %.2f %s", money, c.spec.Currency)
		if !priced {
			text += ", what has no price not counted"
		}
		list = append(list, text)
	}
	return list
}

// verdict says which of the rows can be built, and which of them leave the opening clear.
func (c choice) verdict() string {
	what := "spans"
	if len(c.heights) > 0 {
		what = "heights"
	}
	built := c.runs(row.Buildable)
	clear := c.runs(func(r row) bool { return r.Buildable() && r.Opens })
	switch {
	case built == "":
		return "None of these " + what + " can be built."
	case clear == "":
		return "Can be built: " + built + ". None of them leaves the opening clear."
	}
	return "Can be built: " + built + ". With the opening clear: " + clear + "."
}

// runs names the spans or heights that are so, neighbours as ranges.
func (c choice) runs(is func(row) bool) string {
	tried := func(i int) string {
		if c.rows[i].height > 0 {
			return c.spec.Units.Tape(c.rows[i].height)
		}
		return c.spec.Units.Tape(c.rows[i].Span)
	}
	var parts []string
	for i := 0; i < len(c.rows); i++ {
		from := i
		for i < len(c.rows) && is(c.rows[i]) {
			i++
		}
		if from == i {
			continue
		}
		text := tried(from)
		if i-from > 1 {
			text += " to " + tried(i-1)
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}

// good is something to buy for legs and ridge, a line of the shopping list.
type good struct {
	stock.Item
	stick bool
	legs  int // of strings: how many go on legs
}

// goodsOf picks the sticks and the strings of the legs out of the plan's shopping list.
func goodsOf(p *layout.Plan) []good {
	var goods []good
	for _, item := range p.Shopping {
		g := good{Item: item, stick: slices.ContainsFunc(p.Cuts.Bars, func(b stock.Bar) bool {
			return item.Unit == stock.StickOf && item.Of == b.Item && item.Length == b.Stock
		})}
		for _, s := range p.Strings {
			if s.Kind == item.Item && s.Run.IsLeg() && !s.Run.Drop {
				g.legs++
			}
		}
		if g.stick || g.legs > 0 {
			goods = append(goods, g)
		}
	}
	return goods
}

// sums adds up what is to be bought: sticks, strings and money, and whether everything has a price.
func sums(goods []good) (sticks, strings int, money float64, priced bool) {
	priced = true
	for _, g := range goods {
		if g.stick {
			sticks += g.Buy
		} else {
			strings += g.Buy
		}
		money += float64(g.Buy) * g.Price
		priced = priced && (g.Priced && !g.Assumed || g.Buy == 0)
	}
	return sticks, strings, money, priced
}

func (g good) words(currency string) string {
	own := min(g.Own, g.Need)
	if g.Buy == 0 {
		return fmt.Sprintf("use %d %s of your own", own, g.Item.Item)
	}
	text := fmt.Sprintf("buy %d %s", g.Buy, g.Item.Item)
	if own > 0 {
		text += fmt.Sprintf(" and use %d of your own", own)
	}
	if !g.stick {
		text += fmt.Sprintf("; %d hang on legs", g.legs)
		if g.legs < g.Need {
			text += ", the others on the ridge or spare"
		}
	}
	if g.Priced && !g.Assumed {
		text += fmt.Sprintf("; %.2f %s each", g.Price, currency)
	}
	return text
}
