package packet

import (
	"slices"

	"hoopwright/draw/block"
)

// stockLeaf is what is bought and what is brought, and on its back how the sticks are cut.
func (b *binder) stockLeaf() []folio {
	s := sawing{plan: b.plan, units: b.spec.Units, width: b.bodyWidth(), list: patterns(b.plan.Cuts.Bars)}
	front := slices.Concat(buying{b.plan, b.spec}.blocks(), readLabels(b.plan), fetching(b.plan))
	back := s.blocks()
	_, room := b.newSide(false)
	for len(back) > 0 && back[0].Name != holdName && block.Height(back, room.W) > room.H && block.Height(append(slices.Clone(front), back[0]), room.W) < room.H {
		front, back = append(front, back[0]), back[1:] // many cuts after a short list
	}
	if len(s.list) == 0 { // nothing is cut: no side for it
		front, back = append(front, back...), nil
	}
	if len(front)+len(back) == 0 {
		return nil
	}
	return []folio{{front: side{title: "Buy and fetch", blocks: front}, back: side{title: "Cut", toScale: true, blocks: back}}}
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
