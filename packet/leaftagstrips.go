package packet

import (
	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// stripsForTags are the pitch strips that found no room on the lights' leaf.
func (b *binder) stripsForTags() []draw.PitchStrip {
	_, _, left := b.onEdges()
	var list []draw.PitchStrip
	for _, s := range left {
		p := draw.PitchStrip{Pitch: s.pitch, Check: measure.By(b.spec.Units, 4*measure.Inch, 100*measure.Millimetre), Units: b.spec.Units, Words: s.words()}
		if p.Turns(b.bodyWidth()) >= 1 {
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
