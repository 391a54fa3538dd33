package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/cost"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// MoneyFigures lists what a tunnel costs in money and hours, name and value, as a command prints them.
func MoneyFigures(p *layout.Plan) [][2]string { return asPrinted(moneyFigures(p)) }

// moneyFigures lists them as a comparison sets them side by side. A sum of nothing is not listed.
func moneyFigures(p *layout.Plan) (list []compared) {
	c := p.Cost
	sum := func(name string, s cost.Sum, more string) {
		if s.Money > 0 || s.Unpriced > 0 {
			list = append(list, compared{name, money(p.Spec, s.Money) + sumWords(s) + more, p.Spec.Currency, number{s.Money, true}})
		}
	}
	each := ""
	if p.Spec.Tunnel.Arches > 1 {
		each = "; " + money(p.Spec, c.PerArch) + " an arch"
	}
	sum("money to buy", c.Bought, each)
	sum("money for power", c.Power, "")
	sum("money next year", c.NextYear, "; what wears out, and power")
	if c.Hours.All() > 0 {
		list = append(list, compared{"hours of people", hours(p), "h", number{c.Hours.All(), true}})
	}
	return list
}

// hours says what the work takes of all people together.
func hours(p *layout.Plan) string {
	h := p.Cost.Hours
	text := fmt.Sprintf("%.0f: %.0f building, %.0f taking down", h.All(), h.Building, h.TakeDown)
	if h.Nights > 0 {
		text += fmt.Sprintf(", %.0f checking on %s", h.Nights, say.Count(p.Spec.Power.Evenings.Nights, "night"))
	}
	if h.Kept >= 0.5 {
		text += fmt.Sprintf("; legs kept wrapped save %.0f", h.Kept)
	}
	return text
}

// money prints an amount in the spec's currency.
func money(s *spec.Spec, v float64) string {
	return strings.TrimSpace(fmt.Sprintf("%.2f %s", v, s.Currency))
}

// sumWords says what of a sum is assumed, and what is not in it.
func sumWords(s cost.Sum) (text string) {
	if s.Assumed > 0 {
		text = fmt.Sprintf(", %.2f of it assumed (≈)", s.Assumed)
	}
	if s.Unpriced > 0 {
		text += fmt.Sprintf(", %s without price", say.Count(s.Unpriced, "line"))
	}
	return text
}

// roundly prints a sum without hundredths: about, where some of it is assumed; or more, where something has no price.
func roundly(s cost.Sum) string {
	text := fmt.Sprintf("%.0f", s.Money)
	if s.Assumed > 0 {
		text = "≈" + text
	}
	if s.Unpriced > 0 {
		text += " or more"
	}
	return text
}

// costs are money and hours with how they were figured, and what wears out.
func costs(p *layout.Plan) []block.Block {
	var sums []block.Block
	for _, f := range moneyFigures(p) {
		sums = append(sums, block.Block{Name: f.name, Gap: 0.8, Body: setSmall(block.Figure(say.Capital(f.name)+":") + " " + f.text)})
	}
	list := titled("Money and hours", sums...)
	if len(sums)*len(p.Cost.Wears) == 0 {
		return list
	}
	rows := inTwo(p.Cost.Wears, func(w cost.Wear) []string {
		share := measure.Percent(w.Share)
		if w.Measured {
			share += ", died"
		}
		return []string{w.Item, fmt.Sprint(w.Used), share, fmt.Sprintf("%.2f", w.Money)}
	})
	wears := block.Table{Table: place.Table{Head: paper.SmallHead, Columns: beside(tableColumn("Wears out in a year", false), tableColumn("Of", true), tableColumn("Share", true), tableColumn("Comes to", true))}, Rows: rows}
	return append(list, block.Paragraph("Prices marked ≈ and the shares below are our assumptions, no source: put prices under stock.sell, and what died under stock.own. Hours count everyone on site, waiting too."),
		block.Block{Name: "what wears out", Gap: 1, Body: wears})
}

// FoundFigures lists what was found of arches that stood, beside the plan, as a command prints it.
func FoundFigures(p *layout.Plan) [][2]string { return asPrinted(foundFigures(p)) }

// foundFigures lists them as a comparison sets them side by side.
func foundFigures(p *layout.Plan) (list []compared) {
	u := p.Spec.Units
	for _, f := range p.Found {
		text := fmt.Sprintf("%s, planned %s", u.Tape(f.Crown), u.Tape(f.Planned))
		if f.Off && f.Left > 0 && f.Crown < f.Planned {
			text += fmt.Sprintf("; as pipe with %s of its stiffness", measure.Percent(f.Left))
		}
		list = append(list, lengthOf(fmt.Sprintf("crown found, arch %d", f.Arch), text, f.Crown))
	}
	return list
}
