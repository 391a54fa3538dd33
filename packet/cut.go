package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
	"hoopwright/layout/stock"
)

// cutting is the cut sheet as it is set: what the person at the saw gets.
type cutting struct {
	*flow
	cuts     stock.Cuts
	patterns []pattern
	units    measure.System
	drawn    map[*paper.Page]paper.Scale // the scale of what is drawn on each page
}

// cutSheet sets what to look out for, how a stick is cut, the hold of the ridge, every bar with its cuts, and the list of pieces.
func (b *binder) cutSheet() []leaf {
	c := &cutting{cuts: b.plan.Cuts, patterns: patterns(b.plan.Cuts.Bars), units: b.spec.Units, drawn: map[*paper.Page]paper.Scale{}}
	if len(c.cuts.Bars) == 0 {
		f := b.newFlow("Nothing is cut: the plan has no piece of pipe.", "")
		f.findings("cut")
		return f.leaves
	}
	c.flow = b.newFlow(c.purpose(), c.bring())
	c.findings("cut")
	if len(c.patterns) > 0 {
		c.before()
		c.eachStick()
	}
	c.bench()
	c.hold()
	c.sticks()
	c.pieces()
	c.stopAndAsk()
	return c.leaves
}

func (c *cutting) purpose() string {
	if len(c.patterns) == 0 {
		return "Measure every stick and write its name on it. All are used as sold: nothing is cut."
	}
	return "Cut every piece to its length, write its name on it, tick the stick it came from."
}

func (c *cutting) bring() string {
	if len(c.patterns) == 0 {
		return "a tape, a waterproof marker, this sheet."
	}
	steel := ""
	if c.steel() {
		steel = " For steel: hacksaw or metal blade, cutting oil, flat file, leather gloves."
	}
	return "eye protection for all near the saw, one steel tape longer than a stick, square, two clamps, fine-toothed saw, scraper or knife, round file, waterproof marker, rubber mallet, tarp, dust mask." + steel
}

// steel reports whether steel is cut.
func (c *cutting) steel() bool {
	return slices.ContainsFunc(c.patterns, func(p pattern) bool { return p.bars[0].Steel() })
}

// ridge returns the trial piece of the ridge, and whether others wait for it.
func (c *cutting) ridge() (trial stock.Piece, others int, ok bool) {
	for _, b := range c.cuts.Bars {
		for _, p := range b.Pieces {
			switch {
			case p.ID.Trial():
				trial, ok = p, true
			case p.ID.Ridge():
				others++
			}
		}
	}
	return trial, others, ok
}

// state says in the title block at what scale the page is drawn.
func (c *cutting) state(s paper.Scale) {
	if before, ok := c.drawn[c.page]; ok && before != s {
		c.leaves[len(c.leaves)-1].scale = "Scales beside the drawings"
		return
	}
	c.drawn[c.page] = s
	c.scale(s)
}

// series is the standard scales of the packet's units.
func (c *cutting) series() []paper.Scale {
	return draw.Scales(c.units)
}

// limit is how far a cut may be off.
func (c *cutting) limit() string { return "±\u00a0" + c.units.Cut(c.units.Grid()) }

// money prints an amount in the spec's currency.
func (b *binder) money(v float64) string {
	if b.spec.Currency == "" {
		return fmt.Sprintf("%.2f", v)
	}
	return fmt.Sprintf("%.2f %s", v, b.spec.Currency)
}
