package main

import (
	"fmt"
	"slices"

	"hoopwright/layout"
	"hoopwright/layout/stock"
)

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
