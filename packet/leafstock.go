package packet

import (
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
)

// stockLeaf is what is bought and what is brought, and on its back how the sticks are cut.
func (b *binder) stockLeaf() []folio {
	s := sawing{plan: b.plan, units: b.spec.Units, width: b.bodyWidth(), list: patterns(b.plan.Cuts.Bars)}
	front, back, fetch := slices.Concat(readLabels(b.plan), buying{b.plan, b.spec}.blocks(b.bodyWidth())), s.blocks(), fetching(b.plan)
	_, room := b.newSide(false)
	fits := func(blocks ...block.Block) bool {
		_, rest, _ := block.Fill(&paper.Page{}, room, blocks)
		return len(rest) == 0
	}
	titles, both := [2]string{"Buy and fetch", "Cut"}, slices.Concat(front, fetch)
	all := fits(both...)
	if !all {
		both = block.Tight(both, block.Close)
		all = fits(both...)
	}
	if len(s.list) == 0 || all {
		front = both
		for len(back) > 0 && back[0].Name != holdName && !fits(back...) && fits(append(slices.Clone(front), back[0])...) {
			front, back = append(front, back[0]), back[1:] // many cuts after a short list
		}
	} else {
		back, titles = append(fetch, back...), [2]string{"Buy", "Fetch, then cut"}
	}
	if len(s.list) == 0 { // nothing is cut: no side for it
		front, back = append(front, back...), nil
	}
	if len(front)+len(back) == 0 {
		return nil
	}
	return []folio{{front: side{title: titles[0], blocks: front}, back: side{title: titles[1], more: "Cut", toScale: true, blocks: back}}}
}

// holdName names the block of the hold: what stands before it may stand on the front.
const holdName = "hold of the first ridge piece"

// titled returns a heading with the blocks that it stands over, nothing where there are none.
func titled(heading string, blocks ...block.Block) []block.Block {
	if len(blocks) == 0 {
		return nil
	}
	return append([]block.Block{block.Heading(heading)}, blocks...)
}
