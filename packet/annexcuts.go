package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// proof says how good the cut plan is, and how much better any could be: for the annex, no crew needs it.
func (b *binder) proof() string {
	cuts := b.plan.Cuts
	sticks, bars := 0, 0
	for _, bar := range cuts.Bars {
		switch {
		case bar.Owned:
		case bar.Steel():
			bars++
		default:
			sticks++
		}
	}
	var bought []string
	if sticks > 0 {
		bought = append(bought, say.Count(sticks, "stick"))
	}
	if bars > 0 {
		bought = append(bought, say.Count(bars, "bar"))
	}
	if len(bought) == 0 {
		return "Nothing to buy: the shed holds it all."
	}
	words := strings.Join(bought, " and ") + " to buy"
	switch {
	case cuts.OneLength && cuts.Proven:
		return words + "; no plan can use fewer."
	case cuts.OneLength:
		return fmt.Sprintf("%s; a plan could be at most %s better: not proven.", words, say.Count(cuts.FewerAtMost(), "stick"))
	}
	amount, gap := money(b.spec, cuts.Cost), money(b.spec, cuts.Cost-cuts.Bound)
	if cuts.ByLength {
		amount, gap = b.spec.Units.Room(measure.Length(cuts.Cost)), b.spec.Units.Room(measure.Length(cuts.Cost-cuts.Bound))
	}
	if cuts.Proven {
		return fmt.Sprintf("%s, %s in all; no plan from the lengths sold can do with less.", words, amount)
	}
	return fmt.Sprintf("%s, %s in all; a plan could be at most %s better: not proven.", words, amount, gap)
}
