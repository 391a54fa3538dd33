package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// stripsForTags are the pitch strips that found no room on the lights' leaf.
func (b *binder) stripsForTags() []draw.PitchStrip {
	u := b.spec.Units
	var list []draw.PitchStrip
	for _, g := range b.wrapGroups() {
		w := g.wrap
		p := draw.PitchStrip{Pitch: w.Pitch, Check: measure.By(u, 4*measure.Inch, 100*measure.Millimetre), Units: u,
			Words: say.Capital(fmt.Sprintf("%s, %s: one turn every %s", w.On.Kind.Noun(), w.Label.Name, u.Inches(w.Pitch)))}
		if !slices.Contains(list, p) && p.Turns(b.bodyWidth()) >= 1 {
			list = append(list, p)
		}
	}
	return list
}

// stripBlocks are the strips at full size, a stroke a turn along the lower edge.
func (b *binder) stripBlocks() []block.Block {
	var list []block.Block
	for _, p := range b.stripsForTags() {
		list = append(list, block.Block{Name: "pitch strip", Gap: 2, Body: block.Picture{Least: draw.PitchStripHeight, Paint: func(page *paper.Page, box paper.Rect) []string {
			p.Draw(page, box)
			return nil
		}}, Facts: []block.Fact{{What: "pitch, " + p.Words, Value: p.Words}, {What: "a strip's check", Value: b.spec.Units.Inches(p.Check)}}})
	}
	return list
}
